//! Stick used and length charged.

use std::sync::Arc;

use measure::Length;
use trade::{Key, Material};
use working::{Given, Rule, Subject, Worked, Working};

use super::Legs;
use crate::brief::{Brief, MemberBrief};
use crate::trace::{Fact, WorkedSize, custom, geometry};
use crate::turn::perimeter_nearest;

static USED: Rule = geometry(
    "stick.used",
    "the stick used is all long points, a cut for each leg, and the end trim",
    "used = sum(long) + legs × cut + trim",
);
static POLYGON_LONG: Rule = geometry(
    "stick.polygon_long",
    "the sides of a regular polygon laid end to end",
    "long = sides × across_flats × tan(half_turn ÷ sides)",
);
static ONE_STICK: Rule = geometry(
    "stick.one",
    "all legs come from one stick where it is long enough",
    "one = used ≤ stick",
);
static CHARGE_QUICK: Rule = custom(
    "charge.quick",
    "the quick rule charges the package's perimeter and eight faces",
    "charge = 2 × (width + height) + 8 × face",
);
static CHARGE_FLOATER: Rule = custom(
    "charge.floater",
    "the quick rule charges a floater by its outside",
    "charge = 2 × (width + height)",
);
static CHARGE_CUT_LIST: Rule = custom(
    "charge.cut_list",
    "the cut list is charged: the stick used",
    "charge = used",
);
static CHARGE_LONG: Rule = custom(
    "charge.long_points",
    "the long points are charged",
    "charge = sum(long)",
);
static CHARGED: Rule = custom(
    "charge.rounded",
    "the length charged is rounded up to the shop's step",
    "charged = up_to(charge, step)",
);

/// What a member takes from the stick, and what is charged for it.
#[derive(Clone, Copy, Debug)]
pub struct StickUse {
    /// All long points, cuts and end trim.
    pub used: Worked<Length>,
    /// Whether one stick does.
    pub one_stick: Worked<bool>,
    /// Length of the stick at hand.
    pub stick: Length,
    /// Loss at each leg.
    pub cut: Length,
    /// Loss at the ends.
    pub trim: Length,
    /// The length charged, before rounding; none for a polygon by the quick rule and for fillets.
    pub charge: Option<Worked<Length>>,
    /// The length charged, rounded up.
    pub charged: Option<Worked<Length>>,
    /// What it is rounded up to.
    pub step: ChargeStep,
}

/// What a charged length is rounded up to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ChargeStep {
    /// Whole feet.
    Foot,
    /// Half feet.
    HalfFoot,
    /// Tenths of a metre.
    Decimetre,
    /// Not rounded.
    Exact,
}

impl ChargeStep {
    fn named(word: &str) -> Self {
        match word {
            "foot" => Self::Foot,
            "half foot" => Self::HalfFoot,
            "0.1 m" => Self::Decimetre,
            _ => Self::Exact,
        }
    }

    /// The step as a length.
    pub const fn length(self) -> Length {
        match self {
            Self::Foot => Length::inches(12),    // geometry: inches in a foot
            Self::HalfFoot => Length::inches(6), // geometry: inches in half a foot
            Self::Decimetre => Length::mm(100),  // geometry: millimetres in a tenth of a metre
            Self::Exact => Length::QUANTUM,
        }
    }
}

/// The stick a member takes.
pub(super) fn stick(
    brief: &Brief<'_>,
    member: &MemberBrief<'_>,
    index: usize,
    (contents, face, outside): (WorkedSize, Worked<Length>, WorkedSize),
    legs: &Legs,
    working: &mut Working,
) -> StickUse {
    let subject = |quantity| Subject::nth("frame", index, quantity);
    let (long, total) = long_points(brief, legs, outside, subject("legs_long"), working);
    let mut stick = cut_list(
        brief,
        [subject("stick_used"), subject("one_stick")],
        (&long, total, i64::from(legs.count())),
        member.stick,
        working,
    );
    let basis = Basis {
        contents,
        face,
        outside,
        long: &long,
        total,
        used: stick.used,
    };
    stick.charge = charge(brief, member, &basis, subject("charge"), working);
    stick.step = ChargeStep::named(brief.settings.choice(Key::ChargeStep));
    stick.charged = stick
        .charge
        .filter(|_| stick.step != ChargeStep::Exact)
        .map(|charge| charged(charge, stick.step, subject("charged"), working));
    stick
}

