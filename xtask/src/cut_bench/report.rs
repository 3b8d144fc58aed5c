//! What the bench prints: a row per instance, then what they come to.
//!
//! Shares and ratios go through floats: they are read by people and decide nothing.
#![allow(clippy::cast_precision_loss)]

use std::collections::BTreeMap;
use std::io::{self, Write};
use std::time::Duration;

use cutting::Goal;
use cutting::Plan;
use cutting::document::Instance;

use super::Row;
use super::outside::Reference;

/// Width and name of each column after the first.
const COLUMNS: [(usize, &str); 14] = [
    (6, "used"),
    (12, "ours"),
    (12, "known"),
    (12, "bound"),
    (8, "gap %"),
    (9, "first s"),
    (9, "best s"),
    (9, "final s"),
    (9, "proved s"),
    (12, "ref value"),
    (12, "ref bound"),
    (9, "ref 1st"),
    (9, "ref s"),
    (8, "ratio"),
];

/// How wide the column of names is.
pub fn name_width(chosen: &[&Instance]) -> usize {
    let widths = chosen.iter().map(|instance| instance.name.chars().count());
    widths.max().unwrap_or(0).max("instance".len())
}

/// What is compared with what, and the names of the columns.
pub fn heading(
    seconds: f64,
    reference: Option<&Reference>,
    chosen: &[&Instance],
    out: &mut impl Write,
) -> io::Result<()> {
    let beside = match reference {
        Some(reference) => format!("beside packingsolver {} (ref)", reference.version),
        None => "no reference beside it".to_owned(),
    };
    writeln!(
        out,
        "{} instances, {seconds} s each, {beside}",
        chosen.len()
    )?;
    let width = name_width(chosen);
    write!(out, "{:width$}", "instance")?;
    for (width, name) in COLUMNS {
        write!(out, "{name:>width$}")?;
    }
    writeln!(out)
}

/// One row.
pub fn row(row: &Row<'_>, width: usize, out: &mut impl Write) -> io::Result<()> {
    let ours = &row.ours;
    let reference = row.reference.as_ref();
    let known = row.instance.best.and_then(|best| best.known);
    let proved = match ours.proof {
        Some(when) => seconds(when),
        None => "-".to_owned(),
    };
    let value = reference.and_then(|answer| answer.value);
    let ratio = ours
        .objective()
        .zip(value)
        .map(|(ours, theirs)| ours as f64 / theirs as f64);
    let cells = [
        number(used(row)),
        number(ours.objective()),
        number(known),
        number(ours.bound()),
        decimal(gap(row), 3),
        seconds(ours.first),
        seconds(ours.best),
        seconds(ours.end),
        proved,
        number(value),
        number(reference.and_then(|answer| answer.bound)),
        decimal(reference.and_then(|answer| answer.first), 4),
        decimal(reference.and_then(|answer| answer.seconds), 4),
        decimal(ratio, 4),
    ];
    write!(out, "{:width$}", row.instance.name)?;
    for ((width, _), cell) in COLUMNS.into_iter().zip(cells) {
        write!(out, "{cell:>width$}")?;
    }
    for fault in faults(row) {
        write!(out, "  {fault}")?;
    }
    if let Some(error) = reference.and_then(|answer| answer.error.as_ref()) {
        write!(out, "  (ref: {error})")?;
    }
    writeln!(out)
}

/// Why this row fails the run; empty when it does not.
pub fn faults(row: &Row<'_>) -> Vec<String> {
    let mut faults = Vec::new();
    let ours = &row.ours;
    if let Err(said) = &ours.outcome {
        faults.push(format!("NO PLAN: {}", said.join("; ")));
    }
    if let Some(Err(broken)) = &ours.checked {
        faults.push(format!("REFUSED: {broken}"));
    }
    if ours.uncut() > 0 {
        faults.push(format!("UNCUT: {}", ours.uncut()));
    }
    let best = row.instance.best.unwrap_or_default();
    if let Some((bound, known)) = ours.bound().zip(best.known)
        && is_better(ours.goal(), known, bound)
    {
        faults.push(format!("BOUND {bound} BEYOND THE KNOWN {known}"));
    }
    if let Some((objective, bound)) = ours.objective().zip(best.bound)
        && is_better(ours.goal(), objective, bound)
    {
        faults.push(format!("{objective} BEYOND THE RECORDED BOUND {bound}"));
    }
    // The reference regards no windows, so that it can only be dearer where there are any.
    let reference = row.reference.as_ref().and_then(|answer| answer.value);
    if let Some((bound, value)) = ours.bound().zip(reference)
        && is_better(ours.goal(), value, bound)
    {
        faults.push(format!("BOUND {bound} BEYOND THE REFERENCE'S PLAN {value}"));
    }
    faults
}

