//! What stands in the way, told to people as sentences and to programs as problem objects.

use serde_json::{Value, json};
use sizing::{Fault, Severity};
use trade::DocumentFault;

use crate::exit::Exit;
use crate::terminal::{Ink, Terminal};

/// Why a command ended without doing all it was asked.
#[derive(Debug)]
pub struct Trouble {
    /// Which kind; it decides the exit code.
    pub kind: Kind,
    /// Everything found, in the order it is told.
    pub problems: Vec<Problem>,
}

/// Kinds of trouble.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A document that can't be read.
    Document,
    /// A piece that can't be made, or lacks something.
    Piece,
    /// The shop's settings or materials.
    Shop,
    /// A text or name that has no meaning.
    Input,
    /// The command line itself.
    Usage,
    /// A file that can't be reached.
    File,
    /// A fault of this program that it noticed itself.
    Ours,
}

impl Kind {
    /// The stable name for programs.
    const fn name(self) -> &'static str {
        match self {
            Self::Document => "urn:rabbet:problem:document",
            Self::Piece => "urn:rabbet:problem:piece",
            Self::Shop => "urn:rabbet:problem:shop",
            Self::Input => "urn:rabbet:problem:input",
            Self::Usage => "urn:rabbet:problem:usage",
            Self::File => "urn:rabbet:problem:file",
            Self::Ours => "urn:rabbet:problem:fault",
        }
    }

    /// The fixed title.
    const fn title(self) -> &'static str {
        match self {
            Self::Document => "The document can't be read",
            Self::Piece => "The piece can't be made as described",
            Self::Shop => "The shop's own file can't be used",
            Self::Input => "What was typed can't be used",
            Self::Usage => "The command is not typed as it should be",
            Self::File => "A file can't be reached",
            Self::Ours => "This is a fault of rabbet",
        }
    }

    /// The status an HTTP answer would carry.
    const fn status(self) -> u16 {
        match self {
            Self::Document | Self::Piece | Self::Shop | Self::Input => 422,
            Self::Usage => 400,
            Self::File => 503,
            Self::Ours => 500,
        }
    }

    /// How the program ends.
    pub const fn exit(self) -> Exit {
        match self {
            Self::Document | Self::Piece | Self::Shop | Self::Input => Exit::Refused,
            Self::Usage => Exit::Usage,
            Self::File => Exit::Unavailable,
            Self::Ours => Exit::OurBug,
        }
    }
}

/// One thing that stands in the way.
#[derive(Clone, Debug, Default)]
pub struct Problem {
    /// The word before it: `Stop`, `Mind`; none for a plain refusal.
    pub word: Option<(&'static str, Ink)>,
    /// What is wrong.
    pub sentence: String,
    /// What to do.
    pub hint: Option<String>,
    /// Stable code for programs.
    pub code: String,
    /// Where.
    pub spot: Spot,
    /// The part of the piece it is about.
    pub part: Option<String>,
}

/// Where in a file or text a problem lies.
#[derive(Clone, Debug, Default)]
pub struct Spot {
    /// The file as it was named.
    pub file: Option<String>,
    /// Line, from 1.
    pub line: Option<usize>,
    /// Column, from 1.
    pub column: Option<usize>,
    /// JSON pointer into the document, where it is known.
    pub pointer: Option<String>,
    /// The line as written and, below it, the marks.
    pub shown: Option<String>,
}

impl Trouble {
    /// With one problem.
    pub fn one(kind: Kind, problem: Problem) -> Self {
        Self {
            kind,
            problems: vec![problem],
        }
    }

    /// A document's faults, in the order of its lines, one for each place.
    pub fn document(file: &str, faults: &[DocumentFault]) -> Self {
        let mut problems: Vec<Problem> = faults
            .iter()
            .map(|fault| Problem::document(file, fault))
            .collect();
        let place =
            |problem: &Problem| (problem.spot.line.unwrap_or(usize::MAX), problem.spot.column);
        problems.sort_by_key(place);
        problems.dedup_by(|later, first| first.spot.line.is_some() && place(later) == place(first));
        Self {
            kind: Kind::Document,
            problems,
        }
    }

    /// A piece's faults.
    pub fn piece(file: &str, faults: &[Fault]) -> Self {
        let problems = faults
            .iter()
            .map(|fault| Problem::fault(file, fault))
            .collect();
        Self {
            kind: Kind::Piece,
            problems,
        }
    }

    /// Tells it on stderr, as the run asks; returns how the program ends.
    pub fn tell(&self, terminal: Terminal) -> Exit {
        if terminal.json {
            terminal.talk(&format!("{:#}", self.as_json()));
        } else {
            let told: Vec<String> = self
                .problems
                .iter()
                .map(|problem| problem.as_text(terminal))
                .collect();
            terminal.talk(&told.join("\n"));
        }
        self.kind.exit()
    }

