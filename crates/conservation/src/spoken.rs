//! Lengths and masses as a person reads them in a sentence.

use measure::{Length, Mass, Tape, Toward, Unit};

/// A length as a sentence says it: to 1/64 in and a tenth of a millimetre, the shop's unit first.
///
/// Shape:  what stands on a mark prints as that mark; anything else goes `toward` the side that is safe: up for
///         what is feared, down for what is left. More than nothing never prints as nothing.
/// Units:  whatever family `first` belongs to, the other beside it.
/// Example: 0.8324 mm, up, in an inch shop: `3/64 in (0.9 mm)`.
pub fn said(length: Length, first: Unit, toward: Toward) -> String {
    let tenth = Length::micrometres(100); // geometry: a tenth of a millimetre
    let metric = |toward| {
        let printed = to(length, tenth, toward);
        match printed.is_zero() && !length.is_zero() {
            true => format!("less than {}", tenth.exact_mm()),
            false if first.is_inch_family() => printed.exact_mm(),
            false => printed.exact(first),
        }
    };
    let mark = Tape::SixtyFourths.step();
    let inches = |toward| {
        let printed = to(length, mark, toward);
        if printed.is_zero() && !length.is_zero() {
            format!("less than {}", mark.exact_inches())
        } else {
            printed.exact_inches()
        }
    };
    // What stands on a mark is no reason to push the number beside it on.
    let beside = |step| {
        if to(length, step, Toward::Down) == length {
            Toward::Nearest
        } else {
            toward
        }
    };
    if first.is_inch_family() {
        format!("{} ({})", inches(toward), metric(beside(mark)))
    } else {
        format!("{} ({})", metric(toward), inches(beside(tenth)))
    }
}

fn to(length: Length, step: Length, toward: Toward) -> Length {
    match toward {
        Toward::Nearest => length.nearest_to(step),
        Toward::Down => length.down_to(step),
        Toward::Up => length.up_to(step),
    }
}

/// A mass as a sentence says it, the shop's unit first: `9.3 lb (4.20 kg)` where it measures in inches.
///
/// Units:  kilograms to two decimals, pounds to one, nearest.
pub fn weighs(mass: Mass, first: Unit) -> String {
    if first.is_inch_family() {
        format!(
            "{} ({})",
            mass.print_lb_nearest(1),
            mass.print_kg_nearest(2)
        )
    } else {
        mass.print_both_nearest()
    }
}

#[cfg(test)]
mod tests {
    use measure::{Length, Mass, Toward, Unit};

    use super::{said, weighs};

    /// By hand: 0.8324375 mm is 2.098 of 1/64 in, 1/32 in is 0.79375 mm.
    #[test]
    fn a_sentence_rounds_to_the_safe_side() {
        let gap = Length::micrometres(832);
        assert_eq!(said(gap, Unit::Inch, Toward::Up), "3/64 in (0.9 mm)");
        assert_eq!(said(gap, Unit::Millimetre, Toward::Up), "0.9 mm (3/64 in)");
        assert_eq!(
            said(gap, Unit::Millimetre, Toward::Down),
            "0.8 mm (1/32 in)"
        );
        let mark = Length::inch_fraction(1, 32);
        assert_eq!(said(mark, Unit::Inch, Toward::Down), "1/32 in (0.8 mm)");
        assert_eq!(
            said(Length::mm(3), Unit::Millimetre, Toward::Up),
            "3 mm (1/8 in)"
        );
        let little = Length::micrometres(9);
        assert_eq!(
            said(little, Unit::Inch, Toward::Down),
            "less than 1/64 in (less than 0.1 mm)"
        );
        assert_eq!(
            said(little, Unit::Millimetre, Toward::Up),
            "0.1 mm (1/64 in)"
        );
    }

    #[test]
    fn a_mass_follows_the_shop() {
        let mass = Mass::grams(4200);
        assert_eq!(weighs(mass, Unit::Inch), "9.3 lb (4.20 kg)");
        assert_eq!(weighs(mass, Unit::Millimetre), "4.20 kg (9.3 lb)");
    }
}
