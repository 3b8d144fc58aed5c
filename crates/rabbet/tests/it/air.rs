use crate::bench::Bench;

/// Each question with what is typed for it.
const ASKED: [(&str, &[&str]); 5] = [
    (
        "wood",
        &[
            "--wood",
            "white oak",
            "--width",
            "3 in",
            "--from",
            "50",
            "--to",
            "25",
        ],
    ),
    (
        "sheet",
        &[
            "--sheet",
            "paper",
            "--size",
            "500 x 400 mm",
            "--warmer",
            "10 K",
            "--damper",
            "20",
            "--cover",
            "5 mm",
        ],
    ),
    (
        "dew",
        &[
            "--temperature",
            "68 °F",
            "--humidity",
            "50 %",
            "--surface",
            "9 °C",
        ],
    ),
    (
        "wall",
        &["--humidity", "50", "--outdoors", "-5 °C", "--loss", "1.5"],
    ),
    (
        "pack",
        &["--buffer", "paper", "--amount", "50", "--changes", "1"],
    ),
];

#[test]
fn every_question_is_answered() {
    let bench = Bench::new();
    for (verb, typed) in ASKED {
        let args = [&["air", verb], typed].concat();
        insta::assert_snapshot!(format!("air_{verb}"), bench.run(&args));
        let json = bench.run(&[&args[..], &["--json"]].concat()).json();
        assert!(
            json["answer"]
                .as_object()
                .is_some_and(|rows| !rows.is_empty()),
            "{json}"
        );
    }
}

/// A temperature without its unit has two readings; both are named.
#[test]
fn a_bare_temperature_is_refused() {
    let bench = Bench::new();
    let args = ["air", "dew", "--humidity", "50", "--temperature", "68"];
    insta::assert_snapshot!("air_bare_temperature", bench.run(&args));
}

#[test]
fn what_must_be_typed_is_a_matter_of_usage() {
    let bench = Bench::new();
    insta::assert_snapshot!("air_missing", bench.run(&["air", "dew"]));
}
