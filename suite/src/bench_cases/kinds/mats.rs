//! Windows: seen from the back, through the board, and arched.

use measure::{Length, Size};
use sizing::{MatSizes, Sizes, Window};
use trade::{Catalogue, Measured, Opening, Shape};

use super::super::arch::{self, Arch};
use super::super::compare::{Answers, Found};
use super::super::piece;
use super::super::row::Row;
use super::named;

/// One opening, seen from the back.
pub(super) fn mirror_cut(row: &Row, catalogue: &Catalogue) -> Result<Answers, String> {
    let openings = [(row.length("open_left")?, row.length("open_w")?)];
    let lefts = lefts_from_back(row.length("board_w")?, &openings, catalogue)?;
    let left = lefts.first().ok_or("the mat has no window")?;
    Ok(named([("open_left_from_back", Found::Length(*left))]))
}

/// Several openings, seen from the back.
pub(super) fn mirror_cut_row(row: &Row, catalogue: &Catalogue) -> Result<Answers, String> {
    let (lefts, widths) = (row.lengths("lefts")?, row.lengths("widths")?);
    if lefts.len() != widths.len() {
        return Err(format!(
            "there are {} lefts and {} widths",
            lefts.len(),
            widths.len()
        ));
    }
    let openings: Vec<(Length, Length)> = lefts.into_iter().zip(widths).collect();
    let mut lefts = lefts_from_back(row.length("board_w")?, &openings, catalogue)?;
    lefts.sort_unstable();
    Ok(named([(
        "lefts_from_back_left_to_right",
        Found::Lengths(lefts),
    )]))
}

/// Left edges from the back, in the order of the openings.
fn lefts_from_back(
    board: Length,
    openings: &[(Length, Length)],
    catalogue: &Catalogue,
) -> Result<Vec<Length>, String> {
    let sizes = piece::sizes(&piece::pierced(board, openings), catalogue)?;
    let mat = only_mat(&sizes)?;
    let asked = |&(left, width): &(Length, Length)| {
        let found = mat
            .windows
            .iter()
            .find(|window| (window.x.value, window.face.width.value) == (left, width));
        let window = found.ok_or("an opening has no window where it was put")?;
        Ok(window.back_x().value)
    };
    openings.iter().map(asked).collect()
}

/// A bevel through a board.
pub(super) fn bevel(row: &Row, catalogue: &Catalogue) -> Result<Answers, String> {
    let (thickness, window) = (row.length("ply_t")?, row.length("window")?);
    let mut job = piece::matted(thickness, piece::window(Size::square(window)));
    if let Some(angle) = row.find("bevel_deg") {
        piece::set(&mut job, "mat.bevel", angle);
    }
    let sizes = piece::sizes(&job, catalogue)?;
    let mat = only_mat(&sizes)?;
    let window = only_window(mat)?;
    let (face, foot) = (window.face.width.value, window.foot.width.value);
    let seen = (face - foot).half_down();
    // The core runs from face to foot through the board that was sized.
    let slope = mat.sheet.thickness.approx_mm().hypot(seen.approx_mm());
    let slope = Length::nearest_from_mm(slope).ok_or("the board is past every limit")?;
    Ok(named([
        ("foot", Found::Length(foot)),
        ("core_seen_plan", Found::Length(seen)),
        ("core_on_slope", Found::Nearest(slope)),
    ]))
}

/// A window under a half circle.
pub(super) fn round_arch(row: &Row, catalogue: &Catalogue) -> Result<Answers, String> {
    let opening = Opening {
        shape: Shape::RoundArch,
        ..piece::window(Size::new(row.length("width")?, row.length("height")?))
    };
    let arch = measured_arch(opening, catalogue)?;
    Ok(named([
        ("radius", Found::Nearest(arch.radius)),
        ("straight_side", Found::Length(arch.straight_side)),
    ]))
}

/// A window under a flatter arc; how high it is does not change the arc.
pub(super) fn low_arch(row: &Row, catalogue: &Catalogue) -> Result<Answers, String> {
    let (width, rise) = (row.length("width")?, row.length("rise")?);
    let stated = row.find("height").map(|_| row.length("height"));
    let height = stated.clone().unwrap_or(Ok(width + rise))?;
    let opening = Opening {
        shape: Shape::LowArch,
        rise: Some(Measured(rise)),
        ..piece::window(Size::new(width, height))
    };
    let arch = measured_arch(opening, catalogue)?;
    let mut answers = named([("radius", Found::Nearest(arch.radius))]);
    if stated.is_some() {
        let side = Found::Length(arch.straight_side);
        answers.insert("straight_side".to_owned(), side);
    }
    Ok(answers)
}

fn measured_arch(opening: Opening, catalogue: &Catalogue) -> Result<Arch, String> {
    let sizes = piece::sizes(&piece::matted(piece::BOARD, opening), catalogue)?;
    let window = only_window(only_mat(&sizes)?)?;
    arch::measure(&window.outline, window.face.size())
}

fn only_mat(sizes: &Sizes) -> Result<&MatSizes, String> {
    match sizes.mats.as_slice() {
        [mat] => Ok(mat),
        mats => Err(format!("the piece has {} mats instead of one", mats.len())),
    }
}

fn only_window(mat: &MatSizes) -> Result<&Window, String> {
    match mat.windows.as_slice() {
        [window] => Ok(window),
        windows => Err(format!(
            "the mat has {} windows instead of one",
            windows.len()
        )),
    }
}
