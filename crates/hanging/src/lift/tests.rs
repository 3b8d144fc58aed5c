//! Beyond the reference cases: between the rows of the table, and past its ends.

use conservation::caution::Caution;
use measure::{Length, Mass};
use trade::{Settings, Units};
use working::{Figure, Stated, Working};

use super::{Grip, Lasting, Lift, Lifted, lift};

fn lifted(often: f64, reach: f64) -> Lifted {
    let asked = |value, unit| Stated::job(Figure::of(value, unit));
    let asks = Lift {
        load: asked(10.0, "kg"),
        reach: asked(reach, "cm"),
        height: asked(75.0, "cm"),
        travel: asked(20.0, "cm"),
        turn: asked(0.0, "°"),
        often: asked(often, "1/min"),
        lasting: Lasting::Hour,
        grip: Grip::Good,
    };
    let mut working = Working::new();
    let found = lift(&asks, &mut working).expect("it can be asked");
    assert_eq!(working.recheck(), []);
    found
}

/// Rows at 3 and 4 a minute hold 0.88 and 0.84.
#[test]
fn between_two_rows_the_multiplier_lies_in_proportion() {
    let found = lifted(3.5, 25.0).multipliers[4].value.value();
    assert!((found - 0.86).abs() < 1e-12, "{found}");
}

#[test]
fn nothing_is_lifted_out_of_reach_or_too_often() {
    for found in [lifted(0.2, 64.0), lifted(16.0, 25.0)] {
        assert!(found.limit.value.value().abs() < 1e-12);
        assert!(found.index.is_none());
    }
}

#[test]
fn the_wall_is_a_longer_lift_than_the_bench() {
    let shop = Settings::defaults(Units::Millimetres);
    let mut working = Working::new();
    let load = Stated::job(Mass::KILOGRAM.times(18));
    let bench = Lift::to_bench(load, &shop, &mut working);
    let wall = Lift::to_wall(load, Stated::job(Length::mm(1500)), &shop, &mut working);
    let [bench, wall] = [bench, wall].map(|asks| {
        let found = lift(&asks, &mut working).expect("it can be asked");
        assert!(found.to_string().ends_with(Caution::Lift.text()));
        found.limit.value.value()
    });
    assert!(wall < bench, "{wall} {bench}");
    assert_eq!(working.recheck(), []);
}
