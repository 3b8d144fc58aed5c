//! What a plan's whole numbers stand for, and how they are printed.

use measure::{Area, Length, Rounding, Size, Tape, Toward, Unit};

/// What one count of a plan is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Counting {
    /// A number of some unit, printed as it is.
    Plain {
        /// What the unit is called; may be empty.
        unit: String,
    },
    /// A length.
    Lengths {
        /// How long one count is.
        each: Length,
        /// What the bench reads it on.
        tape: Tape,
        /// To which of its marks a size that lies between two is rounded.
        toward: Toward,
    },
}

/// A number, or width × height, as the tape shows it.
///
/// Shape:  `text` without the unit, which stands after it; `beside` with its own.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shown {
    /// At a mark of the tape.
    pub text: String,
    /// What `text` hides: `set to 300.3 mm`, `exactly 300.25 mm, set to 300.3 mm`; nothing where it
    /// is the whole truth.
    pub beside: Option<String>,
}

impl Counting {
    /// Inches or millimetres of a length, or the plain unit.
    pub fn unit(&self) -> &str {
        match self {
            Self::Plain { unit } => unit,
            Self::Lengths { tape, .. } => tape.unit().symbol(),
        }
    }

    /// A number as the tool is set by it.
    ///
    /// Errors: panics beyond 1000 m; a cut sheet with such a number is refused before.
    pub fn shown(&self, count: u64) -> Shown {
        self.read_off(&[count])
    }

    /// Width × height as the tool is set.
    pub fn shown_size(&self, (width, height): (u64, u64)) -> Shown {
        self.read_off(&[width, height])
    }

    /// A piece that is cut at a count not less than its true length.
    pub fn shown_length(&self, count: u64, exact: Option<Length>) -> Shown {
        self.piece(&[count], exact.as_slice())
    }

    /// A piece that is cut at counts not less than its true width and height.
    pub fn shown_piece(&self, (width, height): (u64, u64), exact: Option<Size>) -> Shown {
        let exact = exact.map(|exact| [exact.width, exact.height]);
        self.piece(
            &[width, height],
            exact.as_ref().map_or(&[], |sides| &sides[..]),
        )
    }

    /// What is kept, one side or two: never said larger than it is.
    pub fn kept(&self, sides: &[u64]) -> Shown {
        match self {
            Self::Plain { .. } => self.read_off(sides),
            Self::Lengths { tape, .. } => Shown::kept(&self.lengths(sides), *tape, "at least"),
        }
    }

    fn read_off(&self, counts: &[u64]) -> Shown {
        match self {
            Self::Plain { .. } => Shown {
                text: joined(counts.iter().map(u64::to_string)),
                beside: None,
            },
            Self::Lengths { tape, toward, .. } => {
                let sides = self.lengths(counts);
                let (text, all) = marks(&sides, *tape, *toward);
                let beside = (!all).then(|| format!("set to {}", together(&sides, tape.unit())));
                Shown { text, beside }
            }
        }
    }

    fn piece(&self, counts: &[u64], exact: &[Length]) -> Shown {
        let read = self.read_off(counts);
        let Self::Lengths { tape, toward, .. } = self else {
            return read;
        };
        let (unit, set) = (tape.unit(), self.lengths(counts));
        let exact = if exact.is_empty() { &set } else { exact };
        // The mark is the true size only where it is that of the exact one too.
        if marks(exact, *tape, *toward) == (read.text.clone(), true) {
            return Shown {
                beside: None,
                ..read
            };
        }
        let mut beside = format!("exactly {}", together(exact, unit));
        if read.beside.is_some() && exact != set {
            beside = format!("{beside}, set to {}", together(&set, unit));
        }
        Shown {
            beside: Some(beside),
            ..read
        }
    }

    /// A number with its unit, exact, and a length in the other family of units too.
    pub fn exact(&self, count: u64) -> String {
        match self {
            Self::Plain { .. } => self.with_unit(&count.to_string()),
            Self::Lengths { tape, .. } => self.length(count).in_both(tape.unit()),
        }
    }

