//! What a plan's whole numbers stand for, and how they are printed.

use measure::{Area, Length, Rounding, Tape, Toward};

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

/// A number as the tool is set by it.
///
/// Shape:  without the unit, which stands beside it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shown {
    /// At a mark of the tape.
    pub text: String,
    /// The exact value, where `text` is rounded.
    pub exact: Option<String>,
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
        match self {
            Self::Plain { .. } => Shown {
                text: count.to_string(),
                exact: None,
            },
            Self::Lengths { tape, toward, .. } => {
                let length = self.length(count);
                let printed = length.on_tape(*tape, *toward);
                let rounded = printed.rounding != Rounding::Exact;
                Shown {
                    text: self.bare(&printed.text),
                    exact: rounded.then(|| self.bare(&length.exact(tape.unit()))),
                }
            }
        }
    }

    /// Width × height as the tool is set, the unit after it.
    pub fn shown_size(&self, (width, height): (u64, u64)) -> Shown {
        let (across, up) = (self.shown(width), self.shown(height));
        let join = |a: &str, b: &str| self.with_unit(&format!("{a} × {b}"));
        let exact = (across.exact.is_some() || up.exact.is_some()).then(|| {
            let whole = |shown: &Shown| shown.exact.clone().unwrap_or_else(|| shown.text.clone());
            join(&whole(&across), &whole(&up))
        });
        Shown {
            text: join(&across.text, &up.text),
            exact,
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
        let one = |count: u64| match self {
            Self::Plain { .. } => count.to_string(),
            Self::Lengths { tape, .. } => self.bare(&self.length(count).exact(tape.unit())),
        };
        self.with_unit(&format!("{} × {}", one(width), one(height)))
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

    /// A stretch of stock, or several, in words: exact, and without any limit.
    pub(crate) fn stretches(&self, counts: &[u128]) -> Option<Vec<String>> {
        let one = |count: &u128| match self {
            Self::Plain { .. } => Some(count.to_string()),
            Self::Lengths { each, tape, .. } => {
                let quanta = i64::try_from(*count).ok()?.checked_mul(each.quanta())?;
                Some(self.bare(&Length::from_quanta(quanta).exact(tape.unit())))
            }
        };
        counts.iter().map(one).collect()
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

    fn bare(&self, text: &str) -> String {
        text.strip_suffix(self.unit())
            .map_or(text, str::trim_end)
            .to_owned()
    }
}

impl Shown {
    /// Short enough for a drawing: `≈` before it where it is rounded.
    pub fn drawn(&self) -> String {
        match self.exact {
            None => self.text.clone(),
            Some(_) => format!("≈ {}", self.text),
        }
    }
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
