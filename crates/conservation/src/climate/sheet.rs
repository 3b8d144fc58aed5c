//! Sheets: how far glazing, paper and boards grow with warmth and damp.

use measure::Length;
use trade::{Key, Settings};
use working::{Axis, Figure, Rule, Source, Stated, Status, Subject, Worked, Working};

use crate::attachment::Sheet;
use crate::refusal::Refusal;
use crate::rules::{cited, custom, figure, geometry, remembered};
use crate::table::{Fact, within};

const FORMULA: &str = "change = length × (expansion × warmer + damp ÷ 100 × damper)";
static CHANGE: Rule = cited(
    "sheet.change",
    "a sheet changes with warmth and with damp, each by its own coefficient",
    FORMULA,
    "G8",
);
static CHANGE_OF_PAPER: Rule = remembered(
    "sheet.change_paper",
    "paper changes with damp by its own coefficient, more across its grain than along it",
    FORMULA,
    "H9",
);
static CHANGE_OF_GLASS: Rule = cited(
    "sheet.change_glass",
    "glass changes with warmth, and damp leaves it as it is",
    FORMULA,
    "G3",
);
static CHANGE_OF_BOARD: Rule = custom(
    "sheet.change_board",
    "board changes with damp by its own coefficient",
    FORMULA,
);
static GROWTH: Rule = cited(
    "sheet.growth",
    "to what warmth adds, a sheet adds what it takes up of damp",
    "growth = warmth + nearest(length × damp ÷ 100 × damper)",
    "G8",
);
static SHRINKS: Rule = Rule {
    id: "sheet.shrinks",
    words: "paper shrinks as it dries, more across its grain than along it",
    formula: "shrinks = length × damp ÷ 100 × drier",
    source: Source::Cited(trade::settings::cited("H9")),
    status: Status::Assumed,
};
static SIDE_LEFT: Rule = geometry(
    "cover.side_left",
    "a sheet hung in the middle loses half its shrinkage at each side",
    "left = half_down(2 × cover - shrinks)",
);
static BOTTOM_LEFT: Rule = geometry(
    "cover.bottom_left",
    "a sheet hung from its top edge loses all of it at the bottom",
    "left = cover - shrinks",
);

/// How a material grows, as a range from its least to its most.
#[derive(Clone, Copy, Debug)]
pub struct Coefficients {
    /// For each kelvin.
    pub warmth: [Stated<Figure>; 2],
    /// For each % RH, in %.
    pub damp: [Stated<Figure>; 2],
}

impl Coefficients {
    fn of(warmth: [Stated<Figure>; 2], damp: &str) -> Self {
        let damp = Fact::named(damp);
        Self {
            warmth,
            damp: [damp.stated(damp.low()), damp.stated(damp.high())],
        }
    }
}

/// Acrylic: its expansion climbs with temperature, its growth with damp.
pub fn acrylic() -> Coefficients {
    let warmth = ["acrylic.expansion", "acrylic.expansion_warm"].map(|id| Fact::named(id).only());
    Coefficients::of(warmth, "acrylic.damp")
}

/// Glass, which damp does not move.
pub fn glass() -> Coefficients {
    let warmth = Fact::named("glass.expansion").only();
    Coefficients {
        warmth: [warmth; 2],
        damp: [none("G3", "% per % RH"); 2],
    }
}

/// Paper across its grain; warmth alone does not move it noticeably.
pub fn paper_across() -> Coefficients {
    Coefficients::of([none("H9", "1/K"); 2], "paper.across")
}

/// Paper along its grain.
pub fn paper_along() -> Coefficients {
    Coefficients::of([none("H9", "1/K"); 2], "paper.along")
}

/// Mat board across its grain.
pub fn board() -> Coefficients {
    Coefficients::of([none("CP", "1/K"); 2], "board.across")
}

/// A coefficient of nothing, which the source of the other one leaves out.
fn none(source: &'static str, unit: &'static str) -> Stated<Figure> {
    Stated::table(source, Figure::of(0.0, unit))
}

static DRIER: Rule = geometry(
    "climate.drier",
    "a sheet dries from the air it was fitted in to the driest of its room",
    "drier = max(0, made - driest)",
);
static DAMPER: Rule = geometry(
    "climate.damper",
    "a sheet takes up damp from the air it was fitted in to the dampest of its room",
    "damper = max(0, dampest - made)",
);

/// How much drier the driest room is than the air a sheet was fitted in, as the shop has both; zero where it is damper.
pub fn drier(settings: &Settings, working: &mut Working) -> Worked<Figure> {
    let [made, driest] = [Key::MadeAt, Key::DriestRoom].map(|key| humidity(key, settings));
    let value = (made.value.value() - driest.value.value()).max(0.0);
    let inputs = [("made", made.into()), ("driest", driest.into())];
    let subject = Subject::of("climate", "drier");
    figure(working, &DRIER, subject, &inputs, (value, "% RH"))
}

/// How much damper the dampest room is than the air a sheet was fitted in; zero where it is drier.
pub fn damper(settings: &Settings, working: &mut Working) -> Worked<Figure> {
    let [made, dampest] = [Key::MadeAt, Key::DampestRoom].map(|key| humidity(key, settings));
    let value = (dampest.value.value() - made.value.value()).max(0.0);
    let inputs = [("made", made.into()), ("dampest", dampest.into())];
    let subject = Subject::of("climate", "damper");
    figure(working, &DAMPER, subject, &inputs, (value, "% RH"))
}

fn humidity(key: Key, settings: &Settings) -> Stated<Figure> {
    let count = i32::try_from(settings.count(key)).unwrap_or(i32::MAX);
    Stated::setting(key.id(), Figure::of(f64::from(count), "% RH"))
}

