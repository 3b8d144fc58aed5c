//! Outlines and lines.

use std::f64::consts::TAU;
use std::fmt;

use super::chance::Chance;
use super::pen::short;

/// Across and down from the sheet's left and top.
pub(crate) type Point = (f64, f64);

/// An outline or a line, as SVG writes it, to the nearest unit.
#[derive(Clone, Default)]
pub(crate) struct Path {
    text: String,
    /// Where the pen stands; the next place is written from here.
    at: Point,
}

impl fmt::Display for Path {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text)
    }
}

impl Path {
    /// Straight from point to point.
    pub fn straight(points: &[Point]) -> Self {
        let mut path = Self::default();
        for (place, point) in points.iter().enumerate() {
            path.say(if place == 0 { "M" } else { "l" }, &[*point]);
        }
        path
    }

    /// Straight from point to point and back to the first.
    pub fn corners(points: &[Point]) -> Self {
        Self::straight(points).closed()
    }

    /// A flowing line through the points.
    pub fn flowing(points: &[Point]) -> Self {
        let mut path = Self::default();
        let Some(first) = points.first() else {
            return path;
        };
        path.say("M", &[*first]);
        path.flow(points, |place| {
            let last = points.len() - 1;
            points[place.clamp(1, last + 1) - 1]
        });
        path
    }

    /// A flowing outline through the points.
    pub fn rounded(points: &[Point]) -> Self {
        let mut path = Self::default();
        let Some(first) = points.first() else {
            return path;
        };
        path.say("M", &[*first]);
        let mut round = points.to_vec();
        round.push(*first);
        path.flow(&round, |place| {
            points[(place + points.len() - 1) % points.len()]
        });
        path.closed()
    }

    /// The curves between neighbours; `at(place + 1)` is the point at `place`, ends included.
    fn flow(&mut self, points: &[Point], at: impl Fn(usize) -> Point) {
        for place in 0..points.len() - 1 {
            let (before, from, to, after) =
                (at(place), at(place + 1), at(place + 2), at(place + 3));
            let leave = (
                from.0 + (to.0 - before.0) / 6.0,
                from.1 + (to.1 - before.1) / 6.0,
            );
            let arrive = (
                to.0 - (after.0 - from.0) / 6.0,
                to.1 - (after.1 - from.1) / 6.0,
            );
            self.say("c", &[leave, arrive, to]);
        }
    }

    /// This path and another one.
    pub fn and(mut self, other: &Self) -> Self {
        self.text.push_str(&other.text);
        self.at = other.at;
        self
    }

    /// Back to where it began.
    pub fn closed(mut self) -> Self {
        self.text.push('Z');
        self
    }

    /// A rectangle.
    pub fn rect((x, y): Point, (width, height): Point) -> Self {
        Self::corners(&[
            (x, y),
            (x + width, y),
            (x + width, y + height),
            (x, y + height),
        ])
    }

    /// A circle.
    pub fn circle(centre: Point, radius: f64) -> Self {
        Self::rounded(&ring(centre, radius, 12, 0.0))
    }

    /// A leaf from foot to tip, as wide as `width` at its middle.
    pub fn leaf(foot: Point, tip: Point, width: f64) -> Self {
        let (along, down) = (tip.0 - foot.0, tip.1 - foot.1);
        let long = along.hypot(down).max(1.0);
        let (side, up) = (-down / long * width, along / long * width);
        let middle = (foot.0 + along * 0.45, foot.1 + down * 0.45);
        let mut path = Self::default();
        path.say("M", &[foot]);
        path.say("q", &[(middle.0 + side, middle.1 + up), tip]);
        path.say("q", &[(middle.0 - side, middle.1 - up), foot]);
        path.closed()
    }

    /// One bent stroke.
    pub fn stroke(from: Point, by: Point, to: Point) -> Self {
        let mut path = Self::default();
        path.say("M", &[from]);
        path.say("q", &[by, to]);
        path
    }

    /// Cross stitches on a grid of ones, each in its square.
    pub fn crosses(places: &[(i32, i32)]) -> Self {
        let mut path = Self::default();
        for (column, row) in places {
            let words = format!("M{column}.1 {row}.1l.8.8m0-.8-.8.8");
            path.text.push_str(&words);
        }
        path
    }

    /// Points, each as wide as the line that draws them.
    pub fn points(places: &[Point]) -> Self {
        let mut path = Self::default();
        for place in places {
            path.say("M", &[*place]);
            path.text.push_str("h0");
        }
        path
    }

    /// Writes a verb and its places: `M` from the sheet's corner, others from where the pen is.
    fn say(&mut self, verb: &str, points: &[Point]) {
        self.text.push_str(verb);
        let start = if verb == "M" { (0.0, 0.0) } else { self.at };
        let mut first = true;
        for (x, y) in points {
            let place = (x.round(), y.round());
            for number in [place.0 - start.0, place.1 - start.1] {
                let text = short(number);
                if !first && !text.starts_with('-') {
                    self.text.push(' ');
                }
                first = false;
                self.text.push_str(&text);
            }
            self.at = place;
        }
    }
}

