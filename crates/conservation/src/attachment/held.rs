//! How a piece is held: how many hinges or corners, of what size, where, under what load.

use measure::Length;
use sizing::{ArtSizes, HingeMarks, Sizes, grammage};
use trade::{Hold, Job, Medium};
use working::{Figure, Given, Rule, Stated, Subject, Worked, Working};

use super::{HingeLoad, Sheet, hinge_is_weakest, hinge_load};
use crate::climate::{damper, paper_across, sheet_change};
use crate::rules::geometry;
use crate::table::Fact;

static PLACE: Rule = geometry(
    "attachment.place",
    "the outer hinges stand in from the corners, the others share the edge between them evenly",
    "place = inset + nearest((edge - 2 × inset) × before ÷ (hinges - 1))",
);

/// How a piece of art is held.
#[derive(Clone, Debug)]
pub struct Held {
    /// The kind of hold.
    pub hold: Hold,
    /// How many hinges or corners; none for holds that are not counted.
    pub count: Option<Worked<i64>>,
    /// Middles of the hinges along the top edge, from the sheet's left edge, seen from the front.
    pub places: Vec<Worked<Length>>,
    /// Width and height of a hinge, mm.
    pub size: Option<[Stated<Figure>; 2]>,
    /// How far a hinge is pasted on the back of the art, and how much of it is left free, mm: the free
    /// strip gives way first.
    pub paste: Option<[Stated<Figure>; 2]>,
    /// What the hinges carry.
    pub load: Option<HingeLoad>,
    /// Whether a hinge is lighter than the art, where the weight of its paper is stated.
    pub gives_first: Option<Worked<bool>>,
    /// For paper: how far it grows across and up in the dampest room, at the most; leave it that room.
    pub grows: Option<[Worked<Length>; 2]>,
    /// The working its numbers stand in, the sizes' own lines first.
    pub working: Working,
}

/// How the first piece of art is held.
///
/// Shape:  none where nobody said how. Corners come four to a sheet; edge strips, stitches and clips are
///         not counted here.
/// Units:  as the fields say; places to the nearest quantum.
/// Errors: none; what can't be worked out for want of a number is left out.
/// Source: hinges M3, M6, M7; the size of corners was found nowhere and is left to the hand.
pub fn held(job: &Job, sizes: &Sizes) -> Option<Held> {
    let attachment = job.attachment.as_ref()?;
    let art = sizes.art.first()?;
    let mut working = sizes.working.clone();
    let hinged = matches!(attachment.hold, Hold::THinge | Hold::VHinge | Hold::SHinge);
    let marks = sizes.hinges.filter(|_| hinged);
    let sheet = of_art(art);
    let facts = |names: [&str; 2]| names.map(|name| Fact::named(name).only());
    let size = Fact::named("hinge.size");
    let grams = grammage(job.art.first(), &sizes.settings);
    let load = marks.and_then(|marks| {
        let count = marks.count.into();
        hinge_load(
            as_figure(grams),
            sheet,
            count,
            &sizes.settings,
            &mut working,
        )
        .ok()
    });
    let gives_first = attachment.grammage.filter(|_| hinged).and_then(|hinge| {
        let hinge = as_figure(Stated::job(i64::from(hinge)));
        hinge_is_weakest(hinge, as_figure(grams), &mut working).ok()
    });
    Some(Held {
        hold: attachment.hold,
        count: match attachment.hold {
            Hold::Corners => Some(corners(&mut working)),
            _ => marks.map(|marks| marks.count),
        },
        places: marks.map_or_else(Vec::new, |marks| places(sheet, &marks, &mut working)),
        size: marks.map(|_| [size.stated(size.low()), size.stated(size.high())]),
        paste: marks.map(|_| facts(["hinge.overlap", "hinge.free"])),
        load,
        gives_first,
        grows: is_paper(job)
            .then(|| grows(sheet, sizes, &mut working))
            .flatten(),
        working,
    })
}

/// A sheet of art at its largest.
pub(crate) fn of_art(art: &ArtSizes) -> Sheet {
    Sheet {
        width: art.largest.width.into(),
        height: art.largest.height.into(),
    }
}

/// How far a sheet of paper grows across and up in the dampest room, its grain whichever way is worse.
pub(crate) fn grows(
    sheet: Sheet,
    sizes: &Sizes,
    working: &mut Working,
) -> Option<[Worked<Length>; 2]> {
    let damper = damper(&sizes.settings, working);
    let [_, damp] = paper_across().damp;
    let [_, warmth] = paper_across().warmth;
    let still = Stated::table("H9", Figure::of(0.0, "K"));
    let mut grow = |length| {
        let damp = (damp, damper.into());
        sheet_change(length, (warmth, still), damp, working).ok()
    };
    Some([grow(sheet.width)?, grow(sheet.height)?])
}

static CORNERS: Rule = geometry(
    "attachment.corners",
    "a sheet has four corners",
    "corners = sheet",
);

fn corners(working: &mut Working) -> Worked<i64> {
    let four = 4_i64; // geometry: corners of a rectangle
    let inputs = [("sheet", Given::table("M5", four))];
    working.by(
        &CORNERS,
        Subject::of("attachment", "corners"),
        &inputs,
        four,
    )
}

/// The middles of the hinges, from the sheet's left edge.
fn places(sheet: Sheet, marks: &HingeMarks, working: &mut Working) -> Vec<Worked<Length>> {
    let (edge, inset, count) = (sheet.width, marks.inset, marks.count);
    let between = (edge.value - inset.value.twice()).or_zero();
    let parts = (count.value - 1).max(1);
    let each = (0..count.value).map(|before| {
        let inputs = [
            ("inset", inset.into()),
            ("edge", edge.into()),
            ("before", Given::job(before)),
            ("hinges", count.into()),
        ];
        let along = i128::from(between.quanta()) * i128::from(before) * 2 + i128::from(parts);
        let along = along.div_euclid(i128::from(parts) * 2);
        let along = i64::try_from(along).map_or(between, Length::from_quanta);
        let index = usize::try_from(before).unwrap_or_default();
        let subject = Subject::nth("attachment.hinge", index, "place");
        working.by(&PLACE, subject, &inputs, inset.value + along)
    });
    // One hinge alone stands nowhere but in the middle, and no rule here asks for one.
    if count.value < 2 {
        Vec::new()
    } else {
        each.collect()
    }
}

/// Whether the art is a sheet of paper.
pub(crate) fn is_paper(job: &Job) -> bool {
    let medium = job.art.first().map(|art| art.medium).unwrap_or_default();
    !matches!(
        medium,
        Medium::Canvas | Medium::Panel | Medium::Textile | Medium::Object | Medium::Mirror
    )
}

/// A count of grams as a figure.
pub(crate) fn as_figure(grams: Stated<i64>) -> Stated<Figure> {
    let value = i32::try_from(grams.value).unwrap_or(i32::MAX);
    Stated {
        value: Figure::of(f64::from(value), "g/m²"),
        origin: grams.origin,
    }
}

#[cfg(test)]
mod tests;
