//! Tickets of the invented shop's jobs, with the drawings they are printed with.

use demo::JOBS;
use measure::{Length, Toward};
use paperwork::{Letterhead, Paper, Stamp, Ticket, ticket_of, ticket_pdf};
use sizing::{Cuts, Sizes, Takes};
use trade::Job;

use crate::lettering::digit_height;
use crate::margins::edges_are_white;
use crate::reader::Print;
use crate::sample::{drawings, worked};

fn ticket(job: &Job, sizes: &Sizes) -> Ticket {
    let head = Letterhead {
        shop: demo::SHOP.name.into(),
        made: Stamp {
            year: 2026,
            month: 11,
            day: 25,
            hour: 9,
            minute: 40,
        },
        date: "25 Nov 2026".into(),
        fallback_order: "none".into(),
    };
    ticket_of(job, sizes, drawings(job, sizes), head)
}

/// One frame, one or two mats with one window between them: what a shop makes most days.
fn is_ordinary(sizes: &Sizes) -> bool {
    let windows = sizes.mats.iter().map(|mat| mat.windows.len());
    sizes.members.len() == 1
        && (1..=2).contains(&sizes.mats.len())
        && windows.max() == Some(1)
        && !sizes.double_sided
        && sizes.walls.is_none()
}

#[test]
fn every_job_prints_soundly_and_says_every_cut_size_on_both_papers() {
    let mut ordinary = 0;
    for demo in JOBS {
        let (job, sizes) = worked(demo.name);
        let ticket = ticket(&job, &sizes);
        // The shorter paper always; the other where the number of pages is promised.
        let papers = if is_ordinary(&sizes) {
            &[Paper::Letter, Paper::A4][..]
        } else {
            &[Paper::Letter]
        };
        for paper in papers {
            let print = Print::of(ticket_pdf(&ticket, *paper).unwrap());
            let pages = sound(demo.name, &print, &sizes);
            assert!(pages <= 4, "{}: {pages} pages on {paper:?}", demo.name);
            if is_ordinary(&sizes) {
                assert!(pages <= 2, "{}: {pages} pages on {paper:?}", demo.name);
                ordinary += 1;
            }
        }
    }
    assert!(ordinary >= 20, "only {ordinary} tickets were ordinary");
}

/// Holds one print to what every ticket keeps; returns how many pages it has.
fn sound(name: &str, print: &Print, sizes: &Sizes) -> usize {
    let said = print.read_by("qpdf", &["--check", "{}"]);
    assert!(
        said.contains("No syntax or stream encoding errors found"),
        "{name}: {said}"
    );
    let text = print.read_by("pdftotext", &["-raw", "-enc", "UTF-8", "{}", "-"]);
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for size in cut_sizes(sizes) {
        assert!(text.contains(&size), "{name}: no {size} in {text}");
    }
    assert!(!text.contains("more letters in the job"), "{name}: {text}");
    crate::bars::bars_are_true(print);
    let pages = print.pages();
    // The drawings' lettering too: they are printed as wide as their sheet, 88 mm.
    for (font, size) in pages.iter().flat_map(|page| &page.lettering) {
        let digits = size * digit_height(font) * 25.4 / 72.0;
        assert!(digits >= 3.3, "{name}: {digits:.3} mm: {font} at {size} pt");
    }
    pages.len()
}

/// Every size a tool is set by, as the shop's tape says it.
fn cut_sizes(sizes: &Sizes) -> Vec<String> {
    let tape = sizes.tape();
    let say = |length: Length, toward| {
        let text = length.on_tape(tape, toward).text;
        text.trim_end_matches(tape.unit().symbol())
            .trim_end()
            .to_owned()
    };
    let mut all = Vec::new();
    for line in &sizes.bill {
        if let Takes::Sheet { size, .. } = &line.takes {
            let glazing = line.part.starts_with("Glazing");
            let toward = if glazing {
                Toward::Down
            } else {
                Toward::Nearest
            };
            all.push(format!(
                "{} × {}",
                say(size.width, toward),
                say(size.height, toward)
            ));
        }
    }
    for leg in sizes.members.iter().flat_map(|member| &member.legs.each) {
        all.extend(
            [leg.short, leg.rabbet, leg.long].map(|length| say(length.value, Toward::Nearest)),
        );
    }
    for setup in &sizes.setups {
        match &setup.cuts {
            Cuts::Straight(cuts) => {
                for cut in cuts {
                    all.extend(
                        [cut.guide, cut.start, cut.stop]
                            .map(|length| say(length.value, Toward::Nearest)),
                    );
                }
            }
            Cuts::LaidOut { left, top, .. } => {
                all.extend([*left, *top].map(|length| say(length, Toward::Nearest)));
            }
        }
    }
    all
}

#[test]
fn no_ink_leaves_the_paper() {
    for (name, paper) in [
        ("heron", Paper::A4),
        ("heron", Paper::Letter),
        ("weir", Paper::Letter),
        ("four-seasons", Paper::A4),
    ] {
        let (job, sizes) = worked(name);
        let pdf = ticket_pdf(&ticket(&job, &sizes), paper).unwrap();
        edges_are_white(&Print::of(pdf));
    }
}

/// The numbers in the section are rows of the list beside it.
#[test]
fn the_sections_keys_are_rows_of_the_list() {
    for demo in JOBS {
        let (job, sizes) = worked(demo.name);
        let ticket = ticket(&job, &sizes);
        let rows = ticket.stack.layers.len();
        let keys: Vec<usize> = ticket
            .section
            .svg
            .split("</text>")
            .filter_map(|text| text.rsplit('>').next()?.parse().ok())
            .collect();
        assert!(
            keys.iter().all(|key| (1..=rows).contains(key)),
            "{}: {keys:?} of {rows}",
            demo.name
        );
        if rows > 0 {
            assert!(keys.len() * 2 >= rows, "{}: {keys:?} of {rows}", demo.name);
        }
    }
}
