//! A settled day, as sheaves: every stick and sheet by itself, parts named by job.

use std::collections::BTreeMap;

use cutting::sheets::{Area, Edges, Way};
use cutting::{Plan, Problem, lengths, sheets};
use demand::{
    Batch, Day, Extent, From, Left, Outcome, PartAt, Settled, Spot, Taken, WareKind, Work,
};
use drawing::{Counting, CutPiece, CutSheet, CutStick, CutWindow, Kept, StickPiece};
use measure::{Length, Rounding, Tape, Toward};
use sizing::Sizes;
use trade::Settings;

use super::Sheaf;
use super::words::{PlanWords, dangers_of, tape, times};
use crate::cut_book::{CutLeaf, CutMaterial};

/// One sheaf for each material of a day.
///
/// Shape:  `plans` and `outcome` are the day's own, one for each batch, in their order; `sizes` one
///         for each job. Every stick and sheet stands by itself, parts are named by job.
/// Units:  the day's ticks, printed for the shop's tape.
pub fn sheaves_of_day(
    day: &Day,
    plans: &[Plan],
    outcome: &Outcome,
    sizes: &[&Sizes],
    settings: &Settings,
) -> Vec<Sheaf> {
    let tape = tape(settings);
    let batches = day.batches.iter().zip(plans).zip(&outcome.settled);
    let sheaves = batches.map(|((batch, plan), settled)| {
        let counting = Counting::Lengths {
            each: day.tick.step(),
            tape,
            toward: Toward::Nearest,
        };
        let binder = Binder {
            day,
            batch,
            plan,
            settled,
            sizes,
            tape,
            counting,
            kept: kept(settled),
        };
        binder.sheaf()
    });
    sheaves.collect()
}

/// Parts no stock is planned for: a line for each reason.
pub fn unplanned(day: &Day) -> Vec<String> {
    let mut reasons: Vec<(&str, Vec<String>)> = Vec::new();
    for left in &day.unplanned {
        let part = format!("{}: {}", day.jobs[left.job].name, left.part);
        match reasons.iter_mut().find(|(why, _)| *why == left.why) {
            Some((_, parts)) => parts.push(part),
            None => reasons.push((left.why, vec![part])),
        }
    }
    let lines = reasons.into_iter();
    lines
        .map(|(why, parts)| format!("{why}: {}", parts.join("; ")))
        .collect()
}

/// Labelled remnants: of each stick or sheet, and what drops from each part.
#[derive(Default)]
struct Remains<'a> {
    of: BTreeMap<usize, Vec<(&'a str, Spot)>>,
    dropped: BTreeMap<(usize, usize), Vec<(&'a str, Extent)>>,
}

fn kept(settled: &Settled) -> Remains<'_> {
    let mut remains = Remains::default();
    for remnant in &settled.remnants {
        let Some(label) = remnant.label.as_deref() else {
            continue;
        };
        match remnant.left {
            Left::Of(taken, spot) => remains.of.entry(taken).or_default().push((label, spot)),
            Left::Dropped { taken, part } => {
                let of = remains.dropped.entry((taken, part)).or_default();
                of.push((label, remnant.extent));
            }
        }
    }
    remains
}

/// Where one material's sheaf is bound.
struct Binder<'a> {
    day: &'a Day,
    batch: &'a Batch,
    plan: &'a Plan,
    settled: &'a Settled,
    sizes: &'a [&'a Sizes],
    tape: Tape,
    counting: Counting,
    kept: Remains<'a>,
}

