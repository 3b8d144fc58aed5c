//! Whole numbers as people read them.

/// Digits in groups of three: `1 000 000 000`; up to four stand together.
///
/// Source: ISO 80000-1, 7.3.1: a small space, no point and no comma.
pub(crate) fn grouped(number: u128) -> String {
    const GROUP: usize = 3;
    const UNGROUPED: usize = 4;
    let digits = number.to_string();
    if digits.len() <= UNGROUPED {
        return digits;
    }
    let mut out = String::with_capacity(digits.len() * 2);
    for (i, digit) in digits.chars().enumerate() {
        if i > 0 && (digits.len() - i).is_multiple_of(GROUP) {
            out.push(' ');
        }
        out.push(digit);
    }
    out
}

#[cfg(test)]
mod tests {
    use super::grouped;

    #[test]
    fn digits_stand_in_threes() {
        let cases = [
            (0, "0"),
            (1000, "1000"),
            (10_000, "10 000"),
            (1_000_000, "1 000 000"),
            (4_294_967_295, "4 294 967 295"),
        ];
        for (number, expected) in cases {
            assert_eq!(grouped(number), expected);
        }
    }
}
