//! Hanging: wire, rails, hardware, lifting.

use conservation::Fact;
use conservation::caution::Caution;
use conservation::climate::wood;
use hanging::lift::{Grip, Lasting, Lift, lift};
use hanging::{
    Factors, Hang, Rail, Ratings, WireRun, bears, choice as hardware_for, deep_enough, force,
    hook_pull, ratings, sag, wire_run,
};
use measure::Length;
use trade::{Key, Settings, WallMake};
use working::{Figure, Stated, Working};

use super::Question;
use super::air::woods;
use super::answer::{Amount, Answer};
use super::field::{Choice, Usual, choice, length, mass, number};
use super::typed::Typed;

/// What the wire pulls.
pub(super) const WIRE: Question = Question {
    noun: "hang",
    verb: "wire",
    asks: "How hard does this wire pull?",
    tells: "Angle, tension and inward pull of a wire, and what wire, rings and hooks must be rated for",
    fields: &[
        mass("weight", "Weight of the piece", ""),
        length("rings", "Rings apart", "from ring to ring"),
        length("rise", "Rise of the wire", "above the rings, under load"),
        length("hooks", "Hooks apart", "for two hooks; left out for one").or(Usual::Nothing),
        mass("breaks", "The wire breaks at", "as its maker says").or(Usual::Nothing),
        length(
            "depth",
            "Depth of the piece",
            "for the pull out of the wall",
        )
        .or(Usual::Nothing),
        length(
            "hook-up",
            "Hook above the foot",
            "of the piece; with its depth",
        )
        .or(Usual::Nothing),
    ],
    example: &[("weight", "20 lb"), ("rings", "20"), ("rise", "3")],
    work: wire,
};

/// How far a rail sags.
pub(super) const RAIL: Question = Question {
    noun: "hang",
    verb: "rail",
    asks: "Will this rail sag?",
    tells: "Sag of a rail under an even load, at once and with the years, and the depth that passes",
    fields: &[
        choice("wood", "Wood", "", woods),
        length("width", "Wood behind the rabbet, front to back", ""),
        length("depth", "Wood upright, in the plane of the picture", ""),
        length("span", "Between the corners", ""),
        mass("load", "What it carries", "glazing and package"),
    ],
    example: &[
        ("wood", "basswood"),
        ("width", "5/8"),
        ("depth", "3/4"),
        ("span", "32"),
        ("load", "5 lb 4 oz"),
    ],
    work: rail,
};

/// Hardware by load.
pub(super) const HARDWARE: Question = Question {
    noun: "hang",
    verb: "hardware",
    asks: "What does this weight hang by?",
    tells: "Hardware for a weight, on the frame and in the wall, as the trade chooses it",
    fields: &[
        mass("weight", "Weight of the piece", ""),
        choice("wall", "The wall is made of", "", walls).or(Usual::Nothing),
    ],
    example: &[("weight", "18 lb")],
    work: hardware,
};

/// Whether one person may lift it.
pub(super) const LIFT: Question = Question {
    noun: "hang",
    verb: "lift",
    asks: "May one person lift it?",
    tells: "The lifting index of a piece, at the bench or at the wall",
    fields: &[
        mass("weight", "Weight of the piece", ""),
        length("reach", "Hands in front of the ankles", "").or(Usual::Setting(Key::LiftReach)),
        length(
            "from",
            "Hands above the floor, at the start",
            "left out: on the floor",
        )
        .or(Usual::Nothing),
        length("to", "Hands above the floor, at the end", "").or(Usual::Setting(Key::BenchHeight)),
        number(
            "turn",
            "Turn of the body",
            &[("°", 1.0), ("deg", 1.0)],
            ("°", "turn"),
        )
        .or(Usual::Text("0")),
        number(
            "often",
            "Lifts a minute, now and then where left out",
            &[("1/min", 1.0)],
            ("1/min", "lifts"),
        )
        .or(Usual::Nothing),
        choice("lasting", "For how long", "", lastings).or(Usual::Text("hour")),
        choice("grip", "Grip", "", grips).or(Usual::Text("fair")),
    ],
    example: &[("weight", "40 lb")],
    work: lifting,
};

