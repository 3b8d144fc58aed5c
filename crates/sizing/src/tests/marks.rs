//! Marks: hinges, rings, wire, cover, and the mat cutter's settings.

use super::{ART, FRAME, MAT, check, sized};
use crate::{BackSide, Cuts};

#[test]
fn hinges_sit_a_couple_of_inches_in_or_a_quarter() {
    let hold = "[attachment]\nhold = \"t-hinge\"\n";
    check(
        &format!("{ART}{FRAME}{hold}"),
        &[("hinge.count", "2"), ("hinge.inset", "2")],
    );
    let small = ART.replace("\"8\"", "\"4\"");
    check(&format!("{small}{FRAME}{hold}"), &[("hinge.inset", "1")]);
    let wide = ART.replace("\"8\"", "\"30\"");
    let more = "[settings]\n\"attachment.hinges\" = \"more with size\"\n";
    check(
        &format!("{wide}{FRAME}{hold}{more}"),
        &[("hinge.count", "3")],
    );
    check(
        &format!("{wide}{FRAME}{hold}count = 5\n"),
        &[("hinge.count", "5")],
    );
}

/// A 3-4-5 triangle: rings 8 apart, rise 3, legs of 5.
#[test]
fn the_wire_is_two_legs_of_a_triangle() {
    let rings = "[hardware]\ndown = \"6\"\ninset = \"13/16\"\n";
    let settings =
        "[settings]\n\"hanging.mark_step\" = \"1 in\"\n\"hanging.wire_rise\" = \"quarter\"\n";
    check(
        &format!("{ART}{FRAME}{rings}{settings}"),
        &[
            ("hanger.apart", "8"),
            ("wire.rise", "2"),
            ("wire.hook", "4"),
        ],
    );
    let wire = sized(&format!("{ART}{FRAME}{rings}{settings}"));
    let wire = wire
        .hangers
        .and_then(|hangers| hangers.wire)
        .expect("it hangs by a wire");
    let expected = 2.0 * (16.0_f64 + 4.0).sqrt() + 8.0;
    assert!((wire.length.value.approx_inches() - expected).abs() < 1e-5);
}

#[test]
fn rings_go_down_by_the_shops_share() {
    for (share, down) in [
        ("fifth", "2 5/16"),
        ("quarter", "2 15/16"),
        ("third", "3 7/8"),
    ] {
        let settings = format!("[settings]\n\"hanging.ring_drop\" = \"{share}\"\n");
        check(&format!("{ART}{FRAME}{settings}"), &[("hanger.down", down)]);
    }
    assert!(
        sized(&format!("{ART}{FRAME}[hardware]\nhanger = \"none\"\n"))
            .hangers
            .is_none()
    );
}

#[test]
fn the_dust_cover_lies_inside_the_edge() {
    let cover = "[cover]\nsheet = \"paper\"\n";
    check(
        &format!("{ART}{FRAME}{cover}"),
        &[("cover.size.width", "9 3/8")],
    );
    assert!(
        sized(&format!("{ART}{FRAME}[cover]\nsheet = \"none\"\n"))
            .cover
            .is_none()
    );
}

#[test]
fn the_cutter_works_from_the_back() {
    let borders = "[borders]\nleft = \"1\"\nright = \"2\"\ntop = \"3\"\nbottom = \"4\"\n";
    let foot = "[settings]\n\"mat.marks_at\" = \"foot\"\n\"mat.guide_offset\" = \"1/64\"\n";
    for (settings, run, offset) in [("", 0, 0), (foot, 4, 1)] {
        let sizes = sized(&format!("{ART}{FRAME}{MAT}{borders}{settings}"));
        let Cuts::Straight(cuts) = &sizes.setups[0].cuts else {
            panic!("a rectangle is cut straight");
        };
        let at = |inches: i64, more: i64| measure::Length::inch_fraction(64 * inches + more, 64);
        // The front's right border is the back's left one.
        let expected = [
            (BackSide::Left, 2, 4, 3),
            (BackSide::Top, 3, 2, 1),
            (BackSide::Right, 1, 3, 4),
            (BackSide::Bottom, 4, 1, 2),
        ];
        for (cut, (side, guide, start, stop)) in cuts.iter().zip(expected) {
            assert_eq!(cut.side, side);
            assert_eq!(cut.guide.value, at(guide, run + offset), "{side:?}");
            assert_eq!(cut.start.value, at(start, run), "{side:?}");
            assert_eq!(cut.stop.value, at(stop, run), "{side:?}");
            assert_eq!(cut.overcut.value, at(0, run), "{side:?}");
        }
    }
}
