//! Prices: amounts as minor units of their currency, with text beside them.

mod list;

use measure::Money;
use pricing::{
    Alternative, Compared, Comparison, Opened, Part, PartCost, Priced, PricedLine, Proposal,
    Proposed, Quote, RuleSet, Totals, Verdict,
};
use serde_json::{Value, json};
use sizing::{Fault, Sizes};
use trade::{Catalogue, Job};
use working::{LineId, Worked, Working};

use super::faults;

pub use list::{price_list, price_list_counts, tenths};

/// An amount: minor units, the currency, and text.
pub fn money(money: Money) -> Value {
    json!({ "minor": money.minor, "currency": money.currency.code(), "text": money.to_string() })
}

/// An amount that `--why` explains.
fn worked(amount: Worked<Money>, working: &Working) -> Value {
    let mut value = money(amount.value);
    value["path"] = path(amount.line, working).into();
    value
}

fn path(line: LineId, working: &Working) -> String {
    working.line(line).subject.to_string()
}

fn some(amount: Option<Worked<Money>>, working: &Working) -> Value {
    amount.map_or(Value::Null, |amount| worked(amount, working))
}

fn some_money(amount: Option<Money>) -> Value {
    amount.map_or(Value::Null, money)
}

/// A price as the customer may read it; with `shop`, its cost, margin and minutes too.
pub fn priced(priced: &Priced, shop: bool) -> Value {
    let working = &priced.working;
    let mut value = json!({
        "currency": priced.currency.code(),
        "day": priced.day.to_string(),
        "refused": priced.is_refused(),
        "lines": priced.lines.iter().map(|one| line(one, working)).collect::<Vec<_>>(),
        "totals": totals(&priced.totals, working),
        "faults": faults(&priced.faults, working),
    });
    if shop {
        value["shop"] = json!({
            "cost": some(priced.shop.cost, working),
            "margin": some(priced.shop.margin, working),
            "margin_thousandths": priced.margin_thousandths(),
            "minutes": priced.shop.minutes,
            "labour": some(priced.shop.labour, working),
            "parts": priced.shop.parts.iter().map(|part| cost(part, working)).collect::<Vec<_>>(),
        });
    }
    value
}

fn line(line: &PricedLine, working: &Working) -> Value {
    json!({
        "rule": line.rule.id,
        "charges": Part::word(line.part),
        "part": line.name,
        "says": line.text(),
        "why": line.rule.why,
        "material": line.material.as_ref().map(|material| material.code.clone()),
        "quantity": line.quantity.to_string(),
        "unit": some(line.unit, working),
        "amount": worked(line.amount, working),
        "discount": money(line.discount),
    })
}

fn cost(part: &PartCost, working: &Working) -> Value {
    json!({
        "part": part.name,
        "material": part.material,
        "cost": some(part.cost, working),
        "unknown": part.unknown.as_ref().map(Fault::sentence),
    })
}

fn totals(totals: &Totals, working: &Working) -> Value {
    let discounts = totals.discounts.iter().map(|discount| {
        json!({
            "id": discount.id,
            "says": discount.says,
            "share": discount.share.percent(),
            "amount": worked(discount.amount, working),
        })
    });
    let taxes = totals.taxes.iter().map(|tax| {
        json!({
            "says": tax.says,
            "share": tax.share.percent(),
            "base": money(tax.base),
            "amount": money(tax.amount),
            "path": path(tax.line, working),
            "category": tax.category.code(),
        })
    });
    json!({
        "subtotal": worked(totals.subtotal, working),
        "rush": some(totals.rush, working),
        "discounts": discounts.collect::<Vec<_>>(),
        "minimum": some(totals.minimum, working),
        "rounding": some_money(totals.rounding),
        "net": worked(totals.net, working),
        "taxes": taxes.collect::<Vec<_>>(),
        "tax_inside": totals.tax_inside,
        "relief": some_money(totals.relief),
        "total": worked(totals.total, working),
        "deposit": some(totals.deposit, working),
        "balance": some(totals.balance, working),
    })
}

