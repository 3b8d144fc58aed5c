//! Sealing, splitting, joining, and everything that must not pass.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on should stop")]

use serde_json::{Value, json};

use super::{RecordFault, RecordHead, RecordKey, SealedRecord, canonical, record_of};

fn key() -> RecordKey {
    RecordKey::of([7; 32])
}

fn piece(name: &str) -> Value {
    let job = trade::Job::read(demo::job(name).unwrap().toml.as_bytes()).unwrap();
    let shop = trade::Settings::defaults(job.units);
    let sizes = sizing::derive(&job, &trade::Catalogue::starter(), &shop).unwrap();
    let head = RecordHead {
        shop: demo::SHOP.name.into(),
        date: "2026-11-25".into(),
        fallback_order: "none".into(),
        without_customer: false,
    };
    record_of(&job, &sizes, &head)
}

/// RFC 8032, 7.1, test 1 (secret key and public key; from memory, and held against the Python reader).
#[test]
fn the_public_key_is_that_of_the_standard() {
    let secret = [
        0x9d, 0x61, 0xb1, 0x9d, 0xef, 0xfd, 0x5a, 0x60, 0xba, 0x84, 0x4a, 0xf4, 0x92, 0xec, 0x2c,
        0xc4, 0x44, 0x49, 0xc5, 0x69, 0x7b, 0x32, 0x69, 0x19, 0x70, 0x3b, 0xac, 0x03, 0x1c, 0xae,
        0x7f, 0x60,
    ];
    assert_eq!(
        RecordKey::of(secret).public(),
        "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a"
    );
}

#[test]
fn every_piece_of_the_shop_comes_back_whole() {
    for demo in demo::JOBS {
        let record = piece(demo.name);
        let sealed = SealedRecord::seal(&record, &key());
        let texts = sealed.texts();
        assert!(texts.iter().all(|text| text.len() <= 970), "{}", demo.name);
        assert!(texts.len() <= 4, "{}: {} codes", demo.name, texts.len());
        let mut turned = texts.clone();
        turned.reverse();
        let read = SealedRecord::read(&turned.join("\r\n")).unwrap();
        assert!(read.holds(), "{}", demo.name);
        assert_eq!(read.value(), record, "{}", demo.name);
        assert_eq!(read.public(), key().public());
        assert_eq!(read, sealed);
        // The document inside is the job itself: it opens, and is the same.
        let inside = read.value()["job"].to_string();
        let job = trade::Job::read(inside.as_bytes()).unwrap();
        let own = trade::Job::read(demo.toml.as_bytes()).unwrap();
        assert_eq!(job, own, "{}", demo.name);
    }
}

#[test]
fn signing_is_repeatable_and_the_customer_can_be_left_out() {
    let record = piece("heron");
    let one = SealedRecord::seal(&record, &key());
    assert_eq!(one, SealedRecord::seal(&record, &key()));
    assert!(one.json().contains("Quillfeather"));
    let job = trade::Job::read(demo::job("heron").unwrap().toml.as_bytes()).unwrap();
    let shop = trade::Settings::defaults(job.units);
    let sizes = sizing::derive(&job, &trade::Catalogue::starter(), &shop).unwrap();
    let head = RecordHead {
        shop: String::new(),
        date: String::new(),
        fallback_order: String::new(),
        without_customer: true,
    };
    let without = record_of(&job, &sizes, &head);
    assert!(!without.to_string().contains("Quillfeather"));
    assert_eq!(without["customer_left_out"], json!(true));
}

#[test]
fn a_changed_record_does_not_hold() {
    let mut record = piece("fern");
    let sealed = SealedRecord::seal(&record, &key());
    record["load"]["factor"] = json!(1);
    let other = SealedRecord::seal(&record, &key());
    let forged = SealedRecord {
        json: other.json.clone(),
        packed: other.packed.clone(),
        ..sealed.clone()
    };
    assert!(sealed.holds() && other.holds() && !forged.holds());
    let read = SealedRecord::read(&forged.texts().join("\n")).unwrap();
    assert!(!read.holds());
    // The same words under another key's name do not hold either.
    let stranger = SealedRecord {
        public: SealedRecord::seal(&record, &RecordKey::of([8; 32])).public,
        ..other
    };
    assert!(!stranger.holds());
}

#[test]
fn what_is_no_whole_record_is_refused_in_words() {
    let texts = SealedRecord::seal(&piece("heron"), &key()).texts();
    let others = SealedRecord::seal(&piece("fern"), &key()).texts();
    assert!(texts.len() > 1, "the test needs a record of several parts");
    check("", &RecordFault::None);
    check("nothing of the kind\n", &RecordFault::None);
    let missing = RecordFault::Missing {
        missing: 2,
        count: texts.len(),
    };
    let without: Vec<&str> = texts
        .iter()
        .enumerate()
        .filter(|(index, _)| *index != 1)
        .map(|(_, text)| text.as_str())
        .collect();
    check(&without.join("\n"), &missing);
    let name = |text: &str| text.split(['/', ':']).nth(3).unwrap().to_owned();
    check(
        &format!("{}\n{}", texts[0], others[0]),
        &RecordFault::Mixed(name(&texts[0]), name(&others[0])),
    );
    check("RABBET7/1/1/AAAA:00", &RecordFault::Newer("RABBET7".into()));
    for (text, why) in [
        ("RABBET1/1/1", "nothing stands after its heading"),
        (
            "RABBET1/0/1/A:00",
            "its number lies outside the number of parts",
        ),
        (
            "RABBET1/1/99999999/A:00",
            "its number lies outside the number of parts",
        ),
        (
            "RABBET1/1/1:00",
            "its heading is not RABBET1, part, parts and name",
        ),
    ] {
        check(text, &RecordFault::Part { part: 1, why });
    }
    check("RABBET1/1/1/A:00", &RecordFault::Packed);
}

fn check(text: &str, expected: &RecordFault) {
    assert_eq!(SealedRecord::read(text).as_ref(), Err(expected), "{text:?}");
}

/// A few bytes that unpack to far more than a record is are let go before they fill the memory.
#[test]
fn a_record_that_unpacks_to_too_much_is_refused() {
    let sealed = SealedRecord::seal(&json!({ "rabbet_record": 1 }), &key());
    let bomb = SealedRecord {
        packed: miniz_oxide::deflate::compress_to_vec(&vec![b' '; 3 << 20], 10),
        ..sealed
    };
    check(&bomb.texts().join("\n"), &RecordFault::TooLong);
}

/// RFC 8785, 3.2.3, on names in order; numbers here are always whole.
#[test]
fn canonical_json_has_its_names_in_order_and_no_space() {
    let value = json!({ "b": [1, "é\n\u{1}\"", true], "a": { "z": null, "y": {} } });
    assert_eq!(
        String::from_utf8(canonical::bytes(&value)).unwrap(),
        "{\"a\":{\"y\":{},\"z\":null},\"b\":[1,\"é\\n\\u0001\\\"\",true]}"
    );
}
