//! Sheets under the saw and parts not yet placed, with a way back.

use super::super::{DraftSheet, Reduced};
use super::sheet::{Place, Sheet};
use super::terms::{Terms, rounded};
use crate::chance::Chance;

/// What a search works on.
#[derive(Clone, Debug)]
pub(super) struct Field {
    pub(super) terms: Terms,
    /// Open and closed ones; a closed one is used again for the next sheet.
    pub(super) sheets: Vec<Sheet>,
    /// Part types that play a role here.
    pub(super) kinds: Vec<u32>,
    /// Per part type: copies not placed.
    pub(super) left: Vec<u64>,
    /// Per part type: the sizes it may lie in.
    sizes: Vec<Sizes>,
    /// Per stock: what may still be opened.
    pub(super) spare: Vec<u64>,
    stock: Vec<Kind>,
    /// One empty sheet of each stock that costs nothing.
    ghosts: Vec<Sheet>,
    /// Cost of the open sheets, and the most it may be.
    pub(super) cost: u64,
    pub(super) limit: u64,
    /// Number, weight and value of the parts not placed.
    pub(super) missing: u64,
    pub(super) weight: u64,
    pub(super) value: u64,
    /// Worth of all free space; sheets that cost nothing count whether they are open or not.
    pub(super) worth: f64,
    /// Places looked at since the last time it was asked.
    pub(super) steps: u64,
    back: Back,
    /// A mark was set.
    tracked: bool,
}

#[derive(Clone, Copy, Debug)]
struct Sizes {
    straight: (u32, u32),
    turned: Option<(u32, u32)>,
    /// Its area as it is summed up, more when it was left out for long.
    weight: u64,
    value: u64,
}

impl Sizes {
    fn lying(&self, turned: bool) -> (u32, u32) {
        match self.turned {
            Some(size) if turned => size,
            _ => self.straight,
        }
    }
}

#[derive(Clone, Copy, Debug)]
struct Kind {
    width: u32,
    height: u32,
    cost: u64,
    worth: f64,
}

/// How it was before the try.
#[derive(Clone, Debug, Default)]
struct Back {
    sheets: Vec<(usize, Sheet)>,
    count: usize,
    left: Vec<(u32, u64)>,
    totals: (u64, u64, u64, u64, f64),
}

/// Where a part goes: in a sheet, or in a new one of this stock.
#[derive(Clone, Copy, Debug)]
enum Spot {
    Sheet(usize, Place),
    New(usize),
}

/// How new sheets are chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Opening {
    /// Least cost for its area.
    Thrifty,
    /// Least cost.
    Cheap,
    /// Largest area.
    Large,
    /// By lot among those after which what is missing can still find room.
    Reaching,
    /// By lot.
    Any,
}

impl Field {
    /// No sheet open, no part wanted.
    pub(super) fn new(reduced: &Reduced, single: bool) -> Self {
        let terms = Terms::new(reduced);
        let sizes = reduced.parts.iter().map(|part| Sizes {
            straight: (part.width, part.height),
            turned: part.turn.then_some((part.height, part.width)),
            weight: terms.weight((part.width, part.height)),
            value: part.value,
        });
        let stock = reduced.stock.iter().map(|stock| Kind {
            width: stock.width,
            height: stock.height,
            cost: if single { 1 } else { stock.cost },
            worth: terms.worth(stock.width, stock.height),
        });
        let stock: Vec<Kind> = stock.collect();
        let ghosts = stock.iter().enumerate().filter(|(_, kind)| kind.cost == 0);
        let ghosts = ghosts.map(|(number, kind)| {
            let mut ghost = Sheet::default();
            ghost.open(&terms, number, kind.width, kind.height);
            ghost
        });
        Self {
            terms,
            ghosts: ghosts.collect(),
            sheets: Vec::new(),
            kinds: Vec::new(),
            left: vec![0; reduced.parts.len()],
            sizes: sizes.collect(),
            spare: reduced.stock.iter().map(|stock| stock.count).collect(),
            stock,
            cost: 0,
            limit: if single { 1 } else { u64::MAX },
            missing: 0,
            weight: 0,
            value: 0,
            worth: 0.0,
            steps: 0,
            back: Back::default(),
            tracked: false,
        }
    }

