//! Dividing lengths: every division names its rounding and loses nothing.

use std::cmp::Ordering;
use std::num::NonZeroU32;

use crate::Length;

#[allow(
    clippy::arithmetic_side_effects,
    reason = "the operators of Length are checked"
)]
impl Length {
    /// Half the length, floored to the quantum.
    ///
    /// The other half is `self - self.half_down()`, at most one quantum longer.
    ///
    /// ```
    /// use measure::Length;
    /// assert_eq!(Length::inches(5).half_down(), Length::inch_fraction(5, 2));
    /// assert_eq!(Length::from_quanta(-3).half_down(), Length::from_quanta(-2));
    /// ```
    #[must_use]
    pub const fn half_down(self) -> Self {
        Self::from_quanta(self.quanta().div_euclid(2))
    }

    /// The length in `n` parts that sum to it; earlier parts are at most one quantum larger.
    ///
    /// ```
    /// use measure::Length;
    /// use std::num::NonZeroU32;
    /// let three = NonZeroU32::new(3).expect("three is not zero");
    /// let parts: Vec<Length> = Length::from_quanta(8).split(three).collect();
    /// assert_eq!(parts, [3, 3, 2].map(Length::from_quanta));
    /// ```
    pub fn split(self, n: NonZeroU32) -> impl Iterator<Item = Self> {
        let parts = i64::from(n.get());
        let each = self
            .quanta()
            .checked_div_euclid(parts)
            .expect("the parts are not zero");
        let larger = self
            .quanta()
            .checked_rem_euclid(parts)
            .expect("the parts are not zero");
        (0..parts).map(move |part| Self::from_quanta(each.saturating_add(i64::from(part < larger))))
    }

    /// The greatest multiple of `step` not above the length.
    ///
    /// Errors: panics when the step is not above zero.
    ///
    /// ```
    /// use measure::Length;
    /// assert_eq!(Length::mm(19).down_to(Length::mm(5)), Length::mm(15));
    /// assert_eq!(Length::mm(-19).down_to(Length::mm(5)), Length::mm(-20));
    /// ```
    #[must_use]
    pub fn down_to(self, step: Self) -> Self {
        self - self.above_step(step)
    }

    /// The least multiple of `step` not below the length.
    ///
    /// Errors: panics when the step is not above zero.
    ///
    /// ```
    /// use measure::Length;
    /// assert_eq!(Length::mm(16).up_to(Length::mm(5)), Length::mm(20));
    /// ```
    #[must_use]
    pub fn up_to(self, step: Self) -> Self {
        let above = self.above_step(step);
        if above.is_zero() {
            self
        } else {
            self - above + step
        }
    }

    /// The multiple of `step` nearest the length; a tie goes away from zero.
    ///
    /// Errors: panics when the step is not above zero.
    ///
    /// ```
    /// use measure::Length;
    /// assert_eq!(Length::mm(5).nearest_to(Length::mm(2)), Length::mm(6));
    /// assert_eq!(Length::mm(-5).nearest_to(Length::mm(2)), Length::mm(-6));
    /// ```
    #[must_use]
    pub fn nearest_to(self, step: Self) -> Self {
        let (down, up) = (self.down_to(step), self.up_to(step));
        match (self - down).cmp(&(up - self)) {
            Ordering::Less => down,
            Ordering::Equal if self.is_negative() => down,
            Ordering::Equal | Ordering::Greater => up,
        }
    }

    /// How far the length lies above the multiple of `step` below it.
    fn above_step(self, step: Self) -> Self {
        assert!(step.is_positive(), "a step is above zero");
        let above = self.quanta().checked_rem_euclid(step.quanta());
        Self::from_quanta(above.expect("a step is above zero"))
    }
}
