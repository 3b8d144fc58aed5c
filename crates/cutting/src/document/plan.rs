//! Plans: from their text to plans of the instances they name.

use serde_json::{Map, Value};

use super::Instance;
use super::instance::format_is;
use super::reading::{Faults, Fields, LONGEST, Reason, Refusal, parse, short};
use super::writing::WINDOW;
use crate::sheets::{self, Area, Cut, Edges, From, Way};
use crate::{Goal, lengths};
use crate::{Plan, Problem};

/// A plan as it was read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PlanRead {
    /// Which of the instances it is for, counted from 0.
    pub instance: usize,
    /// The plan. It is not checked: [`crate::lengths::check`] and [`crate::sheets::check`] do that.
    pub plan: Plan,
}

/// Reads a plan, a list of plans or a set of them (`cutting-plans/1`).
///
/// An objective that is not claimed is counted; a bound that is not claimed is the one that says
/// nothing. Where a sheet lists no cuts they are found, if they can be.
/// Errors: every fault of the text, each with the plan, the field and what to do.
pub fn read_plans(text: &str, instances: &[Instance]) -> Result<Vec<PlanRead>, Vec<Refusal>> {
    let value = parse(text)?;
    let mut faults = Faults::default();
    let mut read = Vec::new();
    for (index, value) in gathered(&value, &mut faults).iter().enumerate() {
        let of = match value.get("instance").and_then(Value::as_str) {
            Some(name) => format!("plan of {name:?}"),
            None => format!("plan {}", index + 1),
        };
        let empty = Map::new();
        let fields = Fields::new(
            Some(&of),
            String::new(),
            value.as_object().unwrap_or(&empty),
        );
        read.extend(plan(&fields, instances, &mut faults));
    }
    if faults.0.is_empty() {
        Ok(read)
    } else {
        Err(faults.0)
    }
}

fn gathered(value: &Value, faults: &mut Faults) -> Vec<Value> {
    match value {
        Value::Object(object) if object.contains_key("plans") => {
            let fields = Fields::new(None, String::new(), object);
            format_is(&fields, faults, "\"cutting-plans/1\"");
            fields.list(faults, "plans").unwrap_or(&[]).to_vec()
        }
        Value::Array(list) => list.clone(),
        other => vec![other.clone()],
    }
}

fn plan(fields: &Fields<'_>, instances: &[Instance], faults: &mut Faults) -> Option<PlanRead> {
    format_is(fields, faults, "\"cutting-plan/1\"");
    let name = fields.name(faults, "instance")?;
    let Some(instance) = instances.iter().position(|instance| instance.name == name) else {
        fields.refuse(faults, "instance", Reason::NoSuch { name });
        return None;
    };
    let plan = match &instances[instance].problem {
        Problem::Lengths(problem) => Plan::Lengths(sticks(fields, faults, problem)?),
        Problem::Sheets(problem) => Plan::Sheets(all_sheets(fields, faults, problem)?),
    };
    Some(PlanRead { instance, plan })
}

/// What the goal counts: sticks or sheets, their cost, the value that comes out.
fn claims(fields: &Fields<'_>, faults: &mut Faults, goal: Goal, counted: u128) -> (u64, u64) {
    let objective = fields.whole(faults, "objective", u64::MAX);
    let bound = fields.whole(faults, "bound", u64::MAX);
    let silent = match goal {
        Goal::Value => u64::MAX,
        Goal::Fewest | Goal::Cost => 0,
    };
    let counted = u64::try_from(counted).unwrap_or(u64::MAX);
    (objective.unwrap_or(counted), bound.unwrap_or(silent))
}

/// A name that must be among these; its number.
fn named<'n>(
    fields: &Fields<'_>,
    faults: &mut Faults,
    field: &str,
    names: impl Iterator<Item = &'n str>,
) -> Option<usize> {
    let name = fields.name(faults, field)?;
    let found = names.enumerate().find(|(_, other)| *other == name);
    if found.is_none() {
        fields.refuse(faults, field, Reason::NoSuch { name });
    }
    found.map(|(number, _)| number)
}

/// A number that must be there.
fn number(fields: &Fields<'_>, faults: &mut Faults, field: &str) -> Option<u64> {
    if fields.get(field).is_none() {
        fields.refuse(
            faults,
            field,
            Reason::Missing {
                wanted: "a whole number",
            },
        );
        return None;
    }
    fields.whole(faults, field, LONGEST)
}

