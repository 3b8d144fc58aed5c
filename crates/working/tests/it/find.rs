use measure::Length;
use working::{Given, Subject, Value, Working};

use crate::job::{OUTSIDE, halves, job};

#[test]
fn a_subject_is_printed_from_1() {
    let check = |subject: Subject, expected: &str| assert_eq!(subject.to_string(), expected);
    check(Subject::of("package", "size"), "package.size");
    check(Subject::of("package", "size").width(), "package.size.width");
    check(
        Subject::nth("mat", 1, "outer").height(),
        "mat.2.outer.height",
    );
    check(
        Subject::nth("mat", 1, "window")
            .within("opening", 0)
            .width(),
        "mat.2.opening.1.window.width",
    );
    check(
        Subject::of("wall", "gap").within("piece", 65_533),
        "wall.piece.65534.gap",
    );
}

#[test]
fn a_subject_knows_the_paths_above_it() {
    let subject = Subject::nth("mat", 9, "window")
        .within("opening", 0)
        .width();
    for path in [
        "",
        "mat",
        "mat.10",
        "mat.10.opening",
        "mat.10.opening.1",
        "mat.10.opening.1.window",
    ] {
        assert!(subject.is_under(path), "{path}");
        assert!(!subject.is(path), "{path}");
    }
    assert!(subject.is("mat.10.opening.1.window.width"));
    assert!(subject.is_under("mat.10.opening.1.window.width"));
    for path in [
        "ma",
        "mat.",
        "mat.1",
        "mat.10.open",
        "mat.10.opening.1.window.width.x",
        "package",
    ] {
        assert!(!subject.is_under(path), "{path}");
        assert!(!subject.is(path), "{path}");
    }
}

#[test]
fn lines_are_found_by_path() {
    let job = job();
    let found = job
        .working
        .find("mat.1.opening.2.window.width")
        .expect("the window's line");
    assert_eq!(found.id, job.window.line);
    assert_eq!(found.value, Value::Length(halves(16)));
    assert!(job.working.find("mat.1").is_none());
    assert!(job.working.find("mat.1.opening.2.window.height").is_none());
    let under = |path| {
        job.working
            .find_all(path)
            .map(|line| line.id)
            .collect::<Vec<_>>()
    };
    assert_eq!(under("mat"), [job.window.line, job.outside.line]);
    assert_eq!(under("package"), [job.blank.line, job.fits.line]);
    assert_eq!(under("").len(), 4);
    assert_eq!(under("glazing"), []);
}

#[test]
fn the_last_of_several_lines_about_a_subject_is_found() {
    let mut working = Working::new();
    let subject = Subject::of("package", "size").width();
    for right in [4, 6] {
        let inputs = [
            ("window", halves(10)),
            ("left", halves(4)),
            ("right", halves(right)),
        ];
        working.by(
            &OUTSIDE,
            subject,
            &inputs.map(|(name, value)| (name, Given::job(value))),
            halves(14 + right),
        );
    }
    let found = working.find("package.size.width").unwrap();
    assert_eq!(found.value, Value::Length(halves(20)));
    assert_eq!(working.find_all("package.size.width").count(), 2);
}

#[test]
fn a_worked_value_reads_as_the_value() {
    let job = job();
    assert_eq!(job.outside.quanta(), halves(25).quanta());
    assert_eq!(*job.outside + Length::ZERO, halves(25));
    assert!(*job.fits);
}

#[test]
#[should_panic(expected = "window comes from a line of another working")]
fn a_line_of_another_working_is_refused() {
    let other = job();
    Working::new().by(
        &OUTSIDE,
        Subject::of("package", "size"),
        &[("window", other.window.into())],
        halves(1),
    );
}

#[test]
fn lines_are_reached_by_number() {
    let job = job();
    assert_eq!(job.working.len(), 4);
    assert_eq!(job.working.at(2).map(|line| line.id), Some(job.blank.line));
    assert!(job.working.at(4).is_none());
    assert_eq!(job.blank.line.index(), 2);
    assert_eq!(job.working.lines().len(), 4);
    assert!(Working::new().is_empty());
}
