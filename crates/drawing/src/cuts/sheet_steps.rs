//! The cuts of a sheet in the order a person makes them, and what comes off each time.

use std::collections::{HashMap, HashSet};

use cutting::sheets::{Area, Cut, Way};

use crate::cuts::{CutError, CutSheet, CutSums, Extent};

/// A sheet's cuts, one after another, and the sum that proves them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SheetWork {
    /// Trims first, numbered from 1.
    pub steps: Vec<CutStep>,
    /// What the trimmed sheet is, where it is not cut any further.
    pub whole: Option<Offcut>,
    /// What one sheet of its copies went into.
    pub sums: CutSums,
    /// What is cut up once the edges are trimmed.
    pub(crate) usable: Area,
    pub(crate) trims: Vec<Area>,
    pub(crate) kerfs: Vec<Area>,
    pub(crate) waste: Vec<Area>,
}

/// One cut from edge to edge of a part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutStep {
    /// Counted from 1.
    pub number: usize,
    /// What is cut in two.
    pub part: CutPart,
    /// Which way the cut runs.
    pub way: Way,
    /// From which edge of the part it is measured.
    pub edge: Reference,
    /// From that edge to the cut.
    pub measure: u64,
    /// From the sheet's reference edge to the cut; nothing where an edge is trimmed.
    pub running: Option<u64>,
    /// What there is after it, the side nearer the reference edge first.
    pub off: Vec<Off>,
    /// Where the cut lies, from the sheet's corner: nothing where an edge is trimmed.
    pub(crate) line: Option<Area>,
}

/// A part of the sheet between two cuts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutPart {
    /// `the sheet`, or its letter.
    pub name: String,
    /// How it came about: `left of cut 1`; empty for the sheet.
    pub made: String,
    /// Where it lies.
    pub area: Area,
}

/// An edge that is measured from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Reference {
    /// Where x is least.
    Left,
    /// Where y is least.
    Bottom,
    /// Where x is greatest.
    Right,
    /// Where y is greatest.
    Top,
}

/// What lies on one side of a cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Off {
    /// Which side.
    pub side: Reference,
    /// Where it lies.
    pub area: Area,
    /// What it is.
    pub what: Offcut,
}

/// What comes off.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Offcut {
    /// A piece, counted from 0 among the sheet's pieces.
    Piece(usize),
    /// A part that is cut again: its letter, or `the sheet`.
    Part(String),
    /// A remnant, counted from 0 among the sheet's remnants.
    Remnant(usize),
    /// Thrown away.
    Waste,
    /// A trimmed edge, kerf included.
    Trim,
}

impl Reference {
    /// The word for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Bottom => "bottom",
            Self::Right => "right",
            Self::Top => "top",
        }
    }
}

impl CutStep {
    /// Which way the cut runs, as a word.
    pub const fn way_word(&self) -> &'static str {
        match self.way {
            Way::Upright => "up",
            Way::Level => "across",
        }
    }
}

/// Works out the cuts of a sheet, and proves that its parts add up.
///
/// Errors: a sheet without extent, a number too long to print, a cut through a part that is not
///         there, a piece no cut frees, parts that do not add up.
pub fn sheet_work(sheet: &CutSheet) -> Result<SheetWork, CutError> {
    let on = || sheet.title.clone();
    let edges = sheet.trim;
    let across = edges.left.checked_add(edges.right);
    let up = edges.bottom.checked_add(edges.top);
    let left_over = |whole: u64, off: Option<u64>| {
        off.and_then(|off| whole.checked_sub(off))
            .filter(|left| *left > 0)
            .ok_or_else(|| CutError::NoExtent { on: on() })
    };
    let usable = Area {
        x: edges.left,
        y: edges.bottom,
        width: left_over(sheet.width, across)?,
        height: left_over(sheet.height, up)?,
    };
    if !sheet.counting.holds(sheet.width) || !sheet.counting.holds(sheet.height) {
        return Err(CutError::TooLong { on: on() });
    }
    let mut walk = Walk::of(sheet, usable);
    walk.apart()?;
    walk.trim();
    walk.start();
    for cut in &sheet.cuts {
        walk.cut(*cut)?;
    }
    walk.finish()
}

struct Walk<'a> {
    sheet: &'a CutSheet,
    work: SheetWork,
    pieces: HashMap<Area, usize>,
    remnants: HashMap<Area, usize>,
    /// Parts that some cut goes through.
    cut_again: HashSet<Area>,
    open: HashMap<Area, CutPart>,
    letters: usize,
}

