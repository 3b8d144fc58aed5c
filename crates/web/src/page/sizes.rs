//! Every size of the piece, part by part, each opening its working.

use maud::{Markup, html};
use measure::{Length, Toward};
use sizing::{GlazingSizes, Leg, MatSizes, MemberSizes, SheetSizes, Sizes, Stack, WorkedSize};
use working::Worked;

use super::bench::{INTO_A_SPACE, Set, row};
use super::figure::Print;
use super::why::Why;

/// A table of sizes being written.
#[derive(Clone, Copy)]
struct Pen<'a> {
    print: Print,
    why: Why<'a>,
}

/// All sizes, the piece as a whole first.
pub(super) fn sizes(sizes: &Sizes, print: Print, why: Why<'_>) -> Markup {
    let pen = Pen { print, why };
    html! {
        section.sizes aria-labelledby="sizes" {
            h2 #sizes { "Sizes" span.beside { "width × height; open one to see why" } }
            (group("The piece", "", &[pen.large("Outside", sizes.outside), pen.large("Package", sizes.package)]))
            @for (index, member) in sizes.members.iter().enumerate() { (pen.member(index, member)) }
            @for (index, glazing) in sizes.glazing.iter().enumerate() {
                (pen.glazing(&numbered("Glazing", index, sizes.glazing.len()), glazing))
            }
            @for (index, mat) in sizes.mats.iter().enumerate() {
                (pen.mat(&numbered("Mat", index, sizes.mats.len()), mat))
            }
            (pen.borders(sizes))
            (pen.inside(sizes))
            (pen.hanging(sizes))
        }
    }
}

