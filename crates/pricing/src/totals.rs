//! What is reckoned on the lines together: subtotal, rush, discounts, the least, tax, the shown price,
//! deposit and balance, in this order.

mod deposit;
mod discount;
mod tax;

use measure::Money;
use sizing::Fault;
use working::{Decimal, Given, Subject, Worked};

use crate::desk::{Asked, Desk};
use crate::exact::Exact;
use crate::laws;
use crate::priced::{DiscountLine, PricedLine, TaxGroup, Totals};

/// The totals of a price, and each line's part of the discounts.
///
/// Errors: none; an amount that can't be held is a fault, and the totals are zero.
pub(crate) fn reckon(desk: &mut Desk<'_>, asked: &Asked, lines: &mut [PricedLine]) -> Totals {
    if let Some(totals) = reckoned(desk, asked, lines) {
        return totals;
    }
    desk.faults.push(Fault::refuse(
        "pricing.too_large",
        "Total",
        "the total is larger than can be held",
        "",
        "Check the prices of the rule set",
    ));
    nothing(desk)
}

fn reckoned(desk: &mut Desk<'_>, asked: &Asked, lines: &mut [PricedLine]) -> Option<Totals> {
    let subtotal = subtotal(desk, lines)?;
    let rush = match rush_share(desk, asked) {
        Some(share) => Some(rush(desk, share, subtotal)?),
        None => None,
    };
    let discounts = discount::discounts(desk, &asked.discounts, lines)?;
    let minimum = minimum(desk, subtotal, rush, &discounts)?;
    let minimum = (minimum.minor > 0).then_some(minimum);
    let sum = sum(desk, subtotal, rush, &discounts, minimum)?;
    let taxed = tax::tax(
        desk,
        asked.exempt,
        sum,
        &tax::entries(desk, lines, rush, minimum),
    )?;
    let (deposit, balance) = deposit::deposit(desk, taxed.total)?;
    Some(Totals {
        subtotal,
        rush,
        discounts,
        minimum,
        rounding: taxed.rounding,
        net: taxed.net,
        taxes: taxed.taxes,
        tax_inside: desk.rules.tax.inside,
        relief: taxed.relief,
        total: taxed.total,
        deposit,
        balance,
        groups: taxed.groups,
    })
}

/// Totals of a price that can't be reckoned.
fn nothing(desk: &mut Desk<'_>) -> Totals {
    let zero = Money::zero(desk.cent.currency);
    let subject = |quantity| Subject::of("price", quantity);
    let none = desk
        .working
        .by(&laws::SUBTOTAL, subject("subtotal"), &[], zero);
    Totals {
        subtotal: none,
        rush: None,
        discounts: Vec::new(),
        minimum: None,
        rounding: None,
        net: none,
        taxes: Vec::new(),
        tax_inside: desk.rules.tax.inside,
        relief: None,
        total: none,
        deposit: None,
        balance: None,
        groups: Vec::<TaxGroup>::new(),
    }
}

fn subtotal(desk: &mut Desk<'_>, lines: &[PricedLine]) -> Option<Worked<Money>> {
    let mut total = Money::zero(desk.cent.currency);
    for line in lines {
        total = total.checked_add(line.amount.value).ok()?;
    }
    let inputs: Vec<(&'static str, Given)> = lines
        .iter()
        .map(|line| ("line", line.amount.into()))
        .collect();
    let subject = Subject::of("price", "subtotal");
    Some(desk.working.by(&laws::SUBTOTAL, subject, &inputs, total))
}

/// The share charged for haste, where it is asked for; a rule set without it can't be asked.
fn rush_share(desk: &mut Desk<'_>, asked: &Asked) -> Option<Decimal> {
    if !asked.rush {
        return None;
    }
    let share = desk.rules.rush.as_ref().map(|rush| rush.share.0);
    if share.is_none() {
        desk.faults.push(Fault::refuse(
            "pricing.no_rush",
            "Rush",
            "the rule set has no price for haste",
            "",
            "Give it a [rush] table, or take the job in without",
        ));
    }
    share
}

fn rush(desk: &mut Desk<'_>, share: Decimal, subtotal: Worked<Money>) -> Option<Worked<Money>> {
    let round = desk.round(desk.rules.rounding.discount);
    let exact = Exact::from(subtotal.value).times(share)?;
    let amount = exact.to_money(desk.cent, round)?;
    let inputs = [
        ("subtotal", subtotal.into()),
        ("share", Given::prices(share)),
        ("cent", Given::prices(desk.cent)),
        ("way", Given::prices(round)),
    ];
    let subject = Subject::of("price", "rush");
    Some(desk.working.by(&laws::RUSH, subject, &inputs, amount))
}

type Inputs = Vec<(&'static str, Given)>;

/// Subtotal, rush and discounts as inputs, and what they come to.
fn before_least(
    desk: &mut Desk<'_>,
    subtotal: Worked<Money>,
    rush: Option<Worked<Money>>,
    discounts: &[DiscountLine],
) -> Option<(Inputs, Money)> {
    let zero = Money::zero(desk.cent.currency);
    let plus = rush.map_or(zero, |rush| rush.value);
    let mut sum = subtotal.value.checked_add(plus).ok()?;
    let given = rush.map_or(Given::job(zero), Given::from);
    let mut inputs = vec![("subtotal", subtotal.into()), ("rush", given)];
    for discount in discounts {
        sum = sum.checked_sub(discount.amount.value).ok()?;
        inputs.push(("discount", discount.amount.into()));
    }
    Some((inputs, sum))
}

/// What brings a small order to the least; zero where nothing does.
fn minimum(
    desk: &mut Desk<'_>,
    subtotal: Worked<Money>,
    rush: Option<Worked<Money>>,
    discounts: &[DiscountLine],
) -> Option<Worked<Money>> {
    let zero = Money::zero(desk.cent.currency);
    let least = desk.rules.minimum_order.map_or(zero, |least| least.0);
    let (mut inputs, sum) = before_least(desk, subtotal, rush, discounts)?;
    let missing = least.checked_sub(sum).ok()?;
    let missing = if missing.minor > 0 { missing } else { zero };
    inputs.push(("least", Given::prices(least)));
    let subject = Subject::of("price", "minimum_order");
    Some(desk.working.by(&laws::MINIMUM, subject, &inputs, missing))
}

fn sum(
    desk: &mut Desk<'_>,
    subtotal: Worked<Money>,
    rush: Option<Worked<Money>>,
    discounts: &[DiscountLine],
    minimum: Option<Worked<Money>>,
) -> Option<Worked<Money>> {
    let (mut inputs, sum) = before_least(desk, subtotal, rush, discounts)?;
    let zero = Money::zero(desk.cent.currency);
    let plus = minimum.map_or(zero, |minimum| minimum.value);
    inputs.push(("minimum", minimum.map_or(Given::job(zero), Given::from)));
    let sum = sum.checked_add(plus).ok()?;
    let subject = Subject::of("price", "sum");
    Some(desk.working.by(&laws::SUM, subject, &inputs, sum))
}
