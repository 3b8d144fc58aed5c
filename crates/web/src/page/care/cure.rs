//! A cure applied: the document comes back changed, in the editor, and the piece as it is then.

use std::sync::Arc;

use axum::extract::{Path, RawQuery, State};
use axum::response::Response;
use maud::{Markup, html};
use sizing::Fault;

use super::super::piece::{Asked, OPENED, Posted, Sent, kept, nobody, posted, shown};
use super::super::trouble::trouble;
use crate::care::{Cure, advised_on, cure_named, document_with};
use crate::desk::Desk;
use crate::piece::Piece;
use crate::problem::{Kind, Problem};

/// Applies a cure to the document as it stands in the editor.
pub(crate) async fn cure(
    State(desk): State<Arc<Desk>>,
    Path(name): Path<String>,
    RawQuery(query): RawQuery,
    sent: Sent,
) -> Response {
    if name != OPENED && kept(&name).is_none() {
        return trouble(&nobody());
    }
    let posted = match posted(sent) {
        Ok(posted) => posted,
        Err(problem) => return trouble(&problem),
    };
    let wanted = asked_for(query.as_deref());
    let action = format!("/piece/{name}");
    let done = desk
        .work(move |desk| applied(desk, &wanted, posted, &action))
        .await;
    let (posted, told) = match done.and_then(|done| done) {
        Ok(done) => done,
        Err(problem) => return trouble(&problem),
    };
    let asked = Asked {
        name,
        customer: false,
        sent: true,
        part: false,
        told,
    };
    shown(&desk, asked, posted).await
}

/// The cure an address names.
fn asked_for(query: Option<&str>) -> String {
    let mut pairs = form_urlencoded::parse(query.unwrap_or_default().as_bytes());
    let cure = pairs.find(|(name, _)| name == "cure");
    cure.map(|(_, cure)| cure.into_owned()).unwrap_or_default()
}

/// The changed document and what was done; a document that can't be read comes back as it is.
fn applied(
    desk: &Desk,
    wanted: &str,
    posted: Posted,
    action: &str,
) -> Result<(Posted, Option<Markup>), Problem> {
    let Ok(piece) = Piece::of(desk, posted.job.as_bytes()) else {
        return Ok((posted, None));
    };
    let cure = cure_named(wanted, &advised_on(desk, &piece))
        .map_err(|sentence| Problem::plain(Kind::Input, sentence))?;
    let job = document_with(&posted.job, &piece.job, &cure.change);
    let after = Piece::of(desk, job.as_bytes())?;
    let left = advised_on(desk, &after);
    let is_it = |fault: &Fault| fault.code == cure.code && fault.part == cure.part;
    let others = left.advice.iter().filter(|other| !is_it(&other.fault));
    let told = done(
        &cure,
        cure.is_gone(&left),
        others.count(),
        &piece,
        &posted,
        action,
    );
    let posted = Posted {
        good: job.clone(),
        job,
        wish: posted.wish,
    };
    Ok((posted, Some(told)))
}

fn done(
    cure: &Cure,
    is_gone: bool,
    left: usize,
    piece: &Piece,
    before: &Posted,
    action: &str,
) -> Markup {
    let sentence = cure.change.sentence(piece.sizes.unit());
    let verdict = if is_gone {
        "is cured"
    } else {
        "is still there"
    };
    let rest = match left {
        0 => "nothing else is advised".to_owned(),
        1 => "one other piece of advice is left".to_owned(),
        several => format!("{several} other pieces of advice are left"),
    };
    html! {
        div #summary .summary.done tabindex="-1" autofocus role="status" {
            p { b { "Done: " (sentence) "." } " The caution on “" (cure.part) "” " (verdict) "; " (rest) "." }
            form method="post" action=(action) {
                input type="hidden" name="job" value=(before.job);
                input type="hidden" name="good" value=(before.good);
                (before.wish.carried())
                button type="submit" { "Undo: " (sentence) }
            }
        }
    }
}
