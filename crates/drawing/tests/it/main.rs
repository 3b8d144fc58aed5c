//! Drawings of every kind of piece, held to the laws a drawing keeps.

mod cuts;
mod jobs;
mod ticket;
mod twins;

use std::collections::HashSet;

use drawing::{
    Drawing, DrawingError, Ink, Look, Picture, back_view, elevation, section, twin_text,
};
use roxmltree::{Document, Node};
use sizing::Sizes;
use trade::Job;

const HARBOUR: &[u8] = b"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 8 10\"><rect width=\"8\" height=\"10\"/></svg>";

fn pictures(name: &str) -> Option<Picture> {
    (name == "harbour.svg").then(|| Picture {
        mime: "image/svg+xml",
        bytes: HARBOUR.to_vec(),
    })
}

fn look(ink: Ink) -> Look<'static> {
    Look::page(&pictures, ink)
}

fn all_three(job: &Job, sizes: &Sizes, ink: Ink) -> [Drawing; 3] {
    let look = look(ink);
    [
        elevation(job, sizes, &look),
        section(job, sizes, &look),
        back_view(job, sizes, &look),
    ]
    .map(|drawing| drawing.expect("every case can be drawn"))
}

/// Runs `check` on every drawing of every case.
fn each(check: impl Fn(&str, &Sizes, &Drawing, &Document<'_>)) {
    for case in jobs::ALL {
        let (job, sizes) = jobs::sized(case);
        for ink in [Ink::Colour, Ink::OneInk] {
            for drawing in all_three(&job, &sizes, ink) {
                let tree =
                    Document::parse(&drawing.svg).unwrap_or_else(|e| panic!("{}: {e}", case.0));
                check(case.0, &sizes, &drawing, &tree);
            }
        }
    }
}

fn number(node: Node<'_, '_>, name: &str) -> f64 {
    node.attribute(name)
        .and_then(|text| text.parse().ok())
        .unwrap_or(f64::NAN)
}

#[test]
fn drawings_are_svg_without_scripts_or_fetches() {
    each(|name, _, drawing, tree| {
        let root = tree.root_element();
        assert_eq!(root.attribute("role"), Some("img"), "{name}");
        let named = root
            .attribute("aria-labelledby")
            .expect("named")
            .split(' ')
            .count();
        assert_eq!(named, 2, "{name}");
        assert_eq!(
            root.first_element_child().and_then(|n| n.text()),
            Some(drawing.title.as_str())
        );
        for node in tree.descendants().filter(Node::is_element) {
            assert!(
                !matches!(
                    node.tag_name().name(),
                    "script" | "foreignObject" | "style" | "use" | "a"
                ),
                "{name}"
            );
            for attribute in node.attributes() {
                let value = attribute.value();
                assert!(
                    !attribute.name().starts_with("on"),
                    "{name}: {}",
                    attribute.name()
                );
                assert!(
                    !value.contains("javascript:")
                        && !value.contains("http:")
                        && !value.contains("https:"),
                    "{name}: {value}"
                );
                if attribute.name() == "href" {
                    assert!(value.starts_with("data:image/"), "{name}: {value}");
                }
            }
        }
    });
}

#[test]
fn every_number_is_finite_and_every_box_has_extent() {
    each(|name, _, _, tree| {
        for node in tree.descendants().filter(Node::is_element) {
            for attribute in node
                .attributes()
                .filter(|a| !matches!(a.name(), "href" | "id"))
            {
                let value = attribute.value();
                assert!(
                    !value.contains("NaN") && !value.contains("inf"),
                    "{name}: {} {value}",
                    attribute.name()
                );
            }
            for side in ["width", "height"] {
                if let Some(text) = node.attribute(side) {
                    let long: f64 = text.trim_end_matches("mm").parse().expect("a number");
                    assert!(
                        long > 0.0,
                        "{name}: {} {side} {text}",
                        node.tag_name().name()
                    );
                }
            }
        }
    });
}

/// 12 px where the drawing is shown 320 px wide.
#[test]
fn letters_are_legible_on_a_phone() {
    each(|name, _, _, tree| {
        let root = tree.root_element();
        let width: f64 = root
            .attribute("viewBox")
            .and_then(|b| b.split(' ').nth(2)?.parse().ok())
            .expect("a width");
        let usual = number(root, "font-size");
        let mut texts = 0;
        for text in tree
            .descendants()
            .filter(|n| n.has_tag_name(("http://www.w3.org/2000/svg", "text")))
        {
            let size = text
                .attribute("font-size")
                .map_or(usual, |size| size.parse().expect("a size"));
            assert!(size / width * 320.0 >= 12.0, "{name}: {size} of {width}");
            texts += 1;
        }
        assert!(texts > 2, "{name}: it carries lettering");
    });
}

#[test]
fn text_lies_within_the_sheet() {
    each(|name, _, _, tree| {
        let view: Vec<f64> = tree
            .root_element()
            .attribute("viewBox")
            .expect("a box")
            .split(' ')
            .map(|n| n.parse().expect("a number"))
            .collect();
        for text in tree.descendants().filter(|n| n.tag_name().name() == "text") {
            let (x, y) = (number(text, "x"), number(text, "y"));
            assert!(
                (0.0..=view[2]).contains(&x) && (0.0..=view[3]).contains(&y),
                "{name}: {:?} at {x} {y}",
                text.text()
            );
        }
    });
}

#[test]
fn ids_are_unique_even_side_by_side() {
    let mut seen = HashSet::new();
    for case in jobs::ALL {
        let (job, sizes) = jobs::sized(case);
        for drawing in all_three(&job, &sizes, Ink::OneInk) {
            let tree = Document::parse(&drawing.svg).expect("well formed");
            for id in tree.descendants().filter_map(|node| node.attribute("id")) {
                assert!(seen.insert(id.to_owned()), "{}: {id} stands twice", case.0);
            }
            for node in tree.descendants() {
                for attribute in node.attributes().filter(|a| a.value().starts_with("url(#")) {
                    let id = attribute
                        .value()
                        .trim_start_matches("url(#")
                        .trim_end_matches(')');
                    assert!(seen.contains(id), "{}: {id} leads nowhere", case.0);
                }
            }
        }
    }
}

#[test]
fn the_same_piece_is_drawn_the_same() {
    for case in jobs::ALL {
        let (job, sizes) = jobs::sized(case);
        let (again, sizes_again) = jobs::sized(case);
        assert_eq!(
            all_three(&job, &sizes, Ink::Colour),
            all_three(&again, &sizes_again, Ink::Colour),
            "{}",
            case.0
        );
    }
}

#[test]
fn one_ink_is_grey() {
    for case in jobs::ALL {
        let (job, sizes) = jobs::sized(case);
        for drawing in all_three(&job, &sizes, Ink::OneInk) {
            let tree = Document::parse(&drawing.svg).expect("well formed");
            let colours = tree
                .descendants()
                .flat_map(|node| [node.attribute("fill"), node.attribute("stroke")])
                .flatten()
                .filter(|colour| colour.len() == 7);
            for colour in colours {
                assert!(
                    colour[1..3] == colour[3..5] && colour[3..5] == colour[5..7],
                    "{}: {colour}",
                    case.0
                );
            }
        }
    }
}

fn twin<'d>(drawing: &'d Drawing, what: &str) -> &'d str {
    let line = drawing.twin.iter().find(|line| line.what == what);
    &line
        .unwrap_or_else(|| panic!("no line {what:?} in {}", twin_text(drawing)))
        .value
}

