//! Problems drawn at random, always the same ones.

use cutting::{Goal, Trying, lengths, sheets};
use proptest::prelude::*;
use proptest::sample::select;
use proptest::test_runner::RngSeed;

/// So many cases from a fixed seed; `PROPTEST_RNG_SEED` draws others.
pub fn cases(cases: u32) -> ProptestConfig {
    let mut config = ProptestConfig {
        failure_persistence: None,
        ..ProptestConfig::default()
    };
    if std::env::var_os("PROPTEST_CASES").is_none() {
        config.cases = cases;
    }
    if config.rng_seed == RngSeed::Random {
        config.rng_seed = RngSeed::Fixed(3);
    }
    config
}

/// So many steps, from the usual seed.
pub fn steps(effort: u64) -> Trying {
    Trying {
        effort: Some(effort),
        ..Trying::default()
    }
}

/// A sheet without trim, bought as often as needed.
pub fn sheet(name: &str, width: u64, height: u64, cost: u64) -> sheets::Sheet {
    sheets::Sheet {
        name: name.to_owned(),
        width,
        height,
        cost,
        count: None,
        remnant: false,
        trim: sheets::Edges::default(),
    }
}

/// A piece that may not be turned, worth its area.
pub fn piece(name: &str, width: u64, height: u64, count: u64) -> sheets::Piece {
    sheets::Piece {
        name: name.to_owned(),
        width,
        height,
        count: Some(count),
        value: width.saturating_mul(height).min(1 << 40),
        turn: false,
        window: None,
        priority: 0,
        due: None,
    }
}

/// A stick without trim or flaw, bought as often as needed.
pub fn stick(name: &str, length: u64, cost: u64) -> lengths::Stick {
    lengths::Stick {
        name: name.to_owned(),
        length,
        cost,
        count: None,
        remnant: false,
        trim: (0, 0),
        flaws: Vec::new(),
        run: None,
    }
}

/// A piece that may lie anywhere, worth its length.
pub fn leg(name: &str, length: u64, count: u64) -> lengths::Piece {
    lengths::Piece {
        name: name.to_owned(),
        length,
        count: Some(count),
        value: length.min(1 << 40),
        together: None,
        priority: 0,
        due: None,
    }
}

/// Sheets to be cut at the least cost, from edge to edge, without limit.
pub fn sheets_of(stock: Vec<sheets::Sheet>, pieces: Vec<sheets::Piece>) -> sheets::Problem {
    sheets::Problem {
        name: "sheets".to_owned(),
        goal: Goal::Cost,
        rules: sheets::Rules::default(),
        stock,
        pieces,
    }
}

/// Sticks to be cut at the least cost, without kerf.
pub fn sticks_of(stock: Vec<lengths::Stick>, pieces: Vec<lengths::Piece>) -> lengths::Problem {
    lengths::Problem {
        name: "sticks".to_owned(),
        goal: Goal::Cost,
        kerf: 0,
        stock,
        pieces,
    }
}

/// A kerf, a least strip or neither; in one of three a limit of stages.
pub fn rules() -> impl Strategy<Value = sheets::Rules> {
    let lost = prop_oneof![Just((0, 0)), Just((1, 0)), Just((2, 0)), Just((0, 2))];
    let stages = prop_oneof![2 => Just(None), 1 => (1_u32..=3).prop_map(Some)];
    let first = select(vec![
        sheets::First::Any,
        sheets::First::Upright,
        sheets::First::Level,
    ]);
    (lost, stages, first, any::<bool>()).prop_map(
        |((kerf, least_strip), stages, first, final_trim)| sheets::Rules {
            kerf,
            stages,
            first,
            final_trim,
            least_strip,
        },
    )
}

/// The goals that want all pieces cut.
pub fn least() -> impl Strategy<Value = Goal> {
    select(vec![Goal::Cost, Goal::Cost, Goal::Fewest])
}
