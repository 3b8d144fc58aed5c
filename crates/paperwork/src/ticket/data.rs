//! The ticket as the template reads it: printable text, nothing that is markup.

use serde_json::{Value, json};

use crate::legible::Legible;
use crate::ticket::{
    Caution, CutPart, Layer, Legs, Mark, MatCut, Paper, ROWS_PRINTED, Severity, Step, Ticket,
};

/// The data file of `ticket` on `paper`.
pub(crate) fn of(ticket: &Ticket, paper: Paper, text: &mut Legible) -> Value {
    let mut data = json!({
        "paper": match paper { Paper::A4 => "a4", Paper::Letter => "us-letter" },
        "head": head(ticket, text),
        "order": text.line(&ticket.order, SHORT),
        "revision": ticket.revision,
        "date": text.line(&ticket.date, SHORT),
        "running": {
            "order": clipped(&text.line(&ticket.order, SHORT)),
            "date": clipped(&text.line(&ticket.date, SHORT)),
        },
        "unit": text.line(&ticket.unit, UNIT),
        "alt": {
            "elevation": text.line(&ticket.elevation.alt, LONG),
            "back_view": text.line(&ticket.back_view.alt, LONG),
            "section": text.line(&ticket.section.alt, LONG),
        },
        "parts": rows(ticket, &ticket.parts, text, part),
        "legs": rows(ticket, &ticket.legs, text, legs),
        "cuts": rows(ticket, &ticket.mat_cuts, text, mat_cut),
        "layers": rows(ticket, &ticket.stack.layers, text, layer),
        "slack": text.line(&ticket.stack.slack, LONG),
        "attachment": rows(ticket, &ticket.attachment, text, |line, text| json!(text.line(line, LONG))),
        "hardware": rows(ticket, &ticket.hardware, text, mark),
        "instructions": text.line(&ticket.instructions, LONG),
        "steps": rows(ticket, &ticket.steps, text, step),
        "minutes": ticket.steps.iter().map(|step| u64::from(step.minutes)).sum::<u64>(),
        "cautions": rows(ticket, &ticket.cautions, text, caution),
    });
    // Known only once every text has been through.
    data["replaced"] = json!(text.replaced);
    data
}

const RUNNING: usize = 13;
const UNIT: usize = 8;
const SHORT: usize = 40;
const MIDDLING: usize = 120;
const STEP: usize = 480;
const LONG: usize = 700;

/// As much of `text` as the line every page carries has room for; the head has it whole.
fn clipped(text: &str) -> String {
    let kept: String = text.chars().take(RUNNING).collect();
    if kept.len() == text.len() {
        kept
    } else {
        format!("{kept}…")
    }
}

fn head(ticket: &Ticket, text: &mut Legible) -> Value {
    json!({
        "shop": text.line(&ticket.shop, MIDDLING),
        "title": text.line(&ticket.title, MIDDLING),
        "artist": text.line(&ticket.artist, MIDDLING),
        "medium": text.line(&ticket.medium, MIDDLING),
        "customer": text.line(&ticket.customer, MIDDLING),
        "due": text.line(&ticket.due, SHORT),
        "bin": text.line(&ticket.bin, SHORT),
        "taken_by": text.line(&ticket.taken_by, MIDDLING),
        "level": text.line(&ticket.level, MIDDLING),
    })
}

/// The rows to print, and the sentence that says where the others are.
fn rows<T>(
    ticket: &Ticket,
    all: &[T],
    text: &mut Legible,
    row: impl Fn(&T, &mut Legible) -> Value,
) -> Value {
    let printed: Vec<Value> = all
        .iter()
        .take(ROWS_PRINTED)
        .map(|one| row(one, text))
        .collect();
    let left = all.len().saturating_sub(printed.len());
    let place = match text.line(&ticket.full_tables, MIDDLING) {
        place if place.is_empty() => "the job".to_owned(),
        place => place,
    };
    let note = (left > 0).then(|| {
        format!(
            "{} of {} rows are on this sheet. The other {left} rows are in {place}.",
            printed.len(),
            all.len(),
        )
    });
    json!({ "rows": printed, "note": note })
}

fn part(part: &CutPart, text: &mut Legible) -> Value {
    json!({
        "part": text.line(&part.part, MIDDLING),
        "count": part.count,
        "material": text.line(&part.material, MIDDLING),
        "from": text.line(&part.from, MIDDLING),
        "width": text.size(&part.width),
        "height": text.size(&part.height),
        "exact": part.exact.as_ref().map(|exact| text.size(exact)),
    })
}

fn legs(legs: &Legs, text: &mut Legible) -> Value {
    json!({
        "member": text.line(&legs.member, MIDDLING),
        "pair": text.line(&legs.pair, SHORT),
        "count": legs.count,
        "short": text.size(&legs.short),
        "rabbet": text.size(&legs.rabbet),
        "long_point": text.size(&legs.long_point),
        "mitre": text.size(&legs.mitre),
        "tilt": text.size(&legs.tilt),
    })
}

fn mat_cut(cut: &MatCut, text: &mut Legible) -> Value {
    json!({
        "opening": text.line(&cut.opening, MIDDLING),
        "order": cut.order,
        "side": text.line(&cut.side, SHORT),
        "guide": text.size(&cut.guide),
        "start": text.size(&cut.start),
        "stop": text.size(&cut.stop),
        "overcut": text.size(&cut.overcut),
        "bevel": text.size(&cut.bevel),
    })
}

fn layer(layer: &Layer, text: &mut Legible) -> Value {
    json!({
        "layer": text.line(&layer.layer, MIDDLING),
        "thickness": text.size(&layer.thickness),
        "running": text.size(&layer.running),
    })
}

fn mark(mark: &Mark, text: &mut Legible) -> Value {
    json!({
        "what": text.line(&mark.what, MIDDLING),
        "place": text.line(&mark.place, LONG),
    })
}

fn step(step: &Step, text: &mut Legible) -> Value {
    json!({
        "step": text.line(&step.step, STEP),
        "numbers": text.line(&step.numbers, STEP),
        "minutes": step.minutes,
        "caution": step.caution.as_ref().map(|caution| json!({
            "severity": word(caution.severity),
            "words": text.line(&caution.words, STEP),
        })),
    })
}

fn caution(caution: &Caution, text: &mut Legible) -> Value {
    json!({
        "severity": word(caution.severity),
        "what": text.line(&caution.what, LONG),
        "how_much": text.line(&caution.how_much, LONG),
        "why": text.line(&caution.why, LONG),
        "cure": text.line(&caution.cure, LONG),
    })
}

fn word(severity: Severity) -> &'static str {
    match severity {
        Severity::Stop => "Stop",
        Severity::Mind => "Mind",
    }
}
