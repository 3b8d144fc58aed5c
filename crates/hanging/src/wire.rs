//! The wire: its angle, its length between the rings, its pull, and what must bear it.

use std::fmt;

use conservation::spoken::weighs;
use measure::{Angle, Length, Mass, Unit};
use trade::{Key, Settings};
use working::{Given, Rule, Stated, Subject, Worked, Working};

use crate::refusal::Refusal;
use crate::{CAUTION, custom, geometry};

static SPAN: Rule = geometry(
    "hang.span",
    "two hooks carry the wire straight between them; its slopes span the rest",
    "span = rings - hooks",
);
static ANGLE: Rule = geometry(
    "hang.angle",
    "the wire slopes up from each ring to half the span",
    "angle = atan(2 × rise ÷ span)",
);
static BETWEEN: Rule = geometry(
    "hang.between_rings",
    "the wire between the rings is two slopes, each the long side of half the span and the rise, \
     and what lies straight between two hooks",
    "wire = hooks + sqrt(span × span + 4 × rise × rise)",
);
static TENSION: Rule = geometry(
    "hang.tension",
    "each slope pulls by the weight over twice the sine of its angle; that sine is twice the rise \
     over both slopes",
    "tension = nearest(weight × sqrt(span × span + 4 × rise × rise) ÷ (4 × rise))",
);
static INWARD: Rule = geometry(
    "hang.inward",
    "each slope also pulls its rail inward: by the weight over twice the tangent of its angle",
    "inward = nearest(weight × span ÷ (4 × rise))",
);
static WIRE_RATING: Rule = custom(
    "hang.wire_rating",
    "a wire is rated for several times the weight, and never below what its pull, times its own \
     factor, asks of the strength that its twisted ends leave",
    "rating = max(factor × weight, up(100 × pull_factor × tension ÷ ends))",
);
static RING_RATING: Rule = custom(
    "hang.ring_rating",
    "a ring is rated for several times the pull of its side of the wire",
    "rating = factor × tension",
);
static HOOK_RATING: Rule = custom(
    "hang.hook_rating",
    "a hook is rated for several times its share of the weight",
    "rating = up(factor × weight ÷ hooks)",
);

/// How a piece hangs by its wire.
#[derive(Clone, Copy, Debug)]
pub struct Hang {
    /// Weight of the whole piece.
    pub weight: Stated<Mass>,
    /// Distance between the two rings.
    pub rings_apart: Stated<Length>,
    /// How far the wire rises above the rings under load.
    pub rise: Stated<Length>,
    /// Distance between two hooks, evenly on both sides of the middle; none for a single hook.
    pub hooks_apart: Option<Stated<Length>>,
}

/// The wire under load.
#[derive(Clone, Copy, Debug)]
pub struct WireRun {
    /// Span of the two slopes: the rings' distance less the hooks'.
    pub span: Worked<Length>,
    /// Angle of the slopes from level.
    pub angle: Worked<Angle>,
    /// Length between the rings, without the ties.
    pub between_rings: Worked<Length>,
    /// Pull along each slope, as the mass whose weight it equals: pounds-force as pounds.
    pub tension: Worked<Mass>,
    /// Pull of each slope on its side rail, level and inward, likewise.
    pub inward: Worked<Mass>,
    weight: Mass,
}

/// How many times its share each part must be rated for.
#[derive(Clone, Copy, Debug)]
pub struct Factors {
    /// The wire, times the whole weight. Common practice, no source: 4.
    pub wire: Stated<i64>,
    /// The wire, times its pull.
    pub pull: Stated<i64>,
    /// Strength that the wire's ends leave it, per cent: a twist weakens.
    pub ends: Stated<i64>,
    /// Each ring and hook, times its share. Common practice, no source: 2.
    pub fitting: Stated<i64>,
}

