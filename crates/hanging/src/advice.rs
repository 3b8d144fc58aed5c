//! Advice on how a piece hangs: what is too heavy, too flat or too slender, with changes that cure it.

use conservation::advice::{Advice, Advised, Change};
use conservation::climate::wood;
use measure::{Length, Mass};
use sizing::{Fault, HangerMarks, MemberSizes, Sizes, derive};
use trade::{Catalogue, Hanger, Hardware, Job, Key, Settings};
use working::{LineId, Stated, Working};

use crate::choice::choice;
use crate::load::force;
use crate::rail::{Rail, Sag, deep_enough, sag};
use crate::weight::{Weight, weigh};
use crate::wire::{Hang, wire_run};

/// Everything about its hanging that somebody should look at, each with the changes that cure it.
///
/// Shape:  a change is proposed only once it was tried on the document.
/// Errors: none; what can't be worked out for want of a number is left out.
pub fn advice(job: &Job, sizes: &Sizes, catalogue: &Catalogue, shop: &Settings) -> Advised {
    let mut advised = looked_over(job, sizes);
    for advice in &mut advised.advice {
        let code = advice.fault.code;
        advice.changes.retain(|change| {
            let next = change.applied(job);
            derive(&next, catalogue, shop).is_ok_and(|after| {
                let stops = after.is_refused() && !sizes.is_refused();
                let found = looked_over(&next, &after).advice;
                !stops && !found.iter().any(|other| other.fault.code == code)
            })
        });
    }
    advised
}

fn looked_over(job: &Job, sizes: &Sizes) -> Advised {
    let mut working = Working::new();
    let medium = job.art.first().map(|art| art.medium).unwrap_or_default();
    let weight = weigh(sizes, medium, &mut working);
    let mut advised = Advised {
        advice: Vec::new(),
        working,
    };
    hanger(job, sizes, &weight, &mut advised);
    if let Some(marks) = sizes.hangers {
        flat_wire(sizes, &marks, &weight, &mut advised);
    }
    if let Some(member) = sizes.members.first() {
        sagging(job, sizes, member, &mut advised);
    }
    advised
}

fn push(
    advised: &mut Advised,
    fault: Fault,
    source: &str,
    lines: Vec<LineId>,
    changes: Vec<Change>,
) {
    let fault = match lines.first() {
        Some(line) => fault.because(*line),
        None => fault,
    };
    advised.advice.push(Advice {
        fault,
        source: source.to_owned(),
        lines,
        changes,
    });
}

const CUSTOM: &str = "common practice, no source";

/// A hanger lighter than the weight asks for.
fn hanger(job: &Job, sizes: &Sizes, weight: &Weight, advised: &mut Advised) {
    let stated = job
        .hardware
        .as_ref()
        .map_or_else(Hanger::default, |found: &Hardware| found.hanger);
    let wanted = choice(weight.total.value, &sizes.settings);
    if rank(stated) >= rank(wanted.hanger) || stated == Hanger::None {
        return;
    }
    let least = if weight.unknown.is_empty() {
        String::new()
    } else {
        format!(" without {}", weight.unknown.join(", "))
    };
    let fault = Fault::warn(
        "hanging.hardware",
        "Hardware",
        format!(
            "it weighs {}{least} and hangs by wire or rings",
            weight.total.value
        ),
        format!("this weight takes {}", wanted.frame),
        format!("Use {}; in the wall, {}", wanted.frame, wanted.wall),
    );
    let changes = vec![Change::SetHanger(wanted.hanger)];
    push(advised, fault, CUSTOM, vec![weight.total.line], changes);
}

const fn rank(hanger: Hanger) -> u8 {
    match hanger {
        Hanger::Wire | Hanger::None => 0,
        Hanger::Rings => 1,
        Hanger::Plates | Hanger::Cleat => 2,
    }
}

