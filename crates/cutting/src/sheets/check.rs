//! Whether a plan for sheets holds: an independent reckoning, straight from the problem.

mod cuts;
mod replay;

use super::{Area, Edges, From, Layout, Placed, Plan, Problem};
use crate::Goal;
use crate::check::{Account, Broken, Tally};

pub(crate) use cuts::cuts;

/// Holds a plan against its problem: every piece on its sheet, of its size, turned only where it
/// may be, a kerf from its neighbours, freed by the cuts as they are listed within the stages, the
/// trimming cut and the least strip; windows cut up only after they are freed; counts, objective
/// and bound as claimed; every bit of every sheet accounted for.
///
/// Shape:  areas in the problem's unit, squared.
/// Errors: the first law broken, both sides and the gap between them.
pub fn check(problem: &Problem, plan: &Plan) -> Result<Tally, Broken> {
    let mut tally = Tally::default();
    let mut counts = Counts::of(problem);
    for (index, layout) in plan.layouts.iter().enumerate() {
        let number = index + 1;
        let sheet = sheet(problem, number, layout)?;
        let account = account(problem, number, layout, &sheet, &mut tally.largest_remnant)?;
        tally.book(number, layout.copies, account)?;
        counts.book(problem, number, layout)?;
        let copies = u128::from(layout.copies);
        match layout.from {
            From::Stock(_) => tally.used += copies,
            From::Window(_) => {
                tally.windows += copies;
                tally.reused = copies
                    .checked_mul(account.stock)
                    .and_then(|area| tally.reused.checked_add(area))
                    .ok_or(Broken::Countless)?;
            }
        }
    }
    counts.demands(problem, plan)?;
    counts.held(problem)?;
    tally.objective = counts.objective(problem, tally.used)?;
    claims(problem, plan, tally.objective)?;
    Ok(tally)
}

/// The sheet a layout is cut from.
struct Whole {
    width: u64,
    height: u64,
    trim: Edges,
}

impl Whole {
    /// What of it can be used; `None` when the trim leaves nothing.
    fn usable(&self) -> Option<Area> {
        let across = self.trim.left.checked_add(self.trim.right)?;
        let up = self.trim.bottom.checked_add(self.trim.top)?;
        Some(Area {
            x: self.trim.left,
            y: self.trim.bottom,
            width: self.width.checked_sub(across)?,
            height: self.height.checked_sub(up)?,
        })
    }
}

fn sheet(problem: &Problem, number: usize, layout: &Layout) -> Result<Whole, Broken> {
    if layout.copies == 0 {
        return Err(Broken::NoCopies { layout: number });
    }
    if layout.pieces.is_empty() {
        return Err(Broken::Empty { layout: number });
    }
    match layout.from {
        From::Stock(stock) => {
            let sheet = problem.stock.get(stock).ok_or(Broken::NoSuch {
                layout: number,
                what: "stock",
                number: stock,
                held: problem.stock.len(),
            })?;
            Ok(Whole {
                width: sheet.width,
                height: sheet.height,
                trim: sheet.trim,
            })
        }
        From::Window(piece) => {
            let frees = piece_of(problem, number, piece)?;
            let (width, height) = frees.window.ok_or_else(|| Broken::NoWindow {
                layout: number,
                piece: frees.name.clone(),
            })?;
            Ok(Whole {
                width,
                height,
                trim: Edges::default(),
            })
        }
    }
}

fn piece_of(problem: &Problem, layout: usize, number: usize) -> Result<&super::Piece, Broken> {
    problem.pieces.get(number).ok_or(Broken::NoSuch {
        layout,
        what: "piece",
        number,
        held: problem.pieces.len(),
    })
}

/// A piece or a remnant on a sheet.
struct Part {
    name: String,
    area: Area,
    remnant: bool,
}

