//! Changes that may make a piece cheaper.

use trade::{Catalogue, Job, Key, Kind, Material, Settings};

/// A change of the job that may save something.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Saving {
    /// Another moulding of the same colour family.
    Moulding {
        /// Which member, outside in.
        member: usize,
        /// Its code.
        code: String,
    },
    /// Another sheet of glazing.
    Glazing {
        /// Which, front to back.
        index: usize,
        /// Its code.
        code: String,
    },
    /// Another board of the same class for a mat.
    MatBoard {
        /// Which, front to back.
        index: usize,
        /// Its code.
        code: String,
    },
    /// Another board of the same class for the mount.
    Mount {
        /// Its code.
        code: String,
    },
    /// Another board of the same class for the backing.
    Backing {
        /// Which, front to back.
        index: usize,
        /// Its code.
        code: String,
    },
    /// One mat fewer.
    FewerMats {
        /// Which goes, front to back.
        index: usize,
    },
}

impl Saving {
    /// The change in words.
    pub fn words(&self, catalogue: &Catalogue) -> String {
        let title = |code: &str| {
            catalogue
                .find(code)
                .map_or_else(|_| code.to_owned(), |material| material.title().to_owned())
        };
        match self {
            Self::Moulding { code, .. } => format!("Frame in {}", title(code)),
            Self::Glazing { code, .. } => format!("Glaze with {}", title(code)),
            Self::MatBoard { index, code } => format!("Mat {} in {}", index + 1, title(code)),
            Self::Mount { code } => format!("Mount on {}", title(code)),
            Self::Backing { code, .. } => format!("Back with {}", title(code)),
            Self::FewerMats { index } => format!("Leave mat {} out", index + 1),
        }
    }

    /// Whether two changes touch the same thing, so that they can't be made together.
    pub(super) fn clashes(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Moulding { member: one, .. }, Self::Moulding { member: other, .. }) => {
                one == other
            }
            (Self::Glazing { index: one, .. }, Self::Glazing { index: other, .. })
            | (Self::Backing { index: one, .. }, Self::Backing { index: other, .. })
            | (
                Self::MatBoard { index: one, .. } | Self::FewerMats { index: one },
                Self::MatBoard { index: other, .. },
            )
            | (Self::MatBoard { index: one, .. }, Self::FewerMats { index: other }) => one == other,
            (Self::Mount { .. }, Self::Mount { .. })
            | (Self::FewerMats { .. }, Self::FewerMats { .. }) => true,
            _ => false,
        }
    }
}

/// The job with changes made; mats are left out last, so that the others keep their places.
pub(super) fn applied<'c>(job: &Job, changes: impl Iterator<Item = &'c Saving>) -> Job {
    let mut job = job.clone();
    let mut fewer = None;
    for change in changes {
        match change {
            Saving::Moulding { member, code } => {
                job.frame[*member].moulding = Some(code.clone());
            }
            Saving::Glazing { index, code } => job.glazing[*index].sheet = Some(code.clone()),
            Saving::MatBoard { index, code } => job.mat[*index].board = Some(code.clone()),
            Saving::Mount { code } => {
                if let Some(mount) = &mut job.mount {
                    mount.board = Some(code.clone());
                }
            }
            Saving::Backing { index, code } => job.backing[*index].board = Some(code.clone()),
            Saving::FewerMats { index } => fewer = Some(*index),
        }
    }
    if let Some(index) = fewer {
        job.mat.remove(index);
    }
    job
}

