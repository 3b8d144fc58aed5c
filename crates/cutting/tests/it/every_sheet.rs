//! Up to five pieces against every cut there is on every sheet there is.
//!
//! Source: exhaustive search, written from the definition of the problem alone.

use std::collections::BTreeMap;

use cutting::sheets::{Edges, First, Piece, Problem, Rules, Sheet, check, solve};
use cutting::{Goal, Unwatched};
use proptest::prelude::*;

use crate::draw::{cases, least, piece, rules, sheet, sheets_of, steps};

/// One copy of a piece.
#[derive(Clone, Copy)]
struct One {
    width: u64,
    height: u64,
    turn: bool,
    window: Option<(u64, u64)>,
    value: u64,
}

fn singly(pieces: &[Piece]) -> Vec<One> {
    let of = |piece: &Piece| {
        let one = One {
            width: piece.width,
            height: piece.height,
            turn: piece.turn,
            window: piece.window,
            value: piece.value,
        };
        vec![one; usize::try_from(piece.count.unwrap_or(0)).expect("few")]
    };
    pieces.iter().flat_map(of).collect()
}

/// Which way the last cut ran, and how many changes of direction there have been.
type Made = (Option<First>, u32);

/// Tries every cut at every place, and every way to share the pieces out to both sides.
struct Cuts<'a> {
    rules: Rules,
    ones: &'a [One],
    known: BTreeMap<(u64, u64, u32, u32, bool), bool>,
}

impl Cuts<'_> {
    /// Whether all pieces of a set can be cut from a part of this size.
    fn free(&mut self, (width, height): (u64, u64), set: u32, made: Made) -> bool {
        if set == 0 {
            return true;
        }
        let area = |one: &One| one.width * one.height;
        if members(set).map(|n| area(&self.ones[n])).sum::<u64>() > width * height {
            return false;
        }
        if set.is_power_of_two() {
            let one = self.ones[set.trailing_zeros() as usize];
            let turned = one.turn && (width, height) == (one.height, one.width);
            if (width, height) == (one.width, one.height) || turned {
                return true;
            }
        }
        let stage = if self.rules.stages.is_some() {
            made.1
        } else {
            0
        };
        // Without a limit the way of the last cut does not matter.
        let upright = stage > 0 && made.0 == Some(First::Upright);
        let key = (width, height, set, stage, upright);
        if let Some(&known) = self.known.get(&key) {
            return known;
        }
        let found = [First::Upright, First::Level]
            .into_iter()
            .any(|way| self.cut((width, height), set, made, way));
        self.known.insert(key, found);
        found
    }

    fn cut(&mut self, (width, height): (u64, u64), set: u32, made: Made, way: First) -> bool {
        let stage = match made.0 {
            None if self.rules.first == First::Any || self.rules.first == way => 1,
            None => 2,
            Some(last) if last == way => made.1,
            Some(_) => made.1 + 1,
        };
        if let Some(most) = self.rules.stages {
            let trims = self.rules.final_trim && stage == most + 1 && set.is_power_of_two();
            if stage > most && !trims {
                return false;
            }
        }
        let along = if way == First::Upright { width } else { height };
        let least = self.rules.least_strip.max(1);
        for low in least..along {
            let high = along.saturating_sub(low + self.rules.kerf);
            if self.rules.kerf == 0 && high < least {
                continue;
            }
            let sized = |length| match way {
                First::Upright => (length, height),
                _ => (width, length),
            };
            for here in subsets(set) {
                let there = set & !here;
                if (high > 0 || there == 0)
                    && self.free(sized(low), here, (Some(way), stage))
                    && self.free(sized(high), there, (Some(way), stage))
                {
                    return true;
                }
            }
        }
        false
    }
}

fn members(set: u32) -> impl Iterator<Item = usize> {
    (0..32).filter(move |bit| set >> bit & 1 == 1)
}

/// All subsets, the whole and the empty one among them.
fn subsets(set: u32) -> impl Iterator<Item = u32> {
    let mut next = Some(set);
    std::iter::from_fn(move || {
        let now = next?;
        next = now.checked_sub(1).map(|below| below & set);
        Some(now)
    })
}

/// What a set of pieces can be cut from.
#[derive(Clone, Copy)]
struct Source {
    size: (u64, u64),
    cost: u64,
    left: u64,
}