fn account(
    problem: &Problem,
    number: usize,
    layout: &Layout,
    sheet: &Whole,
    largest: &mut u128,
) -> Result<Account, Broken> {
    let parts = parts(problem, number, layout)?;
    let usable = sheet.usable().unwrap_or(Area {
        x: sheet.trim.left,
        y: sheet.trim.bottom,
        width: 0,
        height: 0,
    });
    for part in &parts {
        inside(number, &usable, part)?;
    }
    all_apart(number, problem.rules.kerf, &parts)?;
    let areas: Vec<Area> = parts.iter().map(|part| part.area).collect();
    let replayed = replay::replay(&problem.rules, number, usable, &layout.cuts, &areas)?;
    let mut account = Account {
        stock: u128::from(sheet.width) * u128::from(sheet.height),
        kerf: replayed.kerf,
        trim: trim(sheet, &usable),
        ..Account::default()
    };
    let mut left = replayed.parts;
    for part in &parts {
        if !left.remove(&part.area) {
            return Err(Broken::NotFreed {
                layout: number,
                part: part.name.clone(),
            });
        }
        if part.remnant {
            account.remnants += size(&part.area);
            *largest = (*largest).max(size(&part.area));
        } else {
            account.pieces += size(&part.area);
        }
    }
    account.waste = left.iter().map(size).sum();
    Ok(account)
}

fn size(area: &Area) -> u128 {
    u128::from(area.width) * u128::from(area.height)
}

/// The edges: left and right over the whole height, bottom and top between them.
fn trim(sheet: &Whole, usable: &Area) -> u128 {
    let (width, height) = (u128::from(sheet.width), u128::from(sheet.height));
    let sides = width.saturating_sub(u128::from(usable.width));
    let ends = height.saturating_sub(u128::from(usable.height));
    sides * height + ends * u128::from(usable.width)
}

fn parts(problem: &Problem, number: usize, layout: &Layout) -> Result<Vec<Part>, Broken> {
    let mut parts = Vec::with_capacity(layout.pieces.len() + layout.remnants.len());
    for placed in &layout.pieces {
        let piece = piece_of(problem, number, placed.piece)?;
        as_ordered(number, piece, placed)?;
        parts.push(Part {
            name: format!("piece {:?}", piece.name),
            area: placed.area,
            remnant: false,
        });
    }
    for remnant in &layout.remnants {
        if remnant.width == 0 || remnant.height == 0 {
            return Err(Broken::NoRemnant { layout: number });
        }
        parts.push(Part {
            name: format!("the remnant at {}, {}", remnant.x, remnant.y),
            area: *remnant,
            remnant: true,
        });
    }
    Ok(parts)
}

fn as_ordered(number: usize, piece: &super::Piece, placed: &Placed) -> Result<(), Broken> {
    let ordered = if placed.turned {
        (piece.height, piece.width)
    } else {
        (piece.width, piece.height)
    };
    let lies = (placed.area.width, placed.area.height);
    if lies != ordered {
        return Err(Broken::Size {
            layout: number,
            piece: piece.name.clone(),
            placed: lies,
            ordered,
        });
    }
    if placed.turned && !piece.turn && piece.width != piece.height {
        return Err(Broken::Turned {
            layout: number,
            piece: piece.name.clone(),
        });
    }
    Ok(())
}

/// From where to where an area reaches across and up.
fn reach(area: &Area) -> [(u128, u128); 2] {
    let along = |from: u64, size: u64| (u128::from(from), u128::from(from) + u128::from(size));
    [along(area.x, area.width), along(area.y, area.height)]
}

fn inside(number: usize, usable: &Area, part: &Part) -> Result<(), Broken> {
    let directions = ["across", "up"];
    let sides = reach(&part.area).into_iter().zip(reach(usable));
    for (direction, (lies, room)) in directions.into_iter().zip(sides) {
        if lies.0 < room.0 || lies.1 > room.1 {
            return Err(Broken::Outside {
                layout: number,
                part: part.name.clone(),
                direction,
                from: lies.0,
                to: lies.1,
                room,
            });
        }
    }
    Ok(())
}

