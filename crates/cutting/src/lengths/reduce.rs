//! From the problem as it is given to the problem as it is searched, and what leads back.

use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};

use super::core::{Core, Draft, ENDLESS, Fill, Item, Kind};
use super::ready::stretches;
use super::{Problem, Together};
use crate::Goal;

/// What is wanted as one: a piece, or a bundle of pieces from one stick.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Want {
    /// Pieces of the problem, longest first; one unless a bundle.
    pub(super) pieces: Vec<usize>,
    pub(super) count: u64,
    /// Which group of one run it belongs to.
    pub(super) flock: Option<usize>,
    pub(super) priority: u32,
    pub(super) due: Option<u32>,
}

impl Want {
    /// Sorts what is cut first to the front.
    pub(super) fn urgency(&self) -> (Reverse<u32>, u32) {
        (Reverse(self.priority), self.due.unwrap_or(u32::MAX))
    }
}

/// Wants merged into items, with the way back.
#[derive(Clone, Debug)]
pub(super) struct Reduced {
    pub(super) core: Core,
    /// Per item: the wants in it and how many of each, most urgent first.
    pub(super) origin: Vec<Vec<(usize, u64)>>,
}

impl Reduced {
    /// A draft for part of another core's demands, in terms of this core, whose demands are just
    /// that part. `None` where this core lacks something that the draft uses.
    pub(super) fn carried(&self, other: &Self, draft: &Draft) -> Option<Draft> {
        let first = |origin: &[(usize, u64)], want: usize| origin.iter().any(|of| of.0 == want);
        let item = |item: usize| {
            let wants = &other.origin[item];
            let same = |own: &Vec<(usize, u64)>| wants.iter().any(|of| first(own, of.0));
            self.origin.iter().position(same)
        };
        let kind = |kind: usize| {
            let kind = &other.core.kinds[kind];
            let of = |run: usize| {
                let same = |own: &Kind| (own.stock, own.run) == (kind.stock, run);
                self.core.kinds.iter().position(same)
            };
            of(kind.run).or_else(|| of(NO_RUN))
        };
        let mut carried = Draft::default();
        for (fill, copies) in &draft.fills {
            let mut parts = Vec::new();
            for &(old, times) in &fill.parts {
                parts.push((item(old)?, times));
            }
            parts.sort_unstable();
            let fill = Fill {
                kind: kind(fill.kind)?,
                parts,
            };
            carried.push(&self.core, fill, *copies);
        }
        Some(carried)
    }
}

/// Everything wanted; a bundle of a group from one stick is one want.
pub(super) fn wants(problem: &Problem) -> Vec<Want> {
    let mut wants: Vec<Want> = Vec::new();
    let mut bundles: BTreeMap<&str, usize> = BTreeMap::new();
    let mut flocks: BTreeMap<&str, usize> = BTreeMap::new();
    for (number, piece) in problem.pieces.iter().enumerate() {
        let count = piece.count.unwrap_or(ENDLESS);
        if count == 0 {
            continue;
        }
        let mut want = Want {
            pieces: vec![number],
            count,
            flock: None,
            priority: piece.priority,
            due: piece.due,
        };
        match &piece.together {
            Some(Together::Stick(group)) if count != ENDLESS => {
                let copies = usize::try_from(count).unwrap_or(usize::MAX);
                want.pieces = vec![number; copies];
                want.count = 1;
                if let Some(&known) = bundles.get(group.as_str()) {
                    let bundle = &mut wants[known];
                    bundle.pieces.extend(want.pieces);
                    bundle.priority = bundle.priority.max(piece.priority);
                    bundle.due = match (bundle.due, piece.due) {
                        (Some(a), Some(b)) => Some(a.min(b)),
                        (a, b) => a.or(b),
                    };
                    continue;
                }
                bundles.insert(group, wants.len());
            }
            Some(Together::Run(group)) => {
                let next = flocks.len();
                want.flock = Some(*flocks.entry(group).or_insert(next));
            }
            _ => {}
        }
        wants.push(want);
    }
    for want in &mut wants {
        let length = |&piece: &usize| (Reverse(problem.pieces[piece].length), piece);
        want.pieces.sort_by_key(length);
    }
    wants
}

/// A run of its own, for a stick that no group may be gathered on.
pub(super) const NO_RUN: usize = usize::MAX;
/// A run without sticks.
pub(super) const NOWHERE: usize = NO_RUN - 1;