    /// Width × height, exact.
    pub fn exact_size(&self, (width, height): (u64, u64)) -> String {
        match self {
            Self::Plain { .. } => self.with_unit(&format!("{width} × {height}")),
            Self::Lengths { tape, .. } => together(&self.lengths(&[width, height]), tape.unit()),
        }
    }

    /// The true length of a piece where it is known, else of its count; in both families of units.
    pub fn true_length(&self, count: u64, exact: Option<Length>) -> String {
        match (self, exact) {
            (Self::Lengths { tape, .. }, Some(exact)) => exact.in_both(tape.unit()),
            _ => self.exact(count),
        }
    }

    /// The true size of a piece where it is known, else of its counts.
    pub fn true_size(&self, size: (u64, u64), exact: Option<Size>) -> String {
        match (self, exact) {
            (Self::Lengths { tape, .. }, Some(exact)) => {
                together(&[exact.width, exact.height], tape.unit())
            }
            _ => self.exact_size(size),
        }
    }

    /// A text with the unit after it, where there is one.
    pub fn with_unit(&self, text: &str) -> String {
        format!("{text} {}", self.unit()).trim_end().to_owned()
    }

    /// Whether a number can be printed.
    pub(crate) fn holds(&self, count: u64) -> bool {
        match self {
            Self::Plain { .. } => true,
            Self::Lengths { each, .. } => {
                let quanta = i128::from(count) * i128::from(each.quanta());
                each.is_positive() && quanta <= i128::from(Length::LIMIT.quanta())
            }
        }
    }

    /// Millimetres of one count; none where nobody knows.
    pub(crate) fn millimetres(&self) -> Option<f64> {
        match self {
            Self::Plain { .. } => None,
            Self::Lengths { each, .. } => Some(each.approx_mm()),
        }
    }

    /// Stretches of stock in words, and the unit they are all in: exact, and without any limit.
    pub(crate) fn stretches(&self, counts: &[u128]) -> Option<(Vec<String>, String)> {
        let Self::Lengths { each, tape, .. } = self else {
            let said = counts.iter().map(u128::to_string);
            return Some((said.collect(), self.unit().to_owned()));
        };
        let one = |count: &u128| {
            let quanta = i64::try_from(*count).ok()?.checked_mul(each.quanta())?;
            Some(Length::from_quanta(quanta))
        };
        let lengths: Option<Vec<Length>> = counts.iter().map(one).collect();
        let (said, unit) = in_one_unit(&lengths?, tape.unit());
        Some((said, unit.to_owned()))
    }

    /// Areas in words, rounded so that the printed numbers add up as the true ones do.
    ///
    /// Units: square inches to 0.1, square metres to 0.0001; plain numbers exact.
    pub(crate) fn areas(&self, areas: &[u128]) -> Option<Vec<String>> {
        let Self::Lengths { each, tape, .. } = self else {
            return Some(areas.iter().map(u128::to_string).collect());
        };
        let square = Area::of(*each, *each).square_quanta().unsigned_abs();
        let (one, places) = if tape.unit().is_inch_family() {
            (Area::SQUARE_INCH.square_quanta().unsigned_abs() / 10, 1)
        } else {
            (
                Area::SQUARE_METRE.square_quanta().unsigned_abs() / 10_000,
                4,
            )
        };
        let quanta: Option<Vec<u128>> = areas.iter().map(|area| area.checked_mul(square)).collect();
        let print = |(steps, area): (u128, &u128)| {
            if *area == 0 {
                return "0".to_owned();
            }
            let scale = 10_u128.pow(places);
            let width = usize::try_from(places).unwrap_or_default();
            format!("{}.{:0width$}", steps / scale, steps % scale)
        };
        let steps = allotted(&quanta?, one)?;
        Some(steps.into_iter().zip(areas).map(print).collect())
    }

    /// What [`areas`](Self::areas) are in.
    pub(crate) fn area_unit(&self) -> String {
        match self {
            Self::Plain { unit } if unit.is_empty() => String::new(),
            Self::Plain { unit } => format!("sq {unit}"),
            Self::Lengths { tape, .. } if tape.unit().is_inch_family() => "sq in".to_owned(),
            Self::Lengths { .. } => "m²".to_owned(),
        }
    }

