//! Wood: the moisture it comes to, and how far that moves a rail and its mitres.

use std::sync::LazyLock;

use measure::Length;
use serde::Deserialize;
use trade::SourcedStatus;
use working::{Figure, Given, Rule, Stated, Subject, Worked, Working};

use crate::refusal::Refusal;
use crate::rules::{cited, figure, geometry, remembered};
use crate::table::{Fact, Text, Trust, lasting, rows, status, within};

static QUADRATIC: Rule = remembered(
    "wood.sorption",
    "each constant of the sorption equation follows the temperature",
    "constant = zero + one × celsius + two × celsius × celsius",
    "H1",
);
static EMC: Rule = remembered(
    "wood.moisture",
    "wood left long enough comes to the moisture of its air",
    "moisture = 1800 ÷ w × (k × humidity ÷ 100 ÷ (1 - k × humidity ÷ 100) + (k1 × k × humidity ÷ 100 + 2 × k1 × k2 × k × k × humidity × humidity ÷ 10000) ÷ (1 + k1 × k × humidity ÷ 100 + k1 × k2 × k × k × humidity × humidity ÷ 10000))",
    "H1",
);
static MOVEMENT: Rule = cited(
    "wood.movement",
    "wood moves across its grain by its width, its coefficient and the change of its moisture; above fibre saturation it no longer does",
    "change = width × coefficient × (min(to, saturation) - min(from, saturation))",
    "H1",
);
static COEFFICIENT: Rule = remembered(
    "wood.coefficient",
    "shrinkage from green to dry gives the coefficient",
    "coefficient = 1 ÷ (100 × saturation ÷ shrinkage - saturation + start)",
    "H1",
);
static MITRE: Rule = geometry(
    "wood.mitre",
    "both faces of a mitre turn by half the strain: it gapes by the change times the root of two",
    "gap = nearest(abs(change) × sqrt(2))",
);

/// Across the rings or along them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grain {
    /// Across the rings: quarter-sawn faces.
    Radial,
    /// Along the rings: flat-sawn faces, which move most.
    Tangential,
}

/// A wood of the table.
#[derive(Clone, Copy, Debug, Deserialize)]
pub struct Wood {
    /// Its name.
    #[serde(deserialize_with = "lasting")]
    pub species: Text,
    /// Hardwood, softwood or imported.
    #[serde(deserialize_with = "lasting")]
    pub group: Text,
    /// Shrinkage from green to dry across the rings, %.
    #[serde(rename = "shrink_radial_pct")]
    pub shrink_radial: f64,
    /// The same along them.
    #[serde(rename = "shrink_tangential_pct")]
    pub shrink_tangential: f64,
    /// Movement for each % of moisture across the rings.
    #[serde(rename = "coef_radial_per_pct_mc")]
    pub radial: f64,
    /// The same along them.
    #[serde(rename = "coef_tangential_per_pct_mc")]
    pub tangential: f64,
    /// Stiffness in bending, in gigapascals.
    #[serde(rename = "modulus_elasticity_GPa")]
    pub modulus_gpa: f64,
    /// Specific gravity.
    #[serde(rename = "specific_gravity_12pct")]
    pub specific_gravity: f64,
    #[serde(deserialize_with = "status")]
    coef_status: SourcedStatus,
    #[serde(deserialize_with = "status")]
    modulus_status: SourcedStatus,
    /// What else must be known.
    #[serde(deserialize_with = "lasting")]
    pub note: Text,
}

/// The table of woods.
pub static WOODS: LazyLock<Vec<Wood>> =
    LazyLock::new(|| rows(include_str!("../../data/wood_properties.csv")));

/// Everything in the table is the Wood Handbook's.
const HANDBOOK: &str = "H1";

impl Wood {
    /// Where its movement is from.
    pub const fn movement_trust(&self) -> Trust {
        Trust {
            source: HANDBOOK,
            status: self.coef_status,
        }
    }

    /// Where its stiffness and weight are from.
    pub const fn strength_trust(&self) -> Trust {
        Trust {
            source: HANDBOOK,
            status: self.modulus_status,
        }
    }

    /// Whether it counts as a softwood.
    pub fn is_softwood(&self) -> bool {
        self.group == "softwood"
    }

