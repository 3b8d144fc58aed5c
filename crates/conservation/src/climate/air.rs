//! Moist air: vapour, dew point, wet bulb, humidity ratio.

use working::{Figure, Given, Rule, Stated, Subject, Worked, Working};

use crate::refusal::Refusal;
use crate::rules::{cited, figure};
use crate::table::{Fact, within};

static SATURATION: Rule = cited(
    "air.saturation",
    "air holds vapour up to the saturation pressure of its temperature, over water, below the triple point over ice",
    "pressure = exp(a ÷ kelvin + b + c × kelvin + d × kelvin × kelvin + e × kelvin × kelvin × kelvin + f × kelvin × kelvin × kelvin × kelvin + g × ln(kelvin))",
    "H17",
);
static KELVIN: Rule = cited(
    "air.kelvin",
    "kelvin count from absolute zero",
    "kelvin = celsius + zero",
    "H17",
);
static VAPOUR: Rule = cited(
    "air.vapour",
    "relative humidity is the share of the saturation pressure that is there",
    "vapour = saturation × humidity ÷ 100",
    "H17",
);
static NEAR: Rule = cited(
    "air.dew_near",
    "Magnus's formula turned round comes near the dew point",
    "near = b × ln(vapour ÷ e) ÷ (a - ln(vapour ÷ e))",
    "H17",
);
static SLOPE: Rule = cited(
    "air.slope",
    "how fast the logarithm of the saturation pressure rises with temperature",
    "slope = c + 2 × d × kelvin + 3 × e × kelvin × kelvin + 4 × f × kelvin × kelvin × kelvin + g ÷ kelvin - a ÷ (kelvin × kelvin)",
    "H17",
);
static DEW: Rule = cited(
    "air.dew_point",
    "one step along that slope reaches the temperature at which the vapour saturates the air",
    "dew_point = near + ln(vapour ÷ saturation) ÷ slope",
    "H17",
);
static RATIO: Rule = cited(
    "air.ratio",
    "humidity ratio is water over dry air, by mass",
    "ratio = max(least, share × vapour ÷ (pressure - vapour))",
    "H17",
);
static WET: Rule = cited(
    "air.wet_bulb",
    "at the wet bulb the air gives as much heat as the water takes; found between two temperatures on either side of it",
    "wet_bulb = below + (above - below) × lack_below ÷ (lack_below - lack_above)",
    "H17",
);
static LACK: Rule = cited(
    "air.wet_lack",
    "humidity ratio of the air less what it would be were this the wet bulb",
    "lack = ratio - ((heat - fall × wet) × share × saturation ÷ (pressure - saturation) - dry × (celsius - wet)) ÷ (heat + vapour_heat × celsius - water × wet)",
    "H17",
);
static ABSOLUTE: Rule = cited(
    "air.absolute",
    "vapour is as heavy as its pressure over its gas constant and temperature",
    "grams = 1000 × vapour ÷ (gas × kelvin)",
    "H17",
);

/// Air as it is asked about.
#[derive(Clone, Copy, Debug)]
pub struct Air {
    /// Temperature, °C.
    pub celsius: Stated<Figure>,
    /// Relative humidity, %.
    pub humidity: Stated<Figure>,
    /// Pressure, Pa.
    pub pressure: Stated<Figure>,
}

impl Air {
    /// Air of this temperature and humidity at the standard pressure.
    pub fn asked(celsius: f64, humidity: f64) -> Self {
        Self {
            celsius: Stated::job(Figure::of(celsius, "°C")),
            humidity: Stated::job(Figure::of(humidity, "% RH")),
            pressure: Fact::named("air.pressure").only(),
        }
    }
}

/// What is known of moist air.
#[derive(Clone, Copy, Debug)]
pub struct MoistAir {
    /// Pressure of saturated vapour, Pa.
    pub saturation: Worked<Figure>,
    /// Pressure of its vapour, Pa.
    pub vapour: Worked<Figure>,
    /// Temperature at which it would be saturated, °C.
    pub dew_point: Worked<Figure>,
    /// Temperature of a wetted thermometer in it, °C.
    pub wet_bulb: Worked<Figure>,
    /// Water for each kilogram of dry air, kg.
    pub ratio: Worked<Figure>,
    /// Water in a cubic metre, g.
    pub absolute: Worked<Figure>,
}

