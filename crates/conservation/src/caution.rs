//! Cautions: what can hurt someone or the art, in one place, each with what calls for it.

use sizing::Sizes;
use trade::{Blemish, Hanger, Hold, Job, Kind, Pane};

use crate::mention::named;

/// What is to be minded wherever the work it belongs to is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Caution {
    /// A load that was computed.
    Load,
    /// Over beds, seats and doors.
    OverPeople,
    /// Where the ground shakes.
    Earthquake,
    /// Old pigments that poison.
    Arsenic,
    /// Old paint, bole and gilding.
    OldPaint,
    /// Mould on art, boards or walls.
    Mould,
    /// Solvents, lacquers, spray adhesives.
    Solvent,
    /// Glass.
    Glass,
    /// Carrying and lifting.
    Lift,
    /// Steps and ladders.
    Ladder,
    /// Public places.
    Public,
    /// Stairways.
    Stairs,
    /// Where water is used.
    Damp,
    /// Over radiators and fires.
    Heat,
    /// Knives and mat cutters.
    Blade,
    /// Dust of wood.
    Dust,
    /// Bonds that never come off.
    Bond,
    /// Cleaning acrylic and coated glass.
    Cleaning,
}

impl Caution {
    /// Every caution, the worst first.
    pub const ALL: [Self; 18] = [
        Self::Load,
        Self::OverPeople,
        Self::Earthquake,
        Self::Arsenic,
        Self::OldPaint,
        Self::Mould,
        Self::Solvent,
        Self::Glass,
        Self::Lift,
        Self::Ladder,
        Self::Public,
        Self::Stairs,
        Self::Damp,
        Self::Heat,
        Self::Blade,
        Self::Dust,
        Self::Bond,
        Self::Cleaning,
    ];

    /// What it is about, in a word or two.
    pub const fn title(self) -> &'static str {
        self.words().0
    }

    /// The caution itself.
    pub const fn text(self) -> &'static str {
        self.words().1
    }

    /// Where it is from, as people read it.
    pub fn source(self) -> String {
        let codes = self.words().2;
        if codes.is_empty() {
            return "common practice, no source".to_owned();
        }
        let each = codes
            .iter()
            .map(|code| trade::settings::cited(code).to_string());
        each.collect::<Vec<_>>().join("; ")
    }

    #[allow(clippy::too_many_lines, reason = "one line or two for each caution")]
    const fn words(self) -> (&'static str, &'static str, &'static [&'static str]) {
        match self {
            Self::Load => (
                "Loads",
                "A computed load is advice, never a certificate: the wall, its fixings and the age of the \
                 hardware are not in it. Keep to the loads their makers state and to local codes; leave heavy \
                 pieces, pieces over people's heads and public places to someone licensed to fix them.",
                &[],
            ),
            Self::OverPeople => (
                "Over people",
                "Nothing large or glazed hangs over a bed, a seat or a door; only what is soft and light does.",
                &["F4", "F5"],
            ),
            Self::Earthquake => (
                "Earthquakes",
                "Two points into studs, closed hooks or open ones bent until the wire only just passes, a stay \
                 at the foot, acrylic before the art. Local guidance and a builder's word come first.",
                &["F4", "F5"],
            ),
            Self::Arsenic => (
                "Old pigments that poison",
                "Old greens may hold arsenic, old reds mercury or lead, stuffed animals and flags arsenic too: \
                 do not dust, sand or warm them; gloves, no food, wash hands, and ask a conservator first.",
                &[],
            ),
            Self::OldPaint => (
                "Old paint and gilding",
                "Take the paint, bole and gilding of an old frame to hold lead until it was tested: wet methods, \
                 no dry sanding, no heat gun, wash hands; local rules on lead come first.",
                &[],
            ),
            Self::Mould => (
                "Mould",
                "Mould harms lungs and spreads to other work: bag the piece, keep it from the bench, wear a mask \
                 that stops fine dust, do not brush it dry, and ask a conservator.",
                &[],
            ),
            Self::Solvent => (
                "Solvents, lacquers, sprays",
                "Read the safety data sheet, open the air, no flame or spark, gloves that the sheet names; keep \
                 fumes out of sealed packages until they are gone.",
                &[],
            ),
            Self::Glass => (
                "Glass",
                "Gloves that resist cuts, eyes covered, closed shoes; carry sheets upright, sweep the bench, \
                 tape across a framed pane before it travels.",
                &[],
            ),
            Self::Lift => (
                "Lifting",
                "Two people lift what is heavy, wide or awkward. A lifting limit holds for both hands, a smooth \
                 lift and a firm floor; it is advice, never a certificate, and local rules come first.",
                &["F1"],
            ),
            Self::Ladder => (
                "Steps and ladders",
                "Never from a chair. A ladder that leans stands one out for four up, on firm ground, somebody at \
                 its foot; what takes both hands takes two people or a platform.",
                &[],
            ),
            Self::Public => (
                "Public places",
                "Hardware that only a tool opens, fixed at three points; acrylic or laminated glass; whoever \
                 answers for the building agrees to the fixing.",
                &[],
            ),
            Self::Stairs => (
                "Stairways",
                "People brush past: fix the foot as well as the top, nothing that stands far out, and hang from a \
                 platform made for stairs, never from a ladder on a tread.",
                &[],
            ),
            Self::Damp => (
                "Where water is used",
                "Steam and splashes cockle paper, start mould and rust hardware: no original art here, a sealed \
                 package and hardware that does not rust for what hangs here all the same.",
                &[],
            ),
            Self::Heat => (
                "Over heat",
                "Warm, dry, sooty air rises from a radiator or a fire: paint flakes, wood gapes, wax runs. Nothing \
                 of value hangs there.",
                &[],
            ),
            Self::Blade => (
                "Blades",
                "Cut away from the hand that holds, guard a parked blade, drop used ones into a sharps box.",
                &[],
            ),
            Self::Dust => (
                "Dust of wood",
                "Saws and choppers: guards on, eyes and ears covered, dust drawn off where it is made; hardwood \
                 dust is treated as a cause of cancer, and local limits apply.",
                &["F3"],
            ),
            Self::Bond => (
                "Bonds that never come off",
                "Mounting with heat, pressure or glue can't be undone: reproductions only, and with the \
                 customer's consent in writing.",
                &[],
            ),
            Self::Cleaning => (
                "Cleaning",
                "No ammonia and no alcohol on acrylic or on a coated sheet; a soft cloth, damped away from the \
                 frame, never a spray towards it. The maker's sheet comes first.",
                &[],
            ),
        }
    }
}

