//! The code and the hint of each refusal.

use super::{ReadError, Refusal, Wanted};

impl ReadError {
    /// A stable name of the reason, for programs: `measure.fraction.no_bottom`.
    pub fn code(&self) -> &'static str {
        match self.refusal() {
            Refusal::Empty => "measure.empty",
            Refusal::TooLong { .. } => "measure.too_long",
            Refusal::Stray { .. } => "measure.stray",
            Refusal::NoNumber { .. } => "measure.number.missing",
            Refusal::Separators { .. } => "measure.number.separators",
            Refusal::Comma { .. } => "measure.number.comma",
            Refusal::Apostrophe { .. } => "measure.number.apostrophe",
            Refusal::Exponent { .. } => "measure.number.exponent",
            Refusal::Pair { .. } => "measure.number.pair",
            Refusal::NoBottom => "measure.fraction.no_bottom",
            Refusal::NoTop => "measure.fraction.no_top",
            Refusal::ZeroBottom => "measure.fraction.zero_bottom",
            Refusal::FractionOfDecimals { .. } => "measure.fraction.decimals",
            Refusal::LongFraction { .. } => "measure.fraction.long",
            Refusal::SecondBottom => "measure.fraction.second_bottom",
            Refusal::Improper { .. } => "measure.fraction.improper",
            Refusal::MixedImproper { .. } => "measure.fraction.mixed_improper",
            Refusal::DecimalAndFraction { .. } => "measure.fraction.after_decimals",
            Refusal::Hyphen { .. } => "measure.hyphen",
            Refusal::Range { .. } => "measure.hyphen.range",
            Refusal::UnknownUnit { .. } => "measure.unit.unknown",
            Refusal::UnitOrder { .. } => "measure.unit.order",
            Refusal::UnitMissing { .. } => "measure.unit.missing",
            Refusal::TwoLengths { .. } => "measure.length.two",
            Refusal::OneLength => "measure.size.one",
            Refusal::ThreeLengths => "measure.size.three",
            Refusal::NegativeSide { .. } => "measure.size.negative",
            Refusal::OutOfRange { .. } => "measure.range",
            Refusal::NotHeld { .. } => "measure.not_held",
            Refusal::NoCurrency { .. } => "measure.money.no_currency",
            Refusal::UnknownCurrency { .. } => "measure.money.currency",
            Refusal::SmallerThanMinor { .. } => "measure.money.decimals",
        }
    }

    /// What to type instead.
    pub fn hint(&self) -> String {
        let readings = self.readings();
        if let Some((last, first)) = readings.split_last() {
            let listed = if first.is_empty() {
                String::new()
            } else {
                format!("{} or ", first.join(", "))
            };
            return format!("type {listed}{last}");
        }
        match self.refusal() {
            Refusal::UnknownUnit {
                near: Some(near), ..
            } => format!("type {near}"),
            Refusal::UnknownUnit {
                near: None, wanted, ..
            } => format!("type {}", units(*wanted)),
            Refusal::UnitOrder { first, second } if first == second => {
                format!("type one number before {first}")
            }
            Refusal::UnitOrder { first, second } => format!("type the {second} before the {first}"),
            Refusal::TwoLengths { .. } => "type one length, such as 16 in".into(),
            Refusal::NegativeSide { .. } => "type it without the minus sign".into(),
            Refusal::OutOfRange { limit, .. } => {
                format!("type a number within {limit}, or check its unit")
            }
            Refusal::Exponent { .. } => {
                format!("write the number out: {}", examples(self.wanted()))
            }
            Refusal::UnknownCurrency { .. } => "type a code such as USD, EUR or JPY".into(),
            Refusal::SmallerThanMinor {
                places: 0, code, ..
            } => format!("type a whole number of {code}"),
            Refusal::SmallerThanMinor { places, .. } => format!("type at most {places} decimals"),
            _ => format!("type {}", examples(self.wanted())),
        }
    }
}

const fn examples(wanted: Wanted) -> &'static str {
    match wanted {
        Wanted::Length => "16 7/8, 16.875 or 428.6 mm",
        Wanted::Size => "8 x 10, 8 1/2 x 11 or 200 x 250 mm",
        Wanted::Mass => "5 lb 4 oz, 2.4 kg or 850 g",
        Wanted::Angle => "45, 22.5 or 22 1/2 deg",
        Wanted::Money => "12.50 USD",
    }
}

const fn units(wanted: Wanted) -> &'static str {
    match wanted {
        Wanted::Length | Wanted::Size => "in, ft, mm, cm or m",
        Wanted::Mass => "lb, oz, kg or g",
        Wanted::Angle => "deg, or no unit",
        Wanted::Money => "a currency code such as USD",
    }
}