fn copies(fields: &Fields<'_>, faults: &mut Faults) -> u64 {
    fields.whole(faults, "copies", u64::MAX).unwrap_or(1)
}

/// The objects of a list that may be left out.
fn optional<'a>(fields: &Fields<'a>, faults: &mut Faults, field: &str) -> Vec<Fields<'a>> {
    match fields.get(field) {
        Some(_) => fields.objects(faults, field).unwrap_or_default(),
        None => Vec::new(),
    }
}

fn uncut<'n>(
    fields: &Fields<'_>,
    faults: &mut Faults,
    names: &(impl Iterator<Item = &'n str> + Clone),
) -> Vec<(usize, u64)> {
    let mut uncut = Vec::new();
    for entry in optional(fields, faults, "uncut") {
        let piece = named(&entry, faults, "id", names.clone());
        let count = number(&entry, faults, "qty");
        uncut.extend(piece.zip(count));
    }
    uncut
}

fn sticks(
    fields: &Fields<'_>,
    faults: &mut Faults,
    problem: &lengths::Problem,
) -> Option<lengths::Plan> {
    let mut layouts = Vec::new();
    for entry in fields.objects(faults, "sticks")? {
        layouts.extend(stick(&entry, faults, problem));
    }
    let each = |layout: &lengths::Layout| match problem.goal {
        Goal::Fewest => 1,
        Goal::Cost => u128::from(problem.stock[layout.stock].cost),
        Goal::Value => {
            let values = layout.pieces.iter();
            values
                .map(|placed| u128::from(problem.pieces[placed.piece].value))
                .sum()
        }
    };
    let counted = layouts
        .iter()
        .map(|layout| each(layout).saturating_mul(u128::from(layout.copies)));
    let counted = counted.fold(0, u128::saturating_add);
    let (objective, bound) = claims(fields, faults, problem.goal, counted);
    let names = problem.pieces.iter().map(|piece| piece.name.as_str());
    Some(lengths::Plan {
        layouts,
        objective,
        bound,
        uncut: uncut(fields, faults, &names),
    })
}

fn stick(
    fields: &Fields<'_>,
    faults: &mut Faults,
    problem: &lengths::Problem,
) -> Option<lengths::Layout> {
    let names = problem.stock.iter().map(|stick| stick.name.as_str());
    let stock = named(fields, faults, "stock", names);
    let mut pieces = Vec::new();
    for entry in fields.objects(faults, "pieces").unwrap_or_default() {
        let names = problem.pieces.iter().map(|piece| piece.name.as_str());
        let piece = named(&entry, faults, "id", names);
        let at = number(&entry, faults, "at");
        pieces.extend(
            piece
                .zip(at)
                .map(|(piece, at)| lengths::Placed { piece, at }),
        );
    }
    pieces.sort_by_key(|placed| placed.at);
    let mut remnants = Vec::new();
    for entry in optional(fields, faults, "remnants") {
        let at = number(&entry, faults, "at");
        let length = number(&entry, faults, "l");
        remnants.extend(at.zip(length).map(|(at, length)| (at, at + length)));
    }
    let copies = copies(fields, faults);
    Some(lengths::Layout {
        stock: stock?,
        copies,
        pieces,
        remnants,
    })
}

fn all_sheets(
    fields: &Fields<'_>,
    faults: &mut Faults,
    problem: &sheets::Problem,
) -> Option<sheets::Plan> {
    let mut layouts = Vec::new();
    for entry in fields.objects(faults, "sheets")? {
        layouts.extend(sheet(&entry, faults, problem));
    }
    let each = |layout: &sheets::Layout| match (problem.goal, layout.from) {
        (Goal::Value, _) => {
            let values = layout.pieces.iter();
            values
                .map(|placed| u128::from(problem.pieces[placed.piece].value))
                .sum()
        }
        (_, From::Window(_)) => 0,
        (Goal::Fewest, From::Stock(_)) => 1,
        (Goal::Cost, From::Stock(stock)) => u128::from(problem.stock[stock].cost),
    };
    let counted = layouts
        .iter()
        .map(|layout| each(layout).saturating_mul(u128::from(layout.copies)));
    let counted = counted.fold(0, u128::saturating_add);
    let (objective, bound) = claims(fields, faults, problem.goal, counted);
    let names = problem.pieces.iter().map(|piece| piece.name.as_str());
    Some(sheets::Plan {
        layouts,
        objective,
        bound,
        uncut: uncut(fields, faults, &names),
    })
}

