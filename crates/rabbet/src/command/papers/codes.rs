//! Codes as they were scanned: their text, or a picture of them.

use image::ImageReader;

use crate::files;
use crate::problem::{Kind, Problem, Trouble};

/// The text of every code in these files, `-` from stdin: text as it is, pictures decoded.
///
/// # Errors
/// A file that can't be reached, a picture without a code that can be read.
pub fn texts(names: &[String]) -> Result<String, Trouble> {
    let mut all = String::new();
    let mut blank = Vec::new();
    for name in names {
        let bytes = files::read(name)?;
        let text = if is_picture(&bytes) {
            let seen = seen(name, &bytes)?;
            if seen.is_empty() {
                blank.push(name.as_str());
            }
            seen
        } else {
            String::from_utf8_lossy(&bytes).into_owned()
        };
        all.push_str(&text);
        all.push('\n');
    }
    // A leaf of several may well have none.
    if !blank.is_empty() && blank.len() == names.len() {
        return Err(trouble(
            &blank.join(", "),
            "codes.none",
            "no code can be read in it".to_owned(),
        ));
    }
    Ok(all)
}

fn is_picture(bytes: &[u8]) -> bool {
    bytes.starts_with(b"\x89PNG") || bytes.starts_with(&[0xff, 0xd8, 0xff])
}

fn trouble(name: &str, code: &str, sentence: String) -> Trouble {
    let hint =
        "take a sharp picture straight from the front, or give the text another reader shows";
    let problem = Problem::new(code, sentence).hint(hint);
    Trouble::one(Kind::Input, problem.in_file(name))
}

/// Widest and highest picture that is looked at, in dots.
const LARGEST: u32 = 12_000;

fn seen(name: &str, bytes: &[u8]) -> Result<String, Trouble> {
    let mut reader = ImageReader::new(std::io::Cursor::new(bytes))
        .with_guessed_format()
        .map_err(|error| trouble(name, "codes.picture", files::reason(&error)))?;
    let mut limits = image::Limits::default();
    limits.max_image_width = Some(LARGEST);
    limits.max_image_height = Some(LARGEST);
    reader.limits(limits);
    let picture = reader
        .decode()
        .map_err(|error| {
            trouble(
                name,
                "codes.picture",
                format!("the picture can't be read: {error}"),
            )
        })?
        .into_luma8();
    let (width, height) = (picture.width() as usize, picture.height() as usize);
    let dots = picture.into_raw();
    let mut prepared =
        rqrr::PreparedImage::prepare_from_greyscale(width, height, |x, y| dots[y * width + x]);
    let found = prepared
        .detect_grids()
        .into_iter()
        .filter_map(|grid| grid.decode().ok());
    let lines: Vec<String> = found.map(|(_, text)| text).collect();
    Ok(lines.join("\n"))
}
