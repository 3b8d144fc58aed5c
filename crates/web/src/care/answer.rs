//! Answers: rows of worked values, each with the lines behind it.

use conservation::Span;
use conservation::caution::Caution;
use conservation::rules::rough;
use measure::{Angle, Length, Mass, Unit};
use working::{Figure, LineId, Worked, Working};

use super::trust::trust;

/// An answer.
#[derive(Clone, Debug, Default)]
pub struct Answer {
    /// What was found.
    pub groups: Vec<Group>,
    /// What must stand beside it, the worst first.
    pub cautions: Vec<Caution>,
    /// The working every value stands in.
    pub working: Working,
}

/// A heading with its rows.
#[derive(Clone, Debug)]
pub struct Group {
    /// The heading.
    pub heading: String,
    /// Its rows.
    pub rows: Vec<Row>,
}

/// One value.
#[derive(Clone, Debug)]
pub struct Row {
    /// Its name for programs, one of a kind in its answer.
    pub key: String,
    /// Its name for people.
    pub label: String,
    /// What it is.
    pub amount: Amount,
    /// The lines it rests on; none for what is no number.
    pub lines: Vec<LineId>,
    /// How far it can be trusted, and whose it is; empty where its lines say nothing.
    pub trust: String,
}

/// What a row holds.
#[derive(Clone, Debug, PartialEq)]
pub enum Amount {
    /// A length that is exact.
    Length(Length),
    /// A length that is estimated: printed to two significant digits.
    About(Length),
    /// An estimated length, from its least to its most.
    Between(Length, Length),
    /// A mass.
    Mass(Mass),
    /// An angle, printed to a tenth of a degree.
    Angle(Angle),
    /// A figure, printed to three significant digits.
    Figure(Figure),
    /// An uncertain figure.
    Span(Figure, Figure),
    /// Yes or no.
    Yes(bool),
    /// A whole number.
    Count(i64),
    /// Words.
    Words(String),
}

impl Amount {
    /// As people read it, lengths in this unit first.
    pub fn text(&self, unit: Unit) -> String {
        match self {
            Self::Length(length) => length.in_both(unit),
            Self::About(length) => about(*length, unit),
            Self::Between(low, high) => between(*low, *high, unit),
            Self::Mass(mass) => mass.print_both_nearest(),
            Self::Angle(angle) => format!("{:.1}°", angle.approx_degrees()),
            Self::Figure(figure) => said(three(figure.value()), figure.unit()),
            Self::Span(low, high) => {
                let (from, to) = (rough(low.value()), rough(high.value()));
                let words = if from == to {
                    format!("about {from}")
                } else {
                    format!("{from} to {to}")
                };
                said(words, low.unit())
            }
            Self::Yes(yes) => if *yes { "yes" } else { "no" }.to_owned(),
            Self::Count(count) => count.to_string(),
            Self::Words(words) => words.clone(),
        }
    }
}

impl From<Worked<Figure>> for Amount {
    fn from(worked: Worked<Figure>) -> Self {
        Self::Figure(worked.value)
    }
}

impl From<Worked<Mass>> for Amount {
    fn from(worked: Worked<Mass>) -> Self {
        Self::Mass(worked.value)
    }
}

impl From<Worked<Angle>> for Amount {
    fn from(worked: Worked<Angle>) -> Self {
        Self::Angle(worked.value)
    }
}

impl From<Worked<bool>> for Amount {
    fn from(worked: Worked<bool>) -> Self {
        Self::Yes(worked.value)
    }
}

impl Answer {
    /// An answer over a working.
    pub fn of(working: Working) -> Self {
        Self {
            working,
            ..Self::default()
        }
    }

    /// Starts a group.
    pub fn group(&mut self, heading: impl Into<String>) {
        self.groups.push(Group {
            heading: heading.into(),
            rows: Vec::new(),
        });
    }

