//! The job document: what it reads, what it refuses and where, what it writes.

use measure::{Angle, Length, Size};
use trade::{DocumentFault, Job, Show, Units, VERSION};

const PLAIN: &str = r#"rabbet = 1
units = "in"

[[art]]
width = "16 7/8"
height = "428.6 mm"
thickness = 0.125

[[frame]]
face = 1
lip = "1/4"
tilt = "22.5°"

[fit]
rabbet = "200 x 250 mm"
"#;

fn read(text: &str) -> Job {
    Job::read(text.as_bytes()).unwrap_or_else(|faults| panic!("{faults:#?}"))
}

/// The only fault of a document: its sentence and its line.
fn refused(text: &str) -> (String, Option<usize>) {
    let faults = Job::read(text.as_bytes()).expect_err("it is refused");
    let [fault] = faults.as_slice() else {
        panic!("one fault is wanted: {faults:#?}");
    };
    (
        fault.to_string(),
        fault.place().and_then(|place| place.line),
    )
}

#[test]
fn lengths_are_read_exactly_as_people_write_them() {
    let job = read(PLAIN);
    let art = &job.art[0];
    assert_eq!(*art.width, Length::inch_fraction(135, 8));
    assert_eq!(
        art.height.map(|height| *height),
        Some(Length::micrometres(428_600))
    );
    assert_eq!(*art.thickness, Length::inch_fraction(1, 8));
    assert_eq!(job.frame[0].face.map(|face| *face), Some(Length::inches(1)));
    let tilt = job.frame[0].tilt.map(|tilt| *tilt);
    assert_eq!(tilt, Some(Angle::from_millionths(22_500_000)));
    let rabbet = job.fit.and_then(|fit| fit.rabbet).map(|rabbet| *rabbet);
    assert_eq!(rabbet, Some(Size::new(Length::mm(200), Length::mm(250))));
}

#[test]
fn a_bare_number_is_in_the_units_of_the_document() {
    let metric = read(&PLAIN.replace("units = \"in\"", "units = \"mm\""));
    assert_eq!(*metric.art[0].thickness, Length::micrometres(125));
    let unsaid = read(&PLAIN.replace("units = \"in\"\n", ""));
    assert_eq!(unsaid.units, Units::Inches);
    assert_eq!(*unsaid.art[0].thickness, Length::inch_fraction(1, 8));
    // What one document said does not linger for the next.
    assert_eq!(read(PLAIN), read(PLAIN));
}

#[test]
fn both_forms_write_and_read_back_the_same_job() {
    let job = read(PLAIN);
    assert_eq!(read(&job.to_toml()), job);
    assert_eq!(read(&job.to_json().to_string()), job);
    assert!(
        job.to_toml().starts_with("rabbet = 1\n"),
        "the version comes first"
    );
}

#[test]
fn an_empty_job_says_its_version_and_units() {
    let empty = Job::empty(Units::Millimetres);
    assert_eq!((empty.rabbet, empty.sides), (VERSION, 4));
    assert_eq!(read(&empty.to_toml()), empty);
    assert!(empty.to_toml().contains("units = \"mm\""));
}

#[test]
fn a_byte_order_mark_and_windows_line_ends_do_no_harm() {
    let windows = format!("\u{feff}{}", PLAIN.replace('\n', "\r\n"));
    assert_eq!(read(&windows), read(PLAIN));
}

#[test]
fn a_refusal_names_the_line_and_keeps_what_was_typed() {
    let text = PLAIN.replace("16 7/8", "16 7/");
    let (sentence, line) = refused(&text);
    assert!(
        sentence.starts_with("the fraction has no bottom number"),
        "{sentence}"
    );
    assert_eq!(line, Some(5));
    let faults = Job::read(text.as_bytes()).expect_err("it is refused");
    let shown = faults[0].place().and_then(|place| place.text.clone());
    assert_eq!(shown.as_deref(), Some("width = \"16 7/\""));
}