impl Binder<'_> {
    fn sheaf(&self) -> Sheaf {
        let problem = problem_of(self.batch);
        let words = PlanWords::Of {
            basis: self.batch.basis,
            tick: self.day.tick,
            unit: self.day.unit,
            weighed: true,
        };
        let (take, buy) = self.take_and_buy();
        let name = self
            .batch
            .material
            .as_ref()
            .and_then(|material| material.name.clone());
        let ware = self.batch.ware.to_string();
        let kind = self.batch.ware.kind.word();
        Sheaf {
            material: CutMaterial {
                name: match name {
                    Some(name) => format!("{ware}: {name}"),
                    None => format!("{ware}, {kind}"),
                },
                take,
                buy,
                proof: words.proof(&problem, self.plan),
                uncut: self.uncut(),
                dangers: dangers_of(self.batch, &problem),
                leaves: self.leaves(),
            },
            drops: self.drops(),
        }
    }

    /// What to take from the rack and what to buy, a line each.
    fn take_and_buy(&self) -> (Vec<String>, Vec<String>) {
        let (mut take, mut buy) = (Vec::new(), Vec::new());
        for used in &self.settled.used {
            let source = &self.batch.sources[used.source];
            let mut line = times(used.count, &self.stock_name(used.source));
            if let Some(bin) = &source.bin {
                line = format!("{line}, in {bin}");
            }
            if let Some(cost) = source.cost {
                line = format!("{line}, {cost} each");
            }
            match source.origin {
                demand::Origin::Buy => buy.push(line),
                demand::Origin::Remnant | demand::Origin::Rack => take.push(line),
            }
        }
        (take, buy)
    }

    /// A source as the bench knows it: its name, its size where the name is a label, its run.
    fn stock_name(&self, source: usize) -> String {
        let source = &self.batch.sources[source];
        let size = source.extent.exact(self.day.unit);
        let mut name = source.name.clone();
        if !name.contains(&size) {
            name = format!("{name} ({size})");
        }
        match &source.run {
            Some(run) => format!("{name}, run {run}"),
            None => name,
        }
    }

    fn uncut(&self) -> Vec<String> {
        let missing = self.settled.missing.iter();
        missing
            .map(|missing| {
                let job = &self.day.jobs[missing.job].name;
                let size = missing.exact.exact(self.day.unit);
                format!("{job}: {}, {size}", missing.part)
            })
            .collect()
    }

    /// What drops from windows and is kept, a line each.
    fn drops(&self) -> Vec<String> {
        let mut lines = Vec::new();
        for ((taken, part), labelled) in &self.kept.dropped {
            let from = self.name_of(&self.settled.taken[*taken].parts[*part]);
            for (label, extent) in labelled {
                let size = below_on_tape(*extent, self.tape);
                lines.push(format!("{label}: {size}, drops from {from}"));
            }
        }
        lines
    }

    fn name_of(&self, part: &PartAt) -> String {
        format!("{}: {}", self.day.jobs[part.job].name, part.part)
    }

    fn lines_of(&self, part: &PartAt) -> Vec<String> {
        vec![self.day.jobs[part.job].name.clone(), part.part.clone()]
    }

    fn ticks(&self, length: Length) -> u64 {
        self.day.tick.down(length)
    }

    fn leaves(&self) -> Vec<CutLeaf> {
        let taken = self.settled.taken.iter().enumerate();
        match (&self.batch.work, self.plan) {
            (Work::Lengths { problem, .. }, _) => taken
                .map(|(number, taken)| CutLeaf::Stick(self.stick(problem, number, taken)))
                .collect(),
            (Work::Sheets { problem, .. }, Plan::Sheets(plan)) => taken
                .map(|(number, taken)| CutLeaf::Sheet(self.sheet(problem, plan, number, taken)))
                .collect(),
            // Plans were settled before, each with its own kind.
            (Work::Sheets { .. }, Plan::Lengths(_)) => Vec::new(),
        }
    }

    fn stick(&self, problem: &lengths::Problem, number: usize, taken: &Taken) -> CutStick {
        let source = match taken.from {
            From::Source(source) => source,
            From::Fallout { .. } => 0,
        };
        let stock = &problem.stock[source];
        let mut pieces: Vec<StickPiece> = taken
            .parts
            .iter()
            .filter_map(|part| match part.at {
                Spot::Along { at, length } => Some(StickPiece {
                    lines: self.lines_of(part),
                    at: self.ticks(at),
                    length: self.ticks(length),
                    mitre: self.mitre(part),
                }),
                Spot::On { .. } => None,
            })
            .collect();
        pieces.sort_by_key(|piece| piece.at);
        let remnants = self.kept.of.get(&number).into_iter().flatten();
        let remnants = remnants.filter_map(|(label, spot)| match spot {
            Spot::Along { at, length } => Some(Kept {
                label: (*label).to_owned(),
                place: (self.ticks(*at), self.ticks(*at) + self.ticks(*length)),
            }),
            Spot::On { .. } => None,
        });
        CutStick {
            title: format!("Stick {} of {}", number + 1, self.settled.taken.len()),
            stock: self.stock_name(source),
            counting: self.counting.clone(),
            length: stock.length,
            trim: stock.trim,
            kerf: problem.kerf,
            copies: 1,
            flaws: stock.flaws.clone(),
            pieces,
            remnants: remnants.collect(),
        }
    }

    /// How much shorter the front of a leg is at each end.
    fn mitre(&self, part: &PartAt) -> Option<(u64, u64)> {
        if self.batch.ware.kind != WareKind::Moulding {
            return None;
        }
        let members = self.sizes.get(part.job)?.members.iter();
        let mut ours = members.filter(|member| {
            let side = part.part.strip_prefix(&member.name);
            side.is_some_and(|side| side.starts_with(", "))
        });
        let leg = ours.next()?.legs.each.first()?;
        let end = (leg.long.value - leg.short.value).half_down();
        let end = self.ticks(end);
        (end > 0).then_some((end, end))
    }

    fn sheet(
        &self,
        problem: &sheets::Problem,
        plan: &sheets::Plan,
        number: usize,
        taken: &Taken,
    ) -> CutSheet {
        let layout = &plan.layouts[taken.layout];
        let (stock, (width, height), trim) = self.stock_of(problem, layout, taken);
        let parts = taken.parts.iter().enumerate();
        let pieces = parts.filter_map(|(place, part)| {
            let Spot::On { turned, .. } = part.at else {
                return None;
            };
            let area = self.area(part.at)?;
            let wanted = layout
                .pieces
                .get(place)
                .map(|placed| &problem.pieces[placed.piece]);
            let no_turn = wanted.is_some_and(|one| !one.turn && one.width != one.height);
            let window = wanted.and_then(|one| one.window);
            Some(CutPiece {
                lines: self.lines_of(part),
                area,
                turned,
                no_turn,
                window: window.and_then(|size| {
                    let label = self.window_label(number, place)?;
                    let area = centred(area, size, turned);
                    Some(CutWindow { label, area })
                }),
            })
        });
        let remnants = self.kept.of.get(&number).into_iter().flatten();
        let remnants = remnants.filter_map(|(label, spot)| {
            Some(Kept {
                label: (*label).to_owned(),
                place: self.area(*spot)?,
            })
        });
        CutSheet {
            title: format!("Sheet {} of {}", number + 1, self.settled.taken.len()),
            stock,
            fallout: matches!(taken.from, From::Fallout { .. }),
            counting: self.counting.clone(),
            width,
            height,
            trim,
            kerf: problem.rules.kerf,
            copies: 1,
            grain: Way::Upright,
            pieces: pieces.collect(),
            cuts: layout.cuts.clone(),
            remnants: remnants.collect(),
        }
    }

    fn stock_of(
        &self,
        problem: &sheets::Problem,
        layout: &sheets::Layout,
        taken: &Taken,
    ) -> (String, (u64, u64), Edges) {
        match (layout.from, taken.from) {
            (sheets::From::Stock(stock), _) => {
                let sheet = &problem.stock[stock];
                (
                    self.stock_name(stock),
                    (sheet.width, sheet.height),
                    sheet.trim,
                )
            }
            (sheets::From::Window(piece), from) => {
                let of = match from {
                    From::Fallout { taken, part } => {
                        self.name_of(&self.settled.taken[taken].parts[part])
                    }
                    From::Source(_) => problem.pieces[piece].name.clone(),
                };
                let size = problem.pieces[piece].window.unwrap_or_default();
                (format!("what drops from {of}"), size, Edges::default())
            }
        }
    }

    /// What becomes of the window of a part: cut up, or kept.
    fn window_label(&self, taken: usize, part: usize) -> Option<String> {
        let cut_up = self
            .settled
            .taken
            .iter()
            .position(|other| other.from == From::Fallout { taken, part });
        if let Some(other) = cut_up {
            return Some(format!("Sheet {}", other + 1));
        }
        let labelled = self.kept.dropped.get(&(taken, part))?;
        let labels: Vec<&str> = labelled.iter().map(|(label, _)| *label).collect();
        Some(format!("keep {}", labels.join(", ")))
    }

    fn area(&self, spot: Spot) -> Option<Area> {
        match spot {
            Spot::On {
                x,
                y,
                width,
                height,
                ..
            } => Some(Area {
                x: self.ticks(x),
                y: self.ticks(y),
                width: self.ticks(width),
                height: self.ticks(height),
            }),
            Spot::Along { .. } => None,
        }
    }
}

