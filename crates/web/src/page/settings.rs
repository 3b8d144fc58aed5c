//! Every setting with its default, its range and where it comes from.

use std::sync::Arc;

use axum::extract::State;
use axum::response::{IntoResponse, Response};
use maud::{Markup, html};
use measure::Unit;
use trade::settings::{CITATIONS, KEYS, Setting, citation};
use trade::{Key, Units};
use working::Status;

use super::shell::{Page, Place};
use crate::desk::Desk;

/// Shows them, group by group.
pub(crate) async fn settings(State(desk): State<Arc<Desk>>) -> Response {
    let body = html! {
        h1 { "Settings" }
        p.lead {
            "Every number the trade leaves open. A job may carry its own in its settings table; old jobs keep theirs."
        }
        @for (group, keys) in groups() { (table(group, &keys, &desk)) }
        section.sources aria-labelledby="sources" {
            h2 #sources { "Sources" }
            dl { @for source in CITATIONS { dt { (source.code) } dd { (source) } } }
        }
    };
    let shop = &desk.options.shop;
    Page {
        shop,
        title: "Settings",
        place: Place::Settings,
        kind: "list",
        customer: false,
        body,
    }
    .whole()
    .into_response()
}

/// Keys by the word before the first dot, in the order they are listed.
fn groups() -> Vec<(&'static str, Vec<Key>)> {
    let mut groups: Vec<(&'static str, Vec<Key>)> = Vec::new();
    for key in KEYS {
        let group = key.id().split('.').next().unwrap_or_default();
        match groups.iter_mut().find(|(name, _)| *name == group) {
            Some((_, keys)) => keys.push(*key),
            None => groups.push((group, vec![*key])),
        }
    }
    groups
}

fn table(group: &str, keys: &[Key], desk: &Desk) -> Markup {
    let heading = format!("group-{group}");
    html! {
        section aria-labelledby=(heading) {
            h2 id=(heading) { (group.replace('_', " ")) }
            table.list role="table" {
                thead role="rowgroup" { tr role="row" {
                    @for word in ["Setting", "Inches", "Millimetres", "May be", "Where it is from"] {
                        th role="columnheader" scope="col" { (word) }
                    }
                } }
                tbody role="rowgroup" { @for key in keys { (row(*key, desk)) } }
            }
        }
    }
}

fn row(key: Key, desk: &Desk) -> Markup {
    let definition = key.definition();
    let habits = &desk.options.habits;
    let value = |units: Units, unit: Unit| {
        let mark = if habits.of(units).changed(key).is_some() {
            ", the shop's own"
        } else {
            ""
        };
        format!(
            "{}{mark}",
            text(habits.of(units).get(key), definition.unit, unit)
        )
    };
    html! {
        tr #(definition.id) role="row" tabindex="-1" {
            th role="rowheader" scope="row" { (definition.words) " " code { (definition.id) } }
            td role="cell" data-word="Inches" { (value(Units::Inches, Unit::Inch)) }
            td role="cell" data-word="Millimetres" { (value(Units::Millimetres, Unit::Millimetre)) }
            td role="cell" data-word="May be" { (definition.range) @if !definition.unit.is_empty() { " " (definition.unit) } }
            td role="cell" data-word="Where it is from" { (source(definition.source, definition.status)) }
        }
    }
}

fn text(setting: Setting, count_unit: &str, unit: Unit) -> String {
    match setting {
        Setting::Length(length) => length.in_both(unit),
        other if count_unit.is_empty() => other.to_string(),
        other => format!("{other} {count_unit}"),
    }
}

fn source(code: &str, status: Status) -> String {
    match (citation(code), status) {
        (Some(source), _) => format!("{}, {status}", source.code),
        (None, Status::CommonPractice) => "common practice, no source".to_owned(),
        (None, _) => status.to_string(),
    }
}
