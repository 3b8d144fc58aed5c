//! What a piece weighs, part by part.

use measure::{Area, ArealMass, Length, Mass};
use sizing::{MemberSizes, SheetSizes, Sizes};
use trade::{Key, Material, Medium, Pane};
use working::{Given, Rule, Stated, Subject, Worked, Working};

use crate::{custom, geometry};

static SHEET: Rule = geometry(
    "weight.sheet",
    "a sheet weighs its area times the mass of a square metre of it",
    "mass = nearest(area × square_metre ÷ (1 m × 1 m))",
);
static SLAB: Rule = geometry(
    "weight.slab",
    "a sheet of known density weighs its volume times that",
    "mass = nearest(area × thickness × density ÷ (1 m × 1 m × 1 m))",
);
static RAILS: Rule = custom(
    "weight.rails",
    "a frame weighs its section, all round at the middle of its face, times its density; the section is face times height less the rabbet",
    "mass = nearest((face × height - lip × depth) × (2 × (width + tall) - 4 × face) × density ÷ (1 m × 1 m × 1 m))",
);
static BARS: Rule = geometry(
    "weight.bars",
    "bars weigh their section times their length times their density",
    "mass = nearest(bar × thickness × length × density ÷ (1 m × 1 m × 1 m))",
);
static TOTAL: Rule = geometry(
    "weight.total",
    "the piece weighs as much as its parts",
    "mass = sum(part)",
);

/// One part, weighed.
#[derive(Clone, Debug)]
pub struct Part {
    /// What it is.
    pub name: String,
    /// What it weighs.
    pub mass: Worked<Mass>,
}

/// A piece, weighed.
#[derive(Clone, Debug)]
pub struct Weight {
    /// Its parts, front to back.
    pub parts: Vec<Part>,
    /// All of them.
    pub total: Worked<Mass>,
    /// Parts nobody knows the weight of: the piece is heavier than the total.
    pub unknown: Vec<String>,
}

