//! Rails: how far the bottom one sags under the glazing, and what cures it.

use conservation::rules::{cited, custom, figure};
use conservation::within;
use measure::Length;
use trade::{Key, Settings};
use working::{Figure, Rule, Stated, Subject, Worked, Working};

use crate::refusal::Refusal;

static SUPPORTED: Rule = cited(
    "rail.sag",
    "a rail free at its corners sags most",
    "sag = nearest(60 × load × span × span × span × 1 mm × 1 mm ÷ (384 × modulus × width × depth × depth × depth))",
    "E9",
);
static FIXED: Rule = cited(
    "rail.sag_fixed",
    "corners that never give leave a fifth of it; a glued mitre lies between",
    "sag = nearest(free ÷ 5)",
    "E9",
);
static STRESS: Rule = cited(
    "rail.stress",
    "bending pulls at the rail's edge",
    "stress = 6 × load × span ÷ 1 mm ÷ (8 × width ÷ 1 mm × depth ÷ 1 mm × depth ÷ 1 mm)",
    "E9",
);
static CREEP: Rule = cited(
    "rail.creep",
    "under a load that stays, wood goes on giving",
    "lasting = creep × sag",
    "H1",
);
static ALLOWED: Rule = custom(
    "rail.allowed",
    "a rail may sag by a small part of its span",
    "allowed = down(span ÷ parts)",
);
static DEPTH: Rule = cited(
    "rail.depth",
    "sag goes with the cube of the depth",
    "wanted = up(depth × cube_root)",
    "E9",
);

/// A rail that carries an even load.
#[derive(Clone, Copy, Debug)]
pub struct Rail {
    /// Stiffness of its wood, N/mm².
    pub modulus: Stated<Figure>,
    /// Across, from front to back of the frame.
    pub width: Stated<Length>,
    /// Upright, in the plane of the picture.
    pub depth: Stated<Length>,
    /// Between the corners.
    pub span: Stated<Length>,
    /// Load on it, N.
    pub load: Stated<Figure>,
}

/// How far a rail sags.
#[derive(Clone, Copy, Debug)]
pub struct Sag {
    /// Free at its corners: the most.
    pub free: Worked<Length>,
    /// Held fast at its corners: the least.
    pub fixed: Worked<Length>,
    /// Bending at its edge, N/mm².
    pub stress: Worked<Figure>,
    /// The most, after years of creep.
    pub lasting: Worked<Length>,
    /// What the shop allows.
    pub allowed: Worked<Length>,
}

impl Sag {
    /// Whether even the least, after years, is more than the shop allows.
    pub fn is_too_much(&self) -> bool {
        self.lasting.value > self.allowed.value
    }
}

/// How far a rail sags under an even load.
///
/// free = 5 F L³ ÷ (384 E I), I = b d³ ÷ 12; fixed = free ÷ 5
///
/// Shape:  the solid section only; rabbet and lip are left out.
/// Units:  N, N/mm²; lengths to the nearest quantum.
/// Errors: no width, depth or span, numbers outside what can be, a sag too large to hold.
/// Source: Euler and Bernoulli's beam, any textbook; checked in `suite/ref/reference`.
/// Example: basswood 15 × 20 mm over 800 mm under 23.5 N: 0.3 to 1.6 mm.
pub fn sag(rail: &Rail, settings: &Settings, working: &mut Working) -> Result<Sag, Refusal> {
    let stiff = within("modulus", rail.modulus.value)?;
    let load = within("force", rail.load.value)?;
    for (what, length) in [
        ("the rail's width", rail.width),
        ("the rail's depth", rail.depth),
        ("the rail's span", rail.span),
    ] {
        Refusal::unless_positive(what, length.value)?;
    }
    let [b, d, l] = [rail.width, rail.depth, rail.span].map(|length| length.value.approx_mm());
    let most = 60.0 * load * l.powi(3) / (384.0 * stiff * b * d.powi(3)); // geometry: beam formula
    let held = || Refusal::Outside(conservation::Refusal::TooLarge { what: "the sag" });
    let most = Length::nearest_from_mm(most).ok_or_else(held)?;
    let section = [
        ("load", rail.load.into()),
        ("span", rail.span.into()),
        ("width", rail.width.into()),
        ("depth", rail.depth.into()),
        ("modulus", rail.modulus.into()),
    ];
    let subject = |quantity| Subject::of("rail", quantity);
    let free = working.by(&SUPPORTED, subject("sag"), &section, most);
    let bends = 6.0 * load * l / (8.0 * b * d * d); // geometry: beam formula
    let stress = (bends, "N/mm²");
    let (section, _) = section.split_at(section.len() - 1);
    let stress = figure(working, &STRESS, subject("stress"), section, stress);
    let fifth = Length::from_quanta((free.value.quanta() + 2).div_euclid(5)); // geometry: beam formula
    let inputs = [("free", free.into())];
    let fixed = working.by(&FIXED, subject("sag_fixed"), &inputs, fifth);
    Ok(Sag {
        free,
        fixed,
        stress,
        lasting: lasting(free, settings, working),
        allowed: allowed(rail.span, settings, working),
    })
}

fn lasting(free: Worked<Length>, settings: &Settings, working: &mut Working) -> Worked<Length> {
    let creep = settings.count(Key::WoodCreep);
    let inputs = [
        ("creep", Stated::setting(Key::WoodCreep.id(), creep).into()),
        ("sag", free.into()),
    ];
    let value = free.value.times(creep);
    working.by(&CREEP, Subject::of("rail", "lasting"), &inputs, value)
}

fn allowed(span: Stated<Length>, settings: &Settings, working: &mut Working) -> Worked<Length> {
    let parts = settings.count(Key::SagParts);
    let inputs = [
        ("span", span.into()),
        ("parts", Stated::setting(Key::SagParts.id(), parts).into()),
    ];
    let value = Length::from_quanta(span.value.quanta().div_euclid(parts));
    working.by(&ALLOWED, Subject::of("rail", "allowed"), &inputs, value)
}

/// The depth at which a rail no longer sags too much, up to a whole quantum.
///
/// wanted = depth × ∛(lasting ÷ allowed)
///
/// Shape:  the depth it has, where that is enough.
pub fn deep_enough(rail: &Rail, sag: &Sag, working: &mut Working) -> Worked<Length> {
    let over = sag.lasting.value.approx_mm() / sag.allowed.value.approx_mm();
    let root = over.max(1.0).cbrt();
    let wanted = (rail.depth.value.approx_mm() * root * 16_000.0).ceil(); // geometry: quanta in a millimetre
    let value = Length::nearest_from_mm(wanted / 16_000.0).unwrap_or(rail.depth.value); // geometry: quanta in a millimetre
    let inputs = [
        ("depth", rail.depth.into()),
        ("cube_root", working::Given::search(Figure::of(root, ""))),
    ];
    working.by(&DEPTH, Subject::of("rail", "wanted"), &inputs, value)
}
