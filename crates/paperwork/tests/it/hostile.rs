//! Whatever is typed stays text and stays on the paper.

use paperwork::{Layer, Paper, Ticket, ticket_pdf};

use crate::margins::edges_are_white;
use crate::reader::Print;
use crate::sample;

#[test]
fn markup_is_printed_not_obeyed() {
    check("<script>alert(1)</script>", "<script>alert(1)</script>");
    check("#set page(width: 9pt)", "#set page(width: 9pt)");
    check("$ #panic() $ `raw` *b* _i_", "$ #panic() $ `raw` *b* _i_");
    check(
        r#"" \" ' \u{0} ]} <label> @cite //"#,
        r#"" \" ' \u{0} ]} <label> @cite //"#,
    );
}

#[test]
fn control_and_steering_characters_leave_the_words() {
    check("one\u{0}\u{7}two\r\nthree\u{1b}[31m", "one two three [31m");
    check("left\u{202e}thgir\u{2066}", "leftthgir");
}

#[test]
fn letters_without_a_drawing_become_boxes_and_the_sheet_says_so() {
    let text = check("שלום 春 🖼 end", "☐☐☐☐ ☐ ☐ end");
    assert!(
        text.contains("☐ stands for a letter this sheet cannot draw"),
        "{text}"
    );
    let plain = Print::of(ticket_pdf(&sample::ticket(), Paper::A4).unwrap()).text();
    assert!(!plain.contains('☐'), "{plain}");
}

#[test]
fn greek_cyrillic_and_composed_letters_are_drawn() {
    check("Δημήτρης Пётр Žofie", "Δημήτρης Пётр Žofie");
    check("⅝ → ✓ ≥", "⅝ → ✓ ≥");
}

#[test]
fn ten_thousand_letters_are_shortened_and_counted() {
    let long = "W".repeat(10_000);
    let text = check(&long, "more letters in the job)");
    assert!(text.contains("(9880 more letters in the job)"), "{text}");
    let rows = vec![
        Layer {
            layer: long.clone(),
            thickness: long.clone(),
            running: long
        };
        30
    ];
    let mut ticket = sample::ticket();
    ticket.stack.layers = rows;
    edges_are_white(&Print::of(ticket_pdf(&ticket, Paper::Letter).unwrap()));
}

#[test]
fn a_drawing_may_hold_hostile_words_but_fetch_nothing() {
    let mut ticket = sample::ticket();
    let drawing = |inside: &str| {
        format!("<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 200 200'>{inside}</svg>")
    };
    ticket.elevation.svg = drawing("<text y='50'>a &lt;b&gt; &amp; 春\u{202e}</text>");
    let text = Print::of(ticket_pdf(&ticket, Paper::A4).unwrap()).text();
    assert!(text.contains("a <b> & ☐"), "{text}");

    ticket.elevation.svg = drawing("<image href='file:///etc/hostname' width='9' height='9'/>");
    let said = ticket_pdf(&ticket, Paper::A4).unwrap_err().to_string();
    assert!(
        said.starts_with("The elevation could not be read as SVG:"),
        "{said}"
    );
}

/// Puts `typed` wherever a person types, prints, and looks for `shown` in what is read back.
fn check(typed: &str, shown: &str) -> String {
    let print = Print::of(ticket_pdf(&filled(typed), Paper::A4).unwrap());
    edges_are_white(&print);
    let size = print.read_by("pdfinfo", &["{}"]);
    assert!(size.contains("595.276 x 841.89 pts (A4)"), "{size}");
    let text = print.text().replace('\u{200b}', "");
    let found = text.matches(&squeezed(shown)).count();
    let squeezed_text = squeezed(&text);
    let found = found.max(squeezed_text.matches(&squeezed(shown)).count());
    assert!(
        found >= 5,
        "“{shown}” is read back {found} times from: {text}"
    );
    text
}

/// Lines break anywhere in a narrow column, so spaces are not compared.
fn squeezed(text: &str) -> String {
    text.split_whitespace().collect()
}

fn filled(typed: &str) -> Ticket {
    let mut ticket = sample::ticket();
    let typed = || typed.to_owned();
    for text in head(&mut ticket) {
        *text = typed();
    }
    let part = &mut ticket.parts[0];
    (part.part, part.material, part.width) = (typed(), typed(), typed());
    let legs = &mut ticket.legs[0];
    (legs.member, legs.pair, legs.mitre) = (typed(), typed(), typed());
    let cut = &mut ticket.mat_cuts[0];
    (cut.opening, cut.side, cut.guide) = (typed(), typed(), typed());
    let layer = &mut ticket.stack.layers[0];
    (layer.layer, layer.thickness) = (typed(), typed());
    ticket.stack.slack = typed();
    ticket.attachment[0] = typed();
    ticket.hardware[0].place = typed();
    let step = &mut ticket.steps[0];
    (step.step, step.numbers) = (typed(), typed());
    let caution = &mut ticket.cautions[0];
    (caution.what, caution.cure) = (typed(), typed());
    ticket
}

fn head(ticket: &mut Ticket) -> [&mut String; 15] {
    [
        &mut ticket.shop,
        &mut ticket.order,
        &mut ticket.date,
        &mut ticket.title,
        &mut ticket.artist,
        &mut ticket.medium,
        &mut ticket.customer,
        &mut ticket.due,
        &mut ticket.bin,
        &mut ticket.taken_by,
        &mut ticket.level,
        &mut ticket.unit,
        &mut ticket.instructions,
        &mut ticket.full_tables,
        &mut ticket.elevation.alt,
    ]
}
