//! Values going in, each with where it was stated.

use working::{Given, Origin, Value, Worked};

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
