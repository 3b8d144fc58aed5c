//! From the outside in: what a given size leaves for the package.

use measure::{Length, Size};
use working::{Axis, Given, Rule, Subject, Worked, Working};

use crate::brief::{Brief, FloaterBrief, MemberBrief};
use crate::trace::{WorkedSize, along, both, geometry};

static FROM_OUTSIDE: Rule = geometry(
    "fit.outside",
    "in a given outside, what a member leaves for its contents",
    "contents = outside - 2 × face + 2 × lip - allowance",
);
static FROM_FLOATER: Rule = geometry(
    "fit.floater",
    "in a given outside, what a floater leaves for the canvas",
    "contents = outside - 2 × wall - 2 × gap",
);
static FROM_FLOATER_INSIDE: Rule = geometry(
    "fit.floater_inside",
    "a floater's given inside leaves itself less the gap on each side",
    "contents = inside - 2 × gap",
);
static FROM_RABBET: Rule = geometry(
    "fit.rabbet",
    "a given rabbet leaves itself less the allowance",
    "contents = rabbet - allowance",
);
static FROM_SIGHT: Rule = geometry(
    "fit.sight",
    "a given sight leaves itself and the lips, less the allowance",
    "contents = sight + 2 × lip - allowance",
);
static GIVEN: Rule = geometry("fit.package", "the package is given", "package = given");

/// The package that one of the given sizes leaves: outside, rabbet, sight, package.
pub(super) fn package(
    brief: &Brief<'_>,
    [outside, rabbet, sight, package]: [Option<Size>; 4], // geometry: four places a size can be given at
    faces: &[Worked<Length>],
    working: &mut Working,
) -> Option<WorkedSize> {
    let mut inwards = Inwards {
        brief,
        faces,
        working,
    };
    let first = match (outside, rabbet) {
        (Some(given), _) => Some(Edge::Outside(Outer::Given(given))),
        (None, Some(given)) => Some(Edge::Rabbet(given)),
        (None, None) => None,
    };
    if let Some(edge) = first {
        return inwards.from(edge);
    }
    let last = brief.members.len().checked_sub(1)?;
    if let Some(given) = sight {
        return Some(inwards.contents(last, Edge::Sight(given)));
    }
    package.map(|given| {
        let subject = Subject::of("package", "size");
        both(inwards.working, &GIVEN, subject, given, |axis| {
            [("given", Given::job(along(given, axis)))]
        })
    })
}

/// The edge of a member at which a size is known.
#[derive(Clone, Copy)]
enum Edge {
    Outside(Outer),
    Rabbet(Size),
    Sight(Size),
}

/// The outside of a member: given, or what the member round it leaves.
#[derive(Clone, Copy)]
enum Outer {
    Given(Size),
    Left(WorkedSize),
}

impl Outer {
    fn size(self) -> Size {
        match self {
            Self::Given(size) => size,
            Self::Left(size) => size.size(),
        }
    }

    fn along(self, axis: Axis) -> Given {
        match self {
            Self::Given(size) => Given::job(along(size, axis)),
            Self::Left(size) => size.along(axis).into(),
        }
    }
}

/// A walk through the members from the outside in.
struct Inwards<'a, 'b, 'w> {
    brief: &'a Brief<'b>,
    faces: &'a [Worked<Length>],
    working: &'w mut Working,
}

impl Inwards<'_, '_, '_> {
    /// What the innermost member holds, the outermost being known at `edge`.
    fn from(&mut self, edge: Edge) -> Option<WorkedSize> {
        let mut edge = edge;
        let mut held = None;
        for index in 0..self.brief.members.len() {
            let contents = self.contents(index, edge);
            edge = Edge::Outside(Outer::Left(contents));
            held = Some(contents);
        }
        held
    }

    fn contents(&mut self, index: usize, edge: Edge) -> WorkedSize {
        let member = &self.brief.members[index];
        let subject = if index + 1 == self.brief.members.len() {
            Subject::of("package", "size")
        } else {
            Subject::nth("frame", index, "contents")
        };
        match &member.floater {
            Some(own) => in_floater(own, edge, subject, self.working),
            None => in_rabbet(member, self.faces[index], edge, subject, self.working),
        }
    }
}

fn in_rabbet(
    member: &MemberBrief<'_>,
    face: Worked<Length>,
    edge: Edge,
    subject: Subject,
    working: &mut Working,
) -> WorkedSize {
    let (lip, allowance) = (member.lip, member.allowance);
    match edge {
        Edge::Outside(outer) => {
            let rabbet = outer.size().shrink(face.value).grow(lip.value);
            let size = rabbet.narrow(allowance.value);
            both(working, &FROM_OUTSIDE, subject, size, |axis| {
                [
                    ("outside", outer.along(axis)),
                    ("face", face.into()),
                    ("lip", lip.into()),
                    ("allowance", allowance.into()),
                ]
            })
        }
        Edge::Rabbet(given) => {
            let size = given.narrow(allowance.value);
            both(working, &FROM_RABBET, subject, size, |axis| {
                let rabbet = Given::job(along(given, axis));
                [("rabbet", rabbet), ("allowance", allowance.into())]
            })
        }
        Edge::Sight(given) => {
            let size = given.grow(lip.value).narrow(allowance.value);
            both(working, &FROM_SIGHT, subject, size, |axis| {
                [
                    ("sight", Given::job(along(given, axis))),
                    ("lip", lip.into()),
                    ("allowance", allowance.into()),
                ]
            })
        }
    }
}

/// A floater has no lip: its sight and its rabbet are both its inside.
fn in_floater(
    own: &FloaterBrief,
    edge: Edge,
    subject: Subject,
    working: &mut Working,
) -> WorkedSize {
    match edge {
        Edge::Outside(outer) => {
            let size = outer.size().shrink(own.wall.value).shrink(own.gap.value);
            both(working, &FROM_FLOATER, subject, size, |axis| {
                [
                    ("outside", outer.along(axis)),
                    ("wall", own.wall.into()),
                    ("gap", own.gap.into()),
                ]
            })
        }
        Edge::Rabbet(given) | Edge::Sight(given) => {
            let size = given.shrink(own.gap.value);
            both(working, &FROM_FLOATER_INSIDE, subject, size, |axis| {
                let inside = Given::job(along(given, axis));
                [("inside", inside), ("gap", own.gap.into())]
            })
        }
    }
}
