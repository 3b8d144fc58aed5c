//! Frames: sloped sides, and the stick four legs take.

use measure::{Length, Size};
use sizing::MemberSizes;
use trade::{Catalogue, Job, Measured, Turned};

use super::super::compare::{Answers, Found};
use super::super::piece;
use super::super::row::Row;
use super::named;

/// Width across the flats of the frame with sloped sides; the angles do not depend on it.
const ACROSS: Length = Length::inches(12);

/// Mitre gauge and blade tilt of sides that slope.
pub(super) fn sloped_sides(row: &Row, catalogue: &Catalogue) -> Result<Answers, String> {
    let mut job = piece::framed(Size::square(ACROSS));
    job.sides = row.whole("sides")?;
    let tilt = Turned(row.angle("tilt_from_flat_deg")?);
    for member in &mut job.frame {
        member.tilt = Some(tilt);
    }
    let member = only_member(&job, catalogue)?;
    let (gauge, blade) = member.legs.compound.ok_or("the sides do not slope")?;
    Ok(named([
        ("gauge_deg", Found::Angle(gauge.value)),
        ("blade_tilt_deg", Found::Angle(blade.value)),
    ]))
}

/// The stick four legs take, and what is left of it.
pub(super) fn four_legs(row: &Row, catalogue: &Catalogue) -> Result<Answers, String> {
    let outside = Size::new(row.length("outside_w")?, row.length("outside_h")?);
    let mut job = piece::framed(outside);
    job.fit = Some(trade::Fit {
        outside: Some(trade::Pair(outside)),
        ..trade::Fit::default()
    });
    for (input, setting) in [
        ("cut_allow", "moulding.cut_allowance"),
        ("end_trim", "moulding.end_trim"),
    ] {
        piece::set(&mut job, setting, row.text(input)?);
    }
    let stick = row.length("stick")?;
    for member in &mut job.frame {
        member.stick = Some(Measured(stick));
    }
    let member = only_member(&job, catalogue)?;
    if member.outside.size() != outside {
        return Err(format!("the frame came out {}", member.outside.size()));
    }
    let used = member.stick.used.value;
    Ok(named([
        ("used", Found::Length(used)),
        ("left", Found::Length(member.stick.stick - used)),
    ]))
}

fn only_member(job: &Job, catalogue: &Catalogue) -> Result<MemberSizes, String> {
    let mut members = piece::sizes(job, catalogue)?.members;
    match (members.pop(), members.len()) {
        (Some(member), 0) => Ok(member),
        (_, more) => Err(format!("the frame has {more} members too many, or none")),
    }
}
