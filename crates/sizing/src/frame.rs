//! Frame members, outside in: rabbet, sight, outside, legs, and the stick they take.

mod inverse;
mod legs;
mod length;

use std::sync::Arc;

use measure::{Angle, Length};
use trade::{Material, Role};
use working::{Rule, Subject, Worked, Working};

use crate::brief::{Brief, FloaterBrief, MemberBrief};
use crate::stack::Stack;
use crate::trace::{WorkedSize, both, geometry};
use crate::turn::in_plan_nearest;

pub use legs::{Leg, Legs};
pub use length::{ChargeStep, StickUse};

pub(crate) use length::strip;

static RABBET: Rule = geometry(
    "frame.rabbet",
    "the rabbet is the package and the allowance",
    "rabbet = contents + allowance",
);
static SIGHT: Rule = geometry(
    "frame.sight",
    "the sight is the rabbet less the lip on each side",
    "sight = rabbet - 2 × lip",
);
static OUTSIDE: Rule = geometry(
    "frame.outside",
    "the outside is the sight and the face on each side",
    "outside = sight + 2 × face",
);
static FACE_IN_PLAN: Rule = geometry(
    "frame.face_in_plan",
    "a tilted side is seen from the front as its width times the cosine of the tilt",
    "face = width × cos(tilt)",
);
static FACE: Rule = geometry(
    "frame.face",
    "the face is as the moulding has it",
    "face = stated",
);
static INSIDE: Rule = geometry(
    "floater.inside",
    "a floater's inside is the canvas and the gap on each side",
    "inside = contents + 2 × gap",
);
static FLOATER_OUTSIDE: Rule = geometry(
    "floater.outside",
    "a floater's outside is its inside and the wall on each side",
    "outside = inside + 2 × wall",
);
static LEDGE_OPENING: Rule = geometry(
    "floater.ledge_opening",
    "the ledges leave an opening in the back",
    "opening = inside - 2 × ledge",
);
static SETBACK: Rule = geometry(
    "floater.setback",
    "the canvas lies behind the floater's front by the recess less its own depth",
    "setback = recess - canvas",
);
static LIP_COVER: Rule = geometry(
    "frame.lip_cover",
    "the lip covers the package by its width less half the allowance, the package standing in the middle",
    "lip_cover = lip - half_down(allowance)",
);
static FILLET_SIGHT: Rule = geometry(
    "frame.fillet_sight",
    "a fillet under the lip narrows the sight by its face on each side",
    "fillet_sight = sight - 2 × fillet_face",
);
static FILLET_LONG: Rule = geometry(
    "frame.fillet_long",
    "a fillet under the lip is as large as what the member holds",
    "long = contents",
);

/// A frame member, sized.
#[derive(Clone, Debug)]
pub struct MemberSizes {
    /// What it is called.
    pub name: String,
    /// What kind of member it is.
    pub role: Role,
    /// Its moulding, where it has a catalogue code.
    pub material: Option<Arc<Material>>,
    /// What it holds: the package, or the outside of the member within.
    pub contents: WorkedSize,
    /// Rabbet size; for a floater, its inside.
    pub rabbet: WorkedSize,
    /// Sight; none for a floater.
    pub sight: Option<WorkedSize>,
    /// Outside.
    pub outside: WorkedSize,
    /// Width seen from the front.
    pub face: Worked<Length>,
    /// Lip as stated.
    pub lip: Length,
    /// Rabbet size less contents, in total.
    pub allowance: Length,
    /// How far the lip covers what it holds, standing in the middle; none for a floater.
    pub lip_cover: Option<Worked<Length>>,
    /// Full height of the moulding, where it is known.
    pub height: Option<Length>,
    /// Rabbet depth, where it is known.
    pub rabbet_depth: Option<Length>,
    /// Tilt of its sides from flat.
    pub tilt: Option<Angle>,
    /// Its legs.
    pub legs: Legs,
    /// The stick it takes and the length charged.
    pub stick: StickUse,
    /// The fillet under its lip: sight and long points.
    pub fillet: Option<FrameFilletSizes>,
    /// For a floater: ledge opening, setback, ledge and gap.
    pub floater: Option<FloaterSizes>,
    /// Layers in its rabbet, where its depth is known.
    pub stack: Option<Stack>,
}

impl MemberSizes {
    /// Every rectangle it has.
    pub(crate) fn rectangles(&self) -> impl Iterator<Item = WorkedSize> {
        let fillet = self.fillet.as_ref().map(|fillet| fillet.sight);
        let ledges = self.floater.map(|floater| floater.ledge_opening);
        [
            Some(self.rabbet),
            self.sight,
            Some(self.outside),
            fillet,
            ledges,
        ]
        .into_iter()
        .flatten()
    }
}

/// A fillet under a lip, sized.
#[derive(Clone, Debug)]
pub struct FrameFilletSizes {
    /// Its sight.
    pub sight: WorkedSize,
    /// Its long points.
    pub long: WorkedSize,
    /// Its material, where it has a catalogue code.
    pub material: Option<Arc<Material>>,
    /// Width seen.
    pub face: Length,
    /// Thickness.
    pub thickness: Length,
    /// The stick it takes.
    pub stick: StickUse,
}