    /// Wants so many copies more.
    pub(super) fn want(&mut self, part: usize, copies: u64) {
        if copies == 0 {
            return;
        }
        let kind = narrow(part);
        if !self.kinds.contains(&kind) {
            self.kinds.push(kind);
        }
        self.left[part] += copies;
        let sizes = self.sizes[part];
        self.missing += copies;
        self.weight = self
            .weight
            .saturating_add(sizes.weight.saturating_mul(copies));
        self.value = self
            .value
            .saturating_add(sizes.value.saturating_mul(copies));
    }

    /// Nothing is said of what is missing in all.
    pub(super) fn boundless(&mut self) {
        (self.missing, self.weight, self.value) = (u64::MAX / 2, u64::MAX / 2, u64::MAX / 2);
    }

    /// Counts sheets as used that are not here.
    pub(super) fn withhold(&mut self, stock: usize, copies: u64) {
        if self.spare[stock] != u64::MAX {
            self.spare[stock] = self.spare[stock].saturating_sub(copies);
        }
    }

    /// Counts whole layouts as cut.
    pub(super) fn give(&mut self, stock: usize, copies: u64, used: &[u64]) {
        self.withhold(stock, copies);
        for (part, &times) in used.iter().enumerate() {
            let gone = times * copies;
            self.left[part] -= gone;
            self.missing -= gone;
            self.weight = self
                .weight
                .saturating_sub(self.sizes[part].weight.saturating_mul(gone));
            self.value = self
                .value
                .saturating_sub(self.sizes[part].value.saturating_mul(gone));
        }
    }

    /// Takes a sheet over with its parts, which are not wanted before.
    pub(super) fn adopt(&mut self, stock: usize, block: &super::super::Block) {
        let at = self.slot();
        let mut sheet = std::mem::take(&mut self.sheets[at]);
        sheet.load(&self.terms, stock, block);
        let mut found = Vec::new();
        sheet.all_parts(&mut found);
        for kind in found {
            if !self.kinds.contains(&kind) {
                self.kinds.push(kind);
            }
        }
        self.spare[stock] = minus(self.spare[stock]);
        self.cost += self.stock[stock].cost;
        self.worth += sheet.worth - self.dormant(stock);
        self.sheets[at] = sheet;
    }

    /// From here the way leads back.
    pub(super) fn mark(&mut self) {
        self.tracked = true;
        self.back.count = 0;
        self.back.left.clear();
        self.back.totals = (self.cost, self.missing, self.weight, self.value, self.worth);
    }

    /// Goes back to the mark.
    pub(super) fn undo(&mut self) {
        for at in 0..self.back.count {
            let (slot, _) = self.back.sheets[at];
            let now = &self.sheets[slot];
            if now.open {
                self.spare[now.stock] = plus(self.spare[now.stock]);
            }
        }
        for at in 0..self.back.count {
            let (slot, was) = &mut self.back.sheets[at];
            std::mem::swap(was, &mut self.sheets[*slot]);
            let sheet = &self.sheets[*slot];
            if sheet.open {
                self.spare[sheet.stock] = minus(self.spare[sheet.stock]);
            }
        }
        self.back.count = 0;
        while let Some((kind, left)) = self.back.left.pop() {
            self.left[kind as usize] = left;
        }
        (self.cost, self.missing, self.weight, self.value, self.worth) = self.back.totals;
    }

    fn log(&mut self, kind: u32) {
        if self.tracked {
            self.back.left.push((kind, self.left[kind as usize]));
        }
    }

