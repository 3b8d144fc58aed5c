//! The sheet: its width, its lettering, the scale of what stands on it.

use measure::{Length, Rounding, Toward, Unit};
use sizing::Sizes;

use crate::input::{Look, Sheet};
use crate::scene::Node;
use crate::svg;
use crate::twin::{Drawing, Twin};

/// Height of letters set, in millimetres: a 26th of the page, 12 px where it is shown 320 px wide;
/// on the ticket, digits of 3.34 mm.
pub(crate) const TEXT_SIZE: f64 = 5.0;
/// Height of headings.
pub(crate) const HEADING_SIZE: f64 = 5.4;
/// Height of what a tool is set by: digits of 4.54 mm where the sheet is printed as wide as it is.
pub(crate) const FIGURE_SIZE: f64 = 6.8;
/// From one line of text to the next.
pub(crate) const LEADING: f64 = 6.2;

/// A scale, sheet to piece.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Scale {
    sheet: f64,
    piece: f64,
    /// Whether it can be said as a ratio.
    named: bool,
}

/// Scales that drawings are made at, the largest first.
const SCALES: [(f64, f64); 25] = [
    (10.0, 1.0),
    (8.0, 1.0),
    (6.0, 1.0),
    (5.0, 1.0),
    (4.0, 1.0),
    (3.0, 1.0),
    (2.5, 1.0),
    (2.0, 1.0),
    (1.5, 1.0),
    (1.25, 1.0),
    (1.0, 1.0),
    (1.0, 1.25),
    (1.0, 1.5),
    (1.0, 2.0),
    (1.0, 2.5),
    (1.0, 3.0),
    (1.0, 4.0),
    (1.0, 5.0),
    (1.0, 6.0),
    (1.0, 7.0),
    (1.0, 8.0),
    (1.0, 10.0),
    (1.0, 12.0),
    (1.0, 15.0),
    (1.0, 20.0),
];

impl Scale {
    /// The largest scale at which `needed` (millimetres of the piece) fits into `room` (of the sheet).
    pub fn fitting(needed: [f64; 2], room: [f64; 2]) -> Self {
        let fits = |sheet: f64, piece: f64| (0..2).all(|k| needed[k] * sheet <= room[k] * piece);
        if let Some((sheet, piece)) = SCALES
            .into_iter()
            .find(|(sheet, piece)| fits(*sheet, *piece))
        {
            return Self::of(sheet, piece);
        }
        let least = (needed[0] / room[0]).max(needed[1] / room[1]);
        let mut piece = ((least / 5.0).ceil() * 5.0).max(25.0);
        if !fits(1.0, piece) {
            piece += 5.0;
        }
        Self::of(1.0, piece)
    }

    /// The largest whole-number reduction at which `needed` fits; what is smaller is enlarged as
    /// [`fitting`](Self::fitting) has it.
    pub fn reducing(needed: [f64; 2], room: [f64; 2]) -> Self {
        let least = (needed[0] / room[0]).max(needed[1] / room[1]);
        if least <= 1.0 {
            return Self::fitting(needed, room);
        }
        Self::of(1.0, (least - 1e-9).ceil())
    }

    /// As large as the room lets it be, where one of the piece is no length anybody knows.
    pub fn filling(needed: [f64; 2], room: [f64; 2]) -> Self {
        let factor = (room[0] / needed[0]).min(room[1] / needed[1]);
        Self {
            named: false,
            ..Self::of(factor, 1.0)
        }
    }

    const fn of(sheet: f64, piece: f64) -> Self {
        Self {
            sheet,
            piece,
            named: true,
        }
    }

    /// Millimetres of the sheet for one of the piece.
    pub fn factor(self) -> f64 {
        self.sheet / self.piece
    }

    /// As it is printed: `1 : 4`.
    pub fn words(self) -> String {
        if !self.named {
            return "to scale".to_owned();
        }
        format!("{} : {}", self.sheet, self.piece)
    }
}

/// A size as the drawing prints it: in the job's unit, which the caption names; a size that is too
/// long to print exactly stands at the nearest mark of the tape, with `≈` before it.
pub(crate) fn shown(length: Length, sizes: &Sizes) -> String {
    const LONGEST: usize = 9;
    let unit = sizes.unit();
    let exact = bare(&length.exact(unit), unit);
    if exact.chars().count() <= LONGEST {
        return exact;
    }
    let printed = length.on_tape(sizes.tape(), Toward::Nearest);
    let text = bare(&printed.text, unit);
    if printed.rounding == Rounding::Exact {
        text
    } else {
        format!("≈ {text}")
    }
}

/// The text without the unit the caption names.
fn bare(text: &str, unit: Unit) -> String {
    text.strip_suffix(unit.symbol())
        .map_or(text, str::trim_end)
        .to_owned()
}

