//! Sheets as plates: what they weigh, how stiff they are, how far they sag.

use measure::{Length, Mass, Size};
use working::{Figure, Rule, Stated, Subject, Worked, Working};

use crate::refusal::Refusal;
use crate::rules::{cited, figure, geometry};
use crate::table::{Fact, within};

static MASS: Rule = geometry(
    "sheet.mass",
    "a sheet weighs its density times its thickness and its area",
    "mass = nearest(density × thickness ÷ 1 m × width ÷ 1 m × height ÷ 1 m × 1 kg)",
);
static AREAL: Rule = geometry(
    "sheet.areal",
    "a square metre weighs its density times its thickness",
    "areal = density × thickness ÷ 1 m",
);
static COMPOSITE: Rule = geometry(
    "sheet.composite",
    "a composite weighs its two skins and its core",
    "areal = (2 × skin × skin_density + (thickness - 2 × skin) × core_density) ÷ 1 m",
);
static STIFFNESS: Rule = cited(
    "plate.stiffness",
    "a strip's stiffness goes with the cube of its thickness",
    "stiffness = modulus × thickness × thickness × thickness ÷ (12 × 1 mm × 1 mm × 1 mm)",
    "E9",
);
static SAG: Rule = cited(
    "plate.sag",
    "a strip lying on two edges sags under its own weight",
    "sag = nearest(5 × density × gravity ÷ 1000000000 × span × span × span × span ÷ (32 × modulus × thickness × thickness × 1 mm))",
    "E9",
);

/// A sheet weighed: the whole, and a square metre of it.
///
/// mass = density × thickness × width × height
///
/// Units:  kg/m³; to the nearest nanogram, kg/m².
/// Errors: no thickness or size, a density outside what can be.
/// Example: glass, 2.5 mm, 1 m × 1 m: 6.25 kg.
pub fn sheet_mass(
    density: Stated<Figure>,
    thickness: Stated<Length>,
    size: Size,
    working: &mut Working,
) -> Result<(Worked<Mass>, Worked<Figure>), Refusal> {
    let heavy = within("density", density.value)?;
    for length in [thickness.value, size.width, size.height] {
        Refusal::unless_positive("a side of the sheet", length)?;
    }
    let areal = heavy * thickness.value.approx_mm() / 1e3; // geometry: a prefix
    let kilograms = areal * size.area().approx_m2();
    let mass = mass_nearest(kilograms).ok_or(Refusal::TooLarge { what: "the sheet" })?;
    let inputs = [
        ("density", density.into()),
        ("thickness", thickness.into()),
        ("width", Stated::job(size.width).into()),
        ("height", Stated::job(size.height).into()),
    ];
    let mass = working.by(&MASS, Subject::of("sheet", "mass"), &inputs, mass);
    let inputs = [("density", density.into()), ("thickness", thickness.into())];
    let subject = Subject::of("sheet", "areal");
    Ok((
        mass,
        figure(working, &AREAL, subject, &inputs, (areal, "kg/m²")),
    ))
}

/// A mass of this many kilograms, to the nearest nanogram; none past what a mass holds.
pub fn mass_nearest(kilograms: f64) -> Option<Mass> {
    // Text carries seventeen digits, which is all a float has.
    Mass::read_nearest(&format!("{kilograms:.12} kg")).ok()
}

/// Mass of a square metre of composite sheet: two metal skins and a core.
///
/// Units:  kg/m³; kg/m².
/// Errors: skins thicker than the sheet, densities outside what can be.
/// Example: 3 mm, skins 0.5 mm: 4.54 kg/m².
pub fn composite_areal(
    thickness: Stated<Length>,
    skin: Stated<Length>,
    [skin_density, core_density]: [Stated<Figure>; 2],
    working: &mut Working,
) -> Result<Worked<Figure>, Refusal> {
    let core = thickness.value - skin.value.twice();
    Refusal::unless_positive("the core", core)?;
    let metal = within("density", skin_density.value)?;
    let filler = within("density", core_density.value)?;
    let areal = (skin.value.twice().approx_mm() * metal + core.approx_mm() * filler) / 1e3; // geometry: a prefix
    let inputs = [
        ("skin", skin.into()),
        ("skin_density", skin_density.into()),
        ("thickness", thickness.into()),
        ("core_density", core_density.into()),
    ];
    let subject = Subject::of("sheet", "areal");
    Ok(figure(
        working,
        &COMPOSITE,
        subject,
        &inputs,
        (areal, "kg/m²"),
    ))
}

/// A sheet as a strip on two edges.
#[derive(Clone, Copy, Debug)]
pub struct Plate {
    /// Bending stiffness for each millimetre of width, N mm²/mm.
    pub stiffness: Worked<Figure>,
    /// How far its middle sags, lying flat.
    pub sag: Worked<Length>,
}

/// How stiff a sheet is, and how far it sags lying flat on two edges.
///
/// stiffness = E t³ ÷ 12; sag = 5 q L⁴ ÷ (32 E t³), q = density × g × t
///
/// Units:  N/mm², kg/m³; to the nearest quantum.
/// Errors: no thickness or span, numbers outside what can be.
/// Source: beam formula of any textbook; checked in `suite/ref/reference`.
/// Example: glass, 2 mm over 600 mm: 1.77 mm.
pub fn plate(
    modulus: Stated<Figure>,
    density: Stated<Figure>,
    thickness: Stated<Length>,
    span: Stated<Length>,
    working: &mut Working,
) -> Result<Plate, Refusal> {
    let stiff = within("modulus", modulus.value)?;
    let heavy = within("density", density.value)?;
    Refusal::unless_positive("the thickness", thickness.value)?;
    Refusal::unless_positive("the span", span.value)?;
    let (t, l) = (thickness.value.approx_mm(), span.value.approx_mm());
    let twelve = 12.0; // geometry: second moment of a rectangle
    let subject = |quantity| Subject::of("plate", quantity);
    let inputs = [("modulus", modulus.into()), ("thickness", thickness.into())];
    let value = (stiff * t.powi(3) / twelve, "N mm²/mm"); // geometry: a cube
    let stiffness = figure(working, &STIFFNESS, subject("stiffness"), &inputs, value);
    let gravity = Fact::named("gravity");
    let load = heavy * gravity.low() / 1e9; // geometry: a prefix
    let sag = 5.0 * load * l.powi(4) / (32.0 * stiff * t * t); // geometry: beam formula
    let sag = Length::nearest_from_mm(sag).ok_or(Refusal::TooLarge { what: "the sag" })?;
    let inputs = [
        ("density", density.into()),
        ("gravity", gravity.only().into()),
        ("span", span.into()),
        ("modulus", modulus.into()),
        ("thickness", thickness.into()),
    ];
    Ok(Plate {
        stiffness,
        sag: working.by(&SAG, subject("sag"), &inputs, sag),
    })
}
