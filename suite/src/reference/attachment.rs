//! Hinges.

use conservation::attachment::{Sheet, hinge_load, hinges};
use measure::Size;
use trade::{Settings, Units};
use working::{Stated, Working};

use super::answers::{Answers, asked, comes_out, number, refused};
use super::kinds::Kind;
use super::row::Row;
use super::tolerance::{by, part};

pub(super) static KINDS: &[Kind] = &[
    Kind {
        file: "hinge_count_cases.csv",
        inputs: &["top_edge_in", "inset_in", "max_spacing_in"],
        outputs: &[
            ("hinges", by(0.0, "a whole number")),
            (
                "spacing_used_in",
                by(5.1e-5, "the table prints four decimals"),
            ),
        ],
        answer: count,
    },
    Kind {
        file: "hinge_load_cases.csv",
        inputs: &["grammage_g_m2", "width_mm", "height_mm", "hinges"],
        outputs: &[
            (
                "sheet_mass_g",
                by(5.1e-4, "the table prints three decimals"),
            ),
            (
                "load_per_hinge_N",
                part(1e-4, "the table prints five decimals"),
            ),
        ],
        answer: load,
    },
];

fn count(row: &Row) -> Result<Answers, String> {
    let length = |column| row.inches(column).map(Stated::job);
    let mut working = Working::new();
    let found = hinges(
        length("top_edge_in")?,
        length("inset_in")?,
        length("max_spacing_in")?,
        &mut working,
    )
    .map_err(refused)?;
    comes_out(&working)?;
    let count = i32::try_from(found.count.value).map_err(refused)?;
    Ok(vec![
        number("hinges", f64::from(count)),
        number("spacing_used_in", found.apart.value.approx_inches()),
    ])
}

fn load(row: &Row) -> Result<Answers, String> {
    let grammage = asked(row.number("grammage_g_m2")?, "g/m²");
    let size = Size::new(row.mm("width_mm")?, row.mm("height_mm")?);
    let hinges = Stated::job(row.whole("hinges")?);
    let shop = Settings::defaults(Units::Millimetres);
    let mut working = Working::new();
    let found =
        hinge_load(grammage, Sheet::asked(size), hinges, &shop, &mut working).map_err(refused)?;
    comes_out(&working)?;
    Ok(vec![
        number("sheet_mass_g", found.sheet.value.value()),
        number("load_per_hinge_N", found.share.value.value()),
    ])
}
