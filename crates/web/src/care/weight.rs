//! What a piece weighs and hangs by, and what light and air do to it where it hangs.

use conservation::advice::Surroundings;
use conservation::caution::Caution;
use conservation::climate::{Grain, acrylic, damp_growth, damper, gap_behind, rail_movement, wood};
use conservation::light::{Outlook, outlook};
use hanging::{Hanging, RailPlan, ScrewPlan, WirePlan, hangs};
use measure::Unit;
use sizing::{GlazingSizes, MemberSizes, Sizes};
use trade::{Catalogue, Job, Key, Pane};
use working::{Figure, Stated, Working};

use super::air::surface_rows;
use super::answer::{Amount, Answer};

/// What a piece weighs part by part, and what it hangs by.
pub fn weight(job: &Job, sizes: &Sizes) -> Answer {
    let found = hangs(job, sizes);
    let mut answer = Answer::of(found.working.clone());
    answer.cautions.clone_from(&found.cautions);
    parts(&found, &mut answer);
    hardware(&found, &mut answer);
    if let Some(wire) = &found.wire {
        answer.group(format!("Its wire, on {}", hooks(wire.hooks)));
        wire_rows("wire", wire, &mut answer);
    }
    if let Some(wire) = &found.other_hooks {
        answer.group(format!("The same wire, on {}", hooks(wire.hooks)));
        wire_rows("other", wire, &mut answer);
    }
    if let Some(pull) = found.pull {
        answer.group("At its fixing in the wall");
        answer.worked("downward", "Down", pull.downward);
        answer.worked("outward", "Out of the wall", pull.outward);
    }
    if let Some(screws) = &found.screws {
        screw_rows(screws, &mut answer);
    }
    if let Some(rail) = &found.rail {
        rail_rows(rail, &mut answer);
    }
    lifts(&found, &mut answer);
    answer
}

fn hooks(count: u32) -> String {
    match count {
        1 => "one hook".to_owned(),
        2 => "two hooks".to_owned(),
        several => format!("{several} hooks"),
    }
}

fn parts(found: &Hanging, answer: &mut Answer) {
    let weight = &found.weight;
    answer.group("Weight, part by part");
    for (at, part) in weight.parts.iter().enumerate() {
        answer.worked(format!("part_{}", at + 1), part.name.clone(), part.mass);
    }
    let label = if weight.on_scale {
        "As the scale said"
    } else if weight.unknown.is_empty() {
        "All of these"
    } else {
        "All of these, at least"
    };
    answer.worked("total", label, weight.total);
    answer.worked("package", "Of that, on the bottom rail", weight.package);
    for (at, words) in found.unknown.iter().enumerate() {
        answer.words(format!("unknown_{}", at + 1), "Not counted", words.clone());
    }
}

fn hardware(found: &Hanging, answer: &mut Answer) {
    let custom = || "common practice, no source".to_owned();
    answer.group("Hardware for this weight");
    answer.words_of("frame", "On the frame", found.choice.frame, custom());
    answer.words_of("wall", "In the wall", found.choice.wall.clone(), custom());
    let hooks = Amount::Count(i64::from(found.choice.hooks));
    answer.row("hooks", "Hooks", hooks, &[]);
    if let Some(key) = found.choice.setting {
        let words = format!("the setting {} (common practice, no source)", key.id());
        answer.words("band", "Chosen by", words);
    }
}

fn wire_rows(key: &str, wire: &WirePlan, answer: &mut Answer) {
    let (run, rated) = (&wire.run, &wire.ratings);
    answer.worked(format!("{key}_angle"), "Angle from level", run.angle);
    answer.worked(
        format!("{key}_tension"),
        "Each side pulls like",
        run.tension,
    );
    answer.worked(
        format!("{key}_inward"),
        "It pulls each rail inward like",
        run.inward,
    );
    answer.worked(
        format!("{key}_rating"),
        "Wire rated for, at least",
        rated.wire,
    );
    answer.worked(
        format!("{key}_ring"),
        "Each ring rated for, at least",
        rated.ring,
    );
    answer.worked(
        format!("{key}_hook"),
        "Each hook rated for, at least",
        rated.hook,
    );
    let factors = rated.sentence();
    answer.words(format!("{key}_factors"), "With its factors", factors);
}

