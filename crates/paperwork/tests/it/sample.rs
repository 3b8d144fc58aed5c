//! An invented double-mat job, worded as a caller would word it.

use drawing::{DrawingError, Ink, Look};
use sizing::{Sizes, derive};
use trade::{Catalogue, Job, Settings};

use paperwork::{
    Caution, CutPart, Drawing, Drawings, Layer, Legs, Mark, MatCut, Severity, Stack, Stamp, Step,
    StepCaution, Ticket,
};

/// A watercolour in a double mat: one of everything a ticket can say.
///
/// Its drawings are those of another double mat.
pub fn ticket() -> Ticket {
    let (job, sizes) = worked("fern");
    let drawn = drawings(&job, &sizes);
    Ticket {
        shop: "Three Gables Framing".into(),
        order: "2417".into(),
        revision: 3,
        made: Stamp {
            year: 2026,
            month: 11,
            day: 25,
            hour: 9,
            minute: 40,
        },
        date: "25 Nov 2026".into(),
        title: "Low Water, Étaples".into(),
        artist: "I. Renard".into(),
        medium: "watercolour on rag paper".into(),
        customer: "Mrs Ołena Ashby".into(),
        due: "Fri 4 Dec 2026".into(),
        bin: "C 14".into(),
        taken_by: "Jo".into(),
        level: "Conservation: rag boards, ultraviolet glass, hinged with paste".into(),
        unit: "in".into(),
        elevation: drawing(
            drawn.elevation.svg,
            "The framed piece from the front, 20 1/2 by 24 1/4 in outside.",
        ),
        back_view: drawing(
            drawn.back_view.svg,
            "The top mat from the back, mirrored: window 12 3/8 by 15 5/8 in.",
        ),
        section: drawing(
            drawn.section.svg,
            "Section front to back: glass, two mats, art, mount, backing in the rabbet.",
        ),
        parts: parts(),
        legs: legs(),
        stack: stack(),
        mat_cuts: mat_cuts(),
        attachment: attachment(),
        hardware: hardware(),
        instructions: "Customer keeps the old backing label: pocket on the dust cover.".into(),
        steps: steps(),
        cautions: cautions(),
        full_tables: "the cut list of order 2417".into(),
    }
}

fn attachment() -> Vec<String> {
    vec![
        "Two T hinges at the top edge, 2 in in from the corners, kozo paper and wheat paste. \
         Art hangs free at the sides and bottom. 30 min under blotter and weight."
            .into(),
    ]
}

fn hardware() -> Vec<Mark> {
    vec![
        mark(
            "Rings",
            "7 3/4 in down from the top edge, both sides, 15 1/2 in apart",
        ),
        mark(
            "Wire",
            "rise 3 1/4 in at centre; cut 25 in; 9.2 lb, rated 40 lb",
        ),
    ]
}

fn drawing(svg: String, alt: &str) -> Drawing {
    Drawing {
        svg,
        alt: alt.into(),
    }
}

fn mark(what: &str, place: &str) -> Mark {
    Mark {
        what: what.into(),
        place: place.into(),
    }
}

fn parts() -> Vec<CutPart> {
    let exact = Some("18 41/128 × 22 9/128");
    let glass = "Ultraviolet 2.5 mm, coating inward";
    [
        (
            "Top mat",
            "Oyster 4-ply rag",
            "sheet 2",
            "18 3/8",
            "22 1/8",
            None,
        ),
        (
            "Under mat",
            "Slate 4-ply rag",
            "remnant R 31",
            "18 1/8",
            "21 7/8",
            None,
        ),
        (
            "Mount",
            "White 4-ply rag",
            "sheet 5",
            "18 3/8",
            "22 1/8",
            None,
        ),
        ("Glass", glass, "lite 7", "18 5/16", "22 1/16", exact),
        (
            "Backing",
            "Fluted plastic 4 mm",
            "sheet 9",
            "18 5/16",
            "22 1/16",
            exact,
        ),
    ]
    .into_iter()
    .map(|(part, material, from, width, height, exact)| CutPart {
        part: part.into(),
        count: 1,
        material: material.into(),
        from: from.into(),
        width: width.into(),
        height: height.into(),
        exact: exact.map(Into::into),
    })
    .collect()
}

fn legs() -> Vec<Legs> {
    [
        ("sides", "21 3/4", "22 1/4", "24 1/4"),
        ("top and bottom", "18", "18 1/2", "20 1/2"),
    ]
    .into_iter()
    .map(|(pair, short, rabbet, long_point)| Legs {
        member: "Ash 1 1/4 in, stick 12".into(),
        pair: pair.into(),
        count: 2,
        short: short.into(),
        rabbet: rabbet.into(),
        long_point: long_point.into(),
        mitre: "45°".into(),
        tilt: "0°".into(),
    })
    .collect()
}

