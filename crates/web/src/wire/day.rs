//! A settled day, as JSON: lengths as quanta and text, amounts whole.

use cutting::{Plan, sheets};
use demand::{
    Account, Basis, Batch, Day, Extent, From, Left, Outcome, PartAt, Remnant, Settled, Source,
    Spot, Taken,
};
use measure::{Length, Size, Unit};
use paperwork::{PlanWords, Weighed, problem_of};
use serde_json::{Value, json};

/// A whole day: `plans` and `outcome` are its own, one for each batch, in their order.
pub fn day(day: &Day, plans: &[Plan], outcome: &Outcome) -> Value {
    let pen = Pen {
        day,
        unit: day.unit,
    };
    let batches = day.batches.iter().zip(plans).zip(&outcome.settled);
    let materials: Vec<Value> = batches
        .map(|((batch, plan), settled)| pen.material(batch, plan, settled))
        .collect();
    let jobs = day
        .jobs
        .iter()
        .map(|job| json!({ "name": job.name, "due_day": job.due }));
    let unplanned = day
        .unplanned
        .iter()
        .map(|left| json!({ "job": day.jobs[left.job].name, "part": left.part, "why": left.why }));
    json!({
        "tick": { "name": day.tick.name(), "length": pen.length(day.tick.step()) },
        "jobs": jobs.collect::<Vec<_>>(),
        "materials": materials,
        "unplanned": unplanned.collect::<Vec<_>>(),
        "unknown_stock": day.unknown,
    })
}

#[derive(Clone, Copy)]
struct Pen<'a> {
    day: &'a Day,
    unit: Unit,
}

impl Pen<'_> {
    fn length(self, length: Length) -> Value {
        super::length(length, self.unit)
    }

    /// `length` of a stick, `size` of a sheet.
    fn extent(self, extent: Extent) -> Value {
        match extent {
            Extent::Stick(length) => json!({ "length": self.length(length) }),
            Extent::Sheet(size) => json!({ "size": super::size(size, self.unit) }),
        }
    }

    fn spot(self, spot: Spot) -> Value {
        match spot {
            Spot::Along { at, length } => {
                json!({ "at": self.length(at), "length": self.length(length) })
            }
            Spot::On {
                x,
                y,
                width,
                height,
                turned,
            } => json!({
                "x": self.length(x),
                "y": self.length(y),
                "size": super::size(Size::new(width, height), self.unit),
                "turned": turned,
            }),
        }
    }

    fn material(self, batch: &Batch, plan: &Plan, settled: &Settled) -> Value {
        let problem = problem_of(batch);
        let words = PlanWords::Of {
            basis: batch.basis,
            tick: self.day.tick,
            unit: self.unit,
            weighed: if batch.is_weighed() {
                Weighed::RackToo
            } else {
                Weighed::Nothing
            },
        };
        let amount = |count: u64| json!({ "count": count, "text": words.amount(&problem, count) });
        let currency = match batch.basis {
            Basis::Money(currency) => Value::from(currency.code()),
            Basis::Measure => Value::Null,
        };
        let taken = settled.taken.iter();
        json!({
            "code": batch.ware.code,
            "kind": batch.ware.kind.word(),
            "colour": batch.ware.colour,
            "own_to": batch.ware.own_to,
            "currency": currency,
            "cost": amount(settled.objective),
            "bound": amount(settled.bound),
            "proven": settled.proven,
            "used": settled.used.iter().map(|used| {
                self.source(&batch.sources[used.source], used.count)
            }).collect::<Vec<_>>(),
            "taken": taken.map(|taken| self.taken(batch, plan, taken)).collect::<Vec<_>>(),
            "remnants": settled.remnants.iter().map(|one| self.remnant(one)).collect::<Vec<_>>(),
            "missing": settled.missing.iter().map(|missing| {
                let mut entry = self.extent(missing.exact);
                entry["job"] = self.job(missing.job);
                entry["part"] = missing.part.clone().into();
                entry
            }).collect::<Vec<_>>(),
            "account": self.account(settled.account),
        })
    }

    fn job(self, place: usize) -> Value {
        self.day.jobs[place].name.clone().into()
    }

    fn source(self, source: &Source, count: u64) -> Value {
        let mut entry = self.extent(source.extent);
        entry["name"] = source.name.clone().into();
        entry["origin"] = match source.origin {
            demand::Origin::Remnant => "remnant",
            demand::Origin::Rack => "rack",
            demand::Origin::Buy => "buy",
        }
        .into();
        entry["count"] = count.into();
        entry["run"] = source.run.clone().into();
        entry["bin"] = source.bin.clone().into();
        entry["cost"] = source.cost.map_or(
            Value::Null,
            |cost| json!({ "minor": cost.minor, "currency": cost.currency.code() }),
        );
        entry
    }

    fn taken(self, batch: &Batch, plan: &Plan, taken: &Taken) -> Value {
        let mut entry = self.extent(taken.extent);
        entry["name"] = taken.name.clone().into();
        entry["from"] = match taken.from {
            From::Source(source) => json!({ "stock": batch.sources[source].name }),
            From::Fallout { taken, part } => {
                json!({ "fallout": { "taken": taken + 1, "part": part + 1 } })
            }
        };
        let parts = taken.parts.iter().map(|part| self.part(part));
        entry["parts"] = parts.collect::<Vec<_>>().into();
        if let Plan::Sheets(plan) = plan {
            let cuts = plan.layouts[taken.layout].cuts.iter();
            entry["cuts"] = cuts.map(|cut| self.cut(*cut)).collect::<Vec<_>>().into();
        }
        entry
    }

    fn part(self, part: &PartAt) -> Value {
        let mut entry = self.extent(part.exact);
        entry["job"] = self.job(part.job);
        entry["part"] = part.part.clone().into();
        entry["at"] = self.spot(part.at);
        entry
    }

    fn cut(self, cut: sheets::Cut) -> Value {
        let ticks = |count: u64| self.day.tick.length(count);
        let of = Spot::On {
            x: ticks(cut.of.x),
            y: ticks(cut.of.y),
            width: ticks(cut.of.width),
            height: ticks(cut.of.height),
            turned: false,
        };
        let way = match cut.way {
            sheets::Way::Upright => "up",
            sheets::Way::Level => "across",
        };
        json!({ "of": self.spot(of), "way": way, "at": self.length(ticks(cut.at)) })
    }

    fn remnant(self, remnant: &Remnant) -> Value {
        let mut entry = self.extent(remnant.extent);
        entry["label"] = remnant.label.clone().into();
        entry["run"] = remnant.run.clone().into();
        entry["left"] = match remnant.left {
            Left::Of(taken, spot) => json!({ "taken": taken + 1, "at": self.spot(spot) }),
            Left::Dropped { taken, part } => json!({ "taken": taken + 1, "part": part + 1 }),
        };
        entry
    }

    /// Amounts as decimal text, because areas are beyond what every reader of JSON holds exactly.
    fn account(self, account: Account) -> Value {
        let amount = |quanta: i128| json!({ "quanta": quanta.to_string(), "text": account.say(quanta, self.unit) });
        json!({
            "of": if account.of_sheets { "areas" } else { "lengths" },
            "stock": amount(account.stock),
            "pieces": amount(account.pieces),
            "cuts": amount(account.cuts),
            "trim": amount(account.trim),
            "remnants": amount(account.remnants),
            "waste": amount(account.waste),
            "rounding": amount(account.rounding),
        })
    }
}