fn screw_rows(screws: &ScrewPlan, answer: &mut Answer) {
    answer.group("Screws of each hanger");
    let each = Amount::Count(i64::from(screws.each));
    answer.row("screws", "Screws in each", each, &[]);
    answer.length(
        "screw_longest",
        "Longest that fits the rail",
        screws.longest,
    );
    answer.worked("screw_held", "They bear sideways", screws.held);
    answer.worked("screw_actual", "Times the pull", screws.actual);
    answer.worked(
        "screw_out",
        "One may be pulled straight out by",
        screws.withdrawal.allowable,
    );
}

fn rail_rows(rail: &RailPlan, answer: &mut Answer) {
    let sag = &rail.sag;
    answer.group(format!("Bottom rail of {}", rail.wood.species));
    let between = Amount::Between(sag.fixed.value, sag.free.value);
    answer.row(
        "sag",
        "Sags at once by",
        between,
        &[sag.fixed.line, sag.free.line],
    );
    answer.about("sag_lasting", "With the years, at most", sag.lasting);
    answer.about("sag_allowed", "The shop allows", sag.allowed);
    if let Some(wanted) = rail.wanted {
        answer.about("sag_wanted", "Wood upright that passes", wanted);
    }
}

fn lifts(found: &Hanging, answer: &mut Answer) {
    answer.group("Lifting, one person");
    let lifts = [
        ("bench", "to the bench", found.bench),
        ("at_wall", "to the wall", found.wall),
    ];
    for (key, place, lifted) in lifts {
        let Some(lifted) = lifted else { continue };
        answer.worked(
            format!("{key}_limit"),
            format!("May lift {place}"),
            lifted.limit,
        );
        match lifted.index {
            Some(index) => {
                let label = format!("Lifting index {place}; above 1, two people");
                answer.worked(format!("{key}_index"), label, index);
            }
            None => answer.words(
                format!("{key}_index"),
                format!("Lifting {place}"),
                "nothing should be lifted this way",
            ),
        }
    }
}

/// What light and air do to a piece where it will hang.
///
/// Errors: a light, a time, a warmth or a humidity of the document outside what can be, in words.
pub fn place(job: &Job, sizes: &Sizes, catalogue: &Catalogue) -> Result<Answer, String> {
    let found = outlook(job, sizes, catalogue).map_err(|refusal| refusal.to_string())?;
    let around = Surroundings::of(job, &sizes.settings);
    let mut answer = if let Some(found) = found {
        light(found, &around)
    } else {
        let mut answer = Answer::of(sizes.working.clone());
        answer.group("Light");
        answer.words(
            "years",
            "Years to a noticeable fade",
            "light does not fade it",
        );
        answer
    };
    for (at, member) in sizes.members.iter().enumerate() {
        mitres(at, member, sizes, &mut answer)?;
    }
    for (at, pane) in sizes.glazing.iter().enumerate() {
        growth(at, pane, sizes, &mut answer)?;
    }
    cold_wall(&around, sizes, job.units.unit(), &mut answer)?;
    Ok(answer)
}

fn light(found: Outlook, around: &Surroundings) -> Answer {
    let mut answer = Answer::of(found.working);
    answer.group("Light");
    answer.words("class", "Taken for a medium of", found.class.word());
    let showing = around.showing;
    let words = format!(
        "{}, {} a day, {} a year",
        showing.lux.value, showing.hours.value, showing.days.value
    );
    answer.words("light", "In light of", words);
    let words = if found.now.without_uv {
        "counts as removed"
    } else {
        "counts"
    };
    answer.words("uv", "Ultraviolet", words);
    answer.span("years", "Years to a noticeable fade", found.now.years);
    if let Some(days) = found.now.days {
        answer.worked("days", "Days a year within the limit", days);
    }
    if !found.would.is_empty() {
        answer.group("What a change would buy");
    }
    for (at, kept) in found.would.iter().enumerate() {
        answer.span(format!("would_{}", at + 1), kept.what.clone(), kept.years);
    }
    answer
}

