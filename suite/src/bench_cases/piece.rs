//! Jobs that ask one question of sizing: everything the question does not name is plain and small.

use measure::{Length, Size};
use sizing::{Sizes, derive};
use trade::{
    Arrangement, Art, Catalogue, Fit, Job, Layout, Mat, Measured, Member, Opening, Pair, Settings,
    Units,
};
use working::Working;

/// Face of the frame no question names.
const FACE: Length = Length::inches(1);
/// Its lip.
const LIP: Length = Length::inch_fraction(1, 4);
/// Board of the mat no question names.
pub(super) const BOARD: Length = Length::inch_fraction(1, 16);

/// A piece of art without a mat in a plain frame that leaves it no allowance.
pub(super) fn framed(size: Size) -> Job {
    let mut job = Job::empty(Units::Inches);
    set(&mut job, "limit.largest", "6000 in");
    job.art.push(Art::sized(size.width, size.height));
    job.frame.push(Member {
        face: Some(Measured(FACE)),
        lip: Some(Measured(LIP)),
        allowance: Some(Measured(Length::ZERO)),
        ..Member::default()
    });
    job
}

/// One mat of this thickness over one opening, borders as the shop's habit.
pub(super) fn matted(thickness: Length, opening: Opening) -> Job {
    let window = opening.window.map_or(Size::square(FACE), |window| *window);
    let mut job = framed(window);
    set(&mut job, "mat.window_at", "face");
    job.mat.push(Mat {
        thickness: Some(Measured(thickness)),
        ..Mat::default()
    });
    job.opening.push(opening);
    job
}

/// A board this wide, with openings given by left edge and width.
pub(super) fn pierced(board: Length, openings: &[(Length, Length)]) -> Job {
    let height = FACE;
    let opening = |&(left, width): &(Length, Length)| Opening {
        window: Some(Pair(Size::new(width, height))),
        x: Some(Measured(left)),
        y: Some(Measured(height)),
        empty: true,
        ..Opening::default()
    };
    let mut job = matted(BOARD, Opening::default());
    job.opening = openings.iter().map(opening).collect();
    job.layout = Some(Layout {
        arrange: Arrangement::Free,
        ..Layout::default()
    });
    job.fit = Some(Fit {
        package: Some(Pair(Size::new(board, height * 3))),
        ..Fit::default()
    });
    job
}

/// The opening of a window of this size.
pub(super) fn window(size: Size) -> Opening {
    Opening {
        window: Some(Pair(size)),
        ..Opening::default()
    }
}

/// Lays a setting over the shop's.
pub(super) fn set(job: &mut Job, id: &str, text: &str) {
    job.settings.insert(id.to_owned(), text.to_owned());
}

/// Sizes a job; what makes it hard to build is no matter here.
///
/// Errors: what sizing is missing, in its own sentences; working that does not come out.
pub(super) fn sizes(job: &Job, catalogue: &Catalogue) -> Result<Sizes, String> {
    let sizes = derive(job, catalogue, &Settings::defaults(Units::Inches)).map_err(|faults| {
        let sentences: Vec<String> = faults.iter().map(sizing::Fault::sentence).collect();
        sentences.join("; ")
    })?;
    comes_out(&sizes.working)?;
    Ok(sizes)
}

/// Works every line out again.
///
/// Errors: the lines that don't come out as recorded.
pub(super) fn comes_out(working: &Working) -> Result<(), String> {
    let amiss: Vec<String> = working.recheck().iter().map(ToString::to_string).collect();
    if amiss.is_empty() {
        Ok(())
    } else {
        Err(amiss.join("; "))
    }
}
