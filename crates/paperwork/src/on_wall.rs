//! Papers for whoever hangs pieces: the nail map of a wall, and templates at actual size.

use drawing::WallPlan;
use measure::{Length, Rounding, Tape, Toward, Unit};
use serde_json::{Value, json};

use crate::error::PaperworkError;
use crate::legible::Legible;
use crate::ticket::{Drawing, Paper};
use crate::typeset::{Picture, Sheet, Stamp, pdf};

/// The head of a paper for the wall.
#[derive(Clone, Debug)]
pub struct WallHead {
    /// The shop's name.
    pub shop: String,
    /// The day, as the shop writes days.
    pub date: String,
    /// When the file was made; the only time it knows.
    pub made: Stamp,
    /// What must be known before a hole is made.
    pub cautions: Vec<String>,
}

/// The nail map of a wall, as PDF.
///
/// Shape:  the wall to scale, then every nail in a table: from the left corner, from the nail before
///         it, from the floor. Digits at least 3.3 mm high.
/// Units:  the plan's; rounded to its tape with `≈` before what lies beside a mark.
///
/// # Errors
///
/// A plan without pieces, a moment off the calendar, a drawing without words.
pub fn nail_map_pdf(
    plan: &WallPlan,
    map: &Drawing,
    head: &WallHead,
    paper: Paper,
) -> Result<Vec<u8>, PaperworkError> {
    pdf(map_sheet(plan, map, head, paper)?)
}

/// The paper templates of a wall's pieces at actual size, as PDF.
///
/// Shape:  for each piece the strip from its top edge to below its hooks, or all of it, cut into
///         tiles that overlap, with crosses to lay on each other and the total to measure.
/// Units:  lengths lie on the sheet as long as they are; the file asks to be printed so.
///
/// # Errors
///
/// A plan without pieces, a moment off the calendar.
pub fn wall_template_pdf(
    templates: &[WallTemplate],
    title: &str,
    head: &WallHead,
    paper: Paper,
) -> Result<Vec<u8>, PaperworkError> {
    pdf(template_sheet(templates, title, head, paper)?)
}

/// A piece to be held against the wall in paper.
#[derive(Clone, Debug)]
pub struct WallTemplate {
    /// What it is, its number first.
    pub name: String,
    /// Outside width of the frame.
    pub width: Length,
    /// Outside height of the frame.
    pub height: Length,
    /// How far down from the frame's top the paper reaches; its height for all of it.
    pub down: Length,
    /// Points to mark.
    pub points: Vec<TemplatePoint>,
    /// Sentences over the first tile.
    pub words: Vec<String>,
}

/// A point to mark through the paper.
#[derive(Clone, Debug)]
pub struct TemplatePoint {
    /// From the frame's left edge.
    pub x: Length,
    /// Below the frame's top edge; negative above it.
    pub y: Length,
    /// A hole to make, or a place to know.
    pub hole: bool,
    /// What stands beside it.
    pub words: String,
}

fn map_sheet(
    plan: &WallPlan,
    map: &Drawing,
    head: &WallHead,
    paper: Paper,
) -> Result<Sheet, PaperworkError> {
    if plan.pieces.is_empty() {
        return Err(PaperworkError::Nothing("nothing hangs on this wall"));
    }
    if map.alt.trim().is_empty() {
        return Err(PaperworkError::NoWords {
            drawing: "nail map",
        });
    }
    let mut text = Legible::new();
    let svg = text.drawn(&map.svg);
    let rows = rows(plan, &mut text);
    let mut data = heading(&plan.title, head, paper, &mut text);
    data["unit"] = json!(plan.unit.symbol());
    data["alt"] = json!(text.line(&map.alt, ALT));
    data["rows"] = json!(rows);
    data["replaced"] = json!(text.replaced);
    Ok(Sheet {
        template: "nail-map.typ",
        data,
        drawings: vec![Picture {
            drawing: "nail map",
            file: "wall.svg",
            svg,
        }],
        identity: format!("nail map {}", plan.title),
        made: head.made,
    })
}

/// Every piece with its nails, each with the step from the one before it.
fn rows(plan: &WallPlan, text: &mut Legible) -> Vec<Value> {
    let said = |length: Length| on_tape(length, plan.tape, plan.unit);
    let mut rows: Vec<Value> = Vec::new();
    let mut before: Option<Length> = None;
    for (index, piece) in plan.pieces.iter().enumerate() {
        let size = format!("{} × {}", said(piece.width), said(piece.height));
        let nails: Vec<Value> = piece
            .nails
            .iter()
            .map(|nail| {
                let step = before.map(|before| said((nail.from_corner - before).abs()));
                let back = before.is_some_and(|before| nail.from_corner < before);
                before = Some(nail.from_corner);
                json!({
                    "corner": said(nail.from_corner),
                    "step": step.map_or_else(|| "–".to_owned(), |step| if back { format!("← {step}") } else { step }),
                    "floor": said(nail.above_floor),
                })
            })
            .collect();
        rows.push(json!({
            "number": index + 1,
            "name": text.line(&piece.name, NAME),
            "size": size,
            "left": said(piece.left),
            "top": said(piece.top),
            "nails": nails,
        }));
    }
    rows
}

fn template_sheet(
    templates: &[WallTemplate],
    title: &str,
    head: &WallHead,
    paper: Paper,
) -> Result<Sheet, PaperworkError> {
    if templates.is_empty() {
        return Err(PaperworkError::Nothing("no piece is to hang"));
    }
    let mut text = Legible::new();
    let mut data = heading(title, head, paper, &mut text);
    let pieces: Vec<Value> = templates
        .iter()
        .map(|piece| tiled(piece, &mut text))
        .collect();
    data["pieces"] = json!(pieces);
    data["replaced"] = json!(text.replaced);
    Ok(Sheet {
        template: "hang-template.typ",
        data,
        drawings: Vec::new(),
        identity: format!("hanging template {title}"),
        made: head.made,
    })
}

/// A piece with its places in millimetres, to the float nearest to them.
fn tiled(piece: &WallTemplate, text: &mut Legible) -> Value {
    let points: Vec<Value> = piece
        .points
        .iter()
        .map(|point| {
            json!({
                "x": point.x.approx_mm(),
                "y": point.y.approx_mm(),
                "hole": point.hole,
                "words": text.line(&point.words, NAME),
            })
        })
        .collect();
    json!({
        "name": text.line(&piece.name, NAME),
        "width": piece.width.approx_mm(),
        "height": piece.height.approx_mm(),
        "down": piece.down.approx_mm(),
        "points": points,
        "words": piece.words.iter().map(|line| text.line(line, ALT)).collect::<Vec<_>>(),
    })
}

fn heading(title: &str, head: &WallHead, paper: Paper, text: &mut Legible) -> Value {
    json!({
        "paper": match paper { Paper::A4 => "a4", Paper::Letter => "us-letter" },
        "title": text.line(title, NAME),
        "shop": text.line(&head.shop, NAME),
        "date": text.line(&head.date, NAME),
        "cautions": head.cautions.iter().map(|line| text.line(line, ALT)).collect::<Vec<_>>(),
    })
}

/// A length as the tape has it, `≈` before it where it lies beside a mark; without its unit.
fn on_tape(length: Length, tape: Tape, unit: Unit) -> String {
    let printed = length.on_tape(tape, Toward::Nearest);
    let bare = printed.text.trim_end_matches(unit.symbol()).trim_end();
    if printed.rounding == Rounding::Exact {
        bare.to_owned()
    } else {
        format!("≈ {bare}")
    }
}

const NAME: usize = 80;
const ALT: usize = 700;
