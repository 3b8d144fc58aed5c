//! Reading and writing the job document, and saying where it went wrong.

use crate::reading::{self, in_words};
use crate::written::with_bare;
use crate::{Job, Units};

/// The version of the document's form that this program writes.
pub const VERSION: u32 = 1;

/// The longest document that is read, in bytes. A job of 400 openings takes about 60 kB.
pub const LONGEST: usize = 1 << 20;

/// How many faults of one document are named before the rest are only counted.
const MOST_FAULTS: usize = 50;

/// How many bytes are read, over and over, to find them: each fault of a document costs one more
/// reading of all of it, and long documents are to be answered as soon as short ones.
const MOST_READ: usize = 2 * LONGEST;

/// Where in a document a fault lies.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Place {
    /// Line, from 1, where the document is text with lines.
    pub line: Option<usize>,
    /// Column, from 1.
    pub column: Option<usize>,
    /// Path of the field, as `/art/0/width`, where it is known.
    pub pointer: Option<String>,
    /// The line as written.
    pub text: Option<String>,
}

/// Why a document can't be read.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum DocumentFault {
    /// There is nothing in it.
    #[error("the document is empty; write one with `rabbet job new`")]
    Empty,
    /// It is not text.
    #[error("the document is not UTF-8 text: byte {at} can't be read; save it as UTF-8")]
    NotText {
        /// Offset of the first byte that can't be read.
        at: usize,
    },
    /// It is far longer than a job is.
    #[error(
        "the document is {bytes} bytes long, the longest that is read is {LONGEST}; is it the right file?"
    )]
    TooLong {
        /// Its length.
        bytes: usize,
    },
    /// It was written by a newer program.
    #[error(
        "the document says `rabbet = {found}`, this program reads up to {VERSION}; update the program to open it"
    )]
    Newer {
        /// The version it names.
        found: i64,
    },
    /// It does not say which version it is.
    #[error("the document does not say `rabbet = {VERSION}` on its first line; add that line")]
    NoVersion,
    /// Something in it is not as it should be.
    #[error("{sentence}")]
    Field {
        /// What is wrong and what would do.
        sentence: String,
        /// Where.
        place: Place,
    },
    /// There are more faults than are named.
    #[error("and more after these; mend them and check again")]
    More,
}

impl DocumentFault {
    /// A stable code for programs.
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Empty => "document.empty",
            Self::NotText { .. } => "document.not_text",
            Self::TooLong { .. } => "document.too_long",
            Self::Newer { .. } => "document.newer",
            Self::NoVersion => "document.no_version",
            Self::Field { .. } => "document.field",
            Self::More => "document.more",
        }
    }

    /// Where the fault lies.
    pub const fn place(&self) -> Option<&Place> {
        match self {
            Self::Field { place, .. } => Some(place),
            _ => None,
        }
    }
}

/// The two fields that must be known before the rest can be read.
#[derive(serde::Deserialize)]
struct Head {
    rabbet: Option<i64>,
    #[serde(default)]
    units: Units,
}

impl Job {
    /// Reads a job document, TOML or JSON (a document that opens with `{`).
    ///
    /// Errors: all lengths, sizes and angles that can't be read, together, and the first other
    /// fault of form, each with its line.
    pub fn read(bytes: &[u8]) -> Result<Self, Vec<DocumentFault>> {
        let text = as_text(bytes).map_err(|fault| vec![fault])?;
        if text.trim_start().starts_with('{') {
            Self::read_json(text)
        } else {
            Self::read_toml(text)
        }
    }

    /// Writes the document as TOML; reading it back gives the same job.
    pub fn to_toml(&self) -> String {
        with_bare(self.units.unit(), || {
            toml::to_string_pretty(self).expect("a job writes as TOML")
        })
    }

    /// Writes the document as JSON; reading it back gives the same job.
    pub fn to_json(&self) -> serde_json::Value {
        with_bare(self.units.unit(), || {
            serde_json::to_value(self).expect("a job writes as JSON")
        })
    }

    /// The JSON Schema (2020-12) of the document.
    pub fn schema() -> serde_json::Value {
        schemars::schema_for!(Self).to_value()
    }

    fn read_toml(text: &str) -> Result<Self, Vec<DocumentFault>> {
        let head = match toml::from_str::<Head>(text) {
            Ok(head) => head,
            Err(error) => return Err(vec![toml_fault(text, &error)]),
        };
        check_version(head.rabbet)?;
        let mut reading = Reading::of(text);
        loop {
            match with_bare(head.units.unit(), || toml::from_str::<Self>(&reading.text)) {
                Ok(job) if reading.faults.is_empty() => return Ok(job),
                Err(error) if reading.goes_on_after(&error) => {}
                Ok(_) | Err(_) => return Err(reading.in_order()),
            }
        }
    }

