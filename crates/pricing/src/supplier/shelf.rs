//! The shop's catalogue file, as an import looks at it.

use std::collections::HashMap;
use std::ops::Range;

use trade::{Catalogue, CatalogueFault, Material, Place, reading};

/// A catalogue file: its text, and of every material what an import must know.
pub struct Shelf<'a> {
    text: &'a str,
    entries: Vec<Entry>,
    by_code: HashMap<String, usize>,
}

/// A material of the file.
pub(super) struct Entry {
    /// Its part of the text, from its header to the next one's.
    pub span: Range<usize>,
    /// The shop's code.
    pub code: String,
    /// With everything it takes from those it is like; only where it has a supplier's code.
    pub known: Option<Box<Known>>,
}

/// What is known of an article of a supplier.
pub(super) struct Known {
    /// The whole material.
    pub material: Material,
    /// Whether its costs stand in this file, or are those of a material it is like.
    pub own_costs: bool,
}

/// Why a catalogue file can't be used for an import.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ShelfFault {
    /// Its form.
    #[error("{sentence}")]
    Form {
        /// What is wrong and what would do.
        sentence: String,
        /// Where.
        place: Place,
    },
    /// What it says.
    #[error(transparent)]
    Catalogue(#[from] CatalogueFault),
    /// Materials that are not tables of their own.
    #[error(
        "line {line}: materials are written as a list here; write each as a [[material]] table of its own"
    )]
    NotTables {
        /// Where.
        line: usize,
    },
    /// A text of several lines with a header in it.
    #[error(
        "line {line}: a text of several lines holds a line [[material]]; write that text on one line"
    )]
    Header {
        /// Where.
        line: usize,
    },
}

#[derive(serde::Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    material: Vec<Material>,
}

impl<'a> Shelf<'a> {
    /// Reads a catalogue file; an empty one is an empty shelf.
    ///
    /// Shape:  read material by material, so that memory holds what an import needs and no more.
    /// Errors: a file that can't be read, with its line; a code used twice; a `like` that leads
    ///         nowhere or in a circle.
    pub fn read(text: &'a str) -> Result<Self, ShelfFault> {
        let headers = headers(text);
        let first = headers.first().copied().unwrap_or(text.len());
        refuse_before(text, first)?;
        let ends = headers.iter().skip(1).copied().chain([text.len()]);
        let mut shelf = Self {
            text,
            entries: Vec::new(),
            by_code: HashMap::new(),
        };
        let mut like = Vec::new();
        for span in headers
            .iter()
            .copied()
            .zip(ends)
            .map(|(start, end)| start..end)
        {
            let material = shelf.material(span.clone())?;
            let place = shelf.entries.len();
            if shelf.by_code.insert(material.code.clone(), place).is_some() {
                return Err(CatalogueFault::Twice {
                    code: material.code,
                }
                .into());
            }
            let code = material.code.clone();
            let mut known = None;
            if material.like.is_some() {
                like.push(place);
            } else if material.supplier_code.is_some() {
                known = Some(Box::new(Known {
                    own_costs: true,
                    material,
                }));
            }
            shelf.entries.push(Entry { span, code, known });
        }
        shelf.settle(&like)?;
        Ok(shelf)
    }

    /// The file's text.
    pub const fn text(&self) -> &'a str {
        self.text
    }

    /// How many materials it has.
    pub fn len(&self) -> usize {
        self.entries.len()
    }

    /// Whether it has none.
    pub fn is_empty(&self) -> bool {
        self.entries.is_empty()
    }

    /// Every material, in the order of the file.
    pub(super) fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// Whether a material of the file has this code.
    pub(super) fn has(&self, code: &str) -> bool {
        self.by_code.contains_key(code)
    }

    /// Takes what those materials say that are like others, from them.
    fn settle(&mut self, like: &[usize]) -> Result<(), ShelfFault> {
        if like.is_empty() {
            return Ok(());
        }
        let starter = Catalogue::starter();
        let mut written: HashMap<usize, Material> = HashMap::new();
        for &place in like {
            let mut next = Some(place);
            while let Some(place) = next.filter(|place| !written.contains_key(place)) {
                let Some(entry) = self.entries.get(place) else {
                    break;
                };
                let material = self.material(entry.span.clone())?;
                next = material
                    .like
                    .as_ref()
                    .and_then(|code| self.by_code.get(code))
                    .copied();
                written.insert(place, material);
            }
        }
        let chain: Vec<Material> = written.values().cloned().collect();
        let whole = starter.with(&chain)?;
        for &place in like {
            let (Some(own), Some(entry)) = (written.get(&place), self.entries.get_mut(place))
            else {
                continue;
            };
            let material = Material::clone(whole.find(&entry.code)?);
            let own_costs = !own.cost.is_empty() || material.cost.is_empty();
            if material.supplier_code.is_some() {
                entry.known = Some(Box::new(Known {
                    material,
                    own_costs,
                }));
            }
        }
        Ok(())
    }

    fn material(&self, span: Range<usize>) -> Result<Material, ShelfFault> {
        let part = self.text.get(span.clone()).unwrap_or_default();
        let above = || {
            self.text
                .get(..span.start)
                .unwrap_or_default()
                .matches('\n')
                .count()
        };
        match toml::from_str::<File>(part) {
            Ok(File { mut material }) if material.len() == 1 => Ok(material.remove(0)),
            Ok(_) => Err(ShelfFault::NotTables { line: above() + 1 }),
            Err(_) if toml::from_str::<File>(self.text).is_ok() => {
                Err(ShelfFault::Header { line: above() + 1 })
            }
            Err(error) => {
                let (sentence, mut place) = reading::refusal(part, &error);
                place.line = place.line.map(|line| line + above());
                Err(ShelfFault::Form { sentence, place })
            }
        }
    }
}

/// Where each `[[material]]` line begins.
fn headers(text: &str) -> Vec<usize> {
    let body = text.trim_start_matches('\u{feff}');
    let mut at = text.len() - body.len();
    let mut headers = Vec::new();
    for line in body.split_inclusive('\n') {
        let inner = line
            .trim_start()
            .strip_prefix("[[")
            .and_then(|rest| rest.split_once("]]"));
        if inner.is_some_and(|(name, _)| name.trim() == "material") {
            headers.push(at);
        }
        at += line.len();
    }
    headers
}

/// Above the first material stand comments and nothing else.
fn refuse_before(text: &str, first: usize) -> Result<(), ShelfFault> {
    let before = text.get(..first).unwrap_or_default();
    let plain = |line: &str| {
        let line = line.trim_start_matches('\u{feff}').trim();
        line.is_empty() || line.starts_with('#')
    };
    let Some(line) = before.lines().position(|line| !plain(line)) else {
        return Ok(());
    };
    let Err(error) = toml::from_str::<File>(text.trim_start_matches('\u{feff}')) else {
        return Err(ShelfFault::NotTables { line: line + 1 });
    };
    let (sentence, place) = reading::refusal(text, &error);
    Err(ShelfFault::Form { sentence, place })
}
