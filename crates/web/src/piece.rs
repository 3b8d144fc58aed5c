//! From a document as it was sent to a piece with its sizes, its drawings and its ticket.

use drawing::{Drawing, DrawingError, Ink, Look, Picture};
use paperwork::{Drawings, Letterhead, Paper, ticket_of, ticket_pdf};
use sizing::{Fault, Severity, Sizes, derive};
use trade::{DocumentFault, Job};

use crate::clock;
use crate::desk::{Desk, Options};
use crate::front;
use crate::problem::{Entry, Kind, Problem};

/// A piece that could be worked out.
pub(crate) struct Piece {
    pub job: Job,
    pub sizes: Sizes,
}

/// Why a document gives no piece.
#[derive(Debug)]
pub(crate) enum Refusal {
    /// It can't be read.
    Document(Vec<DocumentFault>),
    /// Something in it is missing or unknown.
    Piece(Vec<Fault>),
}

/// The drawings of a piece.
pub(crate) struct Drawn {
    pub elevation: Drawing,
    pub section: Drawing,
    pub back: Drawing,
}

/// Which of the three drawings.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum View {
    Elevation,
    Section,
    Back,
}

impl View {
    /// The view of this name, as addresses write it.
    pub fn named(name: &str) -> Option<Self> {
        match name {
            "elevation" => Some(Self::Elevation),
            "section" => Some(Self::Section),
            "back" => Some(Self::Back),
            _ => None,
        }
    }
}

impl Piece {
    /// Reads a document and works the piece out.
    pub fn of(desk: &Desk, document: &[u8]) -> Result<Self, Refusal> {
        let job = Job::read(document).map_err(Refusal::Document)?;
        let Options {
            habits, catalogue, ..
        } = &desk.options;
        let sizes = derive(&job, catalogue, habits.of(job.units)).map_err(Refusal::Piece)?;
        Ok(Self { job, sizes })
    }

    /// One of its drawings.
    pub fn drawing(&self, view: View, ink: Ink) -> Result<Drawing, DrawingError> {
        self.looked(view, &Look::page(&picture, ink))
    }

    fn looked(&self, view: View, look: &Look<'_>) -> Result<Drawing, DrawingError> {
        match view {
            View::Elevation => drawing::elevation(&self.job, &self.sizes, look),
            View::Section => drawing::section(&self.job, &self.sizes, look),
            View::Back => drawing::back_view(&self.job, &self.sizes, look),
        }
    }

    /// The bare front, without dimensions; the whole elevation where it can't be told apart.
    pub fn front(&self) -> Result<String, DrawingError> {
        let drawn = self.drawing(View::Elevation, Ink::Colour)?;
        Ok(front::bare(&drawn.svg).unwrap_or(drawn.svg))
    }

    /// All three.
    pub fn drawn(&self, ink: Ink) -> Result<Drawn, DrawingError> {
        Ok(Drawn {
            elevation: self.drawing(View::Elevation, ink)?,
            section: self.drawing(View::Section, ink)?,
            back: self.drawing(View::Back, ink)?,
        })
    }

    /// The bench ticket, as PDF.
    pub fn ticket(&self, desk: &Desk, paper: Paper) -> Result<Vec<u8>, Problem> {
        let look = Look::ticket(&picture, Ink::Colour);
        let drawn = |view| self.looked(view, &look).map_err(undrawn);
        let drawings = Drawings {
            elevation: drawn(View::Elevation)?,
            section: drawn(View::Section)?,
            back_view: drawn(View::Back)?,
        };
        let (made, date) = clock::now();
        let head = Letterhead {
            shop: desk.options.shop.clone(),
            made,
            date,
            fallback_order: "none".to_owned(),
        };
        ticket_pdf(&ticket_of(&self.job, &self.sizes, drawings, head), paper)
            .map_err(|error| Problem::fault(&error))
    }

    /// What the piece is called: its art, else its order.
    pub fn title(&self) -> String {
        let art = self.job.art.first().and_then(|art| art.title.clone());
        art.or_else(|| self.job.identity.order.clone())
            .unwrap_or_else(|| "A piece without a title".to_owned())
    }
}

/// A piece whose sizes leave nothing to draw.
pub(crate) fn undrawn(error: DrawingError) -> Problem {
    Problem::plain(Kind::Drawing, error.to_string())
}

impl From<Refusal> for Problem {
    fn from(refusal: Refusal) -> Self {
        match refusal {
            Refusal::Document(faults) => {
                Self::with(Kind::Document, faults.iter().map(Entry::document).collect())
            }
            Refusal::Piece(faults) => {
                Self::with(Kind::Piece, faults.iter().map(Entry::fault).collect())
            }
        }
    }
}

impl Refusal {
    /// Everything that stands in the way.
    pub fn entries(&self) -> Vec<Entry> {
        match self {
            Self::Document(faults) => faults.iter().map(Entry::document).collect(),
            Self::Piece(faults) => faults.iter().map(Entry::fault).collect(),
        }
    }
}

/// Faults that stop a piece, and those that only warn.
pub(crate) fn stops(faults: &[Fault]) -> usize {
    faults
        .iter()
        .filter(|fault| fault.severity == Severity::Refuse)
        .count()
}

/// The picture of this name, from the invented shop.
pub(crate) fn picture(name: &str) -> Option<Picture> {
    let ending = name.rsplit('.').next()?;
    let mime = match ending {
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "jpg" | "jpeg" => "image/jpeg",
        _ => return None,
    };
    demo::picture(name).map(|bytes| Picture { mime, bytes })
}
