//! Tax: several rates, on classes of line, added or inside, on each total or line by line; and the price that
//! is shown, split again into net and tax.

mod shown;

use measure::Money;
use working::{Decimal, Given, Subject, Worked};

use crate::desk::Desk;
use crate::exact::Exact;
use crate::laws;
use crate::priced::{PricedLine, TaxGroup, TaxLine};
use crate::rules::Class;

/// Something that tax may be on.
#[derive(Clone, Debug)]
pub(super) struct Entry {
    rates: Vec<usize>,
    amount: Worked<Money>,
    discount: Money,
}

/// What tax comes to.
pub(super) struct Taxed {
    pub net: Worked<Money>,
    pub taxes: Vec<TaxLine>,
    pub rounding: Option<Money>,
    pub relief: Option<Money>,
    pub total: Worked<Money>,
    pub groups: Vec<TaxGroup>,
}

/// Lines, haste and the least, each with the rates that are on it.
pub(super) fn entries(
    desk: &Desk<'_>,
    lines: &[PricedLine],
    rush: Option<Worked<Money>>,
    minimum: Option<Worked<Money>>,
) -> Vec<Entry> {
    let zero = Money::zero(desk.cent.currency);
    let rates = |class: Class| -> Vec<usize> {
        let rates = desk.rules.tax.rates.iter().enumerate();
        let on = rates.filter(|(_, rate)| rate.is_on(class));
        on.map(|(place, _)| place).collect()
    };
    let of_lines = lines.iter().map(|line| Entry {
        rates: rates(line.class()),
        amount: line.amount,
        discount: line.discount,
    });
    let extra = |class: Class, amount: Worked<Money>| Entry {
        rates: rates(class),
        amount,
        discount: zero,
    };
    let rush = rush.map(|amount| extra(Class::Rush, amount));
    let minimum = minimum.map(|amount| extra(Class::Minimum, amount));
    of_lines.chain(rush).chain(minimum).collect()
}

/// Tax, total and net; an exempt customer pays none.
pub(super) fn tax(
    desk: &mut Desk<'_>,
    exempt: bool,
    sum: Worked<Money>,
    entries: &[Entry],
) -> Option<Taxed> {
    let inside = desk.rules.tax.inside;
    let mut groups = groups(entries, desk.cent)?;
    let mut taxes = Vec::new();
    if !exempt || inside {
        for rate in 0..desk.rules.tax.rates.len() {
            one(desk, rate, entries, &groups, &mut taxes)?;
        }
    }
    let total = total(desk, sum, &taxes)?;
    if exempt && inside {
        return relieved(desk, total, &taxes);
    }
    if exempt {
        groups = untaxed(sum.value);
    }
    let (total, rounding) = shown::shown(desk, total, &mut taxes, &mut groups)?;
    let net = net(desk, total, &taxes)?;
    Some(Taxed {
        net,
        taxes,
        rounding,
        relief: None,
        total,
        groups,
    })
}

/// What is taxed alike, in the order of the rates.
fn groups(entries: &[Entry], cent: Money) -> Option<Vec<TaxGroup>> {
    let mut groups: Vec<TaxGroup> = Vec::new();
    for entry in entries {
        let net = entry.amount.value.checked_sub(entry.discount).ok()?;
        match groups.iter_mut().find(|group| group.rates == entry.rates) {
            Some(group) => group.base = group.base.checked_add(net).ok()?,
            None => groups.push(TaxGroup {
                rates: entry.rates.clone(),
                base: net,
            }),
        }
    }
    if groups.is_empty() {
        groups.push(TaxGroup {
            rates: Vec::new(),
            base: Money::zero(cent.currency),
        });
    }
    groups.sort_by(|one, other| one.rates.cmp(&other.rates));
    Some(groups)
}

/// One rate's tax, added to the list; nothing where no line is under it.
fn one(
    desk: &mut Desk<'_>,
    rate: usize,
    entries: &[Entry],
    groups: &[TaxGroup],
    taxes: &mut Vec<TaxLine>,
) -> Option<()> {
    let parts = parts(desk, rate, entries, groups);
    if parts.is_empty() {
        return Some(());
    }
    let mut base = Money::zero(desk.cent.currency);
    let mut amount = base;
    let mut found = Vec::with_capacity(parts.len());
    for part in &parts {
        let of_part = worked_base(desk, rate, part)?;
        let shares = &part.first()?.rates;
        let tax = on_base(desk, rate, of_part, shares)?;
        base = base.checked_add(of_part.value).ok()?;
        amount = amount.checked_add(tax.value).ok()?;
        found.push(tax);
    }
    let line = if let [tax] = found[..] {
        tax
    } else {
        let inputs: Vec<_> = found
            .iter()
            .map(|tax| ("line_tax", (*tax).into()))
            .collect();
        let subject = Subject::nth("price", rate, "tax");
        desk.working.by(&laws::TAX_LINES, subject, &inputs, amount)
    };
    let rate = &desk.rules.tax.rates[rate];
    taxes.push(TaxLine {
        says: rate.says.clone(),
        share: rate.share.0,
        base,
        amount,
        line: line.line,
        category: rate.category,
    });
    Some(())
}

