//! Why a text was not read, where, and what to type instead.

use std::ops::Range;

/// What a text was read for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Wanted {
    /// One length.
    Length,
    /// A width and a height.
    Size,
    /// A mass.
    Mass,
    /// An angle.
    Angle,
    /// An amount of money.
    Money,
}

impl Wanted {
    /// With its article, for a sentence.
    pub const fn noun(self) -> &'static str {
        match self {
            Self::Length => "a length",
            Self::Size => "a size",
            Self::Mass => "a mass",
            Self::Angle => "an angle",
            Self::Money => "an amount of money",
        }
    }
}

/// A text that was not read, with the place and the reason.
///
/// `Display` is one sentence without the text; the edge adds the field's label, the
/// [`caret`](ReadError::caret) lines, the [`hint`](ReadError::hint) and the
/// [`code`](ReadError::code).
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{refusal}")]
pub struct ReadError {
    refusal: Box<Refusal>,
    span: Range<usize>,
    wanted: Wanted,
}

/// The reason a text was not read.
///
/// `readings` are complete texts, each of which says one thing.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Refusal {
    /// No character but spaces.
    #[error("nothing is typed")]
    Empty,
    /// More characters than are read.
    #[error("the text is {chars} characters long, and at most {limit} are read")]
    TooLong {
        /// How many there are.
        chars: usize,
        /// How many are read.
        limit: usize,
    },
    /// A character or word out of place.
    #[error("“{typed}” has no meaning here")]
    Stray {
        /// As typed.
        typed: String,
    },
    /// A unit or sign without a number.
    #[error("“{typed}” has no number")]
    NoNumber {
        /// The unit or sign as typed.
        typed: String,
    },
    /// Points and commas that group no number.
    #[error(
        "the points and commas in “{typed}” don't mark groups of three digits and one decimal part"
    )]
    Separators {
        /// The number as typed.
        typed: String,
    },
    /// A comma that may group thousands or start decimals.
    #[error("“{typed}” is {}", either(readings))]
    Comma {
        /// The number as typed.
        typed: String,
        /// As a decimal, then as thousands.
        readings: Vec<String>,
    },
    /// `1e3`.
    #[error("“{typed}” uses an exponent")]
    Exponent {
        /// The number as typed.
        typed: String,
    },
    /// A foot mark that may be an apostrophe between thousands: `1'250`.
    #[error("“{typed}” is {}", either(readings))]
    Apostrophe {
        /// The numbers as typed.
        typed: String,
        /// As feet, then as thousands.
        readings: Vec<String>,
    },
    /// Two numbers with nothing between them that joins them.
    #[error("“{typed}” is {}", either(readings))]
    Pair {
        /// The numbers as typed.
        typed: String,
        /// What they may mean.
        readings: Vec<String>,
    },
    /// `16 7/`.
    #[error("the fraction has no bottom number")]
    NoBottom,
    /// `/8`.
    #[error("the fraction has no top number")]
    NoTop,
    /// `7/0`.
    #[error("the bottom number of the fraction is zero")]
    ZeroBottom,
    /// `7.5/8`.
    #[error("a fraction is made of whole numbers, and “{typed}” is not one")]
    FractionOfDecimals {
        /// The part as typed.
        typed: String,
    },
    /// A fraction of very long numbers.
    #[error("a number in a fraction has at most {limit} digits")]
    LongFraction {
        /// How many digits are read.
        limit: usize,
    },
    /// `1/2/3`.
    #[error("the fraction has more than one bottom number")]
    SecondBottom,
    /// `11/2`.
    #[error("“{typed}” is {}", either(readings))]
    Improper {
        /// The fraction as typed.
        typed: String,
        /// As a mixed number, then with its first digits as a whole number.
        readings: Vec<String>,
    },
    /// `1 16/8`.
    #[error(
        "the fraction beside the whole number is not below one: “{typed}” is {}",
        either(readings)
    )]
    MixedImproper {
        /// The mixed number as typed.
        typed: String,
        /// As a sum, then as one fraction.
        readings: Vec<String>,
    },
    /// `12.5 1/2`.
    #[error("“{typed}” has decimals and a fraction; it is {}", either(readings))]
    DecimalAndFraction {
        /// As typed.
        typed: String,
        /// What it may mean.
        readings: Vec<String>,
    },
    /// `1 - 1/2`.
    #[error("the hyphen joins or subtracts: “{typed}” is {}", either(readings))]
    Hyphen {
        /// As typed.
        typed: String,
        /// What it may mean.
        readings: Vec<String>,
    },
    /// `3-4`.
    #[error("“{typed}” is either a range from {from} to {to} or the difference {less}")]
    Range {
        /// As typed.
        typed: String,
        /// Where the range starts.
        from: String,
        /// Where it ends.
        to: String,
        /// The first less the second.
        less: String,
    },
    /// A word that is no unit.
    #[error("“{typed}” is not a unit of {}", family(*wanted))]
    UnknownUnit {
        /// As typed.
        typed: String,
        /// The nearest known spelling.
        near: Option<&'static str>,
        /// Which family of units.
        wanted: Wanted,
    },
    /// `4 in 1 ft`.
    #[error("“{second}” comes after “{first}”; the larger unit comes first, each once")]
    UnitOrder {
        /// The unit before.
        first: &'static str,
        /// The unit that follows.
        second: &'static str,
    },
    /// A number without a unit where one is needed.
    #[error("“{typed}” has no unit{}", may_be(readings))]
    UnitMissing {
        /// The number as typed.
        typed: String,
        /// What it may mean.
        readings: Vec<String>,
    },
    /// `16 x 20` where one length is read.
    #[error("“{typed}” stands between two lengths, and one is read here")]
    TwoLengths {
        /// As typed.
        typed: String,
    },
    /// No `x`, or nothing beside it.
    #[error("a size is a width and a height with an x between them")]
    OneLength,
    /// `1 x 2 x 3`.
    #[error("a size is a width and a height, and a third length is typed")]
    ThreeLengths,
    /// A side below zero.
    #[error("the side “{typed}” is below zero")]
    NegativeSide {
        /// As typed.
        typed: String,
    },
    /// Beyond what is read.
    #[error("“{typed}” is beyond {limit}, the most that is read")]
    OutOfRange {
        /// As typed.
        typed: String,
        /// The most that is read.
        limit: &'static str,
    },
    /// Not a whole number of quanta.
    #[error("“{typed}” can't be held exactly; it lies between {below} and {above}")]
    NotHeld {
        /// As typed.
        typed: String,
        /// The nearest that is held below.
        below: String,
        /// The nearest that is held above.
        above: String,
        /// Coarser values nearby that people measure in.
        near: Vec<String>,
    },
    /// No currency code.
    #[error("“{typed}” has no currency")]
    NoCurrency {
        /// As typed.
        typed: String,
    },
    /// A word that is no listed code.
    #[error("“{typed}” is not a currency code of ISO 4217 with a minor unit")]
    UnknownCurrency {
        /// As typed.
        typed: String,
    },
    /// More decimals than the currency has.
    #[error("{code} has {places} decimals, and “{typed}” has more")]
    SmallerThanMinor {
        /// As typed.
        typed: String,
        /// The currency.
        code: &'static str,
        /// Its decimals.
        places: u32,
    },
}

