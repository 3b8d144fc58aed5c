//! The drawing of a stick: its pieces to scale along it, its cuts numbered, its running totals.

use crate::caption::caption;
use crate::cuts::block::width_of;
use crate::cuts::figures::{PIECE, RADIUS, corner, kerf, number_box, numbered, unusable, waste};
use crate::cuts::key::{self, Key, Kind, tag_block};
use crate::cuts::lay::{Label, Taken};
use crate::cuts::ordinates::{self, Mark, spread};
use crate::cuts::sheet::figure;
use crate::cuts::{
    CutDrawing, CutError, CutStick, StickPiece, StickStep, StickWork, approx, stick_work, words,
};
use crate::input::{Look, Sheet};
use crate::scene::{
    Anchor, Box2, Face, Fill, Node, Path, Pen, Point, at, part, shape, stroke, text,
};
use crate::sheet::{Finished, LEADING, Scale, wrapped};
use crate::twin::Twin;

/// A stick and how it is cut up.
///
/// Shape:  lengths to scale from the reference end at the left, the width not; the back above. Cuts
///         carry their numbers in the order they are made and running totals below. Flaws are
///         cross-hatched, waste hatched. A piece too short for its lettering carries a tag of the key.
/// Units:  of the stick's [`Counting`](crate::Counting); figures below a bench print are 4.5 mm high.
/// Errors: those of [`stick_work`].
pub fn cut_stick(stick: &CutStick, look: &Look<'_>) -> Result<CutDrawing, CutError> {
    let work = stick_work(stick)?;
    let mut bar = Bar::of(stick, &work, look.sheet);
    bar.draw();
    Ok(bar.finish(look))
}

/// How high a stick is drawn, whatever its width.
const HIGH: f64 = 30.0;
/// Room for the numbers above it.
const NUMBERS: f64 = 9.4;
/// The least slant a mitre is drawn with.
const LEAST_SLANT: f64 = 1.6;

/// The stick on its page.
struct Bar<'a> {
    stick: &'a CutStick,
    work: &'a StickWork,
    page: Sheet,
    scale: Scale,
    factor: f64,
    outline: Box2,
    taken: Taken,
    key: Key,
    /// Tags that stand below, and where they belong.
    led: Vec<(f64, String)>,
    /// How many signs found no room anywhere.
    unled: usize,
    nodes: Vec<Node>,
}

impl<'a> Bar<'a> {
    fn of(stick: &'a CutStick, work: &'a StickWork, page: Sheet) -> Self {
        let margin = page.margin();
        let left = margin + 7.0;
        let room = page.width() - left - margin - 4.0;
        let each = stick.counting.millimetres();
        let long = approx(stick.length) * each.unwrap_or(1.0);
        let scale = match each {
            Some(_) => Scale::reducing([long, 1.0], [room, f64::MAX]),
            None => Scale::filling([long, 1.0], [room, f64::MAX]),
        };
        let mut nodes = Vec::new();
        let mut top = margin;
        for (line, face) in heading(stick, page) {
            nodes.push(text(at(margin, top + 4.4), line, Anchor::Start, face));
            top += LEADING;
        }
        top += NUMBERS;
        Self {
            stick,
            work,
            page,
            scale,
            factor: scale.factor() * each.unwrap_or(1.0),
            outline: Box2 {
                left,
                top,
                right: left + long * scale.factor(),
                bottom: top + HIGH,
            },
            taken: Taken::default(),
            key: Key::default(),
            led: Vec::new(),
            unled: 0,
            nodes,
        }
    }

    fn bounds(&self, (from, to): (u64, u64)) -> Box2 {
        Box2 {
            left: self.outline.left + approx(from) * self.factor,
            right: self.outline.left + approx(to) * self.factor,
            ..self.outline
        }
    }

    fn draw(&mut self) {
        let parts = self.parts();
        self.nodes.push(part("stick", parts));
        let numbers = self.numbers();
        let lettering = self.lettering();
        self.nodes.push(part("names", lettering));
        self.nodes.push(part("cuts", numbers));
    }

