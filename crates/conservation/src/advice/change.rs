//! Changes of the document that cure something.

use measure::{Length, Unit};
use trade::{
    Attachment, Backing, BuildUp, Hanger, Hold, Job, Key, Lamp, Layer, Measured, Spacer, Strainer,
    WallSide,
};

/// A change of the job document.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Change {
    /// Another sheet of glazing.
    SetGlazing {
        /// Which, front to back.
        index: usize,
        /// Its code.
        sheet: String,
    },
    /// Cut a sheet of glazing smaller.
    SetUndersize {
        /// Which, front to back.
        index: usize,
        /// How much, in total.
        undersize: Length,
    },
    /// Strips behind the glazing, so thick.
    SetSpacer {
        /// Front to back.
        thickness: Length,
    },
    /// Another board for a mat.
    SetMatBoard {
        /// Which, front to back.
        index: usize,
        /// Its code.
        board: String,
    },
    /// Another board for the mount.
    SetMount {
        /// Its code.
        board: String,
    },
    /// Another backing.
    SetBacking {
        /// Which, front to back.
        index: usize,
        /// Its code.
        board: String,
    },
    /// Another allowance between a member and what it holds.
    SetAllowance {
        /// Which member, outside in.
        index: usize,
        /// In total.
        allowance: Length,
    },
    /// Cover more of the art.
    SetOverlap {
        /// Which piece of art.
        art: usize,
        /// On each side.
        overlap: Length,
    },
    /// Another kind of hold.
    SetHold(Hold),
    /// Another adhesive, with what it is used with.
    SetAdhesive {
        /// What the hinges are.
        material: &'static str,
        /// What holds them.
        adhesive: &'static str,
    },
    /// So many hinges.
    SetHinges(u32),
    /// Paper of so many grams to the square metre for the hinges.
    SetHingePaper(u32),
    /// A stiffening frame in the back.
    AddStrainer {
        /// Width of a bar.
        width: Length,
        /// Front to back.
        depth: Length,
        /// Upright bars inside it.
        uprights: u32,
    },
    /// Strips on the frame's back, as deep as needed.
    AddBuildUp,
    /// Another hanger.
    SetHanger(Hanger),
    /// Shorter screws.
    SetScrew(Length),
    /// Two hooks for the wire, whatever it weighs.
    TwoHooks,
    /// Bumpers that hold its back so far off the wall.
    SetBumpers(Length),
    /// So much light on it, in lux.
    ShowAt(u32),
    /// So many days of display a year.
    ShowDays(u32),
    /// Other lamps.
    SetLamp(Lamp),
    /// Another place.
    Move(Move),
    /// Several at once.
    All(Vec<Self>),
}

/// Another place to hang a piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Move {
    /// A wall with rooms on both sides.
    ToInnerWall,
    /// Where nobody lies, sits or passes under it.
    FromPeople,
    /// Where no heat rises.
    FromHeat,
    /// Where no water is used.
    FromWater,
}

impl Change {
    /// The document with the change in it.
    #[must_use]
    pub fn applied(&self, job: &Job) -> Job {
        let mut next = job.clone();
        self.apply(&mut next);
        next
    }

    /// Makes the change; a part that is not there is left as it is.
    fn apply(&self, job: &mut Job) {
        match self {
            Self::SetGlazing { index, sheet } => {
                if let Some(glazing) = job.glazing.get_mut(*index) {
                    glazing.sheet = Some(sheet.clone());
                    glazing.thickness = None;
                }
            }
            Self::SetUndersize { index, undersize } => {
                if let Some(glazing) = job.glazing.get_mut(*index) {
                    glazing.undersize = Some(Measured(*undersize));
                }
            }
            Self::SetSpacer { thickness } => {
                let spacer = job.spacer.get_or_insert_with(Spacer::default);
                spacer.strip = None;
                spacer.thickness = Some(Measured(*thickness));
            }
            Self::SetMatBoard { index, board } => {
                if let Some(mat) = job.mat.get_mut(*index) {
                    mat.board = Some(board.clone());
                    mat.thickness = None;
                }
            }
            Self::SetMount { board } => {
                let mount = job.mount.get_or_insert_with(Layer::default);
                mount.board = Some(board.clone());
                mount.thickness = None;
            }
            Self::SetBacking { index, board } => {
                if let Some(backing) = job.backing.get_mut(*index) {
                    *backing = Backing {
                        board: Some(board.clone()),
                        thickness: None,
                        undersize: backing.undersize,
                    };
                }
            }
            Self::SetAllowance { index, allowance } => {
                if let Some(member) = job.frame.get_mut(*index) {
                    member.allowance = Some(Measured(*allowance));
                }
            }
            Self::SetOverlap { art, overlap } => {
                if let Some(art) = job.art.get_mut(*art) {
                    art.overlap = Some(Measured(*overlap));
                }
            }
            Self::All(changes) => changes.iter().for_each(|change| change.apply(job)),
            other => other.apply_behind(job),
        }
    }

