//! Groups to begin with: sheets filled greedily.

use super::group::Group;
use super::kinds::Kind;
use super::pricing::Offer;
use super::reach::{Fits, Reach};
use crate::Pace;

/// For every kind of sheet, groups that together hold all parts that fit it, in a few ways. Stops
/// when the pace does.
pub(super) fn seeds(
    kinds: &[Kind],
    offers: &[Offer],
    sizes: &[(u32, u32)],
    reach: &mut Reach,
    pace: &mut Pace,
) -> Vec<(usize, Group)> {
    let mut seeds = Vec::new();
    let orders: [&dyn Fn(&Offer) -> u64; 3] = [
        &|offer| offer.area,
        &|offer| u64::from(sizes[offer.part].0),
        &|offer| u64::from(sizes[offer.part].1),
    ];
    for (number, kind) in kinds.iter().enumerate() {
        for order in orders {
            let mut left = offers.to_vec();
            left.sort_by_key(|offer| (std::cmp::Reverse(order(offer)), offer.part));
            while let Some(group) = filled(kind, &mut left, reach) {
                seeds.push((number, group));
                if !pace.spend(1 + reach.steps()) {
                    return seeds;
                }
            }
        }
    }
    seeds
}

/// One sheet filled with the first part left that fits, and what of the rest goes with it.
fn filled(kind: &Kind, left: &mut Vec<Offer>, reach: &mut Reach) -> Option<Group> {
    let mut group = Group::default();
    let mut room = kind.area();
    for offer in left.iter_mut() {
        while offer.count > 0 && offer.area <= room {
            let Some(more) = group.with(offer.part) else {
                break;
            };
            if reach.fits(more, kind.size) != Fits::Yes {
                break;
            }
            group = more;
            room -= offer.area;
            offer.count -= 1;
        }
    }
    left.retain(|offer| offer.count > 0);
    (!group.is_empty()).then_some(group)
}
