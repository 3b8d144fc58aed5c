//! Against brute force on tiny sheets, known optima, and each other.

use std::collections::BTreeMap;

use proptest::prelude::*;

use super::super::{Axis, Block, Draft, Kind, Part, Reduced, Stages, Stock};
use super::certify::{Prices, least_cost, totals};
use super::points;
use super::shape::lawful;
use super::{Columns, coarser, most_value};
use crate::{Goal, Pace, Unwatched};

fn part(width: u32, height: u32, count: u64, value: u64, turn: bool) -> Part {
    Part {
        width,
        height,
        count,
        value,
        turn,
        window: None,
    }
}

fn sheet(width: u32, height: u32, cost: u64, count: u64) -> Stock {
    Stock {
        width,
        height,
        cost,
        count,
        window_of: None,
        remnant: false,
    }
}

const ANY: Stages = Stages {
    most: u32::MAX,
    first: None,
    final_trim: true,
};

fn problem(goal: Goal, stages: Stages, stock: Vec<Stock>, parts: Vec<Part>) -> Reduced {
    Reduced {
        goal,
        stages,
        least_strip: 0,
        stock,
        parts,
    }
}

fn pace() -> Pace<'static> {
    Pace::new(&Unwatched, None)
}

/// Every block is as large as what is in it, and no part is held too often.
fn check(reduced: &Reduced, draft: &Draft, exactly: bool) {
    let mut used = vec![0; reduced.parts.len()];
    let mut sheets = vec![0; reduced.stock.len()];
    for sheet in &draft.sheets {
        let stock = &reduced.stock[sheet.stock];
        assert_eq!(
            (sheet.block.width, sheet.block.height),
            (stock.width, stock.height)
        );
        sheets[sheet.stock] += sheet.copies;
        sheet
            .block
            .each_part(&mut |part| used[part] += sheet.copies);
        whole(reduced, &sheet.block);
        assert!(lawful(&sheet.block, reduced));
    }
    for (used, part) in used.iter().zip(&reduced.parts) {
        assert!(*used <= part.count && (!exactly || *used == part.count));
    }
    for (used, stock) in sheets.iter().zip(&reduced.stock) {
        assert!(*used <= stock.count);
    }
}

fn whole(reduced: &Reduced, block: &Block) {
    match &block.kind {
        Kind::Free => {}
        Kind::Part { part, turned } => {
            let part = &reduced.parts[*part];
            let size = if *turned {
                assert!(part.turn);
                (part.height, part.width)
            } else {
                (part.width, part.height)
            };
            assert_eq!(size, (block.width, block.height));
        }
        Kind::Split { axis, blocks } => {
            let sum: u32 = blocks.iter().map(|inner| inner.along(*axis)).sum();
            assert_eq!(sum, block.along(*axis));
            for inner in blocks {
                assert!(inner.along(*axis) > 0);
                assert_eq!(inner.along(axis.other()), block.along(axis.other()));
                whole(reduced, inner);
            }
        }
    }
}

type Asked = (u32, u32, Vec<u64>, Option<(Axis, u32)>);

/// What a block is worth with counts: every cut at every place, every division of the parts.
struct Brute<'a> {
    parts: &'a [Part],
    known: BTreeMap<Asked, u64>,
}

impl Brute<'_> {
    /// `next`: the axis of the next cuts and how many stages are left; `None`: no limit.
    fn most(&mut self, width: u32, height: u32, left: &[u64], next: Option<(Axis, u32)>) -> u64 {
        let asked = (width, height, left.to_vec(), next);
        if let Some(&known) = self.known.get(&asked) {
            return known;
        }
        let mut best = 0;
        for (part, &left) in self.parts.iter().zip(left) {
            let fits = part.width <= width && part.height <= height
                || part.turn && part.height <= width && part.width <= height;
            if left > 0 && fits {
                best = best.max(part.value);
            }
        }
        for axis in [Axis::X, Axis::Y] {
            let deeper = match next {
                None => None,
                Some((wanted, stages)) if wanted == axis && stages > 0 => {
                    Some((axis.other(), stages - 1))
                }
                Some(_) => continue,
            };
            if deeper.is_some() {
                best = best.max(self.most(width, height, left, deeper));
            }
            best = best.max(self.cut(axis, (width, height), left, next, deeper));
        }
        self.known.insert(asked, best);
        best
    }

    fn cut(
        &mut self,
        axis: Axis,
        (width, height): (u32, u32),
        left: &[u64],
        next: Option<(Axis, u32)>,
        deeper: Option<(Axis, u32)>,
    ) -> u64 {
        let room = if axis == Axis::X { width } else { height };
        let mut best = 0;
        for at in 1..room {
            let sized = |size| match axis {
                Axis::X => (size, height),
                Axis::Y => (width, size),
            };
            for (one, other) in divisions(left) {
                let (w, h) = sized(at);
                let first = self.most(w, h, &one, deeper);
                // The rest may be cut along the same axis again, in the same stage.
                let (w, h) = sized(room - at);
                best = best.max(first + self.most(w, h, &other, next));
            }
        }
        best
    }
}

