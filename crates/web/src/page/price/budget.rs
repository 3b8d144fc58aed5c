//! Bringing a price to a budget: a ceiling, and proposals that are buttons.

use std::sync::Arc;

use axum::extract::{Path, State};
use axum::response::{IntoResponse, Response};
use maud::{Markup, html};
use measure::Money;
use pricing::{Budget, Proposal, Proposed};

use super::super::piece::{OPENED, Posted, Sent, field, kept, nobody, pairs, read};
use super::super::shell::{Page, Place};
use super::super::trouble::trouble;
use crate::desk::Desk;
use crate::piece::Piece;
use crate::problem::{Kind, Problem};

/// Looks for changes that meet the ceiling, and shows each as a button that makes it.
pub(crate) async fn budget(
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
        let ceiling = field(&pairs, "ceiling").unwrap_or_default().to_owned();
        let looked = desk.work(move |desk| Looked::of(desk, &posted, &ceiling, &name));
        looked.await?
    };
    match made.await {
        Ok(page) => page.into_response(),
        Err(problem) => trouble(&problem),
    }
}

/// What was looked for and found.
struct Looked<'a> {
    desk: &'a Desk,
    piece: &'a Piece,
    posted: &'a Posted,
    ceiling: Money,
    action: String,
}

impl Looked<'_> {
    fn of(desk: &Desk, posted: &Posted, ceiling: &str, name: &str) -> Result<Markup, Problem> {
        let piece = Piece::of(desk, posted.job.as_bytes())?;
        let options = &desk.options;
        let (rules, asked) = posted.wish.today(desk)?;
        let ceiling = amount(ceiling, rules.currency().code())?;
        let budget = Budget {
            job: &piece.job,
            catalogue: &options.catalogue,
            shop: options.habits.of(piece.job.units),
            rules: &rules,
            asked: &asked,
            ceiling,
        };
        let proposed = budget
            .propose()
            .map_err(|fault| Problem::plain(Kind::Input, format!("Budget: {fault}.")))?;
        let looked = Looked {
            desk,
            piece: &piece,
            posted,
            ceiling,
            action: format!("/piece/{name}"),
        };
        Ok(looked.page(&proposed))
    }

    fn page(&self, proposed: &Proposed) -> Markup {
        let title = format!("{}, to a budget", self.piece.title());
        let body = html! {
            h1 { (title) }
            (self.lead(proposed))
            ol.proposals { @for proposal in &proposed.proposals { li { (self.one(proposal)) } } }
            @if proposed.proposals.is_empty() {
                @if let Some(cheapest) = &proposed.cheapest {
                    section.care aria-labelledby="cheapest" {
                        h2 #cheapest { "The least that was met with" }
                        (self.one(cheapest))
                    }
                }
            }
            form method="post" action=(self.action) {
                (self.carried(&self.posted.job))
                button type="submit" { "Back to the piece as it is" }
            }
        };
        Page {
            shop: &self.desk.options.shop,
            title: &title,
            place: Place::Elsewhere,
            kind: "care",
            customer: false,
            body,
        }
        .whole()
    }

    fn lead(&self, proposed: &Proposed) -> Markup {
        let (before, ceiling) = (proposed.before, self.ceiling);
        html! {
            p.lead {
                "It costs " b { (before) } ", tax included. "
                @if before.minor <= ceiling.minor { "That is within " (ceiling) ": nothing to change." }
                @else if proposed.proposals.is_empty() {
                    "Nothing brings it to " (ceiling) " without harm: " (proposed.looked_at)
                    " changes that save were looked at, " (proposed.put_together) " of them up to " (proposed.deepest) " together."
                } @else {
                    "These bring it to " (ceiling) " or less, and break nothing the job was promised."
                }
            }
        }
    }

    fn one(&self, proposal: &Proposal) -> Markup {
        let document = proposal.applied(&self.piece.job).to_toml();
        let catalogue = &self.desk.options.catalogue;
        html! {
            p { b { (proposal.total) } ", " (proposal.saving) " less" }
            ul { @for (change, saving) in &proposal.changes {
                li { (change.words(catalogue)) ": saves " (saving) }
            } }
            form method="post" action=(self.action) {
                (self.carried(&document))
                button type="submit" { "Take this for " (proposal.total) }
            }
        }
    }

    fn carried(&self, document: &str) -> Markup {
        html! {
            input type="hidden" name="job" value=(document);
            input type="hidden" name="good" value=(document);
            (self.posted.wish.carried())
        }
    }
}

/// An amount, in the shop's currency where none is typed.
fn amount(text: &str, currency: &str) -> Result<Money, Problem> {
    let text = text.trim();
    let plain = text.ends_with(|last: char| last.is_ascii_digit())
        && text.starts_with(|first: char| first.is_ascii_digit());
    let typed = if plain {
        format!("{text} {currency}")
    } else {
        text.to_owned()
    };
    Money::read(&typed).map_err(|error| {
        let detail = format!("The ceiling: {error}; write it as 180.00 {currency}.");
        Problem::plain(Kind::Input, detail)
    })
}

/// The form on the piece's page; it sends the document as it stands in the editor.
pub(super) fn form(name: &str) -> Markup {
    html! {
        section.papers aria-labelledby="budget" {
            h2 #budget { "Price: a budget, alternatives" }
            p {
                label for="ceiling" { "The most it may cost, tax included" } " "
                input #ceiling type="text" name="ceiling" form="piece" autocomplete="off";
            }
            p.buttons {
                button type="submit" form="piece" formaction={ "/piece/" (name) "/budget" } { "Propose changes" }
                button type="submit" form="piece" formaction="/alternatives" { "Set alternatives beside it" }
            }
        }
    }
}