/// The cautions that belong to a piece, the worst first.
///
/// Shape:  from what is in the package, what the document's words name (condition, notes, attachment) and
///         where it will hang. What its weight calls for is `hanging`'s to add.
/// Errors: none.
pub fn of(job: &Job, sizes: &Sizes) -> Vec<Caution> {
    let found = Caution::ALL.into_iter();
    found
        .filter(|caution| {
            of_place(*caution, job) || of_package(*caution, job, sizes) || of_words(*caution, job)
        })
        .collect()
}

/// The cautions that stand beside an advice of this code, wherever it is shown.
///
/// Shape:  every code that starts with `hanging.`, and those of hardware and structure, speak of loads.
pub fn beside(code: &str) -> Vec<Caution> {
    let room = code.split('.').next().unwrap_or(code);
    let mut found = match code {
        "attachment.adhesive" => vec![Caution::Solvent],
        "attachment.irreversible" => vec![Caution::Bond],
        "climate.wall" => vec![Caution::Mould],
        "place.water" => vec![Caution::Mould, Caution::Damp],
        "place.heat" => vec![Caution::Heat],
        "glazing.breaks" | "glazing.too_large" => vec![Caution::Glass],
        "glazing.static" | "light.uv" => vec![Caution::Glass, Caution::Cleaning],
        "hanging.people" => vec![Caution::OverPeople],
        "hanging.earthquake" | "hanging.earthquake_weight" => vec![Caution::Earthquake],
        "hanging.public" => vec![Caution::Public],
        "hanging.stairs" => vec![Caution::Stairs, Caution::Ladder],
        "hanging.lift" => vec![Caution::Lift, Caution::Ladder],
        _ => Vec::new(),
    };
    if ["hanging", "hardware", "wire", "structure"].contains(&room) {
        found.push(Caution::Load);
    }
    found.sort_unstable();
    found
}

fn of_place(caution: Caution, job: &Job) -> bool {
    let hangs = job
        .hardware
        .as_ref()
        .is_none_or(|hardware| hardware.hanger != Hanger::None);
    let place = job.place.clone().unwrap_or_default();
    match caution {
        Caution::Load | Caution::Ladder => hangs && !job.frame.is_empty(),
        Caution::OverPeople => place.above.is_some_and(trade::Above::is_over_people),
        Caution::Earthquake => place.earthquakes,
        Caution::Public => place.public,
        Caution::Stairs => place.stairs,
        Caution::Damp => place.bathroom,
        Caution::Heat => place.above.is_some_and(trade::Above::is_hot),
        _ => false,
    }
}

