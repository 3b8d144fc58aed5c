//! Settings: defaults, changes, refusals, and the page that lists them.

use std::collections::{BTreeMap, BTreeSet};

use measure::{Angle, Length, Unit};
use trade::settings::{CITATIONS, KEYS, Layer, as_markdown, citation, standard_clips};
use trade::{Key, Settings, Units};
use working::Status;

fn changes(pairs: &[(&str, &str)]) -> BTreeMap<String, String> {
    let each = pairs
        .iter()
        .map(|(id, text)| ((*id).to_owned(), (*text).to_owned()));
    each.collect()
}

#[test]
fn every_default_lies_in_its_own_range() {
    for key in KEYS {
        for units in [Units::Inches, Units::Millimetres] {
            let definition = key.definition();
            let value = definition.default_in(units);
            assert!(definition.range.holds(value), "{} = {value}", key.id());
        }
    }
}

#[test]
fn ids_are_unique_and_lead_back_to_their_keys() {
    let ids: BTreeSet<&str> = KEYS.iter().map(|key| key.id()).collect();
    assert_eq!(ids.len(), KEYS.len());
    for key in KEYS {
        assert_eq!(Key::named(key.id()), Some(*key));
        assert!(
            key.definition().words.ends_with('.'),
            "{} is a sentence",
            key.id()
        );
    }
}

#[test]
fn what_is_published_cites_a_source_that_is_listed() {
    for key in KEYS {
        let definition = key.definition();
        let cited = citation(definition.source).is_some();
        assert!(
            cited || definition.source.is_empty(),
            "{} cites {}",
            key.id(),
            definition.source
        );
        assert!(
            cited || definition.status != Status::Published,
            "{} cites nothing",
            key.id()
        );
    }
    let codes: BTreeSet<&str> = CITATIONS.iter().map(|source| source.code).collect();
    assert_eq!(codes.len(), CITATIONS.len(), "codes are unique");
}

#[test]
fn a_shop_in_millimetres_has_metric_habits() {
    let (inch, metric) = (
        Settings::defaults(Units::Inches),
        Settings::defaults(Units::Millimetres),
    );
    assert_eq!(
        inch.length(Key::FrameAllowance),
        Length::inch_fraction(1, 8)
    );
    assert_eq!(metric.length(Key::FrameAllowance), Length::mm(3));
    assert_eq!(metric.choice(Key::ChargeStep), "0.1 m");
    assert_eq!(standard_clips(Units::Millimetres)[0], Length::mm(3));
}

#[test]
fn changes_lie_over_and_say_who_made_them() {
    let shop = Settings::defaults(Units::Inches);
    let shop = shop.with(
        &changes(&[("frame.allowance", "1/16")]),
        Layer::Shop,
        Unit::Inch,
    );
    let shop = shop.expect("it is taken");
    let words = changes(&[
        ("mat.bevel", "60"),
        ("mat.window_at", "foot"),
        ("minutes.chop", "7"),
    ]);
    let job = shop
        .with(&words, Layer::Job, Unit::Inch)
        .expect("they are taken");
    assert_eq!(
        job.length(Key::FrameAllowance),
        Length::inch_fraction(1, 16)
    );
    assert_eq!(job.angle(Key::BevelAngle), Angle::degrees(60));
    assert_eq!(job.choice(Key::WindowAt), "foot");
    assert_eq!(job.count(Key::MinutesChop), 7);
    assert_eq!(job.changed(Key::FrameAllowance), Some(Layer::Shop));
    assert_eq!(job.changed(Key::WindowAt), Some(Layer::Job));
    assert_eq!(job.changed(Key::EndTrim), None);
}

#[test]
fn refusals_come_together_and_none_is_applied() {
    let shop = Settings::defaults(Units::Inches);
    let words = [
        ("mat.bevell", "45"),
        ("mat.bevel", "95"),
        ("mat.window_at", "middle"),
        ("frame.allowance", "wide"),
        ("minutes.chop", "six"),
        ("frame.tail", "1/8"),
    ];
    let refused = shop
        .with(&changes(&words), Layer::Job, Unit::Inch)
        .expect_err("refused");
    let ids: Vec<&str> = refused.iter().map(|refused| refused.id.as_str()).collect();
    let wanted = [
        "frame.allowance",
        "mat.bevel",
        "mat.bevell",
        "mat.window_at",
        "minutes.chop",
    ];
    assert_eq!(ids, wanted);
    let sentence = |at: usize| refused[at].to_string();
    assert_eq!(
        sentence(1),
        "setting mat.bevel = \"95\": it may be 20° to 90°"
    );
    assert!(
        sentence(2).ends_with("the nearest name is mat.bevel"),
        "{}",
        sentence(2)
    );
    assert!(
        sentence(3).ends_with("type one of: face, foot"),
        "{}",
        sentence(3)
    );
    assert_eq!(shop, Settings::defaults(Units::Inches));
}

#[test]
fn the_page_lists_every_setting_and_source_once() {
    let page = as_markdown();
    for key in KEYS {
        let row = format!("| `{}` |", key.id());
        assert_eq!(page.matches(&row).count(), 1, "{}", key.id());
    }
    for source in CITATIONS {
        assert!(page.contains(&format!("| {} | {} |", source.code, source.title)));
    }
}
