//! What cannot be printed is refused in a sentence that names the cure.

use paperwork::{Paper, Stamp, Ticket, ticket_pdf};

use crate::sample;

#[test]
fn each_refusal_is_a_sentence() {
    check(
        |ticket| ticket.section.alt = "  ".into(),
        "The section has no words beside it: give it a text that says what it shows.",
    );
    check(
        |ticket| ticket.order = " ".into(),
        "The ticket has no order number: give it one, so that each page can carry it.",
    );
    check(
        |ticket| {
            ticket.made = Stamp {
                year: 2026,
                month: 2,
                day: 30,
                hour: 9,
                minute: 5,
            }
        },
        "2026-02-30 09:05 is not a time on the calendar: give a real date and a time of day.",
    );
    check(
        |ticket| ticket.back_view.svg = "<svg".into(),
        "The back view could not be read as SVG:",
    );
}

fn check(spoil: impl Fn(&mut Ticket), expected: &str) {
    let mut ticket = sample::ticket();
    spoil(&mut ticket);
    let said = ticket_pdf(&ticket, Paper::A4).unwrap_err().to_string();
    assert!(said.starts_with(expected), "said: {said}");
    assert!(said.ends_with('.'), "said: {said}");
}