impl Factors {
    /// As the shop has them; more over people's heads.
    pub fn of_shop(settings: &Settings, over_people: bool) -> Self {
        let own = |key: Key| Stated::setting(key.id(), settings.count(key));
        let worse = |key: Key| {
            let (usual, people) = (own(key), own(Key::PeopleFactor));
            if over_people && people.value > usual.value {
                people
            } else {
                usual
            }
        };
        Self {
            wire: worse(Key::WireFactor),
            pull: worse(Key::PullFactor),
            ends: own(Key::KnotStrength),
            fitting: worse(Key::FittingFactor),
        }
    }
}

/// Loads the parts must at least be rated for, as masses whose weight they equal.
#[derive(Clone, Copy, Debug)]
pub struct Ratings {
    /// The wire.
    pub wire: Worked<Mass>,
    /// Each of the two rings.
    pub ring: Worked<Mass>,
    /// Each hook.
    pub hook: Worked<Mass>,
    factors: Factors,
}

/// The wire under load.
///
/// θ = atan(2h ÷ s), wire = c + √(s² + 4h²), T = W ÷ (2 sin θ) = W √(s² + 4h²) ÷ 4h,
/// with rings d apart, hooks c apart (0 for one), s = d − c, rise h
///
/// Shape:  rings level with each other, hooks level and evenly on both sides of the middle, the
///         wire free to slide. Friction, stretch and knots are left out.
/// Units:  the wire to the nearest quantum, the angle to the nearest millionth of a degree, the
///         pull to the nearest nanogram of the mass whose weight it equals.
/// Errors: no weight, no rise, hooks no closer than the rings, a pull too great to hold.
/// Source: geometry and the balance of forces; checked in `suite/ref/bench`.
/// Example: 20 lb, rings 20 in apart, rise 3 in: 16.7°, 34.8 lb along each side.
pub fn wire_run(hang: &Hang, working: &mut Working) -> Result<WireRun, Refusal> {
    let (weight, rings, rise) = (hang.weight.value, hang.rings_apart.value, hang.rise.value);
    let hooks = hang.hooks_apart.unwrap_or(Stated::job(Length::ZERO));
    Refusal::if_negative("the distance between the hooks", hooks.value)?;
    if weight <= Mass::ZERO {
        return Err(Refusal::NoWeight { weight });
    }
    if rings <= hooks.value {
        let hooks = hooks.value;
        return Err(Refusal::NoSpan { rings, hooks });
    }
    if !rise.is_positive() {
        return Err(Refusal::NoRise { rise });
    }
    let slopes = Slopes::of(rings - hooks.value, rise);
    let tension = slopes.pull_nearest(weight).ok_or(Refusal::TooTaut)?;
    let inward = slopes.inward_nearest(weight).ok_or(Refusal::TooTaut)?;
    let angle = slopes.angle_nearest();
    let between = hooks.value + slopes.length_nearest().ok_or(Refusal::TooTaut)?;
    let subject = |quantity| Subject::of("hang", quantity);
    let inputs = [("rings", hang.rings_apart.into()), ("hooks", hooks.into())];
    let span = working.by(&SPAN, subject("span"), &inputs, slopes.span);
    let triangle: [(&'static str, Given); 2] = [("span", span.into()), ("rise", hang.rise.into())];
    let with = |name, given: Given| [triangle[0], triangle[1], (name, given)];
    let wire = with("hooks", hooks.into());
    let pull = with("weight", hang.weight.into());
    Ok(WireRun {
        span,
        angle: working.by(&ANGLE, subject("angle"), &triangle, angle),
        between_rings: working.by(&BETWEEN, subject("between_rings"), &wire, between),
        tension: working.by(&TENSION, subject("tension"), &pull, tension),
        inward: working.by(&INWARD, subject("inward"), &pull, inward),
        weight,
    })
}

/// What wire, rings and hooks must at least be rated for.
///
/// wire = max(factor × weight, pull factor × pull ÷ ends), ring = factor × pull,
/// hook = factor × weight ÷ hooks
///
/// Shape:  `run` is what [`wire_run`] made of the same `hang` in the same working.
/// Units:  masses whose weight the load equals; a hook's share is rounded up to a nanogram.
/// Errors: a factor below 1, ends that leave nothing or more than all, a load too great to hold.
/// Source: common practice, no source. Advice, never a certificate: show [`CAUTION`] beside it.
/// Example: 20 lb as above, factors 4 and 2, whole ends: wire 80 lb, rings 69.6 lb, one hook 40 lb.
pub fn ratings(
    hang: &Hang,
    run: &WireRun,
    factors: &Factors,
    working: &mut Working,
) -> Result<Ratings, Refusal> {
    for factor in [
        factors.wire.value,
        factors.pull.value,
        factors.fitting.value,
    ] {
        if factor < 1 {
            return Err(Refusal::Factor { factor });
        }
    }
    let ends = factors.ends.value;
    if !(1..=WHOLE).contains(&ends) {
        return Err(Refusal::Ends { ends });
    }
    let (weight, tension) = (hang.weight.value, run.tension.value);
    let (strong, fitting) = (factors.wire.value, factors.fitting.value);
    let hooks: i64 = if hang.hooks_apart.is_some() { 2 } else { 1 };
    let ring = times(tension, fitting)?;
    let wire = times(weight, strong)?.max(through_ends(tension, factors.pull.value, ends)?);
    let share = times(weight, fitting)?.nanograms();
    let hook = Mass::from_nanograms(share.div_euclid(hooks) + share.rem_euclid(hooks));
    let subject = |quantity| Subject::of("hang", quantity);
    let inputs = [
        ("factor", factors.wire.into()),
        ("weight", hang.weight.into()),
        ("pull_factor", factors.pull.into()),
        ("tension", run.tension.into()),
        ("ends", factors.ends.into()),
    ];
    let wire = working.by(&WIRE_RATING, subject("wire_rating"), &inputs, wire);
    let factor = ("factor", factors.fitting.into());
    let inputs = [factor, ("tension", run.tension.into())];
    let ring = working.by(&RING_RATING, subject("ring_rating"), &inputs, ring);
    let inputs = [
        factor,
        ("weight", hang.weight.into()),
        ("hooks", Given::job(hooks)),
    ];
    Ok(Ratings {
        wire,
        ring,
        hook: working.by(&HOOK_RATING, subject("hook_rating"), &inputs, hook),
        factors: *factors,
    })
}

impl WireRun {
    /// How many times the weight each side pulls, to the nearest of `places` decimals: `1.74`.
    ///
    /// Errors: panics past 18 decimals.
    pub fn times_weight_nearest(&self, places: u32) -> String {
        let scale = 10_i128.checked_pow(places); // geometry: decimals
        let scaled = scale.and_then(|one| one.checked_mul(i128::from(self.tension.nanograms())));
        let (one, scaled) = scale.zip(scaled).expect("few decimals are printed");
        let parts = nearest_ratio(scaled, i128::from(self.weight.nanograms()));
        let (whole, decimals) = (parts.div_euclid(one), parts.rem_euclid(one));
        if places == 0 {
            return whole.to_string();
        }
        let width = usize::try_from(places).expect("few decimals are printed");
        format!("{whole}.{decimals:0width$}")
    }
}

impl WireRun {
    /// `each side of the wire pulls like 15.79 kg (34.8 lb) at 16.7°, 1.74 times the weight`
    pub fn sentence(&self) -> String {
        self.sentence_in(Unit::Millimetre)
    }

    /// The same, in the unit of weight that goes with this unit of length first.
    pub fn sentence_in(&self, unit: Unit) -> String {
        format!(
            "each side of the wire pulls like {} at {:.1}°, {} times the weight",
            weighs(self.tension.value, unit),
            self.angle.approx_degrees(),
            self.times_weight_nearest(2),
        )
    }
}

/// Its [`sentence`](WireRun::sentence), and [`CAUTION`].
impl fmt::Display for WireRun {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}. {CAUTION}", self.sentence())
    }
}

