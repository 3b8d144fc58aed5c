//! Problems and plans as JSON text, for people, tests and other programs.
//!
//! A text holds one instance (`cutting-instance/1`), a set of them (`cutting-set/1`: each instance
//! is `defaults` overlaid with its own fields) or a list of instances. Every number is whole.
//!
//! | field of an instance | meaning |
//! | --- | --- |
//! | `name`, `family` | unique name; class it belongs to |
//! | `dim` | 1 sticks, 2 sheets |
//! | `objective` | `bins` (the default), `cost` or `value` |
//! | `kerf` | lost between two neighbouring parts; 0 if not given |
//! | `trim` | unusable `[left, right]` or `[left, right, bottom, top]`; stock may carry its own |
//! | `stages`, `first_cut`, `final_trim` | limit of cutting directions; `v`, `h` or `any`; true if not given |
//! | `min_strip` | least width of any strip, for stock that is scored and broken |
//! | `rotate` | whether pieces may be turned; true if not given |
//! | `use_windows` | whether windows are cut up too |
//! | `stock` | `id`, `l` or `w` and `h`, `qty` (without end if null or not given), `cost` (its size if not given), `remnant`, `trim` |
//! | `pieces` | `id`, `l` or `w` and `h`, `qty` (1 if not given, without end if null), `value` (its size if not given), `rot`, `window` |
//! | `best` | what is known: `ub` the best objective, `lb` or `ceiling` a bound |
//! | `format`, `unit`, `guillotine` | which format; for people only; must not be false |
//!
//! Fields of our own, all optional:
//!
//! | field | meaning |
//! | --- | --- |
//! | stock, sticks: `flaws` | `[[from, to], …]`: stretches no piece may touch |
//! | stock, sticks: `run` | sticks of one run match in colour and profile |
//! | pieces, sticks: `together` | `{"stick": NAME}` or `{"run": NAME}`: all pieces of that group from one stick, or from one run |
//! | pieces: `priority` | higher is cut first where the stock does not reach |
//! | pieces: `due` | days; earlier is cut first |
//!
//! A plan (`cutting-plan/1`) lists `sticks` or `sheets` with their pieces, cuts and remnants, the
//! `objective`, the `bound` and, where the stock did not reach, `uncut` pieces.

mod instance;
mod plan;
mod reading;
mod writing;

pub use plan::{PlanRead, read_plans};
pub use reading::{Reason, Refusal};
pub use writing::{Written, lengths_plan, plans, sheets_plan};

use serde_json::Value;

use crate::{Pair, Problem};

/// One problem as it was read, and what is known about it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Instance {
    /// Its name; the problem bears it too.
    pub name: String,
    /// The class it belongs to.
    pub family: Option<String>,
    /// What is to be solved.
    pub problem: Problem,
    /// What is known of its best plan.
    pub best: Option<Best>,
}

/// What others have found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct Best {
    /// The best objective known.
    pub known: Option<u64>,
    /// A proven bound: no objective is below it (with the goal of most value: above).
    pub bound: Option<u64>,
}

/// Reads an instance, a set or a list of instances.
///
/// Errors: every fault of the text, each with the instance, the field and what to do.
pub fn read(text: &str) -> Result<Vec<Instance>, Vec<Refusal>> {
    instance::read(text)
}

/// Whether a text is JSON rather than TOML: it opens with a brace, or with a bracket that no
/// table's name follows.
pub fn is_json(text: &str) -> bool {
    let text = bare(text).trim_start();
    match text.strip_prefix('[') {
        Some(rest) => rest.trim_start().starts_with(['{', ']']),
        None => text.starts_with('{'),
    }
}

/// Whether a text of instances holds a set or a list of them; false where it is no JSON.
pub fn is_set(text: &str) -> bool {
    let value: Result<Value, _> = serde_json::from_str(bare(text));
    value.is_ok_and(|value| value.is_array() || value.get("instances").is_some())
}

/// A plan as it is written.
pub fn plan_of(pair: Pair<'_>) -> Written {
    match pair {
        Pair::Lengths(problem, plan) => lengths_plan(problem, plan),
        Pair::Sheets(problem, plan) => sheets_plan(problem, plan),
    }
}

/// Without the mark that some editors put in front of every text.
fn bare(text: &str) -> &str {
    text.strip_prefix('\u{feff}').unwrap_or(text)
}

#[cfg(test)]
mod tests;
