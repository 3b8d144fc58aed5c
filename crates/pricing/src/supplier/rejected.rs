//! Rows that are refused, and rows that say something else than the catalogue.

use std::fmt;

use measure::Currency;
use trade::{Kind, Per};

/// A row that is not taken, and why; a row with several faults is named with each.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Rejected {
    /// Its number, from 1, as a spreadsheet counts.
    pub row: u32,
    /// The supplier's code in it, where it could be read.
    pub code: Option<String>,
    /// Heading or letter of the column.
    pub column: String,
    /// What stands there, cut short.
    pub value: String,
    /// Why it is refused.
    pub reason: Reason,
}

/// As one line: `row 17, List "12,3O": is no amount; …`.
impl fmt::Display for Rejected {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self {
            row,
            column,
            value,
            reason,
            ..
        } = self;
        if value.is_empty() {
            write!(f, "row {row}, {column}: {reason}")
        } else {
            write!(f, "row {row}, {column} \"{value}\": {reason}")
        }
    }
}

/// Why a cell, and with it its row, is refused.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Reason {
    /// A cell that is needed is blank.
    #[error(
        "nothing stands here; write it in the list, or leave the row out with `skip = [{row}]`"
    )]
    Blank {
        /// The row.
        row: u32,
    },
    /// A price column is blank.
    #[error("there is no price; write one, or say `optional = true` under this [[price]]")]
    NoPrice,
    /// No price at all.
    #[error(
        "none of the price columns has a price; write one, or leave the row out with `skip = [{row}]`"
    )]
    NoPriceAtAll {
        /// The row.
        row: u32,
    },
    /// Words where an amount belongs.
    #[error(
        "this is no amount; write one as {example}, or leave the row out with `skip = [{row}]`"
    )]
    NotAmount {
        /// The mapping's habit.
        example: &'static str,
        /// The row.
        row: u32,
    },
    /// The signs of another habit.
    #[error(
        "points and commas stand otherwise than in {example}; mend the cell, or change `numbers` in the mapping"
    )]
    Signs {
        /// The mapping's habit.
        example: &'static str,
    },
    /// Nothing is charged.
    #[error("the price is nothing; ask the supplier, or leave the row out with `skip = [{row}]`")]
    Zero {
        /// The row.
        row: u32,
    },
    /// Below zero.
    #[error("the price is below zero; ask the supplier what is meant")]
    Negative,
    /// More than six decimals.
    #[error(
        "it has more than six decimals; say `round = 4` in the mapping to round half up to four"
    )]
    TooFine,
    /// Beyond what is held.
    #[error("it is more than a thousand million; is it the right column?")]
    TooLarge,
    /// Another currency's sign.
    #[error(
        "the sign {sign} is not that of {currency}; change `currency` in the mapping, or mend the cell"
    )]
    OtherCurrency {
        /// The sign found.
        sign: String,
        /// The currency expected.
        currency: Currency,
    },
    /// A currency that is not listed.
    #[error("this is no currency of ISO 4217; write its three letters, such as USD")]
    NoCurrency,
    /// A word that the mapping does not explain.
    #[error(
        "this word is not explained; add \"{word}\" = \"...\" under [words.{list}] in the mapping"
    )]
    Word {
        /// The word.
        word: String,
        /// The list of words it belongs to.
        list: &'static str,
    },
    /// A length or size that is none.
    #[error("{sentence}")]
    Length {
        /// The reader's own sentence, with what to write.
        sentence: String,
    },
    /// A dimension that is nothing or less.
    #[error("a dimension is more than nothing; measure it, or leave the column out of the mapping")]
    NoDimension,
    /// One half of a pair.
    #[error("{lacks} is blank in this row; both are needed, write it too")]
    HalfPair {
        /// What is not there.
        lacks: &'static str,
    },
    /// A count that is none.
    #[error("this is no count; write a whole number from 1 to 1000000")]
    Count,
    /// A box whose content is not known.
    #[error(
        "a price by the box needs the number in it; map it with `pack_column` or say `pack = 10`"
    )]
    NoPack,
    /// A unit that does not go with the kind.
    #[error("a {} is not priced by {}; change `per` or `kind` in the mapping", kind.word(), per.word())]
    Unfit {
        /// The kind of material.
        kind: Kind,
        /// The unit.
        per: Per,
    },
    /// No colour.
    #[error("this is no colour for drawings; write it as #b8924a")]
    Colour,
    /// A code no catalogue can hold.
    #[error(
        "a code is at most 64 signs, none of them a line break; shorten it, or map another column"
    )]
    Code,
    /// The code stood in an earlier row.
    #[error(
        "the same code stands in row {first}; keep one of them, or leave this out with `skip = [{row}]`"
    )]
    Twice {
        /// The earlier row.
        first: u32,
        /// This row.
        row: u32,
    },
    /// Our own code is another material's.
    #[error(
        "the catalogue's {code} is something else; choose another `prefix`, or give that material this supplier and code"
    )]
    Taken {
        /// The code.
        code: String,
    },
    /// The material stands in the catalogue twice.
    #[error(
        "the catalogue has this supplier's code twice, as {first} and {second}; change one of them"
    )]
    Both {
        /// One own code.
        first: String,
        /// The other.
        second: String,
    },
    /// Bytes that are no text.
    #[error(
        "this is not UTF-8 text; say `encoding = \"windows-1252\"` in the mapping, or save the list as UTF-8"
    )]
    NotText,
    /// A date where something else belongs.
    #[error("the spreadsheet holds a date here; set the column to text and type it again")]
    IsDate,
    /// A formula that failed.
    #[error("the spreadsheet holds an error here; mend its formula")]
    IsError,
}

