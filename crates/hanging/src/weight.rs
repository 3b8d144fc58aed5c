//! What a piece weighs, part by part.

use conservation::Fact;
use conservation::climate::{Wood, wood};
use conservation::rules::cited;
use conservation::spoken::weighs;
use measure::{Area, ArealMass, Length, Mass, Unit};
use sizing::{MemberSizes, SheetSizes, Sizes, WallSizes, grammage};
use trade::{Job, Key, Material, Medium, Pane, Settings};
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
static WALLS: Rule = geometry(
    "weight.walls",
    "walls weigh their length times their height and thickness times their density",
    "mass = nearest((2 × long + 2 × short) × height × thickness × density ÷ (1 m × 1 m × 1 m))",
);
static ALONE: Rule = geometry(
    "weight.alone",
    "what was put on a scale weighs what that says",
    "mass = stated",
);
static OF_WOOD: Rule = cited(
    "weight.wood",
    "a cubic metre of wood weighs its specific gravity times that of water, and the moisture it holds in a room",
    "density = down(1000 × gravity × (1 + moisture ÷ 100)) × 1 kg",
    "H1",
);
static TOTAL: Rule = geometry(
    "weight.total",
    "the piece weighs as much as its parts",
    "mass = sum(part)",
);

/// What no sum of parts counts.
pub const LEFT_OUT: &str = "hardware, cover paper, spacers and fillets are left out";

/// What a part does in the frame.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// It is the frame, or stiffens it.
    Frame,
    /// It is glazing, which rests on the bottom rail.
    Glazing,
    /// It lies behind the glazing and rests on the bottom rail too.
    Package,
}

/// One part, weighed.
#[derive(Clone, Debug)]
pub struct Part {
    /// What it does in the frame.
    pub place: Place,
    /// What it is.
    pub name: String,
    /// What it weighs.
    pub mass: Worked<Mass>,
}

/// A part nobody knows the weight of.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unweighed {
    /// What it does in the frame.
    pub place: Place,
    /// What it is.
    pub name: String,
}

/// A piece, weighed.
#[derive(Clone, Debug)]
pub struct Weight {
    /// Its parts, front to back.
    pub parts: Vec<Part>,
    /// All of them; as the scale says, where the finished piece stood on one.
    pub total: Worked<Mass>,
    /// What rests on the bottom rail: the package with its glazing.
    pub package: Worked<Mass>,
    /// Parts nobody knows the weight of: they count as nothing in the sums, so the piece is heavier.
    pub unknown: Vec<Unweighed>,
    /// Whether the finished piece stood on a scale.
    pub on_scale: bool,
    /// What the document says a scale showed, where that can't be: less than half of its known parts. The
    /// parts count instead.
    pub doubted: Option<Mass>,
    /// The unit its sentences begin with.
    pub unit: Unit,
}

impl Weight {
    /// Names of the parts that the total does not count; none where the piece stood on a scale.
    pub fn uncounted(&self) -> Vec<&str> {
        let unknown = self.unknown.iter().filter(|_| !self.on_scale);
        unknown.map(|part| part.name.as_str()).collect()
    }

    /// Names of the parts that the weight on the bottom rail does not count.
    pub fn uncounted_in_package(&self) -> Vec<&str> {
        let unknown = self.unknown.iter();
        let inside = unknown.filter(|part| part.place != Place::Frame);
        inside.map(|part| part.name.as_str()).collect()
    }

    /// The total, and what it does not count: `4.20 kg (9.3 lb) without Art, which nobody weighed`.
    pub fn sentence(&self) -> String {
        least(self.total.value, &self.uncounted(), self.unit)
    }
}

/// A mass, and what it does not count.
pub(crate) fn least(mass: Mass, uncounted: &[&str], unit: Unit) -> String {
    let mass = weighs(mass, unit);
    if uncounted.is_empty() {
        return mass;
    }
    format!(
        "{mass} without {}, which nobody weighed",
        uncounted.join(", ")
    )
}

