//! Laws of one problem, on problems too large to try every way.

use cutting::lengths::{self, Together};
use cutting::sheets::{self, Area, Edges};
use cutting::{Goal, Halt, Trying, Unwatched};
use proptest::prelude::*;
use proptest::sample::select;

use crate::draw::{cases, least, leg, piece, rules, sheet, sheets_of, steps, stick, sticks_of};

fn some_sheets() -> impl Strategy<Value = sheets::Problem> {
    let sides = (5_u64..=60, 5_u64..=60);
    let pieces = proptest::collection::vec((sides, 1_u64..=4, any::<bool>(), 0_u64..=3), 3..=10);
    let pieces = pieces.prop_map(|drawn| {
        let of = |(number, ((width, height), count, turn, reveal))| sheets::Piece {
            turn,
            window: (reveal == 0 && width > 20 && height > 20).then(|| (width - 10, height - 10)),
            ..piece(&format!("piece {number}"), width, height, count)
        };
        drawn.into_iter().enumerate().map(of).collect::<Vec<_>>()
    });
    let stock = (60_u64..=100, 60_u64..=100, 50_u64..=99, 30_u64..=70).prop_map(
        |(width, height, cost, rest)| {
            vec![
                sheet("small", 62, 62, 40),
                sheets::Sheet {
                    trim: Edges {
                        left: 1,
                        right: 0,
                        bottom: 1,
                        top: 2,
                    },
                    ..sheet("large", width + 10, height + 10, cost)
                },
                sheets::Sheet {
                    remnant: true,
                    count: Some(2),
                    ..sheet("rest", rest, 40, 10)
                },
            ]
        },
    );
    (least(), rules(), stock, pieces).prop_map(|(goal, rules, stock, pieces)| sheets::Problem {
        goal,
        rules,
        ..sheets_of(stock, pieces)
    })
}

fn some_sticks() -> impl Strategy<Value = lengths::Problem> {
    let together = select(vec![
        None,
        None,
        None,
        Some(Together::Stick("left".to_owned())),
        Some(Together::Run("frame".to_owned())),
    ]);
    let pieces = proptest::collection::vec((10_u64..=90, 1_u64..=4, together), 3..=12);
    let pieces = pieces.prop_map(|drawn| {
        let mut left = 2;
        let mut pieces = Vec::new();
        for (number, (length, count, together)) in drawn.into_iter().enumerate() {
            // What belongs on one stick must be short enough for one.
            let one_stick = matches!(together, Some(Together::Stick(_)));
            left -= i32::from(one_stick);
            let together = together.filter(|_| !one_stick || left >= 0);
            pieces.push(lengths::Piece {
                count: Some(if one_stick { 1 } else { count }),
                together,
                ..leg(&format!("leg {number}"), length, 1)
            });
        }
        pieces
    });
    let stock = (100_u64..=260, 30_u64..=80, 0_u64..=3).prop_map(|(length, cost, flaw)| {
        vec![
            lengths::Stick {
                trim: (2, 3),
                ..stick("long", 240, 70)
            },
            stick("short", length, cost),
            lengths::Stick {
                count: Some(2),
                remnant: true,
                flaws: vec![(40, 40 + flaw), (90, 95)],
                ..stick("rest", 100, 9)
            },
        ]
    });
    (least(), 0_u64..=4, stock, pieces).prop_map(|(goal, kerf, stock, pieces)| lengths::Problem {
        goal,
        kerf,
        ..sticks_of(stock, pieces)
    })
}

type Law = Result<(), TestCaseError>;

fn sheets_plan(problem: &sheets::Problem, trying: Trying) -> Result<sheets::Plan, TestCaseError> {
    let plan = sheets::solve(problem, trying, &Unwatched);
    let plan = plan.map_err(|faults| TestCaseError::fail(format!("{faults:?}")))?;
    sheets_hold(problem, &plan)?;
    Ok(plan)
}

fn sticks_plan(problem: &lengths::Problem, trying: Trying) -> Result<lengths::Plan, TestCaseError> {
    let plan = lengths::solve(problem, trying, &Unwatched);
    let plan = plan.map_err(|faults| TestCaseError::fail(format!("{faults:?}")))?;
    sticks_hold(problem, &plan)?;
    Ok(plan)
}

