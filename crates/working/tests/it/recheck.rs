use measure::{Angle, Area, Length};
use proptest::prelude::*;
use working::{
    Fault, Given, Mismatch, Quantity, Rule, Source, Status, Subject, Value, Why, Worked, Working,
};

use crate::job::{OUTSIDE, halves, job};

const SUBJECT: Subject = Subject::of("package", "size").width();

const fn rule(formula: &'static str) -> Rule {
    let words = "made up for the test";
    Rule {
        id: "test.rule",
        words,
        formula,
        source: Source::Geometry,
        status: Status::Geometry,
    }
}

fn recheck<T: Into<Value> + Copy>(
    rule: &'static Rule,
    inputs: &[(&'static str, Given)],
    value: T,
) -> Vec<Mismatch> {
    let mut working = Working::new();
    working.by(rule, SUBJECT, inputs, value);
    working.recheck()
}

#[test]
fn a_sound_working_has_no_mismatch() {
    assert_eq!(job().working.recheck(), []);
}

#[test]
fn a_wrong_value_is_caught_with_both_sides_and_the_gap() {
    let inputs = [
        ("window", halves(16)),
        ("left", halves(4)),
        ("right", halves(5)),
    ];
    let inputs = inputs.map(|(name, value)| (name, Given::job(value)));
    let wrong = halves(25) - Length::QUANTUM;
    let found = recheck(&OUTSIDE, &inputs, wrong);
    let expected = Why::Differs {
        recorded: Value::Length(wrong),
        computed: Quantity::from(Value::Length(halves(25))),
        difference: Some(Quantity::from(Value::Length(Length::QUANTUM))),
    };
    assert_eq!(
        found
            .iter()
            .map(|mismatch| &mismatch.why)
            .collect::<Vec<_>>(),
        [&expected]
    );
    assert_eq!(found[0].subject, SUBJECT);
    assert_eq!(recheck(&OUTSIDE, &inputs, halves(25)), []);

    let told = recheck(&OUTSIDE, &inputs, halves(24))[0].to_string();
    assert_eq!(
        told,
        "package.size.width (rule test.outside): recorded 12 in (304.8 mm), \
         “outside = window + left + right” gives 12 1/2 in (317.5 mm); 1/2 in (12.7 mm) apart"
    );
}

#[test]
fn all_mismatches_are_gathered() {
    static NO_FORMULA: Rule = rule("just add them up");
    static NO_INPUT: Rule = rule("size = window + left");
    let mut working = Working::new();
    let window = [("window", Given::job(halves(3)))];
    working.by(&NO_FORMULA, SUBJECT, &window, halves(3));
    working.by(&NO_FORMULA, SUBJECT, &window, halves(3));
    working.by(&NO_INPUT, SUBJECT, &window, halves(3));
    let found = working.recheck();
    assert_eq!(
        found
            .iter()
            .map(|mismatch| mismatch.line.index())
            .collect::<Vec<_>>(),
        [0, 1, 2]
    );
    assert!(
        matches!(found[0].why, Why::Formula(Fault::Wanted { .. })),
        "{}",
        found[0]
    );
    assert_eq!(
        found[2].why,
        Why::Formula(Fault::Missing {
            name: "left".to_owned()
        })
    );
    assert_eq!(
        found[2].to_string(),
        "package.size.width (rule test.rule): “size = window + left”: no input is recorded under “left”"
    );
}

#[test]
fn a_value_of_another_kind_is_caught() {
    static TWICE: Rule = rule("size = 2 × window");
    let window = [("window", Given::job(halves(3)))];
    let found = recheck(&TWICE, &window, 6);
    assert!(
        matches!(
            found[0].why,
            Why::Differs {
                difference: None,
                ..
            }
        ),
        "{}",
        found[0]
    );
    assert_eq!(recheck(&TWICE, &window, halves(6)), []);
}

#[test]
fn a_wrong_yes_is_caught() {
    static FITS: Rule = rule("fits = blank ≤ sheet");
    let inputs = [
        ("blank", Given::job(halves(9))),
        ("sheet", Given::job(halves(8))),
    ];
    assert_eq!(recheck(&FITS, &inputs, true).len(), 1);
    assert_eq!(recheck(&FITS, &inputs, false), []);
}

#[test]
fn a_division_that_does_not_come_out_must_name_its_rounding() {
    static THIRD: Rule = rule("third = window ÷ 3");
    static THIRD_DOWN: Rule = rule("third = down(window ÷ 3)");
    let window = [("window", Given::job(Length::from_quanta(100)))];
    assert_eq!(recheck(&THIRD, &window, Length::from_quanta(33)).len(), 1);
    assert_eq!(recheck(&THIRD_DOWN, &window, Length::from_quanta(33)), []);
    assert_eq!(
        recheck(&THIRD_DOWN, &window, Length::from_quanta(34)).len(),
        1
    );
}

#[test]
fn an_input_that_strayed_from_its_line_is_caught() {
    let mut job = job();
    let strayed = Worked {
        value: halves(15),
        line: job.window.line,
    };
    let inputs = [
        ("window", strayed.into()),
        ("left", Given::job(halves(4))),
        ("right", Given::job(halves(5))),
    ];
    job.working.by(&OUTSIDE, SUBJECT, &inputs, halves(24));
    let found = job.working.recheck();
    let expected = Why::Input {
        name: "window",
        recorded: Value::Length(halves(15)),
        from: job.window.line,
        held: Value::Length(halves(16)),
    };
    assert_eq!(
        found
            .iter()
            .map(|mismatch| &mismatch.why)
            .collect::<Vec<_>>(),
        [&expected]
    );
}

#[test]
fn floats_are_allowed_a_quantum_and_no_more() {
    static RISE: Rule = rule("rise = tan(slope) × run");
    let inputs = [
        ("slope", Given::job(Angle::from_millionths(30_000_000))),
        ("run", Given::job(halves(20))),
    ];
    // 10 in × tan 30° = 5.773 502 691 896 in = 2 346 351.49 quanta.
    for (quanta, mismatches) in [
        (2_346_350, 1),
        (2_346_351, 0),
        (2_346_352, 0),
        (2_346_353, 1),
    ] {
        assert_eq!(
            recheck(&RISE, &inputs, Length::from_quanta(quanta)).len(),
            mismatches,
            "{quanta}"
        );
    }
}

#[test]
fn counts_through_floats_are_the_nearest_whole_number() {
    static SHARE: Rule = rule("parts_per_thousand = 1000 × sin(slope)");
    let slope = [("slope", Given::job(Angle::from_millionths(40_000_000)))];
    // 1000 × sin 40° = 642.787.
    for (count, mismatches) in [(642, 1), (643, 0), (644, 1)] {
        assert_eq!(recheck(&SHARE, &slope, count).len(), mismatches, "{count}");
    }
}

#[test]
fn areas_come_out_exactly() {
    static AREA: Rule = rule("area = width × height");
    let inputs = [
        ("width", Given::job(halves(64))),
        ("height", Given::job(halves(80))),
    ];
    let quanta = i128::from(halves(64).quanta()) * i128::from(halves(80).quanta());
    assert_eq!(
        recheck(&AREA, &inputs, Area::from_square_quanta(quanta)),
        []
    );
    assert_eq!(
        recheck(&AREA, &inputs, Area::from_square_quanta(quanta + 1)).len(),
        1
    );
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_line_off_by_any_amount_is_caught(
        window in 0..10_000_000_i64,
        left in 0..1_000_000_i64,
        right in 0..1_000_000_i64,
        off in prop_oneof![-1_000_000..0_i64, 1..1_000_000_i64],
    ) {
        let inputs = [("window", window), ("left", left), ("right", right)];
        let inputs = inputs.map(|(name, quanta)| (name, Given::job(Length::from_quanta(quanta))));
        let sound = window + left + right;
        prop_assert_eq!(recheck(&OUTSIDE, &inputs, Length::from_quanta(sound)), []);
        prop_assert_eq!(recheck(&OUTSIDE, &inputs, Length::from_quanta(sound + off)).len(), 1);
    }

    #[test]
    fn roundings_agree_with_those_of_lengths(
        quanta in -2_000..2_000_i64,
        step in 1..40_i64,
    ) {
        static UP: Rule = rule("size = up_to(length, step)");
        static DOWN: Rule = rule("size = down_to(length, step)");
        static NEAREST: Rule = rule("size = nearest_to(length, step)");
        static HALF: Rule = rule("size = half_down(length)");
        let (length, step) = (Length::from_quanta(quanta), Length::from_quanta(step));
        let inputs = [("length", Given::job(length)), ("step", Given::setting("test.step", step))];
        prop_assert_eq!(recheck(&UP, &inputs, length.up_to(step)), []);
        prop_assert_eq!(recheck(&DOWN, &inputs, length.down_to(step)), []);
        prop_assert_eq!(recheck(&NEAREST, &inputs, length.nearest_to(step)), []);
        prop_assert_eq!(recheck(&HALF, &inputs[..1], length.half_down()), []);
    }
}
