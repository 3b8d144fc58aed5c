//! Places where cutting can pay: sums of part sizes, thinned without loss.
//!
//! Normal points are all sums of part sizes up to the sheet (Herz, "Recursive computational
//! procedure for two-dimensional stock cutting", 1972). A block of size s can be enlarged to the
//! largest normal point that still leaves room for the same neighbours, so of the normal points
//! only `floor(size − p)` over all normal points p are needed (raster points; Terno, Lindemann and
//! Scheithauer, "Zuschnittprobleme und ihre praktische Lösung", 1987).

use std::collections::BTreeSet;

/// Above this the points are found by a set, not by an array over all sizes.
const ARRAY: u32 = 1 << 22;

/// The index of the last point not above `size`. The first point is 0.
pub(super) fn floor(points: &[u32], size: u32) -> usize {
    points.partition_point(|&point| point <= size) - 1
}

/// The index of the first point not below `size`; `None` beyond the last.
pub(super) fn ceil(points: &[u32], size: u32) -> Option<usize> {
    let at = points.partition_point(|&point| point < size);
    (at < points.len()).then_some(at)
}

/// All sums of sizes up to the room, each size as often as its count says, 0 first; `None` when
/// there are more than `most`.
pub(super) fn normal(sizes: &[(u32, u64)], room: u32, most: usize) -> Option<Vec<u32>> {
    let mut sizes: Vec<(u32, u64)> = sizes
        .iter()
        .copied()
        .filter(|&(size, _)| size > 0 && size <= room)
        .collect();
    sizes.sort_unstable();
    if room <= ARRAY {
        by_array(&sizes, room, most)
    } else {
        by_set(&sizes, room, most)
    }
}

fn by_array(sizes: &[(u32, u64)], room: u32, most: usize) -> Option<Vec<u32>> {
    let room = room as usize;
    let mut reached = vec![false; room + 1];
    reached[0] = true;
    let mut used = vec![0_u32; room + 1];
    for &(size, count) in sizes {
        let size = size as usize;
        let count = u32::try_from(count).unwrap_or(u32::MAX);
        used.fill(0);
        for at in size..=room {
            if !reached[at] && reached[at - size] && used[at - size] < count {
                reached[at] = true;
                used[at] = used[at - size] + 1;
            }
        }
    }
    let mut points = Vec::new();
    for (at, _) in reached.iter().enumerate().filter(|(_, reached)| **reached) {
        if points.len() >= most {
            return None;
        }
        points.push(u32::try_from(at).ok()?);
    }
    Some(points)
}

/// Counts are left out of account: more points than needed do no harm.
fn by_set(sizes: &[(u32, u64)], room: u32, most: usize) -> Option<Vec<u32>> {
    let mut points = Vec::new();
    let mut ahead = BTreeSet::from([0_u32]);
    while let Some(point) = ahead.pop_first() {
        if points.len() >= most {
            return None;
        }
        points.push(point);
        for &(size, _) in sizes {
            if size > room - point {
                break;
            }
            ahead.insert(point + size);
        }
        if ahead.len() > most.saturating_mul(4) {
            return None;
        }
    }
    Some(points)
}

/// The normal points that are enough for a sheet of this size, ascending.
///
/// `normal` must hold all sums without regard to counts: an enlarged block may take the place of
/// parts there are not enough of.
pub(super) fn raster(normal: &[u32], room: u32) -> Vec<u32> {
    let mut points: Vec<u32> = normal
        .iter()
        .map(|&point| normal[floor(normal, room - point)])
        .collect();
    points.push(0);
    points.sort_unstable();
    points.dedup();
    points
}

/// Points for parts of these sizes and counts on one axis of a sheet: whichever is fewer, raster
/// points without regard to counts, or normal points within the counts.
pub(super) fn fewest(sizes: &[(u32, u64)], room: u32, most: usize) -> Option<Vec<u32>> {
    let endless: Vec<(u32, u64)> = sizes.iter().map(|&(size, _)| (size, u64::MAX)).collect();
    let within = normal(sizes, room, most);
    let thinned = normal(&endless, room, most.saturating_mul(8))
        .map(|all| raster(&all, room))
        .filter(|points| points.len() <= most);
    match (within, thinned) {
        (Some(within), Some(thinned)) if within.len() < thinned.len() => Some(within),
        (within, thinned) => thinned.or(within),
    }
}