/// Points written as `across down, across down`.
pub(crate) fn trace(points: &str) -> Vec<Point> {
    let number = |text: Option<&str>| -> f64 {
        text.and_then(|text| text.parse().ok())
            .expect("an outline is written in pairs of numbers")
    };
    points
        .split(',')
        .map(|pair| {
            let mut pair = pair.split_whitespace();
            (number(pair.next()), number(pair.next()))
        })
        .collect()
}

/// `count` points on a circle, the first `turn` radians from the right.
pub(crate) fn ring((x, y): Point, radius: f64, count: u32, turn: f64) -> Vec<Point> {
    (0..count)
        .map(|place| {
            let angle = turn + TAU * f64::from(place) / f64::from(count);
            (x + radius * angle.cos(), y + radius * angle.sin())
        })
        .collect()
}

/// A point some way from another one.
pub(crate) fn from(centre: Point, radius: f64, angle: f64) -> Point {
    (
        centre.0 + radius * angle.cos(),
        centre.1 + radius * angle.sin(),
    )
}

/// Part of the way from one number to another.
pub(crate) fn mix(low: f64, high: f64, part: f64) -> f64 {
    low + (high - low) * part
}

/// A skyline from left to right: `2^halvings + 1` points about `level`, rough by `reach`.
pub(crate) fn skyline(
    (left, right): Point,
    level: f64,
    reach: f64,
    halvings: u32,
    chance: &mut Chance,
) -> Vec<Point> {
    let mut heights = vec![level + chance.about(reach), level + chance.about(reach)];
    let mut rough = reach;
    for _ in 0..halvings {
        let mut finer = Vec::with_capacity(heights.len() * 2);
        for pair in heights.windows(2) {
            finer.push(pair[0]);
            finer.push(f64::midpoint(pair[0], pair[1]) + chance.about(rough));
        }
        finer.extend(heights.last());
        heights = finer;
        rough *= 0.52;
    }
    let steps = f64::from(1_u32 << halvings);
    (0..=(1_u32 << halvings))
        .zip(heights)
        .map(|(place, height)| (mix(left, right, f64::from(place) / steps), height))
        .collect()
}

/// A skyline closed along the bottom, to be filled.
pub(crate) fn land(points: &[Point], bottom: f64) -> Path {
    let mut closed = points.to_vec();
    if let (Some(first), Some(last)) = (points.first(), points.last()) {
        closed.push((last.0, bottom));
        closed.push((first.0, bottom));
    }
    Path::corners(&closed)
}

/// A flowing shore closed along the bottom, to be filled.
pub(crate) fn hill(points: &[Point], bottom: f64) -> Path {
    let flowing = Path::flowing(points);
    let (Some(first), Some(last)) = (points.first(), points.last()) else {
        return flowing;
    };
    let mut path = flowing;
    path.say("l", &[(last.0, bottom)]);
    path.say("l", &[(first.0, bottom)]);
    path.closed()
}

/// A lump: a circle pushed in and out.
pub(crate) fn lump(centre: Point, radius: f64, rough: f64, chance: &mut Chance) -> Vec<Point> {
    let waves: Vec<(f64, f64, f64)> = [2.0, 3.0, 5.0, 7.0]
        .iter()
        .map(|turns| {
            let reach = chance.between(0.4, 1.0) * rough / turns;
            (*turns, reach, chance.between(0.0, TAU))
        })
        .collect();
    (0..28_u32)
        .map(|place| {
            let angle = TAU * f64::from(place) / 28.0;
            let push: f64 = waves
                .iter()
                .map(|(turns, reach, phase)| reach * (turns * angle + phase).sin())
                .sum();
            from(centre, radius * (1.0 + push), angle)
        })
        .collect()
}

/// `#rrggbb` between two colours.
pub(crate) fn tint(low: &str, high: &str, part: f64) -> String {
    let part = part.clamp(0.0, 1.0);
    let shade = |ink: &str, at: usize| {
        let pair = ink.get(at..at + 2).unwrap_or("00");
        f64::from(u8::from_str_radix(pair, 16).unwrap_or_default())
    };
    let mut text = String::from("#");
    for at in [1, 3, 5] {
        let value = mix(shade(low, at), shade(high, at), part);
        text.push_str(&hex(value));
    }
    text
}

/// Two figures of a shade from 0 to 255.
fn hex(value: f64) -> String {
    (0..=u8::MAX)
        .rev()
        .find(|step| f64::from(*step) <= value + 0.5)
        .map_or_else(|| "00".to_owned(), |step| format!("{step:02x}"))
}
