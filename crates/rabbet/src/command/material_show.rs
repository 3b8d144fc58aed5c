//! `rabbet material show`

use clap::Args;
use measure::Unit;
use trade::{Material, Sourced};

use super::Desk;
use crate::exit::{EXIT_CODES, Exit};
use crate::problem::Trouble;
use crate::report::{Group, Report};
use crate::shop;
use web::wire;

/// Shows what is known of a material, and where each figure is from
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet material show oak-square-1", after_help = EXIT_CODES)]
pub struct MaterialShow {
    /// Its code
    #[arg(value_name = "CODE")]
    code: String,
    /// As JSON
    #[arg(long)]
    json: bool,
}

impl MaterialShow {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let catalogue = desk.shop.catalogue()?;
        let material = catalogue
            .find(&self.code)
            .map_err(|fault| shop::no_material(&fault))?;
        let text = if self.json {
            format!("{:#}\n", wire::material(material))
        } else {
            as_table(material).render(desk.terminal)
        };
        desk.terminal.data(&text)?;
        Ok(Exit::Done)
    }
}

fn as_table(material: &Material) -> Report {
    let mut report = Report::default();
    let group = report.group(&material.code);
    group.row("name", material.title().to_owned());
    let words = [
        ("kind", material.kind.map(|kind| kind.word().to_owned())),
        ("class", material.class.clone()),
        ("made of", material.pane.as_ref().map(wire::word)),
        ("surface", material.coating.as_ref().map(wire::word)),
        ("colour", material.colour.clone()),
        ("core", material.core.clone()),
    ];
    for (label, text) in words {
        group.some(label, text);
    }
    let thickness = |sourced: &Sourced<trade::Measured>| {
        cited(sourced, &sourced.is().in_both(Unit::Millimetre))
    };
    group.some("thickness", material.thickness.as_ref().map(thickness));
    group.some(
        "weight",
        material
            .grams_per_m2
            .as_ref()
            .map(|s| cited(s, &format!("{} g/m²", s.is()))),
    );
    group.some(
        "density",
        material
            .kg_per_m3
            .as_ref()
            .map(|s| cited(s, &format!("{} kg/m³", s.is()))),
    );
    stock(material, group);
    if let Some(profile) = &material.profile {
        group.row("face", profile.face.in_both(Unit::Inch));
        group.row("height", profile.height.in_both(Unit::Inch));
        group.row("lip", profile.lip.in_both(Unit::Inch));
        group.row("rabbet depth", profile.rabbet_depth.in_both(Unit::Inch));
    }
    group.some("note", material.note.clone());
    report
}

fn stock(material: &Material, group: &mut Group) {
    let sheets: Vec<String> = material
        .sheets
        .iter()
        .map(|sheet| sheet.exact(Unit::Inch))
        .collect();
    let sticks: Vec<String> = material
        .sticks
        .iter()
        .map(|stick| stick.in_both(Unit::Foot))
        .collect();
    group.some("sheets", (!sheets.is_empty()).then(|| sheets.join(", ")));
    group.some("sticks", (!sticks.is_empty()).then(|| sticks.join(", ")));
    group.some("sizes from", material.sizes_from.clone());
    group.some(
        "one way",
        material
            .one_way
            .map(|one_way| if one_way { "yes" } else { "no" }.to_owned()),
    );
}

/// A figure with its source and status.
fn cited<T>(sourced: &Sourced<T>, figure: &str) -> String {
    let status = sourced.status().word();
    match sourced
        .source()
        .map(|code| (code, trade::settings::citation(code)))
    {
        Some((_, Some(source))) => format!("{figure}  ({status}: {source})"),
        Some((code, None)) => format!("{figure}  ({status}: {code})"),
        None => format!("{figure}  ({status})"),
    }
}
