//! Up to seven pieces against every way to share them out to sticks.
//!
//! Source: exhaustive search, written from the definition of the problem alone.

use std::collections::BTreeMap;

use cutting::lengths::{Piece, Problem, Stick, Together, check, solve};
use cutting::{Goal, Unwatched};
use proptest::prelude::*;
use proptest::sample::select;

use crate::draw::{cases, least, leg, steps, stick, sticks_of};

/// A stick that has been begun.
#[derive(Clone)]
struct Begun {
    stock: usize,
    /// Which of the sticks held it is.
    copy: u64,
    /// The pieces on it, singly, as a set.
    set: u32,
}

/// Gives each piece in turn to every stick that is begun and to one new stick of every kind.
struct Every<'a> {
    problem: &'a Problem,
    ones: Vec<&'a Piece>,
    fits: BTreeMap<(usize, u32), bool>,
    begun: Vec<Begun>,
    best: Option<u64>,
}

impl<'a> Every<'a> {
    fn new(problem: &'a Problem) -> Self {
        let of =
            |piece: &'a Piece| vec![piece; usize::try_from(piece.count.unwrap_or(0)).expect("few")];
        Self {
            problem,
            ones: problem.pieces.iter().flat_map(of).collect(),
            fits: BTreeMap::new(),
            begun: Vec::new(),
            best: None,
        }
    }

    fn cost_of(&self, stock: usize) -> u64 {
        match self.problem.goal {
            Goal::Fewest => 1,
            _ => self.problem.stock[stock].cost,
        }
    }

    fn share(&mut self, piece: usize, cost: u64) {
        if self.best.is_some_and(|best| cost >= best) {
            return;
        }
        if piece == self.ones.len() {
            self.best = Some(cost);
            return;
        }
        for at in 0..self.begun.len() {
            let before = self.begun[at].clone();
            self.begun[at].set |= 1 << piece;
            if self.fit(before.stock, self.begun[at].set) && self.match_up(piece, at) {
                self.share(piece + 1, cost);
            }
            self.begun[at] = before;
        }
        for stock in 0..self.problem.stock.len() {
            let held = self.begun.iter().filter(|begun| begun.stock == stock);
            let copy = u64::try_from(held.count()).expect("few");
            let more = self.problem.stock[stock]
                .count
                .is_none_or(|count| copy < count);
            if more && self.fit(stock, 1 << piece) {
                self.begun.push(Begun {
                    stock,
                    copy,
                    set: 1 << piece,
                });
                if self.match_up(piece, self.begun.len() - 1) {
                    self.share(piece + 1, cost + self.cost_of(stock));
                }
                self.begun.pop();
            }
        }
    }

    /// Whether the piece, there, is with all of its group that have been shared out.
    fn match_up(&self, piece: usize, at: usize) -> bool {
        let Some(group) = &self.ones[piece].together else {
            return true;
        };
        let own = &self.begun[at];
        self.begun.iter().enumerate().all(|(number, begun)| {
            let others = (0..piece).filter(|&other| begun.set >> other & 1 == 1);
            let mut of_group =
                others.filter(|&other| self.ones[other].together.as_ref() == Some(group));
            of_group.next().is_none()
                || match group {
                    Together::Stick(_) => number == at,
                    Together::Run(_) => self.run(begun) == self.run(own),
                }
        })
    }

    /// Every stick held is a run of its own unless one is named; all that is bought is one run.
    fn run(&self, begun: &Begun) -> (Option<&str>, Option<(usize, u64)>) {
        let stick = &self.problem.stock[begun.stock];
        match (&stick.run, stick.count) {
            (Some(run), _) => (Some(run), None),
            (None, Some(_)) => (None, Some((begun.stock, begun.copy))),
            (None, None) => (None, None),
        }
    }

    fn fit(&mut self, stock: usize, set: u32) -> bool {
        if let Some(&known) = self.fits.get(&(stock, set)) {
            return known;
        }
        let whole = &self.problem.stock[stock];
        let end = self.least_end(whole, set);
        let fits = end.is_some_and(|end| end <= whole.length - whole.trim.1);
        self.fits.insert((stock, set), fits);
        fits
    }

