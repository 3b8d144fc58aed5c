//! What stands in the way of an answer, as a problem object (RFC 9457).

use std::sync::atomic::{AtomicU64, Ordering};

use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use jiff::Timestamp;
use serde_json::{Value, json};
use sizing::Fault;
use trade::DocumentFault;

/// Kinds of trouble.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Kind {
    /// A document that can't be read.
    Document,
    /// A piece that lacks something.
    Piece,
    /// A piece that can't be drawn.
    Drawing,
    /// Pieces that can't be cut from what there is.
    Cuts,
    /// A question with an answer that is not on the list.
    Input,
    /// Nothing lives at the address.
    Address,
    /// The address is not asked in this way.
    Method,
    /// The body is of a kind that is not read.
    Media,
    /// The body is longer than is read.
    Size,
    /// Another site asked through the visitor's browser.
    Site,
    /// The request was meant for another host.
    Host,
    /// It took too long.
    Slow,
    /// Others are planning already.
    Busy,
    /// A fault of the program.
    Program,
}

impl Kind {
    /// The stable name for programs.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Document => "urn:rabbet:problem:document",
            Self::Piece => "urn:rabbet:problem:piece",
            Self::Drawing => "urn:rabbet:problem:drawing",
            Self::Cuts => "urn:rabbet:problem:cuts",
            Self::Input => "urn:rabbet:problem:input",
            Self::Address => "urn:rabbet:problem:address",
            Self::Method => "urn:rabbet:problem:method",
            Self::Media => "urn:rabbet:problem:media",
            Self::Size => "urn:rabbet:problem:size",
            Self::Site => "urn:rabbet:problem:site",
            Self::Host => "urn:rabbet:problem:host",
            Self::Slow => "urn:rabbet:problem:slow",
            Self::Busy => "urn:rabbet:problem:busy",
            Self::Program => "urn:rabbet:problem:program",
        }
    }

    /// The fixed title.
    pub const fn title(self) -> &'static str {
        match self {
            Self::Document => "The document can't be read",
            Self::Piece => "The piece can't be made as described",
            Self::Drawing => "The piece can't be drawn",
            Self::Cuts => "This can't be cut as it stands",
            Self::Input => "What was typed can't be used",
            Self::Address => "There is nothing at this address",
            Self::Method => "This address is not asked in this way",
            Self::Media => "A document of this kind is not read",
            Self::Size => "The document is too long",
            Self::Site => "Another site asked for this",
            Self::Host => "This program answers only to its own name",
            Self::Slow => "It took too long",
            Self::Busy => "Other plans are being made",
            Self::Program => "Something went wrong inside the program",
        }
    }

    /// The status that goes with it.
    pub const fn status(self) -> StatusCode {
        match self {
            Self::Document | Self::Piece | Self::Drawing | Self::Cuts => {
                StatusCode::UNPROCESSABLE_ENTITY
            }
            Self::Input => StatusCode::BAD_REQUEST,
            Self::Address => StatusCode::NOT_FOUND,
            Self::Method => StatusCode::METHOD_NOT_ALLOWED,
            Self::Media => StatusCode::UNSUPPORTED_MEDIA_TYPE,
            Self::Size => StatusCode::PAYLOAD_TOO_LARGE,
            Self::Site => StatusCode::FORBIDDEN,
            Self::Host => StatusCode::MISDIRECTED_REQUEST,
            Self::Slow | Self::Busy => StatusCode::SERVICE_UNAVAILABLE,
            Self::Program => StatusCode::INTERNAL_SERVER_ERROR,
        }
    }
}

/// One thing that is wrong.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Entry {
    /// JSON pointer into the document, where it is known; empty for the whole.
    pub pointer: String,
    /// Stable code for programs.
    pub code: String,
    /// What is wrong and what would do.
    pub detail: String,
    /// Line of the document, from 1.
    pub line: Option<usize>,
    /// Column, from 1.
    pub column: Option<usize>,
    /// The line as written.
    pub text: Option<String>,
    /// The part of the piece it is about.
    pub part: Option<String>,
    /// `stop` or `mind`, where it is a fault of the piece.
    pub severity: Option<String>,
}