impl Ratings {
    /// The three loads with their factors.
    pub fn sentence(&self) -> String {
        let Factors {
            wire,
            pull,
            ends,
            fitting,
        } = self.factors;
        let (wire, pull, ends, fitting) = (wire.value, pull.value, ends.value, fitting.value);
        format!(
            "wire rated for {} or more (factor {wire} on the weight, and {pull} on its pull with ends \
             that leave {ends} % of its strength), each ring for {} (factor {fitting}), each hook for \
             {} (factor {fitting})",
            self.wire.value, self.ring.value, self.hook.value,
        )
    }
}

/// Its [`sentence`](Ratings::sentence), and [`CAUTION`].
impl fmt::Display for Ratings {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}. {CAUTION}", self.sentence())
    }
}

/// All of a wire's strength, per cent.
const WHOLE: i64 = 100; // geometry: per cent

/// The pull times its factor, over the share of strength the ends leave, rounded up to a nanogram.
fn through_ends(tension: Mass, factor: i64, ends: i64) -> Result<Mass, Refusal> {
    let pull = i128::from(times(tension, factor)?.nanograms()) * i128::from(WHOLE);
    let ends = i128::from(ends);
    let up = (pull + ends - 1).div_euclid(ends);
    let up = i64::try_from(up).ok();
    up.map(Mass::from_nanograms).ok_or(Refusal::TooTaut)
}

