//! Every table reads, and every constant has a source that is listed.

use trade::settings::citation;
use trade::{Medium, SourcedStatus};
use working::Figure;

use super::{Fact, within};
use crate::boards::{BOARDS, SPECS};
use crate::glazing::{ASTM, EN};
use crate::light::{
    GREY_SCALE, LIMITS, Limit, MEDIA, Media, PLACES, ULTRAVIOLET, media_of, media_or_worse,
};
use crate::{Refusal, climate::WOODS};

#[test]
fn every_table_reads() {
    let counts = [
        GREY_SCALE.len(),
        LIMITS.len(),
        MEDIA.len(),
        PLACES.len(),
        ULTRAVIOLET.len(),
        WOODS.len(),
        ASTM.len(),
        EN.len(),
        BOARDS.len(),
        SPECS.len(),
    ];
    assert_eq!(counts, [9, 18, 29, 11, 17, 22, 9, 11, 19, 11]);
}

#[test]
fn every_source_of_a_constant_is_listed() {
    for fact in Fact::all() {
        let trust = fact.trust();
        let known = trust.code() == "CP" || citation(trust.code()).is_some();
        assert!(known, "{} cites {}", fact.id, trust.source);
        let custom = trust.status == SourcedStatus::CommonPractice;
        assert!(custom || !trust.source.is_empty(), "{}", fact.id);
    }
    let limits = LIMITS.iter().map(Limit::trust);
    let media = MEDIA.iter().map(Media::trust);
    for trust in limits.chain(media) {
        let known = trust.code() == "CP" || citation(trust.code()).is_some();
        assert!(known, "{}", trust.source);
    }
}

#[test]
fn no_constant_stands_twice() {
    let mut names: Vec<&str> = Fact::all().iter().map(|fact| fact.id).collect();
    names.sort_unstable();
    let before = names.len();
    names.dedup();
    assert_eq!(names.len(), before);
}

#[test]
fn every_medium_of_a_document_has_a_class() {
    for medium in [
        Medium::Print,
        Medium::Watercolour,
        Medium::Pastel,
        Medium::Photograph,
        Medium::Document,
        Medium::Canvas,
        Medium::Panel,
        Medium::Textile,
        Medium::Object,
        Medium::Mirror,
        Medium::Reproduction,
    ] {
        assert!(media_or_worse(medium).category >= media_of(medium).category);
    }
}

#[test]
fn what_is_out_of_bounds_is_refused_with_them() {
    let refused = within("humidity", Figure::of(101.0, "% RH")).expect_err("it is too damp");
    assert_eq!(
        refused.to_string(),
        "the humidity is 101 % RH; give 0 % RH to 100 % RH"
    );
    let refused = crate::climate::wood("plastic").expect_err("it is none");
    assert!(matches!(refused, Refusal::Unknown { .. }));
}