/// Alternatives side by side, each against the first.
pub fn alternatives(all: &[Alternative], shop: bool) -> Value {
    let each = all.iter().map(|one| {
        let differs = one.differs.iter().map(
            |differs| json!({ "part": differs.part, "first": differs.first, "this": differs.this }),
        );
        json!({
            "name": one.name,
            "difference": money(one.difference),
            "differs": differs.collect::<Vec<_>>(),
            "sizes_faults": faults(&one.sizes.faults, &one.sizes.working),
            "price": priced(&one.priced, shop),
        })
    });
    json!({ "alternatives": each.collect::<Vec<_>>() })
}

/// What can be done about a price, each proposal with the document it makes of the job.
pub fn proposed(all: &Proposed, job: &Job, catalogue: &Catalogue) -> Value {
    let one = |found: &Proposal| {
        let changes = found.changes.iter().map(
            |(change, saving)| json!({ "does": change.words(catalogue), "saving": money(*saving) }),
        );
        let after = found.applied(job);
        json!({
            "changes": changes.collect::<Vec<_>>(),
            "total": money(found.total),
            "saving": money(found.saving),
            "job": after.to_json(),
            "toml": after.to_toml(),
        })
    };
    json!({
        "before": money(all.before),
        "proposals": all.proposals.iter().map(one).collect::<Vec<_>>(),
        "looked_at": all.looked_at,
        "put_together": all.put_together,
        "deepest": all.deepest,
        "cheapest": all.cheapest.as_ref().map(one),
    })
}

/// A rule set with what is wrong with it by itself.
pub fn rules_checked(rules: &RuleSet, found: &[Fault]) -> Value {
    json!({
        "name": rules.name,
        "currency": rules.currency().code(),
        "holds_from": rules.holds_from.to_string(),
        "rules": rules.rules.len(),
        "faults": faults(found, &Working::default()),
    })
}

/// What another rule set does to pieces already priced.
pub fn comparison(comparison: &Comparison) -> Value {
    let one = |piece: &Compared| {
        let lines = piece.lines.iter().map(|line| {
            json!({
                "part": line.part,
                "rule": line.rule,
                "before": some_money(line.before),
                "after": some_money(line.after),
            })
        });
        json!({
            "name": piece.name,
            "before": money(piece.totals[0]),
            "after": money(piece.totals[1]),
            "difference": some_money(piece.difference),
            "lines": lines.collect::<Vec<_>>(),
            "faults": piece.faults.iter().map(Fault::sentence).collect::<Vec<_>>(),
        })
    };
    json!({
        "pieces": comparison.pieces.iter().map(one).collect::<Vec<_>>(),
        "idle": comparison.idle,
    })
}

/// A quote as given, without what only the shop sees unless it is asked for.
pub fn quote(quote: &Quote, shop: bool) -> Value {
    let mut value = json!(quote);
    if !shop {
        for inner in ["shop", "rules", "materials"] {
            value.as_object_mut().and_then(|whole| whole.remove(inner));
        }
    }
    value
}

/// What pricing a quote again says of it.
pub fn verdict(opened: &Opened) -> Value {
    match &opened.verdict {
        Verdict::Same => json!({ "word": "same" }),
        Verdict::Different(found) => {
            let found = found.iter().map(|difference| {
                json!({ "of": difference.of, "printed": difference.printed, "today": difference.today })
            });
            json!({ "word": "different", "differences": found.collect::<Vec<_>>() })
        }
        Verdict::Unknown(why) => json!({ "word": "unknown", "why": why }),
    }
}

/// What stands in the way of the piece itself, told beside its price.
pub fn price_of(sizes: &Sizes, price: &Priced, shop: bool) -> Value {
    let mut value = priced(price, shop);
    value["sizes_faults"] = faults(&sizes.faults, &sizes.working).into();
    value
}
