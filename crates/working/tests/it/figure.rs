//! Figures on lines of working.

use working::{Figure, Given, Rule, Source, Stated, Status, Subject, Working};

static DECAY: Rule = Rule {
    id: "test.decay",
    words: "what is left after so many lives",
    formula: "left = start × exp(0 - lives)",
    source: Source::Geometry,
    status: Status::Geometry,
};
static LOG: Rule = Rule {
    id: "test.lives",
    words: "how many lives went by",
    formula: "lives = ln(start ÷ left)",
    source: Source::Geometry,
    status: Status::Geometry,
};

fn worked(left: f64) -> Working {
    let mut working = Working::new();
    let start = Stated::table("L3", Figure::of(100.0, "N"));
    let inputs = [
        ("start", Given::from(start)),
        ("lives", Given::search(Figure::of(2.0, ""))),
    ];
    let subject = Subject::of("test", "left");
    let line = working.by(&DECAY, subject, &inputs, Figure::of(left, "N"));
    let inputs = [("start", start.into()), ("left", line.into())];
    let lives = (100.0 / left).ln();
    working.by(
        &LOG,
        Subject::of("test", "lives"),
        &inputs,
        Figure::of(lives, ""),
    );
    working
}

#[test]
fn a_figure_comes_out_again_through_powers_and_logarithms() {
    assert_eq!(worked(100.0 * (-2.0_f64).exp()).recheck(), []);
}

#[test]
fn a_figure_off_by_a_millionth_is_caught() {
    let amiss = worked(100.0 * (-2.0_f64).exp() * 1.000_001).recheck();
    assert_eq!(amiss.len(), 1);
    assert_eq!(amiss[0].rule.id, "test.decay");
}

#[test]
fn a_line_says_which_table_a_constant_is_from() {
    let working = worked(100.0 * (-2.0_f64).exp());
    let said = working.find("test.left").expect("the line").to_string();
    assert!(
        said.contains("100 N  from a table of constants, source L3"),
        "{said}"
    );
    assert!(
        said.contains("from a search, checked by this line"),
        "{said}"
    );
}

#[test]
fn figures_print_four_digits() {
    for (value, text) in [
        (0.0, "0 lx"),
        (-0.0, "0 lx"),
        (146_000.0, "146000 lx"),
        (1234.56, "1235 lx"),
        (-1.234_56, "-1.235 lx"),
        (0.012_345, "0.01235 lx"),
        (20.0, "20 lx"),
    ] {
        assert_eq!(Figure::of(value, "lx").to_string(), text);
    }
}

#[test]
#[should_panic(expected = "is finite")]
fn what_is_not_finite_is_our_mistake() {
    Figure::of(f64::NAN, "lx");
}