/// What is kept at the tape's next marks below, and exactly where that is less than it is.
fn below_on_tape(extent: Extent, tape: Tape) -> String {
    let sides = match extent {
        Extent::Stick(length) => vec![length],
        Extent::Sheet(size) => vec![size.width, size.height],
    };
    let unit = tape.unit();
    let printed: Vec<_> = sides
        .into_iter()
        .map(|side| side.on_tape(tape, Toward::Down))
        .collect();
    let figures = printed.iter().map(|side| {
        let bare = side.text.strip_suffix(unit.symbol());
        bare.map_or(side.text.as_str(), str::trim_end)
    });
    let text = format!(
        "{} {unit}",
        figures.collect::<Vec<_>>().join(" × "),
        unit = unit.symbol()
    );
    if printed.iter().all(|side| side.rounding == Rounding::Exact) {
        return text;
    }
    format!("{text} (exactly {})", extent.exact(unit))
}

/// The problem of a batch.
pub fn problem_of(batch: &Batch) -> Problem {
    match &batch.work {
        Work::Lengths { problem, .. } => Problem::Lengths(problem.clone()),
        Work::Sheets { problem, .. } => Problem::Sheets(problem.clone()),
    }
}

/// A window in the middle of its piece, as the piece lies.
fn centred(piece: Area, (width, height): (u64, u64), turned: bool) -> Area {
    let (width, height) = if turned {
        (height, width)
    } else {
        (width, height)
    };
    Area {
        x: piece.x + piece.width.saturating_sub(width) / 2,
        y: piece.y + piece.height.saturating_sub(height) / 2,
        width,
        height,
    }
}

#[cfg(test)]
mod tests {
    use demand::Extent;
    use measure::{Length, Size, Tape};

    use super::below_on_tape;

    /// By hand: 390.9 mm are 15.39 in, 289.3 mm are 11.39 in; the sixteenths below are 6/16 of each.
    #[test]
    fn what_is_kept_is_never_said_larger_than_it_is() {
        let size = Size::new(
            Length::from_quanta(3909 * 1600),
            Length::from_quanta(2893 * 1600),
        );
        assert_eq!(
            below_on_tape(Extent::Sheet(size), Tape::Sixteenths),
            "15 3/8 × 11 3/8 in (exactly 390.9 mm x 289.3 mm)"
        );
        let inch = Length::from_quanta(26 * 406_400);
        assert_eq!(
            below_on_tape(Extent::Stick(inch), Tape::Sixteenths),
            "26 in"
        );
    }
}
