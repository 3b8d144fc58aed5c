//! A day's work: one cutting problem for each material.

mod fit;
mod refused;
mod unknown;

use std::collections::BTreeMap;
use std::sync::Arc;

use cutting::Goal;
use cutting::{lengths, sheets};
use measure::{Length, Unit};
use sizing::Sizes;
use trade::{Catalogue, Date, Job, Key, Material, Settings};

use crate::bundle::{Bench, bundle};
use crate::fault::Fault;
use crate::gather::{Heap, gather};
use crate::names::Names;
use crate::part::{Panel, Rails, Unplanned, named};
use crate::rules::{self, SheetRules, StickRules};
use crate::source::{Basis, Origin, Source, Trims, costs, sources};
use crate::stock::{Extent, Stock};
use crate::tick::Tick;
use crate::ware::Ware;

use fit::Fit;

/// Everything that is to be cut, in a stable order.
#[derive(Clone, Debug)]
pub struct Day {
    /// The jobs, in the order they were given.
    pub jobs: Vec<DayJob>,
    /// One for each material: sticks before sheets, then by code.
    pub batches: Vec<Batch>,
    /// Parts no stock is planned for.
    pub unplanned: Vec<Unplanned>,
    /// What the stock document says of materials nobody knows, a sentence each.
    pub unknown: Vec<String>,
    /// What the problems count in.
    pub tick: Tick,
    /// The unit sentences speak in.
    pub unit: Unit,
    pub(crate) next_label: Option<u32>,
    pub(crate) labels: Vec<String>,
}

/// One job of the day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DayJob {
    /// Its order, its title, or its place; unlike every other of the day.
    pub name: String,
    /// Days from 1 January 1970 to the day it is due.
    pub due: Option<u32>,
}

/// Everything of one material.
#[derive(Clone, Debug)]
pub struct Batch {
    /// What is cut.
    pub ware: Ware,
    /// What the catalogue or the job says of it.
    pub material: Option<Arc<Material>>,
    /// What it can be cut from; each at its place in the problem's stock.
    pub sources: Vec<Source>,
    /// What the problem's costs are counted in.
    pub basis: Basis,
    /// The problem, and the parts behind its pieces.
    pub work: Work,
    /// The least remnant worth keeping; for a sheet its shorter and longer side.
    pub keep: [Length; 2],
    /// What the problem counts in.
    pub(crate) tick: Tick,
    /// Names of the day's jobs.
    pub(crate) jobs: Arc<[String]>,
}

impl Batch {
    /// Whether some of its stock counts less in the plan than it costs: all but what is bought.
    pub fn is_weighed(&self) -> bool {
        let mut sources = self.sources.iter();
        sources.any(|source| source.origin != Origin::Buy)
    }
}

/// A problem for the cutting room; each part at its piece's place.
#[derive(Clone, Debug)]
pub enum Work {
    /// Sticks.
    Lengths {
        /// Counted in ticks.
        problem: lengths::Problem,
        /// Exactly.
        parts: Vec<Rails>,
    },
    /// Sheets.
    Sheets {
        /// Counted in ticks.
        problem: sheets::Problem,
        /// Exactly.
        parts: Vec<Panel>,
    },
}

