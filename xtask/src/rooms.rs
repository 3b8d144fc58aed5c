//! Who may use whom: the rooms of the house, floor by floor.
//!
//! A crate uses only rooms above it in [`ROOMS`]. The same table stands in `ARCHITECTURE.md`,
//! for people; the two are compared.

use crate::breach::Breach;
use crate::tree::Tree;
use crate::workspace::{Package, Workspace};

/// One room: its floor and its crate.
#[derive(Debug, PartialEq, Eq)]
pub struct Room {
    floor: &'static str,
    name: &'static str,
}

/// The rooms, from the ground up.
pub const ROOMS: [Room; 15] = [
    Room {
        floor: "ground",
        name: "measure",
    },
    Room {
        floor: "ground",
        name: "working",
    },
    Room {
        floor: "ground",
        name: "cutting",
    },
    Room {
        floor: "first",
        name: "trade",
    },
    Room {
        floor: "second",
        name: "sizing",
    },
    Room {
        floor: "second",
        name: "conservation",
    },
    Room {
        floor: "second",
        name: "hanging",
    },
    Room {
        floor: "second",
        name: "pricing",
    },
    Room {
        floor: "second",
        name: "imaging",
    },
    Room {
        floor: "third",
        name: "demand",
    },
    Room {
        floor: "third",
        name: "drawing",
    },
    Room {
        floor: "third",
        name: "paperwork",
    },
    Room {
        floor: "fourth",
        name: "shop",
    },
    Room {
        floor: "doors",
        name: "web",
    },
    Room {
        floor: "doors",
        name: "rabbet",
    },
];

/// The rooms that may do things: talk, wait, store. All others only work things out.
const EFFECTS: [&str; 3] = ["shop", "web", "rabbet"];

/// Crates beside the rooms that any of them may show or be tried on: the invented shop.
const BESIDE: [&str; 1] = ["demo"];

/// Libraries an engine room has no business with, and what they would let in. A name also
/// stands for its family: `tokio` for `tokio-util` and the rest.
const KEPT_OUT: [(&str, &str); 21] = [
    ("tokio", "waiting"),
    ("futures", "waiting"),
    ("async-std", "waiting"),
    ("smol", "waiting"),
    ("axum", "the web"),
    ("tower", "the web"),
    ("hyper", "the web"),
    ("reqwest", "the web"),
    ("lettre", "mail"),
    ("sea-orm", "a database"),
    ("sea-query", "a database"),
    ("sqlx", "a database"),
    ("rusqlite", "a database"),
    ("diesel", "a database"),
    ("clap", "the terminal"),
    ("indicatif", "the terminal"),
    ("anstream", "the terminal"),
    ("miette", "the terminal"),
    ("rand", "chance"),
    ("getrandom", "chance"),
    ("fastrand", "chance"),
];

/// The document that shows the table to people.
const MAP: &str = "ARCHITECTURE.md";

/// Everything that departs from the table.
pub fn breaches(workspace: &Workspace, tree: &Tree) -> Vec<Breach> {
    let mut found = Vec::new();
    for package in &workspace.packages {
        match position(&package.name) {
            Some(place) => found.extend(misuses(package, place, workspace)),
            None if package.folder().starts_with("crates/") => found.push(homeless(package)),
            None => {}
        }
    }
    found.extend(map_breaches(&existing(workspace), tree));
    found
}

fn position(name: &str) -> Option<usize> {
    ROOMS.iter().position(|room| room.name == name)
}

fn homeless(package: &Package) -> Breach {
    let name = &package.name;
    Breach::by(
        &package.manifest_path,
        format!("`{name}` is no room; give it a row in xtask/src/rooms.rs and in {MAP}"),
    )
}

/// What one room uses without leave, and whether its folder bears its name.
fn misuses(package: &Package, place: usize, workspace: &Workspace) -> Vec<Breach> {
    let name = &package.name;
    let mut sentences = Vec::new();
    let folder = format!("crates/{name}");
    if package.folder() != folder {
        sentences.push(format!(
            "the room `{name}` stands in {}; move it to {folder}",
            package.folder()
        ));
    }
    for used in &package.dependencies {
        sentences.extend(misuse(name, place, &used.name, workspace));
    }
    sentences
        .into_iter()
        .map(|sentence| Breach::by(&package.manifest_path, sentence))
        .collect()
}

