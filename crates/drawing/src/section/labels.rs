//! Labels: a column at the right, each led to what it names.

use super::ruler::Ruler;
use crate::colour::INK;
use crate::hatch::circle;
use crate::input::Sheet;
use crate::scene::{Anchor, Face, Fill, Node, Path, Pen, Point, area, at, part, stroke, text};
use crate::sheet::{LEADING, text_width, wrapped};

/// A label and what it names.
pub(super) struct Label {
    pub part: String,
    /// The place named, in the cut.
    pub at: Point,
    pub name: String,
    /// In both units.
    pub value: String,
    /// In one, where both don't fit.
    pub short: String,
    /// Where it stands in the list of the stack.
    pub said: Said,
}

/// What a label says of the list of the stack.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Said {
    /// Names the layer that stands in the list under this number.
    Listed(usize),
    /// Names a member that is no layer of another, or what the account under the list says.
    Elsewhere,
    /// Names something the list does not hold.
    Else,
}

/// How high the column is at most.
pub(super) fn height(blocks: &[Block<'_>]) -> f64 {
    blocks.iter().map(Block::height).sum()
}

/// Left edge of the column.
const fn column(sheet: Sheet) -> f64 {
    match sheet {
        Sheet::Page | Sheet::Wide | Sheet::Bench => 83.0,
        Sheet::Ticket => 79.0,
    }
}

/// A label in lines.
pub(super) struct Block<'a> {
    pub label: &'a Label,
    pub lines: Vec<String>,
}

impl Block<'_> {
    fn height(&self) -> f64 {
        self.lines.iter().map(|_| LEADING).sum::<f64>() + SPACE
    }
}

/// A block with the height it would like to stand at.
struct Stood<'a> {
    block: &'a Block<'a>,
    dot: Point,
    top: f64,
}

/// Between two labels.
const SPACE: f64 = 0.9;

/// Every label in words.
pub(super) fn in_words(labels: &[Label]) -> Vec<Block<'_>> {
    labels
        .iter()
        .map(|label| Block {
            label,
            lines: lines(label),
        })
        .collect()
}

/// Sets the column; returns it and where it ends.
pub(super) fn set(blocks: &[Block<'_>], sheet: Sheet, ruler: &Ruler) -> (Vec<Node>, f64) {
    let margin = sheet.margin();
    let mut stood: Vec<Stood<'_>> = blocks.iter().map(|block| stood(block, ruler)).collect();
    stood.sort_by(|a, b| a.dot.y.total_cmp(&b.dot.y));
    let mut free = margin;
    for one in &mut stood {
        one.top = one.top.max(free);
        free = one.top + one.block.height();
    }
    // Pull the column up again as far as its lower labels allow, so that leaders lie level.
    let all = height(blocks);
    let middle = stood.iter().map(|one| one.dot.y).sum::<f64>()
        / f64::max(1.0, stood.iter().map(|_| 1.0).sum());
    let mut limit = (middle + all * 0.62).max(margin + all);
    for one in stood.iter_mut().rev() {
        one.top = one.top.min(limit - one.block.height());
        limit = one.top;
    }
    let nodes = stood
        .iter()
        .map(|one| part(one.block.label.part.clone(), drawn(one, sheet, ruler)));
    let lowest = stood
        .last()
        .map_or(margin, |one| one.top + one.block.height());
    (nodes.collect(), lowest)
}

/// The label in as few lines as hold it: name and size in both units, name and size in one, or one
/// under the other.
fn lines(label: &Label) -> Vec<String> {
    let width = Sheet::Page.width() - Sheet::Page.margin() - column(Sheet::Page);
    if label.value.is_empty() {
        return wrapped(&label.name, width, 2);
    }
    let together = [&label.value, &label.short].map(|value| format!("{} {value}", label.name));
    if let Some(line) = together.into_iter().find(|line| text_width(line) <= width) {
        return vec![line];
    }
    let mut lines = wrapped(&label.name, width, 2);
    lines.extend(wrapped(&label.short, width, 1));
    lines
}

fn stood<'a>(block: &'a Block<'a>, ruler: &Ruler) -> Stood<'a> {
    let dot = ruler.put(block.label.at);
    let top = dot.y - block.lines.iter().map(|_| LEADING).sum::<f64>() / 2.0;
    Stood { block, dot, top }
}

fn drawn(stood: &Stood<'_>, sheet: Sheet, ruler: &Ruler) -> Vec<Node> {
    let (dot, column) = (stood.dot, column(sheet));
    let turn = at(ruler.end().max(dot.x) + 2.0, dot.y);
    let y = stood.top + LEADING / 2.0 + 0.4;
    let foot = at(column - 4.0, y);
    let leader = vec![dot, turn, foot, at(column - 1.4, y)];
    let mut nodes = vec![
        stroke(Path::open(leader), Pen::Dimension),
        area(Path::ring(circle(dot, 0.55)), Fill::Flat(INK)),
    ];
    let mut line_y = stood.top + TEXT_DOWN;
    for line in &stood.block.lines {
        nodes.push(text(
            at(column, line_y),
            line.clone(),
            Anchor::Start,
            Face::Plain,
        ));
        line_y += LEADING;
    }
    nodes
}

/// From the top of a line to the foot of its letters.
const TEXT_DOWN: f64 = 4.9;
