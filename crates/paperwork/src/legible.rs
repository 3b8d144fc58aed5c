//! Text made fit to print: whatever was typed, as text, in letters the fonts have.

use crate::kit::KIT;

/// What stands where the fonts have no drawing for a letter.
pub(crate) const UNDRAWN: char = '☐';

/// Makes typed text fit to print.
pub(crate) struct Legible {
    /// Whether some letter had to be replaced by [`UNDRAWN`].
    pub(crate) replaced: bool,
}

impl Legible {
    pub(crate) fn new() -> Self {
        Self { replaced: false }
    }

    /// `text` in one paragraph of printable letters, at most `most` of them.
    ///
    /// Line ends and other control characters become spaces; marks that only steer
    /// direction or joining are dropped; letters without a drawing become [`UNDRAWN`];
    /// runs without a place to break are given some; what is left out is counted.
    pub(crate) fn line(&mut self, text: &str, most: usize) -> String {
        let spaced: String = text
            .chars()
            .map(|c| {
                if c.is_control() || c.is_whitespace() {
                    ' '
                } else {
                    c
                }
            })
            .collect();
        let words: Vec<&str> = spaced.split(' ').filter(|word| !word.is_empty()).collect();
        let drawn = self.drawn(&words.join(" "));
        breakable(&shortened(drawn, most))
    }

    /// A size, with any one-letter fraction written out so that it is set like the rest.
    pub(crate) fn size(&mut self, text: &str) -> String {
        let mut plain = String::with_capacity(text.len());
        for letter in text.chars() {
            match VULGAR.iter().find(|(glyph, _)| *glyph == letter) {
                Some((_, fraction)) => {
                    if plain.ends_with(|last: char| last.is_ascii_digit()) {
                        plain.push(' ');
                    }
                    plain.push_str(fraction);
                }
                None => plain.push(letter),
            }
        }
        self.line(&plain, LONGEST_SIZE)
    }

    /// `text` with every letter that has no drawing replaced, and nothing else changed.
    pub(crate) fn drawn(&mut self, text: &str) -> String {
        let mut out = String::with_capacity(text.len());
        let mut base = None;
        for letter in text.chars().filter(|letter| !steers(*letter)) {
            if letter.is_whitespace() {
                out.push(letter);
                base = None;
            } else if combines(letter) {
                // A mark stays only where one font can draw it together with its letter.
                if base.is_some_and(|base| drawable(&[base, letter])) {
                    out.push(letter);
                } else {
                    self.replaced = true;
                }
            } else if drawable(&[letter]) {
                out.push(letter);
                base = Some(letter);
            } else {
                out.push(UNDRAWN);
                self.replaced = true;
                base = None;
            }
        }
        out
    }
}

/// Longer than any size a person writes; keeps a hostile one inside its column.
const LONGEST_SIZE: usize = 48;

/// Longest run of letters set without a place to break.
const LONGEST_RUN: usize = 14;

const VULGAR: [(char, &str); 7] = [
    ('½', "1/2"),
    ('¼', "1/4"),
    ('¾', "3/4"),
    ('⅛', "1/8"),
    ('⅜', "3/8"),
    ('⅝', "5/8"),
    ('⅞', "7/8"),
];

fn drawable(cluster: &[char]) -> bool {
    KIT.fonts.iter().any(|font| {
        let covered = &font.info().coverage;
        cluster
            .iter()
            .all(|letter| covered.contains(u32::from(*letter)))
    })
}

fn combines(letter: char) -> bool {
    matches!(letter, '\u{300}'..='\u{36f}' | '\u{1ab0}'..='\u{1aff}' | '\u{1dc0}'..='\u{1dff}' | '\u{20d0}'..='\u{20ff}')
}

/// Letters that draw nothing and only steer joining, direction or appearance.
fn steers(letter: char) -> bool {
    matches!(letter,
        '\u{ad}' | '\u{34f}' | '\u{61c}' | '\u{180b}'..='\u{180f}' | '\u{200b}'..='\u{200f}'
        | '\u{2028}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{fe00}'..='\u{fe0f}'
        | '\u{feff}' | '\u{fff9}'..='\u{fffb}' | '\u{e0000}'..='\u{e0fff}')
}

fn shortened(text: String, most: usize) -> String {
    let count = text.chars().count();
    if count <= most {
        return text;
    }
    let kept: String = text.chars().take(most).collect();
    let left = count.saturating_sub(most);
    format!("{kept}… ({left} more letters in the job)")
}

/// `text` with a place to break (a zero-width space) wherever a run grows too long.
fn breakable(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut run = 0;
    for letter in text.chars() {
        if letter == ' ' {
            run = 0;
        } else if run == LONGEST_RUN && !combines(letter) {
            out.push('\u{200b}');
            run = 1;
        } else {
            run += 1;
        }
        out.push(letter);
    }
    out
}

#[cfg(test)]
mod tests;