fn brute(width: u32, height: u32, parts: &[Part], next: Option<(Axis, u32)>) -> u64 {
    let left: Vec<u64> = parts.iter().map(|part| part.count).collect();
    let known = BTreeMap::new();
    Brute { parts, known }.most(width, height, &left, next)
}

fn divisions(left: &[u64]) -> Vec<(Vec<u64>, Vec<u64>)> {
    let mut all = Vec::new();
    let mut one = vec![0; left.len()];
    loop {
        let other = left.iter().zip(&one).map(|(all, one)| all - one).collect();
        all.push((one.clone(), other));
        let Some(at) = (0..left.len()).find(|&at| one[at] < left[at]) else {
            return all;
        };
        one[at] += 1;
        one[..at].fill(0);
    }
}

#[test]
fn points_of_the_book() {
    // Sizes 3 and 5 up to 10: sums 0 3 5 6 8 9 10.
    let normal = points::normal(&[(3, 9), (5, 9)], 10, 99).expect("few points");
    assert_eq!(normal, [0, 3, 5, 6, 8, 9, 10]);
    // 10 − p rounded down to a sum: 10 6 5 3 0 (for 10, 3, 5, 6 and 8, …).
    assert_eq!(points::raster(&normal, 10), [0, 3, 5, 6, 10]);
    let once = points::normal(&[(3, 1), (5, 1)], 10, 99).expect("few points");
    assert_eq!(once, [0, 3, 5, 8]);
    assert_eq!(points::normal(&[(1, u64::MAX)], 100, 50), None);
    let far = points::normal(&[(1 << 30, 2)], u32::MAX, 9).expect("few points");
    assert_eq!(far, [0, 1 << 30, 1 << 31, 3 << 30]);
}

/// The instance "cgcut1" of Christofides and Whitlock, "An algorithm for two-dimensional cutting
/// problems", 1977; its optimum is quoted as 244 in later work (from memory).
#[test]
fn the_first_constrained_instance_is_solved() {
    let parts = [
        (8, 4, 2, 66),
        (3, 7, 1, 35),
        (8, 2, 3, 24),
        (3, 4, 5, 17),
        (3, 3, 2, 11),
        (3, 2, 2, 8),
        (2, 1, 1, 2),
    ];
    let parts = parts.map(|(w, h, count, value)| part(w, h, count, value, false));
    let reduced = problem(Goal::Value, ANY, vec![sheet(15, 10, 1, 1)], parts.to_vec());
    let (draft, bound, proven) = most_value(&reduced, &mut pace(), None);
    let draft = draft.expect("a layout");
    check(&reduced, &draft, false);
    assert_eq!((reduced.value(&draft), bound, proven), (244, 244, true));
}

/// Arithmetic: of 3 × 2 on 7 × 7, unturned 2 · 3 = 6 go in. Turned ones beside them make 7: 3 wide
/// for three, 4 wide for four; eight would leave a hole in the middle, which no straight cut opens.
#[test]
fn equal_parts_turned_fill_a_sheet_better() {
    for (turn, most) in [(false, 6), (true, 7)] {
        let parts = vec![part(3, 2, u64::MAX, 1, turn)];
        let reduced = problem(Goal::Value, ANY, vec![sheet(7, 7, 1, 1)], parts);
        let (draft, bound, proven) = most_value(&reduced, &mut pace(), None);
        let draft = draft.expect("a layout");
        check(&reduced, &draft, false);
        assert_eq!((reduced.value(&draft), bound, proven), (most, most, true));
    }
}

#[test]
fn sums_of_costs_are_reached_within_counts() {
    let stock = vec![sheet(9, 9, 70, u64::MAX), sheet(9, 9, 30, 1)];
    let reduced = problem(Goal::Cost, ANY, stock, vec![part(9, 9, 1, 0, false)]);
    let totals = totals(&reduced);
    let next = |bound| totals.from(bound);
    assert_eq!(
        [next(0), next(1), next(31), next(71), next(101)],
        [0, 30, 70, 100, 140]
    );
}

