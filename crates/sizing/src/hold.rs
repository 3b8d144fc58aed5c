//! Place marks: hinges, hangers, wire, points, the dust cover.

use measure::{Length, Size};
use trade::{Art, Hanger, Hold, Key, Measured, Settings};
use working::{Given, Rule, Source, Stated, Status, Subject, Worked, Working};

use crate::art::ArtSizes;
use crate::brief::Brief;
use crate::frame::MemberSizes;
use crate::trace::{Fact, WorkedSize, both, custom, geometry};

static HINGES_TWO: Rule = Rule {
    id: "hinge.two",
    words: "this shop hangs every sheet on the fewest hinges",
    formula: "hinges = least",
    source: Source::Cited(LIBRARY),
    status: Status::Published,
};
static HINGE_COUNT: Rule = Rule {
    id: "hinge.count",
    words: "two hinges at least; the outer ones stand in from the corners, and none stands further from its neighbour than the spacing",
    formula: "hinges = max(least, up((edge - 2 × inset) ÷ spacing) + 1)",
    source: Source::Cited(trade::settings::cited("M6")),
    status: Status::Published,
};
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
    "the wire is two slopes between rings and hooks, what lies level between two hooks, and its ties",
    "wire = hooks + sqrt((apart - hooks) × (apart - hooks) + 4 × rise × rise) + ties",
);
static HOOK: Rule = geometry(
    "wire.hook",
    "the hook's seat lies below the frame's top by the rings' drop less the rise",
    "hook = down - rise",
);
static HOOKS_APART: Rule = custom(
    "wire.hooks_apart",
    "two hooks share the wire, apart by the shop's share of the distance between its rings",
    "hooks = nearest_to(apart ÷ parts, step)",
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
    /// Distance between two hooks, where the shop always hangs a wire on two; none for a single one.
    pub hooks_apart: Option<Worked<Length>>,
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
    let habit = brief.fact(Key::HingeInset);
    let value = habit.value.min(width.value.half_down().half_down());
    let inputs = [("habit", habit.into()), ("width", width.into())];
    let inset = working.by(&HINGE_INSET, subject("inset"), &inputs, value);
    let count = match attachment.count {
        Some(count) => {
            let stated = i64::from(count);
            let inputs = [("stated", Given::job(stated))];
            working.by(&HINGES_STATED, subject("count"), &inputs, stated)
        }
        None if brief.settings.choice(Key::HingeRule) == "two" => {
            let inputs = [("least", Given::table(HINGES_FROM, LEAST_HINGES))];
            working.by(&HINGES_TWO, subject("count"), &inputs, LEAST_HINGES)
        }
        None => {
            let spacing = hinge_spacing(
                grammage(brief.job.art.first(), &brief.settings).value,
                &brief.settings,
            );
            hinge_count(width.into(), inset.into(), spacing, working)
        }
    };
    Some(HingeMarks { count, inset })
}

/// Fewest hinges that hold a sheet, and where that stands.
const LEAST_HINGES: i64 = 2; // geometry: one hinge lets the sheet turn
const HINGES_FROM: &str = "M6";

/// How many hinges an edge takes.
///
/// hinges = max(2, ⌈(edge − 2 inset) ÷ spacing⌉ + 1)
///
/// Shape:  the spacing is above zero; insets that meet leave the fewest.
/// Source: a mounting manual (10 to 15 in, M6); three published counts (M7) agree.
/// Example: 30 in, inset 1 1/2, spacing 10: four.
pub fn hinge_count(
    edge: Stated<Length>,
    inset: Stated<Length>,
    spacing: Stated<Length>,
    working: &mut Working,
) -> Worked<i64> {
    let between = (edge.value - inset.value.twice()).or_zero();
    let step = spacing.value.max(Length::QUANTUM);
    let gaps = between.up_to(step).quanta().div_euclid(step.quanta());
    let inputs = [
        ("least", Given::table(HINGES_FROM, LEAST_HINGES)),
        ("edge", edge.into()),
        ("inset", inset.into()),
        ("spacing", spacing.into()),
    ];
    let count = (gaps + 1).max(LEAST_HINGES);
    working.by(&HINGE_COUNT, Subject::of("hinge", "count"), &inputs, count)
}

/// Grams to the square metre of a sheet of art: as the job states, else the shop's usual one.
pub fn grammage(art: Option<&Art>, settings: &Settings) -> Stated<i64> {
    let stated = art.and_then(|art| art.grammage);
    stated.map_or_else(
        || Stated::setting(Key::UsualSheet.id(), settings.count(Key::UsualSheet)),
        |grams| Stated::job(i64::from(grams)),
    )
}

/// The longest distance between hinges of a sheet of so many grams to the square metre, as the shop has it.
pub fn hinge_spacing(grams: i64, settings: &Settings) -> Stated<Length> {
    let key = if grams >= settings.count(Key::HeavySheet) {
        Key::HingeSpacingHeavy
    } else {
        Key::HingeSpacingLight
    };
    Stated::setting(key.id(), settings.length(key))
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
            (Key::RingDrop, &brief.settings),
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
        (Key::WireRise, &brief.settings),
        step,
        working,
    );
    let ties = brief.fact(Key::WireTies);
    let two = brief.settings.choice(Key::Hooks) == "two";
    let hooks_apart = two.then(|| hooks_apart(apart, &brief.settings, working));
    let hooks: Stated<Length> = hooks_apart.map_or_else(|| Stated::job(Length::ZERO), Stated::from);
    let span = apart.value - hooks.value;
    let slopes = Length::long_side_nearest(span, rise.value.twice()).unwrap_or_default();
    let inputs = [
        ("hooks", hooks.into()),
        ("apart", apart.into()),
        ("rise", rise.into()),
        ("ties", ties.into()),
    ];
    let value = hooks.value + slopes + ties.value;
    let length = working.by(&WIRE, subject("length"), &inputs, value);
    WireMarks {
        rise,
        hooks_apart,
        length,
        hook: hook_below_top(down.into(), rise.into(), working),
    }
}

/// How far apart two hooks stand under a wire.
///
/// hooks = apart ÷ parts, to the nearest step
///
/// Shape:  `apart` is a line of `working`: the distance between the rings.
/// Source: the share is a setting (common practice, no source).
pub fn hooks_apart(
    apart: Worked<Length>,
    settings: &Settings,
    working: &mut Working,
) -> Worked<Length> {
    let step = Fact::setting(settings, Key::RingStep);
    let key = (Key::HooksApart, settings);
    let subject = Subject::of("wire", "hooks_apart");
    share(&HOOKS_APART, subject, ("apart", apart), key, step, working)
}

/// How far the hook's seat lies below the frame's top.
///
/// hook = down − rise
///
/// Shape:  below zero where the hook would show above the frame.
/// Source: geometry.
pub fn hook_below_top(
    down: Stated<Length>,
    rise: Stated<Length>,
    working: &mut Working,
) -> Worked<Length> {
    let inputs = [("down", down.into()), ("rise", rise.into())];
    let value = down.value - rise.value;
    working.by(&HOOK, Subject::of("wire", "hook"), &inputs, value)
}

/// A share of a length named by a setting, rounded to the mark step.
fn share(
    rule: &'static Rule,
    subject: Subject,
    (name, whole): (&'static str, Worked<Length>),
    (key, settings): (Key, &Settings),
    step: Fact,
    working: &mut Working,
) -> Worked<Length> {
    let parts = parts(settings.choice(key));
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
        "half" => 2,    // geometry: one of two
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