    fn parts(&self) -> Vec<Node> {
        let stick = self.stick;
        let mut nodes = Vec::new();
        let end = stick.length - stick.trim.1;
        let used = stick.remnants.iter().map(|kept| kept.place.1).max();
        for trim in [
            (0, stick.trim.0),
            (end.max(used.unwrap_or(0)), stick.length),
        ] {
            if trim.1 > trim.0 {
                nodes.extend(unusable(self.bounds(trim)));
            }
        }
        for stretch in &self.work.waste {
            nodes.extend(waste(self.bounds(*stretch)));
        }
        for kept in &stick.remnants {
            let ring = Path::ring(self.bounds(kept.place).corners());
            nodes.push(stroke(ring, Pen::Fine));
        }
        for piece in &stick.pieces {
            nodes.push(shape(
                Path::ring(self.ring(piece)),
                Fill::Flat(PIECE),
                Pen::Outline,
            ));
        }
        for flaw in &stick.flaws {
            nodes.extend(unusable(self.bounds(*flaw)));
        }
        nodes.extend(
            self.work
                .kerfs
                .iter()
                .filter(|line| line.1 > line.0)
                .map(|line| kerf(self.bounds(*line))),
        );
        nodes.push(stroke(Path::ring(self.outline.corners()), Pen::Fine));
        let start = self.bounds((stick.trim.0, stick.trim.0));
        nodes.push(stroke(
            Path::open(vec![
                at(start.left, start.top),
                at(start.left, start.bottom),
            ]),
            Pen::Heavy,
        ));
        nodes.push(corner(at(self.outline.left, self.outline.bottom)));
        nodes
    }

    /// A piece's outline: its back long, its front short where the ends are mitred.
    fn ring(&self, piece: &StickPiece) -> Vec<Point> {
        let bounds = self.bounds((piece.at, piece.at + piece.length));
        let slant = |short: u64| match short {
            0 => 0.0,
            _ => (approx(short) * self.factor)
                .max(LEAST_SLANT)
                .min(bounds.width() / 2.0),
        };
        let (start, end) = piece
            .mitre
            .map_or((0.0, 0.0), |(a, b)| (slant(a), slant(b)));
        vec![
            at(bounds.left, bounds.top),
            at(bounds.right, bounds.top),
            at(bounds.right - end, bounds.bottom),
            at(bounds.left + start, bounds.bottom),
        ]
    }

    /// Cut numbers above the stick: all, or every second, third, … as far as there is room.
    fn numbers(&mut self) -> Vec<Node> {
        const GAP: f64 = RADIUS * 2.0 + 0.4;
        let top = self.outline.top;
        let (low, high) = (
            self.page.margin() + RADIUS,
            self.page.width() - self.page.margin() - RADIUS,
        );
        let mut every = 1;
        let (steps, row) = loop {
            let steps: Vec<&StickStep> = self.work.steps.iter().step_by(every).collect();
            let places: Vec<f64> = steps
                .iter()
                .map(|step| self.bounds((step.at, step.at)).left)
                .collect();
            match spread(&places, GAP, low, high) {
                Some(row) => break (steps, row),
                None => every += 1,
            }
        };
        self.unled += self.work.steps.len() - steps.len();
        let mut nodes = Vec::new();
        for (step, x) in steps.into_iter().zip(row) {
            let centre = at(x, top - RADIUS - 2.2);
            let foot = at(self.bounds((step.at, step.at)).left, top);
            nodes.push(stroke(Path::open(vec![foot, centre]), Pen::Fine));
            self.taken.take(number_box(centre, step.number));
            nodes.extend(numbered(centre, step.number));
        }
        nodes
    }

    fn lettering(&mut self) -> Vec<Node> {
        let stick = self.stick;
        let mut nodes = Vec::new();
        for piece in &stick.pieces {
            let ring = self.ring(piece);
            let inner = Box2 {
                left: ring[3].x,
                right: ring[2].x,
                ..self.outline
            };
            let size = stick.counting.shown_length(piece.length, piece.exact);
            let size = size.drawn();
            let (label, tag) = self.label(&piece.lines, &size, inner, Kind::Piece);
            nodes.extend(label);
            self.key.pieces.push(tag);
        }
        for kept in &stick.remnants {
            let long = stick.counting.kept(&[kept.place.1 - kept.place.0]).drawn();
            let name = [words::keep(&kept.label)];
            let bounds = self.bounds(kept.place);
            let (label, tag) = self.label(&name, &long, bounds, Kind::Remnant);
            nodes.extend(label);
            self.key.remnants.push(tag);
        }
        for flaw in &stick.flaws {
            let bounds = self.bounds(*flaw);
            self.led.push((bounds.centre().x, "flaw".to_owned()));
        }
        nodes
    }

    /// A label inside its stretch; else its tag there, else its tag below with a line to it.
    fn label(
        &mut self,
        name: &[String],
        size: &str,
        bounds: Box2,
        kind: Kind,
    ) -> (Vec<Node>, Option<String>) {
        let label = Label {
            name,
            size,
            remarks: &[],
        };
        let room = bounds.grown(-0.9);
        for block in label.blocks(room) {
            if let Some(centre) = self.taken.place(&block, room) {
                return (block.nodes(centre), None);
            }
        }
        let tag = self
            .key
            .tag(kind, &words::in_key(&label, self.stick.counting.unit()));
        for upright in [false, true] {
            let block = tag_block(&tag, upright);
            if let Some(centre) = self.taken.place(&block, bounds.grown(-0.4)) {
                return (block.nodes(centre), Some(tag));
            }
        }
        self.led.push((bounds.centre().x, tag.clone()));
        (Vec::new(), Some(tag))
    }

