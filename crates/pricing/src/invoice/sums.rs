//! The arithmetic of an invoice, by the standard's rules.

use measure::Money;
use working::{Decimal, Round};

use super::{Adjustment, Breakdown, Invoice, InvoiceFault, InvoiceLine, TaxedAs};
use crate::exact::Exact;
use crate::priced::{Priced, PricedLine, Quantity, TaxGroup};
use crate::rules::{Class, RuleSet, TaxCategory};

/// The totals of an invoice (BG-22).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sums {
    /// The lines (BT-106).
    pub lines: Money,
    /// Allowances (BT-107).
    pub allowances: Money,
    /// Charges (BT-108).
    pub charges: Money,
    /// Without tax (BT-109).
    pub without_tax: Money,
    /// Tax (BT-110).
    pub tax: Money,
    /// With tax (BT-112).
    pub with_tax: Money,
    /// Paid already (BT-113).
    pub paid: Money,
    /// What rounding adds to what is due (BT-114).
    pub rounding: Money,
    /// What is due (BT-115).
    pub due: Money,
}

/// A rule of calculation with both of its sides.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Law {
    /// Its name in the standard.
    pub name: &'static str,
    /// What the invoice states.
    pub stated: Money,
    /// What the rule gives.
    pub given: Money,
}

/// A price sorted into what an invoice has.
pub(super) struct Sorted {
    pub lines: Vec<InvoiceLine>,
    pub adjustments: Vec<Adjustment>,
    pub breakdown: Vec<Breakdown>,
}

/// Something on the way to the invoice: a line of the price or an adjustment, in the price's own terms.
struct Element<'a> {
    line: Option<&'a PricedLine>,
    reason: &'a str,
    /// Below zero for an allowance.
    minor: i64,
}

pub(super) fn sorted(priced: &Priced, rules: &RuleSet) -> Result<Sorted, InvoiceFault> {
    let mut sorted = Sorted {
        lines: Vec::new(),
        adjustments: Vec::new(),
        breakdown: Vec::new(),
    };
    for group in &priced.totals.groups {
        let taxed = taxed_as(group, rules)?;
        let elements = elements(priced, rules, group).ok_or(InvoiceFault::TooLarge)?;
        if elements.is_empty() {
            continue;
        }
        let nets = nets(priced, group, &taxed, &elements).ok_or(InvoiceFault::TooLarge)?;
        let mut taxable = 0_i64;
        for (element, minor) in elements.iter().zip(nets) {
            taxable = taxable.checked_add(minor).ok_or(InvoiceFault::TooLarge)?;
            sorted.add(element, Money::new(minor, priced.currency), &taxed);
        }
        let taxable = Money::new(taxable, priced.currency);
        let tax = tax_on(taxable, taxed.share).ok_or(InvoiceFault::TooLarge)?;
        sorted.breakdown.push(Breakdown {
            taxed,
            taxable,
            tax,
        });
    }
    Ok(sorted)
}

/// BR-CO-17: the tax of a category is its sum times the rate, to the cent.
fn tax_on(taxable: Money, share: Decimal) -> Option<Money> {
    let cent = Money::new(1, taxable.currency);
    Exact::from(taxable)
        .times(share)?
        .to_money(cent, Round::TiesToAway)
}

/// How a group is taxed.
fn taxed_as(group: &TaxGroup, rules: &RuleSet) -> Result<TaxedAs, InvoiceFault> {
    let rates = &rules.tax.rates;
    match group.rates[..] {
        [] => {
            let untaxed = rules.tax.untaxed.as_ref().ok_or(InvoiceFault::Untaxed)?;
            Ok(TaxedAs {
                category: untaxed.category,
                share: Decimal::ZERO,
                reason: untaxed.reason.clone(),
            })
        }
        [rate] => Ok(TaxedAs {
            category: rates[rate].category,
            share: rates[rate].share.0,
            reason: None,
        }),
        [first, second, ..] => Err(InvoiceFault::Stacked {
            first: rates[first].says.clone(),
            second: rates[second].says.clone(),
        }),
    }
}

/// Whether lines of a class are in a group; the price of an exempt buyer is one group.
fn is_in(priced: &Priced, rules: &RuleSet, group: &TaxGroup, class: Class) -> bool {
    let exempt = priced.totals.groups.iter().all(|own| own.rates.is_empty());
    let rates = rules.tax.rates.iter().enumerate();
    let on = rates.filter(|(_, rate)| rate.is_on(class));
    exempt || on.map(|(place, _)| place).eq(group.rates.iter().copied())
}

