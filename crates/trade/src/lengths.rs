//! Every length a job states, one by one, for the bounds that hold for all of them.

use measure::{Length, Size};

use crate::{
    Art, Backing, Borders, Job, Layer, Mat, Material, Measured, Member, Opening, Pair, Sink,
    Spacer, Walls,
};

/// Who is shown a length: its name in the document, the length, whether it may be negative.
type See<'a> = &'a mut dyn FnMut(&'static str, Length, bool);

impl Job {
    /// Shows every length of the document to `see`.
    pub fn each_length(&self, see: See<'_>) {
        self.art.iter().for_each(|art| art_lengths(art, see));
        self.frame
            .iter()
            .for_each(|member| member_lengths(member, see));
        for glazing in &self.glazing {
            some("glazing thickness", glazing.thickness, see);
            some("glazing undersize", glazing.undersize, see);
        }
        self.mat.iter().for_each(|mat| mat_lengths(mat, see));
        self.opening
            .iter()
            .for_each(|opening| opening_lengths(opening, see));
        self.backing
            .iter()
            .for_each(|backing| backing_lengths(backing, see));
        self.material
            .iter()
            .for_each(|material| material_lengths(material, see));
        self.package_lengths(see);
        self.back_lengths(see);
        self.fit_lengths(see);
    }

    /// What stands round and behind the art, in the package.
    fn package_lengths(&self, see: See<'_>) {
        if let Some(borders) = &self.borders {
            border_lengths(borders, see);
        }
        if let Some(layout) = &self.layout {
            some("gutter_x", layout.gutter_x, see);
            some("gutter_y", layout.gutter_y, see);
        }
        if let Some(Spacer {
            width, thickness, ..
        }) = &self.spacer
        {
            some("spacer width", *width, see);
            some("spacer thickness", *thickness, see);
        }
        if let Some(Walls {
            thickness,
            height,
            display,
            ..
        }) = &self.walls
        {
            some("wall thickness", *thickness, see);
            some("wall height", *height, see);
            pair("display", *display, see);
        }
        if let Some(Sink { depth, room, .. }) = &self.sink {
            some("sink depth", *depth, see);
            some("sink room", *room, see);
        }
        if let Some(wrap) = &self.wrap {
            see("wrap ground", *wrap.ground, false);
            see("wrap cloth", *wrap.cloth, false);
            some("wrap turn", wrap.turn, see);
        }
        if let Some(Layer { thickness, .. }) = &self.mount {
            some("mount thickness", *thickness, see);
        }
    }

    /// What holds the package, stiffens the frame and hangs it.
    fn back_lengths(&self, see: See<'_>) {
        for offset in self.clips.iter().flat_map(|clips| &clips.offsets) {
            see("clip offset", **offset, false);
        }
        if let Some(build_up) = &self.build_up {
            some("build-up depth", build_up.depth, see);
            some("build-up width", build_up.width, see);
        }
        if let Some(strainer) = &self.strainer {
            see("strainer width", *strainer.width, false);
            see("strainer depth", *strainer.depth, false);
        }
        if let Some(hardware) = &self.hardware {
            some("hanger down", hardware.down, see);
            some("hanger inset", hardware.inset, see);
            some("screw", hardware.screw, see);
            some("bumpers", hardware.bumpers, see);
        }
        some(
            "cover inside",
            self.cover.as_ref().and_then(|cover| cover.inside),
            see,
        );
    }

    fn fit_lengths(&self, see: See<'_>) {
        let fit = self.fit.unwrap_or_default();
        pair("fit rabbet", fit.rabbet, see);
        pair("fit frame", fit.frame, see);
        pair("fit package", fit.package, see);
        pair("fit sight", fit.sight, see);
        pair("fit outside", fit.outside, see);
    }
}

fn some(name: &'static str, length: Option<Measured>, see: See<'_>) {
    if let Some(length) = length {
        see(name, *length, false);
    }
}

fn pair(name: &'static str, size: Option<Pair>, see: See<'_>) {
    if let Some(Pair(Size { width, height })) = size {
        see(name, width, false);
        see(name, height, false);
    }
}

fn art_lengths(art: &Art, see: See<'_>) {
    see("art width", *art.width, false);
    some("art height", art.height, see);
    for reading in art.width_readings.iter().chain(&art.height_readings) {
        see("art reading", **reading, false);
    }
    for diagonal in art.diagonals.iter().flatten() {
        see("art diagonal", **diagonal, false);
    }
    pair("art sheet", art.sheet, see);
    if let Some(deckle) = art.deckle {
        for valley in [deckle.left, deckle.right, deckle.top, deckle.bottom] {
            see("deckle", *valley, false);
        }
    }
    see("art thickness", *art.thickness, false);
    if let Some(overlap) = art.overlap {
        see("art overlap", *overlap, true);
    }
    some("art margin", art.margin, see);
    some("art lift", art.lift, see);
    if let Some(signature) = art.signature {
        for length in [signature.x, signature.y] {
            see("signature", *length, true);
        }
        for length in [signature.width, signature.height] {
            see("signature", *length, false);
        }
    }
    for place in [art.x, art.y].into_iter().flatten() {
        see("art place", *place, true);
    }
    for mark in &art.marks {
        see("mark place", *mark.x, false);
        see("mark place", *mark.y, false);
        some("mark width", mark.width, see);
        some("mark height", mark.height, see);
    }
}

fn member_lengths(member: &Member, see: See<'_>) {
    for (name, length) in [
        ("frame face", member.face),
        ("frame lip", member.lip),
        ("frame rabbet_depth", member.rabbet_depth),
        ("frame height", member.height),
        ("frame allowance", member.allowance),
        ("frame tail", member.tail),
        ("frame stick", member.stick),
        ("floater gap", member.gap),
        ("floater wall", member.wall),
        ("floater ledge", member.ledge),
    ] {
        some(name, length, see);
    }
    if let Some(fillet) = &member.fillet {
        some("fillet face", fillet.face, see);
        some("fillet thickness", fillet.thickness, see);
    }
}

fn mat_lengths(mat: &Mat, see: See<'_>) {
    some("mat thickness", mat.thickness, see);
    some("mat reveal", mat.reveal, see);
    some("mat groove", mat.groove, see);
    if let Some(fillet) = &mat.fillet {
        some("fillet face", fillet.face, see);
        some("fillet tuck", fillet.tuck, see);
        some("fillet thickness", fillet.thickness, see);
    }
}

fn opening_lengths(opening: &Opening, see: See<'_>) {
    pair("opening window", opening.window, see);
    some("opening radius", opening.radius, see);
    some("opening rise", opening.rise, see);
    some("opening corner", opening.corner, see);
    for [x, y] in &opening.points {
        see("opening point", **x, false);
        see("opening point", **y, false);
    }
    some("opening x", opening.x, see);
    some("opening y", opening.y, see);
}

fn backing_lengths(backing: &Backing, see: See<'_>) {
    some("backing thickness", backing.thickness, see);
    some("backing undersize", backing.undersize, see);
}

fn material_lengths(material: &Material, see: See<'_>) {
    if let Some(thickness) = &material.thickness {
        see("material thickness", **thickness.is(), false);
    }
    for sheet in &material.sheets {
        pair("material sheet", Some(*sheet), see);
    }
    for stick in &material.sticks {
        see("material stick", **stick, false);
    }
    let Some(profile) = &material.profile else {
        return;
    };
    for (name, length) in [
        ("profile face", profile.face),
        ("profile height", profile.height),
        ("profile lip", profile.lip),
        ("profile rabbet_depth", profile.rabbet_depth),
    ] {
        see(name, *length, false);
    }
    for corner in profile.outline.iter().flatten() {
        see("profile outline", **corner, false);
    }
}

fn border_lengths(borders: &Borders, see: See<'_>) {
    for (name, border) in [
        ("border", borders.all),
        ("left border", borders.left),
        ("right border", borders.right),
        ("top border", borders.top),
        ("bottom border", borders.bottom),
    ] {
        some(name, border, see);
    }
    if let Some(extra) = borders.bottom_extra {
        see("bottom_extra", *extra, true);
    }
}
