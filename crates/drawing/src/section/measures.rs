//! Dimensions of the section: face and lip below, height at the left; and which way is front.

use measure::Length;
use sizing::{MemberSizes, Sizes};

use super::Cut;
use super::ruler::Ruler;
use crate::dimension::{Ground, Span, across, upwards};
use crate::input::Sheet;
use crate::scene::{Anchor, Face, Node, at, part, text};
use crate::sheet::{shown, text_width};

/// The dimensions.
pub(super) fn measures(cut: &Cut<'_>, ruler: &Ruler) -> Vec<Node> {
    let sizes = cut.piece.sizes;
    let (Some(outer), Some(inner)) = (sizes.members.first(), sizes.members.last()) else {
        return Vec::new();
    };
    let bottom = ruler.down(cut.back);
    let word = if outer.floater.is_some() {
        "wall"
    } else {
        "face"
    };
    let face = outer.face.value;
    let stretches = [
        (word, [0.0, face.approx_mm()], face, 8.0),
        inner_stretch(cut, inner),
    ];
    let mut measured = Vec::new();
    for (word, [from, to], length, below) in stretches {
        let span = Span {
            from: ruler.across(from),
            to: ruler.across(to),
            line: bottom + below,
            reach: Some(bottom),
        };
        measured.extend(across(
            span,
            &format!("{word} {}", shown(length, sizes)),
            Ground::Paper,
        ));
    }
    if let Some(high) = outer.height {
        measured.extend(height(high, sizes, ruler));
    }
    vec![part("frame.1", measured)]
}

/// The outermost member's height, at its left.
fn height(height: Length, sizes: &Sizes, ruler: &Ruler) -> Vec<Node> {
    let (x, from, to) = (
        ruler.across(0.0),
        ruler.down(0.0),
        ruler.down(height.approx_mm()),
    );
    let span = Span {
        from,
        to,
        line: x - 5.0,
        reach: Some(x),
    };
    let short = shown(height, sizes);
    let long = format!("height {short}");
    let fits = text_width(&long) < to - from;
    upwards(span, if fits { &long } else { &short }, Ground::Paper)
}

/// The lip of the innermost member, or a floater's ledge, a row further down.
fn inner_stretch(cut: &Cut<'_>, inner: &MemberSizes) -> (&'static str, [f64; 2], Length, f64) {
    const ROW: f64 = 16.0;
    let wall = cut.edge(inner.rabbet.width.value);
    match (&inner.floater, inner.sight) {
        (Some(floater), _) => (
            "ledge",
            [wall, cut.edge(floater.ledge_opening.width.value)],
            floater.ledge,
            ROW,
        ),
        (None, sight) => {
            let sight = cut.edge(sight.unwrap_or(inner.rabbet).width.value);
            ("lip", [wall, sight], inner.lip, ROW)
        }
    }
}

/// The words front and back.
pub(super) fn ends(cut: &Cut<'_>, sheet: Sheet, ruler: &Ruler) -> Vec<Node> {
    let word = |y, word: &str| text(at(sheet.margin(), y), word, Anchor::Start, Face::Quiet);
    let below = match sheet {
        Sheet::Page | Sheet::Wide | Sheet::Bench => 15.6,
        Sheet::Ticket => 6.0,
    };
    vec![
        word(ruler.down(cut.front) - 3.0, "front"),
        word(ruler.down(cut.back) + below, "back"),
    ]
}