/// A size with its unit, as short as it can be said.
pub(crate) fn labelled(length: Length, sizes: &Sizes) -> String {
    const SHORT: usize = 10;
    let exact = length.exact(sizes.unit());
    if exact.chars().count() <= SHORT {
        exact
    } else {
        format!("{} {}", shown(length, sizes), sizes.unit())
    }
}

/// What the caption says of the unit.
fn unit_words(sizes: &Sizes) -> &'static str {
    if sizes.unit() == Unit::Inch {
        "inches"
    } else {
        "millimetres"
    }
}

/// The caption's first line; the ticket sets a heading that names the view.
pub(crate) fn first_line(view: &str, sheet: Sheet, scale: Scale, sizes: &Sizes) -> String {
    let (scale, unit) = (scale.words(), unit_words(sizes));
    match sheet {
        Sheet::Page | Sheet::Wide | Sheet::Bench => format!("{view} · {scale} · sizes in {unit}"),
        Sheet::Ticket => format!("{scale} · {unit}"),
    }
}

/// Some faces that stand in for the first run wider than it.
const SAFE: f64 = 1.06;

/// Width of a text in the lettering of the sheet, on the safe side.
pub(crate) fn text_width(text: &str) -> f64 {
    let em = |c: char| match c {
        ' ' | '.' | ',' | ':' | ';' | '\'' | 'i' | 'l' | 'j' | 'I' | '|' | '!' => 0.3,
        '/' | '(' | ')' | '-' | 'f' | 't' | 'r' => 0.42,
        'm' | 'w' | 'M' | 'W' | '@' | '—' => 0.88,
        c if c.is_ascii_uppercase() => 0.68,
        c if c.is_ascii() => 0.57,
        '…' => 0.9,
        c if u32::from(c) < 0x2000 => 0.66,
        _ => 1.0,
    };
    text.chars().map(em).sum::<f64>() * TEXT_SIZE * SAFE
}

/// The text in lines no wider than `width`; past `most` lines it ends in `…`.
pub(crate) fn wrapped(text: &str, width: f64, most: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in words(text) {
        let longer = lines.last().map(|line| format!("{line} {word}"));
        match longer.filter(|longer| text_width(longer) <= width) {
            Some(longer) => {
                lines.pop();
                lines.push(longer);
            }
            None => lines.push(word),
        }
    }
    if lines.len() > most {
        let rest = lines.split_off(most.saturating_sub(1)).join(" ");
        lines.push(rest);
    }
    lines.iter().map(|line| fitted(line, width)).collect()
}

/// The words of a text; a whole number and its fraction are one.
fn words(text: &str) -> Vec<String> {
    let mut words: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        let fraction = word.contains('/') && word.starts_with(|c: char| c.is_ascii_digit());
        match words
            .last_mut()
            .filter(|last| fraction && last.ends_with(|c: char| c.is_ascii_digit()))
        {
            Some(last) => last.extend([" ", word]),
            None => words.push(word.to_owned()),
        }
    }
    words
}

/// A line cut to a width, `…` where something is left out.
fn fitted(line: &str, width: f64) -> String {
    if text_width(line) <= width {
        return line.to_owned();
    }
    let mut room = width - text_width("…");
    let fits = |letter: &char| {
        room -= text_width(letter.encode_utf8(&mut [0; 4]));
        room >= 0.0
    };
    let kept: String = line.chars().take_while(fits).collect();
    format!("{}…", kept.trim_end())
}

/// A finished sheet before it is written.
pub(crate) struct Finished<'a> {
    /// `elevation`, `section`, `back`: starts every id.
    pub kind: &'static str,
    pub title: String,
    pub description: String,
    pub scale: Scale,
    pub height: f64,
    pub nodes: Vec<Node>,
    pub twin: Twin,
    pub look: &'a Look<'a>,
}

impl Finished<'_> {
    /// Writes it.
    pub fn write(self) -> Drawing {
        let twin = self.twin.finish();
        let mut trace = Trace::default();
        trace.take(&self.title);
        for line in &twin {
            trace.take(&line.value);
        }
        let sheet = svg::Wrapper {
            id: format!("{}-{:08x}", self.kind, trace.0),
            title: &self.title,
            description: &self.description,
            width: self.look.sheet.width(),
            height: self.height,
            ink: self.look.ink,
        };
        let svg = svg::write(&sheet, &self.nodes);
        Drawing {
            title: self.title,
            scale: self.scale.words(),
            svg,
            twin,
        }
    }
}

/// A number made from texts, so that ids of different pieces differ on one page (FNV-1a, 32 bit).
struct Trace(u32);

impl Default for Trace {
    fn default() -> Self {
        Self(0x811c_9dc5)
    }
}

impl Trace {
    fn take(&mut self, text: &str) {
        for byte in text.bytes() {
            self.0 = (self.0 ^ u32::from(byte)).wrapping_mul(0x0100_0193);
        }
    }
}
