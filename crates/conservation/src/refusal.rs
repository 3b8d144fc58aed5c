//! Why something can't be worked out as asked.

use working::Figure;

/// Why something can't be worked out as asked, and what would do.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Refusal {
    /// A number outside what can be.
    #[error("{what} is {given}; give {from} to {to}")]
    Outside {
        /// What it is, with its article.
        what: &'static str,
        /// As given.
        given: Figure,
        /// The least it may be.
        from: Figure,
        /// The most it may be.
        to: Figure,
    },
    /// A name that no table has.
    #[error("there is no {what} “{given}”; name one of: {known}")]
    Unknown {
        /// What it should name.
        what: &'static str,
        /// As given.
        given: String,
        /// Those there are.
        known: String,
    },
    /// A length that must be above zero.
    #[error("{what} is {given}; give more than zero")]
    NotPositive {
        /// What it is, with its article.
        what: &'static str,
        /// As given, in words.
        given: String,
    },
    /// The result runs past what lengths and loads are held in.
    #[error("{what} runs past what can be held; check the sizes and their units")]
    TooLarge {
        /// What it is, with its article.
        what: &'static str,
    },
}

impl Refusal {
    /// Refuses a length that is not above zero.
    pub fn unless_positive(what: &'static str, given: measure::Length) -> Result<(), Self> {
        if given.is_positive() {
            return Ok(());
        }
        let given = given.in_both(measure::Unit::Inch);
        Err(Self::NotPositive { what, given })
    }

    /// A name that none of `known` is.
    pub fn unknown<'a>(
        what: &'static str,
        given: &str,
        known: impl Iterator<Item = &'a str>,
    ) -> Self {
        let known: Vec<&str> = known.collect();
        Self::Unknown {
            what,
            given: given.to_owned(),
            known: known.join("; "),
        }
    }
}
