//! A stick or sheet: its drawing, the drawing in words, its cuts in order, and its sum.

use drawing::{
    Counting, CutDrawing, CutError, Ink, Look, Shown, cut_sheet, cut_stick, sheet_work, stick_work,
};
use maud::{Markup, PreEscaped, html};
use paperwork::CutLeaf;

use super::{sheet, stick};
use crate::page::figure::fraction;

/// All of one stick or sheet.
pub(super) fn leaf(leaf: &CutLeaf) -> Result<Markup, CutError> {
    let look = Look::wide(Ink::Colour);
    match leaf {
        CutLeaf::Stick(stick) => {
            let work = stick_work(stick)?;
            let drawn = cut_stick(stick, &look)?;
            let sum = work.sums.sentence(&stick.counting);
            let head = Head {
                title: &stick.title,
                stock: &stick.stock,
                copies: stick.copies,
            };
            Ok(head.leaf(&drawn, &stick::steps(stick, &work), sum))
        }
        CutLeaf::Sheet(sheet) => {
            let work = sheet_work(sheet)?;
            let drawn = cut_sheet(sheet, &look)?;
            let sum = work.sums.sentence(&sheet.counting);
            let head = Head {
                title: &sheet.title,
                stock: &sheet.stock,
                copies: sheet.copies,
            };
            Ok(head.leaf(&drawn, &sheet::steps(sheet, &work), sum))
        }
    }
}

struct Head<'a> {
    title: &'a str,
    stock: &'a str,
    copies: u64,
}

impl Head<'_> {
    fn leaf(&self, drawn: &CutDrawing, steps: &Markup, sum: Option<String>) -> Markup {
        let id = self.title.replace(' ', "-").to_lowercase();
        let drawing = &drawn.drawing;
        html! {
            section.leaf aria-labelledby=(id) {
                h2 id=(id) {
                    (self.title) " "
                    span.beside {
                        (self.stock)
                        @if self.copies > 1 { ", " (self.copies) " cut alike" }
                    }
                }
                (steps)
                @if let Some(sum) = sum { p.sum { (sum) } }
                figure {
                    (PreEscaped(&drawing.svg))
                    figcaption {
                        details {
                            summary { (self.title) ", in words" }
                            dl.twin {
                                dt { "Scale" } dd { (drawing.scale) }
                                @for line in &drawing.twin { dt { (line.what) } dd { (line.value) } }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// A number, or width × height, as the tape shows it: large, and beside it what that hides.
pub(super) fn figure(counting: &Counting, shown: &Shown) -> Markup {
    html! {
        span.figure {
            @for (place, side) in shown.text.split(" × ").enumerate() {
                @if place > 0 { " × " }
                (fraction(side))
            }
            @if !counting.unit().is_empty() { " " span.unit { (counting.unit()) } }
        }
        @if let Some(beside) = &shown.beside { span.beside { " (" (beside) ")" } }
    }
}
