//! Laws that hold for any day: nothing is lost, nothing is invented, nothing is too small.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use demand::{Day, Extent, From, Outcome, Panel, Plan, Spot, Work};
use measure::{Length, Size};
use proptest::prelude::*;
use sizing::{Sizes, Takes};
use trade::Job;

use crate::bench::{sized, tried};
use crate::naive::plans;

static SHOP: LazyLock<Vec<(Job, Sizes)>> =
    LazyLock::new(|| demo::JOBS.iter().map(|job| sized(job.toml)).collect());

/// Some jobs of the shop and some habits.
fn habits() -> impl Strategy<Value = (u32, Vec<(&'static str, &'static str)>, bool)> {
    let pick = |id: &'static str, words: &'static [&'static str]| {
        proptest::sample::select(words).prop_map(move |word| (id, word))
    };
    let changes = (
        pick("moulding.match", &["stick", "pairs", "run"]),
        pick("moulding.loss", &["allowance", "blade"]),
        pick(
            "cutting.tick",
            &["1/128 in", "1/64 in", "1/32 in", "0.1 mm", "0.5 mm"],
        ),
        pick("board.fallout_edge", &["0", "1/8", "1/2"]),
        pick("board.kerf", &["0", "1/16"]),
        pick("board.edge_trim", &["0", "1/4"]),
        pick("spacer.corners", &["square", "mitred"]),
        pick("fillet.corners", &["square", "mitred"]),
    );
    let changes = changes.prop_map(|(a, b, c, d, e, f, g, h)| vec![a, b, c, d, e, f, g, h]);
    (any::<u32>(), changes, any::<bool>())
}

fn some(mask: u32) -> Vec<(Job, Sizes)> {
    let chosen = SHOP.iter().enumerate();
    chosen
        .filter(|(i, _)| mask & (1 << (i % 32)) != 0)
        .map(|(_, piece)| piece.clone())
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn any_day_can_be_planned_and_taken_back((mask, changes, reuse) in habits()) {
        let pieces = some(mask);
        let day = tried(&pieces, "", &changes).unwrap();
        every_line_of_the_bill_is_there(&day, &pieces);
        counts_are_never_too_small(&day);
        fallouts_are_smaller_than_their_windows(&day, &pieces);
        let plans = plans(&day, reuse);
        let outcome = day.settle(&plans).unwrap();
        every_part_is_cut_once(&day, &outcome);
        the_account_is_that_of_the_stock_taken(&day, &outcome);
        no_fallout_is_used_twice(&outcome);
        prop_assert_eq!(day.settle(&plans), Ok(outcome));
    }

    #[test]
    fn a_plan_that_loses_a_piece_is_refused(
        (mask, changes, reuse) in habits(),
        which in any::<proptest::sample::Index>(),
    ) {
        let day = tried(&some(mask | 1), "", &changes).unwrap();
        let mut plans = plans(&day, reuse);
        let place = which.index(plans.len());
        match &mut plans[place] {
            Plan::Lengths(plan) => assert!(plan.layouts[0].pieces.pop().is_some()),
            Plan::Sheets(plan) => assert!(plan.layouts[0].pieces.pop().is_some()),
        }
        prop_assert!(day.settle(&plans).is_err());
    }
}

/// Sheets: as many as the bill says. Strips: all strips of a part reach round what they frame, and
/// with a cut each and the end trim take no more than the bill's length.
fn every_line_of_the_bill_is_there(day: &Day, pieces: &[(Job, Sizes)]) {
    let mut sheets: BTreeMap<(usize, String), usize> = BTreeMap::new();
    let mut strips: BTreeMap<(usize, String), Length> = BTreeMap::new();
    for batch in &day.batches {
        match &batch.work {
            Work::Sheets { parts, .. } => {
                for panel in parts {
                    *sheets.entry((panel.job, panel.part.clone())).or_default() +=
                        panel.copies.len();
                }
            }
            Work::Lengths { parts, .. } => {
                for rails in parts {
                    let long: Length = rails.copies.iter().flatten().map(|s| s.length).sum();
                    *strips.entry((rails.job, rails.part.clone())).or_default() += long;
                }
            }
        }
    }
    for (job, (_, sizes)) in pieces.iter().enumerate() {
        for line in &sizes.bill {
            let key = (job, line.part.clone());
            let named =
                |part: &String| *part == line.part || part.starts_with(&format!("{}, ", line.part));
            let unplanned = day
                .unplanned
                .iter()
                .any(|u| u.job == job && u.part == line.part);
            match &line.takes {
                _ if unplanned => {}
                Takes::Sheet { .. } => {
                    let count = usize::try_from(line.count).unwrap();
                    assert_eq!(sheets.get(&key), Some(&count), "{key:?}");
                }
                Takes::Strip { length } => {
                    let found = strips
                        .iter()
                        .filter(|((j, part), _)| *j == job && named(part));
                    let found: Vec<Length> = found.map(|(_, long)| *long).collect();
                    assert!(!found.is_empty(), "{key:?}");
                    assert!(
                        found.iter().all(|found| found <= length),
                        "{key:?} {found:?} {length}"
                    );
                }
            }
        }
    }
}

