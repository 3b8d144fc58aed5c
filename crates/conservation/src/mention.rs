//! Whether free words name a thing, and do not say that it is gone.

/// Words that say a thing is not there, before it or after it in the same clause.
const BEFORE: [&str; 8] = [
    "no", "not", "never", "without", "non", "instead", "replaced", "removed",
];
const AFTER: [&str; 5] = ["removed", "free", "replaced", "lifted", "gone"];

/// The first of these phrases that the words name, with what it stands for.
///
/// Shape:  any case, whole words, the phrases in lower case with single spaces. A clause that says no,
///         without or removed names nothing; one that says something was not removed does.
pub(crate) fn named<T: Copy>(words: &str, phrases: &[(&str, T)]) -> Option<T> {
    let words = words.to_lowercase();
    let clauses = words.split([',', ';', '.', '(', ')', '/', '+', '&', '\n']);
    clauses
        .flat_map(split_at_joins)
        .find_map(|clause| of_clause(&clause, phrases))
}

/// A clause as its words, parted where another begins: `old tape removed and white glue`.
fn split_at_joins(clause: &str) -> Vec<Vec<&str>> {
    let words = clause.split(|letter: char| !letter.is_alphanumeric());
    let words: Vec<&str> = words.filter(|word| !word.is_empty()).collect();
    let parts = words.split(|word| ["and", "but", "then", "with"].contains(word));
    parts.map(<[&str]>::to_vec).collect()
}

fn of_clause<T: Copy>(clause: &[&str], phrases: &[(&str, T)]) -> Option<T> {
    phrases.iter().find_map(|(phrase, kind)| {
        let phrase: Vec<&str> = phrase.split(' ').collect();
        let mut places = clause.windows(phrase.len()).enumerate();
        let found = places.find(|(at, found)| {
            let (before, after) = (&clause[..*at], &clause[at + phrase.len()..]);
            *found == phrase && !is_absent(before, after)
        });
        found.map(|_| *kind)
    })
}

/// Whether the words round a thing say that it is not there.
fn is_absent(before: &[&str], after: &[&str]) -> bool {
    let after = match after {
        // “not removed”, “never lifted”: it is there.
        [.., no, gone] if ["not", "never"].contains(no) && AFTER.contains(gone) => return false,
        after => after,
    };
    before.iter().any(|word| BEFORE.contains(word)) || after.iter().any(|word| AFTER.contains(word))
}
