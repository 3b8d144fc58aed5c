//! The drawing of a sheet: its parts to scale, its cuts numbered, its running measurements.

mod lettering;
mod numbers;

use cutting::sheets::{Area, Way};

use crate::caption::caption;
use crate::cuts::figures::{PIECE, corner, kerf, unusable, waste};
use crate::cuts::key::{self, Key};
use crate::cuts::lay::Taken;
use crate::cuts::ordinates::{self, Mark};
use crate::cuts::sheet_steps::SheetWork;
use crate::cuts::{CutDrawing, CutError, CutSheet, approx, sheet_work, words};
use crate::input::{Look, Sheet};
use crate::scene::{
    Anchor, Box2, Face, Fill, Node, Path, Pen, Point, at, part, shape, stroke, text,
};
use crate::sheet::{Finished, LEADING, Scale, wrapped};
use crate::twin::Twin;

/// A sheet and how it is cut up.
///
/// Shape:  to scale, its reference edges left and below. Cuts carry their numbers in the order they
///         are made; edges that are trimmed come first. Running measurements stand at the reference
///         edges for every cut that reaches them, as far as there is room; all of them are in the
///         twin. A part too small for its lettering carries a tag of the key.
/// Units:  of the sheet's [`Counting`](crate::Counting); figures beside the edges of a bench print are 4.5 mm high.
/// Errors: those of [`sheet_work`].
pub fn cut_sheet(sheet: &CutSheet, look: &Look<'_>) -> Result<CutDrawing, CutError> {
    let work = sheet_work(sheet)?;
    let mut plate = Plate::of(sheet, &work, look.sheet, 0.0);
    plate.draw();
    if plate.crowded {
        plate = Plate::of(sheet, &work, look.sheet, LED_COLUMN);
        plate.draw();
    }
    Ok(plate.finish(look))
}

/// The column of tags that stand outside, at the right.
const LED_COLUMN: f64 = 12.0;
/// Something that stands outside, and the point it belongs to.
#[derive(Clone, Debug)]
struct Led {
    dot: Point,
    sign: Sign,
}

#[derive(Clone, Debug)]
enum Sign {
    Number(usize),
    Tag(String),
}

/// Room for a row of numbered circles.
const NUMBERS: f64 = 9.8;

/// The sheet on its page.
struct Plate<'a> {
    sheet: &'a CutSheet,
    work: &'a SheetWork,
    page: Sheet,
    scale: Scale,
    /// Millimetres of the page for one count.
    factor: f64,
    /// The sheet's own outline on the page.
    outline: Box2,
    /// Where lettering below the sheet ends.
    bottom: f64,
    across: Vec<Mark>,
    up: Vec<Mark>,
    taken: Taken,
    key: Key,
    /// What stands outside for want of room: cut numbers and tags of parts.
    led: Vec<Led>,
    /// Whether anything does.
    crowded: bool,
    /// How many of them found no room even there.
    unled: usize,
    nodes: Vec<Node>,
}

impl<'a> Plate<'a> {
    fn of(sheet: &'a CutSheet, work: &'a SheetWork, page: Sheet, column: f64) -> Self {
        let (across, up) = (
            marks(sheet, work, Way::Upright),
            marks(sheet, work, Way::Level),
        );
        let margin = page.margin();
        let head = heading(sheet, page);
        let above =
            margin + f64::from(u8::try_from(head.len()).unwrap_or(u8::MAX)) * LEADING + NUMBERS;
        let (left, below) = (
            margin + ordinates::reach(&up, figure(page)),
            ordinates::reach(&across, figure(page)).max(6.0),
        );
        let right = margin + NUMBERS + column;
        let each = sheet.counting.millimetres();
        let size = [approx(sheet.width), approx(sheet.height)].map(|n| n * each.unwrap_or(1.0));
        let room = [page.width() - left - right, most_height(page)];
        let scale = match each {
            Some(_) => Scale::reducing(size, room),
            None => Scale::filling(size, room),
        };
        let drawn = size.map(|n| n * scale.factor());
        // What is narrower than its room stands in the middle of it.
        let shift = ((room[0] - drawn[0]) / 2.0).clamp(0.0, 40.0);
        let outline = Box2 {
            left: left + shift,
            top: above,
            right: left + shift + drawn[0],
            bottom: above + drawn[1],
        };
        Self {
            sheet,
            work,
            page,
            scale,
            factor: scale.factor() * each.unwrap_or(1.0),
            outline,
            bottom: outline.bottom + below,
            across,
            up,
            taken: Taken::default(),
            key: Key::default(),
            led: Vec::new(),
            crowded: false,
            unled: 0,
            nodes: set_heading(head, margin),
        }
    }

