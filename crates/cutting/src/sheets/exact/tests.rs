use super::{Proof, Search};
use crate::chance::Chance;
use crate::sheets::{Axis, Block, Draft, Kind, Part, Reduced, Stages, Stock};
use crate::{Goal, Pace, Unwatched};
use std::collections::{BTreeMap, BTreeSet};

/// Tries every cut there is; shares nothing with the search but the problem.
struct Brute<'a> {
    reduced: &'a Reduced,
    known: BTreeMap<(u32, u32, Vec<usize>, u32, u8), bool>,
}

impl Brute<'_> {
    fn can(&mut self, size: (u32, u32), parts: &[usize], used: u32, last: Option<Axis>) -> bool {
        let key = (
            size.0,
            size.1,
            parts.to_vec(),
            used,
            last.map_or(0, |axis| axis as u8 + 1),
        );
        if let Some(&known) = self.known.get(&key) {
            return known;
        }
        let answer = self.tried(size, parts, used, last);
        self.known.insert(key, answer);
        answer
    }

    fn tried(&mut self, size: (u32, u32), parts: &[usize], used: u32, last: Option<Axis>) -> bool {
        if parts.is_empty() {
            return true;
        }
        if let [part] = parts {
            let part = &self.reduced.parts[*part];
            if size == (part.width, part.height) || part.turn && size == (part.height, part.width) {
                return true;
            }
        }
        [Axis::X, Axis::Y]
            .into_iter()
            .any(|axis| self.cut(size, parts, used, last, axis))
    }

    fn cut(
        &mut self,
        size: (u32, u32),
        parts: &[usize],
        used: u32,
        last: Option<Axis>,
        axis: Axis,
    ) -> bool {
        let rules = self.reduced.stages;
        let stage = stage(rules, axis, used, last);
        if stage > rules.most && !(rules.final_trim && stage == rules.most + 1 && parts.len() == 1)
        {
            return false;
        }
        let strip = self.reduced.least_strip.max(1);
        let along = if axis == Axis::X { size.0 } else { size.1 };
        for at in strip..=along.saturating_sub(strip) {
            for choice in 0..1_u32 << parts.len() {
                let chosen = |bit: u32| -> Vec<usize> {
                    let held = |at: &usize| choice >> at & 1 == bit;
                    (0..parts.len()).filter(held).map(|at| parts[at]).collect()
                };
                let (below, beyond) = if axis == Axis::X {
                    ((at, size.1), (along - at, size.1))
                } else {
                    ((size.0, at), (size.0, along - at))
                };
                if self.can(below, &chosen(0), stage, Some(axis))
                    && self.can(beyond, &chosen(1), stage, Some(axis))
                {
                    return true;
                }
            }
        }
        false
    }

    /// The least cost; `None` when the stock does not reach.
    fn least(&mut self, parts: &[usize], left: &mut Vec<u64>) -> Option<u64> {
        if parts.is_empty() {
            return Some(0);
        }
        let mut best = None;
        for choice in (1..1_u32 << parts.len()).step_by(2) {
            let chosen = |bit: u32| -> Vec<usize> {
                let held = |at: &usize| choice >> at & 1 == bit;
                (0..parts.len()).filter(held).map(|at| parts[at]).collect()
            };
            for stock in 0..left.len() {
                let sheet = &self.reduced.stock[stock];
                let (size, cost) = ((sheet.width, sheet.height), sheet.cost);
                if left[stock] == 0 || !self.can(size, &chosen(1), 0, None) {
                    continue;
                }
                left[stock] -= 1;
                if let Some(rest) = self.least(&chosen(0), left) {
                    let sum = rest + cost;
                    best = Some(best.map_or(sum, |best: u64| best.min(sum)));
                }
                left[stock] += 1;
            }
        }
        best
    }
}

