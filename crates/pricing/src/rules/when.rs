//! When a rule applies.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use trade::{Coating, Hanger, Hold, Level, Measured, Pane, Role, Shape};

use super::Part;
use crate::item::Item;

/// Conditions, all of which must hold; a list holds where one of it does, an empty one always.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct When {
    /// Material codes.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub material: Vec<String>,
    /// Whether the job names a material for it, or it is there already: a customer's own frame.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub has_material: Option<bool>,
    /// Composition classes of the material: `museum`.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub class: Vec<String>,
    /// What is on the material's surface.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub coating: Vec<Coating>,
    /// Glass or acrylic.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pane: Option<Pane>,
    /// Kinds of frame member.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub role: Vec<Role>,
    /// Shapes of a mat's first opening, or of the opening charged for.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub shape: Vec<Shape>,
    /// How the art is held.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub hold: Vec<Hold>,
    /// What it hangs by.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub hanger: Vec<Hanger>,
    /// Levels promised.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub level: Vec<Level>,
    /// Width and height together above this.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub over: Option<Measured>,
    /// Width and height together up to this, included.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub to: Option<Measured>,
    /// From the nth part of its kind on: 2 for second and further mats.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub from_nth: Option<u32>,
    /// Up to the nth part of its kind.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub to_nth: Option<u32>,
    /// With at least so many parts of its kind in the piece.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at_least: Option<u32>,
    /// With at most so many parts of its kind in the piece.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at_most: Option<u32>,
    /// Frames of so many sides.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub sides: Vec<u32>,
    /// Seen from both sides, or not.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub double_sided: Option<bool>,
}

/// What of the whole piece a condition may ask.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Piece {
    pub sides: u32,
    pub double_sided: bool,
    pub level: Option<Level>,
}

impl When {
    /// Whether nothing is asked.
    pub fn is_always(&self) -> bool {
        *self == Self::default()
    }

    /// Whether it holds for a part of a piece.
    pub(crate) fn holds(&self, item: &Item<'_>, piece: Piece) -> bool {
        self.holds_of_material(item)
            && self.holds_of_size(item)
            && among(&self.role, item.role)
            && among(&self.shape, item.shape)
            && among(&self.hold, item.hold)
            && among(&self.hanger, item.hanger)
            && among(&self.level, piece.level)
            && among(&self.sides, Some(piece.sides))
            && self.from_nth.is_none_or(|nth| item.nth >= nth)
            && self.to_nth.is_none_or(|nth| item.nth <= nth)
            && self.at_least.is_none_or(|least| item.of >= least)
            && self.at_most.is_none_or(|most| item.of <= most)
            && self
                .double_sided
                .is_none_or(|double| double == piece.double_sided)
    }

    fn holds_of_material(&self, item: &Item<'_>) -> bool {
        let material = item.material;
        let class = material.and_then(|material| material.class.as_ref());
        self.has_material
            .is_none_or(|has| has == material.is_some())
            && (self.material.is_empty()
                || material.is_some_and(|material| self.material.contains(&material.code)))
            && (self.class.is_empty() || class.is_some_and(|class| self.class.contains(class)))
            && among(
                &self.coating,
                material.and_then(|material| material.coating),
            )
            && self
                .pane
                .is_none_or(|pane| material.and_then(|material| material.pane) == Some(pane))
    }

    fn holds_of_size(&self, item: &Item<'_>) -> bool {
        let united = item.united();
        let above = |over: Measured| united.is_some_and(|united| united > *over);
        let within = |to: Measured| united.is_some_and(|united| united <= *to);
        self.over.is_none_or(above) && self.to.is_none_or(within)
    }

    /// Whether some part could meet both.
    pub(crate) fn meets(&self, other: &Self) -> bool {
        shares(&self.material, &other.material)
            && shares(&self.class, &other.class)
            && shares(&self.coating, &other.coating)
            && shares(&self.role, &other.role)
            && shares(&self.shape, &other.shape)
            && shares(&self.hold, &other.hold)
            && shares(&self.hanger, &other.hanger)
            && shares(&self.level, &other.level)
            && shares(&self.sides, &other.sides)
            && agree(self.pane, other.pane)
            && agree(self.has_material, other.has_material)
            && agree(self.double_sided, other.double_sided)
            && apart(self.over, other.to)
            && apart(other.over, self.to)
            && in_order(self.from_nth, other.to_nth)
            && in_order(other.from_nth, self.to_nth)
            && in_order(self.at_least, other.at_most)
            && in_order(other.at_least, self.at_most)
            && in_order(self.from_nth, other.at_most)
            && in_order(other.from_nth, self.at_most)
    }

    /// Whether some part could meet it at all.
    pub(crate) fn can_hold(&self) -> bool {
        self.meets(self)
            && self.to_nth != Some(0)
            && self.at_most != Some(0)
            && self.to.is_none_or(|to| to.is_positive())
            && !(self.has_material == Some(false) && self.asks_of_material())
    }

    /// Whether a part of this kind has what is asked for: only a frame has a role, only a mat a shape.
    pub(crate) fn suits(&self, part: Part) -> bool {
        let asks = [
            (
                self.role.is_empty(),
                matches!(part, Part::Frame | Part::Joining),
            ),
            (
                self.shape.is_empty(),
                matches!(part, Part::Mat | Part::Opening),
            ),
            (self.hold.is_empty(), part == Part::Attachment),
            (self.hanger.is_empty(), part == Part::Hanging),
            (
                !self.asks_of_material() && self.has_material != Some(true),
                part.names_material(),
            ),
        ];
        asks.into_iter().all(|(nothing, has)| nothing || has)
    }

    fn asks_of_material(&self) -> bool {
        !(self.material.is_empty() && self.class.is_empty() && self.coating.is_empty())
            || self.pane.is_some()
    }
}

fn among<T: PartialEq>(list: &[T], own: Option<T>) -> bool {
    list.is_empty() || own.is_some_and(|own| list.contains(&own))
}

fn shares<T: PartialEq>(one: &[T], other: &[T]) -> bool {
    one.is_empty() || other.is_empty() || one.iter().any(|own| other.contains(own))
}

fn agree<T: PartialEq>(one: Option<T>, other: Option<T>) -> bool {
    match (one, other) {
        (Some(one), Some(other)) => one == other,
        _ => true,
    }
}

/// Whether something lies above `over` and not above `to`.
fn apart(over: Option<Measured>, to: Option<Measured>) -> bool {
    over.zip(to).is_none_or(|(over, to)| over < to)
}

/// Whether something lies from `from` to `to`.
fn in_order(from: Option<u32>, to: Option<u32>) -> bool {
    from.zip(to).is_none_or(|(from, to)| from <= to)
}