#[test]
fn prices_prove_no_more_than_they_can() {
    // One sheet holds four parts and costs 10; 9 parts at a price of 3 each are too dear by 12/10.
    let reduced = problem(
        Goal::Cost,
        ANY,
        vec![sheet(4, 4, 10, u64::MAX)],
        vec![part(2, 2, 9, 0, false)],
    );
    let prices = |each| Prices {
        each: vec![each],
        num: 1,
        den: 1,
    };
    assert_eq!(least_cost(&reduced, &prices(3), &[12]), 23);
    assert_eq!(least_cost(&reduced, &prices(2), &[8]), 18);
    // Two cheap sheets are held: what they are worth beyond their cost is taken off twice.
    let stock = vec![sheet(4, 4, 10, u64::MAX), sheet(4, 4, 4, 2)];
    let reduced = problem(Goal::Cost, ANY, stock, vec![part(2, 2, 12, 0, false)]);
    assert_eq!(least_cost(&reduced, &prices(2), &[8, 8]), 24 - 2 * 4);
}

/// Sums beyond 128 bits prove nothing, rather than something wrong.
#[test]
fn prices_beyond_reckoning_prove_nothing() {
    let stock = vec![sheet(4, 4, 1 << 40, u64::MAX)];
    let least = |count, num, den| {
        let parts = vec![part(2, 2, count, 0, false)];
        let reduced = problem(Goal::Cost, ANY, stock.clone(), parts);
        let each = vec![1 << 40];
        least_cost(&reduced, &Prices { each, num, den }, &[4 << 40])
    };
    assert_eq!(least(8, 1, 1), 2 << 40);
    // Within a step of what can be told, and beyond it.
    assert_eq!(least(4 << 23, 1, 1), 1 << 63);
    assert_eq!(least(4 << 24, 1, 1), 0);
    // A unit of cost that is worth nearly nothing, and one that is worth nearly everything.
    assert_eq!(
        (least(8, u128::MAX / 2, 1), least(8, 1, u128::MAX / 2)),
        (0, 0)
    );
}

/// A list that a linear program over layouts is no help for is left to the other searches.
#[test]
fn very_many_sizes_are_left_alone() {
    let stock = (0..600).map(|more| sheet(100 + more, 90, 1, 1)).collect();
    let reduced = problem(Goal::Fewest, ANY, stock, vec![part(5, 5, 9, 0, false)]);
    let progress = Columns::new(&reduced, 1).step(&mut pace(), None);
    assert_eq!((progress.bound, progress.done), (0, true));
}

/// 4 parts a sheet: 41 parts need 11 sheets, and the bound says so.
#[test]
fn many_equal_parts_are_proven() {
    let parts = vec![part(5, 5, 41, 0, false)];
    let reduced = problem(Goal::Fewest, ANY, vec![sheet(10, 10, 1, u64::MAX)], parts);
    let mut columns = Columns::new(&reduced, 1);
    let progress = columns.step(&mut pace(), None);
    assert_eq!((progress.bound, progress.done), (11, true));
    let draft = progress.draft.expect("a plan");
    check(&reduced, &draft, true);
    assert_eq!(reduced.cost(&draft), 11);
}

#[test]
fn an_offered_plan_is_known_and_a_short_pace_does_no_harm() {
    let parts = vec![part(5, 4, 7, 0, true), part(3, 3, 9, 0, false)];
    let reduced = problem(Goal::Fewest, ANY, vec![sheet(10, 10, 1, u64::MAX)], parts);
    let mut columns = Columns::new(&reduced, 1);
    let mut short = Pace::new(&Unwatched, Some(50));
    for _ in 0..20 {
        let progress = columns.step(&mut short, None);
        assert!(progress.bound <= 4);
    }
    let mut other = Columns::new(&reduced, 2);
    let draft = plan(&mut other, 200).1.expect("a plan");
    columns.offer(&draft);
    let (bound, better) = plan(&mut columns, 50);
    assert!(bound <= reduced.cost(&draft));
    assert!(better.is_none_or(|better| reduced.cost(&better) < reduced.cost(&draft)));
}

/// Sizes and areas at the edge of what is allowed neither overflow nor run on.
#[test]
fn sizes_at_the_limit_are_reckoned() {
    let long = 1 << 31;
    let parts = vec![
        part(long / 3, long / 2, 5, u64::MAX >> 8, true),
        part(7, long - 9, 3, 1, true),
        part(long, 1, 1_000_000, 1 << 50, false),
    ];
    let reduced = problem(
        Goal::Value,
        ANY,
        vec![sheet(long, long, 1 << 40, 1)],
        parts.clone(),
    );
    let mut short = Pace::new(&Unwatched, Some(30_000_000));
    let (draft, bound, _) = most_value(&reduced, &mut short, None);
    if let Some(draft) = draft {
        check(&reduced, &draft, false);
        assert!(reduced.value(&draft) <= bound);
    }
    let reduced = problem(
        Goal::Cost,
        ANY,
        vec![sheet(long, long, 1 << 40, u64::MAX)],
        parts,
    );
    let mut columns = Columns::new(&reduced, 1);
    let mut short = Pace::new(&Unwatched, Some(30_000_000));
    let progress = columns.step(&mut short, None);
    if let Some(draft) = progress.draft {
        check(&reduced, &draft, true);
        assert!(progress.bound <= reduced.cost(&draft));
    }
}

