//! The linear program behind column generation: a revised simplex with an explicit inverse.
//!
//! minimise Σ cost · x  subject to  Σ column · x ≥ right-hand side,  x ≥ 0
//!
//! Columns come in while it is being solved, right-hand sides change while a plan is rounded, and
//! both go on from the last basis (primal steps after new columns, dual steps after new sides).
//! Answers are doubles and are never trusted as bounds: whoever proves a bound rounds the duals to
//! integers and prices exactly (see the bound modules of sticks and sheets).

use crate::pace::Pace;

/// Rows all "at least"; a limit Σ x ≤ q is the row −Σ x ≥ −q.
pub(crate) struct Master {
    sides: Vec<f64>,
    columns: Vec<Column>,
    /// Row and entry, column by column.
    entries: Vec<(usize, f64)>,
    /// What stands in each row of the basis.
    basis: Vec<Basic>,
    /// Whether a column is in the basis.
    within: Vec<bool>,
    /// Inverse of the basis, row by row.
    inverse: Vec<f64>,
    values: Vec<f64>,
    duals: Vec<f64>,
    pivots_since_fresh: usize,
    /// Whether values and duals were carried along since they were last reckoned.
    drifted: bool,
    penalty: f64,
}

struct Column {
    cost: f64,
    /// Where its entries begin and end among those of all columns.
    entries: (usize, usize),
    shut: bool,
}

#[derive(Clone, Copy, PartialEq, Eq, Debug)]
enum Basic {
    Column(usize),
    /// What a row has beyond its side.
    Surplus(usize),
    /// What a row lacks, at a penalty.
    Lack(usize),
}

impl Basic {
    /// Its place in an order of all, in which candidates are looked at, too.
    fn rank(self) -> (u8, usize) {
        match self {
            Self::Surplus(row) => (0, row),
            Self::Column(column) => (1, column),
            Self::Lack(row) => (2, row),
        }
    }
}

const TINY: f64 = 1e-9;
const PIVOT: f64 = 1e-7;
/// Less than this in the inverse is nothing.
const NOTHING: f64 = 1e-14;
/// A column that is shut costs this many penalties, so that it leaves the basis.
const SHUT: f64 = 4.0;
/// Pivots after which the inverse is computed afresh, against drift.
const FRESH_AFTER: usize = 250;
/// Pivots without progress after which the first candidate is taken instead of the best, which
/// cannot run in circles (Bland, "New finite pivoting rules for the simplex method", 1977).
const PATIENCE: usize = 200;

impl Master {
    /// A program without columns. `penalty` is the price of lacking one unit of a row: above any
    /// dual that can occur.
    pub(crate) fn new(sides: &[f64], penalty: f64) -> Self {
        let rows = sides.len();
        let mut master = Self {
            sides: sides.to_vec(),
            columns: Vec::new(),
            entries: Vec::new(),
            basis: Vec::with_capacity(rows),
            within: Vec::new(),
            inverse: vec![0.0; rows * rows],
            values: vec![0.0; rows],
            duals: vec![0.0; rows],
            pivots_since_fresh: 0,
            drifted: false,
            penalty,
        };
        for (row, &side) in sides.iter().enumerate() {
            let (basic, sign) = if side > 0.0 {
                (Basic::Lack(row), 1.0)
            } else {
                (Basic::Surplus(row), -1.0)
            };
            master.basis.push(basic);
            master.inverse[row * rows + row] = sign;
        }
        master.reckon();
        master
    }

    /// Adds a column: its cost, and its entry in each row where it has one. Answers its number.
    pub(crate) fn add(&mut self, cost: f64, entries: Vec<(usize, f64)>) -> usize {
        let start = self.entries.len();
        self.entries.extend(entries);
        self.columns.push(Column {
            cost,
            entries: (start, self.entries.len()),
            shut: false,
        });
        self.within.push(false);
        self.columns.len() - 1
    }

    /// Changes one right-hand side.
    pub(crate) fn set_side(&mut self, row: usize, side: f64) {
        self.sides[row] = side;
    }

    /// Shuts a column out of the solution, or lets it in again.
    pub(crate) fn shut(&mut self, column: usize, shut: bool) {
        self.columns[column].shut = shut;
    }

    /// Solves from the last basis on; `false` when `most` pivots were not enough.
    pub(crate) fn solve(&mut self, most: usize) -> bool {
        self.pivots(most, &mut |_| true)
    }

