//! A material's plan in words: what to take and buy, every stick and sheet in the order it is cut, the
//! totals and the proof.

use drawing::{
    Counting, CutError, CutSheet, CutStep, CutStick, CutSums, Off, Offcut, StickOff, sheet_work,
    stick_work,
};
use paperwork::{CutLeaf, CutMaterial, PaperworkError};

use crate::terminal::{Ink, Terminal};

/// The words for one material.
///
/// # Errors
/// A plan whose parts do not add up; more than can be counted.
pub fn words(material: &CutMaterial, terminal: Terminal) -> Result<String, PaperworkError> {
    let mut text = format!("{}\n", terminal.ink_out(Ink::Heading, &material.name));
    let groups = [
        ("take", &material.take),
        ("buy", &material.buy),
        ("keep", &material.drops),
        ("lacks", &material.uncut),
    ];
    for (word, lines) in groups {
        for line in lines {
            push(&mut text, &format!("  {word:<6}{line}"));
        }
    }
    for leaf in &material.leaves {
        match leaf {
            CutLeaf::Sheet(sheet) => push_sheet(&mut text, sheet)?,
            CutLeaf::Stick(stick) => push_stick(&mut text, stick)?,
        }
    }
    let mut totals = material.totals()?;
    if material.leaves.len() == 1 {
        totals.pop(); // The sum over all of them stands under the only one.
    }
    for line in totals {
        push(&mut text, &format!("  {line}"));
    }
    let proof = match &material.proof {
        Some(proof) => proof.sentence(),
        None => "The stock does not reach for every piece; nothing is proven.".to_owned(),
    };
    push(&mut text, &format!("  {proof}"));
    Ok(text)
}

fn push(text: &mut String, line: &str) {
    text.push_str(line.trim_end());
    text.push('\n');
}

fn heading(title: &str, stock: &str, copies: u64) -> String {
    let alike = if copies > 1 {
        format!(", {copies} cut alike")
    } else {
        String::new()
    };
    format!("  {title}: {stock}{alike}")
}

fn push_stick(text: &mut String, stick: &CutStick) -> Result<(), CutError> {
    let work = stick_work(stick)?;
    push(text, &heading(&stick.title, &stick.stock, stick.copies));
    push(text, &format!("        measured {}", stick.measured_from()));
    let counting = &stick.counting;
    for step in &work.steps {
        let length = stick.shown(step.off, step.length).in_full(counting.unit());
        let number = step.number;
        if step.off == StickOff::Trim {
            push(text, &format!("  {number:>4}  trim {length}"));
        } else {
            let (at, off) = (say(counting, step.running), off_stick(stick, step.off));
            push(text, &format!("  {number:>4}  at {at}: {length}, {off}"));
        }
    }
    if let Some(rest) = work.rest {
        let length = stick.shown(rest.off, rest.length).in_full(counting.unit());
        let off = off_stick(stick, rest.off);
        push(text, &format!("        rest: {length}, {off}"));
    }
    push_sum(text, work.sums, counting);
    Ok(())
}

fn off_stick(stick: &CutStick, off: StickOff) -> String {
    match off {
        StickOff::Piece(piece) => stick.pieces[piece].name(),
        StickOff::Remnant(kept) => format!("keep {}", stick.remnants[kept].label),
        StickOff::Waste => "waste".to_owned(),
        StickOff::Trim => "trim".to_owned(),
    }
}

fn push_sheet(text: &mut String, sheet: &CutSheet) -> Result<(), CutError> {
    let work = sheet_work(sheet)?;
    push(text, &heading(&sheet.title, &sheet.stock, sheet.copies));
    for step in &work.steps {
        push(text, &cut_of(sheet, step));
    }
    if let Some(whole) = &work.whole {
        let whole = match whole {
            Offcut::Piece(piece) => sheet.pieces[*piece].name(),
            Offcut::Remnant(kept) => format!("keep {}", sheet.remnants[*kept].label),
            Offcut::Part(_) | Offcut::Waste | Offcut::Trim => "waste".to_owned(),
        };
        push(text, &format!("        no further cut: it is {whole}"));
    }
    push_sum(text, work.sums, &sheet.counting);
    Ok(())
}

/// One cut, and what comes off it.
fn cut_of(sheet: &CutSheet, step: &CutStep) -> String {
    let counting = &sheet.counting;
    let edge = step.edge.word();
    let measure = say(counting, step.measure);
    let number = step.number;
    if step.running.is_none() {
        return format!("  {number:>4}  trim {measure} off the {edge}");
    }
    let off: Vec<String> = step.off.iter().map(|off| off_of(sheet, off)).collect();
    let part = match step.part.name.as_str() {
        "the sheet" => "the sheet".to_owned(),
        letter => format!("part {letter}"),
    };
    format!(
        "  {number:>4}  {part}, {} at {measure} from the {edge}: {}",
        step.way_word(),
        off.join(" | ")
    )
}

fn off_of(sheet: &CutSheet, off: &Off) -> String {
    let name = match &off.what {
        Offcut::Piece(place) => {
            let piece = &sheet.pieces[*place];
            let mut name = piece.name();
            if piece.turned {
                name.push_str(" (turned)");
            }
            if let Some(window) = &piece.window {
                name = format!("{name} (its window: {})", window.label);
            }
            name
        }
        Offcut::Part(letter) => return format!("part {letter}"),
        Offcut::Remnant(place) => format!("keep {}", sheet.remnants[*place].label),
        Offcut::Waste => return "waste".to_owned(),
        Offcut::Trim => return "trim".to_owned(),
    };
    let size = sheet.shown(off).in_full(sheet.counting.unit());
    format!("{name}, {size}")
}

fn say(counting: &Counting, count: u64) -> String {
    counting.shown(count).in_full(counting.unit())
}

fn push_sum(text: &mut String, sums: CutSums, counting: &Counting) {
    if let Some(sentence) = sums.sentence(counting) {
        push(text, &format!("        {sentence}"));
    }
}
