//! Air: what damp and warmth do to wood, sheets, walls and sealed packages.

use conservation::Fact;
use conservation::attachment::Sheet;
use conservation::caution::Caution;
use conservation::climate::{
    Air, Buffer, Coefficients, ColdSurface, Grain, Moisture, RailMovement, WOODS, Wood, acrylic,
    after_shrinking, board, cold_surface, gap_behind, glass, half_time, moist_air, paper_across,
    paper_along, rail_movement, sheet_change, wood,
};
use measure::Length;
use trade::Key;
use working::{Figure, LineId, Stated, Working};

use super::Question;
use super::answer::{Amount, Answer};
use super::field::{Choice, HUMIDITY, Kind, Usual, choice, length, number, temperature};
use super::typed::Typed;

/// How far a rail moves, and its mitres with it.
pub(super) const WOOD: Question = Question {
    noun: "air",
    verb: "wood",
    asks: "How far will this rail move, and will its mitres open?",
    tells: "Moisture content of wood between two humidities, movement across a rail, and the gap at its mitres",
    fields: &[
        choice("wood", "Wood", "", woods),
        length("width", "Width of the rail", "across its face"),
        choice("grain", "Face of the rail", "", grains).or(Usual::Text("flat-sawn")),
        temperature("temperature", "Temperature", "").or(Usual::Setting(Key::RoomTemperature)),
        number(
            "from",
            "Humidity it was made in",
            HUMIDITY,
            ("% RH", "humidity"),
        )
        .or(Usual::Setting(Key::MadeAt)),
        number(
            "to",
            "Humidity it will hang in",
            HUMIDITY,
            ("% RH", "humidity"),
        )
        .or(Usual::Setting(Key::DriestRoom)),
    ],
    example: &[
        ("wood", "oak, white"),
        ("width", "3 in"),
        ("from", "50"),
        ("to", "25"),
    ],
    work: wood_moves,
};

/// How far a sheet grows, and the room it needs.
pub(super) const SHEET: Question = Question {
    noun: "air",
    verb: "sheet",
    asks: "How much room does this sheet need?",
    tells: "Growth of acrylic, glass, paper or board with warmth and damp, the allowance for it, and what a window still covers of paper that dried",
    fields: &[
        choice("sheet", "Sheet", "", sheets),
        super::field::Field {
            kind: Kind::Size,
            ..length(
                "size",
                "Size",
                "width × height; paper with its grain upright",
            )
        },
        super::field::Field {
            kind: Kind::Warmer,
            ..length("warmer", "Warmer by", "than where it was cut")
        },
        number("damper", "Damper by", HUMIDITY, ("% RH", "humidity_change")),
        length(
            "cover",
            "Covered by the window",
            "on each side; for paper and board",
        )
        .or(Usual::Nothing),
    ],
    example: &[
        ("sheet", "acrylic"),
        ("size", "32 x 40"),
        ("warmer", "10 K"),
        ("damper", "20"),
    ],
    work: sheet_grows,
};

/// The dew point of a room.
pub(super) const DEW: Question = Question {
    noun: "air",
    verb: "dew",
    asks: "When does this air wet a cold surface?",
    tells: "Dew point, vapour and wet bulb of a room's air, and what it comes to at a colder surface",
    fields: &[
        temperature("temperature", "Temperature of the room", "")
            .or(Usual::Setting(Key::RoomTemperature)),
        number(
            "humidity",
            "Humidity of the room",
            HUMIDITY,
            ("% RH", "humidity"),
        ),
        temperature("surface", "Temperature of the surface", "").or(Usual::Nothing),
    ],
    example: &[
        ("temperature", "20 °C"),
        ("humidity", "50"),
        ("surface", "9 °C"),
    ],
    work: dew,
};