    /// Changes of attachment, back and hardware.
    fn apply_behind(&self, job: &mut Job) {
        let attachment = |job: &mut Job, set: &dyn Fn(&mut Attachment)| {
            set(job.attachment.get_or_insert_with(Attachment::default));
        };
        match self {
            Self::SetHold(hold) => attachment(job, &|found| {
                found.hold = *hold;
                found.count = None;
            }),
            Self::SetAdhesive { material, adhesive } => attachment(job, &|found| {
                found.material = Some((*material).to_owned());
                found.adhesive = Some((*adhesive).to_owned());
            }),
            Self::SetHinges(count) => attachment(job, &|found| found.count = Some(*count)),
            Self::SetHingePaper(grams) => {
                attachment(job, &|found| found.grammage = Some(*grams));
            }
            Self::AddStrainer {
                width,
                depth,
                uprights,
            } => {
                job.strainer = Some(Strainer {
                    width: Measured(*width),
                    depth: Measured(*depth),
                    uprights: *uprights,
                    cross_bars: 0,
                });
            }
            Self::AddBuildUp => {
                job.build_up.get_or_insert_with(BuildUp::default);
            }
            Self::SetHanger(hanger) => {
                job.hardware.get_or_insert_default().hanger = *hanger;
            }
            Self::SetScrew(screw) => {
                job.hardware.get_or_insert_default().screw = Some(Measured(*screw));
            }
            other => other.apply_around(job),
        }
    }

    /// Changes of the place and of what holds the piece there.
    fn apply_around(&self, job: &mut Job) {
        match self {
            Self::TwoHooks => {
                job.settings
                    .insert(Key::Hooks.id().to_owned(), "two".to_owned());
            }
            Self::SetBumpers(bumpers) => {
                job.hardware.get_or_insert_default().bumpers = Some(Measured(*bumpers));
            }
            Self::ShowAt(lux) => job.place.get_or_insert_default().lux = Some(*lux),
            Self::ShowDays(days) => job.place.get_or_insert_default().days = Some(*days),
            Self::SetLamp(lamp) => job.place.get_or_insert_default().lamp = Some(*lamp),
            Self::Move(to) => to.apply(job),
            _ => {}
        }
    }

    /// What it does, as it is offered: `Take glass-uv-2.5 for the glazing`.
    pub fn sentence(&self, unit: Unit) -> String {
        let say = |length: &Length| length.in_both(unit);
        match self {
            Self::SetGlazing { sheet, .. } => format!("Take {sheet} for the glazing"),
            Self::SetUndersize { undersize, .. } => {
                format!(
                    "Cut the glazing {} smaller than the package",
                    say(undersize)
                )
            }
            Self::SetSpacer { thickness } => {
                format!("Put spacers of {} behind the glazing", say(thickness))
            }
            Self::SetMatBoard { index, board } => format!("Take {board} for mat {}", index + 1),
            Self::SetMount { board } => format!("Take {board} for the mount"),
            Self::SetBacking { index, board } => {
                format!("Take {board} for backing {}", index + 1)
            }
            Self::SetOverlap { overlap, .. } => {
                format!("Cover the art by {} on each side", say(overlap))
            }
            Self::SetHold(hold) => format!("Hold the art by {}", hold_words(*hold)),
            Self::SetAdhesive { material, adhesive } => format!("Use {material} with {adhesive}"),
            Self::SetHinges(count) => format!("Use {count} hinges"),
            Self::AddStrainer { width, depth, .. } => {
                format!("Add a strainer of {} × {}", say(width), say(depth))
            }
            Self::AddBuildUp => "Glue strips on the frame's back".to_owned(),
            Self::SetHanger(hanger) => format!("Hang it by {}", hanger_words(*hanger)),
            Self::SetScrew(screw) => format!("Take screws of {}", say(screw)),
            Self::All(changes) => {
                let each: Vec<String> =
                    changes.iter().map(|change| change.sentence(unit)).collect();
                each.join("; ")
            }
            other => other.sentence_around(unit),
        }
    }

    fn sentence_around(&self, unit: Unit) -> String {
        match self {
            Self::SetAllowance { allowance, .. } => format!(
                "Make the frame {} larger than what it holds",
                allowance.in_both(unit)
            ),
            Self::SetHingePaper(grams) => format!("Hinge it with paper of {grams} g/m²"),
            Self::TwoHooks => "Hang its wire on two hooks".to_owned(),
            Self::SetBumpers(bumpers) => format!(
                "Put bumpers of {} behind it, top and foot",
                bumpers.in_both(unit)
            ),
            Self::ShowAt(lux) => format!("Hang it where the light is {lux} lx"),
            Self::ShowDays(days) => format!("Show it {days} days a year"),
            Self::SetLamp(lamp) => format!("Light it by {} alone", lamp.word()),
            Self::Move(to) => to.sentence().to_owned(),
            _ => String::new(),
        }
    }
}

impl Move {
    fn apply(self, job: &mut Job) {
        let place = job.place.get_or_insert_default();
        match self {
            Self::ToInnerWall => place.wall = Some(WallSide::Inner),
            Self::FromPeople | Self::FromHeat => place.above = None,
            Self::FromWater => place.bathroom = false,
        }
    }

    const fn sentence(self) -> &'static str {
        match self {
            Self::ToInnerWall => "Hang it on a wall with rooms on both sides",
            Self::FromPeople => "Hang it where nobody lies, sits or passes under it",
            Self::FromHeat => "Hang it where no heat rises",
            Self::FromWater => "Hang it where no water is used",
        }
    }
}

const fn hold_words(hold: Hold) -> &'static str {
    match hold {
        Hold::THinge => "T hinges",
        Hold::VHinge => "V hinges",
        Hold::SHinge => "pass-through hinges",
        Hold::Corners => "corners",
        Hold::Strips => "edge strips",
        Hold::Stitched => "stitches",
        Hold::Mechanical => "clips or screws",
        Hold::DryMount => "dry mounting",
        Hold::Loose => "the package alone",
    }
}

const fn hanger_words(hanger: Hanger) -> &'static str {
    match hanger {
        Hanger::Wire => "rings and wire",
        Hanger::Rings => "rings straight on two hooks",
        Hanger::Plates => "plates",
        Hanger::Cleat => "a cleat",
        Hanger::None => "nothing",
    }
}
