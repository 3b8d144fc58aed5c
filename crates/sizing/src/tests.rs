//! Unit tests: one line of working at a time, from a job that says little else.

mod borders;
mod curves;
mod depth;
mod frames;
mod labour;
mod marks;
mod windows;

use measure::{Angle, Unit};
use trade::{Catalogue, Job, Settings};
use working::Value;

use crate::{Sizes, derive};

/// Art, frame, borders and mat that most tests add to.
const ART: &str = "[[art]]\nwidth = \"8\"\nheight = \"10\"\n";
const FRAME: &str = "[[frame]]\nface = \"1\"\nlip = \"1/4\"\n";
const MAT: &str = "[[mat]]\nthickness = \"1/16\"\n";

/// Sizes of a job in inches, written without its first line.
fn sized(rest: &str) -> Sizes {
    let text = format!("rabbet = 1\n{rest}");
    let job = Job::read(text.as_bytes()).unwrap_or_else(|faults| panic!("{faults:#?}\n{text}"));
    let settings = Settings::defaults(job.units);
    let sizes = derive(&job, &Catalogue::starter(), &settings);
    sizes.unwrap_or_else(|faults| panic!("{faults:#?}\n{text}"))
}

/// The value of one line of working, exactly.
fn line(sizes: &Sizes, path: &str) -> String {
    let Some(line) = sizes.working.find(path) else {
        let paths: Vec<String> = sizes
            .working
            .lines()
            .map(|l| l.subject.to_string())
            .collect();
        panic!("there is no {path} among {paths:#?}");
    };
    match line.value {
        Value::Length(length) => length.exact(Unit::Inch).trim_end_matches(" in").to_owned(),
        Value::Angle(angle) => Angle::to_string(&angle),
        Value::Count(count) => count.to_string(),
        other => format!("{other:?}"),
    }
}

/// Checks lines of working of one job: path, then value in inches.
fn check(rest: &str, expected: &[(&str, &str)]) {
    let sizes = sized(rest);
    assert_eq!(sizes.working.recheck(), []);
    for (path, value) in expected {
        assert_eq!(line(&sizes, path), *value, "{path}");
    }
}

/// Checks the codes of a job's faults, the worst first.
fn check_faults(rest: &str, codes: &[&str]) {
    let sizes = sized(rest);
    let found: Vec<&str> = sizes.faults.iter().map(|fault| fault.code).collect();
    assert_eq!(found, codes, "{:#?}", sizes.faults);
}