fn walls() -> Vec<Choice> {
    WALLS.map(|(choice, _)| choice).to_vec()
}

/// What a wall is made of, with the word for each.
const WALLS: [(Choice, WallMake); 5] = [
    (
        Choice::meant("plasterboard", "plasterboard, hollow behind"),
        WallMake::Plasterboard,
    ),
    (
        Choice::meant("studs", "studs where the fixings go"),
        WallMake::Studs,
    ),
    (
        Choice::meant("masonry", "brick, block or concrete"),
        WallMake::Masonry,
    ),
    (Choice::meant("lath", "lath and plaster"), WallMake::Lath),
    (
        Choice::meant("picture-rail", "a picture rail"),
        WallMake::PictureRail,
    ),
];

fn lastings() -> Vec<Choice> {
    vec![
        Choice::meant("hour", "up to an hour, then rest"),
        Choice::meant("two-hours", "up to two hours"),
        Choice::meant("day", "up to eight hours"),
    ]
}

fn grips() -> Vec<Choice> {
    vec![
        Choice::meant("good", "good: handles"),
        Choice::meant("fair", "fair: fingers bent under"),
        Choice::meant("poor", "poor: sharp edges, nothing to hold"),
    ]
}

/// A whole-number setting as a figure, divided by `parts`.
fn figured(key: Key, settings: &Settings, (unit, parts): (&'static str, f64)) -> Stated<Figure> {
    let count = i32::try_from(settings.count(key)).unwrap_or(i32::MAX);
    Stated::setting(key.id(), Figure::of(f64::from(count) / parts, unit))
}

fn wire(typed: &mut Typed<'_>) -> Option<Answer> {
    let (weight, rings, rise) = (
        typed.mass("weight"),
        typed.length("rings"),
        typed.length("rise"),
    );
    let optional = ["hooks", "breaks", "depth", "hook-up"].map(|name| typed.has(name));
    let (hooks, breaks) = (typed.length("hooks"), typed.mass("breaks"));
    let (depth, up) = (typed.length("depth"), typed.length("hook-up"));
    let read = [
        hooks.is_some(),
        breaks.is_some(),
        depth.is_some(),
        up.is_some(),
    ];
    if optional != read {
        return None;
    }
    let hang = Hang {
        weight: weight?,
        rings_apart: rings?,
        rise: rise?,
        hooks_apart: hooks,
    };
    if depth.is_some() != up.is_some() {
        let missing = if depth.is_some() { "hook-up" } else { "depth" };
        typed.lacks(
            missing,
            "the pull out of the wall takes both; type it, or empty the other",
        );
        return None;
    }
    let mut working = Working::new();
    let run = typed.keep(wire_run(&hang, &mut working))?;
    let factors = Factors::of_shop(typed.settings, false);
    let rated = typed.keep(ratings(&hang, &run, &factors, &mut working))?;
    let mut answer = Answer::of(working);
    answer.cautions.push(Caution::Load);
    told_of_wire(&run, &rated, &factors, typed, &mut answer);
    if let Some(breaks) = breaks {
        holds(breaks, run.tension.into(), typed, &mut answer)?;
    }
    if let (Some(depth), Some(up)) = (depth, up) {
        let pull = hook_pull(hang.weight, depth, up, &mut answer.working);
        let pull = typed.keep(pull)?;
        answer.group("At its fixing in the wall");
        answer.worked("downward", "Down", pull.downward);
        answer.worked("outward", "Out of the wall", pull.outward);
        answer.worked("slant", "Slant of both from straight down", pull.slant);
    }
    Some(answer)
}

/// The pull of a wire, and what must be rated for it.
fn told_of_wire(
    run: &WireRun,
    rated: &Ratings,
    factors: &Factors,
    typed: &Typed<'_>,
    answer: &mut Answer,
) {
    answer.group("The wire under load");
    answer.worked("angle", "Angle from level", run.angle);
    answer.about(
        "between_rings",
        "Wire between the rings, without its ties",
        run.between_rings,
    );
    answer.worked("tension", "Each side pulls like", run.tension);
    answer.words(
        "times_weight",
        "Times the weight",
        run.times_weight_nearest(2),
    );
    answer.worked("inward", "It pulls each rail inward like", run.inward);
    let least = typed.settings.angle(Key::LeastWireAngle);
    if run.angle.value < least {
        let words =
            format!("flatter than {least}: leave it slacker, or hang by rings on two hooks");
        answer.words("flat", "Mind", words);
    }
    let (strong, fitting) = (factors.wire.value, factors.fitting.value);
    answer.group("What must be rated for it, at least");
    let label = format!("Wire ({strong} × the weight, {fitting} × its pull)");
    answer.worked("wire_rating", label, rated.wire);
    answer.worked(
        "ring_rating",
        format!("Each ring ({fitting} × its pull)"),
        rated.ring,
    );
    answer.worked(
        "hook_rating",
        format!("Each hook ({fitting} × its share)"),
        rated.hook,
    );
}

/// A wire of a known strength held against its pull.
fn holds(
    breaks: Stated<measure::Mass>,
    pull: Stated<measure::Mass>,
    typed: &mut Typed<'_>,
    answer: &mut Answer,
) -> Option<()> {
    let end = figured(Key::KnotStrength, typed.settings, ("", 100.0)); // geometry: per cent
    let factor = figured(Key::PullFactor, typed.settings, ("", 1.0));
    let breaking = force(breaks, "breaking", &mut answer.working);
    let pulls = force(pull, "pull", &mut answer.working);
    let found = bears(
        breaking.into(),
        end,
        factor,
        pulls.into(),
        &mut answer.working,
    );
    let found = typed.keep(found)?;
    answer.group("This wire, with twisted ends");
    answer.worked("working_load", "May pull by at most", found.load);
    answer.worked("bears", "It bears the pull", found.bears);
    answer.worked("actual_factor", "Factor really there", found.actual);
    Some(())
}

fn rail(typed: &mut Typed<'_>) -> Option<Answer> {
    let name = typed.choice("wood");
    let [width, depth, span] = ["width", "depth", "span"].map(|name| typed.length(name));
    let load = typed.mass("load");
    let wood = typed.keep(wood(name?.word))?;
    let mut working = Working::new();
    let load = force(load?, "on_rail", &mut working);
    let rail = Rail {
        modulus: wood.modulus(),
        width: width?,
        depth: depth?,
        span: span?,
        load: load.into(),
        helped: None,
    };
    let settings = typed.settings;
    let found = typed.keep(sag(&rail, settings, &mut working))?;
    let wanted = found
        .is_too_much()
        .then(|| deep_enough(&rail, &found, &mut working));
    let mut answer = Answer::of(working);
    answer.cautions.push(Caution::Load);
    answer.group("Sag");
    let between = Amount::Between(found.fixed.value, found.free.value);
    answer.row(
        "sag",
        "At once",
        between,
        &[found.fixed.line, found.free.line],
    );
    answer.about("lasting", "With the years, at most", found.lasting);
    answer.about("allowed", "The shop allows", found.allowed);
    answer.worked("stress", "Bending at its edge", found.stress);
    answer.words_of(
        "wood",
        "Wood",
        wood.species,
        wood.strength_trust().sentence(),
    );
    answer.group("So");
    if let Some(wanted) = wanted {
        answer.about("wanted", "Wood upright that passes", wanted);
        let words = "add a strainer, glaze with acrylic, or take a deeper moulding";
        answer.words("cure", "Advice", words);
    } else {
        answer.words("cure", "Advice", "it is stiff enough");
    }
    Some(answer)
}

fn hardware(typed: &mut Typed<'_>) -> Option<Answer> {
    let asked = typed.has("wall");
    let weight = typed.mass("weight");
    let wall = if asked {
        Some(typed.choice("wall")?.word)
    } else {
        None
    };
    let made_of = WALLS.iter().find(|(choice, _)| Some(choice.word) == wall);
    let (weight, settings) = (weight?, typed.settings);
    let found = hardware_for(weight.value, made_of.map(|(_, make)| *make), settings);
    let mut answer = Answer::default();
    answer.cautions.push(Caution::Load);
    let custom = || "common practice, no source".to_owned();
    answer.group(format!("For {}", weight.value.print_both_nearest()));
    answer.words_of("frame", "On the frame", found.frame, custom());
    answer.words_of("wall", "In the wall", found.wall, custom());
    answer.row("hooks", "Hooks", Amount::Count(i64::from(found.hooks)), &[]);
    if let Some(key) = found.setting {
        let words = format!("to {} kg, the setting {}", settings.count(key), key.id());
        answer.words("band", "This serves", words);
    }
    let (wire, fitting) = (
        settings.count(Key::WireFactor),
        settings.count(Key::FittingFactor),
    );
    let words =
        format!("wire {wire} times the weight, each ring and hook {fitting} times its share");
    answer.words("factors", "Rated for", words);
    Some(answer)
}

/// A length as centimetres, where the lift equation wants them.
fn centimetres(length: Stated<Length>) -> Stated<Figure> {
    Stated {
        value: Figure::of(length.value.approx_mm() / 10.0, "cm"), // geometry: a prefix
        origin: length.origin,
    }
}

fn lifting(typed: &mut Typed<'_>) -> Option<Answer> {
    let asked = typed.has("from");
    let weight = typed.mass("weight");
    let [reach, from, to] = ["reach", "from", "to"].map(|name| typed.length(name));
    let seldom = !typed.has("often");
    let (turn, often) = (typed.figure("turn"), typed.figure("often"));
    let often = if seldom {
        Some(Fact::named("lift.seldom").only())
    } else {
        often
    };
    let (lasting, grip) = (typed.choice("lasting"), typed.choice("grip"));
    if asked && from.is_none() {
        return None;
    }
    let (weight, to, from) = (weight?, to?, from.unwrap_or(Stated::job(Length::ZERO)));
    let travel = Stated {
        value: (to.value - from.value).abs(),
        origin: to.origin,
    };
    let asked = Lift {
        load: Stated::job(Figure::of(weight.value.approx_kg(), "kg")),
        reach: centimetres(reach?),
        height: centimetres(from),
        travel: centimetres(travel),
        turn: turn?,
        often: often?,
        lasting: match lasting?.word {
            "day" => Lasting::Day,
            "two-hours" => Lasting::TwoHours,
            _ => Lasting::Hour,
        },
        grip: match grip?.word {
            "good" => Grip::Good,
            "poor" => Grip::Poor,
            _ => Grip::Fair,
        },
    };
    let mut working = Working::new();
    let found = typed.keep(lift(&asked, &mut working))?;
    let mut answer = Answer::of(working);
    answer.cautions.push(Caution::Lift);
    lift_rows("", &found, &mut answer);
    Some(answer)
}

/// Limit, index and what each part of the lift leaves of the limit.
pub(super) fn lift_rows(key: &str, found: &hanging::lift::Lifted, answer: &mut Answer) {
    answer.group("One person");
    answer.worked(format!("{key}limit"), "May lift this way", found.limit);
    match found.index {
        Some(index) => {
            answer.worked(format!("{key}index"), "Lifting index", index);
            let words = if index.value.value() > 1.0 {
                "take a second person or a trolley"
            } else {
                "one person may lift it this way"
            };
            answer.words(format!("{key}cure"), "Advice", words);
        }
        None => answer.words(
            format!("{key}cure"),
            "Advice",
            "nothing should be lifted this way",
        ),
    }
    let most = Fact::named("lift.constant").only().value;
    answer.group(format!("What is left of {most} by"));
    let names = ["reach", "height", "travel", "turn", "frequency", "grip"];
    for (name, multiplier) in names.into_iter().zip(found.multipliers) {
        answer.worked(format!("{key}by_{name}"), name, multiplier);
    }
}
