//! The numbers of the cuts: outside where the cut reaches the far edge, else on the cut.

use cutting::sheets::{Area, Way};

use super::{Led, Plate, Sign};
use crate::cuts::figures::{RADIUS, number_box, numbered};
use crate::cuts::ordinates::spread;
use crate::cuts::{CutStep, Reference};
use crate::scene::{Box2, Node, Path, Pen, Point, at, stroke};

/// From one circle to the next, at least.
const GAP: f64 = RADIUS * 2.0 + 0.6;

/// Where a cut meets the edge its number stands at.
#[derive(Clone, Copy)]
struct Outer {
    place: f64,
    number: usize,
}

impl<'a> Plate<'a> {
    pub(super) fn numbers(&mut self) -> Vec<Node> {
        let work = self.work;
        let (mut above, mut beside, mut inner) = (Vec::new(), Vec::new(), Vec::new());
        for step in &work.steps {
            match self.outer(step) {
                Some((Way::Upright, outer)) => above.push(outer),
                Some((Way::Level, outer)) => beside.push(outer),
                None => inner.push(step),
            }
        }
        let mut nodes = Vec::new();
        nodes.extend(self.row(above, Way::Upright, &mut inner));
        nodes.extend(self.row(beside, Way::Level, &mut inner));
        inner.sort_by_key(|step| step.number);
        for step in inner {
            if let Some(line) = step.line {
                nodes.extend(self.on_the_cut(step, line));
            }
        }
        nodes
    }

    /// Where a cut reaches the top or the right edge.
    fn outer(&self, step: &CutStep) -> Option<(Way, Outer)> {
        let usable = self.work.usable;
        let outer = |place: f64| Outer {
            place,
            number: step.number,
        };
        let Some(line) = step.line else {
            let strip = self.bounds(step.off.first()?.area);
            return Some(match step.edge {
                Reference::Left => (Way::Upright, outer(strip.right)),
                Reference::Right => (Way::Upright, outer(strip.left)),
                Reference::Bottom => (Way::Level, outer(strip.top)),
                Reference::Top => (Way::Level, outer(strip.bottom)),
            });
        };
        let middle = self.bounds(line).centre();
        match step.way {
            Way::Upright => (line.y + line.height == usable.y + usable.height)
                .then(|| (Way::Upright, outer(middle.x))),
            Way::Level => (line.x + line.width == usable.x + usable.width)
                .then(|| (Way::Level, outer(middle.y))),
        }
    }

    /// A row of numbers outside an edge; where it would be too long, all but the trims go inside.
    fn row(&mut self, mut outers: Vec<Outer>, way: Way, inner: &mut Vec<&'a CutStep>) -> Vec<Node> {
        outers.sort_by(|a, b| a.place.total_cmp(&b.place));
        let outline = self.outline;
        let (low, high) = match way {
            Way::Upright => (outline.left - 2.0, outline.right + RADIUS),
            Way::Level => (outline.top - RADIUS, outline.bottom),
        };
        let places = |outers: &[Outer]| outers.iter().map(|outer| outer.place).collect::<Vec<_>>();
        let mut row = spread(&places(&outers), GAP, low, high);
        if row.is_none() {
            let steps = &self.work.steps;
            let (trims, others): (Vec<Outer>, Vec<Outer>) = outers
                .into_iter()
                .partition(|outer| steps[outer.number - 1].line.is_none());
            inner.extend(others.iter().map(|outer| &steps[outer.number - 1]));
            outers = trims;
            row = spread(&places(&outers), GAP, low, high);
        }
        let row = row.unwrap_or_else(|| places(&outers));
        let mut nodes = Vec::new();
        for (outer, place) in outers.iter().zip(row) {
            let (centre, foot) = match way {
                Way::Upright => (
                    at(place, outline.top - RADIUS - 1.6),
                    at(outer.place, outline.top),
                ),
                Way::Level => (
                    at(outline.right + RADIUS + 1.6, place),
                    at(outline.right, outer.place),
                ),
            };
            nodes.push(stroke(Path::open(vec![foot, centre]), Pen::Fine));
            self.taken.take(number_box(centre, outer.number));
            nodes.extend(numbered(centre, outer.number));
        }
        nodes
    }

    /// A number on its cut, near its far end where that is free; led outside where none is, or
    /// where it would hide the cut.
    fn on_the_cut(&mut self, step: &CutStep, line: Area) -> Vec<Node> {
        let bounds = self.bounds(line);
        let long = bounds.width().max(bounds.height());
        let places = along(bounds, step.way);
        let free = places.into_iter().find(|place| {
            long > 2.2 * RADIUS && self.taken.is_free(number_box(*place, step.number))
        });
        let Some(centre) = free else {
            self.led.push(Led {
                dot: bounds.centre(),
                sign: Sign::Number(step.number),
            });
            return Vec::new();
        };
        self.taken.take(number_box(centre, step.number));
        numbered(centre, step.number)
    }
}

/// Places on a cut, its far end first, then its near end, then between.
fn along(line: Box2, way: Way) -> Vec<Point> {
    const SHARES: [f64; 9] = [0.0, 1.0, 0.15, 0.85, 0.3, 0.7, 0.5, 0.4, 0.6];
    let inset = RADIUS + 0.8;
    let middle = line.centre();
    let between = |low: f64, high: f64, share: f64| {
        if high - low < 2.0 * inset {
            f64::midpoint(low, high)
        } else {
            low + inset + (high - low - 2.0 * inset) * share
        }
    };
    SHARES
        .iter()
        .map(|share| match way {
            Way::Upright => at(middle.x, between(line.top, line.bottom, *share)),
            Way::Level => at(between(line.left, line.right, 1.0 - *share), middle.y),
        })
        .collect()
}