/// The first ring of a part's outline, as its box.
fn extent(tree: &Document<'_>, part: &str) -> [f64; 4] {
    let mut all = [
        f64::INFINITY,
        f64::INFINITY,
        f64::NEG_INFINITY,
        f64::NEG_INFINITY,
    ];
    let groups = tree
        .descendants()
        .filter(|node| node.attribute("data-part") == Some(part));
    let paths = groups
        .flat_map(|group| group.descendants())
        .filter_map(|node| node.attribute("d"));
    for path in paths {
        let numbers: Vec<f64> = path
            .split(|c: char| "MLZ ".contains(c))
            .filter(|text| !text.is_empty())
            .map(|text| text.parse().expect("a number"))
            .collect();
        for pair in numbers.chunks(2) {
            all = [
                all[0].min(pair[0]),
                all[1].min(pair[1]),
                all[2].max(pair[0]),
                all[3].max(pair[1]),
            ];
        }
    }
    all
}

/// Width to height on the sheet as in the sizes, and both at the scale printed.
#[test]
fn elevations_and_backs_are_to_scale() {
    for case in jobs::ALL {
        let (job, sizes) = jobs::sized(case);
        let [front, _, back] = all_three(&job, &sizes, Ink::Colour);
        for drawing in [front, back] {
            let tree = Document::parse(&drawing.svg).expect("well formed");
            let [left, top, right, bottom] = extent(&tree, "frame.1");
            let (sheet, piece) = drawing.scale.split_once(" : ").expect("a scale");
            let factor =
                sheet.parse::<f64>().expect("a number") / piece.parse::<f64>().expect("a number");
            let (width, height) = (right - left, bottom - top);
            let outside = sizes.outside.size();
            assert!(
                (height - outside.height.approx_mm() * factor).abs() < 0.01,
                "{}: {}",
                case.0,
                drawing.title
            );
            // A hexagon standing on a side is wider across its corners than across its flats.
            let across = if sizes.sides == 6 {
                2.0 / 3.0_f64.sqrt()
            } else {
                1.0
            };
            assert!(
                (width - outside.width.approx_mm() * across * factor).abs() < 0.01,
                "{}: {}",
                case.0,
                drawing.title
            );
        }
    }
}

