//! Whether a plan for sticks holds: an independent reckoning, straight from the problem.

use std::collections::{BTreeMap, BTreeSet};

use super::{Layout, Plan, Problem, Stick, Together};
use crate::Goal;
use crate::check::{Account, Broken, Tally};

/// Holds a plan against its problem: every piece whole on its stick, the kerf between neighbours,
/// flaws untouched, what belongs together together, counts, objective and bound as claimed, and
/// every bit of every stick accounted for.
///
/// Shape:  lengths in the problem's unit.
/// Errors: the first law broken, both sides and the gap between them.
pub fn check(problem: &Problem, plan: &Plan) -> Result<Tally, Broken> {
    let mut tally = Tally::default();
    let mut cut = vec![0_u128; problem.pieces.len()];
    let mut used = vec![0_u128; problem.stock.len()];
    for (index, layout) in plan.layouts.iter().enumerate() {
        let account = account(problem, index + 1, layout, &mut tally.largest_remnant)?;
        tally.book(index + 1, layout.copies, account)?;
        used[layout.stock] += u128::from(layout.copies);
        tally.used += u128::from(layout.copies);
        for placed in &layout.pieces {
            cut[placed.piece] += u128::from(layout.copies);
        }
    }
    demands(problem, plan, &cut)?;
    for (stick, &used) in problem.stock.iter().zip(&used) {
        if let Some(held) = stick.count
            && used > u128::from(held)
        {
            return Err(Broken::OverStock {
                stock: stick.name.clone(),
                used,
                held,
            });
        }
    }
    groups(problem, plan)?;
    tally.objective = objective(problem, &used, &cut, tally.used)?;
    claims(problem, plan, tally.objective)?;
    Ok(tally)
}

/// A piece or a remnant on a stick.
struct Part {
    name: String,
    from: u128,
    to: u128,
    remnant: bool,
}

fn account(
    problem: &Problem,
    number: usize,
    layout: &Layout,
    largest: &mut u128,
) -> Result<Account, Broken> {
    let stick = problem.stock.get(layout.stock).ok_or(Broken::NoSuch {
        layout: number,
        what: "stock",
        number: layout.stock,
        held: problem.stock.len(),
    })?;
    if layout.copies == 0 {
        return Err(Broken::NoCopies { layout: number });
    }
    if layout.pieces.is_empty() {
        return Err(Broken::Empty { layout: number });
    }
    let mut parts = parts(problem, number, layout)?;
    parts.sort_by_key(|part| (part.from, part.to));
    let room = room(stick);
    for part in &parts {
        inside(number, stick, room, part)?;
    }
    for pair in parts.windows(2) {
        apart(number, problem.kerf, &pair[0], &pair[1])?;
    }
    for part in parts.iter().filter(|part| part.remnant) {
        *largest = (*largest).max(part.to - part.from);
    }
    Ok(added_up(problem.kerf, stick, room, &parts))
}

/// From where to where a stick can be used.
fn room(stick: &Stick) -> (u128, u128) {
    let length = u128::from(stick.length);
    let from = u128::from(stick.trim.0).min(length);
    (
        from,
        length.saturating_sub(u128::from(stick.trim.1)).max(from),
    )
}

fn parts(problem: &Problem, number: usize, layout: &Layout) -> Result<Vec<Part>, Broken> {
    let mut parts = Vec::with_capacity(layout.pieces.len() + layout.remnants.len());
    for placed in &layout.pieces {
        let piece = problem.pieces.get(placed.piece).ok_or(Broken::NoSuch {
            layout: number,
            what: "piece",
            number: placed.piece,
            held: problem.pieces.len(),
        })?;
        parts.push(Part {
            name: format!("piece {:?}", piece.name),
            from: u128::from(placed.at),
            to: u128::from(placed.at) + u128::from(piece.length),
            remnant: false,
        });
    }
    for &(from, to) in &layout.remnants {
        if to <= from {
            return Err(Broken::NoRemnant { layout: number });
        }
        parts.push(Part {
            name: format!("the remnant from {from}"),
            from: u128::from(from),
            to: u128::from(to),
            remnant: true,
        });
    }
    Ok(parts)
}

fn inside(number: usize, stick: &Stick, room: (u128, u128), part: &Part) -> Result<(), Broken> {
    if part.from < room.0 || part.to > room.1 {
        return Err(Broken::Outside {
            layout: number,
            part: part.name.clone(),
            direction: "along",
            from: part.from,
            to: part.to,
            room,
        });
    }
    let touched = stick
        .flaws
        .iter()
        .find(|flaw| part.from < u128::from(flaw.1) && u128::from(flaw.0) < part.to);
    match touched {
        Some(&flaw) => Err(Broken::Flawed {
            layout: number,
            part: part.name.clone(),
            from: part.from,
            to: part.to,
            flaw,
        }),
        None => Ok(()),
    }
}

fn apart(number: usize, kerf: u64, one: &Part, other: &Part) -> Result<(), Broken> {
    if other.from >= one.to + u128::from(kerf) {
        return Ok(());
    }
    let apart = if other.from >= one.to {
        signed(other.from - one.to)
    } else {
        -signed(one.to.min(other.to) - other.from)
    };
    Err(Broken::Close {
        layout: number,
        parts: (one.name.clone(), other.name.clone()),
        apart,
        kerf,
    })
}

fn signed(length: u128) -> i128 {
    i128::try_from(length).unwrap_or(i128::MAX)
}

