//! Outside readers of PDF, and what they say.

use std::path::PathBuf;
use std::process::Command;
use std::sync::atomic::{AtomicU32, Ordering};

use kurbo::{Affine, Line, Point, Vec2};
use lopdf::content::Content;
use lopdf::{Document, Object};

/// A PDF on disk for as long as a test looks at it.
pub struct Print {
    folder: PathBuf,
    pub bytes: Vec<u8>,
}

impl Print {
    pub fn of(bytes: Vec<u8>) -> Self {
        static NEXT: AtomicU32 = AtomicU32::new(0);
        let number = NEXT.fetch_add(1, Ordering::Relaxed);
        let folder =
            std::env::temp_dir().join(format!("paperwork-{}-{number}", std::process::id()));
        std::fs::create_dir_all(&folder).unwrap();
        std::fs::write(folder.join("sheet.pdf"), &bytes).unwrap();
        Self { folder, bytes }
    }

    /// What `tool` says of the file; `{}` in `arguments` stands for it.
    pub fn read_by(&self, tool: &str, arguments: &[&str]) -> String {
        let file = self.folder.join("sheet.pdf");
        let file = file.to_str().unwrap();
        let ran = Command::new(tool)
            .args(
                arguments
                    .iter()
                    .map(|argument| argument.replace("{}", file)),
            )
            .current_dir(&self.folder)
            .output()
            .unwrap_or_else(|fault| {
                panic!("{tool} could not be started ({fault}): run ./check, which installs it")
            });
        let said = String::from_utf8_lossy(&ran.stdout).into_owned();
        let grumbled = String::from_utf8_lossy(&ran.stderr);
        assert!(ran.status.success(), "{tool} found fault: {said}{grumbled}");
        said
    }

    /// The text a reader copies out, all space made single.
    pub fn text(&self) -> String {
        let text = self.read_by("pdftotext", &["-enc", "UTF-8", "{}", "-"]);
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    }

    /// Every page in grey at 100 dots an inch: width, height, dots.
    pub fn pictures(&self) -> Vec<(usize, usize, Vec<u8>)> {
        self.read_by("pdftoppm", &["-r", "100", "-gray", "{}", "page"]);
        let mut files: Vec<PathBuf> = std::fs::read_dir(&self.folder)
            .unwrap()
            .map(|entry| entry.unwrap().path())
            .filter(|path| path.extension().is_some_and(|end| end == "pgm"))
            .collect();
        files.sort();
        files
            .iter()
            .map(|file| grey_map(&std::fs::read(file).unwrap()))
            .collect()
    }

    pub fn document(&self) -> Document {
        Document::load_mem(&self.bytes).unwrap()
    }

    /// What every page draws, in page points.
    pub fn pages(&self) -> Vec<Drawn> {
        let document = self.document();
        let pages = document.get_pages();
        pages
            .values()
            .map(|page| {
                let content = document.get_page_content(*page);
                let fonts = document.get_page_fonts(*page).unwrap();
                drawn(&Content::decode(&content).unwrap(), |name| {
                    let base = fonts[name].get(b"BaseFont").unwrap();
                    String::from_utf8_lossy(base.as_name().unwrap()).into_owned()
                })
            })
            .collect()
    }
}

impl Drop for Print {
    fn drop(&mut self) {
        std::fs::remove_dir_all(&self.folder).unwrap();
    }
}

/// Straight lines (two ends each) and lettering (font and size) a page draws.
#[derive(Default)]
pub struct Drawn {
    pub lines: Vec<Line>,
    pub lettering: Vec<(String, f64)>,
}

/// Follows the operators that move, draw lines and show text.
fn drawn(content: &Content, font_named: impl Fn(&[u8]) -> String) -> Drawn {
    let mut out = Drawn::default();
    let (mut now, mut kept) = (Affine::IDENTITY, Vec::new());
    let (mut text, mut font, mut size) = (Affine::IDENTITY, String::new(), 0.0);
    let mut pen = Point::ORIGIN;
    for operation in &content.operations {
        let numbers: Vec<f64> = operation.operands.iter().filter_map(number).collect();
        let matrix = || Affine::new(numbers.as_slice().try_into().unwrap());
        match (operation.operator.as_str(), numbers.as_slice()) {
            ("q", _) => kept.push(now),
            ("Q", _) => now = kept.pop().unwrap(),
            ("cm", _) => now *= matrix(),
            ("Tm", _) => text = matrix(),
            ("Tf", &[set]) => {
                font = font_named(operation.operands[0].as_name().unwrap());
                size = set;
            }
            ("Tj" | "TJ", _) => {
                let upright = (now * text).with_translation(Vec2::ZERO) * Point::new(0.0, size);
                out.lettering
                    .push((font.clone(), upright.to_vec2().hypot()));
            }
            ("m", &[x, y]) => pen = now * Point::new(x, y),
            ("l", &[x, y]) => {
                let end = now * Point::new(x, y);
                out.lines.push(Line::new(pen, end));
                pen = end;
            }
            _ => {}
        }
    }
    out
}

fn number(object: &Object) -> Option<f64> {
    match object {
        Object::Integer(whole) => Some(f64::from(i32::try_from(*whole).unwrap())),
        Object::Real(real) => Some(f64::from(*real)),
        _ => None,
    }
}

/// Reads a binary portable grey map (`P5`, width, height, 255, dots).
fn grey_map(file: &[u8]) -> (usize, usize, Vec<u8>) {
    let mut words = Vec::new();
    let mut place = 0;
    while words.len() < 4 {
        let end = place
            + file[place..]
                .iter()
                .position(u8::is_ascii_whitespace)
                .unwrap();
        words.push(std::str::from_utf8(&file[place..end]).unwrap());
        place = end + 1;
    }
    assert_eq!((words[0], words[3]), ("P5", "255"));
    (
        words[1].parse().unwrap(),
        words[2].parse().unwrap(),
        file[place..].to_vec(),
    )
}
