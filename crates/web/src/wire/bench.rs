//! What the bench sets, marks and cuts, as JSON.

use serde_json::{Value, json};
use sizing::{Cut, Cuts, Sizes, Takes};

use super::{Wire, angle, code, size, word};

pub fn hinges(wire: Wire<'_>, sizes: &Sizes) -> Value {
    sizes.hinges.map_or(
        Value::Null,
        |hinges| json!({ "count": hinges.count.value, "inset": wire.worked(hinges.inset) }),
    )
}

pub fn hangers(wire: Wire<'_>, sizes: &Sizes) -> Value {
    sizes.hangers.map_or(Value::Null, |hangers| {
        json!({
            "down": wire.worked(hangers.down),
            "inset": wire.worked(hangers.inset),
            "apart": wire.worked(hangers.apart),
            "wire": hangers.wire.map(|marks| json!({
                "rise": wire.worked(marks.rise),
                "length": wire.worked(marks.length),
                "hook": wire.worked(marks.hook),
            })),
        })
    })
}

pub fn setups(wire: Wire<'_>, sizes: &Sizes) -> Vec<Value> {
    let one = |cut: &Cut| {
        json!({
            "side": cut.side.word(),
            "guide": wire.worked(cut.guide),
            "start": wire.worked(cut.start),
            "stop": wire.worked(cut.stop),
            "overcut": wire.worked(cut.overcut),
        })
    };
    sizes
        .setups
        .iter()
        .map(|setup| {
            let (straight, laid_out) = match &setup.cuts {
                Cuts::Straight(cuts) => {
                    (Some(cuts.iter().map(one).collect::<Vec<_>>()), Value::Null)
                }
                Cuts::LaidOut {
                    left,
                    top,
                    size: area,
                } => {
                    let laid_out = json!({
                        "left": wire.length(*left),
                        "top": wire.length(*top),
                        "size": size(*area, wire.unit),
                    });
                    (None, laid_out)
                }
            };
            json!({
                "mat": setup.mat + 1,
                "window": setup.window + 1,
                "bevel": word(&setup.bevel),
                "angle": angle(setup.angle),
                "straight": straight,
                "laid_out": laid_out,
            })
        })
        .collect()
}

pub fn bill(wire: Wire<'_>, sizes: &Sizes) -> Vec<Value> {
    sizes
        .bill
        .iter()
        .map(|line| {
            let (sheet, stock, strip) = match &line.takes {
                Takes::Sheet {
                    size: part, stock, ..
                } => (
                    Some(size(*part, wire.unit)),
                    stock.map(|stock| size(stock, wire.unit)),
                    None,
                ),
                Takes::Strip { length } => (None, None, Some(wire.length(*length))),
            };
            json!({
                "part": line.part,
                "material": code(line.material.as_ref()),
                "count": line.count,
                "sheet": sheet,
                "stock": stock,
                "strip": strip,
            })
        })
        .collect()
}