/// What happens behind a piece on a cold wall.
pub(super) const WALL: Question = Question {
    noun: "air",
    verb: "wall",
    asks: "May it hang on this outside wall?",
    tells: "Humidity behind a piece on a cold outer wall, touching it and with a gap, and the gap that cures it",
    fields: &[
        temperature("temperature", "Temperature of the room", "")
            .or(Usual::Setting(Key::RoomTemperature)),
        number(
            "humidity",
            "Humidity of the room",
            HUMIDITY,
            ("% RH", "humidity"),
        )
        .or(Usual::Setting(Key::HeatedRoom)),
        temperature("outdoors", "Outdoors, in the coldest week", ""),
        number(
            "loss",
            "Heat the wall lets through",
            &[("W/(m²K)", 1.0), ("W/m2K", 1.0), ("W/m²K", 1.0)],
            ("W/(m²K)", "transmittance"),
        ),
    ],
    example: &[
        ("temperature", "20 °C"),
        ("humidity", "50"),
        ("outdoors", "-5 °C"),
        ("loss", "1.5"),
    ],
    work: wall,
};

/// How long a package keeps its own air.
pub(super) const PACK: Question = Question {
    noun: "air",
    verb: "pack",
    asks: "How long does a sealed package keep its own air?",
    tells: "Half-time of a package's humidity, from what buffers it and how it leaks",
    fields: &[
        choice("buffer", "What buffers it", "", buffers),
        number(
            "amount",
            "Of that, in the free air",
            &[("kg/m³", 1.0), ("kg/m3", 1.0)],
            ("kg/m³", "buffer"),
        ),
        number(
            "changes",
            "Changes of its air a day",
            &[("1/d", 1.0)],
            ("1/d", "changes"),
        ),
        temperature("temperature", "Temperature", "").or(Usual::Setting(Key::RoomTemperature)),
    ],
    example: &[("buffer", "paper"), ("amount", "50"), ("changes", "1")],
    work: pack,
};

/// Woods of the table, by name.
pub(super) fn woods() -> Vec<Choice> {
    WOODS
        .iter()
        .map(|wood| Choice::plain(wood.species))
        .collect()
}

fn grains() -> Vec<Choice> {
    vec![
        Choice::meant("flat-sawn", "flat-sawn: moves most"),
        Choice::meant("quarter-sawn", "quarter-sawn: moves least"),
    ]
}

fn sheets() -> Vec<Choice> {
    ["acrylic", "glass", "paper", "board"]
        .map(Choice::plain)
        .to_vec()
}

fn buffers() -> Vec<Choice> {
    vec![
        Choice::plain("wood"),
        Choice::meant("paper", "paper, board or cotton"),
        Choice::meant("silica", "silica gel, regular"),
    ]
}

fn wood_moves(typed: &mut Typed<'_>) -> Option<Answer> {
    let (name, width, grain) = (
        typed.choice("wood"),
        typed.length("width"),
        typed.choice("grain"),
    );
    let (celsius, from, to) = (
        typed.figure("temperature"),
        typed.figure("from"),
        typed.figure("to"),
    );
    let (name, width, grain) = (name?.word, width?, grain?.word);
    let (celsius, swing) = (celsius?, [from?, to?]);
    let wood = typed.keep(wood(name))?;
    let grain = match grain {
        "quarter-sawn" => Grain::Radial,
        _ => Grain::Tangential,
    };
    let mut working = Working::new();
    let moved = rail_movement(width, wood.coefficient(grain), celsius, swing, &mut working);
    let moved = typed.keep(moved)?;
    let mut answer = Answer::of(working);
    told_of_rail(&moved, wood, &mut answer);
    Some(answer)
}

