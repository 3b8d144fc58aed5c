//! The price that is shown: a multiple of the shop's step, split again into net and tax.

use measure::Money;
use sizing::Fault;
use working::{Given, Round, Subject, Worked};

use super::{all_shares, of_line, on_base};
use crate::desk::Desk;
use crate::exact::Exact;
use crate::laws;
use crate::priced::{TaxGroup, TaxLine};

type Shown = (Worked<Money>, Option<Money>);

/// The total as it is shown, and what that adds before tax (where tax is inside: to the total).
///
/// Shape:  the group with the largest base takes the difference: its gross is split again by its rates.
pub(super) fn shown(
    desk: &mut Desk<'_>,
    total: Worked<Money>,
    taxes: &mut [TaxLine],
    groups: &mut [TaxGroup],
) -> Option<Shown> {
    let (shown, difference) = plain(desk, total)?;
    let Some(difference) = difference else {
        return Some((total, None));
    };
    let group = groups
        .iter_mut()
        .rev()
        .max_by_key(|group| group.base.minor)?;
    let after = group.base.checked_add(difference).ok()?;
    if difference.minor < 0 && (shown.value.minor == 0 || after.minor < 0) {
        desk.faults.push(to_nothing(total.value));
    }
    if group.rates.is_empty() {
        group.base = after;
        return Some((shown, Some(difference)));
    }
    let (added, parts) = if desk.rules.tax.inside {
        (difference, changes_inside(desk, difference, group)?)
    } else {
        let added = resplit(desk, (total, shown), taxes, group)?;
        let change = difference.checked_sub(added).ok()?;
        (added, spread(desk, change, group)?)
    };
    group.base = group.base.checked_add(added).ok()?;
    change_taxes(desk, (&parts, added), group, taxes)?;
    Some((shown, Some(added)))
}

fn to_nothing(total: Money) -> Fault {
    Fault::refuse(
        "pricing.shown_nothing",
        "Total",
        format!("the shown price of {total} is rounded down by more than one of its sums comes to"),
        "its step is too large for so small a total",
        "Make the step of the shown price smaller, or round it up",
    )
}

/// The total rounded to the step, and the difference, where there is one.
pub(super) fn plain(desk: &mut Desk<'_>, total: Worked<Money>) -> Option<Shown> {
    let Some(rule) = &desk.rules.rounding.shown else {
        return Some((total, None));
    };
    let (step, round) = (rule.step.0, desk.round(rule.way));
    let shown = Exact::from(total.value).to_money(step, round)?;
    let difference = shown.checked_sub(total.value).ok()?;
    if difference.minor == 0 {
        return Some((total, None));
    }
    let inputs = [
        ("total", total.into()),
        ("step", Given::prices(step)),
        ("way", Given::prices(round)),
    ];
    let subject = Subject::of("price", "shown");
    let shown = desk.working.by(&laws::SHOWN, subject, &inputs, shown);
    Some((shown, Some(difference)))
}

/// What the group's net gains where its gross, with the difference, is split again.
fn resplit(
    desk: &mut Desk<'_>,
    (total, shown): (Worked<Money>, Worked<Money>),
    taxes: &[TaxLine],
    group: &TaxGroup,
) -> Option<Money> {
    let inputs = [("amount", Given::prices(group.base))];
    let subject = Subject::of("price", "shown_base");
    let base = desk.working.by(&laws::BASE, subject, &inputs, group.base);
    let mut gross = shown.value.checked_sub(total.value).ok()?;
    gross = gross.checked_add(base.value).ok()?;
    let mut inputs = vec![
        ("base", base.into()),
        ("shown", shown.into()),
        ("total", total.into()),
    ];
    for rate in &group.rates {
        let tax = if let Some(tax) = whole(desk, *rate, group, taxes) {
            (of_line(tax), tax.amount)
        } else {
            let tax = on_base(desk, *rate, base, &group.rates)?;
            (tax.into(), tax.value)
        };
        inputs.push(("tax", tax.0));
        gross = gross.checked_add(tax.1).ok()?;
    }
    let subject = Subject::of("price", "gross");
    let gross = desk.working.by(&laws::GROSS, subject, &inputs, gross);
    let round = desk.round(desk.rules.rounding.tax);
    let net = Exact::from(gross.value).over(all_shares(desk, &group.rates)?)?;
    let net = net.to_money(desk.cent, round)?;
    let mut inputs = vec![
        ("gross", gross.into()),
        ("cent", Given::prices(desk.cent)),
        ("way", Given::prices(round)),
    ];
    let shares = group.rates.iter();
    let shares = shares.map(|place| desk.rules.tax.rates[*place].share.0);
    inputs.extend(shares.map(|share| ("shares", Given::prices(share))));
    let subject = Subject::of("price", "resplit");
    let net = desk.working.by(&laws::RESPLIT, subject, &inputs, net);
    net.value.checked_sub(base.value).ok()
}

