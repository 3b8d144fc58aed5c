//! JSON shapes: documented in the README, only ever added to.

mod bench;
mod boards;
mod care;
mod day;
mod members;
mod plans;
mod price;
mod sizes;

use measure::{Angle, Length, Rounding, Size, Unit};
use serde::Serialize;
use serde_json::{Value, json};
use sizing::{Fault, Outline, WorkedSize};
use trade::settings::{Layer, Range, Setting, citation};
use trade::{Key, Material, Settings, Units};
use working::{LineView, Origin, Worked, Working};

pub(crate) use care::parameters;
pub use care::{advised, answer, cautions};
pub use day::day;
pub use plans::plans;
pub use price::{
    alternatives, comparison, money, price_list, price_list_counts, price_of, priced, proposed,
    quote, rules_checked, tenths, verdict,
};
pub use sizes::sizes;

/// A length: its quanta of 1/16 000 mm, and text.
pub fn length(length: Length, unit: Unit) -> Value {
    json!({ "quanta": length.quanta(), "text": length.in_both(unit) })
}

/// A width and a height.
pub fn size(size: Size, unit: Unit) -> Value {
    json!({ "width": length(size.width, unit), "height": length(size.height, unit) })
}

/// How far a print lies from the truth: up is above zero.
pub fn rounding(rounding: Rounding) -> Value {
    match rounding {
        Rounding::Exact => json!({ "toward": "exact", "quanta": 0 }),
        Rounding::Up(by) => json!({ "toward": "up", "quanta": by.quanta() }),
        Rounding::Down(by) => json!({ "toward": "down", "quanta": by.quanta() }),
    }
}

/// An angle: millionths of a degree, and text.
pub fn angle(angle: Angle) -> Value {
    json!({ "millionths": angle.millionths(), "text": angle.to_string() })
}

/// Words and shapes of one piece.
#[derive(Clone, Copy)]
struct Wire<'a> {
    unit: Unit,
    working: &'a Working,
}

impl Wire<'_> {
    fn length(self, plain: Length) -> Value {
        length(plain, self.unit)
    }

    /// A worked length also says what `--why` calls it.
    fn worked(self, worked: Worked<Length>) -> Value {
        let mut value = length(worked.value, self.unit);
        value["path"] = self.working.line(worked.line).subject.to_string().into();
        value
    }

    fn worked_size(self, worked: WorkedSize) -> Value {
        json!({ "width": self.worked(worked.width), "height": self.worked(worked.height) })
    }

    fn some(self, worked: Option<Worked<Length>>) -> Value {
        worked.map_or(Value::Null, |worked| self.worked(worked))
    }

    fn some_size(self, worked: Option<WorkedSize>) -> Value {
        worked.map_or(Value::Null, |worked| self.worked_size(worked))
    }

    fn some_length(self, plain: Option<Length>) -> Value {
        plain.map_or(Value::Null, |plain| self.length(plain))
    }

    fn worked_angle(self, worked: Worked<Angle>) -> Value {
        let mut value = angle(worked.value);
        value["path"] = self.working.line(worked.line).subject.to_string().into();
        value
    }
}

/// A material's code.
fn code(material: Option<&std::sync::Arc<Material>>) -> Value {
    material.map_or(Value::Null, |material| material.code.clone().into())
}

/// Faults, each with what `--why` calls the line behind it.
pub fn faults(faults: &[Fault], working: &Working) -> Vec<Value> {
    faults
        .iter()
        .map(|fault| {
            json!({
                "code": fault.code,
                "severity": fault.severity.word().to_lowercase(),
                "part": fault.part,
                "found": fault.found,
                "allowed": fault.allowed,
                "cure": fault.cure,
                "sentence": fault.sentence(),
                "path": fault.line.map(|line| working.line(line).subject.to_string()),
            })
        })
        .collect()
}

