//! Rectangles, by width and height.

use std::fmt;

use crate::{Area, Length, Unit};

/// A width and a height, seen from the front.
///
/// [`grow`](Size::grow) and [`shrink`](Size::shrink) work on every side, so each dimension changes
/// by twice the distance; [`widen`](Size::widen) and [`narrow`](Size::narrow) change each dimension
/// once, by the total. Each pair undoes itself.
///
/// ```
/// use measure::{Length, Size};
/// let window = Size::new(Length::inches(8), Length::inches(10));
/// assert_eq!(window.grow(Length::inches(2)), Size::new(Length::inches(12), Length::inches(14)));
/// assert_eq!(window.grow(Length::inches(2)).shrink(Length::inches(2)), window);
/// assert_eq!(window.widen(Length::inches(2)), Size::new(Length::inches(10), Length::inches(12)));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Size {
    /// Across.
    pub width: Length,
    /// Up and down.
    pub height: Length,
}

#[allow(
    clippy::arithmetic_side_effects,
    reason = "the operators of Length are checked"
)]
impl Size {
    /// A size of this width and height.
    pub const fn new(width: Length, height: Length) -> Self {
        Self { width, height }
    }

    /// A square of this side.
    pub const fn square(side: Length) -> Self {
        Self::new(side, side)
    }

    /// The size with `distance` added on every side.
    ///
    /// grown = size + 2 × distance, in each dimension
    #[must_use]
    pub fn grow(self, distance: Length) -> Self {
        self.widen(distance.twice())
    }

    /// The size with `distance` taken off every side; undoes [`grow`](Self::grow).
    ///
    /// shrunk = size − 2 × distance, in each dimension; may fall below zero
    #[must_use]
    pub fn shrink(self, distance: Length) -> Self {
        self.narrow(distance.twice())
    }

    /// The size with `total` added once to each dimension.
    #[must_use]
    pub fn widen(self, total: Length) -> Self {
        Self::new(self.width + total, self.height + total)
    }

    /// The size with `total` taken once from each dimension; undoes [`widen`](Self::widen).
    #[must_use]
    pub fn narrow(self, total: Length) -> Self {
        Self::new(self.width - total, self.height - total)
    }

    /// The size lying on its side: width and height change places.
    #[must_use]
    pub const fn turned(self) -> Self {
        Self::new(self.height, self.width)
    }

    /// The greater dimension.
    pub fn long_side(self) -> Length {
        self.width.max(self.height)
    }

    /// The lesser dimension.
    pub fn short_side(self) -> Length {
        self.width.min(self.height)
    }

    /// The united measure: width plus height.
    pub fn united(self) -> Length {
        self.width + self.height
    }

    /// All four sides together.
    pub fn perimeter(self) -> Length {
        self.united().twice()
    }

    /// Width times height.
    pub fn area(self) -> Area {
        Area::of(self.width, self.height)
    }

    /// Whether it lies within `other` as it stands; equal sizes fit.
    pub fn fits_in(self, other: Self) -> bool {
        self.width <= other.width && self.height <= other.height
    }

    /// Whether it lies within `other` as it stands or turned.
    pub fn fits_in_either_way(self, other: Self) -> bool {
        self.fits_in(other) || self.turned().fits_in(other)
    }

    /// The exact size as text that reads back, width first: `8 in x 10 in`.
    pub fn exact(self, unit: Unit) -> String {
        format!("{} x {}", self.width.exact(unit), self.height.exact(unit))
    }
}

/// As [`Size::exact`] in inches.
impl fmt::Display for Size {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.exact(Unit::Inch))
    }
}
