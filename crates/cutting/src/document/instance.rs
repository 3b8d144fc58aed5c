//! Instances: from an object's fields to a problem.

use std::collections::BTreeSet;

use serde_json::{Map, Value};

use super::reading::{Faults, Fields, LONGEST, Reason, Refusal, parse, short};
use super::{Best, Instance, Problem};
use crate::Goal;
use crate::lengths::{self, Together};
use crate::sheets::{self, Edges, First, Rules};

const OF_INSTANCE: [&str; 18] = [
    "format",
    "name",
    "family",
    "dim",
    "unit",
    "objective",
    "kerf",
    "trim",
    "guillotine",
    "stages",
    "first_cut",
    "final_trim",
    "min_strip",
    "rotate",
    "use_windows",
    "stock",
    "pieces",
    "best",
];
const OF_STOCK: [&str; 10] = [
    "id", "l", "w", "h", "qty", "cost", "remnant", "trim", "flaws", "run",
];
const OF_PIECE: [&str; 11] = [
    "id", "l", "w", "h", "qty", "value", "rot", "window", "together", "priority", "due",
];
const STICKS: &str = "sticks (dim 1)";
const SHEETS: &str = "sheets (dim 2)";

pub(super) fn read(text: &str) -> Result<Vec<Instance>, Vec<Refusal>> {
    let value = parse(text)?;
    let mut faults = Faults::default();
    let objects = gathered(value, &mut faults);
    let mut names = BTreeSet::new();
    let mut instances = Vec::new();
    for (index, object) in objects.iter().enumerate() {
        let of = match object.get("name").and_then(Value::as_str) {
            Some(name) => format!("problem {name:?}"),
            None => format!("problem {}", index + 1),
        };
        let fields = Fields::new(Some(&of), String::new(), object);
        let Some(instance) = instance(&fields, &mut faults) else {
            continue;
        };
        if !names.insert(instance.name.clone()) {
            let name = instance.name.clone();
            fields.refuse(&mut faults, "name", Reason::Twice { name });
        }
        instances.push(instance);
    }
    if faults.0.is_empty() {
        Ok(instances)
    } else {
        Err(faults.0)
    }
}

/// The objects of all instances, defaults laid under.
fn gathered(value: Value, faults: &mut Faults) -> Vec<Map<String, Value>> {
    match value {
        Value::Object(object) if object.contains_key("instances") => of_set(&object, faults),
        Value::Object(object) => vec![object],
        Value::Array(list) => {
            let whole = Map::from_iter([("instances".to_owned(), Value::Array(list))]);
            of_set(&whole, faults)
        }
        other => {
            let whole = Map::new();
            let given = short(&other);
            let wanted = "a cutting problem, a set or a list of them";
            Fields::new(None, String::new(), &whole).refuse(
                faults,
                "",
                Reason::Kind { given, wanted },
            );
            Vec::new()
        }
    }
}

fn of_set(set: &Map<String, Value>, faults: &mut Faults) -> Vec<Map<String, Value>> {
    let fields = Fields::new(None, String::new(), set);
    fields.only(faults, &["format", "name", "defaults", "instances"]);
    format_is(&fields, faults, "\"cutting-set/1\"");
    fields.text(faults, "name");
    let defaults = match fields.get("defaults") {
        Some(Value::Object(defaults)) => defaults.clone(),
        Some(_) => {
            fields.object(faults, "defaults");
            Map::new()
        }
        None => Map::new(),
    };
    let mut objects = Vec::new();
    for (index, value) in fields
        .list(faults, "instances")
        .unwrap_or(&[])
        .iter()
        .enumerate()
    {
        if let Some(own) = value.as_object() {
            let mut object = defaults.clone();
            object.extend(own.clone());
            objects.push(object);
        } else {
            let given = short(value);
            let wanted = "an object in braces";
            let at = format!("instances[{index}]");
            fields.refuse(faults, &at, Reason::Kind { given, wanted });
        }
    }
    objects
}

pub(super) fn format_is(fields: &Fields<'_>, faults: &mut Faults, wanted: &'static str) {
    if let Some(given) = fields.get("format")
        && given.as_str().map(|given| format!("{given:?}")).as_deref() != Some(wanted)
    {
        let given = short(given);
        fields.refuse(faults, "format", Reason::Format { given, wanted });
    }
}

