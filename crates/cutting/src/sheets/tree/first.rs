//! The first plan: parts one after the other into the place where they lose least.

use super::super::{Draft, DraftSheet, Part, Reduced, Stock};
use super::field::{Field, Opening};
use super::terms::rounded;
use crate::Pace;
use crate::chance::Chance;

/// In which order the parts are taken.
#[derive(Clone, Copy, Debug)]
enum Order {
    Area,
    Longest,
    Width,
    Height,
    Shortest,
}

const ORDERS: [Order; 5] = [
    Order::Area,
    Order::Longest,
    Order::Width,
    Order::Height,
    Order::Shortest,
];
const OPENINGS: [Opening; 3] = [Opening::Thrifty, Opening::Cheap, Opening::Large];
/// With more copies than this, whole layouts are repeated as long as the counts allow.
const MANY: u64 = 600;
/// With more copies than this layouts are repeated even where few are alike.
const MOST_SINGLE: u64 = 20_000;
/// So many layouts of a sheet that costs nothing.
const LAYOUTS_OF_GIFT: usize = 3;
/// With [`crate::Goal::Value`] no more copies of a part than this are searched for.
const MOST_ALIKE: u64 = 1_000;

/// The cheapest of a few plans; `None` when the stock did not reach in any of them.
pub(super) fn first(reduced: &Reduced, pace: &mut Pace<'_>, chance: &mut Chance) -> Option<Draft> {
    let mut best: Option<(u64, Draft)> = None;
    for (order, opening, tries) in manners(reduced) {
        if best.is_some() && pace.is_over() {
            break;
        }
        let Some(draft) = plan(reduced, order, opening, tries, pace, chance) else {
            continue;
        };
        let cost = reduced.cost(&draft);
        if best.as_ref().is_none_or(|(least, _)| cost < *least) {
            best = Some((cost, draft));
        }
    }
    best.map(|(_, draft)| draft)
}

/// In which order parts are taken, how new sheets are chosen, in how many ways a layout that will
/// be repeated is tried.
fn manners(reduced: &Reduced) -> Vec<(Order, Opening, usize)> {
    let many = repeats(reduced);
    let mut manners = Vec::new();
    for order in ORDERS {
        if !many && reduced.stock.len() > 1 {
            manners.extend(OPENINGS.map(|opening| (order, opening, 1)));
        } else {
            manners.push((order, Opening::Thrifty, 1));
        }
    }
    if many {
        manners.push((Order::Area, Opening::Cheap, 3));
        manners.push((Order::Area, Opening::Large, 8));
    }
    manners
}

/// For each part as many copies as a sheet could hold at all.
pub(super) fn useful_counts(reduced: &Reduced) -> Vec<u64> {
    let area = |width: u32, height: u32| u64::from(width) * u64::from(height);
    let sizes = reduced
        .stock
        .iter()
        .map(|stock| area(stock.width, stock.height));
    let largest = sizes.max().unwrap_or(0);
    let count = |part: &Part| {
        let room = largest / area(part.width, part.height).max(1);
        part.count.min(room).min(MOST_ALIKE)
    };
    reduced.parts.iter().map(count).collect()
}

/// The most valuable of a few layouts of one sheet.
pub(super) fn fullest(reduced: &Reduced, pace: &mut Pace<'_>, chance: &mut Chance) -> Draft {
    let counts = useful_counts(reduced);
    let mut best = Draft::default();
    let mut most = 0;
    for dense in [true, false] {
        for opening in OPENINGS {
            let mut field = Field::new(reduced, true);
            for (part, &count) in counts.iter().enumerate() {
                field.want(part, count);
            }
            let mut kinds = field.kinds.clone();
            kinds.sort_by_key(|&kind| {
                let (area, _, _, value) = field.measures(kind);
                let worth = u128::from(value) << 32;
                let key = if dense {
                    worth / u128::from(area.max(1))
                } else {
                    worth
                };
                (std::cmp::Reverse(key), kind)
            });
            for kind in kinds {
                while field.left[kind as usize] > 0 && field.put(kind, opening, 0, chance) {}
            }
            pace.spend(field.steps);
            let mut draft = Draft::default();
            field.draft(&mut draft.sheets);
            let value = reduced.value(&draft);
            if value > most {
                (most, best) = (value, draft);
            }
        }
    }
    best
}

fn plan(
    reduced: &Reduced,
    order: Order,
    opening: Opening,
    tries: usize,
    pace: &mut Pace<'_>,
    chance: &mut Chance,
) -> Option<Draft> {
    let mut draft = Draft::default();
    let mut field = Field::new(reduced, false);
    for (part, wanted) in reduced.parts.iter().enumerate() {
        field.want(part, wanted.count);
    }
    sort(&mut field, order);
    if repeats(reduced) {
        fill_gifts(&mut field, reduced, &mut draft.sheets, pace, chance);
        while field.missing > MANY {
            let layout = layout(reduced, &field, tries, pace, chance)?;
            take(&mut field, reduced, layout, &mut draft.sheets);
        }
    }
    let kinds = field.kinds.clone();
    for kind in kinds {
        while field.left[kind as usize] > 0 {
            if !field.put(kind, opening, 0, chance) {
                return None;
            }
            pace.spend(std::mem::take(&mut field.steps));
        }
    }
    field.draft(&mut draft.sheets);
    Some(draft)
}

