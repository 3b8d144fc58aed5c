//! The condition report: what was seen on the art when it was taken in.

use measure::{Length, Unit};
use serde_json::{Value, json};
use sizing::Sizes;
use trade::{ArtSide, Blemish, Job};

use crate::about;
use crate::error::PaperworkError;
use crate::legible::Legible;
use crate::ticket::{Drawing, Paper};
use crate::typeset::{Picture, Sheet, Stamp, pdf};

/// A condition report of one piece of art.
///
/// Shape:  strings as they are to be read; empty ones leave their place out.
#[derive(Clone, Debug)]
pub struct ConditionReport {
    /// The shop's name.
    pub shop: String,
    /// Order number.
    pub order: String,
    /// The day, as the shop writes days.
    pub date: String,
    /// When the file was made; the only time it knows.
    pub made: Stamp,
    /// Title of the art.
    pub title: String,
    /// What else is known of it, a line each.
    pub about: Vec<String>,
    /// Its front with its marks.
    pub front: Drawing,
    /// Its back with its marks.
    pub back: Drawing,
    /// Its condition in words.
    pub condition: String,
    /// Its marks, in their order.
    pub marks: Vec<SeenMark>,
    /// What must be minded with what was seen.
    pub cautions: Vec<String>,
}

/// One mark in words.
#[derive(Clone, Debug)]
pub struct SeenMark {
    /// Front or back.
    pub side: String,
    /// What kind of thing it is.
    pub kind: String,
    /// From the left and from the top, and how large.
    pub place: String,
    /// What else is said of it.
    pub words: String,
}

/// What a report must be told that neither the job nor its sizes say.
#[derive(Clone, Debug)]
pub struct ConditionHead {
    /// The shop's name.
    pub shop: String,
    /// When the file is made.
    pub made: Stamp,
    /// The day, as the shop writes days.
    pub date: String,
    /// Order number where the job has none.
    pub fallback_order: String,
}

/// The condition report of a piece of art of a job, counted from 0.
///
/// # Errors
///
/// No such art, a mark outside it.
pub fn condition_of(
    job: &Job,
    sizes: &Sizes,
    index: usize,
    [front, back]: [drawing::Drawing; 2],
    head: ConditionHead,
) -> Result<ConditionReport, PaperworkError> {
    let art = job
        .art
        .get(index)
        .ok_or(PaperworkError::Nothing("the job has no such art"))?;
    let (width, height) = (*art.width, art.height.map_or(*art.width, |height| *height));
    let unit = sizes.unit();
    let marks = seen(art, (width, height), unit)?;
    let about = about_lines(job, art, &about::size_words(width, height, sizes));
    let identity = &job.identity;
    Ok(ConditionReport {
        shop: head.shop,
        order: identity.order.clone().unwrap_or(head.fallback_order),
        date: head.date,
        made: head.made,
        title: art.title.clone().unwrap_or_else(|| "Untitled".to_owned()),
        about,
        front: in_words(front),
        back: in_words(back),
        condition: art.condition.clone().unwrap_or_default(),
        marks,
        cautions: cautions(art.marks.iter().map(|mark| mark.kind)),
    })
}

/// The marks in words.
fn seen(
    art: &trade::Art,
    (width, height): (Length, Length),
    unit: Unit,
) -> Result<Vec<SeenMark>, PaperworkError> {
    let reach = |from: trade::Measured, size: Option<trade::Measured>| {
        size.map_or(*from, |size| *from + *size)
    };
    let said = |length: Option<trade::Measured>| {
        length.map_or_else(|| "–".to_owned(), |length| length.exact(unit))
    };
    let one = |(number, mark): (usize, &trade::ConditionMark)| {
        if reach(mark.x, mark.width) > width || reach(mark.y, mark.height) > height {
            return Err(PaperworkError::MarkOff { mark: number });
        }
        let size = match (mark.width, mark.height) {
            (None, None) => String::new(),
            (wide, high) => format!("; {} × {}", said(wide), said(high)),
        };
        let (x, y) = (mark.x.exact(unit), mark.y.exact(unit));
        Ok(SeenMark {
            side: mark.side.word().to_owned(),
            kind: mark.kind.word().to_owned(),
            place: format!("{x} from the left, {y} from the top{size}"),
            words: mark.words.clone().unwrap_or_default(),
        })
    };
    (1..).zip(&art.marks).map(one).collect()
}