fn instance(fields: &Fields<'_>, faults: &mut Faults) -> Option<Instance> {
    fields.only(faults, &OF_INSTANCE);
    format_is(fields, faults, "\"cutting-instance/1\"");
    fields.text(faults, "unit");
    let family = fields.text(faults, "family").map(str::to_owned);
    let name = fields.name(faults, "name");
    let goal = goal(fields, faults);
    if fields.get("dim").is_none() {
        fields.refuse(
            faults,
            "dim",
            Reason::Missing {
                wanted: "1 for sticks or 2 for sheets",
            },
        );
    }
    let dim = fields.whole(faults, "dim", u64::MAX);
    let best = best(fields, faults, goal);
    if fields.truth(faults, "guillotine") == Some(false) && dim == Some(2) {
        fields.refuse(faults, "guillotine", Reason::NotEdgeToEdge);
    }
    let problem = match dim? {
        1 => Problem::Lengths(lengths(fields, faults, name.clone(), goal)?),
        2 => Problem::Sheets(sheets(fields, faults, name.clone(), goal)?),
        other => {
            let given = other.to_string();
            let wanted = "1 for sticks or 2 for sheets";
            fields.refuse(faults, "dim", Reason::Kind { given, wanted });
            return None;
        }
    };
    Some(Instance {
        name: name?,
        family,
        problem,
        best,
    })
}

fn goal(fields: &Fields<'_>, faults: &mut Faults) -> Goal {
    match fields.text(faults, "objective") {
        None | Some("bins") => Goal::Fewest,
        Some("cost") => Goal::Cost,
        Some("value") => Goal::Value,
        Some(other) => {
            let given = format!("{other:?}");
            let wanted = "\"bins\", \"cost\" or \"value\"";
            fields.refuse(faults, "objective", Reason::Kind { given, wanted });
            Goal::Fewest
        }
    }
}

/// What is known; other fields of it are for people.
fn best(fields: &Fields<'_>, faults: &mut Faults, goal: Goal) -> Option<Best> {
    let best = fields.object(faults, "best")?;
    let bound = match goal {
        Goal::Value => "ceiling",
        Goal::Fewest | Goal::Cost => "lb",
    };
    Some(Best {
        known: best.whole(faults, "ub", u64::MAX),
        bound: best.whole(faults, bound, u64::MAX),
    })
}

/// Notes a name; one given before is a fault.
fn unique(
    fields: &Fields<'_>,
    faults: &mut Faults,
    names: &mut BTreeSet<String>,
) -> Option<String> {
    let name = fields.name(faults, "id")?;
    if !names.insert(name.clone()) {
        let name = name.clone();
        fields.refuse(faults, "id", Reason::Twice { name });
    }
    Some(name)
}

fn lengths(
    fields: &Fields<'_>,
    faults: &mut Faults,
    name: Option<String>,
    goal: Goal,
) -> Option<lengths::Problem> {
    let kerf = fields.whole(faults, "kerf", LONGEST).unwrap_or(0);
    let trim = ends(fields, faults);
    let trim = trim.unwrap_or_default();
    let mut names = BTreeSet::new();
    let mut stock = Vec::new();
    for entry in fields.objects(faults, "stock").unwrap_or_default() {
        entry.none_of(faults, &["w", "h"], SHEETS);
        entry.only(faults, &OF_STOCK);
        let name = unique(&entry, faults, &mut names);
        stock.extend(stick(&entry, faults, name, trim));
    }
    names.clear();
    let mut pieces = Vec::new();
    for entry in fields.objects(faults, "pieces").unwrap_or_default() {
        entry.none_of(faults, &["w", "h", "rot", "window"], SHEETS);
        entry.only(faults, &OF_PIECE);
        let name = unique(&entry, faults, &mut names);
        pieces.extend(leg(&entry, faults, name));
    }
    Some(lengths::Problem {
        name: name?,
        goal,
        kerf,
        stock,
        pieces,
    })
}

fn ends(fields: &Fields<'_>, faults: &mut Faults) -> Option<(u64, u64)> {
    let wanted = "[left, right] in whole numbers";
    let trim = fields.wholes(faults, "trim", &[2, 4], wanted)?;
    Some((trim[0], trim[1]))
}

