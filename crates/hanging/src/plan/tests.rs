//! The whole plan of a piece, against sums done with a pencil.

use conservation::caution::Caution;
use measure::Length;
use sizing::derive;
use trade::{Catalogue, Job, Settings};
use working::Stated;

use super::{Hanging, hangs};
use crate::CAUTION;
use crate::layout::{Frame, Wall};

fn piece(rest: &str) -> (Job, sizing::Sizes) {
    let text = format!(
        "rabbet = 1\nunits = \"in\"\n[[art]]\nwidth = \"24\"\nheight = \"18\"\nshow = \"bleed\"\n{rest}"
    );
    let job = Job::read(text.as_bytes()).unwrap_or_else(|faults| panic!("{faults:#?}\n{text}"));
    let (catalogue, shop) = (Catalogue::starter(), Settings::defaults(job.units));
    let sizes = derive(&job, &catalogue, &shop).unwrap_or_else(|faults| panic!("{faults:#?}"));
    (job, sizes)
}

fn plan(rest: &str) -> Hanging {
    let (job, sizes) = piece(rest);
    let found = hangs(&job, &sizes);
    assert_eq!(found.working.recheck(), []);
    found
}

const BASSWOOD: &str = "[[glazing]]\nsheet = \"glass-3\"\n[[frame]]\nmoulding = \"scoop-3\"\n";

#[test]
fn a_wire_is_given_on_one_hook_and_on_two() {
    let found = plan(&format!("{BASSWOOD}[hardware]\ngrams = 6000\n"));
    let (one, two) = (
        found.wire.expect("a wire"),
        found.other_hooks.expect("the other"),
    );
    assert_eq!((one.hooks, two.hooks), (1, 2));
    // Two hooks a third of the rings apart leave two thirds of the span: the wire is steeper, and pulls less.
    assert!(two.run.angle.value > one.run.angle.value);
    assert!(two.run.tension.value < one.run.tension.value);
    assert!(two.ratings.hook.value < one.ratings.hook.value);
    for said in [one.to_string(), two.to_string()] {
        assert!(said.ends_with(CAUTION), "{said}");
    }
}

/// Two screws of gauge 6 (3.51 mm) in basswood: each 23.17 N/mm² × 3.51² mm² or so sideways.
#[test]
fn screws_fit_the_rail_and_say_their_factor() {
    let found = plan(&format!(
        "{BASSWOOD}[hardware]\nhanger = \"rings\"\ngrams = 6000\n"
    ));
    let screws = found.screws.expect("basswood is known");
    assert_eq!(screws.each, 2);
    assert!((screws.pull.value.value() - 6.0 * 9.806_65 / 2.0).abs() < 1e-6);
    let times = screws.held.value.value() / screws.pull.value.value();
    assert!((screws.actual.value.value() - times).abs() < 1e-9);
    assert!(screws.to_string().ends_with(CAUTION));
    let (_, sizes) = piece(BASSWOOD);
    let rail = sizes.members[0].height.expect("its height");
    let land = sizes.settings.length(trade::Key::ScrewLand);
    assert_eq!(screws.longest.value, rail - land);
}

#[test]
fn a_rail_carries_the_package_and_not_the_frame() {
    let found = plan(BASSWOOD);
    let rail = found.rail.expect("basswood is known");
    let newtons = found.weight.package.value.approx_kg() * 9.806_65;
    assert!((rail.rail.load.value.value() - newtons).abs() < 1e-6);
    assert!(found.weight.package.value < found.weight.total.value);
    assert!(rail.to_string().ends_with(CAUTION));
}

/// A bar as stiff as the rail halves its sag and its stress.
#[test]
fn a_bar_as_stiff_as_the_rail_halves_the_sag() {
    use crate::{Bar, Rail, sag};
    use working::{Figure, Working};
    let (modulus, mm) = (Stated::job(Figure::of(10_000.0, "N/mm²")), |n| {
        Stated::job(Length::mm(n))
    });
    let alone = Rail {
        modulus,
        width: mm(20),
        depth: mm(30),
        span: mm(1000),
        load: Stated::job(Figure::of(80.0, "N")),
        helped: None,
    };
    let bar = Bar {
        modulus,
        width: mm(20),
        depth: mm(30),
    };
    let shop = Settings::defaults(trade::Units::Millimetres);
    let mut working = Working::new();
    let one = sag(&alone, &shop, &mut working).expect("it sags");
    let helped = Rail {
        helped: Some(bar),
        ..alone
    };
    let both = sag(&helped, &shop, &mut working).expect("it sags");
    assert!((one.free.value - both.free.value.twice()).abs() <= Length::QUANTUM.twice());
    let stress = one.stress.value.value() / both.stress.value.value();
    assert!((stress - 2.0).abs() < 1e-9, "{stress}");
    assert_eq!(working.recheck(), []);
}