/// Adds up what lies between the parts, gap by gap, never as a difference.
///
/// Beside every part that does not end with the room there is one cut, as wide as the kerf or as
/// what is left; between two parts there are two, or one where nothing lies between.
fn added_up(kerf: u64, stick: &Stick, room: (u128, u128), parts: &[Part]) -> Account {
    let kerf = u128::from(kerf);
    let mut account = Account {
        stock: u128::from(stick.length),
        trim: room.0 + (u128::from(stick.length) - room.1),
        ..Account::default()
    };
    let mut end = room.0;
    for (index, part) in parts.iter().enumerate() {
        let gap = part.from - end;
        let cuts = if index == 0 { 1 } else { 2 };
        let dust = gap.min(cuts * kerf);
        account.kerf += dust;
        account.waste += gap - dust;
        if part.remnant {
            account.remnants += part.to - part.from;
        } else {
            account.pieces += part.to - part.from;
        }
        end = part.to;
    }
    let gap = room.1 - end;
    account.kerf += gap.min(kerf);
    account.waste += gap - gap.min(kerf);
    account
}

fn demands(problem: &Problem, plan: &Plan, cut: &[u128]) -> Result<(), Broken> {
    let mut uncut = vec![0_u128; problem.pieces.len()];
    for &(piece, count) in &plan.uncut {
        let held = problem.pieces.len();
        *uncut.get_mut(piece).ok_or(Broken::NoSuch {
            layout: 0,
            what: "uncut piece",
            number: piece,
            held,
        })? += u128::from(count);
    }
    for (piece, (&cut, &uncut)) in problem.pieces.iter().zip(cut.iter().zip(&uncut)) {
        let Some(ordered) = piece.count else { continue };
        let met = match problem.goal {
            Goal::Value => cut <= u128::from(ordered),
            Goal::Fewest | Goal::Cost => cut + uncut == u128::from(ordered),
        };
        if !met {
            return Err(Broken::Demand {
                piece: piece.name.clone(),
                cut,
                uncut,
                ordered,
            });
        }
    }
    Ok(())
}

/// The run a stick belongs to.
#[derive(PartialEq, Eq, PartialOrd, Ord)]
enum Run<'a> {
    Named(&'a str),
    /// Bought together.
    Bought,
    /// A stick held, and nothing else: its layout.
    Own(usize),
}

/// What belongs together lies together.
fn groups(problem: &Problem, plan: &Plan) -> Result<(), Broken> {
    let mut sticks: BTreeMap<&str, u128> = BTreeMap::new();
    let mut runs: BTreeMap<&str, BTreeMap<Run<'_>, u128>> = BTreeMap::new();
    for (index, layout) in plan.layouts.iter().enumerate() {
        let here: BTreeSet<usize> = layout.pieces.iter().map(|placed| placed.piece).collect();
        let mut counted = BTreeSet::new();
        for piece in here {
            match &problem.pieces[piece].together {
                Some(Together::Stick(group)) if counted.insert(group) => {
                    *sticks.entry(group).or_default() += u128::from(layout.copies);
                }
                Some(Together::Run(group)) => {
                    let stick = &problem.stock[layout.stock];
                    let (run, count) = match (&stick.run, stick.count) {
                        (Some(run), _) => (Run::Named(run), 1),
                        (None, None) => (Run::Bought, 1),
                        (None, Some(_)) => (Run::Own(index), u128::from(layout.copies)),
                    };
                    runs.entry(group).or_default().insert(run, count);
                }
                Some(Together::Stick(_)) | None => {}
            }
        }
    }
    for (group, sticks) in sticks {
        if sticks > 1 {
            let group = group.to_owned();
            return Err(Broken::Divided { group, sticks });
        }
    }
    for (group, runs) in runs {
        let runs: u128 = runs.values().sum();
        if runs > 1 {
            let group = group.to_owned();
            return Err(Broken::Runs { group, runs });
        }
    }
    Ok(())
}

fn objective(problem: &Problem, used: &[u128], cut: &[u128], sticks: u128) -> Result<u128, Broken> {
    match problem.goal {
        Goal::Fewest => Ok(sticks),
        Goal::Cost => total(problem.stock.iter().map(|stick| stick.cost), used),
        Goal::Value if sticks > 1 => Err(Broken::Several { used: sticks }),
        Goal::Value => total(problem.pieces.iter().map(|piece| piece.value), cut),
    }
}

fn total(each: impl Iterator<Item = u64>, counts: &[u128]) -> Result<u128, Broken> {
    let mut sum = 0_u128;
    for (each, &count) in each.zip(counts) {
        let product = count.checked_mul(u128::from(each));
        sum = product
            .and_then(|product| sum.checked_add(product))
            .ok_or(Broken::Countless)?;
    }
    Ok(sum)
}

/// The objective and the bound, as far as both speak of the whole list.
fn claims(problem: &Problem, plan: &Plan, counted: u128) -> Result<(), Broken> {
    if u128::from(plan.objective) != counted {
        return Err(Broken::Objective {
            claimed: plan.objective,
            counted,
        });
    }
    let bound = u128::from(plan.bound);
    let ceiling = problem.goal == Goal::Value;
    let crossed = match problem.goal {
        Goal::Value => bound < counted,
        // What is left uncut may be what the bound is made of.
        Goal::Fewest | Goal::Cost => bound > counted && plan.uncut.is_empty(),
    };
    if crossed {
        return Err(Broken::Bound {
            claimed: plan.bound,
            counted,
            ceiling,
        });
    }
    Ok(())
}

#[cfg(test)]
mod tests;
