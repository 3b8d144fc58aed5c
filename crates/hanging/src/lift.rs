//! Lifting: whether one person should carry it, by the revised NIOSH equation.

use std::fmt;
use std::sync::LazyLock;

use conservation::caution::Caution;
use conservation::rules::{cited, figure, remembered, rough};
use conservation::{Fact, rows, within};
use measure::Mass;
use serde::Deserialize;
use trade::{Key, Settings};
use working::{Figure, Given, Rule, Stated, Subject, Worked, Working};

use crate::refusal::Refusal;

static REACH: Rule = cited(
    "lift.reach",
    "the further out, the less",
    "multiplier = if(reach > most, 0, near ÷ max(reach, near))",
    "F1",
);
static HEIGHT: Rule = cited(
    "lift.height",
    "the further from knuckle height, the less",
    "multiplier = if(height > most, 0, 1 - slope × abs(height - best))",
    "F1",
);
static TRAVEL: Rule = cited(
    "lift.travel",
    "the longer the travel, the less",
    "multiplier = if(travel > most, 0, min(1, base + gain ÷ max(travel, least)))",
    "F1",
);
static TURN: Rule = cited(
    "lift.turn",
    "the more the body turns, the less",
    "multiplier = if(turn > most, 0, 1 - slope × turn)",
    "F1",
);
static FREQUENCY: Rule = remembered(
    "lift.frequency",
    "the more often and the longer, the less; between two rows of the table in proportion",
    "multiplier = below + (above - below) × part",
    "F1",
);
static GRIP: Rule = remembered(
    "lift.grip",
    "the worse the grip, the less",
    "multiplier = grip",
    "F1",
);
static LIMIT: Rule = cited(
    "lift.limit",
    "what nearly every healthy worker may lift this way",
    "limit = constant × reach × height × travel × turn × frequency × grip",
    "F1",
);
static INDEX: Rule = cited(
    "lift.index",
    "load over limit: above 1 take a second person or a trolley",
    "index = load ÷ limit",
    "F1",
);

/// How long the lifting goes on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lasting {
    /// Up to an hour, then rest.
    Hour,
    /// Up to two.
    TwoHours,
    /// Up to eight.
    Day,
}

/// How well the hands hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grip {
    /// Handles.
    Good,
    /// Fingers bent under.
    Fair,
    /// Sharp edges, nothing to hold.
    Poor,
}

/// A lift with both hands, smooth, on a good floor. Two people, kneeling and ladders are outside it.
#[derive(Clone, Copy, Debug)]
pub struct Lift {
    /// What is lifted, kg.
    pub load: Stated<Figure>,
    /// Hands in front of the ankles, cm.
    pub reach: Stated<Figure>,
    /// Hands above the floor at the start, cm.
    pub height: Stated<Figure>,
    /// Up or down, cm.
    pub travel: Stated<Figure>,
    /// Turn of the body, degrees.
    pub turn: Stated<Figure>,
    /// Lifts a minute.
    pub often: Stated<Figure>,
    /// For how long.
    pub lasting: Lasting,
    /// The grip.
    pub grip: Grip,
}

impl Lift {
    /// From the floor to the bench, now and then, by the edges.
    pub fn to_bench(load: Stated<Mass>, settings: &Settings, working: &mut Working) -> Self {
        let bench = settings.length(Key::BenchHeight);
        let reach = settings.length(Key::LiftReach);
        // The lift as it is reckoned: hands at the floor, the body not turned.
        let usual = |value, unit| Stated::table("CP", Figure::of(value, unit));
        let length = |key: Key, length: measure::Length| {
            Stated::setting(key.id(), Figure::of(length.approx_mm() / 10.0, "cm")) // geometry: a prefix
        };
        Self {
            load: kilograms(load, working).into(),
            reach: length(Key::LiftReach, reach),
            height: usual(0.0, "cm"),
            travel: length(Key::BenchHeight, bench),
            turn: usual(0.0, "°"),
            often: Fact::named("lift.seldom").only(),
            lasting: Lasting::Hour,
            grip: Grip::Fair,
        }
    }

    /// From the floor to the wall, so that the hands end at this height, which is no line of a working.
    pub fn to_wall(
        load: Stated<Mass>,
        hands: Stated<measure::Length>,
        settings: &Settings,
        working: &mut Working,
    ) -> Self {
        let travel = Figure::of(hands.value.approx_mm() / 10.0, "cm"); // geometry: a prefix
        Self {
            travel: Stated {
                value: travel,
                origin: hands.origin,
            },
            ..Self::to_bench(load, settings, working)
        }
    }
}

static KILOGRAMS: Rule = crate::geometry(
    "lift.load",
    "what is lifted, in kilograms",
    "load = mass ÷ 1 kg",
);

