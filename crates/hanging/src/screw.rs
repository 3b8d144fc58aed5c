//! Screws: what pulls one out of a rail, what it bears sideways, which length fits.

use std::fmt;
use std::sync::LazyLock;

use conservation::rules::{cited, custom, figure, remembered, rough};
use conservation::{Fact, Refusal as Outside, Text, lasting, rows, within};
use measure::Length;
use serde::Deserialize;
use working::{Figure, Rule, Stated, Subject, Worked, Working};

use crate::refusal::Refusal;

static SHANK: Rule = cited(
    "screw.shank",
    "a gauge is a step of the shank's thickness",
    "shank = nearest((base + step × gauge) × 1 in)",
    "E10",
);
static ULTIMATE: Rule = cited(
    "screw.ultimate",
    "a screw is pulled from side grain by the square of the wood's density, its shank and its thread in the wood",
    "force = constant × gravity × gravity × shank ÷ 1 mm × thread ÷ 1 mm",
    "E6",
);
static ALLOWABLE: Rule = cited(
    "screw.allowable",
    "a design code allows a fifth or so of what pulls it out",
    "force = ultimate × allowed ÷ breaks",
    "E4",
);
static LATERAL: Rule = remembered(
    "screw.lateral",
    "sideways a screw bears by its group of woods and the square of its shank",
    "force = constant × shank ÷ 1 mm × shank ÷ 1 mm",
    "H1",
);
static LONGEST: Rule = custom(
    "screw.longest",
    "a screw leaves some wood beyond its point",
    "longest = rail - land",
);

/// Sideways strength of a group of woods.
#[derive(Clone, Copy, Debug, Deserialize)]
pub struct LateralGroup {
    /// Hardwood or softwood.
    #[serde(deserialize_with = "lasting")]
    pub group: Text,
    /// Specific gravity from.
    pub sg_min: f64,
    /// Specific gravity to.
    pub sg_max: f64,
    /// Constant, N/mm².
    #[serde(rename = "K_N_per_mm2")]
    pub newtons: f64,
    /// The same, psi.
    #[serde(rename = "K_psi")]
    pub psi: f64,
}

/// The groups.
pub static LATERAL_GROUPS: LazyLock<Vec<LateralGroup>> =
    LazyLock::new(|| rows(include_str!("../data/screw_lateral_k.csv")));

/// The shank of a gauge, to the nearest quantum.
///
/// shank = 0.060 + 0.013 × gauge, inches
///
/// Errors: a gauge above 24 or below 0.
/// Source: NDS (from memory).
pub fn shank(gauge: Stated<i64>, working: &mut Working) -> Result<Worked<Length>, Refusal> {
    let number = i32::try_from(gauge.value).unwrap_or(i32::MAX);
    within("gauge", Figure::of(f64::from(number), ""))?;
    let [base, step] = ["gauge.base", "gauge.step"].map(Fact::named);
    let inches = base.low() + step.low() * f64::from(number);
    let value = Length::INCH.scaled_nearest(inches).unwrap_or_default();
    let inputs = [
        ("base", base.only().into()),
        ("step", step.only().into()),
        ("gauge", gauge.into()),
    ];
    Ok(working.by(&SHANK, Subject::of("screw", "shank"), &inputs, value))
}

/// What pulls a screw straight out.
#[derive(Clone, Copy, Debug)]
pub struct Withdrawal {
    /// What pulls it out, N.
    pub ultimate: Worked<Figure>,
    /// What a design code allows, N.
    pub allowable: Worked<Figure>,
}

