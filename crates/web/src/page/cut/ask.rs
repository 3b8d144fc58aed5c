//! What both forms of the Bench ask: how long to look, and what stands in the way.

use axum::extract::Form;
use axum::extract::rejection::FormRejection;
use axum::http::StatusCode;
use maud::{Markup, html};

use crate::api::too_long;
use crate::planning::LONGEST;
use crate::problem::{Entry, Kind, Problem};

/// The lines of a form, in their order, or why they did not arrive.
pub(super) type Sent = Result<Form<Vec<(String, String)>>, FormRejection>;

/// The form's own lines, or the problem with it.
pub(super) fn lines(sent: Sent) -> Result<Vec<(String, String)>, Problem> {
    match sent {
        Ok(Form(lines)) => Ok(lines),
        Err(error) if error.status() == StatusCode::PAYLOAD_TOO_LARGE => Err(too_long(&error)),
        Err(_) => Err(Problem::plain(
            Kind::Input,
            "Send the fields as a form, from the Bench.",
        )),
    }
}

/// The first line of this name.
pub(super) fn line<'a>(lines: &'a [(String, String)], name: &str) -> &'a str {
    let own = lines.iter().find(|(own, _)| own == name);
    own.map_or("", |(_, value)| value.as_str())
}

/// Seconds as typed, within what is waited for.
pub(super) fn seconds(typed: &str) -> Result<u64, Fault> {
    let number = typed.trim().parse().ok();
    let number = number.filter(|number| (1..=LONGEST).contains(number));
    number.ok_or_else(|| Fault {
        field: "seconds".to_owned(),
        words: format!("Seconds to try: write a whole number from 1 to {LONGEST}, such as 5."),
        line: None,
        text: None,
    })
}

/// Something that stands in the way, and the field it is about.
#[derive(Clone, Debug)]
pub(super) struct Fault {
    pub field: String,
    pub words: String,
    pub line: Option<usize>,
    /// The line as written.
    pub text: Option<String>,
}

impl Fault {
    /// About the field of this id.
    pub fn about(field: &str, entry: &Entry) -> Self {
        Self {
            field: field.to_owned(),
            words: match entry.line {
                Some(line) => format!("Line {line}: {}", entry.detail),
                None => entry.detail.clone(),
            },
            line: entry.line,
            text: entry.text.clone(),
        }
    }

    fn told(&self) -> Markup {
        html! {
            (self.words)
            @if let Some(text) = &self.text { " " code { (text.trim()) } }
        }
    }
}

/// The summary on top, which takes the focus; its links lead to the fields.
pub(super) fn summary(faults: &[Fault]) -> Markup {
    html! {
        @if !faults.is_empty() {
            div #summary .summary tabindex="-1" autofocus role="alert" aria-labelledby="summary-title" {
                h2 #summary-title { "This can't be planned yet" }
                ul { @for fault in faults {
                    li { a href={ "#" (fault.field) } data-line=[fault.line] { (fault.told()) } }
                } }
            }
        }
    }
}

/// What is wrong with a field, beside it; `id` is what the field is described by.
pub(super) fn beside(id: &str, field: &str, faults: &[Fault]) -> Markup {
    let own: Vec<&Fault> = faults.iter().filter(|fault| fault.field == field).collect();
    html! {
        @if !own.is_empty() {
            ul.fault id=(id) { @for fault in own { li { (fault.told()) } } }
        }
    }
}

/// Whether anything is wrong with a field.
pub(super) fn is_wrong(field: &str, faults: &[Fault]) -> bool {
    faults.iter().any(|fault| fault.field == field)
}

/// How long to look, and the button.
pub(super) fn patience(typed: &str, faults: &[Fault]) -> Markup {
    let wrong = is_wrong("seconds", faults);
    let described = if wrong {
        "seconds-hint seconds-fault"
    } else {
        "seconds-hint"
    };
    html! {
        div.patience {
            label for="seconds" { "Seconds to try" }
            p.hint #seconds-hint {
                "1 to " (LONGEST) ". The longer, the cheaper the plan may become; it ends sooner once nothing can be better."
            }
            (beside("seconds-fault", "seconds", faults))
            input #seconds type="text" name="seconds" value=(typed) size="4" autocomplete="off"
                aria-describedby=(described) aria-invalid=[wrong.then_some("true")];
            div.send {
                button.do type="submit" { "Plan the cutting" }
                p.waiting role="status" {}
            }
        }
    }
}