impl ReadError {
    pub(super) fn new(wanted: Wanted, span: Range<usize>, refusal: Refusal) -> Self {
        Self {
            refusal: Box::new(refusal),
            span,
            wanted,
        }
    }

    /// The same refusal of one side of a size.
    pub(super) fn of_size(self) -> Self {
        Self {
            wanted: Wanted::Size,
            ..self
        }
    }

    /// The reason, with its data.
    pub fn refusal(&self) -> &Refusal {
        &self.refusal
    }

    /// What the text was read for.
    pub const fn wanted(&self) -> Wanted {
        self.wanted
    }

    /// The bytes of the text that stand in the way; empty only where the text is.
    pub fn span(&self) -> Range<usize> {
        self.span.clone()
    }

    /// The complete texts it may have meant, each with one reading; empty where there are none.
    pub fn readings(&self) -> Vec<String> {
        match self.refusal() {
            Refusal::Comma { readings, .. }
            | Refusal::Apostrophe { readings, .. }
            | Refusal::Pair { readings, .. }
            | Refusal::Improper { readings, .. }
            | Refusal::MixedImproper { readings, .. }
            | Refusal::DecimalAndFraction { readings, .. }
            | Refusal::Hyphen { readings, .. }
            | Refusal::UnitMissing { readings, .. } => readings.clone(),
            Refusal::Range { from, to, less, .. } => [from, to, less].map(String::clone).to_vec(),
            Refusal::NotHeld {
                below, above, near, ..
            } => [below, above].into_iter().chain(near).cloned().collect(),
            _ => Vec::new(),
        }
    }

    /// The text with the place marked beneath: two lines, no line end.
    ///
    /// Control characters are shown as spaces, so that the marks stay under their characters.
    pub fn caret(&self, text: &str) -> String {
        let before = text.get(..self.span.start).unwrap_or(text).chars().count();
        let marked = text
            .get(self.span.clone())
            .unwrap_or("")
            .chars()
            .count()
            .max(1);
        let shown: String = text
            .chars()
            .map(|c| if c.is_control() { ' ' } else { c })
            .collect();
        format!("{shown}\n{}{}", " ".repeat(before), "^".repeat(marked))
    }
}

/// `either 1.25 in or 1250 in`, `one of a, b or c`.
fn either(readings: &[String]) -> String {
    match readings {
        [] => "not one number".into(),
        [one] => format!("perhaps {one}"),
        [first, second] => format!("either {first} or {second}"),
        [first @ .., last] => format!("one of {} or {last}", first.join(", ")),
    }
}

/// `; it may be 1 m 5 cm or 1 m 5 mm`, or nothing.
fn may_be(readings: &[String]) -> String {
    match readings {
        [] => String::new(),
        [one] => format!("; it may be {one}"),
        [first @ .., last] => format!("; it may be {} or {last}", first.join(", ")),
    }
}

const fn family(wanted: Wanted) -> &'static str {
    match wanted {
        Wanted::Length | Wanted::Size => "length",
        Wanted::Mass => "mass",
        Wanted::Angle => "angle",
        Wanted::Money => "money",
    }
}