fn misuse(name: &str, place: usize, used: &str, workspace: &Workspace) -> Option<String> {
    if let Some(other) = position(used) {
        return (other >= place).then(|| {
            format!("`{name}` uses `{used}`, which is not above it in the table of rooms")
        });
    }
    if workspace
        .packages
        .iter()
        .any(|package| package.name == used)
    {
        if BESIDE.contains(&used) {
            return None;
        }
        return Some(format!(
            "`{name}` uses `{used}`, which is no room; only rooms may be used"
        ));
    }
    if EFFECTS.contains(&name) {
        return None;
    }
    let (_, lets_in) = KEPT_OUT.iter().find(|(family, _)| belongs(used, family))?;
    Some(format!(
        "`{name}` uses `{used}`, which lets in {lets_in}; engine rooms only work things out, so do \
         that in shop, web or rabbet"
    ))
}

fn belongs(library: &str, family: &str) -> bool {
    library
        .strip_prefix(family)
        .is_some_and(|rest| rest.is_empty() || rest.starts_with(['-', '_']))
}

/// The rooms that have a crate, in the order of the table.
fn existing(workspace: &Workspace) -> Vec<&'static Room> {
    let built = |room: &&Room| {
        workspace
            .packages
            .iter()
            .any(|package| package.name == room.name)
    };
    ROOMS.iter().filter(built).collect()
}

fn map_breaches(rooms: &[&Room], tree: &Tree) -> Vec<Breach> {
    let Some(text) = tree.text(MAP) else {
        return vec![Breach::by(MAP, "is missing; it maps the rooms".to_owned())];
    };
    let rows = map_rows(text);
    let mut found = Vec::new();
    for room in rooms {
        let (floor, name) = (room.floor, room.name);
        match rows.iter().find(|row| row.name == name) {
            None => found.push(Breach::by(
                MAP,
                format!("has no row for the room `{name}`; add | {floor} | `{name}` | ... |"),
            )),
            Some(row) if row.floor != floor => found.push(Breach::at(
                MAP,
                row.line,
                format!(
                    "puts `{name}` on the floor “{}”; it stands on “{floor}”",
                    row.floor
                ),
            )),
            Some(_) => {}
        }
    }
    found.extend(order_breaches(rooms, &rows));
    found
}

/// Rows of the map that name no existing room, stand twice or stand out of order.
fn order_breaches(rooms: &[&Room], rows: &[Row]) -> Vec<Breach> {
    let mut found = Vec::new();
    let mut reached = None;
    for row in rows {
        let name = row.name;
        let Some(place) = rooms.iter().position(|room| room.name == name) else {
            let sentence = format!("names the room `{name}`, which does not exist (yet)");
            found.push(Breach::at(MAP, row.line, sentence));
            continue;
        };
        if reached.is_some_and(|reached| place <= reached) {
            let sentence = format!("has `{name}` out of order; follow xtask/src/rooms.rs");
            found.push(Breach::at(MAP, row.line, sentence));
        }
        reached = reached.max(Some(place));
    }
    found
}

/// A row `| floor | `room` | what lives there |` of the map.
struct Row<'a> {
    floor: &'a str,
    name: &'a str,
    line: usize,
}

fn map_rows(text: &str) -> Vec<Row<'_>> {
    let numbered = text.lines().enumerate();
    numbered
        .filter_map(|(index, line)| map_row(line, index + 1))
        .collect()
}

fn map_row(text: &str, line: usize) -> Option<Row<'_>> {
    let mut cells = text.trim().strip_prefix('|')?.split('|').map(str::trim);
    let floor = cells.next()?;
    let name = cells.next()?.strip_prefix('`')?.strip_suffix('`')?;
    let is_floor = ROOMS.iter().any(|room| room.floor == floor);
    (is_floor || position(name).is_some()).then_some(Row { floor, name, line })
}

#[cfg(test)]
mod tests;
