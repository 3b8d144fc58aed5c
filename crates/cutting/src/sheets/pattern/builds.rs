//! The most value within the counts, exactly: layouts built from the parts up, best first.
//!
//! Two layouts side by side or one on another make a larger one. Of all layouts built, the one
//! with the highest promise (its value and the most that the rest of the sheet around it can be
//! worth) is joined with all before it; when no promise is above the best value, that value is
//! proven (Viswanathan and Bagchi, "Best-first search methods for constrained two-dimensional
//! cutting stock problems", 1993). Promises are in worths less penalties, which keeps counts in
//! them (see [`super::bounded`]).

use std::collections::{BTreeMap, BinaryHeap, HashMap};
use std::rc::Rc;

use super::super::Axis;
use super::points::{ceil, floor};
use super::shape::{Lying, Shape};
use super::table::Table;
use crate::Pace;

/// What the search knows when it ends.
pub(super) struct Outcome {
    /// Layouts worth more than the floor, each more than the last.
    pub(super) found: Vec<(u64, Shape)>,
    /// No layout is worth more (the floor, when nothing is above it).
    pub(super) bound: u64,
}

/// A search of one sheet.
pub(super) struct Site<'a> {
    pub(super) xs: &'a [u32],
    pub(super) ys: &'a [u32],
    /// Parts as they may lie, with their full worth.
    pub(super) parts: &'a [Lying],
    /// Per part.
    pub(super) penalties: &'a [u64],
    pub(super) counts: &'a [u64],
    /// Only more than this is sought.
    pub(super) floor: u64,
    /// Layouts to keep at most.
    pub(super) most: usize,
}

/// A layout built.
struct Build {
    width: u32,
    height: u32,
    /// Worth less penalties.
    less: u64,
    worth: u64,
    uses: Rc<[u8]>,
    /// Of the first parts, bit by bit: any used, and all used.
    any: u128,
    full: u128,
    made: Made,
}

/// Builds of one size that have been joined with all before them.
struct Yarded {
    width: u32,
    height: u32,
    /// Worth less penalties and build, highest worth first.
    builds: Vec<(u64, usize)>,
}

/// The first point not below a size, looked up where sizes are few.
struct Above<'a> {
    points: &'a [u32],
    known: Vec<u32>,
}

impl<'a> Above<'a> {
    fn new(points: &'a [u32]) -> Self {
        let last = points[points.len() - 1];
        let mut known = Vec::new();
        if last <= LOOKED_UP {
            known = (0..=last)
                .map(|size| u32::try_from(ceil(points, size).unwrap_or(0)).unwrap_or(0))
                .collect();
        }
        Self { points, known }
    }

    fn at(&self, size: u32) -> Option<usize> {
        if self.known.is_empty() {
            return ceil(self.points, size);
        }
        self.known.get(size as usize).map(|&at| at as usize)
    }
}

/// Sizes up to which points are looked up.
const LOOKED_UP: u32 = 1 << 16;

#[derive(Clone, Copy)]
enum Made {
    Part(usize),
    Of(Axis, usize, usize),
}

/// Layouts answered.
const FOUND: usize = 8;
/// Parts of a build are counted in bytes.
const MOST_OF_ONE: u64 = 250;

/// Bytes for builds, and for one beside the counts of its parts, those of its sizes and of its
/// place in the order included.
const MEMORY: usize = 48 << 20;
const ONE: usize = 240;

/// How many builds of so many part types there is room for.
pub(super) fn most_kept(parts: usize) -> usize {
    MEMORY / (ONE + parts)
}

