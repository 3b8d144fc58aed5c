//! A page for what could not be done.

use axum::response::{IntoResponse, Response};
use maud::html;

use super::shell::{Page, Place};
use crate::problem::Problem;

/// The problem, for people.
pub(crate) fn trouble(problem: &Problem) -> Response {
    let title = format!("Error: {}", problem.kind.title());
    let body = html! {
        article.plain {
            h1 { (problem.kind.title()) }
            p { (problem.detail) }
            @if !problem.errors.is_empty() {
                ul { @for entry in &problem.errors { li { (entry.detail) } } }
            }
            p { a.button href="/" { "To the Counter" } }
        }
    };
    let page = Page {
        shop: "Rabbet",
        title: &title,
        place: Place::Elsewhere,
        kind: "trouble",
        customer: false,
        body,
    };
    (problem.kind.status(), page.whole()).into_response()
}
