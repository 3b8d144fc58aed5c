//! What holds a piece on its wall, and who carries it there.

use working::Status::{Assumed, CommonPractice, Published, ShopChoice};

use super::super::value::{Default, Definition};
use super::{angle, choice, count, i, length, t};

pub(super) const WEIGHT_FACTOR: Definition = count(
    "hanging.wire_factor",
    4,
    (1, 20),
    "",
    "",
    CommonPractice,
    "How many times the weight of the piece its wire must be rated for.",
);
pub(super) const PULL_FACTOR: Definition = count(
    "hanging.pull_factor",
    5,
    (1, 20),
    "",
    "E2",
    Published,
    "How many times its pull a wire must break at: 5 for wire rope slings.",
);
pub(super) const FITTING_FACTOR: Definition = count(
    "hanging.fitting_factor",
    4,
    (1, 20),
    "",
    "E1",
    Published,
    "How many times its load a ring, hook or eye must break at: 4 to 5 in rigging, 2 in workshop custom.",
);
pub(super) const PEOPLE_FACTOR: Definition = count(
    "hanging.people_factor",
    8,
    (1, 20),
    "",
    "",
    CommonPractice,
    "The same over beds, seats and doors: 8 to 10 in stage practice.",
);
pub(super) const KNOT: Definition = count(
    "hanging.knot",
    60,
    (10, 100),
    "%",
    "",
    Assumed,
    "Strength left at a hand-twisted end of wire: a ferrule leaves 90, a splice 80; no figure was found for a twist, which is weaker.",
);
pub(super) const LEAST_ANGLE: Definition = angle(
    "hanging.least_angle",
    15,
    (5, 60),
    CommonPractice,
    "Flattest angle of a wire that gets no caution; aim at 45°.",
);
pub(super) const CENTRE: Definition = length(
    "hanging.centre",
    (i(7424), t(14750)),
    (i(2560), i(15360)),
    "",
    CommonPractice,
    "Height of a picture's centre above the floor: 57 to 60 in, 145 to 150 cm.",
);
pub(super) const GAP: Definition = length(
    "hanging.gap",
    (i(384), t(750)),
    (i(0), i(5120)),
    "",
    CommonPractice,
    "Wall left between neighbours.",
);
pub(super) const OVER_FURNITURE: Definition = length(
    "hanging.over_furniture",
    (i(896), t(1750)),
    (i(0), i(5120)),
    "",
    CommonPractice,
    "Wall left above furniture: 6 to 8 in.",
);
pub(super) const HOOK_SEAT: Definition = length(
    "hanging.hook_seat",
    (i(160), t(320)),
    (i(0), i(640)),
    "",
    CommonPractice,
    "From the seat of a hook up to its nail.",
);
pub(super) const HOOKS: Definition = choice(
    "hanging.hooks",
    Default::Choice("by weight"),
    &["one", "two", "by weight"],
    "HP",
    Published,
    "One hook or two for a wire; two wall points are safer than one.",
);
pub(super) const HOOKS_APART: Definition = choice(
    "hanging.hooks_apart",
    Default::Choice("third"),
    &["half", "third", "quarter"],
    "",
    CommonPractice,
    "How far apart two hooks stand under a wire, as a share of the distance between its rings.",
);
pub(super) const ONE_HOOK_TO: Definition = count(
    "hanging.one_hook_to",
    9,
    (1, 50),
    "kg",
    "",
    CommonPractice,
    "Weight to which one hook serves.",
);
pub(super) const SINGLE_TO: Definition = count(
    "hanging.single_ring_to",
    2,
    (1, 50),
    "kg",
    "",
    CommonPractice,
    "Weight to which a single ring or two light rings serve.",
);
pub(super) const WIRE_TO: Definition = count(
    "hanging.wire_to",
    18,
    (1, 100),
    "kg",
    "",
    CommonPractice,
    "Weight to which a wire serves, with two-hole rings on two hooks.",
);
pub(super) const RINGS_TO: Definition = count(
    "hanging.rings_to",
    34,
    (1, 200),
    "kg",
    "",
    CommonPractice,
    "Weight to which rings straight on two hooks serve; above it a cleat or plates into studs, and a shelf below.",
);
pub(super) const SAG: Definition = count(
    "hanging.sag",
    300,
    (50, 2000),
    "parts of the span",
    "",
    CommonPractice,
    "A rail may sag by the span divided by this, its creep counted in.",
);
pub(super) const CREEP: Definition = count(
    "hanging.creep",
    2,
    (1, 4),
    "",
    "H1",
    Assumed,
    "How many times its first sag wood comes to under a load that stays (from memory).",
);
pub(super) const STRAINER_WOOD: Definition = choice(
    "hanging.strainer_wood",
    Default::Choice("pine, eastern white"),
    &[
        "pine, eastern white",
        "pine, ponderosa",
        "yellow-poplar",
        "basswood, American",
    ],
    "",
    ShopChoice,
    "Wood of strainers, as the table of woods names it: its stiffness helps the rails, its weight counts.",
);
pub(super) const GAUGE: Definition = count(
    "hanging.screw_gauge",
    6,
    (2, 14),
    "",
    "",
    CommonPractice,
    "Inch gauge of a hanger's screw.",
);
pub(super) const SCREWS: Definition = count(
    "hanging.screws",
    2,
    (1, 6),
    "",
    "",
    CommonPractice,
    "Screws in each hanger.",
);
pub(super) const REACH: Definition = length(
    "lifting.reach",
    (i(2016), t(4000)),
    (i(1280), i(3225)),
    "",
    CommonPractice,
    "How far in front of the ankles a framed piece is held.",
);
pub(super) const BENCH: Definition = length(
    "lifting.bench",
    (i(4480), t(9000)),
    (i(0), i(9000)),
    "",
    CommonPractice,
    "Height of the bench top above the floor.",
);
pub(super) const GUIDE: Definition = count(
    "lifting.guide",
    16,
    (5, 40),
    "kg",
    "",
    CommonPractice,
    "Weight close to the body at the waist that one person is asked to lift: 25 for men, 16 for women in one national guide (from memory).",
);
