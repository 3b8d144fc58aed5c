//! `rabbet record read`

use clap::Args;
use paperwork::{RecordFault, SealedRecord};
use serde_json::{Value, json};

use super::codes;
use crate::command::Desk;
use crate::exit::{EXIT_CODES, Exit};
use crate::problem::{Kind, Problem, Trouble};
use crate::report::Report;

/// Shows the record that a label's codes hold
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet record read record.txt", after_help = EXIT_CODES)]
pub struct RecordRead {
    /// Text of the codes, one a line, or pictures of them (PNG, JPEG); - is stdin
    #[arg(value_name = "FILE", required = true)]
    files: Vec<String>,
    /// The job document inside it alone, as TOML
    #[arg(long, conflicts_with = "json")]
    job: bool,
    /// As JSON
    #[arg(long)]
    json: bool,
}

impl RecordRead {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let record = opened(&self.files)?;
        let text = if self.json {
            let value = json!({
                "record": record.value(),
                "public_key": record.public(),
                "signature_holds": record.holds(),
            });
            format!("{value:#}\n")
        } else if self.job {
            let inside = record.value()["job"].to_string();
            let job = trade::Job::read(inside.as_bytes())
                .map_err(|faults| Trouble::document(&self.files[0], &faults))?;
            job.to_toml()
        } else {
            shown(&record).render(desk.terminal)
        };
        desk.terminal.data(&text)?;
        if !record.holds() {
            desk.terminal
                .talk("Mind: the signature does not hold; what is shown may have been changed.");
        }
        Ok(Exit::Done)
    }
}

/// The record of these files.
///
/// # Errors
/// Files that can't be reached, codes that make no record.
pub fn opened(files: &[String]) -> Result<SealedRecord, Trouble> {
    let text = codes::texts(files)?;
    SealedRecord::read(&text).map_err(|fault| {
        let code = match fault {
            RecordFault::None => "record.none",
            RecordFault::Newer(_) => "record.newer",
            RecordFault::Part { .. } => "record.part",
            RecordFault::Mixed(..) => "record.mixed",
            RecordFault::Missing { .. } => "record.missing",
            RecordFault::Packed => "record.packed",
            RecordFault::TooLong => "record.too_long",
            RecordFault::NoRecord(_) => "record.form",
        };
        let problem = Problem::new(code, fault.to_string());
        Trouble::one(Kind::Document, problem.in_file(&files.join(", ")))
    })
}

/// The record as a table, its job document left to `--job`.
fn shown(record: &SealedRecord) -> Report {
    let value = record.value();
    let mut report = Report::default();
    let piece = report.group("Piece");
    for name in ["shop", "order", "revision", "date", "attachment"] {
        piece.row(name, words(&value[name]));
    }
    for art in list(&value["job"]["art"]) {
        let said = ["title", "artist", "medium", "support"].map(|name| words(&art[name]));
        let said: Vec<String> = said.into_iter().filter(|said| !said.is_empty()).collect();
        piece.row("art", said.join(", "));
    }
    let sizes = report.group("Sizes");
    for (name, size) in value["sizes"].as_object().into_iter().flatten() {
        let said = words(size);
        if !said.is_empty() {
            sizes.row(&name.replace('_', " "), said);
        }
    }
    let materials = report.group("Materials");
    for stuff in list(&value["materials"]) {
        let said = ["material", "class", "thickness", "code"].map(|name| words(&stuff[name]));
        let said: Vec<String> = said.into_iter().filter(|said| !said.is_empty()).collect();
        materials.row(&words(&stuff["part"]), said.join("; "));
    }
    let load = report.group("Hanging");
    for name in ["weight", "rated", "hangs_by", "wall", "caution"] {
        load.row(&name.replace('_', " "), words(&value["load"][name]));
    }
    let seal = report.group("Signature");
    seal.row("public key", record.public());
    seal.row(
        "holds",
        if record.holds() { "yes" } else { "no" }.to_owned(),
    );
    report
}

fn list(value: &Value) -> &[Value] {
    value.as_array().map_or(&[], Vec::as_slice)
}

/// A value as it is read: a pair as a size, a list with semicolons.
fn words(value: &Value) -> String {
    match value {
        Value::Null => String::new(),
        Value::String(text) => text.clone(),
        Value::Array(pair) if pair.len() == 2 && pair.iter().all(Value::is_string) => {
            format!("{} x {}", words(&pair[0]), words(&pair[1]))
        }
        Value::Array(values) => values.iter().map(words).collect::<Vec<_>>().join("; "),
        Value::Object(fields) => {
            let said = fields
                .iter()
                .map(|(name, value)| format!("{name} {}", words(value)));
            said.collect::<Vec<_>>().join(", ")
        }
        plain => plain.to_string(),
    }
}
