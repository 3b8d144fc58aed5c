//! From chosen patterns to a draft.

use std::collections::BTreeSet;

use super::group::Group;
use super::kinds::{Kind, Pattern};
use super::lay::lay;
use super::reach::{Fits, Reach};
use crate::sheets::{Draft, DraftSheet, Reduced};

/// Why there is no draft.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Flaw {
    /// What is wanted of this pattern does not come out of its sheet.
    Misfit(usize),
    /// Nobody can tell.
    Unknown,
}

/// A draft of the patterns, without what they hold more than wanted.
pub(super) fn draft(
    reduced: &Reduced,
    kinds: &[Kind],
    wanted: &[u64],
    patterns: &[Pattern],
    reach: &mut Reach,
) -> Result<Draft, Flaw> {
    let mut wanted = wanted.to_vec();
    let mut left: Vec<Vec<(usize, u64)>> = kinds.iter().map(|kind| kind.members.clone()).collect();
    let mut sheets: Vec<DraftSheet> = Vec::new();
    for (number, pattern) in patterns.iter().enumerate() {
        let mut group = Group::default();
        for part in pattern.group.parts() {
            if wanted[part] > 0 {
                wanted[part] -= 1;
                group = group.with(part).ok_or(Flaw::Unknown)?;
            }
        }
        if group.is_empty() {
            continue;
        }
        let size = kinds[pattern.kind].size;
        match reach.fits(group, size) {
            Fits::Yes => {}
            Fits::No => return Err(Flaw::Misfit(number)),
            Fits::Unknown => return Err(Flaw::Unknown),
        }
        let members = left[pattern.kind].iter_mut();
        let member = members.into_iter().find(|member| member.1 > 0);
        let member = member.ok_or(Flaw::Unknown)?;
        member.1 -= 1;
        let block = lay(reach, reduced, group, size).ok_or(Flaw::Unknown)?;
        let same = |sheet: &&mut DraftSheet| sheet.stock == member.0 && sheet.block == block;
        match sheets.iter_mut().find(same) {
            Some(sheet) => sheet.copies += 1,
            None => sheets.push(DraftSheet {
                stock: member.0,
                copies: 1,
                block,
            }),
        }
    }
    Ok(Draft { sheets })
}

/// The groups within one that does not come out of a sheet that do, and to which nothing of it
/// can be added.
pub(super) fn mended(group: Group, size: (u32, u32), reach: &mut Reach) -> BTreeSet<Group> {
    let mut fitting = BTreeSet::new();
    let mut unfit = vec![group];
    let mut seen = BTreeSet::new();
    while let Some(group) = unfit.pop() {
        for less in group.less_one() {
            if less.is_empty() || !seen.insert(less) {
                continue;
            }
            match reach.fits(less, size) {
                Fits::No => unfit.push(less),
                Fits::Yes | Fits::Unknown => {
                    fitting.insert(less);
                }
            }
        }
    }
    fitting
}
