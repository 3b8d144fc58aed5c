//! Cautions with their cures: a shape and a word each, never a colour alone.

use maud::{Markup, PreEscaped, html};
use sizing::{Fault, Severity};

/// An eight-sided sign.
const STOP: &str = r#"<svg class="sign" viewBox="0 0 20 20" width="20" height="20" aria-hidden="true"><path d="M6.3 1h7.4L19 6.3v7.4L13.7 19H6.3L1 13.7V6.3z"/></svg>"#;

/// A three-sided sign.
const MIND: &str = r#"<svg class="sign" viewBox="0 0 20 20" width="20" height="20" aria-hidden="true"><path d="M10 2l9 16H1z"/></svg>"#;

/// The word with its shape.
pub(super) fn sign(severity: Severity) -> Markup {
    let shape = match severity {
        Severity::Refuse => STOP,
        Severity::Warn => MIND,
    };
    html! { span.word { (PreEscaped(shape)) (severity.word()) } }
}

/// The sign alone, with its word, for a danger that is no fault of a piece.
pub(super) fn mind() -> Markup {
    sign(Severity::Warn)
}

/// What was found, and what is allowed.
pub(super) fn found(fault: &Fault) -> String {
    if fault.allowed.is_empty() {
        ended(&fault.found)
    } else {
        ended(&format!("{}; {}", fault.found, fault.allowed))
    }
}

/// The sentence with a full stop.
pub(super) fn ended(sentence: &str) -> String {
    if sentence.ends_with(['.', '?', '!']) {
        sentence.to_owned()
    } else {
        format!("{sentence}.")
    }
}
