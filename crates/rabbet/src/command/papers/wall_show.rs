//! `rabbet wall show`

use clap::Args;
use measure::Length;
use serde_json::{Value, json};

use super::wall;
use super::wall::{Laid, LaidPiece};
use crate::command::{Desk, job_sizes};
use crate::exit::{EXIT_CODES, Exit};
use crate::problem::Trouble;
use crate::report::Report;

/// Shows where every piece of a wall hangs and every nail goes
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet wall show wall.toml", after_help = EXIT_CODES)]
pub struct WallShow {
    /// The wall file; - is stdin
    #[arg(value_name = "FILE")]
    file: String,
    /// Every line of the working instead of the table
    #[arg(long)]
    working: bool,
    /// As JSON
    #[arg(long)]
    json: bool,
}

impl WallShow {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let laid = wall::laid(&self.file, desk)?;
        let text = if self.json {
            format!("{:#}\n", as_json(&laid))
        } else if self.working {
            job_sizes::all_lines(&laid.working)
        } else {
            table(&laid).render(desk.terminal)
        };
        desk.terminal.data(&text)?;
        Ok(Exit::Done)
    }
}

fn table(laid: &Laid) -> Report {
    let unit = laid.plan.unit;
    let mut report = Report::default();
    for (number, piece) in (1..).zip(&laid.pieces) {
        let group = report.group(format!("{number} {}", piece.name));
        let (frame, hung) = (&piece.frame, &piece.hung);
        group.row("width", frame.width.value.in_both(unit));
        group.row("height", frame.height.value.in_both(unit));
        group.row("left edge, from the corner", hung.left.value.in_both(unit));
        group.row("top edge, above the floor", hung.top.value.in_both(unit));
        for nail in &hung.nails {
            group.row(
                "nail, from the corner",
                nail.from_corner.value.in_both(unit),
            );
            group.row(
                "nail, above the floor",
                nail.above_floor.value.in_both(unit),
            );
        }
    }
    report
}

fn as_json(laid: &Laid) -> Value {
    let length =
        |length: Length| json!({ "quanta": length.quanta(), "text": length.exact(laid.plan.unit) });
    let piece = |piece: &LaidPiece| {
        let nails = piece.hung.nails.iter().map(|nail| {
            json!({
                "from_corner": length(nail.from_corner.value),
                "above_floor": length(nail.above_floor.value),
            })
        });
        json!({
            "name": piece.name,
            "width": length(piece.frame.width.value),
            "height": length(piece.frame.height.value),
            "left": length(piece.hung.left.value),
            "top": length(piece.hung.top.value),
            "nails": nails.collect::<Vec<_>>(),
        })
    };
    json!({
        "title": laid.title,
        "width": length(laid.plan.width),
        "height": laid.plan.height.map(length),
        "pieces": laid.pieces.iter().map(piece).collect::<Vec<_>>(),
    })
}