/// The stock that can be cut. Runs are numbered from 0; sticks that are a run each are still
/// counted together.
pub(super) fn kinds(problem: &Problem) -> Vec<Kind> {
    let mut named: BTreeMap<Option<&str>, usize> = BTreeMap::new();
    let mut kinds = Vec::new();
    let mut runs = 0;
    // No group needs more than one run.
    let groups = groups_of_a_run(problem);
    for (stock, stick) in problem.stock.iter().enumerate() {
        if stick.count == Some(0) || stretches(stick).is_empty() {
            continue;
        }
        // Sticks of unknown origin do not match: each is a run of its own.
        let own = match (&stick.run, stick.count) {
            (None, Some(count)) => usize::try_from(count).unwrap_or(groups).min(groups),
            _ => 0,
        };
        let known = named.get(&stick.run.as_deref()).copied();
        let shared = stick.run.is_some() || stick.count.is_none();
        let run = known.filter(|_| shared).unwrap_or(runs);
        if run == runs {
            runs += own.max(1);
        }
        if shared {
            named.insert(stick.run.as_deref(), run);
        }
        kinds.push(kind(problem, stock, run, own));
    }
    kinds
}

/// The kinds with the sticks named that serve a group as its run; the others of the same entry are
/// no run at all.
fn parted(kinds: &[Kind], used: &BTreeSet<usize>) -> Vec<Kind> {
    let mut parted = Vec::with_capacity(kinds.len());
    for kind in kinds {
        if kind.shared {
            parted.push(kind.clone());
            continue;
        }
        let mut left = kind.count;
        for &run in used.range(kind.run..kind.run + kind.own) {
            let mut single = kind.clone();
            (single.count, single.run, single.own) = (1, run, 0);
            parted.push(single);
            left -= 1;
        }
        if left > 0 {
            let mut others = kind.clone();
            (others.count, others.run, others.own) = (left, NO_RUN, 0);
            parted.push(others);
        }
    }
    parted
}

fn groups_of_a_run(problem: &Problem) -> usize {
    let group = |piece: &super::Piece| match &piece.together {
        Some(Together::Run(group)) => Some(group.clone()),
        _ => None,
    };
    let groups: BTreeSet<String> = problem.pieces.iter().filter_map(group).collect();
    groups.len()
}

fn kind(problem: &Problem, number: usize, run: usize, own: usize) -> Kind {
    let stick = &problem.stock[number];
    let clear = stretches(stick);
    let lengthened = clear.iter().map(|&(from, to)| to - from + problem.kerf);
    Kind {
        stock: number,
        cost: if problem.goal == Goal::Fewest {
            1
        } else {
            stick.cost
        },
        count: stick.count.unwrap_or(ENDLESS),
        run,
        own,
        shared: stick.run.is_some() || stick.count.is_none(),
        room: lengthened.sum(),
        stretches: clear,
    }
}

/// What makes wants equal: whole length, run, and where flaws may divide a bundle its parts.
type Key = (Reverse<u64>, Option<usize>, Vec<u64>);

/// Merges equal wants. `take` says how many of each want are to be cut; `runs` which run each
/// flock comes from (without it, from anywhere).
pub(super) fn reduce(
    problem: &Problem,
    wants: &[Want],
    kinds: &[Kind],
    take: &[u64],
    runs: Option<&[usize]>,
) -> Reduced {
    let flawed = kinds.iter().any(|kind| !kind.is_clear());
    let mut merged: BTreeMap<Key, Vec<usize>> = BTreeMap::new();
    for (number, want) in wants.iter().enumerate() {
        if take[number] == 0 {
            continue;
        }
        let length = |&piece: &usize| problem.pieces[piece].length;
        let parts: Vec<u64> = want.pieces.iter().map(length).collect();
        let whole = parts.iter().map(|part| part + problem.kerf).sum();
        let run = want.flock.and_then(|flock| Some(runs?[flock]));
        // On clear sticks only the whole length of a bundle matters.
        let parts = if flawed || parts.len() == 1 {
            parts
        } else {
            vec![whole - problem.kerf]
        };
        let key = (Reverse(whole), run, parts);
        merged.entry(key).or_default().push(number);
    }
    let (mut items, mut origin) = (Vec::new(), Vec::new());
    for ((Reverse(length), run, parts), mut members) in merged {
        members.sort_by_key(|&want| (wants[want].urgency(), want));
        let each = |&want: &usize| (want, take[want]);
        let sources: Vec<(usize, u64)> = members.iter().map(each).collect();
        let total = |sum: u64, source: &(usize, u64)| sum.saturating_add(source.1);
        items.push(Item {
            length,
            demand: sources.iter().fold(0, total),
            run,
            parts,
        });
        origin.push(sources);
    }
    let mut core = Core {
        kerf: problem.kerf,
        items,
        kinds: Vec::new(),
    };
    let used: BTreeSet<usize> = core.items.iter().filter_map(|item| item.run).collect();
    core.kinds = parted(kinds, &used);
    let useful: Vec<Kind> = (0..core.kinds.len())
        .filter(|&kind| (0..core.items.len()).any(|item| core.may_take(kind, item)))
        .map(|kind| core.kinds[kind].clone())
        .collect();
    core.kinds = useful;
    Reduced { core, origin }
}