fn sheets_hold(problem: &sheets::Problem, plan: &sheets::Plan) -> Law {
    sheets::check(problem, plan).map_err(|broken| TestCaseError::fail(broken.to_string()))?;
    prop_assert!(plan.bound <= plan.objective);
    // Least strips may leave a piece that no sheet gives; all others can be bought.
    prop_assert!(
        plan.uncut.is_empty() || problem.rules.least_strip > 0 || problem.rules.stages.is_some()
    );
    Ok(())
}

fn sticks_hold(problem: &lengths::Problem, plan: &lengths::Plan) -> Law {
    lengths::check(problem, plan).map_err(|broken| TestCaseError::fail(broken.to_string()))?;
    prop_assert!(plan.bound <= plan.objective);
    prop_assert!(plan.uncut.is_empty());
    Ok(())
}

/// Everything that is a length, so many times as long.
fn larger_sheets(problem: &sheets::Problem, times: u64) -> sheets::Problem {
    let mut problem = problem.clone();
    problem.rules.kerf *= times;
    problem.rules.least_strip *= times;
    for sheet in &mut problem.stock {
        sheet.width *= times;
        sheet.height *= times;
        sheet.trim = Edges {
            left: sheet.trim.left * times,
            right: sheet.trim.right * times,
            bottom: sheet.trim.bottom * times,
            top: sheet.trim.top * times,
        };
    }
    for piece in &mut problem.pieces {
        piece.width *= times;
        piece.height *= times;
        piece.window = piece
            .window
            .map(|(width, height)| (width * times, height * times));
    }
    problem
}

fn larger_sticks(problem: &lengths::Problem, times: u64) -> lengths::Problem {
    let mut problem = problem.clone();
    problem.kerf *= times;
    for stick in &mut problem.stock {
        stick.length *= times;
        stick.trim = (stick.trim.0 * times, stick.trim.1 * times);
        for flaw in &mut stick.flaws {
            *flaw = (flaw.0 * times, flaw.1 * times);
        }
    }
    for piece in &mut problem.pieces {
        piece.length *= times;
    }
    problem
}

/// Where the pieces lie, on a scale so many times as small.
fn smaller(area: Area, times: u64) -> Area {
    Area {
        x: area.x / times,
        y: area.y / times,
        width: area.width / times,
        height: area.height / times,
    }
}

/// What holds however much was tried: no plan of one is cheaper than what the other proves.
fn agree(one: (u64, u64), other: (u64, u64)) -> Law {
    prop_assert!(
        one.1 <= other.0 && other.1 <= one.0,
        "{one:?} and {other:?}"
    );
    Ok(())
}