impl Entry {
    /// A fault of form.
    pub fn document(fault: &DocumentFault) -> Self {
        let place = fault.place().cloned().unwrap_or_default();
        Self {
            pointer: place.pointer.unwrap_or_default(),
            code: fault.code().to_owned(),
            detail: fault.to_string(),
            line: place.line,
            column: place.column,
            text: place.text,
            ..Self::default()
        }
    }

    /// A fault of a day's cut list.
    pub fn demand(fault: &demand::Fault) -> Self {
        Self {
            code: fault.code().to_owned(),
            detail: fault.to_string(),
            part: fault.job().map(str::to_owned),
            ..Self::default()
        }
    }

    /// A fault of a cut list; `list` is its text.
    pub fn list(fault: &demand::ListFault, list: &str) -> Self {
        let line = fault.line.and_then(|line| line.checked_sub(1));
        Self {
            code: fault.code().to_owned(),
            detail: fault.to_string(),
            line: fault.line,
            column: fault.column,
            text: line.and_then(|line| list.lines().nth(line)).map(short),
            ..Self::default()
        }
    }

    /// A fault of the piece.
    pub fn fault(fault: &Fault) -> Self {
        Self {
            code: fault.code.to_owned(),
            detail: fault.sentence(),
            part: Some(fault.part.clone()),
            severity: Some(fault.severity.word().to_lowercase()),
            ..Self::default()
        }
    }

    fn as_json(&self) -> Value {
        let mut entry =
            json!({ "pointer": self.pointer, "code": self.code, "detail": self.detail });
        let more = [
            ("line", self.line.map(Value::from)),
            ("column", self.column.map(Value::from)),
            ("part", self.part.clone().map(Value::from)),
            ("severity", self.severity.clone().map(Value::from)),
        ];
        for (name, value) in more {
            if let Some(value) = value {
                entry[name] = value;
            }
        }
        entry
    }
}

/// A problem, told once in full.
#[derive(Clone, Debug)]
pub(crate) struct Problem {
    pub kind: Kind,
    pub detail: String,
    pub errors: Vec<Entry>,
}

impl Problem {
    /// With one sentence and nothing to point at.
    pub fn plain(kind: Kind, detail: impl Into<String>) -> Self {
        Self {
            kind,
            detail: detail.into(),
            errors: Vec::new(),
        }
    }

    /// With everything that is wrong.
    pub fn with(kind: Kind, errors: Vec<Entry>) -> Self {
        let detail = match errors.as_slice() {
            [one] => one.detail.clone(),
            several => format!("{} faults, all listed.", several.len()),
        };
        Self {
            kind,
            detail,
            errors,
        }
    }

    /// A fault of the program: logged with a reference, and only the reference is shown.
    pub fn fault(cause: &dyn std::fmt::Display) -> Self {
        let reference = reference();
        tracing::error!(%reference, %cause, "a fault of the program");
        let detail = format!(
            "It is written down under {reference}; nothing of the document was kept or changed."
        );
        Self::plain(Kind::Program, detail)
    }

    /// The problem object.
    pub fn as_json(&self) -> Value {
        json!({
            "type": self.kind.name(),
            "title": self.kind.title(),
            "detail": self.detail,
            "status": self.kind.status().as_u16(),
            "errors": self.errors.iter().map(Entry::as_json).collect::<Vec<_>>(),
        })
    }
}

impl IntoResponse for Problem {
    fn into_response(self) -> Response {
        let body = self.as_json().to_string();
        (
            self.kind.status(),
            [(header::CONTENT_TYPE, "application/problem+json")],
            body,
        )
            .into_response()
    }
}

/// A line as far as it helps to find it.
fn short(line: &str) -> String {
    const LONGEST: usize = 120;
    line.chars().take(LONGEST).collect()
}

/// A short name for one event, different for each.
pub(crate) fn reference() -> String {
    static COUNT: AtomicU64 = AtomicU64::new(1);
    let seconds = Timestamp::now().as_second();
    format!("{seconds:x}-{:x}", COUNT.fetch_add(1, Ordering::Relaxed))
}
