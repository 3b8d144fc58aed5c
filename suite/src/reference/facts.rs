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

/// Facts that nothing is worked out from; a fact of any other name must be a constant of the program.
const LISTED: [&str; 37] = [
    "alkaline reserve 2 % CaCO3",
    "glass Poisson ratio",
    "glass thermal expansion",
    "annealed glass, characteristic bending strength",
    "acrylic Young's modulus, minimum",
    "acrylic light transmission, 3 mm",
    "acrylic water uptake, 24 h",
    "anti-reflective sheet, reflectance of both faces",
    "hinge tab, other advice",
    "hinge spacing on large or heavy works",
    "largest sheet that four corners alone should carry upright",
    "window cover over the sheet edge, each side",
    "frame opening over package, total each way",
    "acrylic, extruded, growth at 60 % RH against dry",
    "acrylic, extruded, growth at 80 % RH against dry",
    "acrylic, extruded, growth at 100 % RH against dry",
    "paper, expansion 0 to 100 % RH, usual maximum",
    "paper fibre, width growth 0 to 100 % RH",
    "paper wetted, cross-direction growth",
    "primed linen canvas",
    "gap between frame back and wall",
    "highest RH for weeks",
    "design factor, wire rope slings",
    "design factor, alloy chain slings",
    "design factor, rigging hardware",
    "design factor over people, stage practice",
    "wire angle to design for",
    "one splined mitre, 3/4 x 5/8 in wood, moment at break",
    "lifting guide weights close to the body at waist height (UK HSE, men / women)",
    "wood dust, OSHA limit for nuisance dust (total / respirable)",
    "wood dust, NIOSH recommended limit",
    "wood dust, ACGIH 2007 (all but western red cedar / western red cedar)",
    "hardwood dust, EU limit",
    "wood dust, UK limits (hardwood / softwood)",
    "lead in air, OSHA limit / action level",
    "lead-based paint, US definition",
    "leaning ladder",
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
    lines.extend(entries_left(name, &file));
    Ok(lines)
}

/// Entries each file had under each key when it was last read by hand; more are as good.
const ENTRIES: [(&str, &str, usize); 13] = [
    ("boards.toml", "rule", 6),
    ("boards.toml", "fact", 1),
    ("glazing.toml", "fact", 16),
    ("glazing.toml", "safety_standard", 3),
    ("hinging.toml", "rule", 11),
    ("hinging.toml", "fact", 12),
    ("humidity.toml", "emc_equation", 1),
    ("humidity.toml", "fact", 25),
    ("humidity.toml", "climate", 7),
    ("humidity.toml", "ashrae_class", 6),
    ("mechanics.toml", "fact", 10),
    ("safety.toml", "fact", 13),
    ("safety.toml", "caution", 8),
];

/// Whether no entry of a file vanished, key by key.
fn entries_left<'a>(name: &'a str, file: &'a Table) -> impl Iterator<Item = Line> + 'a {
    let of_file = ENTRIES.iter().filter(move |(own, ..)| *own == name);
    of_file.map(|(own, key, wanted)| {
        let found = match file.get(*key) {
            None => 0,
            Some(Value::Array(list)) => list.len(),
            Some(_) => 1,
        };
        Line {
            value: found.to_string(),
            expected: format!("{wanted} or more"),
            agrees: found >= *wanted,
            ..blank(own, key, "", "nothing")
        }
    })
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
        let known = LISTED.contains(&name);
        return Ok(Line {
            agrees: known && !text(entry, "source_id").is_empty(),
            ..listed(if known {
                "nothing is worked out from it"
            } else {
                "no check knows a fact of this name"
            })
        });
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
    let own = Fact::all()
        .iter()
        .filter(|fact| fact.id.starts_with("emc."));
    let wanted = own.count();
    let there = constants.values().filter_map(Value::as_array);
    let there: usize = there.map(Vec::len).sum();
    let mut lines = vec![Line {
        value: there.to_string(),
        expected: wanted.to_string(),
        agrees: there == wanted,
        ..blank(
            "emc_equation",
            "constants",
            text(equation, "source_id"),
            "nothing",
        )
    }];
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
