//! The drawing and its text twin: every dimension shown, and those it implies, as words.

use measure::{Length, Unit};
use sizing::WorkedSize;

/// A drawing, with the words that stand for it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Drawing {
    /// What it shows.
    pub title: String,
    /// Scale, sheet to piece: `1 : 4`, or `4 : 1` where it is enlarged.
    pub scale: String,
    /// The drawing, complete in itself.
    pub svg: String,
    /// Every dimension, exact, in both units.
    pub twin: Vec<TwinLine>,
}

/// One line of a text twin.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TwinLine {
    /// What is measured.
    pub what: String,
    /// How much it is.
    pub value: String,
}

/// The whole twin as text, one line a dimension.
pub fn twin_text(drawing: &Drawing) -> String {
    let mut text = format!("{}\nScale: {}\n", drawing.title, drawing.scale);
    for line in &drawing.twin {
        text.extend([&line.what, ": ", &line.value, "\n"]);
    }
    text
}

/// Collects a twin.
pub(crate) struct Twin {
    unit: Unit,
    lines: Vec<TwinLine>,
}

impl Twin {
    pub fn new(unit: Unit) -> Self {
        Self {
            unit,
            lines: Vec::new(),
        }
    }

    /// A length, exact and in both units.
    pub fn length(&mut self, what: impl Into<String>, length: Length) {
        self.words(what, length.in_both(self.unit));
    }

    /// A width and a height, in that order.
    pub fn size(&mut self, what: &str, size: WorkedSize) {
        self.length(format!("{what}, width"), size.width.value);
        self.length(format!("{what}, height"), size.height.value);
    }

    /// Anything else worth saying.
    pub fn words(&mut self, what: impl Into<String>, value: impl Into<String>) {
        self.lines.push(TwinLine {
            what: what.into(),
            value: value.into(),
        });
    }

    pub fn finish(self) -> Vec<TwinLine> {
        self.lines
    }
}

/// A part's name, numbered where there are several.
pub(crate) fn numbered(name: &str, index: usize, count: usize) -> String {
    if count > 1 {
        format!("{name} {}", index + 1)
    } else {
        name.to_owned()
    }
}
