//! Sheets, boards, strips and fillets, looked up.

use std::sync::Arc;

use measure::Length;
use trade::{Bevel, Key, Kind, Mat, MatFillet, Material, Pane};
use working::Given;

use super::{Desk, is_canvas, part_name};
use crate::trace::Fact;

/// A board with its thickness.
#[derive(Clone, Debug)]
pub(crate) struct LayerBrief {
    pub material: Option<Arc<Material>>,
    pub thickness: Fact,
    pub undersize: Fact,
}

/// A mat.
pub(crate) struct MatBrief<'a> {
    pub mat: &'a Mat,
    pub material: Option<Arc<Material>>,
    pub thickness: Fact,
    pub reveal: Fact,
    pub fillet: Option<FilletBrief>,
}

/// A fillet, in a mat window or under a lip.
#[derive(Clone, Debug)]
pub(crate) struct FilletBrief {
    pub material: Option<Arc<Material>>,
    pub face: Fact,
    pub tuck: Fact,
    pub thickness: Fact,
}

/// A sheet of glazing.
pub(crate) struct PaneBrief {
    pub material: Option<Arc<Material>>,
    pub thickness: Fact,
    /// Stated by the job, or the shop's for glass; for acrylic it is worked out.
    pub undersize: Option<Fact>,
    pub pane: Option<Pane>,
    /// Index of the member that holds it, outside in.
    pub held_in: usize,
}

/// Strips behind the glazing.
pub(crate) struct SpacerBrief {
    pub material: Option<Arc<Material>>,
    pub width: Option<Fact>,
    pub thickness: Fact,
}

/// Walls of a shadowbox.
pub(crate) struct WallsBrief {
    pub material: Option<Arc<Material>>,
    pub thickness: Fact,
    /// Left out: worked out from the deepest object.
    pub height: Option<Fact>,
}

/// A build-up round thick art.
pub(crate) struct SinkBrief {
    pub material: Option<Arc<Material>>,
    pub depth: Fact,
    pub room: Fact,
}

