//! Pictures of the art, looked up beside the job file and nowhere else.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Component, Path};

use drawing::Picture;
use trade::Job;

use crate::files;

/// Pictures by the name the job gives them.
#[derive(Debug, Default)]
pub struct Pictures {
    found: BTreeMap<String, Picture>,
    /// Why others are not shown, a sentence each.
    pub missing: Vec<String>,
}

/// The largest picture that is read, in bytes.
const LARGEST: u64 = 32 << 20;

impl Pictures {
    /// Those of `job`, from the folder of its file; for stdin, from the folder the command runs in.
    pub fn beside(file: &str, job: &Job) -> Self {
        let folder = files::folder_of(Path::new(if file == "-" { "" } else { file }));
        let mut pictures = Self::default();
        for name in job.art.iter().filter_map(|art| art.picture.as_deref()) {
            match read(&folder, name) {
                Ok(picture) => {
                    pictures.found.insert(name.to_owned(), picture);
                }
                Err(why) => pictures
                    .missing
                    .push(format!("picture {name}: {why}; it is drawn without")),
            }
        }
        pictures
    }

    /// The picture of this name.
    pub fn named(&self, name: &str) -> Option<Picture> {
        self.found.get(name).cloned()
    }
}

fn read(folder: &Path, name: &str) -> Result<Picture, String> {
    let mut parts = Path::new(name).components();
    let (Some(Component::Normal(_)), None) = (parts.next(), parts.next()) else {
        return Err("only the name of a file beside the job is followed".to_owned());
    };
    let mime =
        mime(name).ok_or_else(|| "it ends in neither .png, .jpg, .jpeg nor .svg".to_owned())?;
    let unreadable = |error: std::io::Error| format!("it can't be read: {}", files::reason(&error));
    let path = fs::canonicalize(folder.join(name)).map_err(unreadable)?;
    if path.parent() != fs::canonicalize(folder).ok().as_deref() {
        return Err("it leads out of the job's folder".to_owned());
    }
    let about = fs::metadata(&path).map_err(unreadable)?;
    if !about.is_file() || about.len() > LARGEST {
        return Err("it is no file of up to 32 MiB".to_owned());
    }
    fs::read(&path)
        .map(|bytes| Picture { mime, bytes })
        .map_err(unreadable)
}

fn mime(name: &str) -> Option<&'static str> {
    let (_, ending) = name.rsplit_once('.')?;
    match ending.to_ascii_lowercase().as_str() {
        "png" => Some("image/png"),
        "jpg" | "jpeg" => Some("image/jpeg"),
        "svg" => Some("image/svg+xml"),
        _ => None,
    }
}
