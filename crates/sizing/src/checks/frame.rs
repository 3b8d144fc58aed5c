//! Frame members: stiffness, sticks, hardware.

use measure::Length;
use trade::{Key, Pane};

use super::Bench;
use crate::fault::Fault;
use crate::frame::MemberSizes;

/// The most united inches of each band, smallest first.
// geometry: four bands
const BANDS: [Key; 4] = [
    Key::StructureUi1,
    Key::StructureUi2,
    Key::StructureUi3,
    Key::StructureUi4,
];

/// The least face in each band, under glass.
// geometry: one for each band
const GLASS_FACES: [Key; 4] = [
    Key::FaceGlass1,
    Key::FaceGlass2,
    Key::FaceGlass3,
    Key::FaceGlass4,
];

/// The least face in each band, under acrylic or nothing.
// geometry: one for each band
const LIGHT_FACES: [Key; 4] = [
    Key::FaceLight1,
    Key::FaceLight2,
    Key::FaceLight3,
    Key::FaceLight4,
];

impl Bench<'_, '_, '_> {
    pub(super) fn frame(&mut self) {
        for member in &self.sizes.members {
            self.stick(member);
            self.allowance(member);
            self.wall_left(member);
            self.opens(member);
            self.regular(member);
        }
        self.structure();
        self.hardware();
    }

    fn stick(&mut self, member: &MemberSizes) {
        let stick = &member.stick;
        let needed = member.legs.longest() + stick.cut + stick.trim;
        if needed > stick.stick {
            self.faults.push(
                Fault::refuse(
                    "stick.too_short",
                    member.name.clone(),
                    format!("its longest leg takes {} of stick", self.say(needed)),
                    format!("the longest stick at hand is {}", self.say(stick.stick)),
                    format!("Order sticks of {} or longer", self.say(needed)),
                )
                .because(stick.used.line),
            );
        }
    }

    /// A frame needs an opening to look through.
    fn opens(&mut self, member: &MemberSizes) {
        let Some(sight) = member.sight.filter(|sight| !sight.least().is_positive()) else {
            return;
        };
        let size = sight.size();
        self.faults.push(
            Fault::refuse(
                "frame.no_sight",
                member.name.clone(),
                format!(
                    "its sight is {} × {}",
                    self.say(size.width),
                    self.say(size.height)
                ),
                "its lips meet over the art, and nothing is seen of it",
                format!(
                    "Widen the package by more than {}, or take a lip narrower by more than half of that",
                    self.say(-sight.least())
                ),
            )
            .because(sight.width.line),
        );
    }

    /// A polygon is as wide across every pair of flats.
    fn regular(&mut self, member: &MemberSizes) {
        let size = member.contents.size();
        if self.sizes.sides == 4 || size.width == size.height {
            // geometry: four sides make a rectangle
            return;
        }
        self.faults.push(
            Fault::refuse(
                "frame.not_regular",
                member.name.clone(),
                format!(
                    "it holds {} × {}",
                    self.say(size.width),
                    self.say(size.height)
                ),
                format!(
                    "a frame of {} sides is as wide across every pair of flats",
                    self.sizes.sides
                ),
                "Give the art one width across the flats, and all borders alike",
            )
            .because(member.rabbet.width.line),
        );
    }

    /// A rabbet needs wood outside it.
    fn wall_left(&mut self, member: &MemberSizes) {
        let wall = member.face.value - member.lip;
        if member.floater.is_none() && !wall.is_positive() {
            self.faults.push(
                Fault::refuse(
                    "frame.no_wall",
                    member.name.clone(),
                    format!(
                        "its face is {} seen from the front and its lip {}",
                        self.say(member.face.value),
                        self.say(member.lip)
                    ),
                    "no wood is left outside the rabbet",
                    format!(
                        "Take a face of more than {}, or a narrower lip",
                        self.say(member.lip)
                    ),
                )
                .because(member.face.line),
            );
        }
    }

    fn allowance(&mut self, member: &MemberSizes) {
        let least = self.brief.settings.length(Key::LeastAllowance);
        if member.floater.is_none() && member.allowance < least {
            self.faults.push(Fault::warn(
                "frame.tight",
                member.name.clone(),
                format!(
                    "its rabbet is {} larger than what it holds",
                    self.say(member.allowance)
                ),
                format!("under {} glazing and wood bind", self.say(least)),
                format!("Write `allowance = \"{}\"` or more", self.typed(least)),
            ));
        }
    }

    /// What the outermost frame needs to carry a piece of this size.
    fn structure(&mut self) {
        let sizes = self.sizes;
        let outermost = sizes.members.first();
        let Some(member) = outermost.filter(|member| member.floater.is_none()) else {
            return;
        };
        let united = member.outside.size().united();
        let settings = &self.brief.settings;
        let within = |key| united <= Length::INCH.times(settings.count(key));
        match BANDS.into_iter().position(within) {
            Some(band) => {
                self.least_face(member, united, band);
                self.least_height(member, united, band);
            }
            None if self.brief.job.strainer.is_none() => self.brace(member, united),
            None => {}
        }
    }

    fn brace(&mut self, member: &MemberSizes, united: Length) {
        let most = Length::INCH.times(self.brief.settings.count(Key::StructureUi4));
        self.faults.push(Fault::warn(
            "structure.brace",
            member.name.clone(),
            format!("its outside is {} united", self.say(united)),
            format!("above {} united a frame is braced", self.say(most)),
            "Add a `[strainer]`, or ask somebody who builds such frames",
        ));
    }

    fn least_face(&mut self, member: &MemberSizes, united: Length, band: usize) {
        let sizes = self.sizes;
        let glass = sizes
            .glazing
            .iter()
            .any(|pane| pane.pane != Some(Pane::Acrylic));
        let faces = if glass { GLASS_FACES } else { LIGHT_FACES };
        let least = self.brief.settings.length(faces[band]);
        // Members stacked outside one another share the work: the widest counts.
        let widest = sizes
            .members
            .iter()
            .map(|member| member.face.value)
            .max()
            .unwrap_or_default();
        if widest < least {
            self.faults.push(
                Fault::warn(
                    "structure.face",
                    member.name.clone(),
                    format!("its face is {}", self.say(widest)),
                    format!(
                        "at {} united a joined frame wants {}",
                        self.say(united),
                        self.say(least)
                    ),
                    if glass {
                        "Take a wider moulding, acrylic, or a strainer"
                    } else {
                        "Take a wider moulding, or a strainer"
                    },
                )
                .because(member.face.line),
            );
        }
    }

    fn least_height(&mut self, member: &MemberSizes, united: Length, band: usize) {
        let key = match band {
            0 => return,
            1 => Key::HeightBand1,
            _ => Key::HeightBand2,
        };
        let least = self.brief.settings.length(key);
        if let Some(height) = member.height.filter(|height| *height < least) {
            self.faults.push(Fault::warn(
                "structure.height",
                member.name.clone(),
                format!("it is {} high, front to back", self.say(height)),
                format!(
                    "at {} united it wants {}",
                    self.say(united),
                    self.say(least)
                ),
                "Take a higher moulding, or a strainer",
            ));
        }
    }

    fn hardware(&mut self) {
        let Some(hangers) = &self.sizes.hangers else {
            return;
        };
        let hidden = self.brief.settings.length(Key::HookHidden);
        if let Some(wire) = hangers.wire.filter(|wire| wire.hook.value < hidden) {
            self.faults.push(
                Fault::warn(
                    "wire.hook_shows",
                    "Hardware",
                    if wire.hook.value.is_negative() {
                        format!(
                            "the hook's seat comes {} above the frame's top",
                            self.say(-wire.hook.value)
                        )
                    } else {
                        format!(
                            "the hook's seat comes {} below the frame's top",
                            self.say(wire.hook.value)
                        )
                    },
                    format!("under {} the hook shows", self.say(hidden)),
                    format!(
                        "Set the rings {} lower, or hang it by rings on two hooks (`hanger = \"rings\"`)",
                        self.say(hidden - wire.hook.value)
                    ),
                )
                .because(wire.hook.line),
            );
        }
        let screw = self
            .brief
            .job
            .hardware
            .as_ref()
            .and_then(|hardware| hardware.screw);
        let height = self.sizes.members.first().and_then(|member| member.height);
        if let (Some(screw), Some(height)) = (screw, height) {
            let most = height - self.brief.settings.length(Key::ScrewLand);
            if *screw >= most {
                self.faults.push(Fault::refuse(
                    "hardware.screw",
                    "Hardware",
                    format!("its screws are {} long", self.say(*screw)),
                    format!("the moulding is {} high there", self.say(height)),
                    format!("Take screws shorter than {}", self.say(most)),
                ));
            }
        }
    }
}
