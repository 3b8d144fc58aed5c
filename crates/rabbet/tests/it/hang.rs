use crate::bench::Bench;

/// Each question with what is typed for it.
const ASKED: [(&str, &[&str]); 5] = [
    (
        "wire",
        &[
            "--weight",
            "20 lb",
            "--rings",
            "20",
            "--rise",
            "3",
            "--breaks",
            "60 lb",
            "--depth",
            "1 1/2",
            "--hook-up",
            "24",
        ],
    ),
    (
        "screw",
        &[
            "--wood",
            "white oak",
            "--gauge",
            "6",
            "--thread",
            "1/2",
            "--rail",
            "3/4",
        ],
    ),
    (
        "rail",
        &[
            "--wood",
            "basswood",
            "--width",
            "5/8",
            "--depth",
            "3/4",
            "--span",
            "32",
            "--load",
            "5 lb 4 oz",
        ],
    ),
    ("hardware", &["--weight", "18 lb", "--wall", "plasterboard"]),
    ("lift", &["--weight", "40 lb"]),
];

#[test]
fn every_question_is_answered_with_its_caution() {
    let bench = Bench::new();
    for (verb, typed) in ASKED {
        let args = [&["hang", verb], typed].concat();
        let ran = bench.run(&args);
        assert!(ran.stdout.contains("Caution: "), "{ran}");
        insta::assert_snapshot!(format!("hang_{verb}"), ran);
        let json = bench.run(&[&args[..], &["--json"]].concat()).json();
        assert!(
            json["cautions"]
                .as_array()
                .is_some_and(|told| !told.is_empty()),
            "{json}"
        );
    }
}

/// The trade's worked case: 20 lb, rings 20 in apart, rise 3 in pull 34.8 lb at 16.7°.
#[test]
fn the_wire_of_the_trades_case() {
    let args = [
        "hang", "wire", "--weight", "20 lb", "--rings", "20", "--rise", "3", "--json",
    ];
    let json = Bench::new().run(&args).json();
    assert_eq!(json["answer"]["angle"]["text"], "16.7°");
    let text = json["answer"]["tension"]["text"]
        .as_str()
        .unwrap_or_default()
        .to_owned();
    assert!(text.contains("34.8"), "{text}");
}

#[test]
fn what_the_engine_refuses_is_told_in_its_words() {
    let bench = Bench::new();
    let args = [
        "hang", "wire", "--weight", "20 lb", "--rings", "10", "--rise", "3", "--hooks", "12",
    ];
    insta::assert_snapshot!("hang_refused", bench.run(&args));
    let masses = ["hang", "hardware", "--weight", "18"];
    insta::assert_snapshot!("hang_bare_mass", bench.run(&masses));
}