fn stick(
    fields: &Fields<'_>,
    faults: &mut Faults,
    name: Option<String>,
    trim: (u64, u64),
) -> Option<lengths::Stick> {
    let length = fields.size(faults, "l");
    let cost = fields.whole(faults, "cost", u64::MAX);
    let count = fields.whole(faults, "qty", u64::MAX);
    let remnant = fields.truth(faults, "remnant").unwrap_or(false);
    let trim = ends(fields, faults).unwrap_or(trim);
    let flaws = flaws(fields, faults);
    let run = fields.text(faults, "run").map(str::to_owned);
    Some(lengths::Stick {
        name: name?,
        length: length?,
        cost: cost.or(length)?,
        count,
        remnant,
        trim,
        flaws,
        run,
    })
}

fn flaws(fields: &Fields<'_>, faults: &mut Faults) -> Vec<(u64, u64)> {
    if fields.get("flaws").is_none() {
        return Vec::new();
    }
    let wanted = "[from, to] in whole numbers";
    let mut flaws = Vec::new();
    for (index, value) in fields
        .list(faults, "flaws")
        .unwrap_or(&[])
        .iter()
        .enumerate()
    {
        let pair = value.as_array().map(Vec::as_slice).unwrap_or_default();
        let ends: Vec<Option<u64>> = pair.iter().map(Value::as_u64).collect();
        if let [Some(from), Some(to)] = ends[..] {
            flaws.push((from, to));
            continue;
        }
        let given = short(value);
        let at = format!("flaws[{index}]");
        fields.refuse(faults, &at, Reason::Kind { given, wanted });
    }
    flaws
}

/// How many of a piece: 1 if not given, without end if null.
fn wanted(fields: &Fields<'_>, faults: &mut Faults) -> Option<u64> {
    if fields.is_null("qty") {
        return None;
    }
    Some(fields.whole(faults, "qty", u64::MAX).unwrap_or(1))
}

/// Priority and due day.
fn urgency(fields: &Fields<'_>, faults: &mut Faults) -> (u32, Option<u32>) {
    let limit = u64::from(u32::MAX);
    let narrow = |number: u64| u32::try_from(number).unwrap_or(u32::MAX);
    let priority = fields.whole(faults, "priority", limit);
    let due = fields.whole(faults, "due", limit);
    (priority.map_or(0, narrow), due.map(narrow))
}

fn leg(fields: &Fields<'_>, faults: &mut Faults, name: Option<String>) -> Option<lengths::Piece> {
    let length = fields.size(faults, "l");
    let count = wanted(fields, faults);
    let value = fields.whole(faults, "value", u64::MAX);
    let together = together(fields, faults);
    let (priority, due) = urgency(fields, faults);
    Some(lengths::Piece {
        name: name?,
        length: length?,
        count,
        value: value.or(length)?,
        together,
        priority,
        due,
    })
}

fn together(fields: &Fields<'_>, faults: &mut Faults) -> Option<Together> {
    let group = fields.object(faults, "together")?;
    group.only(faults, &["stick", "run"]);
    let stick = group.text(faults, "stick").map(str::to_owned);
    let run = group.text(faults, "run").map(str::to_owned);
    match (stick, run) {
        (Some(stick), None) => Some(Together::Stick(stick)),
        (None, Some(run)) => Some(Together::Run(run)),
        _ => {
            let given = fields.get("together").map_or_else(String::new, short);
            let wanted = "{\"stick\": NAME} or {\"run\": NAME}";
            fields.refuse(faults, "together", Reason::Kind { given, wanted });
            None
        }
    }
}

