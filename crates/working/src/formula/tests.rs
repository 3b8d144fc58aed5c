use measure::{Angle, Length, Mass};
use proptest::prelude::*;

use super::number::Number;
use super::quantity::Unit;
use super::ratio::Ratio;
use super::{Fault, Formula, Quantity};
use crate::value::{Given, Input, Value};

fn input(name: &'static str, value: impl Into<Value>) -> Input {
    let Given { value, origin } = Given::job(value);
    Input {
        name,
        value,
        origin,
    }
}

fn inches(halves: i64) -> Length {
    Length::inch_128ths(halves * 64)
}

/// Lengths in half inches, an angle, two counts.
fn bench() -> Vec<Input> {
    vec![
        input("window", inches(31)),
        input("left", inches(4)),
        input("right", inches(5)),
        input("board", inches(1)),
        input("board", inches(2)),
        input("corner", Angle::from_millionths(45_000_000)),
        input("pieces", 7),
        input("sides", 8),
        input("wide", true),
    ]
}

/// Evaluates with only the inputs the formula mentions.
fn evaluate(text: &str) -> Result<Quantity, Fault> {
    let formula = Formula::read(text)?;
    let inputs: Vec<Input> = bench()
        .into_iter()
        .filter(|input| formula.mentions(input.name))
        .collect();
    formula.evaluate(&inputs)
}

fn check(text: &str, expected: impl Into<Value>) {
    let quantity = evaluate(text).unwrap_or_else(|fault| panic!("{text}: {fault}"));
    assert_eq!(
        quantity.value(),
        Some(expected.into()),
        "{text} gave {quantity}"
    );
}

fn check_fault(text: &str, sentence: &str) {
    match evaluate(text) {
        Ok(quantity) => panic!("{text} gave {quantity}"),
        Err(fault) => assert_eq!(fault.to_string(), sentence, "{text}"),
    }
}

fn check_float(text: &str, expected: f64) {
    let quantity = evaluate(text).unwrap_or_else(|fault| panic!("{text}: {fault}"));
    let float = quantity.float().expect("an amount");
    assert!(
        (float - expected).abs() <= expected.abs() * 1e-12,
        "{text} gave {float}, not {expected}"
    );
    assert!(!quantity.is_exact(), "{text}");
}

#[test]
fn signs_bind_as_in_school() {
    check("x = 2 + 3 × 4", 14);
    check("x = (2 + 3) × 4", 20);
    check("x = 20 − 6 − 4", 10);
    check("x = 20 / 2 ÷ 5", 2);
    check("x = -3 * -2", 6);
    check("x = 2 − −3", 5);
    check("x = 10 − 2 × 3²", -8);
    check("x = 0.125 × 8", 1);
    check("x = 1 < 2 and 3 > 4 or 2 = 2", true);
    check("x = 1 + 1 ≥ 2 and not(2 ≠ 2)", true);
    check("x = 1 <= 0 or 1 >= 2", false);
}

#[test]
fn lengths_add_and_divide_exactly() {
    check("package = window + left + right", inches(40));
    check(
        "border = half_down(window − left)",
        Length::from_quanta(27 * 101_600),
    );
    check(
        "reach = 3 × left − right ÷ 2",
        Length::from_quanta(19 * 101_600),
    );
    check("third = left ÷ 3 × 3", inches(4));
    check("cuts = down(window ÷ left)", 7);
    check("cuts = up(window ÷ left)", 8);
    check("square = 1 in × 25.4 mm = 1 in²", true);
    check("weight = 16 oz = 1 lb and 1 kg = 1000 × 1000 mg", true);
    check(
        "weight = nearest(2500 × 1 g ÷ 1 m² × 2 m²)",
        Mass::grams(5000),
    );
    check("square = 4 × 1 ft × 1 ft = 4 ft²", true);
    check("side = sqrt(left × left)", inches(4));
    check("turn = 360° ÷ sides", Angle::from_millionths(45_000_000));
    check("slack = max(0, left − right)", Length::ZERO);
}