/// What is counted is at least the exact size, and less than a step more.
fn counts_are_never_too_small(day: &Day) {
    let step = day.tick.step();
    let holds = |ticks: u64, exact: Length| {
        let counted = day.tick.length(ticks);
        assert!(
            counted >= exact && counted < exact + step,
            "{counted} for {exact}"
        );
    };
    for batch in &day.batches {
        match &batch.work {
            Work::Sheets { problem, parts } => {
                for (piece, panel) in problem.pieces.iter().zip(parts) {
                    holds(piece.width, panel.size.width);
                    holds(piece.height, panel.size.height);
                    assert_eq!(piece.count, Some(panel.copies.len() as u64));
                }
            }
            Work::Lengths { problem, parts } => {
                for (piece, rails) in problem.pieces.iter().zip(parts) {
                    assert_eq!(piece.count, Some(rails.copies.len() as u64));
                    for copy in &rails.copies {
                        let cuts = problem.kerf * (copy.len() as u64 - 1);
                        let each = (piece.length - cuts) / copy.len() as u64;
                        assert_eq!(each * copy.len() as u64 + cuts, piece.length);
                        for strip in copy {
                            holds(each, strip.length);
                        }
                    }
                }
            }
        }
    }
}

/// A fallout fits through the window it dropped from, at face and foot, and is less than its board.
fn fallouts_are_smaller_than_their_windows(day: &Day, pieces: &[(Job, Sizes)]) {
    let check = |panel: &Panel, fall: &Size| {
        assert!(fall.width < panel.size.width && fall.height < panel.size.height);
        let sizes = &pieces[panel.job].1;
        let through = sizes
            .mats
            .iter()
            .flat_map(|mat| &mat.windows)
            .any(|window| fall.fits_in(window.face.size()) && fall.fits_in(window.foot.size()));
        let hollow = sizes.sink.as_ref().map(|sink| sink.hollow.size());
        assert!(through || hollow.is_some_and(|hollow| fall.fits_in(hollow)));
    };
    for batch in &day.batches {
        if let Work::Sheets { problem, parts } = &batch.work {
            for (piece, panel) in problem.pieces.iter().zip(parts) {
                panel.falls.iter().for_each(|fall| check(panel, fall));
                if let (Some((w, h)), Some(fall)) = (piece.window, panel.falls.first()) {
                    assert!(day.tick.length(w) <= fall.width && day.tick.length(h) <= fall.height);
                    assert!(w < piece.width && h < piece.height);
                }
            }
        }
    }
}

fn every_part_is_cut_once(day: &Day, outcome: &Outcome) {
    let mut wanted: BTreeMap<usize, usize> = BTreeMap::new();
    for batch in &day.batches {
        match &batch.work {
            Work::Lengths { parts, .. } => {
                for rails in parts {
                    let strips: usize = rails.copies.iter().map(Vec::len).sum();
                    *wanted.entry(rails.job).or_default() += strips;
                }
            }
            Work::Sheets { parts, .. } => {
                for panel in parts {
                    *wanted.entry(panel.job).or_default() += panel.copies.len();
                }
            }
        }
    }
    for (job, parts) in outcome.jobs.iter().enumerate() {
        assert_eq!(parts.parts.len(), wanted.get(&job).copied().unwrap_or(0));
        let mut named: Vec<(usize, &str)> = parts
            .parts
            .iter()
            .map(|(s, t, p)| (*s, outcome.settled[*s].taken[*t].parts[*p].part.as_str()))
            .collect();
        let all = named.len();
        named.sort_unstable();
        named.dedup();
        assert_eq!(named.len(), all, "no part is named twice");
    }
}

/// The stock side of the account, summed once more from what was taken.
fn the_account_is_that_of_the_stock_taken(day: &Day, outcome: &Outcome) {
    for (batch, settled) in day.batches.iter().zip(&outcome.settled) {
        let taken: i128 = settled
            .taken
            .iter()
            .map(|taken| match taken.extent {
                Extent::Stick(length) => i128::from(length.quanta()),
                Extent::Sheet(size) => size.area().square_quanta(),
            })
            .sum();
        let account = settled.account;
        assert_eq!(
            (account.stock, account.parts()),
            (taken, taken),
            "{}",
            batch.ware
        );
        let each = [
            account.pieces,
            account.cuts,
            account.trim,
            account.remnants,
            account.waste,
        ];
        assert!(each.iter().all(|amount| *amount >= 0) && account.rounding >= 0);
        let bought: u64 = settled.used.iter().map(|used| used.count).sum();
        let whole = settled
            .taken
            .iter()
            .filter(|t| matches!(t.from, From::Source(_)));
        assert_eq!(u64::try_from(whole.count()), Ok(bought));
    }
}

fn no_fallout_is_used_twice(outcome: &Outcome) {
    for settled in &outcome.settled {
        let mut drops = Vec::new();
        for taken in &settled.taken {
            if let From::Fallout { taken: from, part } = taken.from {
                assert!(!drops.contains(&(from, part)));
                drops.push((from, part));
                let Spot::On { .. } = settled.taken[from].parts[part].at else {
                    panic!("a fallout drops from a sheet");
                };
            }
        }
    }
}

/// Pieces of one order are told apart by their titles, and those of one title by a number.
#[test]
fn every_job_and_every_piece_has_a_name_of_its_own() {
    let pieces = [sized(demo::JOBS[0].toml), sized(demo::JOBS[0].toml)];
    let day = tried(&pieces, "", &[]).unwrap();
    let names: Vec<&str> = day.jobs.iter().map(|job| job.name.as_str()).collect();
    let title = "2026-411 Harbour at Low Tide";
    assert_eq!(names, [title, &format!("{title} (2)")]);
    for batch in &day.batches {
        let mut names: Vec<&str> = match &batch.work {
            Work::Lengths { problem, .. } => {
                problem.pieces.iter().map(|p| p.name.as_str()).collect()
            }
            Work::Sheets { problem, .. } => {
                problem.pieces.iter().map(|p| p.name.as_str()).collect()
            }
        };
        let all = names.len();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), all);
    }
}