impl Day {
    /// The cut list of these pieces, each sized already.
    ///
    /// Shape:  one problem for each material, colour and description; pieces in the order of the
    ///         jobs, front view, members before sheets.
    /// Units:  ticks of the setting `cutting.tick`; parts keep their exact sizes.
    /// Errors: everything that stands in the way, together, each with its job.
    pub fn of(
        pieces: &[(Job, Sizes)],
        catalogue: &Catalogue,
        stock: &Stock,
        settings: &Settings,
    ) -> Result<Self, Vec<Fault>> {
        let mut faults = Vec::new();
        let jobs = day_jobs(pieces, &mut faults);
        let sized: Vec<(String, &Sizes)> = jobs
            .iter()
            .zip(pieces)
            .map(|(job, (_, sizes))| (job.name.clone(), sizes))
            .collect();
        let gathered = gather(&sized, catalogue, settings);
        let tick = Tick::of(settings);
        let counter = Counter {
            jobs: &jobs,
            names: jobs.iter().map(|job| job.name.clone()).collect(),
            stock,
            settings,
            tick,
            unit: tick.unit(),
        };
        let mut batches = Vec::with_capacity(gathered.heaps.len());
        for (ware, heap) in gathered.heaps {
            batches.extend(counter.batch(ware, heap, &mut faults));
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        Ok(Self {
            unknown: unknown::of(stock, catalogue, &batches),
            batches,
            unplanned: gathered.unplanned,
            tick: counter.tick,
            unit: counter.unit,
            next_label: stock.next_label,
            labels: stock.remnants.iter().map(|r| r.label.clone()).collect(),
            jobs,
        })
    }
}

/// Names and days of the jobs; refused pieces and days that can't be read are faults.
fn day_jobs(pieces: &[(Job, Sizes)], faults: &mut Vec<Fault>) -> Vec<DayJob> {
    let mut of_order: BTreeMap<&str, usize> = BTreeMap::new();
    for order in pieces
        .iter()
        .filter_map(|(job, _)| job.identity.order.as_deref())
    {
        *of_order.entry(order).or_default() += 1;
    }
    let mut names = Names::default();
    let mut jobs = Vec::with_capacity(pieces.len());
    for (i, (job, sizes)) in pieces.iter().enumerate() {
        let order = job.identity.order.as_deref();
        let title = job.art.first().and_then(|art| art.title.as_deref());
        let name = match (order, title) {
            (Some(order), Some(title)) if of_order[order] > 1 => format!("{order} {title}"),
            (Some(name), _) | (None, Some(name)) => name.to_owned(),
            (None, None) => format!("job {}", i + 1),
        };
        let name = names.unique(name);
        let given = job.identity.due.as_deref();
        let due = given.and_then(|day| Date::read(day).ok()).map(Date::days);
        if let (Some(given), None) = (given, due) {
            faults.push(Fault::Due {
                job: name.clone(),
                given: given.to_owned(),
            });
        }
        if let Some(fault) = sizes.faults.iter().find(|fault| stops(fault)) {
            faults.push(Fault::Refused {
                job: name.clone(),
                why: fault.sentence(),
            });
        }
        jobs.push(DayJob { name, due });
    }
    jobs
}

/// Whether a fault stops a piece from being cut. What the catalogue's stock is too small for is
/// not one of them: here parts are held against the stock there is.
fn stops(fault: &sizing::Fault) -> bool {
    const OF_STOCK: [&str; 2] = ["stick.too_short", "sheet.too_large"];
    fault.severity == sizing::Severity::Refuse && !OF_STOCK.contains(&fault.code)
}

/// Where heaps are counted in ticks.
struct Counter<'a> {
    jobs: &'a [DayJob],
    names: Arc<[String]>,
    stock: &'a Stock,
    settings: &'a Settings,
    tick: Tick,
    unit: Unit,
}

