//! Every size of a piece, as JSON.

use serde_json::{Value, json};
use sizing::{ArtSizes, Sizes};

use super::{Wire, bench, boards, faults, members};

/// The whole derivation; `working` is added where it is asked for.
pub fn sizes(sizes: &Sizes) -> Value {
    let wire = Wire {
        unit: sizes.unit(),
        working: &sizes.working,
    };
    json!({
        "units": sizes.units,
        "sides": sizes.sides,
        "double_sided": sizes.double_sided,
        "refused": sizes.is_refused(),
        "outside": wire.worked_size(sizes.outside),
        "package": wire.worked_size(sizes.package),
        "seen": wire.worked_size(sizes.seen()),
        "air": wire.some(sizes.air),
        "art": sizes.art.iter().map(|art| one_art(wire, art)).collect::<Vec<_>>(),
        "borders": boards::borders(wire, sizes),
        "mats": boards::mats(wire, sizes),
        "glazing": boards::glazing(wire, sizes),
        "spacer": boards::spacer(wire, sizes),
        "walls": boards::walls(wire, sizes),
        "wrap": boards::wrap(wire, sizes),
        "sink": boards::sink(wire, sizes),
        "strainer": boards::strainer(wire, sizes),
        "mount": boards::mount(wire, sizes),
        "backing": boards::backing(wire, sizes),
        "cover": wire.some_size(sizes.cover),
        "members": members::members(wire, sizes),
        "hinges": bench::hinges(wire, sizes),
        "hangers": bench::hangers(wire, sizes),
        "setups": bench::setups(wire, sizes),
        "bill": bench::bill(wire, sizes),
        "faults": faults(&sizes.faults, &sizes.working),
    })
}

fn one_art(wire: Wire<'_>, art: &ArtSizes) -> Value {
    json!({
        "largest": wire.worked_size(art.largest),
        "smallest": wire.worked_size(art.smallest),
        "sheet": art.sheet.map(|sheet| super::size(sheet, wire.unit)),
        "thickness": wire.length(art.thickness),
        "lean": wire.some(art.lean),
    })
}
