//! A settled day, material by material: every stick and sheet by itself, parts named by job.

use std::collections::BTreeMap;

use cutting::sheets::{Area, Edges, Way};
use cutting::{OtherKind, Plan, Problem, lengths, sheets};
use demand::{
    Batch, Day, Extent, From, Left, Outcome, PartAt, Settled, Spot, Taken, WareKind, Work,
};
use drawing::{Counting, CutPiece, CutSheet, CutStick, CutWindow, Kept, Shown, StickPiece};
use measure::{Length, Size, Tape, Toward};
use sizing::Sizes;
use trade::Settings;

use super::words::{PlanWords, Weighed, dangers_of, tape, times};
use crate::cut_book::{Bought, CutLeaf, CutMaterial};

/// Everything said of each material of a day.
///
/// Shape:  `plans` and `outcome` are the day's own, one for each batch, in their order; `sizes` one
///         for each job. Every stick and sheet stands by itself, parts are named by job.
/// Units:  the day's ticks, printed for the shop's tape.
/// Errors: a plan for sheets where sticks are cut, or the other way: a fault of the program.
pub fn cut_materials_of_day(
    day: &Day,
    plans: &[Plan],
    outcome: &Outcome,
    sizes: &[&Sizes],
    settings: &Settings,
) -> Result<Vec<CutMaterial>, OtherKind> {
    let tape = tape(settings);
    let batches = day.batches.iter().zip(plans).zip(&outcome.settled);
    let materials = batches.map(|((batch, plan), settled)| {
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
        binder.material()
    });
    materials.collect()
}

/// Parts no stock is planned for, a line for each reason, and stock of materials nobody knows.
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
    let lines = lines.map(|(why, parts)| format!("{why}: {}", parts.join("; ")));
    lines.chain(day.unknown.iter().cloned()).collect()
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