struct Every<'a> {
    cuts: Cuts<'a>,
    sources: Vec<Source>,
    fits: BTreeMap<(usize, u32), bool>,
}

impl<'a> Every<'a> {
    fn new(problem: &Problem, ones: &'a [One]) -> Self {
        let stock = problem.stock.iter().map(|sheet| Source {
            size: usable(sheet),
            cost: if problem.goal == Goal::Fewest {
                1
            } else {
                sheet.cost
            },
            left: sheet.count.unwrap_or(u64::MAX),
        });
        let windows = ones.iter().filter_map(|one| one.window).map(|size| Source {
            size,
            cost: 0,
            left: 1,
        });
        Self {
            cuts: Cuts {
                rules: problem.rules,
                ones,
                known: BTreeMap::new(),
            },
            sources: stock.chain(windows).collect(),
            fits: BTreeMap::new(),
        }
    }

    fn fit(&mut self, source: usize, set: u32) -> bool {
        if let Some(&known) = self.fits.get(&(source, set)) {
            return known;
        }
        let size = self.sources[source].size;
        let found = self.cuts.free(size, set, (None, 0));
        self.fits.insert((source, set), found);
        found
    }

    /// The least cost of cutting a set; `None` when the stock does not reach.
    ///
    /// A window is smaller than its piece in both directions, so no piece can lie in its own, nor
    /// two in each other's.
    fn least(&mut self, set: u32) -> Option<u64> {
        if set == 0 {
            return Some(0);
        }
        let first = set & set.wrapping_neg();
        let mut best: Option<u64> = None;
        for others in subsets(set & !first) {
            for source in 0..self.sources.len() {
                let Source { cost, left, .. } = self.sources[source];
                if left == 0 || !self.fit(source, first | others) {
                    continue;
                }
                self.sources[source].left = left.saturating_sub(1);
                if let Some(rest) = self.least(set & !first & !others) {
                    best = Some(best.map_or(rest + cost, |best| best.min(rest + cost)));
                }
                self.sources[source].left = left;
            }
        }
        best
    }

    /// The most value out of one sheet.
    fn most(&mut self, stock: usize) -> u64 {
        let all = (1_u32 << self.cuts.ones.len()) - 1;
        let mut best = 0;
        for set in subsets(all) {
            for source in 0..stock {
                if self.sources[source].left > 0 && self.fit(source, set) {
                    let value = members(set).map(|n| self.cuts.ones[n].value).sum();
                    best = best.max(value);
                }
            }
        }
        best
    }
}

fn usable(sheet: &Sheet) -> (u64, u64) {
    (
        sheet.width - sheet.trim.left - sheet.trim.right,
        sheet.height - sheet.trim.bottom - sheet.trim.top,
    )
}

fn pieces(windows: bool) -> impl Strategy<Value = Vec<Piece>> {
    let sides = (1_u64..=7, 1_u64..=7);
    let one = (sides, any::<bool>(), 0_u64..=3, 1_u64..=9).prop_map(
        move |((width, height), turn, reveal, value)| Piece {
            turn,
            window: (windows && width > 2 + reveal && height > 2 + reveal)
                .then(|| (width - 1 - reveal, height - 1 - reveal)),
            value,
            ..piece("", width, height, 1)
        },
    );
    proptest::collection::vec((one, 0_u64..=5), 1..=5).prop_map(|drawn| {
        let mut left = 5_u64;
        let mut pieces = Vec::new();
        for (number, (mut piece, more)) in drawn.into_iter().enumerate() {
            let count = if more == 0 { 2 } else { 1 };
            let count = count.min(left);
            left -= count;
            piece.name = format!("piece {number}");
            piece.count = Some(count);
            if count > 0 {
                pieces.push(piece);
            }
        }
        pieces
    })
}

/// Two kinds of sheet, and what is left of an earlier one.
fn stock(
    held: impl Strategy<Value = (Option<u64>, Option<u64>)>,
) -> impl Strategy<Value = Vec<Sheet>> {
    let sides = || (8_u64..=12, 8_u64..=12, 3_u64..=9);
    let remnant = (4_u64..=9, 4_u64..=9, 1_u64..=4);
    (sides(), sides(), remnant, held, 0_u64..=1, 0_u64..=1).prop_map(
        |(small, large, rest, held, left, top)| {
            let trim = Edges {
                left,
                top,
                ..Edges::default()
            };
            let of = |name, (width, height, cost), count, trim| Sheet {
                count,
                trim,
                ..sheet(name, width, height, cost)
            };
            vec![
                of("small", small, held.0, trim),
                of("large", large, held.1, Edges::default()),
                Sheet {
                    remnant: true,
                    ..of("rest", rest, Some(1), Edges::default())
                },
            ]
        },
    )
}

