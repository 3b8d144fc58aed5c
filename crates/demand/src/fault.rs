//! What stands in the way of a cut list, or of taking a plan back.

use measure::{Currency, Unit};

use crate::stock::{Buy, Extent};

/// A fault; all of them are gathered.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Fault {
    /// A piece that can't be made as described is not cut.
    #[error("{job}: it can't be made as described ({why}) mend the job, then cut it")]
    Refused {
        /// The job.
        job: String,
        /// The first thing wrong with it, as a sentence.
        why: String,
    },
    /// A part without any size.
    #[error("{job}: {part} measures {size}; both sides must be above zero")]
    NoSize {
        /// The job.
        job: String,
        /// The part.
        part: String,
        /// Its size.
        size: String,
    },
    /// A day that can't be read.
    #[error(
        "{job}: it is due \"{given}\", which is no day that can be counted; write it as 2026-12-04"
    )]
    Due {
        /// The job.
        job: String,
        /// As written.
        given: String,
    },
    /// No stock can take the part.
    #[error("{0}")]
    TooLarge(Box<TooLarge>),
    /// The exact part fits, but not once both are counted in ticks.
    #[error(
        "{job}: {part} ({size}) fits {stock} exactly, but not counted in steps of {tick}; set cutting.tick finer"
    )]
    Snug {
        /// The job.
        job: String,
        /// The part.
        part: String,
        /// Its size.
        size: String,
        /// The stock.
        stock: String,
        /// The step.
        tick: &'static str,
    },
    /// Nothing to cut a ware from.
    #[error("there is no stock of {ware}: {}", none_because(*buy))]
    NoStock {
        /// The ware.
        ware: String,
        /// What may be bought beside what is listed.
        buy: Buy,
    },
    /// The cutting room refuses a part, or everything of a ware.
    #[error("{sentence}")]
    Cutting {
        /// The job, where it is one job's.
        job: Option<String>,
        /// The ware.
        ware: String,
        /// What is wrong, in lengths, and what to do.
        sentence: String,
    },
    /// A trim as large as the stock.
    #[error("the trim leaves nothing of {stock} of {ware}; make the trim smaller")]
    AllTrimmed {
        /// The ware.
        ware: String,
        /// The stock.
        stock: String,
    },
    /// Costs of one ware in two currencies.
    #[error("{ware}: its stock has costs in {first} and in {second}; write them in one currency")]
    TwoCurrencies {
        /// The ware.
        ware: String,
        /// One of them.
        first: Currency,
        /// The other.
        second: Currency,
    },
    /// Plans for other problems than this day has.
    #[error("{given} plans were given for {wanted} materials; give one for each, in their order")]
    PlanCount {
        /// How many plans.
        given: usize,
        /// How many materials.
        wanted: usize,
    },
    /// A plan that is not one of its problem.
    #[error("the plan for {ware} does not hold: {why}; plan it again")]
    Plan {
        /// The ware.
        ware: String,
        /// What is wrong.
        why: String,
    },
    /// The law of conservation is broken.
    #[error(
        "{ware}: pieces + cuts + trim + remnants + waste + rounding = {parts}, stock is {stock}; {gap} unaccounted for"
    )]
    Unbalanced {
        /// The ware.
        ware: String,
        /// One side.
        parts: String,
        /// The other.
        stock: String,
        /// The difference.
        gap: String,
    },
}

/// Why there is nothing to cut a ware from, and what to do.
const fn none_because(buy: Buy) -> &'static str {
    match buy {
        Buy::Catalogue => {
            "the catalogue names no size of it; list some in the stock document, or write its sizes in the catalogue"
        }
        Buy::Listed => {
            "the stock document lists none, and says buy = \"listed\"; list some there, or write buy = \"catalogue\""
        }
    }
}

impl Fault {
    /// A stable code for programs.
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Refused { .. } => "demand.refused",
            Self::NoSize { .. } => "demand.no_size",
            Self::Due { .. } => "demand.due",
            Self::TooLarge(_) => "demand.too_large",
            Self::Snug { .. } => "demand.snug",
            Self::NoStock { .. } => "demand.no_stock",
            Self::Cutting { .. } => "cut.refused",
            Self::AllTrimmed { .. } => "demand.all_trimmed",
            Self::TwoCurrencies { .. } => "demand.two_currencies",
            Self::PlanCount { .. } => "demand.plan_count",
            Self::Plan { .. } => "demand.plan",
            Self::Unbalanced { .. } => "demand.unbalanced",
        }
    }

    /// The job it lies with, where it is one job's.
    pub fn job(&self) -> Option<&str> {
        match self {
            Self::Refused { job, .. }
            | Self::NoSize { job, .. }
            | Self::Due { job, .. }
            | Self::Snug { job, .. } => Some(job),
            Self::TooLarge(fault) => Some(&fault.job),
            Self::Cutting { job, .. } => job.as_deref(),
            _ => None,
        }
    }
}

/// A part larger than any stock.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TooLarge {
    /// The job.
    pub job: String,
    /// The part.
    pub part: String,
    /// What it is cut from.
    pub ware: String,
    /// Its exact size.
    pub size: Extent,
    /// The stock that comes nearest.
    pub nearest: String,
    /// What of that stock can be used, flaws and trims off.
    pub room: Extent,
    /// By how much the part is larger, in each direction; nothing where it fits.
    pub over: Extent,
    /// The smallest size of the catalogue that would do.
    pub would_do: Option<Extent>,
    /// The smallest stock of any size that would do, trims included.
    pub needed: Extent,
    /// The unit it is said in.
    pub unit: Unit,
}

impl std::fmt::Display for TooLarge {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let say = |extent: Extent| extent.exact(self.unit);
        write!(
            f,
            "{}: {} ({}) is larger than any stock of {}; {} comes nearest with room for {}, too small by {}. ",
            self.job,
            self.part,
            say(self.size),
            self.ware,
            self.nearest,
            say(self.room),
            say(self.over),
        )?;
        match self.would_do {
            Some(size) => write!(
                f,
                "The catalogue's {} would do: list it in the stock document",
                say(size)
            ),
            None => write!(f, "Stock of at least {} would do", say(self.needed)),
        }
    }
}