fn sheets(
    fields: &Fields<'_>,
    faults: &mut Faults,
    name: Option<String>,
    goal: Goal,
) -> Option<sheets::Problem> {
    let rules = rules(fields, faults);
    let trim = edges(fields, faults).unwrap_or_default();
    let rotate = fields.truth(faults, "rotate").unwrap_or(true);
    let windows = fields.truth(faults, "use_windows").unwrap_or(false);
    let mut names = BTreeSet::new();
    let mut stock = Vec::new();
    for entry in fields.objects(faults, "stock").unwrap_or_default() {
        entry.none_of(faults, &["l", "flaws", "run"], STICKS);
        entry.only(faults, &OF_STOCK);
        let name = unique(&entry, faults, &mut names);
        stock.extend(sheet(&entry, faults, name, trim));
    }
    names.clear();
    let mut pieces = Vec::new();
    for entry in fields.objects(faults, "pieces").unwrap_or_default() {
        entry.none_of(faults, &["l", "together"], STICKS);
        entry.only(faults, &OF_PIECE);
        let name = unique(&entry, faults, &mut names);
        let mut piece = piece(&entry, faults, name, rotate);
        if let Some(piece) = piece.as_mut().filter(|_| !windows) {
            piece.window = None;
        }
        pieces.extend(piece);
    }
    Some(sheets::Problem {
        name: name?,
        goal,
        rules,
        stock,
        pieces,
    })
}

fn rules(fields: &Fields<'_>, faults: &mut Faults) -> Rules {
    let stages = fields.whole(faults, "stages", u64::from(u32::MAX));
    let first = match fields.text(faults, "first_cut") {
        None | Some("any") => First::Any,
        Some("v") => First::Upright,
        Some("h") => First::Level,
        Some(other) => {
            let given = format!("{other:?}");
            let wanted = "\"v\", \"h\" or \"any\"";
            fields.refuse(faults, "first_cut", Reason::Kind { given, wanted });
            First::Any
        }
    };
    Rules {
        kerf: fields.whole(faults, "kerf", LONGEST).unwrap_or(0),
        stages: stages.and_then(|stages| u32::try_from(stages).ok()),
        first,
        final_trim: fields.truth(faults, "final_trim").unwrap_or(true),
        least_strip: fields.whole(faults, "min_strip", LONGEST).unwrap_or(0),
    }
}

fn edges(fields: &Fields<'_>, faults: &mut Faults) -> Option<Edges> {
    let wanted = "[left, right, bottom, top] in whole numbers";
    let trim = fields.wholes(faults, "trim", &[2, 4], wanted)?;
    Some(Edges {
        left: trim[0],
        right: trim[1],
        bottom: trim.get(2).copied().unwrap_or(0),
        top: trim.get(3).copied().unwrap_or(0),
    })
}

/// Width times height where no number is given.
fn or_area(
    fields: &Fields<'_>,
    faults: &mut Faults,
    field: &str,
    width: Option<u64>,
    height: Option<u64>,
) -> Option<u64> {
    if fields.get(field).is_some() {
        return fields.whole(faults, field, u64::MAX);
    }
    let area = width?.checked_mul(height?);
    if area.is_none() {
        fields.refuse(faults, field, Reason::NoDefault);
    }
    area
}

fn sheet(
    fields: &Fields<'_>,
    faults: &mut Faults,
    name: Option<String>,
    trim: Edges,
) -> Option<sheets::Sheet> {
    let (width, height) = (fields.size(faults, "w"), fields.size(faults, "h"));
    let cost = or_area(fields, faults, "cost", width, height);
    let count = fields.whole(faults, "qty", u64::MAX);
    let remnant = fields.truth(faults, "remnant").unwrap_or(false);
    let trim = edges(fields, faults).unwrap_or(trim);
    Some(sheets::Sheet {
        name: name?,
        width: width?,
        height: height?,
        cost: cost?,
        count,
        remnant,
        trim,
    })
}

fn piece(
    fields: &Fields<'_>,
    faults: &mut Faults,
    name: Option<String>,
    rotate: bool,
) -> Option<sheets::Piece> {
    let (width, height) = (fields.size(faults, "w"), fields.size(faults, "h"));
    let count = wanted(fields, faults);
    let value = or_area(fields, faults, "value", width, height);
    let turn = fields.truth(faults, "rot").unwrap_or(rotate);
    let wanted = "[width, height] in whole numbers";
    let window = fields.wholes(faults, "window", &[2], wanted);
    let (priority, due) = urgency(fields, faults);
    Some(sheets::Piece {
        name: name?,
        width: width?,
        height: height?,
        count,
        value: value?,
        turn,
        window: window.map(|window| (window[0], window[1])),
        priority,
        due,
    })
}
