//! The invented shop's rule set prices every job of the shop.

use pricing::{Asked, Priced, RuleSet, price};
use sizing::{Sizes, derive};
use trade::{Catalogue, Job, Settings, Units};

use crate::worked_quotes::day;

pub(crate) fn catalogue() -> Catalogue {
    Catalogue::starter()
        .under(demo::CATALOGUE)
        .expect("the demo's costs lie over the starter catalogue")
}

pub(crate) fn rules() -> RuleSet {
    RuleSet::read(demo::PRICES).unwrap_or_else(|faults| panic!("{faults:?}"))
}

pub(crate) fn job(name: &str) -> Job {
    let job = demo::job(name).expect("a job of the shop");
    Job::read(job.toml.as_bytes()).expect("it reads")
}

pub(crate) fn sizes(job: &Job, catalogue: &Catalogue) -> Sizes {
    derive(job, catalogue, &Settings::defaults(Units::Inches)).expect("it derives")
}

pub(crate) fn priced(name: &str) -> Priced {
    let (job, catalogue) = (job(name), catalogue());
    let sizes = sizes(&job, &catalogue);
    price(&job, &sizes, &catalogue, &rules(), &Asked::on(day()))
}

#[test]
fn every_job_is_priced_without_a_fault() {
    for job in demo::JOBS {
        let priced = priced(job.name);
        let faults: Vec<String> = priced.faults.iter().map(sizing::Fault::sentence).collect();
        assert_eq!(faults, [""; 0], "{}", job.name);
        assert!(priced.totals.total.value.minor > 5_000, "{}", job.name);
        assert!(priced.shop.cost.is_some(), "{}", job.name);
        assert!(priced.shop.minutes > 20, "{}", job.name);
    }
}

#[test]
fn every_line_of_a_working_comes_out_as_recorded() {
    for job in demo::JOBS {
        assert_eq!(priced(job.name).working.recheck(), [], "{}", job.name);
    }
}

#[test]
fn every_material_of_the_bill_is_charged_for_or_included() {
    for job in demo::JOBS {
        let (document, catalogue) = (self::job(job.name), catalogue());
        let sizes = sizes(&document, &catalogue);
        let priced = price(&document, &sizes, &catalogue, &rules(), &Asked::on(day()));
        for line in &sizes.bill {
            let met = priced.shop.parts.iter().any(|part| {
                part.name == line.part || (part.name == "Walls" && line.part.starts_with("Wall"))
            });
            assert!(met, "{}: {}", job.name, line.part);
        }
    }
}

#[test]
fn the_rule_set_has_nothing_that_refuses() {
    let found = rules().check(day());
    let refused = found
        .iter()
        .filter(|fault| fault.severity == sizing::Severity::Refuse);
    assert_eq!(refused.count(), 0, "{found:?}");
}