    /// Keeps a sheet as it is before it is changed.
    fn keep(&mut self, slot: usize) {
        let kept = &self.back.sheets[..self.back.count];
        if !self.tracked || kept.iter().any(|&(other, _)| other == slot) {
            return;
        }
        if self.back.count == self.back.sheets.len() {
            self.back.sheets.push((slot, Sheet::default()));
        }
        let (number, sheet) = &mut self.back.sheets[self.back.count];
        *number = slot;
        sheet.clone_from(&self.sheets[slot]);
        self.steps += sheet.nodes() as u64 / 8;
        self.back.count += 1;
    }

    /// Free space of a sheet that costs nothing counts before it is opened.
    fn dormant(&self, stock: usize) -> f64 {
        if self.stock[stock].cost == 0 {
            self.stock[stock].worth
        } else {
            0.0
        }
    }

    /// Number of a closed sheet.
    fn slot(&mut self) -> usize {
        if let Some(at) = self.sheets.iter().position(|sheet| !sheet.open) {
            return at;
        }
        self.sheets.push(Sheet::default());
        self.sheets.len() - 1
    }

    /// Takes a subtree out of a sheet; after the last one comes [`Field::level`].
    pub(super) fn take_out(&mut self, slot: usize, node: u32, parts: &mut Vec<u32>) {
        self.keep(slot);
        parts.clear();
        self.sheets[slot].parts_in(node, parts);
        self.unplace(parts);
        self.sheets[slot].remove(&self.terms, node);
    }

    /// Closes a sheet that is empty, and finds the free spaces of another.
    pub(super) fn level(&mut self, slot: usize) {
        self.worth -= self.sheets[slot].worth;
        if self.sheets[slot].parts == 0 {
            self.shut(slot);
        } else {
            let sheet = &mut self.sheets[slot];
            sheet.refresh(&self.terms);
            self.worth += sheet.worth;
        }
    }

    /// Takes a whole sheet away.
    pub(super) fn take_away(&mut self, slot: usize, parts: &mut Vec<u32>) {
        self.keep(slot);
        parts.clear();
        self.sheets[slot].all_parts(parts);
        self.unplace(parts);
        self.worth -= self.sheets[slot].worth;
        self.shut(slot);
    }

    fn shut(&mut self, slot: usize) {
        let stock = self.sheets[slot].stock;
        self.sheets[slot].close();
        self.spare[stock] = plus(self.spare[stock]);
        self.cost -= self.stock[stock].cost;
        self.worth += self.dormant(stock);
    }

    fn unplace(&mut self, parts: &[u32]) {
        for &part in parts {
            let sizes = self.sizes[part as usize];
            self.log(part);
            self.left[part as usize] += 1;
            self.missing += 1;
            self.weight += sizes.weight;
            self.value += sizes.value;
        }
    }

    /// Puts one copy of a part where it loses least; in a new sheet where it fits nowhere. False
    /// when there is no room. One place in `blink` is overlooked (0: none).
    pub(super) fn put(
        &mut self,
        kind: u32,
        opening: Opening,
        blink: usize,
        chance: &mut Chance,
    ) -> bool {
        let sizes = self.sizes[kind as usize];
        let Some(best) = self.best_spot(&sizes, opening, blink, chance) else {
            return false;
        };
        let slot = match best {
            Spot::Sheet(slot, _) => slot,
            Spot::New(_) => self.slot(),
        };
        self.keep(slot);
        let place = match best {
            Spot::Sheet(_, place) => place,
            Spot::New(stock) => match self.open(slot, stock, &sizes) {
                Some(place) => place,
                None => return false,
            },
        };
        let size = sizes.lying(place.turned);
        let sheet = &mut self.sheets[slot];
        self.worth -= sheet.worth;
        sheet.place(&self.terms, place, kind, size);
        self.worth += sheet.worth;
        self.log(kind);
        self.left[kind as usize] -= 1;
        self.missing -= 1;
        self.weight -= sizes.weight;
        self.value -= sizes.value;
        true
    }