fn times(mass: Mass, factor: i64) -> Result<Mass, Refusal> {
    let nanograms = mass.nanograms().checked_mul(factor);
    nanograms.map(Mass::from_nanograms).ok_or(Refusal::TooTaut)
}

/// `value ÷ one`, both above zero, to the nearest whole number, a tie going up.
fn nearest_ratio(value: i128, one: i128) -> i128 {
    (value * 2 + one).div_euclid(one * 2)
}

/// The two slopes of a wire: how far they span and rise, both above zero.
struct Slopes {
    span: Length,
    rise: Length,
    /// The square of their length, in square quanta.
    square: i128,
}

impl Slopes {
    fn of(span: Length, rise: Length) -> Self {
        let square = |length: Length| i128::from(length.quanta()) * i128::from(length.quanta());
        Self {
            span,
            rise,
            square: square(span) + 4 * square(rise), // geometry: twice the rise, squared
        }
    }

    /// Their length, to the nearest quantum.
    fn length_nearest(&self) -> Option<Length> {
        Length::long_side_nearest(self.span, self.rise.twice())
    }

    /// Their angle from level, to the nearest millionth of a degree.
    fn angle_nearest(&self) -> Angle {
        let radians = (self.rise.twice().approx_mm()).atan2(self.span.approx_mm());
        Angle::nearest_from_degrees(radians.to_degrees()).unwrap_or_default()
    }

    /// The level part of that pull, to the nearest nanogram; none past what a mass holds.
    fn inward_nearest(&self, weight: Mass) -> Option<Mass> {
        let product = i128::from(weight.nanograms()).checked_mul(i128::from(self.span.quanta()))?;
        let rises = 4 * i128::from(self.rise.quanta()); // geometry: half the span, half the weight
        let nanograms = nearest_ratio(product, rises);
        i64::try_from(nanograms).ok().map(Mass::from_nanograms)
    }

    /// The pull along each, to the nearest nanogram; none past what a mass holds.
    fn pull_nearest(&self, weight: Mass) -> Option<Mass> {
        let (root, rises) = (self.square.isqrt(), 4 * i128::from(self.rise.quanta())); // geometry: twice for two slopes, twice for the whole sine
        let weight = i128::from(weight.nanograms());
        let nanograms = if root * root == self.square {
            nearest_ratio(weight.checked_mul(root)?, rises)
        } else {
            pull_in_floats_nearest(weight, self.square, rises)?
        };
        i64::try_from(nanograms).ok().map(Mass::from_nanograms)
    }
}

/// weight × √square ÷ rises, to the nearest whole number; none past 2⁶³.
#[allow(
    clippy::float_arithmetic,
    clippy::as_conversions,
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    reason = "a root that is no whole number; the name says how it rounds, the bound that it fits"
)]
fn pull_in_floats_nearest(weight: i128, square: i128, rises: i128) -> Option<i128> {
    let pull = (weight as f64 * (square as f64).sqrt() / rises as f64).round();
    (pull < i64::MAX as f64).then_some(pull as i128)
}

#[cfg(test)]
mod tests;
