//! Fields of a JSON object, read one by one; every fault is noted and reading goes on.

use std::fmt;

use serde_json::{Map, Value};

/// Sizes and kerfs beyond this are refused, so that sums of them can always be counted.
pub(super) const LONGEST: u64 = 1 << 40;

/// Something in a text that cannot be used: where, and why.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refusal {
    /// "problem" or "plan", with its name or its number; `None` for the text as a whole.
    pub of: Option<String>,
    /// The field, from the outside in; empty for the whole.
    pub field: String,
    /// What is wrong with it.
    pub reason: Reason,
}

/// What is wrong with a field.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Reason {
    /// The text is no JSON from here on.
    NotJson {
        /// Counted from 1.
        line: usize,
        /// Counted from 1.
        column: usize,
    },
    /// There is no text.
    Empty,
    /// The text ends in the middle.
    CutOff {
        /// Counted from 1.
        line: usize,
        /// Counted from 1.
        column: usize,
    },
    /// A format of another name.
    Format {
        /// What stands there.
        given: String,
        /// What can be read.
        wanted: &'static str,
    },
    /// Another kind of thing than belongs there.
    Kind {
        /// What stands there, shortened.
        given: String,
        /// What belongs there.
        wanted: &'static str,
    },
    /// No whole number.
    NotWhole {
        /// What stands there.
        given: String,
    },
    /// A number below 0.
    Negative {
        /// What stands there.
        given: String,
    },
    /// A number beyond what can be reckoned with.
    TooLarge {
        /// What stands there.
        given: String,
        /// The most.
        limit: u64,
    },
    /// A size of 0.
    Zero,
    /// A size times a size beyond what can be counted; a number of its own must be given.
    NoDefault,
    /// A field that must be there is not.
    Missing {
        /// What belongs there.
        wanted: &'static str,
    },
    /// A field nobody knows.
    Unknown {
        /// The fields that can stand there.
        known: String,
    },
    /// A field of the other kind of problem.
    OtherKind {
        /// What it belongs to.
        belongs: &'static str,
    },
    /// A name that was given before.
    Twice {
        /// The name.
        name: String,
    },
    /// A name that stands for nothing.
    NoSuch {
        /// The name.
        name: String,
    },
    /// Plans that are not cut from edge to edge.
    NotEdgeToEdge,
    /// No cuts are listed and none were found.
    NoCuts,
}

impl std::error::Error for Refusal {}

impl Reason {
    /// Line and column of the text, both counted from 1, where it is no JSON or ends too soon.
    pub fn place(&self) -> Option<(usize, usize)> {
        match self {
            Self::NotJson { line, column } | Self::CutOff { line, column } => {
                Some((*line, *column))
            }
            _ => None,
        }
    }

    /// The sentence of a reason that is always the same; empty for the others.
    const fn fixed(&self) -> &'static str {
        match self {
            Self::Empty => "the text is empty; give all of it",
            Self::CutOff { .. } => "the text ends before its brackets are closed; give all of it",
            Self::Zero => "a size of 0 cannot be cut; give at least 1",
            Self::NoDefault => {
                "not given, and width times height is too large to stand for it; give a number"
            }
            Self::NotEdgeToEdge => {
                "plans are cut from edge to edge only; leave the field out, or give true"
            }
            Self::NoCuts => {
                "no cuts are listed and none were found that free every piece within the rules; list them"
            }
            Self::NotJson { .. }
            | Self::Format { .. }
            | Self::Kind { .. }
            | Self::NotWhole { .. }
            | Self::Negative { .. }
            | Self::TooLarge { .. }
            | Self::Missing { .. }
            | Self::Unknown { .. }
            | Self::OtherKind { .. }
            | Self::Twice { .. }
            | Self::NoSuch { .. } => "",
        }
    }
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (&self.of, self.field.as_str()) {
            (None, "") => {}
            (None, field) => write!(f, "{field}: ")?,
            (Some(of), "") => write!(f, "{of}: ")?,
            (Some(of), field) => write!(f, "{of}, {field}: ")?,
        }
        self.reason.fmt(f)
    }
}

