//! How money stands in a table.

use measure::Money;
use pricing::{Alternative, Comparison, Priced, Quote, RuleSet, Totals};
use working::{LineId, Worked, Working};

use super::{Group, Report};

/// Amounts of one table, the widest known so that they end at one edge.
#[derive(Clone, Copy)]
struct Column<'a> {
    width: usize,
    working: Option<&'a Working>,
}

impl Column<'_> {
    fn amount(self, amount: Money) -> String {
        let width = self.width;
        format!("{:>width$}", amount.to_string())
    }

    /// Taken off: with a minus before it.
    fn less(self, amount: Money) -> String {
        let width = self.width;
        format!("{:>width$}", less(amount))
    }

    fn path(self, line: LineId) -> String {
        let line = self.working.map(|working| working.line(line));
        line.map_or_else(String::new, |line| line.subject.to_string())
    }

    fn worked(self, group: &mut Group, label: &str, amount: Worked<Money>) {
        group.row_with_path(label, self.amount(amount.value), self.path(amount.line));
    }

    fn some(self, group: &mut Group, label: &str, amount: Option<Worked<Money>>) {
        if let Some(amount) = amount {
            self.worked(group, label, amount);
        }
    }

    fn some_plain(self, group: &mut Group, label: &str, amount: Option<Money>) {
        group.some(label, amount.map(|amount| self.amount(amount)));
    }
}

/// A price: its lines, what is reckoned on them, and with `shop` what only the shop sees.
pub fn of_price(priced: &Priced, rules: &RuleSet, shop: bool) -> Report {
    let mut report = Report::default();
    let amounts = priced.lines.iter().map(|line| line.amount.value);
    let column = Column {
        width: widest(amounts.chain([priced.totals.total.value])),
        working: Some(&priced.working),
    };
    let lines = report.group(format!("{}, {}", rules.name, priced.day));
    for line in &priced.lines {
        let unit = line.unit.map(|unit| format!(" at {}", unit.value));
        let value = format!(
            "{}  {}{}",
            column.amount(line.amount.value),
            line.quantity,
            unit.unwrap_or_default()
        );
        let label = format!("{} ({})", line.text(), line.name);
        lines.row_with_path(&label, value, column.path(line.amount.line));
    }
    totals(report.group("In all"), &priced.totals, column);
    if shop {
        shops_side(&mut report, priced);
    }
    report
}

fn totals(group: &mut Group, totals: &Totals, column: Column<'_>) {
    column.worked(group, "Lines together", totals.subtotal);
    column.some(group, "Haste", totals.rush);
    for discount in &totals.discounts {
        let label = format!("{}, {}", discount.says, discount.share.percent());
        let amount = discount.amount;
        group.row_with_path(&label, column.less(amount.value), column.path(amount.line));
    }
    column.some(group, "Up to the least order", totals.minimum);
    column.some_plain(group, "Rounding of the price", totals.rounding);
    column.worked(group, "Before tax", totals.net);
    for tax in &totals.taxes {
        let label = format!("{}, {} on {}", tax.says, tax.share.percent(), tax.base);
        group.row_with_path(&label, column.amount(tax.amount), column.path(tax.line));
    }
    column.some_plain(group, "Tax spared", totals.relief);
    let total = if totals.tax_inside {
        "Total, tax inside"
    } else {
        "Total"
    };
    column.worked(group, total, totals.total);
    column.some(group, "Deposit", totals.deposit);
    column.some(group, "Balance", totals.balance);
}

fn shops_side(report: &mut Report, priced: &Priced) {
    let shop = &priced.shop;
    let costs = shop.parts.iter().filter_map(|part| part.cost);
    let column = Column {
        width: widest(
            costs
                .chain(shop.cost)
                .chain(shop.margin)
                .map(|cost| cost.value),
        ),
        working: Some(&priced.working),
    };
    let group = report.group("The shop's side, not for the customer");
    for part in &shop.parts {
        let material = part.material.as_deref();
        let label = material.map_or_else(
            || part.name.clone(),
            |code| format!("{} ({code})", part.name),
        );
        match (part.cost, &part.unknown) {
            (Some(cost), _) => column.worked(group, &label, cost),
            (None, Some(fault)) => {
                group.row(&label, fault.sentence());
            }
            (None, None) => {
                group.row(&label, "no material".to_owned());
            }
        }
    }
    column.some(group, "Labour", shop.labour);
    group.row("Minutes", shop.minutes.to_string());
    if let Some(cost) = shop.cost {
        column.worked(group, "Cost", cost);
    } else {
        let words = "not known while a part's cost is not";
        group.row("Cost", words.to_owned());
    }
    column.some(group, "Margin", shop.margin);
    group.some("Margin, share", priced.margin_thousandths().map(share));
}

/// Thousandths as a percentage: `41.2 %`.
fn share(thousandths: i64) -> String {
    let sign = if thousandths < 0 { "−" } else { "" };
    let whole = thousandths.unsigned_abs();
    format!("{sign}{}.{} %", whole / 10, whole % 10) // geometry: tenths of a per cent
}