    /// Where the last piece ends at the earliest, over all orders of the pieces.
    fn least_end(&self, stick: &Stick, set: u32) -> Option<u64> {
        let mut best: Option<u64> = None;
        for last in (0..self.ones.len()).filter(|&piece| set >> piece & 1 == 1) {
            let others = set & !(1 << last);
            let from = if others == 0 {
                stick.trim.0
            } else {
                self.least_end(stick, others)? + self.problem.kerf
            };
            let mut at = from;
            let length = self.ones[last].length;
            // Once past every flaw that is in the way there is none left: each step passes one.
            for _ in 0..=stick.flaws.len() {
                for &(start, stop) in &stick.flaws {
                    if at < stop && at + length > start {
                        at = stop;
                    }
                }
            }
            best = Some(best.map_or(at + length, |best| best.min(at + length)));
        }
        best
    }
}

fn flaws() -> impl Strategy<Value = Vec<(u64, u64)>> {
    let one = (0_u64..=22, 1_u64..=3).prop_map(|(from, length)| (from, from + length));
    proptest::collection::vec(one, 0..=2)
}

/// Length, cost, how many, flaws, run and trim of a stick.
type Drawn = (
    u64,
    u64,
    Option<u64>,
    Vec<(u64, u64)>,
    Option<&'static str>,
    u64,
);

fn stock(scarce: bool) -> impl Strategy<Value = Vec<Stick>> {
    let of = (
        25_u64..=40,
        1_u64..=9,
        prop_oneof![Just(None), (1_u64..=2).prop_map(Some)],
        prop_oneof![2 => Just(Vec::new()), 1 => flaws()],
        select(vec![None, None, Some("A"), Some("B")]),
        0_u64..=1,
    );
    proptest::collection::vec(of, 2..=4).prop_map(move |drawn| {
        let of = |(number, drawn)| {
            let (length, cost, count, flaws, run, trim): Drawn = drawn;
            // The first stick always reaches, unless stock is to be scarce.
            let (count, flaws) = if number == 0 && !scarce {
                (None, Vec::new())
            } else if scarce {
                (Some(count.unwrap_or(1)), flaws)
            } else {
                (count, flaws)
            };
            Stick {
                count,
                flaws,
                run: run.map(str::to_owned),
                trim: (trim, 0),
                ..stick(&format!("stick {number}"), length, cost)
            }
        };
        drawn.into_iter().enumerate().map(of).collect()
    })
}

fn pieces(groups: bool) -> impl Strategy<Value = Vec<Piece>> {
    let together = if groups {
        select(vec![
            None,
            Some(Together::Stick("left".to_owned())),
            Some(Together::Stick("right".to_owned())),
            Some(Together::Run("frame".to_owned())),
            Some(Together::Run("frame".to_owned())),
            Some(Together::Run("other".to_owned())),
        ])
    } else {
        select(vec![None])
    };
    let of = (2_u64..=18, 1_u64..=2, together);
    proptest::collection::vec(of, 1..=7).prop_map(|drawn| {
        let mut left = 7_u64;
        let mut pieces = Vec::new();
        for (number, (length, count, together)) in drawn.into_iter().enumerate() {
            let count = count.min(left);
            left -= count;
            if count > 0 {
                pieces.push(Piece {
                    together,
                    ..leg(&format!("piece {number}"), length, count)
                });
            }
        }
        pieces
    })
}

fn problems(scarce: bool, groups: bool) -> impl Strategy<Value = Problem> {
    (least(), 0_u64..=2, stock(scarce), pieces(groups)).prop_map(|(goal, kerf, stock, pieces)| {
        Problem {
            goal,
            kerf,
            ..sticks_of(stock, pieces)
        }
    })
}

type Law = Result<(), TestCaseError>;

fn agrees(problem: &Problem) -> Law {
    let mut every = Every::new(problem);
    every.share(0, 0);
    let found = solve(problem, steps(8_000_000), &Unwatched);
    let Some(expected) = every.best else {
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
    #![proptest_config(cases(200))]

    #[test]
    fn as_cheap_as_the_cheapest_of_all_ways(problem in problems(false, false)) {
        agrees(&problem)?;
    }

    #[test]
    fn as_cheap_where_pieces_belong_together(problem in problems(false, true)) {
        agrees(&problem)?;
    }

    #[test]
    fn as_cheap_where_stock_is_scarce(problem in problems(true, true)) {
        agrees(&problem)?;
    }
}