/// Works out moist air.
///
/// Shape:  a real gas differs by less than 0.01 K in the dew point.
/// Units:  °C, %, Pa; Pa, °C, kg/kg, g/m³.
/// Errors: temperature, humidity or pressure outside what can be; no vapour at all.
/// Source: ASHRAE Fundamentals 2017 through a public library (H17); checked in `suite`.
/// Example: 20 °C, 60 %: dew point 12.0 °C, wet bulb 15.1 °C.
pub fn moist_air(air: &Air, working: &mut Working) -> Result<MoistAir, Refusal> {
    let celsius = within("temperature", air.celsius.value)?;
    let humidity = within("humidity", air.humidity.value)?;
    let pressure = within("pressure", air.pressure.value)?;
    if humidity <= 0.0 {
        return Err(Refusal::NotPositive {
            what: "the humidity",
            given: air.humidity.value.to_string(),
        });
    }
    let subject = |quantity| Subject::of("air", quantity);
    let saturation = saturation(air.celsius, "saturation", working);
    let inputs = [
        ("saturation", saturation.into()),
        ("humidity", air.humidity.into()),
    ];
    let part = saturation.value.value() * humidity / 100.0; // geometry: per cent
    let vapour = figure(working, &VAPOUR, subject("vapour"), &inputs, (part, "Pa"));
    let (least, share) = (Fact::named("air.least_ratio"), Fact::named("air.ratio"));
    let inputs = [
        ("least", least.only().into()),
        ("share", share.only().into()),
        ("vapour", vapour.into()),
        ("pressure", air.pressure.into()),
    ];
    let held = (share.low() * part / (pressure - part)).max(least.low());
    let ratio = figure(working, &RATIO, subject("ratio"), &inputs, (held, "kg/kg"));
    let absolute = grams(vapour, air.celsius, "absolute", working);
    Ok(MoistAir {
        saturation,
        vapour,
        dew_point: dew_point(vapour, working),
        wet_bulb: wet_bulb(air, celsius, ratio, working),
        ratio,
        absolute,
    })
}

/// Vapour of saturated air at a temperature, grams in a cubic metre.
pub(super) fn saturated_vapour(celsius: Stated<Figure>, working: &mut Working) -> Worked<Figure> {
    let held = saturation(celsius, "saturation", working);
    grams(held, celsius, "saturated", working)
}

fn grams(
    vapour: Worked<Figure>,
    celsius: Stated<Figure>,
    quantity: &'static str,
    working: &mut Working,
) -> Worked<Figure> {
    let kelvin = kelvin(celsius, "kelvin", working);
    let gas = Fact::named("air.vapour_gas");
    let inputs = [
        ("vapour", vapour.into()),
        ("gas", gas.only().into()),
        ("kelvin", kelvin.into()),
    ];
    let grams = 1e3 * vapour.value.value() / (gas.low() * kelvin.value.value()); // geometry: a prefix
    let subject = Subject::of("air", quantity);
    figure(working, &ABSOLUTE, subject, &inputs, (grams, "g/m³"))
}

