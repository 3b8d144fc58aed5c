//! How far a value can be trusted: as far as the weakest number behind it.

use trade::Key;
use trade::settings::citation;
use working::{LineId, Origin, Seen, Source, Status, Working};

/// The weakest status behind some lines, and whose rule the first of them is.
///
/// Shape:  empty for no lines; plain geometry of typed numbers is called that.
pub(super) fn trust(working: &Working, lines: &[LineId]) -> String {
    let (status, source) = (status_of(working, lines), source_of(working, lines));
    if source.is_empty() {
        status
    } else {
        format!("{status}; {source}")
    }
}

/// The weakest status behind some lines; empty for none.
pub(super) fn status_of(working: &Working, lines: &[LineId]) -> String {
    let weakest = lines.iter().map(|line| weakest(working, *line)).max();
    weakest.map(|status| status.to_string()).unwrap_or_default()
}

/// The first work named by the first of some lines or by those behind it; empty for none.
pub(super) fn source_of(working: &Working, lines: &[LineId]) -> String {
    let first = lines.first().and_then(|line| named(working, *line));
    first.unwrap_or_default()
}

fn named(working: &Working, line: LineId) -> Option<String> {
    let explained = working.explain(line);
    let mut cited = explained
        .steps()
        .iter()
        .filter_map(|step| match step.line.rule.source {
            Source::Cited(citation) => Some(citation.to_string()),
            Source::Geometry | Source::CommonPractice => None,
        });
    cited.next()
}

fn weakest(working: &Working, line: LineId) -> Status {
    let explained = working.explain(line);
    let steps = explained.steps().iter().flat_map(|step| {
        let inputs = step.line.inputs.iter();
        let brought = inputs.filter_map(|input| of_origin(input.origin));
        brought.chain([step.line.rule.status])
    });
    steps.max().unwrap_or(Status::Geometry)
}

/// The status an input brings along by itself.
fn of_origin(origin: Origin) -> Option<Status> {
    match origin {
        Origin::Setting(id) => Key::named(id).map(|key| key.definition().status),
        Origin::Table(code) => citation(code).map_or(Some(Status::CommonPractice), |found| {
            Some(match found.seen {
                Seen::FromMemory => Status::Assumed,
                _ => Status::Published,
            })
        }),
        _ => None,
    }
}