fn stage(rules: Stages, axis: Axis, used: u32, last: Option<Axis>) -> u32 {
    match last {
        None => 1 + u32::from(rules.first.is_some_and(|first| first != axis)),
        Some(last) => used + u32::from(last != axis),
    }
}

fn problem(seed: u64) -> Reduced {
    let mut chance = Chance::new(seed);
    let least_strip = if chance.one_in(2) {
        some(&mut chance, 2, 3)
    } else {
        0
    };
    let most = if chance.one_in(2) {
        u32::MAX
    } else {
        some(&mut chance, 1, 3)
    };
    let first = [None, Some(Axis::X), Some(Axis::Y)][chance.below(3)];
    let limited = most < u32::MAX;
    let mut reduced = Reduced {
        goal: Goal::Cost,
        stages: Stages {
            most,
            first: first.filter(|_| limited),
            final_trim: limited && chance.one_in(2),
        },
        least_strip,
        stock: Vec::new(),
        parts: Vec::new(),
    };
    for _ in 0..some(&mut chance, 1, 3) {
        let count = if chance.one_in(3) {
            1 + chance.below(2) as u64
        } else {
            u64::MAX
        };
        reduced.stock.push(Stock {
            width: some(&mut chance, 3, 7),
            height: some(&mut chance, 3, 7),
            cost: u64::from(some(&mut chance, 1, 9)),
            count,
            window_of: None,
            remnant: false,
        });
    }
    add_parts(&mut reduced, &mut chance);
    reduced
}

fn some(chance: &mut Chance, from: usize, to: usize) -> u32 {
    u32::try_from(from + chance.below(to + 1 - from)).expect("small")
}

/// Five or six copies, some with windows.
fn add_parts(reduced: &mut Reduced, chance: &mut Chance) {
    let mut copies = 0;
    while copies < 5 {
        let (width, height) = (some(chance, 1, 5), some(chance, 1, 5));
        let count = 1 + chance.below(2) as u64;
        copies += count;
        let mut window = None;
        if chance.one_in(4) && width > 2 && height > 2 {
            window = Some(reduced.stock.len());
            reduced.stock.push(Stock {
                width: width - 1,
                height: height - 1,
                cost: 0,
                count,
                window_of: Some(reduced.parts.len()),
                remnant: true,
            });
        }
        reduced.parts.push(Part {
            width,
            height,
            count,
            value: 0,
            turn: width != height && chance.one_in(2),
            window,
        });
    }
}

/// Checks sizes, stages, strips and counts of a draft.
fn check_draft(reduced: &Reduced, draft: &Draft) {
    let mut cut = vec![0; reduced.parts.len()];
    let mut used = vec![0; reduced.stock.len()];
    for sheet in &draft.sheets {
        let stock = &reduced.stock[sheet.stock];
        assert_eq!(
            (sheet.block.width, sheet.block.height),
            (stock.width, stock.height)
        );
        used[sheet.stock] += sheet.copies;
        check_block(reduced, &sheet.block, 0, None);
        sheet.block.each_part(&mut |part| cut[part] += sheet.copies);
    }
    let wanted: Vec<u64> = reduced.parts.iter().map(|part| part.count).collect();
    assert_eq!(cut, wanted);
    for (used, stock) in used.iter().zip(&reduced.stock) {
        assert!(*used <= stock.count);
    }
}

fn check_block(reduced: &Reduced, block: &Block, used: u32, last: Option<Axis>) {
    match &block.kind {
        Kind::Free => {}
        Kind::Part { part, turned } => {
            let part = &reduced.parts[*part];
            assert!(part.turn || !turned);
            let lies = if *turned {
                (part.height, part.width)
            } else {
                (part.width, part.height)
            };
            assert_eq!((block.width, block.height), lies);
        }
        Kind::Split { axis, blocks } => {
            let rules = reduced.stages;
            let stage = stage(rules, *axis, used, last);
            if stage > rules.most {
                let parts = blocks.iter().filter(|block| block.kind != Kind::Free);
                assert!(rules.final_trim && stage == rules.most + 1 && parts.count() == 1);
            }
            let sum: u32 = blocks.iter().map(|inner| inner.along(*axis)).sum();
            assert_eq!(sum, block.along(*axis));
            for inner in blocks {
                assert_eq!(inner.along(axis.other()), block.along(axis.other()));
                assert!(inner.along(*axis) >= reduced.least_strip.max(1));
                check_block(reduced, inner, stage, Some(*axis));
            }
        }
    }
}