/// Weighs a piece.
///
/// Shape:  parts whose weight neither document, catalogue nor constants tell are named, not guessed;
///         [`LEFT_OUT`] says what is never counted. Mats count whole, as if nothing were cut from them.
///         `working` begins with the sizes' own lines (`sizes.working.clone()`).
/// Units:  to the nearest nanogram.
/// Errors: none; what is unknown is listed.
/// Example: 22 × 28 in glass of 2.5 mm: 2.48 kg.
pub fn weigh(job: &Job, sizes: &Sizes, working: &mut Working) -> Weight {
    let mut scale = Scale {
        job,
        sizes,
        working,
        parts: Vec::new(),
        unknown: Vec::new(),
    };
    for member in &sizes.members {
        scale.member(member);
    }
    for pane in &sizes.glazing {
        scale.sheet(Place::Glazing, "Glazing", &pane.sheet, pane.pane);
    }
    for mat in &sizes.mats {
        scale.sheet(Place::Package, "Mat", &mat.sheet, None);
    }
    scale.art();
    if let Some(mount) = &sizes.mount {
        scale.sheet(Place::Package, "Mount", mount, None);
    }
    for backing in &sizes.backing {
        scale.sheet(Place::Package, "Backing", backing, None);
    }
    scale.boxed();
    scale.strainer();
    let Scale { parts, unknown, .. } = scale;
    let package = sum(
        "package",
        parts.iter().filter(|part| part.place != Place::Frame),
        working,
    );
    let (on_scale, doubted) = scale_of(job, &parts);
    let total = match on_scale {
        Some(mass) => {
            let inputs = [("stated", Given::job(mass))];
            working.by(&ALONE, Subject::of("weight", "total"), &inputs, mass)
        }
        None => sum("total", parts.iter(), working),
    };
    Weight {
        parts,
        total,
        package,
        unknown,
        on_scale: on_scale.is_some(),
        doubted,
        unit: job.units.unit(),
    }
}

/// What a scale showed: believed, or doubted for being less than half of what the known parts weigh.
///
/// Windows are counted whole, so a scale may well show less than the parts.
fn scale_of(job: &Job, parts: &[Part]) -> (Option<Mass>, Option<Mass>) {
    let known: Mass = parts.iter().map(|part| part.mass.value).sum();
    let stated = job.hardware.as_ref().and_then(|hardware| hardware.grams);
    let stated = stated.map(|grams| Mass::grams(i64::from(grams)));
    let believed = |mass: &Mass| *mass > Mass::ZERO && *mass >= known - *mass;
    (
        stated.filter(believed),
        stated.filter(|mass| !believed(mass)),
    )
}

