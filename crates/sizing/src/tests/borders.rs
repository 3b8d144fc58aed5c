//! Borders: stated, weighted, visible, left over.

use super::{ART, FRAME, MAT, check, check_faults, sized};

fn with(borders: &str, settings: &str) -> String {
    format!("{ART}{FRAME}{MAT}[borders]\n{borders}[settings]\n{settings}")
}

#[test]
fn one_border_may_differ_from_all() {
    check(
        &with("all = \"3\"\nleft = \"2\"\n", ""),
        &[
            ("border.left", "2"),
            ("border.right", "3"),
            ("border.bottom", "3"),
            ("visible_border.left", "1 13/16"),
        ],
    );
}

/// Three to four: the 3 : 4 of the US Navy's training manual 14066, *Matting*, pp. 2-32, 2-33.
#[test]
fn a_weighted_bottom_goes_to_the_nearest_step() {
    for (word, bottom) in [
        ("none", "2 1/2"),
        ("tenth", "2 3/4"),
        ("fifth", "3"),
        ("three to four", "3 5/16"),
    ] {
        let settings = format!("\"mat.weighting\" = \"{word}\"\n");
        check(
            &with("all = \"2 1/2\"\n", &settings),
            &[("border.bottom", bottom)],
        );
    }
    let named = with(
        "all = \"2 1/2\"\nbottom = \"4\"\n",
        "\"mat.weighting\" = \"tenth\"\n",
    );
    check(&named, &[("border.bottom", "4")]);
    let extra = with(
        "all = \"2 1/2\"\nbottom_extra = \"1/8\"\n",
        "\"mat.weighting\" = \"tenth\"\n",
    );
    check(&extra, &[("border.bottom", "2 5/8")]);
}

#[test]
fn what_is_to_be_seen_is_cut_wider_by_the_lip() {
    check(
        &with("all = \"2\"\n", "\"mat.border_measured\" = \"visible\"\n"),
        &[("border.left", "2 3/16"), ("visible_border.left", "2")],
    );
}

#[test]
fn a_given_rabbet_leaves_its_borders() {
    let fit = "[fit]\nrabbet = \"16 x 20\"\n";
    check(
        &format!("{fit}{}", with("bottom_extra = \"1/2\"\n", "")),
        &[
            ("border.left", "4 1/16"),
            ("border.right", "4 1/16"),
            ("border.top", "4 13/16"),
            ("border.bottom", "5 5/16"),
        ],
    );
    check(
        &format!("{fit}{}", with("right = \"3\"\ntop = \"4\"\n", "")),
        &[("border.left", "5 1/8"), ("border.bottom", "6 1/8")],
    );
}

#[test]
fn an_odd_quantum_goes_to_the_right() {
    let fit = "[fit]\npackage = \"12 in x 400.0001 mm\"\n";
    let rest = format!("{fit}{}", with("", ""));
    // 400.0001 mm is no whole number of quanta, and refused; half a quantum more is read.
    assert!(trade::Job::read(format!("rabbet = 1\n{rest}").as_bytes()).is_err());
    let rest = rest.replace("400.0001", "400.0000625");
    check(
        &rest,
        &[
            ("border.top", "76.175 mm"),
            ("border.bottom", "76.1750625 mm"),
        ],
    );
}

#[test]
fn a_frame_too_small_leaves_no_border() {
    let fit = "[fit]\nrabbet = \"7 x 9\"\n";
    check_faults(&format!("{fit}{}", with("", "")), &["border.none"]);
}

/// The trade handbook's §13, number 8: border less lip cover is to be an inch; here it is below zero.
#[test]
fn a_border_wholly_under_the_lip_is_pointed_out() {
    let sizes = sized(&format!("[fit]\nrabbet = \"8 x 10\"\n{}", with("", "")));
    let pointed_out = sizes
        .faults
        .iter()
        .any(|fault| fault.code.starts_with("border."));
    assert!(pointed_out, "{:#?}", sizes.faults);
}