/// A layer is as thick on the sheet as in the sizes, at the scale printed.
#[test]
fn sections_are_to_scale() {
    for case in jobs::ALL {
        let (job, sizes) = jobs::sized(case);
        let [_, cut, _] = all_three(&job, &sizes, Ink::Colour);
        let tree = Document::parse(&cut.svg).expect("well formed");
        let (sheet, piece) = cut.scale.split_once(" : ").expect("a scale");
        let factor =
            sheet.parse::<f64>().expect("a number") / piece.parse::<f64>().expect("a number");
        let panes = sizes
            .glazing
            .iter()
            .enumerate()
            .map(|(i, pane)| (format!("glazing.{}", i + 1), pane.sheet.thickness));
        let mats = sizes
            .mats
            .iter()
            .enumerate()
            .map(|(i, mat)| (format!("mat.{}", i + 1), mat.sheet.thickness));
        let boards = sizes
            .backing
            .iter()
            .enumerate()
            .map(|(i, back)| (format!("backing.{}", i + 1), back.thickness));
        for (part, thickness) in panes.chain(mats).chain(boards) {
            let group = tree
                .descendants()
                .find(|n| n.attribute("data-part") == Some(part.as_str()))
                .expect("a layer");
            let path = group
                .descendants()
                .find_map(|n| n.attribute("d"))
                .expect("its outline");
            let downs: Vec<f64> = path
                .trim_end_matches('Z')
                .split(['M', 'L'])
                .filter_map(|point| point.split_once(' ')?.1.parse().ok())
                .collect();
            let low = downs.iter().copied().fold(f64::INFINITY, f64::min);
            let high = downs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
            assert!(
                (high - low - thickness.approx_mm() * factor).abs() < 0.01,
                "{}: {part}",
                case.0
            );
        }
    }
}

#[test]
fn the_back_is_the_front_mirrored() {
    let (job, sizes) = jobs::sized(jobs::SHAPES);
    let [front, _, back] = all_three(&job, &sizes, Ink::Colour);
    let [front, back] =
        [&front, &back].map(|drawing| Document::parse(&drawing.svg).expect("well formed"));
    let texts: Vec<&str> = back
        .descendants()
        .filter(|n| n.tag_name().name() == "text")
        .filter_map(|n| n.text())
        .collect();
    assert_eq!(texts[0], "BACK VIEW — mirrored");
    assert!(back.descendants().all(|n| {
        n.attribute("transform")
            .is_none_or(|t| !t.contains("scale"))
    }));
    let middle = |tree: &Document<'_>, part: &str| extent(tree, part);
    let place = |tree: &Document<'_>, which: &str| {
        let part = format!("opening.{which}");
        let group = tree
            .descendants()
            .find(|n| n.attribute("data-part") == Some(part.as_str()))
            .expect("a number");
        number(
            group
                .descendants()
                .find(|n| n.tag_name().name() == "text")
                .expect("a text"),
            "x",
        )
    };
    assert!(place(&front, "1") < place(&front, "3"));
    assert!(place(&back, "1") > place(&back, "3"));
    assert!(middle(&back, "mat.1")[0] > 0.0);
}

