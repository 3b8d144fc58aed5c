//! What a piece is made of, part by part, each with its class.

use std::sync::Arc;

use measure::{Length, Unit};
use sizing::Sizes;
use trade::{Coating, Job, Kind, Material, Pane};

use super::inward_words;

/// One part and what it is made of.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Stuff {
    /// Which part.
    pub part: String,
    /// What people call the material.
    pub material: String,
    /// The shop's code for it; empty where it is only named.
    pub code: String,
    /// Its class: of a board its composition, of glazing its kind and coating, of a moulding its wood.
    pub class: String,
    /// Its thickness, exact; empty where it has none.
    pub thickness: String,
}

/// Every part of a piece, front to back, outside in.
pub(crate) fn materials(job: &Job, sizes: &Sizes) -> Vec<Stuff> {
    let mut list = List {
        unit: sizes.unit(),
        stuff: Vec::new(),
    };
    for member in &sizes.members {
        list.take(&member.name, member.material.as_ref(), None);
        if let Some(fillet) = &member.fillet {
            list.take("Fillet", fillet.material.as_ref(), Some(fillet.thickness));
        }
    }
    for (index, glazing) in sizes.glazing.iter().enumerate() {
        let name = numbered("Glazing", index, sizes.glazing.len());
        list.take(
            &name,
            glazing.sheet.material.as_ref(),
            Some(glazing.sheet.thickness),
        );
        let face = job.glazing.get(index).and_then(|glazing| glazing.inward);
        if let (Some(face), Some(last)) = (face, list.stuff.last_mut()) {
            last.class = joined(&last.class, inward_words(face));
        }
    }
    if let Some(spacer) = &sizes.spacer {
        list.take("Spacer", spacer.material.as_ref(), Some(spacer.thickness));
    }
    if let Some(walls) = &sizes.walls {
        list.take("Walls", sizes.wall_material.as_ref(), Some(walls.thickness));
    }
    for (index, mat) in sizes.mats.iter().enumerate() {
        let name = numbered("Mat", index, sizes.mats.len());
        list.take(
            &name,
            mat.sheet.material.as_ref(),
            Some(mat.sheet.thickness),
        );
        for fillet in &mat.fillets {
            list.take(
                "Mat fillet",
                fillet.material.as_ref(),
                Some(fillet.thickness),
            );
        }
    }
    list.behind(job, sizes);
    list.stuff
}

struct List {
    unit: Unit,
    stuff: Vec<Stuff>,
}

impl List {
    fn take(&mut self, part: &str, material: Option<&Arc<Material>>, thickness: Option<Length>) {
        let thickness = thickness
            .filter(|thickness| thickness.is_positive())
            .map(|thickness| thickness.exact(self.unit));
        let (title, code, class) = material.map_or_else(
            || ("not stated".to_owned(), String::new(), String::new()),
            |material| {
                let title = material.title().to_owned();
                (title, material.code.clone(), class_words(material))
            },
        );
        self.stuff.push(Stuff {
            part: capital(part),
            material: title,
            code,
            class,
            thickness: thickness.unwrap_or_default(),
        });
    }

    /// What is only named in the document, without a code.
    fn named(&mut self, part: &str, words: &str) {
        self.stuff.push(Stuff {
            part: part.to_owned(),
            material: words.to_owned(),
            code: String::new(),
            class: String::new(),
            thickness: String::new(),
        });
    }

    /// What lies behind the mats.
    fn behind(&mut self, job: &Job, sizes: &Sizes) {
        let attachment = job.attachment.as_ref();
        if let Some(words) = attachment.and_then(|found| found.material.as_deref()) {
            self.named("Hinges, corners", words);
        }
        if let Some(words) = attachment.and_then(|found| found.adhesive.as_deref()) {
            self.named("Adhesive", words);
        }
        if let Some(sink) = &sizes.sink {
            self.take("Sink", sink.material.as_ref(), Some(sink.depth));
        }
        if let Some(mount) = &sizes.mount {
            self.take("Mount", mount.material.as_ref(), Some(mount.thickness));
        }
        for (index, backing) in sizes.backing.iter().enumerate() {
            let name = numbered("Backing", index, sizes.backing.len());
            self.take(&name, backing.material.as_ref(), Some(backing.thickness));
        }
        if let Some(cover) = job.cover.as_ref().filter(|cover| cover.sheet != "none") {
            self.named("Dust cover", &cover.sheet);
        }
    }
}

/// Its class in words.
fn class_words(material: &Material) -> String {
    match material.kind {
        Some(Kind::Glazing) => {
            let pane = material.pane.map(|pane| match pane {
                Pane::Glass => "glass",
                Pane::Acrylic => "acrylic",
            });
            joined(
                pane.unwrap_or_default(),
                material.coating.map(coating_word).unwrap_or_default(),
            )
        }
        Some(Kind::Moulding | Kind::Fillet) => material.wood.clone().unwrap_or_default(),
        _ => {
            let foam = if material.foam == Some(true) {
                "foam core"
            } else {
                ""
            };
            joined(material.class.as_deref().unwrap_or_default(), foam)
        }
    }
}

const fn coating_word(coating: Coating) -> &'static str {
    match coating {
        Coating::Plain => "not coated",
        Coating::NonGlare => "etched against glare",
        Coating::Ultraviolet => "filters ultraviolet",
        Coating::Optical => "optical coating on both faces",
        Coating::Antistatic => "antistatic",
    }
}

fn joined(one: &str, other: &str) -> String {
    [one, other]
        .into_iter()
        .filter(|words| !words.is_empty())
        .collect::<Vec<_>>()
        .join(", ")
}

fn numbered(name: &str, index: usize, count: usize) -> String {
    if count > 1 {
        format!("{name} {}", index + 1)
    } else {
        name.to_owned()
    }
}

/// With a capital first letter.
pub(crate) fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}