/// Many copies of few kinds: layouts are repeated.
fn repeats(reduced: &Reduced) -> bool {
    let copies: u64 = reduced.parts.iter().map(|part| part.count).sum();
    let kinds = reduced.parts.iter().filter(|part| part.count > 0).count() as u64;
    copies > MANY && (copies > 3 * kinds || copies > MOST_SINGLE)
}

/// Fills what costs nothing, from large to small.
fn fill_gifts(
    field: &mut Field,
    reduced: &Reduced,
    sheets: &mut Vec<DraftSheet>,
    pace: &mut Pace<'_>,
    chance: &mut Chance,
) {
    let mut gifts: Vec<usize> = (0..reduced.stock.len())
        .filter(|&stock| reduced.stock[stock].cost == 0)
        .collect();
    gifts.sort_by_key(|&stock| {
        let Stock { width, height, .. } = reduced.stock[stock];
        (
            std::cmp::Reverse(u64::from(width) * u64::from(height)),
            stock,
        )
    });
    for stock in gifts {
        for _ in 0..LAYOUTS_OF_GIFT {
            let mut kinds = field.kinds.clone();
            kinds.retain(|&kind| field.left[kind as usize] > 0);
            if field.spare[stock] == 0 || kinds.is_empty() {
                break;
            }
            let Some((_, sheet)) = filled(reduced, field, &kinds, stock, pace, chance) else {
                break;
            };
            take(field, reduced, sheet, sheets);
        }
    }
}

fn sort(field: &mut Field, order: Order) {
    let mut kinds = std::mem::take(&mut field.kinds);
    kinds.sort_by_key(|&kind| {
        let (area, width, height, _) = field.measures(kind);
        let key = match order {
            Order::Area => area,
            Order::Longest => u64::from(width.max(height)),
            Order::Width => u64::from(width),
            Order::Height => u64::from(height),
            Order::Shortest => u64::from(width.min(height)),
        };
        (std::cmp::Reverse((key, area)), kind)
    });
    field.kinds = kinds;
}

/// One sheet, filled from what is missing: the best of a few, by what its parts' area costs.
fn layout(
    reduced: &Reduced,
    field: &Field,
    tries: usize,
    pace: &mut Pace<'_>,
    chance: &mut Chance,
) -> Option<DraftSheet> {
    let mut best: Option<(f64, DraftSheet)> = None;
    let mut kinds = field.kinds.clone();
    kinds.retain(|&kind| field.left[kind as usize] > 0);
    for turn in 0..tries {
        for stock in 0..reduced.stock.len() {
            if field.spare[stock] == 0 || reduced.stock[stock].cost == 0 {
                continue;
            }
            let Some((used, sheet)) = filled(reduced, field, &kinds, stock, pace, chance) else {
                continue;
            };
            let dear = rounded(reduced.stock[stock].cost) / rounded(used.max(1));
            if best.as_ref().is_none_or(|(least, _)| dear < *least) {
                best = Some((dear, sheet));
            }
        }
        if pace.is_over() {
            break;
        }
        if turn % 2 == 0 {
            kinds.sort_by_key(|&kind| (std::cmp::Reverse(field.measures(kind).0), kind));
            let most = kinds.len().min(1 + chance.below(8));
            let some = chance.below(kinds.len() - most + 1);
            kinds[..some + most].rotate_right(most);
        } else {
            chance.shuffle(&mut kinds);
        }
    }
    best.map(|(_, sheet)| sheet)
}

/// A sheet of this stock with what it takes of these kinds, one after the other.
fn filled(
    reduced: &Reduced,
    field: &Field,
    kinds: &[u32],
    stock: usize,
    pace: &mut Pace<'_>,
    chance: &mut Chance,
) -> Option<(u64, DraftSheet)> {
    let mut single = Field::new(reduced, true);
    single.spare.fill(0);
    single.spare[stock] = 1;
    for &kind in kinds {
        single.left[kind as usize] = field.left[kind as usize];
    }
    single.boundless();
    for &kind in kinds {
        while single.left[kind as usize] > 0 && single.put(kind, Opening::Cheap, 0, chance) {}
    }
    pace.spend(single.steps);
    let used = single.sheets.first()?.used;
    let mut sheets = Vec::new();
    single.draft(&mut sheets);
    Some((used, sheets.pop()?))
}

/// Repeats a layout as often as counts and stock allow.
fn take(
    field: &mut Field,
    reduced: &Reduced,
    mut layout: DraftSheet,
    sheets: &mut Vec<DraftSheet>,
) {
    let mut used = vec![0_u64; reduced.parts.len()];
    layout.block.each_part(&mut |part| used[part] += 1);
    let mut copies = field.spare[layout.stock];
    for (part, &times) in used.iter().enumerate() {
        if let Some(often) = field.left[part].checked_div(times) {
            copies = copies.min(often);
        }
    }
    layout.copies = copies.max(1);
    field.give(layout.stock, layout.copies, &used);
    sheets.push(layout);
}