    /// Where a part lies on the page.
    fn bounds(&self, area: Area) -> Box2 {
        let left = self.outline.left + approx(area.x) * self.factor;
        let bottom = self.outline.bottom - approx(area.y) * self.factor;
        Box2 {
            left,
            top: bottom - approx(area.height) * self.factor,
            right: left + approx(area.width) * self.factor,
            bottom,
        }
    }

    fn draw(&mut self) {
        let parts = self.parts();
        self.nodes.push(part("sheet", parts));
        self.running();
        let numbers = self.numbers();
        let lettering = self.lettering();
        self.crowded = !self.led.is_empty();
        let (lines, signs) = self.led_signs();
        self.nodes.push(part("leaders", lines));
        self.nodes.push(part("names", lettering));
        self.nodes.push(part("cuts", numbers));
        self.nodes.push(part("led", signs));
    }

    fn parts(&self) -> Vec<Node> {
        let ring = |area: Area| Path::ring(self.bounds(area).corners());
        let mut nodes = Vec::new();
        for area in &self.work.trims {
            nodes.extend(unusable(self.bounds(*area)));
        }
        for area in &self.work.waste {
            nodes.extend(waste(self.bounds(*area)));
        }
        for kept in &self.sheet.remnants {
            nodes.push(stroke(ring(kept.place), Pen::Fine));
        }
        for piece in &self.sheet.pieces {
            nodes.push(shape(ring(piece.area), Fill::Flat(PIECE), Pen::Fine));
            if let Some(window) = &piece.window {
                nodes.push(stroke(ring(window.area), Pen::Hidden));
            }
        }
        nodes.extend(self.work.kerfs.iter().map(|line| kerf(self.bounds(*line))));
        nodes.push(stroke(Path::ring(self.outline.corners()), Pen::Outline));
        let usable = self.bounds(self.work.usable);
        nodes.push(stroke(
            Path::open(vec![
                at(usable.left, usable.top),
                at(usable.left, usable.bottom),
                at(usable.right, usable.bottom),
            ]),
            Pen::Heavy,
        ));
        nodes.push(corner(at(self.outline.left, self.outline.bottom)));
        nodes
    }

    /// Running measurements along both reference edges.
    fn running(&mut self) {
        let outline = self.outline;
        let margin = self.page.margin();
        let (low, high) = (
            (outline.left - 6.0).max(margin + 3.0),
            self.page.width() - margin - 3.0,
        );
        let usable = self.bounds(self.work.usable);
        let placed = |marks: &[Mark], put: &dyn Fn(f64) -> f64| -> Vec<Mark> {
            marks
                .iter()
                .map(|mark| Mark {
                    place: put(mark.place * self.factor),
                    ..mark.clone()
                })
                .collect()
        };
        let across = placed(&self.across, &|x| usable.left + x);
        let up = placed(&self.up, &|y| usable.bottom - y);
        let across = ordinates::chosen(across, low, high);
        let (top, base) = (outline.top - 4.0, outline.bottom + 1.0);
        let up = ordinates::chosen(up, top, base);
        let mut nodes = ordinates::below(&across, figure(self.page), outline.bottom, [low, high]);
        nodes.extend(ordinates::beside(
            &up,
            figure(self.page),
            outline.left,
            [top, base],
        ));
        self.nodes.push(part("running", nodes));
    }