#[test]
fn steps_go_the_way_they_say() {
    check("x = up_to(window, 1 in)", inches(32));
    check("x = down_to(window, 1 in)", inches(30));
    check("x = up_to(window, 0.5 in)", inches(31));
    check("x = nearest_to(window, 1 in)", inches(32));
    check("x = nearest_to(−window, 1 in)", inches(-32));
    check("x = nearest(7 ÷ 3)", 2);
    check("x = down(−7 ÷ 3)", -3);
    check("x = up(−7 ÷ 3)", -2);
    check("x = half_down(pieces)", 3);
    check("x = half_down(−pieces)", -4);
}

#[test]
fn names_recorded_several_times_are_gathered() {
    check("stack = sum(board)", inches(3));
    check("stack = sum(board, left)", inches(7));
    check("boards = count(board)", 2);
    check("thickest = max(board)", inches(2));
    check("thickest = max(board, left − 1 in, 0)", inches(2));
    check("thinnest = min(left, board)", inches(1));
    check("none = sum(nothing) + left", inches(4));
    check("none = count(nothing)", 0);
    check("either = if(wide, left, right)", inches(4));
    check("either = if(not(wide), left ÷ 0, right)", inches(5));
    check("gap = abs(left − right)", Length::from_quanta(203_200));
}

#[test]
fn curves_are_floats() {
    check_float("x = tan(corner) × 3", 3.0);
    check_float("x = sin(30°)", 0.5);
    check_float("x = cos(60°)", 0.5);
    check_float("x = atan(1)", 45e6);
    check_float("x = asin(0.5)", 30e6);
    check_float("x = pi × 1 mm²", std::f64::consts::PI * 256e6);
    check_float("x = sqrt(2)", std::f64::consts::SQRT_2);
}

#[test]
fn quantities_that_do_not_fit_are_refused() {
    check_fault("x = left + 1", "+ stands between a length and a number");
    check_fault(
        "x = left × right − left",
        "− stands between an area and a length",
    );
    check_fault(
        "x = left < corner",
        "< stands between a length and an angle",
    );
    check_fault("x = tan(left)", "tan needs an angle and has a length");
    check_fault("x = atan(corner)", "atan needs a number and has an angle");
    check_fault("x = sqrt(left)", "sqrt needs a square and has a length");
    check_fault("x = if(left, 1, 2)", "if needs yes or no and has a length");
    check_fault("x = wide + 1", "+ needs an amount and has yes or no");
    check_fault("x = left and wide", "and needs yes or no and has a length");
    check_fault(
        "x = up_to(left, 2)",
        "up_to stands between a length and a number",
    );
    check_fault("x = up_to(left, 0)", "up_to needs a step above zero");
    check_fault(
        "x = max(left, 1)",
        "max stands between a number and a length",
    );
    check_fault("x = max(nothing)", "max has no value to choose from");
    check_fault("x = left ÷ 0", "it divides by zero");
    check_fault("x = left ÷ (pieces − 7)", "it divides by zero");
    check_fault("x = sqrt(−1)", "it takes the root of a number below zero");
    check_fault("x = asin(2)", "asin has no angle for this number");
    check_fault(
        "x = board",
        "2 inputs are recorded under “board”: use sum, count, max or min",
    );
    check_fault("x = lefft", "no input is recorded under “lefft”");
    check_fault(
        "x = 99999999999999999999999999 × 99999999999999999999999999",
        "a number grows past 128 bits",
    );
}