impl<'a> Walk<'a> {
    fn of(sheet: &'a CutSheet, usable: Area) -> Self {
        let pieces = sheet.pieces.iter().enumerate();
        let remnants = sheet.remnants.iter().enumerate();
        Self {
            sheet,
            work: SheetWork {
                steps: Vec::new(),
                whole: None,
                sums: CutSums {
                    stock: u128::from(sheet.width) * u128::from(sheet.height),
                    ..CutSums::none(Extent::Area)
                },
                usable,
                trims: Vec::new(),
                kerfs: Vec::new(),
                waste: Vec::new(),
            },
            pieces: pieces.map(|(k, piece)| (piece.area, k)).collect(),
            remnants: remnants.map(|(k, kept)| (kept.place, k)).collect(),
            cut_again: sheet.cuts.iter().map(|cut| cut.of).collect(),
            open: HashMap::new(),
            letters: 0,
        }
    }

    /// Refuses two parts in one place.
    fn apart(&self) -> Result<(), CutError> {
        let twice = |k: usize, known: Option<&usize>| known.is_some_and(|other| *other != k);
        let pieces = self.sheet.pieces.iter().enumerate();
        let mut pieces = pieces.filter(|(k, piece)| twice(*k, self.pieces.get(&piece.area)));
        let kept = self.sheet.remnants.iter().enumerate();
        let mut kept = kept.filter(|(k, kept)| {
            self.pieces.contains_key(&kept.place) || twice(*k, self.remnants.get(&kept.place))
        });
        let what = pieces
            .next()
            .map(|(_, piece)| piece.name())
            .or_else(|| kept.next().map(|(_, kept)| kept.label.clone()));
        match what {
            Some(what) => Err(CutError::Overlaps {
                on: self.sheet.title.clone(),
                what,
            }),
            None => Ok(()),
        }
    }

    /// Takes the edges off: the reference edges first, so that the others are measured from them.
    fn trim(&mut self) {
        use Reference::{Bottom, Left, Right, Top};
        let edges = self.sheet.trim;
        let mut rest = Area {
            x: 0,
            y: 0,
            width: self.sheet.width,
            height: self.sheet.height,
        };
        let all = [
            (Left, edges.left),
            (Bottom, edges.bottom),
            (Right, edges.right),
            (Top, edges.top),
        ];
        for (edge, off) in all.into_iter().filter(|(_, off)| *off > 0) {
            let (strip, left) = stripped(rest, edge, off);
            self.work.trims.push(strip);
            self.work.sums.trim += content(strip);
            let step = CutStep {
                number: self.work.steps.len() + 1,
                part: whole(rest),
                way: match edge {
                    Left | Right => Way::Upright,
                    Bottom | Top => Way::Level,
                },
                edge,
                measure: off,
                running: None,
                off: vec![Off {
                    side: edge,
                    area: strip,
                    what: Offcut::Trim,
                }],
                line: None,
            };
            self.work.steps.push(step);
            rest = left;
        }
    }

    /// What the trimmed sheet is: something to cut, or a piece or remnant as it is.
    fn start(&mut self) {
        let usable = self.work.usable;
        if self.cut_again.contains(&usable) {
            self.open.insert(usable, whole(usable));
        } else {
            let off = self.off(usable, Reference::Left, 0);
            self.work.whole = Some(off.what);
        }
    }

    fn cut(&mut self, cut: Cut) -> Result<(), CutError> {
        let number = self.work.steps.len() + 1;
        let lost = || CutError::NoSuchPart {
            on: self.sheet.title.clone(),
            cut: number,
        };
        let part = self.open.get(&cut.of).cloned().ok_or_else(lost)?;
        let (near, line, far) = parted(cut, self.sheet.kerf).ok_or_else(lost)?;
        self.open.remove(&cut.of);
        let usable = self.work.usable;
        let (sides, measure, running) = match cut.way {
            Way::Upright => (
                [Reference::Left, Reference::Right],
                near.width,
                cut.at - usable.x,
            ),
            Way::Level => (
                [Reference::Bottom, Reference::Top],
                near.height,
                cut.at - usable.y,
            ),
        };
        self.work.sums.kerf += content(line);
        self.work.kerfs.push(line);
        let mut off = vec![self.off(near, sides[0], number)];
        off.extend(far.map(|far| self.off(far, sides[1], number)));
        self.work.steps.push(CutStep {
            number,
            part,
            way: cut.way,
            edge: sides[0],
            measure,
            running: Some(running),
            off,
            line: Some(line),
        });
        Ok(())
    }

