//! What lies in each member's rabbet, and the air it leaves before the art.

use measure::Length;
use trade::Show;
use working::{Given, Rule, Subject, Worked, Working};

use super::{LayerKind, StackLayer};
use crate::brief::{Brief, lift_of};
use crate::package::WallSizes;
use crate::trace::{Fact, geometry};

static AIR: Rule = geometry(
    "stack.air",
    "air is what keeps glazing off, less what stands up towards it",
    "air = sum(front) - sum(raised)",
);

/// Collects layers and keeps the running depth.
#[derive(Default)]
struct Pile {
    layers: Vec<StackLayer>,
    behind: Length,
}

impl Pile {
    fn lay(
        &mut self,
        what: LayerKind,
        index: usize,
        material: Option<&std::sync::Arc<trade::Material>>,
        thickness: Fact,
    ) {
        self.behind += thickness.value;
        self.layers.push(StackLayer {
            what,
            index,
            material: material.cloned(),
            thickness,
            behind: self.behind,
        });
    }
}

/// Layers in the rabbet of the member of `index`, front to back.
///
/// `strips` is what is glued to the back of the member within. None where the height of that
/// member is not known.
pub(super) fn layers_of(
    brief: &Brief<'_>,
    index: usize,
    walls: Option<&WallSizes>,
    strips: Option<Length>,
) -> Option<Vec<StackLayer>> {
    let mut pile = Pile::default();
    let member = &brief.members[index];
    if let Some(fillet) = &member.fillet {
        pile.lay(
            LayerKind::FrameFillet,
            0,
            fillet.material.as_ref(),
            fillet.thickness,
        );
    }
    glazing(brief, index, &mut pile);
    if let Some(within) = brief.members.get(index + 1) {
        let material = within.material.as_ref();
        pile.lay(LayerKind::Member, index + 1, material, within.height?);
        if let Some(strips) = strips.filter(|strips| strips.is_positive()) {
            pile.lay(LayerKind::BuildUp, index + 1, None, Fact::job(strips));
        }
    } else {
        package(brief, index, walls, &mut pile);
    }
    Some(pile.layers)
}

/// The panes held in the member of `index`.
fn glazing(brief: &Brief<'_>, index: usize, pile: &mut Pile) {
    for (i, pane) in brief.glazing.iter().enumerate() {
        if pane.held_in == index {
            let material = pane.material.as_ref();
            pile.lay(LayerKind::Glazing, i, material, pane.thickness);
        }
    }
}

/// All that lies behind the glazing of the innermost member, whose place is `index`.
fn package(brief: &Brief<'_>, index: usize, walls: Option<&WallSizes>, pile: &mut Pile) {
    spaced(brief, walls, pile);
    mats(brief, pile, false);
    middle(brief, pile);
    if brief.job.double_sided {
        mats(brief, pile, true);
        spaced(brief, None, pile);
        glazing(brief, index, pile);
    } else if let Some(mount) = &brief.mount {
        let material = mount.material.as_ref();
        pile.lay(LayerKind::Mount, 0, material, mount.thickness);
    }
    for (i, back) in brief.backing.iter().enumerate() {
        let material = back.material.as_ref();
        pile.lay(LayerKind::Backing, i, material, back.thickness);
    }
    if let Some(strainer) = &brief.job.strainer {
        pile.lay(LayerKind::Strainer, 0, None, Fact::job(*strainer.depth));
    }
}

fn spaced(brief: &Brief<'_>, walls: Option<&WallSizes>, pile: &mut Pile) {
    if let Some(spacer) = brief
        .spacer
        .as_ref()
        .filter(|spacer| spacer.thickness.value.is_positive())
    {
        pile.lay(
            LayerKind::Spacer,
            0,
            spacer.material.as_ref(),
            spacer.thickness,
        );
    }
    if let (Some(walls), Some(own)) = (walls, &brief.walls) {
        pile.lay(
            LayerKind::Walls,
            0,
            own.material.as_ref(),
            walls.height.into(),
        );
    }
}

