//! Quotes on pages: given from the piece, opened from a file, taken away as PDF and as a file.

mod opened;
mod shown;

use std::sync::Arc;

use axum::extract::{Path, RawQuery, State};
use axum::http::header;
use axum::response::{IntoResponse, Response};
use maud::{Markup, html};
use pricing::{Heading, Quote, RuleSet};
use trade::Date;

use super::super::piece::{OPENED, Posted, Sent, field, kept, nobody, pairs, read, unix};
use super::super::trouble::trouble;
use super::wish::Wish;
use crate::api::{asked_copy, asked_paper, pdf, printed, refuse, unquoted};
use crate::desk::Desk;
use crate::piece::Piece;
use crate::problem::{Kind, Problem};

pub(crate) use opened::{quote_opened, quote_way_in};

/// Gives a quote of the document as it stands in the editor.
pub(crate) async fn quoted(
    State(desk): State<Arc<Desk>>,
    Path(name): Path<String>,
    sent: Sent,
) -> Response {
    if name != OPENED && kept(&name).is_none() {
        return trouble(&nobody());
    }
    let made = async {
        let pairs = pairs(sent)?;
        let posted = read(&pairs)?;
        let typed = |wanted: &str| field(&pairs, wanted).unwrap_or_default().trim().to_owned();
        let (number, given) = (typed("number"), typed("given"));
        let page = desk.work(move |desk| given_page(desk, &posted, &number, &given, &name));
        page.await?
    };
    match made.await {
        Ok(page) => page.into_response(),
        Err(problem) => trouble(&problem),
    }
}

/// The quote's PDF.
pub(crate) async fn quote_pdf(
    State(desk): State<Arc<Desk>>,
    RawQuery(query): RawQuery,
    sent: Sent,
) -> Response {
    let made = async {
        let copy = asked_copy(query.as_deref())?;
        let paper = asked_paper(query.as_deref())?;
        let text = document(sent)?;
        let made = desk.work(move |desk| {
            let opened = Quote::open(&text).map_err(|fault| unquoted(&fault))?;
            printed(desk, opened, copy, paper)
        });
        made.await?
    };
    match made.await {
        Ok(bytes) => pdf(bytes, "quote.pdf"),
        Err(problem) => trouble(&problem),
    }
}

/// The quote as a file to keep.
pub(crate) async fn quote_file(State(desk): State<Arc<Desk>>, sent: Sent) -> Response {
    let made = async {
        let text = document(sent)?;
        let read = desk.work(move |_| Quote::read(&text).map(|quote| quote.to_json()));
        read.await?.map_err(|fault| unquoted(&fault))
    };
    match made.await {
        Ok(text) => {
            let headers = [
                (header::CONTENT_TYPE, "application/json"),
                (
                    header::CONTENT_DISPOSITION,
                    "attachment; filename=\"quote.json\"",
                ),
            ];
            (headers, text).into_response()
        }
        Err(problem) => trouble(&problem),
    }
}

/// The quote in the field quote of a form.
fn document(sent: Sent) -> Result<String, Problem> {
    let pairs = pairs(sent)?;
    field(&pairs, "quote").map(unix).ok_or_else(|| {
        let detail = "Send the quote in the field quote of a form.";
        Problem::plain(Kind::Input, detail)
    })
}

fn given_page(
    desk: &Desk,
    posted: &Posted,
    number: &str,
    given: &str,
    name: &str,
) -> Result<Markup, Problem> {
    if number.is_empty() {
        let detail = "A quote is found by its number: go back and type one, as Q-1.";
        return Err(Problem::plain(Kind::Input, detail));
    }
    let (rules, asked) = posted.wish.today(desk)?;
    let given = match given {
        "" => asked.day,
        text => Date::read(text).map_err(|_| {
            let detail = "The day the quote is given: go back and write it as 2030-11-25.";
            Problem::plain(Kind::Input, detail)
        })?,
    };
    let piece = Piece::of(desk, posted.job.as_bytes())?;
    refuse(&piece.sizes.faults)?;
    let heading = Heading {
        number: number.to_owned(),
        given,
    };
    let of = (&piece.job, &piece.sizes);
    let made = Quote::give(&heading, of, &desk.options.catalogue, &rules, &asked);
    let (quote, priced) = made.map_err(|fault| unquoted(&fault))?;
    let back = html! {
        (super::faults(&priced.faults))
        form method="post" action={ "/piece/" (name) } {
            input type="hidden" name="job" value=(posted.job);
            input type="hidden" name="good" value=(posted.job);
            (posted.wish.carried())
            button type="submit" { "Back to the piece" }
        }
    };
    Ok(shown::page(desk, &quote, &html! {}, &back))
}

/// The controls beside the piece, and the number and day of its quote; all belong to the piece's form.
pub(super) fn form(wish: &Wish, rules: &RuleSet, today: Date, name: &str) -> Markup {
    html! {
        section.papers aria-labelledby="quote" {
            h2 #quote { "Price: asked beside, and a quote" }
            (wish.controls(rules))
            p.buttons { button type="submit" form="piece" { "Price it so" } }
            p {
                label for="number" { "Number of the quote" } " "
                input #number type="text" name="number" form="piece" autocomplete="off";
            }
            p {
                label for="given" { "Given on" } " "
                input #given type="date" name="given" value=(today) form="piece" autocomplete="off";
            }
            p.buttons {
                button type="submit" form="piece" formaction={ "/piece/" (name) "/quote" } { "Quote this" }
            }
            p.beside { "A quote keeps its prices, rules and sizes as they are today; costs are taken on " (today) ". "
                a href="/quote" { "Open a quote you gave" } "." }
        }
    }
}
