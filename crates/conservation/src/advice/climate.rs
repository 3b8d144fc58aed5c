//! The climate this piece will live in.

use sizing::{Fault, GlazingSizes, MemberSizes};
use trade::{Key, Pane};

use super::{Change, Look, Move, of_source};
use crate::climate::{
    ColdSurface, Grain, WallGap, acrylic, damp_growth, damper, gap_behind, rail_movement, wood,
};
use crate::rules::rough;

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
                member.face.into(),
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
                    self.say_up(moved.mitre.gap.value)
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

    /// How far acrylic grows with warmth, as the sizes have it, and with damp.
    ///
    /// What binds by warmth alone the sizes tell themselves.
    fn growth(&mut self, index: usize, pane: &GlazingSizes) {
        let Some(warmth) = pane.growth else { return };
        let room = self.sizes.members[pane.held_in].allowance + pane.undersize;
        if room < warmth.value {
            return;
        }
        let size = pane.sheet.size;
        let sheet = if size.width.value > size.height.value {
            size.width
        } else {
            size.height
        };
        let settings = self.settings().clone();
        let damper = damper(&settings, &mut self.working);
        let coefficients = acrylic();
        let [least, most] = coefficients.damp.map(|damp| {
            let damp = (damp, damper.into());
            damp_growth(sheet.into(), warmth.into(), damp, &mut self.working)
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
                self.say(least.value),
                self.say_up(most.value)
            ),
            format!("allowance and undersize leave it {}", self.say_down(room)),
            format!("Cut it {} smaller than the package", self.say(undersize)),
        );
        let lines = vec![most.line, least.line];
        let changes = vec![Change::SetUndersize { index, undersize }];
        self.push(fault, of_source("G8"), lines, changes);
    }

    /// The wall behind the piece, where it is an outside wall, while it is cold outdoors and heated within.
    fn cold_wall(&mut self) {
        let Some(wall) = self.around.outside_wall else {
            return;
        };
        let settings = self.settings().clone();
        let found = gap_behind(
            &self.around.room,
            wall.outdoors,
            wall.transmittance,
            &settings,
            &mut self.working,
        );
        let found = match found {
            Ok(found) => found,
            Err(refusal) => return self.refused(&refusal),
        };
        let stands_off = self
            .around
            .off_wall
            .is_some_and(|bumpers| bumpers.value >= found.gap);
        if harms(&found.apart) || (harms(&found.touching) && !stands_off) {
            self.damp_wall(&found);
        }
    }

    fn damp_wall(&mut self, found: &WallGap) {
        let gap = self.say(found.gap);
        let cure = if harms(&found.apart) {
            "Hang it on another wall: even behind a gap the air is too damp".to_owned()
        } else {
            format!("Hold it {gap} off the wall with bumpers, and seal its back")
        };
        let fault = Fault::warn(
            "climate.wall",
            "Back",
            format!(
                "in the heating season, against this wall {}; {gap} off it, at best, {}",
                at_wall(&found.touching),
                at_wall(&found.apart)
            ),
            format!(
                "mould is feared from {}",
                self.figure(Key::MouldFrom, "% RH").value
            ),
            cure,
        );
        let lines = vec![
            found.touching.humidity.line,
            found.apart.humidity.line,
            found.touching.condenses.line,
            found.apart.condenses.line,
        ];
        let changes = vec![
            Change::SetBumpers(found.gap),
            Change::Move(Move::ToInnerWall),
        ];
        self.push(fault, of_source("H12"), lines, changes);
    }
}

/// Whether water settles on a surface, or mould may grow there.
const fn harms(surface: &ColdSurface) -> bool {
    surface.moulds.value || surface.condenses.value
}

/// What the air behind a piece does at the wall.
fn at_wall(surface: &ColdSurface) -> String {
    if surface.condenses.value {
        let dew = rough(surface.air.dew_point.value.value());
        return format!("water settles, for it is colder than the dew point of {dew} °C");
    }
    format!(
        "the air comes to {} % RH",
        rough(surface.humidity.value.value())
    )
}
