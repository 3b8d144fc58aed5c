//! The other way round: the largest art that a given size and the borders leave room for.

use measure::{Length, Size};
use trade::{Catalogue, Job, Measured, Settings};
use working::{Axis, Given, Rule, Subject, Working};

use crate::brief::Brief;
use crate::derive;
use crate::fault::Fault;
use crate::frame;
use crate::sizes::Sizes;
use crate::trace::{WorkedSize, along, both, geometry};

static LARGEST: Rule = geometry(
    "largest.art",
    "art may grow by what the given package exceeds the package of a trial piece, shared among the \
     windows it fills",
    "art = trial + down((given - package) ÷ times)",
);

/// How often a trial is repeated: a second one when the first crosses a size at which the shop's
/// habits change (large art is covered more), a third to confirm.
const TRIALS: usize = 3; // geometry: trials until habits settle

/// The largest art that fits, with its working.
#[derive(Clone, Debug)]
pub struct Largest {
    /// Width and height.
    pub art: WorkedSize,
    /// Why.
    pub working: Working,
}

/// The largest art that the job's given size (`[fit]`) and borders leave room for.
///
/// Shape:  found from trial pieces worked forwards by [`derive()`], so it is the exact inverse of
///         whatever the job composes; the art sizes the job states are not read.
/// Units:  exact; a remainder smaller than a quantum for each window is left over.
/// Errors: what is missing or unknown, a job that gives no size to fit, several pieces of art, and
///         windows that are stated and so leave the art no say.
pub fn largest_art(
    job: &Job,
    catalogue: &Catalogue,
    shop: &Settings,
) -> Result<Largest, Vec<Fault>> {
    let brief = Brief::of(job, catalogue, shop)?;
    let mut own = Working::new();
    let faces = frame::faces(&brief, &mut own);
    let Some(given) = frame::package_of(&brief, &faces, &mut own) else {
        return Err(vec![no_fit()]);
    };
    if job.art.len() > 1 {
        return Err(vec![several(job.art.len())]);
    }
    let mut size = given.size();
    let mut found = None;
    for _ in 0..TRIALS {
        let largest = from_trial(&brief, size, catalogue, shop)?;
        let next = largest.art.size();
        found = Some(largest);
        if next == size || !next.short_side().is_positive() {
            break;
        }
        size = next;
    }
    let found = found.ok_or_else(Vec::new)?;
    if found.art.least().is_positive() {
        return Ok(found);
    }
    Err(vec![none_left(&brief, found.art.size())])
}

/// Works a trial piece forwards and grows its art into the given package.
fn from_trial(
    brief: &Brief<'_>,
    size: Size,
    catalogue: &Catalogue,
    shop: &Settings,
) -> Result<Largest, Vec<Fault>> {
    let trial = trial(brief.job, size, catalogue, shop)?;
    let larger = trial_package(
        &trial_at(brief.job, size.grow(Length::INCH)),
        catalogue,
        shop,
    )?;
    let step = Length::INCH.twice();
    let times = |axis| {
        let grown = along(larger, axis) - along(trial.package.size(), axis);
        grown.quanta().div_euclid(step.quanta())
    };
    let (across, down) = (times(Axis::Width), times(Axis::Height));
    if across < 1 || down < 1 {
        return Err(vec![stated_windows()]);
    }
    let package = trial.package;
    let mut working = trial.working;
    let faces = frame::faces(brief, &mut working);
    let Some(given) = frame::package_of(brief, &faces, &mut working) else {
        return Err(vec![no_fit()]);
    };
    let grown = |axis, times: i64| {
        let spare = along(given.size(), axis) - package.along(axis).value;
        along(size, axis) + Length::from_quanta(spare.quanta().div_euclid(times))
    };
    let art = Size::new(grown(Axis::Width, across), grown(Axis::Height, down));
    let art = both(
        &mut working,
        &LARGEST,
        Subject::of("art", "largest"),
        art,
        |axis| {
            let times = if axis == Axis::Width { across } else { down };
            [
                ("trial", Given::job(along(size, axis))),
                ("given", given.along(axis).into()),
                ("package", package.along(axis).into()),
                ("times", Given::job(times)),
            ]
        },
    );
    Ok(Largest { art, working })
}

/// The job without its given size, its one piece of art square and of this size.
fn trial_at(job: &Job, size: Size) -> Job {
    let mut trial = job.clone();
    trial.fit = None;
    for art in &mut trial.art {
        art.width = Measured(size.width);
        art.height = Some(Measured(size.height));
        art.width_readings.clear();
        art.height_readings.clear();
        (art.sheet, art.deckle, art.diagonals, art.orientation) = (None, None, None, None);
    }
    if let Some(walls) = &mut trial.walls {
        walls.display = None;
    }
    trial
}

fn trial(
    job: &Job,
    size: Size,
    catalogue: &Catalogue,
    shop: &Settings,
) -> Result<Sizes, Vec<Fault>> {
    derive(&trial_at(job, size), catalogue, shop)
}

fn trial_package(job: &Job, catalogue: &Catalogue, shop: &Settings) -> Result<Size, Vec<Fault>> {
    derive(job, catalogue, shop).map(|sizes| sizes.package.size())
}

fn no_fit() -> Fault {
    Fault::refuse(
        "largest.no_fit",
        "Job",
        "it gives no size to fit",
        "the largest art is found from a frame, a package, a sight or an outside",
        "Write `[fit]` and in it `rabbet = \"16 x 20\"` (or `outside`, `sight`, `package`)",
    )
}

fn several(count: usize) -> Fault {
    Fault::refuse(
        "largest.several",
        "Art",
        format!("there are {count} pieces"),
        "the largest art is found for one piece (in one window or several alike)",
        "Keep one [[art]] table, and let every opening show it",
    )
}

fn stated_windows() -> Fault {
    Fault::refuse(
        "largest.stated",
        "Openings",
        "their windows are stated, so the frame's size says nothing of the art",
        "",
        "Take `window` out of the [[opening]] tables, or read the largest art off the window",
    )
}

fn none_left(brief: &Brief<'_>, size: Size) -> Fault {
    Fault::refuse(
        "largest.none",
        "Job",
        format!(
            "{} × {} is left for art",
            brief.say(size.width),
            brief.say(size.height)
        ),
        "it must be above zero",
        "Narrow the borders, or give a larger size to fit",
    )
}
