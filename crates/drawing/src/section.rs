//! The section: a level cut through the left edge, front above, back below, outside at the left.

mod art;
mod floater;
mod frame;
mod keys;
mod labels;
mod layers;
mod measures;
mod pile;
mod ruler;
mod words;

use sizing::Sizes;
use trade::Job;

use crate::caption::caption;
use crate::colour::{Colour, PAPER};
use crate::dimension::Ground;
use crate::hatch::{Grain, hatch};
use crate::input::{DrawingError, Look, Sheet, drawable};
use crate::piece::Piece;
use crate::profile::{Section, section_of};
use crate::scene::{Fill, Node, Path, Pen, Shape, area, at, part, stroke};
use crate::sheet::{Finished, Scale, first_line, labelled};
use crate::twin::{Drawing, Twin};
use labels::{Label, Said};
use ruler::{Ruler, Stretches};

/// A cut through the left edge of the piece.
///
/// Shape:  the front lies above and the back below; the outside is at the left. Long even
///         stretches are left out between break lines. True thicknesses, to the scale printed.
/// Units:  labels in both units where that is short; what is not known is said in the caption.
/// Errors: a piece in which some rectangle has no size, sizes of another job.
pub fn section(job: &Job, sizes: &Sizes, look: &Look<'_>) -> Result<Drawing, DrawingError> {
    drawable(job, sizes)?;
    let piece = Piece { job, sizes };
    let sheet = look.sheet;
    let cut = Cut::through(piece);
    let (column, mut remarks) = match sheet {
        Sheet::Page | Sheet::Wide | Sheet::Bench => (labels::in_words(&cut.labels), Vec::new()),
        Sheet::Ticket => keys::keyed(&cut.labels, sheet),
    };
    let (scale, ruler) = cut.ruler(sheet, &column);
    let mut nodes = cut.drawn(&ruler);
    nodes.extend(measures::ends(&cut, sheet, &ruler));
    if sheet != Sheet::Ticket {
        nodes.extend(measures::measures(&cut, &ruler));
    }
    let (labels, lowest) = labels::set(&column, sheet, &ruler);
    nodes.extend(labels);
    let below = lowest.max(ruler.down(cut.back) + under(sheet));
    let first = first_line("Section", sheet, scale, sizes);
    remarks.extend_from_slice(&cut.notes);
    let (words, height) = caption(sheet, below, &first, &remarks);
    nodes.extend(words);
    let mut twin = Twin::new(sizes.unit());
    words::twin(&piece, &cut.notes, &mut twin);
    Ok(Finished {
        kind: "section",
        title: format!("Section of {}", piece.title()),
        description: words::description(sheet, scale),
        scale,
        height,
        nodes,
        twin,
        look,
    }
    .write())
}

/// Room under the cut for its dimensions, and for the word `back`.
const fn under(sheet: Sheet) -> f64 {
    match sheet {
        Sheet::Page | Sheet::Wide | Sheet::Bench => 21.0,
        Sheet::Ticket => 6.5,
    }
}
/// Room above it for the word `front`.
const OVER: f64 = 7.0;

/// Something cut through, in millimetres of the piece: `x` from the outside, `y` from the front.
struct Solid {
    part: String,
    path: Path,
    fill: Colour,
    grain: Option<Grain>,
    /// A surface drawn in its own colour, or a heavy edge.
    edges: Vec<(Path, Pen, Option<Colour>)>,
}

/// Everything the cut goes through.
struct Cut<'a> {
    piece: Piece<'a>,
    solids: Vec<Solid>,
    labels: Vec<Label>,
    /// What the labels that come next name.
    said: Said,
    /// Distances across air that ticks mark, upright at `x`.
    gaps: Vec<[f64; 3]>,
    notes: Vec<String>,
    /// Places across that must be seen.
    places: Vec<f64>,
    /// What is drawn across.
    stretches: Stretches,
    /// Foremost and backmost.
    front: f64,
    back: f64,
    /// Where the break lines reach, front and back.
    broken: [f64; 2],
}

impl<'a> Cut<'a> {
    fn through(piece: Piece<'a>) -> Self {
        let mut cut = Self {
            piece,
            solids: Vec::new(),
            labels: Vec::new(),
            said: Said::Else,
            gaps: Vec::new(),
            notes: Vec::new(),
            places: vec![0.0],
            stretches: Stretches::default(),
            front: 0.0,
            back: 0.0,
            broken: [0.0, 0.0],
        };
        cut.stretches = cut.across();
        let mut front = 0.0;
        for index in 0..piece.sizes.members.len() {
            front = cut.member(index, front);
        }
        cut
    }

