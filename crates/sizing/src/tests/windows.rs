//! Windows at face and foot, reveals, fillets, places.

use super::{ART, FRAME, MAT, check};

#[test]
fn covered_window_and_its_foot() {
    let art = ART.replace("height", "overlap = \"1/8\"\nheight");
    check(
        &format!("{art}{FRAME}{MAT}"),
        &[
            ("opening.1.window.width", "7 3/4"),
            ("mat.1.window.1.foot.width", "7 5/8"),
            ("mat.1.window.1.foot.height", "9 5/8"),
        ],
    );
}

#[test]
fn covered_window_measured_at_the_foot() {
    let settings = "[settings]\n\"mat.window_at\" = \"foot\"\n";
    check(
        &format!("{ART}{FRAME}{MAT}{settings}"),
        &[
            ("opening.1.foot.width", "7 3/4"),
            ("opening.1.window.width", "7 7/8"),
        ],
    );
    let reverse = MAT.replace("thickness", "bevel = \"reverse\"\nthickness");
    check(
        &format!("{ART}{FRAME}{reverse}{settings}"),
        &[
            ("opening.1.window.width", "7 5/8"),
            ("mat.1.window.1.foot.width", "7 3/4"),
        ],
    );
}

#[test]
fn large_or_unsquare_art_is_covered_further() {
    let large = ART.replace("\"10\"", "\"24 1/128\"");
    check(
        &format!("{large}{FRAME}{MAT}"),
        &[("opening.1.window.width", "7 1/2")],
    );
    let at_the_bound = ART.replace("\"10\"", "\"24\"");
    check(
        &format!("{at_the_bound}{FRAME}{MAT}"),
        &[("opening.1.window.width", "7 3/4")],
    );
    let unsquare = format!("{ART}width_readings = [\"7 15/16\"]\n");
    check(
        &format!("{unsquare}{FRAME}{MAT}"),
        &[("opening.1.window.width", "7 7/16")],
    );
}

#[test]
fn a_float_is_taken_from_the_largest_reading() {
    let art = format!("{ART}show = \"float\"\nmargin = \"1/2\"\nwidth_readings = [\"8 1/16\"]\n");
    check(
        &format!("{art}{FRAME}{MAT}"),
        &[("opening.1.window.width", "9 1/16")],
    );
}

#[test]
fn the_slope_follows_the_bevel() {
    for (bevel, slope) in [("45", "1/16"), ("90", "0")] {
        let settings = format!("[settings]\n\"mat.bevel\" = \"{bevel}\"\n");
        check(
            &format!("{ART}{FRAME}{MAT}{settings}"),
            &[("mat.1.slope", slope)],
        );
    }
    let square = MAT.replace("thickness", "bevel = \"square\"\nthickness");
    check(&format!("{ART}{FRAME}{square}"), &[("mat.1.slope", "0")]);
}

#[test]
fn a_reveal_is_nominal_or_seen() {
    let two = format!("{ART}{FRAME}{MAT}reveal = \"1/4\"\n{MAT}");
    check(
        &two,
        &[
            ("mat.1.window.1.window.width", "8 1/4"),
            ("mat.1.reveal_seen", "3/16"),
            ("mat.1.window.1.x", "2 1/2"),
            ("mat.2.window.1.x", "2 3/4"),
        ],
    );
    check(
        &format!("{two}[settings]\n\"mat.reveal_measured\" = \"seen\"\n"),
        &[
            ("mat.1.reveal", "5/16"),
            ("mat.1.window.1.window.width", "8 3/8"),
            ("mat.1.reveal_seen", "1/4"),
        ],
    );
}

#[test]
fn a_fillet_widens_its_window_and_tucks_behind_it() {
    let fillet = "fillet = { face = \"1/4\", tuck = \"3/16\", thickness = \"1/8\" }\n";
    check(
        &format!("{ART}{FRAME}{MAT}{fillet}"),
        &[
            ("opening.1.fillet_sight.width", "7 3/4"),
            ("mat.1.window.1.window.width", "8 1/4"),
            ("mat.1.window.1.fillet_long.width", "8 5/8"),
            ("mat.1.window.1.fillet_length", "40"),
        ],
    );
}

#[test]
fn windows_of_a_column_line_up() {
    let art = |name: &str, width: &str| {
        format!(
            "[[art]]\nname = \"{name}\"\nwidth = \"{width}\"\nheight = \"2\"\noverlap = \"0\"\n"
        )
    };
    for (align, x) in [("start", "2"), ("centre", "3 1/2"), ("end", "5")] {
        let layout =
            format!("[layout]\narrange = \"column\"\ngutter_y = \"1\"\nalign = \"{align}\"\n");
        let rest = format!(
            "{}{}{FRAME}{MAT}{layout}[borders]\nall = \"2\"\n",
            art("a", "1"),
            art("b", "4")
        );
        check(
            &rest,
            &[
                ("mat.1.window.1.x", x),
                ("mat.1.window.2.x", "2"),
                ("mat.1.window.2.y", "5"),
                ("package.size.width", "8"),
                ("package.size.height", "9"),
            ],
        );
    }
}
