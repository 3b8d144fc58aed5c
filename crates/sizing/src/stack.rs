//! The stack: layers front to back, slack, how proud it stands, and the air before the art.

mod contents;

use std::sync::Arc;

use measure::Length;
use trade::{Key, Material, Measured};
use working::{Given, Rule, Subject, Worked, Working};

use crate::brief::Brief;
use crate::frame::MemberSizes;
use crate::package::WallSizes;
use crate::trace::{Fact, geometry};

pub(crate) use contents::air;

static TOTAL: Rule = geometry(
    "stack.total",
    "the stack is the thickness of all layers in line",
    "stack = sum(layer)",
);
static DEPTH: Rule = geometry(
    "stack.depth",
    "strips on the back deepen the rabbet",
    "depth = rabbet_depth + build_up",
);
static JUST_ENOUGH: Rule = geometry(
    "stack.build_up",
    "strips just deep enough for the stack and its tail",
    "build_up = max(stack - rabbet_depth + tail, none)",
);
static SLACK: Rule = geometry(
    "stack.slack",
    "slack is the rabbet's depth less stack and tail",
    "slack = depth - stack - tail",
);
static PROUD: Rule = geometry(
    "stack.proud",
    "a stack deeper than the rabbet stands proud of the frame's back",
    "proud = max(stack - depth, none)",
);
static CLIP: Rule = geometry(
    "stack.clip",
    "the clip is the largest at hand that does not exceed what stands proud",
    "clip = min(offset, proud)",
);

/// One layer of a stack.
#[derive(Clone, Debug)]
pub struct StackLayer {
    /// What it is: `glazing`, `mat`, `air`.
    pub what: LayerKind,
    /// Which one, counted from the front, where there are several.
    pub index: usize,
    /// What it is made of.
    pub material: Option<Arc<Material>>,
    /// Front to back.
    pub thickness: Fact,
    /// Depth of its back face behind the front of the rabbet.
    pub behind: Length,
}

/// Kinds of layers, as they are printed and drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LayerKind {
    /// A fillet under the lip.
    FrameFillet,
    /// A sheet of glazing.
    Glazing,
    /// Strips behind the glazing; air in the middle.
    Spacer,
    /// Walls of a shadowbox; air in the middle.
    Walls,
    /// A mat.
    Mat,
    /// The tuck of a fillet behind a mat.
    MatFillet,
    /// The art.
    Art,
    /// A build-up round the art.
    Sink,
    /// The mount.
    Mount,
    /// A backing board.
    Backing,
    /// A stiffening frame behind the backing.
    Strainer,
    /// The frame member within.
    Member,
    /// Strips on the back of the member within.
    BuildUp,
}

impl LayerKind {
    /// The word printed for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::FrameFillet => "fillet under the lip",
            Self::Glazing => "glazing",
            Self::Spacer => "spacer",
            Self::Walls => "walls",
            Self::Mat => "mat",
            Self::MatFillet => "fillet behind the mat",
            Self::Art => "art",
            Self::Sink => "sink",
            Self::Mount => "mount",
            Self::Backing => "backing",
            Self::Strainer => "strainer",
            Self::Member => "frame within",
            Self::BuildUp => "strips on its back",
        }
    }
}

/// The stack in one member's rabbet.
#[derive(Clone, Debug)]
pub struct Stack {
    /// Front to back.
    pub layers: Vec<StackLayer>,
    /// Thickness of all.
    pub total: Worked<Length>,
    /// Depth of the rabbet, with strips on its back.
    pub depth: Length,
    /// Depth of the strips, where there are any.
    pub build_up: Option<Length>,
    /// Bare wall for points.
    pub tail: Length,
    /// What is left.
    pub slack: Worked<Length>,
    /// How far it stands out.
    pub proud: Worked<Length>,
    /// The offset clip that holds it, where clips are used and one fits.
    pub clip: Option<Worked<Length>>,
}

/// Fills every rabbet whose depth, and whose contents, are known.
pub(crate) fn fill(
    brief: &Brief<'_>,
    members: &mut [MemberSizes],
    walls: Option<&WallSizes>,
    working: &mut Working,
) {
    // From the inside out: strips on the back of a member within take room in the one round it.
    let mut strips = None;
    for (index, member) in members.iter_mut().enumerate().rev() {
        member.stack = contents::layers_of(brief, index, walls, strips)
            .and_then(|layers| stack(brief, index, layers, working));
        strips = member.stack.as_ref().and_then(|stack| stack.build_up);
    }
}

