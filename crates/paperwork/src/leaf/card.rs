//! The card for the customer: how to live with the piece, in plain words.

use conservation::caution;
use conservation::light::{Class, outlook};
use sizing::Sizes;
use trade::{Catalogue, Job, Key};

use super::{Leaf, LeafSection};
use crate::about;
use crate::error::PaperworkError;
use crate::typeset::Stamp;

/// What a card must be told that neither the job nor its sizes say.
#[derive(Clone, Debug)]
pub struct CardHead {
    /// The shop's name.
    pub shop: String,
    /// When the file is made.
    pub made: Stamp,
    /// The day, as the shop writes days.
    pub date: String,
    /// Order number where the job has none.
    pub fallback_order: String,
}

/// The care card of a piece.
///
/// Shape:  light, air, cleaning, hanging, when to come back; figures as ranges, each with what it is
///         taken for.
///
/// # Errors
///
/// A light or a time in the document outside what can be.
pub fn card_of(
    job: &Job,
    sizes: &Sizes,
    catalogue: &Catalogue,
    head: CardHead,
) -> Result<Leaf, PaperworkError> {
    let order = job.identity.order.clone().unwrap_or(head.fallback_order);
    let art = job.art.first();
    let title = art.and_then(|art| art.title.clone());
    let artist = art.and_then(|art| art.artist.clone());
    let years = sizes.settings.count(Key::CheckYears);
    let sections = vec![
        LeafSection::of("Light", light(job, sizes, catalogue)?),
        LeafSection::of("Air", air(sizes)),
        LeafSection::of("Cleaning", about::cleaning_words(sizes)),
        LeafSection::of("Hanging", hung(job, sizes)),
        LeafSection::of(
            "Come back",
            vec![
                format!(
                    "Every {years} years for a look at seal, hinges and hangers; at once if the art slips or ripples, if \
                     you see spots, insects or mist behind the glazing, if it fell or got wet."
                ),
                "Do not open the back: what holds the art is in there.".to_owned(),
            ],
        ),
    ];
    Ok(Leaf {
        kind: "card",
        shop: head.shop,
        over: "Living with".to_owned(),
        title: title.unwrap_or_else(|| "your framed piece".to_owned()),
        under: artist.into_iter().collect(),
        running: format!("Order {order} · {}", head.date),
        sections,
        cautions: cautions(job, sizes),
        codes: Vec::new(),
        codes_words: Vec::new(),
        made: head.made,
    })
}

/// How long it lasts as it hangs, and what would help.
///
/// Source: the figures of `conservation::light::outlook`, with theirs.
fn light(job: &Job, sizes: &Sizes, catalogue: &Catalogue) -> Result<Vec<String>, PaperworkError> {
    let found =
        outlook(job, sizes, catalogue).map_err(|why| PaperworkError::Figures(why.to_string()))?;
    let Some(found) = found.filter(|found| found.class != Class::None) else {
        return Ok(vec![
            "Light does not fade it; heat does harm: keep it out of the sun and off radiators."
                .to_owned(),
        ]);
    };
    let place = if job.place.is_some() {
        "Where it is to hang"
    } else {
        "On a usual wall at home"
    };
    let mut said = vec![
        "Light fades what it falls on, and what has faded does not come back.".to_owned(),
        format!(
            "{place}, what is taken for a piece of {} may show a first change after {}; nobody knows closer.",
            found.class.word(),
            found.now.years
        ),
    ];
    if let Some(days) = found.now.days {
        let days = days.value.value().floor();
        said.push(if days >= 365.0 {
            "That light is within the year's budget museums allow such a piece.".to_owned() // geometry: days of a year
        } else {
            format!(
                "The year's budget of light museums allow such a piece is used up in {days} days there: show it for \
                 part of the year, or in less light."
            )
        });
    }
    if let Some(best) = found.would.first() {
        said.push(format!("{}: {}.", about::capital(&best.what), best.years));
    }
    said.push(
        "No direct sun, no picture lamp on the frame; a filter slows fading, nothing stops it."
            .to_owned(),
    );
    Ok(said)
}

fn air(sizes: &Sizes) -> Vec<String> {
    let own = |key: Key| sizes.settings.count(key);
    vec![
        format!(
            "The room to move in its window and its rabbet is checked for air between {} and {} % relative humidity, \
             the shop's own figures: a range to stand, not the best for the art. Steady air well within it is kinder; \
             ask a conservator what this art needs.",
            own(Key::DriestRoom),
            own(Key::DampestRoom)
        ),
        "Not in a bathroom, a kitchen or a cellar, not over a radiator or a fire.".to_owned(),
        "On an outside wall leave a gap behind it: the bumpers on its back stay on.".to_owned(),
    ]
}

fn hung(job: &Job, sizes: &Sizes) -> Vec<String> {
    let load = about::load(job, sizes);
    vec![
        format!(
            "It weighs {} and hangs by {}.",
            load.weight_words(),
            load.hanger_words()
        ),
        format!(
            "In the wall: {}; {}.",
            load.wall_words(),
            load.rated_words()
        ),
        "Carry it upright, both hands on the sides of the frame, never by the top or the wire."
            .to_owned(),
    ]
}

/// The cautions whose subject reaches the customer.
fn cautions(job: &Job, sizes: &Sizes) -> Vec<String> {
    use caution::Caution::{
        Damp, Earthquake, Heat, Ladder, Lift, Load, OverPeople, Public, Stairs,
    };
    hanging::hangs(job, sizes)
        .cautions
        .into_iter()
        .filter(|found| {
            matches!(
                found,
                Load | Lift | OverPeople | Earthquake | Public | Stairs | Damp | Heat | Ladder
            )
        })
        .map(|found| found.text().to_owned())
        .collect()
}
