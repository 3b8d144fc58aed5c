//! The record of every invented piece, against a reader in Python that knows only the standards `RECORD.md` names.

use paperwork::{RecordHead, RecordKey, SealedRecord, record_of};
use serde_json::{Value, json};

#[test]
fn another_reader_reads_every_record_and_finds_its_signature_good() {
    let key = RecordKey::of([9; 32]);
    let records: Vec<Value> = demo::JOBS.iter().map(|demo| record(demo.toml)).collect();
    let sealed: Vec<SealedRecord> = records
        .iter()
        .map(|record| SealedRecord::seal(record, &key))
        .collect();
    let mut questions: Vec<Vec<String>> = sealed.iter().map(SealedRecord::texts).collect();
    // One letter of a signature changed.
    let mut spoilt = questions[0].clone();
    let heading = spoilt[0].find(':').expect("a heading") + 1;
    // Within the signature, which follows 32 bytes of key: 48 letters.
    let at = heading + 60;
    let other = if &spoilt[0][at..=at] == "0" { "1" } else { "0" };
    spoilt[0].replace_range(at..=at, other);
    questions.push(spoilt.clone());
    let answers = crate::python::ask("record.py", &json!(questions));
    assert_eq!(answers.len(), questions.len());
    for ((answer, record), demo) in answers.iter().zip(&records).zip(demo::JOBS) {
        assert_eq!(answer["holds"], json!(true), "{}", demo.name);
        assert_eq!(answer["key"], json!(key.public()), "{}", demo.name);
        assert_eq!(&answer["record"], record, "{}", demo.name);
    }
    assert_eq!(answers.last().expect("one more")["holds"], json!(false));
    let own = SealedRecord::read(&spoilt.join("\n")).expect("it is still a record");
    assert!(!own.holds());
}

fn record(toml: &str) -> Value {
    let job = trade::Job::read(toml.as_bytes()).expect("it reads");
    let shop = trade::Settings::defaults(job.units);
    let sizes = sizing::derive(&job, &trade::Catalogue::starter(), &shop).expect("it derives");
    let head = RecordHead {
        shop: demo::SHOP.name.to_owned(),
        date: "2026-11-25".to_owned(),
        fallback_order: "none".to_owned(),
        without_customer: false,
    };
    record_of(&job, &sizes, &head)
}
