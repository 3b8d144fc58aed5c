//! Boards: specifications and weights.

use conservation::boards::{Tested, board_mass, judge, spec};
use conservation::glazing::composite_areal;
use working::{Stated, Working};

use super::answers::{Answers, asked, comes_out, number, refused, word, yes};
use super::glazing::sheet;
use super::kinds::Kind;
use super::row::Row;
use super::tolerance::{EXACT, by, part};

pub(super) static KINDS: &[Kind] = &[
    Kind {
        file: "board_spec_cases.csv",
        inputs: &["spec", "ph", "alkaline_reserve_pct", "kappa"],
        outputs: &[("passes", EXACT), ("fails_on", EXACT)],
        answer: specification,
    },
    Kind {
        file: "board_weight_cases.csv",
        inputs: &[
            "board",
            "thickness_mm",
            "density_kg_m3",
            "width_mm",
            "height_mm",
        ],
        outputs: &[("mass_kg", part(1e-5, "the table prints six digits"))],
        answer: weight,
    },
    Kind {
        file: "sandwich_mass_cases.csv",
        inputs: &[
            "thickness_mm",
            "skin_mm",
            "skin_density_kg_m3",
            "core_density_kg_m3",
        ],
        outputs: &[("area_mass_kg_m2", by(1e-6, "sums of products"))],
        answer: composite,
    },
];

fn specification(row: &Row) -> Result<Answers, String> {
    let spec = spec(row.text("spec")).map_err(refused)?;
    let tested = Tested {
        ph: asked(row.number("ph")?, ""),
        reserve: asked(row.number("alkaline_reserve_pct")?, "%"),
        kappa: asked(row.number("kappa")?, ""),
    };
    let mut working = Working::new();
    let failing = judge(&tested, spec, &mut working).map_err(refused)?;
    comes_out(&working)?;
    let first = failing.first();
    let first = first.map(|(property, _)| property.to_string());
    Ok(vec![
        yes("passes", failing.is_empty()),
        word("fails_on", first.unwrap_or_default()),
    ])
}

fn weight(row: &Row) -> Result<Answers, String> {
    let own = board_mass(row.text("board")).map_err(refused)?;
    let (thickness, density) = (row.number("thickness_mm")?, row.number("density_kg_m3")?);
    if (own.thickness_mm - thickness).abs() + (own.density_kg_m3 - density).abs() > 0.0 {
        return Err(format!(
            "the program has {} mm and {} kg/m³ for this board",
            own.thickness_mm, own.density_kg_m3
        ));
    }
    sheet(row, asked(own.density_kg_m3, "kg/m³"))
}

fn composite(row: &Row) -> Result<Answers, String> {
    let densities = [
        asked(row.number("skin_density_kg_m3")?, "kg/m³"),
        asked(row.number("core_density_kg_m3")?, "kg/m³"),
    ];
    let thickness = Stated::job(row.mm("thickness_mm")?);
    let skin = Stated::job(row.mm("skin_mm")?);
    let mut working = Working::new();
    let areal = composite_areal(thickness, skin, densities, &mut working).map_err(refused)?;
    comes_out(&working)?;
    Ok(vec![number("area_mass_kg_m2", areal.value.value())])
}
