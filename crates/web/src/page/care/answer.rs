//! An answer: every value opens its working; cautions stand beside loads.

use conservation::caution::Caution;
use maud::{Markup, html};
use measure::Unit;

use super::super::caution::mind;
use super::super::why::Why;
use crate::care::{Answer, Group, Row};

/// The whole answer to a question.
pub(super) fn answered(answer: &Answer, unit: Unit) -> Markup {
    let why = Why {
        working: &answer.working,
        unit,
        name: "",
        shown: 0,
    };
    html! {
        section.found aria-labelledby="found" {
            h2 #found { "Answer" }
            (cautions(&answer.cautions))
            @for group in &answer.groups { (shown(group, why)) }
        }
        @if !answer.working.is_empty() { (why.all()) }
    }
}

/// Cautions that stand beside what they belong to.
pub(super) fn cautions(cautions: &[Caution]) -> Markup {
    html! {
        @if !cautions.is_empty() {
            ul.dangers { @for caution in cautions {
                li {
                    p { (mind()) " " b { (caution.title()) ":" } " " (caution.text()) }
                    p.beside { (caution.source()) }
                }
            } }
        }
    }
}

/// A heading with its rows.
pub(super) fn shown(group: &Group, why: Why<'_>) -> Markup {
    html! {
        section.part {
            @if !group.heading.is_empty() { h3 { (group.heading) } }
            @for one in &group.rows { (row(one, why)) }
        }
    }
}

/// A value; behind it the lines it rests on.
fn row(row: &Row, why: Why<'_>) -> Markup {
    let amount = row.amount.text(why.unit);
    let (status, work) = row.trust.split_once("; ").unwrap_or((&row.trust, ""));
    html! {
        @if row.lines.is_empty() && row.trust.is_empty() {
            dl.said { dt { (row.label) } dd { (amount) } }
        } @else {
            details.size.valued {
                summary { span.label { (row.label) } span.figure { (amount) } span.beside { (status) } }
                @if !work.is_empty() && row.lines.is_empty() {
                    dl.account { dt { "Source" } dd { (work) } }
                }
                @for line in &row.lines { (why.line(*line)) }
            }
        }
    }
}
