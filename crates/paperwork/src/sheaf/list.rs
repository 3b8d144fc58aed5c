//! A plan of a list or of a cutting problem in JSON, material by material: names come from the
//! list itself.

use cutting::document::Instance;
use cutting::sheets::From;
use cutting::{OtherKind, Pair, Plan, Problem};
use demand::{Extent, ListBatch, ListStock, Origin};
use drawing::{Counting, CutSheet, CutStick, Names, cut_sheets_of, cut_sticks_of};
use measure::{Length, Money, Size, Toward, Unit};
use trade::Settings;

use super::words::{PlanWords, Weighed, dangers, tape, times};
use crate::cut_book::{Bought, CutLeaf, CutMaterial};

/// Everything said of one material of a cut list.
///
/// Shape:  `plan` is one of the batch's problem, and was checked; `unit` is the list's.
/// Units:  the batch's ticks, printed for the shop's tape.
/// Errors: a plan for sheets where sticks are cut, or the other way: a fault of the program.
pub fn cut_material_of_list(
    batch: &ListBatch,
    plan: &Plan,
    settings: &Settings,
    unit: Unit,
) -> Result<CutMaterial, OtherKind> {
    let weighed = |stock: &ListStock| stock.origin == Origin::Remnant && stock.cost.is_none();
    let listed = Listed {
        title: batch.name().to_owned(),
        problem: &batch.problem,
        plan,
        pair: batch.problem.with(plan)?,
        exact: batch.pieces.iter().map(|piece| piece.extent).collect(),
        counting: Counting::Lengths {
            each: batch.tick.step(),
            tape: tape(settings),
            toward: Toward::Nearest,
        },
        words: PlanWords::Of {
            basis: batch.basis,
            tick: batch.tick,
            unit,
            weighed: if batch.stock.iter().any(weighed) {
                Weighed::Remnants
            } else {
                Weighed::Nothing
            },
        },
        stock: batch
            .stock
            .iter()
            .map(|stock| stock_words(stock, unit))
            .collect(),
        keep: batch.keep.map(|length| batch.tick.up(length)),
    };
    Ok(listed.material())
}

/// Everything said of a cutting problem in JSON.
///
/// Shape:  `plan` is one of its problem, and was checked.
/// Units:  none; numbers are printed as they are.
/// Errors: a plan for sheets where sticks are cut, or the other way: a fault of the program.
pub fn cut_material_of_instance(
    instance: &Instance,
    plan: &Plan,
) -> Result<CutMaterial, OtherKind> {
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
        pair: instance.problem.with(plan)?,
        exact: Vec::new(),
        counting: Counting::Plain {
            unit: String::new(),
        },
        words: PlanWords::Plain,
        stock,
        keep: [0; 2],
    };
    Ok(listed.material())
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
        each: stock.cost,
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
    /// Both.
    pair: Pair<'a>,
    /// The true size of each piece, where counts are lengths.
    exact: Vec<Extent>,
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
    /// What one costs.
    each: Option<Money>,
}

impl Listed<'_> {
    /// Everything said of it.
    fn material(&self) -> CutMaterial {
        let (take, buy, bought) = self.take_and_buy();
        CutMaterial {
            name: self.title.clone(),
            take,
            buy,
            bought,
            drops: Vec::new(),
            proof: self.words.proof(self.problem, self.plan),
            uncut: self.uncut(),
            dangers: dangers(self.problem),
            leaves: self.leaves(),
        }
    }

    /// How many of each stock are used.
    fn used(&self) -> Vec<u64> {
        let mut counts = vec![0_u64; self.stock.len()];
        let layouts: Vec<(Option<usize>, u64)> = match self.pair {
            Pair::Lengths(_, plan) => {
                let layouts = plan.layouts.iter();
                layouts
                    .map(|layout| (Some(layout.stock), layout.copies))
                    .collect()
            }
            Pair::Sheets(_, plan) => {
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
            if let Some(stock) = stock {
                counts[stock] = counts[stock].saturating_add(copies);
            }
        }
        counts
    }

    /// What to take from the rack and what to buy, a line each, and the sum of what is bought.
    fn take_and_buy(&self) -> (Vec<String>, Vec<String>, Bought) {
        let (mut take, mut buy, mut bought) = (Vec::new(), Vec::new(), Bought::default());
        for (stock, count) in self
            .stock
            .iter()
            .zip(self.used())
            .filter(|(_, count)| *count > 0)
        {
            let line = match &stock.each {
                Some(each) => format!("{}, {each} each", times(count, &stock.name)),
                None => times(count, &stock.name),
            };
            match stock.origin {
                Origin::Buy => {
                    buy.push(line);
                    match self.pair {
                        Pair::Lengths(..) => bought.sticks(count, stock.each),
                        Pair::Sheets(..) => bought.sheets(count, stock.each),
                    }
                }
                Origin::Remnant => take.push(format!("{line}, a remnant")),
                Origin::Rack => take.push(line),
            }
        }
        (take, buy, bought)
    }

    fn uncut(&self) -> Vec<String> {
        let say = |(piece, count): &(usize, u64)| {
            let (name, size) = match self.pair {
                Pair::Lengths(problem, _) => {
                    let wanted = &problem.pieces[*piece];
                    let length = self
                        .counting
                        .true_length(wanted.length, self.length(*piece));
                    (&wanted.name, length)
                }
                Pair::Sheets(problem, _) => {
                    let wanted = &problem.pieces[*piece];
                    let size = (wanted.width, wanted.height);
                    (
                        &wanted.name,
                        self.counting.true_size(size, self.size(*piece)),
                    )
                }
            };
            format!("{}, {size}", times(*count, name))
        };
        self.plan.uncut().iter().map(say).collect()
    }

    /// The true length of a stick's piece.
    fn length(&self, piece: usize) -> Option<Length> {
        match self.exact.get(piece) {
            Some(Extent::Stick(length)) => Some(*length),
            Some(Extent::Sheet(_)) | None => None,
        }
    }

    /// The true size of a sheet's piece.
    fn size(&self, piece: usize) -> Option<Size> {
        match self.exact.get(piece) {
            Some(Extent::Sheet(size)) => Some(*size),
            Some(Extent::Stick(_)) | None => None,
        }
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
            length: &|piece| self.length(piece),
            size: &|piece| self.size(piece),
            mitre: &|_| None,
        };
        let mut labels = Labels::default();
        match self.pair {
            Pair::Lengths(problem, plan) => {
                let sticks = cut_sticks_of(problem, plan, &self.counting, Some(names));
                sticks
                    .into_iter()
                    .map(|stick| self.labelled_stick(stick, &mut labels))
                    .collect()
            }
            Pair::Sheets(problem, plan) => {
                let sheets = cut_sheets_of(problem, plan, &self.counting, Some(names));
                sheets
                    .into_iter()
                    .map(|sheet| self.labelled_sheet(sheet, &mut labels))
                    .collect()
            }
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
