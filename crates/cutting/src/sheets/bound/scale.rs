//! Distorted sizes: functions under which what fits side by side still fits.
//!
//! A function f is dual feasible for a room when any sizes with sum up to the room have values
//! with sum up to the room's value. Along both axes at once, f(width) · g(height) of the parts of
//! one sheet then sum up to no more than f · g of the sheet (Fekete and Schepers, "A general
//! framework for bounds for higher-dimensional orthogonal packing problems", 2004).

use std::collections::BTreeSet;

/// Values of one function for one side of a sheet and the sides of all parts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Scale {
    pub(super) whole: u64,
    /// Per part: of its width and of its height. A side that does not fit counts as 0.
    pub(super) sides: Vec<(u64, u64)>,
}

/// Values up to this; larger ones are rounded to it.
const WIDEST: u64 = 1 << 24;
/// The most functions of the kind that rounds to multiples of 1 / (k + 1).
const MOST_ROUNDINGS: u64 = 24;

/// Functions for a room, at most about so many. `sides` are the widths and heights of the parts,
/// `counts` how often each part comes.
pub(super) fn scales(room: u32, sides: &[(u32, u32)], counts: &[u64], most: usize) -> Vec<Scale> {
    let room = u64::from(room);
    let mut all: Vec<Scale> = Vec::new();
    let mut add = |whole: u64, value: &dyn Fn(u64) -> u64| {
        let scale = scale(room, sides, whole, value);
        if !all.contains(&scale) {
            all.push(scale);
        }
    };
    add(room, &|size| size);
    for k in 1..=MOST_ROUNDINGS.min(room.saturating_sub(1)) {
        add(room * k, &|size| rounded(room, size, k));
    }
    for k in steps(room, sides, most / 3) {
        add(room, &|size| stretched(room, size, k));
        add(2 * (room / k), &|size| stepped(room, size, k));
        let held = Held::new(room, sides, counts, k);
        add(held.most(room), &|size| held.value(room, size));
    }
    all
}

fn scale(room: u64, sides: &[(u32, u32)], whole: u64, value: &dyn Fn(u64) -> u64) -> Scale {
    let each = |side: u32| {
        let side = u64::from(side);
        if side > room {
            return 0;
        }
        if whole > WIDEST {
            // Down for the parts, exact for the whole.
            let value = u128::from(value(side)) * u128::from(WIDEST) / u128::from(whole);
            return u64::try_from(value).unwrap_or(0);
        }
        value(side)
    };
    Scale {
        whole: whole.min(WIDEST),
        sides: sides
            .iter()
            .map(|&(width, height)| (each(width), each(height)))
            .collect(),
    }
}

/// Sizes at which the functions step, not above half the room.
fn steps(room: u64, sides: &[(u32, u32)], most: usize) -> Vec<u64> {
    let mut steps = BTreeSet::new();
    for &(width, height) in sides {
        for size in [u64::from(width), u64::from(height)] {
            steps.insert(size);
            steps.insert(room.saturating_sub(size));
            steps.insert(room.saturating_sub(size) + 1);
        }
    }
    let steps: Vec<u64> = steps
        .into_iter()
        .filter(|&step| step > 0 && step * 2 <= room)
        .collect();
    if steps.len() <= most {
        return steps;
    }
    // An even choice among them.
    (0..most).map(|at| steps[at * steps.len() / most]).collect()
}

/// Multiples of room / (k + 1) keep their size, others go down to the next and up by 1 / k.
fn rounded(room: u64, size: u64, k: u64) -> u64 {
    let times = size * (k + 1);
    if times.is_multiple_of(room) {
        size * k
    } else {
        times / room * room
    }
}

/// Sizes below k count nothing, so that sizes above room − k count as the whole room.
fn stretched(room: u64, size: u64, k: u64) -> u64 {
    if size > room - k {
        room
    } else if size < k {
        0
    } else {
        size
    }
}

/// Counts how many k fit, from below for small sizes and from above for large ones (Carlier,
/// Clautiaux and Moukrim, "New reduction procedures and lower bounds for the two-dimensional bin
/// packing problem with fixed orientation", 2007).
fn stepped(room: u64, size: u64, k: u64) -> u64 {
    match (2 * size).cmp(&room) {
        std::cmp::Ordering::Less => 2 * (size / k),
        std::cmp::Ordering::Equal => room / k,
        std::cmp::Ordering::Greater => 2 * (room / k - (room - size) / k),
    }
}

/// How many of the parts' sides from k to half the room fit side by side, the smallest first.
struct Held {
    k: u64,
    /// Sizes rising, how many of each.
    sizes: Vec<(u64, u64)>,
}

impl Held {
    fn new(room: u64, sides: &[(u32, u32)], counts: &[u64], k: u64) -> Self {
        let mut rising = Vec::new();
        for (sides, &count) in sides.iter().zip(counts) {
            for size in [u64::from(sides.0), u64::from(sides.1)] {
                if size >= k && 2 * size <= room {
                    rising.push((size, count));
                }
            }
        }
        rising.sort_unstable();
        Self { k, sizes: rising }
    }

    fn most(&self, mut room: u64) -> u64 {
        let mut sum = 0;
        for &(size, count) in &self.sizes {
            let held = count.min(room / size);
            sum += held;
            room -= held * size;
            if held < count {
                break;
            }
        }
        sum
    }

    fn value(&self, room: u64, size: u64) -> u64 {
        if 2 * size > room {
            self.most(room) - self.most(room - size)
        } else {
            u64::from(size >= self.k)
        }
    }
}
