//! `rabbet job advise`

use clap::Args;
use conservation::advice::{Advice, Advised};
use serde_json::json;
use sizing::Severity;
use trade::Job;
use web::care::{self, Cure};
use web::wire;

use super::Desk;
use super::answer::cautioned;
use super::job_file::{self, Derived};
use super::job_sizes::{all_lines, why};
use crate::exit::{EXIT_CODES, Exit};
use crate::files::{self, Writing};
use crate::problem::{Kind, Problem, Trouble};
use crate::terminal::Ink;

/// Tells everything that would harm a job or make it fall, with its cures; applies one on request
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet job advise print.toml", after_help = EXIT_CODES)]
#[allow(
    clippy::struct_excessive_bools,
    reason = "each is a flag of the command line"
)]
pub struct JobAdvise {
    /// The job file; - is stdin
    #[arg(value_name = "FILE")]
    file: String,
    /// Apply a cure by its number or name, derive the job again and show what is left
    #[arg(long, value_name = "N|CODE:N", conflicts_with_all = ["why", "working"])]
    apply: Option<String>,
    /// Where the changed job is written; left out: stdout
    #[arg(
        short,
        long,
        value_name = "FILE",
        requires = "apply",
        conflicts_with = "in_place"
    )]
    output: Option<String>,
    /// Write the changed job over the one that was read
    #[arg(long, requires = "apply")]
    in_place: bool,
    /// Replace a file that is there
    #[arg(long, requires = "output")]
    force: bool,
    /// Say what would be written, and write nothing
    #[arg(long, requires = "apply")]
    dry_run: bool,
    /// Explain one value, or list those whose names begin so
    #[arg(long, value_name = "PATH", conflicts_with = "working")]
    why: Option<String>,
    /// Every line of the working too
    #[arg(long)]
    working: bool,
    /// As JSON; with --working, its lines too
    #[arg(long)]
    json: bool,
}

impl JobAdvise {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let bytes = files::read(&self.file)?;
        let job = Job::read(&bytes);
        let job = job.map_err(|faults| Trouble::document(self.name(), &faults))?;
        let derived = self.derived(job, desk)?;
        let advised = advised(&derived, desk)?;
        if let Some(name) = &self.apply {
            let text = String::from_utf8_lossy(&bytes);
            return self.apply(name, &text, &derived, &advised, desk);
        }
        let unit = derived.sizes.unit();
        if let Some(path) = &self.why {
            let text = why(path, &advised.working, unit, self.json)?;
            desk.terminal.data(&text)?;
            return Ok(Exit::Done);
        }
        if self.json {
            let mut value = wire::advised(&advised, &derived.sizes, unit);
            if self.working {
                value["working"] = wire::working(&advised.working, unit).into();
            }
            desk.terminal.data(&format!("{value:#}\n"))?;
            return Ok(worst(&advised));
        }
        let mut text = told(&advised, &derived, desk);
        if self.working {
            text.push('\n');
            text.push_str(&all_lines(&advised.working));
        }
        desk.terminal.data(&text)?;
        Ok(worst(&advised))
    }

    fn name(&self) -> &str {
        job_file::shown(&self.file)
    }

    fn derived(&self, job: Job, desk: &Desk) -> Result<Derived, Trouble> {
        let (settings, catalogue) = (desk.shop.settings(job.units)?, desk.shop.catalogue()?);
        match sizing::derive(&job, &catalogue, &settings) {
            Ok(sizes) => Ok(Derived { job, sizes }),
            Err(faults) => Err(Trouble::piece(self.name(), &faults)),
        }
    }

    /// Applies a cure, writes the job, and shows that it is cured.
    fn apply(
        &self,
        name: &str,
        text: &str,
        derived: &Derived,
        advised_before: &Advised,
        desk: &Desk,
    ) -> Result<Exit, Trouble> {
        let cure = care::cure_named(name, advised_before).map_err(|sentence| {
            let problem = Problem::new("advice.no_cure", sentence.trim_end_matches('.'));
            let hint = "`rabbet job advise FILE` lists them with their numbers";
            Trouble::one(Kind::Input, problem.hint(hint))
        })?;
        let unit = derived.sizes.unit();
        let document = care::document_with(text, &derived.job, &cure.change);
        let job = Job::read(document.as_bytes());
        let job = job.map_err(|faults| Trouble::document(self.name(), &faults))?;
        let after = self.derived(job, desk)?;
        let left = advised(&after, desk)?;
        let place = if self.in_place {
            self.file.as_str()
        } else {
            self.output.as_deref().unwrap_or("-")
        };
        if self.json {
            let mut value = wire::advised(&left, &after.sizes, unit);
            value["done"] = cure.change.sentence(unit).into();
            value["cured"] =
                json!({ "code": cure.code, "part": cure.part, "is_gone": cure.is_gone(&left) });
            value["document"] = document.clone().into();
            desk.terminal.data(&format!("{value:#}\n"))?;
        }
        if !(self.json && place == "-") {
            let how = Writing {
                dry_run: self.dry_run,
                replace: self.in_place || self.force,
            };
            files::write(place, document.as_bytes(), how, desk.terminal)?;
        }
        if !self.json {
            desk.terminal.talk(&cured(&cure, &left, unit));
        }
        Ok(if cure.is_gone(&left) {
            Exit::Done
        } else {
            Exit::Refused
        })
    }
}

