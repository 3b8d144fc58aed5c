//! The working itself: lines in the order they were worked out.

use std::fmt;
use std::ops::{Deref, Range};

use crate::rule::Rule;
use crate::subject::Subject;
use crate::value::{Given, Input, Origin, Value};

/// The number of a line within one working.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct LineId(u32);

impl LineId {
    /// The line's place, counted from 0.
    #[allow(
        clippy::as_conversions,
        reason = "every machine this runs on addresses 32 bits"
    )]
    pub const fn index(self) -> usize {
        self.0 as usize
    }
}

/// A value and the line that says why.
///
/// Shape:  made only by [`Working::by`]; reads as the value itself. There is no way to change the value
///         and keep the line: work out another line instead.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Worked<T> {
    /// The value.
    pub value: T,
    /// The line that says why.
    pub line: LineId,
}

impl<T> Deref for Worked<T> {
    type Target = T;
    fn deref(&self) -> &T {
        &self.value
    }
}

/// A line as a working holds it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// The rule that made the value.
    pub rule: &'static Rule,
    /// What the value is of.
    pub subject: Subject,
    /// The value.
    pub value: Value,
    inputs: Range<u32>,
}

/// Every line of one derivation.
///
/// Shape:  two growing lists; a line only reads lines before it.
/// Errors: none for sound callers. A line of another working given as an input panics where it can be
///         told, and is otherwise reported by [`Working::recheck`].
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Working {
    lines: Vec<Line>,
    inputs: Vec<Input>,
}

impl Working {
    /// A working without lines.
    pub const fn new() -> Self {
        Self {
            lines: Vec::new(),
            inputs: Vec::new(),
        }
    }

    /// A working without lines, with room for so many lines and so many inputs in all.
    pub fn with_capacity(lines: usize, inputs: usize) -> Self {
        Self {
            lines: Vec::with_capacity(lines),
            inputs: Vec::with_capacity(inputs),
        }
    }

    /// Records that `value` was made by `rule` from `inputs`, under the names its formula uses.
    ///
    /// Shape:  a name may be recorded several times, for `sum`, `count`, `max` and `min`.
    /// Errors: an input from a line that this working does not have yet panics.
    pub fn by<T: Into<Value> + Copy>(
        &mut self,
        rule: &'static Rule,
        subject: Subject,
        inputs: &[(&'static str, Given)],
        value: T,
    ) -> Worked<T> {
        let line = LineId(number(self.lines.len()));
        let from = number(self.inputs.len());
        for &(name, given) in inputs {
            if let Origin::Line(earlier) = given.origin {
                assert!(
                    earlier < line,
                    "{name} comes from a line of another working"
                );
            }
            self.inputs.push(Input {
                name,
                value: given.value,
                origin: given.origin,
            });
        }
        let inputs = from..number(self.inputs.len());
        self.lines.push(Line {
            rule,
            subject,
            value: value.into(),
            inputs,
        });
        Worked { value, line }
    }

    /// How many lines there are.
    pub fn len(&self) -> usize {
        self.lines.len()
    }

    /// Whether nothing was worked out yet.
    pub fn is_empty(&self) -> bool {
        self.lines.is_empty()
    }

    /// Every line, in the order they were worked out.
    pub fn lines(&self) -> impl DoubleEndedIterator<Item = LineView<'_>> + ExactSizeIterator {
        (0..number(self.lines.len())).map(|index| self.line(LineId(index)))
    }

    /// The line of this id.
    ///
    /// Errors: an id of another working, past the end of this one, panics.
    pub fn line(&self, id: LineId) -> LineView<'_> {
        let line = &self.lines[id.index()];
        let inputs = LineId(line.inputs.start).index()..LineId(line.inputs.end).index();
        LineView {
            id,
            rule: line.rule,
            subject: line.subject,
            inputs: &self.inputs[inputs],
            value: line.value,
            working: self,
        }
    }

    /// The line at this place, counted from 0, for callers that hold a number and not an id.
    pub fn at(&self, index: usize) -> Option<LineView<'_>> {
        (index < self.lines.len()).then(|| self.line(LineId(number(index))))
    }

    /// The line about `path`, such as `mat.2.opening.1.window.width`; the last of them where there are several.
    pub fn find(&self, path: &str) -> Option<LineView<'_>> {
        self.lines().rev().find(|line| line.subject.is(path))
    }

    /// The lines about `path` and everything under it: `mat.2` covers `mat.2.outer.width`, not `mat.20`.
    pub fn find_all<'a>(&'a self, path: &'a str) -> impl Iterator<Item = LineView<'a>> {
        self.lines().filter(move |line| line.subject.is_under(path))
    }
}

/// A line as it is read.
#[derive(Clone, Copy)]
pub struct LineView<'a> {
    /// Its id.
    pub id: LineId,
    /// The rule that made the value.
    pub rule: &'static Rule,
    /// What the value is of.
    pub subject: Subject,
    /// What the value was made from.
    pub inputs: &'a [Input],
    /// The value.
    pub value: Value,
    pub(crate) working: &'a Working,
}

impl fmt::Debug for LineView<'_> {
    /// Without the working it stands in.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("LineView")
            .field("id", &self.id)
            .field("rule", &self.rule.id)
            .field("subject", &format_args!("{}", self.subject))
            .field("inputs", &self.inputs)
            .field("value", &self.value)
            .finish_non_exhaustive()
    }
}

/// A list's length as a line's number.
fn number(length: usize) -> u32 {
    u32::try_from(length).expect("a working has fewer than 4 294 967 296 lines and inputs")
}