impl fmt::Display for Reason {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotJson { line, column } => write!(
                f,
                "the text is no JSON from line {line}, column {column} on; mend it there"
            ),
            Self::Format { given, wanted } => {
                write!(f, "{given} cannot be read here; give {wanted}")
            }
            Self::Kind { given, wanted } => {
                write!(f, "{given} stands where {wanted} belongs; give {wanted}")
            }
            Self::NotWhole { given } => write!(
                f,
                "{given} is not a whole number; choose a unit in which it is, and give that"
            ),
            Self::Negative { given } => {
                write!(f, "{given} is below 0; give a whole number from 0 up")
            }
            Self::TooLarge { given, limit } => {
                write!(f, "{given} is too large; give at most {limit}")
            }
            Self::Missing { wanted } => write!(f, "not given; write {wanted}"),
            Self::Unknown { known } => {
                write!(f, "no such field; leave it out, or use one of {known}")
            }
            Self::OtherKind { belongs } => {
                write!(f, "this field belongs to {belongs}; leave it out")
            }
            Self::Twice { name } => {
                write!(f, "{name:?} is named twice; give each its own name")
            }
            Self::NoSuch { name } => {
                write!(f, "there is no {name:?}; use a name that the problem gives")
            }
            fixed => f.write_str(fixed.fixed()),
        }
    }
}

/// Every fault found so far.
#[derive(Default)]
pub(super) struct Faults(pub(super) Vec<Refusal>);

/// The whole text as a value.
pub(super) fn parse(text: &str) -> Result<Value, Vec<Refusal>> {
    let bare = super::bare(text);
    serde_json::from_str(bare).map_err(|fault| {
        // The reader counts columns from 0 where a line has just begun.
        let (line, column) = (fault.line().max(1), fault.column().max(1));
        vec![Refusal {
            of: None,
            field: String::new(),
            reason: if bare.trim().is_empty() {
                Reason::Empty
            } else if fault.is_eof() {
                Reason::CutOff { line, column }
            } else {
                Reason::NotJson { line, column }
            },
        }]
    })
}

/// What stands there, short enough for a sentence.
pub(super) fn short(value: &Value) -> String {
    const MOST: usize = 40;
    let text = value.to_string();
    if text.chars().count() <= MOST {
        return text;
    }
    let start: String = text.chars().take(MOST).collect();
    format!("{start}…")
}

/// An object whose fields are being read.
pub(super) struct Fields<'a> {
    pub(super) of: Option<&'a str>,
    /// Where the object stands; empty for the outermost.
    at: String,
    object: &'a Map<String, Value>,
}

impl<'a> Fields<'a> {
    pub(super) fn new(of: Option<&'a str>, at: String, object: &'a Map<String, Value>) -> Self {
        Self { of, at, object }
    }

    pub(super) fn refuse(&self, faults: &mut Faults, field: &str, reason: Reason) {
        let field = match (self.at.as_str(), field) {
            ("", field) => field.to_owned(),
            (at, "") => at.to_owned(),
            (at, field) => format!("{at}.{field}"),
        };
        faults.0.push(Refusal {
            of: self.of.map(str::to_owned),
            field,
            reason,
        });
    }

    /// Refuses every field that is not among these.
    pub(super) fn only(&self, faults: &mut Faults, known: &[&str]) {
        for field in self.object.keys() {
            if !known.contains(&field.as_str()) {
                let known = known.join(", ");
                self.refuse(faults, field, Reason::Unknown { known });
            }
        }
    }

    /// Refuses these fields, which mean something for the other kind of problem.
    pub(super) fn none_of(&self, faults: &mut Faults, fields: &[&str], belongs: &'static str) {
        for field in fields
            .iter()
            .filter(|field| self.object.contains_key(**field))
        {
            self.refuse(faults, field, Reason::OtherKind { belongs });
        }
    }

