//! Light.

use conservation::light::{Class, Showing, UvAtArt, behind, days_a_year, fade, years};
use trade::{Key, Settings, Units, settings::Layer};
use working::Working;

use super::answers::{Answers, asked, comes_out, number, refused, yes};
use super::kinds::Kind;
use super::row::Row;
use super::tolerance::{EXACT, by, part};

const PRINTED: &str = "the table prints nine digits";
const FOUR: &str = "the table prints four decimals";

pub(super) static KINDS: &[Kind] = &[
    Kind {
        file: "light_dose_cases.csv",
        inputs: &[
            "illuminance_lx",
            "hours_per_day",
            "days_per_year",
            "years",
            "blue_wool",
            "uv_removed",
        ],
        outputs: &[
            ("exposure_lxh", part(1e-6, "a product of four numbers")),
            (
                "exposure_Mlxh",
                part(1e-6, "the same, a million times less"),
            ),
            ("jnf_dose_Mlxh", EXACT_DOSE),
            ("jnf_steps", part(1e-8, PRINTED)),
            ("years_to_jnf", part(1e-8, PRINTED)),
        ],
        answer: dose,
    },
    Kind {
        file: "light_limit_cases.csv",
        inputs: &[
            "category",
            "annual_exposure_limit_lxh",
            "illuminance_lx",
            "hours_per_day",
        ],
        outputs: &[("max_days_per_year", by(5.1e-5, FOUR)), ("all_year", EXACT)],
        answer: limit,
    },
    Kind {
        file: "light_cci_years_cases.csv",
        inputs: &["illuminance_lx", "category", "hours_per_year"],
        outputs: &[
            (
                "cci_years_lo",
                part(
                    0.5,
                    "two tables from two memories agree within a factor of 1.5; one is rounded to a digit",
                ),
            ),
            ("cci_years_hi", part(0.5, "the same")),
            (
                "computed_years_lo",
                by(5.1e-6, "the table prints five decimals"),
            ),
            (
                "computed_years_hi",
                by(5.1e-6, "the table prints five decimals"),
            ),
            ("worst_ratio", by(5.1e-3, "the table prints two decimals")),
        ],
        answer: table_of_years,
    },
    Kind {
        file: "light_uv_cases.csv",
        inputs: &["uv_content_uW_per_lm", "illuminance_lx", "uv_transmittance"],
        outputs: &[
            ("uv_content_at_object_uW_per_lm", part(1e-6, "a product")),
            ("uv_irradiance_mW_per_m2", part(1e-6, "a product")),
            ("pass_75", EXACT),
            ("pass_10", EXACT),
            ("pass_20mW", EXACT),
            ("pass_6mW", EXACT),
        ],
        answer: ultraviolet,
    },
];

const EXACT_DOSE: super::Tolerance = by(0.0, "a constant of the dose table");

/// Doses of blue wool 8 without ultraviolet that sources print, Mlx h.
const WOOL_EIGHT: [&str; 2] = ["1000", "1100"];

/// The shop's settings, blue wool 8 fading as the row has it where a source says so: they disagree, and the shop
/// decides. Any other dose is held against the shop's own.
fn settings(row: &Row) -> Result<Settings, String> {
    let shop = Settings::defaults(Units::Millimetres);
    if row.text("blue_wool") != "8" || !row.yes("uv_removed")? {
        return Ok(shop);
    }
    let stated = row.number("jnf_dose_Mlxh")?.to_string();
    let Some(dose) = WOOL_EIGHT.into_iter().find(|dose| *dose == stated) else {
        return Ok(shop);
    };
    let dose = dose.to_owned();
    let changes = [(Key::WoolEightDose.id().to_owned(), dose)].into();
    let unit = Units::Millimetres.unit();
    let own = shop.with(&changes, Layer::Shop, unit);
    own.map_err(|refusals| refusals.iter().map(refused).collect::<Vec<_>>().join("; "))
}

