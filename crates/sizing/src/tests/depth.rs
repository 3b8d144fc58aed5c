//! Stack, slack, clips, build-ups and air.

use super::{ART, FRAME, MAT, check, check_faults, sized};

const DEEP: &str = "[[frame]]\nface = \"1\"\nlip = \"1/4\"\nrabbet_depth = \"1/2\"\n";
const GLASS: &str = "[[glazing]]\nthickness = \"3/32\"\n";
const BACK: &str = "[[backing]]\nthickness = \"3/16\"\n";

#[test]
fn the_stack_is_its_layers_front_to_back() {
    let rest = format!("{ART}{DEEP}{GLASS}{MAT}{BACK}[mount]\nthickness = \"1/16\"\n");
    check(
        &rest,
        &[
            ("frame.1.stack", "13/32"),
            ("frame.1.slack", "-1/32"),
            ("frame.1.proud", "0"),
            ("package.air", "1/16"),
        ],
    );
    let sizes = sized(&rest);
    let stack = sizes.members[0].stack.as_ref().expect("the depth is known");
    let words: Vec<&str> = stack.layers.iter().map(|layer| layer.what.word()).collect();
    assert_eq!(words, ["glazing", "mat", "mount", "backing"]);
}

#[test]
fn a_double_sided_piece_repeats_what_lies_before_the_art() {
    let rest = format!("double_sided = true\n{ART}thickness = \"1/32\"\n{DEEP}{GLASS}{MAT}");
    let sizes = sized(&rest);
    let stack = sizes.members[0].stack.as_ref().expect("the depth is known");
    let words: Vec<&str> = stack.layers.iter().map(|layer| layer.what.word()).collect();
    assert_eq!(words, ["glazing", "mat", "art", "mat", "glazing"]);
    check(
        &rest,
        &[("frame.1.stack", "11/32"), ("frame.1.slack", "-3/32")],
    );
}

#[test]
fn strips_are_just_deep_enough_unless_they_say() {
    let rest = format!("{ART}{DEEP}{GLASS}{MAT}{BACK}{BACK}");
    check(
        &format!("{rest}[build_up]\n"),
        &[("frame.1.build_up", "5/32"), ("frame.1.slack", "0")],
    );
    check(
        &format!("{rest}[build_up]\ndepth = \"1/4\"\n"),
        &[("frame.1.slack", "3/32")],
    );
}

#[test]
fn the_clip_is_the_largest_that_does_not_exceed_what_stands_proud() {
    let canvas = format!("{ART}medium = \"canvas\"\nthickness = \"15/16\"\n{DEEP}");
    check(
        &format!("{canvas}[clips]\n"),
        &[("frame.1.proud", "7/16"), ("frame.1.clip", "3/8")],
    );
    check(
        &format!("{canvas}[clips]\noffsets = [\"7/16\", \"1/2\"]\n"),
        &[("frame.1.clip", "7/16")],
    );
    check_faults(
        &format!("{canvas}[clips]\noffsets = [\"1/2\"]\n"),
        &["clip.none"],
    );
    check_faults(&canvas, &["stack.too_deep"]);
}

#[test]
fn floated_and_sunk_art_takes_air() {
    let float =
        format!("{ART}show = \"float\"\nmargin = \"1/2\"\nlift = \"1/8\"\nthickness = \"1/64\"\n");
    let spacer = "[spacer]\nthickness = \"1/4\"\n";
    check(
        &format!("{float}{FRAME}{GLASS}{MAT}{spacer}"),
        &[("package.air", "11/64")],
    );
    let thick = format!("{ART}thickness = \"3/8\"\n");
    let sink = "[sink]\ndepth = \"1/4\"\n";
    check(
        &format!("{thick}{FRAME}{GLASS}{MAT}{spacer}{sink}"),
        &[("package.air", "3/16")],
    );
    check(
        &format!("{thick}{FRAME}{GLASS}{MAT}{spacer}"),
        &[("package.air", "5/16")],
    );
}

#[test]
fn a_box_is_as_deep_as_its_deepest_object_and_air() {
    let objects = "[[art]]\nwidth = \"8\"\nheight = \"10\"\nthickness = \"1\"\nshow = \"object\"\n";
    let rest = format!("{objects}{FRAME}{GLASS}[walls]\nthickness = \"1/8\"\n");
    check(
        &rest,
        &[
            ("wall.height", "1 1/4"),
            ("wall.short", "8"),
            ("package.size.width", "8 1/4"),
            ("package.air", "1/4"),
        ],
    );
}
