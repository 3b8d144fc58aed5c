//! Outlines against Shapely 2 (a Python library over GEOS) and closed formulas.
//!
//! Tolerances. Corners are rounded to the quantum, 1/16 000 mm, so straight shapes agree within a
//! thousandth of a millimetre, and their areas within half a quantum along the perimeter, here less
//! than 1 in 10⁶; curves are drawn as chords, 512 to a quarter turn, which leaves a
//! circle of 300 mm 0.0002 mm inside its arc and its area short by less than 2 in 10⁶.

use measure::{Length, Size};
use serde_json::{Value, json};
use sizing::Outline;
use trade::{Measured, Opening, Shape};

/// Chords to a quarter turn.
const STEPS: u32 = 512;
/// Largest distance between our grown outline and the reference, in millimetres.
const GAP: f64 = 0.001;
/// Largest relative difference of areas of straight shapes, and of curved ones.
const STRAIGHT: f64 = 1e-6;
const CURVED: f64 = 2e-6;

/// One shape in its box.
struct Case {
    kind: &'static str,
    opening: Opening,
    size: Size,
    /// Radius, rise or corner, in the formula's sense.
    number: Length,
}

fn case(kind: &'static str, shape: Shape, (width, height): (i64, i64), number: Length) -> Case {
    let opening = Opening {
        shape,
        ..Opening::default()
    };
    Case {
        kind,
        opening,
        size: Size::new(Length::mm(width), Length::mm(height)),
        number,
    }
}

fn cases() -> Vec<Case> {
    let mm = Length::mm;
    let mut cases = vec![
        case("oval", Shape::Oval, (200, 310), Length::ZERO),
        case("oval", Shape::Circle, (300, 300), Length::ZERO),
        case("arch", Shape::RoundArch, (200, 310), mm(100)),
    ];
    let mut with = |mut case: Case, set: fn(&mut Opening, Measured)| {
        set(&mut case.opening, Measured(case.number));
        cases.push(case);
    };
    with(
        case("rounded", Shape::Rounded, (201, 310), mm(33)),
        |o, n| o.radius = Some(n),
    );
    with(case("arch", Shape::LowArch, (200, 310), mm(40)), |o, n| {
        o.rise = Some(n);
    });
    with(
        case("octagon", Shape::Octagon, (200, 310), mm(47)),
        |o, n| o.corner = Some(n),
    );
    // A square's octagon is regular: s/(2 + √2) off each corner.
    let regular = Length::mm(200).scaled_nearest(1.0 / (2.0 + 2_f64.sqrt()));
    cases.push(case(
        "octagon",
        Shape::Octagon,
        (200, 200),
        regular.expect("a length"),
    ));
    for sides in 3..=9 {
        let mut polygon = case("polygon", Shape::Polygon, (200, 230), Length::ZERO);
        polygon.opening.sides = Some(sides);
        cases.push(polygon);
    }
    let mut free = case("free", Shape::Free, (200, 180), Length::ZERO);
    // Clockwise, with one corner that turns inwards.
    let corners = [
        (0, 40),
        (90, 0),
        (200, 30),
        (130, 90),
        (170, 180),
        (20, 170),
    ];
    free.opening.points = corners
        .map(|(x, y)| [Measured(mm(x)), Measured(mm(y))])
        .to_vec();
    cases.push(free);
    cases
}

fn quanta(corners: &[[Length; 2]]) -> Value {
    let each = corners.iter().map(|[x, y]| json!([x.quanta(), y.quanta()]));
    each.collect()
}

/// What is asked of the script: each case grown, and shrunk.
fn questions(cases: &[Case]) -> Value {
    let grown = |case: &Case, by: Length| {
        let outline = Outline::of(&case.opening, case.size).expect("it fits its box");
        let larger = outline.grown_nearest(case.size, by);
        json!({
            "kind": case.kind,
            "sides": case.opening.sides,
            "width": case.size.width.quanta(),
            "height": case.size.height.quanta(),
            "number": case.number.quanta(),
            "by": by.quanta(),
            "corners": quanta(&outline.corners_nearest(case.size, STEPS)),
            "grown": quanta(&larger.corners_nearest(case.size.grow(by), STEPS)),
        })
    };
    let each = cases
        .iter()
        .flat_map(|case| [Length::mm(6), Length::mm(-5)].map(|by| grown(case, by)));
    each.collect()
}

fn ask(questions: &Value) -> Vec<Value> {
    crate::python::ask("shapes.py", questions)
}

#[test]
fn outlines_agree_with_shapely() {
    let cases = cases();
    let answers = ask(&questions(&cases));
    assert_eq!(answers.len(), 2 * cases.len());
    for (case, answers) in cases.iter().zip(answers.chunks(2)) {
        for answer in answers {
            agrees(case, answer);
        }
    }
}

fn agrees(case: &Case, answer: &Value) {
    let name = format!(
        "{:?} {:?}: {answer}",
        case.opening.shape, case.opening.sides
    );
    let number = |field: &str| answer[field].as_f64();
    assert_eq!(answer["valid"], json!(true), "{name}");
    let curved = matches!(case.kind, "oval" | "rounded" | "arch");
    let allowed = if curved { CURVED } else { STRAIGHT };
    let near = |a: f64, b: f64| (a - b).abs() <= allowed * b;
    let outline = Outline::of(&case.opening, case.size).expect("it fits its box");
    let ours = outline.area_nearest(case.size).approx_m2() * 1e6;
    let shapely = number("area").expect("an area");
    assert!(near(ours, shapely), "our area {ours}, {name}");
    if let Some(formula) = number("formula") {
        assert!(near(ours, formula), "our area {ours}, {name}");
    } else {
        assert_eq!(case.kind, "free", "only free shapes have no formula");
    }
    let (grown, reference) = (number("grown_area"), number("grown_reference"));
    let (grown, reference) = (grown.expect("an area"), reference.expect("an area"));
    assert!(near(grown, reference), "grown {name}");
    assert!(
        number("grown_gap").is_some_and(|gap| gap <= GAP),
        "grown {name}"
    );
}