/// Adds up the layers in the rabbet of the member of `index`.
fn stack(
    brief: &Brief<'_>,
    index: usize,
    layers: Vec<StackLayer>,
    working: &mut Working,
) -> Option<Stack> {
    let member = &brief.members[index];
    let rabbet_depth = member.rabbet_depth?;
    if member.floater.is_some() {
        return None;
    }
    let subject = |quantity| Subject::nth("frame", index, quantity);
    let total = total(&layers, subject("stack"), working);
    let tail = member.tail;
    let innermost = index + 1 == brief.members.len();
    let strips = brief.job.build_up.as_ref().filter(|_| innermost);
    let build_up = strips.map(|strips| {
        let wall = (rabbet_depth, tail);
        build_up(strips.depth, total, wall, subject("build_up"), working)
    });
    let depth = deepened(rabbet_depth, build_up, subject("depth"), working);
    let inputs = [
        ("depth", depth.into()),
        ("stack", total.into()),
        ("tail", tail.into()),
    ];
    let value = depth.value - total.value - tail.value;
    let slack = working.by(&SLACK, subject("slack"), &inputs, value);
    let proud = proud(total, depth, subject("proud"), working);
    let clip = innermost
        .then(|| clip(brief, proud, subject("clip"), working))
        .flatten();
    Some(Stack {
        layers,
        total,
        depth: depth.value,
        build_up: build_up.map(|strips| strips.value),
        tail: tail.value,
        slack,
        proud,
        clip,
    })
}

/// The thickness of all layers; an empty stack is a layer of nothing.
fn total(layers: &[StackLayer], subject: Subject, working: &mut Working) -> Worked<Length> {
    let mut inputs: Vec<(&'static str, Given)> = layers
        .iter()
        .map(|layer| ("layer", layer.thickness.into()))
        .collect();
    if inputs.is_empty() {
        inputs.push(("layer", Given::job(Length::ZERO)));
    }
    let sum = layers.iter().map(|layer| layer.thickness.value).sum();
    working.by(&TOTAL, subject, &inputs, sum)
}

/// The rabbet's depth with the strips on its back, where there are any.
fn deepened(
    rabbet_depth: Fact,
    build_up: Option<Fact>,
    subject: Subject,
    working: &mut Working,
) -> Fact {
    let Some(strips) = build_up else {
        return rabbet_depth;
    };
    let inputs = [
        ("rabbet_depth", rabbet_depth.into()),
        ("build_up", strips.into()),
    ];
    let value = rabbet_depth.value + strips.value;
    working.by(&DEPTH, subject, &inputs, value).into()
}

fn proud(
    total: Worked<Length>,
    depth: Fact,
    subject: Subject,
    working: &mut Working,
) -> Worked<Length> {
    let inputs = [
        ("stack", total.into()),
        ("depth", depth.into()),
        ("none", Given::job(Length::ZERO)),
    ];
    let value = (total.value - depth.value).or_zero();
    working.by(&PROUD, subject, &inputs, value)
}

fn build_up(
    stated: Option<Measured>,
    total: Worked<Length>,
    (rabbet_depth, tail): (Fact, Fact),
    subject: Subject,
    working: &mut Working,
) -> Fact {
    if let Some(stated) = stated {
        return Fact::job(*stated);
    }
    let inputs = [
        ("stack", total.into()),
        ("rabbet_depth", rabbet_depth.into()),
        ("tail", tail.into()),
        ("none", Given::job(Length::ZERO)),
    ];
    let value = (total.value - rabbet_depth.value + tail.value).or_zero();
    working.by(&JUST_ENOUGH, subject, &inputs, value).into()
}

/// The largest clip at hand that does not exceed what stands proud.
fn clip(
    brief: &Brief<'_>,
    proud: Worked<Length>,
    subject: Subject,
    working: &mut Working,
) -> Option<Worked<Length>> {
    let clips = brief.job.clips.as_ref()?;
    if !proud.value.is_positive() {
        return None;
    }
    let stated: Vec<Length> = clips.offsets.iter().map(|offset| **offset).collect();
    let at_hand = if stated.is_empty() {
        trade::settings::standard_clips(brief.job.units).to_vec()
    } else {
        stated
    };
    let chosen = at_hand
        .into_iter()
        .filter(|offset| *offset <= proud.value && offset.is_positive())
        .max()?;
    let inputs = [("offset", Given::job(chosen)), ("proud", proud.into())];
    Some(working.by(&CLIP, subject, &inputs, chosen))
}

/// Air asked for in front of media that stick or dust off.
pub(crate) fn asked_air(brief: &Brief<'_>) -> Fact {
    brief.fact(Key::ClearAir)
}
