use crate::job::job;

#[test]
fn an_explanation_goes_down_to_what_was_given() {
    let job = job();
    let explanation = job.working.explain(job.blank.line);
    let told: Vec<_> = explanation
        .steps()
        .iter()
        .map(|step| (step.depth, step.line.id))
        .collect();
    assert_eq!(
        told,
        [
            (0, job.blank.line),
            (1, job.outside.line),
            (2, job.window.line)
        ]
    );
}

#[test]
fn each_line_is_told_once() {
    let job = job();
    let explanation = job.working.explain(job.fits.line);
    let told: Vec<_> = explanation
        .steps()
        .iter()
        .map(|step| (step.depth, step.line.id))
        .collect();
    let expected = [
        (0, job.fits.line),
        (1, job.blank.line),
        (2, job.outside.line),
        (3, job.window.line),
    ];
    assert_eq!(told, expected);
}
