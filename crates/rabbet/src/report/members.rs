//! Frame members with their legs, sticks and stacks.

use measure::Unit;
use sizing::{ChargeStep, LayerKind, MemberSizes, Sizes, Stack};
use trade::Role;

use super::boards::named;
use super::{Group, Report, Words};

/// Member by member, outside in.
pub fn members(sizes: &Sizes, words: Words<'_>, report: &mut Report) {
    for member in &sizes.members {
        let group = report.group(&member.name);
        rectangles(member, words, group);
        legs(member, words, group);
        sticks(member, words, group);
        if let Some(fillet) = &member.fillet {
            words.worked_size(group, "fillet, sight", fillet.sight);
            words.worked_size(group, "fillet, long points", fillet.long);
            words.worked(group, "fillet, strip", fillet.stick.used);
        }
        if let Some(stack) = &member.stack {
            layers(
                stack,
                words,
                report.group(format!("Stack in {}", member.name)),
            );
        }
    }
}

fn rectangles(member: &MemberSizes, words: Words<'_>, group: &mut Group) {
    group.some("moulding", member.material.as_deref().map(named));
    words.worked_size(group, "holds", member.contents);
    let rabbet = if member.role == Role::Floater {
        "inside"
    } else {
        "rabbet"
    };
    words.worked_size(group, rabbet, member.rabbet);
    if let Some(sight) = member.sight {
        words.worked_size(group, "sight", sight);
    }
    words.worked_size(group, "outside", member.outside);
    words.worked(group, "face", member.face);
    group.row("lip", words.length(member.lip));
    words.some(group, "lip covers", member.lip_cover);
    group.row("allowance", words.length(member.allowance));
    if let Some(floater) = &member.floater {
        words.worked_size(group, "between the ledges", floater.ledge_opening);
        words.some(group, "set back", floater.setback);
        group.row("gap", words.length(floater.gap));
        group.row("ledge", words.length(floater.ledge));
    }
}

fn legs(member: &MemberSizes, words: Words<'_>, group: &mut Group) {
    for leg in &member.legs.each {
        let label = format!("{} legs", leg.count);
        words.worked(group, &format!("{label}, short point"), leg.short);
        words.worked(group, &format!("{label}, rabbet"), leg.rabbet);
        words.worked(group, &format!("{label}, long point"), leg.long);
    }
    group.row("scale reads", format!("at the {}", member.legs.scale));
    words.angle(group, "mitre", member.legs.mitre);
    if let Some((gauge, blade)) = member.legs.compound {
        words.angle(group, "gauge", gauge);
        words.angle(group, "blade", blade);
    }
}

fn sticks(member: &MemberSizes, words: Words<'_>, group: &mut Group) {
    let stick = &member.stick;
    words.worked(group, "stick used", stick.used);
    let verdict = if stick.one_stick.value {
        "one does"
    } else {
        "one is too short"
    };
    let longest = stick.stick.in_both(Unit::Foot);
    group.row_with_path(
        "stick at hand",
        format!("{longest}: {verdict}"),
        words.path(stick.one_stick.line),
    );
    if let Some(charged) = stick.charged {
        let text = match stick.step {
            ChargeStep::Foot | ChargeStep::HalfFoot => charged.value.in_both(Unit::Foot),
            ChargeStep::Decimetre => charged.value.in_both(Unit::Metre),
            ChargeStep::Exact => words.length(charged.value),
        };
        group.row_with_path("length charged", text, words.path(charged.line));
    }
}

fn layers(stack: &Stack, words: Words<'_>, group: &mut Group) {
    for (i, layer) in stack.layers.iter().enumerate() {
        let of_kind = |kind: LayerKind| {
            stack
                .layers
                .iter()
                .filter(|other| other.what == kind)
                .count()
        };
        let label = super::words::numbered(layer.what.word(), layer.index, of_kind(layer.what));
        group.row(
            &format!("{} {label}", i + 1),
            words.thickness(layer.thickness.value),
        );
    }
    words.worked(group, "total", stack.total);
    group.row("rabbet depth", words.length(stack.depth));
    group.some(
        "of it built up",
        stack.build_up.map(|build_up| words.length(build_up)),
    );
    group.row("wall for points", words.length(stack.tail));
    words.worked(group, "slack", stack.slack);
    words.worked(group, "stands proud", stack.proud);
    words.some(group, "clip", stack.clip);
}
