//! The file a shop keeps its signing key in.

use std::fmt::Write as _;
use std::fs;
use std::io::{ErrorKind, Write as _};
use std::path::Path;

use paperwork::RecordKey;
use serde::Deserialize;

use crate::problem::{Kind, Problem, Trouble};
use crate::{files, toml_place};

/// A key file as it is written.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Kept {
    rabbet_key: u32,
    secret: String,
    public: String,
}

/// The version of a key file's form.
const VERSION: u32 = 1;

/// Reads the key of a file.
///
/// # Errors
/// A file that can't be reached or is no key file, a secret that does not belong to its public key.
pub fn read(file: &str) -> Result<RecordKey, Trouble> {
    if !Path::new(file).exists() {
        let problem = Problem::new("key.missing", "there is no such key file");
        let hint = format!("`rabbet record key {file}` makes one");
        return Err(Trouble::one(Kind::File, problem.hint(hint).in_file(file)));
    }
    let text = toml_place::text_of(file, &files::read(file)?)?;
    let kept: Kept = toml::from_str(&text)
        .map_err(|error| toml_place::trouble(file, &text, &error, "key.form"))?;
    let refused = |sentence: &str| {
        let problem = Problem::new("key.form", sentence);
        Trouble::one(
            Kind::Shop,
            problem.hint("take it from the shop's backup").in_file(file),
        )
    };
    if kept.rabbet_key != VERSION {
        return Err(refused(
            "this key file is of a form this program does not read",
        ));
    }
    let secret =
        bytes(&kept.secret).ok_or_else(|| refused("its secret is not 64 hexadecimal digits"))?;
    let key = RecordKey::of(secret);
    if key.public() == kept.public {
        Ok(key)
    } else {
        Err(refused("its secret does not belong to its public key"))
    }
}

/// Makes a key from the system's randomness and keeps it in a file that is not there yet, for this account alone.
///
/// # Errors
/// A file that is there or can't be written, a system that gives no randomness.
pub fn make(file: &str) -> Result<RecordKey, Trouble> {
    let mut secret = [0; 32];
    getrandom::fill(&mut secret).map_err(|error| {
        let problem = Problem::new(
            "key.randomness",
            format!("the system gives no randomness: {error}"),
        );
        Trouble::one(Kind::File, problem)
    })?;
    let key = RecordKey::of(secret);
    let secret = secret.iter().fold(String::new(), |mut text, byte| {
        write!(text, "{byte:02x}").expect("writing to a string");
        text
    });
    let text = format!(
        "# Signs the records of this shop's labels. Whoever has this file can sign in its name:\n\
         # keep it to yourselves, and keep a copy with the backups. Labels carry the public half.\n\
         rabbet_key = {VERSION}\nsecret = \"{secret}\"\npublic = \"{}\"\n",
        key.public()
    );
    files::writable(file)?;
    private(Path::new(file))
        .and_then(|mut out| {
            out.write_all(text.as_bytes())?;
            out.sync_all()
        })
        .map_err(|error| unwritten(file, &error))?;
    Ok(key)
}

fn unwritten(file: &str, error: &std::io::Error) -> Trouble {
    let problem = if error.kind() == ErrorKind::AlreadyExists {
        Problem::new(
            "file.exists",
            "this file is there already and stays as it is",
        )
    } else {
        Problem::new(
            "file.unwritable",
            format!("it can't be written: {}", files::reason(error)),
        )
    };
    Trouble::one(Kind::File, problem.in_file(file))
}

/// A new file that only this account may read.
fn private(path: &Path) -> std::io::Result<fs::File> {
    let mut options = fs::OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    {
        use std::os::unix::fs::OpenOptionsExt as _;
        options.mode(0o600);
    }
    options.open(path)
}

fn bytes(hex: &str) -> Option<[u8; 32]> {
    let mut found = [0; 32];
    let digits = hex.as_bytes();
    if digits.len() != 2 * found.len() {
        return None;
    }
    for (byte, pair) in found.iter_mut().zip(digits.chunks(2)) {
        let digit = |at: usize| char::from(pair[at]).to_digit(16); // geometry: hexadecimal
        *byte = u8::try_from(digit(0)? * 16 + digit(1)?).ok()?; // geometry: hexadecimal
    }
    Some(found)
}
