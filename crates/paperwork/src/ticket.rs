//! The bench ticket: one piece, pinned above the bench that makes it.

use crate::error::PaperworkError;
use crate::legible::Legible;
use crate::typeset::{Picture, Sheet, Stamp, pdf};

mod data;
mod of_job;

pub use of_job::{Drawings, Letterhead, ticket_of};

/// The bench ticket of one piece, as PDF.
///
/// Shape:  as many pages as the tables need; every page carries order, revision, date,
///         its number, and a 100 mm and a 4 in bar along both axes. Cut sizes have digits
///         at least 4.5 mm high, nothing else is under 3.3 mm; the drawings' own lettering
///         is as high as they have it where they are 88 mm wide.
///         Tables longer than [`ROWS_PRINTED`] say on the sheet how many rows are not on
///         it and where they are.
/// Units:  none; every size is a string its caller has worded and rounded.
///
/// # Errors
///
/// A drawing without words, one not readable as SVG or one that fetches a file, a moment
/// off the calendar, no order number.
pub fn ticket_pdf(ticket: &Ticket, paper: Paper) -> Result<Vec<u8>, PaperworkError> {
    pdf(sheet(ticket, paper)?)
}

/// The sheet to set: the ticket's words made printable, and its drawings.
pub(crate) fn sheet(ticket: &Ticket, paper: Paper) -> Result<Sheet, PaperworkError> {
    if ticket.order.trim().is_empty() {
        return Err(PaperworkError::NoOrder);
    }
    let mut legible = Legible::new();
    let drawings = vec![
        picture(
            "elevation",
            "elevation.svg",
            &ticket.elevation,
            &mut legible,
        )?,
        picture(
            "back view",
            "back-view.svg",
            &ticket.back_view,
            &mut legible,
        )?,
        picture("section", "section.svg", &ticket.section, &mut legible)?,
    ];
    Ok(Sheet {
        template: "ticket.typ",
        data: data::of(ticket, paper, &mut legible),
        drawings,
        identity: format!("ticket {} revision {}", ticket.order, ticket.revision),
        made: ticket.made,
    })
}

/// Rows of one table that are printed before the sheet names where the rest are.
pub const ROWS_PRINTED: usize = 600;

/// The paper in the printer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// 210 × 297 mm.
    A4,
    /// 8 1/2 × 11 in.
    Letter,
}

/// What a bench ticket says.
///
/// Shape:  strings as they are to be read; sizes already rounded and with the fraction
///         written `7/8`; empty lists and strings leave their place out.
/// Units:  `unit` is printed beside every size.
#[derive(Clone, Debug)]
pub struct Ticket {
    /// The shop's name.
    pub shop: String,
    /// Order or job number, on every page.
    pub order: String,
    /// Revision of the job the sheet was made from.
    pub revision: u32,
    /// When the file was made; the only time it knows.
    pub made: Stamp,
    /// The document's date, as the shop writes dates.
    pub date: String,
    /// Title of the art.
    pub title: String,
    /// Who made the art.
    pub artist: String,
    /// What the art is made of.
    pub medium: String,
    /// Whose it is.
    pub customer: String,
    /// When it is promised, as the shop writes dates.
    pub due: String,
    /// Where the art waits.
    pub bin: String,
    /// Who took it in.
    pub taken_by: String,
    /// The level of care promised.
    pub level: String,
    /// Unit of every size, such as `in` or `mm`.
    pub unit: String,
    /// The framed piece from the front.
    pub elevation: Drawing,
    /// The mat from the back, shapes mirrored and text not.
    pub back_view: Drawing,
    /// A cut through the edge, front to back.
    pub section: Drawing,
    /// Every sheet part to cut.
    pub parts: Vec<CutPart>,
    /// Every pair of rails to cut, member by member, outside in.
    pub legs: Vec<Legs>,
    /// The package front to back.
    pub stack: Stack,
    /// Machine settings, one line a cut, in cutting order.
    pub mat_cuts: Vec<MatCut>,
    /// How the art is attached, a sentence a line.
    pub attachment: Vec<String>,
    /// Where the hardware goes.
    pub hardware: Vec<Mark>,
    /// Anything else the counter promised.
    pub instructions: String,
    /// The steps of exactly this piece, in order.
    pub steps: Vec<Step>,
    /// What can go wrong with this piece, worst first.
    pub cautions: Vec<Caution>,
    /// Where the full tables are kept, printed when one is longer than [`ROWS_PRINTED`].
    pub full_tables: String,
}

