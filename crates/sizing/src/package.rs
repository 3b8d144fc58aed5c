//! The package: what goes into the rabbet, where no mat decides its size.

use std::sync::Arc;

use measure::Length;
use trade::{Key, Material, Show};
use working::{Given, Rule, Subject, Worked, Working};

use crate::art::ArtSizes;
use crate::brief::Brief;
use crate::trace::{Fact, WorkedSize, along, both, custom, geometry};

static BLEED: Rule = geometry(
    "package.bleed",
    "without a mat the package is the art at its largest",
    "package = art",
);
static FLOAT_SIGHT: Rule = geometry(
    "package.float_sight",
    "art floated without a mat leaves the margin to be seen on each side",
    "seen = art + 2 × margin",
);
static FLOAT_PACKAGE: Rule = geometry(
    "package.float",
    "the package reaches behind the lip from what is seen",
    "package = seen + 2 × fillet_face + 2 × lip - allowance",
);
static BOARD: Rule = geometry(
    "wrap.board",
    "the board under a textile shows the ground on each side",
    "board = art + 2 × ground",
);
static WRAPPED: Rule = geometry(
    "package.wrapped",
    "a wrapped board is larger by its cloth on each side",
    "package = board + 2 × cloth",
);
static CLOTH_CUT: Rule = custom(
    "wrap.cloth_cut",
    "cloth is cut to turn to the back on each side",
    "cut = board + 2 × turn",
);
static STRAINER_OUTER: Rule = geometry(
    "strainer.outer",
    "a strainer is as large as the package it lies behind",
    "outer = package",
);
static STRAINER_INNER: Rule = geometry(
    "strainer.inner",
    "between its bars a strainer is smaller by a bar on each side",
    "inner = outer - 2 × bar",
);
static STRAINER_LENGTH: Rule = geometry(
    "strainer.length",
    "the bars of a strainer laid end to end, mitred corners, inner bars between the outer ones",
    "length = 2 × (outer_width + outer_height) + uprights × inner_height + level × inner_width",
);
static HOLLOW: Rule = geometry(
    "sink.hollow",
    "a sink leaves room round the art on each side",
    "hollow = art + 2 × room",
);
static BOX: Rule = geometry(
    "package.box",
    "a shadowbox is its ground and a wall on each side",
    "package = display + 2 × wall",
);
static WALL_SHORT: Rule = geometry(
    "wall.short",
    "two walls run the whole longer side, the others stand between them",
    "short = package - 2 × wall",
);
static WALL_HEIGHT: Rule = custom(
    "wall.height",
    "walls are as high as the deepest object and the air before it",
    "height = max(object) + air",
);
static WALL_STATED: Rule = geometry(
    "wall.stated",
    "the walls are as high as stated",
    "height = stated",
);

/// The board and cloth under a textile.
#[derive(Clone, Copy, Debug)]
pub struct WrapSizes {
    /// The bare board.
    pub board: WorkedSize,
    /// The cloth as cut.
    pub cloth: WorkedSize,
}

/// A build-up round thick art.
#[derive(Clone, Debug)]
pub struct SinkSizes {
    /// Its material, where it has a catalogue code.
    pub material: Option<Arc<Material>>,
    /// Front to back.
    pub depth: Length,
    /// The hollow that takes the art.
    pub hollow: WorkedSize,
}

/// A stiffening frame behind the backing.
#[derive(Clone, Copy, Debug)]
pub struct StrainerSizes {
    /// Over its bars.
    pub outer: WorkedSize,
    /// Between its bars: length of level bars and of uprights inside it.
    pub inner: WorkedSize,
    /// Width of a bar.
    pub width: Length,
    /// Front to back.
    pub depth: Length,
    /// Upright bars inside it.
    pub uprights: u32,
    /// Level bars inside it.
    pub cross_bars: u32,
    /// All bars together.
    pub length: Worked<Length>,
}

/// Walls of a shadowbox.
#[derive(Clone, Copy, Debug)]
pub struct WallSizes {
    /// Front to back.
    pub height: Worked<Length>,
    /// The two walls along the longer sides.
    pub long: Worked<Length>,
    /// The two between them.
    pub short: Worked<Length>,
    /// Thickness of a wall.
    pub thickness: Length,
}

