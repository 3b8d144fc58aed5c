//! From a cut list to one problem of the cutting room for each material.

use std::collections::{BTreeMap, BTreeSet};

use cutting::{lengths, sheets};
use measure::Length;
use trade::reading::nearest;
use trade::settings::Layer;
use trade::{Key, Settings};

use super::cost::costs;
use super::fault::{ListFault, ListReason};
use super::fit::{Room, check, flaws_in_ticks, sides};
use super::{CutList, ListBatch, ListPiece, ListRules, ListStock};
use crate::source::Origin;
use crate::tick::Tick;

impl CutList {
    /// One problem for each material, sticks and sheets apart, in the order they first stand in
    /// the list.
    ///
    /// Shape:  stock of which there is none is left out; costs as [`ListBatch::basis`] says.
    /// Units:  ticks of the list's `tick`, else of the setting `cutting.tick`: pieces, cuts and
    ///         trims rounded up, stock and windows down.
    /// Errors: everything that stands in the way, in the order of the lines.
    pub fn batches(&self, settings: &Settings) -> Result<Vec<ListBatch>, Vec<ListFault>> {
        let tick = self.tick(settings).map_err(|fault| vec![fault])?;
        if self.pieces.is_empty() {
            return Err(vec![ListFault::whole(ListReason::NoPieces)]);
        }
        let mut of: Vec<(Option<&String>, bool)> = Vec::new();
        let mut pieces: BTreeMap<(Option<&String>, bool), Vec<&ListPiece>> = BTreeMap::new();
        for piece in &self.pieces {
            let key = (piece.material.as_ref(), piece.extent.is_stick());
            let known = pieces.entry(key).or_default();
            if known.is_empty() {
                of.push(key);
            }
            known.push(piece);
        }
        let mut faults = self.idle_cuts();
        let mut batches = Vec::with_capacity(of.len());
        for key in &of {
            let both = pieces.contains_key(&(key.0, !key.1));
            let maker = Maker {
                list: self,
                material: key.0,
                of_sticks: key.1,
                rules: self.rules_of(key.0),
                tick,
                settings,
                both,
            };
            batches.extend(maker.batch(&pieces[key], &mut faults));
        }
        faults.sort_by_key(|fault: &ListFault| fault.line.unwrap_or(usize::MAX));
        if faults.is_empty() {
            Ok(batches)
        } else {
            Err(faults)
        }
    }

    /// Cuts about materials the list does not name, which would be left aside without a word.
    fn idle_cuts(&self) -> Vec<ListFault> {
        let pieces = self.pieces.iter().map(|piece| piece.material.as_deref());
        let stock = self.stock.iter().map(|stock| stock.material.as_deref());
        let known: BTreeSet<&str> = pieces.chain(stock).flatten().collect();
        let idle = self.cuts.iter().filter_map(|(of, _)| of.as_deref());
        let idle = idle.filter(|of| !known.contains(of));
        idle.map(|material| {
            let cure = match nearest(material, known.iter().copied()) {
                Some(near) => format!("did you mean {near}?"),
                None => "leave it out, or write the material as its pieces have it".to_owned(),
            };
            ListFault::whole(ListReason::NoSuchCut {
                material: material.to_owned(),
                cure,
            })
        })
        .collect()
    }

    fn tick(&self, settings: &Settings) -> Result<Tick, ListFault> {
        let Some(text) = &self.tick else {
            return Ok(Tick::of(settings));
        };
        let change = BTreeMap::from([(Key::CuttingTick.id().to_owned(), text.clone())]);
        let changed = settings.with(&change, Layer::Shop, self.units.unit());
        changed.map(|settings| Tick::of(&settings)).map_err(|_| {
            let choices = "1/128 in, 1/64 in, 1/32 in, 0.1 mm, 0.5 mm or 1 mm";
            ListFault::whole(ListReason::Field {
                entry: String::new(),
                field: "tick",
                text: text.clone(),
                why: format!("write one of {choices}"),
            })
        })
    }