    fn length(&self, count: u64) -> Length {
        match self {
            Self::Plain { .. } => Length::ZERO,
            Self::Lengths { each, .. } => {
                let count = i64::try_from(count).expect("checked before anything is printed");
                each.times(count)
            }
        }
    }

    fn lengths(&self, counts: &[u64]) -> Vec<Length> {
        counts.iter().map(|count| self.length(*count)).collect()
    }
}

impl Shown {
    /// What is kept, one side or two: at the tape's marks below, and after `word` what it is where
    /// that is more.
    pub fn kept(sides: &[Length], tape: Tape, word: &str) -> Self {
        let (text, all) = marks(sides, tape, Toward::Down);
        let beside = (!all).then(|| format!("{word} {}", together(sides, tape.unit())));
        Self { text, beside }
    }

    /// With what it hides in brackets: `300 mm (exactly 300.25 mm)`; `unit` may be empty.
    pub fn in_full(&self, unit: &str) -> String {
        let text = format!("{} {unit}", self.text);
        match &self.beside {
            Some(beside) => format!("{} ({beside})", text.trim_end()),
            None => text.trim_end().to_owned(),
        }
    }

    /// Short enough for a drawing: `≈` before it where it is not the whole truth.
    pub fn drawn(&self) -> String {
        match self.beside {
            None => self.text.clone(),
            Some(_) => format!("≈ {}", self.text),
        }
    }
}

/// Sides at a tape's marks, and whether all of them lie on one.
fn marks(sides: &[Length], tape: Tape, toward: Toward) -> (String, bool) {
    let printed: Vec<_> = sides
        .iter()
        .map(|side| side.on_tape(tape, toward))
        .collect();
    let all = printed.iter().all(|side| side.rounding == Rounding::Exact);
    let figures = printed.iter().map(|side| bare(&side.text, tape.unit()));
    (joined(figures), all)
}

/// Lengths exactly, their unit once: `300.25 × 200 mm`.
///
/// Shape:  millimetres throughout where one of them is no fraction of an inch.
pub fn together(lengths: &[Length], unit: Unit) -> String {
    let (figures, unit) = in_one_unit(lengths, unit);
    format!("{} {unit}", joined(figures.into_iter()))
}

/// The figures of lengths, and the unit that is that of all of them.
fn in_one_unit(lengths: &[Length], unit: Unit) -> (Vec<String>, &'static str) {
    let figures = |unit: Unit| {
        let said = lengths.iter().map(|length| length.exact(unit));
        said.collect::<Vec<String>>()
    };
    let own = figures(unit);
    let (said, unit) = if own.iter().all(|text| text.ends_with(unit.symbol())) {
        (own, unit)
    } else {
        (figures(Unit::Millimetre), Unit::Millimetre)
    };
    let bare = said.iter().map(|text| bare(text, unit)).collect();
    (bare, unit.symbol())
}

fn bare(text: &str, unit: Unit) -> String {
    text.strip_suffix(unit.symbol())
        .map_or(text, str::trim_end)
        .to_owned()
}

fn joined(figures: impl Iterator<Item = String>) -> String {
    figures.collect::<Vec<_>>().join(" × ")
}

/// Parts in whole steps: their sum is rounded to the nearest step, each part down, and the steps
/// still wanting go to the parts that lost most.
pub(crate) fn allotted(parts: &[u128], step: u128) -> Option<Vec<u128>> {
    let total = parts
        .iter()
        .try_fold(0_u128, |sum, part| sum.checked_add(*part))?;
    let nearest = total.checked_add(step / 2)? / step;
    let mut steps: Vec<u128> = parts.iter().map(|part| part / step).collect();
    let given: u128 = steps.iter().sum();
    let mut order: Vec<usize> = (0..parts.len()).collect();
    order.sort_by_key(|part| (std::cmp::Reverse(parts[*part] % step), *part));
    let wanting = usize::try_from(nearest.saturating_sub(given)).ok()?;
    for part in order.into_iter().take(wanting) {
        steps[part] += 1;
    }
    Some(steps)
}