/// The package of a piece without mats.
pub(crate) fn without_mats(
    brief: &Brief<'_>,
    art: &[ArtSizes],
    working: &mut Working,
) -> (WorkedSize, Option<WrapSizes>) {
    let first = &art[0];
    if let Some(walls) = &brief.walls {
        let stated = brief.job.walls.as_ref().and_then(|walls| walls.display);
        let wall = walls.thickness;
        let display = stated.map_or_else(|| first.largest.size(), |display| *display);
        let size = display.grow(wall.value);
        let package = both(
            working,
            &BOX,
            Subject::of("package", "size"),
            size,
            |axis| {
                let display = stated.map_or_else(
                    || first.largest.along(axis).into(),
                    |display| Given::job(along(*display, axis)),
                );
                [("display", display), ("wall", wall.into())]
            },
        );
        return (package, None);
    }
    if let Some(wrap) = &brief.job.wrap {
        let board = board_of(*wrap.ground, first, working);
        let cloth = Fact::job(*wrap.cloth);
        let size = board.size().grow(cloth.value);
        let package = both(
            working,
            &WRAPPED,
            Subject::of("package", "size"),
            size,
            |axis| [("board", board.along(axis).into()), ("cloth", cloth.into())],
        );
        return (package, Some(wrapped(brief, board, working)));
    }
    if brief.job.art[0].show == Some(Show::Float) {
        return (floated(brief, first, working), None);
    }
    let package = both(
        working,
        &BLEED,
        Subject::of("package", "size"),
        first.largest.size(),
        |axis| [("art", first.largest.along(axis).into())],
    );
    (package, None)
}

fn board_of(ground: Length, art: &ArtSizes, working: &mut Working) -> WorkedSize {
    let ground = Fact::job(ground);
    both(
        working,
        &BOARD,
        Subject::of("wrap", "board"),
        art.largest.size().grow(ground.value),
        |axis| {
            [
                ("art", art.largest.along(axis).into()),
                ("ground", ground.into()),
            ]
        },
    )
}

/// Cloth for a board of a known size.
fn wrapped(brief: &Brief<'_>, board: WorkedSize, working: &mut Working) -> WrapSizes {
    let stated = brief.job.wrap.as_ref().and_then(|wrap| wrap.turn);
    let turn = stated.map_or_else(|| brief.fact(Key::WrapTurn), |turn| Fact::job(*turn));
    let size = board.size().grow(turn.value);
    let cloth = both(
        working,
        &CLOTH_CUT,
        Subject::of("wrap", "cloth"),
        size,
        |axis| [("board", board.along(axis).into()), ("turn", turn.into())],
    );
    WrapSizes { board, cloth }
}

/// Cloth and board where mats (or a given frame) decide the package: the board fills it.
pub(crate) fn wrap_in(
    brief: &Brief<'_>,
    package: WorkedSize,
    working: &mut Working,
) -> Option<WrapSizes> {
    static BOARD_IN: Rule = geometry(
        "wrap.board_in_package",
        "the board fills the package less its cloth on each side",
        "board = package - 2 × cloth",
    );
    let wrap = brief.job.wrap.as_ref()?;
    let cloth = Fact::job(*wrap.cloth);
    let size = package.size().shrink(cloth.value);
    let board = both(
        working,
        &BOARD_IN,
        Subject::of("wrap", "board"),
        size,
        |axis| {
            [
                ("package", package.along(axis).into()),
                ("cloth", cloth.into()),
            ]
        },
    );
    Some(wrapped(brief, board, working))
}

/// Art floated without a mat: the package is worked outwards from what is seen.
fn floated(brief: &Brief<'_>, art: &ArtSizes, working: &mut Working) -> WorkedSize {
    let stated = brief.job.art[0].margin;
    let margin = stated.map_or_else(|| brief.fact(Key::FloatMargin), |margin| Fact::job(*margin));
    let size = art.largest.size().grow(margin.value);
    let seen = both(
        working,
        &FLOAT_SIGHT,
        Subject::of("float", "seen"),
        size,
        |axis| {
            [
                ("art", art.largest.along(axis).into()),
                ("margin", margin.into()),
            ]
        },
    );
    let Some(member) = brief.members.last() else {
        return seen;
    };
    let none = Fact::job(Length::ZERO);
    let fillet = member.fillet.as_ref().map_or(none, |fillet| fillet.face);
    let size = seen
        .size()
        .grow(fillet.value)
        .grow(member.lip.value)
        .narrow(member.allowance.value);
    both(
        working,
        &FLOAT_PACKAGE,
        Subject::of("package", "size"),
        size,
        |axis| {
            [
                ("seen", seen.along(axis).into()),
                ("fillet_face", fillet.into()),
                ("lip", member.lip.into()),
                ("allowance", member.allowance.into()),
            ]
        },
    )
}

