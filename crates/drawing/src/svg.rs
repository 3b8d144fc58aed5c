//! Writing a scene as SVG: complete in itself, no scripts, nothing fetched, all text escaped.

use std::fmt::Write as _;

use crate::colour::{Colour, INK, PAPER, PENCIL};
use crate::input::Ink;
use crate::scene::{Anchor, Face, Fill, Group, Image, Node, Path, Pen, Shape, Text};
use crate::sheet::{FIGURE_SIZE, HEADING_SIZE, TEXT_SIZE};

/// What goes round a scene.
pub(crate) struct Wrapper<'a> {
    /// Starts every id, so that several drawings can stand on one page.
    pub id: String,
    pub title: &'a str,
    pub description: &'a str,
    /// Millimetres.
    pub width: f64,
    pub height: f64,
    pub ink: Ink,
}

/// The scene as an SVG document.
pub(crate) fn write(sheet: &Wrapper<'_>, nodes: &[Node]) -> String {
    let mut pen = Writer {
        out: String::new(),
        sheet,
        clips: 0,
    };
    let (id, width, height) = (&sheet.id, number(sheet.width), number(sheet.height));
    let _ = write!(
        pen.out,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" aria-labelledby=\"{id}-title {id}-desc\" \
         viewBox=\"0 0 {width} {height}\" width=\"{width}mm\" height=\"{height}mm\" \
         font-family=\"&quot;Atkinson Hyperlegible Next&quot;, &quot;Atkinson Hyperlegible&quot;, sans-serif\" font-size=\"{}\" \
         stroke-linecap=\"round\" stroke-linejoin=\"round\" fill=\"none\">",
        number(TEXT_SIZE)
    );
    let _ = write!(
        pen.out,
        "<title id=\"{id}-title\">{}</title>",
        escaped(sheet.title)
    );
    let _ = write!(
        pen.out,
        "<desc id=\"{id}-desc\">{}</desc>",
        escaped(sheet.description)
    );
    if sheet.ink == Ink::OneInk {
        let _ = write!(
            pen.out,
            "<defs><filter id=\"{id}-grey\"><feColorMatrix type=\"saturate\" values=\"0\"/></filter></defs>"
        );
    }
    let paper = pen.colour(PAPER);
    let _ = write!(
        pen.out,
        "<rect class=\"paper\" width=\"{width}\" height=\"{height}\" fill=\"{paper}\"/>"
    );
    pen.nodes(nodes);
    pen.out.push_str("</svg>\n");
    pen.out
}

struct Writer<'a> {
    out: String,
    sheet: &'a Wrapper<'a>,
    clips: u32,
}