    /// The same, each pivot counted as steps; `false` also when the pace was over first.
    pub(crate) fn solve_within(&mut self, most: usize, pace: &mut Pace<'_>) -> bool {
        self.pivots(most, &mut |steps| pace.spend(steps))
    }

    fn pivots(&mut self, most: usize, spend: &mut dyn FnMut(u64) -> bool) -> bool {
        if !spend(self.steps_to_reckon()) {
            return false;
        }
        self.reckon();
        let mut pivots = 0;
        let mut most = most;
        while self.values.iter().any(|&value| value < -1e-7) {
            if pivots >= most || !self.dual_step() {
                break;
            }
            pivots += 1;
            if !spend(self.steps_of_a_pivot()) {
                most = pivots;
            }
        }
        let mut idle = 0;
        let mut last = f64::INFINITY;
        while pivots < most {
            let objective = self.objective();
            if objective < last - 1e-12 * (1.0 + last.abs()) {
                idle = 0;
                last = objective;
            } else {
                idle += 1;
            }
            if self.primal_step(idle > PATIENCE) {
                pivots += 1;
                if !spend(self.steps_of_a_pivot()) {
                    most = pivots;
                }
            } else if self.drifted {
                self.reckon();
            } else {
                return true;
            }
        }
        self.reckon();
        false
    }

    /// The least cost, penalties included.
    pub(crate) fn objective(&self) -> f64 {
        let each = |(basic, value): (&Basic, &f64)| self.cost_of(*basic) * value;
        self.basis.iter().zip(&self.values).map(each).sum()
    }

    /// What one more unit of each row's side would cost.
    pub(crate) fn duals(&self) -> &[f64] {
        &self.duals
    }

    /// Columns in use, with how much of each.
    pub(crate) fn solution(&self) -> Vec<(usize, f64)> {
        let used = |(basic, value): (&Basic, &f64)| match basic {
            Basic::Column(column) if *value > TINY => Some((*column, *value)),
            _ => None,
        };
        self.basis
            .iter()
            .zip(&self.values)
            .filter_map(used)
            .collect()
    }

    /// How much all rows together lack: above 0 when the columns cannot meet the sides.
    pub(crate) fn lack(&self) -> f64 {
        let each = |(basic, value): (&Basic, &f64)| match basic {
            Basic::Lack(_) => value.max(0.0),
            _ => 0.0,
        };
        self.basis.iter().zip(&self.values).map(each).sum()
    }

    /// Cost of a column less what its entries are worth at the duals.
    pub(crate) fn reduced_cost(&self, column: usize) -> f64 {
        self.price_of(column) - self.times(column, &self.duals)
    }

    /// A line, entry by entry times the column.
    fn times(&self, column: usize, line: &[f64]) -> f64 {
        let each = |&(row, entry): &(usize, f64)| line[row] * entry;
        self.entries_of(column).iter().map(each).sum()
    }

    fn entries_of(&self, column: usize) -> &[(usize, f64)] {
        let (start, end) = self.columns[column].entries;
        &self.entries[start..end]
    }

    /// The cost of a column; of one that is shut, above every other.
    fn price_of(&self, column: usize) -> f64 {
        if self.columns[column].shut {
            self.penalty * SHUT
        } else {
            self.columns[column].cost
        }
    }

    fn rows(&self) -> usize {
        self.sides.len()
    }

    /// Values and duals anew.
    fn steps_to_reckon(&self) -> u64 {
        let inverse = self.inverse.len();
        u64::try_from(inverse / 8 + 1).unwrap_or(u64::MAX)
    }

    /// A pivot changes the part of the inverse that is not nothing, mostly a small one, and prices
    /// every column; once in a while the inverse is made afresh. Lines of numbers go by far faster
    /// than other steps.
    fn steps_of_a_pivot(&self) -> u64 {
        let inverse = self.inverse.len();
        let afresh = if self.pivots_since_fresh == 0 {
            inverse.saturating_mul(self.rows()) / 128
        } else {
            0
        };
        let steps = inverse / 128 + self.entries.len() / 64 + 1;
        u64::try_from(steps.saturating_add(afresh)).unwrap_or(u64::MAX)
    }

    fn cost_of(&self, basic: Basic) -> f64 {
        match basic {
            Basic::Column(column) => self.price_of(column),
            Basic::Surplus(_) => 0.0,
            Basic::Lack(_) => self.penalty,
        }
    }