impl Reason {
    /// A stable code for programs.
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Blank { .. } => "list.blank",
            Self::NoPrice | Self::NoPriceAtAll { .. } => "list.no_price",
            Self::NotAmount { .. } => "list.not_amount",
            Self::Signs { .. } => "list.number_habit",
            Self::Zero { .. } => "list.zero",
            Self::Negative => "list.negative",
            Self::TooFine => "list.too_fine",
            Self::TooLarge => "list.too_large",
            Self::OtherCurrency { .. } => "list.other_currency",
            Self::NoCurrency => "list.no_currency",
            Self::Word { .. } => "list.word",
            Self::Length { .. } => "list.length",
            Self::NoDimension => "list.no_dimension",
            Self::HalfPair { .. } => "list.half_pair",
            Self::Count => "list.count",
            Self::NoPack => "list.no_pack",
            Self::Unfit { .. } => "list.unfit_unit",
            Self::Colour => "list.colour",
            Self::Code => "list.code",
            Self::Twice { .. } => "list.twice",
            Self::Taken { .. } => "list.code_taken",
            Self::Both { .. } => "list.catalogue_twice",
            Self::NotText => "list.not_text",
            Self::IsDate => "list.date",
            Self::IsError => "list.cell_error",
        }
    }
}

/// A fact in which list and catalogue differ; the catalogue's stays.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Differing {
    /// The row.
    pub row: u32,
    /// The shop's code.
    pub code: String,
    /// Which fact.
    pub field: &'static str,
    /// What the list says.
    pub list: String,
    /// What the catalogue says.
    pub catalogue: String,
}

impl fmt::Display for Differing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self {
            row,
            code,
            field,
            list,
            catalogue,
        } = self;
        write!(
            f,
            "row {row}, {code}: {field} is {list} in the list and {catalogue} in the catalogue, which stays"
        )
    }
}

/// How much of a cell is shown.
const SHOWN: usize = 60; // geometry: of a line on the screen

/// A cell's text short enough to show, on one line.
pub(super) fn clipped(text: &str) -> String {
    let mut shown: String = text
        .chars()
        .take(SHOWN)
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect();
    if text.chars().nth(SHOWN).is_some() {
        shown.push('…');
    }
    shown
}
