//! Depth: what is too deep, stands proud, or is held by nothing.

use measure::Length;
use trade::Key;

use super::Bench;
use crate::fault::Fault;
use crate::frame::{FloaterSizes, MemberSizes};
use crate::is_size;
use crate::stack::{LayerKind, Stack, StackLayer};

impl Bench<'_, '_, '_> {
    pub(super) fn depth(&mut self) {
        let sizes = self.sizes;
        for (i, member) in sizes.members.iter().enumerate() {
            if let Some(stack) = &member.stack {
                let innermost = i + 1 == sizes.members.len();
                if innermost && self.brief.job.clips.is_some() {
                    self.clips(member, stack);
                } else {
                    self.too_deep(member, stack);
                }
            }
            self.floater(member);
        }
        self.sink();
    }

    fn too_deep(&mut self, member: &MemberSizes, stack: &Stack) {
        if !stack.slack.value.is_negative() {
            return;
        }
        let short = -stack.slack.value;
        let cure = self.shallower(stack, short);
        self.faults.push(
            Fault::refuse(
                "stack.too_deep",
                member.name.clone(),
                format!(
                    "stack {} and tail {}",
                    self.say(stack.total.value),
                    self.say(stack.tail)
                ),
                format!(
                    "the rabbet is {} deep: {} too little",
                    self.say(stack.depth),
                    self.say(short)
                ),
                cure,
            )
            .because(stack.slack.line),
        );
    }

    /// What makes a stack fit that is `short` of depth.
    fn shallower(&self, stack: &Stack, short: Length) -> String {
        if self.brief.is_canvas() {
            return "Add `[clips]` to hold it, a deeper moulding, or `[build_up]` strips on the back"
                .to_owned();
        }
        let backing = |layer: &StackLayer| layer.what == LayerKind::Backing;
        let mut backings = stack.layers.iter().filter(|layer| backing(layer));
        let short_of = self.say(short);
        let thinner = if backings.any(|layer| layer.thickness.value > short) {
            format!("a backing {short_of} thinner, ")
        } else {
            String::new()
        };
        format!(
            "Take {thinner}a moulding {short_of} deeper, `[build_up]` strips, or `[clips]`; never squeeze"
        )
    }

    fn clips(&mut self, member: &MemberSizes, stack: &Stack) {
        if is_size(stack.proud.value) && stack.clip.is_none() {
            self.faults.push(
                Fault::refuse(
                    "clip.none",
                    member.name.clone(),
                    format!("the package stands {} proud", self.say(stack.proud.value)),
                    "no clip at hand has so small an offset",
                    "Use points and a thinner backing, or list a smaller clip in `[clips]`",
                )
                .because(stack.proud.line),
            );
        }
    }

    fn floater(&mut self, member: &MemberSizes) {
        let Some(floater) = &member.floater else {
            return;
        };
        let land = self.brief.settings.length(Key::FloaterLand);
        if floater.ledge < floater.gap + land {
            self.faults.push(Fault::refuse(
                "floater.ledge",
                member.name.clone(),
                format!("its ledge is {} wide", self.say(floater.ledge)),
                format!(
                    "the gap of {} and {} for screws need {}",
                    self.say(floater.gap),
                    self.say(land),
                    self.say(floater.gap + land)
                ),
                format!(
                    "Take a ledge {} wider, or a narrower gap",
                    self.say(floater.gap + land - floater.ledge)
                ),
            ));
        }
        self.setback(member, floater);
    }

    /// How far the canvas lies behind the front of its floater.
    fn setback(&mut self, member: &MemberSizes, floater: &FloaterSizes) {
        let Some(setback) = floater.setback else {
            return;
        };
        let least = self.brief.settings.length(Key::FloaterSetback);
        let found = if setback.value.is_negative() {
            format!(
                "the canvas stands {} before its front",
                self.say(-setback.value)
            )
        } else {
            format!(
                "the canvas lies {} behind its front",
                self.say(setback.value)
            )
        };
        if setback.value.is_negative() {
            let cure = format!("Take a floater {} deeper", self.say(least - setback.value));
            let fault = Fault::refuse(
                "floater.proud",
                member.name.clone(),
                found,
                "a canvas lies inside its floater",
                cure,
            );
            self.faults.push(fault.because(setback.line));
        } else if setback.value < least {
            let allowed = format!("{} or a little more reads well", self.say(least));
            let fault = Fault::warn(
                "floater.flush",
                member.name.clone(),
                found,
                allowed,
                "Shim the ledge, or take a deeper floater",
            );
            self.faults.push(fault.because(setback.line));
        }
    }

    fn sink(&mut self) {
        let Some(sink) = &self.brief.sink else { return };
        let deepest = self
            .brief
            .job
            .art
            .iter()
            .map(|art| *art.thickness)
            .max()
            .unwrap_or_default();
        if deepest > sink.depth.value {
            self.faults.push(Fault::warn(
                "sink.shallow",
                "Sink",
                format!("it is {} deep", self.say(sink.depth.value)),
                format!("the art is {} thick", self.say(deepest)),
                format!(
                    "Build it up by {} more",
                    self.say(deepest - sink.depth.value)
                ),
            ));
        }
    }
}
