//! Entries of a cut list: sticks, sheets, pieces.

use cutting::lengths::Together;
use measure::{Length, Money};
use toml::Spanned;
use trade::Date;

use super::fault::ListReason;
use super::file::{Ends, Piece, Sheet, Stick};
use super::read::{Desk, Unread, material};
use super::{ListPiece, ListStock};
use crate::names::Names;
use crate::source::Origin;
use crate::stock::Extent;

impl Desk<'_> {
    pub(super) fn stick(&mut self, entry: Spanned<Stick>, names: &mut Names) -> Option<ListStock> {
        let line = self.place(&entry.span()).0;
        let entry = entry.into_inner();
        self.entry = titled("stick", line, entry.name.as_ref(), entry.material.as_ref());
        let length = self.above_zero("length", &entry.length);
        let held_at = self.count_and_cost(entry.count.as_ref(), entry.cost.as_ref());
        let stick = length.unwrap_or(Length::LIMIT);
        let trim = self.optional(entry.trim.as_ref(), |desk, both| desk.ends(both, stick));
        let flaws = self.flaws(&entry.flaws, stick);
        let (length, (count, cost)) = (length?, held_at.ok()?);
        let (trim, flaws) = (trim.ok()?, flaws?);
        let extent = Extent::Stick(length);
        let (count, origin) = held(count, entry.remnant);
        let material = material(entry.material.as_deref());
        Some(ListStock {
            name: self.name(
                entry.name,
                material.as_ref(),
                extent,
                names,
                line,
                "kinds of stock",
            )?,
            material,
            extent,
            count,
            cost,
            origin,
            trim,
            run: entry.run,
            flaws,
            line,
        })
    }

    pub(super) fn sheet(&mut self, entry: Spanned<Sheet>, names: &mut Names) -> Option<ListStock> {
        let line = self.place(&entry.span()).0;
        let entry = entry.into_inner();
        self.entry = titled("sheet", line, entry.name.as_ref(), entry.material.as_ref());
        let size = self.size("size", &entry.size);
        let held_at = self.count_and_cost(entry.count.as_ref(), entry.cost.as_ref());
        let trim = self.optional(entry.trim.as_ref(), |desk, trim| desk.length("trim", trim));
        let (size, (count, cost), trim) = (size?, held_at.ok()?, trim.ok()?);
        let extent = Extent::Sheet(size);
        let (count, origin) = held(count, entry.remnant);
        let material = material(entry.material.as_deref());
        Some(ListStock {
            name: self.name(
                entry.name,
                material.as_ref(),
                extent,
                names,
                line,
                "kinds of stock",
            )?,
            material,
            extent,
            count,
            cost,
            origin,
            trim: trim.map(|trim| [trim; 2]),
            run: None,
            flaws: Vec::new(),
            line,
        })
    }

    /// How many there are and what one costs; each absent where nothing is said of it.
    fn count_and_cost(
        &mut self,
        count: Option<&Spanned<i64>>,
        cost: Option<&Spanned<String>>,
    ) -> Result<(Option<u64>, Option<Money>), Unread> {
        let count = self.optional(count, |desk, count| desk.count(count, 0));
        let cost = self.optional(cost, Self::money);
        Ok((count?, cost?))
    }

    /// Its own name, or its size; a name typed twice for one material is a fault.
    fn name(
        &mut self,
        typed: Option<String>,
        material: Option<&String>,
        extent: Extent,
        names: &mut Names,
        line: usize,
        what: &'static str,
    ) -> Option<String> {
        let typed = typed.map(|name| name.trim().to_owned());
        let typed = typed.filter(|name| !name.is_empty());
        let key = |name: &str| format!("{material:?}\n{}\n{name}", extent.is_stick());
        let Some(name) = typed else {
            let size = extent.exact(self.unit());
            let key = key(&size);
            let unique = names.unique(key.clone());
            return Some(format!(
                "{size}{}",
                unique.strip_prefix(&key).unwrap_or_default()
            ));
        };
        let key = key(&name);
        if names.unique(key.clone()) == key {
            return Some(name);
        }
        let reason = ListReason::Twice {
            what,
            material: material.cloned(),
            name,
        };
        self.faults.push(super::ListFault::on(line, reason));
        None
    }

    /// A trim that leaves something of the stick.
    fn ends(&mut self, both: &Ends, stick: Length) -> Option<[Length; 2]> {
        let [start, end] = self.pair("trim", both)?;
        if start + end >= stick {
            let text = self.both(both);
            let why = "it leaves nothing of the stick";
            return self.refuse("trim", &both.span(), &text, why);
        }
        Some([start, end])
    }

    /// Flaws of a stick, each from before to, both on the stick.
    fn flaws(&mut self, written: &[Ends], stick: Length) -> Option<Vec<[Length; 2]>> {
        let mut flaws = Vec::with_capacity(written.len());
        for both in written {
            let [from, to] = self.pair("flaws", both)?;
            if from >= to || to > stick {
                let text = self.both(both);
                let why = "write from before to, both on the stick";
                return self.refuse("flaws", &both.span(), &text, why);
            }
            flaws.push([from, to]);
        }
        Some(flaws)
    }

    pub(super) fn piece(&mut self, entry: Spanned<Piece>, names: &mut Names) -> Option<ListPiece> {
        let line = self.place(&entry.span()).0;
        let entry = entry.into_inner();
        self.entry = titled("piece", line, entry.name.as_ref(), entry.material.as_ref());
        let extent = match (&entry.length, &entry.size) {
            (Some(length), None) => self.above_zero("length", length).map(Extent::Stick),
            (None, Some(size)) => self.size("size", size).map(Extent::Sheet),
            (Some(_), Some(_)) | (None, None) => {
                let entry = self.entry.clone();
                self.on(line, ListReason::Extent { entry });
                None
            }
        };
        let count = self.optional(entry.count.as_ref(), |desk, count| desk.count(count, 1));
        let window = self.optional(entry.window.as_ref(), |desk, size| {
            desk.size("window", size)
        });
        let priority = self.optional(entry.priority.as_ref(), |desk, number| {
            desk.number("priority", number, 0, u64::from(u32::MAX))
        });
        let due = self.optional(entry.due.as_ref(), Self::due);
        let extent = extent?;
        let together = self.together(&entry, extent, line);
        self.misplaced(&entry, extent, line);
        let (count, window) = (count.ok()?, window.ok()?);
        let priority = priority.ok()?.and_then(|number| u32::try_from(number).ok());
        let material = material(entry.material.as_deref());
        Some(ListPiece {
            name: self.name(entry.name, material.as_ref(), extent, names, line, "pieces")?,
            material,
            extent,
            count: count.unwrap_or(1),
            turn: entry.turn,
            window,
            together: together.ok()?,
            priority: priority.unwrap_or(0),
            due: due.ok()?,
            line,
        })
    }

    fn due(&mut self, written: &Spanned<String>) -> Option<u32> {
        let text = written.get_ref();
        let Ok(day) = Date::read(text) else {
            let why = "write a day from 1970 on as 2026-12-04";
            return self.refuse("due", &written.span(), text, why);
        };
        Some(day.days())
    }

    /// What a piece must match, where it says so.
    fn together(
        &mut self,
        piece: &Piece,
        extent: Extent,
        line: usize,
    ) -> Result<Option<Together>, Unread> {
        let matched = self.optional(piece.matched.as_ref(), |desk, written| {
            desk.choice("match", Some(written), &[("stick", true), ("run", false)])
        })?;
        let group = piece.group.as_ref().filter(|_| extent.is_stick());
        let Some(group) = group.map(|group| group.trim().to_owned()) else {
            if matched.is_some() && extent.is_stick() {
                let reason = ListReason::Misplaced {
                    entry: self.entry.clone(),
                    field: "match",
                    belongs: "pieces with a `group`",
                };
                self.on(line, reason);
            }
            return Ok(None);
        };
        Ok(Some(if matched.unwrap_or(true) {
            Together::Stick(group)
        } else {
            Together::Run(group)
        }))
    }

    /// Notes fields that mean nothing for such a piece.
    fn misplaced(&mut self, piece: &Piece, extent: Extent, line: usize) {
        let (fields, belongs): (&[(&'static str, bool)], _) = if extent.is_stick() {
            (
                &[
                    ("turn", piece.turn.is_some()),
                    ("window", piece.window.is_some()),
                ],
                "pieces of a sheet",
            )
        } else {
            (
                &[
                    ("group", piece.group.is_some()),
                    ("match", piece.matched.is_some()),
                ],
                "pieces of a stick",
            )
        };
        for (field, _) in fields.iter().filter(|(_, written)| *written) {
            let entry = self.entry.clone();
            self.on(
                line,
                ListReason::Misplaced {
                    entry,
                    field,
                    belongs,
                },
            );
        }
        if let (Extent::Sheet(size), Some(window)) = (extent, &piece.window)
            && let Ok(inside) = measure::read_size(window.get_ref(), self.unit())
            && (inside.width >= size.width || inside.height >= size.height)
        {
            let why = "it must be smaller than the piece, both ways";
            let text = window.get_ref().clone();
            self.refuse::<()>("window", &window.span(), &text, why);
        }
    }

    fn on(&mut self, line: usize, reason: ListReason) {
        self.faults.push(super::ListFault::on(line, reason));
    }
}

/// How many there are of stock, and where it comes from.
fn held(count: Option<u64>, remnant: bool) -> (Option<u64>, Origin) {
    match (count, remnant) {
        (count, true) => (Some(count.unwrap_or(1)), Origin::Remnant),
        (Some(count), false) => (Some(count), Origin::Rack),
        (None, false) => (None, Origin::Buy),
    }
}

/// An entry ready to stand before its field: `piece (rail): `; by its line where it has no name.
fn titled(kind: &str, line: usize, name: Option<&String>, material: Option<&String>) -> String {
    match name
        .or(material)
        .map(|name| name.trim())
        .filter(|name| !name.is_empty())
    {
        Some(name) => format!("{kind} {name}: "),
        None => format!("the {kind} on line {line}: "),
    }
}
