//! Care: questions about light, air and hanging, and what becomes of a piece.

mod answer;
mod cure;
mod form;
mod piece;

use std::sync::Arc;

use axum::extract::{Path, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use maud::{Markup, html};

use self::answer::answered;
use self::form::Form;
use super::shell::{Page, Place};
use super::trouble::trouble;
use crate::api::{Pairs, Questioned};
use crate::care::{NOUNS, Question, of_noun, question};
use crate::desk::Desk;
use crate::problem::{Kind, Problem};

pub(crate) use self::cure::cure;
pub(super) use self::piece::PieceCare;

/// Every question with its form, by what it is about.
pub(crate) async fn care(State(desk): State<Arc<Desk>>) -> Response {
    let settings = desk.options.habits.of(trade::Units::Inches);
    let body = html! {
        h1 { "Care" }
        p.lead {
            "What light and air do to a piece, and what it hangs by: questions that need no job. \
             A piece on the wall answers the same for itself."
        }
        @for (noun, heading) in NOUNS {
            section.about aria-labelledby=(noun) {
                h2 id=(noun) { (heading) }
                @for one in of_noun(noun) {
                    details.asking {
                        summary { h3 { (one.asks) } }
                        p.beside { (one.tells) "." }
                        (Form::example(one, settings).shown())
                    }
                }
            }
        }
    };
    page(&desk, "Care", body).into_response()
}

fn page(desk: &Desk, title: &str, body: Markup) -> Markup {
    Page {
        shop: &desk.options.shop,
        title,
        place: Place::Care,
        kind: "care",
        customer: false,
        body,
    }
    .whole()
}

/// One question, and its answer where it was asked.
pub(crate) async fn asked(
    State(desk): State<Arc<Desk>>,
    Path((noun, verb)): Path<(String, String)>,
    query: Pairs,
) -> Response {
    let Some(question) = question(&noun, &verb) else {
        let detail = "Nobody asks this here; Care shows every question there is.";
        return trouble(&Problem::plain(Kind::Address, detail));
    };
    let told = desk.work(move |desk| told(question, desk, query)).await;
    match told.and_then(|told| told) {
        Ok(page) => page.into_response(),
        Err(problem) => trouble(&problem),
    }
}

fn told(
    question: &'static Question,
    desk: &Desk,
    query: Pairs,
) -> Result<(StatusCode, Markup), Problem> {
    let asked = Questioned::of(question, query)?;
    if !asked.faults.is_empty() {
        return Err(Problem::with(Kind::Input, asked.faults));
    }
    let settings = desk.options.habits.of(asked.units);
    if asked.typed.is_empty() {
        let body = whole(question, &Form::example(question, settings), &html! {});
        return Ok((StatusCode::OK, page(desk, question.asks, body)));
    }
    let answer = question.answer(&asked.typed, settings, asked.units);
    let unit = asked.units.unit();
    let mut form = Form::typed(question, settings, asked.typed, asked.units);
    match answer {
        Ok(answer) => {
            let body = whole(question, &form, &answered(&answer, unit));
            Ok((StatusCode::OK, page(desk, question.asks, body)))
        }
        Err(faults) => {
            form.faults = faults;
            let body = html! { (form.summary()) (whole(question, &form, &html! {})) };
            let title = format!("Error: {}", question.asks);
            Ok((StatusCode::UNPROCESSABLE_ENTITY, page(desk, &title, body)))
        }
    }
}

fn whole(question: &'static Question, form: &Form<'_>, answer: &Markup) -> Markup {
    let others = of_noun(question.noun).filter(|other| other.verb != question.verb);
    html! {
        h1 { (question.asks) }
        p.lead { (question.tells) "." }
        div.asked {
            (form.shown())
            div.answer { (answer) }
        }
        nav.others aria-label="Other questions" {
            ul {
                @for other in others {
                    li { a href={ "/care/" (other.noun) "/" (other.verb) } { (other.asks) } }
                }
                li { a href="/care" { "All questions" } }
            }
        }
    }
}
