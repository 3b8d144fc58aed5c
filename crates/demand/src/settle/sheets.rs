//! A plan of sheets, sheet by sheet.

mod replay;

use cutting::sheets::{Area, From as PlanFrom, Layout, Plan, Problem};
use measure::{Length, Size};

use super::{Ledger, used};
use crate::account::Account;
use crate::day::Batch;
use crate::outcome::{From, Left, Missing, PartAt, Remnant, Settled, Spot, Taken};
use crate::part::{Panel, named};
use crate::stock::Extent;
use crate::tick::Tick;

use replay::{Replayed, replay};

/// Settles a plan of sheets.
///
/// Errors: a sentence on what does not hold.
pub(super) fn settle(
    batch: &Batch,
    problem: &Problem,
    parts: &[Panel],
    plan: &Plan,
    tick: Tick,
) -> Result<Settled, String> {
    let wanted = problem.pieces.iter().map(|p| p.count.unwrap_or(0));
    let placed = plan
        .layouts
        .iter()
        .flat_map(|layout| layout.pieces.iter().map(|p| (p.piece, layout.copies)));
    let name = |piece: usize| problem.pieces[piece].name.clone();
    let mut ledger = Ledger::of(wanted.collect(), name, placed, &plan.uncut)?;
    let taken = plan.layouts.iter().filter_map(|layout| match layout.from {
        PlanFrom::Stock(stock) => Some((stock, layout.copies)),
        PlanFrom::Window(_) => None,
    });
    let used = used(&batch.sources, &taken.collect::<Vec<_>>())?;
    let mut bench = Bench {
        batch,
        problem,
        parts,
        tick,
        dropped: vec![Vec::new(); parts.len()],
        taken: Vec::new(),
        remnants: Vec::new(),
        account: Account {
            of_sheets: true,
            ..Account::default()
        },
    };
    for (i, layout) in plan.layouts.iter().enumerate() {
        let replayed = bench.check(i, layout)?;
        for _ in 0..layout.copies {
            bench.cut(i, layout, &replayed, &mut ledger)?;
        }
    }
    bench.free_fallouts();
    let missing = missing(parts, plan, &mut ledger);
    Ok(Settled {
        ware: batch.ware.clone(),
        taken: bench.taken,
        used,
        remnants: bench.remnants,
        missing,
        account: bench.account,
        objective: plan.objective,
        bound: plan.bound,
        proven: plan.proven(),
    })
}

fn missing(parts: &[Panel], plan: &Plan, ledger: &mut Ledger) -> Vec<Missing> {
    let mut missing = Vec::new();
    for (piece, count) in &plan.uncut {
        let panel = &parts[*piece];
        for _ in 0..*count {
            let copy = ledger.next(*piece).and_then(|copy| panel.copies.get(copy));
            missing.extend(copy.map(|copy| Missing {
                job: panel.job,
                part: named(&panel.part, copy),
                exact: Extent::Sheet(panel.size),
            }));
        }
    }
    missing
}

struct Bench<'a> {
    batch: &'a Batch,
    problem: &'a Problem,
    parts: &'a [Panel],
    tick: Tick,
    /// For each piece, fallouts not cut up yet: in `taken`, in its parts.
    dropped: Vec<Vec<(usize, usize)>>,
    taken: Vec<Taken>,
    remnants: Vec<Remnant>,
    account: Account,
}

