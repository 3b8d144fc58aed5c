//! The ordinary double-mat ticket: a sound file, the right paper, everything said.

use paperwork::{Paper, ticket_pdf};

use crate::reader::Print;
use crate::sample;

fn printed(paper: Paper) -> Print {
    Print::of(ticket_pdf(&sample::ticket(), paper).unwrap())
}

#[test]
fn a_strict_reader_finds_no_fault() {
    for paper in [Paper::A4, Paper::Letter] {
        let said = printed(paper).read_by("qpdf", &["--check", "{}"]);
        assert!(
            said.contains("No syntax or stream encoding errors found"),
            "{said}"
        );
    }
}

#[test]
fn it_is_two_pages_of_the_paper_asked_for_and_tagged() {
    for (paper, size) in [
        (Paper::A4, "595.276 x 841.89 pts (A4)"),
        (Paper::Letter, "612 x 792 pts (letter)"),
    ] {
        let said = printed(paper).read_by("pdfinfo", &["{}"]);
        let line = |label: &str| -> &str {
            let found = said.lines().find_map(|line| line.strip_prefix(label));
            found
                .unwrap_or_else(|| panic!("pdfinfo says nothing of {label} in {said}"))
                .trim()
        };
        assert_eq!(line("Tagged:"), "yes");
        assert_eq!(line("Page size:"), size);
        assert_eq!(line("Pages:"), "2");
        assert_eq!(line("Title:"), "Ticket 2417, revision 3");
        assert_eq!(line("JavaScript:"), "no");
    }
}

#[test]
fn it_claims_both_standards_and_says_its_language() {
    let print = printed(Paper::A4);
    let metadata = print.read_by("pdfinfo", &["-meta", "{}"]);
    assert!(
        metadata.contains("<pdfuaid:part>1</pdfuaid:part>"),
        "{metadata}"
    );
    assert!(
        metadata.contains("<pdfaid:part>2</pdfaid:part>"),
        "{metadata}"
    );
    assert!(
        metadata.contains("<pdfaid:conformance>A</pdfaid:conformance>"),
        "{metadata}"
    );
    let document = print.document();
    let language = document.catalog().unwrap().get(b"Lang").unwrap();
    assert_eq!(language.as_str().unwrap(), b"en");
}

#[test]
fn the_viewer_is_asked_to_print_at_actual_size() {
    let document = printed(Paper::Letter).document();
    let wishes = document
        .catalog()
        .unwrap()
        .get(b"ViewerPreferences")
        .unwrap();
    let wishes = wishes.as_dict().unwrap();
    assert_eq!(
        wishes.get(b"PrintScaling").unwrap().as_name().unwrap(),
        b"None"
    );
    assert!(wishes.get(b"DisplayDocTitle").unwrap().as_bool().unwrap());
}

#[test]
fn each_drawing_has_its_words() {
    let structure = printed(Paper::A4).read_by("pdfinfo", &["-struct-text", "{}"]);
    assert_eq!(structure.matches("Figure").count(), 3, "{structure}");
    let document = printed(Paper::A4).document();
    let words: Vec<Vec<u8>> = document
        .objects
        .values()
        .filter_map(|object| object.as_dict().ok()?.get(b"Alt").ok()?.as_str().ok())
        .map(<[u8]>::to_vec)
        .collect();
    assert_eq!(words.len(), 3);
    assert!(
        words
            .iter()
            .any(|alt| String::from_utf8_lossy(alt).contains("mirrored"))
    );
}

#[test]
fn everything_said_can_be_read_back_with_fractions_in_order() {
    let text = printed(Paper::A4).text();
    for said in [
        "Three Gables Framing",
        "Low Water, Étaples",
        "Mrs Ołena Ashby",
        "Fri 4 Dec 2026",
        "C 14",
        "Conservation: rag boards",
        "BACK VIEW — mirrored",
        "18 3/8 × 22 1/8 in",
        "18 5/16 × 22 1/16 in",
        "exactly 18 41/128 × 22 9/128 in",
        "21 3/4",
        "24 1/4",
        "45°, 0°",
        "Top mat · overcut 1/16, bevel 45°",
        "Depth, in",
        "Rabbet 9/16 − package 0.461 = 0.101 in slack for points",
        "Two T hinges at the top edge",
        "7 3/4 in down from the top edge",
        "Steps, 92 min",
        "11 7/8 × 15 1/8",
        "Stop",
        "Mind",
        "Cure:",
        "measure me; if wrong, print at actual size",
        "page 1 of 2",
        "page 2 of 2",
    ] {
        assert!(
            text.contains(said),
            "“{said}” cannot be read back from: {text}"
        );
    }
    assert_eq!(
        text.matches("Order 2417 · revision 3 · 25 Nov 2026")
            .count(),
        2,
        "{text}"
    );
}

#[test]
fn the_same_ticket_is_always_the_same_bytes() {
    let once = ticket_pdf(&sample::ticket(), Paper::A4).unwrap();
    let other = ticket_pdf(&sample::ticket(), Paper::Letter).unwrap();
    let again = ticket_pdf(&sample::ticket(), Paper::A4).unwrap();
    assert!(once == again, "two prints of one ticket differ");
    assert!(once != other, "A4 and Letter came out alike");
}

#[test]
fn an_almost_empty_ticket_still_prints() {
    let mut ticket = sample::ticket();
    for text in [
        &mut ticket.shop,
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
    ] {
        text.clear();
    }
    ticket.parts.clear();
    ticket.legs.clear();
    ticket.mat_cuts.clear();
    ticket.attachment.clear();
    ticket.hardware.clear();
    ticket.steps.clear();
    ticket.cautions.clear();
    ticket.stack = paperwork::Stack::default();
    let text = Print::of(ticket_pdf(&ticket, Paper::A4).unwrap()).text();
    assert!(text.contains("page 1 of 1"), "{text}");
}