/// The tax of a rate, where the group is all that it is on.
fn whole<'t>(
    desk: &Desk<'_>,
    rate: usize,
    group: &TaxGroup,
    taxes: &'t [TaxLine],
) -> Option<&'t TaxLine> {
    let says = &desk.rules.tax.rates[rate].says;
    let tax = taxes.iter().find(|tax| tax.says == *says)?;
    (tax.base == group.base).then_some(tax)
}

/// How much more tax of each of the group's rates is inside its amount where that grows by a difference: both
/// amounts are split as every tax inside is, so that what was reckoned on the whole group comes out as if it were
/// reckoned on the shown price.
fn changes_inside(desk: &Desk<'_>, difference: Money, group: &TaxGroup) -> Option<Vec<Money>> {
    let round = desk.round(desk.rules.rounding.tax);
    let all = all_shares(desk, &group.rates)?;
    let grown = group.base.checked_add(difference).ok()?;
    let inside = |amount: Money, rate: usize| {
        Exact::from(amount)
            .times(desk.rules.tax.rates[rate].share.0)?
            .over(all)?
            .to_money(desk.cent, round)
    };
    let change = |rate: &usize| {
        let before = inside(group.base, *rate)?;
        inside(grown, *rate)?.checked_sub(before).ok()
    };
    group.rates.iter().map(change).collect()
}

/// A change of the tax spread over the group's rates, in proportion to them, so that the parts sum to it.
fn spread(desk: &Desk<'_>, change: Money, group: &TaxGroup) -> Option<Vec<Money>> {
    let rates = &desk.rules.tax.rates;
    let all = group
        .rates
        .iter()
        .try_fold(Exact::ZERO, |sum, place| sum.plus(rates[*place].share.0))?;
    let (mut so_far, mut given) = (Exact::ZERO, 0_i64);
    let mut parts = Vec::with_capacity(group.rates.len());
    for place in &group.rates {
        so_far = so_far.plus(rates[*place].share.0)?;
        let until = match so_far.times(change.minor)?.over(all) {
            Some(until) => until.to_whole(Round::TiesToAway)?,
            None => change.minor,
        };
        parts.push(Money {
            minor: until.checked_sub(given)?,
            ..change
        });
        given = until;
    }
    Some(parts)
}

/// Changes the taxes of the group's rates, each by its part; their bases grow by what the group's grows.
fn change_taxes(
    desk: &mut Desk<'_>,
    (parts, added): (&[Money], Money),
    group: &TaxGroup,
    taxes: &mut [TaxLine],
) -> Option<()> {
    let rates = &desk.rules.tax.rates;
    for (place, part) in group.rates.iter().zip(parts) {
        let tax = taxes
            .iter_mut()
            .find(|tax| tax.says == rates[*place].says)?;
        let after = tax.amount.checked_add(*part).ok()?;
        let inputs = [("before", of_line(tax)), ("change", Given::prices(*part))];
        let subject = Subject::nth("price", *place, "tax");
        let worked = desk.working.by(&laws::TAX_CHANGED, subject, &inputs, after);
        tax.base = tax.base.checked_add(added).ok()?;
        tax.amount = after;
        tax.line = worked.line;
    }
    Some(())
}