    fn open(&mut self, slot: usize, stock: usize, sizes: &Sizes) -> Option<Place> {
        let kind = self.stock[stock];
        self.sheets[slot].open(&self.terms, stock, kind.width, kind.height);
        self.spare[stock] = minus(self.spare[stock]);
        self.cost += kind.cost;
        self.worth += self.sheets[slot].worth - self.dormant(stock);
        let mut best = None;
        seek(&self.sheets[slot], &self.terms, sizes, &mut best);
        best
    }

    fn best_spot(
        &mut self,
        sizes: &Sizes,
        opening: Opening,
        blink: usize,
        chance: &mut Chance,
    ) -> Option<Spot> {
        let mut best = None;
        let mut at = usize::MAX;
        let mut steps = self.sheets.len() as u64;
        for (slot, sheet) in self.sheets.iter().enumerate() {
            let straight = sheet.may_take(sizes.straight.0, sizes.straight.1);
            let turned = sizes
                .turned
                .is_some_and(|size| sheet.may_take(size.0, size.1));
            if !straight && !turned || blink > 0 && chance.one_in(blink) {
                continue;
            }
            steps += sheet.leaves() as u64;
            if seek(sheet, &self.terms, sizes, &mut best) {
                at = slot;
            }
        }
        let mut dormant = None;
        for ghost in &self.ghosts {
            if self.spare[ghost.stock] > 0 && seek(ghost, &self.terms, sizes, &mut best) {
                dormant = Some(ghost.stock);
            }
        }
        self.steps += steps + self.ghosts.len() as u64;
        match (best, dormant) {
            (_, Some(stock)) => Some(Spot::New(stock)),
            (Some(place), None) => Some(Spot::Sheet(at, place)),
            (None, None) => self.new_stock(sizes, opening, chance).map(Spot::New),
        }
    }

    /// Which stock to open for a part.
    fn new_stock(&mut self, sizes: &Sizes, opening: Opening, chance: &mut Chance) -> Option<usize> {
        if self.cost >= self.limit {
            return None;
        }
        let mut best: Option<(f64, usize)> = None;
        let mut seen = 0;
        self.steps += self.stock.len() as u64;
        let needed = if opening == Opening::Reaching {
            self.terms.share_of_weight(self.missing_weight()) * (0.7 + 0.3 * chance.unit())
        } else {
            0.0
        };
        for stock in 0..self.stock.len() {
            if !self.can_open(stock, sizes) {
                continue;
            }
            let kind = self.stock[stock];
            let area = u64::from(kind.width) * u64::from(kind.height);
            let (cost, area) = (rounded(kind.cost), self.terms.share(area));
            seen += usize::from(opening == Opening::Any);
            let dear = match opening {
                Opening::Thrifty => cost / area,
                Opening::Cheap => cost,
                Opening::Reaching => {
                    let reach = area + self.reach(stock, self.limit - self.cost - kind.cost);
                    seen += usize::from(reach >= needed);
                    if reach < needed {
                        needed - reach
                    } else if chance.one_in(seen) {
                        -rounded(seen as u64)
                    } else {
                        0.0
                    }
                }
                Opening::Large => 1.0 - area,
                Opening::Any => f64::from(u8::from(!chance.one_in(seen))),
            };
            if best.is_none_or(|(least, _)| dear < least) || opening == Opening::Any && dear == 0.0
            {
                best = Some((dear, stock));
            }
        }
        best.map(|(_, stock)| stock)
    }

    fn missing_weight(&self) -> u64 {
        let kinds = self.kinds.iter().map(|&kind| kind as usize);
        kinds
            .map(|kind| self.left[kind] * self.terms.weight(self.sizes[kind].straight))
            .sum()
    }

