//! Materials and costs as a catalogue file has them.

use measure::{Length, Unit};
use toml::Value;
use trade::{Cost, Date, Material, Pair, Profile};

/// A material's table, ending with a line break; its lengths are in `unit`, each said.
pub(super) fn material(material: &Material, unit: Unit, on: Date) -> String {
    let mut lines = vec!["[[material]]".to_owned()];
    let fields = words(material).into_iter().chain(sizes(material, unit, on));
    lines.extend(fields.filter_map(|(key, value)| Some(format!("{key} = {}", value?))));
    if let Some(profile) = &material.profile {
        lines.push("[material.profile]".to_owned());
        let side = |(key, side): (&str, Length)| format!("{key} = {}", length(side, unit));
        lines.extend(sides(profile).map(side));
    }
    format!("{}\n{}", lines.join("\n"), costs(&material.cost))
}

/// A field, and its value as TOML writes it.
type FieldLine = (&'static str, Option<String>);

/// What is said in words.
fn words(material: &Material) -> [FieldLine; 12] {
    let text = |words: &Option<String>| words.as_deref().map(quoted);
    let looks = material.colour_words.iter().map(|word| quoted(word));
    [
        ("code", Some(quoted(&material.code))),
        ("kind", material.kind.map(|kind| quoted(kind.word()))),
        ("name", text(&material.name)),
        ("description", text(&material.description)),
        ("supplier", text(&material.supplier)),
        ("supplier_code", text(&material.supplier_code)),
        ("class", text(&material.class)),
        ("wood", text(&material.wood)),
        ("colour", text(&material.colour)),
        ("colour_family", text(&material.colour_family)),
        ("colour_words", list(looks)),
        ("note", text(&material.note)),
    ]
}

/// What is said in numbers.
fn sizes(material: &Material, unit: Unit, on: Date) -> [FieldLine; 5] {
    let thickness = material.thickness.as_ref();
    let sheets = material.sheets.iter();
    let sticks = material.sticks.iter();
    let sized = !(material.sheets.is_empty() && material.sticks.is_empty());
    let supplier = material.supplier.as_deref().unwrap_or_default();
    let source = quoted(&format!("price list of {supplier}, {on}"));
    [
        (
            "thickness",
            thickness.map(|thick| length(thick.is().0, unit)),
        ),
        (
            "sheets",
            list(sheets.map(|sheet| quoted(&size(*sheet, unit)))),
        ),
        ("sticks", list(sticks.map(|stick| length(stick.0, unit)))),
        ("sizes_from", sized.then_some(source)),
        ("packs", list(material.packs.iter().map(u32::to_string))),
    ]
}

fn length(length: Length, unit: Unit) -> String {
    quoted(&length.exact(unit))
}

/// Tables of costs, ending with a line break.
pub(super) fn costs(costs: &[Cost]) -> String {
    let table = |cost| toml::to_string(cost).expect("a cost writes as TOML");
    let tables = costs.iter().map(table);
    tables
        .flat_map(|table| {
            [
                "[[material.cost]]
"
                .to_owned(),
                table,
            ]
        })
        .collect()
}

/// A text as TOML writes it.
pub(super) fn quoted(text: &str) -> String {
    Value::String(text.to_owned()).to_string()
}

/// What list and catalogue may differ in, as text; always the same facts in the same order.
pub(super) fn facts(material: &Material) -> [(&'static str, Option<String>); 6] {
    const UNIT: Unit = Unit::Millimetre;
    let profile = material.profile.as_ref();
    let side = |pick: fn(&Profile) -> Length| {
        profile
            .map(pick)
            .filter(|side| *side > Length::ZERO)
            .map(|side| side.exact(UNIT))
    };
    [
        ("kind", material.kind.map(|kind| kind.word().to_owned())),
        (
            "thickness",
            material
                .thickness
                .as_ref()
                .map(|thick| thick.is().exact(UNIT)),
        ),
        ("face", side(|profile| profile.face.0)),
        ("height", side(|profile| profile.height.0)),
        ("lip", side(|profile| profile.lip.0)),
        ("rabbet depth", side(|profile| profile.rabbet_depth.0)),
    ]
}

fn sides(profile: &Profile) -> [(&'static str, Length); 4] {
    [
        ("face", profile.face.0),
        ("height", profile.height.0),
        ("lip", profile.lip.0),
        ("rabbet_depth", profile.rabbet_depth.0),
    ]
}

fn size(sheet: Pair, unit: Unit) -> String {
    format!("{} x {}", sheet.width.exact(unit), sheet.height.exact(unit))
}

fn list(values: impl Iterator<Item = String>) -> Option<String> {
    let values: Vec<String> = values.collect();
    (!values.is_empty()).then(|| format!("[{}]", values.join(", ")))
}
