//! Hanging: what a screw holds in a rail.

use conservation::caution::Caution;
use conservation::climate::wood;
use hanging::screw::{lateral, lateral_group, longest, shank, withdrawal};
use trade::Key;
use working::{Stated, Working};

use super::Question;
use super::air::woods;
use super::answer::Answer;
use super::field::{Usual, choice, length, number};
use super::typed::Typed;

/// What a screw holds.
pub(super) const SCREW: Question = Question {
    noun: "hang",
    verb: "screw",
    asks: "What does this screw hold?",
    tells: "What pulls a screw out of a rail, what it bears sideways, and the longest that fits",
    fields: &[
        choice("wood", "Wood of the rail", "", woods),
        number("gauge", "Gauge of the screw", &[("#", 1.0)], ("", "gauge"))
            .or(Usual::Setting(Key::ScrewGauge)),
        length("thread", "Thread in the wood", ""),
        length("rail", "Thickness of the rail", "where the screw enters").or(Usual::Nothing),
    ],
    example: &[
        ("wood", "oak, white"),
        ("gauge", "6"),
        ("thread", "1/2"),
        ("rail", "3/4"),
    ],
    work: screw,
};

fn screw(typed: &mut Typed<'_>) -> Option<Answer> {
    let asked = typed.has("rail");
    let (name, gauge) = (typed.choice("wood"), typed.figure("gauge"));
    let (thread, rail) = (typed.length("thread"), typed.length("rail"));
    if asked && rail.is_none() {
        return None;
    }
    let (gauge, thread) = (gauge?, thread?);
    let wood = typed.keep(wood(name?.word))?;
    let mut working = Working::new();
    let number = Stated {
        value: whole(gauge.value.value()),
        origin: gauge.origin,
    };
    let shank = typed.keep(shank(number, &mut working))?;
    let out = withdrawal(wood.gravity(), shank.into(), thread, &mut working);
    let out = typed.keep(out)?;
    let group = lateral_group(wood.is_softwood(), wood.gravity().value);
    let sideways = group.and_then(|group| lateral(group, shank.into(), &mut working));
    let land = Stated::setting(Key::ScrewLand.id(), typed.settings.length(Key::ScrewLand));
    let fits = match rail {
        Some(rail) => Some(typed.keep(longest(rail, land, &mut working))?),
        None => None,
    };
    let mut answer = Answer::of(working);
    answer.cautions.push(Caution::Load);
    answer.group("This screw");
    answer.about("shank", "Shank", shank);
    answer.worked("allowable", "May be pulled straight out by", out.allowable);
    answer.worked("ultimate", "Pulls out at", out.ultimate);
    let label = "Bears sideways, at a slip of about 0.2 mm";
    match sideways {
        Ok(sideways) => answer.worked("lateral", label, sideways),
        Err(refusal) => answer.words("lateral", label, format!("not known: {refusal}")),
    }
    answer.words_of(
        "wood",
        "Wood",
        wood.species,
        wood.strength_trust().sentence(),
    );
    if let Some(fits) = fits {
        answer.group("In this rail");
        answer.length("longest", "Longest screw that fits", fits);
        if thread.value > fits.value {
            let words = "the thread is longer than fits: its point would come out at the front";
            answer.words("too_long", "Mind", words);
        }
    }
    Some(answer)
}

/// A gauge is a whole number; its bounds were looked at before.
#[allow(
    clippy::cast_possible_truncation,
    reason = "a gauge lies between 0 and 24"
)]
fn whole(gauge: f64) -> i64 {
    gauge.round() as i64
}
