//! Frame members, looked up.

use std::sync::Arc;

use measure::Length;
use trade::{Key, Kind, Material, Measured, Member, Profile, Role};

use super::{Desk, FilletBrief, is_canvas, part_name};
use crate::fault::Fault;
use crate::trace::Fact;

/// A frame member with its numbers.
pub(crate) struct MemberBrief<'a> {
    pub member: &'a Member,
    pub name: String,
    pub material: Option<Arc<Material>>,
    pub face: Fact,
    /// Lip of a frame or liner; gap of a floater is `gap`.
    pub lip: Fact,
    pub rabbet_depth: Option<Fact>,
    pub height: Option<Fact>,
    pub allowance: Fact,
    pub tail: Fact,
    pub stick: Fact,
    pub floater: Option<FloaterBrief>,
    pub fillet: Option<FilletBrief>,
}

/// What only a floater has.
pub(crate) struct FloaterBrief {
    pub gap: Fact,
    pub wall: Fact,
    pub ledge: Fact,
}

impl<'a> Desk<'a, '_> {
    pub(super) fn members(&mut self) -> Vec<MemberBrief<'a>> {
        let job = self.job;
        if job.frame.is_empty() {
            self.faults.push(Fault::refuse(
                "frame.none",
                "Frame",
                "there is none",
                "a piece needs at least one [[frame]] table",
                "Add one with its moulding, or with its face, lip and rabbet_depth",
            ));
        }
        let count = job.frame.len();
        job.frame
            .iter()
            .enumerate()
            .filter_map(|(i, member)| self.member(member, i, member_name(member, i, count)))
            .collect()
    }

    fn member(
        &mut self,
        member: &'a Member,
        index: usize,
        name: String,
    ) -> Option<MemberBrief<'a>> {
        let material = self.material(&name, member.moulding.as_deref(), &[Kind::Moulding]);
        if member.moulding.is_some() && material.is_none() {
            return None;
        }
        let profile = material.as_ref().and_then(|m| m.profile.as_ref());
        let innermost = index + 1 == self.job.frame.len();
        let (face, lip, floater) = if member.role == Role::Floater {
            let floater = self.floater(member, &name, profile.map(|p| *p.face))?;
            (floater.wall, Fact::job(Length::ZERO), Some(floater))
        } else {
            let (face, lip) = self.face_and_lip(member, &name, profile)?;
            (face, lip, None)
        };
        let rabbet_depth = stated_or_own(member.rabbet_depth, profile.map(|p| p.rabbet_depth));
        let height = stated_or_own(member.height, profile.map(|p| p.height));
        let fillet = member
            .fillet
            .as_ref()
            .and_then(|fillet| self.frame_fillet(fillet, &name));
        Some(MemberBrief {
            member,
            allowance: self.allowance(member, innermost),
            tail: self.tail(member, innermost),
            stick: self.stick(member, material.as_ref()),
            name,
            material,
            face,
            lip,
            rabbet_depth,
            height,
            floater,
            fillet,
        })
    }

    fn face_and_lip(
        &mut self,
        member: &Member,
        name: &str,
        profile: Option<&Profile>,
    ) -> Option<(Fact, Fact)> {
        let face = self.number(
            name,
            "face",
            member.face.map(|f| *f),
            profile.map(|p| *p.face),
        )?;
        let lip = self.number(name, "lip", member.lip.map(|l| *l), profile.map(|p| *p.lip))?;
        Some((face, lip))
    }

    fn floater(
        &mut self,
        member: &Member,
        name: &str,
        own_face: Option<Length>,
    ) -> Option<FloaterBrief> {
        let wall = self.number(name, "wall", member.wall.map(|w| *w), None)?;
        let rest = own_face.map(|face| face - wall.value);
        let ledge = self.number(name, "ledge", member.ledge.map(|l| *l), rest)?;
        Some(FloaterBrief {
            gap: self.or_setting(member.gap.map(|g| *g), Key::FloaterGap),
            wall,
            ledge,
        })
    }

    fn allowance(&self, member: &Member, innermost: bool) -> Fact {
        let canvas = innermost && is_canvas(self.job);
        let habit = if canvas {
            Key::FrameAllowanceCanvas
        } else {
            Key::FrameAllowance
        };
        self.or_setting(member.allowance.map(|a| *a), habit)
    }

    fn tail(&self, member: &Member, innermost: bool) -> Fact {
        match member.tail {
            Some(tail) => Fact::job(*tail),
            None if innermost => self.setting(self.usual_tail()),
            // A frame inside a frame is screwed or taped in, without points.
            None => Fact::job(Length::ZERO),
        }
    }

    fn stick(&self, member: &Member, material: Option<&Arc<Material>>) -> Fact {
        let own = material.and_then(|m| m.sticks.iter().map(|stick| **stick).max());
        match (member.stick, own) {
            (Some(stick), _) => Fact::job(*stick),
            (None, Some(own)) => Fact::material(own),
            (None, None) => self.setting(Key::StickLength),
        }
    }

    /// Index of the member of this name.
    pub(super) fn member_named(&mut self, part: &str, name: &str) -> Option<usize> {
        let found = self
            .job
            .frame
            .iter()
            .position(|member| member.name.as_deref() == Some(name));
        if found.is_none() {
            self.faults.push(Fault::refuse(
                "frame.unknown",
                part,
                format!("it is held in \"{name}\", and no frame member has that name"),
                "",
                format!("Write `name = \"{name}\"` in the [[frame]] table that holds it"),
            ));
        }
        found
    }
}

/// What the job states, else what the moulding has, else nothing: it may stay unknown.
fn stated_or_own(stated: Option<Measured>, own: Option<Measured>) -> Option<Fact> {
    let stated = stated.map(|length| Fact::job(*length));
    stated.or_else(|| own.map(|length| Fact::material(*length)))
}

/// What a member is called on tickets: its own name, else its role and place.
fn member_name(member: &Member, index: usize, count: usize) -> String {
    if let Some(name) = &member.name {
        return name.clone();
    }
    let role = match member.role {
        Role::Frame => "Frame",
        Role::Liner => "Liner",
        Role::Floater => "Floater",
    };
    part_name(role, index, count)
}
