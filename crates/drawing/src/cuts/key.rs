//! The key: what is too small on the drawing for its lettering carries a tag, and the key says it.

use crate::cuts::CutDrawing;
use crate::cuts::block::{Block, width_of};
use crate::scene::{Anchor, Face, Node, at, text};
use crate::sheet::{LEADING, wrapped};
use crate::twin::Drawing;

/// One tag and what it stands for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeyLine {
    kind: Kind,
    /// As it stands on the drawing: small letters for a piece, `R1` for a remnant, `W1` for a window;
    /// what is alike shares one.
    pub tag: String,
    /// Name, size and remarks.
    pub words: String,
    /// How many carry it.
    pub count: usize,
}

/// What a tag stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Kind {
    Piece,
    Remnant,
    Window,
}

/// a, b, … z, aa, ab, …; without i, l and o, which read as numbers.
fn letters(index: usize) -> String {
    const LETTERS: &[u8; 23] = b"abcdefghjkmnpqrstuvwxyz";
    let last = char::from(LETTERS[index % LETTERS.len()]);
    match (index / LETTERS.len()).checked_sub(1) {
        Some(before) => format!("{}{last}", letters(before)),
        None => last.to_string(),
    }
}

/// Tags given out, in the order asked for.
#[derive(Debug, Default)]
pub(crate) struct Key {
    lines: Vec<KeyLine>,
    /// The tag of each piece and each remnant, in their order; none where its name stands in it.
    pub pieces: Vec<Option<String>>,
    pub remnants: Vec<Option<String>>,
}

impl Key {
    /// The tag for these words.
    pub fn tag(&mut self, kind: Kind, words: &str) -> String {
        if let Some(line) = self
            .lines
            .iter_mut()
            .find(|line| line.kind == kind && line.words == words)
        {
            line.count += 1;
            return line.tag.clone();
        }
        let before = self.lines.iter().filter(|line| line.kind == kind).count();
        let tag = match kind {
            Kind::Piece => letters(before),
            Kind::Remnant => format!("R{}", before + 1),
            Kind::Window => format!("W{}", before + 1),
        };
        self.lines.push(KeyLine {
            kind,
            tag: tag.clone(),
            words: words.to_owned(),
            count: 1,
        });
        tag
    }

    /// The drawing, with its key.
    pub fn of(self, drawing: Drawing) -> CutDrawing {
        CutDrawing {
            drawing,
            key: self.lines,
            piece_tags: self.pieces,
            remnant_tags: self.remnants,
        }
    }

    pub fn lines(&self) -> &[KeyLine] {
        &self.lines
    }
}

/// A tag as a block.
pub(crate) fn tag_block(tag: &str, upright: bool) -> Block {
    Block {
        lines: vec![(tag.to_owned(), Face::Heading)],
        upright,
    }
}

/// The key under a drawing, from `top` downwards; returns it and where it ends.
pub(crate) fn set(lines: &[KeyLine], left: f64, width: f64, top: f64) -> (Vec<Node>, f64) {
    let indent = lines
        .iter()
        .map(|line| width_of(&line.tag, Face::Heading))
        .fold(0.0, f64::max)
        + 2.5;
    let mut nodes = Vec::new();
    let mut y = top;
    for line in lines {
        let words = if line.count > 1 {
            format!("{}; {} alike", line.words, line.count)
        } else {
            line.words.clone()
        };
        for (k, words) in wrapped(&words, width - indent, usize::MAX)
            .into_iter()
            .enumerate()
        {
            y += LEADING;
            if k == 0 {
                nodes.push(text(at(left, y), &line.tag, Anchor::Start, Face::Heading));
            }
            nodes.push(text(
                at(left + indent, y),
                words,
                Anchor::Start,
                Face::Plain,
            ));
        }
    }
    (nodes, y)
}
