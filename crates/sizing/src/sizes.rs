//! All sizes of a piece.

use std::sync::Arc;

use measure::{Area, Length, Size, Tape, Unit};
use trade::{Key, Material, Settings, Units};
use working::{Worked, Working};

use crate::art::ArtSizes;
use crate::bill::BillLine;
use crate::borders::BorderSizes;
use crate::fault::{Fault, Severity};
use crate::frame::MemberSizes;
use crate::hold::{HangerMarks, HingeMarks};
use crate::mat::{MatSizes, SpacerSizes};
use crate::package::{SinkSizes, StrainerSizes, WallSizes, WrapSizes};
use crate::setup::Setup;
use crate::sheets::{GlazingSizes, SheetSizes};
use crate::trace::WorkedSize;
use crate::turn::across_flats_side_nearest;
use crate::window::Window;

/// Everything that is derived from a job.
///
/// Shape:  front view, width before height; members outside in; layers front to back.
#[derive(Clone, Debug)]
pub struct Sizes {
    /// The units the job speaks in.
    pub units: Units,
    /// Sides of the frame; with other than four, sizes are across the flats.
    pub sides: u32,
    /// Whether everything before the art is repeated behind it.
    pub double_sided: bool,
    /// Art as measured.
    pub art: Vec<ArtSizes>,
    /// For each opening, the art seen through it; none where it is empty on purpose.
    pub opening_art: Vec<Option<usize>>,
    /// Borders of the outermost mat.
    pub borders: Option<BorderSizes>,
    /// Mats, front to back.
    pub mats: Vec<MatSizes>,
    /// What goes into the innermost member's rabbet.
    pub package: WorkedSize,
    /// Outside of the outermost member.
    pub outside: WorkedSize,
    /// Spacers behind the glazing.
    pub spacer: Option<SpacerSizes>,
    /// Walls of a shadowbox.
    pub walls: Option<WallSizes>,
    /// What the walls are cut from.
    pub wall_material: Option<Arc<Material>>,
    /// Board built up round thick art.
    pub sink: Option<SinkSizes>,
    /// Stiffening frame in the back.
    pub strainer: Option<StrainerSizes>,
    /// Board and cloth under a textile.
    pub wrap: Option<WrapSizes>,
    /// Frame members, outside in.
    pub members: Vec<MemberSizes>,
    /// Glazing, front to back.
    pub glazing: Vec<GlazingSizes>,
    /// The mount.
    pub mount: Option<SheetSizes>,
    /// Backing, front to back.
    pub backing: Vec<SheetSizes>,
    /// Air between glazing and the nearest art.
    pub air: Option<Worked<Length>>,
    /// Hinges.
    pub hinges: Option<HingeMarks>,
    /// Hangers.
    pub hangers: Option<HangerMarks>,
    /// The dust cover as trimmed.
    pub cover: Option<WorkedSize>,
    /// Mat cutter settings, in cutting order.
    pub setups: Vec<Setup>,
    /// Every part to cut.
    pub bill: Vec<BillLine>,
    /// What is wrong, the worst first.
    pub faults: Vec<Fault>,
    /// The settings it was derived with.
    pub settings: Settings,
    /// Why every size is what it is.
    pub working: Working,
}

impl Sizes {
    /// Whether a fault stops the piece.
    pub fn is_refused(&self) -> bool {
        self.faults
            .iter()
            .any(|fault| fault.severity == Severity::Refuse)
    }

    /// Whether every rectangle has some size, so that the piece can be drawn.
    pub fn can_be_drawn(&self) -> bool {
        let windows = self.mats.iter().flat_map(|mat| &mat.windows);
        let members = self.members.iter().flat_map(MemberSizes::rectangles);
        windows
            .map(Window::edge)
            .chain(members)
            .chain(self.strainer.map(|strainer| strainer.inner))
            .chain(self.wrap.map(|wrap| wrap.board))
            .chain([self.package])
            .all(|size| size.least().is_positive())
    }

    /// The unit sentences and tables speak in first.
    pub fn unit(&self) -> Unit {
        self.units.unit()
    }

    /// The tape that sizes are printed for.
    pub fn tape(&self) -> Tape {
        match self.settings.choice(Key::PrintTape) {
            "1/8 in" => Tape::Eighths,
            "1/32 in" => Tape::ThirtySeconds,
            "1/64 in" => Tape::SixtyFourths,
            "0.5 mm" => Tape::HalfMillimetre,
            "1 mm" => Tape::Millimetre,
            _ => Tape::Sixteenths,
        }
    }

    /// Area of a sheet of this size in the piece's shape, to the nearest square quantum.
    pub fn shape_area(&self, size: Size) -> Area {
        if self.sides == 4 {
            // geometry: a rectangle
            return size.area();
        }
        // A regular polygon: half its perimeter times half its width across the flats.
        let edge = across_flats_side_nearest(size.width, self.sides);
        let doubled = edge.times(i64::from(self.sides)).half_down();
        Size::new(doubled, size.width.half_down()).area()
    }

    /// The sight the customer looks through: the innermost member's, inside its fillet.
    pub fn seen(&self) -> WorkedSize {
        let innermost = self.members.last();
        innermost
            .and_then(|member| {
                member
                    .fillet
                    .as_ref()
                    .map(|fillet| fillet.sight)
                    .or(member.sight)
            })
            .unwrap_or(self.package)
    }
}