#[test]
fn a_json_refusal_names_the_field() {
    let text = r#"{"rabbet": 1, "art": [{"width": "16 7/", "height": 1}]}"#;
    let faults = Job::read(text.as_bytes()).expect_err("it is refused");
    let pointer = faults[0].place().and_then(|place| place.pointer.clone());
    assert_eq!(pointer.as_deref(), Some("/art/0/width"));
}

#[test]
fn all_bad_lengths_are_named_together() {
    let text = PLAIN
        .replace("16 7/8", "16 7/")
        .replace("\"1/4\"", "\"wide\"");
    let faults = Job::read(text.as_bytes()).expect_err("it is refused");
    let mut lines: Vec<_> = faults.iter().filter_map(|f| f.place()?.line).collect();
    lines.sort_unstable();
    assert_eq!(lines, [5, 11]);
}

#[test]
fn unknown_fields_and_words_are_refused_by_name() {
    let (sentence, line) = refused(&PLAIN.replace("lip =", "lipp ="));
    assert!(
        sentence.starts_with("there is no field `lipp`; did you mean `lip`?"),
        "{sentence}"
    );
    assert_eq!(line, Some(11));
    let faults = Job::read(
        PLAIN
            .replace("thickness = 0.125", "show = \"hung\"")
            .as_bytes(),
    );
    let sentence = faults.expect_err("it is refused")[0].to_string();
    assert!(
        sentence.starts_with("there is no choice `hung`"),
        "{sentence}"
    );
    assert_eq!(
        read(&PLAIN.replace("thickness = 0.125", "show = \"float\"")).art[0].show,
        Some(Show::Float)
    );
}

#[test]
fn versions_are_looked_at_first() {
    let fault = |text: &str| {
        Job::read(text.as_bytes())
            .expect_err("it is refused")
            .remove(0)
    };
    let newer = PLAIN
        .replace("rabbet = 1", "rabbet = 7")
        .replace("lip =", "lipp =");
    assert_eq!(fault(&newer), DocumentFault::Newer { found: 7 });
    assert_eq!(
        fault(&PLAIN.replace("rabbet = 1\n", "")),
        DocumentFault::NoVersion
    );
    assert_eq!(fault("{}"), DocumentFault::NoVersion);
}

#[test]
fn what_is_no_document_says_so() {
    let fault = |bytes: &[u8]| Job::read(bytes).expect_err("it is refused").remove(0);
    assert_eq!(fault(b""), DocumentFault::Empty);
    assert_eq!(fault(b"\xef\xbb\xbf\n"), DocumentFault::Empty);
    assert_eq!(
        fault(b"rabbet = 1 # \xe9"),
        DocumentFault::NotText { at: 13 }
    );
    let long = vec![b' '; (1 << 20) + 1];
    assert_eq!(
        fault(&long),
        DocumentFault::TooLong {
            bytes: (1 << 20) + 1
        }
    );
}

#[test]
fn every_length_of_a_document_is_shown_to_the_bounds() {
    let mut seen = Vec::new();
    read(PLAIN).each_length(&mut |name, length, _| seen.push((name, length)));
    for (name, length) in [
        ("art width", Length::inch_fraction(135, 8)),
        ("art thickness", Length::inch_fraction(1, 8)),
        ("frame lip", Length::inch_fraction(1, 4)),
        ("fit rabbet", Length::mm(250)),
    ] {
        assert!(
            seen.contains(&(name, length)),
            "{name} is not among {seen:?}"
        );
    }
}

#[test]
fn the_schema_names_every_field_and_refuses_others() {
    let schema = Job::schema();
    let named = schema["properties"].as_object().expect("an object");
    let job = read(PLAIN).to_json();
    for field in job.as_object().expect("an object").keys() {
        assert!(named.contains_key(field), "{field} is not in the schema");
    }
    assert_eq!(schema["additionalProperties"], false);
}
