//! Hardware by load.

use measure::Mass;
use trade::{Hanger, Key, Settings, WallMake};

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
    pub wall: String,
    /// The setting whose weight it lies under; none for the heaviest.
    pub setting: Option<Key>,
}

/// Hardware for a piece of this weight, in a wall made of this where that is known.
///
/// Shape:  the first band whose weight it does not pass; every band is a setting, and one set below its
///         neighbour is never reached. One hook serves to the shop's weight for one hook, whatever else is
///         wished; two are taken above it, and wherever the shop hangs everything on two.
/// Source: common practice, no source; two wall points are safer than one (HP).
/// Example: 8 kg: one-hole rings and wire, on one hook.
pub fn choice(weight: Mass, made_of: Option<WallMake>, settings: &Settings) -> Choice {
    let bands = [
        (
            Key::SingleRingTo,
            Hanger::Wire,
            "single rings; a sawtooth only on cheap work",
        ),
        (Key::OneHookTo, Hanger::Wire, "one-hole rings and wire"),
        (Key::WireTo, Hanger::Wire, "two-hole rings and heavy wire"),
        (
            Key::RingsTo,
            Hanger::Rings,
            "rings straight on two hooks, no wire",
        ),
    ];
    let reaches = |key: Key| weight <= Mass::KILOGRAM.times(settings.count(key));
    let band = bands.into_iter().find(|(key, ..)| reaches(*key));
    let (setting, hanger, frame) = match band {
        Some((key, hanger, frame)) => (Some(key), hanger, frame),
        None => (None, Hanger::Cleat, "a cleat or plates, and a shelf below"),
    };
    let hooks = hooks(weight, hanger, settings);
    Choice {
        hanger,
        hooks,
        frame,
        wall: wall(setting, hooks, made_of),
        setting,
    }
}

/// Hooks, or points, in the wall for a piece of this weight that hangs by this.
pub(crate) fn hooks(weight: Mass, hanger: Hanger, settings: &Settings) -> u32 {
    let light = weight <= Mass::KILOGRAM.times(settings.count(Key::OneHookTo));
    let one = hanger == Hanger::Wire && light && settings.choice(Key::Hooks) != "two";
    if one { 1 } else { 2 }
}

/// What goes into the wall, in words.
fn wall(setting: Option<Key>, hooks: u32, made_of: Option<WallMake>) -> String {
    let count = if hooks == 1 { "one hook" } else { "two hooks" };
    let heavy = match setting {
        None => {
            return "screws into studs or masonry, placed by someone who builds such walls"
                .to_owned();
        }
        Some(key) => key == Key::RingsTo,
    };
    let into = match (made_of, heavy) {
        (None, false) => return count.to_owned(),
        (None, true) => "in anchors, or screwed into studs",
        (Some(WallMake::Plasterboard), false) => {
            "made for plasterboard, under the load their maker states"
        }
        (Some(WallMake::Plasterboard), true) => {
            "in hollow-wall anchors, or screwed into studs behind"
        }
        (Some(WallMake::Studs), _) => "screwed into studs",
        (Some(WallMake::Masonry), _) => "screwed into plugs in the masonry, not in its joints",
        (Some(WallMake::Lath), _) => {
            "screwed into lath or stud, drilled first so that plaster holds"
        }
        (Some(WallMake::PictureRail), _) => "over the picture rail, each with a cord of its own",
    };
    format!("{count} {into}")
}

#[cfg(test)]
mod tests;