/// How far a sheet grows in all, where its growth with warmth is known.
///
/// growth = warmth + length × damp ÷ 100 × damper
///
/// Shape:  the sizes own the growth of acrylic with warmth, by which it is cut; damp comes on top.
/// Units:  % for each % RH and % RH; to the nearest quantum.
/// Errors: as [`sheet_change`].
/// Source: a sheet maker's data (G8).
pub fn damp_growth(
    length: Stated<Length>,
    warmth: Stated<Length>,
    (damp, damper): (Stated<Figure>, Stated<Figure>),
    working: &mut Working,
) -> Result<Worked<Length>, Refusal> {
    Refusal::unless_positive("the length", length.value)?;
    let wet = within("damp", damp.value)? * within("humidity_change", damper.value)?;
    let wet = length.value.scaled_nearest(wet / 100.0); // geometry: per cent
    let wet = wet.ok_or(Refusal::TooLarge { what: "the growth" })?;
    let inputs = [
        ("length", length.into()),
        ("warmth", warmth.into()),
        ("damp", damp.into()),
        ("damper", damper.into()),
    ];
    let subject = Subject::of("sheet", "growth");
    Ok(working.by(&GROWTH, subject, &inputs, warmth.value + wet))
}

/// How far a sheet grows; negative where it shrinks.
///
/// change = length × (expansion × warmer + damp ÷ 100 × damper)
///
/// Units:  1/K and K, % for each % RH and % RH; to the nearest quantum.
/// Errors: no length, coefficients or swings outside what can be.
/// Source: sheet makers' data; paper from memory. Checked in `suite/ref/reference`.
/// Example: acrylic, 610 mm, 10 K and 20 % up: 1.05 mm.
pub fn sheet_change(
    length: Stated<Length>,
    (expansion, warmer): (Stated<Figure>, Stated<Figure>),
    (damp, damper): (Stated<Figure>, Stated<Figure>),
    working: &mut Working,
) -> Result<Worked<Length>, Refusal> {
    Refusal::unless_positive("the length", length.value)?;
    let heat = within("expansion", expansion.value)? * within("swing", warmer.value)?;
    let wet = within("damp", damp.value)? * within("humidity_change", damper.value)?;
    let share = heat + wet / 100.0; // geometry: per cent
    let change = length.value.scaled_nearest(share);
    let change = change.ok_or(Refusal::TooLarge { what: "the growth" })?;
    let inputs = [
        ("length", length.into()),
        ("expansion", expansion.into()),
        ("warmer", warmer.into()),
        ("damp", damp.into()),
        ("damper", damper.into()),
    ];
    let rule = rule_of(damp);
    Ok(working.by(rule, Subject::of("sheet", "change"), &inputs, change))
}

/// The rule of the material whose coefficient this is: each has its own source.
fn rule_of(damp: Stated<Figure>) -> &'static Rule {
    let is_from = |code| damp.origin == none(code, "").origin;
    if is_from("H9") {
        &CHANGE_OF_PAPER
    } else if is_from("G3") {
        &CHANGE_OF_GLASS
    } else if is_from("CP") {
        &CHANGE_OF_BOARD
    } else {
        &CHANGE
    }
}

/// What a window still covers of a sheet that has shrunk; negative where it no longer does.
#[derive(Clone, Copy, Debug)]
pub struct Cover {
    /// How much narrower the sheet became.
    pub narrower: Worked<Length>,
    /// How much shorter.
    pub shorter: Worked<Length>,
    /// Left at each side.
    pub side: Worked<Length>,
    /// Left at the bottom.
    pub bottom: Worked<Length>,
}

/// What a window still covers of a sheet, hung from the middle of its top edge, once it has dried.
///
/// side = cover − w × damp ÷ 100 × drier ÷ 2; bottom = cover − h × damp ÷ 100 × drier
///
/// Shape:  the same lengths, as growth, are the room the sheet needs at the sides and below.
/// Units:  % for each % RH, across and up; half an odd quantum is rounded down.
/// Errors: no size, coefficients or humidity outside what can be.
/// Example: 500 × 400 mm, cover 5, 20 % drier: 4 left at the sides, 4.6 below.
pub fn after_shrinking(
    sheet: Sheet,
    cover: Stated<Length>,
    damp: [Stated<Figure>; 2],
    drier: Stated<Figure>,
    working: &mut Working,
) -> Result<Cover, Refusal> {
    let mut shrinks = |length: Stated<Length>, damp: Stated<Figure>, axis: Axis| {
        Refusal::unless_positive("the sheet", length.value)?;
        let share = within("damp", damp.value)? * within("humidity_change", drier.value)?;
        let value = length.value.scaled_nearest(share / 100.0); // geometry: per cent
        let value = value.ok_or(Refusal::TooLarge {
            what: "the shrinkage",
        })?;
        let inputs = [
            ("length", length.into()),
            ("damp", damp.into()),
            ("drier", drier.into()),
        ];
        let subject = Subject::of("sheet", "shrinks").along(axis);
        Ok(working.by(&SHRINKS, subject, &inputs, value))
    };
    let narrower = shrinks(sheet.width, damp[0], Axis::Width)?;
    let shorter = shrinks(sheet.height, damp[1], Axis::Height)?;
    let subject = |quantity| Subject::of("cover", quantity);
    let halved = cover.value.twice() - narrower.value;
    let inputs = [("cover", cover.into()), ("shrinks", narrower.into())];
    let side = working.by(&SIDE_LEFT, subject("side"), &inputs, halved.half_down());
    let inputs = [("cover", cover.into()), ("shrinks", shorter.into())];
    let value = cover.value - shorter.value;
    Ok(Cover {
        narrower,
        shorter,
        side,
        bottom: working.by(&BOTTOM_LEFT, subject("bottom"), &inputs, value),
    })
}
