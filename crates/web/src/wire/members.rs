//! Frame members, as JSON.

use serde_json::{Value, json};
use sizing::{Leg, MemberSizes, Sizes, Stack, StickUse};

use super::{Wire, code, word};

pub fn members(wire: Wire<'_>, sizes: &Sizes) -> Vec<Value> {
    sizes
        .members
        .iter()
        .map(|member| one_member(wire, member))
        .collect()
}

fn one_member(wire: Wire<'_>, member: &MemberSizes) -> Value {
    let legs = &member.legs;
    json!({
        "name": member.name,
        "role": word(&member.role),
        "material": code(member.material.as_ref()),
        "contents": wire.worked_size(member.contents),
        "rabbet": wire.worked_size(member.rabbet),
        "sight": wire.some_size(member.sight),
        "outside": wire.worked_size(member.outside),
        "face": wire.worked(member.face),
        "lip": wire.length(member.lip),
        "lip_cover": wire.some(member.lip_cover),
        "allowance": wire.length(member.allowance),
        "height": wire.some_length(member.height),
        "rabbet_depth": wire.some_length(member.rabbet_depth),
        "legs": legs.each.iter().map(|leg| one_leg(wire, leg)).collect::<Vec<_>>(),
        "scale": legs.scale,
        "mitre": wire.worked_angle(legs.mitre),
        "gauge": legs.compound.map(|(gauge, _)| wire.worked_angle(gauge)),
        "blade": legs.compound.map(|(_, blade)| wire.worked_angle(blade)),
        "stick": stick(wire, &member.stick),
        "fillet": member.fillet.as_ref().map(|fillet| json!({
            "material": code(fillet.material.as_ref()),
            "sight": wire.worked_size(fillet.sight),
            "long": wire.worked_size(fillet.long),
            "face": wire.length(fillet.face),
            "thickness": wire.length(fillet.thickness),
            "stick": stick(wire, &fillet.stick),
        })),
        "floater": member.floater.as_ref().map(|floater| json!({
            "ledge_opening": wire.worked_size(floater.ledge_opening),
            "setback": wire.some(floater.setback),
            "gap": wire.length(floater.gap),
            "ledge": wire.length(floater.ledge),
        })),
        "stack": member.stack.as_ref().map(|stack| layers(wire, stack)),
    })
}

fn one_leg(wire: Wire<'_>, leg: &Leg) -> Value {
    json!({
        "count": leg.count,
        "short": wire.worked(leg.short),
        "rabbet": wire.worked(leg.rabbet),
        "long": wire.worked(leg.long),
    })
}

fn stick(wire: Wire<'_>, stick: &StickUse) -> Value {
    json!({
        "used": wire.worked(stick.used),
        "one_stick": stick.one_stick.value,
        "stick": wire.length(stick.stick),
        "cut": wire.length(stick.cut),
        "trim": wire.length(stick.trim),
        "charge": wire.some(stick.charge),
        "charged": wire.some(stick.charged),
    })
}

fn layers(wire: Wire<'_>, stack: &Stack) -> Value {
    let layers: Vec<Value> = stack
        .layers
        .iter()
        .map(|layer| {
            json!({
                "what": layer.what.word(),
                "number": layer.index + 1,
                "material": code(layer.material.as_ref()),
                "thickness": wire.length(layer.thickness.value),
                "behind": wire.length(layer.behind),
            })
        })
        .collect();
    json!({
        "layers": layers,
        "total": wire.worked(stack.total),
        "depth": wire.length(stack.depth),
        "build_up": wire.some_length(stack.build_up),
        "tail": wire.length(stack.tail),
        "slack": wire.worked(stack.slack),
        "proud": wire.worked(stack.proud),
        "clip": wire.some(stack.clip),
    })
}
