//! What is cut: one material, of one colour, in one form of stock.

use std::fmt;

/// One material to cut from; parts of different wares never share stock.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Ware {
    /// What form of stock it is.
    pub kind: WareKind,
    /// Its catalogue code; for strainer bars their width and depth.
    pub code: String,
    /// Its colour, where the job says another than the catalogue's.
    pub colour: Option<String>,
    /// The job that describes it otherwise than the catalogue, where one does.
    pub own_to: Option<String>,
}

/// What form of stock a ware is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum WareKind {
    /// Moulding, in sticks.
    Moulding,
    /// Fillet, in sticks.
    Fillet,
    /// Spacer strip, in sticks.
    Spacer,
    /// Bars of strainers, in sticks.
    Strainer,
    /// Mat and mount board, in sheets.
    Board,
    /// Backing, in sheets.
    Backing,
    /// Glazing, in sheets.
    Glazing,
}

impl WareKind {
    /// The word printed for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Moulding => "moulding",
            Self::Fillet => "fillet",
            Self::Spacer => "spacer",
            Self::Strainer => "strainer bar",
            Self::Board => "board",
            Self::Backing => "backing",
            Self::Glazing => "glazing",
        }
    }

    /// The letter its remnants' labels begin with.
    pub const fn letter(self) -> char {
        match self {
            Self::Moulding => 'M',
            Self::Fillet => 'F',
            Self::Spacer => 'S',
            Self::Strainer => 'T',
            Self::Board => 'B',
            Self::Backing => 'K',
            Self::Glazing => 'G',
        }
    }

    /// Whether it comes in sticks; otherwise in sheets.
    pub const fn in_sticks(self) -> bool {
        matches!(
            self,
            Self::Moulding | Self::Fillet | Self::Spacer | Self::Strainer
        )
    }

    /// What one piece of its stock is called.
    pub const fn stock_word(self) -> &'static str {
        if self.in_sticks() { "stick" } else { "sheet" }
    }
}

/// Its code, and what sets it apart from others of that code.
impl fmt::Display for Ware {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.code)?;
        if let Some(colour) = &self.colour {
            write!(f, " in {colour}")?;
        }
        if let Some(job) = &self.own_to {
            write!(f, " as {job} describes it")?;
        }
        Ok(())
    }
}