impl Bench<'_> {
    /// The part of the stock that can be used, in ticks.
    fn root(&self, from: PlanFrom) -> Result<Area, String> {
        match from {
            PlanFrom::Stock(stock) => {
                let sheet = &self.problem.stock[stock];
                let trim = sheet.trim;
                Ok(Area {
                    x: trim.left,
                    y: trim.bottom,
                    width: sheet.width.saturating_sub(trim.left + trim.right),
                    height: sheet.height.saturating_sub(trim.bottom + trim.top),
                })
            }
            PlanFrom::Window(piece) => {
                let known = self.problem.pieces.get(piece);
                let window = known.and_then(|piece| piece.window);
                let (width, height) = window.ok_or("it cuts up a window that no part has")?;
                Ok(Area {
                    x: 0,
                    y: 0,
                    width,
                    height,
                })
            }
        }
    }

    /// Replays the cuts of one layout and holds every part to its size.
    fn check(&self, index: usize, layout: &Layout) -> Result<Replayed, String> {
        let at = |why: String| format!("on layout {} {why}", index + 1);
        if layout.pieces.is_empty() {
            return Err(at("nothing is cut".to_owned()));
        }
        for placed in &layout.pieces {
            let piece = &self.problem.pieces[placed.piece];
            let (width, height) = if placed.turned {
                (piece.height, piece.width)
            } else {
                (piece.width, piece.height)
            };
            let (area, turned) = (placed.area, placed.turned && !piece.turn);
            if (area.width, area.height) != (width, height) || turned {
                return Err(at(format!("{} is not cut to its size", piece.name)));
            }
        }
        let root = self.root(layout.from)?;
        replay(root, layout, self.problem.rules.kerf).map_err(at)
    }

    /// Cuts one sheet by a layout that holds.
    fn cut(
        &mut self,
        index: usize,
        layout: &Layout,
        replayed: &Replayed,
        ledger: &mut Ledger,
    ) -> Result<(), String> {
        let number = self.taken.len();
        let (from, extent) = match layout.from {
            PlanFrom::Stock(stock) => (From::Source(stock), self.batch.sources[stock].extent),
            PlanFrom::Window(piece) => self.fallout(piece)?,
        };
        let mut parts = Vec::with_capacity(layout.pieces.len());
        for placed in &layout.pieces {
            let panel = &self.parts[placed.piece];
            let copy = ledger
                .next(placed.piece)
                .and_then(|copy| panel.copies.get(copy));
            let copy = copy.ok_or("it cuts a piece more often than it is wanted")?;
            if self.problem.pieces[placed.piece].window.is_some() {
                self.dropped[placed.piece].push((number, parts.len()));
            }
            parts.push(PartAt {
                job: panel.job,
                part: named(&panel.part, copy),
                exact: Extent::Sheet(panel.size),
                at: self.spot(placed.area, placed.turned),
            });
        }
        for area in &layout.remnants {
            let size = self.size(*area);
            self.remnants.push(Remnant {
                label: None,
                left: Left::Of(number, self.spot(*area, false)),
                extent: Extent::Sheet(size),
                run: None,
                flaws: Vec::new(),
            });
        }
        self.further_fallouts(number, layout);
        self.enter(layout, extent, replayed, &parts);
        let word = match from {
            From::Source(_) => "sheet",
            From::Fallout { .. } => "fallout",
        };
        self.taken.push(Taken {
            name: format!("{}, {word} {}", self.batch.ware, number + 1),
            from,
            extent,
            layout: index,
            pieces: (0..parts.len()).map(|i| i..i + 1).collect(),
            parts,
        });
        Ok(())
    }

    /// The next free fallout of a piece.
    fn fallout(&mut self, piece: usize) -> Result<(From, Extent), String> {
        let free = &mut self.dropped[piece];
        if free.is_empty() {
            return Err(format!(
                "it cuts up the window of {} before that is cut",
                self.problem.pieces[piece].name
            ));
        }
        let (taken, part) = free.remove(0);
        let size = self.parts[piece].falls.first().copied().unwrap_or_default();
        Ok((From::Fallout { taken, part }, Extent::Sheet(size)))
    }

    /// What drops from the lesser windows of parts with several.
    fn further_fallouts(&mut self, taken: usize, layout: &Layout) {
        for (part, placed) in layout.pieces.iter().enumerate() {
            for size in self.parts[placed.piece].falls.iter().skip(1) {
                self.remnants.push(dropped(taken, part, *size));
            }
        }
    }

    /// What dropped from windows and was not cut up.
    fn free_fallouts(&mut self) {
        let free = std::mem::take(&mut self.dropped);
        for (panel, places) in self.parts.iter().zip(free) {
            for (taken, part) in places {
                let size = panel.falls.first().copied().unwrap_or_default();
                self.remnants.push(dropped(taken, part, size));
            }
        }
    }

    fn size(&self, area: Area) -> Size {
        Size::new(self.tick.length(area.width), self.tick.length(area.height))
    }

    fn spot(&self, area: Area, turned: bool) -> Spot {
        Spot::On {
            x: self.tick.length(area.x),
            y: self.tick.length(area.y),
            width: self.tick.length(area.width),
            height: self.tick.length(area.height),
            turned,
        }
    }

    /// Enters one sheet into the account.
    fn enter(&mut self, layout: &Layout, extent: Extent, replayed: &Replayed, parts: &[PartAt]) {
        let ticks = |count: u128| {
            let square = i128::from(self.tick.step().quanta()).pow(2);
            i128::try_from(count).unwrap_or(i128::MAX) * square
        };
        let exact_of = |extent: Extent| match extent {
            Extent::Sheet(size) => size.area().square_quanta(),
            Extent::Stick(_) => 0,
        };
        let area = |area: &Area| u128::from(area.width) * u128::from(area.height);
        let (whole, usable) = match layout.from {
            PlanFrom::Stock(stock) => {
                let sheet = &self.problem.stock[stock];
                let whole = u128::from(sheet.width) * u128::from(sheet.height);
                (whole, replayed.root)
            }
            PlanFrom::Window(_) => (replayed.root, replayed.root),
        };
        let exact: i128 = parts.iter().map(|part| exact_of(part.exact)).sum();
        let rounded: u128 = layout.pieces.iter().map(|placed| area(&placed.area)).sum();
        let kept = |remnant: &&Area| {
            super::is_worth_keeping(self.batch, Extent::Sheet(self.size(**remnant)))
        };
        let remnants: u128 = layout.remnants.iter().filter(kept).map(area).sum();
        let small: u128 = layout.remnants.iter().map(area).sum::<u128>() - remnants;
        let held = exact_of(extent);
        let account = &mut self.account;
        account.stock += held;
        account.pieces += exact;
        account.rounding += ticks(rounded) - exact + held - ticks(whole);
        account.trim += ticks(whole - usable);
        account.cuts += ticks(replayed.cuts);
        account.remnants += ticks(remnants);
        account.waste += ticks(replayed.waste + small);
    }
}

fn dropped(taken: usize, part: usize, size: Size) -> Remnant {
    Remnant {
        label: None,
        left: Left::Dropped { taken, part },
        extent: Extent::Sheet(size),
        run: None,
        flaws: Vec::<[Length; 2]>::new(),
    }
}