    fn reckon_values(&mut self) {
        let rows = self.rows();
        for row in 0..rows {
            let line = &self.inverse[row * rows..(row + 1) * rows];
            self.values[row] = line.iter().zip(&self.sides).map(|(a, b)| a * b).sum();
        }
    }

    fn reckon_duals(&mut self) {
        let rows = self.rows();
        self.duals.fill(0.0);
        for row in 0..rows {
            let cost = self.cost_of(self.basis[row]);
            if cost != 0.0 {
                let line = &self.inverse[row * rows..(row + 1) * rows];
                for (dual, entry) in self.duals.iter_mut().zip(line) {
                    *dual += cost * entry;
                }
            }
        }
    }

    /// The inverse times the candidate's column.
    fn through_inverse(&self, basic: Basic) -> Vec<f64> {
        let rows = self.rows();
        let mut out = vec![0.0; rows];
        let mut add = |at: usize, entry: f64| {
            for (row, out) in out.iter_mut().enumerate() {
                *out += self.inverse[row * rows + at] * entry;
            }
        };
        match basic {
            Basic::Column(column) => {
                for &(at, entry) in self.entries_of(column) {
                    add(at, entry);
                }
            }
            Basic::Surplus(at) => add(at, -1.0),
            Basic::Lack(at) => add(at, 1.0),
        }
        out
    }

    /// One primal pivot; false at the optimum.
    fn primal_step(&mut self, first: bool) -> bool {
        let Some(enter) = self.best_candidate(first) else {
            return false;
        };
        let through = self.through_inverse(enter);
        let mut leave = None;
        let mut least = f64::INFINITY;
        for (row, &step) in through.iter().enumerate() {
            if step > PIVOT {
                let ratio = self.values[row].max(0.0) / step;
                let tie = ratio <= least + TINY;
                let better = ratio < least - TINY
                    || tie
                        && leave.is_some_and(|best: usize| {
                            if first {
                                self.basis[row].rank() < self.basis[best].rank()
                            } else {
                                through[best] < step
                            }
                        });
                if leave.is_none() || better {
                    least = ratio.min(least);
                    leave = Some(row);
                }
            }
        }
        // Costs are not negative, so the program is never without a floor.
        let Some(leave) = leave else {
            return false;
        };
        self.pivot(leave, enter, &through);
        true
    }

    fn best_candidate(&self, first: bool) -> Option<Basic> {
        let mut best = -1e-9 * (1.0 + self.penalty.abs() * 1e-6);
        let mut found = None;
        for (row, &dual) in self.duals.iter().enumerate() {
            // The surplus column is −1 in its row, so its reduced cost is the dual itself.
            if dual < best && !self.basis.contains(&Basic::Surplus(row)) {
                best = dual;
                found = Some(Basic::Surplus(row));
                if first {
                    return found;
                }
            }
        }
        for column in 0..self.columns.len() {
            if self.within[column] || self.columns[column].shut {
                continue;
            }
            let reduced = self.reduced_cost(column);
            if reduced < best {
                best = reduced;
                found = Some(Basic::Column(column));
                if first {
                    return found;
                }
            }
        }
        found
    }

    /// One dual pivot on the most negative value; false when nothing can enter.
    fn dual_step(&mut self) -> bool {
        let rows = self.rows();
        let least = |a: &usize, b: &usize| self.values[*a].total_cmp(&self.values[*b]);
        let Some(leave) = (0..rows).min_by(least) else {
            return false;
        };
        let line: Vec<f64> = self.inverse[leave * rows..(leave + 1) * rows].to_vec();
        let mut best: Option<(f64, f64, Basic)> = None;
        let mut consider = |reduced: f64, step: f64, basic: Basic| {
            // A column with a negative reduced cost waits for the primal steps.
            if step < -PIVOT && reduced >= -1e-7 {
                let ratio = reduced.max(0.0) / -step;
                let better = best.is_none_or(|(least, size, _)| {
                    ratio < least - TINY || ratio <= least + TINY && -step > size
                });
                if better {
                    best = Some((ratio, -step, basic));
                }
            }
        };
        for (row, (&dual, &entry)) in self.duals.iter().zip(&line).enumerate() {
            consider(dual, -entry, Basic::Surplus(row));
            consider(self.penalty - dual, entry, Basic::Lack(row));
        }
        for number in 0..self.columns.len() {
            if !self.within[number] && !self.columns[number].shut {
                let step = self.times(number, &line);
                if step < -PIVOT {
                    consider(self.reduced_cost(number), step, Basic::Column(number));
                }
            }
        }
        let Some((_, _, enter)) = best else {
            return false;
        };
        let through = self.through_inverse(enter);
        self.pivot(leave, enter, &through);
        true
    }

