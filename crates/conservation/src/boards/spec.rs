//! Published limits of papers and boards, and whether a tested board meets them.

use std::fmt;
use std::sync::LazyLock;

use serde::Deserialize;
use trade::{Key, Settings, SourcedStatus};
use working::{Figure, Rule, Source, Stated, Status, Subject, Worked, Working};

use crate::refusal::Refusal;
use crate::table::{Text, Trust, lasting, rows, status, within};

static LEAST: Rule = Rule {
    id: "board.least",
    words: "what was found is not below what the specification asks for",
    formula: "meets = found ≥ limit",
    source: Source::Cited(trade::settings::cited("B1")),
    status: Status::Published,
};
static MOST: Rule = Rule {
    id: "board.most",
    words: "what was found is not above what the specification allows",
    formula: "meets = found ≤ limit",
    source: Source::Cited(trade::settings::cited("B1")),
    status: Status::Published,
};

/// A published specification.
#[derive(Clone, Copy, Debug, Deserialize)]
pub struct Spec {
    /// Its name.
    #[serde(deserialize_with = "lasting")]
    pub spec: Text,
    /// Lowest pH.
    pub ph_min: Option<f64>,
    /// Highest pH.
    pub ph_max: Option<f64>,
    /// Least alkaline reserve, % of calcium carbonate.
    #[serde(rename = "alkaline_reserve_min_pct")]
    pub reserve_min: Option<f64>,
    /// Most alkaline reserve.
    #[serde(rename = "alkaline_reserve_max_pct")]
    pub reserve_max: Option<f64>,
    /// Highest kappa number, a measure of lignin.
    pub kappa_max: Option<f64>,
    /// What its fibre must be.
    #[serde(deserialize_with = "lasting")]
    pub fibre_rule: Text,
    /// What else it asks for.
    #[serde(deserialize_with = "lasting")]
    pub other_rules: Text,
    #[serde(deserialize_with = "lasting")]
    source_id: Text,
    #[serde(deserialize_with = "status")]
    status: SourcedStatus,
}

/// The specifications.
pub static SPECS: LazyLock<Vec<Spec>> =
    LazyLock::new(|| rows(include_str!("../../data/board_specs.csv")));

impl Spec {
    /// Where it is from.
    pub const fn trust(&self) -> Trust {
        Trust {
            source: self.source_id,
            status: self.status,
        }
    }

    /// The one the shop holds boards next to art, or next to photographs, against.
    pub fn of_shop(photographs: bool, settings: &Settings) -> &'static Self {
        let key = if photographs {
            Key::PhotographSpec
        } else {
            Key::BoardSpec
        };
        spec(settings.choice(key)).expect("the setting names a specification of the table")
    }
}

/// The specification of this name.
///
/// Errors: no such specification; those there are.
pub fn spec(name: &str) -> Result<&'static Spec, Refusal> {
    let found = SPECS.iter().find(|spec| spec.spec == name);
    found.ok_or_else(|| Refusal::unknown("specification", name, SPECS.iter().map(|spec| spec.spec)))
}

/// A board as it was tested.
#[derive(Clone, Copy, Debug)]
pub struct Tested {
    /// pH of a cold extract.
    pub ph: Stated<Figure>,
    /// Alkaline reserve, % of calcium carbonate.
    pub reserve: Stated<Figure>,
    /// Kappa number.
    pub kappa: Stated<Figure>,
}

/// What a board fails on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Failing {
    /// pH too low or too high.
    Ph,
    /// Too little buffer.
    ReserveLow,
    /// Too much buffer.
    ReserveHigh,
    /// Too much lignin.
    Kappa,
}

impl fmt::Display for Failing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(match self {
            Self::Ph => "pH",
            Self::ReserveLow => "reserve low",
            Self::ReserveHigh => "reserve high",
            Self::Kappa => "kappa",
        })
    }
}

/// What a tested board fails on by a specification; nothing where it meets its numbers.
///
/// Shape:  limits included; a property the specification leaves open is not judged. Fibre, tear and
///         the photographic activity test are not numbers and are not in it.
/// Errors: test results outside what can be.
/// Example: pH 8.5, reserve 3, kappa 6 by ISO 9706: kappa.
pub fn judge(
    tested: &Tested,
    spec: &Spec,
    working: &mut Working,
) -> Result<Vec<(Failing, Worked<bool>)>, Refusal> {
    within("ph", tested.ph.value)?;
    within("percent", tested.reserve.value)?;
    within("kappa", tested.kappa.value)?;
    let code = spec.trust().code();
    let limits = [
        (Failing::Ph, &LEAST, tested.ph, spec.ph_min),
        (Failing::Ph, &MOST, tested.ph, spec.ph_max),
        (
            Failing::ReserveLow,
            &LEAST,
            tested.reserve,
            spec.reserve_min,
        ),
        (
            Failing::ReserveHigh,
            &MOST,
            tested.reserve,
            spec.reserve_max,
        ),
        (Failing::Kappa, &MOST, tested.kappa, spec.kappa_max),
    ];
    let mut failing = Vec::new();
    for (property, rule, found, limit) in limits {
        let Some(limit) = limit else { continue };
        let (own, limit) = (found.value.value(), Figure::of(limit, found.value.unit()));
        let meets = if rule.id == LEAST.id {
            own >= limit.value()
        } else {
            own <= limit.value()
        };
        let inputs = [
            ("found", found.into()),
            ("limit", Stated::table(code, limit).into()),
        ];
        let line = working.by(rule, Subject::of("board", "meets"), &inputs, meets);
        if !meets {
            failing.push((property, line));
        }
    }
    Ok(failing)
}
