//! Glazing: reflection, names of thicknesses, weight, sag.

use conservation::Fact;
use conservation::glazing::{astm_designation, coated, en_nominal, plate, reflected, sheet_mass};
use measure::Size;
use working::{Figure, Stated, Working};

use super::answers::{Answers, asked, comes_out, number, refused, word};
use super::kinds::Kind;
use super::row::Row;
use super::tolerance::{EXACT, Tolerance, by, part};

const PERCENT: Tolerance = by(5.1e-5, "the table prints four decimals of a per cent");

pub(super) static KINDS: &[Kind] = &[
    Kind {
        file: "reflectance_cases.csv",
        inputs: &["material", "refractive_index", "incidence_deg"],
        outputs: &[
            ("R_s_pct", PERCENT),
            ("R_p_pct", PERCENT),
            ("R_one_surface_pct", PERCENT),
            ("R_both_surfaces_pct", PERCENT),
            ("T_pct", PERCENT),
        ],
        answer: reflectance,
    },
    Kind {
        file: "ar_coating_cases.csv",
        inputs: &["coating", "n_sheet", "n_layer"],
        outputs: &[
            ("R_one_surface_pct", PERCENT),
            ("R_both_surfaces_pct", PERCENT),
        ],
        answer: coating,
    },
    Kind {
        file: "glass_designation_cases.csv",
        inputs: &["true_thickness_mm"],
        outputs: &[("astm_designation", EXACT), ("en_nominal", EXACT)],
        answer: designation,
    },
    Kind {
        file: "sheet_weight_cases.csv",
        inputs: &[
            "material",
            "density_kg_m3",
            "thickness_mm",
            "width_mm",
            "height_mm",
        ],
        outputs: &[
            ("mass_kg", part(1e-5, "the table prints six digits")),
            ("area_mass_kg_m2", part(1e-5, "the table prints six digits")),
            ("mass_lb", part(1e-5, "the table prints six digits")),
            (
                "area_mass_lb_ft2",
                part(1e-5, "the table prints six digits"),
            ),
        ],
        answer: weight,
    },
    Kind {
        file: "sheet_stiffness_cases.csv",
        inputs: &["material", "E_MPa", "thickness_mm", "span_mm"],
        outputs: &[
            (
                "stiffness_Nmm2_per_mm",
                part(2e-6, "the table prints six digits"),
            ),
            ("sag_mm", by(1.2e-4, "the table prints four decimals")),
        ],
        answer: stiffness,
    },
];

fn reflectance(row: &Row) -> Result<Answers, String> {
    let mut working = Working::new();
    let found = reflected(
        asked(row.number("refractive_index")?, ""),
        asked(row.number("incidence_deg")?, "°"),
        &mut working,
    )
    .map_err(refused)?;
    comes_out(&working)?;
    Ok(vec![
        number("R_s_pct", found.s.value.value()),
        number("R_p_pct", found.p.value.value()),
        number("R_one_surface_pct", found.one.value.value()),
        number("R_both_surfaces_pct", found.both.value.value()),
        number("T_pct", found.through.value.value()),
    ])
}

fn coating(row: &Row) -> Result<Answers, String> {
    let mut working = Working::new();
    let sheet = asked(row.number("n_sheet")?, "");
    let layer = asked(row.number("n_layer")?, "");
    let found = coated(sheet, layer, &mut working).map_err(refused)?;
    comes_out(&working)?;
    Ok(vec![
        number("R_one_surface_pct", found.one.value.value()),
        number("R_both_surfaces_pct", found.both.value.value()),
    ])
}

fn designation(row: &Row) -> Result<Answers, String> {
    let thickness = row.mm("true_thickness_mm")?;
    let astm = astm_designation(thickness).map_or("none", |glass| glass.designation);
    let en = en_nominal(thickness).map_or_else(
        || "none".to_owned(),
        |glass| format!("{} mm", glass.nominal_mm),
    );
    Ok(vec![word("astm_designation", astm), word("en_nominal", en)])
}

/// The program's own density of a glazing material.
fn density(row: &Row) -> Result<Stated<Figure>, String> {
    let id = match row.text("material") {
        "glass" => "glass.density",
        "acrylic" => "acrylic.density",
        "polycarbonate" => "polycarbonate.density",
        other => {
            return Err(format!(
                "material “{other}” is not glass, acrylic or polycarbonate"
            ));
        }
    };
    Ok(Fact::named(id).only())
}

fn weight(row: &Row) -> Result<Answers, String> {
    let own = density(row)?;
    let stated = row.number("density_kg_m3")?;
    if (own.value.value() - stated).abs() > 0.0 {
        let own = own.value;
        return Err(format!("the program has {own}, the row {stated} kg/m³"));
    }
    sheet(row, own)
}

/// A sheet of the row's size and this density, weighed.
pub(super) fn sheet(row: &Row, density: Stated<Figure>) -> Result<Answers, String> {
    let size = Size::new(row.mm("width_mm")?, row.mm("height_mm")?);
    let thickness = Stated::job(row.mm("thickness_mm")?);
    let mut working = Working::new();
    let (mass, areal) = sheet_mass(density, thickness, size, &mut working).map_err(refused)?;
    comes_out(&working)?;
    let (kilograms, areal) = (mass.value.approx_kg(), areal.value.value());
    let pound = measure::Mass::POUND.approx_kg();
    let square_foot = measure::Area::SQUARE_FOOT.approx_m2();
    Ok(vec![
        number("mass_kg", kilograms),
        number("area_mass_kg_m2", areal),
        number("mass_lb", kilograms / pound),
        number("area_mass_lb_ft2", areal * square_foot / pound),
    ])
}

fn stiffness(row: &Row) -> Result<Answers, String> {
    let mut working = Working::new();
    let found = plate(
        asked(row.number("E_MPa")?, "N/mm²"),
        density(row)?,
        Stated::job(row.mm("thickness_mm")?),
        Stated::job(row.mm("span_mm")?),
        &mut working,
    )
    .map_err(refused)?;
    comes_out(&working)?;
    Ok(vec![
        number("stiffness_Nmm2_per_mm", found.stiffness.value.value()),
        number("sag_mm", found.sag.value.approx_mm()),
    ])
}
