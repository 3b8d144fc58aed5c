//! The climate this piece will live in.

use measure::Length;
use sizing::{Fault, GlazingSizes, MemberSizes};
use trade::{Key, Pane};
use working::{Figure, Stated};

use super::{Change, Look, of_source};
use crate::climate::{Air, Grain, acrylic, gap_behind, rail_movement, sheet_change, wood};

impl Look<'_> {
    pub(super) fn climate(&mut self) {
        let sizes = self.sizes;
        for member in &sizes.members {
            self.mitres(member);
        }
        for (index, pane) in sizes.glazing.iter().enumerate() {
            if pane.pane == Some(Pane::Acrylic) {
                self.growth(index, pane);
            }
        }
        self.cold_wall();
    }

    /// How far the mitres of a member gape in the driest and the dampest room.
    fn mitres(&mut self, member: &MemberSizes) {
        let named = member
            .material
            .as_deref()
            .and_then(|found| found.wood.as_deref());
        let Some(wood) = named.and_then(|name| wood(name).ok()) else {
            return;
        };
        let celsius = self.figure(Key::RoomTemperature, "°C");
        let made = self.figure(Key::MadeAt, "% RH");
        let most = self.settings().length(Key::MitreGap);
        for key in [Key::DriestRoom, Key::DampestRoom] {
            let room = self.figure(key, "% RH");
            let moved = rail_movement(
                Stated::job(member.face.value),
                wood.coefficient(Grain::Tangential),
                celsius,
                [made, room],
                &mut self.working,
            );
            let Ok(moved) = moved else {
                return;
            };
            if moved.mitre.gap.value <= most {
                continue;
            }
            let end = if moved.mitre.inside {
                "sight"
            } else {
                "outside"
            };
            let fault = Fault::warn(
                "climate.mitre",
                member.name.clone(),
                format!(
                    "at {} its mitres may gape by {} at the {end}, should the glue give",
                    room.value,
                    self.say(moved.mitre.gap.value)
                ),
                format!(
                    "{} passes; flat-sawn {} moves most",
                    self.say(most),
                    wood.species
                ),
                "Nail and glue both faces, seal the back, or take a narrower moulding",
            );
            let lines = vec![moved.mitre.gap.line, moved.change.line];
            self.push(fault, wood.movement_trust().sentence(), lines, Vec::new());
        }
    }

    /// How far acrylic grows from the shop's air to the warmest and dampest room.
    fn growth(&mut self, index: usize, pane: &GlazingSizes) {
        let sheet = pane.sheet.size.size().long_side();
        let member = &self.sizes.members[pane.held_in];
        let room = member.allowance + pane.undersize;
        let damper = self.figure(Key::DampestRoom, "% RH").value.value()
            - self.figure(Key::MadeAt, "% RH").value.value();
        let damper = Stated::setting(Key::DampestRoom.id(), Figure::of(damper.max(0.0), "% RH"));
        let warmer = self.figure(Key::RoomSwing, "K");
        let coefficients = acrylic();
        let [least, most] = [0, 1].map(|end| {
            let heat = (coefficients.warmth[end], warmer);
            let damp = (coefficients.damp[end], damper);
            sheet_change(Stated::job(sheet), heat, damp, &mut self.working)
        });
        let (Ok(least), Ok(most)) = (least, most) else {
            return;
        };
        if room >= most.value {
            return;
        }
        let step = self.settings().length(Key::RingStep);
        let undersize = (pane.undersize + most.value - room).up_to(step);
        let fault = Fault::warn(
            "climate.growth",
            "Glazing",
            format!(
                "with warmth and damp it grows by {} to {}",
                self.say(rounded(least.value)),
                self.say(rounded(most.value))
            ),
            format!("allowance and undersize leave it {}", self.say(room)),
            format!("Cut it {} smaller than the package", self.say(undersize)),
        );
        let lines = vec![most.line, least.line];
        let changes = vec![Change::SetUndersize { index, undersize }];
        self.push(fault, of_source("G8"), lines, changes);
    }

    /// The wall behind the piece, where it is an outside wall.
    fn cold_wall(&mut self) {
        let Some(wall) = self.around.outside_wall else {
            return;
        };
        let mut room = Air::asked(0.0, 0.0);
        room.celsius = self.figure(Key::RoomTemperature, "°C");
        room.humidity = self.figure(Key::DampestRoom, "% RH");
        let settings = self.settings().clone();
        let found = gap_behind(
            &room,
            wall.outdoors,
            wall.transmittance,
            &settings,
            &mut self.working,
        );
        let Ok(found) = found else { return };
        if !found.touching.moulds.value {
            return;
        }
        let gap = self.say(found.gap);
        let cure = if found.apart.moulds.value {
            "Hang it on another wall: even behind a gap the air is too damp".to_owned()
        } else {
            format!("Hold it {gap} off the wall with bumpers, and seal its back")
        };
        let fault = Fault::warn(
            "climate.wall",
            "Back",
            format!(
                "against this wall the air behind it comes to {}, {gap} off it to {}",
                found.touching.humidity.value, found.apart.humidity.value
            ),
            format!(
                "mould is feared from {}",
                self.figure(Key::MouldFrom, "% RH").value
            ),
            cure,
        );
        let lines = vec![found.touching.humidity.line, found.apart.humidity.line];
        self.push(fault, of_source("H12"), lines, Vec::new());
    }
}

/// A growth as people say it: to a tenth of a millimetre, nearest.
fn rounded(length: Length) -> Length {
    length.nearest_to(Length::micrometres(100)) // geometry: a tenth of a millimetre
}
