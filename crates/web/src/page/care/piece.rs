//! What becomes of a piece: its cautions with their cures, what it weighs and hangs by, light and air.

use conservation::advice::{Advice, Advised};
use maud::{Markup, html};
use sizing::{Fault, Severity, Sizes};
use working::Working;

use super::super::caution::{ended, found, sign};
use super::super::why::Why;
use super::answer::{cautions, shown};
use crate::care::{Answer, Cure, advised_on, authority, cures, place, weight};
use crate::desk::Desk;
use crate::piece::Piece;

/// Everything about a piece's care, worked out once for a page.
pub(in crate::page) struct PieceCare {
    advised: Advised,
    weight: Answer,
    place: Result<Answer, String>,
}

impl PieceCare {
    pub fn of(desk: &Desk, piece: &Piece) -> Self {
        Self {
            advised: advised_on(desk, piece),
            weight: weight(&piece.job, &piece.sizes),
            place: place(&piece.job, &piece.sizes, &desk.options.catalogue),
        }
    }

    /// Every caution of the piece, the worst first, with buttons that apply its cures.
    pub fn cautions(&self, piece: &Piece, name: &str) -> Markup {
        let advised = &self.advised;
        let known = |fault: &&Fault| {
            let same = |advice: &Advice| {
                advice.fault.code == fault.code && advice.fault.part == fault.part
            };
            !advised.advice.iter().any(same)
        };
        let plain: Vec<&Fault> = piece.sizes.faults.iter().filter(known).collect();
        let stops = |severity: Severity| severity == Severity::Refuse;
        let all = cures(advised);
        let of = |severity: bool| {
            let faults = plain
                .iter()
                .filter(move |fault| stops(fault.severity) == severity);
            let advice = advised.advice.iter().enumerate();
            let advice = advice.filter(move |(_, advice)| stops(advice.fault.severity) == severity);
            html! {
                @for fault in faults { (item(fault, &html! {})) }
                @for (at, advice) in advice {
                    @let own: Vec<&Cure> = all.iter().filter(|cure| cure.advice == at).collect();
                    (item(&advice.fault, &self.behind(piece, advice, &own, name)))
                }
            }
        };
        html! {
            section.cautions aria-labelledby="cautions" {
                h2 #cautions { "Cautions" }
                @if plain.is_empty() && advised.advice.is_empty() {
                    p { "None: everything fits, as far as it is described." }
                } @else {
                    ul { (of(true)) (of(false)) }
                }
                (beside(advised))
            }
        }
    }

    /// Cures, source and working of an advice.
    fn behind(&self, piece: &Piece, advice: &Advice, own: &[&Cure], name: &str) -> Markup {
        let unit = piece.sizes.unit();
        let authority = authority(advice, &self.advised, &piece.sizes);
        let why = why(&self.advised.working, "advice-", piece);
        let (first, rest) = own.split_at(own.len().min(AT_ONCE));
        let button = |cure: &Cure| {
            html! {
                button type="submit" form="piece" formaction={ "/piece/" (name) "/cure?cure=" (cure.name) } {
                    (cure.change.sentence(unit))
                }
            }
        };
        html! {
            @if !first.is_empty() { p.buttons { @for cure in first { (button(cure)) } } }
            @if !rest.is_empty() {
                details { summary { @if rest.len() == 1 { "One more cure" } @else { (rest.len()) " more cures" } } p.buttons { @for cure in rest { (button(cure)) } } }
            }
            details.behind {
                summary { "Why" span.beside { (authority.status) } }
                p { (authority.source) }
                @for line in &advice.lines { (why.line(*line)) }
            }
        }
    }

    /// What it weighs and hangs by.
    pub fn weight(&self, piece: &Piece) -> Markup {
        let why = why(&self.weight.working, "weight-", piece);
        let all = &self.weight.cautions;
        let (worst, others) = all.split_at(all.len().min(1));
        html! {
                    section.care aria-labelledby="weight" {
                        h2 #weight { "Weight and hanging" }
                        (cautions(worst))
                        @for group in &self.weight.groups { (shown(group, why)) }
        @if !others.is_empty() {
                            details { summary { "More to mind beside these" } (cautions(others)) }
                        }
                    }
                }
    }

    /// What light and air do to it.
    pub fn place(&self, piece: &Piece) -> Markup {
        html! {
            section.care aria-labelledby="place" {
                h2 #place { "Light and air" }
                @match &self.place {
                    Ok(place) => {
                        @let why = why(&place.working, "place-", piece);
                        @for group in &place.groups { (shown(group, why)) }
                        (cautions(&place.cautions))
                    }
                    Err(refusal) => { p { (refusal) } }
                }
            }
        }
    }

    /// Every line of working that the sizes' own does not hold.
    pub fn working(&self, piece: &Piece) -> Markup {
        let named = [
            (
                "advice-",
                "Working of the cautions",
                Some(&self.advised.working),
            ),
            (
                "weight-",
                "Working of weight and hanging",
                Some(&self.weight.working),
            ),
            (
                "place-",
                "Working of light and air",
                self.place.as_ref().ok().map(|place| &place.working),
            ),
        ];
        html! {
            @for (name, heading, working) in named {
                @if let Some(working) = working { (why(working, name, piece).under(heading)) }
            }
        }
    }
}

/// A working of the piece's care; lines it has from the sizes are found in theirs.
fn why<'a>(working: &'a Working, name: &'static str, piece: &Piece) -> Why<'a> {
    Why {
        working,
        unit: piece.sizes.unit(),
        name,
        shown: begun(working, &piece.sizes),
    }
}

/// Cures that stand open; more are behind one heading.
const AT_ONCE: usize = 3;

/// How many lines a working has from the sizes before its own.
fn begun(working: &Working, sizes: &Sizes) -> usize {
    let own = &sizes.working;
    let same = |index: usize| match (own.at(index), working.at(index)) {
        (Some(one), Some(other)) => one.subject == other.subject && one.value == other.value,
        _ => false,
    };
    let begins = own.len().checked_sub(1).is_some_and(same) && same(0);
    if begins { own.len() } else { 0 }
}

fn item(fault: &Fault, behind: &Markup) -> Markup {
    let class = if fault.severity == Severity::Refuse {
        "stop"
    } else {
        "mind"
    };
    html! {
        li class=(class) {
            p { (sign(fault.severity)) " " b { (fault.part) ":" } " " (found(fault)) }
            @if !fault.cure.is_empty() { p.cure { (ended(&fault.cure)) } }
            (behind)
        }
    }
}

/// Each danger that any advice names, once.
fn beside(advised: &Advised) -> Markup {
    let each = advised
        .advice
        .iter()
        .flat_map(|advice| advice.cautions.iter().copied());
    let mut all: Vec<_> = each.collect();
    all.sort_unstable();
    all.dedup();
    html! {
        @if !all.is_empty() {
            details.beside-these { summary { "Dangers beside these" } (cautions(&all)) }
        }
    }
}