    fn rules_of(&self, material: Option<&String>) -> ListRules {
        let own = self.cuts.iter().rev();
        let mut own = own.filter(|(of, _)| of.as_ref() == material);
        own.next().map_or(self.rules, |(_, rules)| *rules)
    }
}

impl ListBatch {
    /// What it is called.
    pub fn name(&self) -> &str {
        self.problem.name()
    }
}

/// Where the problem of one material is made.
struct Maker<'a> {
    list: &'a CutList,
    material: Option<&'a String>,
    of_sticks: bool,
    rules: ListRules,
    tick: Tick,
    settings: &'a Settings,
    /// Whether the material comes in sticks and in sheets.
    both: bool,
}

impl Maker<'_> {
    fn batch(&self, pieces: &[&ListPiece], faults: &mut Vec<ListFault>) -> Option<ListBatch> {
        let before = faults.len();
        let is_ours = |stock: &&ListStock| {
            stock.material.as_ref() == self.material
                && stock.extent.is_stick() == self.of_sticks
                && stock.count != Some(0)
        };
        let stock: Vec<&ListStock> = self.list.stock.iter().filter(is_ours).collect();
        if stock.is_empty() {
            faults.push(self.no_stock(pieces[0]));
            return None;
        }
        self.fit(&stock, pieces, faults);
        let counted = costs(&stock, self.tick, self.settings);
        let (basis, costs) = counted
            .map_err(|(first, second)| {
                let reason = ListReason::TwoCurrencies {
                    material: self.material.cloned(),
                    first,
                    second,
                };
                faults.push(ListFault::on(stock[0].line, reason));
            })
            .ok()?;
        let problem = if self.of_sticks {
            cutting::Problem::Lengths(self.lengths(&stock, &costs, pieces))
        } else {
            cutting::Problem::Sheets(self.sheets(&stock, &costs, pieces))
        };
        (faults.len() == before).then(|| ListBatch {
            material: self.material.cloned(),
            problem,
            stock: stock.into_iter().cloned().collect(),
            pieces: pieces.iter().map(|piece| (*piece).clone()).collect(),
            rules: self.rules,
            basis,
            tick: self.tick,
            keep: self.keep(),
        })
    }

    /// Notes stock of which nothing can be used, and pieces no stock takes.
    fn fit(&self, stock: &[&ListStock], pieces: &[&ListPiece], faults: &mut Vec<ListFault>) {
        let rooms = stock
            .iter()
            .map(|one| Room::of(one, self.trim(one), self.tick));
        let rooms: Vec<Room<'_>> = rooms.collect();
        let bare = rooms.iter().filter(|room| room.is_nothing());
        faults.extend(bare.map(|room| {
            let reason = ListReason::AllTrimmed {
                stock: room.stock.name.clone(),
                material: self.material.cloned(),
            };
            ListFault::on(room.stock.line, reason)
        }));
        let unit = self.list.units.unit();
        for piece in pieces {
            let held = check(
                piece,
                self.turn(piece),
                &rooms,
                self.material,
                self.tick,
                unit,
            );
            faults.extend(held.err());
        }
    }

    fn no_stock(&self, piece: &ListPiece) -> ListFault {
        let form = if self.of_sticks { "stick" } else { "sheet" };
        let stock = self.list.stock.iter();
        let alike = stock.filter(|stock| stock.extent.is_stick() == self.of_sticks);
        let mut known: Vec<&str> = alike
            .filter_map(|stock| stock.material.as_deref())
            .filter(|name| Some(*name) != self.material.map(String::as_str))
            .collect();
        known.sort_unstable();
        known.dedup();
        let cure = if known.is_empty() {
            format!("write a [[{form}]] of it")
        } else {
            format!(
                "write a [[{form}]] of it, or name a material there is: {}",
                known.join(", ")
            )
        };
        let reason = ListReason::NoStock {
            form,
            material: self.material.cloned(),
            piece: piece.name.clone(),
            cure,
        };
        ListFault::on(piece.line, reason)
    }

    fn trim(&self, stock: &ListStock) -> [Length; 2] {
        stock.trim.unwrap_or(match stock.origin {
            Origin::Remnant => [Length::ZERO; 2],
            Origin::Rack | Origin::Buy => [self.rules.trim; 2],
        })
    }

    fn turn(&self, piece: &ListPiece) -> bool {
        !self.of_sticks && piece.turn.unwrap_or(self.rules.turn)
    }

    fn keep(&self) -> [Length; 2] {
        let keys = if self.of_sticks {
            [Key::StickKept; 2]
        } else {
            [Key::BoardKeptShort, Key::BoardKeptLong]
        };
        let [a, b] = keys.map(|key| self.settings.length(key));
        [a.min(b), a.max(b)]
    }

    /// Unlike the name of any other problem of the list.
    fn name(&self) -> String {
        let name = self.material.map_or("cut list", String::as_str);
        match (self.both, self.of_sticks) {
            (false, _) => name.to_owned(),
            (true, true) => format!("{name}, sticks"),
            (true, false) => format!("{name}, sheets"),
        }
    }

    fn lengths(
        &self,
        stock: &[&ListStock],
        costs: &[u64],
        pieces: &[&ListPiece],
    ) -> lengths::Problem {
        let tick = self.tick;
        let stock = stock.iter().zip(costs).map(|(one, cost)| {
            let [start, end] = self.trim(one);
            lengths::Stick {
                name: one.name.clone(),
                length: tick.down(sides(one.extent)[0]),
                cost: *cost,
                count: one.count,
                remnant: one.origin == Origin::Remnant,
                trim: (tick.up(start), tick.up(end)),
                flaws: flaws_in_ticks(one, tick),
                run: one.run.clone(),
            }
        });
        let pieces = pieces.iter().map(|piece| lengths::Piece {
            name: piece.name.clone(),
            length: tick.up(sides(piece.extent)[0]),
            count: Some(piece.count),
            value: 0,
            together: piece.together.clone(),
            priority: piece.priority,
            due: piece.due,
        });
        lengths::Problem {
            name: self.name(),
            goal: self.list.goal,
            kerf: tick.up(self.rules.kerf),
            stock: stock.collect(),
            pieces: pieces.collect(),
        }
    }

    fn sheets(
        &self,
        stock: &[&ListStock],
        costs: &[u64],
        pieces: &[&ListPiece],
    ) -> sheets::Problem {
        let tick = self.tick;
        let stock = stock.iter().zip(costs).map(|(one, cost)| {
            let [width, height] = sides(one.extent).map(|side| tick.down(side));
            let edge = tick.up(self.trim(one)[0]);
            sheets::Sheet {
                name: one.name.clone(),
                width,
                height,
                cost: *cost,
                count: one.count,
                remnant: one.origin == Origin::Remnant,
                trim: sheets::Edges {
                    left: edge,
                    right: edge,
                    bottom: edge,
                    top: edge,
                },
            }
        });
        let pieces = pieces.iter().map(|piece| {
            let [width, height] = sides(piece.extent).map(|side| tick.up(side));
            let window = piece
                .window
                .map(|size| (tick.down(size.width), tick.down(size.height)));
            sheets::Piece {
                name: piece.name.clone(),
                width,
                height,
                count: Some(piece.count),
                value: 0,
                turn: self.turn(piece),
                window: window.filter(|(width, height)| *width > 0 && *height > 0),
                priority: piece.priority,
                due: piece.due,
            }
        });
        sheets::Problem {
            name: self.name(),
            goal: self.list.goal,
            rules: sheets::Rules {
                kerf: tick.up(self.rules.kerf),
                stages: self.rules.stages,
                first: self.rules.first,
                final_trim: true,
                least_strip: tick.up(self.rules.least_strip),
            },
            stock: stock.collect(),
            pieces: pieces.collect(),
        }
    }
}
