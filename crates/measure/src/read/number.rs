//! Points and commas: where the decimals of a number start.

/// A number in plain digits.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Plain {
    /// Digits before the point, without leading zeros; empty for none.
    pub whole: String,
    /// Digits after it, without trailing zeros.
    pub decimals: String,
}

/// What a typed number may be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Reading {
    /// One number.
    One(Plain),
    /// Either of two: the comma starts decimals, or groups thousands.
    Two { decimal: Plain, grouped: Plain },
    /// None.
    Neither,
}

impl Plain {
    fn new(whole: &str, decimals: &str) -> Self {
        let whole = whole
            .chars()
            .filter(char::is_ascii_digit)
            .collect::<String>();
        Self {
            whole: whole.trim_start_matches('0').to_owned(),
            decimals: decimals.trim_end_matches('0').to_owned(),
        }
    }

    /// Whether there are no decimals.
    pub fn is_whole(&self) -> bool {
        self.decimals.is_empty()
    }

    /// The number as printed, with a point.
    pub fn print(&self) -> String {
        let whole = if self.whole.is_empty() {
            "0"
        } else {
            &self.whole
        };
        let point = if self.decimals.is_empty() { "" } else { "." };
        format!("{whole}{point}{}", self.decimals)
    }
}

/// Reads digits with points and commas.
///
/// One point is decimal. One comma is decimal too, unless three digits follow one to three that
/// don't start with zero: then it may also group thousands. Two or more alike group thousands, and
/// where both occur the last is decimal.
pub(super) fn read(typed: &str) -> Reading {
    let points = typed.matches('.').count();
    let commas = typed.matches(',').count();
    let last = typed.rfind(['.', ',']);
    let Some(last) = last else {
        return Reading::One(Plain::new(typed, ""));
    };
    let (whole, tail) = typed.split_at(last);
    let decimals = tail.get(1..).unwrap_or("");
    match (points, commas) {
        (1, 0) => Reading::One(Plain::new(whole, decimals)),
        (0, 1) if decimals.is_empty() => Reading::Neither,
        (0, 1) => {
            let decimal = Plain::new(whole, decimals);
            if is_grouped(typed, ',') {
                Reading::Two {
                    decimal,
                    grouped: Plain::new(typed, ""),
                }
            } else {
                Reading::One(decimal)
            }
        }
        (0, _) => all_groups(typed, ','),
        (_, 0) => all_groups(typed, '.'),
        (1, _) if tail.starts_with('.') && is_grouped(whole, ',') && !decimals.is_empty() => {
            Reading::One(Plain::new(whole, decimals))
        }
        (_, 1) if tail.starts_with(',') && is_grouped(whole, '.') && !decimals.is_empty() => {
            Reading::One(Plain::new(whole, decimals))
        }
        _ => Reading::Neither,
    }
}

fn all_groups(typed: &str, separator: char) -> Reading {
    if is_grouped(typed, separator) {
        Reading::One(Plain::new(typed, ""))
    } else {
        Reading::Neither
    }
}

/// Whether one to three digits, the first not zero, lead groups of exactly three.
fn is_grouped(typed: &str, separator: char) -> bool {
    let mut groups = typed.split(separator);
    let first = groups.next().unwrap_or("");
    (1..=3).contains(&first.len())
        && !first.starts_with('0')
        && groups.all(|group| group.len() == 3 && group.bytes().all(|b| b.is_ascii_digit()))
}
