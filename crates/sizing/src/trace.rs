//! How sizes are recorded: facts going in, worked sizes coming out.

use measure::{Angle, Length, Size};
use trade::{Key, Settings};
use working::{Axis, Given, Origin, Rule, Source, Status, Subject, Worked, Working};

/// A length that was stated and not worked out, with where it was stated.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fact {
    /// The length.
    pub value: Length,
    origin: Origin,
}

impl Fact {
    /// Stated by the job.
    pub fn job(value: impl Into<Length>) -> Self {
        Self {
            value: value.into(),
            origin: Origin::Job,
        }
    }

    /// Stated by the catalogue.
    pub fn material(value: impl Into<Length>) -> Self {
        Self {
            value: value.into(),
            origin: Origin::Material,
        }
    }

    /// A setting of the shop.
    pub fn setting(settings: &Settings, key: Key) -> Self {
        Self {
            value: settings.length(key),
            origin: Origin::Setting(key.id()),
        }
    }
}

impl From<Fact> for Given {
    fn from(fact: Fact) -> Self {
        Self {
            value: fact.value.into(),
            origin: fact.origin,
        }
    }
}

impl From<Worked<Length>> for Fact {
    fn from(worked: Worked<Length>) -> Self {
        Self {
            value: worked.value,
            origin: Origin::Line(worked.line),
        }
    }
}

/// A width and a height, each with the line that says why.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WorkedSize {
    /// Across the front view.
    pub width: Worked<Length>,
    /// Up the front view.
    pub height: Worked<Length>,
}

impl WorkedSize {
    /// The plain size.
    pub fn size(self) -> Size {
        Size::new(self.width.value, self.height.value)
    }

    /// One of the two.
    pub fn along(self, axis: Axis) -> Worked<Length> {
        match axis {
            Axis::Width => self.width,
            Axis::Height => self.height,
        }
    }

    /// The smaller of the two.
    pub fn least(self) -> Length {
        self.width.value.min(self.height.value)
    }
}

/// The measure of `size` along `axis`.
pub(crate) fn along(size: Size, axis: Axis) -> Length {
    match axis {
        Axis::Width => size.width,
        Axis::Height => size.height,
    }
}

/// Records a size: the same rule for width and for height.
pub(crate) fn both<const N: usize>(
    working: &mut Working,
    rule: &'static Rule,
    subject: Subject,
    size: Size,
    inputs: impl Fn(Axis) -> [(&'static str, Given); N],
) -> WorkedSize {
    WorkedSize {
        width: working.by(rule, subject.width(), &inputs(Axis::Width), size.width),
        height: working.by(rule, subject.height(), &inputs(Axis::Height), size.height),
    }
}

/// A rule of plain geometry.
pub(crate) const fn geometry(id: &'static str, words: &'static str, formula: &'static str) -> Rule {
    Rule {
        id,
        words,
        formula,
        source: Source::Geometry,
        status: Status::Geometry,
    }
}

/// A rule of the trade without a source.
pub(crate) const fn custom(id: &'static str, words: &'static str, formula: &'static str) -> Rule {
    Rule {
        id,
        words,
        formula,
        source: Source::CommonPractice,
        status: Status::CommonPractice,
    }
}

/// An input that is an angle the job states.
pub(crate) fn job_angle(angle: Angle) -> Given {
    Given::job(angle)
}
