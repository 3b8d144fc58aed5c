//! The tick a cut list counts in, and the only two ways a length becomes a count.

use measure::{Area, Length, Unit};
use trade::{Key, Settings};

/// The unit the cutting room counts in.
///
/// Units:  one step of the setting `cutting.tick`. Pieces, cuts and trims are rounded up to it,
///         stock and windows down, so that whatever is planned can be cut; every part keeps its
///         exact size beside its count.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tick {
    name: &'static str,
    step: Length,
}

impl Tick {
    /// The tick of these settings.
    pub fn of(settings: &Settings) -> Self {
        let name = settings.choice(Key::CuttingTick);
        let step = match name {
            "1/128 in" => Length::inch_fraction(1, 128),
            "1/32 in" => Length::inch_fraction(1, 32),
            "0.1 mm" => Length::micrometres(100),
            "0.5 mm" => Length::micrometres(500),
            "1 mm" => Length::MILLIMETRE,
            _ => Length::inch_fraction(1, 64),
        };
        Self { name, step }
    }

    /// Its name: `1/64 in`.
    pub fn name(self) -> &'static str {
        self.name
    }

    /// How long it is.
    pub fn step(self) -> Length {
        self.step
    }

    /// The unit sentences speak in where a shop counts in it.
    pub fn unit(self) -> Unit {
        if self.name.ends_with("mm") {
            Unit::Millimetre
        } else {
            Unit::Inch
        }
    }

    /// The least count of ticks not shorter than `length`; none of a length below zero.
    pub fn up(self, length: Length) -> u64 {
        self.count(length.up_to(self.step))
    }

    /// The greatest count of ticks not longer than `length`; none of a length below zero.
    pub fn down(self, length: Length) -> u64 {
        self.count(length.down_to(self.step))
    }

    /// The exact length of so many ticks.
    ///
    /// Errors: panics beyond what a length can hold; plans are held to their stock first.
    pub fn length(self, ticks: u64) -> Length {
        self.step.times(i64::try_from(ticks).unwrap_or(i64::MAX))
    }

    /// The exact area of a rectangle counted in ticks.
    pub fn area(self, width: u64, height: u64) -> Area {
        Area::of(self.length(width), self.length(height))
    }

    fn count(self, whole: Length) -> u64 {
        u64::try_from(whole.quanta().div_euclid(self.step.quanta())).unwrap_or(0)
    }
}
