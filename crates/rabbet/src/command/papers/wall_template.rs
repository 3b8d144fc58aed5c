//! `rabbet wall template`

use clap::Args;
use measure::Length;
use paperwork::{TemplatePoint, WallTemplate, wall_template_pdf};

use super::wall::{Laid, LaidPiece};
use super::{paper, wall, wall_map};
use crate::command::Desk;
use crate::exit::{EXIT_CODES, Exit};
use crate::printing::Printing;
use crate::problem::{Kind, Problem, Trouble};

/// Writes paper templates of a wall's pieces at actual size, tiled, as PDF
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet wall template wall.toml -o template.pdf", after_help = EXIT_CODES)]
pub struct WallTemplateCommand {
    /// The wall file; - is stdin
    #[arg(value_name = "FILE")]
    file: String,
    /// Where it is written; - is stdout
    #[arg(short, long, value_name = "FILE")]
    output: String,
    /// One piece only, by its number on the nail map
    #[arg(long, value_name = "NUMBER")]
    piece: Option<usize>,
    /// The whole frame instead of the strip from its top to below its hooks
    #[arg(long)]
    whole: bool,
    #[command(flatten)]
    printing: Printing,
    /// Say what would be written, and write nothing
    #[arg(long)]
    dry_run: bool,
}

impl WallTemplateCommand {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let laid = wall::laid(&self.file, desk)?;
        let count = laid.pieces.len();
        if let Some(piece) = self.piece.filter(|piece| !(1..=count).contains(piece)) {
            let problem = Problem::new(
                "wall.piece",
                format!("there are {count} pieces, none is number {piece}"),
            );
            return Err(Trouble::one(Kind::Input, problem.in_file(&self.file)));
        }
        let wanted = |number: &usize| self.piece.is_none_or(|piece| piece == *number);
        let templates: Vec<WallTemplate> = (1..=count)
            .filter(wanted)
            .map(|number| template(number, &laid.pieces[number - 1], &laid, self.whole))
            .collect();
        let paper = self.printing.paper(laid.units);
        let pdf = wall_template_pdf(
            &templates,
            &laid.title,
            &wall_map::head(&self.printing),
            paper,
        )
        .map_err(|error| paper::unset(&self.file, &error))?;
        paper::write(&self.file, &self.output, &pdf, self.dry_run, desk)?;
        Ok(Exit::Done)
    }
}

/// The nails of a piece and the seats of its hooks, from its frame's left top corner.
fn points(piece: &LaidPiece, laid: &Laid) -> Vec<TemplatePoint> {
    let unit = laid.plan.unit;
    let (left, top) = (piece.hung.left.value, piece.hung.top.value);
    let mut points = Vec::new();
    let several = piece.hung.nails.len() > 1;
    for (index, nail) in piece.hung.nails.iter().enumerate() {
        let (x, y) = (nail.from_corner.value - left, top - nail.above_floor.value);
        let which = match (several, index) {
            (false, _) => "nail",
            (true, 0) => "left nail",
            (true, _) => "right nail",
        };
        points.push(TemplatePoint {
            x,
            y,
            hole: true,
            words: format!(
                "{which}, {} above the floor",
                nail.above_floor.value.exact(unit)
            ),
        });
        points.push(TemplatePoint {
            x,
            y: y + laid.seat_to_nail,
            hole: false,
            words: String::new(),
        });
    }
    points
}

/// Paper left below the lowest hook.
const BELOW: Length = Length::mm(30);

fn template(number: usize, piece: &LaidPiece, laid: &Laid, whole: bool) -> WallTemplate {
    let unit = laid.plan.unit;
    let (width, height) = (piece.frame.width.value, piece.frame.height.value);
    let (left, top) = (piece.hung.left.value, piece.hung.top.value);
    let points = points(piece, laid);
    let lowest = points.iter().map(|point| point.y).max().unwrap_or_default();
    let down = if whole {
        height
    } else {
        height.min(lowest + BELOW)
    };
    let nails: Vec<String> = points
        .iter()
        .filter(|point| point.hole)
        .map(|point| {
            format!(
                "{} from the left edge and {} below the top edge",
                point.x.exact(unit),
                point.y.exact(unit)
            )
        })
        .collect();
    WallTemplate {
        name: format!("{number} {}", piece.name),
        width,
        height,
        down,
        points,
        words: vec![
            format!(
                "Taped together, from the left edge to the right it must measure {}.",
                width.in_both(unit)
            ),
            format!("Nail {}.", nails.join("; nail ")),
            format!(
                "Top edge {} above the floor, left edge {} from the corner.",
                top.exact(unit),
                left.exact(unit)
            ),
        ],
    }
}