/// A humidity that the shop set.
fn humidity(key: Key, sizes: &Sizes) -> Stated<Figure> {
    let count = i32::try_from(sizes.settings.count(key)).unwrap_or(i32::MAX);
    Stated::setting(
        key.id(),
        Figure::of(f64::from(count), key.definition().unit),
    )
}

/// How far the mitres of a member open in the driest and the dampest room; nothing where nobody said its wood.
fn mitres(
    at: usize,
    member: &MemberSizes,
    sizes: &Sizes,
    answer: &mut Answer,
) -> Result<(), String> {
    let material = member.material.as_deref();
    let wood = match material.and_then(|found| found.wood.as_deref()).map(wood) {
        None => return Ok(()),
        Some(Ok(wood)) => wood,
        Some(Err(refusal)) => {
            answer.group(format!("Mitres of the {}", member.name));
            let words = refusal.to_string();
            answer.words(format!("mitre_{}", at + 1), "Not worked out", words);
            return Ok(());
        }
    };
    answer.group(format!("Mitres of the {}, {}", member.name, wood.species));
    for (key, label, to) in [
        ("driest", "In the driest room, inside, by", Key::DriestRoom),
        (
            "dampest",
            "In the dampest room, outside, by",
            Key::DampestRoom,
        ),
    ] {
        let swing = [humidity(Key::MadeAt, sizes), humidity(to, sizes)];
        let celsius = humidity(Key::RoomTemperature, sizes);
        let face = Stated::from(member.face);
        let grain = wood.coefficient(Grain::Tangential);
        let moved = rail_movement(face, grain, celsius, swing, &mut answer.working);
        let moved = moved.map_err(|refusal| refusal.to_string())?;
        answer.about(format!("mitre_{}_{key}", at + 1), label, moved.mitre.gap);
    }
    Ok(())
}

/// How far acrylic grows with the warmth its rabbet allows for, and with the dampest room besides.
fn growth(
    at: usize,
    pane: &GlazingSizes,
    sizes: &Sizes,
    answer: &mut Answer,
) -> Result<(), String> {
    let (Some(Pane::Acrylic), Some(warmth)) = (pane.pane, pane.growth) else {
        return Ok(());
    };
    let size = pane.sheet.size;
    let sheet = if size.width.value > size.height.value {
        size.width
    } else {
        size.height
    };
    let damp = damper(&sizes.settings, &mut answer.working);
    let [least, most] = acrylic().damp.map(|own| {
        let working = &mut answer.working;
        damp_growth(sheet.into(), warmth.into(), (own, damp.into()), working)
    });
    let least = least.map_err(|refusal| refusal.to_string())?;
    let most = most.map_err(|refusal| refusal.to_string())?;
    answer.group("Acrylic");
    let amount = Amount::Between(least.value, most.value);
    answer.row(
        format!("growth_{}", at + 1),
        "With warmth and damp its long side grows by",
        amount,
        &[least.line, most.line],
    );
    Ok(())
}

/// The air behind the piece, where it hangs on an outside wall.
fn cold_wall(
    around: &Surroundings,
    sizes: &Sizes,
    unit: Unit,
    answer: &mut Answer,
) -> Result<(), String> {
    let Some(wall) = around.outside_wall else {
        return Ok(());
    };
    let settings = &sizes.settings;
    let mut working: Working = std::mem::take(&mut answer.working);
    let found = gap_behind(
        &around.room,
        wall.outdoors,
        wall.transmittance,
        settings,
        &mut working,
    );
    answer.working = working;
    let found = found.map_err(|refusal| refusal.to_string())?;
    answer.group("Against its outside wall");
    surface_rows("touching", &found.touching, answer);
    answer.group(format!("{} off it", found.gap.in_both(unit)));
    surface_rows("apart", &found.apart, answer);
    let harms = found.touching.condenses.value || found.touching.moulds.value;
    if harms && !answer.cautions.contains(&Caution::Damp) {
        answer.cautions.push(Caution::Damp);
    }
    Ok(())
}
