//! Huge jobs: every row printed, or the sheet says how many are elsewhere and where.

use paperwork::{MatCut, Paper, ROWS_PRINTED, ticket_pdf};

use crate::reader::Print;
use crate::sample;

#[test]
fn ten_thousand_openings_say_where_the_rest_are() {
    let mut ticket = sample::ticket();
    ticket.mat_cuts = cuts(10_000);
    let text = Print::of(ticket_pdf(&ticket, Paper::A4).unwrap()).text();
    let left = 10_000 - ROWS_PRINTED;
    let note = format!(
        "{ROWS_PRINTED} of 10000 rows are on this sheet. The other {left} rows are in the cut list of order 2417."
    );
    assert!(text.contains(&note), "the sheet does not say: {note}");
    assert!(text.contains(&format!("Opening {ROWS_PRINTED} ")));
    assert!(!text.contains(&format!("Opening {} ", ROWS_PRINTED + 1)));
}

#[test]
fn a_table_as_long_as_is_printed_is_complete_and_says_nothing() {
    let mut ticket = sample::ticket();
    ticket.mat_cuts = cuts(90);
    let text = Print::of(ticket_pdf(&ticket, Paper::Letter).unwrap()).text();
    for opening in 1..=90 {
        assert!(
            text.contains(&format!("Opening {opening} ")),
            "opening {opening} is missing"
        );
    }
    assert!(!text.contains("rows are on this sheet"));
}

fn cuts(openings: u32) -> Vec<MatCut> {
    let pattern = sample::ticket().mat_cuts.remove(0);
    (1..=openings)
        .map(|order| MatCut {
            opening: format!("Opening {order} of one"),
            order,
            ..pattern.clone()
        })
        .collect()
}
