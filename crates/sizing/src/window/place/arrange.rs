//! Rows, columns, grids and free places.

use measure::{Length, Size};
use trade::{Align, Arrangement, Key, Layout};
use working::{Axis, Given, Rule, Subject, Working};

use super::Spot;
use crate::brief::Brief;
use crate::fault::Fault;
use crate::trace::{WorkedSize, along, both, geometry};
use crate::window::Loose;

static EXTENT_ROW: Rule = geometry(
    "windows.row",
    "a row is its windows and the gutters between them",
    "windows = sum(window) + gutter × (count(window) - 1)",
);
static EXTENT_MOST: Rule = geometry(
    "windows.most",
    "across a row, the largest window counts",
    "windows = max(window)",
);
static EXTENT_GRID: Rule = geometry(
    "windows.grid",
    "a grid is its cells and the gutters between them, each cell as large as the largest window",
    "windows = cells × max(window) + gutter × (cells - 1)",
);
static EXTENT_BOX: Rule = geometry(
    "windows.box",
    "the box round all windows of the outermost mat",
    "windows = box",
);

/// Where windows of `sizes` stand, from the left and top of the first.
pub(super) fn spots(brief: &Brief<'_>, sizes: &[Size], faults: &mut Vec<Fault>) -> Vec<Spot> {
    let layout = brief.job.layout.clone().unwrap_or_default();
    let gutter = |stated: Option<trade::Measured>| stated.map_or(Length::ZERO, |gutter| *gutter);
    let (across, down) = (gutter(layout.gutter_x), gutter(layout.gutter_y));
    check_layout(brief, &layout, sizes.len(), faults);
    match layout.arrange {
        Arrangement::Row => line(sizes, across, layout.align),
        Arrangement::Column => {
            let turned: Vec<Size> = sizes.iter().map(|size| size.turned()).collect();
            line(&turned, down, layout.align)
                .into_iter()
                .map(|spot| Spot {
                    x: spot.y,
                    y: spot.x,
                    size: spot.size.turned(),
                })
                .collect()
        }
        Arrangement::Grid => grid(
            sizes,
            columns(&layout, sizes.len()),
            (across, down),
            layout.align,
        ),
        Arrangement::Free => brief
            .openings
            .iter()
            .zip(sizes)
            .map(|(opening, size)| Spot {
                x: opening.opening.x.map_or(Length::ZERO, |x| *x),
                y: opening.opening.y.map_or(Length::ZERO, |y| *y),
                size: *size,
            })
            .collect(),
    }
}

/// Columns of a grid: as stated, else as near a square as it gets.
fn columns(layout: &Layout, count: usize) -> usize {
    let stated = layout
        .columns
        .and_then(|columns| usize::try_from(columns).ok());
    stated
        .unwrap_or_else(|| (1..=count).find(|n| n * n >= count).unwrap_or(1))
        .max(1)
}

/// Windows side by side, lined up across.
fn line(sizes: &[Size], gutter: Length, align: Align) -> Vec<Spot> {
    let tallest = sizes
        .iter()
        .map(|size| size.height)
        .max()
        .unwrap_or_default();
    let mut x = Length::ZERO;
    sizes
        .iter()
        .map(|&size| {
            let spot = Spot {
                x,
                y: aligned(align, tallest, size.height),
                size,
            };
            x = x + size.width + gutter;
            spot
        })
        .collect()
}

fn aligned(align: Align, room: Length, size: Length) -> Length {
    match align {
        Align::Start => Length::ZERO,
        Align::Centre => (room - size).half_down(),
        Align::End => room - size,
    }
}

fn grid(
    sizes: &[Size],
    columns: usize,
    (across, down): (Length, Length),
    align: Align,
) -> Vec<Spot> {
    let widest = sizes
        .iter()
        .map(|size| size.width)
        .max()
        .unwrap_or_default();
    let tallest = sizes
        .iter()
        .map(|size| size.height)
        .max()
        .unwrap_or_default();
    let step = |n: usize, cell: Length, gutter: Length| {
        (cell + gutter).times(i64::try_from(n).unwrap_or(i64::MAX))
    };
    sizes
        .iter()
        .enumerate()
        .map(|(i, &size)| Spot {
            x: step(i % columns, widest, across) + aligned(align, widest, size.width),
            y: step(i.div_euclid(columns), tallest, down) + aligned(align, tallest, size.height),
            size,
        })
        .collect()
}

