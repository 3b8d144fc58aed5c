//! Why a cut list can't be read or planned.

use std::fmt;

use measure::Currency;

use super::LIST_VERSION;
use super::read::LONGEST;

/// Something wrong with a cut list, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ListFault {
    /// Line, from 1; none where it is about no line.
    pub line: Option<usize>,
    /// Column, from 1.
    pub column: Option<usize>,
    /// What is wrong, and what to do.
    pub reason: Box<ListReason>,
}

/// What is wrong.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ListReason {
    /// It is far longer than a cut list is.
    #[error(
        "the cut list is {bytes} bytes long, the longest that is read is {LONGEST}; is it the right file?"
    )]
    TooLong {
        /// Its length.
        bytes: usize,
    },
    /// It is not text.
    #[error("the cut list is not UTF-8 text: byte {at} can't be read; save it as UTF-8")]
    NotText {
        /// Offset of the first byte that can't be read.
        at: usize,
    },
    /// Its form is not that of a cut list.
    #[error("{why}")]
    Form {
        /// What is wrong, in the reader's words.
        why: String,
    },
    /// It was written for a newer program.
    #[error(
        "the cut list says `cut_list = {found}`, this program reads {LIST_VERSION}; update the program, or write `cut_list = {LIST_VERSION}`"
    )]
    Version {
        /// The version it names.
        found: i64,
    },
    /// A field of an entry.
    #[error("{entry}{field} \"{text}\": {why}")]
    Field {
        /// Which entry, ready to stand before the field: `piece 2 (rail): `; empty at the top.
        entry: String,
        /// Which field.
        field: &'static str,
        /// As typed.
        text: String,
        /// What is wrong and what would do.
        why: String,
    },
    /// A piece that is neither of a stick nor of a sheet, or both.
    #[error(
        "{entry}write `length` for a piece of a stick or `size` for one of a sheet, one of the two"
    )]
    Extent {
        /// Which entry.
        entry: String,
    },
    /// A field that means nothing for such a piece.
    #[error("{entry}{field} is for {belongs} only; leave it out")]
    Misplaced {
        /// Which entry.
        entry: String,
        /// Which field.
        field: &'static str,
        /// What it belongs to.
        belongs: &'static str,
    },
    /// The same name twice.
    #[error("two {what}{} are called {name}; give each its own name", of(material.as_deref()))]
    Twice {
        /// `pieces` or `kinds of stock`.
        what: &'static str,
        /// Of which material; none: the one without a name.
        material: Option<String>,
        /// The name.
        name: String,
    },
    /// A least strip together with a kerf.
    #[error(
        "{of} has a kerf and a least strip; a least strip is for what is scored and broken, where a cut takes nothing: leave out one of the two"
    )]
    StripAndKerf {
        /// The list, or which material.
        of: String,
    },
    /// Two `[[cut]]` about one material.
    #[error(
        "two [[cut]] are about {}; keep one of them",
        material.as_deref().unwrap_or("the material without a name")
    )]
    TwoCuts {
        /// Which material; none: the one without a name.
        material: Option<String>,
    },
    /// A `[[cut]]` about a material of which nothing is cut.
    #[error("the [[cut]] of {material} is about nothing in the list; {cure}")]
    NoSuchCut {
        /// The material.
        material: String,
        /// What to do.
        cure: String,
    },
    /// Nothing is wanted.
    #[error("there is nothing to cut; write at least one [[piece]]")]
    NoPieces,
    /// Nothing to cut a piece from.
    #[error("there is no {form}{} to cut {piece} from; {cure}", of(material.as_deref()))]
    NoStock {
        /// `stick` or `sheet`.
        form: &'static str,
        /// Of which material; none: the one without a name.
        material: Option<String>,
        /// The piece.
        piece: String,
        /// What to do.
        cure: String,
    },
    /// A trim or flaws that leave nothing of the stock.
    #[error(
        "trim and flaws leave nothing of {stock}{}; make the trim smaller",
        of(material.as_deref())
    )]
    AllTrimmed {
        /// The stock.
        stock: String,
        /// Of which material; none: the one without a name.
        material: Option<String>,
    },
    /// No stock can take the piece.
    #[error(
        "{piece}{} ({size}) is larger than any stock; {nearest} comes nearest with room for {room}, too small by {over}: stock of at least {needed} would do",
        of(material.as_deref())
    )]
    TooLarge {
        /// The piece.
        piece: String,
        /// Of which material; none: the one without a name.
        material: Option<String>,
        /// Its size.
        size: String,
        /// The stock that comes nearest.
        nearest: String,
        /// What of it can be used.
        room: String,
        /// By how much the piece is larger.
        over: String,
        /// The smallest stock that would do, trims included.
        needed: String,
    },
    /// The exact piece fits, but not once all is counted in ticks.
    #[error(
        "{piece}{} ({size}) fits {stock} exactly, but not counted in steps of {tick}; write a finer tick, such as tick = \"1/128 in\"",
        of(material.as_deref())
    )]
    Snug {
        /// The piece.
        piece: String,
        /// Of which material; none: the one without a name.
        material: Option<String>,
        /// Its size.
        size: String,
        /// The stock.
        stock: String,
        /// The step.
        tick: &'static str,
    },
    /// Pieces of one group are longer together than any stick.
    #[error(
        "the pieces of group {group}{} must come from one stick and are {length} long together with their cuts; the longest stick has room for {room}: write match = \"run\", or list a longer stick",
        of(material.as_deref())
    )]
    TooLongTogether {
        /// The group.
        group: String,
        /// Of which material; none: the one without a name.
        material: Option<String>,
        /// Their length.
        length: String,
        /// The longest room.
        room: String,
    },
    /// Costs of one material in two currencies.
    #[error(
        "the stock{} has costs in {first} and in {second}; write them in one currency",
        of(material.as_deref())
    )]
    TwoCurrencies {
        /// Which material; none: the one without a name.
        material: Option<String>,
        /// One of them.
        first: Currency,
        /// The other.
        second: Currency,
    },
    /// The cutting room refuses the problem.
    #[error("{why}")]
    Refused {
        /// What is wrong, in lengths, and what to do.
        why: String,
    },
}

