//! The bands of the trade's table.

use measure::Mass;
use trade::{Hanger, Key, Settings, Units};

use super::choice;

#[test]
fn every_band_has_its_hardware() {
    let shop = Settings::defaults(Units::Millimetres);
    for (kilograms, hanger, hooks, key) in [
        (2, Hanger::Wire, 1, Some(Key::SingleRingTo)),
        (9, Hanger::Wire, 1, Some(Key::OneHookTo)),
        (18, Hanger::Wire, 2, Some(Key::WireTo)),
        (34, Hanger::Rings, 2, Some(Key::RingsTo)),
        (35, Hanger::Cleat, 2, None),
    ] {
        let found = choice(Mass::KILOGRAM.times(kilograms), &shop);
        let expected = (hanger, hooks, key);
        assert_eq!((found.hanger, found.hooks, found.setting), expected);
    }
}
