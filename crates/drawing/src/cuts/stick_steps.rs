//! The cuts of a stick in the order a person makes them, from the reference end.

use crate::cuts::{CutError, CutStick, CutSums, Extent};

/// A stick's cuts, one after another, and the sum that proves them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StickWork {
    /// From the reference end, numbered from 1.
    pub steps: Vec<StickStep>,
    /// What is left at the end without a cut of its own, where that has a use.
    pub rest: Option<StickRest>,
    /// What one stick of its copies went into.
    pub sums: CutSums,
    pub(crate) waste: Vec<(u64, u64)>,
    pub(crate) kerfs: Vec<(u64, u64)>,
}

/// One cut across a stick.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StickStep {
    /// Counted from 1.
    pub number: usize,
    /// From the reference end, once trimmed, to the cut: the running total.
    pub running: u64,
    /// Length of what comes off.
    pub length: u64,
    /// What comes off.
    pub off: StickOff,
    /// Where the cut lies, from the stick's start.
    pub(crate) at: u64,
}

/// What is left of a stick after its last cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StickRest {
    /// How long it is.
    pub length: u64,
    /// A piece or a remnant.
    pub off: StickOff,
}

/// What comes off a stick.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StickOff {
    /// A piece, counted from 0 among the stick's pieces.
    Piece(usize),
    /// A remnant, counted from 0 among the stick's remnants.
    Remnant(usize),
    /// Thrown away: flaws and what is too short.
    Waste,
    /// The trimmed reference end, kerf included.
    Trim,
}

/// Works out the cuts of a stick, and proves that its parts add up.
///
/// Errors: a stick without extent, a number too long to print, pieces that overlap, parts that do
///         not add up.
pub fn stick_work(stick: &CutStick) -> Result<StickWork, CutError> {
    let on = || stick.title.clone();
    let trimmed = stick.trim.0.checked_add(stick.trim.1);
    if trimmed.is_none_or(|trim| trim >= stick.length) {
        return Err(CutError::NoExtent { on: on() });
    }
    if !stick.counting.holds(stick.length) {
        return Err(CutError::TooLong { on: on() });
    }
    let mut walk = Walk {
        stick,
        place: 0,
        work: StickWork {
            steps: Vec::new(),
            rest: None,
            sums: CutSums {
                stock: u128::from(stick.length),
                ..CutSums::none(Extent::Length)
            },
            waste: Vec::new(),
            kerfs: Vec::new(),
        },
    };
    walk.trim_start();
    for part in parts(stick) {
        walk.reach(part)?;
        walk.take(part);
    }
    walk.end();
    walk.work.sums.proven(&stick.title, &stick.counting)?;
    Ok(walk.work)
}

/// A stretch with a use.
#[derive(Clone, Copy)]
struct Part {
    from: u64,
    to: u64,
    off: StickOff,
}

/// Pieces and remnants, from the reference end.
fn parts(stick: &CutStick) -> Vec<Part> {
    let pieces = stick.pieces.iter().enumerate().map(|(k, piece)| Part {
        from: piece.at,
        to: piece.at.saturating_add(piece.length),
        off: StickOff::Piece(k),
    });
    let remnants = stick.remnants.iter().enumerate().map(|(k, kept)| Part {
        from: kept.place.0,
        to: kept.place.1,
        off: StickOff::Remnant(k),
    });
    let mut all: Vec<Part> = pieces.chain(remnants).collect();
    all.sort_by_key(|part| part.from);
    all
}

struct Walk<'a> {
    stick: &'a CutStick,
    /// Up to here the stick is accounted for.
    place: u64,
    work: StickWork,
}

impl Walk<'_> {
    /// A cut at `at` frees a stretch that ends there.
    fn cut(&mut self, at: u64, length: u64, off: StickOff) {
        self.work.steps.push(StickStep {
            number: self.work.steps.len() + 1,
            running: at - self.stick.trim.0,
            length,
            off,
            at,
        });
    }

    fn trim_start(&mut self) {
        let trim = self.stick.trim.0;
        if trim > 0 {
            self.work.sums.trim += u128::from(trim);
            self.place = trim;
            self.cut(trim, trim, StickOff::Trim);
        }
    }

    /// Kerf at the start of a gap: at most so much of it.
    fn kerf(&mut self, from: u64, room: u64) -> u64 {
        let lost = self.stick.kerf.min(room);
        self.work.sums.kerf += u128::from(lost);
        self.work.kerfs.push((from, from + lost));
        lost
    }

    /// What lies before a part: the kerf of the cut before it, and waste cut away from it.
    fn reach(&mut self, part: Part) -> Result<(), CutError> {
        let outside = part.from < self.place || part.to <= part.from || part.to > self.stick.length;
        if outside {
            return Err(CutError::Overlaps {
                on: self.stick.title.clone(),
                what: self.name(part.off),
            });
        }
        let mut gap = part.from - self.place;
        if self.after_piece() {
            let lost = self.kerf(self.place, gap);
            self.place += lost;
            gap -= lost;
        }
        if gap > 0 {
            let lost = self.stick.kerf.min(gap);
            let waste = gap - lost;
            self.throw(self.place, waste);
            self.cut(self.place + waste, waste, StickOff::Waste);
            self.kerf(self.place + waste, lost);
        }
        self.place = part.from;
        Ok(())
    }

    fn after_piece(&self) -> bool {
        matches!(
            self.work.steps.last().map(|step| step.off),
            Some(StickOff::Piece(_) | StickOff::Remnant(_))
        )
    }

    /// The part itself; a cut frees it unless it ends the stick or is a remnant that runs to the
    /// last trim.
    fn take(&mut self, part: Part) {
        let length = part.to - part.from;
        let last = match part.off {
            StickOff::Remnant(_) => part.to >= self.stick.length - self.stick.trim.1,
            _ => part.to == self.stick.length,
        };
        match part.off {
            StickOff::Remnant(_) => self.work.sums.remnants += u128::from(length),
            _ => self.work.sums.pieces += u128::from(length),
        }
        self.place = part.to;
        if last {
            self.work.rest = Some(StickRest {
                length,
                off: part.off,
            });
        } else {
            self.cut(part.to, length, part.off);
        }
    }

    /// What lies after the last part.
    fn end(&mut self) {
        let rest = self.stick.length - self.place;
        let trim = rest.min(self.stick.trim.1);
        let mut gap = rest - trim;
        if gap > 0 && self.after_piece() {
            let lost = self.kerf(self.place, gap);
            self.place += lost;
            gap -= lost;
        }
        self.throw(self.place, gap);
        self.work.sums.trim += u128::from(trim);
    }

    fn throw(&mut self, from: u64, long: u64) {
        self.work.sums.waste += u128::from(long);
        if long > 0 {
            self.work.waste.push((from, from + long));
        }
    }

    fn name(&self, off: StickOff) -> String {
        match off {
            StickOff::Piece(k) => self.stick.pieces[k].name(),
            StickOff::Remnant(k) => self.stick.remnants[k].label.clone(),
            StickOff::Waste => "waste".to_owned(),
            StickOff::Trim => "trim".to_owned(),
        }
    }
}
