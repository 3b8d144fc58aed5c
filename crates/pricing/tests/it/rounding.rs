//! Rounding, against a decimal library; the names are those of IEEE 754-2008, clause 4.3 (from memory).

use proptest::prelude::*;
use rust_decimal::{Decimal as Reference, RoundingStrategy};
use working::Round;

fn strategy(round: Round) -> RoundingStrategy {
    match round {
        Round::TiesToAway => RoundingStrategy::MidpointAwayFromZero,
        Round::TiesToEven => RoundingStrategy::MidpointNearestEven,
        Round::TowardPositive => RoundingStrategy::ToPositiveInfinity,
        Round::TowardNegative => RoundingStrategy::ToNegativeInfinity,
        Round::TowardZero => RoundingStrategy::ToZero,
    }
}

proptest! {
    #[test]
    fn every_way_agrees_with_the_library(digits in -1_000_000_000_i64..1_000_000_000, places in 0_u32..6) {
        for round in Round::ALL {
            let reference = Reference::new(digits, places).round_dp_with_strategy(0, strategy(round));
            let own = round.whole(i128::from(digits), 10_i128.pow(places)).expect("it is held");
            prop_assert_eq!(own.to_string(), reference.normalize().to_string(), "{}", round.ieee());
        }
    }

    #[test]
    fn halves_agree_with_the_library(half in -10_001_i64..10_001) {
        for round in Round::ALL {
            let reference = Reference::new(half * 5, 1).round_dp_with_strategy(0, strategy(round));
            let own = round.whole(i128::from(half), 2).expect("it is held");
            prop_assert_eq!(own.to_string(), reference.normalize().to_string(), "{}", round.ieee());
        }
    }
}

#[test]
fn halves_by_name() {
    let check = |round: Round, wanted: [i128; 4]| {
        // -2.5, -1.5, 1.5, 2.5
        let found = [-5, -3, 3, 5].map(|half| round.whole(half, 2).expect("it is held"));
        assert_eq!(found, wanted, "{}", round.ieee());
    };
    check(Round::TiesToAway, [-3, -2, 2, 3]);
    check(Round::TiesToEven, [-2, -2, 2, 2]);
    check(Round::TowardPositive, [-2, -1, 2, 3]);
    check(Round::TowardNegative, [-3, -2, 1, 2]);
    check(Round::TowardZero, [-2, -1, 1, 2]);
}