/// ` of oak`; nothing for the material without a name.
fn of(material: Option<&str>) -> String {
    material.map_or_else(String::new, |name| format!(" of {name}"))
}

impl fmt::Display for ListFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.reason.fmt(f)
    }
}

impl std::error::Error for ListFault {}

impl ListFault {
    /// A stable code for programs.
    pub fn code(&self) -> &'static str {
        match *self.reason {
            ListReason::TooLong { .. } => "list.too_long",
            ListReason::NotText { .. } => "list.not_text",
            ListReason::Form { .. } => "list.form",
            ListReason::Version { .. } => "list.version",
            ListReason::Field { .. } => "list.field",
            ListReason::Extent { .. } => "list.extent",
            ListReason::Misplaced { .. } => "list.misplaced",
            ListReason::Twice { .. } => "list.twice",
            ListReason::StripAndKerf { .. } => "list.strip_and_kerf",
            ListReason::TwoCuts { .. } => "list.two_cuts",
            ListReason::NoSuchCut { .. } => "list.no_such_cut",
            ListReason::NoPieces => "list.no_pieces",
            ListReason::NoStock { .. } => "list.no_stock",
            ListReason::AllTrimmed { .. } => "list.all_trimmed",
            ListReason::TooLarge { .. } => "list.too_large",
            ListReason::Snug { .. } => "list.snug",
            ListReason::TooLongTogether { .. } => "list.too_long_together",
            ListReason::TwoCurrencies { .. } => "list.two_currencies",
            ListReason::Refused { .. } => "list.refused",
        }
    }

    /// About no line.
    pub(super) fn whole(reason: ListReason) -> Self {
        Self {
            line: None,
            column: None,
            reason: Box::new(reason),
        }
    }

    /// About the line an entry begins on.
    pub(super) fn on(line: usize, reason: ListReason) -> Self {
        Self {
            line: Some(line),
            column: None,
            reason: Box::new(reason),
        }
    }
}
