//! The cuts of a layout, made again one by one.

use std::collections::{BTreeMap, BTreeSet};

use crate::check::Broken;
use crate::sheets::{Area, Cut, First, Rules, Way};

/// What the cuts leave.
pub(super) struct Replayed {
    /// Every part that is left, pieces among them.
    pub(super) parts: BTreeSet<Area>,
    /// The area that was sawn to dust.
    pub(super) kerf: u128,
}

/// How a part came to be.
#[derive(Clone, Copy)]
struct Made {
    way: Option<Way>,
    stage: u32,
}

/// Makes the cuts in their order. `wanted` are the pieces and remnants, for the trimming cuts.
pub(super) fn replay(
    rules: &Rules,
    layout: usize,
    usable: Area,
    cuts: &[Cut],
    wanted: &[Area],
) -> Result<Replayed, Broken> {
    let mut parts = BTreeMap::from([(
        usable,
        Made {
            way: None,
            stage: 0,
        },
    )]);
    let mut kerf = 0;
    for (index, cut) in cuts.iter().enumerate() {
        let number = index + 1;
        let made = parts.remove(&cut.of).ok_or(Broken::NoPart {
            layout,
            cut: number,
        })?;
        let halves = halves(rules.kerf, layout, number, cut)?;
        let stage = stage(rules, made, cut.way);
        may_be_made(rules, layout, number, cut, stage, wanted)?;
        let mut left = 0;
        for half in halves.into_iter().filter(|half| along(half, cut.way) > 0) {
            let strip = along(&half, cut.way);
            if strip < rules.least_strip {
                return Err(Broken::Narrow {
                    layout,
                    cut: number,
                    strip,
                    least: rules.least_strip,
                });
            }
            left += u128::from(half.width) * u128::from(half.height);
            let way = Some(cut.way);
            parts.insert(half, Made { way, stage });
        }
        kerf += u128::from(cut.of.width) * u128::from(cut.of.height) - left;
    }
    Ok(Replayed {
        parts: parts.into_keys().collect(),
        kerf,
    })
}

/// The size of an area in the direction the cuts of this way divide.
fn along(area: &Area, way: Way) -> u64 {
    match way {
        Way::Upright => area.width,
        Way::Level => area.height,
    }
}

/// The two sides of a cut; one of them may have no size.
///
/// The saw may stand out over the edge of the part by less than its own width: then it takes the
/// rest away and leaves one side only.
fn halves(kerf: u64, layout: usize, number: usize, cut: &Cut) -> Result<[Area; 2], Broken> {
    let (start, size) = match cut.way {
        Way::Upright => (cut.of.x, cut.of.width),
        Way::Level => (cut.of.y, cut.of.height),
    };
    let (from, to) = (u128::from(start), u128::from(start) + u128::from(size));
    let (at, after) = (u128::from(cut.at), u128::from(cut.at) + u128::from(kerf));
    if after <= from || at >= to || kerf == 0 && at <= from {
        return Err(Broken::Beside {
            layout,
            cut: number,
            at: cut.at,
            from: start,
            to,
        });
    }
    let low = cut.at.saturating_sub(start);
    let high = u64::try_from(to.saturating_sub(after)).unwrap_or(0);
    let (mut one, mut other) = (cut.of, cut.of);
    match cut.way {
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
    Ok([one, other])
}

/// The stage of a cut: how often the direction has changed up to it. A first cut across the
/// direction the rules ask for counts as the second stage.
fn stage(rules: &Rules, made: Made, way: Way) -> u32 {
    match made.way {
        None => match (rules.first, way) {
            (First::Upright, Way::Level) | (First::Level, Way::Upright) => 2,
            _ => 1,
        },
        Some(last) if last == way => made.stage,
        Some(_) => made.stage.saturating_add(1),
    }
}

fn may_be_made(
    rules: &Rules,
    layout: usize,
    number: usize,
    cut: &Cut,
    stage: u32,
    wanted: &[Area],
) -> Result<(), Broken> {
    let Some(most) = rules.stages else {
        return Ok(());
    };
    let limit = most.saturating_add(u32::from(rules.final_trim));
    if stage > limit {
        return Err(Broken::Stages {
            layout,
            cut: number,
            stage,
            limit,
        });
    }
    if stage > most {
        let here = |area: &&Area| holds(&cut.of, area);
        let inside = wanted.iter().filter(here).count();
        if inside > 1 {
            return Err(Broken::Trims {
                layout,
                cut: number,
                inside,
            });
        }
    }
    Ok(())
}

fn holds(outer: &Area, inner: &Area) -> bool {
    let within = |from: u64, size: u64, start: u64, whole: u64| {
        from >= start
            && u128::from(from) + u128::from(size) <= u128::from(start) + u128::from(whole)
    };
    within(inner.x, inner.width, outer.x, outer.width)
        && within(inner.y, inner.height, outer.y, outer.height)
}
