//! An answer as the terminal shows it: a table, its cautions, its sources; or one value explained.

use measure::Unit;
use serde_json::{Value, json};
use web::care::{Answer, Row};
use web::wire;
use working::LineId;

use super::Desk;
use super::job_sizes::{all_lines, why};
use crate::problem::Trouble;
use crate::report::Report;
use crate::terminal::{Ink, Terminal};

/// How an answer is shown.
#[derive(Clone, Debug, Default)]
pub struct How {
    /// Explain one value instead.
    pub why: Option<String>,
    /// Every line of the working too.
    pub working: bool,
    /// As JSON.
    pub json: bool,
}

/// The text of an answer for stdout.
///
/// Errors: a path to explain that no value has.
pub fn shown(answer: &Answer, unit: Unit, how: &How, desk: &Desk) -> Result<String, Trouble> {
    if let Some(path) = &how.why {
        return explained(path, answer, unit, how.json);
    }
    if how.json {
        let mut value = wire::answer(answer, unit);
        if how.working {
            value["working"] = wire::working(&answer.working, unit).into();
        }
        return Ok(format!("{value:#}\n"));
    }
    let mut text = as_table(answer, unit).render(desk.terminal);
    for caution in &answer.cautions {
        text.push('\n');
        text.push_str(&cautioned(caution.title(), caution.text(), desk.terminal));
    }
    if how.working {
        text.push('\n');
        text.push_str(&all_lines(&answer.working));
    }
    Ok(text)
}

/// The lines a row rests on, by its key; else what a path of the working means.
fn explained(path: &str, answer: &Answer, unit: Unit, json: bool) -> Result<String, Trouble> {
    let rows = answer.groups.iter().flat_map(|group| &group.rows);
    let own = rows.filter(|row| row.key == path.trim() && !row.lines.is_empty());
    let lines: Vec<LineId> = own.flat_map(|row| row.lines.clone()).collect();
    if lines.is_empty() {
        return why(path, &answer.working, unit, json);
    }
    let each = lines.iter().map(|line| answer.working.explain(*line));
    if json {
        let steps = each.flat_map(|explanation| explanation.steps().to_vec());
        let told: Vec<Value> = steps
            .map(|step| {
                let mut line = wire::one_line(&step.line, &answer.working, unit);
                line["depth"] = step.depth.into();
                line
            })
            .collect();
        return Ok(format!("{:#}\n", json!({ "why": told })));
    }
    let mut text = String::new();
    for explanation in each {
        text.push_str(&explanation.to_string());
        text.push('\n');
    }
    Ok(text)
}

/// What `--why` explains a row by: the path of its line, where no later line bears the same, else its key.
fn path_of(row: &Row, answer: &Answer) -> String {
    let Some(line) = row.lines.first() else {
        return String::new();
    };
    let path = answer.working.line(*line).subject.to_string();
    let latest = answer.working.find(&path).map(|found| found.id);
    if row.lines.len() == 1 && latest == Some(*line) {
        path
    } else {
        row.key.clone()
    }
}

/// A caution as a paragraph.
pub fn cautioned(title: &str, words: &str, terminal: Terminal) -> String {
    let mind = terminal.ink_out(Ink::Mind, "Caution");
    format!("{mind}: {title}. {words}\n")
}

/// Every row with how far it can be trusted; the works themselves below.
fn as_table(answer: &Answer, unit: Unit) -> Report {
    let mut report = Report::default();
    let mut works: Vec<(String, String)> = Vec::new();
    for group in &answer.groups {
        let table = report.group(group.heading.clone());
        for row in &group.rows {
            let (status, work) = row
                .trust
                .split_once("; ")
                .unwrap_or((row.trust.as_str(), ""));
            let mut value = row.amount.text(unit);
            if !status.is_empty() {
                value = format!("{value}  [{status}]");
            }
            table.row_with_path(&row.label, value, path_of(row, answer));
            if !work.is_empty() && works.iter().all(|(_, known)| known != work) {
                works.push((row.label.clone(), work.to_owned()));
            }
        }
    }
    let sources = report.group("Sources");
    for (label, work) in works {
        sources.row(&label, work);
    }
    report
}
