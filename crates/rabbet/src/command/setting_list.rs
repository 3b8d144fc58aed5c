//! `rabbet setting list`

use clap::Args;
use serde_json::json;
use trade::settings::KEYS;

use super::{Desk, Units};
use crate::exit::{EXIT_CODES, Exit};
use crate::problem::Trouble;
use crate::report::Report;
use web::wire;

/// Lists every setting with its value
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet setting list --units mm", after_help = EXIT_CODES)]
pub struct SettingList {
    /// Only those the shop has changed
    #[arg(long)]
    changed: bool,
    /// Whose habits: of shops that measure in inches, or in millimetres
    #[arg(long, value_enum, default_value_t)]
    units: Units,
    /// As JSON
    #[arg(long)]
    json: bool,
}

impl SettingList {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let units = trade::Units::from(self.units);
        let settings = desk.shop.settings(units)?;
        let shown = KEYS
            .iter()
            .copied()
            .filter(|key| !self.changed || settings.changed(*key).is_some());
        if self.json {
            let list: Vec<_> = shown
                .map(|key| wire::setting(key, &settings, units))
                .collect();
            desk.terminal
                .data(&format!("{:#}\n", json!({ "settings": list })))?;
            return Ok(Exit::Done);
        }
        let mut report = Report::default();
        let mut part = "";
        for key in shown {
            let definition = key.definition();
            let of = definition.id.split('.').next().unwrap_or_default();
            if of != part {
                report.group(of);
                part = of;
            }
            let mut value = wire::setting_text(settings.get(key), units.unit());
            if !definition.unit.is_empty() {
                value = format!("{value} {}", definition.unit);
            }
            if settings.changed(key).is_some() {
                value.push_str("  (changed by the shop)");
            }
            report.last().row(definition.id, value);
        }
        if self.changed && part.is_empty() {
            desk.terminal
                .talk("The shop has changed none; `--settings FILE` names a file of changes.");
        }
        desk.terminal.data(&report.render(desk.terminal))?;
        Ok(Exit::Done)
    }
}
