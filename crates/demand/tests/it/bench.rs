//! What most tests begin with: demo jobs, sized, and the day made of them.

use std::collections::BTreeMap;

use demand::{Batch, Day, Fault, Stock, Work};
use measure::Unit;
use sizing::{Sizes, derive};
use trade::settings::Layer;
use trade::{Catalogue, Job, Settings, Units};

/// The shop's settings with changes laid over.
pub fn settings(changes: &[(&str, &str)]) -> Settings {
    let changes: BTreeMap<String, String> = changes
        .iter()
        .map(|(id, text)| ((*id).to_owned(), (*text).to_owned()))
        .collect();
    let defaults = Settings::defaults(Units::Inches);
    defaults.with(&changes, Layer::Shop, Unit::Inch).unwrap()
}

/// A job document, sized by the starter catalogue.
pub fn sized(text: &str) -> (Job, Sizes) {
    let job = Job::read(text.as_bytes()).unwrap();
    let sizes = derive(&job, &Catalogue::starter(), &Settings::defaults(job.units)).unwrap();
    (job, sizes)
}

/// Demo jobs of these names, sized.
pub fn demo(names: &[&str]) -> Vec<(Job, Sizes)> {
    let jobs = names.iter().map(|name| demo::job(name).unwrap());
    jobs.map(|job| sized(job.toml)).collect()
}

/// The day of some pieces, or its faults.
pub fn tried(
    pieces: &[(Job, Sizes)],
    stock: &str,
    changes: &[(&str, &str)],
) -> Result<Day, Vec<Fault>> {
    let stock = if stock.is_empty() {
        Stock::default()
    } else {
        Stock::read(stock.as_bytes()).unwrap()
    };
    Day::of(pieces, &Catalogue::starter(), &stock, &settings(changes))
}

/// The day of demo jobs.
pub fn day(names: &[&str], stock: &str, changes: &[(&str, &str)]) -> Day {
    tried(&demo(names), stock, changes).unwrap()
}

/// The batch of a ware.
pub fn batch<'a>(day: &'a Day, ware: &str) -> &'a Batch {
    let found = day
        .batches
        .iter()
        .find(|batch| batch.ware.to_string() == ware);
    found.unwrap_or_else(|| {
        let all: Vec<String> = day.batches.iter().map(|b| b.ware.to_string()).collect();
        panic!("there is no {ware} among {all:?}")
    })
}

/// Pieces of a batch: name, size in ticks, count, window.
pub fn pieces(batch: &Batch) -> Vec<String> {
    match &batch.work {
        Work::Lengths { problem, .. } => {
            let lines = problem.pieces.iter();
            lines
                .map(|p| format!("{} = {} × {}", p.name, p.length, p.count.unwrap()))
                .collect()
        }
        Work::Sheets { problem, .. } => {
            let lines = problem.pieces.iter();
            lines
                .map(|p| {
                    let window = p
                        .window
                        .map_or(String::new(), |(w, h)| format!(", drops {w} {h}"));
                    let count = p.count.unwrap();
                    format!("{} = {} {} × {count}{window}", p.name, p.width, p.height)
                })
                .collect()
        }
    }
}
