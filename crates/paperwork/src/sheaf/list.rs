//! A plan of a list or of an instance, as a sheaf: names come from the list itself.

use cutting::document::Instance;
use cutting::sheets::From;
use cutting::{Plan, Problem};
use demand::{ListBatch, ListStock, Origin};
use drawing::{Counting, CutSheet, CutStick, Names, cut_sheets_of, cut_sticks_of};
use measure::{Toward, Unit};
use trade::Settings;

use super::Sheaf;
use super::words::{PlanWords, dangers, tape, times};
use crate::cut_book::{CutLeaf, CutMaterial};

/// The sheaf of one material of a cut list.
///
/// Shape:  `plan` is one of the batch's problem, and was checked; `unit` is the list's.
/// Units:  the batch's ticks, printed for the shop's tape.
pub fn sheaf_of_list(batch: &ListBatch, plan: &Plan, settings: &Settings, unit: Unit) -> Sheaf {
    let weighed = |stock: &ListStock| stock.origin == Origin::Remnant && stock.cost.is_none();
    let listed = Listed {
        title: batch.name().to_owned(),
        problem: &batch.problem,
        plan,
        counting: Counting::Lengths {
            each: batch.tick.step(),
            tape: tape(settings),
            toward: Toward::Nearest,
        },
        words: PlanWords::Of {
            basis: batch.basis,
            tick: batch.tick,
            unit,
            weighed: batch.stock.iter().any(weighed),
        },
        stock: batch
            .stock
            .iter()
            .map(|stock| stock_words(stock, unit))
            .collect(),
        keep: batch.keep.map(|length| batch.tick.up(length)),
    };
    listed.sheaf()
}

/// The sheaf of an instance of the cutting room.
///
/// Shape:  `plan` is one of the instance's problem, and was checked.
/// Units:  none; numbers are printed as they are.
pub fn sheaf_of_instance(instance: &Instance, plan: &Plan) -> Sheaf {
    let of = |name: &String, remnant: bool, count: Option<u64>| StockWords {
        name: name.clone(),
        origin: match (remnant, count) {
            (true, _) => Origin::Remnant,
            (false, Some(_)) => Origin::Rack,
            (false, None) => Origin::Buy,
        },
        each: None,
    };
    let stock = match &instance.problem {
        Problem::Lengths(problem) => {
            let stock = problem.stock.iter();
            stock
                .map(|one| of(&one.name, one.remnant, one.count))
                .collect()
        }
        Problem::Sheets(problem) => {
            let stock = problem.stock.iter();
            stock
                .map(|one| of(&one.name, one.remnant, one.count))
                .collect()
        }
    };
    let listed = Listed {
        title: instance.name.clone(),
        problem: &instance.problem,
        plan,
        counting: Counting::Plain {
            unit: String::new(),
        },
        words: PlanWords::Plain,
        stock,
        keep: [0; 2],
    };
    listed.sheaf()
}

fn stock_words(stock: &ListStock, unit: Unit) -> StockWords {
    let size = stock.extent.exact(unit);
    let mut name = stock.name.clone();
    if !name.contains(&size) {
        name = format!("{name} ({size})");
    }
    if let Some(run) = &stock.run {
        name = format!("{name}, run {run}");
    }
    StockWords {
        name,
        origin: stock.origin,
        each: stock.cost.map(|cost| cost.to_string()),
    }
}

/// One problem of a list, planned.
struct Listed<'a> {
    /// What the material is called.
    title: String,
    /// What was asked.
    problem: &'a Problem,
    /// What was found.
    plan: &'a Plan,
    /// What its numbers stand for.
    counting: Counting,
    /// How its costs are said.
    words: PlanWords,
    /// Its stock, each at its place.
    stock: Vec<StockWords>,
    /// The least remnant worth keeping; for a sheet its shorter and longer side.
    keep: [u64; 2],
}

/// What is said of one kind of stock.
#[derive(Clone, Debug)]
struct StockWords {
    /// Its name, and its size where the name is another.
    name: String,
    /// Where it comes from.
    origin: Origin,
    /// What one costs, ready to stand behind.
    each: Option<String>,
}

