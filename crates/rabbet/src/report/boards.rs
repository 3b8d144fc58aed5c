//! Mats with their windows, and the sheets of the package.

use sizing::{MatSizes, SheetSizes, Sizes, Window};
use trade::Material;

use super::words::numbered;
use super::{Group, Report, Words};
use web::wire;

/// Borders, then mat by mat.
pub fn mats(sizes: &Sizes, words: Words<'_>, report: &mut Report) {
    if let Some(borders) = sizes.borders {
        let group = report.group("Borders");
        for (side, border) in borders.cut.named() {
            words.worked(group, &format!("{side}, as cut"), border);
        }
        for (side, border) in borders.visible.into_iter().flat_map(sizing::Sides::named) {
            words.worked(group, &format!("{side}, seen"), border);
        }
    }
    for (i, mat) in sizes.mats.iter().enumerate() {
        let group = report.group(numbered("Mat", i, sizes.mats.len()));
        one_mat(mat, words, group);
        for (w, window) in mat.windows.iter().enumerate() {
            one_window(
                window,
                &numbered("window", w, mat.windows.len()),
                words,
                group,
            );
        }
        for (f, fillet) in mat.fillets.iter().enumerate() {
            let label = numbered("fillet", f, mat.fillets.len());
            words.worked_size(group, &format!("{label}, long points"), fillet.long);
            words.worked(group, &format!("{label}, strip"), fillet.stick.used);
        }
    }
}

fn one_mat(mat: &MatSizes, words: Words<'_>, group: &mut Group) {
    words.worked_size(group, "outside", mat.sheet.size);
    group.some("board", mat.sheet.material.as_deref().map(named));
    group.row("thickness", words.thickness(mat.sheet.thickness));
    group.row("bevel", wire::word(&mat.bevel));
    words.worked(group, "bevel runs", mat.slope);
    words.some(group, "reveal seen", mat.reveal_seen);
    group.some(
        "groove outside",
        mat.groove.map(|groove| words.length(groove)),
    );
}

fn one_window(window: &Window, label: &str, words: Words<'_>, group: &mut Group) {
    group.row(label, wire::outline(&window.outline));
    words.worked_size(group, "  at the face", window.face);
    words.worked_size(group, "  at the foot", window.foot);
    words.worked(group, "  from the left", window.x);
    words.worked(group, "  from the top", window.y);
    words.worked(group, "  from the right", window.right);
    words.worked(group, "  from the bottom", window.bottom);
    if let Some(fillet) = &window.fillet {
        words.worked_size(group, "  inside its fillet", fillet.sight);
    }
}

/// Glazing, spacer, walls, wrap, mount, backing, cover.
pub fn sheets(sizes: &Sizes, words: Words<'_>, report: &mut Report) {
    for (i, pane) in sizes.glazing.iter().enumerate() {
        let group = report.group(numbered("Glazing", i, sizes.glazing.len()));
        one_sheet(&pane.sheet, words, group);
        group.row("undersize", words.length(pane.undersize));
        words.some(group, "lip left over it", pane.cover);
        words.some(group, "grows by", pane.growth);
    }
    if let Some(spacer) = &sizes.spacer {
        let group = report.group("Spacer");
        group.some("strip", spacer.material.as_deref().map(named));
        group.some("width", spacer.width.map(|width| words.length(width)));
        group.row("thickness", words.thickness(spacer.thickness));
        group.row("in all", words.length(spacer.length));
    }
    if let Some(walls) = &sizes.walls {
        let group = report.group("Walls");
        group.some("board", sizes.wall_material.as_deref().map(named));
        words.worked(group, "height", walls.height);
        words.worked(group, "two long", walls.long);
        words.worked(group, "two short", walls.short);
        group.row("thickness", words.thickness(walls.thickness));
    }
    build(sizes, words, report);
    if let Some(wrap) = &sizes.wrap {
        let group = report.group("Wrap");
        words.worked_size(group, "board", wrap.board);
        words.worked_size(group, "cloth", wrap.cloth);
    }
    if let Some(mount) = &sizes.mount {
        one_sheet(mount, words, report.group("Mount"));
    }
    for (i, back) in sizes.backing.iter().enumerate() {
        one_sheet(
            back,
            words,
            report.group(numbered("Backing", i, sizes.backing.len())),
        );
    }
    if let Some(cover) = sizes.cover {
        words.worked_size(report.group("Dust cover"), "size", cover);
    }
}

/// The build-up round the art, and the stiffening frame in the back.
fn build(sizes: &Sizes, words: Words<'_>, report: &mut Report) {
    if let Some(sink) = &sizes.sink {
        let group = report.group("Sink");
        group.some("board", sink.material.as_deref().map(named));
        words.worked_size(group, "hollow", sink.hollow);
        group.row("depth", words.length(sink.depth));
    }
    if let Some(strainer) = &sizes.strainer {
        let group = report.group("Strainer");
        words.worked_size(group, "over its bars", strainer.outer);
        words.worked_size(group, "between its bars", strainer.inner);
        group.row("bars, width", words.length(strainer.width));
        group.row("bars, depth", words.length(strainer.depth));
        group.row("uprights inside", strainer.uprights.to_string());
        group.row("level bars inside", strainer.cross_bars.to_string());
        words.worked(group, "all bars", strainer.length);
    }
}

fn one_sheet(sheet: &SheetSizes, words: Words<'_>, group: &mut Group) {
    words.worked_size(group, "size", sheet.size);
    group.some("material", sheet.material.as_deref().map(named));
    group.row("thickness", words.thickness(sheet.thickness));
}

/// A material by code and name.
pub fn named(material: &Material) -> String {
    format!("{} ({})", material.code, material.title())
}
