//! Values going in, each with where it was stated.

use crate::trace::Worked;
use crate::value::{Given, Origin, Value};

/// A value and where it comes from: the job, a setting, an earlier line of the same working.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stated<T> {
    /// The value.
    pub value: T,
    /// Where it comes from.
    pub origin: Origin,
}

impl<T> Stated<T> {
    /// Stated by the job, or by whoever asks.
    pub const fn job(value: T) -> Self {
        Self {
            value,
            origin: Origin::Job,
        }
    }

    /// A constant of a table, with the code of its source.
    pub const fn table(source: &'static str, value: T) -> Self {
        Self {
            value,
            origin: Origin::Table(source),
        }
    }

    /// What the catalogue says of a material.
    pub const fn material(value: T) -> Self {
        Self {
            value,
            origin: Origin::Material,
        }
    }

    /// The shop's setting of this id.
    pub const fn setting(id: &'static str, value: T) -> Self {
        Self {
            value,
            origin: Origin::Setting(id),
        }
    }
}

/// Worked out on an earlier line of the working it goes into.
impl<T> From<Worked<T>> for Stated<T> {
    fn from(worked: Worked<T>) -> Self {
        Self {
            value: worked.value,
            origin: Origin::Line(worked.line),
        }
    }
}

impl<T: Into<Value>> From<Stated<T>> for Given {
    fn from(stated: Stated<T>) -> Self {
        Self {
            value: stated.value.into(),
            origin: stated.origin,
        }
    }
}
