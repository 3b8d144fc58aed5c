//! Rails: how far the bottom one sags under the glazing, and what cures it.

use conservation::rules::{cited, custom, figure};
use conservation::within;
use measure::Length;
use trade::{Key, Settings};
use working::{Figure, Given, Rule, Stated, Subject, Worked, Working};

use crate::refusal::Refusal;

static SUPPORTED: Rule = cited(
    "rail.sag",
    "a rail free at its corners sags most",
    "sag = nearest(60 × load × span × span × span × 1 mm × 1 mm ÷ (384 × modulus × width × depth × depth × depth))",
    "E9",
);
static HELPED: Rule = cited(
    "rail.sag_helped",
    "a rail and a bar beside it sag together: their stiffnesses add up",
    "sag = nearest(60 × load × span × span × span × 1 mm × 1 mm ÷ (384 × (modulus × width × depth × depth × depth + bar_modulus × bar_width × bar_depth × bar_depth × bar_depth)))",
    "E9",
);
static BORNE: Rule = cited(
    "rail.borne",
    "each bears its share of the load by its stiffness",
    "borne = load × modulus × width × depth × depth × depth ÷ (modulus × width × depth × depth × depth + bar_modulus × bar_width × bar_depth × bar_depth × bar_depth)",
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
    /// A bar fixed along it that sags with it: a strainer's.
    pub helped: Option<Bar>,
}

/// A bar that helps a rail.
#[derive(Clone, Copy, Debug)]
pub struct Bar {
    /// Stiffness of its wood, N/mm².
    pub modulus: Stated<Figure>,
    /// Across, from front to back of the frame.
    pub width: Stated<Length>,
    /// Upright, in the plane of the picture.
    pub depth: Stated<Length>,
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
    /// Whether the most it may come to, free at its corners and after years, is more than the shop allows.
    pub fn is_too_much(&self) -> bool {
        self.lasting.value > self.allowed.value
    }
}

/// How far a rail sags under an even load.
///
/// free = 5 F L³ ÷ (384 E I), I = b d³ ÷ 12; fixed = free ÷ 5; with a bar beside it, E I of both together
///
/// Shape:  the solid section only; rabbet and lip are left out. A bar counts where it is fixed all along; its
///         uprights are not counted as props, for the rail above gives way too.
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
    let free = free_sag(rail, (stiff, load), working)?;
    let borne = borne(rail, (stiff, load), working)?;
    let [b, d, l] = [rail.width, rail.depth, rail.span].map(|length| length.value.approx_mm());
    let bends = 6.0 * borne.value.value() * l / (8.0 * b * d * d); // geometry: beam formula
    let section = [
        ("load", borne.into()),
        ("span", rail.span.into()),
        ("width", rail.width.into()),
        ("depth", rail.depth.into()),
    ];
    let subject = |quantity| Subject::of("rail", quantity);
    let stress = (bends, "N/mm²");
    let stress = figure(working, &STRESS, subject("stress"), &section, stress);
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

/// The sag of a rail free at its corners, with its bar where it has one.
fn free_sag(
    rail: &Rail,
    (stiff, load): (f64, f64),
    working: &mut Working,
) -> Result<Worked<Length>, Refusal> {
    let [b, d, l] = [rail.width, rail.depth, rail.span].map(|length| length.value.approx_mm());
    let bar = rail.helped.map(|bar| bar.stiffness()).transpose()?;
    let both = stiff * b * d.powi(3) + bar.unwrap_or_default(); // geometry: beam formula
    let most = 60.0 * load * l.powi(3) / (384.0 * both); // geometry: beam formula
    let held = || Refusal::Outside(conservation::Refusal::TooLarge { what: "the sag" });
    let most = Length::nearest_from_mm(most).ok_or_else(held)?;
    let mut inputs = vec![("span", rail.span.into())];
    inputs.extend(rail.inputs());
    let rule = if rail.helped.is_some() {
        &HELPED
    } else {
        &SUPPORTED
    };
    Ok(working.by(rule, Subject::of("rail", "sag"), &inputs, most))
}

