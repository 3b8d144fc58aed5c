//! How far a plan can be from the best possible, in one sentence.

/// What a plan reached, and what no plan can do better than.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutProof {
    /// What is counted: `Cost`, `Sheets`, `Value`.
    pub what: String,
    /// What the plan comes to.
    pub reached: u64,
    /// What no plan can go below.
    pub bound: u64,
    /// `reached` as the shop writes it: `$ 84.00`.
    pub reached_words: String,
    /// `bound` as the shop writes it.
    pub bound_words: String,
    /// More is better: the bound lies above.
    pub more_is_better: bool,
    /// What `what` leaves to be asked, as a sentence; empty where that is nothing.
    pub note: &'static str,
}

impl CutProof {
    /// The sentence under a material's totals.
    ///
    /// Units: the gap in percent of the bound, rounded up to a tenth.
    pub fn sentence(&self) -> String {
        let sentence = self.bare_sentence();
        match self.note {
            "" => sentence,
            note => format!("{sentence} {note}"),
        }
    }

    fn bare_sentence(&self) -> String {
        let Self {
            what,
            reached,
            bound,
            reached_words,
            bound_words,
            more_is_better,
            note: _,
        } = self;
        let (side, better) = if *more_is_better {
            ("above", "more")
        } else {
            ("below", "less")
        };
        let stated = format!("{what} {reached_words}, cannot be {side} {bound_words}");
        let gap = u128::from(reached.abs_diff(*bound));
        if gap == 0 {
            return format!("{stated}: proven, nothing comes to {better}.");
        }
        // Tenths of a percent, up.
        match (gap * 1000).checked_add(u128::from(*bound).saturating_sub(1)) {
            Some(top) if *bound > 0 => {
                let tenths = top / u128::from(*bound);
                let percent = format!("{}.{}", tenths / 10, tenths % 10);
                format!("{stated}: at most {percent} % from the best possible.")
            }
            _ => format!("{stated}: how far from the best possible is not known."),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::CutProof;

    fn check(reached: u64, bound: u64, more_is_better: bool, expected: &str) {
        let proof = CutProof {
            what: "Cost".to_owned(),
            reached,
            bound,
            reached_words: format!("$ {reached}"),
            bound_words: format!("$ {bound}"),
            more_is_better,
            note: "",
        };
        assert_eq!(proof.sentence(), expected);
    }

    /// Worked by hand: 3/300 = 1 %, 1/300 = 0.33… %, rounded up.
    #[test]
    fn the_gap_is_never_understated() {
        check(
            300,
            300,
            false,
            "Cost $ 300, cannot be below $ 300: proven, nothing comes to less.",
        );
        check(
            303,
            300,
            false,
            "Cost $ 303, cannot be below $ 300: at most 1.0 % from the best possible.",
        );
        check(
            301,
            300,
            false,
            "Cost $ 301, cannot be below $ 300: at most 0.4 % from the best possible.",
        );
        check(
            300,
            303,
            true,
            "Cost $ 300, cannot be above $ 303: at most 1.0 % from the best possible.",
        );
        check(
            5,
            0,
            false,
            "Cost $ 5, cannot be below $ 0: how far from the best possible is not known.",
        );
        let most = u64::MAX;
        check(
            most,
            1,
            false,
            &format!(
                "Cost $ {most}, cannot be below $ 1: at most 1844674407370955161400.0 % from the best possible."
            ),
        );
    }
}
