//! Small papers: the label on the back and the card for the customer.

use serde_json::{Value, json};

use crate::error::PaperworkError;
use crate::legible::Legible;
use crate::qr::code;
use crate::ticket::Paper;
use crate::typeset::{Sheet, Stamp, pdf};

mod card;
mod label;

pub use card::{CardHead, card_of};
pub use label::{LabelHead, label_of};

/// The size of a small paper, upright.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LeafSize {
    /// 105 × 148 mm.
    A6,
    /// 4 × 6 in.
    FourBySix,
    /// 148 × 210 mm.
    A5,
    /// 5 1/2 × 8 1/2 in.
    HalfLetter,
}

impl LeafSize {
    /// Its name in the template.
    const fn name(self) -> &'static str {
        match self {
            Self::A6 => "a6",
            Self::FourBySix => "4x6",
            Self::A5 => "a5",
            Self::HalfLetter => "half-letter",
        }
    }
}

/// A small paper as it is to be read.
///
/// Shape:  sections one under another, then what a telephone reads; as many leaves as it takes,
///         each with its number.
#[derive(Clone, Debug)]
pub struct Leaf {
    /// What kind of paper it is: tells its file from others.
    pub kind: &'static str,
    /// The shop's name.
    pub shop: String,
    /// What stands over the title: what paper this is.
    pub over: String,
    /// Its title.
    pub title: String,
    /// Lines under the title.
    pub under: Vec<String>,
    /// Order, date: on every leaf.
    pub running: String,
    /// What is said, part by part.
    pub sections: Vec<LeafSection>,
    /// What it must not be read without, at its end.
    pub cautions: Vec<String>,
    /// Texts for a telephone, a code each.
    pub codes: Vec<String>,
    /// What the codes are, and how they are read.
    pub codes_words: Vec<String>,
    /// When the file was made; the only time it knows.
    pub made: Stamp,
}

/// A part of a small paper.
#[derive(Clone, Debug, Default)]
pub struct LeafSection {
    /// Its heading.
    pub heading: String,
    /// Sentences, each on its own.
    pub lines: Vec<String>,
    /// Rows of what, which, class.
    pub rows: Vec<[String; 3]>,
}

impl LeafSection {
    pub(crate) fn of(heading: &str, lines: Vec<String>) -> Self {
        Self {
            heading: heading.to_owned(),
            lines,
            rows: Vec::new(),
        }
    }
}

/// A small paper as PDF, on its own or on a larger sheet with a line to cut along.
///
/// Shape:  text of 8 pt on the smaller two sizes, 9.2 pt on the larger; read in the hand. Codes have
///         modules of 0.41 mm. Asks to be printed at actual size.
///
/// # Errors
///
/// A moment off the calendar.
pub fn leaf_pdf(leaf: &Leaf, size: LeafSize, on: Option<Paper>) -> Result<Vec<u8>, PaperworkError> {
    pdf(sheet(leaf, size, on)?)
}

pub(crate) fn sheet(
    leaf: &Leaf,
    size: LeafSize,
    on: Option<Paper>,
) -> Result<Sheet, PaperworkError> {
    let mut text = Legible::new();
    let codes: Result<Vec<Value>, PaperworkError> = leaf
        .codes
        .iter()
        .map(|words| {
            let code = code(words)?;
            Ok(json!({ "svg": code.svg, "modules": code.modules }))
        })
        .collect();
    let mut lines = |lines: &[String]| -> Vec<String> {
        lines.iter().map(|line| text.line(line, LONG)).collect()
    };
    let under = lines(&leaf.under);
    let cautions = lines(&leaf.cautions);
    let codes_words = lines(&leaf.codes_words);
    let sections: Vec<Value> = leaf
        .sections
        .iter()
        .map(|part| {
            json!({
                "heading": text.line(&part.heading, MIDDLING),
                "lines": part.lines.iter().map(|line| text.line(line, LONG)).collect::<Vec<_>>(),
                "rows": part.rows.iter().map(|row| row.each_ref().map(|cell| text.line(cell, MIDDLING))).collect::<Vec<_>>(),
            })
        })
        .collect();
    let mut data = json!({
        "leaf": size.name(),
        "sheet": on.map(|paper| match paper { Paper::A4 => "a4", Paper::Letter => "us-letter" }),
        "shop": text.line(&leaf.shop, MIDDLING),
        "over": text.line(&leaf.over, MIDDLING),
        "title": text.line(&leaf.title, MIDDLING),
        "under": under,
        "running": text.line(&leaf.running, MIDDLING),
        "sections": sections,
        "cautions": cautions,
        "codes": codes?,
        "codes_words": codes_words,
    });
    data["replaced"] = json!(text.replaced);
    Ok(Sheet {
        template: "leaf.typ",
        data,
        drawings: Vec::new(),
        identity: format!("{} {} {}", leaf.kind, leaf.running, leaf.title),
        made: leaf.made,
    })
}

const MIDDLING: usize = 120;
const LONG: usize = 700;