fn sum<'a>(
    quantity: &'static str,
    parts: impl Iterator<Item = &'a Part>,
    working: &mut Working,
) -> Worked<Mass> {
    let masses: Vec<Worked<Mass>> = parts.map(|part| part.mass).collect();
    let mut inputs: Vec<(&'static str, Given)> = masses
        .iter()
        .map(|mass| ("part", Given::from(*mass)))
        .collect();
    if inputs.is_empty() {
        inputs.push(("part", Given::job(Mass::ZERO)));
    }
    let sum: Mass = masses.iter().map(|mass| mass.value).sum();
    working.by(&TOTAL, Subject::of("weight", quantity), &inputs, sum)
}

struct Scale<'a, 'w> {
    job: &'a Job,
    sizes: &'a Sizes,
    working: &'w mut Working,
    parts: Vec<Part>,
    unknown: Vec<Unweighed>,
}

impl Scale<'_, '_> {
    fn push(
        &mut self,
        (place, name): (Place, &str),
        rule: &'static Rule,
        inputs: &[(&'static str, Given)],
        mass: Option<Mass>,
    ) {
        let name = name.to_owned();
        let held = |mass: &Mass| {
            let mut sum = self.parts.iter().map(|part| part.mass.value.nanograms());
            sum.try_fold(mass.nanograms(), i64::checked_add).is_some()
        };
        // What no sum holds is named rather than counted.
        let Some(mass) = mass.filter(held) else {
            self.unknown.push(Unweighed { place, name });
            return;
        };
        let subject = Subject::nth("weight", self.parts.len(), "mass");
        let mass = self.working.by(rule, subject, inputs, mass);
        self.parts.push(Part { place, name, mass });
    }

    fn unweighed(&mut self, place: Place, name: &str) {
        let name = name.to_owned();
        self.unknown.push(Unweighed { place, name });
    }

    fn sheet(&mut self, place: Place, kind: &str, sheet: &SheetSizes, pane: Option<Pane>) {
        let area = self.sizes.shape_area(sheet.size.size());
        let material = sheet.material.as_deref();
        let name = material.map_or_else(
            || kind.to_owned(),
            |material| format!("{kind}: {}", material.title()),
        );
        if let Some(grams) = material.and_then(|material| material.grams_per_m2.as_ref()) {
            let grams = Stated::material(i64::from(*grams.is()));
            self.areal((place, &name), area, grams);
            return;
        }
        let density = material
            .and_then(|material| material.kg_per_m3.as_ref())
            .and_then(|density| Some(Stated::material(cube(*density.is())?)));
        let Some(density) = density.or_else(|| pane.and_then(of_pane)) else {
            self.unweighed(place, &name);
            return;
        };
        let inputs = [
            ("area", Given::job(area)),
            ("thickness", Given::job(sheet.thickness)),
            ("density", density.into()),
        ];
        let mass = slab_nearest(area, sheet.thickness, density.value);
        self.push((place, &name), &SLAB, &inputs, mass);
    }

    fn areal(&mut self, named: (Place, &str), area: Area, grams: Stated<i64>) {
        let square_metre = Stated {
            value: Mass::grams(grams.value),
            origin: grams.origin,
        };
        let inputs = [
            ("area", Given::job(area)),
            ("square_metre", square_metre.into()),
        ];
        let mass = sheet_nearest(area, grams.value);
        self.push(named, &SHEET, &inputs, mass);
    }

    fn member(&mut self, member: &MemberSizes) {
        let density = member
            .material
            .as_deref()
            .and_then(|material| self.density_of(material));
        let (Some(density), Some(height)) = (density, member.height) else {
            self.unweighed(Place::Frame, &member.name);
            return;
        };
        let (face, outside) = (member.face, member.outside);
        let depth = member.rabbet_depth.unwrap_or_default();
        let round = outside.size().perimeter() - face.value.times(4); // geometry: four corners
        let section = Area::of(face.value, height).square_quanta()
            - Area::of(member.lip, depth).square_quanta();
        let mass = slab_nearest(Area::from_square_quanta(section), round, density.value);
        let inputs = [
            ("face", face.into()),
            ("height", Given::material(height)),
            ("lip", Given::material(member.lip)),
            ("depth", Given::material(depth)),
            ("width", outside.width.into()),
            ("tall", outside.height.into()),
            ("density", density.into()),
        ];
        self.push((Place::Frame, &member.name), &RAILS, &inputs, mass);
    }

    /// Density of a moulding: as the catalogue says, else its wood's.
    fn density_of(&mut self, material: &Material) -> Option<Stated<Mass>> {
        if let Some(density) = &material.kg_per_m3 {
            return Some(Stated::material(cube(*density.is())?));
        }
        let wood = wood(material.wood.as_deref()?).ok()?;
        Some(self.of_wood(wood))
    }

    /// Density of a wood in a room.
    #[allow(
        clippy::float_arithmetic,
        clippy::as_conversions,
        clippy::cast_possible_truncation,
        reason = "a density is a whole number of a few hundred"
    )]
    fn of_wood(&mut self, wood: &Wood) -> Stated<Mass> {
        let moisture = Fact::named("wood.room_moisture");
        let gravity = wood.gravity();
        let grown = 1.0 + moisture.low() / 100.0; // geometry: per cent
        let kilograms = (1e3 * gravity.value.value() * grown).floor() as i64; // geometry: a prefix
        let inputs = [
            ("gravity", gravity.into()),
            ("moisture", moisture.only().into()),
        ];
        let subject = Subject::nth("weight", self.parts.len(), "density");
        let density = Mass::KILOGRAM.times(kilograms);
        self.working.by(&OF_WOOD, subject, &inputs, density).into()
    }

    fn art(&mut self) {
        let on_paper = |medium| {
            matches!(
                medium,
                Medium::Print
                    | Medium::Watercolour
                    | Medium::Pastel
                    | Medium::Photograph
                    | Medium::Document
                    | Medium::Reproduction
            )
        };
        let named = (Place::Package, "Art");
        for (index, art) in self.sizes.art.iter().enumerate() {
            let of_job = self.job.art.get(index);
            if let Some(grams) = of_job.and_then(|art| art.grams) {
                let mass = Mass::grams(i64::from(grams));
                let inputs = [("stated", Given::job(mass))];
                self.push(named, &ALONE, &inputs, Some(mass));
            } else if on_paper(of_job.map(|art| art.medium).unwrap_or_default()) {
                let area = art.largest.size().area();
                self.areal(named, area, grammage(of_job, &self.sizes.settings));
            } else {
                self.unweighed(Place::Package, "Art");
            }
        }
    }

    /// Walls of a shadowbox, the board under a textile, the board built up round thick art.
    fn boxed(&mut self) {
        if let Some(walls) = self.sizes.walls {
            self.walls(&walls);
        }
        if self.sizes.wrap.is_some() {
            self.unweighed(Place::Package, "Wrapped board");
        }
        if self.sizes.sink.is_some() {
            self.unweighed(Place::Package, "Sink");
        }
    }

    fn walls(&mut self, walls: &WallSizes) {
        let material = self.sizes.wall_material.clone();
        let density = material
            .as_deref()
            .and_then(|found| found.kg_per_m3.as_ref())
            .and_then(|density| cube(*density.is()));
        let Some(density) = density.map(Stated::material) else {
            self.unweighed(Place::Package, "Walls");
            return;
        };
        let (long, short) = (walls.long, walls.short);
        let round = long.value.twice() + short.value.twice();
        let section = Area::of(walls.height.value, walls.thickness);
        let inputs = [
            ("long", long.into()),
            ("short", short.into()),
            ("height", walls.height.into()),
            ("thickness", Given::job(walls.thickness)),
            ("density", density.into()),
        ];
        let mass = slab_nearest(section, round, density.value);
        self.push((Place::Package, "Walls"), &WALLS, &inputs, mass);
    }

    fn strainer(&mut self) {
        let Some(strainer) = self.sizes.strainer else {
            return;
        };
        let density = strainer_wood(&self.sizes.settings).map(|wood| self.of_wood(wood));
        let Some(density) = density else {
            self.unweighed(Place::Frame, "Strainer");
            return;
        };
        let section = Area::of(strainer.width, strainer.depth);
        let length = strainer.length;
        let mass = slab_nearest(section, length.value, density.value);
        let inputs = [
            ("bar", Given::job(strainer.width)),
            ("thickness", Given::job(strainer.depth)),
            ("length", length.into()),
            ("density", density.into()),
        ];
        self.push((Place::Frame, "Strainer"), &BARS, &inputs, mass);
    }
}

/// The wood that the shop's strainers are of.
pub(crate) fn strainer_wood(settings: &Settings) -> Option<&'static Wood> {
    wood(settings.choice(Key::StrainerWood)).ok()
}

