//! The largest art for a size, and back: framing that art gives the size again.
//!
//! Source: plain geometry; the trade handbook's §3, inverse jobs.

use measure::Length;
use proptest::prelude::*;
use sizing::largest_art;
use trade::{Art, Catalogue, Job, Measured, Settings, Units};

use crate::draw::{Drawn, jobs};
use crate::laws::sized;

/// The job of one piece with nothing left to habits that look at the art's size.
fn plain(job: &Job) -> Job {
    let mut job = job.clone();
    job.art.truncate(1);
    job.opening.truncate(1);
    job.layout = None;
    if let Some(top) = job.mat.first_mut() {
        top.around.clear();
    }
    for opening in &mut job.opening {
        opening.window = None;
    }
    let art = &mut job.art[0];
    art.name = None;
    art.overlap = art.overlap.or(Some(Measured(Length::inch_fraction(1, 8))));
    job
}

fn framing(job: &Job, width: Length, height: Length) -> Job {
    let mut job = Job {
        fit: None,
        ..job.clone()
    };
    let Art {
        show,
        overlap,
        margin,
        lift,
        thickness,
        medium,
        ..
    } = job.art[0].clone();
    let art = Art {
        show,
        overlap,
        margin,
        lift,
        thickness,
        medium,
        ..Art::sized(width, height)
    };
    job.art[0] = art;
    if let Some(walls) = &mut job.walls {
        walls.display = None;
    }
    job
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn framing_the_largest_art_gives_the_size_back(job in jobs()) {
        let forward = sized(&job, &Catalogue::starter());
        let size = forward.outside.size();
        prop_assume!(size.short_side().is_positive());
        let fit = trade::Fit { outside: Some(trade::Pair(size)), ..trade::Fit::default() };
        let job = Drawn(Job { fit: Some(fit), ..plain(&job) });
        let (catalogue, settings) = (Catalogue::starter(), Settings::defaults(Units::Inches));
        match largest_art(&job, &catalogue, &settings) {
            Ok(largest) => {
                prop_assert!(largest.working.recheck().is_empty());
                let art = largest.art.size();
                let framed = Drawn(framing(&job, art.width, art.height));
                let sizes = sized(&framed, &catalogue);
                prop_assert_eq!(sizes.outside.size(), size, "{:?}", framed);
            }
            Err(faults) => prop_assert_eq!(faults[0].code, "largest.none"),
        }
    }
}