fn kilograms(mass: Stated<Mass>, working: &mut Working) -> Worked<Figure> {
    let inputs = [("mass", mass.into())];
    let value = (mass.value.approx_kg(), "kg");
    figure(
        working,
        &KILOGRAMS,
        Subject::of("lift", "load"),
        &inputs,
        value,
    )
}

/// What may be lifted this way, and how the load compares.
#[derive(Clone, Copy, Debug)]
pub struct Lifted {
    /// For reach, height, travel, turn, frequency and grip.
    pub multipliers: [Worked<Figure>; 6],
    /// Recommended weight limit, kg.
    pub limit: Worked<Figure>,
    /// Load over limit; none where nothing should be lifted this way.
    pub index: Option<Worked<Figure>>,
}

#[derive(Clone, Copy, Debug, Deserialize)]
struct Often {
    lifts_per_min: f64,
    #[serde(rename = "h1_V_below_75")]
    hour_low: f64,
    #[serde(rename = "h1_V_75_up")]
    hour_high: f64,
    #[serde(rename = "h2_V_below_75")]
    two_low: f64,
    #[serde(rename = "h2_V_75_up")]
    two_high: f64,
    #[serde(rename = "h8_V_below_75")]
    day_low: f64,
    #[serde(rename = "h8_V_75_up")]
    day_high: f64,
}

static OFTEN: LazyLock<Vec<Often>> =
    LazyLock::new(|| rows(include_str!("../data/lifting_frequency.csv")));

impl Often {
    fn multiplier(&self, lasting: Lasting, high: bool) -> f64 {
        match (lasting, high) {
            (Lasting::Hour, false) => self.hour_low,
            (Lasting::Hour, true) => self.hour_high,
            (Lasting::TwoHours, false) => self.two_low,
            (Lasting::TwoHours, true) => self.two_high,
            (Lasting::Day, false) => self.day_low,
            (Lasting::Day, true) => self.day_high,
        }
    }
}

/// The frequency multiplier that stands in the table for so many lifts a minute; none between rows.
pub fn frequency_row(often: f64, lasting: Lasting, high: bool) -> Option<f64> {
    let mut found = OFTEN.iter();
    let row = found.find(|row| (row.lifts_per_min - often).abs() < GRAIN);
    row.map(|row| row.multiplier(lasting, high))
}

/// What two printed decimals can't tell apart.
const GRAIN: f64 = 1e-9; // geometry: a float's grain