    /// Adds a row to the last group.
    pub fn row(
        &mut self,
        key: impl Into<String>,
        label: impl Into<String>,
        amount: impl Into<Amount>,
        lines: &[LineId],
    ) {
        let trust = trust(&self.working, lines);
        if self.groups.is_empty() {
            self.group("");
        }
        let last = self.groups.len() - 1;
        self.groups[last].rows.push(Row {
            key: key.into(),
            label: label.into(),
            amount: amount.into(),
            lines: lines.to_vec(),
            trust,
        });
    }

    /// Adds a worked value as it stands.
    pub fn worked<T>(&mut self, key: impl Into<String>, label: impl Into<String>, value: Worked<T>)
    where
        Amount: From<Worked<T>>,
        T: Copy,
    {
        self.row(key, label, Amount::from(value), &[value.line]);
    }

    /// Adds an estimated length.
    pub fn about(
        &mut self,
        key: impl Into<String>,
        label: impl Into<String>,
        length: Worked<Length>,
    ) {
        self.row(key, label, Amount::About(length.value), &[length.line]);
    }

    /// Adds an exact length.
    pub fn length(
        &mut self,
        key: impl Into<String>,
        label: impl Into<String>,
        length: Worked<Length>,
    ) {
        self.row(key, label, Amount::Length(length.value), &[length.line]);
    }

    /// Adds an uncertain figure.
    pub fn span(&mut self, key: impl Into<String>, label: impl Into<String>, span: Span) {
        let (low, high) = (span.low, span.high);
        let amount = Amount::Span(low.value, high.value);
        self.row(key, label, amount, &[low.line, high.line]);
    }

    /// Adds words.
    pub fn words(
        &mut self,
        key: impl Into<String>,
        label: impl Into<String>,
        words: impl Into<String>,
    ) {
        self.row(key, label, Amount::Words(words.into()), &[]);
    }

    /// Adds words that the given authority stands behind.
    pub fn words_of(
        &mut self,
        key: impl Into<String>,
        label: impl Into<String>,
        words: impl Into<String>,
        trust: String,
    ) {
        self.words(key, label, words);
        if let Some(row) = self
            .groups
            .last_mut()
            .and_then(|group| group.rows.last_mut())
        {
            row.trust = trust;
        }
    }
}

/// An estimated length in both families: `0.019 in (0.48 mm)`.
fn about(length: Length, unit: Unit) -> String {
    both(unit, |unit| rough(in_unit(length, unit)))
}

fn between(low: Length, high: Length, unit: Unit) -> String {
    both(unit, |unit| {
        let (from, to) = (rough(in_unit(low, unit)), rough(in_unit(high, unit)));
        if from == to {
            format!("about {from}")
        } else {
            format!("{from} to {to}")
        }
    })
}

fn both(unit: Unit, print: impl Fn(Unit) -> String) -> String {
    let (inch, metric) = (
        format!("{} in", print(Unit::Inch)),
        format!("{} mm", print(Unit::Millimetre)),
    );
    if unit.is_inch_family() {
        format!("{inch} ({metric})")
    } else {
        format!("{metric} ({inch})")
    }
}

/// A length as a plain number of a unit, for what is printed to two digits.
fn in_unit(length: Length, unit: Unit) -> f64 {
    if unit.is_inch_family() {
        length.approx_mm() / 25.4 // geometry: an inch
    } else {
        length.approx_mm()
    }
}

/// A number to three significant digits, nearest; whole numbers in full.
fn three(value: f64) -> String {
    if value == 0.0 {
        return "0".to_owned();
    }
    let size = value.abs().log10().floor();
    let step = 10_f64.powf((size - 2.0).min(0.0)); // geometry: decimals
    Figure::of((value / step).round() * step, "").number_nearest()
}

fn said(number: String, unit: &str) -> String {
    if unit.is_empty() {
        number
    } else {
        format!("{number} {unit}")
    }
}
