//! The jobs of the shop, in the order they were taken in.

use crate::DemoJob;

/// A job by its stem and title; the document lies in `jobs/`.
macro_rules! job {
    ($stem:literal, $title:literal) => {
        DemoJob {
            name: $stem,
            title: $title,
            toml: include_str!(concat!("../jobs/", $stem, ".toml")),
        }
    };
}

/// Every job of the shop.
pub static JOBS: &[DemoJob] = &[
    job!("harbour", "Harbour at Low Tide"),
    job!("fern", "Tall Fern, Late June"),
    job!("evening", "Three Hours of Evening"),
    job!("nine-turns", "Nine Turns"),
    job!("four-seasons", "Four Seasons"),
    job!("weir", "Down to the Weir"),
    job!("silhouette", "Aunt in Profile"),
    job!("evening-door", "Door at Evening"),
    job!("orchard", "Orchard Terrace"),
    job!("tile", "Eightfold Star"),
    job!("shoals", "Chart of the Lantern Shoals"),
    job!("gable", "The Gable"),
    job!("ridge", "Walking the Ridge"),
    job!("moths", "Seven Moths"),
    job!("ink-tide", "Ink Tide"),
    job!("night-crossing", "Night Crossing"),
    job!("poppies", "Poppies, Open and Closing"),
    job!("tide-table", "Tide Table"),
    job!("seascape", "Weather from the West"),
    job!("quarters", "Quarter Circles"),
    job!("pears", "Pears and a Copper Jug"),
    job!("winter-barn", "Barn, Second Snow"),
    job!("summer-dunes", "Dunes before Noon"),
    job!("owl", "Owl, Small Hours"),
    job!("summer", "A Summer by the Sea"),
    job!("sampler", "Sampler with Two Stags"),
    job!("hall-glass", "Hall Glass, Six-sided"),
    job!("quilt", "Block from a Bed Quilt"),
    job!("letter", "Letter, Written Both Sides"),
    job!("passage", "The Long Passage"),
    job!("ridges", "Far Ridges, Morning"),
    job!("heron", "Heron, Gold Ground"),
];
