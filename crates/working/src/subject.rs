//! What a line of working is about.

use std::fmt::{self, Write};

/// Across or up, in the front view.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Axis {
    /// Across.
    Width,
    /// Up.
    Height,
}

impl fmt::Display for Axis {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(match self {
            Self::Width => "width",
            Self::Height => "height",
        })
    }
}

/// What a line is about: a quantity of a part, held without allocation.
///
/// Shape:  `part[.index[.inner.index]].quantity[.axis]`, as in `mat.2.opening.1.window.width`.
///         Indexes count from 0 in the program and from 1 where people read them.
/// Errors: an index past 65 534 panics; no piece has so many parts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Subject {
    part: &'static str,
    quantity: &'static str,
    inner: Option<(&'static str, u16)>,
    index: Option<u16>,
    axis: Option<Axis>,
}

impl Subject {
    /// A quantity of the only part of its kind: `package.size`.
    pub const fn of(part: &'static str, quantity: &'static str) -> Self {
        Self {
            part,
            quantity,
            inner: None,
            index: None,
            axis: None,
        }
    }

    /// A quantity of one of several parts, counted from 0: `mat.1.outer` is `nth("mat", 0, "outer")`.
    pub const fn nth(part: &'static str, index: usize, quantity: &'static str) -> Self {
        Self {
            part,
            quantity,
            inner: None,
            index: Some(narrow(index)),
            axis: None,
        }
    }

    /// The same quantity of one of several parts within the part, counted from 0.
    #[must_use]
    pub const fn within(self, inner: &'static str, index: usize) -> Self {
        Self {
            inner: Some((inner, narrow(index))),
            ..self
        }
    }

    /// The quantity measured across.
    #[must_use]
    pub const fn width(self) -> Self {
        self.along(Axis::Width)
    }

    /// The quantity measured up.
    #[must_use]
    pub const fn height(self) -> Self {
        self.along(Axis::Height)
    }

    /// The quantity measured along `axis`.
    #[must_use]
    pub const fn along(self, axis: Axis) -> Self {
        Self {
            axis: Some(axis),
            ..self
        }
    }

    /// The part: `mat` of `mat.2.outer.width`.
    pub const fn part(&self) -> &'static str {
        self.part
    }

    /// Which of the parts, counted from 0.
    pub fn index(&self) -> Option<usize> {
        self.index.map(usize::from)
    }

    /// The part within the part and which of them, counted from 0.
    pub fn inner(&self) -> Option<(&'static str, usize)> {
        self.inner.map(|(inner, index)| (inner, usize::from(index)))
    }

    /// The quantity: `outer` of `mat.2.outer.width`.
    pub const fn quantity(&self) -> &'static str {
        self.quantity
    }

    /// Across or up, where the quantity is either.
    pub const fn axis(&self) -> Option<Axis> {
        self.axis
    }

    /// Whether the subject is written exactly as `path`.
    pub fn is(&self, path: &str) -> bool {
        self.after(path) == Some(Rest::Nothing)
    }

    /// Whether the subject is `path` or lies under it: `mat.1` covers `mat.1.outer` and not `mat.10.outer`.
    /// The empty path covers all.
    pub fn is_under(&self, path: &str) -> bool {
        path.is_empty() || self.after(path).is_some()
    }

    /// What is left of the subject's text after `path`, or `None` where `path` does not lead to it.
    fn after(&self, path: &str) -> Option<Rest> {
        let mut following = Following {
            path,
            rest: Rest::Nothing,
        };
        write!(following, "{self}").ok()?;
        following.path.is_empty().then_some(following.rest)
    }
}

impl fmt::Display for Subject {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.part)?;
        if let Some(index) = self.index {
            write!(f, ".{}", u32::from(index) + 1)?;
        }
        if let Some((inner, index)) = self.inner {
            write!(f, ".{inner}.{}", u32::from(index) + 1)?;
        }
        write!(f, ".{}", self.quantity)?;
        match self.axis {
            Some(axis) => write!(f, ".{axis}"),
            None => Ok(()),
        }
    }
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Rest {
    Nothing,
    Under,
}

/// Takes a text bit by bit and compares it with a path, so nothing is allocated.
struct Following<'a> {
    path: &'a str,
    rest: Rest,
}

impl Write for Following<'_> {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        if self.rest == Rest::Under || text.is_empty() {
            return Ok(());
        }
        if let Some(path) = self.path.strip_prefix(text) {
            self.path = path;
            return Ok(());
        }
        let tail = text.strip_prefix(self.path).ok_or(fmt::Error)?;
        self.path = "";
        self.rest = Rest::Under;
        if tail.starts_with('.') {
            Ok(())
        } else {
            Err(fmt::Error)
        }
    }
}

#[allow(
    clippy::cast_possible_truncation,
    reason = "asserted to fit on the line before"
)]
const fn narrow(index: usize) -> u16 {
    assert!(
        index < u16::MAX as usize,
        "a piece has fewer than 65 535 parts of a kind"
    );
    index as u16
}
