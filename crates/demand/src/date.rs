//! The day a job is due, as a count of days.

/// Days from 1 January 1970 to a day written `2026-12-04`; none where it is not such a day.
///
/// Source: the Gregorian calendar as ISO 8601 writes it.
pub(crate) fn days(written: &str) -> Option<u32> {
    let mut fields = written.trim().split('-');
    let (year, month, day) = (fields.next()?, fields.next()?, fields.next()?);
    let plain = [(year, 4), (month, 2), (day, 2)]
        .iter()
        .all(|(text, long)| text.len() == *long && text.bytes().all(|b| b.is_ascii_digit()));
    if !plain || fields.next().is_some() {
        return None;
    }
    let year: u32 = year.parse().ok()?;
    let month: usize = month.parse().ok()?;
    let day: u32 = day.parse().ok()?;
    let months = lengths(year);
    let within = year >= FIRST_YEAR && (1..=months.len()).contains(&month);
    if !within || day < 1 || day > months[month - 1] {
        return None;
    }
    let years: u32 = (FIRST_YEAR..year)
        .map(|y| lengths(y).iter().sum::<u32>())
        .sum();
    Some(years + months[..month - 1].iter().sum::<u32>() + day - 1)
}

/// The year days are counted from.
const FIRST_YEAR: u32 = 1970;

/// Days of the months of a year.
fn lengths(year: u32) -> [u32; 12] {
    let divides = |by: u32| year.rem_euclid(by) == 0;
    let leap = divides(4) && (!divides(100) || divides(400));
    let february = if leap { 29 } else { 28 };
    [31, february, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
}

#[cfg(test)]
mod tests;