/// All long points as inputs, and their sum; a polygon's are summed before they are rounded.
fn long_points(
    brief: &Brief<'_>,
    legs: &Legs,
    outside: WorkedSize,
    subject: Subject,
    working: &mut Working,
) -> (Vec<(&'static str, Given)>, Length) {
    let each = legs.each.iter();
    if brief.job.sides == 4 {
        // geometry: a rectangle's legs are whole
        let total = each
            .clone()
            .map(|leg| leg.long.value.times(i64::from(leg.count)))
            .sum();
        let long = each.flat_map(|leg| (0..leg.count).map(|_| ("long", leg.long.into())));
        return (long.collect(), total);
    }
    let total = perimeter_nearest(outside.width.value, brief.job.sides);
    let inputs = [
        ("across_flats", outside.width.into()),
        ("half_turn", Given::job(measure::Angle::degrees(180))), // geometry: half a turn
        ("sides", Given::job(i64::from(brief.job.sides))),
    ];
    let worked = working.by(&POLYGON_LONG, subject, &inputs, total);
    (vec![("long", worked.into())], total)
}

/// What a charge is worked from, whichever rule the shop has.
struct Basis<'a> {
    contents: WorkedSize,
    face: Worked<Length>,
    outside: WorkedSize,
    /// Every long point, and their sum.
    long: &'a [(&'static str, Given)],
    total: Length,
    used: Worked<Length>,
}

/// The length charged by the shop's rule; none for a polygon by the quick rule.
fn charge(
    brief: &Brief<'_>,
    member: &MemberBrief<'_>,
    basis: &Basis<'_>,
    subject: Subject,
    working: &mut Working,
) -> Option<Worked<Length>> {
    let charge = match brief.settings.choice(Key::ChargeRule) {
        "cut list" => {
            let inputs = [("used", basis.used.into())];
            working.by(&CHARGE_CUT_LIST, subject, &inputs, basis.used.value)
        }
        "long points" => working.by(&CHARGE_LONG, subject, basis.long, basis.total),
        _ if brief.job.sides != 4 => return None, // geometry: the quick rule is for rectangles
        _ if member.floater.is_some() => {
            let outside = basis.outside;
            let inputs = [
                ("width", outside.width.into()),
                ("height", outside.height.into()),
            ];
            let value = outside.size().united().twice();
            working.by(&CHARGE_FLOATER, subject, &inputs, value)
        }
        _ => {
            let (contents, face) = (basis.contents, basis.face);
            let inputs = [
                ("width", contents.width.into()),
                ("height", contents.height.into()),
                ("face", face.into()),
            ];
            let value = contents.size().united().twice() + face.value.times(8); // geometry: two faces at each of four corners
            working.by(&CHARGE_QUICK, subject, &inputs, value)
        }
    };
    Some(charge)
}

/// The charge rounded up to the shop's step.
fn charged(
    charge: Worked<Length>,
    step: ChargeStep,
    subject: Subject,
    working: &mut Working,
) -> Worked<Length> {
    let length = Given::setting(Key::ChargeStep.id(), step.length());
    let inputs = [("charge", charge.into()), ("step", length)];
    let value = charge.value.up_to(step.length());
    working.by(&CHARGED, subject, &inputs, value)
}

/// Legs of a fillet, which is joined like a frame.
const RECTANGLE_LEGS: i64 = 4; // geometry: a rectangle has four sides

/// The strip a fillet takes, joined like a frame with these long points.
pub(crate) fn strip(
    brief: &Brief<'_>,
    (subjects, long): ([Subject; 2], WorkedSize),
    material: Option<&Arc<Material>>,
    working: &mut Working,
) -> StickUse {
    let legs = [long.width, long.width, long.height, long.height].map(|leg| ("long", leg.into()));
    let own = material.and_then(|m| m.sticks.iter().map(|stick| **stick).max());
    let stick = own.map_or_else(|| brief.fact(Key::StickLength), Fact::material);
    cut_list(
        brief,
        subjects,
        (&legs, long.size().united().twice(), RECTANGLE_LEGS),
        stick,
        working,
    )
}

fn cut_list(
    brief: &Brief<'_>,
    [used, one]: [Subject; 2],
    (long, total, count): (&[(&'static str, Given)], Length, i64),
    stick: Fact,
    working: &mut Working,
) -> StickUse {
    let (cut, trim) = (brief.fact(Key::CutAllowance), brief.fact(Key::EndTrim));
    let mut inputs = long.to_vec();
    inputs.extend([
        ("legs", Given::job(count)),
        ("cut", cut.into()),
        ("trim", trim.into()),
    ]);
    let value = total + cut.value.times(count) + trim.value;
    let used = working.by(&USED, used, &inputs, value);
    let inputs = [("used", used.into()), ("stick", stick.into())];
    let one_stick = working.by(&ONE_STICK, one, &inputs, value <= stick.value);
    StickUse {
        used,
        one_stick,
        stick: stick.value,
        cut: cut.value,
        trim: trim.value,
        charge: None,
        charged: None,
        step: ChargeStep::Exact,
    }
}