impl Listed<'_> {
    /// Everything said of it.
    fn sheaf(&self) -> Sheaf {
        let (take, buy) = self.take_and_buy();
        Sheaf {
            material: CutMaterial {
                name: self.title.clone(),
                take,
                buy,
                proof: self.words.proof(self.problem, self.plan),
                uncut: self.uncut(),
                dangers: dangers(self.problem),
                leaves: self.leaves(),
            },
            drops: Vec::new(),
        }
    }

    fn take_and_buy(&self) -> (Vec<String>, Vec<String>) {
        let mut counts = vec![0_u64; self.stock.len()];
        let layouts: Vec<(Option<usize>, u64)> = match self.plan {
            Plan::Lengths(plan) => {
                let layouts = plan.layouts.iter();
                layouts
                    .map(|layout| (Some(layout.stock), layout.copies))
                    .collect()
            }
            Plan::Sheets(plan) => {
                let of = |from| match from {
                    From::Stock(stock) => Some(stock),
                    From::Window(_) => None,
                };
                let layouts = plan.layouts.iter();
                layouts
                    .map(|layout| (of(layout.from), layout.copies))
                    .collect()
            }
        };
        for (stock, copies) in layouts {
            if let Some(count) = stock.and_then(|stock| counts.get_mut(stock)) {
                *count = count.saturating_add(copies);
            }
        }
        let (mut take, mut buy) = (Vec::new(), Vec::new());
        for (stock, count) in self
            .stock
            .iter()
            .zip(counts)
            .filter(|(_, count)| *count > 0)
        {
            let line = match &stock.each {
                Some(each) => format!("{}, {each} each", times(count, &stock.name)),
                None => times(count, &stock.name),
            };
            match stock.origin {
                Origin::Buy => buy.push(line),
                Origin::Remnant => take.push(format!("{line}, a remnant")),
                Origin::Rack => take.push(line),
            }
        }
        (take, buy)
    }

    fn uncut(&self) -> Vec<String> {
        let say = |(piece, count): &(usize, u64)| {
            let (name, size) = match self.problem {
                Problem::Lengths(problem) => {
                    let piece = &problem.pieces[*piece];
                    (&piece.name, self.counting.exact(piece.length))
                }
                Problem::Sheets(problem) => {
                    let piece = &problem.pieces[*piece];
                    (
                        &piece.name,
                        self.counting.exact_size((piece.width, piece.height)),
                    )
                }
            };
            format!("{}, {size}", times(*count, name))
        };
        self.plan.uncut().iter().map(say).collect()
    }

    fn leaves(&self) -> Vec<CutLeaf> {
        let stock = |place: usize| self.stock[place].name.clone();
        let piece = |place: usize| match self.problem {
            Problem::Lengths(problem) => vec![problem.pieces[place].name.clone()],
            Problem::Sheets(problem) => vec![problem.pieces[place].name.clone()],
        };
        let window = |place: usize| format!("window of {}", piece(place).concat());
        let names = Names {
            stock: &stock,
            piece: &piece,
            window: &window,
            remnant: &|_, _| String::new(),
            mitre: &|_| None,
        };
        let mut labels = Labels::default();
        match (self.problem, self.plan) {
            (Problem::Lengths(problem), Plan::Lengths(plan)) => {
                let sticks = cut_sticks_of(problem, plan, &self.counting, Some(names));
                sticks
                    .into_iter()
                    .map(|stick| self.labelled_stick(stick, &mut labels))
                    .collect()
            }
            (Problem::Sheets(problem), Plan::Sheets(plan)) => {
                let sheets = cut_sheets_of(problem, plan, &self.counting, Some(names));
                sheets
                    .into_iter()
                    .map(|sheet| self.labelled_sheet(sheet, &mut labels))
                    .collect()
            }
            // Plans were held to their problems before.
            _ => Vec::new(),
        }
    }

    fn labelled_stick(&self, mut stick: CutStick, labels: &mut Labels) -> CutLeaf {
        let [_, least] = self.keep;
        stick
            .remnants
            .retain(|kept| kept.place.1 - kept.place.0 >= least);
        for kept in &mut stick.remnants {
            kept.label = labels.next();
        }
        CutLeaf::Stick(stick)
    }

    fn labelled_sheet(&self, mut sheet: CutSheet, labels: &mut Labels) -> CutLeaf {
        let [short, long] = self.keep;
        sheet.remnants.retain(|kept| {
            let (a, b) = (kept.place.width, kept.place.height);
            a.min(b) >= short && a.max(b) >= long
        });
        for kept in &mut sheet.remnants {
            kept.label = labels.next();
        }
        CutLeaf::Sheet(sheet)
    }
}

/// R1, R2, …
#[derive(Default)]
struct Labels(usize);

impl Labels {
    fn next(&mut self) -> String {
        self.0 += 1;
        format!("R{}", self.0)
    }
}