/// Every line of a working.
pub fn working(working: &Working, unit: Unit) -> Vec<Value> {
    working
        .lines()
        .map(|line| one_line(&line, working, unit))
        .collect()
}

/// One line of a working.
pub fn one_line(line: &LineView<'_>, working: &Working, unit: Unit) -> Value {
    let inputs: Vec<Value> = line
        .inputs
        .iter()
        .map(|input| {
            let from = match input.origin {
                Origin::Line(earlier) => {
                    json!({ "path": working.line(earlier).subject.to_string() })
                }
                Origin::Setting(id) => json!({ "setting": id }),
                Origin::Job => json!("job"),
                Origin::Material => json!("material"),
                Origin::Table(source) => json!({ "source": source }),
                Origin::Search => json!("search"),
                Origin::Prices => json!("prices"),
            };
            json!({ "name": input.name, "value": value(input.value, unit), "from": from })
        })
        .collect();
    json!({
        "path": line.subject.to_string(),
        "value": value(line.value, unit),
        "rule": line.rule.id,
        "words": line.rule.words,
        "formula": line.rule.formula,
        "source": line.rule.source.to_string(),
        "status": line.rule.status.to_string(),
        "inputs": inputs,
    })
}

fn value(value: working::Value, unit: Unit) -> Value {
    match value {
        working::Value::Length(plain) => length(plain, unit),
        working::Value::Angle(plain) => angle(plain),
        working::Value::Count(count) => count.into(),
        working::Value::Yes(yes) => yes.into(),
        working::Value::Figure(figure) => {
            json!({ "value": figure.value(), "unit": figure.unit(), "text": figure.to_string() })
        }
        working::Value::Area(_)
        | working::Value::Mass(_)
        | working::Value::Money(_)
        | working::Value::Price(_)
        | working::Value::Decimal(_)
        | working::Value::Round(_) => json!({ "text": value.to_string() }),
    }
}

/// The value of a setting, as tables print it.
pub fn setting_text(setting: Setting, unit: Unit) -> String {
    match setting {
        Setting::Length(length) => length.in_both(unit),
        other => other.to_string(),
    }
}

/// A setting with all that is known of it.
pub fn setting(key: Key, settings: &Settings, units: Units) -> Value {
    let definition = key.definition();
    let unit = units.unit();
    let as_value = |setting: Setting| match setting {
        Setting::Length(plain) => length(plain, unit),
        Setting::Count(count) => count.into(),
        Setting::Angle(plain) => angle(plain),
        Setting::Choice(word) => word.into(),
    };
    let choices = match definition.range {
        Range::Words(words) => json!(words),
        _ => Value::Null,
    };
    json!({
        "id": definition.id,
        "words": definition.words,
        "value": as_value(settings.get(key)),
        "default": as_value(definition.default_in(units)),
        "unit": definition.unit,
        "may_be": definition.range.to_string(),
        "choices": choices,
        "status": definition.status.to_string(),
        "source": citation(definition.source).map(ToString::to_string),
        "changed_by": settings.changed(key).map(|layer| match layer {
            Layer::Shop => "shop",
            Layer::Job => "job",
        }),
    })
}

/// A material, in the form a job writes it.
pub fn material(material: &Material) -> Value {
    json!(material)
}

/// The word a document has for a choice.
pub fn word(choice: &impl Serialize) -> String {
    json!(choice).as_str().unwrap_or_default().to_owned()
}

/// The word for an outline.
pub fn outline(outline: &Outline) -> String {
    match outline {
        Outline::Rectangle => "rectangle".to_owned(),
        Outline::Rounded(radius) => format!("rounded, radius {}", radius.in_both(Unit::Inch)),
        Outline::Oval => "oval".to_owned(),
        Outline::Arch(rise) => format!("arch, rise {}", rise.in_both(Unit::Inch)),
        Outline::Polygon(corners) => format!("polygon of {} corners", corners.len()),
    }
}