impl Site<'_> {
    /// Searches; `None` when the pace ends before the promises are reckoned, or when there are
    /// more of a part than a build can count.
    pub(super) fn search(&self, pace: &mut Pace<'_>) -> Option<Outcome> {
        let paid = self.penalties.iter().zip(self.counts);
        let paid = paid.fold(0_u64, |sum, (&penalty, &count)| {
            sum.saturating_add(penalty.saturating_mul(count))
        });
        let mut kinds: Vec<usize> = self.parts.iter().map(|part| part.part).collect();
        kinds.sort_unstable();
        kinds.dedup();
        if kinds.iter().any(|&part| self.counts[part] > MOST_OF_ONE) {
            return None;
        }
        let around = Around::new(self, pace)?;
        let mut yard = Yard {
            site: self,
            counts: kinds.iter().map(|&part| self.counts[part]).collect(),
            around,
            paid,
            floor: self.floor,
            better: Vec::new(),
            builds: Vec::new(),
            open: BinaryHeap::new(),
            closed: Vec::new(),
            place: BTreeMap::new(),
            across: Above::new(self.xs),
            up: Above::new(self.ys),
            seen: HashMap::new(),
        };
        yard.lay_parts(&kinds);
        let bound = yard.run(pace);
        let last = yard.better.iter().rev().take(FOUND).rev();
        let found = last.map(|&build| (yard.builds[build].worth, yard.shape(build)));
        Some(Outcome {
            found: found.collect(),
            bound,
        })
    }
}

/// The most worth less penalties around a block in the sheet's corner.
struct Around {
    tall: usize,
    cells: Vec<u64>,
}

impl Around {
    fn new(site: &Site<'_>, pace: &mut Pace<'_>) -> Option<Self> {
        let less: Vec<Lying> = site
            .parts
            .iter()
            .map(|part| Lying {
                worth: part.worth - site.penalties[part.part],
                ..*part
            })
            .collect();
        let inner = Table::<u64>::fill(site.xs, site.ys, &less, pace)?;
        let (wide, tall) = (site.xs.len(), site.ys.len());
        let mut cells = vec![0_u64; wide * tall];
        for x in (0..wide).rev() {
            let mut column = vec![0_u64; tall];
            for beyond in x + 1..wide {
                let beside = floor(site.xs, site.xs[beyond] - site.xs[x]);
                for (y, cell) in column.iter_mut().enumerate() {
                    *cell = (*cell).max(cells[beyond * tall + y] + inner.worth(beside, y));
                }
            }
            for y in (0..tall).rev() {
                for above in y + 1..tall {
                    let atop = floor(site.ys, site.ys[above] - site.ys[y]);
                    column[y] = column[y].max(column[above] + inner.worth(x, atop));
                }
            }
            cells[x * tall..(x + 1) * tall].copy_from_slice(&column);
            if !pace.spend((tall * (wide - x + tall)) as u64) {
                return None;
            }
        }
        Some(Self { tall, cells })
    }
}

struct Yard<'a> {
    site: &'a Site<'a>,
    counts: Vec<u64>,
    around: Around,
    paid: u64,
    floor: u64,
    /// Builds worth more than all before.
    better: Vec<usize>,
    builds: Vec<Build>,
    /// Promise, worth, build (earlier ones first among equals).
    open: BinaryHeap<(u64, u64, std::cmp::Reverse<usize>)>,
    closed: Vec<Yarded>,
    /// Where the builds of one size are in `closed`.
    place: BTreeMap<(u32, u32), usize>,
    across: Above<'a>,
    up: Above<'a>,
    /// Sizes of the builds with the same parts. Only looked up, never walked.
    seen: HashMap<Rc<[u8]>, Vec<(u32, u32)>>,
}

