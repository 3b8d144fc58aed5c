//! Files of facts and rules in TOML: each number against the program's constant of that name.

use conservation::Fact;
use toml::{Table, Value};

use super::tolerance::by;
use super::{FileFault, Line};

/// Files of facts.
pub(super) const FILES: [&str; 6] = [
    "boards.toml",
    "glazing.toml",
    "hinging.toml",
    "humidity.toml",
    "mechanics.toml",
    "safety.toml",
];

/// Keys such a file may have: facts with numbers, and lists of words that no number is worked out from.
const LISTS: [&str; 5] = [
    "rule",
    "caution",
    "climate",
    "ashrae_class",
    "safety_standard",
];

pub(super) fn find(name: &str) -> bool {
    FILES.contains(&name)
}

/// Judges a file of facts.
pub(super) fn judge(name: &str, text: &str) -> Result<Vec<Line>, FileFault> {
    let unreadable = |why: String| FileFault::Unreadable(why);
    let file: Table = text
        .parse()
        .map_err(|fault: toml::de::Error| unreadable(fault.to_string()))?;
    let mut lines = Vec::new();
    for (key, value) in &file {
        match key.as_str() {
            "fact" => {
                for fact in entries(key, value).map_err(unreadable)? {
                    lines.push(fact_line(fact).map_err(unreadable)?);
                }
            }
            "emc_equation" => lines.extend(sorption(value).map_err(unreadable)?),
            list if LISTS.contains(&list) => {
                for entry in entries(key, value).map_err(unreadable)? {
                    lines.push(cited(list, entry));
                }
            }
            other => {
                return Err(unreadable(format!(
                    "key {other} is not known; a file has fact, emc_equation, {}",
                    LISTS.join(", ")
                )));
            }
        }
    }
    if lines.is_empty() {
        return Err(unreadable(format!("{name} holds nothing")));
    }
    Ok(lines)
}

fn entries<'a>(key: &str, value: &'a Value) -> Result<Vec<&'a Table>, String> {
    let list = value
        .as_array()
        .ok_or_else(|| format!("{key} is no list"))?;
    let tables = list.iter().map(|entry| entry.as_table());
    tables
        .collect::<Option<Vec<_>>>()
        .ok_or_else(|| format!("an entry of {key} is no table"))
}

fn text<'a>(entry: &'a Table, key: &str) -> &'a str {
    entry.get(key).and_then(Value::as_str).unwrap_or("")
}

fn number(value: &Value) -> Option<f64> {
    let whole = || {
        value
            .as_integer()
            .and_then(|whole| i32::try_from(whole).ok())
    };
    value.as_float().or_else(|| whole().map(f64::from))
}

fn blank(case: &str, quantity: &str, source: &str, tolerance: &str) -> Line {
    Line {
        case: case.to_owned(),
        quantity: quantity.to_owned(),
        value: String::new(),
        expected: String::new(),
        tolerance: tolerance.to_owned(),
        source: source.to_owned(),
        agrees: false,
    }
}

/// A fact held against the program's constant of its name. One the program works nothing out from is listed.
fn fact_line(entry: &Table) -> Result<Line, String> {
    let name = text(entry, "name");
    let value = entry
        .get("value")
        .ok_or_else(|| format!("{name} has no value"))?;
    let exact = by(0.0, "a constant of the program").to_string();
    let line = blank(name, "value", text(entry, "source_id"), &exact);
    let expected = match value {
        Value::Array(list) => list.iter().map(number).collect::<Option<Vec<f64>>>(),
        Value::String(_) => None,
        one => number(one).map(|one| vec![one]),
    };
    let listed = |why: &str| Line {
        value: why.to_owned(),
        expected: value.to_string(),
        agrees: !name.is_empty() && !text(entry, "source_id").is_empty(),
        ..blank(
            name,
            "listed with its source",
            text(entry, "source_id"),
            "nothing (listed only)",
        )
    };
    let Some(expected) = expected else {
        return Ok(listed("words"));
    };
    let Some(own) = Fact::all().iter().find(|fact| fact.name == name) else {
        return Ok(listed("nothing is worked out from it"));
    };
    let found = own.values();
    let alike = found.len() == expected.len()
        && found
            .iter()
            .zip(&expected)
            .all(|(a, b)| (a - b).abs() <= 1e-15 * b.abs());
    let same_source = own.trust().source == text(entry, "source_id");
    Ok(Line {
        value: format!("{found:?} from {}", own.trust().source),
        expected: format!("{expected:?} from {}", text(entry, "source_id")),
        agrees: alike && same_source,
        ..line
    })
}

/// The constants of the sorption equation, Celsius.
fn sorption(value: &Value) -> Result<Vec<Line>, String> {
    let equation = value.as_table().ok_or("emc_equation is no table")?;
    let constants = equation.get("celsius").and_then(Value::as_table);
    let constants = constants.ok_or("emc_equation has no constants for Celsius")?;
    let mut lines = Vec::new();
    for (name, list) in constants {
        let list = list
            .as_array()
            .ok_or_else(|| format!("{name} is no list"))?;
        for (power, expected) in list.iter().enumerate() {
            let id = format!("emc.{}.{power}", name.to_lowercase());
            let own = Fact::all().iter().find(|fact| fact.id == id);
            let found = own.map(Fact::low);
            let expected = number(expected);
            let exact = by(0.0, "a constant of the program").to_string();
            lines.push(Line {
                value: format!("{found:?}"),
                expected: format!("{expected:?}"),
                agrees: found.is_some() && found == expected,
                ..blank(&id, "value", text(equation, "source_id"), &exact)
            });
        }
    }
    Ok(lines)
}

/// A rule or a caution in words: it has a source and a status, and nothing is worked out from it.
fn cited(list: &str, entry: &Table) -> Line {
    let names = ["name", "topic", "scheme", "class"].map(|key| text(entry, key));
    let name = names
        .into_iter()
        .find(|name| !name.is_empty())
        .unwrap_or("");
    let (source, status) = (text(entry, "source_id"), text(entry, "status"));
    Line {
        value: format!("source {source}, status {status}"),
        expected: "a name, a source and a status".to_owned(),
        agrees: ![name, source, status].contains(&""),
        ..blank(name, list, source, "nothing (listed only)")
    }
}
