//! Files read whole, and written whole or not at all.

use std::fs::{self, File};
use std::io::{self, ErrorKind, Read, Write as _};
use std::path::{Path, PathBuf};

use crate::problem::{Kind, Problem, Trouble};
use crate::terminal::Terminal;

/// The longest file that is read, in bytes; documents have a far lower limit of their own.
const LONGEST: u64 = 64 << 20;

/// Reads a file, or stdin for `-`.
///
/// # Errors
/// What can't be reached, with what to do.
pub fn read(name: &str) -> Result<Vec<u8>, Trouble> {
    let opened: io::Result<Box<dyn Read>> = if name == "-" {
        Ok(Box::new(io::stdin().lock()))
    } else if Path::new(name).is_dir() {
        return Err(folder(name));
    } else {
        File::open(name).map(|file| Box::new(file) as Box<dyn Read>)
    };
    let mut bytes = Vec::new();
    let read = opened.and_then(|file| file.take(LONGEST + 1).read_to_end(&mut bytes));
    match read {
        Ok(_) if bytes.len() as u64 > LONGEST => Err(Trouble::one(
            Kind::Document,
            Problem::new("file.too_long", "the file is longer than 64 MiB")
                .hint("is it the right file?")
                .in_file(name),
        )),
        Ok(_) => Ok(bytes),
        Err(error) => Err(unreachable_file(name, &error)),
    }
}

/// Opens a file that is read piece by piece, however long it is.
///
/// # Errors
/// As [`read`].
pub fn open(name: &str) -> Result<File, Trouble> {
    if Path::new(name).is_dir() {
        return Err(folder(name));
    }
    File::open(name).map_err(|error| unreachable_file(name, &error))
}

fn folder(name: &str) -> Trouble {
    Trouble::one(
        Kind::File,
        Problem::new("file.folder", "this is a folder")
            .hint("name a file in it")
            .in_file(name),
    )
}

fn unreachable_file(name: &str, error: &io::Error) -> Trouble {
    let problem = match error.kind() {
        ErrorKind::NotFound => Problem::new("file.missing", "there is no such file")
            .hint("check the name; `rabbet job new -o FILE` writes a new job"),
        ErrorKind::PermissionDenied => {
            Problem::new("file.not_allowed", "this account may not read it")
                .hint("change its permissions, or copy it where it can be read")
        }
        _ => Problem::new(
            "file.unreadable",
            format!("it can't be read: {}", reason(error)),
        ),
    };
    Trouble::one(Kind::File, problem.in_file(name))
}

/// The system's reason, without its number.
pub fn reason(error: &io::Error) -> String {
    let text = error.to_string();
    let text = text
        .split(" (os error")
        .next()
        .unwrap_or_default()
        .to_lowercase();
    text.replace("invalid", "wrong") // not said: what the system says, put into other words
}

/// What a writing command does with its output.
#[derive(Clone, Copy, Debug, Default)]
pub struct Writing {
    /// Say what would be written, and write nothing.
    pub dry_run: bool,
    /// Replace a file that is there.
    pub replace: bool,
}

/// Writes `bytes` to `name`, or to stdout for `-`: whole, or not at all.
///
/// # Errors
/// A file that is there and may not be replaced, and whatever keeps it from being written.
pub fn write(name: &str, bytes: &[u8], how: Writing, terminal: Terminal) -> Result<(), Trouble> {
    if name == "-" {
        return terminal.bytes(bytes);
    }
    let path = Path::new(name);
    if path.is_dir() {
        return Err(folder(name));
    }
    if path.exists() && !how.replace {
        return Err(Trouble::one(
            Kind::Input,
            Problem::new(
                "file.exists",
                "this file is there already and stays as it is",
            )
            .hint("choose another name, or say --force to replace it")
            .in_file(name),
        ));
    }
    in_a_folder(name)?;
    if how.dry_run {
        terminal.talk(&format!(
            "{name}: would be written, {} bytes; nothing is (--dry-run)",
            bytes.len()
        ));
        return Ok(());
    }
    put(path, bytes, how.replace)?;
    terminal.talk(&format!("{name}: written"));
    Ok(())
}

