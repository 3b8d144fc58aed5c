//! Attachment: how many hinges, where, what each carries, and which must give way first.

mod held;

use measure::{Length, Size};
use sizing::hinge_count;
use trade::{Key, Settings};
use working::{Figure, Rule, Stated, Subject, Worked, Working};

use crate::refusal::Refusal;
use crate::rules::{cited, custom, figure};
use crate::table::{Fact, within};

static APART: Rule = cited(
    "attachment.apart",
    "the hinges share the edge between the outer ones evenly",
    "apart = nearest((edge - 2 × inset) ÷ (hinges - 1))",
    "M6",
);
static SHEET: Rule = custom(
    "attachment.sheet",
    "a sheet weighs its grammage times its area",
    "grams = grammage × width ÷ 1 m × height ÷ 1 m",
);
static SHARE: Rule = cited(
    "attachment.share",
    "hinges share the weight, evenly at best",
    "share = grams × gravity ÷ (1000 × hinges)",
    "E9",
);
static WANTED: Rule = custom(
    "attachment.wanted",
    "a hinge carries several times its share: one may take all, and a bump multiplies it",
    "wanted = factor × share",
);
static WEAKEST: Rule = cited(
    "attachment.weakest",
    "a hinge is always lighter than the art, so that it gives way first",
    "weaker = hinge < art",
    "M3",
);

pub use held::{Held, held};
pub(crate) use held::{as_figure, grows, is_paper, of_art};

/// Where hinges go.
#[derive(Clone, Copy, Debug)]
pub struct Hinges {
    /// How many.
    pub count: Worked<i64>,
    /// From the centre of one to the next.
    pub apart: Worked<Length>,
}

/// How many hinges an edge takes, and how far apart.
///
/// Shape:  the count is [`sizing::hinge_count`], which the piece's own marks use too.
/// Units:  distances to the nearest quantum.
/// Errors: insets that meet, no spacing.
/// Source: a mounting manual (10 to 15 in, M6); three published counts (M7) agree.
/// Example: 30 in, inset 1 1/2, spacing 10: four, 9 in apart.
pub fn hinges(
    edge: Stated<Length>,
    inset: Stated<Length>,
    spacing: Stated<Length>,
    working: &mut Working,
) -> Result<Hinges, Refusal> {
    let between = edge.value - inset.value.twice();
    Refusal::unless_positive("the edge between the outer hinges", between)?;
    Refusal::unless_positive("the spacing", spacing.value)?;
    let count = hinge_count(edge, inset, spacing, working);
    let subject = |quantity| Subject::of("attachment", quantity);
    let parts = count.value - 1;
    let half = Length::from_quanta(parts.div_euclid(2));
    let value = Length::from_quanta((between + half).quanta().div_euclid(parts));
    let inputs = [
        ("edge", edge.into()),
        ("inset", inset.into()),
        ("hinges", count.into()),
    ];
    Ok(Hinges {
        count,
        apart: working.by(&APART, subject("apart"), &inputs, value),
    })
}

/// A sheet of paper, with where its sides are from.
#[derive(Clone, Copy, Debug)]
pub struct Sheet {
    /// Across.
    pub width: Stated<Length>,
    /// Up.
    pub height: Stated<Length>,
}

impl Sheet {
    /// A sheet as someone asks.
    pub const fn asked(size: Size) -> Self {
        Self {
            width: Stated::job(size.width),
            height: Stated::job(size.height),
        }
    }
}

/// What hinges carry.
#[derive(Clone, Copy, Debug)]
pub struct HingeLoad {
    /// The sheet, grams.
    pub sheet: Worked<Figure>,
    /// Each hinge at best, N.
    pub share: Worked<Figure>,
    /// What each should bear, N.
    pub wanted: Worked<Figure>,
}

/// The weight of a sheet and what each hinge carries of it.
///
/// share = grammage × area × g ÷ hinges
///
/// Units:  g/m²; grams, newtons.
/// Errors: no size, a grammage outside what can be, no hinges.
/// Example: 300 g/m², 559 × 762 mm on three: 127.8 g, 0.42 N each.
pub fn hinge_load(
    grammage: Stated<Figure>,
    sheet: Sheet,
    hinges: Stated<i64>,
    settings: &Settings,
    working: &mut Working,
) -> Result<HingeLoad, Refusal> {
    let heavy = within("grammage", grammage.value)?;
    let size = Size::new(sheet.width.value, sheet.height.value);
    Refusal::unless_positive("the sheet", size.short_side())?;
    let count = i32::try_from(hinges.value).unwrap_or(i32::MAX);
    within("factor", Figure::of(f64::from(count), ""))?;
    let grams = heavy * size.area().approx_m2();
    let inputs = [
        ("grammage", grammage.into()),
        ("width", sheet.width.into()),
        ("height", sheet.height.into()),
    ];
    let subject = |quantity| Subject::of("attachment", quantity);
    let weighs = figure(working, &SHEET, subject("sheet"), &inputs, (grams, "g"));
    let gravity = Fact::named("gravity");
    let each = grams * gravity.low() / (1e3 * f64::from(count)); // geometry: a prefix
    let inputs = [
        ("grams", weighs.into()),
        ("gravity", gravity.only().into()),
        ("hinges", hinges.into()),
    ];
    let share = figure(working, &SHARE, subject("share"), &inputs, (each, "N"));
    let factor = settings.count(Key::HingeFactor);
    let times = i32::try_from(factor).unwrap_or(i32::MAX);
    let inputs = [
        (
            "factor",
            Stated::setting(Key::HingeFactor.id(), factor).into(),
        ),
        ("share", share.into()),
    ];
    let value = (f64::from(times) * each, "N");
    Ok(HingeLoad {
        sheet: weighs,
        share,
        wanted: figure(working, &WANTED, subject("wanted"), &inputs, value),
    })
}

/// Whether the hinge gives way before the art: it is lighter.
///
/// Units:  g/m², both.
/// Errors: grammages outside what can be.
/// Source: Library of Congress (M3), and two more.
pub fn hinge_is_weakest(
    hinge: Stated<Figure>,
    art: Stated<Figure>,
    working: &mut Working,
) -> Result<Worked<bool>, Refusal> {
    let weaker = within("grammage", hinge.value)? < within("grammage", art.value)?;
    let inputs = [("hinge", hinge.into()), ("art", art.into())];
    let subject = Subject::of("attachment", "weakest");
    Ok(working.by(&WEAKEST, subject, &inputs, weaker))
}
