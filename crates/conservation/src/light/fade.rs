//! Fading: what a dose of light does to a blue wool, and how long a class of media lasts.

use std::sync::LazyLock;

use serde::Deserialize;
use trade::{Key, Settings, SourcedStatus};
use working::{Figure, Rule, Stated, Subject, Worked, Working};

use super::exposure::{Exposure, Showing, exposure, yearly};
use super::medium::Class;
use crate::refusal::Refusal;
use crate::rules::{Span, cited, figure};
use crate::table::{Text, Trust, lasting, rows, status, within};

static STEPS: Rule = cited(
    "light.steps",
    "fading in just noticeable steps is exposure over the dose of one step",
    "steps = total ÷ (dose × 1000000)",
    "L3",
);
static YEARS: Rule = cited(
    "light.years",
    "years to a just noticeable fade are its dose over a year's exposure",
    "years = dose × 1000000 ÷ exposure",
    "L3",
);

/// One million, lux hours in a megalux hour.
const MEGA: f64 = 1e6; // geometry: a prefix

/// One of the eight blue wools.
#[derive(Clone, Copy, Debug, Deserialize)]
pub struct BlueWool {
    /// 1 fades first, 8 last.
    pub blue_wool: u8,
    /// Its class.
    pub cie_category: Class,
    /// Dose of one just noticeable fade with ultraviolet, Mlx h.
    #[serde(rename = "jnf_dose_with_UV_Mlxh")]
    pub with_uv: f64,
    /// The same without, Mlx h.
    #[serde(rename = "jnf_dose_no_UV_Mlxh")]
    pub without_uv: f64,
    /// Without over with.
    #[serde(rename = "life_gain_from_removing_UV_ratio")]
    pub gain: f64,
    #[serde(deserialize_with = "lasting")]
    source_id: Text,
    #[serde(deserialize_with = "status")]
    status: SourcedStatus,
}

static WOOLS: LazyLock<Vec<BlueWool>> =
    LazyLock::new(|| rows(include_str!("../../data/light_blue_wool_dose.csv")));

/// One step of the grey scale for fading.
#[derive(Clone, Copy, Debug, Deserialize)]
pub struct GreyStep {
    /// 5 is no change; 4 is just noticeable.
    pub grade: f64,
    /// Difference of colour, CIELAB.
    pub delta_e_cielab: f64,
    /// How far a scale may be off.
    pub tolerance: f64,
}

/// The grey scale.
pub static GREY_SCALE: LazyLock<Vec<GreyStep>> =
    LazyLock::new(|| rows(include_str!("../../data/light_grey_scale.csv")));

impl BlueWool {
    /// Where its doses are from.
    pub const fn trust(&self) -> Trust {
        Trust {
            source: self.source_id,
            status: self.status,
        }
    }

    /// The dose of one just noticeable fade, on its way into a line.
    fn dose(&self, uv_removed: bool, settings: &Settings) -> Stated<Figure> {
        let stated = |value| Stated::table(self.trust().code(), Figure::of(value, "Mlx h"));
        if !uv_removed {
            return stated(self.with_uv);
        }
        let last = WOOLS.iter().all(|wool| wool.blue_wool <= self.blue_wool);
        if last {
            let own = i32::try_from(settings.count(Key::WoolEightDose)).unwrap_or(i32::MAX);
            return Stated::setting(Key::WoolEightDose.id(), Figure::of(f64::from(own), "Mlx h"));
        }
        stated(self.without_uv)
    }
}

/// The blue wool of this number.
///
/// Errors: no such wool.
pub fn wool(number: u8) -> Result<&'static BlueWool, Refusal> {
    let found = WOOLS.iter().find(|wool| wool.blue_wool == number);
    let names = ["1", "2", "3", "4", "5", "6", "7", "8"];
    found.ok_or_else(|| Refusal::unknown("blue wool", &number.to_string(), names.into_iter()))
}

/// What an exposure does to one blue wool.
#[derive(Clone, Copy, Debug)]
pub struct Fade {
    /// The exposure.
    pub exposure: Exposure,
    /// Dose of one just noticeable fade, Mlx h.
    pub dose: Figure,
    /// Fading so far, in just noticeable steps.
    pub steps: Worked<Figure>,
    /// Years to the first of them.
    pub years: Worked<Figure>,
}

/// What so many years of showing do to a blue wool.
///
/// steps = total ÷ dose; years = dose ÷ yearly exposure
///
/// Units:  just noticeable fades (grey scale step 4, about 1.7 CIELAB); years.
/// Errors: as [`exposure`]; no such wool.
/// Source: CIE 157:2004 (from memory), the scale without ultraviolet seen elsewhere.
/// Example: wool 1 at 50 lx, 8 h a day, without ultraviolet: two years.
pub fn fade(
    showing: &Showing,
    years: Stated<Figure>,
    (number, uv_removed): (u8, bool),
    settings: &Settings,
    working: &mut Working,
) -> Result<Fade, Refusal> {
    let wool = wool(number)?;
    let exposure = exposure(showing, years, working)?;
    let dose = wool.dose(uv_removed, settings);
    let inputs = [("total", exposure.total.into()), ("dose", dose.into())];
    let steps = exposure.total.value.value() / (dose.value.value() * MEGA);
    let subject = Subject::nth("light.wool", usize::from(number) - 1, "steps");
    let steps = figure(working, &STEPS, subject, &inputs, (steps, "steps"));
    Ok(Fade {
        exposure,
        dose: dose.value,
        steps,
        years: years_of(number, dose, exposure.yearly, working),
    })
}

/// Years of a yearly exposure to one just noticeable fade of one wool.
///
/// Errors: no such wool.
pub fn years_for_wool(
    number: u8,
    uv_removed: bool,
    yearly: Worked<Figure>,
    settings: &Settings,
    working: &mut Working,
) -> Result<Worked<Figure>, Refusal> {
    let dose = wool(number)?.dose(uv_removed, settings);
    within("dose", dose.value)?;
    Ok(years_of(number, dose, yearly, working))
}

fn years_of(
    number: u8,
    dose: Stated<Figure>,
    yearly: Worked<Figure>,
    working: &mut Working,
) -> Worked<Figure> {
    let inputs = [("dose", dose.into()), ("exposure", yearly.into())];
    let years = dose.value.value() * MEGA / yearly.value.value();
    let subject = Subject::nth("light.wool", usize::from(number) - 1, "years");
    figure(working, &YEARS, subject, &inputs, (years, "years"))
}

/// Years to a just noticeable fade of a class of media: from the first of its wools to the last.
///
/// Shape:  none for the class that light does not fade.
/// Units:  years; a range, for a class spans three wools and no medium is known better untested.
/// Errors: as [`exposure`].
/// Example: the most sensitive class at 150 lx, 3000 h a year, with ultraviolet: half a year to 3.
pub fn years(
    class: Class,
    uv_removed: bool,
    showing: &Showing,
    settings: &Settings,
    working: &mut Working,
) -> Result<Option<Span>, Refusal> {
    let yearly = yearly(showing, working)?;
    let mut of_class = WOOLS.iter().filter(|wool| wool.cie_category == class);
    let Some(first) = of_class.next() else {
        return Ok(None);
    };
    let last = of_class.next_back().unwrap_or(first);
    let mut at =
        |wool: &BlueWool| years_for_wool(wool.blue_wool, uv_removed, yearly, settings, working);
    Ok(Some(Span::of(at(first)?, at(last)?)))
}
