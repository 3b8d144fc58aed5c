//! Wood: moisture and movement.

use conservation::climate::{
    Grain, Moisture, Wood, coefficient_from_shrinkage, equilibrium, movement, rail_movement, wood,
};
use working::{Stated, Working};

use super::answers::{Answers, asked, comes_out, number, refused, word};
use super::kinds::Kind;
use super::row::Row;
use super::tolerance::{EXACT, by};

const FOUR: &str = "the table prints four decimals";

pub(super) static KINDS: &[Kind] = &[
    Kind {
        file: "wood_emc_cases.csv",
        inputs: &["temperature_F", "temperature_C", "relative_humidity_pct"],
        outputs: &[
            (
                "emc_table_pct",
                by(
                    0.1,
                    "the printed table has one decimal, and the equation is its fit",
                ),
            ),
            (
                "emc_equation_pct",
                by(
                    0.12,
                    "two sets of constants, for Celsius and for Fahrenheit, each fitted by itself",
                ),
            ),
        ],
        answer: moisture,
    },
    Kind {
        file: "wood_coefficient_cases.csv",
        inputs: &["species", "direction", "total_shrinkage_pct"],
        outputs: &[
            (
                "coef_from_rule",
                by(5.1e-7, "the table prints six decimals"),
            ),
            (
                "coef_table_13_5",
                by(
                    1e-5,
                    "the handbook prints five decimals of numbers rounded before",
                ),
            ),
        ],
        answer: coefficient,
    },
    Kind {
        file: "wood_movement_cases.csv",
        inputs: &[
            "species",
            "direction",
            "width_mm",
            "mc_from_pct",
            "mc_to_pct",
        ],
        outputs: &[
            ("coef_per_pct_mc", by(0.0, "a constant of the wood table")),
            (
                "change_mm",
                by(1e-4, "exact but for the quantum of 1/16 000 mm"),
            ),
        ],
        answer: moves,
    },
    Kind {
        file: "wood_rh_movement_cases.csv",
        inputs: &[
            "species",
            "direction",
            "width_mm",
            "temperature_C",
            "rh_from_pct",
            "rh_to_pct",
        ],
        outputs: &[
            ("emc_from_pct", by(1e-4, FOUR)),
            ("emc_to_pct", by(1e-4, FOUR)),
            ("change_mm", by(1e-4, FOUR)),
            ("change_pct", by(1e-4, FOUR)),
            ("mitre_gap_mm", by(1.5e-4, FOUR)),
            ("mitre_opens_at", EXACT),
        ],
        answer: rail,
    },
];

fn moisture(row: &Row) -> Result<Answers, String> {
    let fahrenheit = row.number("temperature_F")?;
    let celsius = row.number("temperature_C")?;
    if ((fahrenheit - 32.0) / 1.8 - celsius).abs() > 1e-3 {
        return Err(format!("{fahrenheit} °F is not {celsius} °C"));
    }
    let mut working = Working::new();
    let found = equilibrium(
        asked(celsius, "°C"),
        asked(row.number("relative_humidity_pct")?, "% RH"),
        "moisture",
        &mut working,
    )
    .map_err(refused)?;
    comes_out(&working)?;
    let found = found.value.value();
    Ok(vec![
        number("emc_table_pct", found),
        number("emc_equation_pct", found),
    ])
}

fn grain(row: &Row) -> Result<Grain, String> {
    match row.text("direction") {
        "radial" => Ok(Grain::Radial),
        "tangential" => Ok(Grain::Tangential),
        other => Err(format!(
            "direction “{other}” is neither radial nor tangential"
        )),
    }
}

fn species(row: &Row) -> Result<&'static Wood, String> {
    wood(row.text("species")).map_err(refused)
}

fn coefficient(row: &Row) -> Result<Answers, String> {
    let (wood, grain) = (species(row)?, grain(row)?);
    let shrinkage = asked(row.number("total_shrinkage_pct")?, "%");
    let mut working = Working::new();
    let rule = coefficient_from_shrinkage(shrinkage, &mut working).map_err(refused)?;
    comes_out(&working)?;
    let own = wood.coefficient(grain).value.value();
    let rule = rule.value.value();
    if (rule - own).abs() > 1.1e-5 {
        return Err(format!(
            "the rule gives {rule}, the program's table has {own}"
        ));
    }
    Ok(vec![
        number("coef_from_rule", rule),
        number("coef_table_13_5", rule),
    ])
}

fn moves(row: &Row) -> Result<Answers, String> {
    let coefficient = species(row)?.coefficient(grain(row)?);
    let moisture = Moisture {
        from: asked(row.number("mc_from_pct")?, "% MC"),
        to: asked(row.number("mc_to_pct")?, "% MC"),
    };
    let width = Stated::job(row.mm("width_mm")?);
    let mut working = Working::new();
    let found = movement(width, coefficient, &moisture, &mut working).map_err(refused)?;
    comes_out(&working)?;
    Ok(vec![
        number("coef_per_pct_mc", coefficient.value.value()),
        number("change_mm", found.value.approx_mm()),
    ])
}

fn rail(row: &Row) -> Result<Answers, String> {
    let coefficient = species(row)?.coefficient(grain(row)?);
    let width = row.mm("width_mm")?;
    let humidities = [
        asked(row.number("rh_from_pct")?, "% RH"),
        asked(row.number("rh_to_pct")?, "% RH"),
    ];
    let celsius = asked(row.number("temperature_C")?, "°C");
    let mut working = Working::new();
    let moved = rail_movement(
        Stated::job(width),
        coefficient,
        celsius,
        humidities,
        &mut working,
    )
    .map_err(refused)?;
    comes_out(&working)?;
    let change = moved.change.value.approx_mm();
    Ok(vec![
        number("emc_from_pct", moved.moisture[0].value.value()),
        number("emc_to_pct", moved.moisture[1].value.value()),
        number("change_mm", change),
        number("change_pct", 100.0 * change / width.approx_mm()),
        number("mitre_gap_mm", moved.mitre.gap.value.approx_mm()),
        word(
            "mitre_opens_at",
            if moved.mitre.inside {
                "inside"
            } else {
                "outside"
            },
        ),
    ])
}
