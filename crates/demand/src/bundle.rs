//! Legs that belong together: one stick, matched pairs, one run.

use cutting::lengths::Together;

use crate::gather::LooseRails;
use crate::part::{Rails, Strip};
use crate::tick::Tick;

/// Pieces of one frame, counted in ticks.
#[derive(Debug)]
pub(crate) struct Bundle {
    pub rails: Rails,
    /// What tells it apart from the others of its part: `left + right`.
    pub sides: String,
    /// Of one copy, the cuts inside it included.
    pub length: u64,
    pub together: Option<Together>,
}

/// What bundling needs to know of the bench.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Bench {
    pub tick: Tick,
    pub kerf: u64,
    /// The longest stretch any stick at hand leaves.
    pub room: u64,
    pub policy: &'static str,
}

/// Bundles the strips of one frame by the shop's policy; `group` is a name no other frame has.
///
/// Shape:  `stick`: all from one stick where one is long enough, else as pairs. `pairs`: equal
///         neighbours cut side by side from one stretch, all pairs of one run; where no stick
///         takes a pair, single legs of one run. `run`: single legs of one run.
pub(crate) fn bundle(loose: &LooseRails, bench: Bench, group: &str) -> Vec<Bundle> {
    if !loose.matched {
        return singles(loose, bench, None);
    }
    let run = Together::Run(group.to_owned());
    match bench.policy {
        "stick" if bench.long(&loose.strips) <= bench.room => {
            singles(loose, bench, Some(&Together::Stick(group.to_owned())))
        }
        "run" => singles(loose, bench, Some(&run)),
        _ => pairs(loose, bench, &run),
    }
}

impl Bench {
    /// Strips side by side, with the cuts between them.
    fn long(self, strips: &[Strip]) -> u64 {
        let strips_long: u64 = strips.iter().map(|s| self.tick.up(s.length)).sum();
        let cuts = u64::try_from(strips.len().saturating_sub(1)).unwrap_or(u64::MAX);
        strips_long.saturating_add(self.kerf.saturating_mul(cuts))
    }
}

/// Every strip a copy of its own; equal ones are copies of one piece.
fn singles(loose: &LooseRails, bench: Bench, together: Option<&Together>) -> Vec<Bundle> {
    let alone = loose.strips.iter().map(|strip| vec![strip.clone()]);
    gathered(loose, bench, alone, together)
}

fn pairs(loose: &LooseRails, bench: Bench, run: &Together) -> Vec<Bundle> {
    let mut copies: Vec<Vec<Strip>> = Vec::new();
    for strip in &loose.strips {
        let partner = copies.last_mut().filter(|copy| {
            let pair = [copy[0].clone(), strip.clone()];
            copy.len() == 1 && copy[0].length == strip.length && bench.long(&pair) <= bench.room
        });
        match partner {
            Some(copy) => copy.push(strip.clone()),
            None => copies.push(vec![strip.clone()]),
        }
    }
    gathered(loose, bench, copies.into_iter(), Some(run))
}

/// Copies with the same strips become one piece.
fn gathered(
    loose: &LooseRails,
    bench: Bench,
    copies: impl Iterator<Item = Vec<Strip>>,
    together: Option<&Together>,
) -> Vec<Bundle> {
    let mut bundles: Vec<Bundle> = Vec::new();
    for copy in copies {
        let sides: Vec<&str> = copy.iter().map(|strip| strip.side.as_str()).collect();
        let sides = sides.join(" + ");
        let alike = bundles.iter_mut().find(|bundle| {
            let first = &bundle.rails.copies[0];
            first.len() == copy.len() && first[0].length == copy[0].length
        });
        if let Some(bundle) = alike {
            bundle.sides = format!("{}, {sides}", bundle.sides);
            bundle.rails.copies.push(copy);
            continue;
        }
        bundles.push(Bundle {
            length: bench.long(&copy),
            sides,
            rails: Rails {
                job: loose.job,
                part: loose.part.clone(),
                copies: vec![copy],
            },
            together: together.cloned(),
        });
    }
    bundles
}

#[cfg(test)]
mod tests;