    /// The area of what can be opened for so much after a sheet of this stock.
    fn reach(&mut self, after: usize, money: u64) -> f64 {
        self.steps += self.stock.len() as u64;
        let spare = self.spare[after];
        self.spare[after] = minus(spare);
        let depth = if self.stock.len() <= 8 { 2 } else { 1 };
        let reach = self.most_area(money, depth);
        self.spare[after] = spare;
        reach
    }

    /// Exact for the next sheets, in proportion to the cost for those that come then.
    fn most_area(&mut self, money: u64, depth: u32) -> f64 {
        let mut most = 0.0;
        for stock in 0..self.stock.len() {
            let Kind {
                width,
                height,
                cost,
                ..
            } = self.stock[stock];
            let spare = self.spare[stock];
            if spare == 0 || cost == 0 || cost > money {
                continue;
            }
            let own = self.terms.share(area((width, height)));
            let reach = if depth == 0 {
                own * rounded(money) / rounded(cost)
            } else {
                self.spare[stock] = minus(spare);
                let more = self.most_area(money - cost, depth - 1);
                self.spare[stock] = spare;
                own + more
            };
            most = f64::max(most, reach);
        }
        most
    }

    /// A part can be cut from a sheet of this stock, and the stock can be paid for.
    fn can_open(&self, stock: usize, sizes: &Sizes) -> bool {
        let kind = &self.stock[stock];
        let fits = |size: (u32, u32)| self.terms.cuts((kind.width, kind.height), size);
        self.spare[stock] > 0
            && kind.cost > 0
            && kind.cost <= self.limit.saturating_sub(self.cost)
            && (fits(sizes.straight) || sizes.turned.is_some_and(fits))
    }

    /// What is missing now weighs more from now on.
    pub(super) fn press(&mut self) {
        for &kind in &self.kinds {
            let left = self.left[kind as usize];
            let sizes = &mut self.sizes[kind as usize];
            let area = self.terms.weight(sizes.straight);
            if left > 0 && sizes.weight < 4 * area {
                let more = (area / 8).max(1);
                sizes.weight += more;
                self.weight += left * more;
            }
        }
    }

    /// Everything weighs its area again.
    pub(super) fn relax(&mut self) {
        for &kind in &self.kinds {
            let left = self.left[kind as usize];
            let sizes = &mut self.sizes[kind as usize];
            let area = self.terms.weight(sizes.straight);
            self.weight -= left * (sizes.weight - area);
            sizes.weight = area;
        }
    }

    /// The open sheets as they are handed out.
    pub(super) fn draft(&self, sheets: &mut Vec<DraftSheet>) {
        for sheet in self.sheets.iter().filter(|sheet| sheet.open) {
            let block = sheet.block();
            sheets.push(DraftSheet {
                stock: sheet.stock,
                copies: 1,
                block,
            });
        }
    }

    /// The cost of one sheet of this stock.
    pub(super) fn cost_of(&self, stock: usize) -> u64 {
        self.stock[stock].cost
    }

    /// Area and longest side of a part.
    pub(super) fn measures(&self, kind: u32) -> (u64, u32, u32, u64) {
        let sizes = &self.sizes[kind as usize];
        let (width, height) = sizes.straight;
        (area(sizes.straight), width, height, sizes.value)
    }
}

fn seek(sheet: &Sheet, terms: &Terms, sizes: &Sizes, best: &mut Option<Place>) -> bool {
    let mut better = sheet.seek(terms, sizes.straight, false, best);
    if let Some(turned) = sizes.turned {
        better |= sheet.seek(terms, turned, true, best);
    }
    better
}

fn area((width, height): (u32, u32)) -> u64 {
    u64::from(width) * u64::from(height)
}

fn narrow(number: usize) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX - 2)
}

fn minus(spare: u64) -> u64 {
    if spare == u64::MAX {
        spare
    } else {
        spare.saturating_sub(1)
    }
}

fn plus(spare: u64) -> u64 {
    if spare == u64::MAX { spare } else { spare + 1 }
}
