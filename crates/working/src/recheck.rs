//! Working every line out again.

use std::collections::HashMap;
use std::fmt;

use crate::formula::{Fault, Formula, Quantity};
use crate::rule::Rule;
use crate::subject::Subject;
use crate::trace::{LineId, LineView, Working};
use crate::value::{Input, Origin, Value};

/// How far a recorded length, area, mass or angle may lie from a formula that went through floats.
///
/// Units:  quanta (1/16 000 mm, its square, a nanogram, a millionth of a degree).
/// Why 1:  the recorded value was rounded to a whole quantum, in whichever direction its function names,
///         so it may lie just under one quantum from the unrounded result. Exact formulas get no allowance.
pub const FLOAT_ALLOWANCE: f64 = 1.0;

/// The same for counts, which are rounded to the nearest: half of one, and a breath for the float itself.
const COUNT_ALLOWANCE: f64 = 0.500_001;

/// The part of a figure by which a recheck may differ from it: the formula's order of operations is not
/// the program's, and a search stops a hair from its root.
const FIGURE_ALLOWANCE: f64 = 1e-7;

/// A figure this small counts as none.
const LEAST_FIGURE: f64 = 1e-6;

/// The part of a float that its last few bits can't tell apart, for areas past 2⁵⁰ quanta².
const FLOAT_GRAIN: f64 = 16.0 * f64::EPSILON;

/// A line that doesn't come out as recorded.
#[derive(Clone, Debug, PartialEq)]
pub struct Mismatch {
    /// The line.
    pub line: LineId,
    /// What it is about.
    pub subject: Subject,
    /// The rule whose formula was worked out.
    pub rule: &'static Rule,
    /// What is amiss.
    pub why: Why,
}

/// What is amiss with a line.
#[derive(Clone, Debug, PartialEq)]
pub enum Why {
    /// The formula gives another value.
    Differs {
        /// The value on the line.
        recorded: Value,
        /// What the formula gives.
        computed: Quantity,
        /// Computed less recorded; `None` where they are of different kinds, or yes and no.
        difference: Option<Quantity>,
    },
    /// The formula can't be read or worked out.
    Formula(Fault),
    /// An input is not what the line it came from holds.
    Input {
        /// The input's name.
        name: &'static str,
        /// The value recorded as input.
        recorded: Value,
        /// The line it came from.
        from: LineId,
        /// The value of that line.
        held: Value,
    },
}

impl fmt::Display for Mismatch {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} (rule {}): ", self.subject, self.rule.id)?;
        match &self.why {
            Why::Differs {
                recorded,
                computed,
                difference,
            } => {
                let recorded = Quantity::from(*recorded);
                write!(
                    f,
                    "recorded {recorded}, “{}” gives {computed}",
                    self.rule.formula
                )?;
                match difference {
                    Some(difference) => write!(f, "; {difference} apart"),
                    None => Ok(()),
                }
            }
            Why::Formula(fault) => write!(f, "“{}”: {fault}", self.rule.formula),
            Why::Input {
                name,
                recorded,
                held,
                ..
            } => {
                let (recorded, held) = (Quantity::from(*recorded), Quantity::from(*held));
                write!(
                    f,
                    "{name} is recorded as {recorded} and the line it came from holds {held}"
                )
            }
        }
    }
}

impl Working {
    /// Works every line out again from its recorded inputs and gives all that don't come out as recorded.
    ///
    /// Shape:  in the order of the lines; each formula is read once.
    /// Units:  exact formulas must give the recorded value exactly; those that went through floats may lie
    ///         [`FLOAT_ALLOWANCE`] from it.
    /// Errors: none; what can't be worked out is a mismatch.
    pub fn recheck(&self) -> Vec<Mismatch> {
        let mut formulas: HashMap<(&str, &str), Result<Formula, Fault>> = HashMap::new();
        let mut found = Vec::new();
        for line in self.lines() {
            let formula = formulas
                .entry((line.rule.id, line.rule.formula))
                .or_insert_with(|| Formula::read(line.rule.formula));
            let amiss = line.inputs.iter().filter_map(|input| self.strayed(input));
            let amiss = amiss.chain(differs(&line, formula));
            found.extend(amiss.map(|why| Mismatch {
                line: line.id,
                subject: line.subject,
                rule: line.rule,
                why,
            }));
        }
        found
    }

    /// Whether an input differs from the line it came from.
    fn strayed(&self, input: &Input) -> Option<Why> {
        let Origin::Line(from) = input.origin else {
            return None;
        };
        let held = self.line(from).value;
        (held != input.value).then_some(Why::Input {
            name: input.name,
            recorded: input.value,
            from,
            held,
        })
    }
}

fn differs(line: &LineView<'_>, formula: &Result<Formula, Fault>) -> Option<Why> {
    let computed = match formula
        .as_ref()
        .map_err(Fault::clone)
        .and_then(|formula| formula.evaluate(line.inputs))
    {
        Ok(computed) => computed,
        Err(fault) => return Some(Why::Formula(fault)),
    };
    let recorded = Quantity::from(line.value);
    let difference = computed.minus(recorded).ok();
    let agrees = match (&line.value, &difference) {
        (Value::Yes(_) | Value::Round(_), _) => computed == recorded,
        (_, None) => false,
        (value @ Value::Figure(_), Some(difference)) => is_near(value, &computed, difference),
        (_, Some(difference)) if difference.is_exact() => difference.is_zero(),
        (value, Some(difference)) => is_near(value, &computed, difference),
    };
    (!agrees).then_some(Why::Differs {
        recorded: line.value,
        computed,
        difference,
    })
}

fn is_near(value: &Value, computed: &Quantity, difference: &Quantity) -> bool {
    let (Some(size), Some(gap)) = (computed.float(), difference.float()) else {
        return false;
    };
    if let Value::Figure(figure) = value {
        return gap.abs()
            <= FIGURE_ALLOWANCE * size.abs().max(figure.value().abs()).max(LEAST_FIGURE);
    }
    let allowed = if matches!(value, Value::Count(_)) {
        COUNT_ALLOWANCE
    } else {
        FLOAT_ALLOWANCE
    };
    gap.abs() <= allowed.max(size.abs() * FLOAT_GRAIN)
}
