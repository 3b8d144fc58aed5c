//! The bands of the trade's table.

use std::collections::BTreeMap;

use measure::{Mass, Unit};
use trade::settings::Layer;
use trade::{Hanger, Key, Settings, Units, WallMake};

use super::choice;

fn shop(changes: &[(&str, &str)]) -> Settings {
    let changes: BTreeMap<String, String> = changes
        .iter()
        .map(|(id, value)| ((*id).to_owned(), (*value).to_owned()))
        .collect();
    Settings::defaults(Units::Millimetres)
        .with(&changes, Layer::Shop, Unit::Millimetre)
        .unwrap_or_else(|faults| panic!("{faults:?}"))
}

fn kilograms(n: i64) -> Mass {
    Mass::KILOGRAM.times(n)
}

#[test]
fn every_band_has_its_hardware() {
    for (weight, hanger, hooks, key) in [
        (2, Hanger::Wire, 1, Some(Key::SingleRingTo)),
        (9, Hanger::Wire, 1, Some(Key::OneHookTo)),
        (10, Hanger::Wire, 2, Some(Key::WireTo)),
        (18, Hanger::Wire, 2, Some(Key::WireTo)),
        (34, Hanger::Rings, 2, Some(Key::RingsTo)),
        (35, Hanger::Cleat, 2, None),
    ] {
        let found = choice(kilograms(weight), None, &shop(&[]));
        let expected = (hanger, hooks, key);
        assert_eq!((found.hanger, found.hooks, found.setting), expected);
    }
}

/// The words and the number of hooks say the same, whatever the settings.
#[test]
fn words_and_hooks_never_contradict() {
    for wish in ["one", "two", "by weight"] {
        for one_to in ["1", "9", "40"] {
            let shop = shop(&[("hanging.hooks", wish), ("hanging.one_hook_to", one_to)]);
            for weight in 1..40 {
                let found = choice(kilograms(weight), None, &shop);
                let word = if found.hooks == 1 {
                    "one hook"
                } else {
                    "two hooks"
                };
                assert!(
                    found.setting.is_none() || found.wall.starts_with(word),
                    "{found:?}"
                );
                assert!(
                    found.hooks == 2 || kilograms(weight) <= kilograms(shop.count(Key::OneHookTo))
                );
                assert!(found.hooks == 2 || wish != "two");
            }
        }
    }
}

#[test]
fn the_wall_names_its_fixing() {
    for (made_of, word) in [
        (WallMake::Plasterboard, "plasterboard"),
        (WallMake::Studs, "studs"),
        (WallMake::Masonry, "masonry"),
        (WallMake::Lath, "drilled first"),
        (WallMake::PictureRail, "cord"),
    ] {
        let found = choice(kilograms(12), Some(made_of), &shop(&[]));
        assert!(found.wall.contains(word), "{}", found.wall);
    }
}
