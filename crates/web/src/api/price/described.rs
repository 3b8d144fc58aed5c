//! The price's addresses, for the API's own description.

use pricing::{MOST_ALTERNATIVES, Quote};
use serde_json::{Map, Value, json};

use crate::api::description::post_json;

/// Every address here with what it takes.
pub(in crate::api) fn described() -> Vec<(&'static str, Value)> {
    let opening = "A quote with its own numbers, and whether they come out the same today.";
    vec![
        ("/api/v1/price", price()),
        ("/api/v1/alternatives", alternatives()),
        ("/api/v1/budget", budget()),
        ("/api/v1/quotes", quotes()),
        (
            "/api/v1/quotes/open",
            json!({ "post": post_json(opening, &Quote::schema()) }),
        ),
        ("/api/v1/quotes/pdf", super::print::described()),
        ("/api/v1/prices/lists", super::list::described()),
        (
            "/api/v1/prices/check",
            way(
                "A rule set looked over: rules that never match or overlap, parts nothing charges for.",
                &[],
                checked(),
                &[],
            ),
        ),
    ]
}

type Fields = Vec<(&'static str, Value)>;

fn way(words: &str, needed: &[&str], own: Fields, beside: &[(&'static str, Value)]) -> Value {
    let fields = own.into_iter().chain(beside.iter().cloned());
    let properties: Map<String, Value> = fields
        .map(|(name, schema)| (name.to_owned(), schema))
        .collect();
    let schema = json!({
        "type": "object",
        "required": needed,
        "additionalProperties": false,
        "properties": properties,
    });
    json!({ "post": post_json(words, &schema) })
}

fn price() -> Value {
    let own = vec![
        ("job", document()),
        ("include", json!({ "enum": ["working"] })),
    ];
    let words = "The price of a piece: lines, totals, faults; amounts as minor units with text.";
    way(words, &["job"], own, &beside())
}

fn alternatives() -> Value {
    let named = json!({
        "type": "object",
        "required": ["name", "job"],
        "properties": { "name": text("What it is called."), "job": document() },
    });
    let list =
        json!({ "type": "array", "minItems": 1, "maxItems": MOST_ALTERNATIVES, "items": named });
    let words = "Up to six alternatives, each against the first: what differs, and by how much.";
    way(
        words,
        &["alternatives"],
        vec![("alternatives", list)],
        &beside(),
    )
}

fn budget() -> Value {
    let own = vec![
        ("job", document()),
        ("ceiling", text("The most it may cost: `180.00 USD`.")),
    ];
    let words = "The smallest changes that bring a price under a ceiling, each with its document.";
    way(words, &["job", "ceiling"], own, &beside())
}

fn quotes() -> Value {
    let own = vec![
        ("job", document()),
        ("number", text("The quote's number.")),
        (
            "given",
            text("The day it is given; left out: the day costs are taken on."),
        ),
    ];
    let words = "A quote: the price frozen with everything it was made from. Keep the member quote as it is.";
    way(words, &["job", "number"], own, &beside())
}

fn checked() -> Fields {
    vec![
        ("on", text("The day it is looked over on; left out: today.")),
        ("rules", text("A rule set, TOML; left out: the shop's.")),
    ]
}

/// What may be asked beside any price.
fn beside() -> Fields {
    let discount = text("A discount of the rule set, by its id.");
    vec![
        (
            "on",
            text("The day costs are taken on, as 2030-11-25; left out: today."),
        ),
        ("rush", flag("Wanted sooner than usual.")),
        ("discounts", json!({ "type": "array", "items": discount })),
        ("exempt", flag("The customer is exempt from tax.")),
        ("rules", text("A rule set, TOML; left out: the shop's.")),
        (
            "shop",
            flag("With cost, margin and minutes, which are no customer's."),
        ),
    ]
}

fn document() -> Value {
    let words = "A job document: JSON as an object, TOML as text.";
    json!({ "type": ["object", "string"], "description": words })
}

fn text(words: &str) -> Value {
    json!({ "type": "string", "description": words })
}

fn flag(words: &str) -> Value {
    json!({ "type": "boolean", "description": words })
}