/// Pressure of saturated vapour at a temperature, as the line of this quantity.
pub fn saturation(
    celsius: Stated<Figure>,
    quantity: &'static str,
    working: &mut Working,
) -> Worked<Figure> {
    let kelvin = kelvin(celsius, "kelvin", working);
    let over = Surface::at(celsius.value.value());
    let mut inputs: Vec<(&'static str, Given)> = vec![("kelvin", kelvin.into())];
    inputs.extend(over.inputs(&["a", "b", "c", "d", "e", "f", "g"]));
    let value = over.pressure(kelvin.value.value());
    let subject = Subject::of("air", quantity);
    figure(working, &SATURATION, subject, &inputs, (value, "Pa"))
}

fn kelvin(
    celsius: Stated<Figure>,
    quantity: &'static str,
    working: &mut Working,
) -> Worked<Figure> {
    let zero = Fact::named("air.kelvin");
    let inputs = [("celsius", celsius.into()), ("zero", zero.only().into())];
    let value = celsius.value.value() + zero.low();
    figure(
        working,
        &KELVIN,
        Subject::of("air", quantity),
        &inputs,
        (value, "K"),
    )
}

/// What vapour stands over, with its coefficients.
struct Surface {
    facts: [&'static Fact; 7],
}

impl Surface {
    fn at(celsius: f64) -> Self {
        let ice = celsius <= Fact::named("air.triple").low();
        let name = if ice { "ice" } else { "water" };
        Self {
            facts: std::array::from_fn(|index| Fact::named(&format!("air.{name}.{index}"))),
        }
    }

    fn inputs<'a>(
        &'a self,
        names: &'a [&'static str],
    ) -> impl Iterator<Item = (&'static str, Given)> + 'a {
        let each = ["a", "b", "c", "d", "e", "f", "g"]
            .into_iter()
            .zip(self.facts);
        let wanted = each.filter(|(name, _)| names.contains(name));
        wanted.map(|(name, fact)| (name, fact.only().into()))
    }

    fn pressure(&self, kelvin: f64) -> f64 {
        let [over, one, first, second, third, fourth, log] = self.facts.map(Fact::low);
        let powers = first + kelvin * (second + kelvin * (third + kelvin * fourth));
        (over / kelvin + one + kelvin * powers + log * kelvin.ln()).exp()
    }

    /// Rise of the pressure's logarithm with each kelvin.
    fn slope(&self, kelvin: f64) -> f64 {
        let [over, _, first, second, third, fourth, log] = self.facts.map(Fact::low);
        let cube = 3.0 * third + 4.0 * fourth * kelvin; // geometry: powers come down
        let powers = first + kelvin * (2.0 * second + kelvin * cube);
        powers + log / kelvin - over / (kelvin * kelvin)
    }
}

/// Magnus's formula, then steps along the slope until they no longer count.
fn dew_point(vapour: Worked<Figure>, working: &mut Working) -> Worked<Figure> {
    let [a, b, e] = ["air.magnus_a", "air.magnus_b", "air.magnus_e"].map(Fact::named);
    let log = (vapour.value.value() / e.low()).ln();
    let near = b.low() * log / (a.low() - log);
    let inputs = [
        ("a", a.only().into()),
        ("b", b.only().into()),
        ("e", e.only().into()),
        ("vapour", vapour.into()),
    ];
    let subject = Subject::of("air", "dew_near");
    let mut dew = figure(working, &NEAR, subject, &inputs, (near, "°C"));
    loop {
        let next = stepped(dew, vapour, working);
        if (next.value.value() - dew.value.value()).abs() < NEAR_ENOUGH {
            return next;
        }
        dew = next;
    }
}

/// A step of less than this, kelvin, does not count.
const NEAR_ENOUGH: f64 = 1e-4; // geometry: far below what any reading shows

fn stepped(near: Worked<Figure>, vapour: Worked<Figure>, working: &mut Working) -> Worked<Figure> {
    let held = saturation(near.into(), "dew_saturation", working);
    let kelvin = kelvin(near.into(), "dew_kelvin", working);
    let over = Surface::at(near.value.value());
    let mut inputs: Vec<(&'static str, Given)> = vec![("kelvin", kelvin.into())];
    inputs.extend(over.inputs(&["a", "c", "d", "e", "f", "g"]));
    let rise = over.slope(kelvin.value.value());
    let subject = |quantity| Subject::of("air", quantity);
    let slope = figure(
        working,
        &SLOPE,
        subject("dew_slope"),
        &inputs,
        (rise, "1/K"),
    );
    let value = near.value.value() + (vapour.value.value() / held.value.value()).ln() / rise;
    let inputs = [
        ("near", near.into()),
        ("vapour", vapour.into()),
        ("saturation", held.into()),
        ("slope", slope.into()),
    ];
    figure(working, &DEW, subject("dew_point"), &inputs, (value, "°C"))
}

/// How many times the search for the wet bulb halves its interval.
const HALVINGS: u32 = 24; // geometry: 100 K halved so often is 6 µK

fn wet_bulb(
    air: &Air,
    celsius: f64,
    ratio: Worked<Figure>,
    working: &mut Working,
) -> Worked<Figure> {
    let bulb = WetBulb {
        celsius,
        pressure: air.pressure.value.value(),
        ratio: ratio.value.value(),
    };
    // Near 0 °C a wet and a frozen bulb may both hold; the wet one is taken.
    let (mut below, mut above) = if celsius > 0.0 && bulb.lack(0.0) >= 0.0 {
        (0.0, celsius)
    } else {
        (celsius - 60.0, celsius.min(-f64::EPSILON)) // geometry: no air is so dry
    };
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(below, above);
        if bulb.lack(middle) > 0.0 {
            below = middle;
        } else {
            above = middle;
        }
    }
    let mut line = |at: f64, quantity: &'static str| bulb.line(air, at, ratio, quantity, working);
    let (lack_below, lack_above) = (line(below, "wet_below"), line(above, "wet_above"));
    let gone = lack_below.value.value() - lack_above.value.value();
    let wet = if gone.abs() > 0.0 {
        below + (above - below) * lack_below.value.value() / gone
    } else {
        below
    };
    let inputs = [
        ("below", Given::search(Figure::of(below, "°C"))),
        ("above", Given::search(Figure::of(above, "°C"))),
        ("lack_below", lack_below.into()),
        ("lack_above", lack_above.into()),
    ];
    figure(
        working,
        &WET,
        Subject::of("air", "wet_bulb"),
        &inputs,
        (wet, "°C"),
    )
}

struct WetBulb {
    celsius: f64,
    pressure: f64,
    ratio: f64,
}

impl WetBulb {
    /// Heat of evaporation, its change, and the heat of water or ice, below 0 °C or from it.
    fn heats(wet: f64) -> [&'static Fact; 3] {
        let names = if wet >= 0.0 {
            ["air.heat", "air.heat_slope", "air.water_heat"]
        } else {
            ["air.ice_heat", "air.ice_slope", "air.ice_water_heat"]
        };
        names.map(Fact::named)
    }

    fn lack(&self, wet: f64) -> f64 {
        let held = Surface::at(wet).pressure(wet + Fact::named("air.kelvin").low());
        self.lack_of(wet, held)
    }

    /// What the air lacks where `held` is the saturation pressure at the wet bulb.
    fn lack_of(&self, wet: f64, held: f64) -> f64 {
        let [heat, fall, water] = Self::heats(wet).map(Fact::low);
        let saturated = Fact::named("air.ratio").low() * held / (self.pressure - held);
        let [dry, vapour] = ["air.dry_heat", "air.vapour_heat"].map(|name| Fact::named(name).low());
        let given = (heat - fall * wet) * saturated - dry * (self.celsius - wet);
        self.ratio - given / (heat + vapour * self.celsius - water * wet)
    }

    fn line(
        &self,
        air: &Air,
        wet: f64,
        ratio: Worked<Figure>,
        quantity: &'static str,
        working: &mut Working,
    ) -> Worked<Figure> {
        let at = Stated {
            value: Figure::of(wet, "°C"),
            origin: working::Origin::Search,
        };
        let held = saturation(at, "wet_saturation", working);
        let [heat, fall, water] = Self::heats(wet);
        let fact = |name| Fact::named(name).only().into();
        let inputs = [
            ("ratio", ratio.into()),
            ("heat", heat.only().into()),
            ("fall", fall.only().into()),
            ("water", water.only().into()),
            ("wet", at.into()),
            ("share", fact("air.ratio")),
            ("saturation", held.into()),
            ("pressure", air.pressure.into()),
            ("dry", fact("air.dry_heat")),
            ("vapour_heat", fact("air.vapour_heat")),
            ("celsius", air.celsius.into()),
        ];
        let value = self.lack_of(wet, held.value.value());
        figure(
            working,
            &LACK,
            Subject::of("air", quantity),
            &inputs,
            (value, "kg/kg"),
        )
    }
}
