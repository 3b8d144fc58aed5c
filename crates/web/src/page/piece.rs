//! A piece on the drafting table: the sheet at the left, what follows from it at the right.

use std::sync::Arc;

use axum::extract::rejection::FormRejection;
use axum::extract::{Form, Path, RawQuery, State};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, html};

use super::care::PieceCare;
use super::drawings::sheet;
use super::editor::{Editor, reading, summary};
use super::follows::{bench, follows, for_the_customer, papers};
use super::price::{PiecePrice, Wish};
use super::shell::{Page, Place};
use super::trouble::trouble;
use crate::api::too_long;
use crate::desk::Desk;
use crate::piece::{Piece, Refusal, stops};
use crate::problem::{Entry, Kind, Problem};

/// The name of a piece that came as a document and hangs on no wall.
pub(super) const OPENED: &str = "opened";

/// Over drawings of an earlier state.
const STALE: &str =
    "The last state that could be drawn. What stands in the document now can't be read yet.";

/// What the editor sends.
#[derive(Debug)]
pub(crate) struct Posted {
    /// The document as it stands.
    pub job: String,
    /// The last one that gave a piece.
    pub good: String,
    /// What is asked beside the piece.
    pub(super) wish: Wish,
}

/// A form as it arrived, or why it did not.
pub(crate) type Sent = Result<Form<Vec<(String, String)>>, FormRejection>;

/// The form's own lines, or the problem with it.
pub(super) fn posted(sent: Sent) -> Result<Posted, Problem> {
    read(&pairs(sent)?)
}

/// The fields of a form.
pub(super) fn pairs(sent: Sent) -> Result<Vec<(String, String)>, Problem> {
    match sent {
        Ok(Form(pairs)) => Ok(pairs),
        Err(error) if error.status() == StatusCode::PAYLOAD_TOO_LARGE => Err(too_long(&error)),
        Err(_) => Err(unsent()),
    }
}

/// The document of a form and what is asked beside it.
pub(super) fn read(pairs: &[(String, String)]) -> Result<Posted, Problem> {
    let job = field(pairs, "job").ok_or_else(unsent)?;
    Ok(Posted {
        job: unix(job),
        good: unix(field(pairs, "good").unwrap_or_default()),
        wish: Wish::read(pairs),
    })
}

/// The first field of this name.
pub(super) fn field<'p>(pairs: &'p [(String, String)], wanted: &str) -> Option<&'p str> {
    let pair = pairs.iter().find(|(name, _)| name == wanted);
    pair.map(|(_, text)| text.as_str())
}

fn unsent() -> Problem {
    let detail = "Send the job document in the field job of a form.";
    Problem::plain(Kind::Input, detail)
}

/// Shows a piece of the shop as it is kept.
pub(crate) async fn piece(
    State(desk): State<Arc<Desk>>,
    Path(name): Path<String>,
    RawQuery(query): RawQuery,
) -> Response {
    if name == OPENED {
        return Redirect::to("/#open").into_response();
    }
    let Some(document) = kept(&name) else {
        return trouble(&nobody());
    };
    let asked = Asked {
        name,
        customer: is_for_customer(query.as_deref()),
        sent: false,
        part: false,
        told: None,
    };
    let posted = Posted {
        job: document.to_owned(),
        good: document.to_owned(),
        wish: Wish::default(),
    };
    shown(&desk, asked, posted).await
}

/// Works out the document as it was sent; with the header `rabbet-part` only what changes comes back.
pub(crate) async fn worked(
    State(desk): State<Arc<Desk>>,
    Path(name): Path<String>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
    sent: Sent,
) -> Response {
    if name != OPENED && kept(&name).is_none() {
        return trouble(&nobody());
    }
    let part = headers.contains_key("rabbet-part");
    let asked = Asked {
        name,
        customer: is_for_customer(query.as_deref()),
        sent: true,
        part,
        told: None,
    };
    match posted(sent) {
        Ok(posted) => shown(&desk, asked, posted).await,
        Err(problem) => trouble(&problem),
    }
}

/// The document of a piece of this name.
pub(super) fn kept(name: &str) -> Option<&'static str> {
    demo::JOBS
        .iter()
        .find(|job| job.name == name)
        .map(|job| job.toml)
}

pub(super) fn nobody() -> Problem {
    Problem::plain(
        Kind::Address,
        "No piece of this name hangs here; the Counter shows those that do.",
    )
}

/// How the piece was asked for.
pub(super) struct Asked {
    pub name: String,
    pub customer: bool,
    /// The document was sent, so its faults come first and take the focus.
    pub sent: bool,
    /// Only what changes is wanted.
    pub part: bool,
    /// What was done to the document before it is shown.
    pub told: Option<Markup>,
}

/// Works the piece out and shows it.
pub(super) async fn shown(desk: &Arc<Desk>, asked: Asked, posted: Posted) -> Response {
    let answer = desk.work(move |desk| {
        let state = Table::of(desk, &posted, asked.customer);
        let status = if state.refusal.is_some() {
            StatusCode::UNPROCESSABLE_ENTITY
        } else {
            StatusCode::OK
        };
        let page = if asked.part {
            state.part(&asked)
        } else {
            state.page(desk, &asked, &posted)
        };
        (status, page)
    });
    match answer.await {
        Ok(page) => page.into_response(),
        Err(problem) => trouble(&problem),
    }
}

/// The piece as described, else the last good one with what is wrong now.
struct Table {
    piece: Option<Piece>,
    /// What is told of its care; not worked out for a customer.
    care: Option<PieceCare>,
    price: Option<PiecePrice>,
    refusal: Option<Refusal>,
    faults: Vec<Entry>,
}

