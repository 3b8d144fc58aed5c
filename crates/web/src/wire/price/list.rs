//! What a supplier's price list changes, for programs.

use pricing::supplier::{Article, News, Preview};
use serde_json::{Value, json};

/// What a list changes: counts, articles with their prices, and every row that is not taken with its reason.
pub fn price_list(preview: &Preview) -> Value {
    let mut totals = serde_json::Map::new();
    for (label, count) in price_list_counts(preview) {
        totals.insert(label.replace(' ', "_"), count.into());
    }
    json!({
        "supplier": preview.supplier,
        "on": preview.on.to_string(),
        "counts": totals,
        "articles": preview.articles.iter().map(article).collect::<Vec<_>>(),
        "discontinued": preview.gone.iter().map(|gone| json!({
            "row": gone.row,
            "code": gone.code,
            "supplier_code": gone.supplier_code,
        })).collect::<Vec<_>>(),
        "differing": preview.differing.iter().map(|fact| json!({
            "row": fact.row,
            "code": fact.code,
            "field": fact.field,
            "list": fact.list,
            "catalogue": fact.catalogue,
        })).collect::<Vec<_>>(),
        "rejected": preview.rejected.iter().map(|rejected| json!({
            "row": rejected.row,
            "supplier_code": rejected.code,
            "column": rejected.column,
            "value": rejected.value,
            "code": rejected.reason.code(),
            "reason": rejected.reason.to_string(),
        })).collect::<Vec<_>>(),
    })
}

/// How many rows and articles there are of each kind, by its name.
pub fn price_list_counts(preview: &Preview) -> [(&'static str, usize); 7] {
    let new = preview.new_articles();
    let count = |rows: u32| usize::try_from(rows).unwrap_or(usize::MAX);
    [
        ("rows", count(preview.rows)),
        ("new", new),
        ("changed", preview.articles.len() - new),
        ("same", count(preview.same)),
        ("discontinued", preview.gone.len()),
        ("left out", count(preview.left_out)),
        ("rejected", count(preview.rejected_rows)),
    ]
}

/// Tenths with their sign: `+6.3`.
pub fn tenths(tenths: i64) -> String {
    let sign = if tenths < 0 { '-' } else { '+' };
    let size = tenths.unsigned_abs();
    format!("{sign}{}.{}", size / 10, size % 10)
}

fn article(article: &Article) -> Value {
    let (news, returns) = match article.news {
        News::New { .. } => ("new", false),
        News::Changed { returns } => ("changed", returns),
    };
    json!({
        "row": article.row,
        "code": article.code,
        "supplier_code": article.supplier_code,
        "name": article.name,
        "news": news,
        "returns": returns,
        "prices": article.offers.iter().map(|offer| json!({
            "price": offer.cost.price,
            "per": offer.cost.per,
            "as": offer.cost.supply,
            "pack": offer.cost.pack,
            "before": offer.before.as_ref().map(|before| before.price),
            "percent": offer.tenths_of_percent().map(tenths),
        })).collect::<Vec<_>>(),
    })
}
