//! Faults that sizes revealed, with the changes that cure them.

use measure::Length;
use sizing::Fault;
use trade::{Hanger, Hold, Key, Kind, Pane};

use super::{Advice, Change, Trial, codes};
use crate::caution;

impl Trial<'_> {
    /// Advice for every fault of the sizes that a change cures.
    pub(super) fn of_sizes(&self) -> Vec<Advice> {
        let faults = self.sizes.faults.iter();
        faults
            .filter_map(|fault| {
                let mut changes = self.candidates(fault);
                changes.retain(|change| self.cures(change, fault));
                (!changes.is_empty()).then(|| self.advice(fault, changes))
            })
            .collect()
    }

    fn advice(&self, fault: &Fault, changes: Vec<Change>) -> Advice {
        let line = fault.line.map(|line| self.sizes.working.line(line));
        let source = line.map_or_else(
            || "common practice, no source".to_owned(),
            |line| line.rule.source.to_string(),
        );
        Advice {
            fault: fault.clone(),
            source,
            lines: fault.line.into_iter().collect(),
            changes,
            cautions: caution::beside(fault.code),
        }
    }

    /// Changes that may cure a fault.
    fn candidates(&self, fault: &Fault) -> Vec<Change> {
        match fault.code {
            "air.none" | "air.little" => self.spacers(),
            "attachment.irreversible" => vec![Change::SetHold(Hold::THinge)],
            "glazing.too_large" => self.sheets(),
            "glazing.binds" | "glazing.tight" => self.smaller(),
            "structure.brace" | "structure.face" | "structure.height" => vec![
                self.strainer(),
                Change::All(vec![self.strainer(), Change::AddBuildUp]),
            ],
            "stack.too_deep" => vec![Change::AddBuildUp],
            "wire.hook_shows" => vec![Change::SetHanger(Hanger::Rings)],
            "hardware.screw" => self.screws(),
            _ => Vec::new(),
        }
    }

    fn settings(&self) -> &trade::Settings {
        &self.sizes.settings
    }

    /// Spacers that bring the air to what loose and sticky media ask for, alone and with a deeper back.
    fn spacers(&self) -> Vec<Change> {
        let asked = self.settings().length(Key::ClearAir);
        let air = self.sizes.air.map_or(Length::ZERO, |air| air.value);
        let had = self
            .sizes
            .spacer
            .as_ref()
            .map_or(Length::ZERO, |spacer| spacer.thickness);
        let step = self.settings().length(Key::RingStep);
        let thickness = (had + asked - air).up_to(step);
        if !thickness.is_positive() {
            return Vec::new();
        }
        let spacer = Change::SetSpacer { thickness };
        vec![
            spacer.clone(),
            Change::All(vec![spacer, Change::AddBuildUp]),
        ]
    }

    /// Every sheet of the catalogue that may be large enough.
    fn sheets(&self) -> Vec<Change> {
        let panes = self.sizes.glazing.len();
        let each = (0..panes).flat_map(|index| {
            let fits = |material: &trade::Material| {
                material.kind == Some(Kind::Glazing) && material.pane == Some(Pane::Acrylic)
            };
            codes(self.catalogue, fits).map(move |sheet| Change::SetGlazing { index, sheet })
        });
        each.collect()
    }

    fn smaller(&self) -> Vec<Change> {
        let step = self.settings().length(Key::RingStep);
        let panes = self.sizes.glazing.iter().enumerate();
        let grows = panes.filter_map(|(index, pane)| {
            let growth = pane.growth?.value.up_to(step);
            Some(Change::SetUndersize {
                index,
                undersize: growth,
            })
        });
        grows.collect()
    }

    /// A strainer as wide as the least face of the last band, as deep as the least height of a large frame.
    fn strainer(&self) -> Change {
        let width = self.settings().length(Key::FaceLight3);
        let depth = self.settings().length(Key::HeightBand2);
        let uprights = u32::from(
            self.sizes.outside.size().width > self.settings().length(Key::LargeArt).twice(),
        );
        Change::AddStrainer {
            width,
            depth,
            uprights,
        }
    }

    fn screws(&self) -> Vec<Change> {
        let height = self.sizes.members.first().and_then(|member| member.height);
        let step = self.settings().length(Key::RingStep);
        let land = self.settings().length(Key::ScrewLand);
        let longest = height.map(|height| (height - land - step).down_to(step));
        let longest = longest.filter(|longest| longest.is_positive());
        longest.map(Change::SetScrew).into_iter().collect()
    }
}