/// Any two parts are a kerf apart, across or up.
fn all_apart(number: usize, kerf: u64, parts: &[Part]) -> Result<(), Broken> {
    let mut by_x: Vec<&Part> = parts.iter().collect();
    by_x.sort_by_key(|part| part.area);
    for (index, one) in by_x.iter().enumerate() {
        let [across, up] = reach(&one.area);
        for other in &by_x[index + 1..] {
            let [other_across, other_up] = reach(&other.area);
            if other_across.0 >= across.1 + u128::from(kerf) {
                break;
            }
            let apart = between(across, other_across).max(between(up, other_up));
            if apart < i128::from(kerf) {
                return Err(Broken::Close {
                    layout: number,
                    parts: (one.name.clone(), other.name.clone()),
                    apart,
                    kerf,
                });
            }
        }
    }
    Ok(())
}

/// The gap between two stretches; below 0 where they overlap. Sides are `u64`, so it fits.
fn between(one: (u128, u128), other: (u128, u128)) -> i128 {
    let signed = |length: u128| i128::try_from(length).unwrap_or(i128::MAX);
    (signed(other.0) - signed(one.1)).max(signed(one.0) - signed(other.1))
}

/// What a plan cuts and uses, counted.
struct Counts {
    cut: Vec<u128>,
    stock: Vec<u128>,
    windows: Vec<u128>,
}

impl Counts {
    fn of(problem: &Problem) -> Self {
        Self {
            cut: vec![0; problem.pieces.len()],
            stock: vec![0; problem.stock.len()],
            windows: vec![0; problem.pieces.len()],
        }
    }

    /// Books a layout; a window must have been freed by the layouts before.
    fn book(&mut self, problem: &Problem, number: usize, layout: &Layout) -> Result<(), Broken> {
        let copies = u128::from(layout.copies);
        match layout.from {
            From::Stock(stock) => self.stock[stock] += copies,
            From::Window(piece) => {
                self.windows[piece] += copies;
                if self.windows[piece] > self.cut[piece] {
                    return Err(Broken::OverWindows {
                        layout: number,
                        piece: problem.pieces[piece].name.clone(),
                        used: self.windows[piece],
                        freed: self.cut[piece],
                    });
                }
            }
        }
        for placed in &layout.pieces {
            self.cut[placed.piece] += copies;
        }
        Ok(())
    }

    fn demands(&self, problem: &Problem, plan: &Plan) -> Result<(), Broken> {
        let mut uncut = vec![0_u128; problem.pieces.len()];
        for &(piece, count) in &plan.uncut {
            piece_of(problem, 0, piece)?;
            uncut[piece] += u128::from(count);
        }
        for (index, piece) in problem.pieces.iter().enumerate() {
            let Some(ordered) = piece.count else { continue };
            let (cut, uncut) = (self.cut[index], uncut[index]);
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

    fn held(&self, problem: &Problem) -> Result<(), Broken> {
        for (sheet, &used) in problem.stock.iter().zip(&self.stock) {
            if let Some(held) = sheet.count
                && used > u128::from(held)
            {
                return Err(Broken::OverStock {
                    stock: sheet.name.clone(),
                    used,
                    held,
                });
            }
        }
        Ok(())
    }

    fn objective(&self, problem: &Problem, used: u128) -> Result<u128, Broken> {
        let costs = problem.stock.iter().map(|sheet| sheet.cost);
        let values = problem.pieces.iter().map(|piece| piece.value);
        match problem.goal {
            Goal::Fewest => Ok(used),
            Goal::Cost => total(costs, &self.stock),
            Goal::Value if used > 1 => Err(Broken::Several { used }),
            Goal::Value => total(values, &self.cut),
        }
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
    let crossed = match problem.goal {
        Goal::Value => bound < counted,
        // What is left uncut may be what the bound is made of.
        Goal::Fewest | Goal::Cost => bound > counted && plan.uncut.is_empty(),
    };
    if crossed {
        return Err(Broken::Bound {
            claimed: plan.bound,
            counted,
            ceiling: problem.goal == Goal::Value,
        });
    }
    Ok(())
}

#[cfg(test)]
pub(crate) mod tests;