fn dose(row: &Row) -> Result<Answers, String> {
    let showing = Showing::asked(
        row.number("illuminance_lx")?,
        row.number("hours_per_day")?,
        row.number("days_per_year")?,
    );
    let years = asked(row.number("years")?, "years");
    let wool = (row.whole("blue_wool")?, row.yes("uv_removed")?);
    let mut working = Working::new();
    let fade = fade(&showing, years, wool, &settings(row)?, &mut working).map_err(refused)?;
    comes_out(&working)?;
    let total = fade.exposure.total.value.value();
    Ok(vec![
        number("exposure_lxh", total),
        number("exposure_Mlxh", total / 1e6),
        number("jnf_dose_Mlxh", fade.dose.value()),
        number("jnf_steps", fade.steps.value.value()),
        number("years_to_jnf", fade.years.value.value()),
    ])
}

fn limit(row: &Row) -> Result<Answers, String> {
    class(row)?;
    let mut working = Working::new();
    let days = days_a_year(
        asked(row.number("annual_exposure_limit_lxh")?, "lx h"),
        asked(row.number("illuminance_lx")?, "lx"),
        asked(row.number("hours_per_day")?, "h"),
        &mut working,
    )
    .map_err(refused)?;
    comes_out(&working)?;
    let days = days.value.value();
    Ok(vec![
        number("max_days_per_year", days),
        yes("all_year", days >= 365.0),
    ])
}

fn class(row: &Row) -> Result<Class, String> {
    match row.text("category") {
        "high" => Ok(Class::High),
        "medium" => Ok(Class::Medium),
        "low" => Ok(Class::Low),
        other => Err(format!(
            "category “{other}” is not one of high, medium, low"
        )),
    }
}

/// From the most sensitive wool with ultraviolet to the least without.
fn table_of_years(row: &Row) -> Result<Answers, String> {
    let days = 365.0;
    let hours = row.number("hours_per_year")? / days;
    let showing = Showing::asked(row.number("illuminance_lx")?, hours, days);
    let class = class(row)?;
    let shop = Settings::defaults(Units::Millimetres);
    let mut working = Working::new();
    let mut span = |removed| {
        let span = years(class, removed, &showing, &shop, &mut working).map_err(refused)?;
        span.ok_or_else(|| "the class does not fade".to_owned())
    };
    let (low, high) = (span(false)?.low, span(true)?.high);
    comes_out(&working)?;
    let (low, high) = (low.value.value(), high.value.value());
    let ratio = |found: f64, column: &str| -> Result<f64, String> {
        let stated = row.number(column)?;
        Ok((found / stated).max(stated / found))
    };
    let worst = ratio(low, "cci_years_lo")?.max(ratio(high, "cci_years_hi")?);
    Ok(vec![
        number("cci_years_lo", low),
        number("cci_years_hi", high),
        number("computed_years_lo", low),
        number("computed_years_hi", high),
        number("worst_ratio", worst),
    ])
}

fn ultraviolet(row: &Row) -> Result<Answers, String> {
    let lux = row.number("illuminance_lx")?;
    let mut working = Working::new();
    let found = behind(
        asked(row.number("uv_content_uW_per_lm")?, "µW/lm"),
        asked(lux, "lx"),
        asked(row.number("uv_transmittance")?, ""),
        &mut working,
    )
    .map_err(refused)?;
    let mut passes =
        |figure, most, unit| UvAtArt::is_within(figure, asked(most, unit), &mut working).value;
    let answers = vec![
        number(
            "uv_content_at_object_uW_per_lm",
            found.content.value.value(),
        ),
        number("uv_irradiance_mW_per_m2", found.irradiance.value.value()),
        yes("pass_75", passes(found.content, 75.0, "µW/lm")),
        yes("pass_10", passes(found.content, 10.0, "µW/lm")),
        yes("pass_20mW", passes(found.irradiance, 20.0, "mW/m²")),
        yes("pass_6mW", passes(found.irradiance, 6.0, "mW/m²")),
    ];
    comes_out(&working)?;
    Ok(answers)
}
