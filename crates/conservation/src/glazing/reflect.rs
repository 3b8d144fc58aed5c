//! Reflection of a bare or coated sheet.

use working::{Figure, Rule, Stated, Subject, Worked, Working};

use crate::refusal::Refusal;
use crate::rules::{cited, figure};
use crate::table::within;

static S: Rule = cited(
    "glazing.reflect_s",
    "Fresnel: light that swings along the surface",
    "r = 100 × (cos(angle) - sqrt(index × index - sin(angle) × sin(angle))) × (cos(angle) - sqrt(index × index - sin(angle) × sin(angle))) ÷ ((cos(angle) + sqrt(index × index - sin(angle) × sin(angle))) × (cos(angle) + sqrt(index × index - sin(angle) × sin(angle))))",
    "G13",
);
static P: Rule = cited(
    "glazing.reflect_p",
    "Fresnel: light that swings towards the surface",
    "r = 100 × (index × index × cos(angle) - sqrt(index × index - sin(angle) × sin(angle))) × (index × index × cos(angle) - sqrt(index × index - sin(angle) × sin(angle))) ÷ ((index × index × cos(angle) + sqrt(index × index - sin(angle) × sin(angle))) × (index × index × cos(angle) + sqrt(index × index - sin(angle) × sin(angle))))",
    "G13",
);
static ONE: Rule = cited(
    "glazing.reflect_one",
    "daylight and lamps swing both ways alike",
    "r = (s + p) ÷ 2",
    "G13",
);
static BOTH: Rule = cited(
    "glazing.reflect_both",
    "both faces send light to and fro; each way of swinging is added up by itself",
    "r = (200 × s ÷ (100 + s) + 200 × p ÷ (100 + p)) ÷ 2",
    "G13",
);
static THROUGH: Rule = cited(
    "glazing.through",
    "what is not sent back goes through, where the sheet takes none",
    "through = 100 - both",
    "G13",
);
static LAYER: Rule = cited(
    "glazing.reflect_layer",
    "a layer a quarter wave thick sends two waves back against each other",
    "r = 100 × (sheet - layer × layer) × (sheet - layer × layer) ÷ ((sheet + layer × layer) × (sheet + layer × layer))",
    "G13",
);

/// What a bare sheet sends back, %.
#[derive(Clone, Copy, Debug)]
pub struct Reflected {
    /// By one face, swinging along it.
    pub s: Worked<Figure>,
    /// By one face, swinging towards it.
    pub p: Worked<Figure>,
    /// By one face.
    pub one: Worked<Figure>,
    /// By both.
    pub both: Worked<Figure>,
    /// What goes through.
    pub through: Worked<Figure>,
}

/// What a bare sheet in air sends back.
///
/// Shape:  no absorption, both faces bare, waves of the two faces not in step.
/// Units:  refractive index, degrees from square on; %.
/// Errors: an index or an angle outside what can be.
/// Source: Fresnel equations; checked in `suite/ref/reference`.
/// Example: acrylic, 1.49, square on: 3.9 % a face, 7.5 % both.
pub fn reflected(
    index: Stated<Figure>,
    degrees: Stated<Figure>,
    working: &mut Working,
) -> Result<Reflected, Refusal> {
    let n = within("index", index.value)?;
    let angle = within("incidence", degrees.value)?;
    let turned = measure::Angle::nearest_from_degrees(angle).unwrap_or_default();
    let (sin, cos) = turned.approx_radians().sin_cos();
    let inside = (n * n - sin * sin).sqrt();
    let percent = |near: f64, far: f64| 100.0 * (near / far) * (near / far); // geometry: per cent
    let (s, p) = (
        percent(cos - inside, cos + inside),
        percent(n * n * cos - inside, n * n * cos + inside),
    );
    let inputs = [
        ("index", index.into()),
        (
            "angle",
            Stated {
                value: turned,
                origin: degrees.origin,
            }
            .into(),
        ),
    ];
    let subject = |quantity| Subject::of("glazing", quantity);
    let s_line = figure(working, &S, subject("reflect_s"), &inputs, (s, "%"));
    let p_line = figure(working, &P, subject("reflect_p"), &inputs, (p, "%"));
    let inputs = [("s", s_line.into()), ("p", p_line.into())];
    let twice = |r: f64| 200.0 * r / (100.0 + r); // geometry: per cent, both faces
    let one = f64::midpoint(s, p);
    let both = f64::midpoint(twice(s), twice(p));
    let one = figure(working, &ONE, subject("reflect_one"), &inputs, (one, "%"));
    let line = figure(
        working,
        &BOTH,
        subject("reflect_both"),
        &inputs,
        (both, "%"),
    );
    let inputs = [("both", line.into())];
    let through = (100.0 - both, "%"); // geometry: per cent
    Ok(Reflected {
        s: s_line,
        p: p_line,
        one,
        both: line,
        through: figure(working, &THROUGH, subject("through"), &inputs, through),
    })
}

/// What a coated sheet sends back, %.
#[derive(Clone, Copy, Debug)]
pub struct Coated {
    /// By one face.
    pub one: Worked<Figure>,
    /// By both.
    pub both: Worked<Figure>,
}

/// What a sheet with one quarter-wave layer on each face sends back.
///
/// R = ((sheet − layer²) ÷ (sheet + layer²))²
///
/// Shape:  square on, at the wavelength the layer is made for; sheets sold as anti-reflective carry more
///         than one layer and claim 1 % or less in all (common practice, no source).
/// Errors: an index outside what can be.
pub fn coated(
    sheet: Stated<Figure>,
    layer: Stated<Figure>,
    working: &mut Working,
) -> Result<Coated, Refusal> {
    let n = within("index", sheet.value)?;
    let square = within("index", layer.value)?.powi(2);
    let one = 100.0 * ((n - square) / (n + square)).powi(2); // geometry: per cent
    let inputs = [("sheet", sheet.into()), ("layer", layer.into())];
    let subject = |quantity| Subject::of("glazing", quantity);
    let line = figure(working, &LAYER, subject("layer_one"), &inputs, (one, "%"));
    let both = 200.0 * one / (100.0 + one); // geometry: per cent, both faces
    let inputs = [("s", line.into()), ("p", line.into())];
    Ok(Coated {
        one: line,
        both: figure(working, &BOTH, subject("layer_both"), &inputs, (both, "%")),
    })
}
