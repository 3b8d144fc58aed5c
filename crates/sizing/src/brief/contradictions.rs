//! What a job says twice, or says and can't mean.

use measure::Angle;
use trade::Key;

use super::{Desk, part_name};
use crate::fault::Fault;

/// Past upright a side no longer tilts from flat.
const UPRIGHT: i64 = 90; // geometry: a right angle, in degrees

impl Desk<'_, '_> {
    pub(super) fn check_contradictions(&mut self) {
        self.one_fit();
        self.tilts();
        self.columns();
        self.strainer_bars();
    }

    /// A given size is one size.
    fn one_fit(&mut self) {
        let Some(fit) = self.job.fit else { return };
        let given = [fit.rabbet, fit.frame, fit.package, fit.sight, fit.outside];
        let count = given.iter().flatten().count();
        let (found, verb) = match count {
            0 => ("it gives no size".to_owned(), "Write"),
            1 => return,
            _ => (format!("it gives {count} sizes"), "Keep"),
        };
        self.faults.push(Fault::refuse(
            "fit.one",
            "Fit",
            found,
            "one size decides all others",
            format!(
                "{verb} one of `rabbet`, `frame`, `package`, `sight` and `outside`, or take `[fit]` out"
            ),
        ));
    }

    fn tilts(&mut self) {
        let (flat, upright) = (Angle::degrees(0), Angle::degrees(UPRIGHT));
        for (i, member) in self.job.frame.iter().enumerate() {
            let Some(tilt) = member.tilt.filter(|tilt| **tilt < flat || **tilt > upright) else {
                continue;
            };
            self.faults.push(Fault::refuse(
                "frame.tilt",
                part_name("Frame", i, self.job.frame.len()),
                format!("its sides tilt {} from flat", *tilt),
                format!("a side lies flat at {flat} and stands upright at {upright}"),
                "Measure the tilt from the wall the frame hangs on",
            ));
        }
    }

    fn columns(&mut self) {
        let columns = self.job.layout.as_ref().and_then(|layout| layout.columns);
        if columns == Some(0) {
            self.faults.push(Fault::refuse(
                "layout.columns",
                "Layout",
                "its grid has no columns",
                "a grid has one or more",
                "Write `columns = 2`, or leave the line out",
            ));
        }
    }

    fn strainer_bars(&mut self) {
        let Some(strainer) = &self.job.strainer else {
            return;
        };
        for (name, bars) in [
            ("uprights in its strainer", strainer.uprights),
            ("cross bars in its strainer", strainer.cross_bars),
        ] {
            let count = usize::try_from(bars).unwrap_or(usize::MAX);
            self.bound(name, count, Key::MaxLayers);
        }
    }
}