/// What only a floater has.
#[derive(Clone, Copy, Debug)]
pub struct FloaterSizes {
    /// Opening in the back between the ledges.
    pub ledge_opening: WorkedSize,
    /// How far the canvas lies behind the front, where the recess is known.
    pub setback: Option<Worked<Length>>,
    /// Gap on each side.
    pub gap: Length,
    /// Width of the ledge.
    pub ledge: Length,
}

/// The lip cover of the member that holds the package; none for a floater.
pub(crate) fn lip_cover(brief: &Brief<'_>, working: &mut Working) -> Option<Worked<Length>> {
    let (index, member) = brief.members.iter().enumerate().next_back()?;
    lip_cover_of(member, index, working)
}

fn lip_cover_of(
    member: &MemberBrief<'_>,
    index: usize,
    working: &mut Working,
) -> Option<Worked<Length>> {
    if member.floater.is_some() {
        return None;
    }
    let inputs = [
        ("lip", member.lip.into()),
        ("allowance", member.allowance.into()),
    ];
    let value = member.lip.value - member.allowance.value.half_down();
    Some(working.by(
        &LIP_COVER,
        Subject::nth("frame", index, "lip_cover"),
        &inputs,
        value,
    ))
}

/// Widths of the members seen from the front, outside in.
pub(crate) fn faces(brief: &Brief<'_>, working: &mut Working) -> Vec<Worked<Length>> {
    let each = brief.members.iter().enumerate();
    each.map(|(index, member)| face_in_plan(member, index, working))
        .collect()
}

/// Sizes every member from the package outwards; returned outside in.
pub(crate) fn members(
    brief: &Brief<'_>,
    package: WorkedSize,
    faces: &[Worked<Length>],
    lip_cover: Option<Worked<Length>>,
    working: &mut Working,
) -> Vec<MemberSizes> {
    let mut contents = package;
    let mut inside_out = Vec::with_capacity(brief.members.len());
    for (index, member) in brief.members.iter().enumerate().rev() {
        let innermost = index + 1 == brief.members.len();
        let cover = if innermost {
            lip_cover
        } else {
            lip_cover_of(member, index, working)
        };
        let sized = one(brief, index, contents, faces[index], cover, working);
        contents = sized.outside;
        inside_out.push(sized);
    }
    inside_out.reverse();
    inside_out
}

fn one(
    brief: &Brief<'_>,
    index: usize,
    contents: WorkedSize,
    face: Worked<Length>,
    lip_cover: Option<Worked<Length>>,
    working: &mut Working,
) -> MemberSizes {
    let member = &brief.members[index];
    let shell = match &member.floater {
        None => rabbeted(member, index, contents, face, working),
        Some(own) => floater(brief, own, index, contents, working),
    };
    let (short, rabbet, outside) = (shell.short(), shell.rabbet, shell.outside);
    let legs = legs::legs(brief, member, index, (short, rabbet, outside), working);
    let stick = length::stick(
        brief,
        member,
        index,
        (contents, face, outside),
        &legs,
        working,
    );
    let fillet = shell
        .sight
        .and_then(|sight| fillet(brief, member, index, sight, contents, working));
    MemberSizes {
        name: member.name.clone(),
        role: member.member.role,
        material: member.material.clone(),
        contents,
        rabbet,
        sight: shell.sight,
        outside,
        face,
        lip: member.lip.value,
        allowance: member.allowance.value,
        lip_cover,
        height: member.height.map(|height| height.value),
        rabbet_depth: member.rabbet_depth.map(|depth| depth.value),
        tilt: member.member.tilt.map(|tilt| *tilt),
        legs,
        stick,
        fillet,
        floater: shell.floater,
        stack: None,
    }
}

/// The rectangles of a member.
struct Shell {
    rabbet: WorkedSize,
    sight: Option<WorkedSize>,
    outside: WorkedSize,
    floater: Option<FloaterSizes>,
}

impl Shell {
    /// The innermost edge a leg has: its sight, or a floater's ledge.
    fn short(&self) -> WorkedSize {
        match (&self.floater, self.sight) {
            (Some(floater), _) => floater.ledge_opening,
            (None, Some(sight)) => sight,
            (None, None) => self.rabbet,
        }
    }
}

fn face_in_plan(member: &MemberBrief<'_>, index: usize, working: &mut Working) -> Worked<Length> {
    let subject = Subject::nth("frame", index, "face");
    match member.member.tilt {
        None => working.by(
            &FACE,
            subject,
            &[("stated", member.face.into())],
            member.face.value,
        ),
        Some(tilt) => {
            let plan = in_plan_nearest(member.face.value, *tilt);
            let inputs = [
                ("width", member.face.into()),
                ("tilt", crate::trace::job_angle(*tilt)),
            ];
            working.by(&FACE_IN_PLAN, subject, &inputs, plan)
        }
    }
}

