//! The shop's own habits and materials, read only when a command needs them.

use std::collections::BTreeMap;
use std::path::Path;

use clap::Args;
use pricing::{RuleSet, RulesFault};
use toml::Spanned;
use toml::de::{DeTable, DeValue};
use trade::settings::{Layer, Refused};
use trade::{Catalogue, CatalogueFault, Key, Material, Settings, Units};

use crate::problem::{Kind, Problem, Spot, Trouble};
use crate::{files, toml_place};

/// Where the shop keeps what is its own.
#[derive(Args, Clone, Debug, Default)]
pub struct Shop {
    /// The shop's settings: lines of "id" = "value"
    #[arg(
        long,
        global = true,
        value_name = "FILE",
        env = "RABBET_SETTINGS",
        hide_env_values = true
    )]
    settings: Option<String>,
    /// Materials laid over the starter catalogue
    #[arg(long, global = true, value_name = "FILE")]
    materials: Option<String>,
    /// What the shop charges: a rule set
    #[arg(long, global = true, value_name = "FILE")]
    prices: Option<String>,
    /// The shop's folder: its settings.toml, catalogue.toml and prices.toml, where no option names others
    #[arg(
        id = "shop_folder",
        long = "shop",
        global = true,
        value_name = "FOLDER"
    )]
    folder: Option<String>,
}

/// A rule set of the shop, and the file it stands in.
pub struct Ruled {
    /// The rules.
    pub rules: RuleSet,
    /// Its file, as messages name it.
    pub file: String,
}

impl Shop {
    /// The settings of a shop that measures in `units`, with the shop's file laid over.
    ///
    /// # Errors
    /// Everything in the file that is no setting or out of range, with its line.
    pub fn settings(&self, units: Units) -> Result<Settings, Trouble> {
        let defaults = Settings::defaults(units);
        let Some(file) = self.own(self.settings.as_ref(), "settings.toml")? else {
            return Ok(defaults);
        };
        let file = file.as_str();
        let text = toml_place::text_of(file, &files::read(file)?)?;
        let table = DeTable::parse(&text)
            .map_err(|error| toml_place::trouble(file, &text, &error, "settings.form"))?;
        let mut lines = Lines {
            file,
            text: &text,
            changes: BTreeMap::new(),
            spots: BTreeMap::new(),
            problems: Vec::new(),
        };
        lines.gather("", table.get_ref());
        let bare = lines.units().unwrap_or_default();
        if !lines.problems.is_empty() {
            return Err(in_order(lines.problems));
        }
        defaults
            .with(&lines.changes, Layer::Shop, bare.unit())
            .map_err(|refused| {
                in_order(
                    refused
                        .iter()
                        .map(|refused| lines.refused(refused))
                        .collect(),
                )
            })
    }

    /// The starter catalogue, with the shop's materials laid over.
    ///
    /// # Errors
    /// A file that can't be read as materials, and a `like` that leads nowhere or in a circle.
    pub fn catalogue(&self) -> Result<Catalogue, Trouble> {
        let starter = Catalogue::starter();
        let Some(file) = self.own(self.materials.as_ref(), "catalogue.toml")? else {
            return Ok(starter);
        };
        let file = file.as_str();
        let text = toml_place::text_of(file, &files::read(file)?)?;
        let extra = materials(&text)
            .map_err(|error| toml_place::trouble(file, &text, &error, "materials.form"))?;
        starter.with(&extra).map_err(|fault| {
            Trouble::one(
                Kind::Shop,
                Problem::new(material_code(&fault), fault.to_string()).in_file(file),
            )
        })
    }

    /// The shop's rule set.
    ///
    /// # Errors
    /// None given, and everything that keeps its file from being read.
    pub fn rules(&self) -> Result<Ruled, Trouble> {
        self.rules_if_any()?.ok_or_else(|| {
            let problem = Problem::new("prices.none", "the shop's prices are not given")
                .hint("say --prices FILE, or --shop FOLDER with a prices.toml in it; `rabbet demo write shop` writes an invented one");
            Trouble::one(Kind::Shop, problem)
        })
    }

    /// The shop's rule set, where one is given.
    ///
    /// # Errors
    /// Everything that keeps its file from being read.
    pub fn rules_if_any(&self) -> Result<Option<Ruled>, Trouble> {
        let file = self.own(self.prices.as_ref(), "prices.toml")?;
        file.map(|file| rules_of(&file)).transpose()
    }

    /// Whether a catalogue of the shop's own is laid over the starter's.
    ///
    /// # Errors
    /// A shop's folder that is none.
    pub fn has_catalogue(&self) -> Result<bool, Trouble> {
        let own = self.own(self.materials.as_ref(), "catalogue.toml")?;
        Ok(own.is_some())
    }

    /// The file an option names, else the one of this name in the shop's folder, where it is there.
    fn own(&self, named: Option<&String>, usual: &str) -> Result<Option<String>, Trouble> {
        if let Some(named) = named {
            return Ok(Some(named.clone()));
        }
        let Some(folder) = &self.folder else {
            return Ok(None);
        };
        if !Path::new(folder).is_dir() {
            let problem = Problem::new("shop.no_folder", "there is no such folder")
                .hint("check the name; `rabbet demo write shop` writes an invented shop");
            return Err(Trouble::one(Kind::File, problem.in_file(folder)));
        }
        let file = Path::new(folder).join(usual);
        Ok(file.exists().then(|| file.to_string_lossy().into_owned()))
    }
}

