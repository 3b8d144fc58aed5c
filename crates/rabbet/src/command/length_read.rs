//! `rabbet length read`

use clap::Args;
use measure::{Length, ReadError, Tape, Toward, Unit, read_length};
use serde_json::json;

use super::{Desk, Units};
use crate::exit::{EXIT_CODES, Exit};
use crate::problem::{Kind, Problem, Spot, Trouble};
use crate::report::Report;
use web::wire;

/// Shows how a typed length is understood, on every tape
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet length read '16 7/8'", after_help = EXIT_CODES)]
pub struct LengthRead {
    /// The length, as people type it
    #[arg(value_name = "TEXT", allow_hyphen_values = true)]
    text: String,
    /// What a bare number means
    #[arg(long, value_enum, default_value_t)]
    units: Units,
    /// As JSON
    #[arg(long)]
    json: bool,
}

/// The tapes, with the words for them.
const TAPES: [(&str, Tape); 6] = [
    ("by 1/8 in", Tape::Eighths),
    ("by 1/16 in", Tape::Sixteenths),
    ("by 1/32 in", Tape::ThirtySeconds),
    ("by 1/64 in", Tape::SixtyFourths),
    ("by 0.5 mm", Tape::HalfMillimetre),
    ("by 1 mm", Tape::Millimetre),
];

/// The units shown, with the words for them.
const UNITS: [(&str, Unit); 5] = [
    ("inches", Unit::Inch),
    ("feet", Unit::Foot),
    ("millimetres", Unit::Millimetre),
    ("centimetres", Unit::Centimetre),
    ("metres", Unit::Metre),
];

impl LengthRead {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let bare = trade::Units::from(self.units).unit();
        let length = read_length(&self.text, bare).map_err(|error| refused(&self.text, &error))?;
        let text = if self.json {
            as_json(length, bare)
        } else {
            as_table(length).render(desk.terminal)
        };
        desk.terminal.data(&text)?;
        Ok(Exit::Done)
    }
}

fn as_table(length: Length) -> Report {
    let mut report = Report::default();
    let exact = report.group("Exactly");
    for (words, unit) in UNITS {
        exact.row(words, length.exact(unit));
    }
    let tapes = report.group("On a tape");
    for (words, tape) in TAPES {
        tapes.row(words, length.on_tape(tape, Toward::Nearest).to_string());
    }
    report
}

fn as_json(length: Length, bare: Unit) -> String {
    let tapes = TAPES.map(|(words, tape)| {
        let printed = length.on_tape(tape, Toward::Nearest);
        json!({ "tape": words.trim_start_matches("by "), "text": printed.text, "rounding": wire::rounding(printed.rounding) })
    });
    format!(
        "{:#}\n",
        json!({ "length": wire::length(length, bare), "tapes": tapes })
    )
}

fn refused(text: &str, error: &ReadError) -> Trouble {
    let mut problem = Problem::new(error.code(), error.to_string()).at(Spot {
        column: text
            .get(..error.span().start)
            .map(|before| before.chars().count() + 1),
        shown: Some(error.caret(text)),
        ..Spot::default()
    });
    let hint = error.hint();
    if !hint.is_empty() {
        problem = problem.hint(hint);
    }
    Trouble::one(Kind::Input, problem)
}
