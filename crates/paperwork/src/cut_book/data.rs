//! The cut sheets as the template reads them: printable text, nothing that is markup.

use drawing::{
    Counting, CutSheet, CutStick, CutSums, Extent, Ink, Look, cut_sheet, cut_stick, sheet_work,
    stick_work,
};
use serde_json::{Value, json};

use super::list;
use super::{CutBook, CutLeaf, CutMaterial, Danger, counted, to_buy};
use crate::error::PaperworkError;
use crate::legible::Legible;
use crate::ticket::Paper;

/// The data file of a plan on `paper`.
pub(super) fn of(
    book: &CutBook,
    paper: Paper,
    text: &mut Legible,
) -> Result<Value, PaperworkError> {
    let mut materials = Vec::new();
    for one in &book.materials {
        materials.push(material(one, text)?);
    }
    let mut data = json!({
        "paper": match paper { Paper::A4 => "a4", Paper::Letter => "us-letter" },
        "shop": text.line(&book.shop, MIDDLING),
        "plan": text.line(&book.plan, SHORT),
        "orders": lines(&book.orders, text),
        "date": text.line(&book.date, SHORT),
        "revision": text.line(&book.revision, MIDDLING),
        "superseded": text.line(&book.superseded, MIDDLING),
        "materials": materials,
        "to_buy": to_buy(&book.materials).map(|line| text.line(&line, MIDDLING)),
    });
    // Known only once every text has been through.
    data["replaced"] = json!(text.replaced);
    Ok(data)
}

const SHORT: usize = 40;
pub(super) const MIDDLING: usize = 120;
const LONG: usize = 700;

fn lines(all: &[String], text: &mut Legible) -> Vec<String> {
    all.iter().map(|line| text.line(line, MIDDLING)).collect()
}

fn material(material: &CutMaterial, text: &mut Legible) -> Result<Value, PaperworkError> {
    let mut leaves = Vec::new();
    for leaf in &material.leaves {
        leaves.push(match leaf {
            CutLeaf::Sheet(sheet) => sheet_leaf(sheet, text)?,
            CutLeaf::Stick(stick) => stick_leaf(stick, text)?,
        });
    }
    let proof = material.proof.as_ref().map(|proof| {
        let sentence = proof.sentence();
        text.line(&sentence, LONG)
    });
    Ok(json!({
        "name": text.line(&material.name, MIDDLING),
        "take": lines(&material.take, text),
        "buy": lines(&material.buy, text),
        "drops": lines(&material.drops, text),
        "uncut": lines(&material.uncut, text),
        "proof": proof,
        "dangers": material.dangers.iter().map(|danger| danger.words()).collect::<Vec<_>>(),
        "short_dangers": material.dangers.iter().map(|danger| danger.in_short()).collect::<Vec<_>>(),
        "totals": totals(material)?,
        "leaves": leaves,
    }))
}

/// `3 sheets and 2 fallouts, 17 pieces`, what is to be bought, and the sum over all of it, a line
/// each.
pub(super) fn totals(material: &CutMaterial) -> Result<Vec<String>, PaperworkError> {
    let mut tally = Tally::default();
    for leaf in &material.leaves {
        tally.add(leaf)?;
    }
    let counts = [
        counted(tally.sheets, "sheet"),
        counted(tally.fallouts, "fallout"),
        counted(tally.sticks, "stick"),
    ];
    let stock: Vec<String> = counts.into_iter().flatten().collect();
    let pieces = counted(tally.pieces, "piece").unwrap_or_else(|| "no pieces".to_owned());
    let mut said = vec![format!("{}, {pieces}", stock.join(" and "))];
    if let Some(bought) = material.bought.words() {
        said.push(format!("To buy: {bought}"));
    }
    for (counting, sum) in tally.sums {
        let what = match sum.extent {
            Extent::Area => "All sheets",
            Extent::Length => "All sticks",
        };
        let sentence = sum.sentence(&counting).ok_or(PaperworkError::TooMany)?;
        said.push(format!("{what}: {sentence}"));
    }
    Ok(said)
}

/// What a material's sheets and sticks come to; a fallout is part of the sheet it falls out of.
#[derive(Default)]
struct Tally {
    sheets: u64,
    fallouts: u64,
    sticks: u64,
    pieces: u64,
    sums: Vec<(Counting, CutSums)>,
}

impl Tally {
    fn add(&mut self, leaf: &CutLeaf) -> Result<(), PaperworkError> {
        let (copies, held) = match leaf {
            CutLeaf::Sheet(sheet) => (sheet.copies, sheet.pieces.len()),
            CutLeaf::Stick(stick) => (stick.copies, stick.pieces.len()),
        };
        let held = u64::try_from(held).map_err(|_| PaperworkError::TooMany)?;
        let more = held.checked_mul(copies).ok_or(PaperworkError::TooMany)?;
        counting_up(&mut self.pieces, more)?;
        match leaf {
            CutLeaf::Sheet(sheet) if sheet.fallout => counting_up(&mut self.fallouts, copies),
            CutLeaf::Sheet(sheet) => {
                counting_up(&mut self.sheets, copies)?;
                self.sum(&sheet.counting, sheet_work(sheet)?.sums, copies)
            }
            CutLeaf::Stick(stick) => {
                counting_up(&mut self.sticks, copies)?;
                self.sum(&stick.counting, stick_work(stick)?.sums, copies)
            }
        }
    }