/// Every single change that could be made, whether it saves or not.
pub(super) fn candidates(
    job: &Job,
    catalogue: &Catalogue,
    shop: &Settings,
    day: trade::Date,
) -> Vec<Saving> {
    let near = shop.count(Key::BudgetColourNear);
    let sold = |kind: Kind| {
        let of_kind = move |material: &&Material| {
            material.kind == Some(kind) && !material.is_discontinued(day)
        };
        catalogue.iter().filter(of_kind)
    };
    let mut found = Vec::new();
    for (member, frame) in job.frame.iter().enumerate() {
        let Some(own) = material(frame.moulding.as_deref(), job, catalogue) else {
            continue;
        };
        let alike = sold(Kind::Moulding).filter(|other| same_family(own, other, near));
        found.extend(codes(own, alike).map(|code| Saving::Moulding { member, code }));
    }
    for (index, pane) in job.glazing.iter().enumerate() {
        if let Some(own) = material(pane.sheet.as_deref(), job, catalogue) {
            let codes = codes(own, sold(Kind::Glazing));
            found.extend(codes.map(|code| Saving::Glazing { index, code }));
        }
    }
    for (index, mat) in job.mat.iter().enumerate() {
        if let Some(own) = material(mat.board.as_deref(), job, catalogue) {
            let alike = sold(Kind::Board).filter(|other| same_family(own, other, near));
            let alike = alike.filter(|other| other.class == own.class);
            found.extend(codes(own, alike).map(|code| Saving::MatBoard { index, code }));
        }
        if job.mat.len() > 1 {
            found.push(Saving::FewerMats { index });
        }
    }
    let mount = job.mount.as_ref().and_then(|mount| mount.board.as_deref());
    if let Some(own) = material(mount, job, catalogue) {
        let alike = same_class(own, sold(Kind::Board).chain(sold(Kind::Backing)));
        found.extend(alike.map(|code| Saving::Mount { code }));
    }
    for (index, back) in job.backing.iter().enumerate() {
        if let Some(own) = material(back.board.as_deref(), job, catalogue) {
            let alike = same_class(own, sold(Kind::Board).chain(sold(Kind::Backing)));
            found.extend(alike.map(|code| Saving::Backing { index, code }));
        }
    }
    found
}

/// Codes of materials other than this one.
fn codes<'a>(
    own: &'a Material,
    others: impl Iterator<Item = &'a Material>,
) -> impl Iterator<Item = String> {
    let others = others.filter(|other| other.code != own.code);
    others.map(|other| other.code.clone())
}

/// Codes of boards of the same class.
fn same_class<'a>(
    own: &'a Material,
    others: impl Iterator<Item = &'a Material>,
) -> impl Iterator<Item = String> {
    codes(own, others.filter(|other| other.class == own.class))
}

fn material<'a>(
    code: Option<&str>,
    job: &'a Job,
    catalogue: &'a Catalogue,
) -> Option<&'a Material> {
    let code = code?;
    let own = job.material.iter().find(|material| material.code == code);
    // A material of the job that is like another may say no colour of its own.
    let own = own.filter(|own| own.colour.is_some() || own.like.is_none());
    own.or_else(|| catalogue.find(code).ok().map(AsRef::as_ref))
}

/// Whether two materials are of one colour family: as the catalogue says, or near in colour.
///
/// Shape:  the distance of their sRGB colours, straight through the cube; `near` in its 255ths.
fn same_family(one: &Material, other: &Material, near: i64) -> bool {
    if let (Some(one), Some(other)) = (&one.colour_family, &other.colour_family) {
        return one == other;
    }
    let (Some(one), Some(other)) = (rgb(one), rgb(other)) else {
        return false;
    };
    let square: i64 = one
        .iter()
        .zip(&other)
        .map(|(one, other)| (one - other).pow(2))
        .sum();
    square <= near.pow(2)
}

/// Red, green and blue of `#rrggbb`.
fn rgb(material: &Material) -> Option<[i64; 3]> {
    let hex = material.colour.as_deref()?.strip_prefix('#')?;
    let part = |at: usize| i64::from_str_radix(hex.get(at..at + 2)?, 16).ok(); // geometry: hexadecimal pairs
    Some([part(0)?, part(2)?, part(4)?]) // geometry: places of the pairs
}