fn endless() -> impl Strategy<Value = (Option<u64>, Option<u64>)> {
    Just((None, None))
}

fn scarce() -> impl Strategy<Value = (Option<u64>, Option<u64>)> {
    (prop::option::of(0_u64..=2), (0_u64..=2).prop_map(Some))
}

fn problems(
    held: impl Strategy<Value = (Option<u64>, Option<u64>)>,
    rules: impl Strategy<Value = Rules>,
    windows: bool,
) -> impl Strategy<Value = Problem> {
    (least(), rules, stock(held), pieces(windows)).prop_map(|(goal, rules, stock, mut pieces)| {
        // What is narrower than the least strip is for `hostile`.
        for piece in &mut pieces {
            piece.width = piece.width.max(rules.least_strip);
            piece.height = piece.height.max(rules.least_strip);
        }
        Problem {
            goal,
            rules,
            ..sheets_of(stock, pieces)
        }
    })
}

/// No limit of stages: what the bench does.
fn free_rules() -> impl Strategy<Value = Rules> {
    rules().prop_map(|rules| Rules {
        stages: None,
        ..rules
    })
}

type Law = Result<(), TestCaseError>;

/// Our plan costs what the cheapest way of all costs, and says so.
fn agrees(problem: &Problem) -> Law {
    let ones = singly(&problem.pieces);
    let mut every = Every::new(problem, &ones);
    let expected = every.least((1 << ones.len()) - 1);
    let found = solve(problem, steps(8_000_000), &Unwatched);
    let Some(expected) = expected else {
        // Refused, or told which pieces are left.
        if let Ok(plan) = found {
            prop_assert!(!plan.uncut.is_empty(), "more is cut than can be: {plan:?}");
            check(problem, &plan).map_err(|broken| TestCaseError::fail(broken.to_string()))?;
        }
        return Ok(());
    };
    let plan = found.map_err(|faults| TestCaseError::fail(format!("{faults:?}")))?;
    check(problem, &plan).map_err(|broken| TestCaseError::fail(broken.to_string()))?;
    prop_assert!(
        plan.uncut.is_empty(),
        "{:?} are left, a plan of {expected} has all",
        plan.uncut
    );
    prop_assert!(
        plan.bound <= expected,
        "bound {} above {expected}",
        plan.bound
    );
    prop_assert_eq!(plan.objective, expected);
    prop_assert!(
        plan.proven(),
        "{expected} is best, but the bound stays {}",
        plan.bound
    );
    Ok(())
}

proptest! {
    #![proptest_config(cases(150))]

    #[test]
    fn as_cheap_as_the_cheapest_of_all_ways(problem in problems(endless(), free_rules(), false)) {
        agrees(&problem)?;
    }

    #[test]
    fn as_cheap_within_stages(problem in problems(endless(), rules(), false)) {
        agrees(&problem)?;
    }

    #[test]
    fn as_cheap_with_windows(problem in problems(endless(), free_rules(), true)) {
        agrees(&problem)?;
    }

    #[test]
    fn as_cheap_where_stock_is_scarce(problem in problems(scarce(), free_rules(), false)) {
        agrees(&problem)?;
    }

    #[test]
    fn the_most_value_of_all_ways(problem in problems(endless(), rules(), false)) {
        let problem = Problem { goal: Goal::Value, ..problem };
        let ones = singly(&problem.pieces);
        let expected = Every::new(&problem, &ones).most(problem.stock.len());
        let plan = solve(&problem, steps(8_000_000), &Unwatched)
            .map_err(|faults| TestCaseError::fail(format!("{faults:?}")))?;
        check(&problem, &plan).map_err(|broken| TestCaseError::fail(broken.to_string()))?;
        prop_assert!(plan.bound >= expected, "bound {} below {expected}", plan.bound);
        prop_assert_eq!(plan.objective, expected);
    }
}
