//! Mats, windows and sheets, as JSON.

use serde_json::{Value, json};
use sizing::{FilletUse, SheetSizes, Sizes, Window};

use super::{Wire, code, outline, word};

pub fn borders(wire: Wire<'_>, sizes: &Sizes) -> Value {
    let four = |of: sizing::Sides<_>| {
        let told = of.map(|border| wire.worked(border));
        json!({ "left": told.left, "right": told.right, "top": told.top, "bottom": told.bottom })
    };
    sizes.borders.map_or(
        Value::Null,
        |borders| json!({ "cut": four(borders.cut), "visible": borders.visible.map(four) }),
    )
}

pub fn mats(wire: Wire<'_>, sizes: &Sizes) -> Vec<Value> {
    let one = |mat: &sizing::MatSizes| {
        let mut value = sheet(wire, &mat.sheet);
        value["colour"] = json!(mat.colour);
        value["bevel"] = word(&mat.bevel).into();
        value["slope"] = wire.worked(mat.slope);
        value["reveal_seen"] = wire.some(mat.reveal_seen);
        value["groove"] = wire.some_length(mat.groove);
        value["windows"] = mat
            .windows
            .iter()
            .map(|window| one_window(wire, window))
            .collect();
        value["fillets"] = mat
            .fillets
            .iter()
            .map(|fillet| one_fillet(wire, fillet))
            .collect();
        value
    };
    sizes.mats.iter().map(one).collect()
}

fn one_window(wire: Wire<'_>, window: &Window) -> Value {
    json!({
        "openings": window.openings.iter().map(|opening| opening + 1).collect::<Vec<_>>(),
        "shape": outline(&window.outline),
        "face": wire.worked_size(window.face),
        "foot": wire.worked_size(window.foot),
        "left": wire.worked(window.x),
        "top": wire.worked(window.y),
        "right": wire.worked(window.right),
        "bottom": wire.worked(window.bottom),
        "fillet": window.fillet.as_ref().map(|fillet| json!({
            "sight": wire.worked_size(fillet.sight),
            "long": wire.worked_size(fillet.long),
        })),
    })
}

fn one_fillet(wire: Wire<'_>, fillet: &FilletUse) -> Value {
    json!({
        "material": code(fillet.material.as_ref()),
        "long": wire.worked_size(fillet.long),
        "strip": wire.worked(fillet.stick.used),
        "face": wire.length(fillet.face),
        "tuck": wire.length(fillet.tuck),
        "thickness": wire.length(fillet.thickness),
    })
}

fn sheet(wire: Wire<'_>, sheet: &SheetSizes) -> Value {
    json!({
        "material": code(sheet.material.as_ref()),
        "thickness": wire.length(sheet.thickness),
        "size": wire.worked_size(sheet.size),
    })
}

pub fn glazing(wire: Wire<'_>, sizes: &Sizes) -> Vec<Value> {
    let one = |pane: &sizing::GlazingSizes| {
        let mut value = sheet(wire, &pane.sheet);
        value["pane"] = json!(pane.pane);
        value["undersize"] = wire.length(pane.undersize);
        value["cover"] = wire.some(pane.cover);
        value["growth"] = wire.some(pane.growth);
        value["held_in"] = (pane.held_in + 1).into();
        value
    };
    sizes.glazing.iter().map(one).collect()
}

pub fn spacer(wire: Wire<'_>, sizes: &Sizes) -> Value {
    sizes.spacer.as_ref().map_or(Value::Null, |spacer| {
        json!({
            "material": code(spacer.material.as_ref()),
            "width": wire.some_length(spacer.width),
            "thickness": wire.length(spacer.thickness),
            "length": wire.length(spacer.length),
        })
    })
}

pub fn walls(wire: Wire<'_>, sizes: &Sizes) -> Value {
    sizes.walls.map_or(Value::Null, |walls| {
        json!({
            "material": code(sizes.wall_material.as_ref()),
            "height": wire.worked(walls.height),
            "long": wire.worked(walls.long),
            "short": wire.worked(walls.short),
            "thickness": wire.length(walls.thickness),
        })
    })
}

pub fn sink(wire: Wire<'_>, sizes: &Sizes) -> Value {
    sizes.sink.as_ref().map_or(Value::Null, |sink| {
        json!({
            "material": code(sink.material.as_ref()),
            "depth": wire.length(sink.depth),
            "hollow": wire.worked_size(sink.hollow),
        })
    })
}

pub fn strainer(wire: Wire<'_>, sizes: &Sizes) -> Value {
    sizes.strainer.map_or(Value::Null, |strainer| {
        json!({
            "outer": wire.worked_size(strainer.outer),
            "inner": wire.worked_size(strainer.inner),
            "width": wire.length(strainer.width),
            "depth": wire.length(strainer.depth),
            "uprights": strainer.uprights,
            "cross_bars": strainer.cross_bars,
            "length": wire.worked(strainer.length),
        })
    })
}

pub fn wrap(wire: Wire<'_>, sizes: &Sizes) -> Value {
    sizes.wrap.map_or(Value::Null, |wrap| {
        json!({ "board": wire.worked_size(wrap.board), "cloth": wire.worked_size(wrap.cloth) })
    })
}

pub fn mount(wire: Wire<'_>, sizes: &Sizes) -> Value {
    sizes
        .mount
        .as_ref()
        .map_or(Value::Null, |mount| sheet(wire, mount))
}

pub fn backing(wire: Wire<'_>, sizes: &Sizes) -> Vec<Value> {
    sizes.backing.iter().map(|back| sheet(wire, back)).collect()
}