/// What a rate is on, in the parts that are each rounded by itself.
fn parts<'e>(
    desk: &Desk<'_>,
    rate: usize,
    entries: &'e [Entry],
    groups: &[TaxGroup],
) -> Vec<Vec<&'e Entry>> {
    let on: Vec<&Entry> = entries
        .iter()
        .filter(|entry| entry.rates.contains(&rate))
        .collect();
    if on.is_empty() {
        return Vec::new();
    }
    let taxes = &desk.rules.tax;
    if taxes.per_line {
        return on.iter().map(|entry| vec![*entry]).collect();
    }
    if !taxes.inside {
        return vec![on];
    }
    let alike = |group: &TaxGroup| -> Vec<&'e Entry> {
        let alike = on.iter().filter(|entry| entry.rates == group.rates);
        alike.copied().collect()
    };
    let parts = groups.iter().map(alike);
    parts.filter(|part| !part.is_empty()).collect()
}

fn worked_base(desk: &mut Desk<'_>, rate: usize, entries: &[&Entry]) -> Option<Worked<Money>> {
    let mut base = Money::zero(desk.cent.currency);
    let mut inputs: Vec<(&'static str, Given)> = Vec::with_capacity(entries.len());
    for entry in entries {
        let net = entry.amount.value.checked_sub(entry.discount).ok()?;
        base = base.checked_add(net).ok()?;
        inputs.push(("amount", entry.amount.into()));
        if entry.discount.minor != 0 {
            inputs.push(("discount", Given::prices(entry.discount)));
        }
    }
    let subject = Subject::nth("price", rate, "tax_base");
    Some(desk.working.by(&laws::BASE, subject, &inputs, base))
}

/// Tax of one rate on a base; `shares` are the places of all rates on it.
pub(super) fn on_base(
    desk: &mut Desk<'_>,
    rate: usize,
    base: Worked<Money>,
    shares: &[usize],
) -> Option<Worked<Money>> {
    let rates = &desk.rules.tax.rates;
    let share = rates[rate].share.0;
    let round = desk.round(desk.rules.rounding.tax);
    let mut inputs = vec![
        ("base", base.into()),
        ("share", Given::prices(share)),
        ("cent", Given::prices(desk.cent)),
        ("way", Given::prices(round)),
    ];
    let mut exact = Exact::from(base.value).times(share)?;
    let mut law = &laws::TAX_ADDED;
    if desk.rules.tax.inside {
        law = &laws::TAX_INSIDE;
        exact = exact.over(all_shares(desk, shares)?)?;
        let shares = shares.iter().map(|place| rates[*place].share.0);
        inputs.extend(shares.map(|share| ("shares", Given::prices(share))));
    }
    let tax = exact.to_money(desk.cent, round)?;
    let subject = Subject::nth("price", rate, "tax");
    Some(desk.working.by(law, subject, &inputs, tax))
}

/// One and the rates at these places.
pub(super) fn all_shares(desk: &Desk<'_>, places: &[usize]) -> Option<Exact> {
    let shares = places
        .iter()
        .map(|place| desk.rules.tax.rates[*place].share.0);
    { shares }.try_fold(Exact::ONE, |sum: Exact, share: Decimal| sum.plus(share))
}

/// The sum, and its tax where that is added.
fn total(desk: &mut Desk<'_>, sum: Worked<Money>, taxes: &[TaxLine]) -> Option<Worked<Money>> {
    let mut total = sum.value;
    let mut inputs = vec![("sum", Given::from(sum))];
    if !desk.rules.tax.inside {
        for tax in taxes {
            total = total.checked_add(tax.amount).ok()?;
            inputs.push(("tax", of_line(tax)));
        }
    }
    let subject = Subject::of("price", "total");
    Some(desk.working.by(&laws::TOTAL, subject, &inputs, total))
}

/// A tax as an input: what its line holds.
pub(super) fn of_line(tax: &TaxLine) -> Given {
    Given::from(Worked {
        value: tax.amount,
        line: tax.line,
    })
}

fn net(desk: &mut Desk<'_>, total: Worked<Money>, taxes: &[TaxLine]) -> Option<Worked<Money>> {
    let mut net = total.value;
    let mut inputs = vec![("total", Given::from(total))];
    for tax in taxes {
        net = net.checked_sub(tax.amount).ok()?;
        inputs.push(("tax", of_line(tax)));
    }
    let subject = Subject::of("price", "net");
    Some(desk.working.by(&laws::NET, subject, &inputs, net))
}

/// The price of an exempt customer where prices hold their tax.
fn relieved(desk: &mut Desk<'_>, with: Worked<Money>, taxes: &[TaxLine]) -> Option<Taxed> {
    let mut relief = Money::zero(desk.cent.currency);
    let mut inputs = vec![("with", Given::from(with))];
    for tax in taxes {
        relief = relief.checked_add(tax.amount).ok()?;
        inputs.push(("tax", of_line(tax)));
    }
    let total = with.value.checked_sub(relief).ok()?;
    let subject = Subject::of("price", "total");
    let total = desk.working.by(&laws::RELIEF, subject, &inputs, total);
    let (total, rounding) = shown::plain(desk, total)?;
    let net = net(desk, total, &[])?;
    let groups = untaxed(total.value);
    Some(Taxed {
        net,
        taxes: Vec::new(),
        rounding,
        relief: Some(relief),
        total,
        groups,
    })
}

/// All of it under no rate.
fn untaxed(base: Money) -> Vec<TaxGroup> {
    let rates = Vec::new();
    vec![TaxGroup { rates, base }]
}
