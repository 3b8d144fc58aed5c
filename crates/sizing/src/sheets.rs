//! Sheets cut to the package: mats, glazing, mount, backing.

use std::sync::Arc;

use measure::{Length, Size};
use trade::{Key, Material, Pane};
use working::{Given, Rule, Source, Status, Subject, Worked, Working};

use crate::brief::{Brief, LayerBrief, PaneBrief};
use crate::trace::{Fact, WorkedSize, along, both, geometry};

static UNDER: Rule = geometry(
    "sheet.under",
    "a sheet is cut smaller than the package by its undersize",
    "sheet = package - undersize",
);
static SAME: Rule = geometry(
    "sheet.same",
    "a sheet is cut alike with the package",
    "sheet = package",
);
static UNDERMAT: Rule = geometry(
    "mat.undermat",
    "each undermat is cut smaller than the mat above it",
    "outer = above - undersize",
);
static ACRYLIC: Rule = Rule {
    id: "glazing.acrylic_undersize",
    words: "acrylic grows with warmth and damp: one undersize for each step of its longest side, at least one",
    formula: "undersize = max(least, up_to(longest, step) ÷ step × least)",
    source: Source::CommonPractice,
    status: Status::CommonPractice,
};
static GROWTH: Rule = Rule {
    id: "glazing.growth",
    words: "acrylic grows by so many millionths of its length for each degree",
    formula: "growth = nearest(longest × rate × swing ÷ 1000000)",
    source: Source::Cited(MAKER),
    status: Status::Published,
};
static MAKER: &working::Citation = trade::settings::cited("AC");
static COVER_LEFT: Rule = geometry(
    "glazing.cover_left",
    "the lip left over glazing pushed hard to the other side",
    "cover = lip - allowance - undersize",
);

/// A sheet of the package.
#[derive(Clone, Debug)]
pub struct SheetSizes {
    /// Its material, where it has a catalogue code.
    pub material: Option<Arc<Material>>,
    /// Front to back.
    pub thickness: Length,
    /// As cut.
    pub size: WorkedSize,
}

/// A sheet of glazing.
#[derive(Clone, Debug)]
pub struct GlazingSizes {
    /// The sheet.
    pub sheet: SheetSizes,
    /// Glass or acrylic, where the catalogue says.
    pub pane: Option<Pane>,
    /// How much smaller than what its member holds, in total.
    pub undersize: Length,
    /// Lip left over it when it is pushed to the other side; none in a floater.
    pub cover: Option<Worked<Length>>,
    /// For acrylic: growth over the shop's swing of temperature.
    pub growth: Option<Worked<Length>>,
    /// The member that holds it, outside in.
    pub held_in: usize,
}

/// Outer sizes of the mats, front to back.
pub(crate) fn mats(
    brief: &Brief<'_>,
    package: WorkedSize,
    working: &mut Working,
) -> Vec<SheetSizes> {
    let under = brief.fact(Key::UndermatUnder);
    let mut above = package;
    brief
        .mats
        .iter()
        .enumerate()
        .map(|(i, mat)| {
            let subject = Subject::nth("mat", i, "outer");
            let size = if i == 0 {
                same(subject, package, working)
            } else {
                both(
                    working,
                    &UNDERMAT,
                    subject,
                    above.size().narrow(under.value),
                    |axis| {
                        [
                            ("above", above.along(axis).into()),
                            ("undersize", under.into()),
                        ]
                    },
                )
            };
            above = size;
            SheetSizes {
                material: mat.material.clone(),
                thickness: mat.thickness.value,
                size,
            }
        })
        .collect()
}

fn same(subject: Subject, package: WorkedSize, working: &mut Working) -> WorkedSize {
    both(working, &SAME, subject, package.size(), |axis| {
        [("package", package.along(axis).into())]
    })
}

/// A sheet smaller than `package` by `undersize`.
fn under(
    subject: Subject,
    package: WorkedSize,
    undersize: Fact,
    working: &mut Working,
) -> WorkedSize {
    both(
        working,
        &UNDER,
        subject,
        package.size().narrow(undersize.value),
        |axis| {
            [
                ("package", package.along(axis).into()),
                ("undersize", undersize.into()),
            ]
        },
    )
}

/// The mount, alike with the package.
pub(crate) fn mount(
    brief: &Brief<'_>,
    package: WorkedSize,
    working: &mut Working,
) -> Option<SheetSizes> {
    brief.mount.as_ref().map(|mount| SheetSizes {
        material: mount.material.clone(),
        thickness: mount.thickness.value,
        size: same(Subject::of("mount", "size"), package, working),
    })
}

