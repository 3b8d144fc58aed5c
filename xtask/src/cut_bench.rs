//! `cargo xtask cut-bench`: our cutting solver on a set of benchmark instances.
//!
//! Every plan is verified twice, by our own check and by an independent script. Where the general
//! research solver `packingsolver` is installed for some Python, it solves the same instance right
//! after ours, on one core and with the same limit of time: only ratios within one run mean much.

mod ours;
mod outside;
mod report;

use std::collections::BTreeMap;
use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::mpsc;
use std::thread;
use std::time::Duration;

use clap::Args;
use cutting::document::{self, Instance};

use crate::breach::Trouble;
use ours::Ours;
use outside::{Answer, Reference};

/// What `cut-bench` is asked.
#[derive(Args)]
pub struct CutBench {
    /// The set of instances: JSON, cutting-set/1.
    set: PathBuf,
    /// Seconds for each instance.
    #[arg(long, default_value_t = 10.0, value_parser = seconds)]
    seconds: f64,
    /// Only instances whose names hold one of these texts.
    #[arg(long, value_delimiter = ',')]
    only: Vec<String>,
    /// Write the plans to this file: JSON, cutting-plans/1.
    #[arg(long)]
    plans: Option<PathBuf>,
    /// The independent checker; otherwise `check_plan.py` beside or above the set, or our copy.
    #[arg(long)]
    checker: Option<PathBuf>,
    /// Leave the research solver out.
    #[arg(long)]
    alone: bool,
    /// Instances solved at the same time, each on one thread.
    #[arg(long, default_value_t = 1, value_parser = clap::value_parser!(u16).range(1..))]
    threads: u16,
    /// Seed of every random choice.
    #[arg(long, default_value_t = 1)]
    seed: u64,
}

fn seconds(text: &str) -> Result<f64, String> {
    match text.parse() {
        Ok(seconds) if (0.0..=86_400.0).contains(&seconds) => Ok(seconds),
        _ => Err("give seconds from 0 up to a day, 86400".to_owned()),
    }
}

/// One instance, solved by both.
struct Row<'a> {
    instance: &'a Instance,
    ours: Ours,
    reference: Option<Answer>,
}

/// Solves, verifies and reports; true when every plan holds and no bound is refuted.
pub fn run(bench: &CutBench, out: &mut impl Write) -> Result<bool, Trouble> {
    let text = fs::read_to_string(&bench.set).map_err(|source| Trouble::File {
        path: bench.set.clone(),
        source,
    })?;
    let instances = match document::read(&text) {
        Ok(instances) => instances,
        Err(refusals) => {
            for refusal in refusals {
                writeln!(out, "{}: {refusal}", bench.set.display())?;
            }
            return Ok(false);
        }
    };
    let wanted = |instance: &&Instance| {
        bench.only.is_empty() || bench.only.iter().any(|part| instance.name.contains(part))
    };
    let chosen: Vec<&Instance> = instances.iter().filter(wanted).collect();
    if chosen.is_empty() {
        writeln!(out, "no instance bears such a name; see --only")?;
        return Ok(false);
    }
    let reference = if bench.alone { None } else { Reference::find() };
    report::heading(bench.seconds, reference.as_ref(), &chosen, out)?;
    let rows = solved(bench, &chosen, reference.as_ref(), out)?;
    let refused = verified(bench, &rows, out)?;
    report::summary(&rows, out)?;
    let sound = rows.iter().all(|row| report::faults(row).is_empty());
    Ok(sound && refused == 0)
}

/// Solves every instance; the rows are printed in their order as soon as they are there.
fn solved<'a>(
    bench: &CutBench,
    chosen: &[&'a Instance],
    reference: Option<&Reference>,
    out: &mut impl Write,
) -> Result<Vec<Row<'a>>, Trouble> {
    let limit = Duration::try_from_secs_f64(bench.seconds).unwrap_or(Duration::MAX);
    let next = AtomicUsize::new(0);
    let (sender, receiver) = mpsc::channel();
    let width = report::name_width(chosen);
    thread::scope(|scope| {
        for core in 0..bench.threads {
            let (sender, next) = (sender.clone(), &next);
            scope.spawn(move || {
                while let Some(instance) = chosen.get(next.fetch_add(1, Ordering::Relaxed)) {
                    let ours = ours::solve(&instance.problem, limit, bench.seed);
                    let answer = reference.map(|other| other.ask(&instance.problem, limit, core));
                    let row = Row {
                        instance,
                        ours,
                        reference: answer,
                    };
                    // Nobody listens any more when the report could not be printed.
                    if sender.send(row).is_err() {
                        break;
                    }
                }
            });
        }
        drop(sender);
        in_order(chosen, receiver, width, out)
    })
}

fn in_order<'a>(
    chosen: &[&'a Instance],
    receiver: mpsc::Receiver<Row<'a>>,
    width: usize,
    out: &mut impl Write,
) -> Result<Vec<Row<'a>>, Trouble> {
    let mut early: BTreeMap<&str, Row<'a>> = BTreeMap::new();
    let mut rows = Vec::new();
    for row in receiver {
        early.insert(&row.instance.name, row);
        while let Some(row) = chosen
            .get(rows.len())
            .and_then(|instance| early.remove(instance.name.as_str()))
        {
            report::row(&row, width, out)?;
            out.flush()?;
            rows.push(row);
        }
    }
    Ok(rows)
}

/// Has the independent script check all plans; says how many it refuses.
fn verified(bench: &CutBench, rows: &[Row<'_>], out: &mut impl Write) -> Result<usize, Trouble> {
    let plans: Vec<document::Written> = rows.iter().filter_map(|row| row.ours.written()).collect();
    let scratch = std::env::temp_dir().join(format!("cut-bench-{}.json", std::process::id()));
    let path = bench.plans.as_ref().unwrap_or(&scratch);
    fs::write(path, document::plans(&plans)).map_err(|source| Trouble::File {
        path: path.clone(),
        source,
    })?;
    let mut refused = Vec::new();
    if let Some(script) = checker(bench) {
        let verdicts = outside::verdicts(&script, &bench.set, path)?;
        refused = verdicts.refused;
        let (all, bad) = (verdicts.given, refused.len());
        if all != plans.len() {
            refused.push(format!("{} plans, but {all} verdicts on them", plans.len()));
        }
        writeln!(
            out,
            "\n{}: {} hold, {bad} refused",
            script.display(),
            all - bad
        )?;
    } else {
        refused.push("no independent checker was found; name one with --checker".to_owned());
    }
    for sentence in &refused {
        writeln!(out, "    {sentence}")?;
    }
    if bench.plans.is_none() {
        fs::remove_file(&scratch).map_err(|source| Trouble::File {
            path: scratch,
            source,
        })?;
    }
    Ok(refused.len())
}

/// The script that is asked for, or one beside or above the set, or our copy.
fn checker(bench: &CutBench) -> Option<PathBuf> {
    if let Some(path) = &bench.checker {
        return Some(path.clone());
    }
    let set = fs::canonicalize(&bench.set).ok()?;
    let near = set.ancestors().skip(1).take(2).map(Path::to_path_buf);
    let ours = Path::new(env!("CARGO_MANIFEST_DIR")).join("../suite/ref/cutting");
    near.chain([ours])
        .map(|folder| folder.join("check_plan.py"))
        .find(|path| path.is_file())
}
