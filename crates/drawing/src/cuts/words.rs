//! What is said of a cut sheet in words: captions, keys, and the text twin.

use cutting::sheets::Area;

use crate::cuts::lay::Label;
use crate::cuts::{
    Counting, CutPiece, CutSheet, CutStep, CutStick, Offcut, SheetWork, StickOff, StickWork,
};
use crate::input::Sheet;
use crate::sheet::Scale;
use crate::twin::Twin;

/// Title of a drawing.
pub(crate) fn title(title: &str, of: &str, copies: u64) -> String {
    format!("{title}: {}", stock(of, copies))
}

/// The stock, and how many are cut alike.
pub(crate) fn stock(stock: &str, copies: u64) -> String {
    if copies == 1 {
        stock.to_owned()
    } else {
        format!("{stock} × {copies}, cut alike")
    }
}

/// The caption's first line.
pub(crate) fn first_line(counting: &Counting, scale: Scale) -> String {
    let scale = scale.words();
    match counting.unit() {
        "" => scale,
        "in" => format!("{scale} · inches"),
        "mm" => format!("{scale} · millimetres"),
        unit => format!("{scale} · {unit}"),
    }
}

/// The caption's first line where only lengths are to scale.
pub(crate) fn stick_first_line(counting: &Counting, scale: Scale) -> String {
    format!("{} · width not to scale", first_line(counting, scale))
}

/// What is written of a remnant.
pub(crate) fn keep(label: &str) -> String {
    format!("Keep: {label}")
}

/// What else is to be known of a piece: that it is turned comes first.
pub(crate) fn remarks(piece: &CutPiece) -> Vec<String> {
    let mut remarks = Vec::new();
    if piece.turned {
        remarks.push("turned".to_owned());
    }
    if piece.no_turn {
        remarks.push("keep upright".to_owned());
    }
    remarks
}

/// A label in the key.
pub(crate) fn in_key(label: &Label<'_>, unit: &str) -> String {
    let name = label.name.join(", ");
    let size = format!("{} {unit}", label.size).trim_end().to_owned();
    [&[name, size], label.remarks].concat().join(", ")
}

/// Under a sheet's drawing.
pub(crate) fn sheet_remarks(sheet: &CutSheet, work: &SheetWork, page: Sheet) -> Vec<String> {
    let trimmed = if work.trims.is_empty() {
        ""
    } else {
        ", once trimmed"
    };
    let mut remarks = vec![format!(
        "Measure from the heavy edges, left and bottom{trimmed}."
    )];
    if sheet.pieces.iter().any(|piece| piece.no_turn) {
        remarks.push("Arrow: the way of the grain; that piece may not be turned.".to_owned());
    }
    if page != Sheet::Bench {
        remarks.extend(
            work.sums
                .sentence(&sheet.counting)
                .map(|sum| first_capital(&sum)),
        );
    }
    remarks
}

/// Where signs found no room.
pub(crate) fn unled(count: usize) -> Option<String> {
    (count > 0).then(|| {
        format!("{count} parts and cuts are too small to be marked; the list of cuts has them all.")
    })
}

/// Under a stick's drawing.
pub(crate) fn stick_remarks(stick: &CutStick, work: &StickWork, page: Sheet) -> Vec<String> {
    let mut remarks = vec![format!(
        "Running totals are measured {}: the heavy end.",
        stick.measured_from()
    )];
    if stick.pieces.iter().any(|piece| piece.mitre.is_some()) {
        remarks.push("Mitred pieces: the long edge, drawn above, is the back.".to_owned());
    }
    if page != Sheet::Bench {
        remarks.extend(
            work.sums
                .sentence(&stick.counting)
                .map(|sum| first_capital(&sum)),
        );
    }
    remarks
}

