//! What stands in the way of a plan, said so that it can be mended.

use std::fmt;

/// A fault of a problem; all of them are gathered before a search begins.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fault {
    /// No stock can take the piece, however it is turned.
    TooLarge {
        /// The piece.
        piece: String,
        /// Its size, as it lies: one number for a stick, width and height for a sheet.
        size: Vec<u64>,
        /// The stock that comes nearest.
        nearest: String,
        /// What of that stock can be used.
        room: Vec<u64>,
        /// By how much the piece is larger than that room, in each direction (0: it fits there).
        over: Vec<u64>,
        /// The size of the smallest stock that would do, with that stock's trim.
        needed: Vec<u64>,
    },
    /// No stock at all.
    NoStock,
    /// No pieces at all.
    NoPieces,
    /// The same name twice.
    TwiceNamed {
        /// "piece" or "stock".
        what: &'static str,
        /// The name.
        name: String,
    },
    /// A size of zero.
    NoSize {
        /// "piece" or "stock".
        what: &'static str,
        /// The name.
        name: String,
    },
    /// A number beyond what can be counted exactly.
    TooMuch {
        /// What is too large: "count of", "length of", …
        what: &'static str,
        /// The name of the piece or stock.
        name: String,
        /// The number given.
        given: u64,
        /// The largest that can be.
        limit: u64,
    },
    /// All pieces together are more than a plan can list.
    TooManyPieces {
        /// How many.
        given: u128,
        /// The most.
        limit: u64,
    },
    /// A trim leaves nothing of the stock.
    AllTrimmed {
        /// The stock.
        stock: String,
    },
    /// A flaw that begins after it ends, or lies beyond the stick.
    OddFlaw {
        /// The stock.
        stock: String,
        /// From, to.
        flaw: (u64, u64),
    },
    /// Pieces that must come from one stick are longer together than any stick.
    TooLongTogether {
        /// The group.
        group: String,
        /// Their length with the cuts between them.
        length: u64,
        /// The longest usable room.
        room: u64,
    },
    /// A piece that can only be cut as a strip narrower than the least one.
    TooNarrow {
        /// The piece.
        piece: String,
        /// Its shorter side.
        side: u64,
        /// The least strip.
        least: u64,
    },
    /// A least strip together with a kerf has no agreed meaning.
    StripAndKerf,
    /// A count without end is for the goal "value" only.
    EndlessCount {
        /// The piece.
        piece: String,
    },
    /// A window as large as its piece or larger.
    WindowTooLarge {
        /// The piece.
        piece: String,
    },
    /// A number of stages that cuts nothing.
    NoStages,
}

impl fmt::Display for Fault {
    #[allow(clippy::too_many_lines, reason = "one sentence for each fault")]
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLarge {
                piece,
                size,
                nearest,
                room,
                over,
                needed,
            } => too_large(f, piece, size, nearest, room, over, needed),
            Self::NoStock => write!(
                f,
                "there is no stock to cut from: name at least one stick or sheet"
            ),
            Self::NoPieces => write!(f, "there is nothing to cut: name at least one piece"),
            Self::TwiceNamed { what, name } => {
                write!(
                    f,
                    "two entries of {what} are called {name:?}: give each its own name"
                )
            }
            Self::NoSize { what, name } => {
                write!(
                    f,
                    "{what} {name:?} has a size of 0: give every size as at least 1"
                )
            }
            Self::TooMuch {
                what,
                name,
                given,
                limit,
            } => {
                write!(
                    f,
                    "{what} {name:?} is {given}: the most that can be reckoned is {limit}"
                )
            }
            Self::TooManyPieces { given, limit } => write!(
                f,
                "{given} pieces are more than one plan can list; the most is {limit}: divide the list"
            ),
            Self::AllTrimmed { stock } => {
                write!(
                    f,
                    "the trim leaves nothing of stock {stock:?}: make the trim smaller"
                )
            }
            Self::OddFlaw {
                stock,
                flaw: (from, to),
            } => write!(
                f,
                "the flaw {from} to {to} of stock {stock:?} does not lie on the stick: give from before to, both within its length"
            ),
            Self::TooLongTogether {
                group,
                length,
                room,
            } => write!(
                f,
                "the pieces of group {group:?} must come from one stick and are {length} long together with their cuts; the longest stick has room for {room}: {} too long",
                length - room
            ),
            Self::TooNarrow { piece, side, least } => write!(
                f,
                "piece {piece:?} is only {side} wide and a strip must be at least {least}: make the piece wider, or allow narrower strips"
            ),
            Self::StripAndKerf => write!(
                f,
                "a least strip is for stock that is scored and broken, with a kerf of 0: leave out one of the two"
            ),
            Self::EndlessCount { piece } => write!(
                f,
                "piece {piece:?} has no count; only the goal of most value allows that: say how many are wanted"
            ),
            Self::WindowTooLarge { piece } => {
                write!(
                    f,
                    "the window of piece {piece:?} is not smaller than the piece: give its true size"
                )
            }
            Self::NoStages => write!(
                f,
                "0 stages allow no cut: give at least 1, or leave the limit out"
            ),
        }
    }
}

impl std::error::Error for Fault {}

fn too_large(
    f: &mut fmt::Formatter<'_>,
    piece: &str,
    size: &[u64],
    nearest: &str,
    room: &[u64],
    over: &[u64],
    needed: &[u64],
) -> fmt::Result {
    let by = |sizes: &[u64]| {
        let texts: Vec<String> = sizes.iter().map(u64::to_string).collect();
        texts.join(" × ")
    };
    write!(
        f,
        "piece {piece:?} ({}) is larger than any stock; {nearest:?} comes nearest with room for {} and lacks {}: the smallest stock that would do is {}",
        by(size),
        by(room),
        by(over),
        by(needed)
    )
}
