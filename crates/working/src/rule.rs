//! What a value is worked out by, and how far it can be trusted.

use std::fmt;

/// How far a rule or number can be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Status {
    /// Follows from geometry or arithmetic alone.
    Geometry,
    /// Printed in a source that can be cited.
    Published,
    /// Measured on a real piece or material.
    Measured,
    /// What the trade does, though no source could be named.
    CommonPractice,
    /// The shop decides.
    ShopChoice,
    /// Taken for granted until someone measures it.
    Assumed,
}

impl fmt::Display for Status {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(match self {
            Self::Geometry => "geometry",
            Self::Published => "published",
            Self::Measured => "measured",
            Self::CommonPractice => "common practice",
            Self::ShopChoice => "shop choice",
            Self::Assumed => "assumed",
        })
    }
}

/// How much of a cited work was seen by whoever cites it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Seen {
    /// Read where it bears on the rule.
    Read,
    /// Read in part: an abstract, a preview, an excerpt.
    InPart,
    /// Known through another work that quotes it.
    SecondHand,
    /// Remembered and not looked up.
    FromMemory,
}

impl fmt::Display for Seen {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(match self {
            Self::Read => "read",
            Self::InPart => "read in part",
            Self::SecondHand => "quoted second hand",
            Self::FromMemory => "from memory, not looked up",
        })
    }
}

/// A work that a rule rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Citation {
    /// Its number or short name, such as a standard's.
    pub code: &'static str,
    /// Its title.
    pub title: &'static str,
    /// Who published it.
    pub publisher: &'static str,
    /// When, as printed.
    pub year: &'static str,
    /// How much of it was seen.
    pub seen: Seen,
}

impl fmt::Display for Citation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let parts = [self.code, self.title, self.publisher, self.year];
        for (at, part) in parts
            .into_iter()
            .filter(|part| !part.is_empty())
            .enumerate()
        {
            if at > 0 {
                f.write_str(", ")?;
            }
            f.write_str(part)?;
        }
        write!(f, " ({})", self.seen)
    }
}

/// Where a rule comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Source {
    /// Geometry or arithmetic; anyone can check it with a pencil.
    Geometry,
    /// The trade does so, and no source could be named.
    CommonPractice,
    /// A work that says so.
    Cited(&'static Citation),
}

impl fmt::Display for Source {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Geometry => f.write_str("geometry"),
            Self::CommonPractice => f.write_str("common practice, no source"),
            Self::Cited(citation) => citation.fmt(f),
        }
    }
}

/// A rule: one way of getting one value from others.
///
/// Shape:  `formula` is `result = expression` in the language of [`Formula`](crate::Formula); its
///         names are those the inputs are recorded under.
/// Units:  those of the inputs; a formula that adds a length to a number is refused.
/// Errors: none here; [`Working::recheck`](crate::Working::recheck) reports a formula that can't be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Rule {
    /// A short name, unique in the program: `mat.outside`.
    pub id: &'static str,
    /// The rule in words a framer would use.
    pub words: &'static str,
    /// The rule as a formula.
    pub formula: &'static str,
    /// Where it comes from.
    pub source: Source,
    /// How far it can be trusted.
    pub status: Status,
}