    /// Its movement for each % of moisture, on its way into a line.
    pub fn coefficient(&self, grain: Grain) -> Stated<Figure> {
        let value = match grain {
            Grain::Radial => self.radial,
            Grain::Tangential => self.tangential,
        };
        Stated::table(HANDBOOK, Figure::of(value, "1/% MC"))
    }

    /// Its stiffness, N/mm², on its way into a line.
    pub fn modulus(&self) -> Stated<Figure> {
        let newtons = self.modulus_gpa * 1e3; // geometry: a prefix
        Stated::table(HANDBOOK, Figure::of(newtons, "N/mm²"))
    }

    /// Its specific gravity, on its way into a line.
    pub fn gravity(&self) -> Stated<Figure> {
        Stated::table(HANDBOOK, Figure::of(self.specific_gravity, ""))
    }
}

/// The wood of this name.
///
/// Errors: no such wood; those there are.
pub fn wood(name: &str) -> Result<&'static Wood, Refusal> {
    let found = WOODS.iter().find(|wood| wood.species == name);
    found.ok_or_else(|| Refusal::unknown("wood", name, WOODS.iter().map(|wood| wood.species)))
}

/// The moisture wood comes to, %.
///
/// Shape:  sound wood, whichever way it got there: species and hysteresis move it by 1 % or so.
/// Units:  °C, % RH; % of dry weight.
/// Errors: temperature or humidity outside what can be.
/// Source: Wood Handbook, two-hydrate equation (from memory); its Table 4-2 within 0.06 %.
/// Example: 20 °C, 50 %: 9.3 %.
pub fn equilibrium(
    celsius: Stated<Figure>,
    humidity: Stated<Figure>,
    quantity: &'static str,
    working: &mut Working,
) -> Result<Worked<Figure>, Refusal> {
    let warm = emc_range(celsius.value)?;
    let damp = within("humidity", humidity.value)?;
    let names = ["w", "k", "k1", "k2"];
    let constants = names.map(|name| {
        let [zero, one, two] =
            ["0", "1", "2"].map(|power| Fact::named(&format!("emc.{name}.{power}")));
        let value = zero.low() + warm * (one.low() + warm * two.low());
        let inputs = [
            ("zero", zero.only().into()),
            ("one", one.only().into()),
            ("two", two.only().into()),
            ("celsius", celsius.into()),
        ];
        figure(
            working,
            &QUADRATIC,
            Subject::of("sorption", name),
            &inputs,
            (value, ""),
        )
    });
    let [w, k, k1, k2] = constants.map(|line| line.value.value());
    let kh = k * damp / 100.0; // geometry: per cent
    let (first, second) = (k1 * kh, k1 * k2 * kh * kh);
    let moisture = 1800.0 / w // geometry: a hundred waters, as the equation has it
        * (kh / (1.0 - kh) + (first + 2.0 * second) / (1.0 + first + second));
    let mut inputs: Vec<(&'static str, Given)> = vec![("humidity", humidity.into())];
    inputs.extend(names.into_iter().zip(constants.map(Given::from)));
    let subject = Subject::of("wood", quantity);
    Ok(figure(working, &EMC, subject, &inputs, (moisture, "% MC")))
}

/// The printed table ends at 30 and 270 °F; rooms lie well inside.
fn emc_range(celsius: Figure) -> Result<f64, Refusal> {
    within("emc_temperature", celsius)
}

/// A change of moisture.
#[derive(Clone, Copy, Debug)]
pub struct Moisture {
    /// Before, %.
    pub from: Stated<Figure>,
    /// After, %.
    pub to: Stated<Figure>,
}

impl Moisture {
    /// Whether both lie where the coefficients were measured.
    pub fn is_in_range(&self) -> bool {
        let range = Fact::named("wood.from").low()..=Fact::named("wood.to").low();
        [self.from, self.to]
            .iter()
            .all(|moisture| range.contains(&moisture.value.value()))
    }
}

/// How far a part moves across its grain; positive where it swells.
///
/// change = width × coefficient × (to − from)
///
/// Units:  to the nearest quantum; coefficient for each % of moisture.
/// Errors: no width, moisture or coefficient outside what can be.
/// Source: Wood Handbook, chapter 13; good between 6 and 14 %, shown as such past it.
/// Example: flat-sawn white oak, 100 mm, 7 to 12 %: 1.825 mm.
pub fn movement(
    width: Stated<Length>,
    coefficient: Stated<Figure>,
    moisture: &Moisture,
    working: &mut Working,
) -> Result<Worked<Length>, Refusal> {
    Refusal::unless_positive("the width", width.value)?;
    let rate = within("coefficient", coefficient.value)?;
    let saturation = Fact::named("wood.saturation");
    let wet = |moisture: Stated<Figure>| {
        within("wood_moisture", moisture.value).map(|wet| wet.min(saturation.low()))
    };
    let swing = wet(moisture.to)? - wet(moisture.from)?;
    let change = width.value.scaled_nearest(rate * swing);
    let change = change.ok_or(Refusal::TooLarge {
        what: "the movement",
    })?;
    let inputs = [
        ("width", width.into()),
        ("coefficient", coefficient.into()),
        ("to", moisture.to.into()),
        ("from", moisture.from.into()),
        ("saturation", saturation.only().into()),
    ];
    Ok(working.by(&MOVEMENT, Subject::of("wood", "change"), &inputs, change))
}

/// The coefficient that a wood's shrinkage from green to dry gives.
///
/// C = 1 ÷ (3000 ÷ S − 30 + 10)
///
/// Errors: a shrinkage outside what can be.
/// Source: Wood Handbook (rule from memory; it meets the printed coefficients).
pub fn coefficient_from_shrinkage(
    shrinkage: Stated<Figure>,
    working: &mut Working,
) -> Result<Worked<Figure>, Refusal> {
    let shrinks = within("shrinkage", shrinkage.value)?;
    let [saturation, start] = ["wood.saturation", "wood.coefficient_start"].map(Fact::named);
    let value = 1.0 / (100.0 * saturation.low() / shrinks - saturation.low() + start.low()); // geometry: per cent
    let inputs = [
        ("saturation", saturation.only().into()),
        ("shrinkage", shrinkage.into()),
        ("start", start.only().into()),
    ];
    let subject = Subject::of("wood", "coefficient");
    Ok(figure(
        working,
        &COEFFICIENT,
        subject,
        &inputs,
        (value, "1/% MC"),
    ))
}

/// A mitre that gapes.
#[derive(Clone, Copy, Debug)]
pub struct Mitre {
    /// How wide.
    pub gap: Worked<Length>,
    /// At the sight, where the rail shrank; else at the outside.
    pub inside: bool,
}

/// How wide a mitre gapes once a rail has moved, should the glue give.
///
/// gap = √2 × change
///
/// Units:  to the nearest quantum.
/// Errors: a gap too large to hold.
pub fn mitre_gap(change: Worked<Length>, working: &mut Working) -> Result<Mitre, Refusal> {
    let gap = change.value.abs().scaled_nearest(std::f64::consts::SQRT_2);
    let gap = gap.ok_or(Refusal::TooLarge { what: "the gap" })?;
    let inputs = [("change", change.into())];
    Ok(Mitre {
        gap: working.by(&MITRE, Subject::of("wood", "mitre"), &inputs, gap),
        inside: change.value.is_negative(),
    })
}

/// A rail that moved.
#[derive(Clone, Copy, Debug)]
pub struct RailMovement {
    /// Moisture before and after, %.
    pub moisture: [Worked<Figure>; 2],
    /// How far it moved across its width; positive where it swelled.
    pub change: Worked<Length>,
    /// Its mitres.
    pub mitre: Mitre,
}

/// How far a rail moves between two humidities at one temperature, and its mitres with it.
///
/// Errors: as [`equilibrium`], [`movement`] and [`mitre_gap`].
/// Example: obeche, 80 mm flat-sawn, 40 to 60 % at 20 °C: 0.48 mm.
pub fn rail_movement(
    width: Stated<Length>,
    coefficient: Stated<Figure>,
    celsius: Stated<Figure>,
    [from, to]: [Stated<Figure>; 2],
    working: &mut Working,
) -> Result<RailMovement, Refusal> {
    let before = equilibrium(celsius, from, "moisture_before", working)?;
    let after = equilibrium(celsius, to, "moisture_after", working)?;
    let moisture = Moisture {
        from: before.into(),
        to: after.into(),
    };
    let change = movement(width, coefficient, &moisture, working)?;
    let mitre = mitre_gap(change, working)?;
    Ok(RailMovement {
        moisture: [before, after],
        change,
        mitre,
    })
}