fn told_of_rail(moved: &RailMovement, wood: &Wood, answer: &mut Answer) {
    let [before, after] = moved.moisture;
    answer.group("Moisture");
    answer.worked("moisture_before", "Before", before);
    answer.worked("moisture_after", "After", after);
    answer.group("Movement");
    let label = if moved.change.value.is_negative() {
        "Narrower by"
    } else {
        "Wider by"
    };
    let change = Amount::About(moved.change.value.abs());
    answer.row("change", label, change, &[moved.change.line]);
    answer.about(
        "mitre",
        "Each mitre opens by, should the glue give",
        moved.mitre.gap,
    );
    let place = if moved.mitre.inside {
        "at the sight, inside"
    } else {
        "at the outer corner"
    };
    answer.words("mitre_at", "It opens", place);
    answer.words_of(
        "wood",
        "Wood",
        wood.species,
        wood.movement_trust().sentence(),
    );
    let moisture = Moisture {
        from: before.into(),
        to: after.into(),
    };
    if !moisture.is_in_range() {
        let [from, to] =
            ["wood.from", "wood.to"].map(|name| Fact::named(name).only().value.number_nearest());
        let words = format!(
            "the coefficients were measured between {from} and {to} % MC; past that this is a guess"
        );
        answer.words("in_range", "Mind", words);
    }
}

fn coefficients(sheet: &str) -> [Coefficients; 2] {
    match sheet {
        "acrylic" => [acrylic(), acrylic()],
        "glass" => [glass(), glass()],
        "board" => [board(), board()],
        _ => [paper_across(), paper_along()],
    }
}

fn sheet_grows(typed: &mut Typed<'_>) -> Option<Answer> {
    let (sheet, size) = (typed.choice("sheet"), typed.size("size"));
    let (warmer, damper) = (typed.figure("warmer"), typed.figure("damper"));
    let asked = typed.has("cover");
    let cover = typed.length("cover");
    let (sheet, size, warmer, damper) = (sheet?.word, size?, warmer?, damper?);
    if asked && cover.is_none() {
        return None;
    }
    let axes = coefficients(sheet);
    let mut answer = Answer::default();
    answer.group("Growth, from its least to its most");
    let mut most = Length::ZERO;
    let mut lines: Vec<LineId> = Vec::new();
    let sides = [
        ("width", "In width", size.width),
        ("height", "In height", size.height),
    ];
    for ((key, label, side), own) in sides.into_iter().zip(&axes) {
        let [least, greatest] = [0, 1].map(|end| {
            sheet_change(
                Stated::job(side),
                (own.warmth[end], warmer),
                (own.damp[end], damper),
                &mut answer.working,
            )
        });
        let (least, greatest) = (typed.keep(least)?, typed.keep(greatest)?);
        let amount = Amount::Between(least.value, greatest.value);
        answer.row(
            format!("growth_{key}"),
            label,
            amount,
            &[least.line, greatest.line],
        );
        if greatest.value > most {
            most = greatest.value;
            lines = vec![greatest.line];
        }
    }
    if most.is_positive() {
        answer.group("Room");
        let label = "Allowance over the whole side, at least";
        answer.row("allowance", label, Amount::About(most), &lines);
    }
    if let Some(cover) = cover {
        dried(&axes, (size, cover, damper), typed, &mut answer)?;
    }
    Some(answer)
}

/// What a window still covers once the sheet has dried by as much.
fn dried(
    axes: &[Coefficients; 2],
    (size, cover, drier): (measure::Size, Stated<Length>, Stated<Figure>),
    typed: &mut Typed<'_>,
    answer: &mut Answer,
) -> Option<()> {
    let damp = [axes[0].damp[1], axes[1].damp[1]];
    let left = after_shrinking(Sheet::asked(size), cover, damp, drier, &mut answer.working);
    let left = typed.keep(left)?;
    answer.group("Dried by as much, hung from its top edge");
    answer.about("narrower", "Narrower by", left.narrower);
    answer.about("shorter", "Shorter by", left.shorter);
    answer.about("cover_side", "Still covered at each side", left.side);
    answer.about("cover_bottom", "Still covered at the bottom", left.bottom);
    Some(())
}

fn room(typed: &mut Typed<'_>) -> Option<Air> {
    let (celsius, humidity) = (typed.figure("temperature"), typed.figure("humidity"));
    Some(Air {
        celsius: celsius?,
        humidity: humidity?,
        pressure: Fact::named("air.pressure").only(),
    })
}

