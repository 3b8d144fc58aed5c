//! How a plan's stock, costs and dangers are said.

use cutting::{Goal, Plan, Problem};
use demand::{Basis, Tick};
use measure::{Area, Currency, Money, Tape, Unit};
use trade::{Key, Pane, Settings};

use crate::cut_book::{CutProof, Danger};

/// How a plan's costs are said.
#[derive(Clone, Copy, Debug)]
pub enum PlanWords {
    /// A number.
    Plain,
    /// Money, or the length or area of the stock.
    Of {
        /// What is counted.
        basis: Basis,
        /// In which steps.
        tick: Tick,
        /// The unit of lengths.
        unit: Unit,
        /// What counts less than it costs.
        weighed: Weighed,
    },
}

/// What counts less in a plan than it costs, so that it is used first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weighed {
    /// Nothing: costs are costs.
    Nothing,
    /// Remnants.
    Remnants,
    /// Remnants and whole stock on the rack.
    RackToo,
}

impl Weighed {
    /// What it means for a sum, as a sentence.
    const fn note(self) -> &'static str {
        match self {
            Self::Nothing => "",
            Self::Remnants => {
                "As counted: a remnant counts less than new stock of its size, so that it is used first."
            }
            Self::RackToo => {
                "As counted: what lies on the rack counts less than its price and a remnant less than new stock of its size, so that they are used first."
            }
        }
    }
}

impl PlanWords {
    /// How good a plan is; nothing where the stock does not reach, since then nothing is proven.
    pub fn proof(self, problem: &Problem, plan: &Plan) -> Option<CutProof> {
        let goal = problem.goal();
        if goal != Goal::Value && !plan.uncut().is_empty() {
            return None;
        }
        let say = |amount: u64| self.amount(problem, amount);
        Some(CutProof {
            what: self.what(problem).to_owned(),
            reached: plan.objective(),
            bound: plan.bound(),
            reached_words: say(plan.objective()),
            bound_words: say(plan.bound()),
            more_is_better: goal == Goal::Value,
            note: match (goal, self) {
                (Goal::Cost, Self::Of { weighed, .. }) => weighed.note(),
                _ => "",
            },
        })
    }

    fn what(self, problem: &Problem) -> &'static str {
        match (problem.goal(), self, problem) {
            (Goal::Value, ..) => "Value",
            (Goal::Fewest, _, Problem::Lengths(_)) => "Sticks",
            (Goal::Fewest, _, Problem::Sheets(_)) => "Sheets",
            (Goal::Cost, Self::Plain, _) => "Cost",
            (Goal::Cost, Self::Of { basis, weighed, .. }, _) => match (basis, weighed) {
                (Basis::Measure, Weighed::Nothing) => "Stock",
                (Basis::Measure, _) => "Stock as counted",
                (Basis::Money(_), Weighed::Nothing) => "Cost",
                (Basis::Money(_), _) => "Cost as counted",
            },
        }
    }

    /// An amount the objective counts.
    pub fn amount(self, problem: &Problem, amount: u64) -> String {
        match (problem.goal(), self) {
            (
                Goal::Cost,
                Self::Of {
                    basis, tick, unit, ..
                },
            ) => match basis {
                Basis::Money(currency) => money(amount, currency),
                Basis::Measure => measured(problem, amount, tick, unit),
            },
            _ => amount.to_string(),
        }
    }
}

fn money(minor: u64, currency: Currency) -> String {
    i64::try_from(minor).map_or_else(
        |_| format!("{minor} minor units of {currency}"),
        |minor| Money { minor, currency }.to_string(),
    )
}

/// A length, or an area to the nearest hundredth of a square foot or ten-thousandth of a square
/// metre.
fn measured(problem: &Problem, amount: u64, tick: Tick, unit: Unit) -> String {
    const OF_FEET: u32 = 2;
    const OF_METRES: u32 = 4;
    let step = i128::from(tick.step().quanta());
    let counted = format!("{amount} × {}", tick.name());
    match problem {
        Problem::Lengths(_) => i64::try_from(i128::from(amount) * step).map_or(counted, |quanta| {
            measure::Length::from_quanta(quanta).exact(unit)
        }),
        Problem::Sheets(_) => {
            let Some(quanta) = i128::from(amount).checked_mul(step * step) else {
                return counted;
            };
            let area = Area::from_square_quanta(quanta);
            if unit.is_inch_family() {
                area.print_square_feet_nearest(OF_FEET)
            } else {
                area.print_m2_nearest(OF_METRES)
            }
        }
    }
}

/// What can hurt whoever cuts a list: sticks are sawn, sheets scored, broken or sawn.
///
/// Source: common practice, no source.
pub(super) fn dangers(problem: &Problem) -> Vec<Danger> {
    match problem {
        Problem::Lengths(_) => vec![Danger::Saw],
        Problem::Sheets(sheets) if sheets.rules.least_strip > 0 => {
            vec![Danger::Glass, Danger::Blade]
        }
        Problem::Sheets(sheets) if sheets.rules.kerf > 0 => vec![Danger::Saw, Danger::Blade],
        Problem::Sheets(_) => vec![Danger::Blade],
    }
}

/// What can hurt whoever cuts a ware of the trade.
///
/// Source: common practice, no source.
pub(super) fn dangers_of(batch: &demand::Batch, problem: &Problem) -> Vec<Danger> {
    use demand::WareKind::{Backing, Board, Fillet, Glazing, Moulding, Spacer, Strainer};
    let sawn = matches!(problem, Problem::Sheets(sheets) if sheets.rules.kerf > 0);
    let pane = batch.material.as_ref().and_then(|material| material.pane);
    match batch.ware.kind {
        Moulding | Fillet | Spacer | Strainer => vec![Danger::Saw],
        Glazing if pane == Some(Pane::Acrylic) && sawn => vec![Danger::Saw],
        Glazing if pane == Some(Pane::Acrylic) => vec![Danger::Blade],
        Glazing => vec![Danger::Glass],
        Board | Backing if sawn => vec![Danger::Saw, Danger::Blade],
        Board | Backing => vec![Danger::Blade],
    }
}

/// The shop's tape.
pub fn tape(settings: &Settings) -> Tape {
    match settings.choice(Key::PrintTape) {
        "1/8 in" => Tape::Eighths,
        "1/32 in" => Tape::ThirtySeconds,
        "1/64 in" => Tape::SixtyFourths,
        "0.5 mm" => Tape::HalfMillimetre,
        "1 mm" => Tape::Millimetre,
        _ => Tape::Sixteenths,
    }
}

/// `3 × 10 ft new`.
pub(super) fn times(count: u64, what: &str) -> String {
    format!("{count} × {what}")
}