#[test]
fn formulas_that_can_not_be_read_are_refused() {
    check_fault("left + right", "+ stands at byte 5 where = is needed");
    check_fault(
        "= 2",
        "= stands at byte 0 where the name of the result is needed",
    );
    check_fault(
        "x = ",
        "the end stands at byte 4 where a number, a name or ( is needed",
    );
    check_fault("x = (2 + 3", "the end stands at byte 10 where ) is needed");
    check_fault(
        "x = 2 + 3)",
        ") stands at byte 9 where an operator or the end is needed",
    );
    check_fault(
        "x = 2 (3)",
        "( stands at byte 6 where an operator or the end is needed",
    );
    check_fault("x = 2 % 3", "“%” at byte 6 is no sign of a formula");
    check_fault(
        "x = 2. + 3",
        "“2.” at byte 4 is not a number: write 3 or 0.125",
    );
    check_fault(
        "x = 1.2.3",
        "“1.2.3” at byte 4 is not a number: write 3 or 0.125",
    );
    check_fault(
        "x = 2 left",
        "“left” at byte 6 follows a number: write ×, or one of in, ft, mm, cm, m, mg, g, kg, oz, lb",
    );
    check_fault("x = half(left)", "there is no function “half” (byte 4)");
    check_fault(
        "x = up_to(left)",
        "up_to at byte 4 takes 2 arguments and has 1",
    );
    check_fault(
        "x = sum(left + right)",
        "sum at byte 4 takes names of inputs only",
    );
    check_fault(
        "x = 1 < 2 < 3",
        "a second comparison stands at byte 10: join two with “and”",
    );
}

#[test]
fn an_input_the_formula_does_not_use_is_refused() {
    let formula = Formula::read("outside = window + left").unwrap();
    let inputs = [
        input("window", inches(3)),
        input("left", inches(1)),
        input("right", inches(1)),
    ];
    assert_eq!(
        formula.evaluate(&inputs),
        Err(Fault::Unused { name: "right" })
    );
}

/// An expression over whole numbers and three names, with its value worked out without the language.
#[derive(Clone, Debug)]
enum Tree {
    Number(i64),
    Name(usize),
    Negative(Box<Tree>),
    Pair(char, Box<Tree>, Box<Tree>),
    Call(&'static str, Box<Tree>, Box<Tree>),
}

const NAMES: [&str; 3] = ["alpha", "beta_2", "gamma"];

fn trees() -> impl Strategy<Value = Tree> {
    let leaf = prop_oneof![
        (0..200_i64).prop_map(Tree::Number),
        (0..3_usize).prop_map(Tree::Name)
    ];
    leaf.prop_recursive(5, 40, 2, |inner| {
        let two = (inner.clone(), inner.clone());
        let calls = prop::sample::select(vec!["max", "min", "up_to", "down_to", "nearest_to"]);
        prop_oneof![
            1 => inner.clone().prop_map(|inside| Tree::Negative(Box::new(inside))),
            6 => (prop::sample::select(vec!['+', '−', '×', '÷']), two.clone())
                .prop_map(|(sign, (left, right))| Tree::Pair(sign, Box::new(left), Box::new(right))),
            2 => (calls, two).prop_map(|(name, (left, right))| Tree::Call(name, Box::new(left), Box::new(right))),
        ]
    })
}

impl Tree {
    /// With as few parentheses as the precedence of signs allows.
    fn text(&self) -> String {
        match self {
            Self::Number(number) => number.to_string(),
            Self::Name(at) => NAMES[*at].to_owned(),
            Self::Negative(inside) => format!("−{}", inside.inside(6)),
            Self::Pair(sign, left, right) => {
                let own = self.strength();
                format!("{} {sign} {}", left.inside(own), right.inside(own + 1))
            }
            Self::Call(name, left, right) => format!("{name}({}, {})", left.text(), right.text()),
        }
    }

    fn inside(&self, floor: u8) -> String {
        if self.strength() < floor {
            format!("({})", self.text())
        } else {
            self.text()
        }
    }

    fn strength(&self) -> u8 {
        match self {
            Self::Pair('+' | '−', ..) => 4,
            Self::Pair(..) => 5,
            _ => 6,
        }
    }