impl Table {
    fn of(desk: &Desk, posted: &Posted, customer: bool) -> Self {
        let care = |piece: &Piece| (!customer).then(|| PieceCare::of(desk, piece));
        match Piece::of(desk, posted.job.as_bytes()) {
            Ok(piece) => Self {
                care: care(&piece),
                price: Some(PiecePrice::of(desk, &piece, &posted.wish)),
                piece: Some(piece),
                refusal: None,
                faults: Vec::new(),
            },
            Err(refusal) => {
                let piece = Piece::of(desk, posted.good.as_bytes()).ok();
                let faults = refusal.entries();
                Self {
                    care: piece.as_ref().and_then(care),
                    price: piece
                        .as_ref()
                        .map(|piece| PiecePrice::of(desk, piece, &posted.wish)),
                    piece,
                    refusal: Some(refusal),
                    faults,
                }
            }
        }
    }

    fn caption(&self) -> Option<&'static str> {
        self.refusal
            .as_ref()
            .and(self.piece.as_ref())
            .map(|_| STALE)
    }

    /// Only what changes while somebody types: nothing of the editor but its remarks.
    fn part(&self, asked: &Asked) -> Markup {
        html! {
            (reading(&self.faults))
            @if self.refusal.is_none() {
                (sheet(self.piece.as_ref(), asked.customer, None))
                @if let (Some(piece), Some(care), Some(price)) = (&self.piece, &self.care, &self.price) {
                    (follows(piece, care, price, &asked.name)) (bench(piece, care, price))
                }
            }
        }
    }

    fn page(&self, desk: &Desk, asked: &Asked, posted: &Posted) -> Markup {
        let name = self
            .piece
            .as_ref()
            .map_or_else(|| "A document".to_owned(), Piece::title);
        let failed = asked.sent && !self.faults.is_empty();
        let title = if failed {
            format!("Error: {name}")
        } else {
            name.clone()
        };
        let body = html! {
            @if failed { (summary(&self.faults)) }
            @if let Some(told) = &asked.told { (told) }
            (self.heading(&name, asked, posted))
            div.desk {
                (sheet(self.piece.as_ref(), asked.customer, self.caption()))
                @if asked.customer { (self.customers_side()) } @else { (self.shops_side(asked, posted)) }
            }
        };
        let kind = if asked.customer {
            "piece customer"
        } else {
            "piece"
        };
        let shop = &desk.options.shop;
        Page {
            shop,
            title: &title,
            place: Place::Elsewhere,
            kind,
            customer: asked.customer,
            body,
        }
        .whole()
    }

    fn heading(&self, name: &str, asked: &Asked, posted: &Posted) -> Markup {
        let about = self.piece.as_ref().map(about).unwrap_or_default();
        let action = format!("/piece/{}", asked.name);
        html! {
            div.heading {
                div { h1 { (name) } @if !about.is_empty() { p { (about) } } }
                @if asked.customer {
                    form method="post" action=(action) {
                        input type="hidden" name="job" value=(posted.job);
                        input type="hidden" name="good" value=(posted.good);
                        (posted.wish.carried())
                        button type="submit" { "Back to the shop's side" }
                    }
                } @else {
                    button type="submit" form="piece" formaction={ (action) "?customer=1" } { "Show the customer" }
                }
            }
        }
    }

    fn customers_side(&self) -> Markup {
        html! { div.side { @if let (Some(piece), Some(price)) = (&self.piece, &self.price) { (for_the_customer(piece, price)) } } }
    }

    fn shops_side(&self, asked: &Asked, posted: &Posted) -> Markup {
        let good = if self.refusal.is_some() {
            &posted.good
        } else {
            &posted.job
        };
        let action = format!("/piece/{}", asked.name);
        let open = asked.sent || !self.faults.is_empty();
        let editor = Editor {
            action: &action,
            document: &posted.job,
            good,
            faults: &self.faults,
            open,
        };
        html! {
            div.side {
                (editor.form())
                @if let (Some(piece), Some(care), Some(price)) = (&self.piece, &self.care, &self.price) {
                    (follows(piece, care, price, &asked.name))
                } @else {
                    div #follows data-swap {}
                }
                @if let Some(price) = &self.price { (price.forms(&posted.wish, &asked.name)) }
                (papers(&asked.name))
            }
            @if let (Some(piece), Some(care), Some(price)) = (&self.piece, &self.care, &self.price) {
                (bench(piece, care, price))
            } @else {
                div #bench data-swap {}
            }
        }
    }
}

/// Order, customer, promise, and how many faults stop it.
fn about(piece: &Piece) -> String {
    let identity = &piece.job.identity;
    let mut words = Vec::new();
    words.extend(
        identity
            .order
            .as_ref()
            .map(|order| format!("order {order}")),
    );
    words.extend(identity.customer.clone());
    words.extend(
        identity
            .due
            .as_ref()
            .map(|due| format!("promised for {due}")),
    );
    let stops = stops(&piece.sizes.faults);
    if stops > 0 {
        words.push(format!("can't be made yet: {stops} to stop at"));
    }
    words.join(" · ")
}

fn is_for_customer(query: Option<&str>) -> bool {
    query
        .unwrap_or_default()
        .split('&')
        .any(|pair| pair == "customer=1")
}

/// Line ends as the document has them; forms send two signs for each.
pub(super) fn unix(text: &str) -> String {
    text.replace("\r\n", "\n")
}