/// What the rail bears of the load, beside its bar.
fn borne(
    rail: &Rail,
    (stiff, load): (f64, f64),
    working: &mut Working,
) -> Result<Stated<Figure>, Refusal> {
    let Some(bar) = rail.helped else {
        return Ok(rail.load);
    };
    let [b, d] = [rail.width, rail.depth].map(|length| length.value.approx_mm());
    let own = stiff * b * d.powi(3); // geometry: beam formula
    let value = (load * own / (own + bar.stiffness()?), "N");
    let subject = Subject::of("rail", "borne");
    Ok(figure(working, &BORNE, subject, &rail.inputs(), value).into())
}

impl Rail {
    /// Load, section and wood, of its bar too.
    fn inputs(&self) -> Vec<(&'static str, Given)> {
        let own = [
            ("load", self.load.into()),
            ("width", self.width.into()),
            ("depth", self.depth.into()),
            ("modulus", self.modulus.into()),
        ];
        let bar = self.helped.iter().flat_map(Bar::inputs);
        own.into_iter().chain(bar).collect()
    }
}

impl Bar {
    /// Its share of the stiffness of the two, N mm².
    fn stiffness(&self) -> Result<f64, Refusal> {
        let stiff = within("modulus", self.modulus.value)?;
        Refusal::unless_positive("the bar's width", self.width.value)?;
        Refusal::unless_positive("the bar's depth", self.depth.value)?;
        let [b, d] = [self.width, self.depth].map(|length| length.value.approx_mm());
        Ok(stiff * b * d.powi(3)) // geometry: beam formula
    }

    fn inputs(&self) -> [(&'static str, Given); 3] {
        [
            ("bar_modulus", self.modulus.into()),
            ("bar_width", self.width.into()),
            ("bar_depth", self.depth.into()),
        ]
    }
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

static BAR: Rule = cited(
    "rail.bar",
    "a bar beside the rail makes up what stiffness it lacks",
    "wanted = up(depth × cube_root)",
    "E9",
);

/// How deep, in the plane of the picture, a strainer's bar must be for the rail no longer to sag too much.
///
/// wanted = d × ∛(lack ÷ E b d³), lack = E I of both × lasting ÷ allowed − E I of the rail
///
/// Shape:  `bar` gives its wood, its width from front to back, and the depth it is reckoned from; a bar that
///         helps the rail already is in its place, not beside it.
/// Units:  up to a whole quantum; zero where the rail alone is stiff enough.
/// Errors: no width or depth, numbers outside what can be.
pub fn bar_enough(
    rail: &Rail,
    sag: &Sag,
    bar: &Bar,
    working: &mut Working,
) -> Result<Worked<Length>, Refusal> {
    let over = sag.lasting.value.approx_mm() / sag.allowed.value.approx_mm();
    let own = Bar {
        modulus: rail.modulus,
        width: rail.width,
        depth: rail.depth,
    };
    let own = own.stiffness()?;
    let had = rail.helped.map(|bar| bar.stiffness()).transpose()?;
    let lack = ((own + had.unwrap_or_default()) * over - own).max(0.0);
    let root = (lack / bar.stiffness()?).cbrt();
    let wanted = (bar.depth.value.approx_mm() * root * 16_000.0).ceil(); // geometry: quanta in a millimetre
    let held = || Refusal::Outside(conservation::Refusal::TooLarge { what: "the bar" });
    let value = Length::nearest_from_mm(wanted / 16_000.0).ok_or_else(held)?; // geometry: quanta in a millimetre
    let inputs = [
        ("depth", bar.depth.into()),
        ("cube_root", Given::search(Figure::of(root, ""))),
    ];
    Ok(working.by(&BAR, Subject::of("rail", "bar"), &inputs, value))
}

/// The depth at which a rail that nothing helps no longer sags too much, up to a whole quantum.
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
        ("cube_root", Given::search(Figure::of(root, ""))),
    ];
    working.by(&DEPTH, Subject::of("rail", "wanted"), &inputs, value)
}