#[test]
fn hostile_text_stays_text() {
    let (job, sizes) = jobs::sized(jobs::SHAPES);
    let mut job = job;
    let bad = "</title><script>alert(1)</script>\u{0}\u{202e}\" onload=\"x";
    job.art[0].title = Some(bad.to_owned());
    job.art[0].picture = Some("<img src=x>".to_owned());
    for drawing in all_three(&job, &sizes, Ink::Colour) {
        assert!(!drawing.svg.contains("<script"), "{}", drawing.title);
        assert!(!drawing.svg.contains("<img"), "{}", drawing.title);
        let tree = Document::parse(&drawing.svg).expect("well formed");
        let title = tree
            .root_element()
            .first_element_child()
            .and_then(|n| n.text())
            .expect("a title");
        assert!(title.contains("<script>alert(1)</script>"), "{title}");
    }
}

#[test]
fn pictures_are_carried_in_the_drawing_or_missed_aloud() {
    let (job, sizes) = jobs::sized(jobs::SINGLE);
    let with = elevation(&job, &sizes, &look(Ink::Colour)).expect("drawn");
    assert!(with.svg.contains("href=\"data:image/svg+xml;base64,PHN2Zy"));
    let none = |_: &str| None;
    let without = elevation(&job, &sizes, &Look::page(&none, Ink::Colour)).expect("drawn");
    assert!(!without.svg.contains("<image"));
    assert!(twin_text(&without).contains("harbour.svg"));
    let tiff = |_: &str| {
        Some(Picture {
            mime: "image/tiff",
            bytes: vec![0],
        })
    };
    let unshown = elevation(&job, &sizes, &Look::page(&tiff, Ink::Colour)).expect("drawn");
    assert!(!unshown.svg.contains("image/tiff;base64"));
    assert!(twin_text(&unshown).contains("save it as PNG, JPEG or SVG"));
}

#[test]
fn parts_can_be_found() {
    let (job, sizes) = jobs::sized(jobs::TRIPLE);
    let [front, cut, _] = all_three(&job, &sizes, Ink::Colour);
    let parts = |drawing: &Drawing| -> HashSet<String> {
        let tree = Document::parse(&drawing.svg).expect("well formed");
        tree.descendants()
            .filter_map(|n| n.attribute("data-part"))
            .map(str::to_owned)
            .collect()
    };
    for part in [
        "frame.1", "frame.2", "frame.3", "mat.1", "mat.2", "mat.3", "art.1",
    ] {
        assert!(parts(&front).contains(part), "{part} in the elevation");
        assert!(parts(&cut).contains(part), "{part} in the section");
    }
    for part in ["glazing.1", "mount", "backing.1", "lift", "package"] {
        assert!(parts(&cut).contains(part), "{part} in the section");
    }
}

#[test]
fn what_is_not_known_is_said() {
    let (job, sizes) = jobs::sized(jobs::HEXAGON);
    let cut = section(&job, &sizes, &look(Ink::Colour)).expect("drawn");
    assert!(twin_text(&cut).contains("rabbet depth and height are not known"));
    assert_eq!(twin(&cut, "Frame, rabbet depth"), "not known");
}

#[test]
fn a_piece_without_extent_is_refused() {
    let (name, text) = jobs::SINGLE;
    let small = text.replace("width = \"8\"", "width = \"1/8\"");
    let (job, sizes) = jobs::sized((name, &small));
    assert!(!sizes.can_be_drawn());
    for drawn in [elevation, section, back_view] {
        assert_eq!(
            drawn(&job, &sizes, &look(Ink::Colour)),
            Err(DrawingError::NoSize)
        );
    }
    let (other, _) = jobs::sized(jobs::TRIPLE);
    let (_, sizes) = jobs::sized(jobs::SINGLE);
    assert_eq!(
        section(&other, &sizes, &look(Ink::Colour)),
        Err(DrawingError::OtherJob)
    );
}
