//! Moulding profiles: the section as cut, and how its face catches the light.

use measure::Length;
use sizing::MemberSizes;

use crate::scene::{Path, Point, at};

/// The section of a member.
#[derive(Clone, Debug)]
pub(crate) struct Section {
    /// Corners: `x` from the outside edge inwards, `y` from the member's front towards the back.
    pub corners: Vec<Point>,
    /// Front to back.
    pub height: f64,
    /// From the front to the rabbet's front (a floater's whole height has none).
    pub lip_front: f64,
    /// What is drawn by guess, in words.
    pub guessed: Option<String>,
}

/// Strips in which a face with an outline of its own is lit.
const STRIPS: u32 = 16;
/// Depth drawn in front of a rabbet where the moulding's height is not known.
const GUESSED_LIP: f64 = 6.0;
/// Board drawn under a floater's canvas where its height is not known.
const GUESSED_LEDGE: f64 = 10.0;

/// The section of `member`; `stack` is the thickness of what lies in its rabbet, where that is known.
pub(crate) fn section_of(member: &MemberSizes, stack: f64) -> Section {
    if member.floater.is_some() {
        return floater(member);
    }
    let depth = member.rabbet_depth.map_or(stack, Length::approx_mm);
    let height = member
        .height
        .map_or(depth + GUESSED_LIP, Length::approx_mm)
        .max(depth + 1.0);
    let guessed = match (member.rabbet_depth, member.height) {
        (Some(_), Some(_)) => None,
        (None, None) => Some("rabbet depth and height are not known; both are drawn by guess"),
        (None, Some(_)) => Some("rabbet depth is not known; it is drawn just deep enough"),
        (Some(_), None) => Some("height is not known; it is drawn by guess"),
    };
    let own = true_outline(member, height);
    let corners = own.unwrap_or_else(|| plain(member, height, depth));
    Section {
        corners,
        height,
        lip_front: height - depth,
        guessed: guessed.map(|why| format!("{}: {why}", member.name)),
    }
}

/// The catalogue's outline, where the member has the catalogue's measures.
fn true_outline(member: &MemberSizes, height: f64) -> Option<Vec<Point>> {
    let profile = member.material.as_ref()?.profile.as_ref()?;
    let same = *profile.face == member.face.value
        && *profile.lip == member.lip
        && Some(*profile.height) == member.height
        && Some(*profile.rabbet_depth) == member.rabbet_depth;
    (same && profile.outline.len() > 2).then(|| {
        profile
            .outline
            .iter()
            .map(|[x, y]| at(x.approx_mm(), height - y.approx_mm()))
            .collect()
    })
}

/// A plain section with its arrises taken off.
fn plain(member: &MemberSizes, height: f64, depth: f64) -> Vec<Point> {
    let face = member.face.value.approx_mm();
    let wall = face - member.lip.approx_mm();
    let front = height - depth;
    let arris = (face * 0.05).min(1.0).min(front * 0.3);
    vec![
        at(arris, 0.0),
        at(face - arris, 0.0),
        at(face, arris),
        at(face, front),
        at(wall, front),
        at(wall, height),
        at(0.0, height),
        at(0.0, arris),
    ]
}

fn floater(member: &MemberSizes) -> Section {
    let wall = member.face.value.approx_mm();
    let ledge = member
        .floater
        .map_or(0.0, |floater| floater.ledge.approx_mm());
    let recess = member.rabbet_depth.map_or(30.0, Length::approx_mm);
    let height = member
        .height
        .map_or(recess + GUESSED_LEDGE, Length::approx_mm)
        .max(recess + 1.0);
    let corners = vec![
        at(0.5, 0.0),
        at(wall - 0.5, 0.0),
        at(wall, 0.5),
        at(wall, recess),
        at(wall + ledge, recess),
        at(wall + ledge, height),
        at(0.0, height),
        at(0.0, 0.5),
    ];
    let guessed = match (member.rabbet_depth, member.height) {
        (None, _) => Some("the recess is not known; it is drawn by guess"),
        (Some(_), None) => Some("height is not known; it is drawn by guess"),
        _ => None,
    };
    Section {
        corners,
        height,
        lip_front: 0.0,
        guessed: guessed.map(|why| format!("{}: {why}", member.name)),
    }
}

impl Section {
    /// The section as a ring, `x` from the outside edge and `y` from the front.
    pub fn path(&self) -> Path {
        Path::ring(self.corners.clone())
    }

    /// How the face rises and falls from the outside edge (0) to `face`: shares of its width, and
    /// the slope between each and the next, rising inwards.
    pub fn relief(&self, face: f64, plain: bool) -> Vec<(f64, f64)> {
        if plain {
            // A plain face is hardly ever dead flat: a breath of crown between two arrises.
            return vec![(0.0, 0.9), (0.06, 0.10), (0.5, -0.10), (0.93, -0.9)];
        }
        let stations: Vec<f64> = (0..=STRIPS)
            .map(|k| f64::from(k) / f64::from(STRIPS))
            .collect();
        let front = |share: f64| self.front_at((share * face).clamp(face * 0.004, face * 0.996));
        stations
            .windows(2)
            .map(|pair| {
                let run = (pair[1] - pair[0]) * face;
                let rise = front(pair[0]) - front(pair[1]);
                (pair[0], (rise / run).clamp(-1.6, 1.6))
            })
            .collect()
    }

    /// Depth of the foremost point of the section at `x`.
    fn front_at(&self, x: f64) -> f64 {
        let next = self.corners.iter().cycle().skip(1);
        self.corners
            .iter()
            .zip(next)
            .filter(|(a, b)| (a.x <= x) != (b.x <= x))
            .map(|(a, b)| a.y + (x - a.x) / (b.x - a.x) * (b.y - a.y))
            .fold(self.height, f64::min)
    }
}

/// Whether a member is drawn with the catalogue's own outline.
pub(crate) fn has_outline(member: &MemberSizes) -> bool {
    member.floater.is_none() && true_outline(member, 1.0).is_some()
}