/// Weighs a piece.
///
/// Shape:  parts whose weight neither catalogue nor constants tell are named, not guessed; hardware
///         and cover paper are left out. Mats count whole, as if nothing were cut from them.
/// Units:  to the nearest nanogram.
/// Errors: none; what is unknown is listed.
/// Example: 22 × 28 in glass of 2.5 mm: 2.48 kg.
pub fn weigh(sizes: &Sizes, medium: Medium, working: &mut Working) -> Weight {
    let mut scale = Scale {
        sizes,
        working,
        parts: Vec::new(),
        unknown: Vec::new(),
    };
    for member in &sizes.members {
        scale.member(member);
    }
    for pane in &sizes.glazing {
        scale.sheet("Glazing", &pane.sheet, pane.pane);
    }
    for mat in &sizes.mats {
        scale.sheet("Mat", &mat.sheet, None);
    }
    scale.art(medium);
    if let Some(mount) = &sizes.mount {
        scale.sheet("Mount", mount, None);
    }
    for backing in &sizes.backing {
        scale.sheet("Backing", backing, None);
    }
    scale.strainer();
    let Scale { parts, unknown, .. } = scale;
    let mut inputs: Vec<(&'static str, Given)> = parts
        .iter()
        .map(|part| ("part", Given::from(part.mass)))
        .collect();
    if inputs.is_empty() {
        inputs.push(("part", Given::job(Mass::ZERO)));
    }
    let sum: Mass = parts.iter().map(|part| part.mass.value).sum();
    Weight {
        total: working.by(&TOTAL, Subject::of("weight", "total"), &inputs, sum),
        parts,
        unknown,
    }
}

struct Scale<'a, 'w> {
    sizes: &'a Sizes,
    working: &'w mut Working,
    parts: Vec<Part>,
    unknown: Vec<String>,
}

impl Scale<'_, '_> {
    fn push(
        &mut self,
        name: &str,
        rule: &'static Rule,
        inputs: &[(&'static str, Given)],
        mass: Option<Mass>,
    ) {
        let Some(mass) = mass else {
            self.unknown.push(name.to_owned());
            return;
        };
        let subject = Subject::nth("weight", self.parts.len(), "mass");
        let mass = self.working.by(rule, subject, inputs, mass);
        let name = name.to_owned();
        self.parts.push(Part { name, mass });
    }

    fn sheet(&mut self, kind: &str, sheet: &SheetSizes, pane: Option<Pane>) {
        let area = self.sizes.shape_area(sheet.size.size());
        let material = sheet.material.as_deref();
        let name = material.map_or_else(
            || kind.to_owned(),
            |material| format!("{kind}: {}", material.title()),
        );
        if let Some(grams) = material.and_then(|material| material.grams_per_m2.as_ref()) {
            self.areal(&name, area, i64::from(*grams.is()), Given::material);
            return;
        }
        let density = material
            .and_then(|material| material.kg_per_m3.as_ref())
            .map(|density| i64::from(*density.is()));
        let known = density.or_else(|| pane.map(of_pane));
        let inputs = [
            ("area", Given::job(area)),
            ("thickness", Given::job(sheet.thickness)),
            ("density", Given::material(cube(known.unwrap_or(0)))),
        ];
        let mass = known.and_then(|density| slab_nearest(area, sheet.thickness, density));
        self.push(&name, &SLAB, &inputs, mass);
    }

    fn areal(&mut self, name: &str, area: Area, grams: i64, from: fn(Mass) -> Given) {
        let inputs = [
            ("area", Given::job(area)),
            ("square_metre", from(Mass::grams(grams))),
        ];
        let mass = Mass::of_sheet_nearest(area, ArealMass::grams_per_m2(grams));
        self.push(name, &SHEET, &inputs, Some(mass));
    }

    fn member(&mut self, member: &MemberSizes) {
        let name = member.name.clone();
        let density = member.material.as_deref().and_then(density_of);
        let (Some(density), Some(height)) = (density, member.height) else {
            self.unknown.push(name);
            return;
        };
        let (face, outside) = (member.face.value, member.outside.size());
        let depth = member.rabbet_depth.unwrap_or_default();
        let round = outside.perimeter() - face.times(4); // geometry: four corners
        let section =
            Area::of(face, height).square_quanta() - Area::of(member.lip, depth).square_quanta();
        let mass = slab_nearest(Area::from_square_quanta(section), round, density);
        let inputs = [
            ("face", Given::job(face)),
            ("height", Given::job(height)),
            ("lip", Given::job(member.lip)),
            ("depth", Given::job(depth)),
            ("width", Given::job(outside.width)),
            ("tall", Given::job(outside.height)),
            ("density", Given::material(cube(density))),
        ];
        self.push(&name, &RAILS, &inputs, mass);
    }

    fn art(&mut self, medium: Medium) {
        let on_paper = matches!(
            medium,
            Medium::Print
                | Medium::Watercolour
                | Medium::Pastel
                | Medium::Photograph
                | Medium::Document
                | Medium::Reproduction
        );
        let usual = self.sizes.settings.count(Key::UsualSheet);
        for art in &self.sizes.art {
            if on_paper {
                let area = art.largest.size().area();
                let inputs = [
                    ("area", Given::job(area)),
                    (
                        "square_metre",
                        Stated::setting(Key::UsualSheet.id(), Mass::grams(usual)).into(),
                    ),
                ];
                let mass = Mass::of_sheet_nearest(area, ArealMass::grams_per_m2(usual));
                self.push("Art", &SHEET, &inputs, Some(mass));
            } else {
                self.unknown.push("Art".to_owned());
            }
        }
    }

    fn strainer(&mut self) {
        let Some(strainer) = self.sizes.strainer else {
            return;
        };
        let density = self.sizes.members.first();
        let density = density.and_then(|member| member.material.as_deref().and_then(density_of));
        let section = Area::of(strainer.width, strainer.depth);
        let length = strainer.length.value;
        let mass = density.and_then(|density| slab_nearest(section, length, density));
        let inputs = [
            ("bar", Given::job(strainer.width)),
            ("thickness", Given::job(strainer.depth)),
            ("length", Given::job(length)),
            ("density", Given::material(cube(density.unwrap_or(0)))),
        ];
        self.push("Strainer", &BARS, &inputs, mass);
    }
}

/// Density in kilograms to the cubic metre, where the catalogue says.
fn density_of(material: &Material) -> Option<i64> {
    let density = material.kg_per_m3.as_ref();
    density.map(|density| i64::from(*density.is()))
}

/// Density of a pane without a catalogue entry, to the nearest kilogram in a cubic metre.
#[allow(
    clippy::as_conversions,
    clippy::cast_possible_truncation,
    reason = "a density of the table is a whole number of a few thousand"
)]
fn of_pane(pane: Pane) -> i64 {
    let id = match pane {
        Pane::Glass => "glass.density",
        Pane::Acrylic => "acrylic.density",
    };
    conservation::Fact::named(id).low().round() as i64
}

/// A density as the mass of a cubic metre.
fn cube(kilograms: i64) -> Mass {
    Mass::KILOGRAM.times(kilograms)
}

/// Mass of a prism of this density, to the nearest nanogram; none past what a mass holds.
fn slab_nearest(area: Area, along: Length, kilograms: i64) -> Option<Mass> {
    // kg/m³ × quanta³ = 10¹² ng ÷ (1.6 × 10⁷)³ = 1 ÷ 4 096 000 000 ng
    let volume = area
        .square_quanta()
        .checked_mul(i128::from(along.quanta()))?;
    let product = volume.checked_mul(i128::from(kilograms))?;
    let one = 4_096_000_000_i128; // geometry: cubic quanta of a kilogram to the cubic metre in a nanogram
    let nanograms = (product * 2 + one).div_euclid(one * 2);
    i64::try_from(nanograms).ok().map(Mass::from_nanograms)
}

#[cfg(test)]
mod tests;