/// What a group is made of: its lines, their discounts, haste, the least, and what the shown price adds.
fn elements<'a>(
    priced: &'a Priced,
    rules: &'a RuleSet,
    group: &TaxGroup,
) -> Option<Vec<Element<'a>>> {
    let is_in = |class: Class| is_in(priced, rules, group, class);
    let of_group = priced.lines.iter().filter(|line| is_in(line.class()));
    let mut found: Vec<Element<'a>> = Vec::new();
    let mut discount = 0_i64;
    for line in of_group {
        discount = discount.checked_add(line.discount.minor)?;
        found.push(Element {
            line: Some(line),
            reason: "",
            minor: line.amount.value.minor,
        });
    }
    let totals = &priced.totals;
    let says = rules
        .rush
        .as_ref()
        .map_or("Rush", |rush| rush.says.as_str());
    let rush = totals.rush.filter(|_| is_in(Class::Rush));
    let least = totals.minimum.filter(|_| is_in(Class::Minimum));
    let relief = totals.relief.map_or(0, |relief| relief.minor);
    let extras = [
        ("Discount", discount.checked_neg()?),
        (says, rush.map_or(0, |own| own.value.minor)),
        ("Minimum order", least.map_or(0, |own| own.value.minor)),
        ("Tax taken out", relief.checked_neg()?),
    ];
    found.extend(extras.into_iter().filter_map(adjusted));
    let sum = found
        .iter()
        .try_fold(0_i64, |sum, element| sum.checked_add(element.minor))?;
    let rest = group.base.minor.checked_sub(sum)?;
    found.extend(adjusted(("Price rounding", rest)));
    Some(found)
}

fn adjusted((reason, minor): (&str, i64)) -> Option<Element<'_>> {
    (minor != 0).then_some(Element {
        line: None,
        reason,
        minor,
    })
}

