//! The cuts of a sheet, made one after the other.

use cutting::sheets::{Area, Cut, Layout, Way};

/// What a sheet falls into, in square ticks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Replayed {
    /// All that can be used.
    pub root: u128,
    /// Lost at cuts.
    pub cuts: u128,
    /// Neither a piece nor a remnant.
    pub waste: u128,
}

/// Makes every cut in its order and finds each piece and remnant among what is left.
///
/// Errors: a cut through no part there is, and pieces that the cuts do not free.
pub(super) fn replay(root: Area, layout: &Layout, kerf: u64) -> Result<Replayed, String> {
    let mut parts = vec![root];
    let mut cuts = 0_u128;
    for cut in &layout.cuts {
        let place = parts.iter().position(|part| *part == cut.of);
        let place = place.ok_or_else(|| format!("a cut at {} goes through no part", cut.at))?;
        let part = parts.swap_remove(place);
        let (first, second, lost) = halves(part, *cut, kerf)
            .ok_or_else(|| format!("a cut at {} lies outside its part", cut.at))?;
        cuts += lost;
        parts.extend([first, second].into_iter().flatten());
    }
    for (kind, area) in wanted(layout) {
        let place = parts.iter().position(|part| *part == area);
        let place = place.ok_or_else(|| {
            format!(
                "the cuts do not free the {kind} of {} × {} at {}, {}",
                area.width, area.height, area.x, area.y
            )
        })?;
        parts.swap_remove(place);
    }
    Ok(Replayed {
        root: size(root),
        cuts,
        waste: parts.into_iter().map(size).sum(),
    })
}

fn wanted(layout: &Layout) -> impl Iterator<Item = (&'static str, Area)> {
    let pieces = layout.pieces.iter().map(|placed| ("piece", placed.area));
    pieces.chain(layout.remnants.iter().map(|area| ("remnant", *area)))
}

/// Both sides of a cut, where there is anything, and what the cut takes.
///
/// Shape:  the saw may stand out over an edge by less than its width: it then takes that side away.
fn halves(part: Area, cut: Cut, kerf: u64) -> Option<(Option<Area>, Option<Area>, u128)> {
    let (from, long, across) = match cut.way {
        Way::Upright => (part.x, part.width, part.height),
        Way::Level => (part.y, part.height, part.width),
    };
    let (end, after) = (from.checked_add(long)?, cut.at.checked_add(kerf)?);
    if cut.at >= end || after <= from || (kerf == 0 && cut.at == from) {
        return None;
    }
    let first = cut.at.saturating_sub(from);
    let second = end.saturating_sub(after);
    let side = |at: u64, long: u64| {
        (long > 0).then_some(match cut.way {
            Way::Upright => Area {
                x: at,
                width: long,
                ..part
            },
            Way::Level => Area {
                y: at,
                height: long,
                ..part
            },
        })
    };
    let lost = u128::from(long - first - second) * u128::from(across);
    Some((side(from, first), side(end - second, second), lost))
}

fn size(area: Area) -> u128 {
    u128::from(area.width) * u128::from(area.height)
}

#[cfg(test)]
mod tests;