/// What is known of the art, and who took it in from whom.
fn about_lines(job: &Job, art: &trade::Art, size: &str) -> Vec<String> {
    let medium = Some(about::medium_word(art.medium).to_owned());
    let said = [art.artist.clone(), medium, art.support.clone()];
    let made_of = said.into_iter().flatten().collect::<Vec<_>>().join(", ");
    let mut lines = vec![made_of, format!("Size {size}")];
    let identity = &job.identity;
    for (what, said) in [
        ("Taken in", &identity.taken_in),
        ("by", &identity.taken_by),
        ("For", &identity.customer),
    ] {
        lines.extend(said.as_ref().map(|said| format!("{what} {said}")));
    }
    lines
}

fn in_words(drawing: drawing::Drawing) -> Drawing {
    let twin: Vec<String> = drawing
        .twin
        .iter()
        .map(|line| format!("{}: {}", line.what, line.value))
        .collect();
    Drawing {
        alt: format!("{}, {}. {}", drawing.title, drawing.scale, twin.join("; ")),
        svg: drawing.svg,
    }
}

/// Each kind's caution once.
fn cautions(kinds: impl Iterator<Item = Blemish>) -> Vec<String> {
    let mut said: Vec<String> = Vec::new();
    for words in kinds.filter_map(Blemish::caution) {
        if !said.iter().any(|other| other == words) {
            said.push(words.to_owned());
        }
    }
    said
}

/// The condition report, as PDF.
///
/// Shape:  front and back side by side with numbered marks, then the marks in words, then lines to
///         sign. Digits at least 3.3 mm high.
///
/// # Errors
///
/// A drawing without words or one that can't be read, a moment off the calendar, no order number.
pub fn condition_pdf(report: &ConditionReport, paper: Paper) -> Result<Vec<u8>, PaperworkError> {
    pdf(sheet(report, paper)?)
}

fn sheet(report: &ConditionReport, paper: Paper) -> Result<Sheet, PaperworkError> {
    if report.order.trim().is_empty() {
        return Err(PaperworkError::NoOrder);
    }
    let mut text = Legible::new();
    let mut picture = |drawing: &'static str, file: &'static str, given: &Drawing| {
        if given.alt.trim().is_empty() {
            return Err(PaperworkError::NoWords { drawing });
        }
        let svg = text.drawn(&given.svg);
        Ok(Picture { drawing, file, svg })
    };
    let drawings = vec![
        picture(ArtSide::Front.word(), "front.svg", &report.front)?,
        picture(ArtSide::Back.word(), "back.svg", &report.back)?,
    ];
    let marks: Vec<Value> = report
        .marks
        .iter()
        .map(|mark| {
            json!({
                "side": mark.side,
                "kind": mark.kind,
                "place": text.line(&mark.place, NAME),
                "words": text.line(&mark.words, LONG),
            })
        })
        .collect();
    let mut data = json!({
        "paper": match paper { Paper::A4 => "a4", Paper::Letter => "us-letter" },
        "shop": text.line(&report.shop, NAME),
        "order": text.line(&report.order, NAME),
        "date": text.line(&report.date, NAME),
        "title": text.line(&report.title, NAME),
        "about": report.about.iter().map(|line| text.line(line, NAME)).collect::<Vec<_>>(),
        "alt": { "front": text.line(&report.front.alt, LONG), "back": text.line(&report.back.alt, LONG) },
        "condition": text.line(&report.condition, LONG),
        "marks": marks,
        "cautions": report.cautions.iter().map(|line| text.line(line, LONG)).collect::<Vec<_>>(),
    });
    data["replaced"] = json!(text.replaced);
    Ok(Sheet {
        template: "condition.typ",
        data,
        drawings,
        identity: format!("condition {} {}", report.order, report.title),
        made: report.made,
    })
}

const NAME: usize = 120;
const LONG: usize = 700;