/// Refuses a name nothing could be written to.
///
/// # Errors
/// A folder, or a file in a folder that is not there.
pub fn writable(name: &str) -> Result<(), Trouble> {
    if Path::new(name).is_dir() {
        return Err(folder(name));
    }
    in_a_folder(name)
}

fn in_a_folder(name: &str) -> Result<(), Trouble> {
    let folder = folder_of(Path::new(name));
    if folder.is_dir() {
        return Ok(());
    }
    Err(Trouble::one(
        Kind::File,
        Problem::new(
            "file.no_folder",
            format!("there is no folder {}", folder.display()),
        )
        .hint("make it first, or choose another place")
        .in_file(name),
    ))
}

/// Writes `bytes` to a file, whole or not at all, and says nothing of it.
///
/// # Errors
/// A file that is there and is not to be replaced, and whatever keeps it from being written.
pub fn put(path: &Path, bytes: &[u8], replace: bool) -> Result<(), Trouble> {
    whole(path, &folder_of(path), bytes, replace).map_err(|error| {
        Trouble::one(
            Kind::File,
            Problem::new(
                "file.unwritable",
                format!("it can't be written: {}", reason(&error)),
            )
            .hint("this file is as it was; choose a place this account may write to")
            .in_file(&path.to_string_lossy()),
        )
    })
}

/// Removes a file; one that is not there is no trouble.
///
/// # Errors
/// Whatever keeps it from being removed.
pub fn remove(path: &Path) -> Result<(), Trouble> {
    match fs::remove_file(path) {
        Err(error) if error.kind() != ErrorKind::NotFound => {
            let sentence = format!("it can't be removed: {}", reason(&error));
            let problem = Problem::new("file.unremovable", sentence)
                .hint("remove it by hand, or let this account write there");
            Err(Trouble::one(
                Kind::File,
                problem.in_file(&path.to_string_lossy()),
            ))
        }
        _ => Ok(()),
    }
}

/// The folder a file lies in.
pub fn folder_of(path: &Path) -> PathBuf {
    match path.parent() {
        Some(parent) if !parent.as_os_str().is_empty() => parent.to_path_buf(),
        _ => PathBuf::from("."),
    }
}

/// Writes a file beside its place and moves it there once it is safely on the disk.
///
/// A link is followed; a device or a pipe has no place beside it and takes the bytes as they come.
fn whole(path: &Path, folder: &Path, bytes: &[u8], replace: bool) -> io::Result<()> {
    let there = fs::canonicalize(path).ok();
    let (path, folder) = match &there {
        Some(target) if !target.is_file() => {
            return fs::OpenOptions::new()
                .write(true)
                .open(target)?
                .write_all(bytes);
        }
        Some(target) => (target.as_path(), folder_of(target)),
        None => (path, folder.to_path_buf()),
    };
    let mut builder = tempfile::Builder::new();
    builder.prefix(".rabbet-");
    let mut file = as_open_as_others(&mut builder, path).tempfile_in(folder)?;
    file.write_all(bytes)?;
    file.as_file().sync_all()?;
    if replace {
        file.persist(path)?
    } else {
        file.persist_noclobber(path)?
    };
    Ok(())
}

/// Gives the new file the permissions of the one it replaces, else those the account gives any file.
#[cfg(unix)]
fn as_open_as_others<'a, 'b>(
    builder: &'a mut tempfile::Builder<'b, 'b>,
    path: &Path,
) -> &'a mut tempfile::Builder<'b, 'b> {
    use std::os::unix::fs::PermissionsExt as _;
    // The account's own mask takes from this what it withholds from others.
    const ANY_FILE: u32 = 0o666;
    let permissions = fs::metadata(path).map_or(fs::Permissions::from_mode(ANY_FILE), |there| {
        there.permissions()
    });
    builder.permissions(permissions)
}

/// Elsewhere the folder decides.
#[cfg(not(unix))]
fn as_open_as_others<'a, 'b>(
    builder: &'a mut tempfile::Builder<'b, 'b>,
    _: &Path,
) -> &'a mut tempfile::Builder<'b, 'b> {
    builder
}

/// Whether two names lead to the same file.
pub fn same_file(one: &str, other: &str) -> bool {
    match (fs::canonicalize(one), fs::canonicalize(other)) {
        (Ok(one), Ok(other)) => one == other,
        _ => false,
    }
}