    fn read_json(text: &str) -> Result<Self, Vec<DocumentFault>> {
        let head: Head =
            serde_json::from_str(text).map_err(|error| vec![json_fault(text, &error, None)])?;
        check_version(head.rabbet)?;
        let mut json = serde_json::Deserializer::from_str(text);
        let job = with_bare(head.units.unit(), || {
            serde_path_to_error::deserialize(&mut json)
        })
        .map_err(|error| {
            let path = error.path().to_string().replace(['.', '['], "/");
            let pointer = format!("/{}", path.replace(']', ""));
            vec![json_fault(text, error.inner(), Some(pointer))]
        })?;
        json.end()
            .map_err(|error| vec![json_fault(text, &error, None)])?;
        Ok(job)
    }
}

fn as_text(bytes: &[u8]) -> Result<&str, DocumentFault> {
    if bytes.len() > LONGEST {
        return Err(DocumentFault::TooLong { bytes: bytes.len() });
    }
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    let text = std::str::from_utf8(bytes).map_err(|e| DocumentFault::NotText {
        at: e.valid_up_to(),
    })?;
    if text.trim().is_empty() {
        Err(DocumentFault::Empty)
    } else {
        Ok(text)
    }
}

fn check_version(found: Option<i64>) -> Result<(), Vec<DocumentFault>> {
    match found {
        None => Err(vec![DocumentFault::NoVersion]),
        Some(found) if found > i64::from(VERSION) => Err(vec![DocumentFault::Newer { found }]),
        Some(found) if found < 1 => Err(vec![plain_fault(format!(
            "`rabbet = {found}` is no version; write {VERSION}"
        ))]),
        Some(_) => Ok(()),
    }
}

/// A document being read on past what is refused in it.
struct Reading {
    /// The text, refused values replaced by stand-ins of the same length.
    text: String,
    faults: Vec<DocumentFault>,
    /// Bytes read so far, over all readings.
    read: usize,
    /// Where the last stand-in was put, and whether it was that of a size.
    last: Option<(usize, bool)>,
}

impl Reading {
    fn of(text: &str) -> Self {
        Self {
            text: text.to_owned(),
            faults: Vec::new(),
            read: 0,
            last: None,
        }
    }

    /// Notes a refusal; true where a stand-in lets reading go on to the next one.
    fn goes_on_after(&mut self, error: &toml::de::Error) -> bool {
        self.read += self.text.len();
        let again = error
            .span()
            .zip(self.last)
            .and_then(|(span, (at, size))| (span.start == at).then_some(size));
        if again.is_none() {
            let enough = self.faults.len() >= MOST_FAULTS || self.read > MOST_READ;
            if enough && !self.faults.is_empty() {
                self.faults.push(DocumentFault::More);
                return false;
            }
            self.faults.push(toml_fault(&self.text, error));
        }
        // A value that is refused again was a size, whose stand-in needs two numbers.
        again != Some(true) && self.replace(error, again == Some(false))
    }

    /// Puts a stand-in where a quoted value was refused; false where it was something else.
    fn replace(&mut self, error: &toml::de::Error, size: bool) -> bool {
        let Some(span) = error.span() else {
            return false;
        };
        let Some(refused) = self.text.get(span.clone()) else {
            return false;
        };
        let quoted = refused.len() >= 3 && refused.starts_with('"') && refused.ends_with('"');
        let word = error.message().starts_with("unknown variant");
        let stand_in = if size { "1 x 1" } else { "1" };
        if !quoted || word {
            return false;
        }
        let pad = " ".repeat(refused.len().saturating_sub(2 + stand_in.len()));
        self.text
            .replace_range(span.clone(), &format!("\"{stand_in}{pad}\""));
        self.last = Some((span.start, size));
        true
    }

    /// The faults in the order of their lines.
    fn in_order(mut self) -> Vec<DocumentFault> {
        let place = |fault: &DocumentFault| match fault.place() {
            Some(place) => (place.line, place.column),
            None => (Some(usize::MAX), None),
        };
        self.faults.sort_by_key(place);
        self.faults
    }
}

fn toml_fault(text: &str, error: &toml::de::Error) -> DocumentFault {
    let (sentence, place) = reading::refusal(text, error);
    DocumentFault::Field { sentence, place }
}

fn json_fault(text: &str, error: &serde_json::Error, pointer: Option<String>) -> DocumentFault {
    let line = text
        .lines()
        .nth(error.line().saturating_sub(1))
        .map(reading::clip);
    let key = pointer.as_deref().and_then(|path| path.rsplit('/').next());
    let key = key.map(str::to_owned);
    let key = key
        .as_deref()
        .filter(|key| key.starts_with(char::is_alphabetic));
    let place = Place {
        line: Some(error.line()),
        column: Some(error.column()),
        pointer,
        text: line,
    };
    let message = error.to_string();
    let sentence = message
        .rsplit_once(" at line ")
        .map_or(message.as_str(), |(said, _)| said);
    DocumentFault::Field {
        sentence: in_words(sentence, key),
        place,
    }
}

fn plain_fault(sentence: String) -> DocumentFault {
    DocumentFault::Field {
        sentence,
        place: Place::default(),
    }
}
