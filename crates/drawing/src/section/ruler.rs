//! From the cut onto the sheet, with long even stretches left out.

use crate::colour::PAPER;
use crate::scene::{Fill, Node, Path, Pen, Point, area, at, stroke};

/// Bare paper between two break lines, in millimetres of the sheet.
const BREAK: f64 = 2.4;

/// Stretches of the cut that are drawn, each from and to, in millimetres of the piece.
#[derive(Clone, Debug, Default)]
pub(super) struct Stretches(Vec<[f64; 2]>);

/// Kept on either side of a place that matters, and after the last one.
const BESIDE: f64 = 4.5;
const AFTER: f64 = 8.0;
/// The least that is left out: in the mats, and in a moulding.
const LEAST_IN_MATS: f64 = 5.0;

impl Stretches {
    /// What is drawn round the places that matter; past `sight` shorter stretches are left out than
    /// the `least` before it.
    pub fn round(places: &[f64], sight: f64, least_before: f64) -> Self {
        let mut places = places.to_vec();
        places.sort_by(f64::total_cmp);
        let mut kept: Vec<[f64; 2]> = Vec::new();
        for (k, place) in places.iter().enumerate() {
            let after = if k + 1 == places.len() { AFTER } else { BESIDE };
            let next = [(place - BESIDE).max(0.0), place + after];
            let Some(last) = kept.last_mut() else {
                kept.push([0.0, next[1]]);
                continue;
            };
            let skipped = if last[1] > sight {
                LEAST_IN_MATS
            } else {
                least_before
            };
            if next[0] - last[1] > skipped {
                kept.push(next);
            } else {
                last[1] = last[1].max(next[1]);
            }
        }
        Self(kept)
    }

    /// The right end.
    pub fn end(&self) -> f64 {
        self.0.last().map_or(0.0, |last| last[1])
    }

    /// How much is drawn, in millimetres of the piece.
    pub fn long(&self) -> f64 {
        self.0.iter().map(|[from, to]| to - from).sum()
    }

    /// Paper between the stretches, in millimetres of the sheet.
    pub fn breaks(&self) -> f64 {
        self.0.iter().skip(1).map(|_| BREAK).sum()
    }
}

/// Puts places of the cut on the sheet.
#[derive(Clone, Debug)]
pub(super) struct Ruler {
    pub left: f64,
    pub top: f64,
    /// Millimetres of the sheet for one of the piece.
    pub factor: f64,
    pub stretches: Stretches,
    /// What lies at `top`.
    pub front: f64,
}

impl Ruler {
    /// Across the sheet.
    pub fn across(&self, x: f64) -> f64 {
        let mut edge = self.left;
        let mut before: Option<f64> = None;
        for [from, to] in &self.stretches.0 {
            if let Some(end) = before {
                if x < *from {
                    return edge + BREAK * ((x - end) / (from - end)).max(0.0);
                }
                edge += BREAK;
            }
            if x <= *to {
                return edge + (x - from) * self.factor;
            }
            edge += (to - from) * self.factor;
            before = Some(*to);
        }
        edge + (x - self.stretches.end()) * self.factor
    }

    /// Down the sheet.
    pub fn down(&self, y: f64) -> f64 {
        self.top + (y - self.front) * self.factor
    }

    /// A place.
    pub fn put(&self, p: Point) -> Point {
        at(self.across(p.x), self.down(p.y))
    }

    /// The right end on the sheet.
    pub fn end(&self) -> f64 {
        self.across(self.stretches.end())
    }

    /// The break lines, with the paper that covers what they leave out; `reach` says from where to
    /// where on the sheet a break at a place of the cut runs.
    pub fn breaks(&self, reach: impl Fn(f64) -> [f64; 2]) -> Vec<Node> {
        let mut nodes = Vec::new();
        for pair in self.stretches.0.windows(2) {
            let [top, bottom] = reach(f64::midpoint(pair[0][1], pair[1][0]));
            let left = self.across(pair[0][1]);
            let (a, b) = (zigzag(left, top, bottom), zigzag(left + BREAK, top, bottom));
            nodes.push(covered(&a, &b));
            nodes.push(stroke(Path::lines([a, b]), Pen::Fine));
        }
        let [top, bottom] = reach(self.stretches.end());
        let end = zigzag(self.end(), top, bottom);
        let beyond: Vec<Point> = end
            .iter()
            .map(|p| at(self.end() + PAST * self.factor + 2.0, p.y))
            .collect();
        nodes.push(covered(&end, &beyond));
        nodes.push(stroke(Path::open(end), Pen::Fine));
        nodes
    }
}

/// How far parts are drawn past the right end, to be covered there, in millimetres of the piece.
pub(super) const PAST: f64 = 2.0;

fn covered(a: &[Point], b: &[Point]) -> Node {
    let ring = a.iter().chain(b.iter().rev()).copied().collect();
    area(Path::ring(ring), Fill::Flat(PAPER))
}

/// A break line: upright, with a kink half way.
fn zigzag(x: f64, top: f64, bottom: f64) -> Vec<Point> {
    let middle = f64::midpoint(top, bottom);
    let kink = ((bottom - top) * 0.12).min(2.2);
    vec![
        at(x, top),
        at(x, middle - kink),
        at(x - 1.0, middle - kink * 0.4),
        at(x + 1.0, middle + kink * 0.4),
        at(x, middle + kink),
        at(x, bottom),
    ]
}
