//! What a drawing is made with, and why it may not be made.

use sizing::Sizes;

/// A picture file as it was stored.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Picture {
    /// `image/png`, `image/jpeg` or `image/svg+xml`.
    pub mime: &'static str,
    /// The file.
    pub bytes: Vec<u8>,
}

impl Picture {
    /// Whether pages and prints can show it.
    pub(crate) fn can_be_shown(&self) -> bool {
        matches!(self.mime, "image/png" | "image/jpeg" | "image/svg+xml")
    }
}

/// How many inks there are.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Ink {
    /// Materials in their own colours.
    #[default]
    Colour,
    /// Black and its greys, on white.
    OneInk,
}

/// What a drawing is laid out on. Letters are 5 mm high on each; the narrower the sheet, the
/// larger their share of it and the fewer dimensions it shows. The text twin always has them all.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Sheet {
    /// 130 mm wide, for screens: every dimension there is room for.
    #[default]
    Page,
    /// 88 mm wide, for half of a ticket's page: printed as wide as it is, its digits are 3.3 mm
    /// high. The layers of the section carry their numbers in the list of the stack, counted from
    /// 1 over all members' stacks, outside in. The ticket sets the drawings' headings.
    Ticket,
    /// 186 mm wide: cut sheets on their own, with their headings and keys.
    Wide,
    /// 186 mm wide, across a page of the cut sheets, which sets headings and keys.
    Bench,
}

impl Sheet {
    /// Its width, in millimetres.
    pub const fn width(self) -> f64 {
        match self {
            Self::Page => 130.0,
            Self::Ticket => 88.0,
            Self::Wide | Self::Bench => 186.0,
        }
    }

    /// Bare paper at its edges, in millimetres.
    pub(crate) const fn margin(self) -> f64 {
        match self {
            Self::Page | Self::Wide => 5.0,
            Self::Ticket | Self::Bench => 1.5,
        }
    }
}

/// How a drawing is to look.
#[derive(Clone, Copy)]
pub struct Look<'a> {
    /// The picture of this name, as the job's `art.picture` names it.
    pub pictures: &'a dyn Fn(&str) -> Option<Picture>,
    /// The inks.
    pub ink: Ink,
    /// What it is laid out on.
    pub sheet: Sheet,
}

impl<'a> Look<'a> {
    /// For screens.
    pub fn page(pictures: &'a dyn Fn(&str) -> Option<Picture>, ink: Ink) -> Self {
        Self {
            pictures,
            ink,
            sheet: Sheet::Page,
        }
    }

    /// For the ticket.
    pub fn ticket(pictures: &'a dyn Fn(&str) -> Option<Picture>, ink: Ink) -> Self {
        Self {
            pictures,
            ink,
            sheet: Sheet::Ticket,
        }
    }

    /// For cut sheets on their own.
    pub fn wide(ink: Ink) -> Self {
        Self {
            sheet: Sheet::Wide,
            ..Self::bench(ink)
        }
    }

    /// For a page of the cut sheets; they show no pictures.
    pub fn bench(ink: Ink) -> Self {
        Self {
            pictures: &|_| None,
            ink,
            sheet: Sheet::Bench,
        }
    }
}

/// Why a piece can't be drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DrawingError {
    /// Some rectangle of the piece has no size.
    NoSize,
    /// The job is not the one the sizes were worked out from: their numbers of parts differ.
    OtherJob,
}

impl std::fmt::Display for DrawingError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::NoSize => {
                "the piece can't be drawn: a window, a sheet or a frame in it comes out at nothing or less; \
                 mend what the checks name and it is drawn again"
            }
            Self::OtherJob => {
                "the piece can't be drawn: its sizes were worked out from another job; work them out again from this one"
            }
        })
    }
}

impl std::error::Error for DrawingError {}

/// Refuses sizes without extent, and sizes of another job.
pub(crate) fn drawable(job: &trade::Job, sizes: &Sizes) -> Result<(), DrawingError> {
    let alike = job.art.len() == sizes.art.len()
        && job.frame.len() == sizes.members.len()
        && job.mat.len() == sizes.mats.len()
        && !sizes.art.is_empty()
        && !sizes.members.is_empty();
    if !alike {
        return Err(DrawingError::OtherJob);
    }
    if sizes.can_be_drawn() {
        Ok(())
    } else {
        Err(DrawingError::NoSize)
    }
}