/// Reads a rule set.
///
/// # Errors
/// A file that can't be reached, and everything in it that is not as it should be, with its line.
pub fn rules_of(file: &str) -> Result<Ruled, Trouble> {
    let text = toml_place::text_of(file, &files::read(file)?)?;
    let rules = RuleSet::read(&text).map_err(|faults| {
        let problems = faults.into_iter().map(|fault| {
            let problem = Problem::new("prices.form", fault.to_string());
            match fault {
                RulesFault::Field { place, .. } => problem.at(toml_place::of_place(file, place)),
                _ => problem.in_file(file),
            }
        });
        in_order(problems.collect())
    })?;
    let file = file.to_owned();
    Ok(Ruled { rules, file })
}

/// Problems of a shop file in the order of its lines.
fn in_order(mut problems: Vec<Problem>) -> Trouble {
    problems.sort_by_key(|problem| problem.spot.line);
    Trouble {
        kind: Kind::Shop,
        problems,
    }
}

/// The stable code of a catalogue's fault.
const fn material_code(fault: &CatalogueFault) -> &'static str {
    match fault {
        CatalogueFault::Unreadable(_) => "materials.form",
        CatalogueFault::Twice { .. } => "materials.twice",
        CatalogueFault::Missing { .. } => "material.missing",
        CatalogueFault::Circle { .. } => "materials.circle",
    }
}

/// The trouble of a code that no material has.
pub fn no_material(fault: &CatalogueFault) -> Trouble {
    Trouble::one(
        Kind::Input,
        Problem::new(material_code(fault), fault.to_string()),
    )
}

/// Materials of a file; bare lengths are millimetres, as in the starter catalogue.
fn materials(text: &str) -> Result<Vec<Material>, toml::de::Error> {
    #[derive(serde::Deserialize)]
    #[serde(deny_unknown_fields)]
    struct File {
        #[serde(default)]
        material: Vec<Material>,
    }
    toml::from_str::<File>(text).map(|file| file.material)
}

/// A settings file, line by line.
struct Lines<'a> {
    file: &'a str,
    text: &'a str,
    changes: BTreeMap<String, String>,
    spots: BTreeMap<String, Spot>,
    problems: Vec<Problem>,
}

impl Lines<'_> {
    /// Gathers every `id = value`; an id written without quotes arrives as nested tables.
    fn gather(&mut self, before: &str, table: &DeTable<'_>) {
        for (key, value) in table {
            let id = if before.is_empty() {
                key.get_ref().to_string()
            } else {
                format!("{before}.{}", key.get_ref())
            };
            let spot = toml_place::spot(self.file, self.text, &key.span());
            match self.value(&id, value) {
                Some(text) => {
                    self.changes.insert(id.clone(), text);
                    self.spots.insert(id, spot);
                }
                None => {
                    if !matches!(value.get_ref(), DeValue::Table(_)) {
                        let sentence =
                            format!("the setting {id} is neither a text nor a whole number");
                        let hint = format!("write \"{id}\" = \"...\"");
                        self.problems
                            .push(Problem::new("settings.value", sentence).hint(hint).at(spot));
                    }
                }
            }
        }
    }

    fn value(&mut self, id: &str, value: &Spanned<DeValue<'_>>) -> Option<String> {
        match value.get_ref() {
            DeValue::String(text) => Some(text.to_string()),
            DeValue::Integer(_) | DeValue::Float(_) => {
                self.text.get(value.span()).map(str::to_owned)
            }
            DeValue::Table(inner) => {
                self.gather(id, inner);
                None
            }
            _ => None,
        }
    }

    /// What a bare length in this file is in, where the file says so.
    fn units(&mut self) -> Option<Units> {
        let text = self.changes.remove("units")?;
        match text.as_str() {
            "in" => Some(Units::Inches),
            "mm" => Some(Units::Millimetres),
            _ => {
                let sentence = format!("units = \"{text}\" is neither in nor mm");
                let spot = self.spots.get("units").cloned().unwrap_or_default();
                self.problems.push(
                    Problem::new("settings.units", sentence)
                        .hint("write units = \"in\" or units = \"mm\"")
                        .at(spot),
                );
                None
            }
        }
    }

    fn refused(&self, refused: &Refused) -> Problem {
        let sentence = if refused.text.is_empty() {
            format!("{}: {}", refused.id, refused.why)
        } else {
            refused.to_string()
        };
        let spot = self.spots.get(&refused.id).cloned().unwrap_or_default();
        let hint = match Key::named(&refused.id) {
            Some(key) => format!("`rabbet setting show {}` tells more", key.id()),
            None => "`rabbet setting list` shows them all".to_owned(),
        };
        Problem::new("settings.refused", sentence)
            .hint(hint)
            .at(spot)
    }
}