/// The mats, each with the tuck of its fillet behind it; `reversed` for the back of a double-sided piece.
fn mats(brief: &Brief<'_>, pile: &mut Pile, reversed: bool) {
    let mut lay = |(i, mat): (usize, &crate::brief::MatBrief<'_>)| {
        let fillet = mat.fillet.as_ref();
        let tuck = |pile: &mut Pile| {
            if let Some(fillet) = fillet {
                pile.lay(
                    LayerKind::MatFillet,
                    i,
                    fillet.material.as_ref(),
                    fillet.thickness,
                );
            }
        };
        if reversed {
            tuck(pile);
        }
        pile.lay(LayerKind::Mat, i, mat.material.as_ref(), mat.thickness);
        if !reversed {
            tuck(pile);
        }
    };
    if reversed {
        brief.mats.iter().enumerate().rev().for_each(&mut lay);
    } else {
        brief.mats.iter().enumerate().for_each(&mut lay);
    }
}

/// The art in line (where something lies on it), or the sink that takes its place.
fn middle(brief: &Brief<'_>, pile: &mut Pile) {
    if let Some(sink) = &brief.sink {
        pile.lay(LayerKind::Sink, 0, sink.material.as_ref(), sink.depth);
        return;
    }
    let in_line = (0..brief.job.art.len())
        .filter(|&art| !stands_free(brief, art))
        .map(|art| *brief.job.art[art].thickness)
        .max();
    if let Some(thickness) = in_line.filter(|thickness| thickness.is_positive()) {
        pile.lay(LayerKind::Art, 0, None, Fact::job(thickness));
    }
}

/// Whether a piece of art stands in the air before its mount instead of lying in the stack.
fn stands_free(brief: &Brief<'_>, art: usize) -> bool {
    let show = brief.job.art[art].show;
    let boxed = brief.walls.is_some() && show != Some(Show::Window);
    boxed
        || brief.job.wrap.is_some()
        || matches!(show, Some(Show::Float | Show::Wrapped | Show::Object))
}

/// Air between the glazing and the nearest art; none in a floater, without glazing, or where
/// heights are not known.
pub(crate) fn air(
    brief: &Brief<'_>,
    walls: Option<&WallSizes>,
    working: &mut Working,
) -> Option<Worked<Length>> {
    if brief.members.last().is_some_and(|m| m.floater.is_some()) {
        return None;
    }
    let nearest = brief.glazing.iter().map(|pane| pane.held_in).max()?;
    let mut front: Vec<(&'static str, Given)> = Vec::new();
    let mut ahead = Length::ZERO;
    let mut put = |fact: Fact| {
        ahead += fact.value;
        front.push(("front", fact.into()));
    };
    for member in brief.members.iter().skip(nearest + 1) {
        // A liner's lip stands between its rabbet and the glazing before it.
        put(member.height?);
        let depth = member.rabbet_depth?;
        put(Fact::job(-depth.value));
    }
    if let Some(spacer) = &brief.spacer {
        put(spacer.thickness);
    }
    if let Some(walls) = walls {
        put(walls.height.into());
    }
    for mat in &brief.mats {
        put(mat.thickness);
        if let Some(fillet) = &mat.fillet {
            put(fillet.thickness);
        }
    }
    put(Fact::job(Length::ZERO));
    let highest = (0..brief.job.art.len()).max_by_key(|&art| raised(brief, art).1)?;
    let (inputs, up) = raised(brief, highest);
    front.extend(inputs.into_iter().map(|fact| ("raised", fact.into())));
    Some(working.by(&AIR, Subject::of("package", "air"), &front, ahead - up))
}

/// What lifts a piece of art towards the glazing, and how far in all.
fn raised(brief: &Brief<'_>, index: usize) -> (Vec<Fact>, Length) {
    let art = &brief.job.art[index];
    let thickness = Fact::job(*art.thickness);
    let mut up = if let Some(sink) = &brief.sink {
        vec![thickness, Fact::job(-sink.depth.value)]
    } else if !stands_free(brief, index) {
        vec![Fact::job(Length::ZERO)]
    } else if art.show == Some(Show::Float) || art.lift.is_some() {
        vec![thickness, lift_of(art, &brief.settings)]
    } else {
        vec![thickness]
    };
    up.retain(|fact| !fact.value.is_zero());
    if up.is_empty() {
        up.push(Fact::job(Length::ZERO));
    }
    let total = up.iter().map(|fact| fact.value).sum();
    (up, total)
}