    /// Top and bottom of the value, not reduced, bottom above zero; `None` where it can't be had.
    fn value(&self, names: [i64; 3]) -> Option<(i128, i128)> {
        let positive = |top: i128, bottom: i128| match bottom.signum() {
            0 => None,
            sign => Some((top.checked_mul(sign)?, bottom.checked_mul(sign)?)),
        };
        match self {
            Self::Number(number) => Some((i128::from(*number), 1)),
            Self::Name(at) => Some((i128::from(names[*at]), 1)),
            Self::Negative(inside) => inside.value(names).map(|(top, bottom)| (-top, bottom)),
            Self::Pair(sign, left, right) => {
                let ((a, b), (c, d)) = (left.value(names)?, right.value(names)?);
                let bottom = b.checked_mul(d)?;
                match sign {
                    '+' => Some((a.checked_mul(d)?.checked_add(c.checked_mul(b)?)?, bottom)),
                    '−' => Some((a.checked_mul(d)?.checked_sub(c.checked_mul(b)?)?, bottom)),
                    '×' => Some((a.checked_mul(c)?, bottom)),
                    _ => positive(a.checked_mul(d)?, b.checked_mul(c)?),
                }
            }
            Self::Call(name, left, right) => {
                let (left, right) = (left.value(names)?, right.value(names)?);
                let (a, b, c, d) = (left.0, left.1, right.0, right.1);
                let left_is_less = a.checked_mul(d)? < c.checked_mul(b)?;
                match *name {
                    "max" => Some(if left_is_less { right } else { left }),
                    "min" => Some(if left_is_less { left } else { right }),
                    _ if c <= 0 => None,
                    name => {
                        let steps = whole_steps(name, a.checked_mul(d)?, b.checked_mul(c)?)?;
                        Some((steps.checked_mul(c)?, d))
                    }
                }
            }
        }
    }
}

fn whole_steps(name: &str, top: i128, bottom: i128) -> Option<i128> {
    let (down, rest) = (top.div_euclid(bottom), top.rem_euclid(bottom));
    let twice = rest.checked_mul(2)?;
    let up = match name {
        "up_to" => rest > 0,
        "down_to" => false,
        _ => twice > bottom || (twice == bottom && top > 0),
    };
    Some(down + i128::from(up))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2_000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_expression_comes_out_as_worked_directly(tree in trees(), names in [-50..50_i64, -50..50_i64, 1..9_i64]) {
        let Some((top, bottom)) = tree.value(names) else {
            return Ok(());
        };
        let formula = Formula::read(&format!("x = {}", tree.text())).unwrap();
        let inputs: Vec<Input> = (0..3)
            .map(|at| input(NAMES[at], names[at]))
            .filter(|input| formula.mentions(input.name))
            .collect();
        let (number, _) = formula.evaluate(&inputs).unwrap().amount("test").unwrap();
        prop_assert_eq!(number, Number::Exact(Ratio::new(top, bottom).unwrap()), "{}", tree.text());
    }

    #[test]
    fn lengths_come_out_as_worked_directly(a in -5_000_000..5_000_000_i64, b in 1..5_000_000_i64, n in -9..9_i64) {
        let inputs = [input("a", Length::from_quanta(a)), input("b", Length::from_quanta(b)), input("n", n)];
        let formula = Formula::read("x = half_down(a + n × b) − up_to(a, b) + max(a, b)").unwrap();
        let expected = (a + n * b).div_euclid(2) - (a.div_euclid(b) + i64::from(a.rem_euclid(b) > 0)) * b + a.max(b);
        prop_assert_eq!(formula.evaluate(&inputs).unwrap().value(), Some(Value::Length(Length::from_quanta(expected))));
    }

    #[test]
    fn any_text_is_read_or_refused(text in "[a-c0-9.()+×÷=<, −²m]{0,30}") {
        if let Ok(formula) = Formula::read(&text) {
            prop_assert_eq!(formula.text(), text);
        }
    }
}

#[test]
fn a_fraction_keeps_its_unit() {
    let third = evaluate("x = left ÷ 7").unwrap();
    assert_eq!(
        third,
        Quantity::new(Number::Exact(Ratio::new(812_800, 7).unwrap()), Unit::LENGTH)
    );
    assert_eq!(third.value(), None);
    assert_eq!(third.to_string(), "7.257143 mm");
}
