//! Every question answers its own example, and every formula of its working holds.

use std::collections::{BTreeMap, HashSet};

use trade::{Settings, Units};

use super::{Answer, Fault, Kind, QUESTIONS, Question};

fn asked(question: &Question, typed: &[(&str, &str)]) -> Result<Answer, Vec<Fault>> {
    let typed: BTreeMap<String, String> = typed
        .iter()
        .map(|(name, text)| ((*name).to_owned(), (*text).to_owned()))
        .collect();
    question.answer(&typed, &Settings::defaults(Units::Inches), Units::Inches)
}

fn all() -> impl Iterator<Item = &'static Question> {
    QUESTIONS.iter()
}

#[test]
fn every_example_is_answered_and_its_working_holds() {
    for question in all() {
        let name = question.command();
        let answer =
            asked(question, question.example).unwrap_or_else(|faults| panic!("{name}: {faults:?}"));
        assert!(
            answer.working.recheck().is_empty(),
            "{name}: {:?}",
            answer.working.recheck()
        );
        let rows: Vec<_> = answer.groups.iter().flat_map(|group| &group.rows).collect();
        assert!(!rows.is_empty(), "{name}");
        let keys: HashSet<&str> = rows.iter().map(|row| row.key.as_str()).collect();
        assert_eq!(keys.len(), rows.len(), "{name}: a key stands twice");
        for row in rows {
            assert!(
                row.lines.is_empty() || !row.trust.is_empty(),
                "{name}: {row:?}"
            );
        }
        if question.noun == "hang" {
            assert!(
                !answer.cautions.is_empty(),
                "{name}: no caution beside a load"
            );
        }
    }
}

#[test]
fn nothing_typed_names_every_field_that_must_be() {
    for question in all() {
        let faults = asked(question, &[]).expect_err("fields are missing");
        let named: Vec<&str> = faults.iter().map(|fault| fault.field).collect();
        let wanted = question.fields.iter().filter(|field| field.is_asked());
        let wanted: Vec<&str> = wanted.map(|field| field.name).collect();
        assert_eq!(named, wanted, "{}", question.command());
        assert!(faults.iter().all(|fault| fault.code == "care.missing"));
    }
}

/// Texts nobody means: each is refused beside its field, or answered; none ends the program.
const HOSTILE: [&str; 18] = [
    "x",
    "-1",
    "0",
    "1e400",
    "99999999999999999999",
    "576460752303 mm",
    "1/16000 mm",
    "999999 kg",
    "NaN",
    "inf",
    "°",
    "%",
    "½",
    "--",
    "1,000",
    "\u{202e}7",
    "<script>",
    "0.0000001",
];

#[test]
fn hostile_texts_are_refused_beside_their_field_or_answered() {
    for question in all() {
        for field in question.fields {
            for text in HOSTILE {
                let mut typed = question.example.to_vec();
                typed.retain(|(name, _)| *name != field.name);
                typed.push((field.name, text));
                match asked(question, &typed) {
                    Ok(answer) => assert!(!answer.groups.is_empty()),
                    Err(faults) => {
                        assert!(
                            !faults.is_empty(),
                            "{} {} {text}",
                            question.verb,
                            field.name
                        );
                        for fault in faults {
                            let said = fault.whole().to_lowercase();
                            for word in ["invalid", "illegal", "please", "sorry", "oops"] {
                                assert!(!said.contains(word), "{said}");
                            }
                            assert!(
                                fault.field == field.name
                                    || fault.field.is_empty()
                                    || fault.code == "care.missing",
                                "{fault:?} is told at another field than {}",
                                field.name
                            );
                        }
                    }
                }
            }
        }
    }
}

#[test]
fn all_faults_come_at_once() {
    let wire = super::question("hang", "wire").expect("it is asked");
    let faults = asked(
        wire,
        &[("weight", "20"), ("rings", "16 7/"), ("rise", "no")],
    );
    let faults = faults.expect_err("three faults");
    let codes: Vec<&str> = faults.iter().map(|fault| fault.field).collect();
    assert_eq!(codes, ["weight", "rings", "rise"]);
}

#[test]
fn every_choice_is_answered() {
    for question in all() {
        for field in question.fields {
            let Kind::Choice(list) = field.kind else {
                continue;
            };
            for choice in list() {
                let mut typed = question.example.to_vec();
                typed.retain(|(name, _)| *name != field.name);
                typed.push((field.name, choice.word));
                let answer = asked(question, &typed);
                assert!(answer.is_ok(), "{} {}: {answer:?}", field.name, choice.word);
            }
        }
    }
}

/// The trade's worked case of a wire: 20 lb, rings 20 in apart, rise 3 in pull 34.8 lb at 16.7°.
#[test]
fn the_wire_of_the_trades_case() {
    let wire = super::question("hang", "wire").expect("it is asked");
    let answer = asked(wire, wire.example).expect("an answer");
    let rows = answer.groups.iter().flat_map(|group| &group.rows);
    let text = |key: &str| {
        let row = rows.clone().find(|row| row.key == key).expect("the row");
        row.amount.text(measure::Unit::Inch)
    };
    assert_eq!(text("angle"), "16.7°");
    assert!(text("tension").contains("34.8"), "{}", text("tension"));
}
