//! Mounting, closing and hanging.

use trade::{Attachment, Hanger, Hold, Key, Level, Medium, Role, Show};

use super::List;

/// How art is held to its mount: minutes of the first piece, and what to do.
struct Holding {
    minutes: i64,
    text: String,
    caution: Option<&'static str>,
}

impl List<'_> {
    pub(super) fn mounting(&mut self) {
        let sizes = self.sizes;
        if let Some(wrap) = &sizes.wrap {
            let text = format!(
                "Cut cloth {}, wrap the {} board, centre the textile",
                self.size(wrap.cloth.size()),
                self.size(wrap.board.size())
            );
            self.careful(
                self.min(Key::MinutesTextile),
                text,
                "Wash nothing, cut nothing of the textile itself.",
            );
        }
        let objects = self
            .job
            .art
            .iter()
            .filter(|art| art.show == Some(Show::Object))
            .count();
        if objects > 0 {
            let count = i64::try_from(objects).unwrap_or(i64::MAX);
            let text = format!(
                "Mount {objects} object{}: no glue on the object",
                if objects > 1 { "s" } else { "" }
            );
            self.step(self.min(Key::MinutesObject).saturating_mul(count), text);
        }
        if let Some(attachment) = &self.job.attachment {
            self.attachment(attachment);
        }
        if !sizes.mats.is_empty() {
            let joined = if sizes.package.width.value > sizes.package.height.value {
                "longer (top)"
            } else {
                "longer (left)"
            };
            let text = format!(
                "Join window and mount along the {joined} edge; close, check reveals and smudges"
            );
            self.step(self.min(Key::MinutesClose), text);
        }
    }

    fn attachment(&mut self, attachment: &Attachment) {
        let holding = self.holding(attachment);
        let floats = self.job.art.iter().any(|art| art.show == Some(Show::Float));
        let extra = if floats {
            self.min(Key::MinutesFloat)
        } else {
            0
        };
        let pieces = i64::try_from(self.job.art.len().saturating_sub(1)).unwrap_or(i64::MAX);
        let further = self.min(Key::MinutesFurtherPiece).saturating_mul(pieces);
        let minutes = holding.minutes + extra + further;
        match holding.caution {
            Some(caution) => self.careful(minutes, holding.text, caution),
            None => self.step(minutes, holding.text),
        }
    }

    /// How the first piece of art is held.
    fn holding(&self, attachment: &Attachment) -> Holding {
        let with = match (&attachment.material, &attachment.adhesive) {
            (Some(material), Some(adhesive)) => format!(" of {material} with {adhesive}"),
            (Some(material), None) => format!(" of {material}"),
            (None, Some(adhesive)) => format!(" with {adhesive}"),
            (None, None) => String::new(),
        };
        match attachment.hold {
            Hold::THinge => self.hinged("T-hinges, each crossed by a second strip", &with),
            Hold::VHinge => self.hinged("V-hinges", &with),
            Hold::SHinge => self.hinged("pass-through hinges", &with),
            Hold::Corners => Holding {
                minutes: self.min(Key::MinutesCorners),
                text: format!("Corners{with}, no adhesive on the art, room to move"),
                caution: None,
            },
            Hold::Strips => Holding {
                minutes: self.min(Key::MinutesCorners),
                text: format!("Edge strips{with}, no adhesive on the art, room to move"),
                caution: None,
            },
            Hold::Stitched => Holding {
                minutes: 0,
                text: format!("Stitch or lace the textile{with} through the cloth"),
                caution: None,
            },
            Hold::Mechanical => Holding {
                minutes: 0,
                text: format!("Secure keys; hold mechanically{with}, nothing glued"),
                caution: None,
            },
            Hold::DryMount => Holding {
                minutes: self.min(Key::MinutesDryMount),
                text: format!("Dry mount{with}; consent in writing seen"),
                caution: Some(
                    "It can't be undone: reproductions, or with the customer's written consent.",
                ),
            },
            Hold::Loose => Holding {
                minutes: 0,
                text: "Lay in loose; nothing adheres to it".to_owned(),
                caution: None,
            },
        }
    }

    fn hinged(&self, kind: &str, with: &str) -> Holding {
        let (count, inset) = self.sizes.hinges.map_or((2, String::new()), |hinges| {
            (
                hinges.count.value,
                format!(", {} in from the corners", self.tape(hinges.inset.value)),
            )
        });
        Holding {
            minutes: self.min(Key::MinutesHinge),
            text: format!(
                "{count} {kind}{with}, top edge only{inset}; strips torn, not cut, and lighter than the art; it hangs free at sides and bottom. Dry under blotter and weight"
            ),
            caution: Some(
                "No pressure-sensitive tape on the art; what is put on must come off with water.",
            ),
        }
    }

    pub(super) fn closing(&mut self) {
        let members = &self.sizes.members;
        let bare_canvas = self.sizes.glazing.is_empty()
            && self.job.art.iter().any(|art| art.medium == Medium::Canvas);
        if members.iter().any(|member| member.role == Role::Floater) {
            self.floater();
        } else if bare_canvas {
            self.canvas();
        } else {
            self.package();
        }
    }

    /// Glazing, art and boards closed into one package, and held in.
    fn package(&mut self) {
        if !self.sizes.glazing.is_empty() {
            self.clean();
        }
        let air = self
            .sizes
            .air
            .map(|air| format!("; {} of air before the art", self.tape(air.value)))
            .unwrap_or_default();
        self.step(
            self.min(Key::MinutesLayUp),
            format!("Dust, lay up, inspect upright under a lamp{air}"),
        );
        let level = self.job.identity.level;
        if level >= Some(Level::Conservation) {
            self.step(self.min(Key::MinutesEdgeTape), "Tape the package's edges");
            self.step(
                self.min(Key::MinutesLine),
                "Line the rabbet with sealing tape",
            );
        }
        self.hold_in();
        self.dust_cover();
    }

    fn clean(&mut self) {
        let (key, text) = if self.coated() {
            (
                Key::MinutesCleanCoated,
                "Clean the coated glazing as its maker's sheet says, inside first: no ammonia, clean cloth, spray the cloth",
            )
        } else {
            (
                Key::MinutesClean,
                "Clean glazing, inside first: no ammonia, clean cloth not paper towels, spray the cloth",
            )
        };
        let sheets = i64::try_from(self.sizes.glazing.len()).unwrap_or(i64::MAX);
        let faces = if self.sizes.double_sided { 2 } else { 1 };
        self.careful(
            self.min(key).saturating_mul(sheets) * faces,
            text,
            "Air the room; never spray near the art.",
        );
    }

    fn floater(&mut self) {
        let Some(member) = self
            .sizes
            .members
            .iter()
            .find(|member| member.floater.is_some())
        else {
            return;
        };
        let Some(floater) = &member.floater else {
            return;
        };
        let setback = floater
            .setback
            .map(|setback| format!(", face {} behind the front", self.tape(setback.value)))
            .unwrap_or_default();
        let text = format!(
            "Canvas into the floater: {} gap all round on spacers{setback}; screws through the {} ledge into the bars",
            self.tape(floater.gap),
            self.tape(floater.ledge)
        );
        self.step(self.min(Key::MinutesFloater), text);
    }

    fn canvas(&mut self) {
        let clip = self
            .sizes
            .members
            .last()
            .and_then(|member| member.stack.as_ref())
            .and_then(|stack| stack.clip);
        let clips = clip.map_or_else(String::new, |clip| {
            format!(", {} offset clips two a side", self.tape(clip.value))
        });
        self.step(
            self.min(Key::MinutesCanvas),
            format!("Canvas into the frame: secure the keys{clips}, rigid back board, hangers"),
        );
    }

    fn hold_in(&mut self) {
        let Some(member) = self.sizes.members.last() else {
            return;
        };
        let (spacing, inset) = (
            self.sizes.settings.length(Key::PointSpacing),
            self.sizes.settings.length(Key::PointInset),
        );
        let clip = member.stack.as_ref().and_then(|stack| stack.clip);
        let text = match clip {
            Some(clip) => format!(
                "Screw on {} offset clips, edge of the package taped",
                self.tape(clip.value)
            ),
            None => format!(
                "Points no more than {} apart, the first {} from each corner",
                self.tape(spacing),
                self.tape(inset)
            ),
        };
        self.step(self.min(Key::MinutesPoints), text);
    }

    fn dust_cover(&mut self) {
        let Some(cover) = self.sizes.cover else {
            return;
        };
        let stated = self.job.cover.as_ref().and_then(|cover| cover.inside);
        let inside = stated.map_or_else(
            || self.sizes.settings.length(Key::CoverInside),
            |inside| *inside,
        );
        let sheet = self
            .job
            .cover
            .as_ref()
            .map_or("paper", |cover| cover.sheet.as_str());
        let text = format!(
            "Dust cover ({sheet}): double-sided tape on the frame's back, laid taut, trimmed {} inside the outer edge to {}",
            self.tape(inside),
            self.size(cover.size())
        );
        self.step(self.min(Key::MinutesCover), text);
    }

    pub(super) fn hanging(&mut self) {
        if let Some(hangers) = &self.sizes.hangers {
            let hanger = self
                .job
                .hardware
                .as_ref()
                .map_or(Hanger::Wire, |hardware| hardware.hanger);
            let name = match hanger {
                Hanger::Plates => "Plates",
                Hanger::Cleat => "Cleat",
                _ => "Rings",
            };
            let wire = hangers.wire.map_or_else(String::new, |wire| {
                format!(
                    "; wire cut {}, rising {}",
                    self.tape(wire.length.value),
                    self.tape(wire.rise.value)
                )
            });
            let text = format!(
                "{name} {} down and {} in, pilot holes, screws shorter than the wood{wire}",
                self.tape(hangers.down.value),
                self.tape(hangers.inset.value)
            );
            self.careful(self.min(Key::MinutesHangers), text, "Weigh the piece; hardware, wire and wall fixing each by their maker's rating with a margin.");
            self.step(
                self.min(Key::MinutesBumpers),
                "Bumpers on both bottom corners",
            );
        }
        self.step(
            self.min(Key::MinutesLabel),
            "Record label; original labels copied or kept in a pocket",
        );
        self.step(self.min(Key::MinutesLook), "Final look and photograph");
        self.step(self.min(Key::MinutesWrap), "Wrap");
    }
}
