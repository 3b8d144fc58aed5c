//! Where a piece will hang: what the document may say of it.

use trade::{Above, Job, Lamp, WallMake, WallSide};

const PLACED: &str = r#"rabbet = 1
units = "mm"

[[art]]
width = "300"
height = "400"
colours = "colour pencil"
grammage = 220

[hardware]
bumpers = "20"
grams = 4200

[place]
wall = "outer-insulated"
made_of = "picture-rail"
above = "bed"
stairs = true
lamp = "led"
lux = 120
outdoors = -12
"#;

fn read(text: &str) -> Job {
    Job::read(text.as_bytes()).unwrap_or_else(|faults| panic!("{faults:#?}"))
}

#[test]
fn a_place_is_read_and_written_back() {
    let job = read(PLACED);
    let place = job.place.clone().expect("a place");
    assert_eq!(place.wall, Some(WallSide::OuterInsulated));
    assert_eq!(place.made_of, Some(WallMake::PictureRail));
    assert_eq!(place.above, Some(Above::Bed));
    assert!(place.stairs && !place.public);
    assert_eq!(place.lamp, Some(Lamp::Led));
    assert_eq!((place.lux, place.outdoors), (Some(120), Some(-12)));
    let again = read(&job.to_toml());
    assert_eq!(again, job);
}

#[test]
fn a_document_without_one_still_opens_and_writes_none() {
    let text = PLACED.split("[place]").next().expect("before it");
    let job = read(text);
    assert_eq!(job.place, None);
    assert!(!job.to_toml().contains("place"));
}

#[test]
fn a_word_that_no_wall_is_made_of_is_refused() {
    let text = PLACED.replace("picture-rail", "cardboard");
    let faults = Job::read(text.as_bytes()).expect_err("it is refused");
    let sentence = faults[0].to_string();
    assert!(sentence.contains("cardboard"), "{sentence}");
}