fn rabbeted(
    member: &MemberBrief<'_>,
    index: usize,
    contents: WorkedSize,
    face: Worked<Length>,
    working: &mut Working,
) -> Shell {
    let subject = |quantity| Subject::nth("frame", index, quantity);
    let allowance = member.allowance;
    let rabbet = both(
        working,
        &RABBET,
        subject("rabbet"),
        contents.size().widen(allowance.value),
        |axis| {
            [
                ("contents", contents.along(axis).into()),
                ("allowance", allowance.into()),
            ]
        },
    );
    let sight = both(
        working,
        &SIGHT,
        subject("sight"),
        rabbet.size().shrink(member.lip.value),
        |axis| {
            [
                ("rabbet", rabbet.along(axis).into()),
                ("lip", member.lip.into()),
            ]
        },
    );
    let outside = both(
        working,
        &OUTSIDE,
        subject("outside"),
        sight.size().grow(face.value),
        |axis| [("sight", sight.along(axis).into()), ("face", face.into())],
    );
    Shell {
        rabbet,
        sight: Some(sight),
        outside,
        floater: None,
    }
}

fn floater(
    brief: &Brief<'_>,
    own: &FloaterBrief,
    index: usize,
    contents: WorkedSize,
    working: &mut Working,
) -> Shell {
    let subject = |quantity| Subject::nth("frame", index, quantity);
    let size = contents.size().grow(own.gap.value);
    let inside = both(working, &INSIDE, subject("inside"), size, |axis| {
        [
            ("contents", contents.along(axis).into()),
            ("gap", own.gap.into()),
        ]
    });
    let outside = both(
        working,
        &FLOATER_OUTSIDE,
        subject("outside"),
        inside.size().grow(own.wall.value),
        |axis| {
            [
                ("inside", inside.along(axis).into()),
                ("wall", own.wall.into()),
            ]
        },
    );
    Shell {
        rabbet: inside,
        sight: None,
        outside,
        floater: Some(ledge(brief, own, index, inside, working)),
    }
}

/// The ledge a canvas is screwed to, and how far behind the front it leaves the canvas.
fn ledge(
    brief: &Brief<'_>,
    own: &FloaterBrief,
    index: usize,
    inside: WorkedSize,
    working: &mut Working,
) -> FloaterSizes {
    let subject = |quantity| Subject::nth("frame", index, quantity);
    let ledge_opening = both(
        working,
        &LEDGE_OPENING,
        subject("ledge_opening"),
        inside.size().shrink(own.ledge.value),
        |axis| {
            [
                ("inside", inside.along(axis).into()),
                ("ledge", own.ledge.into()),
            ]
        },
    );
    let first = brief.job.art.first();
    let canvas = first.map_or(Length::ZERO, |art| *art.thickness);
    let setback = brief.members[index].rabbet_depth.map(|recess| {
        let inputs = [
            ("recess", recess.into()),
            ("canvas", working::Given::job(canvas)),
        ];
        working.by(&SETBACK, subject("setback"), &inputs, recess.value - canvas)
    });
    FloaterSizes {
        ledge_opening,
        setback,
        gap: own.gap.value,
        ledge: own.ledge.value,
    }
}

fn fillet(
    brief: &Brief<'_>,
    member: &MemberBrief<'_>,
    index: usize,
    sight: WorkedSize,
    contents: WorkedSize,
    working: &mut Working,
) -> Option<FrameFilletSizes> {
    let own = member.fillet.as_ref()?;
    let subject = |quantity| Subject::nth("frame", index, quantity);
    let size = sight.size().shrink(own.face.value);
    let inner = both(
        working,
        &FILLET_SIGHT,
        subject("fillet_sight"),
        size,
        |axis| {
            [
                ("sight", sight.along(axis).into()),
                ("fillet_face", own.face.into()),
            ]
        },
    );
    let long = both(
        working,
        &FILLET_LONG,
        subject("fillet_long"),
        contents.size(),
        |axis| [("contents", contents.along(axis).into())],
    );
    let stick = strip(
        brief,
        (
            [subject("fillet_length"), subject("fillet_one_stick")],
            long,
        ),
        own.material.as_ref(),
        working,
    );
    Some(FrameFilletSizes {
        sight: inner,
        long,
        material: own.material.clone(),
        face: own.face.value,
        thickness: own.thickness.value,
        stick,
    })
}

/// The package that a given outside, sight, rabbet or frame size leaves.
pub(crate) fn package_of(
    brief: &Brief<'_>,
    faces: &[Worked<Length>],
    working: &mut Working,
) -> Option<WorkedSize> {
    let fit = brief.job.fit?;
    let frame_is_rabbet = brief.settings.choice(trade::Key::FrameSizeMeans) == "rabbet";
    let (rabbet, package) = match (fit.frame, frame_is_rabbet) {
        (Some(frame), true) => (Some(frame), fit.package),
        (Some(frame), false) => (fit.rabbet, Some(frame)),
        (None, _) => (fit.rabbet, fit.package),
    };
    inverse::package(
        brief,
        [fit.outside, rabbet, fit.sight, package].map(|given| given.map(|size| *size)),
        faces,
        working,
    )
}
