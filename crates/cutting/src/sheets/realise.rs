//! From a draft in reduced units to layouts with places, cuts and remnants in the problem's units.

use std::collections::BTreeMap;

use super::reduce::{Origin, StockOrigin, urgency};
use super::{Area, Axis, Block, Cut, Draft, From, Kind, Layout, Placed, Problem, Reduced, Way};

/// One sheet of a draft, laid out, with reduced parts for pieces.
struct Laid {
    stock: usize,
    copies: u64,
    /// Part, where it lies.
    parts: Vec<(usize, Area)>,
    cuts: Vec<Cut>,
    remnants: Vec<Area>,
}

/// Lays a draft out. The layouts come in the order they are best cut.
pub(crate) fn realise(
    problem: &Problem,
    reduced: &Reduced,
    origin: &Origin,
    draft: &Draft,
) -> Vec<Layout> {
    let mut laid: Vec<Laid> = draft
        .sheets
        .iter()
        .map(|sheet| {
            let block = tidied(sheet.block.clone());
            let mut hand = Hand {
                problem,
                reduced,
                origin,
                laid: Laid {
                    stock: sheet.stock,
                    copies: sheet.copies,
                    parts: Vec::new(),
                    cuts: Vec::new(),
                    remnants: Vec::new(),
                },
            };
            let area = hand.whole(sheet.stock);
            hand.cut_up(&block, area, 0, None);
            hand.laid
        })
        .filter(|laid| !laid.parts.is_empty())
        .collect();
    laid.sort_by_key(|laid| order(problem, reduced, origin, laid));
    Naming::new(problem, origin).name_all(problem, origin, &laid)
}

/// Sheets before windows, windows from large to small, so that what frees a window comes first;
/// then by the most urgent piece.
fn order(
    problem: &Problem,
    reduced: &Reduced,
    origin: &Origin,
    laid: &Laid,
) -> (std::cmp::Reverse<u64>, (u32, std::cmp::Reverse<u32>), usize) {
    let stock = &reduced.stock[laid.stock];
    let size = match stock.window_of {
        Some(_) => u64::from(stock.width) * u64::from(stock.height),
        None => u64::MAX,
    };
    let most_urgent = laid
        .parts
        .iter()
        .map(|&(part, _)| urgency(&problem.pieces[origin.parts[part][0]]))
        .min()
        .unwrap_or((u32::MAX, std::cmp::Reverse(0)));
    (std::cmp::Reverse(size), most_urgent, laid.stock)
}

/// Splits within splits along the same axis become one; waste is gathered at the far end.
pub(crate) fn tidied(block: Block) -> Block {
    let Kind::Split { axis, blocks } = block.kind else {
        return block;
    };
    let mut kept = Vec::new();
    let mut free = 0;
    for inner in blocks {
        let inner = tidied(inner);
        let across = inner.along(axis.other());
        match inner.kind {
            Kind::Free => free += inner.along(axis),
            Kind::Split { axis: same, blocks } if same == axis => {
                for block in blocks {
                    match block.kind {
                        Kind::Free => free += block.along(axis),
                        _ => kept.push(block),
                    }
                }
            }
            kind => kept.push(Block {
                width: if axis == Axis::X { inner.width } else { across },
                height: if axis == Axis::Y {
                    inner.height
                } else {
                    across
                },
                kind,
            }),
        }
    }
    if kept.is_empty() {
        return Block::free(block.width, block.height);
    }
    if free > 0 {
        kept.push(match axis {
            Axis::X => Block::free(free, block.height),
            Axis::Y => Block::free(block.width, free),
        });
    }
    if kept.len() == 1 {
        return kept.remove(0);
    }
    Block {
        width: block.width,
        height: block.height,
        kind: Kind::Split { axis, blocks: kept },
    }
}

struct Hand<'a> {
    problem: &'a Problem,
    reduced: &'a Reduced,
    origin: &'a Origin,
    laid: Laid,
}