fn first_capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or(String::new(), |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

/// For those who cannot see a sheet's drawing.
pub(crate) fn sheet_description(sheet: &CutSheet, work: &SheetWork) -> String {
    format!(
        "A sheet of {}, reference edges left and below, {} in order, {}, {}.",
        sheet.counting.exact_size((sheet.width, sheet.height)),
        counted(work.steps.len(), "cut"),
        counted(sheet.pieces.len(), "piece"),
        counted(sheet.remnants.len(), "remnant"),
    )
}

/// For those who cannot see a stick's drawing.
pub(crate) fn stick_description(stick: &CutStick, work: &StickWork) -> String {
    format!(
        "A stick of {} from its reference end at the left, {} in order, {}, {}.",
        stick.counting.exact(stick.length),
        counted(work.steps.len(), "cut"),
        counted(stick.pieces.len(), "piece"),
        counted(stick.remnants.len(), "remnant"),
    )
}

/// `1 cut`, `2 cuts`.
fn counted(count: usize, what: &str) -> String {
    match count {
        1 => format!("1 {what}"),
        _ => format!("{count} {what}s"),
    }
}

/// Everything a sheet's drawing says, and what it leaves out for want of room.
pub(crate) fn sheet_twin(sheet: &CutSheet, work: &SheetWork, twin: &mut Twin) {
    let counting = &sheet.counting;
    twin.words("Stock", stock(&sheet.stock, sheet.copies));
    twin.words("Stock, width", counting.exact(sheet.width));
    twin.words("Stock, height", counting.exact(sheet.height));
    twin.words("Kerf", counting.exact(sheet.kerf));
    for step in &work.steps {
        twin.words(format!("Cut {}", step.number), step_words(sheet, step));
    }
    for (k, piece) in sheet.pieces.iter().enumerate() {
        let mut said = vec![
            piece.name(),
            counting.true_size(piece.own_size(), piece.exact),
            place(counting, work, piece.area),
        ];
        said.extend(remarks(piece));
        if let Some(window) = &piece.window {
            let size = (window.area.width, window.area.height);
            said.push(format!("{}, {}", window.label, counting.exact_size(size)));
        }
        twin.words(format!("Piece {}", k + 1), said.join(", "));
    }
    for (k, kept) in sheet.remnants.iter().enumerate() {
        let size = (kept.place.width, kept.place.height);
        let place = place(counting, work, kept.place);
        let said = [kept.label.clone(), counting.exact_size(size), place];
        twin.words(format!("Remnant {}", k + 1), said.join(", "));
    }
    if let Some(sum) = work.sums.sentence(counting) {
        twin.words("Sum", sum);
    }
}

fn place(counting: &Counting, work: &SheetWork, area: Area) -> String {
    format!(
        "{} from the left, {} from the bottom",
        counting.exact(area.x - work.usable.x),
        counting.exact(area.y - work.usable.y),
    )
}

fn step_words(sheet: &CutSheet, step: &CutStep) -> String {
    let counting = &sheet.counting;
    let (part, way, edge) = (&step.part.name, step.way_word(), step.edge.word());
    let measure = counting.exact(step.measure);
    if step.line.is_none() {
        return format!("{part}: trim {measure} off the {edge} edge");
    }
    let part = match step.part.made.as_str() {
        "" => part.clone(),
        made => format!("part {part} ({made})"),
    };
    let off: Vec<String> = step
        .off
        .iter()
        .map(|off| {
            let lies = (off.area.width, off.area.height);
            let size = match off.what {
                Offcut::Piece(k) => {
                    let piece = &sheet.pieces[k];
                    counting.true_size(piece.own_size(), piece.exact)
                }
                _ => counting.exact_size(lies),
            };
            let what = match &off.what {
                Offcut::Piece(k) => sheet.pieces[*k].name(),
                Offcut::Part(name) => format!("part {name}"),
                Offcut::Remnant(k) => keep(&sheet.remnants[*k].label),
                Offcut::Waste => "waste".to_owned(),
                Offcut::Trim => "trim".to_owned(),
            };
            format!("{}: {what}, {size}", off.side.word())
        })
        .collect();
    format!(
        "{part}, {way} at {measure} from its {edge} edge; {}",
        off.join("; ")
    )
}

/// Everything a stick's drawing says, and what it leaves out for want of room.
pub(crate) fn stick_twin(stick: &CutStick, work: &StickWork, twin: &mut Twin) {
    let counting = &stick.counting;
    twin.words("Stock", stock(&stick.stock, stick.copies));
    twin.words("Stock, length", counting.exact(stick.length));
    twin.words("Kerf", counting.exact(stick.kerf));
    for (k, (from, to)) in stick.flaws.iter().enumerate() {
        let place = |at: u64| counting.exact(at.saturating_sub(stick.trim.0));
        let said = format!("{} to {}", place(*from), place(*to));
        twin.words(format!("Flaw {}", k + 1), said);
    }
    for step in &work.steps {
        let what = match step.off {
            StickOff::Piece(k) => stick.pieces[k].name(),
            StickOff::Remnant(k) => keep(&stick.remnants[k].label),
            StickOff::Waste => "waste".to_owned(),
            StickOff::Trim => "trim".to_owned(),
        };
        let length = match step.off {
            StickOff::Piece(k) => counting.true_length(step.length, stick.pieces[k].exact),
            _ => counting.exact(step.length),
        };
        let said = format!(
            "at {} {}; {what}, {length}",
            counting.exact(step.running),
            stick.measured_from(),
        );
        twin.words(format!("Cut {}", step.number), said);
    }
    for (k, piece) in stick.pieces.iter().enumerate() {
        let length = counting.true_length(piece.length, piece.exact);
        let mut said = vec![piece.name(), length];
        if let Some((start, end)) = piece.mitre {
            said.push(format!(
                "mitred, shorter in front by {} and {}",
                counting.exact(start),
                counting.exact(end)
            ));
        }
        twin.words(format!("Piece {}", k + 1), said.join(", "));
    }
    for (k, kept) in stick.remnants.iter().enumerate() {
        let long = counting.exact(kept.place.1 - kept.place.0);
        twin.words(
            format!("Remnant {}", k + 1),
            format!("{}, {long}", kept.label),
        );
    }
    if let Some(sum) = work.sums.sentence(counting) {
        twin.words("Sum", sum);
    }
}
