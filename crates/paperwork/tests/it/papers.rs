//! Label, card, nail map, hanging template and condition report, read back with outside readers.

use drawing::{Ink, Look, Sheet, WallNail, WallPiece, WallPlan, marked_art};
use measure::{Length, Tape, Unit};
use paperwork::{
    CardHead, ConditionHead, Drawing, LabelHead, LeafSize, Paper, RecordHead, RecordKey,
    SealedRecord, Stamp, TemplatePoint, WallHead, WallTemplate, card_of, condition_of,
    condition_pdf, label_of, leaf_pdf, nail_map_pdf, record_of, wall_template_pdf,
};
use trade::{ArtSide, Blemish, ConditionMark, Measured};

use crate::bars::bars_are_true;
use crate::margins::edges_are_white;
use crate::reader::Print;
use crate::sample::worked;

const MADE: Stamp = Stamp {
    year: 2026,
    month: 11,
    day: 25,
    hour: 9,
    minute: 40,
};

fn label(name: &str, size: LeafSize, on: Option<Paper>) -> (Print, SealedRecord) {
    let (job, sizes) = worked(name);
    let head = RecordHead {
        shop: demo::SHOP.name.into(),
        date: "2026-11-25".into(),
        fallback_order: "none".into(),
        without_customer: false,
    };
    let record = SealedRecord::seal(&record_of(&job, &sizes, &head), &RecordKey::of([7; 32]));
    let head = LabelHead {
        shop: demo::SHOP.name.into(),
        made: MADE,
        date: "2026-11-25".into(),
        fallback_order: "none".into(),
    };
    let label = label_of(&job, &sizes, &record, head);
    (Print::of(leaf_pdf(&label, size, on).unwrap()), record)
}

/// Reads all leaves; 4 is how it ends where one of them has no code, as the first of several has none.
const READ_CODES: &str = "zbarimg -q --raw -Sdisable -Sqrcode.enable leaf-*.png; \
     code=$?; [ $code = 0 ] || [ $code = 4 ]";

/// `zbarimg` reads every code off the rendered label at 300 dots an inch, and together they are the record.
#[test]
fn the_codes_of_every_size_are_read_back_and_hold() {
    for (size, on) in [
        (LeafSize::A6, None),
        (LeafSize::FourBySix, None),
        (LeafSize::A5, Some(Paper::A4)),
        (LeafSize::HalfLetter, Some(Paper::Letter)),
    ] {
        let (print, record) = label("heron", size, on);
        print.read_by("pdftoppm", &["-r", "300", "-png", "{}", "leaf"]);
        let seen = print.read_by("sh", &["-c", READ_CODES]);
        let read =
            SealedRecord::read(&seen).unwrap_or_else(|why| panic!("{size:?}: {why}\n{seen}"));
        assert!(read.holds(), "{size:?}");
        assert_eq!(read, record, "{size:?}");
    }
}

#[test]
fn the_label_says_what_it_is_and_not_whose() {
    let (print, record) = label("heron", LeafSize::HalfLetter, None);
    let text = print.text();
    for said in [
        "Heron, Gold Ground",
        "museum",
        "V-hinges of Japanese paper, torn with wheat starch paste",
        "Spray the cloth, never the piece",
        "advice, never a certificate",
        "times that weight",
        "Order 2026-442",
        &record.public()[..8],
    ] {
        assert!(text.contains(said), "no {said} in {text}");
    }
    assert!(
        !text.contains("Quillfeather"),
        "the customer's name stands on the label"
    );
    assert!(
        print
            .read_by("qpdf", &["--check", "{}"])
            .contains("No syntax or stream encoding errors")
    );
}

#[test]
fn every_care_card_is_one_side_on_the_larger_sizes() {
    for demo in demo::JOBS {
        let (job, sizes) = worked(demo.name);
        let head = CardHead {
            shop: demo::SHOP.name.into(),
            made: MADE,
            date: "2026-11-25".into(),
            fallback_order: "none".into(),
        };
        let card = card_of(&job, &sizes, &trade::Catalogue::starter(), head).unwrap();
        let print = Print::of(leaf_pdf(&card, LeafSize::HalfLetter, None).unwrap());
        assert_eq!(print.document().get_pages().len(), 1, "{}", demo.name);
        let text = print.text();
        assert!(text.contains("relative humidity"), "{}: {text}", demo.name);
        assert!(
            !text.contains("more letters in the job"),
            "{}: {text}",
            demo.name
        );
    }
}

fn plan() -> WallPlan {
    let piece = |name: &str, left: i64| WallPiece {
        name: name.into(),
        left: Length::inches(left),
        top: Length::inches(70),
        width: Length::inches(18),
        height: Length::inches(24),
        nails: [4, 14]
            .map(|from_left| WallNail {
                from_corner: Length::inches(left + from_left),
                above_floor: Length::inches(65) + Length::inch_fraction(3, 8),
            })
            .to_vec(),
    };
    WallPlan {
        title: "Hall".into(),
        width: Length::inches(120),
        height: Some(Length::inches(96)),
        pieces: vec![piece("Heron", 20), piece("Weir", 60)],
        unit: Unit::Inch,
        tape: Tape::ThirtySeconds,
    }
}

