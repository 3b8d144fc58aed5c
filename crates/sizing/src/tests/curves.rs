//! Outlines: what fits a box, what does not, and what stands outside what.

use measure::{Length, Size};
use trade::{Measured, Opening, Shape};

use crate::{Misfit, Outline};

fn inches(n: i64) -> Measured {
    Measured(Length::inches(n))
}

fn size(width: i64, height: i64) -> Size {
    Size::new(Length::inches(width), Length::inches(height))
}

fn outline(set: impl Fn(&mut Opening), size: Size) -> Result<Outline, Misfit> {
    let mut opening = Opening::default();
    set(&mut opening);
    Outline::of(&opening, size)
}

#[test]
fn shapes_that_do_not_fit_say_why() {
    let check = |shape: Shape, box_of: Size, expected: Misfit| {
        assert_eq!(outline(|o| o.shape = shape, box_of), Err(expected));
    };
    check(Shape::Circle, size(8, 10), Misfit::NotRound);
    check(Shape::Rounded, size(8, 10), Misfit::Lacks("radius"));
    check(Shape::LowArch, size(8, 10), Misfit::Lacks("rise"));
    check(Shape::Polygon, size(8, 10), Misfit::Lacks("sides"));
    check(Shape::Free, size(8, 10), Misfit::TooFewSides);
    check(
        Shape::RoundArch,
        size(8, 3),
        Misfit::TooLarge("half the width", Length::inches(3)),
    );
    let rounded = |radius| {
        outline(
            |o| (o.shape, o.radius) = (Shape::Rounded, Some(inches(radius))),
            size(8, 10),
        )
    };
    assert_eq!(rounded(4), Ok(Outline::Rounded(Length::inches(4))));
    assert_eq!(
        rounded(5),
        Err(Misfit::TooLarge("radius", Length::inches(4)))
    );
}

/// B06 and B07 of the trade handbook's §14: a round arch of 8 × 11 has radius 4, a low arch of
/// width 9 rising 2 has radius 6 1/16, which its crown shows.
#[test]
fn arches_rise_as_they_should() {
    let round = outline(|o| o.shape = Shape::RoundArch, size(8, 11));
    assert_eq!(round, Ok(Outline::Arch(Length::inches(4))));
    let low = Outline::Arch(Length::inches(2));
    let corners = low.corners_nearest(size(9, 11), 64);
    let centre = [4.5, 6.0625];
    for [x, y] in &corners[..=128] {
        let radius = (x.approx_inches() - centre[0]).hypot(y.approx_inches() - centre[1]);
        assert!((radius - 6.0625).abs() < 1e-5, "{radius}");
    }
}

#[test]
fn growing_and_shrinking_undo_one_another() {
    let by = Length::inches(1);
    let shapes = [
        Outline::Rectangle,
        Outline::Oval,
        Outline::Rounded(Length::inches(2)),
        Outline::Arch(Length::inches(4)),
        Outline::Polygon(vec![
            [Length::ZERO, Length::ZERO],
            [Length::inches(8), Length::ZERO],
            [Length::inches(8), Length::inches(10)],
            [Length::ZERO, Length::inches(10)],
        ]),
    ];
    for shape in shapes {
        let larger = shape.grown_nearest(size(8, 10), by);
        assert_eq!(larger.grown_nearest(size(10, 12), -by), shape);
        assert!(larger.area_nearest(size(10, 12)) > shape.area_nearest(size(8, 10)));
    }
}

#[test]
fn a_rectangle_of_corners_has_a_rectangles_area() {
    let rectangle = Outline::Rectangle;
    let corners = rectangle.corners_nearest(size(8, 10), 1);
    assert_eq!(
        Outline::Polygon(corners).area_nearest(size(8, 10)),
        size(8, 10).area()
    );
}
