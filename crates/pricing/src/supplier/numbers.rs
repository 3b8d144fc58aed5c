//! How a list writes its numbers.

use serde::{Deserialize, Serialize};

/// Which sign starts the decimals and which groups the thousands, named by an example.
///
/// Spaces that do not break a line count as spaces, the curly apostrophe as the straight one.
/// Source: the habits are those of the Unicode CLDR number patterns for en, de, fr, de-CH and
///         en-IN; from memory.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Numbers {
    /// `1,234.50`
    #[default]
    #[serde(rename = "1,234.50")]
    CommaPoint,
    /// `1.234,50`
    #[serde(rename = "1.234,50")]
    PointComma,
    /// `1 234,50`
    #[serde(rename = "1 234,50")]
    SpaceComma,
    /// `1 234.50`
    #[serde(rename = "1 234.50")]
    SpacePoint,
    /// `1'234.50`
    #[serde(rename = "1'234.50")]
    ApostrophePoint,
    /// `12,34,567.50`
    #[serde(rename = "12,34,567.50")]
    LakhPoint,
    /// `1234.50`
    #[serde(rename = "1234.50")]
    Point,
    /// `1234,50`
    #[serde(rename = "1234,50")]
    Comma,
}

/// A number of a list, in plain digits.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Plain {
    /// Below zero.
    pub negative: bool,
    /// Digits before the decimals, at least one.
    pub whole: String,
    /// Digits after, without trailing zeros.
    pub decimals: String,
}

/// Why a text is no number of this habit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum NoNumber {
    /// Something else than digits and the habit's two signs.
    NotDigits,
    /// The signs stand where this habit does not put them.
    Signs,
}

/// The digits between two signs, as the habit groups them.
const GROUP: usize = 3; // geometry: of decimal notation
const PAIR: usize = 2;

impl Numbers {
    /// The example that names it.
    pub const fn example(self) -> &'static str {
        match self {
            Self::CommaPoint => "1,234.50",
            Self::PointComma => "1.234,50",
            Self::SpaceComma => "1 234,50",
            Self::SpacePoint => "1 234.50",
            Self::ApostrophePoint => "1'234.50",
            Self::LakhPoint => "12,34,567.50",
            Self::Point => "1234.50",
            Self::Comma => "1234,50",
        }
    }

    /// The sign that starts the decimals.
    const fn point(self) -> char {
        match self {
            Self::PointComma | Self::SpaceComma | Self::Comma => ',',
            _ => '.',
        }
    }

    /// The sign that groups the thousands.
    const fn group(self) -> Option<char> {
        match self {
            Self::CommaPoint | Self::LakhPoint => Some(','),
            Self::PointComma => Some('.'),
            Self::SpaceComma | Self::SpacePoint => Some(' '),
            Self::ApostrophePoint => Some('\''),
            Self::Point | Self::Comma => None,
        }
    }

    /// Reads a number written in this habit; a group sign may be left out, but not misplaced.
    pub(super) fn read(self, text: &str) -> Result<Plain, NoNumber> {
        let text: String = text.trim().chars().map(plain_sign).collect();
        let (negative, text) = signed(&text);
        if text.is_empty()
            || !text
                .chars()
                .all(|c| c.is_ascii_digit() || SIGNS.contains(&c))
        {
            return Err(NoNumber::NotDigits);
        }
        if !text.contains(|c: char| c.is_ascii_digit()) {
            return Err(NoNumber::NotDigits);
        }
        let (whole, decimals) = match text.split_once(self.point()) {
            Some((whole, decimals)) => (whole, decimals),
            None => (text, ""),
        };
        if !decimals.bytes().all(|b| b.is_ascii_digit()) {
            return Err(NoNumber::Signs);
        }
        let whole = self.ungrouped(whole).ok_or(NoNumber::Signs)?;
        let whole = whole.trim_start_matches('0');
        Ok(Plain {
            negative,
            whole: if whole.is_empty() { "0" } else { whole }.to_owned(),
            decimals: decimals.trim_end_matches('0').to_owned(),
        })
    }

    /// The digits before the decimals without their signs; none where a sign is misplaced.
    fn ungrouped(self, whole: &str) -> Option<String> {
        let groups: Vec<&str> = match self.group() {
            Some(sign) => whole.split(sign).collect(),
            None => vec![whole],
        };
        let digits = |text: &&str| text.bytes().all(|b| b.is_ascii_digit());
        if !groups.iter().all(digits) {
            return None;
        }
        let (first, rest) = groups.split_first()?;
        if let Some((last, middle)) = rest.split_last() {
            let inner = if self == Self::LakhPoint { PAIR } else { GROUP };
            let placed = last.len() == GROUP
                && middle.iter().all(|group| group.len() == inner)
                && (1..=inner).contains(&first.len());
            if !placed {
                return None;
            }
        }
        Some(groups.concat())
    }
}

/// Every sign that any habit has.
const SIGNS: [char; 4] = ['.', ',', ' ', '\''];

fn plain_sign(c: char) -> char {
    match c {
        '\u{a0}' | '\u{202f}' | '\u{2009}' | '\t' => ' ',
        '\u{2019}' => '\'',
        '\u{2212}' => '-',
        other => other,
    }
}

/// The sign of a number: a minus before or after it, or brackets around it.
fn signed(text: &str) -> (bool, &str) {
    let bracketed = text
        .strip_prefix('(')
        .and_then(|rest| rest.strip_suffix(')'));
    let minus = text.strip_prefix('-').or_else(|| text.strip_suffix('-'));
    match bracketed.or(minus) {
        Some(rest) => (true, rest.trim()),
        None => (false, text.strip_prefix('+').unwrap_or(text)),
    }
}

impl Plain {
    /// With a point, as every reader of this program takes it.
    pub fn pointed(&self) -> String {
        let sign = if self.negative { "-" } else { "" };
        let point = if self.decimals.is_empty() { "" } else { "." };
        format!("{sign}{}{point}{}", self.whole, self.decimals)
    }

    /// Whether it is nothing.
    pub fn is_zero(&self) -> bool {
        self.whole == "0" && self.decimals.is_empty()
    }

    /// Whether it has more decimals than a price.
    pub fn is_too_fine(&self) -> bool {
        self.decimals.len() > PLACES
    }

    /// In millionths, the number first rounded half up to so many decimals (at most six); none where
    /// it is too large.
    pub fn millionths_to(&self, decimals: usize) -> Option<u64> {
        let kept = decimals.min(PLACES);
        let up = self
            .decimals
            .as_bytes()
            .get(kept)
            .is_some_and(|digit| *digit >= HALF);
        let told: String = self.decimals.chars().take(kept).collect();
        let digits = format!("{}{told:0<kept$}", self.whole);
        let units: u64 = digits.parse().ok()?;
        let units = units.checked_add(u64::from(up))?;
        let left = u32::try_from(PLACES - kept).ok()?;
        units.checked_mul(TEN.checked_pow(left)?)
    }
}

/// Decimals of a price.
pub(super) const PLACES: usize = 6; // geometry: a price is held in millionths
const TEN: u64 = 10; // geometry: of decimal notation
const HALF: u8 = b'5';