impl Writer<'_> {
    fn nodes(&mut self, nodes: &[Node]) {
        for node in nodes {
            match node {
                Node::Group(group) => self.group(group),
                Node::Shape(shape) => self.shape(shape),
                Node::Text(text) => self.text(text),
                Node::Image(image) => self.image(image),
            }
        }
    }

    fn colour(&self, colour: Colour) -> String {
        match self.sheet.ink {
            Ink::Colour => colour.hex(),
            Ink::OneInk if colour == PAPER => Colour([255; 3]).hex(),
            Ink::OneInk => colour.grey().hex(),
        }
    }

    fn group(&mut self, group: &Group) {
        let mut attributes = String::new();
        if let Some(part) = &group.part {
            let _ = write!(attributes, " data-part=\"{}\"", escaped(part));
        }
        if let Some(clip) = &group.clip {
            self.clips += 1;
            let id = format!("{}-clip-{}", self.sheet.id, self.clips);
            let path = data(clip);
            let _ = write!(
                self.out,
                "<clipPath id=\"{id}\"><path clip-rule=\"evenodd\" d=\"{path}\"/></clipPath>"
            );
            let _ = write!(attributes, " clip-path=\"url(#{id})\"");
        }
        let _ = write!(self.out, "<g{attributes}>");
        self.nodes(&group.nodes);
        self.out.push_str("</g>");
    }

    fn shape(&mut self, shape: &Shape) {
        if shape.path.0.iter().all(|line| line.points.len() < 2) {
            return;
        }
        let _ = write!(self.out, "<path d=\"{}\"", data(&shape.path));
        match shape.fill {
            Fill::None => {}
            Fill::Flat(colour) => {
                let colour = self.colour(colour);
                let _ = write!(self.out, " fill=\"{colour}\" fill-rule=\"evenodd\"");
            }
            Fill::Shadow(depth) => {
                let _ = write!(
                    self.out,
                    " fill=\"#000\" fill-opacity=\"{}\" fill-rule=\"evenodd\"",
                    number(depth)
                );
            }
        }
        if let Some(stroke) = stroke_of(shape.pen) {
            let colour = self.colour(shape.colour.unwrap_or(stroke.colour));
            let _ = write!(
                self.out,
                " stroke=\"{colour}\" stroke-width=\"{}\"",
                number(stroke.width)
            );
            if !stroke.dashes.is_empty() {
                let _ = write!(self.out, " stroke-dasharray=\"{}\"", stroke.dashes);
            }
        }
        self.out.push_str("/>");
    }

    fn text(&mut self, text: &Text) {
        let (x, y) = (number(text.at.x), number(text.at.y));
        let _ = write!(self.out, "<text x=\"{x}\" y=\"{y}\"");
        let anchor = match text.anchor {
            Anchor::Start => "start",
            Anchor::Middle => "middle",
            Anchor::End => "end",
        };
        let colour = self.colour(match text.face {
            Face::Quiet => PENCIL,
            Face::Pale => PAPER,
            Face::Plain | Face::Heading | Face::Figure => INK,
        });
        let _ = write!(self.out, " text-anchor=\"{anchor}\" fill=\"{colour}\"");
        let bold = match text.face {
            Face::Heading => Some(HEADING_SIZE),
            Face::Figure => Some(FIGURE_SIZE),
            Face::Plain | Face::Quiet | Face::Pale => None,
        };
        if let Some(size) = bold {
            let _ = write!(
                self.out,
                " font-weight=\"700\" font-size=\"{}\"",
                number(size)
            );
        }
        if text.halo {
            let paper = self.colour(PAPER);
            let _ = write!(
                self.out,
                " stroke=\"{paper}\" stroke-width=\"1.3\" paint-order=\"stroke\""
            );
        }
        if text.upright {
            let _ = write!(self.out, " transform=\"rotate(-90 {x} {y})\"");
        }
        let _ = write!(self.out, ">{}</text>", escaped(&text.words));
    }

    fn image(&mut self, image: &Image) {
        let (x, y) = (number(image.at.left), number(image.at.top));
        let (width, height) = (number(image.at.width()), number(image.at.height()));
        let _ = write!(
            self.out,
            "<image x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\" preserveAspectRatio=\"xMidYMid slice\""
        );
        if image.mirrored {
            let across = number(image.at.left + image.at.right);
            let _ = write!(self.out, " transform=\"translate({across} 0) scale(-1 1)\"");
        }
        if self.sheet.ink == Ink::OneInk {
            let _ = write!(self.out, " filter=\"url(#{}-grey)\"", self.sheet.id);
        }
        let _ = write!(
            self.out,
            " href=\"data:{};base64,{}\"/>",
            image.mime,
            base64(&image.bytes)
        );
    }
}

/// How a pen draws, in millimetres.
struct Stroke {
    width: f64,
    dashes: &'static str,
    colour: Colour,
}

fn stroke_of(pen: Pen) -> Option<Stroke> {
    let stroke = |width, dashes, colour| {
        Some(Stroke {
            width,
            dashes,
            colour,
        })
    };
    match pen {
        Pen::None => None,
        Pen::Outline => stroke(0.45, "", INK),
        Pen::Heavy => stroke(0.9, "", INK),
        Pen::Fine => stroke(0.22, "", INK),
        Pen::Hair => stroke(0.14, "", INK),
        Pen::Hidden => stroke(0.28, "2 1.1", INK),
        Pen::Centre => stroke(0.25, "5 1 0.6 1", PENCIL),
        Pen::Dimension => stroke(0.22, "", PENCIL),
        Pen::Halo => stroke(1.3, "", PAPER),
    }
}

/// A path's data.
fn data(path: &Path) -> String {
    let mut text = String::new();
    for line in path.0.iter().filter(|line| !line.points.is_empty()) {
        for (k, point) in line.points.iter().enumerate() {
            let step = if k == 0 { 'M' } else { 'L' };
            let _ = write!(text, "{step}{} {}", number(point.x), number(point.y));
        }
        if line.closed {
            text.push('Z');
        }
    }
    text
}

/// A number to a thousandth of a millimetre, always written alike.
fn number(value: f64) -> String {
    let text = format!("{value:.3}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" {
        "0".to_owned()
    } else {
        text.to_owned()
    }
}

/// Text that stays text: markup escaped, characters that XML can't hold shown as U+FFFD.
pub(crate) fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            '\n' | '\r' | '\t' => out.push(' '),
            '\u{fffe}' | '\u{ffff}' => out.push('\u{fffd}'),
            c if c.is_control() => out.push('\u{fffd}'),
            c => out.push(c),
        }
    }
    out
}

/// Base 64 with padding, RFC 4648 section 4.
pub(crate) fn base64(bytes: &[u8]) -> String {
    const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut out = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for chunk in bytes.chunks(3) {
        let byte = |k: usize| chunk.get(k).copied().unwrap_or_default();
        let joined = (u32::from(byte(0)) << 16) | (u32::from(byte(1)) << 8) | u32::from(byte(2));
        for k in 0..4_usize {
            if k > chunk.len() {
                out.push('=');
                continue;
            }
            let six = (joined >> (18 - 6 * k)) & 63;
            out.push(char::from(
                LETTERS[usize::try_from(six).unwrap_or_default()],
            ));
        }
    }
    out
}