/// All advice on a job, every cure tried.
fn advised(derived: &Derived, desk: &Desk) -> Result<Advised, Trouble> {
    let (settings, catalogue) = (
        desk.shop.settings(derived.job.units)?,
        desk.shop.catalogue()?,
    );
    let (job, sizes) = (&derived.job, &derived.sizes);
    Ok(hanging::advice::advice(job, sizes, &catalogue, &settings))
}

/// What was done, and what is left.
fn cured(cure: &Cure, left: &Advised, unit: measure::Unit) -> String {
    let done = cure.change.sentence(unit);
    let verdict = if cure.is_gone(left) {
        "cured"
    } else {
        "still there"
    };
    let rest = match left.advice.len() {
        0 => "nothing else is advised".to_owned(),
        1 => "one other piece of advice is left".to_owned(),
        several => format!("{several} other pieces of advice are left"),
    };
    format!("{done}: {} of {} {verdict}; {rest}", cure.code, cure.part)
}

fn worst(advised: &Advised) -> Exit {
    let stops = advised
        .advice
        .iter()
        .any(|advice| advice.fault.severity == Severity::Refuse);
    if stops { Exit::Refused } else { Exit::Done }
}

/// All advice, the worst first, its cures numbered, each caution once below.
fn told(advised: &Advised, derived: &Derived, desk: &Desk) -> String {
    if advised.advice.is_empty() {
        return "Nothing to advise: nothing harms it, as far as it is described.\n".to_owned();
    }
    let cures = care::cures(advised);
    let mut text = String::new();
    for (at, advice) in advised.advice.iter().enumerate() {
        let own: Vec<&Cure> = cures.iter().filter(|cure| cure.advice == at).collect();
        text.push_str(&one(advice, &own, advised, derived, desk));
        text.push('\n');
    }
    let mut cautions: Vec<_> = advised
        .advice
        .iter()
        .flat_map(|advice| advice.cautions.iter().copied())
        .collect();
    cautions.sort_unstable();
    cautions.dedup();
    for caution in cautions {
        text.push_str(&cautioned(caution.title(), caution.text(), desk.terminal));
    }
    text
}

fn one(
    advice: &Advice,
    cures: &[&Cure],
    advised: &Advised,
    derived: &Derived,
    desk: &Desk,
) -> String {
    let fault = &advice.fault;
    let ink = if fault.severity == Severity::Refuse {
        Ink::Stop
    } else {
        Ink::Mind
    };
    let word = desk.terminal.ink_out(ink, fault.severity.word());
    let allowed = if fault.allowed.is_empty() {
        String::new()
    } else {
        format!("; {}", fault.allowed)
    };
    let authority = care::authority(advice, advised, &derived.sizes);
    let mut lines = vec![format!("{word}: {}: {}{allowed}", fault.part, fault.found)];
    if !fault.cure.is_empty() {
        lines.push(format!("  advice: {}", fault.cure));
    }
    let unit = derived.sizes.unit();
    lines.extend(cures.iter().map(|cure| {
        let name = desk.terminal.ink_out(Ink::Faint, &cure.name);
        let sentence = cure.change.sentence(unit);
        format!("  cure {}: {sentence}  {name}", cure.number)
    }));
    let mut source = format!("  source: {}", authority.source);
    if !authority.status.is_empty() {
        source = format!("{source}; its numbers: {}", authority.status);
    }
    lines.push(source);
    let faint = |words: String| desk.terminal.ink_out(Ink::Faint, &words);
    lines.push(faint(format!("  code: {}", fault.code)));
    lines.extend(advice.lines.first().map(|line| {
        let subject = advised.working.line(*line).subject;
        faint(format!("  why: {subject}"))
    }));
    lines.join("\n") + "\n"
}
