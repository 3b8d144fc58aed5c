//! Expected numbers: geometry and the balance of forces, worked with a pencil.

use measure::{Length, Mass};
use working::Working;

use super::{Factors, Hang, Ratings, WireRun, ratings, wire_run};
use crate::{CAUTION, Refusal, Stated};

fn hang(pounds: i64, rings: i64, rise: i64, hooks: Option<i64>) -> Hang {
    Hang {
        weight: Stated::job(Mass::POUND.times(pounds)),
        rings_apart: Stated::job(Length::inches(rings)),
        rise: Stated::job(Length::inches(rise)),
        hooks_apart: hooks.map(|hooks| Stated::job(Length::inches(hooks))),
    }
}

fn run(hang: &Hang) -> (WireRun, Ratings) {
    let mut working = Working::new();
    let run = wire_run(hang, &mut working).expect("it hangs");
    let factors = Factors {
        wire: Stated::job(4),
        pull: Stated::job(2),
        ends: Stated::job(100),
        fitting: Stated::job(2),
    };
    let rated = ratings(hang, &run, &factors, &mut working).expect("it can be rated");
    let amiss = working.recheck();
    assert!(amiss.is_empty(), "{amiss:?}");
    assert_eq!(working.len(), 8, "every value has its line");
    (run, rated)
}

#[test]
fn twenty_pounds_on_a_flat_wire() {
    let (run, rated) = run(&hang(20, 20, 3, None));
    assert_eq!(run.angle.print_four_decimals_nearest(), "16.6992°");
    assert_eq!(run.tension.print_lb_nearest(4), "34.8010 lb");
    assert_eq!(
        format!("{:.4}", run.between_rings.approx_inches()),
        "20.8806"
    );
    assert_eq!(
        run.sentence(),
        "each side of the wire pulls like 15.79 kg (34.8 lb) at 16.7°, 1.74 times the weight"
    );
    assert_eq!(rated.wire.value, Mass::POUND.times(80));
    assert_eq!(rated.ring.print_lb_nearest(1), "69.6 lb");
    assert_eq!(rated.hook.value, Mass::POUND.times(40));
    let said = rated.to_string();
    assert!(said.contains("factor 4 on the weight"), "{said}");
    assert!(said.ends_with(CAUTION), "{said}");
    assert!(run.to_string().ends_with(CAUTION));
}

/// With slopes of 3, 4 and 5 every number is whole: sin θ = 3/5, T = 5/6 of the weight.
#[test]
fn a_whole_triangle_is_exact() {
    let (run, _) = run(&hang(12, 8, 3, None));
    assert_eq!(run.between_rings.value, Length::inches(10));
    assert_eq!(run.tension.value, Mass::POUND.times(10));
    assert_eq!(run.times_weight_nearest(3), "0.833");
    assert_eq!(run.times_weight_nearest(0), "1");
}

#[test]
fn two_hooks_take_their_distance_out_of_the_span() {
    let (one, _) = run(&hang(12, 8, 3, None));
    let (two, rated) = run(&hang(12, 13, 3, Some(5)));
    assert_eq!(two.span.value, Length::inches(8));
    assert_eq!(
        (two.angle.value, two.tension.value),
        (one.angle.value, one.tension.value)
    );
    assert_eq!(two.between_rings.value, Length::inches(15));
    assert_eq!(
        rated.hook.value,
        Mass::POUND.times(12),
        "half of it, twice over"
    );
}

/// A wire that hardly rises pulls more than four times the weight, and the wire's rating follows.
#[test]
fn a_taut_wire_raises_its_own_rating() {
    let (run, rated) = run(&hang(10, 40, 1, None));
    assert!(run.tension.value > Mass::POUND.times(100), "{run}");
    assert_eq!(rated.wire.value, run.tension.value.times(2));
}

/// Thirty degrees pull by the weight itself: rise = span ÷ (2 √3).
#[test]
fn thirty_degrees_pull_by_the_weight() {
    let mut hang = hang(20, 20, 3, None);
    hang.rise = Stated::job(
        Length::inches(10)
            .scaled_nearest(1.0 / 3_f64.sqrt())
            .expect("it fits"),
    );
    let (run, _) = run(&hang);
    assert_eq!(run.angle.print_four_decimals_nearest(), "30.0000°");
    assert_eq!(run.times_weight_nearest(4), "1.0000");
}

#[test]
fn what_cannot_hang_is_refused() {
    let refused = |hang: Hang| {
        let mut working = Working::new();
        let refusal = wire_run(&hang, &mut working).expect_err("it can't hang");
        assert!(working.is_empty(), "nothing is recorded of what is refused");
        refusal.to_string()
    };
    assert_eq!(
        refused(hang(0, 20, 3, None)),
        "the weight is 0.00 kg (0.0 lb); weigh the piece, or add up its parts"
    );
    assert_eq!(
        refused(hang(20, 20, 3, Some(20))),
        "the rings are 20 in (508 mm) apart and the hooks 20 in (508 mm); put the hooks closer \
         together than the rings"
    );
    assert_eq!(
        refused(hang(20, 20, 0, None)),
        "the wire rises 0 in (0 mm); leave it slack, so that it rises above its rings under load"
    );
    assert_eq!(
        refused(hang(20, 20, 3, Some(-1))),
        "the distance between the hooks is -1 in (-25.4 mm); give zero or more"
    );
    let taut = Hang {
        rise: Stated::job(Length::QUANTUM),
        ..hang(2000, 30_000, 1, None)
    };
    assert_eq!(
        refused(taut),
        "the wire pulls harder than can be worked out; give it more slack"
    );
}

#[test]
fn a_factor_below_one_is_refused() {
    let hang = hang(20, 20, 3, None);
    let mut working = Working::new();
    let run = wire_run(&hang, &mut working).expect("it hangs");
    let factors = Factors {
        wire: Stated::job(4),
        pull: Stated::job(2),
        ends: Stated::job(100),
        fitting: Stated::job(0),
    };
    let refused = ratings(&hang, &run, &factors, &mut working).expect_err("it weakens");
    assert_eq!(refused, Refusal::Factor { factor: 0 });
}

/// Ends that leave 60 % ask for 100/60 of the pull's rating: 5 × 34.80 lb ÷ 0.6 = 290.0 lb.
#[test]
fn a_twisted_end_raises_the_rating() {
    use trade::{Settings, Units};
    let hang = hang(20, 20, 3, None);
    let mut working = Working::new();
    let run = wire_run(&hang, &mut working).expect("it hangs");
    let shop = Settings::defaults(Units::Inches);
    let usual = ratings(&hang, &run, &Factors::of_shop(&shop, false), &mut working).expect("rated");
    assert_eq!(usual.wire.value.print_lb_nearest(1), "290.0 lb");
    assert_eq!(usual.hook.value, Mass::POUND.times(80));
    let people = ratings(&hang, &run, &Factors::of_shop(&shop, true), &mut working).expect("rated");
    assert_eq!(people.hook.value, Mass::POUND.times(160));
    assert_eq!(working.recheck(), []);
}

#[test]
fn ends_that_leave_nothing_are_refused() {
    let hang = hang(20, 20, 3, None);
    let mut working = Working::new();
    let run = wire_run(&hang, &mut working).expect("it hangs");
    let factors = Factors {
        wire: Stated::job(4),
        pull: Stated::job(2),
        ends: Stated::job(0),
        fitting: Stated::job(2),
    };
    let refused = ratings(&hang, &run, &factors, &mut working).expect_err("no strength");
    assert_eq!(
        refused.to_string(),
        "the wire's ends leave 0 % of its strength; give 1 to 100"
    );
}
