//! Walls: where every piece hangs and every nail goes, from the wall's left corner and the floor.

mod across;
mod block;
mod stairs;

use measure::Length;
use sizing::{Sizes, hooks_apart};
use trade::{Key, Settings};
use working::{Rule, Stated, Subject, Worked, Working};

use crate::refusal::Refusal;
use crate::{custom, geometry};

pub(crate) use across::{Across, middle};
pub use block::{Align, block, grid, single};
pub use stairs::{Stairs, stairs};

static NAIL_LEFT: Rule = geometry(
    "wall.nail_left",
    "the left one of two nails stands half their distance before the middle",
    "nail = middle - half_down(apart)",
);
static NAIL_RIGHT: Rule = geometry(
    "wall.nail_right",
    "the right one stands their distance further on",
    "nail = left_nail + apart",
);
static NAIL_HEIGHT: Rule = geometry(
    "wall.nail_height",
    "the nail enters above the seat of its hook, and the seat lies below the frame's top",
    "nail = top - seat + seat_to_nail",
);

static ABOVE: Rule = custom(
    "wall.above",
    "over furniture the shop leaves a gap; what hangs rises until it has it",
    "centre = max(centre, furniture + gap + hung - half_down(hung))",
);

/// A piece as it hangs.
#[derive(Clone, Copy, Debug)]
pub struct Frame {
    /// Outside width.
    pub width: Stated<Length>,
    /// Outside height.
    pub height: Stated<Length>,
    /// From its top down to the seat of its hooks, under load.
    pub seat: Stated<Length>,
    /// Between two hooks; none for a single one in the middle.
    pub hooks_apart: Option<Stated<Length>>,
}

impl Frame {
    /// A piece as it was derived: its outside, the seat of its hooks under load, its hooks apart.
    ///
    /// Shape:  none where it has no hangers. A wire's seat is its marks'; rings, plates and cleats sit on
    ///         their hooks as far down as they are set. Rings and plates take two hooks, a ring apart; a
    ///         wire on two hooks takes them the shop's share of its rings apart.
    pub fn of(sizes: &Sizes, hooks: u32) -> Option<Self> {
        let marks = sizes.hangers?;
        let outside = sizes.outside;
        let wire = marks.wire;
        let two = || hooks_apart(marks.apart, &sizes.settings, &mut sizes.working.clone());
        let apart = match wire {
            Some(wire) if hooks > 1 => Some(wire.hooks_apart.unwrap_or_else(two).value),
            Some(_) => None,
            None => Some(marks.apart.value),
        };
        Some(Self {
            width: Stated::job(outside.width.value),
            height: Stated::job(outside.height.value),
            seat: Stated::job(wire.map_or(marks.down.value, |wire| wire.hook.value)),
            hooks_apart: apart.map(Stated::job),
        })
    }
}

/// The wall and the shop's habits on it.
#[derive(Clone, Copy, Debug)]
pub struct Wall {
    /// From its left corner to its right.
    pub width: Stated<Length>,
    /// From the floor to the centre of what hangs there.
    pub centre: Stated<Length>,
    /// Left between neighbours, across and up.
    pub gap: Stated<Length>,
    /// From the seat of a hook up to its nail.
    pub seat_to_nail: Stated<Length>,
}

impl Wall {
    /// A wall of this width, the rest as the shop has it.
    pub fn of_shop(width: Stated<Length>, settings: &Settings) -> Self {
        let own = |key: Key| Stated::setting(key.id(), settings.length(key));
        Self {
            width,
            centre: own(Key::CentreHeight),
            gap: own(Key::WallGapBetween),
            seat_to_nail: own(Key::HookSeat),
        }
    }

    /// The same wall with furniture of this height under what hangs there: the centre rises until the shop's
    /// gap is left above it, and no higher than that.
    ///
    /// centre = max(centre, furniture + gap + half of what hangs)
    #[must_use]
    pub fn above(
        self,
        furniture: Stated<Length>,
        height: Length,
        settings: &Settings,
        working: &mut Working,
    ) -> Self {
        let gap = Stated::setting(Key::OverFurniture.id(), settings.length(Key::OverFurniture));
        let half = height - height.half_down();
        let value = self.centre.value.max(furniture.value + gap.value + half);
        let inputs = [
            ("centre", self.centre.into()),
            ("furniture", furniture.into()),
            ("gap", gap.into()),
            ("hung", Stated::job(height).into()),
        ];
        let centre = working.by(&ABOVE, Subject::of("wall", "centre"), &inputs, value);
        Self {
            centre: centre.into(),
            ..self
        }
    }
}

/// A piece in its place.
#[derive(Clone, Debug)]
pub struct Hung {
    /// From the wall's left corner to its left edge.
    pub left: Worked<Length>,
    /// From the floor to its top edge.
    pub top: Worked<Length>,
    /// Its nails, left to right.
    pub nails: Vec<NailAt>,
}

/// A nail in its place.
#[derive(Clone, Copy, Debug)]
pub struct NailAt {
    /// From the wall's left corner.
    pub from_corner: Worked<Length>,
    /// From the floor.
    pub above_floor: Worked<Length>,
}

/// Refuses frames that have no size, and gaps below zero.
fn look_over<'a>(frames: impl Iterator<Item = &'a Frame>, wall: &Wall) -> Result<(), Refusal> {
    Refusal::if_negative("the gap", wall.gap.value)?;
    Refusal::if_negative("the distance from seat to nail", wall.seat_to_nail.value)?;
    let mut any = false;
    for frame in frames {
        any = true;
        Refusal::unless_positive("a frame's width", frame.width.value)?;
        Refusal::unless_positive("a frame's height", frame.height.value)?;
        Refusal::if_negative("the drop of a hook's seat", frame.seat.value)?;
        if let Some(apart) = frame.hooks_apart {
            Refusal::unless_positive("the distance between the hooks", apart.value)?;
        }
    }
    if any { Ok(()) } else { Err(Refusal::EmptyRow) }
}

/// A frame whose left and top are known, with its nails.
fn hung(
    frame: &Frame,
    index: usize,
    (left, top): (Worked<Length>, Worked<Length>),
    wall: &Wall,
    working: &mut Working,
) -> Result<Hung, Refusal> {
    if top.value < frame.height.value {
        return Err(Refusal::BelowFloor {
            centre: top.value - frame.height.value.half_down(),
            height: frame.height.value,
        });
    }
    let subject = |quantity| Subject::nth("wall", index, quantity);
    let inputs = [
        ("top", top.into()),
        ("seat", frame.seat.into()),
        ("seat_to_nail", wall.seat_to_nail.into()),
    ];
    let value = top.value - frame.seat.value + wall.seat_to_nail.value;
    let above_floor = working.by(&NAIL_HEIGHT, subject("nail_height"), &inputs, value);
    let middle = middle(index, (left, frame.width), working);
    let across = match frame.hooks_apart {
        None => vec![middle],
        Some(apart) => {
            let inputs = [("middle", middle.into()), ("apart", apart.into())];
            let value = middle.value - apart.value.half_down();
            let first = working.by(&NAIL_LEFT, subject("nail_left"), &inputs, value);
            let inputs = [("left_nail", first.into()), ("apart", apart.into())];
            let value = first.value + apart.value;
            vec![
                first,
                working.by(&NAIL_RIGHT, subject("nail_right"), &inputs, value),
            ]
        }
    };
    let nails = across.into_iter().map(|from_corner| NailAt {
        from_corner,
        above_floor,
    });
    Ok(Hung {
        left,
        top,
        nails: nails.collect(),
    })
}

#[cfg(test)]
mod tests;