/// The backing boards, front to back.
pub(crate) fn backing(
    brief: &Brief<'_>,
    package: WorkedSize,
    working: &mut Working,
) -> Vec<SheetSizes> {
    let one = |(i, back): (usize, &LayerBrief)| SheetSizes {
        material: back.material.clone(),
        thickness: back.thickness.value,
        size: under(
            Subject::nth("backing", i, "size"),
            package,
            back.undersize,
            working,
        ),
    };
    brief.backing.iter().enumerate().map(one).collect()
}

/// The glazing; `contents` is what each member holds, outside in.
pub(crate) fn glazing(
    brief: &Brief<'_>,
    contents: &[WorkedSize],
    working: &mut Working,
) -> Vec<GlazingSizes> {
    brief
        .glazing
        .iter()
        .enumerate()
        .map(|(i, pane)| one_pane(brief, pane, i, contents[pane.held_in], working))
        .collect()
}

fn one_pane(
    brief: &Brief<'_>,
    pane: &PaneBrief,
    index: usize,
    package: WorkedSize,
    working: &mut Working,
) -> GlazingSizes {
    let subject = |quantity| Subject::nth("glazing", index, quantity);
    let undersize = pane
        .undersize
        .unwrap_or_else(|| acrylic_undersize(brief, index, package, working));
    let size = under(subject("size"), package, undersize, working);
    let member = &brief.members[pane.held_in];
    let cover = member.floater.is_none().then(|| {
        let inputs = [
            ("lip", member.lip.into()),
            ("allowance", member.allowance.into()),
            ("undersize", undersize.into()),
        ];
        let value = member.lip.value - member.allowance.value - undersize.value;
        working.by(&COVER_LEFT, subject("cover"), &inputs, value)
    });
    let growth = (pane.pane == Some(Pane::Acrylic)).then(|| growth(brief, index, size, working));
    GlazingSizes {
        sheet: SheetSizes {
            material: pane.material.clone(),
            thickness: pane.thickness.value,
            size,
        },
        pane: pane.pane,
        undersize: undersize.value,
        cover,
        growth,
        held_in: pane.held_in,
    }
}

fn acrylic_undersize(
    brief: &Brief<'_>,
    index: usize,
    package: WorkedSize,
    working: &mut Working,
) -> Fact {
    let (least, step) = (
        brief.fact(Key::AcrylicUndersize),
        brief.fact(Key::AcrylicStep),
    );
    let longest = longest(package);
    let steps = longest
        .value
        .up_to(step.value)
        .quanta()
        .div_euclid(step.value.quanta());
    let value = least.value.max(least.value.times(steps));
    let inputs = [
        ("least", least.into()),
        ("longest", longest.into()),
        ("step", step.into()),
    ];
    working
        .by(
            &ACRYLIC,
            Subject::nth("glazing", index, "undersize"),
            &inputs,
            value,
        )
        .into()
}

fn growth(
    brief: &Brief<'_>,
    index: usize,
    size: WorkedSize,
    working: &mut Working,
) -> Worked<Length> {
    let (rate, swing) = (
        brief.settings.count(Key::AcrylicGrowth),
        brief.settings.count(Key::AcrylicSwing),
    );
    let longest = longest(size);
    let share = i128::from(longest.value.quanta()) * i128::from(rate) * i128::from(swing);
    let million = 1_000_000_i128; // geometry: parts in a million
    let quanta = (share + million.div_euclid(2)).div_euclid(million);
    let value = i64::try_from(quanta).map_or(longest.value, Length::from_quanta);
    let inputs = [
        ("longest", longest.into()),
        ("rate", Given::setting(Key::AcrylicGrowth.id(), rate)),
        ("swing", Given::setting(Key::AcrylicSwing.id(), swing)),
    ];
    working.by(
        &GROWTH,
        Subject::nth("glazing", index, "growth"),
        &inputs,
        value,
    )
}

fn longest(size: WorkedSize) -> Worked<Length> {
    if size.width.value > size.height.value {
        size.width
    } else {
        size.height
    }
}

/// The smallest stock sheet of a material that a part fits, and whether it must be turned to fit.
pub(crate) fn stock_sheet(material: Option<&Arc<Material>>, part: Size) -> Option<Size> {
    let material = material?;
    let one_way = material.one_way.unwrap_or(false);
    material
        .sheets
        .iter()
        .map(|sheet| **sheet)
        .filter(|sheet| {
            if one_way {
                part.fits_in(*sheet)
            } else {
                part.fits_in_either_way(*sheet)
            }
        })
        .min_by_key(|sheet| sheet.area())
}

/// The measure of a size along an axis, for callers outside the trace.
pub(crate) fn side(size: Size, axis: working::Axis) -> Length {
    along(size, axis)
}
