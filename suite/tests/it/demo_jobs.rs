//! The invented shop's jobs: each can be made, and each line of its working recomputes.

use demo::JOBS;
use sizing::{Severity, derive};
use trade::{Catalogue, Job, Settings};

#[test]
fn every_job_of_the_shop_can_be_made_and_recomputes() {
    let catalogue = Catalogue::starter();
    assert!(JOBS.len() > 20, "{} jobs", JOBS.len());
    for demo in JOBS {
        let name = demo.name;
        let job =
            Job::read(demo.toml.as_bytes()).unwrap_or_else(|faults| panic!("{name}: {faults:#?}"));
        let sizes = derive(&job, &catalogue, &Settings::defaults(job.units))
            .unwrap_or_else(|faults| panic!("{name}: {faults:#?}"));
        let stops: Vec<String> = sizes
            .faults
            .iter()
            .filter(|fault| fault.severity == Severity::Refuse)
            .map(|fault| format!("{}: {}", fault.code, fault.sentence()))
            .collect();
        assert!(stops.is_empty(), "{name}: {stops:#?}");
        assert!(sizes.working.lines().len() > 10, "{name} shows its working");
        let amiss = sizes.working.recheck();
        assert!(amiss.is_empty(), "{name}: {amiss:#?}");
    }
}
