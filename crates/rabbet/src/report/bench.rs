//! What the bench sets, marks and cuts.

use sizing::{Cuts, Sizes, Takes};

use super::boards::named;
use super::words::numbered;
use super::{Report, Words};

/// Settings of the mat cutter, cut by cut, from the back.
pub fn setups(sizes: &Sizes, words: Words<'_>, report: &mut Report) {
    for setup in &sizes.setups {
        let mat = numbered("Mat", setup.mat, sizes.mats.len());
        let windows = sizes.mats.get(setup.mat).map_or(0, |mat| mat.windows.len());
        let window = numbered("window", setup.window, windows);
        let group = report.group(format!(
            "Mat cutter, from the back: {mat}, {window}, bevel {}",
            setup.angle
        ));
        match &setup.cuts {
            Cuts::Straight(cuts) => {
                for cut in cuts {
                    let side = cut.side.word();
                    words.worked(group, &format!("{side}, guide"), cut.guide);
                    words.worked(group, &format!("{side}, start"), cut.start);
                    words.worked(group, &format!("{side}, stop"), cut.stop);
                    words.worked(group, &format!("{side}, overcut"), cut.overcut);
                }
            }
            Cuts::LaidOut { left, top, size } => {
                group.row("laid out in a box", words.size(*size));
                group.row("  from the left", words.length(*left));
                group.row("  from the top", words.length(*top));
            }
        }
    }
}

/// Hinges, hangers and wire.
pub fn marks(sizes: &Sizes, words: Words<'_>, report: &mut Report) {
    if let Some(hinges) = sizes.hinges {
        let group = report.group("Hinges");
        group.row_with_path(
            "count",
            hinges.count.value.to_string(),
            words.path(hinges.count.line),
        );
        words.worked(group, "in from the corners", hinges.inset);
    }
    if let Some(hangers) = sizes.hangers {
        let group = report.group("Hangers");
        words.worked(group, "down from the top", hangers.down);
        words.worked(group, "in from the edge", hangers.inset);
        words.worked(group, "apart", hangers.apart);
        if let Some(wire) = hangers.wire {
            words.worked(group, "wire rises", wire.rise);
            words.worked(group, "wire to cut", wire.length);
            words.worked(group, "hook below the top", wire.hook);
        }
    }
}

/// Every part to cut.
pub fn bill(sizes: &Sizes, words: Words<'_>, report: &mut Report) {
    let group = report.group("Bill");
    for line in &sizes.bill {
        let mut text = format!("{} × ", line.count);
        match &line.takes {
            Takes::Sheet { size, stock, .. } => {
                text.push_str(&words.size(*size));
                if let Some(stock) = stock {
                    text.push_str(" from ");
                    text.push_str(&stock.exact(sizes.unit()));
                }
            }
            Takes::Strip { length } => text.push_str(&words.length(*length)),
        }
        if let Some(material) = &line.material {
            text.push_str(", ");
            text.push_str(&named(material));
        }
        group.row(&line.part, text);
    }
}