fn sheet(
    fields: &Fields<'_>,
    faults: &mut Faults,
    problem: &sheets::Problem,
) -> Option<sheets::Layout> {
    let from = from(fields, faults, problem);
    let mut pieces = Vec::new();
    for entry in fields.objects(faults, "pieces").unwrap_or_default() {
        let names = problem.pieces.iter().map(|piece| piece.name.as_str());
        let piece = named(&entry, faults, "id", names);
        let turned = entry.truth(faults, "rotated").unwrap_or(false);
        let placed = piece.zip(area(&entry, faults));
        pieces.extend(placed.map(|(piece, area)| sheets::Placed {
            piece,
            area,
            turned,
        }));
    }
    let mut remnants = Vec::new();
    for entry in optional(fields, faults, "remnants") {
        remnants.extend(area(&entry, faults));
    }
    let copies = copies(fields, faults);
    let from = from?;
    let cuts = if fields.get("cuts").is_some() {
        listed(fields, faults)?
    } else {
        let placed = pieces.iter().map(|placed| placed.area);
        let wanted: Vec<Area> = placed.chain(remnants.iter().copied()).collect();
        let found = found(problem, from, &wanted);
        if found.is_none() {
            fields.refuse(faults, "cuts", Reason::NoCuts);
        }
        found?
    };
    Some(sheets::Layout {
        from,
        copies,
        pieces,
        cuts,
        remnants,
    })
}

fn from(fields: &Fields<'_>, faults: &mut Faults, problem: &sheets::Problem) -> Option<From> {
    let name = fields.text(faults, "stock").unwrap_or_default();
    // Stock of that very name comes first.
    if let Some(stock) = problem.stock.iter().position(|sheet| sheet.name == name) {
        return Some(From::Stock(stock));
    }
    let frees = |piece: &sheets::Piece| {
        piece.window.is_some() && name.strip_prefix(WINDOW) == Some(piece.name.as_str())
    };
    if let Some(piece) = problem.pieces.iter().position(frees) {
        return Some(From::Window(piece));
    }
    let names = problem.stock.iter().map(|sheet| sheet.name.as_str());
    named(fields, faults, "stock", names).map(From::Stock)
}

fn area(fields: &Fields<'_>, faults: &mut Faults) -> Option<Area> {
    let x = number(fields, faults, "x");
    let y = number(fields, faults, "y");
    let width = number(fields, faults, "w");
    let height = number(fields, faults, "h");
    Some(Area {
        x: x?,
        y: y?,
        width: width?,
        height: height?,
    })
}

fn listed(fields: &Fields<'_>, faults: &mut Faults) -> Option<Vec<Cut>> {
    let mut cuts = Vec::new();
    for entry in fields.objects(faults, "cuts")? {
        let of = area(&entry, faults);
        let at = number(&entry, faults, "at");
        let way = match entry.text(faults, "dir") {
            Some("v") => Some(Way::Upright),
            Some("h") => Some(Way::Level),
            other => {
                let given = other.map_or_else(|| short(&Value::Null), |other| format!("{other:?}"));
                let wanted = "\"v\" or \"h\"";
                entry.refuse(faults, "dir", Reason::Kind { given, wanted });
                None
            }
        };
        if let (Some(of), Some(at), Some(way)) = (of, at, way) {
            cuts.push(Cut { of, way, at });
        }
    }
    Some(cuts)
}

/// Cuts for a sheet that lists none. What cannot be on the sheet gets none; the check tells why.
fn found(problem: &sheets::Problem, from: From, wanted: &[Area]) -> Option<Vec<Cut>> {
    let (width, height, trim) = match from {
        From::Stock(stock) => {
            let sheet = &problem.stock[stock];
            (sheet.width, sheet.height, sheet.trim)
        }
        From::Window(piece) => {
            let (width, height) = problem.pieces[piece].window?;
            (width, height, Edges::default())
        }
    };
    let usable = Area {
        x: trim.left,
        y: trim.bottom,
        width: width.saturating_sub(trim.left + trim.right),
        height: height.saturating_sub(trim.bottom + trim.top),
    };
    let on_it = |area: &Area| {
        area.x >= usable.x
            && area.y >= usable.y
            && area.x + area.width <= usable.x + usable.width
            && area.y + area.height <= usable.y + usable.height
    };
    if !wanted.iter().all(on_it) {
        return Some(Vec::new());
    }
    sheets::check::cuts(&problem.rules, usable, wanted)
}
