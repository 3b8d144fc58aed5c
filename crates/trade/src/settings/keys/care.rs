//! What a piece lives through: light, climate, what lies against the art.

use working::Status::{Assumed, CommonPractice, Published};

use super::super::value::{Default, Definition};
use super::{choice, count, i, length, t};

pub(super) const LUX: Definition = count(
    "light.lux",
    120,
    (1, 100_000),
    "lx",
    "L9",
    Published,
    "Light on a wall at home where the place is not named: 120 lx is typical in one survey over several years, 137 its 90th percentile.",
);
pub(super) const HOURS: Definition = count(
    "light.hours",
    12,
    (1, 24),
    "h a day",
    "L10",
    Published,
    "Hours of light a day where none are named; print-permanence ratings count 12.",
);
pub(super) const DAYS: Definition = count(
    "light.days",
    365,
    (1, 366),
    "days a year",
    "",
    CommonPractice,
    "Days of display a year where none are named.",
);
pub(super) const UV_CONTENT: Definition = count(
    "light.uv_content",
    600,
    (0, 2000),
    "µW/lm",
    "L1",
    Assumed,
    "Ultraviolet in daylight through a window: 300 to 600 by wide-band meters (from memory), 150 by a narrow-band one; the highest serves for warnings.",
);
pub(super) const UV_LIMIT: Definition = count(
    "light.uv_limit",
    75,
    (1, 200),
    "µW/lm",
    "L6",
    Published,
    "Ultraviolet above which a caution is given: 75 traditionally, 25 for stricter users, 10 in current good practice.",
);
pub(super) const UV_REMOVED: Definition = count(
    "light.uv_removed_from",
    90,
    (50, 100),
    "%",
    "",
    CommonPractice,
    "Share of ultraviolet that glazing must stop for a fade to be counted without ultraviolet.",
);
pub(super) const LIGHT_SCHEME: Definition = choice(
    "light.scheme",
    Default::Choice("CIE 157:2004"),
    &[
        "CIE 157:2004",
        "National Gallery London 2023",
        "Science Museum of Minnesota",
        "ANSI/IESNA RP-30-96",
    ],
    "L3",
    Assumed,
    "Whose yearly light the program holds a place against; they disagree up to threefold for the most sensitive class.",
);
pub(super) const WOOL_8: Definition = count(
    "light.wool_8_dose",
    1100,
    (1000, 1100),
    "Mlx h",
    "L3",
    Assumed,
    "Light without ultraviolet for one just noticeable fade of blue wool 8: 1100 (CIE 157, from memory) or 1000 (a museum's public program).",
);
pub(super) const CHECK_YEARS: Definition = count(
    "care.check_years",
    5,
    (1, 25),
    "years",
    "",
    CommonPractice,
    "After how many years the customer is asked back for a look at seal, hinges, cords and hangers.",
);
pub(super) const LEAST_YEARS: Definition = count(
    "light.least_years",
    10,
    (1, 200),
    "years",
    "",
    CommonPractice,
    "Years to a just noticeable fade below which a caution is given.",
);
pub(super) const DRY: Definition = count(
    "climate.driest",
    30,
    (0, 100),
    "% RH",
    "",
    CommonPractice,
    "Driest the room gets in a year; heated houses in winter.",
);
pub(super) const DAMP: Definition = count(
    "climate.dampest",
    65,
    (0, 100),
    "% RH",
    "",
    CommonPractice,
    "Dampest the room gets in a year.",
);
pub(super) const HEATED: Definition = count(
    "climate.heated",
    40,
    (0, 100),
    "% RH",
    "",
    Assumed,
    "Humidity of the room while it is cold outdoors: heated air is dry, 30 to 45 in most houses, more where much is cooked, washed or grown.",
);
pub(super) const OUTDOORS: Definition = count(
    "climate.outdoors",
    -10,
    (-40, 20),
    "°C",
    "",
    Assumed,
    "Coldest week outdoors, which an outside wall is judged by; a shop takes its own town's.",
);
pub(super) const ROOM: Definition = count(
    "climate.room",
    20,
    (-20, 45),
    "°C",
    "",
    CommonPractice,
    "Temperature of the room.",
);
pub(super) const MADE_AT: Definition = count(
    "climate.made_at",
    45,
    (0, 100),
    "% RH",
    "",
    CommonPractice,
    "Humidity at which the shop cuts and fits; art and boards shrink and grow from there.",
);
pub(super) const MOULD: Definition = count(
    "climate.mould",
    75,
    (50, 90),
    "% RH",
    "H13",
    Published,
    "Humidity that mould needs for weeks: 75 in one proposal, a cautious 65 in another (H14).",
);
pub(super) const WALL_GAP: Definition = length(
    "climate.wall_gap",
    (i(101), t(200)),
    (i(0), i(640)),
    "H12",
    Published,
    "Gap behind a piece on an outside wall: about 20 mm takes the cold of the wall away from it.",
);
pub(super) const MITRE_GAP: Definition = length(
    "climate.mitre_gap",
    (i(4), t(8)),
    (i(0), i(64)),
    "",
    CommonPractice,
    "Widest gap at a mitre that passes, should the glue give.",
);
pub(super) const ART_SPEC: Definition = choice(
    "board.specification",
    Default::Choice("Library of Congress mat and mount board guide"),
    SPECS,
    "B3",
    Published,
    "The published limits a board next to art is held against; they disagree on the highest pH (8.5, 9.5 or 10).",
);
pub(super) const PHOTOGRAPH_SPEC: Definition = choice(
    "board.specification_photographs",
    Default::Choice("ISO 18902:2013 paper and board near photographs"),
    SPECS,
    "B5",
    Published,
    "The same next to photographs.",
);
pub(super) const PHOTOGRAPHS: Definition = choice(
    "board.photographs",
    Default::Choice("either"),
    &["either", "unbuffered"],
    "B7",
    Published,
    "Whether buffered board may lie against photographs: research supports a ban for cyanotypes only; shops differ.",
);
pub(super) const FOAM: Definition = choice(
    "board.foam",
    Default::Choice("below conservation"),
    &["allowed", "below conservation", "never"],
    "M1",
    Published,
    "Foam board inside the package: one conservation centre refuses it for preservation framing; shops use it, tied to the level promised.",
);
pub(super) const TAPES: Definition = choice(
    "attachment.tapes",
    Default::Choice("below conservation"),
    &["below conservation", "never"],
    "M3",
    Published,
    "Gummed or pressure-sensitive adhesive on art: starch paste only, or by the level promised.",
);
pub(super) const SPACING_HEAVY: Definition = length(
    "attachment.spacing_heavy",
    (i(1280), t(2540)),
    (i(256), i(5120)),
    "M6",
    Published,
    "Longest distance between hinges of a heavy sheet.",
);
pub(super) const SPACING_LIGHT: Definition = length(
    "attachment.spacing_light",
    (i(1920), t(3810)),
    (i(256), i(5120)),
    "M6",
    Published,
    "The same of a light one.",
);
pub(super) const HEAVY_SHEET: Definition = count(
    "attachment.heavy_from",
    250,
    (50, 2000),
    "g/m²",
    "",
    CommonPractice,
    "Weight from which a sheet counts as heavy for its hinges.",
);
pub(super) const USUAL_SHEET: Definition = count(
    "attachment.sheet",
    200,
    (10, 2000),
    "g/m²",
    "",
    CommonPractice,
    "Weight of a sheet of art that nobody weighed.",
);
pub(super) const CORNERS_TO: Definition = length(
    "attachment.corners_to",
    (i(2016), t(4000)),
    (i(256), i(7680)),
    "",
    CommonPractice,
    "Longest side that four corners alone should carry upright; 400 to 500 mm, no published figure was found.",
);
pub(super) const HINGE_FACTOR: Definition = count(
    "attachment.hinge_factor",
    10,
    (2, 50),
    "",
    "",
    CommonPractice,
    "How many times its share of the sheet a hinge should carry: one hinge may take all, and a bump multiplies it.",
);
pub(super) const COVER_LEFT: Definition = length(
    "attachment.cover_left",
    (i(6), t(15)),
    (i(0), i(64)),
    "",
    CommonPractice,
    "Cover of a sheet's edge that must be left when it has shrunk.",
);

/// The published specifications of boards, as the board table names them.
const SPECS: &[&str] = &[
    "ISO 9706:1994 permanent paper",
    "ISO 11108 archival paper",
    "Library of Congress 200-221 folder stock 2002",
    "Library of Congress mat and mount board guide",
    "Fine Art Trade Guild 2004 cotton museum board, unbuffered",
    "Museum board, general description (Quebec)",
    "ISO 18902:2013 paper and board near photographs",
    "ISO 16245:2009 type A box board",
    "ISO 16245:2009 type B (unbuffered)",
];
