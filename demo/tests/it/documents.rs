//! Every job reads, derives without a stop, and writes back to itself.

use std::collections::BTreeSet;

use demo::{DemoJob, JOBS, SHOP, job, picture};
use sizing::{Severity, derive};
use trade::{Catalogue, Job, Settings, Shape, Show};

fn read(demo: &DemoJob) -> Job {
    Job::read(demo.toml.as_bytes()).unwrap_or_else(|faults| panic!("{}: {faults:#?}", demo.name))
}

fn all() -> impl Iterator<Item = (&'static DemoJob, Job)> {
    JOBS.iter().map(|demo| (demo, read(demo)))
}

/// Warnings that are meant: the job's comments say why.
const MEANT: &[(&str, &[&str])] = &[("ink-tide", &["art.leans"])];

#[test]
fn every_job_can_be_made() {
    let catalogue = Catalogue::starter();
    let mut stops = Vec::new();
    let mut warnings = BTreeSet::new();
    for (demo, job) in all() {
        let shop = Settings::defaults(job.units);
        let faults = match derive(&job, &catalogue, &shop) {
            Ok(sizes) => {
                assert!(sizes.can_be_drawn(), "{} can't be drawn", demo.name);
                sizes.faults
            }
            Err(faults) => faults,
        };
        for fault in faults {
            if fault.severity == Severity::Refuse {
                stops.push(format!(
                    "{}: {} {}",
                    demo.name,
                    fault.code,
                    fault.sentence()
                ));
            } else {
                warnings.insert((demo.name, fault.code));
            }
        }
    }
    assert!(stops.is_empty(), "{}", stops.join("\n"));
    let meant: BTreeSet<(&str, &str)> = MEANT
        .iter()
        .flat_map(|(name, codes)| codes.iter().map(|code| (*name, *code)))
        .collect();
    assert_eq!(warnings, meant);
}

#[test]
fn every_job_writes_back_to_itself() {
    for (demo, job) in all() {
        let again = Job::read(job.to_toml().as_bytes());
        assert_eq!(again.as_ref(), Ok(&job), "{}", demo.name);
    }
}

#[test]
fn names_orders_and_bins_are_told_apart() {
    let mut seen = BTreeSet::new();
    for (demo, job) in all() {
        assert!(
            seen.insert(demo.name.to_owned()),
            "{} is there twice",
            demo.name
        );
        for mark in [job.identity.order, job.identity.bin].into_iter().flatten() {
            assert!(seen.insert(mark.clone()), "{mark} is there twice");
        }
    }
    assert_eq!(
        job("harbour").map(|job| job.title),
        Some("Harbour at Low Tide")
    );
    assert_eq!(job("harbor"), None);
    assert!(!SHOP.name.is_empty());
}

#[test]
fn every_title_is_the_art_s() {
    for (demo, job) in all() {
        assert_eq!(
            job.art[0].title.as_deref(),
            Some(demo.title),
            "{}",
            demo.name
        );
    }
}

#[test]
fn every_job_is_promised_for_december_after_it_was_taken_in() {
    for (demo, job) in all() {
        let due = job.identity.due.expect("a day it is due");
        let taken_in = job.identity.taken_in.expect("a day it was taken in");
        assert!(
            due.starts_with("2026-12-") && taken_in < due,
            "{}",
            demo.name
        );
        assert!(
            job.identity.customer.is_some() && job.identity.bin.is_some(),
            "{}",
            demo.name
        );
    }
}

#[test]
fn every_piece_has_its_picture_in_its_own_proportions() {
    for (demo, job) in all() {
        for art in &job.art {
            let name = art.picture.as_deref().expect("a picture");
            let bytes = picture(name).unwrap_or_else(|| panic!("{}: no {name}", demo.name));
            let text = String::from_utf8(bytes).expect("text");
            let (across, down) = super::pictures::view_box(&text);
            let height = art.height.unwrap_or(art.width);
            let (width, height) = (art.width.quanta(), height.quanta());
            // Cross-multiplied, so that the comparison is exact.
            assert_eq!(
                i128::from(width) * down,
                i128::from(height) * across,
                "{name}"
            );
        }
    }
}

#[test]
fn the_hard_shapes_are_all_there() {
    let jobs: Vec<Job> = all().map(|(_, job)| job).collect();
    let any = |holds: &dyn Fn(&Job) -> bool| jobs.iter().any(holds);
    for shape in [
        Shape::Oval,
        Shape::RoundArch,
        Shape::LowArch,
        Shape::Octagon,
        Shape::Rounded,
        Shape::Free,
    ] {
        assert!(
            any(&|job| job.opening.iter().any(|o| o.shape == shape)),
            "{shape:?}"
        );
    }
    for show in [Show::Float, Show::Bleed, Show::Wrapped, Show::Object] {
        assert!(
            any(&|job| job.art.iter().any(|art| art.show == Some(show))),
            "{show:?}"
        );
    }
    assert!(any(&|job| job.double_sided) && any(&|job| job.sides == 6));
    assert!(any(&|job| job.strainer.is_some()) && any(&|job| job.build_up.is_some()));
    assert!(any(&|job| job.clips.is_some()) && any(&|job| job.walls.is_some()));
    assert!(any(&|job| job.mat.iter().any(|mat| !mat.around.is_empty())));
    assert!(any(&|job| job
        .frame
        .iter()
        .any(|member| member.tilt.is_some())));
    assert!(any(&|job| job
        .frame
        .iter()
        .any(|member| member.fillet.is_some())));
    assert!(any(&|job| job.mat.len() == 3 && job.frame.len() == 3));
}