#[test]
fn what_is_unknown_is_named_and_nothing_made_up() {
    let found = plan("[[frame]]\nface = \"2\"\nlip = \"1/4\"\n");
    assert!(
        found
            .unknown
            .iter()
            .any(|what| what.contains("put it on a scale")),
        "{:#?}",
        found.unknown
    );
    assert!(
        found
            .unknown
            .iter()
            .any(|what| what.contains("of which wood"))
    );
    assert!(found.screws.is_none() && found.rail.is_none());
}

#[test]
fn cautions_grow_with_the_weight() {
    let light = plan(&format!("{BASSWOOD}[hardware]\ngrams = 3000\n"));
    assert!(!light.cautions.contains(&Caution::Lift));
    let heavy = plan(&format!("{BASSWOOD}[hardware]\ngrams = 30000\n"));
    for caution in [
        Caution::Load,
        Caution::Lift,
        Caution::Ladder,
        Caution::Glass,
    ] {
        assert!(heavy.cautions.contains(&caution), "{caution:?}");
    }
}

#[test]
fn people_below_raise_the_factors() {
    let usual = plan(&format!("{BASSWOOD}[hardware]\ngrams = 3000\n"));
    let over = plan(&format!(
        "{BASSWOOD}[hardware]\ngrams = 3000\n[place]\nabove = \"bed\"\n"
    ));
    let hook = |plan: &Hanging| plan.wire.expect("a wire").ratings.hook.value;
    assert_eq!(hook(&over), hook(&usual).times(2));
}

#[test]
fn a_derived_piece_stands_on_a_wall() {
    let (_, sizes) = piece(BASSWOOD);
    let marks = sizes.hangers.expect("hangers");
    let wire = marks.wire.expect("a wire");
    let one = Frame::of(&sizes, 1).expect("it hangs");
    assert_eq!(one.seat.value, wire.hook.value);
    assert!(one.hooks_apart.is_none());
    let two = Frame::of(&sizes, 2).expect("it hangs");
    let apart = two.hooks_apart.expect("two hooks").value;
    assert!(
        (apart.times(3) - marks.apart.value).abs() <= Length::INCH,
        "a third of the rings"
    );
    let wall = Wall::of_shop(Stated::job(Length::inches(120)), &sizes.settings);
    assert_eq!(wall.centre.value, Length::inches(58));
}

/// 30 in of sofa, 7 in of gap, half of 60 in: the centre rises to 67 in; a small piece stays on 58.
#[test]
fn furniture_lifts_what_hangs_above_it() {
    let (_, sizes) = piece(BASSWOOD);
    let mut working = working::Working::new();
    let wall = Wall::of_shop(Stated::job(Length::inches(120)), &sizes.settings);
    let sofa = Stated::job(Length::inches(30));
    let high = wall.above(sofa, Length::inches(60), &sizes.settings, &mut working);
    assert_eq!(high.centre.value, Length::inches(67));
    let low = wall.above(sofa, Length::inches(20), &sizes.settings, &mut working);
    assert_eq!(low.centre.value, wall.centre.value);
    assert_eq!(working.recheck(), []);
}

/// Gauge 6 is 3.51 mm: fully held 24.5 mm deep (seven shanks), not at all under 14 mm (four); two thirds of a
/// screw are thread. A screw of 1/2 in, 12.7 mm, bears nothing sideways; one of 3/4 in bears 19.05 ÷ 24.54.
#[test]
fn a_short_screw_bears_less() {
    let screws = |screw: &str| {
        let hung = format!(
            "{BASSWOOD}[hardware]\nhanger = \"rings\"\ngrams = 6000\nscrew = \"{screw}\"\n"
        );
        plan(&hung).screws.expect("basswood is known")
    };
    let (short, some, full) = (screws("1/2"), screws("3/4"), screws("1"));
    assert!(short.held.value.value().abs() < 1e-9);
    let share = some.held.value.value() / full.held.value.value();
    assert!((share - 19.05 / 24.5364).abs() < 1e-3, "{share}");
    let thread = some.thread.value.approx_mm();
    assert!((thread - 19.05 * 0.667).abs() < 1e-3, "{thread}");
}