    fn pivot(&mut self, leave: usize, enter: Basic, through: &[f64]) {
        let rows = self.rows();
        let by = through[leave];
        let saved = self.reduced_cost_of(enter);
        if let Basic::Column(column) = self.basis[leave] {
            self.within[column] = false;
        }
        if let Basic::Column(column) = enter {
            self.within[column] = true;
        }
        self.basis[leave] = enter;
        let (start, end) = (leave * rows, (leave + 1) * rows);
        let step = self.values[leave] / by;
        // The inverse is mostly zeros for long: only what is not is worked on.
        let mut filled = Vec::new();
        for (at, entry) in self.inverse[start..end].iter_mut().enumerate() {
            *entry /= by;
            if entry.abs() < NOTHING {
                *entry = 0.0;
            } else {
                filled.push(at);
                self.duals[at] += saved * *entry;
            }
        }
        let line = self.inverse[start..end].to_vec();
        for (row, &times) in through.iter().enumerate() {
            if row == leave || times.abs() < NOTHING {
                continue;
            }
            self.values[row] -= times * step;
            let other = &mut self.inverse[row * rows..(row + 1) * rows];
            if filled.len() * 3 < rows {
                for &at in &filled {
                    other[at] -= times * line[at];
                }
            } else {
                for (entry, own) in other.iter_mut().zip(&line) {
                    *entry -= times * own;
                }
            }
        }
        self.values[leave] = step;
        self.pivots_since_fresh += 1;
        self.drifted = true;
        if self.pivots_since_fresh >= FRESH_AFTER {
            self.invert_afresh();
            self.reckon();
        }
    }

    /// Values and duals from the inverse, without what has drifted since.
    fn reckon(&mut self) {
        self.reckon_values();
        self.reckon_duals();
        self.drifted = false;
    }

    fn reduced_cost_of(&self, basic: Basic) -> f64 {
        match basic {
            Basic::Column(column) => self.reduced_cost(column),
            Basic::Surplus(row) => self.duals[row],
            Basic::Lack(row) => self.penalty - self.duals[row],
        }
    }

    /// Gauss–Jordan elimination with row pivoting.
    fn invert_afresh(&mut self) {
        self.pivots_since_fresh = 0;
        let rows = self.rows();
        let mut matrix = vec![0.0; rows * rows];
        for (at, &basic) in self.basis.iter().enumerate() {
            match basic {
                Basic::Column(column) => {
                    for &(row, entry) in self.entries_of(column) {
                        matrix[row * rows + at] += entry;
                    }
                }
                Basic::Surplus(row) => matrix[row * rows + at] = -1.0,
                Basic::Lack(row) => matrix[row * rows + at] = 1.0,
            }
        }
        let mut fresh = vec![0.0; rows * rows];
        for row in 0..rows {
            fresh[row * rows + row] = 1.0;
        }
        for at in 0..rows {
            let size = |row: &usize| matrix[row * rows + at].abs();
            let Some(best) = (at..rows).max_by(|a, b| size(a).total_cmp(&size(b))) else {
                return;
            };
            if size(&best) < 1e-11 {
                return; // Too near singular to gain anything: keep the inverse there is.
            }
            for column in 0..rows {
                matrix.swap(at * rows + column, best * rows + column);
                fresh.swap(at * rows + column, best * rows + column);
            }
            eliminate(&mut matrix, &mut fresh, rows, at);
        }
        self.inverse = fresh;
    }
}

/// Makes column `at` of the matrix a unit column, doing the same to the other matrix.
fn eliminate(matrix: &mut [f64], fresh: &mut [f64], rows: usize, at: usize) {
    let by = matrix[at * rows + at];
    for column in 0..rows {
        matrix[at * rows + column] /= by;
        fresh[at * rows + column] /= by;
    }
    let line = matrix[at * rows..(at + 1) * rows].to_vec();
    let fresh_line = fresh[at * rows..(at + 1) * rows].to_vec();
    for row in 0..rows {
        let times = matrix[row * rows + at];
        if row == at || times == 0.0 {
            continue;
        }
        for column in 0..rows {
            matrix[row * rows + column] -= times * line[column];
            fresh[row * rows + column] -= times * fresh_line[column];
        }
    }
}

#[cfg(test)]
mod tests;