impl Pen<'_> {
    fn large(self, label: &str, size: WorkedSize) -> Markup {
        self.size(label, size, Set::Large, Toward::Nearest)
    }

    fn pair(self, label: &str, size: WorkedSize) -> Markup {
        self.size(label, size, Set::Pair, Toward::Nearest)
    }

    fn size(self, label: &str, size: WorkedSize, set: Set, toward: Toward) -> Markup {
        row(
            label,
            set,
            &self.print.size(size.size(), toward),
            &[size.width.line, size.height.line],
            self.why,
        )
    }

    fn length(self, label: &str, length: Worked<Length>) -> Markup {
        row(
            label,
            Set::Single,
            &self.print.length(length.value, Toward::Nearest),
            &[length.line],
            self.why,
        )
    }

    fn count(self, label: &str, count: Worked<i64>) -> Markup {
        row(
            label,
            Set::Single,
            &html! { span.figure { (count.value) } },
            &[count.line],
            self.why,
        )
    }

    /// A member; the outermost one's outside is the piece's own.
    fn member(self, index: usize, member: &MemberSizes) -> Markup {
        let mut rows = Vec::new();
        if index > 0 {
            rows.push(self.pair("Outside", member.outside));
        }
        rows.extend(member.sight.map(|sight| self.pair("Sight", sight)));
        rows.push(self.pair("Rabbet", member.rabbet));
        for leg in &member.legs.each {
            let name = rails(member, leg);
            rows.push(self.length(&format!("{name}, long points"), leg.long));
            rows.push(self.length(&format!("{name}, short points"), leg.short));
        }
        rows.push(self.length("Stick used", member.stick.used));
        rows.extend(
            member
                .lip_cover
                .map(|cover| self.length("Lip covers", cover)),
        );
        if let Some(floater) = &member.floater {
            rows.push(self.pair("Between the ledges", floater.ledge_opening));
            rows.extend(
                floater
                    .setback
                    .map(|setback| self.length("Set back", setback)),
            );
        }
        if let Some(fillet) = &member.fillet {
            rows.push(self.pair("Fillet, long points", fillet.long));
            rows.push(self.pair("Fillet, sight", fillet.sight));
        }
        rows.extend(member.stack.iter().flat_map(|stack| self.stack(stack)));
        let material = member
            .material
            .as_ref()
            .map(|material| material.title())
            .unwrap_or_default();
        group(&initial(&member.name), material, &rows)
    }

    fn stack(self, stack: &Stack) -> Vec<Markup> {
        let mut rows = vec![self.length("Package, front to back", stack.total)];
        if stack.proud.value.is_positive() {
            rows.push(self.length("Stands proud", stack.proud));
        } else {
            rows.push(self.length("Room left in the rabbet", stack.slack));
        }
        rows.extend(stack.clip.map(|clip| self.length("Clip", clip)));
        rows
    }

    fn sheet(self, heading: &str, sheet: &SheetSizes, toward: Toward, more: Vec<Markup>) -> Markup {
        let mut rows = vec![self.size("Cut", sheet.size, Set::Large, toward)];
        rows.extend(more);
        let material = sheet
            .material
            .as_ref()
            .map(|material| material.title())
            .unwrap_or_default();
        group(heading, material, &rows)
    }

    fn glazing(self, heading: &str, glazing: &GlazingSizes) -> Markup {
        let mut more = Vec::new();
        more.extend(
            glazing
                .cover
                .map(|cover| self.length("Lip over it, pushed aside", cover)),
        );
        more.extend(
            glazing
                .growth
                .map(|growth| self.length("Grows with warmth", growth)),
        );
        self.sheet(heading, &glazing.sheet, INTO_A_SPACE, more)
    }

    fn mat(self, heading: &str, mat: &MatSizes) -> Markup {
        let mut more = Vec::new();
        for (index, window) in mat.windows.iter().enumerate() {
            let name = numbered("Window", index, mat.windows.len());
            more.push(self.large(&name, window.face));
            more.push(self.length(&format!("{name}, from the left"), window.x));
            more.push(self.length(&format!("{name}, from the top"), window.y));
            more.extend(
                window
                    .fillet
                    .as_ref()
                    .map(|fillet| self.pair(&format!("{name}, fillet sight"), fillet.sight)),
            );
        }
        more.extend(
            mat.reveal_seen
                .map(|seen| self.length("Seen of the mat below", seen)),
        );
        self.sheet(heading, &mat.sheet, Toward::Nearest, more)
    }

    fn borders(self, sizes: &Sizes) -> Markup {
        let Some(borders) = &sizes.borders else {
            return html! {};
        };
        let mut rows = Vec::new();
        for (side, border) in borders.cut.named() {
            rows.push(self.length(&initial(&format!("{side}, as cut")), border));
        }
        for (side, border) in borders.visible.iter().flat_map(|visible| visible.named()) {
            rows.push(self.length(&initial(&format!("{side}, as seen")), border));
        }
        group("Borders", "", &rows)
    }

    fn inside(self, sizes: &Sizes) -> Markup {
        let mut rows = Vec::new();
        rows.extend(sizes.air.map(|air| self.length("Air before the art", air)));
        if let Some(walls) = &sizes.walls {
            rows.push(self.length("Walls, high", walls.height));
            rows.push(self.length("Walls, long", walls.long));
            rows.push(self.length("Walls, short", walls.short));
        }
        if let Some(wrap) = &sizes.wrap {
            rows.push(self.pair("Board under the cloth", wrap.board));
            rows.push(self.pair("Cloth, cut", wrap.cloth));
        }
        rows.extend(
            sizes
                .sink
                .iter()
                .map(|sink| self.pair("Hollow for the art", sink.hollow)),
        );
        if let Some(strainer) = &sizes.strainer {
            rows.push(self.pair("Strainer, over its bars", strainer.outer));
            rows.push(self.pair("Strainer, between its bars", strainer.inner));
            rows.push(self.length("Strainer, all bars", strainer.length));
        }
        html! {
            @if !rows.is_empty() { (group("Inside", "", &rows)) }
            @if let Some(mount) = &sizes.mount { (self.sheet("Mount", mount, Toward::Nearest, Vec::new())) }
            @for (index, back) in sizes.backing.iter().enumerate() {
                (self.sheet(&numbered("Backing", index, sizes.backing.len()), back, Toward::Nearest, Vec::new()))
            }
        }
    }

    fn hanging(self, sizes: &Sizes) -> Markup {
        let mut rows = Vec::new();
        if let Some(hinges) = &sizes.hinges {
            rows.push(self.count("Hinges", hinges.count));
            rows.push(self.length("Hinges, from the corners", hinges.inset));
        }
        if let Some(hangers) = &sizes.hangers {
            rows.push(self.length("Hangers, from the top", hangers.down));
            rows.push(self.length("Hangers, from the side", hangers.inset));
            rows.push(self.length("Hangers, apart", hangers.apart));
            if let Some(wire) = &hangers.wire {
                rows.push(self.length("Wire, to cut", wire.length));
                rows.push(self.length("Hook, below the top", wire.hook));
            }
        }
        rows.extend(sizes.cover.map(|cover| self.pair("Dust cover", cover)));
        if rows.is_empty() {
            html! {}
        } else {
            group("Holding and hanging", "", &rows)
        }
    }
}

/// A part with its rows.
fn group(heading: &str, material: &str, rows: &[Markup]) -> Markup {
    html! {
        section.part {
            h3 { (heading) @if !material.is_empty() { " " span.beside { (material) } } }
            @for row in rows { (row) }
        }
    }
}

/// Which rails, and how many: `Sides (2)`.
fn rails(member: &MemberSizes, leg: &Leg) -> String {
    let outside = member.outside.size();
    let word = if outside.width == outside.height {
        "Rails"
    } else if leg.long.value == outside.height {
        "Sides"
    } else {
        "Top and bottom"
    };
    format!("{word} ({})", leg.count)
}

/// The name with a capital.
fn initial(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

/// A part's name, numbered where there are several.
fn numbered(name: &str, index: usize, count: usize) -> String {
    if count > 1 {
        format!("{name} {}", index + 1)
    } else {
        name.to_owned()
    }
}
