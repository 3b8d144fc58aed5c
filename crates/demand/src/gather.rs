//! From derived packages to loose parts, ware by ware.

mod sheets;
mod sticks;

use std::collections::BTreeMap;
use std::sync::Arc;

use measure::{Angle, Length, Size, Unit};
use sizing::Sizes;
use trade::{Catalogue, Kind, Material, Settings};

use crate::fallout::Usable;
use crate::part::{Panel, Strip, Unplanned};
use crate::ware::{Ware, WareKind};

/// All parts of one ware.
#[derive(Debug, Default)]
pub(crate) struct Heap {
    /// What the catalogue or the job says of it.
    pub material: Option<Arc<Material>>,
    /// Longest stick at hand, where a job or the shop says it.
    pub stick: Option<Length>,
    pub rails: Vec<LooseRails>,
    pub panels: Vec<Panel>,
}

/// Strips that make one frame, fillet or ring, not yet bundled.
///
/// Shape:  equal neighbours stand side by side: left, right, top, bottom.
#[derive(Clone, Debug)]
pub(crate) struct LooseRails {
    pub job: usize,
    pub part: String,
    pub strips: Vec<Strip>,
    /// Whether they must match.
    pub matched: bool,
    pub slant: Slant,
}

/// How the ends of a strip are cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Slant {
    /// Straight across.
    Square,
    /// At this gauge and tilt of the blade.
    Mitred(Angle, Angle),
}

impl Slant {
    /// The mitre of a rectangle.
    pub const QUARTER: Self = Self::Mitred(Angle::degrees(45), Angle::ZERO);
}

/// Everything of a day, before it is counted in ticks.
#[derive(Debug)]
pub(crate) struct Gathered {
    pub heaps: BTreeMap<Ware, Heap>,
    pub unplanned: Vec<Unplanned>,
}

/// Gathers the parts of every piece.
pub(crate) fn gather(
    pieces: &[(String, &Sizes)],
    catalogue: &Catalogue,
    settings: &Settings,
) -> Gathered {
    let mut gathered = Gathered {
        heaps: BTreeMap::new(),
        unplanned: Vec::new(),
    };
    for (job, (name, sizes)) in pieces.iter().enumerate() {
        let mut desk = Desk {
            job,
            name,
            sizes,
            catalogue,
            settings,
            usable: Usable::of(settings),
            out: &mut gathered,
        };
        desk.members();
        desk.spacers();
        desk.glazing();
        desk.mats();
        desk.walls();
        desk.back();
        desk.off_the_roll();
    }
    gathered
}

/// Where one piece is taken apart.
struct Desk<'a> {
    job: usize,
    name: &'a str,
    sizes: &'a Sizes,
    catalogue: &'a Catalogue,
    settings: &'a Settings,
    usable: Usable,
    out: &'a mut Gathered,
}

const NO_CODE: &str = "it has no catalogue code, so no stock can be named for it; a part at hand already needs none, any other needs its material written in the job";
const ROLL: &str = "it comes off a roll or bolt, which is not cut up by this plan";
const NO_WIDTH: &str =
    "it is cut from a board and its width is not known; write the spacer's `width` in the job";

impl Desk<'_> {
    fn leave(&mut self, part: impl Into<String>, why: &'static str) {
        self.out.unplanned.push(Unplanned {
            job: self.job,
            part: part.into(),
            why,
        });
    }

    /// The heap of a material, made where there is none yet.
    fn heap(
        &mut self,
        material: &Arc<Material>,
        usual: WareKind,
        colour: Option<&String>,
    ) -> &mut Heap {
        let known = self.catalogue.find(&material.code);
        let own = known != Ok(material);
        let ware = Ware {
            kind: material.kind.and_then(kind_of).unwrap_or(usual),
            code: material.code.clone(),
            colour: colour
                .filter(|colour| material.colour.as_ref() != Some(*colour))
                .cloned(),
            own_to: own.then(|| self.name.to_owned()),
        };
        let heap = self.out.heaps.entry(ware).or_default();
        heap.material.get_or_insert_with(|| Arc::clone(material));
        heap
    }

    fn strainer_heap(&mut self, width: Length, depth: Length) -> &mut Heap {
        let unit = Unit::Inch;
        let ware = Ware {
            kind: WareKind::Strainer,
            code: format!("strainer {}", Size::new(width, depth).exact(unit)),
            colour: None,
            own_to: None,
        };
        self.out.heaps.entry(ware).or_default()
    }

    fn rails(&self, part: String, strips: Vec<Strip>, matched: bool, slant: Slant) -> LooseRails {
        LooseRails {
            job: self.job,
            part,
            strips,
            matched,
            slant,
        }
    }
}

/// The form of stock a kind is cut from; none for what is never cut.
const fn kind_of(kind: Kind) -> Option<WareKind> {
    Some(match kind {
        Kind::Board => WareKind::Board,
        Kind::Backing => WareKind::Backing,
        Kind::Glazing => WareKind::Glazing,
        Kind::Moulding => WareKind::Moulding,
        Kind::Fillet => WareKind::Fillet,
        Kind::Spacer => WareKind::Spacer,
        Kind::Hardware | Kind::Service => return None,
    })
}

/// A part's name, numbered where there are several, as the derivation's bill names it.
fn numbered(name: &str, index: usize, count: usize) -> String {
    if count > 1 {
        format!("{name} {}", index + 1)
    } else {
        name.to_owned()
    }
}

/// What tells the parts before and behind the art apart.
fn faces(double_sided: bool) -> Vec<String> {
    if double_sided {
        vec!["front".to_owned(), "back".to_owned()]
    } else {
        vec![String::new()]
    }
}
