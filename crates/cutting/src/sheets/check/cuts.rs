//! Finds the cuts that free the pieces of a layout, for plans that list none.

use std::collections::BTreeSet;

use super::super::{Area, Cut, First, Rules, Way};

/// Parts looked at before the search gives up.
const MOST: usize = 100_000;

/// A sequence of cuts that frees all these areas within the rules; `None` where none is found.
///
/// Without a least strip every cut that is possible is safe to make, so the first one found is
/// made. With one it matters on which side the waste stays, so all ways are tried; a sheet with
/// very many of them may not be finished. Everything must lie on the usable area, and sums of two
/// sides must fit their type.
pub(crate) fn cuts(rules: &Rules, usable: Area, wanted: &[Area]) -> Option<Vec<Cut>> {
    let mut search = Search {
        rules,
        dead: BTreeSet::new(),
        looked: 0,
        made: Vec::new(),
    };
    let all: Vec<Area> = wanted.to_vec();
    search.free(usable, &all, None, 0).then_some(search.made)
}

struct Search<'a> {
    rules: &'a Rules,
    /// Parts from which no cuts lead on: the part, the last way, the stage.
    dead: BTreeSet<(Area, bool, bool, u32)>,
    looked: usize,
    made: Vec<Cut>,
}

impl Search<'_> {
    fn free(&mut self, part: Area, wanted: &[Area], last: Option<Way>, stage: u32) -> bool {
        match wanted {
            [] => return true,
            [only] if *only == part => return true,
            _ => {}
        }
        let key = (part, last.is_some(), last == Some(Way::Level), stage);
        if self.dead.contains(&key) {
            return false;
        }
        self.looked += 1;
        if self.looked > MOST {
            return false;
        }
        let ways = match last {
            Some(Way::Level) => [Way::Level, Way::Upright],
            _ => [Way::Upright, Way::Level],
        };
        for way in ways {
            let Some(stage) = self.next_stage(way, last, stage, wanted.len()) else {
                continue;
            };
            let places = self.places(&part, wanted, way);
            let worth = match self.rules.least_strip {
                0 => places.len().min(1),
                _ => places.len(),
            };
            for &at in &places[..worth] {
                if self.make(part, wanted, way, at, stage) {
                    return true;
                }
            }
        }
        self.dead.insert(key);
        false
    }

    fn next_stage(&self, way: Way, last: Option<Way>, stage: u32, inside: usize) -> Option<u32> {
        let next = match last {
            None => match (self.rules.first, way) {
                (First::Upright, Way::Level) | (First::Level, Way::Upright) => 2,
                _ => 1,
            },
            Some(last) if last == way => stage,
            Some(_) => stage + 1,
        };
        let Some(most) = self.rules.stages else {
            return Some(next);
        };
        let trims = self.rules.final_trim && inside <= 1 && next == most.saturating_add(1);
        (next <= most || trims).then_some(next)
    }

    /// Where a cut may be made without touching what is wanted.
    fn places(&self, part: &Area, wanted: &[Area], way: Way) -> Vec<u64> {
        let (from, size) = along(part, way);
        let to = from + size;
        let (kerf, least) = (self.rules.kerf, self.rules.least_strip);
        let mut places = BTreeSet::new();
        for area in wanted {
            let (start, size) = along(area, way);
            places.insert(start + size);
            places.insert(start.saturating_sub(kerf));
            if least > 0 {
                places.extend([start.saturating_sub(least), start + size + least]);
            }
        }
        let free = |at: &u64| {
            let at = *at;
            let inside = at + kerf > from && at < to && (kerf > 0 || at > from);
            let (low, high) = (at.saturating_sub(from), to.saturating_sub(at + kerf));
            let wide = |strip: u64| strip == 0 || strip >= least;
            inside
                && wide(low)
                && wide(high)
                && wanted.iter().all(|area| {
                    let (start, size) = along(area, way);
                    start + size <= at || start >= at + kerf
                })
        };
        places.into_iter().filter(free).collect()
    }

    fn make(&mut self, part: Area, wanted: &[Area], way: Way, at: u64, stage: u32) -> bool {
        let kept = self.made.len();
        self.made.push(Cut { of: part, way, at });
        let (from, size) = along(&part, way);
        let low = at.saturating_sub(from);
        let high = (from + size).saturating_sub(at + self.rules.kerf);
        let (mut one, mut other) = (part, part);
        match way {
            Way::Upright => {
                one.width = low;
                other.x += size - high;
                other.width = high;
            }
            Way::Level => {
                one.height = low;
                other.y += size - high;
                other.height = high;
            }
        }
        let before = |area: &&Area| along(area, way).0 < at;
        let below: Vec<Area> = wanted.iter().filter(before).copied().collect();
        let above: Vec<Area> = wanted
            .iter()
            .filter(|area| !before(area))
            .copied()
            .collect();
        if self.free(one, &below, Some(way), stage) && self.free(other, &above, Some(way), stage) {
            return true;
        }
        self.made.truncate(kept);
        false
    }
}

/// Where an area starts in the direction that cuts of this way divide, and its size there.
fn along(area: &Area, way: Way) -> (u64, u64) {
    match way {
        Way::Upright => (area.x, area.width),
        Way::Level => (area.y, area.height),
    }
}
