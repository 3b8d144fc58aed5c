//! The place a piece will hang in: water, heat, names nobody knows.

use sizing::Fault;
use trade::{Level, Medium};

use super::{Change, Look, Move, of_source};

impl Look<'_> {
    pub(super) fn place(&mut self) {
        if let Some(refusal) = self.around.unknown_colours.clone() {
            self.refused(&refusal);
        }
        let job = self.job;
        let Some(place) = job.place.as_ref() else {
            return;
        };
        if place.bathroom {
            self.water();
        }
        if let Some(above) = place.above.filter(|above| above.is_hot()) {
            let fault = Fault::warn(
                "place.heat",
                "Place",
                format!("it hangs above {}", above.word()),
                "warm, dry, sooty air rises there: paint flakes, wood gapes, wax runs",
                "Hang it elsewhere, or hang a reproduction there",
            );
            let changes = vec![Change::Move(Move::FromHeat)];
            self.push(fault, of_source("CP"), Vec::new(), changes);
        }
    }

    /// Steam and splashes; a reproduction or a looking glass may stand them.
    fn water(&mut self) {
        let lasts = matches!(self.medium(), Medium::Reproduction | Medium::Mirror);
        if lasts && self.job.identity.level < Some(Level::Conservation) {
            return;
        }
        let fault = Fault::warn(
            "place.water",
            "Place",
            "it hangs where water is used",
            "steam and splashes cockle paper, start mould and rust hardware",
            "Hang it elsewhere, or hang a reproduction in a sealed package there",
        );
        let changes = vec![Change::Move(Move::FromWater)];
        self.push(fault, of_source("CP"), Vec::new(), changes);
    }
}
