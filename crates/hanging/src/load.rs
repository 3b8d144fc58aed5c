//! Loads: forces, what a part of a strength may bear, how a hook is pulled.

use std::fmt;

use conservation::rules::{cited, figure, rough};
use conservation::{Fact, within};
use measure::{Angle, Length, Mass};
use working::{Figure, Rule, Stated, Subject, Worked, Working};

use crate::CAUTION;
use crate::refusal::Refusal;

static FORCE: Rule = cited(
    "load.force",
    "a mass pulls by its weight",
    "force = mass ÷ 1 kg × gravity",
    "E9",
);
static WORKING_LOAD: Rule = cited(
    "load.working",
    "what may be hung from a strength: what its end leaves of it, over the factor",
    "load = breaking × end ÷ factor",
    "E1",
);
static BEARS: Rule = cited(
    "load.bears",
    "the pull, not the weight, is held against the working load",
    "bears = pull ≤ load",
    "E1",
);
static ACTUAL: Rule = cited(
    "load.actual_factor",
    "the factor that is really there",
    "actual = breaking × end ÷ pull",
    "E1",
);
static OUTWARD: Rule = cited(
    "hook.outward",
    "a piece leans out on its foot: half its depth over the height of its hook",
    "outward = force × depth ÷ (2 × height)",
    "E9",
);
static SLANT: Rule = cited(
    "hook.slant",
    "down and outward together pull at a slant",
    "slant = atan(outward ÷ force)",
    "E9",
);

/// The force a mass pulls with, newtons.
pub fn force(mass: Stated<Mass>, quantity: &'static str, working: &mut Working) -> Worked<Figure> {
    let gravity = Fact::named("gravity");
    let inputs = [("mass", mass.into()), ("gravity", gravity.only().into())];
    let value = mass.value.approx_kg() * gravity.low();
    let subject = Subject::of("load", quantity);
    figure(working, &FORCE, subject, &inputs, (value, "N"))
}

/// What may be hung from a strength, newtons.
///
/// load = breaking × end ÷ factor
///
/// Units:  N; the share of strength its end leaves; a plain factor.
/// Errors: numbers outside what can be.
/// Source: rigging factors (ASME, second hand); checked in `suite/ref/reference`.
/// Example: 222.4 N, full, factor 5: 44.5 N.
pub fn working_load(
    breaking: Stated<Figure>,
    end: Stated<Figure>,
    factor: Stated<Figure>,
    working: &mut Working,
) -> Result<Worked<Figure>, Refusal> {
    let strong = within("force", breaking.value)?;
    let left = within("share", end.value)?;
    let times = within("factor", factor.value)?;
    let inputs = [
        ("breaking", breaking.into()),
        ("end", end.into()),
        ("factor", factor.into()),
    ];
    let value = (strong * left / times, "N");
    let subject = Subject::of("load", "working");
    Ok(figure(working, &WORKING_LOAD, subject, &inputs, value))
}

/// A pull held against a strength.
#[derive(Clone, Copy, Debug)]
pub struct Borne {
    /// What may be hung, N.
    pub load: Worked<Figure>,
    /// Whether the pull is no more.
    pub bears: Worked<bool>,
    /// The factor really there.
    pub actual: Worked<Figure>,
}

/// Whether a strength bears a pull with its factor.
///
/// Errors: as [`working_load`]; no pull.
pub fn bears(
    breaking: Stated<Figure>,
    end: Stated<Figure>,
    factor: Stated<Figure>,
    pull: Stated<Figure>,
    working: &mut Working,
) -> Result<Borne, Refusal> {
    let load = working_load(breaking, end, factor, working)?;
    let pulls = within("pull", pull.value)?;
    let subject = |quantity| Subject::of("load", quantity);
    let inputs = [("pull", pull.into()), ("load", load.into())];
    let holds = pulls <= load.value.value();
    let holds = working.by(&BEARS, subject("bears"), &inputs, holds);
    let inputs = [
        ("breaking", breaking.into()),
        ("end", end.into()),
        ("pull", pull.into()),
    ];
    let value = breaking.value.value() * end.value.value() / pulls;
    Ok(Borne {
        load,
        bears: holds,
        actual: figure(
            working,
            &ACTUAL,
            subject("actual"),
            &inputs,
            (value, "times"),
        ),
    })
}

/// How a piece pulls at its fixing in the wall.
#[derive(Clone, Copy, Debug)]
pub struct HookPull {
    /// Down, N.
    pub downward: Worked<Figure>,
    /// Out of the wall, N.
    pub outward: Worked<Figure>,
    /// Slant of both together from straight down.
    pub slant: Worked<Angle>,
}

/// How a piece pulls at its fixing in the wall.
///
/// outward = weight × depth ÷ 2 ÷ height of the hook above the foot
///
/// Shape:  the foot rests against the wall; its mass lies half way through its depth.
/// Units:  newtons; the angle to the nearest millionth of a degree.
/// Errors: no depth, no height.
/// Source: statics; checked in `suite/ref/reference`.
/// Example: 10 kg, 40 mm deep, hook 600 mm up: 3.3 N outward.
pub fn hook_pull(
    weight: Stated<Mass>,
    depth: Stated<Length>,
    height: Stated<Length>,
    working: &mut Working,
) -> Result<HookPull, Refusal> {
    Refusal::unless_positive("the depth of the piece", depth.value)?;
    Refusal::unless_positive("the height of the hook", height.value)?;
    let down = force(weight, "downward", working);
    let value = down.value.value() * depth.value.approx_mm() / (2.0 * height.value.approx_mm());
    let inputs = [
        ("force", down.into()),
        ("depth", depth.into()),
        ("height", height.into()),
    ];
    let subject = |quantity| Subject::of("hook", quantity);
    let out = figure(working, &OUTWARD, subject("outward"), &inputs, (value, "N"));
    let radians = value.atan2(down.value.value());
    let slant = Angle::nearest_from_degrees(radians.to_degrees()).unwrap_or_default();
    let inputs = [("outward", out.into()), ("force", down.into())];
    Ok(HookPull {
        downward: down,
        outward: out,
        slant: working.by(&SLANT, subject("slant"), &inputs, slant),
    })
}

impl Borne {
    /// What may be hung, and the factor that is really there.
    pub fn sentence(&self) -> String {
        format!(
            "it bears {} with its factor; the factor that is really there is {}",
            self.load.value,
            rough(self.actual.value.value())
        )
    }
}

/// Its [`sentence`](Borne::sentence), and [`CAUTION`].
impl fmt::Display for Borne {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}. {CAUTION}", self.sentence())
    }
}

impl HookPull {
    /// The two pulls.
    pub fn sentence(&self) -> String {
        format!(
            "it pulls down with {} N and out of the wall with {} N",
            rough(self.downward.value.value()),
            rough(self.outward.value.value())
        )
    }
}

/// Its [`sentence`](HookPull::sentence), and [`CAUTION`].
impl fmt::Display for HookPull {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}. {CAUTION}", self.sentence())
    }
}