impl<'a> Desk<'a, '_> {
    pub(super) fn mats(&mut self) -> Vec<MatBrief<'a>> {
        let job = self.job;
        let count = job.mat.len();
        job.mat
            .iter()
            .enumerate()
            .filter_map(|(i, mat)| self.mat(mat, &part_name("Mat", i, count)))
            .collect()
    }

    fn mat(&mut self, mat: &'a Mat, part: &str) -> Option<MatBrief<'a>> {
        let (material, thickness) = self.board(
            part,
            mat.board.as_deref(),
            mat.thickness.map(|t| *t),
            &[Kind::Board, Kind::Backing],
        )?;
        let fillet = mat
            .fillet
            .as_ref()
            .and_then(|fillet| self.mat_fillet(fillet, part));
        Some(MatBrief {
            mat,
            material,
            thickness,
            reveal: self.or_setting(mat.reveal.map(|r| *r), Key::MatReveal),
            fillet,
        })
    }

    /// A board and its thickness, or the fault of having neither.
    fn board(
        &mut self,
        part: &str,
        code: Option<&str>,
        stated: Option<Length>,
        kinds: &[Kind],
    ) -> Option<(Option<Arc<Material>>, Fact)> {
        let material = self.material(part, code, kinds);
        if code.is_some() && material.is_none() {
            return None;
        }
        let own = material
            .as_ref()
            .and_then(|m| m.thickness.as_ref())
            .map(|t| **t.is());
        let thickness = self.number(part, "thickness", stated, own)?;
        Some((material, thickness))
    }

    fn mat_fillet(&mut self, fillet: &MatFillet, part: &str) -> Option<FilletBrief> {
        let part = format!("{part}, fillet");
        let material = self.material(&part, fillet.fillet.as_deref(), &[Kind::Fillet]);
        let profile = material.as_ref().and_then(|m| m.profile.as_ref());
        let (own_face, own_height) = (profile.map(|p| *p.face), profile.map(|p| *p.height));
        let face = self.number(&part, "face", fillet.face.map(|f| *f), own_face)?;
        let thickness =
            self.number(&part, "thickness", fillet.thickness.map(|t| *t), own_height)?;
        let tuck = self.or_setting(fillet.tuck.map(|t| *t), Key::FilletTuck);
        Some(FilletBrief {
            material,
            face,
            tuck,
            thickness,
        })
    }

    pub(super) fn frame_fillet(
        &mut self,
        fillet: &trade::FrameFillet,
        part: &str,
    ) -> Option<FilletBrief> {
        let part = format!("{part}, fillet");
        let material = self.material(&part, fillet.fillet.as_deref(), &[Kind::Fillet]);
        let profile = material.as_ref().and_then(|m| m.profile.as_ref());
        let (own_face, own_height) = (profile.map(|p| *p.face), profile.map(|p| *p.height));
        let face = self.number(&part, "face", fillet.face.map(|f| *f), own_face)?;
        let thickness =
            self.number(&part, "thickness", fillet.thickness.map(|t| *t), own_height)?;
        Some(FilletBrief {
            material,
            face,
            tuck: Fact::job(Length::ZERO),
            thickness,
        })
    }

    pub(super) fn glazing(&mut self) -> Vec<PaneBrief> {
        let job = self.job;
        let count = job.glazing.len();
        job.glazing
            .iter()
            .enumerate()
            .filter_map(|(i, glazing)| self.pane(glazing, &part_name("Glazing", i, count)))
            .collect()
    }

    fn pane(&mut self, glazing: &trade::Glazing, part: &str) -> Option<PaneBrief> {
        let stated = glazing.thickness.map(|t| *t);
        let (material, thickness) =
            self.board(part, glazing.sheet.as_deref(), stated, &[Kind::Glazing])?;
        let pane = material.as_ref().and_then(|m| m.pane);
        let habit = (pane != Some(Pane::Acrylic)).then(|| self.setting(Key::GlassUndersize));
        let held_in = match &glazing.held_in {
            None => self.job.frame.len().saturating_sub(1),
            Some(name) => self.member_named(part, name)?,
        };
        Some(PaneBrief {
            material,
            thickness,
            undersize: glazing.undersize.map(|u| Fact::job(*u)).or(habit),
            pane,
            held_in,
        })
    }

    pub(super) fn spacer(&mut self) -> Option<SpacerBrief> {
        let spacer = self.job.spacer.as_ref()?;
        let material = self.material(
            "Spacer",
            spacer.strip.as_deref(),
            &[Kind::Spacer, Kind::Board, Kind::Backing],
        );
        let profile = material.as_ref().and_then(|m| m.profile.as_ref());
        let own = profile.map(|p| *p.height).or_else(|| {
            material
                .as_ref()
                .and_then(|m| m.thickness.as_ref())
                .map(|t| **t.is())
        });
        let width = spacer
            .width
            .map(|w| Fact::job(*w))
            .or_else(|| profile.map(|p| Fact::material(*p.face)));
        let thickness = self.number("Spacer", "thickness", spacer.thickness.map(|t| *t), own)?;
        Some(SpacerBrief {
            material,
            width,
            thickness,
        })
    }

    pub(super) fn walls(&mut self) -> Option<WallsBrief> {
        let walls = self.job.walls.as_ref()?;
        let stated = walls.thickness.map(|t| *t);
        let (material, thickness) = self.board(
            "Walls",
            walls.board.as_deref(),
            stated,
            &[Kind::Board, Kind::Backing],
        )?;
        Some(WallsBrief {
            material,
            thickness,
            height: walls.height.map(|h| Fact::job(*h)),
        })
    }

    pub(super) fn sink(&mut self) -> Option<SinkBrief> {
        let sink = self.job.sink.as_ref()?;
        let kinds = [Kind::Board, Kind::Backing];
        let material = self.material("Sink", sink.board.as_deref(), &kinds);
        let own = material.as_ref().and_then(|m| m.thickness.as_ref());
        let own = own.map(|thickness| **thickness.is());
        let depth = self.number("Sink", "depth", sink.depth.map(|d| *d), own)?;
        Some(SinkBrief {
            material,
            depth,
            room: self.or_setting(sink.room.map(|r| *r), Key::SinkRoom),
        })
    }

    pub(super) fn mount(&mut self) -> Option<LayerBrief> {
        let mount = self.job.mount.as_ref()?;
        let stated = mount.thickness.map(|t| *t);
        let (material, thickness) = self.board(
            "Mount",
            mount.board.as_deref(),
            stated,
            &[Kind::Board, Kind::Backing],
        )?;
        Some(LayerBrief {
            material,
            thickness,
            undersize: Fact::job(Length::ZERO),
        })
    }

    pub(super) fn backing(&mut self) -> Vec<LayerBrief> {
        let job = self.job;
        let count = job.backing.len();
        job.backing
            .iter()
            .enumerate()
            .filter_map(|(i, backing)| {
                let part = part_name("Backing", i, count);
                let stated = backing.thickness.map(|t| *t);
                let (material, thickness) = self.board(
                    &part,
                    backing.board.as_deref(),
                    stated,
                    &[Kind::Board, Kind::Backing],
                )?;
                let undersize = self.or_setting(backing.undersize.map(|u| *u), Key::BackUndersize);
                Some(LayerBrief {
                    material,
                    thickness,
                    undersize,
                })
            })
            .collect()
    }

    /// The tail a member keeps when it says none itself.
    pub(super) fn usual_tail(&self) -> Key {
        if is_canvas(self.job) {
            Key::FrameTailCanvas
        } else if self.job.double_sided {
            Key::FrameTailDoubleSided
        } else {
            Key::FrameTail
        }
    }
}

impl MatBrief<'_> {
    /// Whether the window's edge slopes at all.
    pub fn slopes(&self) -> bool {
        self.mat.bevel != Bevel::Square
    }

    /// Thickness as an input.
    pub fn thickness_given(&self) -> Given {
        self.thickness.into()
    }
}
