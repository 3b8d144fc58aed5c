//! Checking, chopping, joining, cutting boards and glazing.

use trade::{Bevel, Coating, Key, Pane};

use super::List;
use crate::setup::{Cuts, Setup};

impl List<'_> {
    pub(super) fn check(&mut self) {
        let text = format!(
            "Check the ticket against art, boards and moulding; package {}",
            self.size(self.sizes.package.size())
        );
        self.step(self.min(Key::MinutesCheck), text);
    }

    pub(super) fn frame(&mut self) {
        let sizes = self.sizes;
        for (i, member) in sizes.members.iter().enumerate().rev() {
            let legs: Vec<String> = member
                .legs
                .each
                .iter()
                .map(|leg| {
                    let reads = match member.legs.scale {
                        "sight" => leg.short.value,
                        "outside" => leg.long.value,
                        _ => leg.rabbet.value,
                    };
                    format!("{} at {}", leg.count, self.tape(reads))
                })
                .collect();
            let scale = if member.floater.is_some() && member.legs.scale == "rabbet" {
                "inside"
            } else {
                member.legs.scale
            };
            self.careful(
                self.min(Key::MinutesChop),
                format!("{}: chop {} ({scale}), longest pair first, all of one run", member.name, legs.join(", ")),
                "Guards on, hands clear of the blade; eye and ear protection; hold short pieces with a jig. The machine maker's instructions rule.",
            );
            self.step(
                self.min(Key::MinutesJoin),
                format!(
                    "{}: glue and join; diagonals equal, opposite legs equal, no step at the face",
                    member.name
                ),
            );
            self.step(
                self.min(Key::MinutesTouchUp),
                format!("{}: touch up the corners", member.name),
            );
            if let Some(fillet) = &member.fillet {
                let text = format!(
                    "{}: fillet {} at its long points, chop, fit, glue",
                    member.name,
                    self.size(fillet.long.size())
                );
                self.step(self.min(Key::MinutesFillet), text);
            }
            if i + 1 < sizes.members.len() {
                let text = format!("Set {} into {}", sizes.members[i + 1].name, member.name);
                self.step(self.min(Key::MinutesMember), text);
            }
        }
    }

    pub(super) fn boards(&mut self) {
        let sizes = self.sizes;
        if sizes.mats.is_empty() && sizes.mount.is_none() {
            return;
        }
        self.step(
            self.min(Key::MinutesSizeBoards),
            "Cut mats and mount to size; new blade, slip sheet underneath",
        );
        for (k, setup) in sizes.setups.iter().enumerate() {
            self.window(k == 0, setup);
            if k == 0 && sizes.mats.len() > 1 {
                self.step(
                    0,
                    "Tape the next mat to its back, fallout put back, before cutting that one",
                );
            }
        }
        for (i, mat) in sizes.mats.iter().enumerate() {
            for fillet in &mat.fillets {
                let text = format!(
                    "Mat {}: fillet {} at its long points, chop, fit, glue",
                    i + 1,
                    self.size(fillet.long.size())
                );
                self.step(self.min(Key::MinutesFillet), text);
            }
        }
        if sizes.double_sided {
            self.step(
                self.min(Key::MinutesDoubleSided),
                "Cut the same mats again for the other face; fit removable stops",
            );
        }
    }

    /// One window cut; the `first` of the piece takes the longest.
    fn window(&mut self, first: bool, setup: &Setup) {
        let first_of_mat = setup.window == 0;
        let curved = matches!(setup.cuts, Cuts::LaidOut { .. });
        let minutes = match (first, first_of_mat, curved) {
            (_, true, true) => self.min(Key::MinutesOval),
            (true, ..) => self.min(Key::MinutesFirstWindow),
            (_, true, _) => self.min(Key::MinutesFurtherLayer),
            _ => self.min(Key::MinutesFurtherOpening),
        };
        let windows = &self.sizes.mats[setup.mat].windows;
        let bevel = match setup.bevel {
            Bevel::Normal => "bevel",
            Bevel::Reverse => "reverse bevel",
            Bevel::Square => "square cut",
        };
        let which = if windows.len() > 1 {
            format!(", window {}", setup.window + 1)
        } else {
            String::new()
        };
        let text = format!(
            "Mat {}{which}: cut {} at the face from the back, {bevel}, settings as listed",
            setup.mat + 1,
            self.size(windows[setup.window].face.size())
        );
        self.careful(
            minutes,
            text,
            "Cut away from the holding hand; blades into the sharps box.",
        );
    }

    pub(super) fn glazing(&mut self) {
        let sizes = self.sizes;
        for pane in &sizes.glazing {
            let acrylic = pane.pane == Some(Pane::Acrylic);
            let (key, name, caution) = if acrylic {
                (
                    Key::MinutesAcrylic,
                    "acrylic",
                    "Mask stays on until fitting; no ammonia, no paper towels.",
                )
            } else {
                (
                    Key::MinutesGlass,
                    "glass",
                    "Cut-proof gloves and eye protection; swipe the edges; carry it upright; waste into the glass bin.",
                )
            };
            let faces = if sizes.double_sided { 2 } else { 1 };
            let twice = if sizes.double_sided { " twice" } else { "" };
            let text = format!("Cut {name} {}{twice}", self.size(pane.sheet.size.size()));
            self.careful(self.min(key) * faces, text, caution);
        }
        if !sizes.backing.is_empty() {
            let sheets: Vec<String> = sizes
                .backing
                .iter()
                .map(|back| self.size(back.size.size()))
                .collect();
            self.step(
                self.min(Key::MinutesBack),
                format!("Cut backing {}", sheets.join(", ")),
            );
        }
        if let Some(spacer) = &sizes.spacer {
            let text = format!(
                "Cut and stick spacers round {}, {} deep",
                self.size(sizes.package.size()),
                self.tape(spacer.thickness)
            );
            self.step(self.min(Key::MinutesSpacers), text);
        }
        if let Some(walls) = &sizes.walls {
            let text = format!(
                "Walls: two {} long, two {} long, all {} high and {} thick",
                self.tape(walls.long.value),
                self.tape(walls.short.value),
                self.tape(walls.height.value),
                self.tape(walls.thickness)
            );
            self.step(self.min(Key::MinutesBox), text);
        }
    }

    /// Whether any sheet has a coating that asks for care.
    pub(super) fn coated(&self) -> bool {
        let coating =
            |pane: &crate::GlazingSizes| pane.sheet.material.as_ref().and_then(|m| m.coating);
        self.sizes
            .glazing
            .iter()
            .any(|pane| coating(pane).is_some_and(Coating::is_delicate))
    }
}
