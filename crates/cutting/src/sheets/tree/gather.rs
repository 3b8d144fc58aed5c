//! Waste in one piece: the cost stands, the largest free rectangle grows.

use super::super::{Block, Draft, DraftSheet, Reduced};
use super::field::Field;
use super::hunt::{Aim, End, Hunt, Knobs};
use super::sheet::Sheet;
use super::terms::Terms;
use crate::Pace;
use crate::chance::Chance;

/// So many part copies are moved about at most.
const PATCH: u64 = 150;

/// The draft, or one of the same cost with a larger free rectangle.
pub(super) fn gather(
    reduced: &Reduced,
    draft: Draft,
    pace: &mut Pace<'_>,
    chance: &mut Chance,
) -> Draft {
    let (field, rest) = under_the_saw(reduced, &draft, PATCH, chance);
    let mut best = draft;
    let cost = field.cost;
    let mut hunt = Hunt::new(
        field,
        Aim::Gather,
        Knobs {
            patience: 100,
            ..Knobs::default()
        },
    );
    hunt.seek_remnant(cost, largest(reduced, &rest));
    while hunt.run(pace, chance) == End::Found {
        best.sheets.clone_from(&rest);
        hunt.field.draft(&mut best.sheets);
        if pace.is_over() {
            break;
        }
    }
    best
}

fn largest(reduced: &Reduced, sheets: &[DraftSheet]) -> u64 {
    let terms = Terms::new(reduced);
    let mut loaded = Sheet::default();
    let mut most = 0;
    for sheet in sheets {
        loaded.load(&terms, sheet.stock, &sheet.block);
        most = most.max(loaded.largest());
    }
    most
}

/// Some sheets of a draft, those with most waste more likely than others, until they hold so many
/// parts; and the other sheets.
pub(super) fn under_the_saw(
    reduced: &Reduced,
    draft: &Draft,
    size: u64,
    chance: &mut Chance,
) -> (Field, Vec<DraftSheet>) {
    let mut rest = draft.sheets.clone();
    let mut chosen: Vec<(usize, &Block)> = Vec::new();
    let parts: Vec<u64> = draft.sheets.iter().map(super::parts).collect();
    let mut order: Vec<(u64, usize)> = Vec::new();
    for (at, sheet) in draft.sheets.iter().enumerate() {
        let share = u64::MAX / 1000 * used_in_thousand(reduced, sheet) / 4;
        order.push((share / 2 + chance.next() / 4, at));
    }
    order.sort_unstable();
    let mut taken = 0;
    for (_, at) in order {
        while rest[at].copies > 0 && taken < size {
            rest[at].copies -= 1;
            taken += parts[at].max(1);
            chosen.push((draft.sheets[at].stock, &draft.sheets[at].block));
            if size != u64::MAX && chance.one_in(2) {
                break;
            }
        }
    }
    rest.retain(|sheet| sheet.copies > 0);
    let mut field = Field::new(reduced, false);
    for sheet in &rest {
        field.withhold(sheet.stock, sheet.copies);
    }
    for (stock, block) in chosen {
        field.adopt(stock, block);
    }
    (field, rest)
}

fn used_in_thousand(reduced: &Reduced, sheet: &DraftSheet) -> u64 {
    let mut used = 0;
    sheet.block.each_part(&mut |part| {
        let part = &reduced.parts[part];
        used += u64::from(part.width) * u64::from(part.height);
    });
    let whole = u64::from(sheet.block.width) * u64::from(sheet.block.height);
    let thousandth = u128::from(used) * 1000 / u128::from(whole.max(1));
    u64::try_from(thousandth).unwrap_or(1000)
}
