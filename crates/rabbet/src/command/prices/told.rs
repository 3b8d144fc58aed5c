//! What a list changes, as a table.

use pricing::supplier::{Article, News, OfferChange, Preview};
use trade::{Cost, Per, Supply};
use web::wire;

use crate::report::{Group, Report};

/// How many articles of a group are shown before the rest are counted.
const FIRST: usize = 20;

/// The preview as a person reads it; rejected rows are always all shown.
pub fn as_table(preview: &Preview, all: bool) -> Report {
    let mut report = Report::default();
    let group = report.group(format!("{}, from {}", preview.supplier, preview.on));
    for (label, count) in wire::price_list_counts(preview) {
        group.row(label, count.to_string());
    }
    let limit = if all { usize::MAX } else { FIRST };
    let changed = |article: &&Article| matches!(article.news, News::Changed { .. });
    let (changed, new): (Vec<&Article>, Vec<&Article>) = preview.articles.iter().partition(changed);
    several(report.group("changed"), &changed, limit, |article| {
        (article.code.clone(), changes(article))
    });
    several(report.group("new"), &new, limit, |article| {
        let costs: Vec<String> = article
            .offers
            .iter()
            .map(|offer| amount(&offer.cost))
            .collect();
        let name = article.name.iter().cloned();
        (
            article.code.clone(),
            name.chain(costs).collect::<Vec<_>>().join(", "),
        )
    });
    gone_and_differing(preview, limit, &mut report);
    rejected(preview, &mut report);
    report
}

fn gone_and_differing(preview: &Preview, limit: usize, report: &mut Report) {
    several(report.group("discontinued"), &preview.gone, limit, |gone| {
        let why = match gone.row {
            Some(row) => format!("row {row} says so"),
            None => "the list has it no more".to_owned(),
        };
        (gone.code.clone(), why)
    });
    several(
        report.group("differs, and the catalogue stays"),
        &preview.differing,
        limit,
        |fact| {
            let said = format!(
                "row {}: {} is {} in the list and {} in the catalogue",
                fact.row, fact.field, fact.list, fact.catalogue
            );
            (fact.code.clone(), said)
        },
    );
}

/// Every one of them: a row that is not taken is never left unsaid.
fn rejected(preview: &Preview, report: &mut Report) {
    several(
        report.group("rejected"),
        &preview.rejected,
        usize::MAX,
        |rejected| {
            let row = format!("row {}", rejected.row);
            let told = rejected.to_string();
            let rest = told
                .strip_prefix(&format!("{row}, "))
                .unwrap_or(&told)
                .to_owned();
            (row, rest)
        },
    );
}

/// The first of some things, and how many more there are.
fn several<T>(group: &mut Group, things: &[T], limit: usize, row: impl Fn(&T) -> (String, String)) {
    for thing in things.iter().take(limit) {
        let (label, value) = row(thing);
        group.row(&label, value);
    }
    let more = things.len().saturating_sub(limit);
    if more > 0 {
        group.row(&format!("and {more} more"), "--all shows them".to_owned());
    }
}

fn changes(article: &Article) -> String {
    let mut told: Vec<String> = article.offers.iter().map(change).collect();
    if let News::Changed { returns: true } = article.news {
        told.push("sold again".to_owned());
    }
    told.join("; ")
}

fn change(offer: &OfferChange) -> String {
    let now = amount(&offer.cost);
    match &offer.before {
        Some(before) => {
            let percent = offer
                .tenths_of_percent()
                .map(|tenths| format!(", {} %", wire::tenths(tenths)));
            format!("{} -> {now}{}", before.price, percent.unwrap_or_default())
        }
        None => format!("{now}, not known before"),
    }
}

/// `3.40 USD per foot, chop`.
fn amount(cost: &Cost) -> String {
    let per = match (cost.per, cost.pack) {
        (Per::Each, None) => " each".to_owned(),
        (Per::Each, Some(pack)) => format!(" each in packs of {pack}"),
        (Per::Box, Some(pack)) => format!(" per box of {pack}"),
        (per, Some(pack)) => format!(" per {} in packs of {pack}", per.word()),
        (per, None) => format!(" per {}", per.word()),
    };
    let supply = match cost.supply {
        Supply::Length => String::new(),
        supply => format!(" ({})", supply.word()),
    };
    format!("{}{per}{supply}", cost.price)
}