    /// Says what a part is, and enters it in the sum where it is done with.
    fn off(&mut self, area: Area, side: Reference, number: usize) -> Off {
        let sums = &mut self.work.sums;
        let what = if self.cut_again.contains(&area) {
            let name = letter(self.letters);
            self.letters += 1;
            let preposition = match side {
                Reference::Left | Reference::Right => format!("{} of", side.word()),
                Reference::Bottom => "below".to_owned(),
                Reference::Top => "above".to_owned(),
            };
            let part = CutPart {
                name: name.clone(),
                made: format!("{preposition} cut {number}"),
                area,
            };
            self.open.insert(area, part);
            Offcut::Part(name)
        } else if let Some(piece) = self.pieces.remove(&area) {
            sums.pieces += content(area);
            Offcut::Piece(piece)
        } else if let Some(remnant) = self.remnants.remove(&area) {
            sums.remnants += content(area);
            Offcut::Remnant(remnant)
        } else {
            sums.waste += content(area);
            self.work.waste.push(area);
            Offcut::Waste
        };
        Off { side, area, what }
    }

    fn finish(self) -> Result<SheetWork, CutError> {
        let sheet = self.sheet;
        let piece = self.pieces.values().min().map(|k| sheet.pieces[*k].name());
        let remnant = self.remnants.values().min();
        let remnant = remnant.map(|k| sheet.remnants[*k].label.clone());
        if let Some(what) = piece.or(remnant) {
            return Err(CutError::NotFreed {
                on: sheet.title.clone(),
                what,
            });
        }
        self.work.sums.proven(&sheet.title, &sheet.counting)?;
        Ok(self.work)
    }
}

/// A part cut in two: near, the kerf, far. A rest no wider than the kerf falls away with it.
fn parted(cut: Cut, kerf: u64) -> Option<(Area, Area, Option<Area>)> {
    let of = cut.of;
    let (start, long) = match cut.way {
        Way::Upright => (of.x, of.width),
        Way::Level => (of.y, of.height),
    };
    let near = cut.at.checked_sub(start).filter(|near| *near > 0)?;
    let rest = long.checked_sub(near).filter(|rest| *rest > 0)?;
    let lost = kerf.min(rest);
    let slice = |from: u64, long: u64| match cut.way {
        Way::Upright => Area {
            x: from,
            width: long,
            ..of
        },
        Way::Level => Area {
            y: from,
            height: long,
            ..of
        },
    };
    let far = (rest > lost).then(|| slice(cut.at + lost, rest - lost));
    Some((slice(start, near), slice(cut.at, lost), far))
}

/// A strip off one edge, and what is left.
fn stripped(area: Area, edge: Reference, off: u64) -> (Area, Area) {
    let Area {
        x,
        y,
        width,
        height,
    } = area;
    let slice = |x: u64, y: u64, width: u64, height: u64| Area {
        x,
        y,
        width,
        height,
    };
    match edge {
        Reference::Left => (
            slice(x, y, off, height),
            slice(x + off, y, width - off, height),
        ),
        Reference::Right => (
            slice(x + width - off, y, off, height),
            slice(x, y, width - off, height),
        ),
        Reference::Bottom => (
            slice(x, y, width, off),
            slice(x, y + off, width, height - off),
        ),
        Reference::Top => (
            slice(x, y + height - off, width, off),
            slice(x, y, width, height - off),
        ),
    }
}

fn whole(area: Area) -> CutPart {
    CutPart {
        name: "the sheet".to_owned(),
        made: String::new(),
        area,
    }
}

fn content(area: Area) -> u128 {
    u128::from(area.width) * u128::from(area.height)
}

/// A, B, … Z, AA, AB, …; without I and O, which read as numbers.
fn letter(index: usize) -> String {
    const LETTERS: &[u8; 24] = b"ABCDEFGHJKLMNPQRSTUVWXYZ";
    let last = char::from(LETTERS[index % LETTERS.len()]);
    match (index / LETTERS.len()).checked_sub(1) {
        Some(before) => format!("{}{last}", letter(before)),
        None => last.to_string(),
    }
}
