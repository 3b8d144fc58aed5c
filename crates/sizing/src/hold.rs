//! Place marks: hinges, hangers, wire, points, the dust cover.

use measure::{Length, Size};
use trade::{Hanger, Hold, Key, Measured};
use working::{Given, Rule, Source, Status, Subject, Worked, Working};

use crate::art::ArtSizes;
use crate::brief::Brief;
use crate::frame::MemberSizes;
use crate::trace::{Fact, WorkedSize, both, custom, geometry};
use crate::turn::two_legs_nearest;

static HINGE_COUNT: Rule = custom(
    "hinge.count",
    "two hinges, or one more for each step of width",
    "hinges = max(least, up_to(width, spacing) ÷ spacing)",
);
static HINGES_STATED: Rule = geometry(
    "hinge.stated",
    "as many hinges as stated",
    "hinges = stated",
);
static HINGE_INSET: Rule = Rule {
    id: "hinge.inset",
    words: "hinges sit a couple of inches in from the corners, but no further than a quarter of the width",
    formula: "inset = min(habit, half_down(half_down(width)))",
    source: Source::Cited(LIBRARY),
    status: Status::Published,
};
static LIBRARY: &working::Citation = trade::settings::cited("LC2");
static RING_STATED: Rule = geometry(
    "ring.stated",
    "the rings are as far down as stated",
    "down = stated",
);
static RING_DROP: Rule = custom(
    "ring.drop",
    "the rings go down the frame by the shop's share of its height",
    "down = nearest_to(outside ÷ parts, step)",
);
static RING_INSET: Rule = custom(
    "ring.inset",
    "the rings stand on the middle of the outermost rail",
    "inset = half_down(face)",
);
static RING_INSET_STATED: Rule = geometry(
    "ring.inset_stated",
    "the rings stand in from the edge as stated",
    "inset = stated",
);
static APART: Rule = geometry(
    "ring.apart",
    "the rings stand apart by the width less both insets",
    "apart = outside - 2 × inset",
);
static RISE: Rule = custom(
    "wire.rise",
    "the wire rises under load by the shop's share of the distance between its rings",
    "rise = nearest_to(apart ÷ parts, step)",
);
static WIRE: Rule = geometry(
    "wire.length",
    "the wire is two legs of a triangle, and its ties",
    "wire = 2 × sqrt(half_down(apart) × half_down(apart) + rise × rise) + ties",
);
static HOOK: Rule = geometry(
    "wire.hook",
    "the hook's seat lies below the frame's top by the rings' drop less the rise",
    "hook = down - rise",
);
static COVER: Rule = custom(
    "cover.size",
    "the dust cover is trimmed inside the outer edge on each side",
    "cover = outside - 2 × inside",
);

/// Where the art is held.
#[derive(Clone, Copy, Debug)]
pub struct HingeMarks {
    /// How many.
    pub count: Worked<i64>,
    /// How far the outer ones sit in from the corners of the art.
    pub inset: Worked<Length>,
}

/// Where the hangers go.
#[derive(Clone, Copy, Debug)]
pub struct HangerMarks {
    /// Down from the frame's top.
    pub down: Worked<Length>,
    /// In from its outside edge.
    pub inset: Worked<Length>,
    /// Distance between the two rings.
    pub apart: Worked<Length>,
    /// The wire, where there is one.
    pub wire: Option<WireMarks>,
}

/// The wire.
#[derive(Clone, Copy, Debug)]
pub struct WireMarks {
    /// Rise under load.
    pub rise: Worked<Length>,
    /// Length to cut, ties included.
    pub length: Worked<Length>,
    /// The hook's seat below the frame's top.
    pub hook: Worked<Length>,
}

/// Hinges of the first piece of art, where it is hinged.
pub(crate) fn hinges(
    brief: &Brief<'_>,
    art: &[ArtSizes],
    working: &mut Working,
) -> Option<HingeMarks> {
    let attachment = brief.job.attachment.as_ref()?;
    if !matches!(attachment.hold, Hold::THinge | Hold::VHinge | Hold::SHinge) {
        return None;
    }
    let width = art.first()?.largest.width;
    let subject = |quantity| Subject::of("hinge", quantity);
    let count = match attachment.count {
        Some(count) => {
            let stated = i64::from(count);
            working.by(
                &HINGES_STATED,
                subject("count"),
                &[("stated", Given::job(stated))],
                stated,
            )
        }
        None => hinge_count(brief, width, working),
    };
    let habit = brief.fact(Key::HingeInset);
    let value = habit.value.min(width.value.half_down().half_down());
    let inputs = [("habit", habit.into()), ("width", width.into())];
    Some(HingeMarks {
        count,
        inset: working.by(&HINGE_INSET, subject("inset"), &inputs, value),
    })
}

