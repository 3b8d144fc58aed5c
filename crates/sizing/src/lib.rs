//! Sizing: from one description of a job to every size of the piece, each with its reason.
//!
//! [`derive()`] is the one derivation. Previews, prices, tickets, cut lists and warnings read the
//! [`Sizes`] it returns; none of them works out a size again.
#![deny(
    clippy::float_arithmetic,
    clippy::as_conversions,
    clippy::integer_division
)]

mod art;
mod bill;
mod borders;
mod brief;
mod checks;
mod fault;
mod frame;
mod hold;
mod largest;
mod mat;
#[allow(
    clippy::float_arithmetic,
    reason = "curves and slopes; each function names its rounding"
)]
mod outline;
mod package;
mod setup;
mod sheets;
mod sizes;
mod stack;
mod steps;
mod trace;
#[allow(
    clippy::float_arithmetic,
    reason = "angles; each function names its rounding"
)]
mod turn;
mod window;

#[cfg(test)]
mod tests;

use measure::Length;
use trade::{Catalogue, Job, Settings};
use working::{Worked, Working};

pub use art::ArtSizes;
pub use bill::{BillLine, Takes};
pub use borders::{BorderSizes, Sides};
pub use fault::{Fault, Severity};
pub use frame::{ChargeStep, FloaterSizes, FrameFilletSizes, Leg, Legs, MemberSizes, StickUse};
pub use hold::{
    HangerMarks, HingeMarks, WireMarks, grammage, hinge_count, hinge_spacing, hook_below_top,
    hooks_apart,
};
pub use largest::{Largest, largest_art};
pub use mat::{FilletUse, MatSizes, SpacerSizes};
pub use outline::{Misfit, Outline};
pub use package::{SinkSizes, StrainerSizes, WallSizes, WrapSizes};
pub use setup::{BackSide, Cut, Cuts, Setup};
pub use sheets::{GlazingSizes, SheetSizes};
pub use sizes::Sizes;
pub use stack::{LayerKind, Stack, StackLayer};
pub use steps::{Step, minutes, steps};
pub use trace::{Fact, WorkedSize};
pub use window::{Window, WindowFillet};

use brief::Brief;
use window::Placed;

/// Derives every size of `job`.
///
/// Shape:  front view, width before height; members outside in; layers front to back.
/// Units:  exact; nothing is rounded but where a rule names its rounding.
/// Errors: everything that is missing or unknown, together. Faults that sizes reveal do not stop
///         the derivation: they come with it, in [`Sizes::faults`].
pub fn derive(job: &Job, catalogue: &Catalogue, shop: &Settings) -> Result<Sizes, Vec<Fault>> {
    let brief = Brief::of(job, catalogue, shop)?;
    let mut working = Working::with_capacity(USUAL_LINES, USUAL_LINES * 2);
    let mut faults = Vec::new();
    let sizes = piece(&brief, &mut working, &mut faults);
    let mut sizes = Sizes { working, ..sizes };
    if let Some(fault) = checks::beyond_holding(&brief, &sizes) {
        return Err(vec![fault]);
    }
    sizes.bill = bill::bill(&sizes);
    checks::check(&brief, &sizes, &mut faults);
    faults.sort_by_key(|fault| std::cmp::Reverse(fault.severity));
    sizes.faults = faults;
    Ok(sizes)
}

/// Lines of working an ordinary matted piece takes.
const USUAL_LINES: usize = 128; // geometry: a first guess, grown as needed

fn piece(brief: &Brief<'_>, working: &mut Working, faults: &mut Vec<Fault>) -> Sizes {
    let art = art::measure(brief.job, working);
    let lip_cover = frame::lip_cover(brief, working);
    let faces = frame::faces(brief, working);
    let given = frame::package_of(brief, &faces, working);
    let slopes = window::slopes(brief, working);
    let (package, wrap, placed) = package(brief, &art, &slopes, lip_cover, given, working, faults);
    let walls = package::walls(brief, &art, package, working);
    let mut members = frame::members(brief, package, &faces, lip_cover, working);
    let contents: Vec<WorkedSize> = members.iter().map(|member| member.contents).collect();
    let glazing = sheets::glazing(brief, &contents, working);
    let sheets = sheets::mats(brief, package, working);
    stack::fill(brief, &mut members, walls.as_ref(), working);
    let air = stack::air(brief, walls.as_ref(), working);
    let (borders, windows) = placed.map_or((None, Vec::new()), |placed| {
        (Some(placed.borders), placed.mats)
    });
    let setups = setup::setups(brief, &windows, &slopes, working);
    let mats = mat::mats(brief, sheets, windows, &slopes, working);
    let hangers = hold::hangers(brief, &members, working);
    let outside = members.first().map_or(package, |member| member.outside);
    Sizes {
        units: brief.job.units,
        sides: brief.job.sides,
        double_sided: brief.job.double_sided,
        spacer: mat::spacer(brief, package, working),
        hinges: hold::hinges(brief, &art, working),
        sink: package::sink(brief, &art, working),
        strainer: package::strainer(brief, package, working),
        cover: hold::cover(brief, outside, working),
        hangers,
        opening_art: brief.openings.iter().map(|opening| opening.art).collect(),
        art,
        borders,
        mats,
        package,
        outside,
        walls,
        wall_material: brief.wall_material(),
        wrap,
        members,
        glazing,
        mount: sheets::mount(brief, package, working),
        backing: sheets::backing(brief, package, working),
        air,
        setups,
        settings: brief.settings.clone(),
        bill: Vec::new(),
        faults: Vec::new(),
        working: Working::new(),
    }
}

/// What goes into the frame: its size, the board that cloth is wrapped round, and the windows
/// placed in it; `given` is that size where the job states it.
fn package(
    brief: &Brief<'_>,
    art: &[ArtSizes],
    slopes: &[Worked<Length>],
    lip_cover: Option<Worked<Length>>,
    given: Option<WorkedSize>,
    working: &mut Working,
    faults: &mut Vec<Fault>,
) -> (WorkedSize, Option<WrapSizes>, Option<Placed>) {
    if brief.mats.is_empty() {
        let (package, wrap) = match given {
            Some(given) => (given, package::wrap_in(brief, given, working)),
            None => package::without_mats(brief, art, working),
        };
        return (package, wrap, None);
    }
    let placed = window::place(brief, art, slopes, lip_cover, given, working, faults);
    let wrap = package::wrap_in(brief, placed.package, working);
    (placed.package, wrap, Some(placed))
}

/// A length that must be above zero to be cut.
pub(crate) fn is_size(length: Length) -> bool {
    length.is_positive()
}
