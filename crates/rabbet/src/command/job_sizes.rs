//! `rabbet job sizes`

use std::fmt::Write as _;

use clap::Args;
use measure::Unit;
use serde_json::{Value, json};
use working::{LineView, Working};

use super::{Desk, job_file};
use crate::exit::{EXIT_CODES, Exit};
use crate::near;
use crate::problem::{Kind, Problem, Trouble};
use crate::report;
use web::wire;

/// Shows every size of a job, and why it is what it is
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet job sizes print.toml --why package.width", after_help = EXIT_CODES)]
pub struct JobSizes {
    /// The job file; - is stdin
    #[arg(value_name = "FILE")]
    file: String,
    /// Explain one size, or list those whose names begin so
    #[arg(long, value_name = "PATH", conflicts_with = "working")]
    why: Option<String>,
    /// Every line of the working instead of the table
    #[arg(long)]
    working: bool,
    /// As JSON; with --working, its lines too
    #[arg(long)]
    json: bool,
}

impl JobSizes {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let derived = job_file::derive(&self.file, desk)?;
        let sizes = &derived.sizes;
        if let Some(path) = &self.why {
            desk.terminal
                .data(&why(path, &sizes.working, sizes.unit(), self.json)?)?;
            return Ok(Exit::Done);
        }
        let text = if self.json {
            let mut value = wire::sizes(sizes);
            if self.working {
                value["working"] = wire::working(&sizes.working, sizes.unit()).into();
            }
            format!("{value:#}\n")
        } else if self.working {
            all_lines(&sizes.working)
        } else {
            report::of_sizes(sizes).render(desk.terminal)
        };
        desk.terminal.data(&text)?;
        job_file::tell(&self.file, &sizes.faults, desk);
        Ok(if sizes.is_refused() {
            Exit::Refused
        } else {
            Exit::Done
        })
    }
}

/// Every line of a working as text.
pub fn all_lines(working: &Working) -> String {
    working.lines().fold(String::new(), |mut text, line| {
        writeln!(text, "{line}").expect("writing to a string");
        text
    })
}

/// The explanation of one path, or a list of those it may mean.
pub fn why(path: &str, working: &Working, unit: Unit, as_json: bool) -> Result<String, Trouble> {
    let meant = meant(path.trim().trim_matches('.'), working);
    match meant.as_slice() {
        [] => Err(unknown(path, working)),
        [one] => {
            let explanation = working.explain(one.id);
            if as_json {
                let lines: Vec<Value> = explanation
                    .steps()
                    .iter()
                    .map(|step| {
                        let mut line = wire::one_line(&step.line, working, unit);
                        line["depth"] = step.depth.into();
                        line
                    })
                    .collect();
                return Ok(format!("{:#}\n", json!({ "why": lines })));
            }
            Ok(format!("{explanation}\n"))
        }
        several if as_json => {
            let lines: Vec<Value> = several
                .iter()
                .map(|line| wire::one_line(line, working, unit))
                .collect();
            Ok(format!("{:#}\n", json!({ "matches": lines })))
        }
        several => {
            let widest = several
                .iter()
                .map(|line| line.subject.to_string().len())
                .max()
                .unwrap_or_default();
            let lines = several.iter().map(|line| {
                format!(
                    "{:<widest$}  {}\n",
                    line.subject.to_string(),
                    said(line, unit)
                )
            });
            Ok(lines.collect())
        }
    }
}

fn said(line: &LineView<'_>, unit: Unit) -> String {
    match line.value {
        working::Value::Length(length) => length.in_both(unit),
        other => other.to_string(),
    }
}

/// The lines a path may mean: itself, else those under it, else those that have all its words in order.
fn meant<'a>(path: &str, working: &'a Working) -> Vec<LineView<'a>> {
    if let Some(line) = working.find(path) {
        return vec![line];
    }
    let latest = |keep: &dyn Fn(&LineView<'a>) -> bool| -> Vec<LineView<'a>> {
        let lines = working.lines().filter(keep);
        lines
            .filter(|line| {
                working
                    .find(&line.subject.to_string())
                    .is_some_and(|last| last.id == line.id)
            })
            .collect()
    };
    let under = latest(&|line| line.subject.is_under(path));
    if !under.is_empty() {
        return under;
    }
    let begun = latest(&|line| line.subject.to_string().starts_with(path));
    if !begun.is_empty() {
        return begun;
    }
    latest(&|line| has_words_in_order(&line.subject.to_string(), path))
}

/// Whether `subject` has every part of `path`, in order: `package.size.width` has `package.width`.
fn has_words_in_order(subject: &str, path: &str) -> bool {
    let mut parts = subject.split('.');
    path.split('.')
        .all(|wanted| parts.any(|part| part == wanted))
}

fn unknown(path: &str, working: &Working) -> Trouble {
    let paths: Vec<String> = working
        .lines()
        .map(|line| line.subject.to_string())
        .collect();
    let problem = Problem::new("why.unknown", format!("no size is called {path}"));
    let hint = match near::nearest(path, paths.iter().map(String::as_str)) {
        Some(near) => format!("did you mean {near}? `--why ''` lists them all"),
        None => "`--why ''` lists them all".to_owned(),
    };
    Trouble::one(Kind::Input, problem.hint(hint))
}
