//! `rabbet setting show`

use clap::Args;
use trade::Key;
use trade::settings::{KEYS, citation};

use super::{Desk, Units};
use crate::exit::{EXIT_CODES, Exit};
use crate::near;
use crate::problem::{Kind, Problem, Trouble};
use crate::report::Report;
use web::wire;

/// Shows what a setting does, what it may be, and where its default is from
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet setting show mat.overlap", after_help = EXIT_CODES)]
pub struct SettingShow {
    /// The setting
    #[arg(value_name = "ID")]
    id: String,
    /// Whose habits: of shops that measure in inches, or in millimetres
    #[arg(long, value_enum, default_value_t)]
    units: Units,
    /// As JSON
    #[arg(long)]
    json: bool,
}

impl SettingShow {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let key = Key::named(&self.id).ok_or_else(|| unknown(&self.id))?;
        let units = trade::Units::from(self.units);
        let settings = desk.shop.settings(units)?;
        if self.json {
            desk.terminal
                .data(&format!("{:#}\n", wire::setting(key, &settings, units)))?;
            return Ok(Exit::Done);
        }
        let definition = key.definition();
        let mut report = Report::default();
        let group = report.group(definition.id);
        let with_unit = |text: String| format!("{text} {}", definition.unit).trim_end().to_owned();
        group.row("does", definition.words.to_owned());
        group.row(
            "is",
            with_unit(wire::setting_text(settings.get(key), units.unit())),
        );
        group.row(
            "default, inches",
            with_unit(wire::setting_text(
                definition.default_in(trade::Units::Inches),
                measure::Unit::Inch,
            )),
        );
        group.row(
            "default, mm",
            with_unit(wire::setting_text(
                definition.default_in(trade::Units::Millimetres),
                measure::Unit::Millimetre,
            )),
        );
        group.row("may be", with_unit(definition.range.to_string()));
        group.row("status", definition.status.to_string());
        if let Some(source) = citation(definition.source) {
            group.row("source", source.to_string());
        }
        desk.terminal.data(&report.render(desk.terminal))?;
        Ok(Exit::Done)
    }
}

fn unknown(id: &str) -> Trouble {
    let problem = Problem::new("setting.unknown", format!("there is no setting {id}"));
    Trouble::one(
        Kind::Input,
        problem.hint(match near::nearest(id, KEYS.iter().map(|key| key.id())) {
            Some(near) => format!("did you mean {near}? `rabbet setting list` shows them all"),
            None => "`rabbet setting list` shows them all".to_owned(),
        }),
    )
}
