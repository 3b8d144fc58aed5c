//! Sizes set large: width × height, in the shop's tape, with real fractions and the other unit below.

use maud::{Markup, html};
use measure::{Length, Rounding, Size, Tape, Toward, Unit};

/// What sizes are printed for.
#[derive(Clone, Copy)]
pub(super) struct Print {
    pub tape: Tape,
}

impl Print {
    fn unit(self) -> Unit {
        self.tape.unit()
    }

    /// The figures alone, as the tape shows them.
    fn figures(self, length: Length, toward: Toward) -> String {
        let text = length.on_tape(self.tape, toward).text;
        text.strip_suffix(self.unit().symbol())
            .map_or(text.as_str(), str::trim_end)
            .to_owned()
    }

    fn is_exact(self, length: Length, toward: Toward) -> bool {
        length.on_tape(self.tape, toward).rounding == Rounding::Exact
    }

    /// The length in the other family, as text.
    fn other(self, length: Length) -> String {
        if self.unit().is_inch_family() {
            length.exact_mm()
        } else {
            length
                .on_tape(Tape::SixtyFourths, Toward::Nearest)
                .to_string()
        }
    }

    /// `16 7/8 in`, or where the tape rounds it, `16 7/8 in (exactly 428.6 mm)`.
    pub fn words(self, length: Length) -> String {
        let printed = length.on_tape(self.tape, Toward::Nearest);
        if printed.rounding == Rounding::Exact {
            printed.text
        } else {
            format!("{} (exactly {})", printed.text, length.exact(self.unit()))
        }
    }

    /// The figures without their unit, for a column whose heading names it.
    pub fn bare(self, length: Length) -> String {
        let figures = self.figures(length, Toward::Nearest);
        if self.is_exact(length, Toward::Nearest) {
            figures
        } else {
            format!("{figures} (exactly {})", length.exact(self.unit()))
        }
    }

    /// The unit all figures are in.
    pub fn symbol(self) -> &'static str {
        self.unit().symbol()
    }

    /// One length.
    pub fn length(self, length: Length, toward: Toward) -> Markup {
        html! {
            span.figure { (fraction(&self.figures(length, toward))) " " span.unit { (self.unit().symbol()) } }
            (beside(&length.exact(self.unit()), &self.other(length), self.is_exact(length, toward)))
        }
    }

    /// Width × height.
    pub fn size(self, size: Size, toward: Toward) -> Markup {
        let exact = self.is_exact(size.width, toward) && self.is_exact(size.height, toward);
        let unit = self.unit().symbol();
        let both = [size.width, size.height];
        let (exactly, other) = (
            together(both.map(|length| length.exact(self.unit()))),
            together(both.map(|length| self.other(length))),
        );
        html! {
            span.figure {
                (fraction(&self.figures(size.width, toward))) " × " (fraction(&self.figures(size.height, toward)))
                " " span.unit { (unit) }
            }
            (beside(&exactly, &other, exact))
        }
    }
}

/// The exact size where the tape rounds it, and the size in the other unit.
fn beside(exactly: &str, other: &str, exact: bool) -> Markup {
    html! {
        span.beside {
            @if !exact { "exactly " (exactly) @if exactly != other { " · " } }
            @if exact || exactly != other { (other) }
        }
    }
}

/// `619.125 × 676.275 mm`: a unit that both have is said once.
fn together([width, height]: [String; 2]) -> String {
    for unit in [" mm", " in"] {
        if let (Some(width), true) = (width.strip_suffix(unit), height.ends_with(unit)) {
            return format!("{width} × {height}");
        }
    }
    format!("{width} × {height}")
}

/// A number with its fraction set as one; read aloud and copied it stays `16 7/8`.
pub(super) fn fraction(number: &str) -> Markup {
    let (whole, part) = match number.rsplit_once(' ') {
        Some((whole, part)) => (whole, part),
        None => ("", number),
    };
    html! {
        @if let Some((top, bottom)) = part.split_once('/') {
            @if !whole.is_empty() { (whole) " " }
            span.fraction { span.over { (top) } "/" span.under { (bottom) } }
        } @else {
            (number)
        }
    }
}
