//! Legs: their length at short point, rabbet and long point, and the saw's two settings.

use measure::{Angle, Length};
use trade::Key;
use working::{Axis, Given, Rule, Source, Status, Subject, Worked, Working};

use crate::brief::{Brief, MemberBrief};
use crate::trace::{WorkedSize, geometry};
use crate::turn::{across_flats_side_nearest, compound_nearest, mitre_nearest};

static MITRE: Rule = geometry(
    "leg.mitre",
    "each mitre takes half the turn of a corner",
    "mitre = nearest(half_turn ÷ sides)",
);
static SIDE: Rule = geometry(
    "leg.side",
    "a side of a regular polygon is its width across the flats times the tangent of the mitre",
    "side = across_flats × tan(mitre)",
);
static GAUGE: Rule = Rule {
    id: "leg.gauge",
    words: "mitre gauge for sloped sides",
    formula: "gauge = atan(cos(tilt) × tan(mitre))",
    source: Source::Cited(COMPOUND),
    status: Status::Published,
};
static BLADE: Rule = Rule {
    id: "leg.blade",
    words: "blade tilt for sloped sides",
    formula: "blade = asin(sin(tilt) × sin(mitre))",
    source: Source::Cited(COMPOUND),
    status: Status::Published,
};
static COMPOUND: &working::Citation = trade::settings::cited("SG");

/// One kind of leg of a member.
#[derive(Clone, Copy, Debug)]
pub struct Leg {
    /// How many are cut.
    pub count: u32,
    /// Along the sight edge (a floater's ledge).
    pub short: Worked<Length>,
    /// Along the rabbet wall.
    pub rabbet: Worked<Length>,
    /// Along the outside.
    pub long: Worked<Length>,
}

/// The legs of a member and how the saw is set for them.
#[derive(Clone, Debug)]
pub struct Legs {
    /// Longest first.
    pub each: Vec<Leg>,
    /// Mitre angle in plan.
    pub mitre: Worked<Angle>,
    /// Mitre gauge and blade tilt, for sloped sides.
    pub compound: Option<(Worked<Angle>, Worked<Angle>)>,
    /// Where the shop's scale reads: `sight`, `rabbet` or `outside`.
    pub scale: &'static str,
}

impl Legs {
    /// How many legs there are in all.
    pub fn count(&self) -> u32 {
        self.each.iter().map(|leg| leg.count).sum()
    }

    /// The longest long point.
    pub fn longest(&self) -> Length {
        self.each
            .iter()
            .map(|leg| leg.long.value)
            .max()
            .unwrap_or_default()
    }
}

/// Legs from the member's three rectangles: short, rabbet, outside.
pub(super) fn legs(
    brief: &Brief<'_>,
    member: &MemberBrief<'_>,
    index: usize,
    (short, rabbet, outside): (WorkedSize, WorkedSize, WorkedSize),
    working: &mut Working,
) -> Legs {
    let sides = brief.job.sides;
    let subject = |quantity| Subject::nth("frame", index, quantity);
    let half_turn = Angle::degrees(180); // geometry: half a turn
    let mitre = mitre_nearest(sides);
    let inputs = [
        ("half_turn", Given::job(half_turn)),
        ("sides", Given::job(i64::from(sides))),
    ];
    let mitre = working.by(&MITRE, subject("mitre"), &inputs, mitre);
    let each = if sides == 4 {
        // geometry: a rectangle
        pairs(short, rabbet, outside)
    } else {
        let mut side = |quantity, size: WorkedSize| {
            let value = across_flats_side_nearest(size.width.value, sides);
            let inputs = [("across_flats", size.width.into()), ("mitre", mitre.into())];
            working.by(&SIDE, subject(quantity), &inputs, value)
        };
        vec![Leg {
            count: sides,
            short: side("leg_short", short),
            rabbet: side("leg_rabbet", rabbet),
            long: side("leg_long", outside),
        }]
    };
    let compound = member
        .member
        .tilt
        .map(|tilt| compound(*tilt, sides, mitre, index, working));
    Legs {
        each,
        mitre,
        compound,
        scale: brief.settings.choice(Key::LegScale),
    }
}

/// Two pairs of legs, the longer first.
fn pairs(short: WorkedSize, rabbet: WorkedSize, outside: WorkedSize) -> Vec<Leg> {
    let leg = |axis| Leg {
        count: 2,
        short: short.along(axis),
        rabbet: rabbet.along(axis),
        long: outside.along(axis),
    };
    let mut pairs = vec![leg(Axis::Height), leg(Axis::Width)];
    if pairs[1].long.value > pairs[0].long.value {
        pairs.reverse();
    }
    pairs
}

/// Mitre gauge and blade tilt of sloped sides.
fn compound(
    tilt: Angle,
    sides: u32,
    mitre: Worked<Angle>,
    index: usize,
    working: &mut Working,
) -> (Worked<Angle>, Worked<Angle>) {
    let (gauge, blade) = compound_nearest(tilt, sides);
    let mut angle = |rule, quantity, value: Angle| {
        let inputs = [("tilt", Given::job(tilt)), ("mitre", mitre.into())];
        working.by(rule, Subject::nth("frame", index, quantity), &inputs, value)
    };
    (angle(&GAUGE, "gauge", gauge), angle(&BLADE, "blade", blade))
}
