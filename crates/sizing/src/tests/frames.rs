//! Members, legs, sticks and charges.

use super::{ART, FRAME, check, sized};

#[test]
fn a_frame_from_the_package_outwards() {
    check(
        &format!("{ART}{FRAME}"),
        &[
            ("frame.1.rabbet.width", "8 1/8"),
            ("frame.1.sight.width", "7 5/8"),
            ("frame.1.outside.width", "9 5/8"),
            ("frame.1.lip_cover", "3/16"),
            ("frame.1.stick_used", "44"),
            ("frame.1.charge", "44"),
            ("frame.1.charged", "48"),
        ],
    );
}

#[test]
fn the_length_charged_follows_the_shops_rule() {
    for (rule, charge) in [
        ("quick", "44"),
        ("cut list", "44"),
        ("long points", "42 1/2"),
    ] {
        let settings = format!("[settings]\n\"moulding.charge_rule\" = \"{rule}\"\n");
        check(
            &format!("{ART}{FRAME}{settings}"),
            &[("frame.1.charge", charge)],
        );
    }
    for (step, charged) in [("foot", "48"), ("half foot", "48"), ("0.1 m", "1200 mm")] {
        let settings = format!("[settings]\n\"moulding.charge_step\" = \"{step}\"\n");
        check(
            &format!("{ART}{FRAME}{settings}"),
            &[("frame.1.charged", charged)],
        );
    }
}

#[test]
fn the_longer_pair_of_legs_comes_first() {
    let wide = sized(&format!("[[art]]\nwidth = \"10\"\nheight = \"8\"\n{FRAME}"));
    let legs = &wide.members[0].legs;
    assert_eq!((legs.each.len(), legs.count()), (2, 4));
    assert_eq!(legs.each[0].long.value, wide.outside.width.value);
    let tall = sized(&format!("{ART}{FRAME}"));
    assert_eq!(
        tall.members[0].legs.each[0].long.value,
        tall.outside.height.value
    );
}

#[test]
fn members_are_named_by_role_and_place() {
    let liner = FRAME.replace("face", "role = \"liner\"\nface");
    let gilt = FRAME.replace("face", "name = \"gilt\"\nface");
    let sizes = sized(&format!("{ART}{gilt}{FRAME}{liner}"));
    let names: Vec<&str> = sizes
        .members
        .iter()
        .map(|member| member.name.as_str())
        .collect();
    assert_eq!(names, ["gilt", "Frame 2", "Liner 3"]);
}

#[test]
fn canvases_have_their_own_allowance_and_tail() {
    let canvas = format!("{ART}medium = \"canvas\"\nthickness = \"3/4\"\n");
    let deep = format!("{FRAME}rabbet_depth = \"3/4\"\n");
    check(
        &format!("{canvas}{deep}"),
        &[("frame.1.rabbet.width", "8 1/4"), ("frame.1.slack", "0")],
    );
}

#[test]
fn a_polygons_sides_come_from_the_tangent() {
    let rest = format!("sides = 6\n[[art]]\nwidth = \"14\"\n{FRAME}");
    check(&rest, &[("frame.1.mitre", "30°")]);
    let leg = sized(&rest).members[0].legs.each[0];
    let expected = sized(&rest).outside.width.value.approx_inches() / 3_f64.sqrt();
    assert!(
        (leg.long.value.approx_inches() - expected).abs() < 1e-5,
        "tan 30° is 1/√3"
    );
    assert_eq!(leg.count, 6);
}

#[test]
fn each_given_size_leaves_the_same_package() {
    for given in [
        "rabbet = \"8 1/8 x 10 1/8\"",
        "sight = \"7 5/8 x 9 5/8\"",
        "outside = \"9 5/8 x 11 5/8\"",
        "package = \"8 x 10\"",
        "frame = \"8 1/8 x 10 1/8\"",
    ] {
        let sizes = sized(&format!("[fit]\n{given}\n{ART}{FRAME}"));
        let plain = sized(&format!("{ART}{FRAME}"));
        assert_eq!(sizes.package.size(), plain.package.size(), "{given}");
        assert_eq!(sizes.working.recheck(), []);
    }
}
