//! The nearest of some known words.

/// The word nearest to `typed`, where one is near enough to be meant.
pub fn nearest<'a>(typed: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let likeness = |word: &str| strsim::jaro_winkler(word, typed);
    known
        .into_iter()
        .map(|word| (likeness(word), word))
        .filter(|(likeness, _)| *likeness > LIKE_ENOUGH)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, word)| word)
}

/// Jaro–Winkler likeness above which a word may have been meant.
const LIKE_ENOUGH: f64 = 0.75;