    /// Running totals below the stick; returns them and how far down they reach.
    fn running(&self) -> (Vec<Node>, f64) {
        let stick = self.stick;
        let mark = |at: u64, weight: f64| Mark {
            place: self.bounds((at, at)).left,
            words: stick.counting.shown(at - stick.trim.0).drawn(),
            weight,
        };
        let mut marks = vec![
            mark(stick.trim.0, f64::INFINITY),
            mark(stick.length, f64::INFINITY),
        ];
        marks.extend(
            self.work
                .steps
                .iter()
                .map(|step| mark(step.at, approx(step.length))),
        );
        let (margin, face) = (self.page.margin(), figure(self.page));
        let (low, high) = (margin + 3.4, self.page.width() - margin - 3.4);
        let marks = ordinates::chosen(marks, low, high);
        let nodes = ordinates::below(&marks, face, self.outline.bottom, [low, high]);
        (nodes, self.outline.bottom + ordinates::reach(&marks, face))
    }

    /// Tags that did not fit, and flaws, under everything else; returns them and where they end.
    fn led_tags(&mut self, below: f64) -> (Vec<Node>, f64) {
        if self.led.is_empty() {
            return (Vec::new(), below);
        }
        let mut led = self.led.clone();
        led.sort_by(|a, b| a.0.total_cmp(&b.0));
        let widest = led
            .iter()
            .map(|(_, tag)| width_of(tag, Face::Heading))
            .fold(0.0, f64::max);
        let half = widest / 2.0 + self.page.margin();
        let (low, high) = (half, self.page.width() - half);
        let mut room = high - low;
        led.retain(|_| {
            let fits = room >= 0.0;
            room -= widest + 1.5;
            self.unled += usize::from(!fits);
            fits
        });
        let places: Vec<f64> = led.iter().map(|(x, _)| *x).collect();
        let row = spread(&places, widest + 1.5, low, high);
        let mut nodes = Vec::new();
        let row = row.unwrap_or(places);
        for ((x, tag), place) in led.iter().zip(row) {
            nodes.push(stroke(
                Path::open(vec![
                    at(*x, self.outline.bottom - 1.0),
                    at(*x, below),
                    at(place, below + 2.0),
                ]),
                Pen::Dimension,
            ));
            nodes.push(text(
                at(place, below + 6.4),
                tag,
                Anchor::Middle,
                Face::Heading,
            ));
        }
        (nodes, below + 8.0)
    }

    fn finish(mut self, look: &Look<'_>) -> CutDrawing {
        let (stick, margin) = (self.stick, self.page.margin());
        let (running, below) = self.running();
        let (led, mut below) = self.led_tags(below);
        self.nodes.push(part("running", running));
        self.nodes.extend(led);
        let mut nodes = self.nodes;
        let key = self.key;
        if self.page != Sheet::Bench && !key.lines().is_empty() {
            let width = self.page.width() - 2.0 * margin;
            let (set, end) = key::set(key.lines(), margin, width, below);
            nodes.push(part("key", set));
            below = end + 1.0;
        }
        let mut remarks = words::stick_remarks(stick, self.work, self.page);
        remarks.extend(words::unled(self.unled));
        let first = words::stick_first_line(&stick.counting, self.scale);
        let (said, height) = caption(self.page, below, &first, &remarks);
        nodes.extend(said);
        let mut twin = Twin::new(measure::Unit::Inch);
        words::stick_twin(stick, self.work, &mut twin);
        let drawing = Finished {
            kind: "cut-stick",
            title: words::title(&stick.title, &stick.stock, stick.copies),
            description: words::stick_description(stick, self.work),
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

/// What stands over the drawing; the bench's page sets its own.
fn heading(stick: &CutStick, page: Sheet) -> Vec<(String, Face)> {
    if page == Sheet::Bench {
        return Vec::new();
    }
    let width = page.width() - 2.0 * page.margin();
    let mut lines = vec![(stick.title.clone(), Face::Heading)];
    let said = words::stock(&stick.stock, stick.copies);
    lines.extend(
        wrapped(&said, width, usize::MAX)
            .into_iter()
            .map(|line| (line, Face::Plain)),
    );
    lines
}
