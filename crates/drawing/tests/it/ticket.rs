//! The narrow sheet of the ticket: legible at its place, fewer dimensions, the whole twin.

use drawing::{Drawing, Ink, Look, Sheet, back_view, elevation, section};
use roxmltree::Document;

use crate::{jobs, number, pictures};

/// Height of the lowest digit over the size it is set at, measured in the lettering's font file by
/// the ticket's own test.
const DIGIT: f64 = 0.668;
/// Least height of a digit on a ticket, in millimetres: our own target.
const LEAST: f64 = 3.3;

fn drawn(case: jobs::Case<'_>, look: &Look<'_>) -> [Drawing; 3] {
    let (job, sizes) = jobs::sized(case);
    [elevation, section, back_view]
        .map(|draw| draw(&job, &sizes, look).expect("every case can be drawn"))
}

#[test]
fn digits_are_3_3_mm_high_where_the_ticket_prints_them() {
    for case in jobs::ALL {
        for drawing in drawn(case, &Look::ticket(&pictures, Ink::Colour)) {
            let tree = Document::parse(&drawing.svg).expect("well formed");
            let root = tree.root_element();
            // Printed as wide as the sheet is.
            let wide = format!("{}mm", Sheet::Ticket.width());
            assert_eq!(root.attribute("width"), Some(wide.as_str()), "{}", case.0);
            let usual = number(root, "font-size");
            let texts = tree
                .descendants()
                .filter(|n| n.has_tag_name(("http://www.w3.org/2000/svg", "text")));
            for text in texts {
                let own = number(text, "font-size");
                let size = if own.is_nan() { usual } else { own };
                assert!(
                    size * DIGIT >= LEAST,
                    "{}: {:?} of {size} mm",
                    case.0,
                    text.text()
                );
            }
        }
    }
}

/// Level texts stay on the sheet; letters are taken as 0.45 of their size wide, less than most are.
#[test]
fn level_texts_end_on_the_sheet() {
    for case in jobs::ALL {
        for look in [
            Look::page(&pictures, Ink::Colour),
            Look::ticket(&pictures, Ink::Colour),
        ] {
            for drawing in drawn(case, &look) {
                let tree = Document::parse(&drawing.svg).expect("well formed");
                let texts = tree.descendants().filter(|n| n.tag_name().name() == "text");
                for text in texts.filter(|n| n.attribute("transform").is_none()) {
                    let said = text.text().unwrap_or_default();
                    let long = said.chars().map(|_| 0.45 * 5.0).sum::<f64>();
                    let x = number(text, "x");
                    let (from, to) = match text.attribute("text-anchor") {
                        Some("middle") => (x - long / 2.0, x + long / 2.0),
                        Some("end") => (x - long, x),
                        _ => (x, x + long),
                    };
                    let wide = look.sheet.width();
                    assert!(
                        from >= 0.0 && to <= wide,
                        "{}: {said:?} from {from} to {to}",
                        case.0
                    );
                }
            }
        }
    }
}

#[test]
fn the_twin_keeps_every_dimension_the_narrow_sheet_leaves_out() {
    for case in jobs::ALL {
        let page = drawn(case, &Look::page(&pictures, Ink::Colour));
        let ticket = drawn(case, &Look::ticket(&pictures, Ink::Colour));
        for (page, ticket) in page.iter().zip(&ticket) {
            for line in page.twin.iter().filter(|line| line.what != "Note") {
                assert!(ticket.twin.contains(line), "{}: no {line:?}", case.0);
            }
            let lettering = |drawing: &Drawing| drawing.svg.matches("<text").count();
            assert!(
                lettering(ticket) <= lettering(page),
                "{}: {}",
                case.0,
                ticket.title
            );
        }
    }
}

/// Strainer bars lie behind the backing, strips behind the frame they are glued to.
#[test]
fn strainers_and_strips_stand_where_they_are() {
    for (case, kind) in [
        (jobs::SINK, sizing::LayerKind::Strainer),
        (jobs::TRIPLE, sizing::LayerKind::BuildUp),
    ] {
        let (job, sizes) = jobs::sized(case);
        let found = sizes
            .members
            .iter()
            .filter_map(|member| member.stack.as_ref());
        let layers: Vec<_> = found.flat_map(|stack| &stack.layers).collect();
        let place = layers.iter().position(|layer| layer.what == kind);
        let place = place.unwrap_or_else(|| panic!("{}: no {kind:?}", case.0));
        let look = Look::ticket(&pictures, Ink::Colour);
        let cut = section(&job, &sizes, &look).expect("drawn");
        let tree = Document::parse(&cut.svg).expect("well formed");
        let key = (place + 1).to_string();
        let mut texts = tree.descendants().filter(|n| n.tag_name().name() == "text");
        assert!(
            texts.any(|n| n.text() == Some(key.as_str())),
            "{}: no {key}",
            case.0
        );
    }
}