fn check_against_brute_force(seed: u64) -> Option<u64> {
    let reduced = problem(seed);
    let mut brute = Brute {
        reduced: &reduced,
        known: BTreeMap::new(),
    };
    let mut parts = Vec::new();
    for (number, part) in reduced.parts.iter().enumerate() {
        parts.extend((0..part.count).map(|_| number));
    }
    let mut left = reduced.stock.iter().map(|stock| stock.count).collect();
    let least = brute.least(&parts, &mut left);
    let quick = crate::sheets::bound::quick(&reduced, &mut Pace::new(&Unwatched, None));
    let mut pace = Pace::new(&Unwatched, None);
    let proof = Search::new(&reduced).step(&mut pace, u64::MAX);
    let Some(least) = least else {
        assert_eq!(proof, Proof::Impossible, "seed {seed} {reduced:?}");
        return None;
    };
    assert!(
        quick <= least,
        "seed {seed}: quick bound {quick} above {least}"
    );
    let Proof::Optimal { draft: Some(draft) } = proof else {
        panic!("seed {seed}: {proof:?} where {least} is best: {reduced:?}");
    };
    check_draft(&reduced, &draft);
    assert_eq!(reduced.cost(&draft), least, "seed {seed}: {reduced:?}");
    // The best cost known is confirmed, and found from one above it, however short the steps.
    let proof = Search::new(&reduced).step(&mut Pace::new(&Unwatched, None), least);
    assert_eq!(proof, Proof::Optimal { draft: None }, "seed {seed}");
    let mut search = Search::new(&reduced);
    loop {
        match search.step(&mut Pace::new(&Unwatched, Some(40)), least + 1) {
            Proof::Open { bound } => assert!(bound <= least, "seed {seed}: bound {bound}"),
            Proof::Optimal { draft: Some(draft) } => {
                assert_eq!(reduced.cost(&draft), least, "seed {seed}");
                return Some(least);
            }
            other => panic!("seed {seed}: {other:?}"),
        }
    }
}

/// What telling whether the groups of a plan truly fit takes is counted, too.
#[test]
fn the_strict_lists_are_counted_as_steps() {
    let mut told = 0;
    for seed in 1..=40 {
        let reduced = problem(seed);
        let mut search = Search::new(&reduced);
        let mut pace = Pace::new(&Unwatched, None);
        let proof = search.step(&mut pace, u64::MAX);
        assert_eq!(search.strict.steps(), 0, "seed {seed}");
        told += u32::from(matches!(proof, Proof::Optimal { .. }));
    }
    assert!(told > 10, "only {told} plans");
}

/// Each kind of stock that is limited is a row of the linear program: very many are left alone.
#[test]
fn very_many_remnants_are_left_to_others() {
    let mut reduced = problem(1);
    let limited = |width| Stock {
        width,
        height: 9,
        cost: 1,
        count: 1,
        window_of: None,
        remnant: true,
    };
    reduced.stock = (10..2_000).map(limited).collect();
    let mut search = Search::new(&reduced);
    let proof = search.step(&mut Pace::new(&Unwatched, None), u64::MAX);
    assert_eq!(proof, Proof::Stuck { bound: 0 });
}

#[test]
fn finds_what_trying_everything_finds() {
    let costs: BTreeSet<Option<u64>> = (1..=150).map(check_against_brute_force).collect();
    // The problems differ, and some cannot be solved.
    assert!(costs.len() > 10 && costs.contains(&None));
}