    /// A member and what lies in its rabbet; returns where the front of the next one lies.
    fn member(&mut self, index: usize, front: f64) -> f64 {
        let member = &self.piece.sizes.members[index];
        let layers = pile::in_rabbet(self.piece, index);
        self.said = self.member_listed(index);
        let thick = layers.last().map_or(0.0, |layer| layer.bottom);
        let section = section_of(member, thick);
        self.notes.extend(section.guessed.clone());
        if let Some(tilt) = member.tilt {
            self.notes.push(format!(
                "{}: its sides lean by {tilt}; they are drawn upright.",
                member.name
            ));
        }
        self.front = self.front.min(front);
        self.back = self.back.max(front + section.height);
        self.profile(index, &section, front);
        self.said = Said::Else;
        if member.floater.is_some() {
            self.canvas_in_floater(index, &section, front);
            return front;
        }
        let rabbet = front + section.lip_front;
        self.lay(index, &layers, rabbet);
        self.said = Said::Elsewhere;
        self.hold(index, &section, front, thick);
        self.said = Said::Else;
        rabbet + pile::front_of_within(&layers)
    }

    /// Where an edge of this width stands, from the outside.
    fn edge(&self, width: measure::Length) -> f64 {
        (self.piece.sizes.outside.width.value - width).approx_mm() / 2.0
    }

    fn solid(
        &mut self,
        part: impl Into<String>,
        path: Path,
        fill: Colour,
        grain: Grain,
    ) -> &mut Solid {
        self.solids.push(Solid {
            part: part.into(),
            path,
            fill,
            grain: Some(grain),
            edges: Vec::new(),
        });
        let last = self.solids.len() - 1;
        &mut self.solids[last]
    }

    fn label(
        &mut self,
        part: impl Into<String>,
        spot: [f64; 2],
        name: impl Into<String>,
        value: impl Into<String>,
    ) {
        let value = value.into();
        self.labels.push(Label {
            part: part.into(),
            at: at(spot[0], spot[1]),
            name: name.into(),
            short: value.clone(),
            value,
            said: self.said,
        });
    }

    /// A layer's label: its name and thickness.
    fn label_thick(
        &mut self,
        part: impl Into<String>,
        spot: [f64; 2],
        name: impl Into<String>,
        thick: measure::Length,
    ) {
        if thick.is_zero() {
            self.label(part, spot, name, "");
            return;
        }
        let unit = self.piece.sizes.unit();
        self.label(part, spot, name, thick.in_both(unit));
        if let Some(label) = self.labels.last_mut() {
            label.short = labelled(thick, self.piece.sizes);
        }
    }

    /// The right end of what is drawn.
    fn end(&self) -> f64 {
        self.stretches.end()
    }

    fn ruler(&self, sheet: Sheet, column: &[labels::Block<'_>]) -> (Scale, Ruler) {
        let long = self.stretches.long();
        let high = self.back - self.front;
        let [left, wide, most] = match sheet {
            Sheet::Page | Sheet::Wide | Sheet::Bench => [14.0, 59.0, 96.0],
            Sheet::Ticket => [4.0, 66.0, 30.0],
        };
        let scale = Scale::fitting([long, high], [wide - self.stretches.breaks(), most]);
        let spare = match sheet {
            Sheet::Page | Sheet::Wide | Sheet::Bench => {
                labels::height(column) - high * scale.factor()
            }
            Sheet::Ticket => 0.0,
        };
        let ruler = Ruler {
            left,
            top: sheet.margin() + OVER + (spare * 0.4).clamp(0.0, 40.0),
            factor: scale.factor(),
            stretches: self.stretches.clone(),
            front: self.front,
        };
        (scale, ruler)
    }

    fn drawn(&self, ruler: &Ruler) -> Vec<Node> {
        let mut nodes: Vec<Node> = self.solids.iter().map(|solid| solid.drawn(ruler)).collect();
        let sight = self.sight();
        nodes.extend(ruler.breaks(|x| {
            let [from, to] = if x > sight {
                self.broken
            } else {
                [self.front, self.back]
            };
            [ruler.down(from) - 1.5, ruler.down(to) + 1.5]
        }));
        for [x, from, to] in &self.gaps {
            let (x, from, to) = (ruler.across(*x), ruler.down(*from), ruler.down(*to));
            nodes.extend(crate::dimension::ticked(
                at(x, from),
                at(x, to),
                Ground::Paper,
            ));
        }
        nodes
    }
}

impl Solid {
    fn drawn(&self, ruler: &Ruler) -> Node {
        let path = self.path.map(|p| ruler.put(p));
        let mut nodes = vec![area(path.clone(), Fill::Flat(self.fill))];
        if let Some(grain) = self.grain {
            nodes.push(hatch(&path, grain));
        }
        nodes.push(stroke(path, Pen::Fine));
        for (edge, pen, colour) in &self.edges {
            let path = edge.map(|p| ruler.put(p));
            nodes.push(Node::Shape(Shape {
                path,
                fill: Fill::None,
                pen: *pen,
                colour: *colour,
            }));
        }
        part(self.part.clone(), nodes)
    }
}

/// A material's colour, paled so that hatching stands out on it.
fn pale(colour: Colour) -> Colour {
    colour.toward(PAPER, if colour.luma() < 0.35 { 0.72 } else { 0.5 })
}

impl Section {
    /// Its ring, moved to where it stands.
    fn standing(&self, x: f64, front: f64) -> Path {
        self.path().map(|p| p.plus(x, front))
    }
}