    /// A field that is there and not null.
    pub(super) fn get(&self, field: &str) -> Option<&'a Value> {
        self.object.get(field).filter(|value| !value.is_null())
    }

    pub(super) fn is_null(&self, field: &str) -> bool {
        self.object.get(field).is_some_and(Value::is_null)
    }

    fn kind(&self, faults: &mut Faults, field: &str, value: &Value, wanted: &'static str) {
        let given = short(value);
        self.refuse(faults, field, Reason::Kind { given, wanted });
    }

    pub(super) fn text(&self, faults: &mut Faults, field: &str) -> Option<&'a str> {
        let value = self.get(field)?;
        let text = value.as_str();
        if text.is_none() {
            self.kind(faults, field, value, "a text in quotes");
        }
        text
    }

    pub(super) fn truth(&self, faults: &mut Faults, field: &str) -> Option<bool> {
        let value = self.get(field)?;
        let truth = value.as_bool();
        if truth.is_none() {
            self.kind(faults, field, value, "true or false");
        }
        truth
    }

    /// A whole number up to a limit.
    pub(super) fn whole(&self, faults: &mut Faults, field: &str, limit: u64) -> Option<u64> {
        self.whole_of(faults, field, self.get(field)?, limit)
    }

    fn whole_of(&self, faults: &mut Faults, field: &str, value: &Value, limit: u64) -> Option<u64> {
        let given = short(value);
        let reason = match (value, value.as_u64()) {
            (_, Some(whole)) if whole <= limit => return Some(whole),
            (_, Some(_)) => Reason::TooLarge { given, limit },
            (Value::Number(_), None) if value.as_f64().is_some_and(|number| number >= TOO_FAR) => {
                Reason::TooLarge { given, limit }
            }
            (Value::Number(_), None) if value.as_f64().is_some_and(|number| number < 0.0) => {
                Reason::Negative { given }
            }
            (Value::Number(_), None) => Reason::NotWhole { given },
            _ => Reason::Kind {
                given,
                wanted: "a whole number",
            },
        };
        self.refuse(faults, field, reason);
        None
    }

    /// A size, or a fault when there is none.
    pub(super) fn size(&self, faults: &mut Faults, field: &str) -> Option<u64> {
        if self.get(field).is_none() {
            self.refuse(
                faults,
                field,
                Reason::Missing {
                    wanted: "a whole number of at least 1",
                },
            );
            return None;
        }
        let size = self.whole(faults, field, LONGEST)?;
        if size == 0 {
            self.refuse(faults, field, Reason::Zero);
            return None;
        }
        Some(size)
    }

    /// A list of whole numbers; its length must be among these.
    pub(super) fn wholes(
        &self,
        faults: &mut Faults,
        field: &str,
        lengths: &[usize],
        wanted: &'static str,
    ) -> Option<Vec<u64>> {
        let value = self.get(field)?;
        match value.as_array() {
            Some(list) if lengths.contains(&list.len()) => list
                .iter()
                .map(|value| self.whole_of(faults, field, value, LONGEST))
                .collect(),
            _ => {
                self.kind(faults, field, value, wanted);
                None
            }
        }
    }

    /// A field that must be a list.
    pub(super) fn list(&self, faults: &mut Faults, field: &str) -> Option<&'a [Value]> {
        let Some(value) = self.get(field) else {
            self.refuse(faults, field, Reason::Missing { wanted: "a list" });
            return None;
        };
        let list = value.as_array();
        if list.is_none() {
            self.kind(faults, field, value, "a list");
        }
        list.map(Vec::as_slice)
    }

    /// The objects of a list; an entry that is none is a fault.
    pub(super) fn objects(&self, faults: &mut Faults, field: &str) -> Option<Vec<Fields<'a>>> {
        let mut objects = Vec::new();
        for (index, value) in self.list(faults, field)?.iter().enumerate() {
            let at = format!("{field}[{index}]");
            match value.as_object() {
                Some(object) => {
                    let at = match self.at.as_str() {
                        "" => at,
                        outer => format!("{outer}.{at}"),
                    };
                    objects.push(Fields::new(self.of, at, object));
                }
                None => self.kind(faults, &at, value, "an object in braces"),
            }
        }
        Some(objects)
    }

    /// An object within this one.
    pub(super) fn object(&self, faults: &mut Faults, field: &str) -> Option<Fields<'a>> {
        let value = self.get(field)?;
        let at = match self.at.as_str() {
            "" => field.to_owned(),
            outer => format!("{outer}.{field}"),
        };
        let object = value.as_object();
        if object.is_none() {
            self.kind(faults, field, value, "an object in braces");
        }
        object.map(|object| Fields::new(self.of, at, object))
    }

    /// A name that must be there.
    pub(super) fn name(&self, faults: &mut Faults, field: &str) -> Option<String> {
        if self.get(field).is_none() {
            self.refuse(faults, field, Reason::Missing { wanted: "a name" });
            return None;
        }
        self.text(faults, field).map(str::to_owned)
    }
}

/// Whole numbers from here on are written in a way that no longer tells them apart.
const TOO_FAR: f64 = 18_446_744_073_709_551_615.0;