/// The box of a grid's cells, each as large as the largest window; none for other arrangements.
pub(super) fn cells(brief: &Brief<'_>, sizes: &[Size]) -> Option<Spot> {
    let layout = brief.job.layout.as_ref()?;
    if layout.arrange != Arrangement::Grid {
        return None;
    }
    let largest = sizes
        .iter()
        .copied()
        .reduce(|a, b| Size::new(a.width.max(b.width), a.height.max(b.height)))?;
    let columns = columns(layout, sizes.len()).min(sizes.len());
    let rows = sizes.len().div_ceil(columns);
    let long = |cells: usize, cell: Length, gutter: Option<trade::Measured>| {
        let cells = i64::try_from(cells).unwrap_or(i64::MAX);
        let gutter = gutter.map_or(Length::ZERO, |gutter| *gutter);
        cell.times(cells) + gutter.times(cells - 1)
    };
    let size = Size::new(
        long(columns, largest.width, layout.gutter_x),
        long(rows, largest.height, layout.gutter_y),
    );
    Some(Spot {
        x: Length::ZERO,
        y: Length::ZERO,
        size,
    })
}

/// The extent of the outermost mat's windows, with its working where a rule says it.
pub(super) fn extent(
    brief: &Brief<'_>,
    windows: &[Loose],
    found: Size,
    working: &mut Working,
) -> WorkedSize {
    if let [only] = windows {
        return only.face;
    }
    let layout = brief.job.layout.clone().unwrap_or_default();
    let merged = brief.mats.iter().any(|mat| !mat.mat.around.is_empty());
    let subject = Subject::of("windows", "extent");
    if merged || layout.arrange == Arrangement::Free {
        return both(working, &EXTENT_BOX, subject, found, |axis| {
            [("box", Given::job(along(found, axis)))]
        });
    }
    let mut one = |axis: Axis| {
        let stated = match axis {
            Axis::Width => layout.gutter_x,
            Axis::Height => layout.gutter_y,
        };
        let mut inputs: Vec<(&'static str, Given)> = windows
            .iter()
            .map(|window| ("window", window.face.along(axis).into()))
            .collect();
        let gutter = Given::job(stated.map_or(Length::ZERO, |gutter| *gutter));
        let rule = match (layout.arrange, axis) {
            (Arrangement::Grid, _) => {
                let columns = columns(&layout, windows.len());
                let rows = windows.len().div_ceil(columns);
                let cells = if axis == Axis::Width {
                    columns.min(windows.len())
                } else {
                    rows
                };
                inputs.push((
                    "cells",
                    Given::job(i64::try_from(cells).unwrap_or(i64::MAX)),
                ));
                &EXTENT_GRID
            }
            (Arrangement::Row, Axis::Width) | (Arrangement::Column, Axis::Height) => &EXTENT_ROW,
            _ => &EXTENT_MOST,
        };
        if !std::ptr::eq(rule, &raw const EXTENT_MOST) {
            inputs.push(("gutter", gutter));
        }
        working.by(rule, subject.along(axis), &inputs, along(found, axis))
    };
    WorkedSize {
        width: one(Axis::Width),
        height: one(Axis::Height),
    }
}

/// What a layout must say, and gutters that are too narrow or missing.
fn check_layout(brief: &Brief<'_>, layout: &Layout, count: usize, faults: &mut Vec<Fault>) {
    if layout.arrange == Arrangement::Free {
        for opening in &brief.openings {
            if opening.opening.x.is_none() || opening.opening.y.is_none() {
                faults.push(Fault::refuse(
                    "layout.no_place",
                    &opening.name,
                    "the layout is free and it does not say where it stands",
                    "",
                    "Write its `x` and `y`, from the mat's left and top edges",
                ));
            }
        }
        return;
    }
    let columns = match layout.arrange {
        Arrangement::Row => count,
        Arrangement::Column => 1,
        _ => columns(layout, count),
    };
    let least = brief.settings.length(Key::MinGutter);
    let gaps = [
        ("gutter_x", layout.gutter_x, columns > 1 && count > 1),
        ("gutter_y", layout.gutter_y, count > columns),
    ];
    for (name, gutter, used) in gaps {
        let gutter = gutter.map_or(Length::ZERO, |gutter| *gutter);
        if used && gutter < least {
            faults.push(Fault::refuse(
                "layout.gutter",
                format!("Layout, {name}"),
                format!("{} is left between openings", brief.say(gutter)),
                format!("the least strip that holds is {}", brief.say(least)),
                format!("Write `{name} = \"{}\"` or more", least.exact(brief.unit())),
            ));
        }
    }
}
