//! Each caution is called for by something, and by nothing else.

use sizing::derive;
use trade::{Catalogue, Job, Settings};

use super::{Caution, of};

const PLAIN: &str = "rabbet = 1\nunits = \"in\"\n[hardware]\nhanger = \"none\"\n[[art]]\nwidth = \"8\"\nheight = \"10\"\n";

fn cautions(text: &str) -> Vec<Caution> {
    let job = Job::read(text.as_bytes()).unwrap_or_else(|faults| panic!("{faults:#?}\n{text}"));
    let (catalogue, shop) = (Catalogue::starter(), Settings::defaults(job.units));
    let sizes = derive(&job, &catalogue, &shop).unwrap_or_else(|faults| panic!("{faults:#?}"));
    of(&job, &sizes)
}

fn framed(rest: &str) -> String {
    format!("{PLAIN}{rest}\n[[frame]]\nmoulding = \"cove-gilt-2\"\n")
}

#[test]
fn a_plain_frame_calls_only_for_care_with_its_wood() {
    assert_eq!(cautions(&framed("")), [Caution::Dust]);
}

#[test]
fn each_caution_has_its_trigger() {
    let hung = |text: String| text.replace("hanger = \"none\"", "hanger = \"wire\"");
    for (caution, text) in [
        (Caution::Load, hung(framed(""))),
        (Caution::Ladder, hung(framed(""))),
        (Caution::OverPeople, framed("[place]\nabove = \"bed\"")),
        (Caution::Earthquake, framed("[place]\nearthquakes = true")),
        (Caution::Public, framed("[place]\npublic = true")),
        (Caution::Stairs, framed("[place]\nstairs = true")),
        (Caution::Damp, framed("[place]\nbathroom = true")),
        (Caution::Heat, framed("[place]\nabove = \"fire\"")),
        (
            Caution::Mould,
            framed("[[art.marks]]\nkind = \"mould\"\nx = \"1\"\ny = \"1\""),
        ),
        (
            Caution::Arsenic,
            framed("condition = \"emerald green border\""),
        ),
        (
            Caution::OldPaint,
            framed("condition = \"in its gilded frame\""),
        ),
        (Caution::OldPaint, framed("[fit]\nrabbet = \"9 x 11\"")),
        (Caution::Mould, framed("condition = \"mould at the foot\"")),
        (
            Caution::Solvent,
            framed("[attachment]\nadhesive = \"spray adhesive\""),
        ),
        (Caution::Bond, framed("[attachment]\nhold = \"dry-mount\"")),
        (Caution::Glass, framed("[[glazing]]\nsheet = \"glass-2.5\"")),
        (
            Caution::Cleaning,
            framed("[[glazing]]\nsheet = \"acrylic-3\""),
        ),
        (Caution::Blade, framed("[mount]\nboard = \"mat-4-museum\"")),
        (
            Caution::Lift,
            framed("").replace("width = \"8\"", "width = \"60\""),
        ),
    ] {
        let found = cautions(&text);
        assert!(
            found.contains(&caution),
            "{caution:?} of {found:?}:\n{text}"
        );
    }
}

#[test]
fn what_is_gone_calls_for_nothing() {
    assert_eq!(
        cautions(&framed("condition = \"no mould, varnish removed\"")),
        [Caution::Dust]
    );
}

#[test]
fn every_caution_speaks_and_names_where_it_is_from() {
    for caution in Caution::ALL {
        assert!(!caution.title().is_empty());
        assert!(caution.text().len() > 40 && caution.text().ends_with('.'));
        assert!(!caution.source().is_empty());
    }
    let mut sorted = Caution::ALL;
    sorted.sort_unstable();
    assert_eq!(sorted, Caution::ALL, "listed as they are ordered");
}