fn head() -> WallHead {
    WallHead {
        shop: demo::SHOP.name.into(),
        date: "2026-11-25".into(),
        made: MADE,
        cautions: vec![hanging::CAUTION.into()],
    }
}

#[test]
fn the_nail_map_says_every_nail() {
    let plan = plan();
    let drawn = drawing::wall(&plan, Ink::Colour, Sheet::Bench);
    let map = Drawing {
        alt: drawing::twin_text(&drawn),
        svg: drawn.svg,
    };
    for paper in [Paper::A4, Paper::Letter] {
        let print = Print::of(nail_map_pdf(&plan, &map, &head(), paper).unwrap());
        let text = print.text();
        for said in [
            "Nail map: Hall",
            "Heron",
            "65 3/8",
            "24",
            "34",
            "64",
            "74",
            "30",
            "never a certificate",
        ] {
            assert!(text.contains(said), "no {said} in {text}");
        }
        bars_are_true(&print);
        edges_are_white(&print);
    }
}

/// The two holes lie as far apart in the file as they do on the wall.
#[test]
fn the_template_is_true_tiled_and_asks_for_actual_size() {
    let template = WallTemplate {
        name: "1 Heron".into(),
        width: Length::mm(450),
        height: Length::mm(600),
        down: Length::mm(150),
        points: [50, 150]
            .map(|x| TemplatePoint {
                x: Length::mm(x),
                y: Length::mm(100),
                hole: true,
                words: "nail".into(),
            })
            .to_vec(),
        words: vec!["Taped together it must measure 450 mm.".into()],
    };
    for (paper, tiles) in [(Paper::A4, 3), (Paper::Letter, 3)] {
        let pdf =
            wall_template_pdf(std::slice::from_ref(&template), "Hall", &head(), paper).unwrap();
        let print = Print::of(pdf.clone());
        assert_eq!(print.document().get_pages().len(), 1 + tiles, "{paper:?}");
        bars_are_true(&print);
        edges_are_white(&print);
        assert!(print.text().contains("tile 1 of 3"));
        let catalog = print.document();
        let preferences = catalog
            .catalog()
            .unwrap()
            .get(b"ViewerPreferences")
            .unwrap();
        let (_, preferences) = catalog.dereference(preferences).unwrap();
        let scaling = preferences.as_dict().unwrap().get(b"PrintScaling").unwrap();
        assert_eq!(scaling.as_name().unwrap(), b"None");
        let arms = upright_arms(&print);
        let hundred = 100.0 / 25.4 * 72.0;
        assert_eq!(arms.len(), 2, "{arms:?}");
        assert!(
            ((arms[1] - arms[0]).abs() - hundred).abs() < 0.01,
            "{arms:?}"
        );
        let again =
            wall_template_pdf(std::slice::from_ref(&template), "Hall", &head(), paper).unwrap();
        assert_eq!(again, pdf, "the same bytes");
    }
}

/// Where the upright arms of the crosses stand, 12 mm long.
fn upright_arms(print: &Print) -> Vec<f64> {
    let arm = 12.0 / 25.4 * 72.0;
    print.pages()[1]
        .lines
        .iter()
        .filter(|line| {
            ((line.p1 - line.p0).y.abs() - arm).abs() < 0.01 && (line.p1 - line.p0).x.abs() < 0.01
        })
        .map(|line| line.p0.x)
        .collect()
}

#[test]
fn the_condition_report_numbers_its_marks_and_refuses_one_off_the_art() {
    let (mut job, sizes) = worked("fern");
    let mark = |side, x| ConditionMark {
        side,
        kind: Blemish::Mould,
        x: Measured(Length::inches(x)),
        y: Measured(Length::inches(1)),
        width: None,
        height: None,
        words: Some("grey, powdery".into()),
    };
    job.art[0].marks = vec![mark(ArtSide::Front, 1), mark(ArtSide::Back, 2)];
    let report = |job: &trade::Job| {
        let look = Look::ticket(&|_| None, Ink::OneInk);
        let pictures = [ArtSide::Front, ArtSide::Back]
            .map(|side| marked_art(&job.art[0], side, sizes.unit(), &look));
        let head = ConditionHead {
            shop: demo::SHOP.name.into(),
            made: MADE,
            date: "2026-11-25".into(),
            fallback_order: "none".into(),
        };
        condition_of(job, &sizes, 0, pictures, head)
    };
    let print = Print::of(condition_pdf(&report(&job).unwrap(), Paper::A4).unwrap());
    let text = print.text();
    for said in [
        "mould, front",
        "mould, back",
        "grey, powdery",
        "2 in from the left",
        "fitted mask",
    ] {
        assert!(text.contains(said), "no {said} in {text}");
    }
    bars_are_true(&print);
    edges_are_white(&print);
    job.art[0].marks[1].x = Measured(Length::inches(900));
    let said = report(&job).unwrap_err().to_string();
    assert_eq!(
        said,
        "Mark 2 lies off the art: its place is measured from the left and top edges, inside its size."
    );
}
