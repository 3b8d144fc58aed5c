//! Expected numbers: sums done with a pencil.

use measure::Mass;
use sizing::derive;
use trade::{Catalogue, Job, Settings};

use super::{Place, Weight, weigh};

fn weighed(rest: &str) -> Weight {
    let text = format!(
        "rabbet = 1\nunits = \"mm\"\n[[art]]\nwidth = \"1000\"\nheight = \"1000\"\nshow = \"bleed\"\n{rest}"
    );
    let job = Job::read(text.as_bytes()).unwrap_or_else(|faults| panic!("{faults:#?}\n{text}"));
    let shop = Settings::defaults(job.units);
    let sizes = derive(&job, &Catalogue::starter(), &shop).unwrap_or_else(|f| panic!("{f:#?}"));
    let mut working = sizes.working.clone();
    let weight = weigh(&job, &sizes, &mut working);
    assert_eq!(working.recheck(), []);
    weight
}

/// A square metre: glass 7.5 kg, paper 200 g, corrugated board 510 g. The frame: 25 × 18 less 6 × 12 mm,
/// 1041 mm square outside, round the middle of its face 4064 mm, at 600 kg/m³.
#[test]
fn a_piece_weighs_as_much_as_its_parts() {
    let weight = weighed(
        "[[glazing]]\nsheet = \"glass-3\"\n[[backing]]\nboard = \"corrugated-3\"\n[[frame]]\nmoulding = \"ash-metric-25\"\nallowance = \"3\"\n",
    );
    let grams: Vec<f64> = weight
        .parts
        .iter()
        .map(|part| part.mass.value.approx_kg() * 1e3)
        .collect();
    // Outside: 1003 - 12 + 50 = 1041. Round: 4 × 1041 - 4 × 25 = 4064. Section: 378 mm².
    let frame = 378.0 * 4064.0 * 600.0 / 1e6;
    for (found, expected) in grams.iter().zip([frame, 7500.0, 200.0, 510.0]) {
        assert!((found - expected).abs() < 1e-6, "{grams:?}");
    }
    let sum: Mass = weight.parts.iter().map(|part| part.mass.value).sum();
    assert_eq!(weight.total.value, sum);
    assert!(weight.unknown.is_empty());
}

const BARE: &str = "[[backing]]\nthickness = \"3\"\n[[frame]]\nface = \"25\"\nlip = \"6\"\n";

#[test]
fn what_nobody_knows_is_named() {
    let weight = weighed(BARE);
    assert_eq!(weight.uncounted(), ["Frame", "Backing"]);
    assert_eq!(weight.uncounted_in_package(), ["Backing"]);
    assert_eq!(
        weight.sentence(),
        "0.20 kg (0.4 lb) without Frame, Backing, which nobody weighed"
    );
}

/// A scale knows the whole; what rests on the bottom rail it does not.
#[test]
fn a_scale_settles_what_the_piece_weighs() {
    let weight = weighed(&format!("{BARE}[hardware]\ngrams = 4200\n"));
    assert_eq!(weight.total.value, Mass::grams(4200));
    assert!(weight.uncounted().is_empty());
    assert_eq!(weight.uncounted_in_package(), ["Backing"]);
    assert_eq!(weight.sentence(), "4.20 kg (9.3 lb)");
}

#[test]
fn art_of_its_own_weight_is_counted() {
    let canvas = weighed("medium = \"canvas\"\n[[frame]]\nmoulding = \"ash-metric-25\"\n");
    assert_eq!(canvas.uncounted(), ["Art"]);
    let canvas =
        weighed("medium = \"canvas\"\ngrams = 1500\n[[frame]]\nmoulding = \"ash-metric-25\"\n");
    assert!(canvas.uncounted().is_empty());
    let art = canvas
        .parts
        .iter()
        .find(|part| part.name == "Art")
        .expect("the art");
    assert_eq!(
        (art.mass.value, art.place),
        (Mass::grams(1500), Place::Package)
    );
}

/// A strainer of 40 × 20 mm white pine round a metre square: gravity 0.35, 8 % moisture, 378 kg/m³.
#[test]
fn a_strainer_weighs_as_its_own_wood() {
    let weight = weighed(
        "[strainer]\nwidth = \"40\"\ndepth = \"20\"\n[[frame]]\nmoulding = \"ash-metric-25\"\nallowance = \"0\"\n",
    );
    let strainer = weight
        .parts
        .iter()
        .find(|part| part.name == "Strainer")
        .expect("a strainer");
    let kilograms = strainer.mass.value.approx_kg();
    assert!((1.1..1.25).contains(&kilograms), "{kilograms}");
}

/// Glass of a square metre, 7.5 kg, can't weigh nothing, nor 3 kg: the parts count, and the scale is doubted.
#[test]
fn a_scale_that_shows_too_little_is_doubted() {
    const GLASS: &str = "[[glazing]]\nsheet = \"glass-3\"\n[[frame]]\nface = \"25\"\nlip = \"6\"\n";
    for grams in [0, 3000] {
        let weight = weighed(&format!("{GLASS}[hardware]\ngrams = {grams}\n"));
        assert!(!weight.on_scale);
        assert_eq!(weight.doubted, Some(Mass::grams(grams)));
        assert!(weight.total.value >= Mass::grams(7500));
    }
    let weight = weighed(&format!("{GLASS}[hardware]\ngrams = 7000\n"));
    assert!(weight.on_scale && weight.doubted.is_none());
}

/// Three pieces of four thousand tonnes: the sum of the third is past what a mass holds, and it is named.
#[test]
fn what_no_sum_holds_is_named() {
    let art =
        "[[art]]\nwidth = \"1000\"\nheight = \"1000\"\nmedium = \"canvas\"\ngrams = 4294967295\n";
    let weight = weighed(&format!(
        "medium = \"canvas\"\ngrams = 4294967295\n{art}{art}[[frame]]\nmoulding = \"ash-metric-25\"\n"
    ));
    assert_eq!(weight.uncounted(), ["Art"]);
    assert!(super::cube(u32::MAX).is_none());
    let large = measure::Size::new(measure::Length::mm(10_000), measure::Length::mm(10_000));
    assert!(super::sheet_nearest(large.area(), i64::from(u32::MAX)).is_none());
}