/// A wire so flat that it pulls many times the weight.
fn flat_wire(sizes: &Sizes, marks: &HangerMarks, weight: &Weight, advised: &mut Advised) {
    let (Some(wire), mass) = (marks.wire, weight.total.value) else {
        return;
    };
    let hang = Hang {
        weight: weight.total.into(),
        rings_apart: Stated::job(marks.apart.value),
        rise: Stated::job(wire.rise.value),
        hooks_apart: None,
    };
    if mass <= Mass::ZERO {
        return;
    }
    let Ok(run) = wire_run(&hang, &mut advised.working) else {
        return;
    };
    let least = sizes.settings.angle(Key::LeastWireAngle);
    if run.angle.value >= least {
        return;
    }
    let fault = Fault::warn(
        "hanging.flat_wire",
        "Hardware",
        run.to_string(),
        format!("under {least} a wire pulls its rails inward"),
        "Leave the wire slacker, or hang it by rings on two hooks",
    );
    let lines = vec![run.angle.line, run.tension.line, run.inward.line];
    push(
        advised,
        fault,
        CUSTOM,
        lines,
        vec![Change::SetHanger(Hanger::Rings)],
    );
}

/// A bottom rail that gives way under its glazing.
fn sagging(job: &Job, sizes: &Sizes, member: &MemberSizes, advised: &mut Advised) {
    let material = member.material.as_deref();
    let named = material.and_then(|found| found.wood.as_deref());
    let wood = named.and_then(|name| wood(name).ok());
    let (Some(wood), Some(height), None) = (wood, member.height, &sizes.strainer) else {
        return;
    };
    let Some(glazing) = glazing_mass(sizes).filter(|mass| *mass > Mass::ZERO) else {
        return;
    };
    let load = force(Stated::job(glazing), "glazing", &mut advised.working);
    let rail = Rail {
        modulus: wood.modulus(),
        width: Stated::job(height),
        depth: Stated::job(member.face.value - member.lip),
        span: Stated::job(member.rabbet.width.value),
        load: load.into(),
    };
    let Ok(found) = sag(&rail, &sizes.settings, &mut advised.working) else {
        return;
    };
    if found.is_too_much() {
        let wanted = deep_enough(&rail, &found, &mut advised.working);
        let fault = sag_fault(job, member, &found, wanted.value);
        let bar = strainer(sizes);
        let both = Change::All(vec![bar.clone(), Change::AddBuildUp]);
        let lines = vec![
            found.free.line,
            found.fixed.line,
            found.lasting.line,
            wanted.line,
        ];
        let source = wood.strength_trust().sentence();
        push(advised, fault, &source, lines, vec![bar, both]);
    }
}

fn sag_fault(job: &Job, member: &MemberSizes, found: &Sag, wanted: Length) -> Fault {
    let tenth = |length: Length| {
        let near = length.nearest_to(Length::micrometres(100)); // geometry: a tenth of a millimetre
        near.in_both(job.units.unit())
    };
    Fault::warn(
        "hanging.sag",
        member.name.clone(),
        format!(
            "its bottom rail sags by {} to {} under the glazing, more with the years",
            tenth(found.fixed.value),
            tenth(found.free.value)
        ),
        format!("{} passes on this span", tenth(found.allowed.value)),
        format!(
            "Add a strainer, take acrylic, or {} of wood outside the rabbet",
            tenth(wanted)
        ),
    )
}

/// A strainer as wide as the least face of a large frame.
fn strainer(sizes: &Sizes) -> Change {
    Change::AddStrainer {
        width: sizes.settings.length(Key::FaceLight3),
        depth: sizes.settings.length(Key::HeightBand2),
        uprights: 1,
    }
}

/// What all sheets of glazing weigh; none where one is unknown.
fn glazing_mass(sizes: &Sizes) -> Option<Mass> {
    let each = sizes.glazing.iter().map(|pane| {
        let material = pane.sheet.material.as_deref()?;
        let grams = i64::from(*material.grams_per_m2.as_ref()?.is());
        let area = sizes.shape_area(pane.sheet.size.size());
        let areal = measure::ArealMass::grams_per_m2(grams);
        Some(Mass::of_sheet_nearest(area, areal))
    });
    each.sum()
}

#[cfg(test)]
mod tests;