proptest! {
    #![proptest_config(cases(16))]

    #[test]
    fn sheets_plan_alike_for_the_same_seed(problem in some_sheets(), seed in 0_u64..9) {
        let trying = Trying { effort: Some(400_000), seed };
        let plan = sheets_plan(&problem, trying)?;
        prop_assert_eq!(&plan, &sheets_plan(&problem, trying)?);
    }

    #[test]
    fn sticks_plan_alike_for_the_same_seed(problem in some_sticks(), seed in 0_u64..9) {
        let trying = Trying { effort: Some(400_000), seed };
        let plan = sticks_plan(&problem, trying)?;
        prop_assert_eq!(&plan, &sticks_plan(&problem, trying)?);
    }

    #[test]
    fn sheets_never_cost_more_for_more_effort(problem in some_sheets()) {
        let mut before = (u64::MAX, 0);
        for effort in [1, 20_000, 300_000, 2_000_000] {
            let plan = sheets_plan(&problem, steps(effort))?;
            prop_assert!(plan.objective <= before.0, "{} above {}", plan.objective, before.0);
            prop_assert!(plan.bound >= before.1, "{} below {}", plan.bound, before.1);
            before = (plan.objective, plan.bound);
        }
    }

    #[test]
    fn sticks_never_cost_more_for_more_effort(problem in some_sticks()) {
        let mut before = (u64::MAX, 0);
        for effort in [1, 20_000, 300_000, 2_000_000] {
            let plan = sticks_plan(&problem, steps(effort))?;
            prop_assert!(plan.objective <= before.0, "{} above {}", plan.objective, before.0);
            prop_assert!(plan.bound >= before.1, "{} below {}", plan.bound, before.1);
            before = (plan.objective, plan.bound);
        }
    }

    #[test]
    fn enough_at_once_is_still_a_whole_plan(flat in some_sheets(), long in some_sticks()) {
        let halt = Halt::default();
        halt.halt();
        let plan = sheets::solve(&flat, Trying::default(), &halt).expect("no fault");
        sheets_hold(&flat, &plan)?;
        let plan = lengths::solve(&long, Trying::default(), &halt).expect("no fault");
        sticks_hold(&long, &plan)?;
    }

    #[test]
    fn larger_units_change_nothing_on_sheets(problem in some_sheets(), times in 2_u64..=900) {
        let plan = sheets_plan(&problem, steps(400_000))?;
        let scaled = sheets_plan(&larger_sheets(&problem, times), steps(400_000))?;
        prop_assert_eq!((plan.objective, plan.bound), (scaled.objective, scaled.bound));
        for (layout, scaled) in plan.layouts.iter().zip(&scaled.layouts) {
            for (one, other) in layout.pieces.iter().zip(&scaled.pieces) {
                prop_assert_eq!(one.area, smaller(other.area, times));
            }
        }
    }

    #[test]
    fn larger_units_change_nothing_on_sticks(problem in some_sticks(), times in 2_u64..=900) {
        let plan = sticks_plan(&problem, steps(400_000))?;
        let scaled = sticks_plan(&larger_sticks(&problem, times), steps(400_000))?;
        prop_assert_eq!((plan.objective, plan.bound), (scaled.objective, scaled.bound));
        for (layout, scaled) in plan.layouts.iter().zip(&scaled.layouts) {
            for (one, other) in layout.pieces.iter().zip(&scaled.pieces) {
                prop_assert_eq!(one.at, other.at / times);
            }
        }
    }

    #[test]
    fn the_order_of_a_list_of_sheets_proves_nothing(
        problem in some_sheets(),
        turned in 0_usize..10,
    ) {
        let mut other = problem.clone();
        other.pieces.reverse();
        other.stock.reverse();
        other.pieces.rotate_left(turned % problem.pieces.len());
        let plan = sheets_plan(&problem, steps(2_000_000))?;
        let other = sheets_plan(&other, steps(2_000_000))?;
        prop_assume!(plan.uncut.is_empty() && other.uncut.is_empty());
        agree((plan.objective, plan.bound), (other.objective, other.bound))?;
    }

    #[test]
    fn the_order_of_a_list_of_sticks_proves_nothing(
        problem in some_sticks(),
        turned in 0_usize..12,
    ) {
        let mut other = problem.clone();
        other.pieces.reverse();
        other.stock.reverse();
        other.pieces.rotate_left(turned % problem.pieces.len());
        let plan = sticks_plan(&problem, steps(2_000_000))?;
        let other = sticks_plan(&other, steps(2_000_000))?;
        agree((plan.objective, plan.bound), (other.objective, other.bound))?;
    }

    #[test]
    fn value_is_never_above_its_bound(
        flat in some_sheets(),
        long in some_sticks(),
        endless in any::<bool>(),
    ) {
        let mut flat = sheets::Problem { goal: Goal::Value, ..flat };
        let mut long = lengths::Problem { goal: Goal::Value, ..long };
        if endless {
            flat.pieces.iter_mut().for_each(|piece| piece.count = None);
            long.pieces.iter_mut().for_each(|piece| piece.count = None);
        }
        let plan = sheets::solve(&flat, steps(400_000), &Unwatched).expect("no fault");
        sheets::check(&flat, &plan).map_err(|broken| TestCaseError::fail(broken.to_string()))?;
        prop_assert!(plan.objective <= plan.bound);
        let plan = lengths::solve(&long, steps(400_000), &Unwatched).expect("no fault");
        lengths::check(&long, &plan).map_err(|broken| TestCaseError::fail(broken.to_string()))?;
        prop_assert!(plan.objective <= plan.bound);
    }
}
