//! Hardware by load.

use measure::Mass;
use trade::{Hanger, Key, Settings};

/// Hardware for a weight, as the trade chooses it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Choice {
    /// What the frame hangs by.
    pub hanger: Hanger,
    /// Hooks in the wall.
    pub hooks: u32,
    /// On the frame, in words.
    pub frame: &'static str,
    /// In the wall, in words.
    pub wall: &'static str,
    /// The setting whose weight it lies under; none for the heaviest.
    pub setting: Option<Key>,
}

/// Hardware for a piece of this weight.
///
/// Shape:  the first band it lies in; every band is a setting.
/// Source: common practice, no source; two wall points are safer than one (HP).
/// Example: 8 kg: one-hole rings and wire.
pub fn choice(weight: Mass, settings: &Settings) -> Choice {
    let bands = [
        (Key::SingleRingTo, Hanger::Wire, LIGHT),
        (Key::OneHookTo, Hanger::Wire, USUAL),
        (Key::WireTo, Hanger::Wire, HEAVY),
        (Key::RingsTo, Hanger::Rings, STRAIGHT),
    ];
    let reaches = |key: Key| weight <= Mass::KILOGRAM.times(settings.count(key));
    let band = bands.into_iter().find(|(key, ..)| reaches(*key));
    let (setting, hanger, (frame, wall, hooks)) = match band {
        Some((key, hanger, words)) => (Some(key), hanger, words),
        None => (None, Hanger::Cleat, ENGINEERED),
    };
    let hooks = match settings.choice(Key::Hooks) {
        "one" if hanger == Hanger::Wire => 1,
        "two" => 2,
        _ => hooks,
    };
    Choice {
        hanger,
        hooks,
        frame,
        wall,
        setting,
    }
}

type Words = (&'static str, &'static str, u32);

const LIGHT: Words = ("single rings; a sawtooth only on cheap work", "one hook", 1);
const USUAL: Words = ("one-hole rings and wire", "one or two hooks", 1);
const HEAVY: Words = ("two-hole rings and heavy wire", "two hooks", 2);
const STRAIGHT: Words = (
    "rings straight on two hooks, no wire",
    "anchors, or screws into studs",
    2,
);
const ENGINEERED: Words = (
    "a cleat or plates, and a shelf below",
    "screws into studs or masonry, placed by someone who builds such walls",
    2,
);

#[cfg(test)]
mod tests;