fn stack() -> Stack {
    let layers = [
        ("Glass, coating inward", "2.5 mm", "0.098"),
        ("Top mat, Oyster", "0.062", "0.160"),
        ("Under mat, Slate", "0.062", "0.222"),
        ("Art on hinges", "0.020", "0.242"),
        ("Mount", "0.062", "0.304"),
        ("Backing", "4 mm", "0.461"),
    ];
    Stack {
        layers: layers
            .into_iter()
            .map(|(layer, thickness, running)| Layer {
                layer: layer.into(),
                thickness: thickness.into(),
                running: running.into(),
            })
            .collect(),
        slack: "Rabbet 9/16 − package 0.461 = 0.101 in slack for points".into(),
    }
}

fn mat_cuts() -> Vec<MatCut> {
    [
        ("Top mat", "left", "3", "3 1/2", "3"),
        ("Top mat", "top", "3", "3", "3"),
        ("Top mat", "right", "3", "3", "3 1/2"),
        ("Top mat", "bottom", "3 1/2", "3", "3"),
        ("Under mat", "left", "3 1/4", "3 3/4", "3 1/4"),
        ("Under mat", "top", "3 1/4", "3 1/4", "3 1/4"),
        ("Under mat", "right", "3 1/4", "3 1/4", "3 3/4"),
        ("Under mat", "bottom", "3 3/4", "3 1/4", "3 1/4"),
    ]
    .into_iter()
    .zip(1..)
    .map(|((opening, side, guide, start, stop), order)| MatCut {
        opening: opening.into(),
        order,
        side: side.into(),
        guide: guide.into(),
        start: start.into(),
        stop: stop.into(),
        overcut: "1/16".into(),
        bevel: "45°".into(),
    })
    .collect()
}

fn steps() -> Vec<Step> {
    let blade = "blade uncovered only while it cuts; hand clear of the line";
    let lite = "cut edges are sharp: gloves and eye protection";
    let paste = "paste must be dry before glass goes near it";
    [
        ("Check ticket against art, boards, moulding", "", 3, None),
        (
            "Chop four rails from stick 12",
            "rabbet 22 1/4, 18 1/2",
            6,
            None,
        ),
        ("Join, diagonals within 1/16; touch up", "", 11, None),
        (
            "Size boards; cut top window",
            "12 3/8 × 15 5/8",
            9,
            Some(blade),
        ),
        (
            "Tape under mat behind; cut its window",
            "11 7/8 × 15 1/8",
            5,
            None,
        ),
        ("Cut glass and backing", "18 5/16 × 22 1/16", 6, Some(lite)),
        (
            "Hinge at the top edge, two T hinges",
            "2 in in",
            12,
            Some(paste),
        ),
        ("Close mats; check reveal", "1/4 all round", 2, None),
        ("Clean glass, inside first; no ammonia", "", 5, None),
        ("Lay up; inspect upright; tape edges", "", 9, None),
        ("Line rabbet; points every 5 in", "", 6, None),
        ("Dust cover, rings, wire, bumpers", "7 3/4 down", 9, None),
        ("Record label, photograph, wrap", "", 9, None),
    ]
    .into_iter()
    .map(|(step, numbers, minutes, caution)| Step {
        step: step.into(),
        numbers: numbers.into(),
        minutes,
        caution: caution.map(|words: &str| StepCaution {
            severity: Severity::Mind,
            words: words.into(),
        }),
    })
    .collect()
}

fn cautions() -> Vec<Caution> {
    vec![
        Caution {
            severity: Severity::Stop,
            what: "The under mat could drop past the lip.".into(),
            how_much: "It is 1/8 in smaller each way than the top mat; the lip holds 1/4.".into(),
            why: "Its edge would show.".into(),
            cure: "Tape it to the top mat before its window is cut.".into(),
        },
        Caution {
            severity: Severity::Mind,
            what: "The glass has 3/32 in of play at each side.".into(),
            how_much: String::new(),
            why: "Pushed to one side it rests on a thin lip.".into(),
            cure: "Centre it before the points go in.".into(),
        },
    ]
}

pub fn pictures(name: &str) -> Option<drawing::Picture> {
    demo::picture(name).map(|bytes| drawing::Picture {
        mime: "image/svg+xml",
        bytes,
    })
}

/// A job of the invented shop, with all its sizes.
pub fn worked(name: &str) -> (Job, Sizes) {
    let demo = demo::job(name).unwrap_or_else(|| panic!("the shop has no job {name}"));
    let job = Job::read(demo.toml.as_bytes()).unwrap_or_else(|faults| panic!("{name}: {faults:?}"));
    let shop = Settings::defaults(job.units);
    let sizes = derive(&job, &Catalogue::starter(), &shop);
    let sizes = sizes.unwrap_or_else(|faults| panic!("{name}: {faults:?}"));
    (job, sizes)
}

/// The drawings of a job, as its ticket prints them.
pub fn drawings(job: &Job, sizes: &Sizes) -> Drawings {
    let look = Look::ticket(&pictures, Ink::Colour);
    let drawn = |drawing: Result<_, DrawingError>| drawing.expect("a piece with extent");
    Drawings {
        elevation: drawn(drawing::elevation(job, sizes, &look)),
        section: drawn(drawing::section(job, sizes, &look)),
        back_view: drawn(drawing::back_view(job, sizes, &look)),
    }
}
