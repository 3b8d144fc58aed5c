//! Every setting, one by one.

mod care;
mod pricing;
mod walls;

use measure::{Angle, Length};
use working::Seen;
use working::Status::{self, Assumed, CommonPractice, Published, ShopChoice};

use super::citations::cited;
use super::value::{Default, Definition, Range};

macro_rules! settings {
    ($($name:ident = $definition:expr;)*) => {
        /// The name of a setting inside the program; [`Key::id`] is its name outside.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        #[allow(missing_docs, reason = "each definition carries its sentence")]
        pub enum Key { $($name),* }

        /// Every key, in the order they are listed.
        pub static KEYS: &[Key] = &[$(Key::$name),*];

        static DEFINITIONS: &[Definition] = &[$($definition),*];
    };
}

impl Key {
    /// The place of the key in [`KEYS`].
    #[allow(clippy::as_conversions, reason = "a fieldless enum's own number")]
    pub const fn index(self) -> usize {
        self as usize
    }

    /// All that is known of the setting.
    pub fn definition(self) -> &'static Definition {
        &DEFINITIONS[self.index()]
    }

    /// The setting's name as people write it.
    pub fn id(self) -> &'static str {
        self.definition().id
    }

    /// The key with this id.
    pub fn named(id: &str) -> Option<Self> {
        KEYS.iter().copied().find(|key| key.id() == id)
    }
}

/// `n` 128ths of an inch.
const fn i(n: i64) -> Length {
    Length::inch_128ths(n)
}

/// `n` tenths of a millimetre.
const fn t(n: i64) -> Length {
    Length::micrometres(n * 100)
}

/// A status no higher than what was seen of its source: what was only remembered is assumed.
const fn seen(source: &str, status: Status) -> Status {
    if matches!(status, Published) && matches!(cited(source).seen, Seen::FromMemory) {
        return Assumed;
    }
    status
}

const fn length(
    id: &'static str,
    (inch, metric): (Length, Length),
    (from, to): (Length, Length),
    source: &'static str,
    status: Status,
    words: &'static str,
) -> Definition {
    Definition {
        id,
        words,
        default: Default::Length { inch, metric },
        range: Range::Length(from, to),
        unit: "",
        source,
        status: seen(source, status),
    }
}

const fn count(
    id: &'static str,
    value: i64,
    (from, to): (i64, i64),
    unit: &'static str,
    source: &'static str,
    status: Status,
    words: &'static str,
) -> Definition {
    Definition {
        id,
        words,
        default: Default::Count(value),
        range: Range::Count(from, to),
        unit,
        source,
        status: seen(source, status),
    }
}

const fn choice(
    id: &'static str,
    default: Default,
    options: &'static [&'static str],
    source: &'static str,
    status: Status,
    words: &'static str,
) -> Definition {
    Definition {
        id,
        words,
        default,
        range: Range::Words(options),
        unit: "",
        source,
        status: seen(source, status),
    }
}

const fn angle(
    id: &'static str,
    degrees: i64,
    (from, to): (i64, i64),
    status: Status,
    words: &'static str,
) -> Definition {
    Definition {
        id,
        words,
        default: Default::Angle(Angle::degrees(degrees)),
        range: Range::Angle(Angle::degrees(from), Angle::degrees(to)),
        unit: "",
        source: "",
        status,
    }
}

const fn minutes(id: &'static str, value: i64, words: &'static str) -> Definition {
    count(id, value, (0, 600), "min", "", CommonPractice, words)
}

