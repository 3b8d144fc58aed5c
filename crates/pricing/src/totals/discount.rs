//! Discounts on the lines they name, never on tax, haste or what is never discounted.

use std::cmp::Reverse;

use measure::Money;
use sizing::Fault;
use working::{Decimal, Given, Subject};

use crate::desk::Desk;
use crate::exact::Exact;
use crate::laws;
use crate::priced::{DiscountLine, PricedLine};
use crate::rules::Discount;

/// The discounts asked for, in the order of the rule set; each is reckoned on what the ones before it left.
pub(super) fn discounts(
    desk: &mut Desk<'_>,
    asked: &[String],
    lines: &mut [PricedLine],
) -> Option<Vec<DiscountLine>> {
    let rules = desk.rules;
    for id in asked {
        if !rules.discount.iter().any(|discount| discount.id == *id) {
            desk.faults.push(unknown(id, &rules.discount));
        }
    }
    let given = rules
        .discount
        .iter()
        .filter(|discount| asked.contains(&discount.id));
    let mut found = Vec::new();
    for (at, discount) in given.enumerate() {
        one(desk, at, discount, lines, &mut found)?;
    }
    Some(found)
}

/// One discount: its sum in one rounding, allotted to the lines so that the parts sum to it.
fn one(
    desk: &mut Desk<'_>,
    at: usize,
    discount: &Discount,
    lines: &mut [PricedLine],
    found: &mut Vec<DiscountLine>,
) -> Option<()> {
    let share = discount.share.0;
    let is_on = |line: &PricedLine| {
        !line.rule.never_discounted
            && (discount.on.is_empty() || discount.on.contains(&line.rule.id))
    };
    let mut inputs: Vec<(&'static str, Given)> = Vec::new();
    let mut left = 0_i64;
    for line in lines.iter().filter(|line| is_on(line)) {
        left = left.checked_add(line.net().minor)?;
        inputs.push(("line", line.amount.into()));
        if line.discount.minor != 0 {
            inputs.push(("earlier", Given::job(line.discount)));
        }
    }
    let round = desk.round(desk.rules.rounding.discount);
    let left = Money::new(left, desk.cent.currency);
    let amount = Exact::from(left).times(share)?.to_money(desk.cent, round)?;
    if amount.minor == 0 {
        return Some(());
    }
    inputs.extend([
        ("share", Given::prices(share)),
        ("cent", Given::prices(desk.cent)),
        ("way", Given::prices(round)),
    ]);
    let subject = Subject::nth("price", at, "discount");
    let worked = desk.working.by(&laws::DISCOUNT, subject, &inputs, amount);
    let mut on: Vec<&mut PricedLine> = lines.iter_mut().filter(|line| is_on(line)).collect();
    allot(&mut on, amount.minor, share)?;
    found.push(DiscountLine {
        id: discount.id.clone(),
        says: discount.says.clone(),
        share,
        amount: worked,
    });
    Some(())
}

/// Allots a discount to its lines: each its share rounded down, and a minor unit more to those that lost most
/// by it, so that the parts sum to the whole.
///
/// Shape:  ties go by the amount, the rule and the part, so the order of lines does not matter.
fn allot(lines: &mut [&mut PricedLine], amount: i64, share: Decimal) -> Option<()> {
    let (top, bottom) = (i128::from(share.top()), i128::from(share.bottom()));
    let mut lost = Vec::with_capacity(lines.len());
    let mut given = 0_i64;
    for (place, line) in lines.iter_mut().enumerate() {
        let whole = i128::from(line.net().minor).checked_mul(top)?;
        let part = i64::try_from(whole.checked_div_euclid(bottom)?).ok()?;
        lost.push((Reverse(whole.checked_rem_euclid(bottom)?), place));
        line.discount.minor = line.discount.minor.checked_add(part)?;
        given = given.checked_add(part)?;
    }
    let key = |place: usize| {
        let line = &lines[place];
        (Reverse(line.amount.value.minor), &line.rule.id, &line.name)
    };
    lost.sort_by(|(one, first), (other, second)| {
        one.cmp(other).then_with(|| key(*first).cmp(&key(*second)))
    });
    let missing = usize::try_from(amount.checked_sub(given)?).ok()?;
    for (_, place) in lost.into_iter().take(missing) {
        lines[place].discount.minor = lines[place].discount.minor.checked_add(1)?;
    }
    Some(())
}

fn unknown(id: &str, known: &[Discount]) -> Fault {
    let near = trade::reading::nearest(id, known.iter().map(|discount| discount.id.as_str()));
    let near = near.map_or(String::new(), |near| format!(" (the nearest is {near})"));
    Fault::refuse(
        "pricing.no_discount",
        "Discount",
        format!("the rule set has no discount {id}{near}"),
        "",
        "Give one of its own, or add it in a [[discount]] table",
    )
}
