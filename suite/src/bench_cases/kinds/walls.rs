//! Hanging: the wire's pull, the nail, a row.

use hanging::{Hang, NailPlan, RowPlan, Stated, nail, row as place_row, wire_run};
use measure::Length;
use trade::Catalogue;
use working::{Worked, Working};

use super::super::compare::{Answers, Found};
use super::super::piece::comes_out;
use super::super::row::Row;
use super::named;

/// Angle, pull and length of a wire.
pub(super) fn wire_tension(row: &Row, _: &Catalogue) -> Result<Answers, String> {
    let weight = match row.find("weight_kg") {
        Some(_) => row.mass("weight_kg", "kg"),
        None => row.mass("weight_lb", "lb"),
    };
    let hooks = row.find("hooks_apart").map(|_| row.length("hooks_apart"));
    let hang = Hang {
        weight: Stated::job(weight?),
        rings_apart: stated(row, "rings_apart")?,
        rise: stated(row, "rise")?,
        hooks_apart: hooks.transpose()?.map(Stated::job),
    };
    let mut working = Working::new();
    let run = wire_run(&hang, &mut working).map_err(|refusal| refusal.to_string())?;
    comes_out(&working)?;
    Ok(named([
        ("angle_deg", Found::Angle(run.angle.value)),
        ("tension_lb", Found::Pounds(run.tension.value)),
        ("tension_kg", Found::Kilograms(run.tension.value)),
        (
            "wire_between_rings",
            Found::Nearest(run.between_rings.value),
        ),
    ]))
}

/// Where the nail goes.
pub(super) fn nail_height(row: &Row, _: &Catalogue) -> Result<Answers, String> {
    let plan = NailPlan {
        centre: stated(row, "centre_above_floor")?,
        outside_height: stated(row, "outside_h")?,
        ring_drop: stated(row, "ring_below_top")?,
        rise: stated(row, "rise")?,
        seat_to_nail: stated(row, "hook_seat_to_nail")?,
    };
    let mut working = Working::new();
    let nail = nail(&plan, &mut working).map_err(|refusal| refusal.to_string())?;
    comes_out(&working)?;
    Ok(named([
        (
            "seat_below_frame_top",
            Found::Length(nail.seat_below_top.value),
        ),
        (
            "seat_above_floor",
            Found::Length(nail.seat_above_floor.value),
        ),
        ("nail_above_floor", Found::Length(nail.above_floor.value)),
    ]))
}

/// A row of frames on a wall.
pub(super) fn wall_row(row: &Row, _: &Catalogue) -> Result<Answers, String> {
    let frames = row.lengths("frames")?;
    let plan = RowPlan {
        wall: stated(row, "wall_w")?,
        frames: frames.into_iter().map(Stated::job).collect(),
        gap: stated(row, "gap")?,
    };
    let mut working = Working::new();
    let placed = place_row(&plan, &mut working).map_err(|refusal| refusal.to_string())?;
    comes_out(&working)?;
    let lengths = |places: &[Worked<Length>]| {
        Found::Lengths(places.iter().map(|place| place.value).collect())
    };
    Ok(named([
        ("row_w", Found::Length(placed.width.value)),
        ("left_edges", lengths(&placed.lefts)),
        ("centres", lengths(&placed.centres)),
    ]))
}

fn stated(row: &Row, name: &str) -> Result<Stated<Length>, String> {
    row.length(name).map(Stated::job)
}