/// The elements without tax: as they are, or, where prices hold tax, each its part of the group's net.
fn nets(
    priced: &Priced,
    group: &TaxGroup,
    taxed: &TaxedAs,
    elements: &[Element<'_>],
) -> Option<Vec<i64>> {
    let plain = elements.iter().map(|element| element.minor);
    if !priced.totals.tax_inside || taxed.share.is_zero() {
        return Some(plain.collect());
    }
    let cent = Money::new(1, priced.currency);
    let with = Exact::ONE.plus(taxed.share)?;
    let net = |minor: i64| {
        let amount = Money::new(minor, priced.currency);
        let net = Exact::from(amount).over(with)?;
        net.to_money(cent, Round::TiesToAway).map(|net| net.minor)
    };
    let mut nets: Vec<i64> = plain.map(net).collect::<Option<_>>()?;
    let whole = net(group.base.minor)?;
    let sum = nets
        .iter()
        .try_fold(0_i64, |sum, net| sum.checked_add(*net))?;
    let largest = nets.iter_mut().max()?;
    *largest = largest.checked_add(whole.checked_sub(sum)?)?;
    Some(nets)
}

impl Sorted {
    fn add(&mut self, element: &Element<'_>, net: Money, taxed: &TaxedAs) {
        let Some(line) = element.line else {
            self.adjustments.push(Adjustment {
                is_charge: net.minor > 0,
                amount: Money {
                    minor: net.minor.saturating_abs(),
                    ..net
                },
                reason: element.reason.to_owned(),
                taxed: taxed.clone(),
            });
            return;
        };
        let (quantity, unit_code, price) = counted(line, net);
        self.lines.push(InvoiceLine {
            name: line.text(),
            description: line.name.clone(),
            quantity,
            unit_code,
            price,
            net,
            taxed: taxed.clone(),
        });
    }
}

/// Quantity, unit and price, where quantity times price is the line; else one of it at the line's amount.
fn counted(line: &PricedLine, net: Money) -> (String, &'static str, Money) {
    let one = ("1".to_owned(), "C62", net);
    let Some(unit) = line.unit.map(|unit| unit.value) else {
        return one;
    };
    let number = match line.quantity {
        Quantity::Length { length, per } => {
            let number = length.exact(per.unit());
            number.split(' ').next().unwrap_or_default().to_owned()
        }
        Quantity::Pieces(pieces) => pieces.to_string(),
        _ => return one,
    };
    let product = Decimal::read(&number)
        .and_then(|number| Exact::from(unit).times(number))
        .and_then(|all| all.to_money(Money::new(1, net.currency), Round::TowardZero));
    let exact = Decimal::read(&number)
        .and_then(|number| Exact::from(unit).times(number))
        .and_then(|all| all.at_most(net));
    if product == Some(net) && exact == Some(true) {
        (number, line.quantity.unit_code(), unit)
    } else {
        one
    }
}

impl Sums {
    pub(super) fn of(sorted: &Sorted, total: Money, paid: Money) -> Option<Self> {
        let add = |amounts: Vec<Money>| {
            amounts
                .into_iter()
                .try_fold(Money::zero(total.currency), |sum, amount| {
                    sum.checked_add(amount).ok()
                })
        };
        let lines = add(sorted.lines.iter().map(|line| line.net).collect())?;
        let of_kind = |is_charge: bool| {
            let own = sorted.adjustments.iter();
            own.filter(move |own| own.is_charge == is_charge)
                .map(|own| own.amount)
        };
        let allowances = add(of_kind(false).collect())?;
        let charges = add(of_kind(true).collect())?;
        let without_tax = lines.checked_sub(allowances).ok()?;
        let without_tax = without_tax.checked_add(charges).ok()?;
        let tax = add(sorted.breakdown.iter().map(|part| part.tax).collect())?;
        let with_tax = without_tax.checked_add(tax).ok()?;
        Some(Self {
            lines,
            allowances,
            charges,
            without_tax,
            tax,
            with_tax,
            paid,
            rounding: total.checked_sub(with_tax).ok()?,
            due: total.checked_sub(paid).ok()?,
        })
    }
}

/// BR-CO-10 to BR-CO-17, each with both sides.
pub(super) fn laws(invoice: &Invoice) -> Vec<Law> {
    let sums = invoice.sums;
    let sum = |amounts: &mut dyn Iterator<Item = Money>| {
        amounts.fold(Money::zero(sums.lines.currency), |sum, amount| Money {
            minor: sum.minor.saturating_add(amount.minor),
            ..sum
        })
    };
    let of_kind = |is_charge: bool| {
        let own = invoice.adjustments.iter();
        own.filter(move |own| own.is_charge == is_charge)
            .map(|own| own.amount)
    };
    let minor = |minor: i64| Money {
        minor,
        ..sums.lines
    };
    let net = sums.lines.minor - sums.allowances.minor + sums.charges.minor;
    let due = sums.with_tax.minor - sums.paid.minor + sums.rounding.minor;
    let law = |name, stated, given| Law {
        name,
        stated,
        given,
    };
    let mut laws = vec![
        law(
            "BR-CO-10",
            sums.lines,
            sum(&mut invoice.lines.iter().map(|line| line.net)),
        ),
        law("BR-CO-11", sums.allowances, sum(&mut of_kind(false))),
        law("BR-CO-12", sums.charges, sum(&mut of_kind(true))),
        law("BR-CO-13", sums.without_tax, minor(net)),
        law(
            "BR-CO-14",
            sums.tax,
            sum(&mut invoice.breakdown.iter().map(|part| part.tax)),
        ),
        law(
            "BR-CO-15",
            sums.with_tax,
            minor(sums.without_tax.minor + sums.tax.minor),
        ),
        law("BR-CO-16", sums.due, minor(due)),
    ];
    for part in &invoice.breakdown {
        let given = tax_on(part.taxable, part.taxed.share).unwrap_or(part.taxable);
        laws.push(law("BR-CO-17", part.tax, given));
        laws.push(law(by_category(part), part.taxable, taxable(invoice, part)));
    }
    laws
}

/// What a category's taxable sum is by its lines, allowances and charges.
fn taxable(invoice: &Invoice, part: &Breakdown) -> Money {
    let lines = invoice.lines.iter();
    let lines = lines.filter(|line| line.taxed == part.taxed);
    let own = invoice.adjustments.iter();
    let own = own.filter(|own| own.taxed == part.taxed);
    let signed = own.map(|own| {
        if own.is_charge {
            own.amount.minor
        } else {
            -own.amount.minor
        }
    });
    Money {
        minor: lines.map(|line| line.net.minor).chain(signed).sum(),
        ..part.taxable
    }
}

const fn by_category(part: &Breakdown) -> &'static str {
    match part.taxed.category {
        TaxCategory::S => "BR-S-8",
        TaxCategory::Z => "BR-Z-8",
        TaxCategory::E => "BR-E-8",
        TaxCategory::O => "BR-O-8",
    }
}
