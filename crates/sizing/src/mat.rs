//! Mats as cut: outer size, windows, colour seen, fillets; and the spacers behind the glazing.

use std::sync::Arc;

use measure::Length;
use trade::{Bevel, Material};
use working::{Rule, Subject, Worked, Working};

use crate::brief::Brief;
use crate::frame::{StickUse, strip};
use crate::sheets::SheetSizes;
use crate::trace::{WorkedSize, geometry};
use crate::window::{Window, reveal_seen};

static SPACER_LENGTH: Rule = geometry(
    "spacer.length",
    "spacers run round the package's edge",
    "length = 2 × (width + height)",
);

/// A mat, sized.
#[derive(Clone, Debug)]
pub struct MatSizes {
    /// The board as cut.
    pub sheet: SheetSizes,
    /// Its colour, where the job says another than the catalogue's.
    pub colour: Option<String>,
    /// How its windows are cut.
    pub bevel: Bevel,
    /// How far the bevel runs in plan.
    pub slope: Worked<Length>,
    /// Its windows.
    pub windows: Vec<Window>,
    /// Colour seen of the mat below, inside this one's bevel; none on the mat nearest the art.
    pub reveal_seen: Option<Worked<Length>>,
    /// A groove this far outside the windows.
    pub groove: Option<Length>,
    /// One fillet for each window, where there are fillets.
    pub fillets: Vec<FilletUse>,
}

/// What a mat window's fillet takes.
#[derive(Clone, Debug)]
pub struct FilletUse {
    /// Its material, where it has a catalogue code.
    pub material: Option<Arc<Material>>,
    /// Long points, width and height.
    pub long: WorkedSize,
    /// The strip it takes.
    pub stick: StickUse,
    /// Width seen.
    pub face: Length,
    /// Width hidden.
    pub tuck: Length,
    /// Thickness behind the mat.
    pub thickness: Length,
}

/// Spacers, sized.
#[derive(Clone, Debug)]
pub struct SpacerSizes {
    /// Their material, where it has a catalogue code.
    pub material: Option<Arc<Material>>,
    /// Width seen from the front, where it is known.
    pub width: Option<Length>,
    /// Front to back.
    pub thickness: Length,
    /// In all.
    pub length: Length,
}

/// Puts boards and windows together.
pub(crate) fn mats(
    brief: &Brief<'_>,
    sheets: Vec<SheetSizes>,
    windows: Vec<Vec<Window>>,
    slopes: &[Worked<Length>],
    working: &mut Working,
) -> Vec<MatSizes> {
    let last = brief.mats.len().saturating_sub(1);
    sheets
        .into_iter()
        .zip(windows)
        .enumerate()
        .map(|(i, (sheet, windows))| {
            let own = &brief.mats[i];
            MatSizes {
                sheet,
                colour: own.mat.colour.clone(),
                bevel: own.mat.bevel,
                slope: slopes[i],
                reveal_seen: (i < last).then(|| reveal_seen(brief, i, slopes[i], working)),
                groove: own.mat.groove.map(|groove| *groove),
                fillets: fillets(brief, i, &windows, working),
                windows,
            }
        })
        .collect()
}

fn fillets(
    brief: &Brief<'_>,
    mat: usize,
    windows: &[Window],
    working: &mut Working,
) -> Vec<FilletUse> {
    let Some(own) = &brief.mats[mat].fillet else {
        return Vec::new();
    };
    windows
        .iter()
        .enumerate()
        .filter_map(|(w, window)| window.fillet.map(|fillet| (w, fillet)))
        .map(|(w, fillet)| {
            let subject = |quantity| Subject::nth("mat", mat, quantity).within("window", w);
            let subjects = [subject("fillet_length"), subject("fillet_one_stick")];
            FilletUse {
                material: own.material.clone(),
                long: fillet.long,
                stick: strip(
                    brief,
                    (subjects, fillet.long),
                    own.material.as_ref(),
                    working,
                ),
                face: own.face.value,
                tuck: own.tuck.value,
                thickness: own.thickness.value,
            }
        })
        .collect()
}

/// The spacers of the piece, where there are any.
pub(crate) fn spacer(
    brief: &Brief<'_>,
    package: WorkedSize,
    working: &mut Working,
) -> Option<SpacerSizes> {
    let own = brief.spacer.as_ref()?;
    let inputs = [
        ("width", package.width.into()),
        ("height", package.height.into()),
    ];
    let value = package.size().united().twice();
    let length = working.by(
        &SPACER_LENGTH,
        Subject::of("spacer", "length"),
        &inputs,
        value,
    );
    Some(SpacerSizes {
        material: own.material.clone(),
        width: own.width.map(|width| width.value),
        thickness: own.thickness.value,
        length: length.value,
    })
}
