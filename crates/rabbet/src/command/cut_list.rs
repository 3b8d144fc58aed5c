//! `rabbet cut list`

use std::path::Path;

use clap::Args;
use cutting::document::{self, Refusal, is_json, is_set};
use cutting::{Plan, Problem as Task};
use demand::{CutList as List, ListFault, ListReason};
use serde_json::Value;
use trade::Units;
use web::wire;

use super::{Desk, job_file};
use crate::cut::{self, Answer, CutMaterial, Options, Solved, wants_all};
use crate::exit::{EXIT_CODES, Exit};
use crate::files;
use crate::problem::{Kind, Problem, Spot, Trouble, pointed};

/// Plans what is cut from what, for a list of pieces typed by hand or a cutting problem in JSON
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet cut list list.toml", after_help = EXIT_CODES)]
pub struct CutList {
    /// The list, TOML, or a cutting problem or a set of them, JSON; - is stdin
    #[arg(value_name = "FILE")]
    file: String,
    #[command(flatten)]
    options: Options,
}

impl CutList {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        self.options.check(&[&self.file], &[])?;
        let bytes = files::read(&self.file)?;
        match std::str::from_utf8(&bytes) {
            Ok(text) if is_json(text) => self.instances(text, desk),
            _ => self.list(&bytes, desk),
        }
    }

    fn list(&self, bytes: &[u8], desk: &Desk) -> Result<Exit, Trouble> {
        let refused = |faults: Vec<ListFault>| self.refused(bytes, &faults);
        let list = List::read(bytes).map_err(refused)?;
        let settings = desk.shop.settings(list.units)?;
        let batches = list.batches(&settings).map_err(refused)?;
        let tasks: Vec<Task> = batches.iter().map(|batch| batch.problem.clone()).collect();
        let unit = list.units.unit();
        let solved = cut::solve(&tasks, &self.options, desk.terminal).map_err(|unsolved| {
            cut::told(unsolved, Kind::Document, |place, fault| {
                self.problem_of(bytes, &batches[place].fault(fault, unit))
            })
        })?;
        let materials = batches.iter().zip(&solved.plans);
        let materials = materials
            .map(|(batch, plan)| cut::cut_material_of_list(batch, plan, &settings, unit))
            .collect::<Result<Vec<CutMaterial>, _>>()
            .map_err(|other| cut::ours(&other))?;
        let tick = batches.first().map(|batch| batch.tick.name());
        let json = json_of(&tasks, &solved.plans, tick, false)?;
        self.deliver(materials, &tasks, solved, json, list.units, desk)
    }

    fn instances(&self, text: &str, desk: &Desk) -> Result<Exit, Trouble> {
        let shown = job_file::shown(&self.file);
        let instances = document::read(text).map_err(|refusals| unread(shown, &refusals))?;
        if instances.is_empty() {
            let problem = Problem::new("cut.nothing", "there is nothing to cut in this set");
            let problem = problem.hint("give it at least one problem").in_file(shown);
            return Err(Trouble::one(Kind::Document, problem));
        }
        let tasks: Vec<Task> = instances.iter().map(|one| one.problem.clone()).collect();
        let solved = cut::solve(&tasks, &self.options, desk.terminal).map_err(|unsolved| {
            cut::told(unsolved, Kind::Document, |place, fault| {
                let sentence = if tasks.len() > 1 {
                    format!("{}: {fault}", tasks[place].name())
                } else {
                    fault.to_string()
                };
                Problem::new("cut.refused", sentence).in_file(shown)
            })
        })?;
        let materials = instances.iter().zip(&solved.plans);
        let materials = materials
            .map(|(one, plan)| cut::cut_material_of_instance(one, plan))
            .collect::<Result<Vec<CutMaterial>, _>>()
            .map_err(|other| cut::ours(&other))?;
        let json = json_of(&tasks, &solved.plans, None, is_set(text))?;
        self.deliver(materials, &tasks, solved, json, Units::Millimetres, desk)
    }

    fn deliver(
        &self,
        materials: Vec<CutMaterial>,
        tasks: &[Task],
        solved: Solved,
        json: String,
        units: Units,
        desk: &Desk,
    ) -> Result<Exit, Trouble> {
        let wanted = tasks
            .iter()
            .zip(&materials)
            .filter(|(task, _)| wants_all(task));
        let lacking = wanted.flat_map(|(_, material)| material.uncut.clone());
        let answer = Answer {
            lacking: lacking.collect(),
            materials,
            name: self.name(),
            orders: Vec::new(),
            units,
            json,
            further: Vec::new(),
            closing: Vec::new(),
            stopping: solved.stopping,
        };
        cut::deliver(&answer, &self.options, desk.terminal)
    }

    /// What the plan is called: its file's name.
    fn name(&self) -> String {
        let stem = Path::new(&self.file).file_stem();
        let stem = stem.map(|stem| stem.to_string_lossy().into_owned());
        stem.filter(|stem| stem != "-")
            .unwrap_or_else(|| "cut list".to_owned())
    }

    fn refused(&self, bytes: &[u8], faults: &[ListFault]) -> Trouble {
        Trouble {
            kind: Kind::Document,
            problems: faults
                .iter()
                .map(|fault| self.problem_of(bytes, fault))
                .collect(),
        }
    }

    fn problem_of(&self, bytes: &[u8], fault: &ListFault) -> Problem {
        const SHOWN: usize = 120;
        let text = String::from_utf8_lossy(bytes);
        let line = fault.line.and_then(|line| text.lines().nth(line - 1));
        let shown = line.map(|line| {
            let line: String = line.chars().take(SHOWN).collect();
            pointed(&line, fault.column)
        });
        let mut problem = Problem::new(fault.code(), fault.to_string());
        if matches!(*fault.reason, ListReason::Form { .. }) && !text.contains("[[") {
            problem = problem.hint(
                "a list is TOML, as `rabbet demo write` puts one into cut-list.toml; \
                 a cutting problem in JSON opens with a brace",
            );
        }
        problem.at(Spot {
            file: Some(job_file::shown(&self.file).to_owned()),
            line: fault.line,
            column: fault.column,
            pointer: None,
            shown,
        })
    }
}

fn unread(file: &str, refusals: &[Refusal]) -> Trouble {
    let problems = refusals.iter().map(|refusal| {
        let (line, column) = refusal.reason.place().unzip();
        Problem::new("cut.instance", refusal.to_string()).at(Spot {
            file: Some(file.to_owned()),
            line,
            column,
            ..Spot::default()
        })
    });
    Trouble {
        kind: Kind::Document,
        problems: problems.collect(),
    }
}

/// The plans as JSON: a single one, or many, one to a line.
fn json_of(
    tasks: &[Task],
    plans: &[Plan],
    unit: Option<&str>,
    set: bool,
) -> Result<String, Trouble> {
    let written = wire::plans(tasks, plans, unit, set).map_err(|other| cut::ours(&other))?;
    Ok(text_of(&written))
}

/// The text of a plan, or of many, one to a line.
fn text_of(plans: &Value) -> String {
    let Some(all) = plans["plans"].as_array() else {
        return format!("{plans}\n");
    };
    let lines: Vec<String> = all.iter().map(Value::to_string).collect();
    format!(
        "{{\"format\":{},\"plans\":[\n{}\n]}}\n",
        plans["format"],
        lines.join(",\n")
    )
}