fn of_package(caution: Caution, job: &Job, sizes: &Sizes) -> bool {
    // Wider than two arms hold apart: twice what counts as large art.
    let large = sizes.settings.length(trade::Key::LargeArt).twice();
    let coated =
        |material: &trade::Material| material.coating.is_some_and(trade::Coating::is_delicate);
    match caution {
        Caution::Glass => sizes
            .glazing
            .iter()
            .any(|pane| pane.pane != Some(Pane::Acrylic)),
        Caution::Cleaning => sizes.glazing.iter().any(|pane| {
            pane.pane == Some(Pane::Acrylic) || pane.sheet.material.as_deref().is_some_and(coated)
        }),
        Caution::Lift => sizes.outside.size().long_side() >= large,
        Caution::Blade => !sizes.mats.is_empty() || sizes.mount.is_some(),
        Caution::Dust => sizes.members.iter().any(|member| {
            let kind = member.material.as_deref().and_then(|found| found.kind);
            kind.is_none_or(|kind| kind == Kind::Moulding)
        }),
        Caution::Bond => job
            .attachment
            .as_ref()
            .is_some_and(|attachment| attachment.hold == Hold::DryMount),
        // A frame at hand may be old.
        Caution::OldPaint => job
            .fit
            .is_some_and(|fit| fit.rabbet.is_some() || fit.frame.is_some()),
        Caution::Mould => job
            .art
            .iter()
            .flat_map(|art| &art.marks)
            .any(|mark| mark.kind == Blemish::Mould),
        _ => false,
    }
}

/// What the document's words name.
const NAMED: [(&str, Caution); 41] = [
    ("arsenic", Caution::Arsenic),
    ("emerald green", Caution::Arsenic),
    ("paris green", Caution::Arsenic),
    ("schweinfurt", Caution::Arsenic),
    ("scheele", Caution::Arsenic),
    ("orpiment", Caution::Arsenic),
    ("realgar", Caution::Arsenic),
    ("taxidermy", Caution::Arsenic),
    ("stuffed", Caution::Arsenic),
    ("vermilion", Caution::Arsenic),
    ("mercury", Caution::Arsenic),
    ("lead paint", Caution::OldPaint),
    ("lead white", Caution::OldPaint),
    ("red lead", Caution::OldPaint),
    ("lead based paint", Caution::OldPaint),
    ("old frame", Caution::OldPaint),
    ("antique frame", Caution::OldPaint),
    ("old gilding", Caution::OldPaint),
    ("gilded", Caution::OldPaint),
    ("old paint", Caution::OldPaint),
    ("mould", Caution::Mould),
    ("mouldy", Caution::Mould),
    ("mold", Caution::Mould),
    ("moldy", Caution::Mould),
    ("mildew", Caution::Mould),
    ("mildewed", Caution::Mould),
    ("musty", Caution::Mould),
    ("spray", Caution::Solvent),
    ("solvent", Caution::Solvent),
    ("lacquer", Caution::Solvent),
    ("varnish", Caution::Solvent),
    ("acetone", Caution::Solvent),
    ("naphtha", Caution::Solvent),
    ("white spirit", Caution::Solvent),
    ("mineral spirits", Caution::Solvent),
    ("toluene", Caution::Solvent),
    ("xylene", Caution::Solvent),
    ("turpentine", Caution::Solvent),
    ("shellac", Caution::Solvent),
    ("heptane", Caution::Solvent),
    ("contact cement", Caution::Solvent),
];

fn of_words(caution: Caution, job: &Job) -> bool {
    let phrases: Vec<(&str, ())> = NAMED
        .iter()
        .filter(|(_, of)| *of == caution)
        .map(|(phrase, _)| (*phrase, ()))
        .collect();
    words(job).any(|words| named(words, &phrases).is_some())
}

/// Everything the document says in free words about what it is made of.
fn words(job: &Job) -> impl Iterator<Item = &str> {
    let art = job.art.iter().flat_map(|art| {
        [&art.condition, &art.support, &art.colours]
            .into_iter()
            .flatten()
    });
    let held = job
        .attachment
        .iter()
        .flat_map(|held| [&held.adhesive, &held.material].into_iter().flatten());
    let marks = job.art.iter().flat_map(|art| &art.marks);
    let seen = marks.filter_map(|mark| mark.words.as_ref());
    let all = job.identity.notes.iter().chain(art).chain(held).chain(seen);
    all.map(String::as_str)
}

#[cfg(test)]
mod tests;