fn plan(columns: &mut Columns<'_>, steps: usize) -> (u64, Option<Draft>) {
    let mut best = None;
    let mut bound = 0;
    for _ in 0..steps {
        let progress = columns.step(&mut pace(), None);
        assert!(progress.bound >= bound, "a bound was lowered");
        bound = progress.bound;
        best = progress.draft.or(best);
        if progress.done {
            break;
        }
    }
    (bound, best)
}

fn few_parts() -> impl Strategy<Value = Vec<Part>> {
    let one = (1_u32..=5, 1_u32..=5, 1_u64..=2, 1_u64..=9, any::<bool>());
    let parts = prop::collection::vec(one, 1..=2);
    parts.prop_map(|all| {
        let each = |(w, h, count, value, turn)| part(w, h, count, value, turn && w != h);
        all.into_iter().map(each).collect()
    })
}

fn several_parts() -> impl Strategy<Value = Vec<Part>> {
    let one = (2_u32..=14, 2_u32..=14, 1_u64..=6, any::<bool>());
    prop::collection::vec(one, 1..=6).prop_map(|all| {
        let each = |(w, h, count, turn)| part(w, h, count, 0, turn && w != h);
        all.into_iter().map(each).collect()
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn the_most_value_is_that_of_brute_force(
        parts in few_parts(), width in 2_u32..=5, height in 2_u32..=5,
    ) {
        let reduced = problem(Goal::Value, ANY, vec![sheet(width, height, 1, 1)], parts.clone());
        let most = brute(width, height, &parts, None);
        let (draft, bound, proven) = most_value(&reduced, &mut pace(), None);
        prop_assert!(proven);
        prop_assert_eq!(bound, most);
        if let Some(draft) = draft {
            check(&reduced, &draft, false);
            prop_assert_eq!(reduced.value(&draft), most);
        }
    }

    #[test]
    fn limited_stages_are_bounded_by_brute_force(
        parts in few_parts(), width in 2_u32..=5, height in 2_u32..=5,
        stages in 1_u32..=3, level in any::<bool>(),
    ) {
        let first = if level { Axis::Y } else { Axis::X };
        let stages_of = Stages { most: stages, first: Some(first), final_trim: true };
        let reduced = problem(Goal::Value, stages_of, vec![sheet(width, height, 1, 1)], parts.clone());
        // Brute force cuts parts out of any block, as if two more cuts trimmed them: that is one
        // cut more than is allowed, and no less than what the stages allow.
        let above = brute(width, height, &parts, Some((first, stages)));
        let (draft, bound, proven) = most_value(&reduced, &mut pace(), None);
        let value = draft.as_ref().map_or(0, |draft| reduced.value(draft));
        if let Some(draft) = &draft {
            check(&reduced, draft, false);
        }
        prop_assert!(value <= above && value <= bound);
        prop_assert_eq!(proven, value == bound);
        let least = brute(width, height, &parts, Some((first, stages - 1)));
        prop_assert!(bound >= least.min(above));
    }

    #[test]
    fn a_bound_is_below_every_plan(
        parts in several_parts(), seed in 0_u64..9, few in 1_u64..4, stages in 2_u32..=4,
    ) {
        let most = if stages == 4 { u32::MAX } else { stages };
        let stages = Stages { most, first: None, final_trim: true };
        let stock = vec![sheet(20, 15, 31, u64::MAX), sheet(14, 14, 17, few)];
        let reduced = problem(Goal::Cost, stages, stock, parts);
        let (bound, draft) = plan(&mut Columns::new(&reduced, seed), 60);
        let draft = draft.expect("the stock reaches");
        check(&reduced, &draft, true);
        prop_assert!(bound <= reduced.cost(&draft));
        if let Some(coarse) = coarser(&reduced, 2) {
            prop_assert!(coarse.parts.len() <= 2);
            let (below, _) = plan(&mut Columns::new(&coarse, seed), 30);
            prop_assert!(below <= reduced.cost(&draft));
        }
        let (again, _) = plan(&mut Columns::new(&reduced, seed + 1), 60);
        prop_assert!(again <= reduced.cost(&draft));
        let mut area = 0;
        for part in &reduced.parts {
            area += u64::from(part.width) * u64::from(part.height) * part.count;
        }
        // 17 ÷ 196 is the least cost of an area: no plan is cheaper.
        prop_assert!(reduced.cost(&draft) * 196 >= area * 17);
    }
}