/// Sums, counts and shares, over all rows and by family.
pub fn summary(rows: &[Row<'_>], out: &mut impl Write) -> io::Result<()> {
    let mut families: BTreeMap<&str, Vec<&Row<'_>>> = BTreeMap::new();
    for row in rows {
        let family = row.instance.family.as_deref().unwrap_or("");
        families.entry(family).or_default().push(row);
    }
    writeln!(out)?;
    if families.len() > 1 {
        for (family, rows) in &families {
            total(family, rows, out)?;
        }
    }
    let all: Vec<&Row<'_>> = rows.iter().collect();
    total("all", &all, out)
}

fn total(name: &str, rows: &[&Row<'_>], out: &mut impl Write) -> io::Result<()> {
    let sum = |number: fn(&Row<'_>) -> Option<u64>| -> u128 {
        rows.iter()
            .filter_map(|row| number(row))
            .map(u128::from)
            .sum()
    };
    let objective = sum(|row| row.ours.objective());
    let bound = sum(|row| row.ours.bound());
    let share = if objective == 0 {
        0.0
    } else {
        100.0 * objective.abs_diff(bound) as f64 / objective.max(bound) as f64
    };
    let count = |holds: fn(&Row<'_>) -> bool| rows.iter().filter(|row| holds(row)).count();
    let known = |row: &Row<'_>| row.instance.best.and_then(|best| best.known);
    let pairs = rows.iter().filter_map(|row| {
        let ours = row.ours.objective()?;
        Some((row.ours.goal(), ours, known(row)?))
    });
    let (met, beaten, missed, ours, theirs) = against(pairs);
    writeln!(
        out,
        "{name}: {} instances, objective {objective}, bound {bound}, gap {share:.3} %, {} proved, {} failed",
        rows.len(),
        count(|row| row.ours.proof.is_some()),
        count(|row| !faults(row).is_empty()),
    )?;
    writeln!(
        out,
        "    known: {} at best known ({beaten} better), {missed} worse; {ours} against {theirs}",
        met + beaten
    )?;
    let pairs = rows.iter().filter_map(|row| {
        let value = row.reference.as_ref()?.value?;
        Some((row.ours.goal(), row.ours.objective()?, value))
    });
    let (met, beaten, missed, ours, theirs) = against(pairs);
    if met + beaten + missed > 0 {
        let theirs_proved = count(|row| row.reference.as_ref().is_some_and(|it| it.proved));
        writeln!(
            out,
            "    reference: {beaten} better, {met} equal, {missed} worse; {ours} against {theirs}; it proved {theirs_proved}; our time to proof {} of its (geometric mean where both proved)",
            decimal(proof_ratio(rows), 3)
        )?;
    }
    Ok(())
}

/// How often equal, better and worse, and the sums of both sides.
fn against(pairs: impl Iterator<Item = (Goal, u64, u64)>) -> (usize, usize, usize, u128, u128) {
    let (mut met, mut beaten, mut missed, mut ours, mut theirs) = (0, 0, 0, 0, 0);
    for (goal, own, other) in pairs {
        ours += u128::from(own);
        theirs += u128::from(other);
        if own == other {
            met += 1;
        } else if is_better(goal, own, other) {
            beaten += 1;
        } else {
            missed += 1;
        }
    }
    (met, beaten, missed, ours, theirs)
}

/// Geometric mean of our seconds to proof over the reference's.
fn proof_ratio(rows: &[&Row<'_>]) -> Option<f64> {
    /// Below this a clock says little.
    const LEAST: f64 = 1e-5;
    let logs: Vec<f64> = rows
        .iter()
        .filter_map(|row| {
            let theirs = row.reference.as_ref().filter(|answer| answer.proved)?;
            let ours = row.ours.proof?.as_secs_f64().max(LEAST);
            Some((ours / theirs.seconds?.max(LEAST)).ln())
        })
        .collect();
    let mean = logs.iter().sum::<f64>() / logs.len() as f64;
    (!logs.is_empty()).then(|| mean.exp())
}

fn is_better(goal: Goal, one: u64, other: u64) -> bool {
    match goal {
        Goal::Value => one > other,
        Goal::Fewest | Goal::Cost => one < other,
    }
}

/// How far plan and bound are apart, in hundredths of the larger.
fn gap(row: &Row<'_>) -> Option<f64> {
    let (objective, bound) = row.ours.objective().zip(row.ours.bound())?;
    let larger = objective.max(bound).max(1);
    Some(100.0 * objective.abs_diff(bound) as f64 / larger as f64)
}

/// Sticks or sheets of stock, windows not among them.
fn used(row: &Row<'_>) -> Option<u64> {
    let copies = match row.ours.outcome.as_ref().ok()? {
        Plan::Lengths(plan) => plan.layouts.iter().map(|layout| layout.copies).sum(),
        Plan::Sheets(plan) => {
            let whole = |layout: &&cutting::sheets::Layout| {
                matches!(layout.from, cutting::sheets::From::Stock(_))
            };
            let layouts = plan.layouts.iter().filter(whole);
            layouts.map(|layout| layout.copies).sum()
        }
    };
    Some(copies)
}

fn number(number: Option<u64>) -> String {
    number.map_or_else(|| "-".to_owned(), |number| number.to_string())
}

fn decimal(number: Option<f64>, places: usize) -> String {
    number.map_or_else(|| "-".to_owned(), |number| format!("{number:.places$}"))
}

fn seconds(time: Duration) -> String {
    format!("{:.4}", time.as_secs_f64())
}

#[cfg(test)]
mod tests;