    /// As a problem object (RFC 9457), with every fault.
    pub fn as_json(&self) -> Value {
        let detail = match self.problems.as_slice() {
            [one] => one.sentence.clone(),
            several => format!("{} faults", several.len()),
        };
        json!({
            "type": self.kind.name(),
            "title": self.kind.title(),
            "detail": detail,
            "status": self.kind.status(),
            "exit": self.kind.exit().code(),
            "errors": self.problems.iter().map(Problem::as_json).collect::<Vec<_>>(),
        })
    }
}

impl Problem {
    /// A plain problem.
    pub fn new(code: impl Into<String>, sentence: impl Into<String>) -> Self {
        Self {
            code: code.into(),
            sentence: sentence.into(),
            ..Self::default()
        }
    }

    /// With what to do.
    #[must_use]
    pub fn hint(self, hint: impl Into<String>) -> Self {
        Self {
            hint: Some(hint.into()),
            ..self
        }
    }

    /// With where.
    #[must_use]
    pub fn at(self, spot: Spot) -> Self {
        Self { spot, ..self }
    }

    /// About a part of a file.
    #[must_use]
    pub fn in_file(self, file: &str) -> Self {
        self.at(Spot {
            file: Some(file.to_owned()),
            ..Spot::default()
        })
    }

    fn document(file: &str, fault: &DocumentFault) -> Self {
        let place = fault.place().cloned().unwrap_or_default();
        let shown = place
            .text
            .as_deref()
            .map(|text| pointed(text, place.column));
        Self::new(fault.code(), fault.to_string()).at(Spot {
            file: Some(file.to_owned()),
            line: place.line,
            column: place.column,
            pointer: place.pointer,
            shown,
        })
    }

    fn fault(file: &str, fault: &Fault) -> Self {
        let ink = if fault.severity == Severity::Refuse {
            Ink::Stop
        } else {
            Ink::Mind
        };
        let allowed = if fault.allowed.is_empty() {
            String::new()
        } else {
            format!("; {}", fault.allowed)
        };
        let mut sentence = format!("{}: {}{allowed}", fault.part, fault.found);
        if !sentence.ends_with('.') {
            sentence.push('.');
        }
        Self {
            word: Some((fault.severity.word(), ink)),
            hint: (!fault.cure.is_empty()).then(|| fault.cure.clone()),
            part: Some(fault.part.clone()),
            ..Self::new(fault.code, sentence).in_file(file)
        }
    }

    /// The lines a person reads.
    pub fn as_text(&self, terminal: Terminal) -> String {
        let mut text = String::new();
        let Spot {
            file,
            line,
            column,
            pointer,
            shown,
        } = &self.spot;
        if let Some(file) = file {
            text.push_str(file);
            text.push(':');
            for number in [line, column].into_iter().flatten() {
                text.push_str(&number.to_string());
                text.push(':');
            }
        }
        if let (Some(pointer), None) = (pointer, line) {
            text.push_str(pointer);
            text.push(':');
        }
        if !text.is_empty() {
            text.push(' ');
        }
        if let Some((word, ink)) = self.word {
            text.push_str(&terminal.ink_err(ink, word));
            text.push_str(": ");
        }
        text.push_str(&self.sentence);
        if let Some(shown) = shown {
            for line in shown.lines() {
                text.push_str("\n  ");
                text.push_str(line);
            }
        }
        if let Some(hint) = &self.hint {
            text.push_str("\n  hint: ");
            text.push_str(hint);
        }
        text.push('\n');
        text.push_str(&terminal.ink_err(Ink::Faint, &format!("  code: {}", self.code)));
        text
    }

    /// One entry of a problem object's `errors`.
    pub fn as_json(&self) -> Value {
        let detail = match &self.hint {
            Some(hint) => format!("{} {hint}", ended(&self.sentence)),
            None => self.sentence.clone(),
        };
        let mut entry = json!({
            "pointer": self.spot.pointer.as_deref().unwrap_or_default(),
            "code": self.code,
            "detail": detail,
        });
        let more = [
            ("file", self.spot.file.clone().map(Value::from)),
            ("line", self.spot.line.map(Value::from)),
            ("column", self.spot.column.map(Value::from)),
            ("part", self.part.clone().map(Value::from)),
            (
                "severity",
                self.word.map(|(word, _)| Value::from(word.to_lowercase())),
            ),
        ];
        for (name, value) in more {
            if let Some(value) = value {
                entry[name] = value;
            }
        }
        entry
    }
}

/// The sentence with a full stop.
fn ended(sentence: &str) -> String {
    if sentence.ends_with(['.', '?', '!']) {
        sentence.to_owned()
    } else {
        format!("{sentence}.")
    }
}

/// A line and, below it, a mark under its column (from 1), where the line reaches that far.
pub fn pointed(line: &str, column: Option<usize>) -> String {
    let plain: String = line
        .chars()
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect();
    match column {
        Some(column) if (1..=plain.chars().count() + 1).contains(&column) => {
            format!("{plain}\n{}^", " ".repeat(column - 1))
        }
        _ => plain,
    }
}
