//! Glazing: growth of acrylic, weight of glass.

use measure::{ArealMass, Length, Mass, Size};
use sizing::GlazingSizes;
use trade::{Catalogue, Glazing, Job, Kind, Material, Measured, Pane};

use super::super::compare::{Answers, Found};
use super::super::piece;
use super::super::row::Row;
use super::named;

/// Code of the acrylic in the job that asks how far it grows.
const ACRYLIC: &str = "case-acrylic";

/// Kinds of glass differ by less than one part in so many; another thickness differs by more.
const LIKENESS: i64 = 20;

/// Growth of a sheet of acrylic over a rise of temperature.
pub(super) fn acrylic_growth(row: &Row, catalogue: &Catalogue) -> Result<Answers, String> {
    let mut job = piece::framed(Size::square(row.length("length")?));
    let rate = row.millionths("per_in_per_degF")?;
    piece::set(&mut job, "glazing.acrylic_growth", &rate.to_string());
    piece::set(&mut job, "glazing.acrylic_swing", row.text("rise_degF")?);
    job.material.push(Material {
        kind: Some(Kind::Glazing),
        pane: Some(Pane::Acrylic),
        ..Material::named(ACRYLIC)
    });
    job.glazing.push(Glazing {
        sheet: Some(ACRYLIC.to_owned()),
        thickness: Some(Measured(Length::mm(3))),
        undersize: Some(Measured(Length::ZERO)),
        ..Glazing::default()
    });
    let growth = only_pane(&job, catalogue)?.growth;
    let growth = growth.ok_or("the sheet does not grow")?.value;
    Ok(named([("growth_in", Found::Nearest(growth))]))
}

/// Weight of a pane of glass, by what a square metre of its thickness weighs.
pub(super) fn glass_weight(row: &Row, catalogue: &Catalogue) -> Result<Answers, String> {
    let mut job = piece::framed(Size::new(row.length("glaz_w")?, row.length("glaz_h")?));
    let thickness = Measured(millimetres(row, "glass_mm")?);
    job.glazing.push(Glazing {
        thickness: Some(thickness),
        undersize: Some(Measured(Length::ZERO)),
        ..Glazing::default()
    });
    let pane = only_pane(&job, catalogue)?.sheet;
    // A millionth of a kilogram is a milligram.
    let areal = ArealMass::mg_per_m2(row.millionths("kg_per_m2")?);
    let glass = starter_glass(pane.thickness)?.in_mg_per_m2();
    let apart = (areal.in_mg_per_m2() - glass).abs();
    if apart * LIKENESS > glass {
        return Err(format!(
            "kg_per_m2: the catalogue's glass weighs {glass} mg to the square metre at this thickness"
        ));
    }
    let mass = Mass::of_sheet_nearest(pane.size.size().area(), areal);
    Ok(named([
        ("kg", Found::Kilograms(mass)),
        ("lb", Found::Pounds(mass)),
    ]))
}

/// What glass of this thickness weighs to the square metre, by the density of the glass that the
/// starter catalogue lists.
fn starter_glass(thickness: Length) -> Result<ArealMass, String> {
    let starter = Catalogue::starter();
    let density = starter
        .iter()
        .filter(|material| material.pane == Some(Pane::Glass))
        .find_map(|material| {
            let listed = **material.thickness.as_ref()?.is();
            let grams = i64::from(*material.grams_per_m2.as_ref()?.is());
            // g/m² over mm is kg/m³; only whole millimetres give it exactly.
            let millimetres = listed.quanta() / Length::MILLIMETRE.quanta();
            (listed == Length::mm(millimetres)).then(|| grams / millimetres)
        })
        .ok_or("the catalogue lists no glass of whole millimetres")?;
    Ok(ArealMass::of_slab_nearest(density, thickness))
}

fn millimetres(row: &Row, name: &str) -> Result<Length, String> {
    let text = row.text(name)?;
    measure::read_length(text, measure::Unit::Millimetre)
        .map_err(|error| format!("{name}: {error}"))
}

fn only_pane(job: &Job, catalogue: &Catalogue) -> Result<GlazingSizes, String> {
    let panes = piece::sizes(job, catalogue)?.glazing;
    match <[GlazingSizes; 1]>::try_from(panes) {
        Ok([pane]) => Ok(pane),
        Err(panes) => Err(format!("the piece has {} panes", panes.len())),
    }
}
