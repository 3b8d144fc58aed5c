//! What goes round every page: mark, name, places, foot.

use maud::{DOCTYPE, Markup, PreEscaped, html};

use crate::asset::address;

/// The places of the shop that exist so far.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Place {
    Counter,
    Bench,
    Care,
    Materials,
    Settings,
    /// A piece, or nowhere in particular.
    Elsewhere,
}

/// The mark: the section of a rabbet, with a sheet resting in its step.
const MARK: &str = r#"<svg class="mark" viewBox="0 0 16 16" width="28" height="28" aria-hidden="true"><path class="step" d="M1 2h6v8h5v4H1z"/><path class="rest" d="M8 6.5h7.5V9H8z"/></svg>"#;

/// A whole page.
pub(super) struct Page<'a> {
    pub shop: &'a str,
    pub title: &'a str,
    pub place: Place,
    /// A word for the styles: what kind of page it is.
    pub kind: &'static str,
    /// The customer looks on: the shop's side is left out.
    pub customer: bool,
    pub body: Markup,
}

impl Page<'_> {
    pub fn whole(self) -> Markup {
        html! {
            (DOCTYPE)
            html lang="en" {
                head {
                    meta charset="utf-8";
                    meta name="viewport" content="width=device-width, initial-scale=1";
                    meta name="color-scheme" content="light dark";
                    title { (self.title) " – Rabbet" }
                    link rel="icon" type="image/svg+xml" href=(address("mark.svg"));
                    link rel="stylesheet" href=(address("table.css"));
                    script defer src=(address("redraw.js")) {}
                }
                body class=(self.kind) {
                    a.skip href="#main" { "To the page itself" }
                    (self.head())
                    main #main tabindex="-1" { (self.body) }
                    @if !self.customer { (foot()) }
                }
            }
        }
    }

    fn head(&self) -> Markup {
        let places = [
            ("/", "Counter", Place::Counter),
            ("/bench", "Bench", Place::Bench),
            ("/care", "Care", Place::Care),
            ("/materials", "Materials", Place::Materials),
            ("/settings", "Settings", Place::Settings),
        ];
        html! {
            header.top {
                @if self.customer {
                    p.name { (PreEscaped(MARK)) span.shop { (self.shop) } }
                } @else {
                    p.name { a href="/" { (PreEscaped(MARK)) span.shop { (self.shop) } } }
                    nav aria-label="Places" {
                        ul { @for (to, word, place) in places {
                            li { a href=(to) aria-current=[(place == self.place).then_some("page")] { (word) } }
                        } }
                    }
                }
            }
        }
    }
}

fn foot() -> Markup {
    html! {
        footer.foot {
            p { "Rabbet works out sizes; it does not see the art. Measure it yourself, and keep to the makers' sheets, \
                local codes and licensed practice where they say more." }
        }
    }
}
