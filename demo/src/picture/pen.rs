//! The pen that writes a picture: shapes in, SVG out.

use std::fmt::{Display, Write};

use super::curve::{Path, Point};

/// A picture being drawn. One hundred units are an inch of the art.
pub(crate) struct Pen {
    name: &'static str,
    width: f64,
    height: f64,
    defs: String,
    body: String,
    inks: u32,
}

/// A number as short as one decimal allows.
pub(crate) fn short(value: f64) -> String {
    let text = format!("{value:.1}");
    match text.strip_suffix(".0").unwrap_or(&text) {
        "-0" => "0".to_owned(),
        text => text.to_owned(),
    }
}

impl Pen {
    /// A blank sheet. `name` keeps the ids of its inks apart from those of other pictures.
    pub fn new(name: &'static str, width: f64, height: f64) -> Self {
        Self {
            name,
            width,
            height,
            defs: String::new(),
            body: String::new(),
            inks: 0,
        }
    }

    /// The sheet's width.
    pub fn width(&self) -> f64 {
        self.width
    }

    /// The sheet's height.
    pub fn height(&self) -> f64 {
        self.height
    }

    /// Puts words of SVG into the body.
    fn put(&mut self, words: impl Display) {
        write!(self.body, "{words}").expect("a string takes what is written");
    }

    /// Fills the whole sheet.
    pub fn ground(&mut self, ink: &str) {
        let (width, height) = (self.width, self.height);
        self.rect((0.0, 0.0), (width, height), ink);
    }

    /// Many dots of one size.
    pub fn dots(&mut self, places: &[Point], radius: f64, ink: &str) {
        self.line(&Path::points(places), ink, radius * 2.0);
    }

    /// A rectangle from its left and top corner.
    pub fn rect(&mut self, (x, y): Point, (width, height): Point, ink: &str) {
        let [x, y, width, height] = [x, y, width, height].map(short);
        self.put(format_args!(
            "<rect x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\" fill=\"{ink}\"/>"
        ));
    }

    /// A circle.
    pub fn dot(&mut self, centre: Point, radius: f64, ink: &str) {
        self.oval(centre, (radius, radius), ink);
    }

    /// An ellipse from its centre and half axes.
    pub fn oval(&mut self, (x, y): Point, (across, down): Point, ink: &str) {
        let [x, y, across, down] = [x, y, across, down].map(short);
        self.put(format_args!(
            "<ellipse cx=\"{x}\" cy=\"{y}\" rx=\"{across}\" ry=\"{down}\" fill=\"{ink}\"/>"
        ));
    }

    /// A filled outline.
    pub fn fill(&mut self, path: &Path, ink: &str) {
        self.put(format_args!("<path d=\"{path}\" fill=\"{ink}\"/>"));
    }

    /// A line with round ends.
    pub fn line(&mut self, path: &Path, ink: &str, width: f64) {
        let width = short(width);
        self.put(format_args!(
            "<path d=\"{path}\" fill=\"none\" stroke=\"{ink}\" stroke-width=\"{width}\"/>"
        ));
    }

    /// A line of dashes.
    pub fn dashes(&mut self, path: &Path, ink: &str, width: f64, (on, off): Point) {
        let [width, on, off] = [width, on, off].map(short);
        self.put(format_args!(
            "<path d=\"{path}\" fill=\"none\" stroke=\"{ink}\" stroke-width=\"{width}\" stroke-dasharray=\"{on} {off}\"/>"
        ));
    }

    /// What `draw` draws, as one group with these attributes.
    pub fn group(&mut self, attributes: &str, draw: impl FnOnce(&mut Self)) {
        self.put(format_args!("<g {attributes}>"));
        draw(self);
        self.put("</g>");
    }

    /// What `draw` draws, thinned like a wash; `strength` from 0 to 1.
    pub fn wash(&mut self, strength: f64, draw: impl FnOnce(&mut Self)) {
        self.group(&format!("opacity=\"{strength:.2}\""), draw);
    }

    /// What `draw` draws round the origin, moved to `place`, turned and sized.
    pub fn placed(
        &mut self,
        (x, y): Point,
        degrees: f64,
        scale: f64,
        draw: impl FnOnce(&mut Self),
    ) {
        let [x, y, degrees] = [x, y, degrees].map(short);
        let attributes =
            format!("transform=\"translate({x} {y}) rotate({degrees}) scale({scale:.3})\"");
        self.group(&attributes, draw);
    }

    /// What `draw` draws, inside an outline only.
    pub fn within(&mut self, path: &Path, draw: impl FnOnce(&mut Self)) {
        let id = self.id();
        write!(
            self.defs,
            "<clipPath id=\"{id}\"><path d=\"{path}\"/></clipPath>"
        )
        .expect("a string takes what is written");
        self.group(&format!("clip-path=\"url(#{id})\""), draw);
    }

    /// An ink that runs from top to bottom of whatever it fills.
    pub fn fall(&mut self, stops: &[(f64, &str)]) -> String {
        self.blend("linearGradient x1=\"0\" y1=\"0\" x2=\"0\" y2=\"1\"", stops)
    }

    /// An ink that runs from left to right of whatever it fills.
    pub fn across(&mut self, stops: &[(f64, &str)]) -> String {
        self.blend("linearGradient x1=\"0\" y1=\"0\" x2=\"1\" y2=\"0\"", stops)
    }

    /// An ink that runs outwards from a place in whatever it fills, both given as parts of it.
    pub fn glow(&mut self, (x, y): Point, reach: f64, stops: &[(f64, &str)]) -> String {
        self.blend(
            &format!("radialGradient cx=\"{x}\" cy=\"{y}\" r=\"{reach}\""),
            stops,
        )
    }

    /// Writes a blend; a stop of `#rrggbbaa` is see-through.
    fn blend(&mut self, head: &str, stops: &[(f64, &str)]) -> String {
        let id = self.id();
        let tag = head.split(' ').next().unwrap_or(head);
        let mut text = format!("<{head} id=\"{id}\">");
        for (at, ink) in stops {
            let (colour, veil) = veiled(ink);
            write!(
                text,
                "<stop offset=\"{at}\" stop-color=\"{colour}\"{veil}/>"
            )
            .expect("a string takes what is written");
        }
        write!(self.defs, "{text}</{tag}>").expect("a string takes what is written");
        format!("url(#{id})")
    }

    fn id(&mut self) -> String {
        self.inks += 1;
        format!("{}-{}", self.name, self.inks)
    }

    /// The finished picture.
    pub fn finish(self) -> Vec<u8> {
        let [width, height] = [self.width, self.height].map(short);
        let (defs, body) = (self.defs, self.body);
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {height}\" stroke-linecap=\"round\" stroke-linejoin=\"round\"><defs>{defs}</defs>{body}</svg>\n"
        )
        .into_bytes()
    }
}

/// `#rrggbbaa` as a colour and the attribute of its opacity.
fn veiled(ink: &str) -> (&str, String) {
    match (ink.get(..7), ink.get(7..9)) {
        (Some(colour), Some(veil)) => {
            let veil = u8::from_str_radix(veil, 16).unwrap_or(u8::MAX);
            let part = f64::from(veil) / f64::from(u8::MAX);
            (colour, format!(" stop-opacity=\"{part:.2}\""))
        }
        _ => (ink, String::new()),
    }
}