/// A drawing and the words that stand for it.
///
/// Shape:  printed 88 mm wide, and in proportion less where it is more than 150 mm high then.
/// Units:  the SVG's own; lettering has digits of 3.3 mm if it is at least 4.95 mm high where the
///         drawing is 88 mm wide, as on `drawing::Sheet::Ticket`.
#[derive(Clone, Debug)]
pub struct Drawing {
    /// The drawing, as SVG.
    pub svg: String,
    /// What it shows, for those who cannot see it.
    pub alt: String,
}

/// One sheet part to cut.
#[derive(Clone, Debug)]
pub struct CutPart {
    /// What it is: top mat, glazing, backing.
    pub part: String,
    /// How many alike.
    pub count: u32,
    /// Product, colour, and which face is in.
    pub material: String,
    /// Stock sheet or remnant it is cut from.
    pub from: String,
    /// Width as the tool is set.
    pub width: String,
    /// Height as the tool is set.
    pub height: String,
    /// The exact size, when the printed one is rounded.
    pub exact: Option<String>,
}

/// A pair of opposite rails.
#[derive(Clone, Debug)]
pub struct Legs {
    /// Which member of the frame, and its stick.
    pub member: String,
    /// Which pair: top and bottom, or sides.
    pub pair: String,
    /// How many rails alike.
    pub count: u32,
    /// Length at the sight edge.
    pub short: String,
    /// Length at the rabbet wall.
    pub rabbet: String,
    /// Length at the outside edge.
    pub long_point: String,
    /// Mitre angle with its degree sign.
    pub mitre: String,
    /// Blade tilt with its degree sign.
    pub tilt: String,
}

/// The package front to back, and the room left in the rabbet.
#[derive(Clone, Debug, Default)]
pub struct Stack {
    /// Front to back.
    pub layers: Vec<Layer>,
    /// What the rabbet leaves: depth, package, slack.
    pub slack: String,
}

/// One layer of the package.
#[derive(Clone, Debug)]
pub struct Layer {
    /// What it is and which face is in.
    pub layer: String,
    /// Its thickness.
    pub thickness: String,
    /// Depth from the front of the package to its back.
    pub running: String,
}

/// One cut of the mat cutter.
#[derive(Clone, Debug)]
pub struct MatCut {
    /// Which opening in which mat.
    pub opening: String,
    /// Place in the cutting order.
    pub order: u32,
    /// Which side, as seen from the back; the box of a shape that is laid out by hand.
    pub side: String,
    /// Guide setting; of a laid-out shape, from the board's left as seen from the back.
    pub guide: String,
    /// Start stop; of a laid-out shape, from the board's top.
    pub start: String,
    /// End stop; empty for a laid-out shape.
    pub stop: String,
    /// How far past the corner.
    pub overcut: String,
    /// Bevel angle or kind.
    pub bevel: String,
}

/// A place to mark for hardware.
#[derive(Clone, Debug)]
pub struct Mark {
    /// What goes there.
    pub what: String,
    /// Where it goes, measured from what.
    pub place: String,
}

/// One step at the bench.
#[derive(Clone, Debug)]
pub struct Step {
    /// What to do.
    pub step: String,
    /// The numbers it needs.
    pub numbers: String,
    /// Promised minutes.
    pub minutes: u32,
    /// What to beware of in this step.
    pub caution: Option<StepCaution>,
}

/// A caution that belongs to one step.
#[derive(Clone, Debug)]
pub struct StepCaution {
    /// How grave.
    pub severity: Severity,
    /// What, and what to do.
    pub words: String,
}

/// A caution about the piece.
#[derive(Clone, Debug)]
pub struct Caution {
    /// How grave.
    pub severity: Severity,
    /// What is wrong.
    pub what: String,
    /// By how much.
    pub how_much: String,
    /// Why it matters.
    pub why: String,
    /// What cures it.
    pub cure: String,
}

/// How grave a caution is; each prints a word and a shape, never a colour alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Severity {
    /// Do not go on until it is cured.
    Stop,
    /// Go on, minding it.
    Mind,
}

/// The drawing with every letter drawable, once it is known to have words.
fn picture(
    drawing: &'static str,
    file: &'static str,
    given: &Drawing,
    legible: &mut Legible,
) -> Result<Picture, PaperworkError> {
    if given.alt.trim().is_empty() {
        return Err(PaperworkError::NoWords { drawing });
    }
    let svg = legible.drawn(&given.svg);
    Ok(Picture { drawing, file, svg })
}