/// What pulls a screw straight out of side grain.
///
/// ultimate = 108.25 × G² × D × L; allowable = ultimate × 2850 ÷ 15700
///
/// Shape:  nothing is counted on in end grain.
/// Units:  specific gravity; newtons.
/// Errors: no shank or thread, a specific gravity outside what can be.
/// Source: Wood Handbook's equation as quoted (E6), a design code (E4, E5). Advice, never a
///         certificate: show [`CAUTION`](crate::CAUTION) beside it.
/// Example: gravity 0.7, gauge 8, 1 in: 5612 N, 1019 N allowed.
pub fn withdrawal(
    gravity: Stated<Figure>,
    shank: Stated<Length>,
    thread: Stated<Length>,
    working: &mut Working,
) -> Result<Withdrawal, Refusal> {
    let dense = within("gravity_ratio", gravity.value)?;
    Refusal::unless_positive("the shank", shank.value)?;
    Refusal::unless_positive("the thread", thread.value)?;
    let constant = Fact::named("withdrawal.ultimate");
    let (d, l) = (shank.value.approx_mm(), thread.value.approx_mm());
    let out = constant.low() * dense * dense * d * l;
    let inputs = [
        ("constant", constant.only().into()),
        ("gravity", gravity.into()),
        ("shank", shank.into()),
        ("thread", thread.into()),
    ];
    let subject = |quantity| Subject::of("screw", quantity);
    let ultimate = figure(working, &ULTIMATE, subject("ultimate"), &inputs, (out, "N"));
    let [allowed, breaks] =
        ["withdrawal.allowable_psi", "withdrawal.ultimate_psi"].map(Fact::named);
    let inputs = [
        ("ultimate", ultimate.into()),
        ("allowed", allowed.only().into()),
        ("breaks", breaks.only().into()),
    ];
    let value = (out * allowed.low() / breaks.low(), "N");
    Ok(Withdrawal {
        ultimate,
        allowable: figure(working, &ALLOWABLE, subject("allowable"), &inputs, value),
    })
}

/// The group a wood belongs to: its own, or the nearest of its kind below.
///
/// Errors: a wood lighter than every group of its kind.
pub fn lateral_group(softwood: bool, gravity: Figure) -> Result<&'static LateralGroup, Refusal> {
    let kind = if softwood { "softwood" } else { "hardwood" };
    let of_kind = LATERAL_GROUPS.iter().filter(|group| group.group == kind);
    let mut reached = of_kind.filter(|group| group.sg_min <= gravity.value() + GRAIN);
    reached.next_back().ok_or_else(|| {
        let what = "group of woods so light";
        Outside::unknown(what, &gravity.to_string(), ["0.29 and up"].into_iter()).into()
    })
}

/// What two printed decimals can't tell apart.
const GRAIN: f64 = 1e-9; // geometry: a float's grain

/// What a screw bears sideways, at a slip of about 0.2 mm, newtons.
///
/// force = K × D²
///
/// Errors: no shank.
/// Source: Wood Handbook (from memory).
/// Example: hardwood of 0.33 to 0.47, gauge 8: 402 N.
pub fn lateral(
    group: &LateralGroup,
    shank: Stated<Length>,
    working: &mut Working,
) -> Result<Worked<Figure>, Refusal> {
    Refusal::unless_positive("the shank", shank.value)?;
    let constant = Stated::table("H1", Figure::of(group.newtons, "N/mm²"));
    let d = shank.value.approx_mm();
    let inputs = [("constant", constant.into()), ("shank", shank.into())];
    let value = (group.newtons * d * d, "N");
    let subject = Subject::of("screw", "lateral");
    Ok(figure(working, &LATERAL, subject, &inputs, value))
}

/// The longest screw that fits a rail from behind.
///
/// longest = rail − land
///
/// Errors: a rail no thicker than the land.
pub fn longest(
    rail: Stated<Length>,
    land: Stated<Length>,
    working: &mut Working,
) -> Result<Worked<Length>, Refusal> {
    let value = rail.value - land.value;
    Refusal::unless_positive("the wood a screw may enter", value)?;
    let inputs = [("rail", rail.into()), ("land", land.into())];
    Ok(working.by(&LONGEST, Subject::of("screw", "longest"), &inputs, value))
}

impl Withdrawal {
    /// What pulls it out, what is allowed, and the factor between them.
    pub fn sentence(&self) -> String {
        let (breaks, allowed) = (self.ultimate.value.value(), self.allowable.value.value());
        format!(
            "{} N pull it straight out; {} N are allowed, a factor of {}",
            rough(breaks),
            rough(allowed),
            rough(breaks / allowed)
        )
    }
}

/// Its [`sentence`](Withdrawal::sentence), and [`CAUTION`](crate::CAUTION).
impl fmt::Display for Withdrawal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}. {}", self.sentence(), crate::CAUTION)
    }
}
