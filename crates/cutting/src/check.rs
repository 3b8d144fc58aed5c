//! What a check of a plan finds: where every bit of the stock went, or which law is broken.
//!
//! The checks themselves, [`crate::lengths::check`] and [`crate::sheets::check`], share no code
//! with the searches.

mod sentence;

/// Where the stock of one layout went, or of all of them: lengths of sticks, areas of sheets.
///
/// stock = pieces + kerf + trim + remnants + waste
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Default)]
pub struct Account {
    /// What was cut up.
    pub stock: u128,
    /// What came out as pieces.
    pub pieces: u128,
    /// What was sawn to dust between parts, and remainders narrower than the kerf.
    pub kerf: u128,
    /// Ends or edges that cannot be used.
    pub trim: u128,
    /// What is kept.
    pub remnants: u128,
    /// What is thrown away.
    pub waste: u128,
}

impl Account {
    /// What the parts add up to.
    pub fn parts(&self) -> u128 {
        self.pieces + self.kerf + self.trim + self.remnants + self.waste
    }

    /// This account that many times over; `None` when that cannot be counted.
    pub(crate) fn times(&self, copies: u64) -> Option<Self> {
        let times = |one: u128| one.checked_mul(u128::from(copies));
        Some(Self {
            stock: times(self.stock)?,
            pieces: times(self.pieces)?,
            kerf: times(self.kerf)?,
            trim: times(self.trim)?,
            remnants: times(self.remnants)?,
            waste: times(self.waste)?,
        })
    }

    /// Both together; `None` when that cannot be counted.
    pub(crate) fn with(&self, other: &Self) -> Option<Self> {
        Some(Self {
            stock: self.stock.checked_add(other.stock)?,
            pieces: self.pieces.checked_add(other.pieces)?,
            kerf: self.kerf.checked_add(other.kerf)?,
            trim: self.trim.checked_add(other.trim)?,
            remnants: self.remnants.checked_add(other.remnants)?,
            waste: self.waste.checked_add(other.waste)?,
        })
    }
}

/// A plan that holds, in numbers.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct Tally {
    /// The cost, count or value reached, by the problem's goal; counted anew.
    pub objective: u128,
    /// How many sticks or sheets of stock are cut up.
    pub used: u128,
    /// How many windows are cut up beside them.
    pub windows: u128,
    /// One account per layout, for one copy of it.
    pub layouts: Vec<Account>,
    /// All copies of all layouts together. Its stock counts the windows that are cut up a second
    /// time, see [`Tally::reused`].
    pub whole: Account,
    /// How much of the stock in [`Tally::whole`] is windows.
    pub reused: u128,
    /// The largest single remnant: its length or its area; 0 without one.
    pub largest_remnant: u128,
}

impl Tally {
    /// Books a layout; the law of conservation is held to first.
    pub(crate) fn book(
        &mut self,
        layout: usize,
        copies: u64,
        account: Account,
    ) -> Result<(), Broken> {
        if account.stock != account.parts() {
            return Err(Broken::Unbalanced {
                layout,
                stock: account.stock,
                parts: account.parts(),
            });
        }
        let all = account.times(copies);
        self.whole = all
            .and_then(|all| self.whole.with(&all))
            .ok_or(Broken::Countless)?;
        self.layouts.push(account);
        Ok(())
    }
}

/// The law a plan breaks. Layouts and cuts are counted from 1, in the plan's order; layout 0 is
/// the plan as a whole.
// The fields of a variant are what its sentence shows, in that order.
#[allow(missing_docs)]
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Broken {
    /// A layout names stock or a piece by a number the problem does not have.
    NoSuch {
        layout: usize,
        what: &'static str,
        number: usize,
        held: usize,
    },
    /// A layout that is cut no times.
    NoCopies { layout: usize },
    /// A layout without a piece.
    Empty { layout: usize },
    /// A part reaches beyond what of the stock can be used.
    Outside {
        layout: usize,
        part: String,
        direction: &'static str,
        from: u128,
        to: u128,
        room: (u128, u128),
    },
    /// A piece that is placed with another size than was ordered.
    Size {
        layout: usize,
        piece: String,
        placed: (u64, u64),
        ordered: (u64, u64),
    },
    /// A piece that is turned and must not be.
    Turned { layout: usize, piece: String },
    /// Two parts overlap, or lie closer together than the kerf.
    Close {
        layout: usize,
        parts: (String, String),
        apart: i128,
        kerf: u64,
    },
    /// A part touches a flaw.
    Flawed {
        layout: usize,
        part: String,
        from: u128,
        to: u128,
        flaw: (u64, u64),
    },
    /// A remnant of no size.
    NoRemnant { layout: usize },
    /// A cut names a part that is not there when it is made.
    NoPart { layout: usize, cut: usize },
    /// A cut beside the part it is to cut.
    Beside {
        layout: usize,
        cut: usize,
        at: u64,
        from: u64,
        to: u128,
    },
    /// A cut changes direction more often than the rules allow.
    Stages {
        layout: usize,
        cut: usize,
        stage: u32,
        limit: u32,
    },
    /// A trimming cut is made on a part that holds more than one piece.
    Trims {
        layout: usize,
        cut: usize,
        inside: usize,
    },
    /// A strip narrower than can be broken off.
    Narrow {
        layout: usize,
        cut: usize,
        strip: u64,
        least: u64,
    },
    /// A part that the cuts do not free.
    NotFreed { layout: usize, part: String },
    /// Pieces cut and uncut do not come to what was ordered.
    Demand {
        piece: String,
        cut: u128,
        uncut: u128,
        ordered: u64,
    },
    /// More of a stock is used than is held.
    OverStock {
        stock: String,
        used: u128,
        held: u64,
    },
    /// A window is cut up before that many pieces have freed one.
    OverWindows {
        layout: usize,
        piece: String,
        used: u128,
        freed: u128,
    },
    /// A layout is cut from the window of a piece that frees none.
    NoWindow { layout: usize, piece: String },
    /// Most value comes out of one sheet; the plan uses more.
    Several { used: u128 },
    /// Pieces that belong on one stick lie on several.
    Divided { group: String, sticks: u128 },
    /// Pieces that belong to one run come from several.
    Runs { group: String, runs: u128 },
    /// The objective claimed is not the one counted.
    Objective { claimed: u64, counted: u128 },
    /// The bound claimed is on the wrong side of the plan's own objective.
    Bound {
        claimed: u64,
        counted: u128,
        ceiling: bool,
    },
    /// The parts of a layout do not add up to its stock.
    Unbalanced {
        layout: usize,
        stock: u128,
        parts: u128,
    },
    /// The numbers are beyond what can be counted.
    Countless,
}

impl std::error::Error for Broken {}

#[cfg(test)]
mod tests;