impl Yard<'_> {
    fn lay_parts(&mut self, kinds: &[usize]) {
        for (number, part) in self.site.parts.iter().enumerate() {
            let Ok(kind) = kinds.binary_search(&part.part) else {
                continue;
            };
            if self.counts[kind] == 0 {
                continue;
            }
            let mut uses = vec![0_u8; kinds.len()];
            uses[kind] = 1;
            self.enter(Build {
                width: part.width,
                height: part.height,
                less: part.worth - self.site.penalties[part.part],
                worth: part.worth,
                uses: uses.into(),
                any: 0,
                full: 0,
                made: Made::Part(number),
            });
        }
    }

    /// The highest value any layout with a block of this size and worth can reach.
    fn promise(&self, width: u32, height: u32, less: u64) -> Option<u64> {
        let x = self.across.at(width)?;
        let y = self.up.at(height)?;
        let around = self.around.cells[x * self.around.tall + y];
        Some(less.saturating_add(around).saturating_add(self.paid))
    }

    /// Joins until nothing promises more than the best. Answers the bound.
    fn run(&mut self, pace: &mut Pace<'_>) -> u64 {
        while let Some((promise, _, std::cmp::Reverse(number))) = self.open.pop() {
            if promise <= self.floor {
                break;
            }
            self.close(number);
            let mut steps = 1;
            for at in 0..self.closed.len() {
                steps += self.join_all(Axis::X, number, at);
                steps += self.join_all(Axis::Y, number, at);
            }
            let full = self.builds.len() >= self.site.most;
            if !pace.spend(steps) || full {
                return promise.max(self.floor);
            }
        }
        self.floor
    }

    fn close(&mut self, number: usize) {
        let build = &self.builds[number];
        let key = (build.width, build.height);
        let at = *self.place.entry(key).or_insert_with(|| {
            self.closed.push(Yarded {
                width: key.0,
                height: key.1,
                builds: Vec::new(),
            });
            self.closed.len() - 1
        });
        let builds = &mut self.closed[at].builds;
        let less = build.less;
        let after = builds.partition_point(|&(other, _)| other >= less);
        builds.insert(after, (less, number));
    }

    /// Joins a build with all builds of one size, as far as they promise enough. Answers the steps.
    fn join_all(&mut self, axis: Axis, number: usize, at: usize) -> u64 {
        let (one, other) = (&self.builds[number], &self.closed[at]);
        let (width, height) = match axis {
            Axis::X => (
                one.width.saturating_add(other.width),
                one.height.max(other.height),
            ),
            Axis::Y => (
                one.width.max(other.width),
                one.height.saturating_add(other.height),
            ),
        };
        let Some(around) = self.promise(width, height, one.less) else {
            return 1;
        };
        let able = other
            .builds
            .partition_point(|&(less, _)| less.saturating_add(around) > self.floor);
        let mut joined = Vec::new();
        for &(_, second) in &other.builds[..able] {
            if self.compatible(number, second) {
                joined.push(second);
            }
        }
        for second in joined {
            self.join(axis, (width, height), number, second);
        }
        1 + able as u64
    }

    fn compatible(&self, one: usize, other: usize) -> bool {
        let (a, b) = (&self.builds[one], &self.builds[other]);
        if a.full & b.any != 0 || b.full & a.any != 0 {
            return false;
        }
        let within = |((&a, &b), &count): ((&u8, &u8), &u64)| u64::from(a) + u64::from(b) <= count;
        a.uses
            .iter()
            .zip(b.uses.iter())
            .zip(&self.counts)
            .all(within)
    }

    fn join(&mut self, axis: Axis, (width, height): (u32, u32), one: usize, other: usize) {
        let (a, b) = (&self.builds[one], &self.builds[other]);
        let build = Build {
            width,
            height,
            less: a.less + b.less,
            worth: a.worth + b.worth,
            uses: a
                .uses
                .iter()
                .zip(b.uses.iter())
                .map(|(a, b)| a + b)
                .collect(),
            any: 0,
            full: 0,
            made: Made::Of(axis, one, other),
        };
        self.enter(build);
    }

    fn enter(&mut self, mut build: Build) {
        let Some(promise) = self.promise(build.width, build.height, build.less) else {
            return;
        };
        if promise <= self.floor {
            return;
        }
        let (width, height) = (build.width, build.height);
        if let Some(sizes) = self.seen.get_mut(&build.uses) {
            if sizes.iter().any(|&(w, h)| w <= width && h <= height) {
                return;
            }
            sizes.retain(|&(w, h)| w < width || h < height);
            sizes.push((width, height));
        } else {
            self.seen.insert(build.uses.clone(), vec![(width, height)]);
        }
        for (at, (&used, &count)) in build.uses.iter().zip(&self.counts).take(128).enumerate() {
            build.any |= u128::from(used > 0) << at;
            build.full |= u128::from(u64::from(used) >= count) << at;
        }
        let number = self.builds.len();
        if build.worth > self.floor {
            self.floor = build.worth;
            self.better.push(number);
        }
        self.open
            .push((promise, build.worth, std::cmp::Reverse(number)));
        self.builds.push(build);
    }

    fn shape(&self, number: usize) -> Shape {
        match self.builds[number].made {
            Made::Part(part) => self.site.parts[part].shape(),
            Made::Of(axis, one, other) => {
                Shape::row(axis, vec![self.shape(one), self.shape(other)])
            }
        }
    }
}
