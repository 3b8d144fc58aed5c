//! Faults: what is wrong with a piece, gathered in one pass, each with the number that cures it.

use working::LineId;

/// How bad a fault is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// It can be made, and somebody should look.
    Warn,
    /// It can't be made as described.
    Refuse,
}

impl Severity {
    /// The word printed for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Warn => "Mind",
            Self::Refuse => "Stop",
        }
    }
}

/// One fault of one part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// Stable code for programs: `stack.too_deep`.
    pub code: &'static str,
    /// How bad it is.
    pub severity: Severity,
    /// Which part.
    pub part: String,
    /// What was found, with its number.
    pub found: String,
    /// What is allowed, with its number.
    pub allowed: String,
    /// What would cure it, with the number.
    pub cure: String,
    /// The line of working behind the number found.
    pub line: Option<LineId>,
}

impl Fault {
    /// A fault that stops the piece.
    pub fn refuse(
        code: &'static str,
        part: impl Into<String>,
        found: impl Into<String>,
        allowed: impl Into<String>,
        cure: impl Into<String>,
    ) -> Self {
        Self {
            code,
            severity: Severity::Refuse,
            part: part.into(),
            found: found.into(),
            allowed: allowed.into(),
            cure: cure.into(),
            line: None,
        }
    }

    /// A fault that only warns.
    pub fn warn(
        code: &'static str,
        part: impl Into<String>,
        found: impl Into<String>,
        allowed: impl Into<String>,
        cure: impl Into<String>,
    ) -> Self {
        Self {
            severity: Severity::Warn,
            ..Self::refuse(code, part, found, allowed, cure)
        }
    }

    /// The same fault, with the line that made the number found.
    #[must_use]
    pub fn because(self, line: LineId) -> Self {
        Self {
            line: Some(line),
            ..self
        }
    }

    /// The whole fault as a sentence or two.
    pub fn sentence(&self) -> String {
        let mut text = format!("{}: {}", self.part, self.found);
        if !self.allowed.is_empty() {
            text = format!("{text}; {}", self.allowed);
        }
        if !self.cure.is_empty() {
            text = format!("{text}. {}", self.cure);
        }
        if !text.ends_with('.') {
            text.push('.');
        }
        text
    }
}