/// Where one material's sticks and sheets are bound together.
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
    fn material(&self) -> Result<CutMaterial, OtherKind> {
        let problem = problem_of(self.batch);
        let words = PlanWords::Of {
            basis: self.batch.basis,
            tick: self.day.tick,
            unit: self.day.unit,
            weighed: if self.batch.is_weighed() {
                Weighed::RackToo
            } else {
                Weighed::Nothing
            },
        };
        let (take, buy) = self.take_and_buy();
        let name = self
            .batch
            .material
            .as_ref()
            .and_then(|material| material.name.clone());
        let ware = self.batch.ware.to_string();
        let kind = self.batch.ware.kind.word();
        Ok(CutMaterial {
            name: match name {
                Some(name) => format!("{ware}: {name}"),
                None => format!("{ware}, {kind}"),
            },
            take,
            buy,
            bought: self.bought(),
            drops: self.drops(),
            proof: words.proof(&problem, self.plan),
            uncut: self.uncut(),
            dangers: dangers_of(self.batch, &problem),
            leaves: self.leaves()?,
        })
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

    /// What is bought, summed.
    fn bought(&self) -> Bought {
        let mut bought = Bought::default();
        for used in &self.settled.used {
            let source = &self.batch.sources[used.source];
            match (source.origin, source.extent) {
                (demand::Origin::Buy, Extent::Stick(_)) => bought.sticks(used.count, source.cost),
                (demand::Origin::Buy, Extent::Sheet(_)) => bought.sheets(used.count, source.cost),
                (demand::Origin::Remnant | demand::Origin::Rack, _) => {}
            }
        }
        bought
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

    /// Something settled for the other kind of stock.
    fn other_kind(&self) -> OtherKind {
        OtherKind {
            problem: self.batch.ware.to_string(),
        }
    }

    fn leaves(&self) -> Result<Vec<CutLeaf>, OtherKind> {
        let taken = self.settled.taken.iter().enumerate();
        match (&self.batch.work, self.plan) {
            (Work::Lengths { problem, .. }, Plan::Lengths(_)) => taken
                .map(|(number, taken)| self.stick(problem, number, taken).map(CutLeaf::Stick))
                .collect(),
            (Work::Sheets { problem, .. }, Plan::Sheets(plan)) => taken
                .map(|(number, taken)| {
                    let sheet = self.sheet(problem, plan, number, taken);
                    sheet.map(CutLeaf::Sheet)
                })
                .collect(),
            (Work::Lengths { .. }, Plan::Sheets(_)) | (Work::Sheets { .. }, Plan::Lengths(_)) => {
                Err(self.other_kind())
            }
        }
    }

    fn stick(
        &self,
        problem: &lengths::Problem,
        number: usize,
        taken: &Taken,
    ) -> Result<CutStick, OtherKind> {
        let source = match taken.from {
            From::Source(source) => source,
            From::Fallout { .. } => return Err(self.other_kind()),
        };
        let stock = &problem.stock[source];
        let pieces = taken.parts.iter().map(|part| self.stick_piece(part));
        let mut pieces: Vec<StickPiece> = pieces.collect::<Result<_, _>>()?;
        pieces.sort_by_key(|piece| piece.at);
        let remnants = self.kept.of.get(&number).into_iter().flatten();
        let remnants = remnants.map(|(label, spot)| {
            let (at, length) = self.along(*spot)?;
            Ok(Kept {
                label: (*label).to_owned(),
                place: (at, at + length),
            })
        });
        Ok(CutStick {
            title: format!("Stick {} of {}", number + 1, self.settled.taken.len()),
            stock: self.stock_name(source),
            counting: self.counting.clone(),
            length: stock.length,
            trim: stock.trim,
            kerf: problem.kerf,
            copies: 1,
            flaws: stock.flaws.clone(),
            pieces,
            remnants: remnants.collect::<Result<_, OtherKind>>()?,
        })
    }

    fn stick_piece(&self, part: &PartAt) -> Result<StickPiece, OtherKind> {
        let Extent::Stick(exact) = part.exact else {
            return Err(self.other_kind());
        };
        let (at, length) = self.along(part.at)?;
        Ok(StickPiece {
            lines: self.lines_of(part),
            at,
            length,
            exact: Some(exact),
            mitre: self.mitre(part),
        })
    }

    /// From where, and how long.
    fn along(&self, spot: Spot) -> Result<(u64, u64), OtherKind> {
        match spot {
            Spot::Along { at, length } => Ok((self.ticks(at), self.ticks(length))),
            Spot::On { .. } => Err(self.other_kind()),
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
    ) -> Result<CutSheet, OtherKind> {
        let layout = &plan.layouts[taken.layout];
        let (stock, (width, height), trim) = self.stock_of(problem, layout, taken);
        let parts = taken.parts.iter().enumerate();
        let pieces = parts.map(|(place, part)| {
            let wanted = layout
                .pieces
                .get(place)
                .map(|placed| &problem.pieces[placed.piece]);
            self.sheet_piece(part, wanted, (number, place))
        });
        let remnants = self.kept.of.get(&number).into_iter().flatten();
        let remnants = remnants.map(|(label, spot)| {
            Ok(Kept {
                label: (*label).to_owned(),
                place: self.area(*spot)?.0,
            })
        });
        Ok(CutSheet {
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
            pieces: pieces.collect::<Result<_, OtherKind>>()?,
            cuts: layout.cuts.clone(),
            remnants: remnants.collect::<Result<_, OtherKind>>()?,
        })
    }

    /// A part where it lies; `place` is that of its sheet, then its own.
    fn sheet_piece(
        &self,
        part: &PartAt,
        wanted: Option<&sheets::Piece>,
        (number, place): (usize, usize),
    ) -> Result<CutPiece, OtherKind> {
        let (area, turned) = self.area(part.at)?;
        let Extent::Sheet(exact) = part.exact else {
            return Err(self.other_kind());
        };
        let window = wanted.and_then(|one| one.window);
        Ok(CutPiece {
            lines: self.lines_of(part),
            area,
            exact: Some(exact),
            turned,
            no_turn: wanted.is_some_and(|one| !one.turn && one.width != one.height),
            window: window.and_then(|size| {
                let label = self.window_label(number, place)?;
                let area = centred(area, size, turned);
                Some(CutWindow { label, area })
            }),
        })
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

    /// Where it lies, and whether turned.
    fn area(&self, spot: Spot) -> Result<(Area, bool), OtherKind> {
        match spot {
            Spot::On {
                x,
                y,
                width,
                height,
                turned,
            } => {
                let area = Area {
                    x: self.ticks(x),
                    y: self.ticks(y),
                    width: self.ticks(width),
                    height: self.ticks(height),
                };
                Ok((area, turned))
            }
            Spot::Along { .. } => Err(self.other_kind()),
        }
    }
}

/// What is kept at the tape's next marks below, and exactly where that is less than it is.
fn below_on_tape(extent: Extent, tape: Tape) -> String {
    let shown = match extent {
        Extent::Stick(length) => Shown::kept(&[length], tape, "exactly"),
        Extent::Sheet(Size { width, height }) => Shown::kept(&[width, height], tape, "exactly"),
    };
    shown.in_full(tape.unit().symbol())
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
            "15 3/8 × 11 3/8 in (exactly 390.9 × 289.3 mm)"
        );
        let inch = Length::from_quanta(26 * 406_400);
        assert_eq!(
            below_on_tape(Extent::Stick(inch), Tape::Sixteenths),
            "26 in"
        );
    }
}