    fn finish(self, look: &Look<'_>) -> CutDrawing {
        let (sheet, margin) = (self.sheet, self.page.margin());
        let mut nodes = self.nodes;
        let key = self.key;
        let mut below = self.bottom;
        if self.page != Sheet::Bench && !key.lines().is_empty() {
            let width = self.page.width() - 2.0 * margin;
            let (set, end) = key::set(key.lines(), margin, width, below);
            nodes.push(part("key", set));
            below = end + 1.0;
        }
        let mut remarks = words::sheet_remarks(sheet, self.work, self.page);
        remarks.extend(words::unled(self.unled));
        let first = words::first_line(&sheet.counting, self.scale);
        let (said, height) = caption(self.page, below, &first, &remarks);
        nodes.extend(said);
        let mut twin = Twin::new(measure::Unit::Inch);
        words::sheet_twin(sheet, self.work, &mut twin);
        let drawing = Finished {
            kind: "cut-sheet",
            title: words::title(&sheet.title, &sheet.stock, sheet.copies),
            description: words::sheet_description(sheet, self.work),
            scale: self.scale,
            height,
            nodes,
            twin,
            look,
        }
        .write();
        key.of(drawing)
    }
}

/// Figures at the edges are read from afar at the bench only.
pub(super) const fn figure(page: Sheet) -> Face {
    match page {
        Sheet::Wide | Sheet::Bench => Face::Figure,
        Sheet::Page | Sheet::Ticket => Face::Heading,
    }
}

/// The most a sheet is drawn high, in millimetres of the page.
const fn most_height(page: Sheet) -> f64 {
    match page {
        Sheet::Page => 120.0,
        Sheet::Ticket => 60.0,
        Sheet::Wide | Sheet::Bench => 140.0,
    }
}

/// What stands over the drawing; the bench's page sets its own.
fn heading(sheet: &CutSheet, page: Sheet) -> Vec<(String, Face)> {
    if page == Sheet::Bench {
        return Vec::new();
    }
    let width = page.width() - 2.0 * page.margin();
    let mut lines = vec![(sheet.title.clone(), Face::Heading)];
    let stock = words::stock(&sheet.stock, sheet.copies);
    lines.extend(
        wrapped(&stock, width, usize::MAX)
            .into_iter()
            .map(|line| (line, Face::Plain)),
    );
    lines
}

/// The lines over the drawing, from the page's corner.
fn set_heading(lines: Vec<(String, Face)>, margin: f64) -> Vec<Node> {
    let mut down = margin + 4.4;
    let mut nodes = Vec::new();
    for (line, face) in lines {
        nodes.push(text(at(margin, down), line, Anchor::Start, face));
        down += LEADING;
    }
    nodes
}

/// Running measurements of the cuts that reach a reference edge, its ends among them; in counts
/// from the reference edge.
fn marks(sheet: &CutSheet, work: &SheetWork, way: Way) -> Vec<Mark> {
    let usable = work.usable;
    let long = match way {
        Way::Upright => usable.width,
        Way::Level => usable.height,
    };
    let mark = |running: u64, weight: f64| Mark {
        place: approx(running),
        words: sheet.counting.shown(running).drawn(),
        weight,
    };
    let mut marks = vec![mark(0, f64::INFINITY), mark(long, f64::INFINITY)];
    for step in work.steps.iter().filter(|step| step.way == way) {
        let Some((line, running)) = step.line.zip(step.running) else {
            continue;
        };
        let (reaches, weight) = match way {
            Way::Upright => (line.y == usable.y, line.height),
            Way::Level => (line.x == usable.x, line.width),
        };
        if reaches {
            marks.push(mark(running, approx(weight)));
        }
    }
    marks
}
