//! Sizes and faults as plain text, for golden files: every number exact, one part a line.

use std::fmt::{self, Write as _};

use measure::{Length, Size, Unit};
use sizing::{Cuts, Fault, MemberSizes, Outline, Severity, Sizes, StickUse, Takes, Window};
use trade::DocumentFault;

/// Every size of a piece, as text.
///
/// Shape:  art, borders, mats, package, members outside in, sheets, marks, cutter settings, bill, faults.
/// Units:  exact, in the unit the job speaks in.
pub fn sizes_text(sizes: &Sizes) -> String {
    let mut page = Page {
        sizes,
        unit: sizes.unit(),
        text: String::new(),
    };
    page.write().expect("writing to a string");
    page.text
}

/// Faults of sizing, the worst first, as text: word, code, sentence.
pub fn faults_text(faults: &[Fault]) -> String {
    faults.iter().fold(String::new(), |mut text, fault| {
        let word = match fault.severity {
            Severity::Refuse => "stop",
            Severity::Warn => "mind",
        };
        writeln!(text, "{word} {}\n  {}", fault.code, fault.sentence())
            .expect("writing to a string");
        text
    })
}

/// Faults of a document as text: code and sentence, place, the line as written.
pub fn document_faults_text(faults: &[DocumentFault]) -> String {
    faults.iter().fold(String::new(), |mut text, fault| {
        writeln!(text, "unread {}\n  {fault}", fault.code()).expect("writing to a string");
        if let Some(place) = fault.place() {
            let at = [
                place.line.map(|line| format!("line {line}")),
                place.column.map(|column| format!("column {column}")),
                place.pointer.clone(),
            ];
            let at: Vec<String> = at.into_iter().flatten().collect();
            if !at.is_empty() {
                writeln!(text, "  at {}", at.join(", ")).expect("writing to a string");
            }
            if let Some(line) = place.text.as_deref().filter(|line| !line.is_empty()) {
                writeln!(text, "  | {line}").expect("writing to a string");
            }
        }
        text
    })
}

struct Page<'a> {
    sizes: &'a Sizes,
    unit: Unit,
    text: String,
}

