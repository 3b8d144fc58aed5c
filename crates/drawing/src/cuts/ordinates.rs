//! Running measurements beside an edge, and signs in a row: spread so that none hides another.

use crate::cuts::block::{CAPITALS, size_of, width_of};
use crate::scene::{Anchor, Face, Node, Path, Pen, Point, Text, at, stroke};

/// A place along an edge and what stands there.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Mark {
    /// Along the edge, in millimetres of the sheet.
    pub place: f64,
    pub words: String,
    /// Longer cuts are marked first where there is no room for all.
    pub weight: f64,
}

/// From one running measurement to the next, at least.
pub(crate) const GAP: f64 = 6.6;
/// From the edge to the lettering.
const AWAY: f64 = 5.0;

/// Places moved apart to at least `gap`, in order, between `low` and `high`; as near to where they
/// were as going once up and once down finds. None where they do not fit.
pub(crate) fn spread(places: &[f64], gap: f64, low: f64, high: f64) -> Option<Vec<f64>> {
    let mut out: Vec<f64> = places.to_vec();
    // Runs that collide share their middle.
    let mut runs: Vec<(f64, usize)> = Vec::new();
    for place in places {
        runs.push((*place, 1));
        while let [.., (a, m), (b, n)] = runs[..] {
            let half = |count: usize| (approx(count) - 1.0) * gap / 2.0;
            if b - half(n) - (a + half(m)) >= gap {
                break;
            }
            let middle = (a * approx(m) + b * approx(n)) / approx(m + n);
            runs.truncate(runs.len() - 2);
            runs.push((middle, m + n));
        }
    }
    let mut index = 0;
    for (middle, count) in runs {
        for k in 0..count {
            out[index] = middle + (approx(k) - (approx(count) - 1.0) / 2.0) * gap;
            index += 1;
        }
    }
    let mut least = low;
    for place in &mut out {
        *place = place.max(least);
        least = *place + gap;
    }
    let mut most = high;
    for place in out.iter_mut().rev() {
        *place = place.min(most);
        most = *place - gap;
    }
    (out.first().is_none_or(|first| *first >= low - 1e-9)).then_some(out)
}

#[allow(clippy::cast_precision_loss, reason = "counts of marks on one sheet")]
const fn approx(count: usize) -> f64 {
    count as f64
}

/// The marks that fit between two ends: the weightiest, one of each wording and place, in order.
pub(crate) fn chosen(mut marks: Vec<Mark>, low: f64, high: f64) -> Vec<Mark> {
    marks.sort_by(|a, b| b.weight.total_cmp(&a.weight));
    let mut kept: Vec<Mark> = Vec::new();
    for mark in marks {
        let twice = kept
            .iter()
            .any(|other| other.words == mark.words && (other.place - mark.place).abs() < 1e-6);
        if !twice && approx(kept.len()) * GAP <= high - low {
            kept.push(mark);
        }
    }
    kept.sort_by(|a, b| a.place.total_cmp(&b.place));
    kept
}

/// How far the lettering of marks reaches from its edge.
pub(crate) fn reach(marks: &[Mark], face: Face) -> f64 {
    marks
        .iter()
        .map(|mark| width_of(&mark.words, face))
        .fold(0.0, f64::max)
        + AWAY
        + 1.0
}

/// Running measurements below an edge at `edge`, reading upwards.
pub(crate) fn below(marks: &[Mark], face: Face, edge: f64, [low, high]: [f64; 2]) -> Vec<Node> {
    let places: Vec<f64> = marks.iter().map(|mark| mark.place).collect();
    let spread = spread(&places, GAP, low, high).unwrap_or(places);
    let mut nodes = Vec::new();
    for (mark, x) in marks.iter().zip(spread) {
        nodes.push(stroke(
            Path::open(vec![
                at(mark.place, edge + 0.8),
                at(mark.place, edge + 1.8),
                at(x, edge + AWAY - 1.4),
                at(x, edge + AWAY - 0.6),
            ]),
            Pen::Dimension,
        ));
        let place = at(x + size_of(face) * CAPITALS / 2.0, edge + AWAY);
        nodes.push(lettered(place, &mark.words, face, true));
    }
    nodes
}

/// Running measurements left of an edge at `edge`, reading across.
pub(crate) fn beside(marks: &[Mark], face: Face, edge: f64, [low, high]: [f64; 2]) -> Vec<Node> {
    let places: Vec<f64> = marks.iter().map(|mark| mark.place).collect();
    let spread = spread(&places, GAP, low, high).unwrap_or(places);
    let mut nodes = Vec::new();
    for (mark, y) in marks.iter().zip(spread) {
        nodes.push(stroke(
            Path::open(vec![
                at(edge - 0.8, mark.place),
                at(edge - 1.8, mark.place),
                at(edge - AWAY + 1.4, y),
                at(edge - AWAY + 0.6, y),
            ]),
            Pen::Dimension,
        ));
        let place = at(edge - AWAY, y + size_of(face) * CAPITALS / 2.0);
        nodes.push(lettered(place, &mark.words, face, false));
    }
    nodes
}

fn lettered(place: Point, words: &str, face: Face, upright: bool) -> Node {
    Node::Text(Text {
        at: place,
        words: words.to_owned(),
        anchor: Anchor::End,
        face,
        upright,
        halo: false,
    })
}
