//! The job document, and what stands in the way of reading it.

use maud::{Markup, html};

use crate::problem::Entry;

/// What the editor holds.
pub(super) struct Editor<'a> {
    /// Where it posts.
    pub action: &'a str,
    /// The document as typed.
    pub document: &'a str,
    /// The last document that gave a piece; its drawing stays while this one can't be read.
    pub good: &'a str,
    pub faults: &'a [Entry],
    /// Shown at once, not behind its heading.
    pub open: bool,
}

impl Editor<'_> {
    pub fn form(&self) -> Markup {
        html! {
            form #piece method="post" action=(self.action) novalidate {
                details.editor open[self.open] {
                    summary { h2 { "Change the piece" } span.beside { "its job document" } }
                    label for="job" { "Job document" }
                    p.hint #job-hint { "Lengths as you say them: 16 7/8, 428.6 mm. The drawing follows as you type." }
                    textarea #job name="job" rows="14" spellcheck="false" autocapitalize="off" autocomplete="off"
                        wrap="off" aria-describedby="job-hint reading" aria-invalid=[(!self.faults.is_empty()).then_some("true")]
                        { "\n" (self.document) }
                    (reading(self.faults))
                    button.do type="submit" { "Work it out" }
                }
                input #good type="hidden" name="good" value=(self.good);
            }
        }
    }
}

/// What stands in the way of reading, with line numbers; said aloud when it changes.
pub(super) fn reading(faults: &[Entry]) -> Markup {
    html! {
        div #reading .reading role="status" data-swap {
            @if !faults.is_empty() {
                p { "This can't be drawn yet:" }
                ul { @for fault in faults { li { (placed(fault)) } } }
            }
        }
    }
}

/// The summary on top after the document was sent: focused, its links lead to the editor.
pub(super) fn summary(faults: &[Entry]) -> Markup {
    html! {
        @if !faults.is_empty() {
            div #summary .summary tabindex="-1" autofocus role="alert" aria-labelledby="summary-title" {
                h2 #summary-title { "This can't be worked out yet" }
                ul { @for fault in faults {
                    li { a href="#job" data-line=[fault.line] { (placed(fault)) } }
                } }
            }
        }
    }
}

/// The sentence with its line and the line as written.
fn placed(fault: &Entry) -> Markup {
    html! {
        @if let Some(line) = fault.line { b { "Line " (line) ": " } }
        (fault.detail)
        @if let Some(text) = &fault.text { " " code { (text.trim()) } }
    }
}