settings! {
    // The frame.
    FrameAllowance = length("frame.allowance", (i(16), t(30)), (i(0), i(64)), "FG", Published,
        "Rabbet size minus package size, in total. US habit 1/8 in; the UK guild's standard asks 1 to 3 mm, more for larger frames.");
    LeastAllowance = length("frame.least_allowance", (i(8), t(10)), (i(0), i(64)), "", CommonPractice,
        "Least allowance at which glazing does not bind.");
    FrameAllowanceCanvas = length("frame.allowance_canvas", (i(32), t(60)), (i(0), i(128)), "", CommonPractice,
        "The same for stretched canvas: folded corners are fat and keys expand it.");
    FrameSizeMeans = choice("frame.size_means", Default::Choice("rabbet"), &["rabbet", "package"], "", CommonPractice,
        "What a supplier's \"frame size\" is: the size between the rabbet walls, or the package that goes in.");
    FrameTail = length("frame.tail", (i(16), t(30)), (i(0), i(128)), "", CommonPractice,
        "Bare rabbet wall left behind the backing for points.");
    FrameTailCanvas = length("frame.tail_canvas", (i(0), t(0)), (i(0), i(128)), "", CommonPractice,
        "The same behind a stretched canvas, which clips hold.");
    FrameTailDoubleSided = length("frame.tail_double_sided", (i(32), t(60)), (i(0), i(128)), "", CommonPractice,
        "The same behind a double-sided package, for a removable stop.");
    LegScale = choice("frame.leg_scale", Default::Choice("rabbet"), &["sight", "rabbet", "outside"], "", CommonPractice,
        "Where the saw's or chopper's scale reads a leg; the ticket prints all three and marks this one.");
    CutAllowance = length("moulding.cut_allowance", (i(16), t(30)), (i(0), i(128)), "", CommonPractice,
        "Length lost along the stick at each leg: a blade of kerf k takes k times 1.414; 1/8 in covers blade and chopper.");
    EndTrim = length("moulding.end_trim", (i(128), t(250)), (i(0), i(1280)), "", CommonPractice,
        "Length lost at the ends of a stick.");
    StickLength = length("moulding.stick", (i(13824), t(27000)), (i(1536), i(38400)), "", CommonPractice,
        "Length of a stick where neither job nor catalogue says it; sticks run 8 to 12 ft and vary.");
    ChargeRule = choice("moulding.charge_rule", Default::Choice("quick"), &["quick", "cut list", "long points"], "", CommonPractice,
        "The length charged: package perimeter plus eight faces, the stick used, or the sum of the long points.");
    ChargeStep = choice("moulding.charge_step", Default::ChoiceBy { inch: "foot", metric: "0.1 m" },
        &["foot", "half foot", "0.1 m", "exact"], "", CommonPractice,
        "What the length charged is rounded up to.");

    // Mats.
    MatOverlap = length("mat.overlap", (i(16), t(30)), (i(-1280), i(256)), "", CommonPractice,
        "How far a window covers art without margins, on each side.");
    MatOverlapLarge = length("mat.overlap_large", (i(32), t(50)), (i(-1280), i(256)), "", CommonPractice,
        "The same for sheets out of square or larger than `mat.large_art`.");
    LargeArt = length("mat.large_art", (i(3072), t(6000)), (i(640), i(12800)), "", CommonPractice,
        "The longest side above which art counts as large when a window covers it.");
    WindowAt = choice("mat.window_at", Default::Choice("face"), &["face", "foot"], "", CommonPractice,
        "Where the window is measured: at the face of the board or at the foot of the bevel next to the art.");
    BevelAngle = angle("mat.bevel", 45, (20, 90), CommonPractice,
        "Angle of the bevel from the face of the board.");
    BorderMeasured = choice("mat.border_measured", Default::Choice("cut"), &["cut", "visible"], "", CommonPractice,
        "What a border is: window to board edge as cut, or the part the frame leaves to be seen.");
    RevealMeasured = choice("mat.reveal_measured", Default::Choice("nominal"), &["nominal", "seen"], "", CommonPractice,
        "What a reveal is: from face edge to face edge, or the colour seen inside the upper bevel.");
    MatReveal = length("mat.reveal", (i(32), t(60)), (i(8), i(256)), "", CommonPractice,
        "Reveal of a mat that names none.");
    MatWeighting = choice("mat.weighting", Default::Choice("none"), &["none", "tenth", "fifth", "three to four"], "NV", Published,
        "How much wider the bottom border is: nothing, a tenth, a fifth, or 4 to the others' 3 (one government manual).");
    Border = length("mat.border", (i(320), t(650)), (i(128), i(1280)), "", CommonPractice,
        "Border of a mat that names none: 2 1/2 in suits windows to about 24 united inches.");
    WeightStep = length("mat.weight_step", (i(8), t(10)), (i(1), i(128)), "", CommonPractice,
        "A weighted bottom border is rounded to the nearest of these.");
    UndermatUnder = length("mat.undermat_under", (i(32), t(60)), (i(0), i(128)), "", CommonPractice,
        "How much smaller than the mat above it each undermat is cut outside, in total, so that it tapes on clear of the edge.");
    MatMarks = choice("mat.marks_at", Default::Choice("face"), &["face", "foot"], "", CommonPractice,
        "Where the cutter's guide and stops are set: to the lines of the face edge, or of the bevel's foot.");
    CutDirection = choice("mat.cut_direction", Default::Choice("away"), &["away", "towards"], "", CommonPractice,
        "Which way the blade runs along the guide, seen by the person cutting.");
    GuideOffset = length("mat.guide_offset", (i(0), t(0)), (i(-128), i(128)), "", ShopChoice,
        "Added to every guide setting for the machine at hand.");
    MinBorder = length("mat.least_border", (i(128), t(250)), (i(0), i(1280)), "", CommonPractice,
        "Least border that cuts and holds; 2 in is better.");
    MinGutter = length("mat.least_gutter", (i(64), t(120)), (i(0), i(640)), "", CommonPractice,
        "Least strip between two openings.");
    MinCover = length("mat.least_cover", (i(8), t(15)), (i(0), i(128)), "", CommonPractice,
        "Least cover of the art at the foot of the bevel.");
    GrooveClear = length("mat.groove_clear", (i(32), t(60)), (i(0), i(640)), "", CommonPractice,
        "Least distance of a groove from the window.");
    SheetTrim = length("board.trim_warning", (i(16), t(30)), (i(0), i(256)), "", CommonPractice,
        "A board that misses a smaller sheet by no more than this is pointed out.");

    // Floats, fillets, floaters, boxes, textiles.
    FloatMargin = length("float.margin", (i(64), t(120)), (i(0), i(1280)), "", CommonPractice,
        "Ground left round floated art that names no margin.");
    FloatLift = length("float.lift", (i(16), t(30)), (i(0), i(256)), "", CommonPractice,
        "Thickness of the hidden board under floated art that names none.");
    FilletTuck = length("fillet.tuck", (i(24), t(50)), (i(0), i(128)), "", CommonPractice,
        "Width of a fillet hidden behind the mat.");
    FilletLand = length("fillet.land", (i(32), t(60)), (i(0), i(256)), "", CommonPractice,
        "Mat left outside a fillet's long points on each side.");
    FloaterGap = length("floater.gap", (i(32), t(80)), (i(0), i(256)), "", CommonPractice,
        "Gap between canvas and floater wall.");
    FloaterLand = length("floater.ledge_land", (i(64), t(120)), (i(0), i(256)), "", CommonPractice,
        "Ledge that must lie under the canvas, beyond the gap, for screws.");
    FloaterSetback = length("floater.setback_least", (i(8), t(15)), (i(0), i(128)), "", CommonPractice,
        "Least depth at which the canvas face lies behind the floater's front; 1/8 in at most reads well.");
    BoxAir = length("box.air", (i(32), t(60)), (i(0), i(640)), "", CommonPractice,
        "Air between the deepest object and the glazing of a shadowbox.");
    WrapTurn = length("wrap.turn", (i(256), t(500)), (i(64), i(640)), "", CommonPractice,
        "Cloth turned to the back of a wrapped board on each side.");
    SinkRoom = length("sink.room", (i(24), t(50)), (i(0), i(128)), "LC2", Published,
        "Room round an object in a sink mat; the Library of Congress asks 1/8 to 1/4 in.");

    // Glazing and backing.
    GlassUndersize = length("glazing.glass_undersize", (i(0), t(0)), (i(0), i(64)), "", CommonPractice,
        "How much smaller than the package glass is cut, in total.");
    AcrylicUndersize = length("glazing.acrylic_undersize", (i(8), t(15)), (i(0), i(64)), "", CommonPractice,
        "How much smaller acrylic is cut for each `glazing.acrylic_step` of its length, and at least.");
    AcrylicStep = length("glazing.acrylic_step", (i(3072), t(6000)), (i(640), i(12800)), "", CommonPractice,
        "Length of acrylic that asks for one further undersize.");
    AcrylicGrowth = count("glazing.acrylic_growth", 40, (10, 120), "millionths per °F", "AC", Published,
        "Growth of acrylic: 0.00004 in per in per °F.");
    AcrylicSwing = count("glazing.acrylic_swing", 40, (0, 120), "°F", "", CommonPractice,
        "Warmest minus coolest temperature acrylic must survive in its rabbet.");
    GlazingCover = length("glazing.least_cover", (i(8), t(15)), (i(0), i(128)), "", CommonPractice,
        "Least lip left over glazing pushed hard to the other side.");
    ClearAir = length("glazing.clear_air", (i(16), t(30)), (i(0), i(640)), "", CommonPractice,
        "Air asked for in front of pastels, watercolours and photographs.");
    GlassLimit2 = count("glazing.glass_limit_2mm", 60, (10, 200), "united inches", "", CommonPractice,
        "Largest width plus height for glass of 2 mm.");
    GlassLimit25 = count("glazing.glass_limit_2_5mm", 75, (10, 200), "united inches", "", CommonPractice,
        "Largest width plus height for glass of 2.5 mm.");
    GlassLimit3 = count("glazing.glass_limit_3mm", 84, (10, 200), "united inches", "", CommonPractice,
        "Largest width plus height for glass of 3 mm.");
    AcrylicLimit25 = count("glazing.acrylic_limit_2_5mm", 60, (10, 300), "united inches", "", CommonPractice,
        "Largest width plus height for acrylic of 2.5 mm.");
    AcrylicLimit3 = count("glazing.acrylic_limit_3mm", 100, (10, 300), "united inches", "", CommonPractice,
        "Largest width plus height for acrylic of 3 mm.");
    AcrylicLimit4 = count("glazing.acrylic_limit_4_5mm", 144, (10, 300), "united inches", "", CommonPractice,
        "Largest width plus height for acrylic of 4.5 to 6 mm.");
    GlassMiddle = length("glazing.sheet_2_5mm_from", (t(22), t(22)), (t(10), t(40)), "", CommonPractice,
        "Thinnest sheet that counts as 2.5 mm: 3/32 in single strength is 2.38 mm nominal.");
    GlassStout = length("glazing.sheet_3mm_from", (t(28), t(28)), (t(10), t(50)), "", CommonPractice,
        "Thinnest sheet that counts as 3 mm.");
    AcrylicStout = length("glazing.sheet_4_5mm_from", (t(42), t(42)), (t(10), t(80)), "", CommonPractice,
        "Thinnest sheet that counts as 4.5 mm.");
    BackUndersize = length("backing.undersize", (i(0), t(0)), (i(0), i(64)), "", CommonPractice,
        "How much smaller than the package backing is cut, in total.");

    // Joints and stiffness.
    StructureUi1 = count("structure.band_1", 40, (10, 300), "united inches", "", CommonPractice,
        "Upper end of the first band of outside width plus height for the least face of a joined frame.");
    StructureUi2 = count("structure.band_2", 60, (10, 300), "united inches", "", CommonPractice,
        "Upper end of the second band.");
    StructureUi3 = count("structure.band_3", 80, (10, 300), "united inches", "", CommonPractice,
        "Upper end of the third band.");
    StructureUi4 = count("structure.band_4", 100, (10, 300), "united inches", "", CommonPractice,
        "Upper end of the fourth band; above it a strainer or brace, or stop.");
    FaceGlass1 = length("structure.face_glass_1", (i(64), t(120)), (i(0), i(640)), "", CommonPractice,
        "Least face in the first band under glass.");
    FaceGlass2 = length("structure.face_glass_2", (i(96), t(190)), (i(0), i(640)), "", CommonPractice,
        "Least face in the second band under glass.");
    FaceGlass3 = length("structure.face_glass_3", (i(160), t(320)), (i(0), i(640)), "", CommonPractice,
        "Least face in the third band under glass.");
    FaceGlass4 = length("structure.face_glass_4", (i(224), t(450)), (i(0), i(640)), "", CommonPractice,
        "Least face in the fourth band under glass.");
    FaceLight1 = length("structure.face_light_1", (i(64), t(120)), (i(0), i(640)), "", CommonPractice,
        "Least face in the first band under acrylic or no glazing.");
    FaceLight2 = length("structure.face_light_2", (i(80), t(160)), (i(0), i(640)), "", CommonPractice,
        "Least face in the second band under acrylic or no glazing.");
    FaceLight3 = length("structure.face_light_3", (i(128), t(250)), (i(0), i(640)), "", CommonPractice,
        "Least face in the third band under acrylic or no glazing.");
    FaceLight4 = length("structure.face_light_4", (i(160), t(320)), (i(0), i(640)), "", CommonPractice,
        "Least face in the fourth band under acrylic or no glazing.");
    HeightBand1 = length("structure.height_1", (i(64), t(120)), (i(0), i(640)), "", CommonPractice,
        "Least moulding height above the first band.");
    HeightBand2 = length("structure.height_2", (i(96), t(190)), (i(0), i(640)), "", CommonPractice,
        "Least moulding height above the second band.");

    // Holding, closing, hanging.
    HingeInset = length("attachment.inset", (i(256), t(500)), (i(0), i(1280)), "LC2", Published,
        "How far in from each corner a hinge sits: a couple of inches.");
    HingeRule = choice("attachment.hinges", Default::Choice("two"), &["two", "more with size"], "LC2", Published,
        "Two hinges only, or as many as `attachment.spacing_heavy` and `attachment.spacing_light` ask for.");
    PointSpacing = length("points.spacing", (i(640), t(1250)), (i(256), i(1280)), "", CommonPractice,
        "Longest distance between points; 4 to 6 in is usual.");
    PointInset = length("points.inset", (i(256), t(500)), (i(0), i(1280)), "", CommonPractice,
        "Distance of the first point from a corner.");
    CoverInside = length("cover.inside", (i(16), t(30)), (i(0), i(128)), "", CommonPractice,
        "How far inside the outer edge the dust cover is trimmed.");
    RingDrop = choice("hanging.ring_drop", Default::Choice("third"), &["fifth", "quarter", "third"], "", CommonPractice,
        "How far down the frame the rings go, as a share of its outside height.");
    RingStep = length("hanging.mark_step", (i(8), t(10)), (i(1), i(128)), "", CommonPractice,
        "Place marks for hardware are rounded to the nearest of these.");
    WireRise = choice("hanging.wire_rise", Default::Choice("fifth"), &["sixth", "fifth", "quarter"], "", CommonPractice,
        "How far a wire rises under load, as a share of the distance between its rings.");
    WireTies = length("hanging.wire_ties", (i(1024), t(2000)), (i(256), i(2560)), "", CommonPractice,
        "Wire added for the two ties.");
    HookHidden = length("hanging.hook_hidden", (i(192), t(400)), (i(0), i(640)), "EX", Published,
        "Least drop of the hook's seat below the frame's top, so that it does not show.");
    ScrewLand = length("hanging.screw_land", (i(16), t(30)), (i(0), i(64)), "", CommonPractice,
        "Wood that must be left beyond a screw's point.");
    UnsquareWarn = length("art.lean_warning", (i(16), t(30)), (i(0), i(640)), "", CommonPractice,
        "Lean of the art over its height at which the customer is told.");

    // Cutting a day's work from stock.
    CuttingTick = choice("cutting.tick", Default::ChoiceBy { inch: "1/64 in", metric: "0.1 mm" },
        &["1/128 in", "1/64 in", "1/32 in", "0.1 mm", "0.5 mm", "1 mm"], "", ShopChoice,
        "What a cut list counts in: pieces, cuts and trims are rounded up to it, stock and windows down; each piece keeps its exact size beside.");
    LegLoss = choice("moulding.loss", Default::Choice("allowance"), &["allowance", "blade"], "", CommonPractice,
        "What is lost between two legs on a stick: `moulding.cut_allowance`, or `moulding.blade` laid slanting along the stick.");
    BladeKerf = length("moulding.blade", (i(12), t(24)), (i(0), i(64)), "", CommonPractice,
        "Width the moulding saw's blade takes, square to itself; at 45° it takes 1.414 times that along the stick.");
    CutsBetween = count("moulding.cuts_between", 1, (1, 2), "cuts", "", CommonPractice,
        "Cuts that take their own width between two legs: 1 where the two opposed cuts meet at the back edge, 2 where they stand apart.");
    LegMatch = choice("moulding.match", Default::Choice("pairs"), &["stick", "pairs", "run"], "", ShopChoice,
        "How the legs of a frame belong together: all from one stick where it is long enough, else as pairs; opposite legs side by side from one stretch, both pairs of one run; or any sticks of one run. Runs are never mixed.");
    FilletCorners = choice("fillet.corners", Default::Choice("mitred"), &["mitred", "square"], "", CommonPractice,
        "How fillets meet: mitred, or the upright pair standing between the level one.");
    SpacerCorners = choice("spacer.corners", Default::Choice("square"), &["mitred", "square"], "", CommonPractice,
        "How spacers meet: mitred, or the upright pair standing between the level one.");
    SpacerKerf = length("spacer.kerf", (i(0), t(0)), (i(0), i(64)), "", CommonPractice,
        "Width lost at each cut across a spacer; snips and knives take none.");
    BoardKerf = length("board.kerf", (i(0), t(0)), (i(0), i(64)), "", CommonPractice,
        "Width lost at each cut through a board; a knife takes none.");
    BoardEdge = length("board.edge_trim", (i(0), t(0)), (i(0), i(256)), "", CommonPractice,
        "Cut off every edge of a new board before it is used.");
    SawnFrom = count("backing.sawn_from", 600, (1, 5000), "kg/m³", "", CommonPractice,
        "Density from which a backing is sawn and not cut with a knife: hardboard, MDF and composite are, foam and fluted boards are not.");
    PanelKerf = length("backing.saw_kerf", (i(16), t(30)), (i(0), i(64)), "", CommonPractice,
        "Width a panel saw takes, from sheets of backing and of acrylic.");
    BackingEdge = length("backing.edge_trim", (i(0), t(0)), (i(0), i(256)), "", CommonPractice,
        "Cut off every edge of a new sheet of backing before it is used.");
    GlazingEdge = length("glazing.edge_trim", (i(0), t(0)), (i(0), i(256)), "", CommonPractice,
        "Cut off every edge of a new sheet of glazing; a damaged factory edge takes 1/2 in.");
    LeastStrip = length("glazing.least_strip", (i(64), t(120)), (i(0), i(256)), "", CommonPractice,
        "Narrowest strip that breaks off a scored sheet cleanly.");
    StripThickness = count("glazing.strip_thickness", 4, (0, 20), "thicknesses", "", CommonPractice,
        "The same by the sheet's thickness, where that is more.");
    ScoredTo = length("glazing.acrylic_scored_to", (i(24), t(48)), (i(0), i(128)), "AC", Published,
        "Thickest acrylic that is scored and broken; thicker is sawn.");
    UseFallouts = choice("board.fallouts", Default::Choice("use"), &["use", "leave"], "", CommonPractice,
        "Whether the piece that drops from a window is cut up for smaller parts of the same board.");
    FalloutEdge = length("board.fallout_edge", (i(16), t(30)), (i(0), i(128)), "", CommonPractice,
        "Taken off every side of a fallout, beyond its bevel, for overcuts and handling.");
    FalloutShort = length("board.least_fallout_short", (i(640), t(1250)), (i(0), i(5120)), "", CommonPractice,
        "Shorter side of the least fallout that returns to stock.");
    FalloutLong = length("board.least_fallout_long", (i(896), t(1750)), (i(0), i(5120)), "", CommonPractice,
        "Its longer side.");
    StickKept = length("remnant.stick", (i(3072), t(6000)), (i(0), i(12800)), "", CommonPractice,
        "Shortest remnant of a stick worth keeping: one leg.");
    BoardKeptShort = length("remnant.board_short", (i(1408), t(2800)), (i(0), i(5120)), "", CommonPractice,
        "Shorter side of the least remnant of a board worth keeping.");
    BoardKeptLong = length("remnant.board_long", (i(1792), t(3550)), (i(0), i(5120)), "", CommonPractice,
        "Its longer side.");
    GlassKeptShort = length("remnant.glazing_short", (i(1024), t(2000)), (i(0), i(5120)), "", CommonPractice,
        "Shorter side of the least remnant of glazing worth keeping.");
    GlassKeptLong = length("remnant.glazing_long", (i(1280), t(2500)), (i(0), i(5120)), "", CommonPractice,
        "Its longer side.");
    RemnantTrim = length("remnant.stick_trim", (i(16), t(30)), (i(0), i(640)), "", CommonPractice,
        "Cut off the start of a remnant stick that names no trim of its own.");
    RemnantShare = count("remnant.price_share", 38, (0, 100), "%", "", CommonPractice,
        "What a remnant counts in a plan, of new stock by length or area: at nothing remnants are wasted, at par they pile up.");
    RackShare = count("stock.rack_share", 95, (1, 100), "%", "", ShopChoice,
        "What a whole stick or sheet on the rack counts in a plan, of one that must be bought.");

    // Light, climate, boards, loads.
    RoomLux = care::LUX;
    LightHours = care::HOURS;
    LightDays = care::DAYS;
    UvContent = care::UV_CONTENT;
    UvLimit = care::UV_LIMIT;
    UvRemovedFrom = care::UV_REMOVED;
    LightScheme = care::LIGHT_SCHEME;
    WoolEightDose = care::WOOL_8;
    LeastYears = care::LEAST_YEARS;
    CheckYears = care::CHECK_YEARS;
    DriestRoom = care::DRY;
    DampestRoom = care::DAMP;
    HeatedRoom = care::HEATED;
    RoomTemperature = care::ROOM;
    Outdoors = care::OUTDOORS;
    MadeAt = care::MADE_AT;
    MouldFrom = care::MOULD;
    WallGap = care::WALL_GAP;
    MitreGap = care::MITRE_GAP;
    BoardSpec = care::ART_SPEC;
    PhotographSpec = care::PHOTOGRAPH_SPEC;
    PhotographBoards = care::PHOTOGRAPHS;
    FoamBoards = care::FOAM;
    TapesOnArt = care::TAPES;
    HingeSpacingHeavy = care::SPACING_HEAVY;
    HingeSpacingLight = care::SPACING_LIGHT;
    HeavySheet = care::HEAVY_SHEET;
    UsualSheet = care::USUAL_SHEET;
    CornersTo = care::CORNERS_TO;
    HingeFactor = care::HINGE_FACTOR;
    CoverLeft = care::COVER_LEFT;
    WireFactor = walls::WEIGHT_FACTOR;
    PullFactor = walls::PULL_FACTOR;
    FittingFactor = walls::FITTING_FACTOR;
    PeopleFactor = walls::PEOPLE_FACTOR;
    KnotStrength = walls::KNOT;
    LeastWireAngle = walls::LEAST_ANGLE;
    CentreHeight = walls::CENTRE;
    WallGapBetween = walls::GAP;
    OverFurniture = walls::OVER_FURNITURE;
    HookSeat = walls::HOOK_SEAT;
    Hooks = walls::HOOKS;
    HooksApart = walls::HOOKS_APART;
    OneHookTo = walls::ONE_HOOK_TO;
    SingleRingTo = walls::SINGLE_TO;
    WireTo = walls::WIRE_TO;
    RingsTo = walls::RINGS_TO;
    SagParts = walls::SAG;
    WoodCreep = walls::CREEP;
    StrainerWood = walls::STRAINER_WOOD;
    ScrewGauge = walls::GAUGE;
    ScrewsEach = walls::SCREWS;
    LiftReach = walls::REACH;
    BenchHeight = walls::BENCH;
    LiftGuide = walls::GUIDE;
    BudgetColourNear = pricing::COLOUR_NEAR;
    BudgetMostChanges = pricing::MOST_CHANGES;
    BudgetPutTogether = pricing::PUT_TOGETHER;

    // Printing.
    PrintTape = choice("print.tape", Default::ChoiceBy { inch: "1/16 in", metric: "1 mm" },
        &["1/8 in", "1/16 in", "1/32 in", "1/64 in", "0.5 mm", "1 mm"], "", CommonPractice,
        "The marks of the tape that sizes are printed for. A rounded size shows its exact value beside it.");

    // Bounds of a document.
    MaxArt = length("limit.largest", (i(76800), t(150_000)), (i(1280), i(768_000)), "", ShopChoice,
        "Largest length a job may name: beyond it a slip of the key or the unit is likelier than a frame.");
    InchLikely = length("limit.inches_likely", (i(15360), t(30_480)), (i(1280), i(768_000)), "", CommonPractice,
        "Art longer than this makes the program ask whether millimetres were read as inches.");
    SmallLikely = length("limit.small_likely", (i(128), t(254)), (i(0), i(1280)), "", CommonPractice,
        "Art shorter than this makes the program ask whether inches were read as millimetres.");
    MaxOpenings = count("limit.openings", 400, (1, 2000), "openings", "", ShopChoice,
        "Most openings in one job: a 48 × 96 in board cut at the least gutter holds no more that a hand could cut.");
    MaxLayers = count("limit.layers", 40, (1, 200), "layers", "", ShopChoice,
        "Most mats, members, sheets of glazing or backing boards of one kind in one job.");
    MaxSides = count("limit.sides", 64, (3, 360), "sides", "", ShopChoice,
        "Most sides of a frame or a window: above it the mitre is finer than a saw's scale.");

    // Labour standards.
    MinutesCheck = minutes("minutes.check", 3, "Check the ticket against art, boards and moulding.");
    MinutesChop = minutes("minutes.chop", 6, "Chop the legs of a frame.");
    MinutesJoin = minutes("minutes.join", 8, "Join a frame.");
    MinutesTouchUp = minutes("minutes.touch_up", 3, "Touch up the corners of a frame.");
    MinutesSizeBoards = minutes("minutes.size_boards", 3, "Cut boards to size.");
    MinutesFirstWindow = minutes("minutes.first_window", 6, "Cut the first window.");
    MinutesFurtherLayer = minutes("minutes.further_layer", 5, "Cut the window of each further layer.");
    MinutesFurtherOpening = minutes("minutes.further_opening", 2, "Cut each further opening.");
    MinutesOval = minutes("minutes.oval", 6, "Cut an oval or other curved window, instead of a straight one.");
    MinutesGlass = minutes("minutes.glass", 4, "Cut a pane of glass.");
    MinutesAcrylic = minutes("minutes.acrylic", 6, "Cut a sheet of acrylic.");
    MinutesBack = minutes("minutes.back", 2, "Cut the backing.");
    MinutesHinge = minutes("minutes.hinge", 12, "Hinge one piece of art.");
    MinutesCorners = minutes("minutes.corners", 6, "Mount one piece with corners or strips.");
    MinutesFloat = minutes("minutes.float", 25, "Added for a float: hidden hinges and lift.");
    MinutesFurtherPiece = minutes("minutes.further_piece", 8, "Attach each further piece.");
    MinutesDryMount = minutes("minutes.dry_mount", 10, "Dry mount one piece.");
    MinutesClose = minutes("minutes.close", 2, "Close the mat; check reveals and smudges.");
    MinutesClean = minutes("minutes.clean", 5, "Clean one sheet of glazing.");
    MinutesCleanCoated = minutes("minutes.clean_coated", 8, "Clean one coated sheet.");
    MinutesLayUp = minutes("minutes.lay_up", 5, "Dust, lay up and inspect upright under a lamp.");
    MinutesEdgeTape = minutes("minutes.edge_tape", 4, "Tape the package's edges.");
    MinutesLine = minutes("minutes.line", 4, "Line the rabbet with sealing tape.");
    MinutesPoints = minutes("minutes.points", 2, "Drive points.");
    MinutesCover = minutes("minutes.cover", 4, "Fit and trim the dust cover.");
    MinutesHangers = minutes("minutes.hangers", 4, "Hangers and wire.");
    MinutesBumpers = minutes("minutes.bumpers", 1, "Bumpers on both bottom corners.");
    MinutesLabel = minutes("minutes.label", 2, "Record label.");
    MinutesLook = minutes("minutes.look", 3, "Final look and photograph.");
    MinutesWrap = minutes("minutes.wrap", 4, "Wrap the piece.");
    MinutesSpacers = minutes("minutes.spacers", 8, "Cut and stick four spacers.");
    MinutesCanvas = minutes("minutes.canvas", 25, "Fit a canvas in its frame: keys, clips, back board, hangers.");
    MinutesFloater = minutes("minutes.floater", 20, "Fit a canvas in a floater: even gap, four screws.");
    MinutesFillet = minutes("minutes.fillet", 20, "Chop, fit and glue the legs of a fillet.");
    MinutesMember = minutes("minutes.member", 20, "Fit each further frame member or liner.");
    MinutesBox = minutes("minutes.box", 45, "Walls and ground of a shadowbox.");
    MinutesObject = minutes("minutes.object", 10, "Mount each object.");
    MinutesTextile = minutes("minutes.textile", 60, "Pin, lace or stitch a textile to its board.");
    MinutesDoubleSided = minutes("minutes.double_sided", 30, "Added for a double-sided piece: second mat, removable stops.");
}

/// Offset clips at hand where a job lists none. Common practice, no source.
pub fn standard_clips(units: crate::Units) -> &'static [Length] {
    const INCH: &[Length] = &[i(16), i(32), i(48), i(64), i(96), i(128)];
    const METRIC: &[Length] = &[t(30), t(60), t(90), t(120), t(190), t(250)];
    match units {
        crate::Units::Inches => INCH,
        crate::Units::Millimetres => METRIC,
    }
}

#[cfg(test)]
mod tests;
