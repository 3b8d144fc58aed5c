//! White paper round the edge: what a printer cannot reach.

use paperwork::{Paper, ticket_pdf};

use crate::reader::Print;
use crate::sample;

#[test]
fn six_millimetres_stay_white_on_both_papers() {
    for paper in [Paper::A4, Paper::Letter] {
        edges_are_white(&Print::of(ticket_pdf(&sample::ticket(), paper).unwrap()));
    }
}

/// Renders every page and looks at the outer 6 mm, and that there is ink inside.
pub fn edges_are_white(print: &Print) {
    // 6 mm at 100 dots an inch is 23.6 dots.
    const EDGE: usize = 23;
    for (number, (width, height, dots)) in print.pictures().into_iter().enumerate() {
        assert_eq!(dots.len(), width * height);
        let mut inked = 0;
        for (place, dot) in dots.iter().enumerate() {
            let (x, y) = (place % width, place / width);
            let outer = x < EDGE || y < EDGE || x >= width - EDGE || y >= height - EDGE;
            if *dot < 128 {
                inked += 1;
            }
            assert!(
                !outer || *dot == 255,
                "page {}: ink at {x}, {y}",
                number + 1
            );
        }
        assert!(inked > 1000, "page {} is blank", number + 1);
    }
}
