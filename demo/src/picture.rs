//! The pictures: drawn by code, the same on every day.

mod birds;
mod botanical;
mod chance;
mod chart;
mod cloth;
mod curve;
mod fields;
mod figure;
mod greys;
mod harbour;
mod objects;
mod painted;
mod pen;
mod places;

use chart::Chart;

/// The picture of this name (`harbour.svg`) as SVG; none where there is no such picture.
///
/// Shape:  the view box has the proportions of the art it stands for.
/// Units:  bytes of UTF-8.
pub fn picture(name: &str) -> Option<Vec<u8>> {
    let stem = name.strip_suffix(".svg")?;
    drawn(stem)
        .or_else(|| photographed(stem))
        .or_else(|| charted(stem))
}

/// Names of all pictures, in the order of the alphabet.
pub static PICTURES: &[&str] = &[
    "birches.svg",
    "dunes.svg",
    "evening-door.svg",
    "evening.svg",
    "fern.svg",
    "gable.svg",
    "harbour.svg",
    "heron.svg",
    "ink-tide.svg",
    "jetty.svg",
    "letter.svg",
    "lone-tree.svg",
    "medal.svg",
    "mirror.svg",
    "moonrise.svg",
    "moths.svg",
    "night-crossing.svg",
    "nine-turns.svg",
    "orchard.svg",
    "owl.svg",
    "passage.svg",
    "pears.svg",
    "poppies.svg",
    "quarters.svg",
    "quilt.svg",
    "ridge-dusk.svg",
    "ridge-noon.svg",
    "ridges.svg",
    "sampler.svg",
    "scallop.svg",
    "seascape.svg",
    "shoals.svg",
    "silhouette.svg",
    "summer-dunes.svg",
    "tide-table.svg",
    "tile.svg",
    "urchin.svg",
    "weir-moon.svg",
    "weir-water.svg",
    "weir-wood.svg",
    "whelk.svg",
    "winter-barn.svg",
];

fn drawn(stem: &str) -> Option<Vec<u8>> {
    Some(match stem {
        "harbour" => harbour::harbour(),
        "night-crossing" => harbour::night_crossing(),
        "fern" => botanical::fern(),
        "poppies" => botanical::poppies(),
        "evening" => fields::evening(),
        "tide-table" => fields::tide_table(),
        "ink-tide" => fields::ink_tide(),
        "nine-turns" => fields::nine_turns(),
        "quarters" => fields::quarters(),
        "silhouette" => figure::silhouette(),
        "moths" => figure::moths(),
        "owl" => birds::owl(),
        "heron" => birds::heron(),
        "letter" => chart::letter(),
        "sampler" => cloth::sampler(),
        "quilt" => cloth::quilt(),
        "scallop" => objects::scallop(),
        "whelk" => objects::whelk(),
        "urchin" => objects::urchin(),
        "medal" => objects::medal(),
        "mirror" => objects::mirror(),
        "seascape" => painted::seascape(),
        "winter-barn" => painted::winter_barn(),
        "pears" => painted::pears(),
        "evening-door" => places::evening_door(),
        "orchard" => places::orchard(),
        "gable" => places::gable(),
        "tile" => places::tile(),
        _ => return None,
    })
}

fn photographed(stem: &str) -> Option<Vec<u8>> {
    const UPRIGHT: (f64, f64) = (800.0, 1200.0);
    const LYING: (f64, f64) = (1200.0, 800.0);
    const WEIR: (f64, f64) = (1000.0, 1400.0);
    Some(match stem {
        "birches" => greys::birches("birches", UPRIGHT, 5),
        "dunes" => greys::dunes("dunes", UPRIGHT, 14),
        "lone-tree" => greys::lone_tree("lone-tree", UPRIGHT, 8),
        "moonrise" => greys::moonrise("moonrise", UPRIGHT, 12),
        "weir-wood" => greys::birches("weir-wood", WEIR, 33),
        "weir-water" => greys::jetty("weir-water", (1600.0, 2000.0), 21),
        "weir-moon" => greys::moonrise("weir-moon", WEIR, 44),
        "ridge-dusk" => greys::ridges("ridge-dusk", LYING, 9),
        "ridge-noon" => greys::ridges("ridge-noon", LYING, 27),
        "ridges" => greys::ridges("ridges", (2000.0, 1600.0), 4),
        "jetty" => greys::jetty("jetty", LYING, 6),
        "summer-dunes" => greys::dunes("summer-dunes", (2000.0, 1600.0), 3),
        _ => return None,
    })
}

fn charted(stem: &str) -> Option<Vec<u8>> {
    let of = match stem {
        "shoals" => Chart {
            name: "shoals",
            size: (2400.0, 1800.0),
            seed: 101,
            inks: ["#9fbfbd", "#e3ead9", "#f1e3bf", "#3a3f46"],
            islands: 9,
        },
        "passage" => Chart {
            name: "passage",
            size: (2700.0, 1800.0),
            seed: 211,
            inks: ["#1e3f5a", "#5f93a3", "#e9dcb8", "#16222e"],
            islands: 10,
        },
        _ => return None,
    };
    Some(chart::chart(&of))
}