impl Hand<'_> {
    /// What can be used of this stock.
    fn whole(&self, stock: usize) -> Area {
        let kerf = self.problem.rules.kerf;
        let size = &self.reduced.stock[stock];
        let (x, y) = match self.origin.stock[stock] {
            StockOrigin::Sheet(sheet) => {
                let trim = self.problem.stock[sheet].trim;
                (trim.left, trim.bottom)
            }
            StockOrigin::Window(_) => (0, 0),
        };
        Area {
            x,
            y,
            width: u64::from(size.width) * self.origin.grain - kerf,
            height: u64::from(size.height) * self.origin.grain - kerf,
        }
    }

    /// All cuts across this block first, then block by block.
    fn cut_up(&mut self, block: &Block, area: Area, stage: u32, last: Option<Axis>) {
        match &block.kind {
            Kind::Part { part, .. } => self.laid.parts.push((*part, area)),
            Kind::Free => {
                // Waste that falls in the trimming cut of a single piece is no part to keep.
                if stage <= self.reduced.stages.most {
                    self.laid.remnants.push(area);
                }
            }
            Kind::Split { axis, blocks } => {
                let stage = self.next_stage(*axis, stage, last);
                let mut inner = Vec::new();
                let mut rest = area;
                for block in blocks {
                    let extent = u64::from(block.along(*axis)) * self.origin.grain;
                    let Some(part) = self.cut_off(&mut rest, *axis, extent) else {
                        break;
                    };
                    inner.push((block, part));
                }
                for (block, part) in inner {
                    self.cut_up(block, part, stage, Some(*axis));
                }
            }
        }
    }

    fn next_stage(&self, axis: Axis, stage: u32, last: Option<Axis>) -> u32 {
        match last {
            None => match self.reduced.stages.first {
                Some(first) if first != axis => 2,
                _ => 1,
            },
            Some(last) if last == axis => stage,
            Some(_) => stage + 1,
        }
    }

    /// Cuts a block off the low end of what remains; `None` when what remains is sawn to dust.
    fn cut_off(&mut self, rest: &mut Area, axis: Axis, extent: u64) -> Option<Area> {
        let kerf = self.problem.rules.kerf;
        let (start, size) = match axis {
            Axis::X => (rest.x, rest.width),
            Axis::Y => (rest.y, rest.height),
        };
        if extent <= kerf || size == 0 {
            return None;
        }
        let own = (extent - kerf).min(size);
        if own < size {
            self.laid.cuts.push(Cut {
                of: *rest,
                way: match axis {
                    Axis::X => Way::Upright,
                    Axis::Y => Way::Level,
                },
                at: start + own,
            });
        }
        let mut part = *rest;
        let gone = (own + kerf).min(size);
        match axis {
            Axis::X => {
                part.width = own;
                rest.x += gone;
                rest.width -= gone;
            }
            Axis::Y => {
                part.height = own;
                rest.y += gone;
                rest.height -= gone;
            }
        }
        Some(part)
    }
}

/// Deals the pieces that are merged in one part out to the places of the part.
struct Naming {
    /// Copies of each piece not yet dealt out.
    left: Vec<u64>,
    /// Per piece, windows freed and not yet used.
    windows: BTreeMap<usize, u64>,
}

impl Naming {
    fn new(problem: &Problem, _origin: &Origin) -> Self {
        let counts = problem.pieces.iter();
        Self {
            left: counts
                .map(|piece| piece.count.unwrap_or(u64::MAX))
                .collect(),
            windows: BTreeMap::new(),
        }
    }

    fn name_all(mut self, problem: &Problem, origin: &Origin, all: &[Laid]) -> Vec<Layout> {
        let mut layouts: Vec<Layout> = Vec::new();
        for laid in all {
            let mut copies = laid.copies;
            while copies > 0 {
                let layout = self.name_one(problem, origin, laid, copies);
                if layout.copies == 0 {
                    // The draft holds more of a part than was wanted.
                    break;
                }
                copies -= layout.copies;
                match layouts.last_mut() {
                    Some(last) if alike(last, &layout) => last.copies += layout.copies,
                    _ => layouts.push(layout),
                }
            }
        }
        layouts
    }

    /// As many copies as can be named alike.
    fn name_one(&mut self, problem: &Problem, origin: &Origin, laid: &Laid, most: u64) -> Layout {
        let mut copies = most;
        let from = match origin.stock[laid.stock] {
            StockOrigin::Sheet(sheet) => From::Stock(sheet),
            StockOrigin::Window(part) => {
                let free = |piece: &&usize| self.windows.get(piece).copied().unwrap_or(0) > 0;
                let piece = origin.parts[part].iter().find(free).copied();
                let piece = piece.unwrap_or(origin.parts[part][0]);
                copies = copies.min(self.windows.get(&piece).copied().unwrap_or(0));
                From::Window(piece)
            }
        };
        let mut taken: BTreeMap<usize, u64> = BTreeMap::new();
        let mut pieces = Vec::with_capacity(laid.parts.len());
        for &(part, area) in &laid.parts {
            let spare =
                |piece: &&usize| self.left[**piece] > taken.get(piece).copied().unwrap_or(0);
            let Some(&piece) = origin.parts[part].iter().find(spare) else {
                copies = 0;
                continue;
            };
            *taken.entry(piece).or_default() += 1;
            let asked = &problem.pieces[piece];
            pieces.push(Placed {
                piece,
                area,
                turned: (area.width, area.height) != (asked.width, asked.height),
            });
        }
        for (&piece, &times) in &taken {
            copies = copies.min(self.left[piece] / times);
        }
        self.book(problem, from, &taken, copies);
        Layout {
            from,
            copies,
            pieces,
            cuts: laid.cuts.clone(),
            remnants: laid.remnants.clone(),
        }
    }

    fn book(&mut self, problem: &Problem, from: From, taken: &BTreeMap<usize, u64>, copies: u64) {
        if let From::Window(piece) = from
            && let Some(free) = self.windows.get_mut(&piece)
        {
            *free -= copies;
        }
        for (&piece, &times) in taken {
            if self.left[piece] != u64::MAX {
                self.left[piece] -= times * copies;
            }
            if problem.pieces[piece].window.is_some() {
                *self.windows.entry(piece).or_default() += times * copies;
            }
        }
    }
}

fn alike(a: &Layout, b: &Layout) -> bool {
    a.from == b.from && a.pieces == b.pieces && a.cuts == b.cuts
}

#[cfg(test)]
mod tests;