/// Density of a pane without a catalogue entry, to the nearest kilogram in a cubic metre.
#[allow(
    clippy::as_conversions,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a density of the table is a whole number of a few thousand"
)]
fn of_pane(pane: Pane) -> Option<Stated<Mass>> {
    let id = match pane {
        Pane::Glass => "glass.density",
        Pane::Acrylic => "acrylic.density",
    };
    let fact = Fact::named(id);
    let cube = cube(fact.low().round() as u32)?;
    Some(Stated::table(fact.trust().code(), cube))
}

/// A density, kg/m³, as the mass of a cubic metre; none past what a mass holds.
fn cube(kilograms: u32) -> Option<Mass> {
    let nanograms = Mass::KILOGRAM
        .nanograms()
        .checked_mul(i64::from(kilograms))?;
    Some(Mass::from_nanograms(nanograms))
}

/// Mass of a sheet of so many grams to the square metre; none past what a mass holds.
fn sheet_nearest(area: Area, grams: i64) -> Option<Mass> {
    let metre = Length::mm(1000).quanta(); // geometry: a metre in millimetres
    let square = i128::from(metre) * i128::from(metre);
    let metres = area.square_quanta().div_euclid(square) + 1;
    let nanograms = metres.checked_mul(i128::from(Mass::grams(grams).nanograms()))?;
    i64::try_from(nanograms).ok()?;
    Some(Mass::of_sheet_nearest(area, ArealMass::grams_per_m2(grams)))
}

/// Mass of a prism, of which a cubic metre weighs whole kilograms, to the nearest nanogram; none past what a
/// mass holds.
fn slab_nearest(area: Area, along: Length, cube: Mass) -> Option<Mass> {
    let kilograms = cube.nanograms().div_euclid(Mass::KILOGRAM.nanograms());
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