/// The strainer, alike with the package outside.
pub(crate) fn strainer(
    brief: &Brief<'_>,
    package: WorkedSize,
    working: &mut Working,
) -> Option<StrainerSizes> {
    let own = brief.job.strainer.as_ref()?;
    let bar = Fact::job(*own.width);
    let subject = |quantity| Subject::of("strainer", quantity);
    let outer = both(
        working,
        &STRAINER_OUTER,
        subject("outer"),
        package.size(),
        |axis| [("package", package.along(axis).into())],
    );
    let size = package.size().shrink(bar.value);
    let inner = both(working, &STRAINER_INNER, subject("inner"), size, |axis| {
        [("outer", outer.along(axis).into()), ("bar", bar.into())]
    });
    let (uprights, level) = (i64::from(own.uprights), i64::from(own.cross_bars));
    let value = outer.size().perimeter()
        + inner.height.value.times(uprights)
        + inner.width.value.times(level);
    let inputs = [
        ("outer_width", outer.width.into()),
        ("outer_height", outer.height.into()),
        ("inner_width", inner.width.into()),
        ("inner_height", inner.height.into()),
        ("uprights", Given::job(uprights)),
        ("level", Given::job(level)),
    ];
    Some(StrainerSizes {
        outer,
        inner,
        width: *own.width,
        depth: *own.depth,
        uprights: own.uprights,
        cross_bars: own.cross_bars,
        length: working.by(&STRAINER_LENGTH, subject("length"), &inputs, value),
    })
}

/// The hollow of a sink, round the first piece of art.
pub(crate) fn sink(
    brief: &Brief<'_>,
    art: &[ArtSizes],
    working: &mut Working,
) -> Option<SinkSizes> {
    let sink = brief.sink.as_ref()?;
    let (art, room) = (art.first()?.largest, sink.room);
    let size = art.size().grow(room.value);
    let hollow = both(
        working,
        &HOLLOW,
        Subject::of("sink", "hollow"),
        size,
        |axis| [("art", art.along(axis).into()), ("room", room.into())],
    );
    Some(SinkSizes {
        material: sink.material.clone(),
        depth: sink.depth.value,
        hollow,
    })
}

/// The walls of a shadowbox in a package.
pub(crate) fn walls(
    brief: &Brief<'_>,
    art: &[ArtSizes],
    package: WorkedSize,
    working: &mut Working,
) -> Option<WallSizes> {
    let walls = brief.walls.as_ref()?;
    let subject = |quantity| Subject::of("wall", quantity);
    let height = if let Some(stated) = walls.height {
        working.by(
            &WALL_STATED,
            subject("height"),
            &[("stated", stated.into())],
            stated.value,
        )
    } else {
        let air = brief.fact(Key::BoxAir);
        let mut inputs: Vec<(&'static str, Given)> = art
            .iter()
            .map(|art| ("object", Given::job(art.thickness)))
            .collect();
        inputs.push(("air", air.into()));
        let deepest = art
            .iter()
            .map(|art| art.thickness)
            .max()
            .unwrap_or_default();
        working.by(
            &WALL_HEIGHT,
            subject("height"),
            &inputs,
            deepest + air.value,
        )
    };
    let (long, across) = if package.height.value > package.width.value {
        (package.height, package.width)
    } else {
        (package.width, package.height)
    };
    let inputs = [("package", across.into()), ("wall", walls.thickness.into())];
    let value = across.value - walls.thickness.value.twice();
    let short = working.by(&WALL_SHORT, subject("short"), &inputs, value);
    Some(WallSizes {
        height,
        long,
        short,
        thickness: walls.thickness.value,
    })
}