fn dew(typed: &mut Typed<'_>) -> Option<Answer> {
    let asked = typed.has("surface");
    let (room, surface) = (room(typed), typed.figure("surface"));
    let room = room?;
    if asked && surface.is_none() {
        return None;
    }
    let mut working = Working::new();
    let settings = typed.settings;
    let (air, cold) = match surface {
        Some(surface) => {
            let cold = typed.keep(cold_surface(&room, surface, settings, &mut working))?;
            (cold.air, Some(cold))
        }
        None => (typed.keep(moist_air(&room, &mut working))?, None),
    };
    let mut answer = Answer::of(working);
    answer.group("This air");
    answer.worked("dew_point", "Dew point", air.dew_point);
    answer.worked("wet_bulb", "Wet bulb", air.wet_bulb);
    answer.worked("absolute", "Water in it", air.absolute);
    answer.worked("vapour", "Pressure of its vapour", air.vapour);
    answer.worked("saturation", "The most it could hold", air.saturation);
    if let Some(cold) = cold {
        answer.group("At the surface");
        surface_rows("surface", &cold, &mut answer);
    }
    Some(answer)
}

/// What the room's air comes to at a surface.
pub(super) fn surface_rows(key: &str, cold: &ColdSurface, answer: &mut Answer) {
    answer.worked(format!("{key}_humidity"), "The air comes to", cold.humidity);
    answer.worked(format!("{key}_condenses"), "Water settles", cold.condenses);
    answer.worked(format!("{key}_mould"), "Mould is to be feared", cold.moulds);
    if cold.moulds.value && !answer.cautions.contains(&Caution::Mould) {
        answer.cautions.push(Caution::Mould);
    }
}

fn wall(typed: &mut Typed<'_>) -> Option<Answer> {
    let (room, outdoors, loss) = (room(typed), typed.figure("outdoors"), typed.figure("loss"));
    let (room, outdoors, loss) = (room?, outdoors?, loss?);
    let mut working = Working::new();
    let settings = typed.settings;
    let found = typed.keep(gap_behind(&room, outdoors, loss, settings, &mut working))?;
    let mut answer = Answer::of(working);
    answer.group("Against the wall");
    surface_rows("touching", &found.touching, &mut answer);
    answer.group("With a gap behind it");
    answer.words("gap", "Gap", found.gap.in_both(typed.unit));
    surface_rows("apart", &found.apart, &mut answer);
    let harms = |cold: &ColdSurface| cold.moulds.value || cold.condenses.value;
    let words = match (harms(&found.touching), harms(&found.apart)) {
        (false, _) => "it may hang against this wall",
        (true, false) => "hold it off the wall with bumpers, and seal its back",
        (true, true) => "hang it on another wall: even behind a gap the air is too damp",
    };
    answer.group("So");
    answer.words("cure", "Advice", words);
    Some(answer)
}

fn pack(typed: &mut Typed<'_>) -> Option<Answer> {
    let (buffer, amount) = (typed.choice("buffer"), typed.figure("amount"));
    let (changes, celsius) = (typed.figure("changes"), typed.figure("temperature"));
    let fact = Fact::named(match buffer?.word {
        "wood" => "buffer.wood",
        "silica" => "buffer.silica",
        _ => "buffer.paper",
    });
    let (amount, changes, celsius) = (amount?, changes?, celsius?);
    let mut answer = Answer::default();
    let [least, most] = [fact.low(), fact.high()].map(|gives| {
        let package = Buffer {
            reservoir: fact.stated(gives),
            buffer: amount,
            changes,
            celsius,
        };
        half_time(&package, &mut answer.working)
    });
    let (least, most) = (typed.keep(least)?, typed.keep(most)?);
    answer.group("Half way to the room's humidity");
    let span = conservation::Span::of(least.full, most.full);
    answer.span("half_time", "In", span);
    let words = fact.trust().sentence();
    answer.words_of(
        "buffer",
        "What it gives",
        format!("{} to {} g/(kg % RH)", fact.low(), fact.high()),
        words,
    );
    Some(answer)
}
