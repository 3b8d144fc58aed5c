//! The bars to measure, in the content stream itself.

use paperwork::{Paper, ticket_pdf};

use crate::reader::{Drawn, Print};
use crate::sample;

/// 100 mm in points of 1/72 in, where 1 in = 25.4 mm.
const HUNDRED_MM: f64 = 100.0 / 25.4 * 72.0;
/// 4 in in points of 1/72 in.
const FOUR_IN: f64 = 4.0 * 72.0;
const TOLERANCE: f64 = 0.01;

#[test]
fn every_page_has_both_bars_along_both_axes_to_a_hundredth_of_a_point() {
    for paper in [Paper::A4, Paper::Letter] {
        bars_are_true(&Print::of(ticket_pdf(&sample::ticket(), paper).unwrap()));
    }
}

/// Looks for each bar once along each axis of every page.
pub fn bars_are_true(print: &Print) {
    for (number, page) in print.pages().iter().enumerate() {
        for bar in [HUNDRED_MM, FOUR_IN] {
            let across = along(page, bar, |dx, dy| (dx, dy));
            assert_eq!(across, 1, "across, {bar} pt, page {}", number + 1);
            let upright = along(page, bar, |dx, dy| (dy, dx));
            assert_eq!(upright, 1, "upright, {bar} pt, page {}", number + 1);
        }
    }
}

/// How many lines run `length` along an axis and nothing across it.
fn along(page: &Drawn, length: f64, turn: impl Fn(f64, f64) -> (f64, f64)) -> usize {
    let runs = page.lines.iter().map(|line| line.p1 - line.p0);
    runs.map(|run| turn(run.x, run.y))
        .filter(|(run, drift)| (run.abs() - length).abs() <= TOLERANCE && drift.abs() <= TOLERANCE)
        .count()
}
