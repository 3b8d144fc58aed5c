//! The bench checklist and its minutes (the trade handbook's §9, labour standards).

use trade::Job;

use super::sized;
use crate::{minutes, steps};

const GLASS_AND_MAT: &str = "[[frame]]\nface = \"1\"\nlip = \"1/4\"\nrabbet_depth = \"1/2\"\n\
    [[glazing]]\nsheet = \"glass-2.5\"\n[[mat]]\nthickness = \"1/16\"\n\
    [mount]\nthickness = \"1/16\"\n[[backing]]\nboard = \"foam-3\"\n\
    [attachment]\nhold = \"t-hinge\"\n[cover]\nsheet = \"paper\"\n";

fn total(rest: &str) -> i64 {
    let text = format!("rabbet = 1\n{rest}");
    let job = Job::read(text.as_bytes()).expect("it reads");
    minutes(&steps(&job, &sized(rest)))
}

fn plain() -> String {
    format!("[[art]]\nwidth = \"8\"\nheight = \"10\"\n{GLASS_AND_MAT}")
}

#[test]
fn the_plain_single_mat_glass_job_takes_79_minutes() {
    assert_eq!(total(&plain()), 79);
}

#[test]
fn variants_take_longer_by_their_standard() {
    let double = plain().replace("[mount]", "[[mat]]\nthickness = \"1/16\"\n[mount]");
    assert_eq!(total(&double), 79 + 5, "a further layer");
    let float = plain().replace(
        "height = \"10\"\n",
        "height = \"10\"\nshow = \"float\"\nmargin = \"1/2\"\n",
    );
    assert_eq!(total(&float), 79 + 25, "a float");
    let coated = plain().replace("glass-2.5", "glass-optical-2.5");
    assert_eq!(
        total(&coated),
        79 + 3,
        "a coated sheet is cleaned for 8, not 5"
    );
}

#[test]
fn dangerous_steps_carry_their_caution() {
    let job = Job::read(format!("rabbet = 1\n{}", plain()).as_bytes()).expect("it reads");
    let steps = steps(&job, &sized(&plain()));
    for word in ["chop", "glass"] {
        let step = steps.iter().find(|step| step.text.contains(word));
        let caution = step.and_then(|step| step.caution);
        assert!(
            caution.is_some_and(|caution| caution.len() > 30),
            "{word}: {steps:#?}"
        );
    }
}
