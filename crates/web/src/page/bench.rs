//! What the bench sets and does: cutter settings and the checklist.

use maud::{Markup, html};
use measure::{Length, Toward};
use sizing::{Cut, Cuts, Setup, Severity, Sizes, minutes, steps};
use trade::{Bevel, Job};
use working::{LineId, Worked};

use super::caution::sign;
use super::figure::Print;
use super::why::{Why, link};

/// Settings of the mat cutter, each number leading to its working.
pub(super) fn machine(sizes: &Sizes, print: Print) -> Markup {
    if sizes.setups.is_empty() {
        return html! {};
    }
    html! {
        section.machine aria-labelledby="machine" {
            h2 #machine { "Mat cutter" }
            p.beside { "Board face down; sides as seen from the back. Each number leads to its working." }
            @for setup in &sizes.setups { (window(sizes, setup, print)) }
        }
    }
}

fn window(sizes: &Sizes, setup: &Setup, print: Print) -> Markup {
    let several = sizes
        .mats
        .get(setup.mat)
        .is_some_and(|mat| mat.windows.len() > 1);
    let bevel = match setup.bevel {
        Bevel::Normal => format!("bevel {}", setup.angle),
        Bevel::Reverse => format!("reverse bevel {}", setup.angle),
        Bevel::Square => "square cut".to_owned(),
    };
    html! {
        h3 { "Mat " (setup.mat + 1) @if several { ", window " (setup.window + 1) } ", " (bevel) }
        @match &setup.cuts {
            Cuts::Straight(cuts) => { (straight(cuts, print)) }
            Cuts::LaidOut { left, top, size } => {
                p { "Laid out: " (print.words(*left)) " from the left, " (print.words(*top)) " from the top, "
                    (print.words(size.width)) " × " (print.words(size.height)) "." }
            }
        }
    }
}

fn straight(cuts: &[Cut], print: Print) -> Markup {
    let number = |worked: Worked<Length>| html! { td role="cell" { (link(worked.line, &print.bare(worked.value))) } };
    html! {
        table.cuts role="table" {
            thead role="rowgroup" { tr role="row" {
                th role="columnheader" scope="col" { "Side" }
                @for word in ["Guide", "Start", "Stop", "Overcut"] {
                    th role="columnheader" scope="col" { (word) ", " (print.symbol()) }
                }
            } }
            tbody role="rowgroup" { @for cut in cuts {
                tr role="row" {
                    th role="rowheader" scope="row" { (cut.side.word()) }
                    (number(cut.guide)) (number(cut.start)) (number(cut.stop)) (number(cut.overcut))
                }
            } }
        }
    }
}

/// The steps of exactly this piece, with their minutes.
pub(super) fn checklist(job: &Job, sizes: &Sizes) -> Markup {
    let steps = steps(job, sizes);
    html! {
        section.checklist aria-labelledby="checklist" {
            h2 #checklist { "Checklist" span.beside { (minutes(&steps)) " minutes in all" } }
            ol { @for step in &steps {
                li {
                    p.step { (step.text) @if let Some(minutes) = step.minutes { " " span.minutes { (minutes) " min" } } }
                    @if let Some(caution) = step.caution { p.mind { (sign(Severity::Warn)) " " (caution) } }
                }
            } }
        }
    }
}

/// A row of the sizes: what it is, how much, and the lines that say why.
pub(super) fn row(
    label: &str,
    set: Set,
    amount: &Markup,
    lines: &[LineId],
    why: Why<'_>,
) -> Markup {
    html! {
        details.size.large[set == Set::Large].pair[set == Set::Pair] {
            summary { span.label { (label) } (amount) }
            @for line in lines { (why.line(*line)) }
        }
    }
}

/// How a row is set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Set {
    /// A width and a height the eye must find at once.
    Large,
    /// A width and a height.
    Pair,
    /// One number.
    Single,
}

/// Glazing goes into a space: it is cut to the mark below.
pub(super) const INTO_A_SPACE: Toward = Toward::Down;