/// Alternatives side by side: each against the first.
pub fn of_alternatives(all: &[Alternative], shop: bool) -> Report {
    let mut report = Report::default();
    for (at, one) in all.iter().enumerate() {
        let totals = &one.priced.totals;
        let mut amounts = vec![totals.total.value, totals.net.value];
        amounts.extend(totals.taxes.iter().map(|tax| tax.amount));
        let column = Column {
            width: widest(amounts.into_iter()) + 1,
            working: None,
        };
        let group = report.group(format!("{}: {}", at + 1, one.name));
        column.worked(group, "Before tax", totals.net);
        for tax in &totals.taxes {
            group.row(&tax.says, column.amount(tax.amount));
        }
        column.worked(group, "Total", totals.total);
        if at > 0 {
            let (width, difference) = (column.width, signed(one.difference));
            group.row("Against the first", format!("{difference:>width$}"));
        }
        if shop {
            column.some(group, "Cost", one.priced.shop.cost);
            column.some(group, "Margin", one.priced.shop.margin);
            group.row("Minutes", one.priced.shop.minutes.to_string());
        }
        let none = || "none".to_owned();
        for differs in &one.differs {
            let first = differs.first.clone().unwrap_or_else(none);
            let this = differs.this.clone().unwrap_or_else(none);
            group.row(&differs.part, format!("{this}  [first: {first}]"));
        }
        if at > 0 && one.differs.is_empty() {
            group.row("Parts", "all as in the first".to_owned());
        }
    }
    report
}

/// What new rules do, piece by piece.
pub fn of_comparison(comparison: &Comparison) -> Report {
    let mut report = Report::default();
    for piece in &comparison.pieces {
        let [before, after] = piece.totals;
        let group = report.group(&piece.name);
        let difference = match piece.difference {
            Some(difference) => signed(difference),
            None => "in another currency".to_owned(),
        };
        group.row("Total", format!("{before} → {after}  {difference}"));
        for line in &piece.lines {
            let told = |amount: Option<Money>| {
                amount.map_or_else(|| "not charged".to_owned(), |amount| amount.to_string())
            };
            let label = format!("{} ({})", line.part, line.rule);
            group.row(
                &label,
                format!("{} → {}", told(line.before), told(line.after)),
            );
        }
        if piece.lines.is_empty() {
            group.row("Lines", "none changes".to_owned());
        }
    }
    if !comparison.idle.is_empty() {
        let group = report.group("New rules that charged for nothing here");
        for id in &comparison.idle {
            group.row(id, String::new());
        }
    }
    report
}

/// A quote with its own numbers, as it was given.
pub fn of_quote(quote: &Quote, shop: bool) -> Report {
    let mut report = Report::default();
    let amounts = quote.lines.iter().map(|line| line.amount.0);
    let column = Column {
        width: widest(amounts.chain([quote.total()])),
        working: None,
    };
    let lines = report.group(format!("Quote {} of {}", quote.number, quote.given));
    for line in &quote.lines {
        let unit = line.unit.map(|unit| format!(" at {}", unit.0));
        let value = format!(
            "{}  {}{}",
            column.amount(line.amount.0),
            line.quantity,
            unit.unwrap_or_default()
        );
        lines.row(&format!("{} ({})", line.says, line.part), value);
    }
    quoted_totals(report.group("In all"), quote, column);
    let standing = report.group("It stands");
    let until = quote.valid_to.map_or_else(
        || "until it is withdrawn".to_owned(),
        |last| last.to_string(),
    );
    standing.row("From", quote.given.to_string());
    standing.row("Until", until);
    for term in &quote.terms {
        standing.row("Terms", term.clone());
    }
    if shop {
        let group = report.group("The shop's side, not for the customer");
        column.some_plain(group, "Cost", quote.shop.cost.map(|cost| cost.0));
        column.some_plain(group, "Margin", quote.shop.margin.map(|margin| margin.0));
        group.row("Minutes", quote.shop.minutes.to_string());
    }
    report
}

fn quoted_totals(group: &mut Group, quote: &Quote, column: Column<'_>) {
    let totals = &quote.totals;
    let mut plain = |label: &str, amount: Option<pricing::Amount>| {
        column.some_plain(group, label, amount.map(|amount| amount.0));
    };
    plain("Lines together", Some(totals.subtotal));
    plain("Haste", totals.rush);
    for discount in &totals.discounts {
        group.row(&discount.says, column.less(discount.amount.0));
    }
    let mut plain = |label: &str, amount: Option<pricing::Amount>| {
        column.some_plain(group, label, amount.map(|amount| amount.0));
    };
    plain("Up to the least order", totals.minimum);
    plain("Rounding of the price", totals.rounding);
    plain("Before tax", Some(totals.net));
    for tax in &totals.taxes {
        let label = format!("{}, {} on {}", tax.says, tax.share.percent(), tax.base.0);
        plain(&label, Some(tax.amount));
    }
    plain("Tax spared", totals.relief);
    plain("Total", Some(totals.total));
    plain("Deposit", totals.deposit);
    plain("Balance", totals.balance);
}

/// As wide as the widest, with its minus.
fn widest(amounts: impl Iterator<Item = Money>) -> usize {
    let widths = amounts.map(|amount| amount.to_string().chars().count());
    widths.max().unwrap_or_default()
}

fn less(amount: Money) -> String {
    format!("−{amount}")
}

/// With its sign: `+3.00 USD`, `−3.00 USD`.
fn signed(amount: Money) -> String {
    let minor = amount.minor;
    match minor {
        0 => "no difference".to_owned(),
        1.. => format!("+{amount}"),
        _ => less(Money {
            minor: minor.saturating_neg(),
            ..amount
        }),
    }
}