fn hinge_count(brief: &Brief<'_>, width: Worked<Length>, working: &mut Working) -> Worked<i64> {
    let two = brief.settings.choice(Key::HingeRule) == "two";
    let spacing = if two {
        Fact::from(width)
    } else {
        brief.fact(Key::HingeSpacing)
    };
    let steps = width
        .value
        .up_to(spacing.value)
        .quanta()
        .div_euclid(spacing.value.quanta().max(1));
    let inputs = [
        ("least", Given::job(2)),
        ("width", width.into()),
        ("spacing", spacing.into()),
    ];
    working.by(
        &HINGE_COUNT,
        Subject::of("hinge", "count"),
        &inputs,
        steps.max(2),
    )
}

/// Hangers on the outermost member.
pub(crate) fn hangers(
    brief: &Brief<'_>,
    members: &[MemberSizes],
    working: &mut Working,
) -> Option<HangerMarks> {
    let hardware = brief.job.hardware.clone().unwrap_or_default();
    if hardware.hanger == Hanger::None {
        return None;
    }
    let outermost = members.first()?;
    let subject = |quantity| Subject::of("hanger", quantity);
    let step = brief.fact(Key::RingStep);
    let (outside, face) = (outermost.outside, outermost.face);
    let down = match hardware.down {
        Some(down) => working.by(
            &RING_STATED,
            subject("down"),
            &[("stated", Given::job(*down))],
            *down,
        ),
        None => share(
            &RING_DROP,
            subject("down"),
            ("outside", outside.height),
            (Key::RingDrop, brief),
            step,
            working,
        ),
    };
    let inset = ring_inset(hardware.inset, face, subject("inset"), working);
    let inputs = [("outside", outside.width.into()), ("inset", inset.into())];
    let apart = working.by(
        &APART,
        subject("apart"),
        &inputs,
        outside.width.value - inset.value.twice(),
    );
    let wire = (hardware.hanger == Hanger::Wire).then(|| wire(brief, (apart, down), step, working));
    Some(HangerMarks {
        down,
        inset,
        apart,
        wire,
    })
}

fn ring_inset(
    stated: Option<Measured>,
    face: Worked<Length>,
    subject: Subject,
    working: &mut Working,
) -> Worked<Length> {
    if let Some(inset) = stated {
        let inputs = [("stated", Given::job(*inset))];
        working.by(&RING_INSET_STATED, subject, &inputs, *inset)
    } else {
        let inputs = [("face", face.into())];
        working.by(&RING_INSET, subject, &inputs, face.value.half_down())
    }
}

fn wire(
    brief: &Brief<'_>,
    (apart, down): (Worked<Length>, Worked<Length>),
    step: Fact,
    working: &mut Working,
) -> WireMarks {
    let subject = |quantity| Subject::of("wire", quantity);
    let rise = share(
        &RISE,
        subject("rise"),
        ("apart", apart),
        (Key::WireRise, brief),
        step,
        working,
    );
    let ties = brief.fact(Key::WireTies);
    let legs = two_legs_nearest(apart.value.half_down(), rise.value);
    let inputs = [
        ("apart", apart.into()),
        ("rise", rise.into()),
        ("ties", ties.into()),
    ];
    let length = working.by(&WIRE, subject("length"), &inputs, legs + ties.value);
    let inputs = [("down", down.into()), ("rise", rise.into())];
    let hook = working.by(&HOOK, subject("hook"), &inputs, down.value - rise.value);
    WireMarks { rise, length, hook }
}

/// A share of a length named by a setting, rounded to the mark step.
fn share(
    rule: &'static Rule,
    subject: Subject,
    (name, whole): (&'static str, Worked<Length>),
    (key, brief): (Key, &Brief<'_>),
    step: Fact,
    working: &mut Working,
) -> Worked<Length> {
    let parts = parts(brief.settings.choice(key));
    let unit = i128::from(step.value.quanta().max(1)) * i128::from(parts);
    let steps = (i128::from(whole.value.quanta()) * 2 + unit).div_euclid(unit * 2);
    let quanta = steps * i128::from(step.value.quanta().max(1));
    let value = i64::try_from(quanta).map_or(whole.value, Length::from_quanta);
    let inputs = [
        (name, whole.into()),
        ("parts", Given::setting(key.id(), parts)),
        ("step", step.into()),
    ];
    working.by(rule, subject, &inputs, value)
}

/// How many parts a share is one of.
fn parts(word: &str) -> i64 {
    match word {
        "third" => 3,   // geometry: one of three
        "quarter" => 4, // geometry: one of four
        "fifth" => 5,   // geometry: one of five
        _ => 6,         // geometry: one of six
    }
}

/// The dust cover as trimmed.
pub(crate) fn cover(
    brief: &Brief<'_>,
    outside: WorkedSize,
    working: &mut Working,
) -> Option<WorkedSize> {
    let stated = brief.job.cover.as_ref()?;
    if stated.sheet == "none" {
        return None;
    }
    let inside = stated
        .inside
        .map_or_else(|| brief.fact(Key::CoverInside), |inside| Fact::job(*inside));
    let size: Size = outside.size().shrink(inside.value);
    Some(both(
        working,
        &COVER,
        Subject::of("cover", "size"),
        size,
        |axis| {
            [
                ("outside", outside.along(axis).into()),
                ("inside", inside.into()),
            ]
        },
    ))
}