impl Page<'_> {
    fn write(&mut self) -> fmt::Result {
        self.art()?;
        self.borders()?;
        self.mats()?;
        self.frames()?;
        self.sheets()?;
        self.marks()?;
        self.setups()?;
        self.bill()?;
        let faults = faults_text(&self.sizes.faults);
        if !faults.is_empty() {
            write!(self.text, "\n{faults}")?;
        }
        Ok(())
    }

    fn long(&self, length: Length) -> String {
        length.exact(self.unit)
    }

    fn size(&self, size: Size) -> String {
        size.exact(self.unit)
    }

    fn art(&mut self) -> fmt::Result {
        for (i, art) in self.sizes.art.iter().enumerate() {
            let (least, most) = (art.smallest.size(), art.largest.size());
            write!(self.text, "art {}: {}", i + 1, self.size(least))?;
            if most != least {
                write!(self.text, " to {}", self.size(most))?;
            }
            write!(self.text, ", {} thick", self.long(art.thickness))?;
            if let Some(sheet) = art.sheet {
                write!(self.text, ", sheet {}", self.size(sheet))?;
            }
            if let Some(lean) = art.lean {
                write!(self.text, ", leans {}", self.long(lean.value))?;
            }
            writeln!(self.text)?;
        }
        Ok(())
    }

    fn borders(&mut self) -> fmt::Result {
        let Some(borders) = &self.sizes.borders else {
            return Ok(());
        };
        let list = |sides: sizing::Sides<working::Worked<Length>>| {
            let each = sides
                .named()
                .map(|(name, border)| format!("{name} {}", self.long(border.value)));
            each.join(", ")
        };
        let (cut, visible) = (list(borders.cut), borders.visible.map(list));
        writeln!(self.text, "borders cut: {cut}")?;
        if let Some(visible) = visible {
            writeln!(self.text, "borders seen: {visible}")?;
        }
        Ok(())
    }

    fn mats(&mut self) -> fmt::Result {
        for (i, mat) in self.sizes.mats.iter().enumerate() {
            write!(
                self.text,
                "mat {}: {}, {} thick, {:?} bevel, slope {}",
                i + 1,
                self.size(mat.sheet.size.size()),
                self.long(mat.sheet.thickness),
                mat.bevel,
                self.long(mat.slope.value)
            )?;
            if let Some(seen) = mat.reveal_seen {
                write!(self.text, ", reveal seen {}", self.long(seen.value))?;
            }
            if let Some(groove) = mat.groove {
                write!(self.text, ", groove {}", self.long(groove))?;
            }
            writeln!(self.text)?;
            for (w, window) in mat.windows.iter().enumerate() {
                self.window(w, window)?;
            }
            for fillet in &mat.fillets {
                let used = self.stick(&fillet.stick);
                writeln!(
                    self.text,
                    "  fillet long {}{used}",
                    self.size(fillet.long.size())
                )?;
            }
        }
        Ok(())
    }

    fn window(&mut self, index: usize, window: &Window) -> fmt::Result {
        let seen: Vec<String> = window
            .openings
            .iter()
            .map(|o| (o + 1).to_string())
            .collect();
        writeln!(
            self.text,
            "  window {} over {}: {}, foot {}, left {}, top {}, right {}, bottom {}{}",
            index + 1,
            seen.join("+"),
            self.size(window.face.size()),
            self.size(window.foot.size()),
            self.long(window.x.value),
            self.long(window.y.value),
            self.long(window.right.value),
            self.long(window.bottom.value),
            self.outline(&window.outline)
        )?;
        if let Some(fillet) = &window.fillet {
            writeln!(
                self.text,
                "    fillet sight {}, long {}",
                self.size(fillet.sight.size()),
                self.size(fillet.long.size())
            )?;
        }
        Ok(())
    }

    fn outline(&self, outline: &Outline) -> String {
        match outline {
            Outline::Rectangle => String::new(),
            Outline::Rounded(radius) => format!(", corners of radius {}", self.long(*radius)),
            Outline::Oval => ", oval".to_owned(),
            Outline::Arch(rise) => format!(", arch rising {}", self.long(*rise)),
            Outline::Polygon(corners) => {
                let each = corners
                    .iter()
                    .map(|[x, y]| format!("({}, {})", self.long(*x), self.long(*y)));
                format!(", corners {}", each.collect::<Vec<_>>().join(" "))
            }
        }
    }

    fn frames(&mut self) -> fmt::Result {
        let package = self.size(self.sizes.package.size());
        writeln!(self.text, "package: {package}")?;
        for member in &self.sizes.members {
            self.member(member)?;
        }
        let (outside, seen) = (self.sizes.outside.size(), self.sizes.seen().size());
        let (outside, seen) = (self.size(outside), self.size(seen));
        writeln!(self.text, "outside: {outside}\nseen: {seen}")
    }

    fn member(&mut self, member: &MemberSizes) -> fmt::Result {
        write!(
            self.text,
            "{}: holds {}",
            member.name,
            self.size(member.contents.size())
        )?;
        write!(self.text, ", rabbet {}", self.size(member.rabbet.size()))?;
        if let Some(sight) = member.sight {
            write!(self.text, ", sight {}", self.size(sight.size()))?;
        }
        write!(self.text, ", outside {}", self.size(member.outside.size()))?;
        write!(self.text, ", face {}", self.long(member.face.value))?;
        if let Some(cover) = member.lip_cover {
            write!(self.text, ", lip covers {}", self.long(cover.value))?;
        }
        writeln!(self.text)?;
        if let Some(floater) = &member.floater {
            write!(
                self.text,
                "  ledge opening {}",
                self.size(floater.ledge_opening.size())
            )?;
            if let Some(setback) = floater.setback {
                write!(self.text, ", setback {}", self.long(setback.value))?;
            }
            writeln!(self.text)?;
        }
        self.legs(member)?;
        if let Some(fillet) = &member.fillet {
            let used = self.stick(&fillet.stick);
            writeln!(
                self.text,
                "  fillet sight {}, long {}{used}",
                self.size(fillet.sight.size()),
                self.size(fillet.long.size())
            )?;
        }
        self.stack(member)
    }

    fn legs(&mut self, member: &MemberSizes) -> fmt::Result {
        for leg in &member.legs.each {
            writeln!(
                self.text,
                "  {} legs: short {}, rabbet {}, long {}",
                leg.count,
                self.long(leg.short.value),
                self.long(leg.rabbet.value),
                self.long(leg.long.value)
            )?;
        }
        write!(self.text, "  mitre {}", member.legs.mitre.value)?;
        if let Some((gauge, blade)) = member.legs.compound {
            write!(
                self.text,
                ", gauge {}, blade {}",
                gauge.value.print_four_decimals_nearest(),
                blade.value.print_four_decimals_nearest()
            )?;
        }
        let used = self.stick(&member.stick);
        writeln!(self.text, "{used}")
    }

    fn stick(&self, stick: &StickUse) -> String {
        let one = if stick.one_stick.value {
            "fits"
        } else {
            "exceeds"
        };
        let mut text = format!(
            ", uses {} and {one} a stick of {}",
            self.long(stick.used.value),
            self.long(stick.stick)
        );
        if let Some(charge) = stick.charge {
            let charged = stick.charged.unwrap_or(charge);
            write!(
                text,
                ", charge {} rounded to {}",
                self.long(charge.value),
                self.long(charged.value)
            )
            .expect("writing to a string");
        }
        text
    }

    fn stack(&mut self, member: &MemberSizes) -> fmt::Result {
        let Some(stack) = &member.stack else {
            return Ok(());
        };
        for layer in &stack.layers {
            writeln!(
                self.text,
                "  layer {}: {}, to {} behind",
                layer.what.word(),
                self.long(layer.thickness.value),
                self.long(layer.behind)
            )?;
        }
        write!(
            self.text,
            "  stack {}, depth {}, tail {}, slack {}, proud {}",
            self.long(stack.total.value),
            self.long(stack.depth),
            self.long(stack.tail),
            self.long(stack.slack.value),
            self.long(stack.proud.value)
        )?;
        if let Some(strips) = stack.build_up {
            write!(self.text, ", built up {}", self.long(strips))?;
        }
        if let Some(clip) = stack.clip {
            write!(self.text, ", clip {}", self.long(clip.value))?;
        }
        writeln!(self.text)
    }

    fn sheets(&mut self) -> fmt::Result {
        let sizes = self.sizes;
        for pane in &sizes.glazing {
            write!(self.text, "glazing: {}", self.size(pane.sheet.size.size()))?;
            if let Some(cover) = pane.cover {
                write!(self.text, ", lip left {}", self.long(cover.value))?;
            }
            if let Some(growth) = pane.growth {
                write!(self.text, ", grows {}", self.long(growth.value))?;
            }
            writeln!(self.text)?;
        }
        if let Some(walls) = &sizes.walls {
            let each = [
                walls.long.value,
                walls.short.value,
                walls.height.value,
                walls.thickness,
            ];
            let [long, short, high, thick] = each.map(|length| self.long(length));
            writeln!(
                self.text,
                "walls: long {long}, short {short}, {high} high, {thick} thick"
            )?;
        }
        if let Some(wrap) = &sizes.wrap {
            let (board, cloth) = (self.size(wrap.board.size()), self.size(wrap.cloth.size()));
            writeln!(self.text, "wrap: board {board}, cloth {cloth}")?;
        }
        if let Some(mount) = &sizes.mount {
            writeln!(self.text, "mount: {}", self.size(mount.size.size()))?;
        }
        for back in &sizes.backing {
            writeln!(self.text, "backing: {}", self.size(back.size.size()))?;
        }
        if let Some(air) = sizes.air {
            writeln!(self.text, "air: {}", self.long(air.value))?;
        }
        Ok(())
    }

    fn marks(&mut self) -> fmt::Result {
        let sizes = self.sizes;
        if let Some(hinges) = &sizes.hinges {
            let inset = self.long(hinges.inset.value);
            writeln!(self.text, "hinges: {}, inset {inset}", hinges.count.value)?;
        }
        if let Some(hangers) = &sizes.hangers {
            let each = [hangers.down.value, hangers.inset.value, hangers.apart.value];
            let [down, inset, apart] = each.map(|length| self.long(length));
            write!(
                self.text,
                "hangers: {down} down, inset {inset}, {apart} apart"
            )?;
            if let Some(wire) = &hangers.wire {
                let each = [wire.length.value, wire.rise.value, wire.hook.value];
                let [long, rise, hook] = each.map(|length| self.long(length));
                write!(self.text, "; wire {long} rising {rise}, hook {hook} down")?;
            }
            writeln!(self.text)?;
        }
        if let Some(cover) = sizes.cover {
            writeln!(self.text, "dust cover: {}", self.size(cover.size()))?;
        }
        Ok(())
    }

    fn setups(&mut self) -> fmt::Result {
        for setup in &self.sizes.setups {
            let (mat, window) = (setup.mat + 1, setup.window + 1);
            match &setup.cuts {
                Cuts::Straight(cuts) => {
                    for cut in cuts {
                        writeln!(
                            self.text,
                            "cut mat {mat} window {window}, back {}: guide {}, start {}, stop {}, past {}",
                            cut.side.word(),
                            self.long(cut.guide.value),
                            self.long(cut.start.value),
                            self.long(cut.stop.value),
                            self.long(cut.overcut.value)
                        )?;
                    }
                }
                Cuts::LaidOut { left, top, size } => writeln!(
                    self.text,
                    "lay out mat {mat} window {window}, back: left {}, top {}, {}",
                    self.long(*left),
                    self.long(*top),
                    self.size(*size)
                )?,
            }
        }
        Ok(())
    }

    fn bill(&mut self) -> fmt::Result {
        for line in &self.sizes.bill {
            let material = line.material.as_ref().map_or("", |m| m.code.as_str());
            let takes = match &line.takes {
                Takes::Sheet { size, stock, .. } => match stock {
                    Some(stock) => format!("{} from {}", self.size(*size), self.size(*stock)),
                    None => self.size(*size),
                },
                Takes::Strip { length } => self.long(*length),
            };
            let gap = if material.is_empty() { "" } else { " " };
            writeln!(
                self.text,
                "bill {} x {}{gap}{material}: {takes}",
                line.count, line.part
            )?;
        }
        Ok(())
    }
}
