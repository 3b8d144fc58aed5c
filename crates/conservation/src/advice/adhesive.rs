//! What the words for an adhesive or a tape say of it.

use crate::mention::named;

/// What no source calls suitable on art.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Adhesive {
    /// Sticks when pressed: tapes, dots, sprays.
    Pressure,
    /// Sticks when wetted, and stays.
    Gummed,
    /// Sets and no longer comes off: white glue, hot glue, rubber cement.
    Glue,
}

impl Adhesive {
    /// What is allowed, in words, and the source of it.
    pub(super) const fn allowed(self) -> (&'static str, &'static str) {
        match self {
            Self::Pressure => (
                "no pressure-sensitive adhesive is suitable for hinging",
                "M3",
            ),
            Self::Gummed => ("gummed tape only joins boards", "M3"),
            Self::Glue => (
                "a glue that sets for good, or ages and stains, stays off the art; hinges take starch paste",
                "CP",
            ),
        }
    }
}

/// Phrases, word by word, each the mark of its kind; the first that is found counts.
const PHRASES: [(&str, Adhesive); 33] = [
    ("gummed", Adhesive::Gummed),
    ("rubber cement", Adhesive::Glue),
    ("contact cement", Adhesive::Glue),
    ("contact adhesive", Adhesive::Glue),
    ("pva", Adhesive::Glue),
    ("polyvinyl", Adhesive::Glue),
    ("white glue", Adhesive::Glue),
    ("wood glue", Adhesive::Glue),
    ("hot glue", Adhesive::Glue),
    ("hot melt", Adhesive::Glue),
    ("glue gun", Adhesive::Glue),
    ("super glue", Adhesive::Glue),
    ("superglue", Adhesive::Glue),
    ("cyanoacrylate", Adhesive::Glue),
    ("epoxy", Adhesive::Glue),
    ("silicone", Adhesive::Glue),
    ("rubber", Adhesive::Glue),
    ("craft glue", Adhesive::Glue),
    ("school glue", Adhesive::Glue),
    ("glue stick", Adhesive::Glue),
    ("glue dot", Adhesive::Pressure),
    ("glue dots", Adhesive::Pressure),
    ("double sided", Adhesive::Pressure),
    ("self adhesive", Adhesive::Pressure),
    ("pressure sensitive", Adhesive::Pressure),
    ("masking", Adhesive::Pressure),
    ("spray", Adhesive::Pressure),
    ("tape", Adhesive::Pressure),
    ("tapes", Adhesive::Pressure),
    ("sticky", Adhesive::Pressure),
    ("stickers", Adhesive::Pressure),
    ("adhesive dots", Adhesive::Pressure),
    ("transfer adhesive", Adhesive::Pressure),
];

/// What is named as holding the art, where no source calls it suitable.
///
/// Shape:  any case. A clause that says no, without or removed names nothing; one that says something was
///         not removed does.
pub(super) fn refused(words: &str) -> Option<Adhesive> {
    named(words, &PHRASES)
}

#[cfg(test)]
mod tests {
    //! Words as people write them.

    use super::{Adhesive, refused};

    #[test]
    fn what_sticks_for_good_is_told_by_its_kind() {
        for (words, kind) in [
            ("Pressure-sensitive tape", Adhesive::Pressure),
            ("masking tape", Adhesive::Pressure),
            ("double-sided tape", Adhesive::Pressure),
            ("Double sided", Adhesive::Pressure),
            ("glue dots", Adhesive::Pressure),
            ("spray adhesive", Adhesive::Pressure),
            ("self-adhesive linen", Adhesive::Pressure),
            ("acid-free tape", Adhesive::Pressure),
            ("gummed linen tape", Adhesive::Gummed),
            ("PVA", Adhesive::Glue),
            ("hot glue", Adhesive::Glue),
            ("rubber cement", Adhesive::Glue),
            ("old tape not removed", Adhesive::Pressure),
            ("tape removed, then tape again", Adhesive::Pressure),
            ("glue stick", Adhesive::Glue),
            ("sticky corners", Adhesive::Pressure),
            ("no starch paste, masking tape", Adhesive::Pressure),
            ("tape removed and PVA brushed on", Adhesive::Glue),
        ] {
            assert_eq!(refused(words), Some(kind), "{words}");
        }
    }

    #[test]
    fn what_is_not_there_is_not_held_against_the_piece() {
        for words in [
            "wheat starch paste",
            "no tape",
            "without pressure-sensitive tape",
            "paste; old tape removed",
            "removed masking tape, mulberry paper",
            "tape-free corners",
            "non-gummed paper",
            "methyl cellulose",
            "wheat starch glue",
            "measured with a tapered rule",
            "",
        ] {
            assert_eq!(refused(words), None, "{words}");
        }
    }
}
