//! Decimal numerals of exact ratios, without floats.

/// Most decimals an exact numeral may take; every unit here needs fewer.
const PLACES: usize = 24;

/// The exact decimal numeral of `value / one`, or `None` where it never ends.
///
/// Errors: panics when `one` is not above zero.
pub(crate) fn exact(value: i128, one: i128) -> Option<String> {
    let one = u128::try_from(one)
        .ok()
        .filter(|one| *one > 0)
        .expect("a unit is above zero");
    let size = value.unsigned_abs();
    let mut left = size.checked_rem(one)?;
    let mut decimals = String::new();
    while left != 0 {
        if decimals.len() == PLACES {
            return None;
        }
        let tenfold = left.checked_mul(10)?;
        decimals.push_str(&tenfold.checked_div(one)?.to_string());
        left = tenfold.checked_rem(one)?;
    }
    let sign = if value < 0 { "-" } else { "" };
    let whole = size.checked_div(one)?;
    let point = if decimals.is_empty() { "" } else { "." };
    Some(format!("{sign}{whole}{point}{decimals}"))
}

/// `value / one` as a decimal numeral of `places` decimals, to the nearest, ties away from zero.
///
/// Errors: panics when `one` is not above zero or the number can't be held.
pub(crate) fn nearest(value: i128, one: i128, places: u32) -> String {
    let scale = 10_i128
        .checked_pow(places)
        .expect("few decimals are printed");
    let scaled = ratio_nearest(value.checked_mul(scale).expect("number out of range"), one);
    let size = scaled.unsigned_abs();
    let scale = scale.unsigned_abs();
    let sign = if scaled < 0 { "-" } else { "" };
    let whole = size.checked_div(scale).expect("the scale is above zero");
    if places == 0 {
        return format!("{sign}{whole}");
    }
    let decimals = size.checked_rem(scale).expect("the scale is above zero");
    let width = usize::try_from(places).expect("few decimals are printed");
    format!("{sign}{whole}.{decimals:0width$}")
}

/// `value / one` to the nearest whole number, ties away from zero.
///
/// Errors: panics when `one` is not above zero.
pub(crate) fn ratio_nearest(value: i128, one: i128) -> i128 {
    assert!(one > 0, "a unit is above zero");
    let one = one.unsigned_abs();
    let size = value.unsigned_abs();
    let down = size.checked_div(one).expect("a unit is above zero");
    let left = size.checked_rem(one).expect("a unit is above zero");
    let up = u128::from(left >= one.saturating_sub(left));
    let rounded = i128::try_from(down.saturating_add(up)).expect("number out of range");
    if value < 0 {
        rounded.saturating_neg()
    } else {
        rounded
    }
}