impl Counter<'_> {
    fn batch(&self, ware: Ware, heap: Heap, faults: &mut Vec<Fault>) -> Option<Batch> {
        let material = heap.material.clone();
        let material = material.as_deref();
        let (trims, sticks) = if ware.kind.in_sticks() {
            let rules = rules::of_sticks(&ware, &heap.rails, self.settings, self.stock);
            (Trims::Sticks(rules), true)
        } else {
            let rules = rules::of_sheets(&ware, material, self.settings, self.stock);
            (Trims::Sheets(rules), false)
        };
        let at_hand = heap.stick.filter(|_| sticks);
        let sources = sources(&ware, material, at_hand, self.stock, trims, self.unit);
        if sources.is_empty() {
            faults.push(Fault::NoStock {
                ware: ware.to_string(),
                buy: self.stock.buy,
            });
            return None;
        }
        let fit = Fit::of(
            &ware,
            material,
            &sources,
            self.tick,
            self.unit,
            self.stock.buy,
            faults,
        )?;
        let counted = costs(&ware, &sources, self.tick, self.settings);
        let (basis, costs) = counted.map_err(|fault| faults.push(fault)).ok()?;
        let before = faults.len();
        let work = match trims {
            Trims::Sticks(rules) => {
                self.lengths(&ware, &heap, &sources, &costs, rules, &fit, faults)
            }
            Trims::Sheets(rules) => {
                self.sheets(&ware, &heap, &sources, &costs, rules, &fit, faults)
            }
        };
        (faults.len() == before).then(|| Batch {
            keep: self.keep(&ware),
            material: heap.material,
            ware,
            sources,
            basis,
            work,
            tick: self.tick,
            jobs: self.names.clone(),
        })
    }

    fn keep(&self, ware: &Ware) -> [Length; 2] {
        use crate::ware::WareKind::{Backing, Board, Glazing};
        let [a, b] = match ware.kind {
            Board | Backing => [Key::BoardKeptShort, Key::BoardKeptLong],
            Glazing => [Key::GlassKeptShort, Key::GlassKeptLong],
            _ => [Key::StickKept; 2],
        }
        .map(|key| self.settings.length(key));
        [a.min(b), a.max(b)]
    }

    #[allow(
        clippy::too_many_arguments,
        reason = "each is one side of the same table"
    )]
    fn lengths(
        &self,
        ware: &Ware,
        heap: &Heap,
        sources: &[Source],
        costs: &[u64],
        rules: StickRules,
        fit: &Fit<'_>,
        faults: &mut Vec<Fault>,
    ) -> Work {
        let bench = Bench {
            tick: self.tick,
            kerf: self.tick.up(rules.kerf),
            room: fit.longest(),
            policy: self.settings.choice(Key::LegMatch),
        };
        let (mut groups, mut names) = (Names::default(), Names::default());
        let (mut pieces, mut parts) = (Vec::new(), Vec::new());
        for loose in &heap.rails {
            let job = &self.jobs[loose.job];
            for strip in &loose.strips {
                let part = named(&loose.part, &strip.side);
                fit.check(&job.name, part, Extent::Stick(strip.length), false, faults);
            }
            let group = groups.unique(format!("{}: {}", job.name, loose.part));
            for bundle in bundle(loose, bench, &group) {
                pieces.push(lengths::Piece {
                    name: names.unique(format!("{}: {}, {}", job.name, loose.part, bundle.sides)),
                    length: bundle.length,
                    count: Some(as_count(bundle.rails.copies.len())),
                    value: 0,
                    together: bundle.together,
                    priority: 0,
                    due: job.due,
                });
                parts.push(bundle.rails);
            }
        }
        let stock = sources.iter().zip(costs);
        let problem = lengths::Problem {
            name: ware.to_string(),
            goal: Goal::Cost,
            kerf: bench.kerf,
            stock: stock.map(|(s, cost)| self.stick(s, *cost)).collect(),
            pieces,
        };
        Work::Lengths { problem, parts }
    }

    fn stick(&self, source: &Source, cost: u64) -> lengths::Stick {
        let (length, trim, flaws) = fit::stick_ticks(source, self.tick);
        lengths::Stick {
            name: source.name.clone(),
            length,
            cost,
            count: source.count,
            remnant: source.origin == Origin::Remnant,
            trim,
            flaws,
            run: source.run.clone(),
        }
    }

    #[allow(
        clippy::too_many_arguments,
        reason = "each is one side of the same table"
    )]
    fn sheets(
        &self,
        ware: &Ware,
        heap: &Heap,
        sources: &[Source],
        costs: &[u64],
        rules: SheetRules,
        fit: &Fit<'_>,
        faults: &mut Vec<Fault>,
    ) -> Work {
        let mut names = Names::default();
        let mut pieces = Vec::with_capacity(heap.panels.len());
        for panel in &heap.panels {
            let job = &self.jobs[panel.job];
            let size = Extent::Sheet(panel.size);
            fit.check(&job.name, panel.part.clone(), size, panel.turn, faults);
            let name = names.unique(format!("{}: {}", job.name, panel.part));
            pieces.push(self.sheet_piece(panel, name, job.due));
        }
        let stock = sources.iter().zip(costs);
        let problem = sheets::Problem {
            name: ware.to_string(),
            goal: Goal::Cost,
            rules: sheets::Rules {
                kerf: self.tick.up(rules.kerf),
                least_strip: self.tick.up(rules.least_strip),
                ..sheets::Rules::default()
            },
            stock: stock.map(|(s, cost)| self.sheet(s, *cost)).collect(),
            pieces,
        };
        Work::Sheets {
            problem,
            parts: heap.panels.clone(),
        }
    }

    fn sheet_piece(&self, panel: &Panel, name: String, due: Option<u32>) -> sheets::Piece {
        let (width, height) = (
            self.tick.up(panel.size.width),
            self.tick.up(panel.size.height),
        );
        let window = panel.falls.first().map(|fall| {
            let (w, h) = (self.tick.down(fall.width), self.tick.down(fall.height));
            (w.min(width), h.min(height))
        });
        sheets::Piece {
            name,
            width,
            height,
            count: Some(as_count(panel.copies.len())),
            value: 0,
            turn: panel.turn,
            window: window.filter(|(w, h)| *w > 0 && *h > 0),
            priority: 0,
            due,
        }
    }

    fn sheet(&self, source: &Source, cost: u64) -> sheets::Sheet {
        let (width, height, trim) = fit::sheet_ticks(source, self.tick);
        sheets::Sheet {
            name: source.name.clone(),
            width,
            height,
            cost,
            count: source.count,
            remnant: source.origin == Origin::Remnant,
            trim: sheets::Edges {
                left: trim,
                right: trim,
                bottom: trim,
                top: trim,
            },
        }
    }
}

fn as_count(n: usize) -> u64 {
    u64::try_from(n).unwrap_or(u64::MAX)
}