/// The recommended weight limit and the lifting index.
///
/// limit = 23 kg × HM × VM × DM × AM × FM × CM; index = load ÷ limit
///
/// Units:  kg, cm, degrees, lifts a minute.
/// Errors: numbers outside what can be.
/// Source: NIOSH 94-110 (equation read, frequency table from memory); checked in
///         `suite/ref/reference`.
/// Example: a large frame of 18 kg from floor to bench: limit 11.3 kg, index 1.6.
pub fn lift(lift: &Lift, working: &mut Working) -> Result<Lifted, Refusal> {
    within("load", lift.load.value)?;
    let best = Fact::named("lift.height");
    let high = within("height", lift.height.value)? >= best.low();
    let multipliers = [
        reach(lift, working)?,
        height(lift, working),
        travel(lift, working)?,
        turn(lift, working)?,
        frequency(lift, high, working)?,
        grip(lift.grip, high, working),
    ];
    let constant = Fact::named("lift.constant");
    let names = ["reach", "height", "travel", "turn", "frequency", "grip"];
    let mut inputs: Vec<(&'static str, Given)> = vec![("constant", constant.only().into())];
    inputs.extend(names.into_iter().zip(multipliers.map(Given::from)));
    let product: f64 = multipliers.iter().map(|line| line.value.value()).product();
    let limit = constant.low() * product;
    let subject = |quantity| Subject::of("lift", quantity);
    let line = figure(working, &LIMIT, subject("limit"), &inputs, (limit, "kg"));
    let inputs = [("load", lift.load.into()), ("limit", line.into())];
    let index = (limit > 0.0).then(|| {
        let value = (lift.load.value.value() / limit, "");
        figure(working, &INDEX, subject("index"), &inputs, value)
    });
    Ok(Lifted {
        multipliers,
        limit: line,
        index,
    })
}

fn multiplier(
    rule: &'static Rule,
    quantity: &'static str,
    inputs: &[(&'static str, Given)],
    value: f64,
    working: &mut Working,
) -> Worked<Figure> {
    figure(
        working,
        rule,
        Subject::of("lift", quantity),
        inputs,
        (value, ""),
    )
}

fn reach(lift: &Lift, working: &mut Working) -> Result<Worked<Figure>, Refusal> {
    let out = within("reach", lift.reach.value)?;
    let [near, most] = ["lift.reach", "lift.reach_most"].map(Fact::named);
    let value = if out > most.low() {
        0.0
    } else {
        near.low() / out.max(near.low())
    };
    let inputs = [
        ("reach", lift.reach.into()),
        ("most", most.only().into()),
        ("near", near.only().into()),
    ];
    Ok(multiplier(&REACH, "reach", &inputs, value, working))
}

fn height(lift: &Lift, working: &mut Working) -> Worked<Figure> {
    let up = lift.height.value.value();
    let [best, slope, most] =
        ["lift.height", "lift.height_slope", "lift.height_most"].map(Fact::named);
    let value = if up > most.low() {
        0.0
    } else {
        1.0 - slope.low() * (up - best.low()).abs()
    };
    let inputs = [
        ("height", lift.height.into()),
        ("most", most.only().into()),
        ("slope", slope.only().into()),
        ("best", best.only().into()),
    ];
    multiplier(&HEIGHT, "height", &inputs, value, working)
}

fn travel(lift: &Lift, working: &mut Working) -> Result<Worked<Figure>, Refusal> {
    let far = within("travel", lift.travel.value)?;
    let names = ["most", "base", "gain", "least"];
    let [most, base, gain, least] = names.map(|name| Fact::named(&format!("lift.travel_{name}")));
    let value = if far > most.low() {
        0.0
    } else {
        (base.low() + gain.low() / far.max(least.low())).min(1.0)
    };
    let inputs = [
        ("travel", lift.travel.into()),
        ("most", most.only().into()),
        ("base", base.only().into()),
        ("gain", gain.only().into()),
        ("least", least.only().into()),
    ];
    Ok(multiplier(&TRAVEL, "travel", &inputs, value, working))
}

fn turn(lift: &Lift, working: &mut Working) -> Result<Worked<Figure>, Refusal> {
    let round = within("turn", lift.turn.value)?;
    let [slope, most] = ["lift.turn_slope", "lift.turn_most"].map(Fact::named);
    let value = if round > most.low() {
        0.0
    } else {
        1.0 - slope.low() * round
    };
    let inputs = [
        ("turn", lift.turn.into()),
        ("most", most.only().into()),
        ("slope", slope.only().into()),
    ];
    Ok(multiplier(&TURN, "turn", &inputs, value, working))
}

fn frequency(lift: &Lift, high: bool, working: &mut Working) -> Result<Worked<Figure>, Refusal> {
    let often = within("lifts", lift.often.value)?;
    let at = |row: &Often| row.multiplier(lift.lasting, high);
    let above = OFTEN
        .iter()
        .position(|row| row.lifts_per_min >= often - GRAIN);
    let (below, above, part) = match above {
        // More seldom than the first row counts as it.
        Some(0) => (at(&OFTEN[0]), at(&OFTEN[0]), 0.0),
        Some(row) => {
            let (less, more) = (&OFTEN[row - 1], &OFTEN[row]);
            let step = more.lifts_per_min - less.lifts_per_min;
            let part = (often - less.lifts_per_min) / step;
            (at(less), at(more), part)
        }
        // More often than the last: nothing.
        None => (0.0, 0.0, 0.0),
    };
    let table = |value| Given::table("F1", Figure::of(value, ""));
    let inputs = [
        ("below", table(below)),
        ("above", table(above)),
        ("part", table(part)),
    ];
    let value = below + (above - below) * part;
    Ok(multiplier(&FREQUENCY, "frequency", &inputs, value, working))
}

fn grip(grip: Grip, high: bool, working: &mut Working) -> Worked<Figure> {
    let fact = Fact::named(match grip {
        Grip::Good => "lift.grip_good",
        Grip::Fair => "lift.grip_fair",
        Grip::Poor => "lift.grip_poor",
    });
    let value = if high { fact.high() } else { fact.low() };
    let inputs = [("grip", fact.stated(value).into())];
    multiplier(&GRIP, "grip", &inputs, value, working)
}

impl Lifted {
    /// The limit, and the load as so many times it.
    pub fn sentence(&self) -> String {
        match self.index {
            Some(index) => format!(
                "lifted so, {} kg is the most for one person; this is {} times that",
                rough(self.limit.value.value()),
                rough(index.value.value())
            ),
            None => "nothing should be lifted this way".to_owned(),
        }
    }
}

/// Its [`sentence`](Lifted::sentence), and the caution about lifting.
impl fmt::Display for Lifted {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}. {}", self.sentence(), Caution::Lift.text())
    }
}

#[cfg(test)]
mod tests;