    fn sum(
        &mut self,
        counting: &Counting,
        sum: CutSums,
        copies: u64,
    ) -> Result<(), PaperworkError> {
        let alike =
            |(other, known): &(Counting, CutSums)| other == counting && known.extent == sum.extent;
        let place = self.sums.iter().position(alike).unwrap_or(self.sums.len());
        if place == self.sums.len() {
            self.sums
                .push((counting.clone(), CutSums::none(sum.extent)));
        }
        let known = &mut self.sums[place].1;
        *known = known.with(sum, copies).ok_or(PaperworkError::TooMany)?;
        Ok(())
    }
}

fn counting_up(sum: &mut u64, more: u64) -> Result<(), PaperworkError> {
    *sum = sum.checked_add(more).ok_or(PaperworkError::TooMany)?;
    Ok(())
}

fn sheet_leaf(sheet: &CutSheet, text: &mut Legible) -> Result<Value, PaperworkError> {
    let work = sheet_work(sheet)?;
    let drawn = cut_sheet(sheet, &Look::bench(Ink::OneInk))?;
    let steps: Vec<Value> = work
        .steps
        .iter()
        .map(|step| list::sheet_step(sheet, step, &drawn, text))
        .collect();
    let mut data = common(&sheet.title, &sheet.stock, sheet.copies, &drawn, text);
    data["kind"] = json!("sheet");
    data["fallout"] = json!(sheet.fallout);
    data["unit"] = json!(text.line(sheet.counting.unit(), SHORT));
    data["sum"] = json!(work.sums.sentence(&sheet.counting));
    data["steps"] = json!(steps);
    data["whole"] = json!(list::whole_sheet(sheet, &work, text));
    Ok(data)
}

fn stick_leaf(stick: &CutStick, text: &mut Legible) -> Result<Value, PaperworkError> {
    let work = stick_work(stick)?;
    let drawn = cut_stick(stick, &Look::bench(Ink::OneInk))?;
    let steps: Vec<Value> = work
        .steps
        .iter()
        .map(|step| list::stick_step(stick, step, &drawn, text))
        .collect();
    let end = list::stick_end(stick, &work, &drawn, text);
    let steps: Vec<Value> = steps.into_iter().chain(end).collect();
    let mut data = common(&stick.title, &stick.stock, stick.copies, &drawn, text);
    data["kind"] = json!("stick");
    data["fallout"] = json!(false);
    data["unit"] = json!(text.line(stick.counting.unit(), SHORT));
    data["sum"] = json!(work.sums.sentence(&stick.counting));
    data["steps"] = json!(steps);
    data["whole"] = Value::Null;
    Ok(data)
}

/// What sheets and sticks have in common.
fn common(
    title: &str,
    stock: &str,
    copies: u64,
    drawn: &drawing::CutDrawing,
    text: &mut Legible,
) -> Value {
    let key: Vec<Value> = drawn
        .key
        .iter()
        .map(|line| {
            json!({
                "tag": line.tag,
                "words": text.line(&line.words, LONG),
                "count": line.count,
            })
        })
        .collect();
    let drawing = &drawn.drawing;
    let alt = format!(
        "{}, {}. The list of cuts below says everything the drawing shows.",
        drawing.title, drawing.scale
    );
    json!({
        "title": text.line(title, MIDDLING),
        "stock": text.line(stock, MIDDLING),
        "copies": copies,
        "svg": text.drawn(&drawing.svg),
        "alt": text.line(&alt, LONG),
        "key": key,
    })
}

impl Danger {
    /// The caution on the cover.
    ///
    /// Source: common practice, no source.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Glass => {
                "Glass: eye protection and cut-resistant gloves; carry panes upright, keep cut edges from bare skin, sweep up every chip. What the makers of the glass and of the cutter say comes first."
            }
            Self::Blade => {
                "Blades: change a dull one, keep the free hand out of its path, cover it when it rests. What the maker of the cutter says comes first."
            }
            Self::Saw => {
                "Saws: guard on, eyes, ears and lungs protected, short pieces held by a clamp and not by hand, blade at rest before anything is picked up. What the maker of the saw says comes first."
            }
        }
    }

    /// The reminder under each drawing.
    const fn in_short(self) -> &'static str {
        match self {
            Self::Glass => "Glass: eyes and hands protected; see the cover.",
            Self::Blade => "Blade: free hand out of its path; see the cover.",
            Self::Saw => "Saw: guard on, eyes and ears protected; see the cover.",
        }
    }
}
