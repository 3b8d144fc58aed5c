//! Two hundred random quotes, against a second computation in Python's `decimal`, to the cent.
//!
//! `suite/ref/pricing/second_computation.py` works sizes, lines, discounts, tax, the shown price and the deposit
//! out from the rules in words; the two share the questions and nothing else.

mod draw;

use pricing::{Asked, Priced, RuleSet, price};
use serde_json::{Value, json};
use sizing::derive;
use trade::{Catalogue, Date, Job, Settings, Units};

use draw::{Chance, question};

const QUOTES: u64 = 200;

#[test]
fn two_hundred_quotes_agree_to_the_cent() {
    let questions: Vec<Value> = (1..=QUOTES)
        .map(|seed| question(&mut Chance(seed)))
        .collect();
    let script = "../ref/pricing/second_computation.py";
    let answers = crate::python::ask(script, &json!(questions));
    assert_eq!(answers.len(), questions.len());
    for (question, answer) in questions.iter().zip(&answers) {
        let own = answer_of(&priced(question));
        assert_eq!(own, *answer, "{question:#}");
    }
}

fn priced(question: &Value) -> Priced {
    let text = draw::job(question);
    let job = Job::read(text.as_bytes()).unwrap_or_else(|faults| panic!("{faults:?}\n{text}"));
    let rules = draw::rules(question);
    let rules = RuleSet::read(&rules).unwrap_or_else(|faults| panic!("{faults:?}\n{rules}"));
    let catalogue = Catalogue::starter();
    let units = if question["units"] == "in" {
        Units::Inches
    } else {
        Units::Millimetres
    };
    let sizes = derive(&job, &catalogue, &Settings::defaults(units)).expect("it derives");
    let discounts = question["discounts"].as_array().expect("a list");
    let asked = Asked {
        rush: question["rush"] != "",
        discounts: (0..discounts.len()).map(|at| format!("d{at}")).collect(),
        ..Asked::on(Date::read("2026-11-25").expect("a day"))
    };
    let priced = price(&job, &sizes, &catalogue, &rules, &asked);
    assert_eq!(priced.faults, [], "{question:#}");
    assert_eq!(priced.working.recheck(), [], "{question:#}");
    priced
}

fn answer_of(priced: &Priced) -> Value {
    let totals = &priced.totals;
    let zero = || measure::Money::zero(priced.currency).number();
    let some = |worked: Option<working::Worked<measure::Money>>| {
        worked.map_or_else(zero, |own| own.number())
    };
    let by_rule = |amount: &dyn Fn(&pricing::PricedLine) -> String| {
        let lines = priced.lines.iter();
        let pairs = lines.map(|line| (line.rule.id.clone(), json!(amount(line))));
        Value::Object(pairs.collect())
    };
    json!({
        "subtotal": totals.subtotal.number(),
        "rush": some(totals.rush),
        "discount": totals.discount().number(),
        "minimum": some(totals.minimum),
        "tax": totals.tax().number(),
        "net": totals.net.number(),
        "total": totals.total.number(),
        "deposit": some(totals.deposit),
        "balance": some(totals.balance),
        "lines": by_rule(&|line| line.amount.number()),
        "less": by_rule(&|line| line.discount.number()),
    })
}
