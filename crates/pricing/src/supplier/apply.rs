//! A preview made into one change of the catalogue's text.

use std::collections::HashMap;
use std::ops::Range;

use toml::Spanned;
use toml::de::{DeTable, DeValue};
use trade::Date;

use super::preview::{Article, Gone, News, Preview};
use super::shelf::{Entry, Shelf};
use super::undo::{Edit, Print, Undo};
use super::written;

/// A change, ready to be written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Applied {
    /// The catalogue's new text.
    pub text: String,
    /// What takes it back.
    pub undo: Undo,
}

/// Why a preview can't be applied to this text.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ApplyFault {
    /// The costs of a material are written as a list on a line.
    #[error(
        "the costs of {code} stand in one list; write each as a [[material.cost]] table of its own"
    )]
    Inline {
        /// The shop's code.
        code: String,
    },
    /// The new text does not say what it should.
    #[error(
        "{code} is written in a way that can't be added to; write its fields on lines of their own, and its costs as [[material.cost]] tables"
    )]
    Form {
        /// The shop's code.
        code: String,
    },
    /// The preview is of another file.
    #[error("the catalogue has no {code} any more; preview the list again")]
    Vanished {
        /// The shop's code.
        code: String,
    },
}

/// A place of the old text, and what stands there in the new.
struct Change {
    place: Range<usize>,
    put: String,
}

impl Preview {
    /// The catalogue's text with this list's changes, and what takes them back.
    ///
    /// Shape:  the text keeps every line it has; costs are added below a material's own, new
    ///         materials at the end. Only the `discontinued` of an article that is sold again goes.
    /// Errors: a material written in a way that can't be added to; nothing is half done.
    pub fn apply(&self, catalogue: &Shelf<'_>) -> Result<Applied, ApplyFault> {
        let old = catalogue.text();
        let by_code: HashMap<&str, &Entry> = catalogue
            .entries()
            .iter()
            .map(|entry| (entry.code.as_str(), entry))
            .collect();
        let entry = |code: &str| {
            by_code
                .get(code)
                .copied()
                .ok_or_else(|| ApplyFault::Vanished {
                    code: code.to_owned(),
                })
        };
        let mut changes = Vec::new();
        for article in self.articles.iter().filter(|article| !is_new(article)) {
            changes.extend(changed(article, entry(&article.code)?, old)?);
        }
        for gone in &self.gone {
            changes.push(discontinued(gone, entry(&gone.code)?, old, self.on)?);
        }
        changes.sort_by_key(|change| change.place.start);
        changes.extend(self.additions(old));
        let line_end = if old.contains("\r\n") { "\r\n" } else { "\n" };
        let applied = applied(old, changes, line_end, self);
        self.check(catalogue, &applied.text)?;
        Ok(applied)
    }

    /// Everything new, below all that is there.
    fn additions(&self, text: &str) -> Option<Change> {
        let mut put = String::new();
        for article in &self.articles {
            let News::New { text: table } = &article.news else {
                continue;
            };
            if !(text.is_empty() && put.is_empty()) {
                put.push('\n');
            }
            put.push_str(table);
        }
        if put.is_empty() {
            return None;
        }
        if !text.is_empty() && !text.ends_with('\n') {
            put.insert(0, '\n');
        }
        Some(Change {
            place: text.len()..text.len(),
            put,
        })
    }

    /// Reads the new text as the program will, and looks for all that was to be in it.
    fn check(&self, catalogue: &Shelf<'_>, new: &str) -> Result<(), ApplyFault> {
        let first = || {
            self.articles
                .first()
                .map(|article| article.code.clone())
                .unwrap_or_default()
        };
        let read = Shelf::read(new).map_err(|_| ApplyFault::Form { code: first() })?;
        if read.len() != catalogue.len() + self.new_articles() {
            return Err(ApplyFault::Form { code: first() });
        }
        let by_code: HashMap<&str, &Entry> = read
            .entries()
            .iter()
            .map(|entry| (entry.code.as_str(), entry))
            .collect();
        let known = |code: &str| by_code.get(code).and_then(|entry| entry.known.as_ref());
        for article in &self.articles {
            let whole = known(&article.code).is_some_and(|known| {
                let has = |cost| known.material.cost.contains(cost);
                known.material.discontinued.is_none()
                    && article.offers.iter().all(|offer| has(&offer.cost))
            });
            if !whole {
                return Err(ApplyFault::Form {
                    code: article.code.clone(),
                });
            }
        }
        for gone in &self.gone {
            let told =
                known(&gone.code).is_some_and(|known| known.material.discontinued == Some(self.on));
            if !told {
                return Err(ApplyFault::Form {
                    code: gone.code.clone(),
                });
            }
        }
        Ok(())
    }
}

const fn is_new(article: &Article) -> bool {
    matches!(article.news, News::New { .. })
}

/// The changes of a material that is known.
fn changed(article: &Article, entry: &Entry, text: &str) -> Result<Vec<Change>, ApplyFault> {
    let table = Table::of(entry, text)?;
    let mut changes = Vec::new();
    if let (News::Changed { returns: true }, Some(place)) = (&article.news, table.discontinued()) {
        changes.push(Change {
            place,
            put: String::new(),
        });
    }
    if article.offers.is_empty() {
        return Ok(changes);
    }
    if table.has_inline_costs() {
        return Err(ApplyFault::Inline {
            code: entry.code.clone(),
        });
    }
    // Costs that were those of a material it is like stop being so with the first of its own.
    let mut costs = match &entry.known {
        Some(known) if !known.own_costs => known.material.cost.clone(),
        _ => Vec::new(),
    };
    costs.extend(article.offers.iter().map(|offer| offer.cost.clone()));
    let at = table.end();
    let written = written::costs(&costs);
    let put = format!("\n{}", written.trim_end_matches('\n'));
    changes.push(Change { place: at..at, put });
    Ok(changes)
}

fn discontinued(gone: &Gone, entry: &Entry, text: &str, on: Date) -> Result<Change, ApplyFault> {
    let table = Table::of(entry, text)?;
    let at = table.after_code().ok_or_else(|| ApplyFault::Form {
        code: gone.code.clone(),
    })?;
    let put = format!("\ndiscontinued = {}", written::quoted(&on.to_string()));
    Ok(Change { place: at..at, put })
}

/// A material's part of the text, with the place of everything in it.
struct Table<'a> {
    part: &'a str,
    start: usize,
    fields: DeTable<'a>,
}

impl<'a> Table<'a> {
    fn of(entry: &Entry, text: &'a str) -> Result<Self, ApplyFault> {
        let form = || ApplyFault::Form {
            code: entry.code.clone(),
        };
        let part = text.get(entry.span.clone()).unwrap_or_default();
        let mut file = DeTable::parse(part).map_err(|_| form())?.into_inner();
        let materials = file.remove("material").map(Spanned::into_inner);
        let Some(DeValue::Array(materials)) = materials else {
            return Err(form());
        };
        let first = materials.into_iter().next().map(Spanned::into_inner);
        match first {
            Some(DeValue::Table(fields)) => Ok(Self {
                part,
                start: entry.span.start,
                fields,
            }),
            _ => Err(form()),
        }
    }

    /// The end of the last line that holds anything of it.
    fn end(&self) -> usize {
        let last = last_of_table(&self.fields);
        self.line_end(last)
    }

    /// The end of its code's line.
    fn after_code(&self) -> Option<usize> {
        let code = self.fields.get("code")?.span();
        Some(self.line_end(code.end))
    }

    /// What its `discontinued` takes up, from the key to the line's end.
    fn discontinued(&self) -> Option<Range<usize>> {
        let (key, value) = self
            .fields
            .iter()
            .find(|(key, _)| key.get_ref().as_ref() == "discontinued")?;
        Some(self.start + key.span().start..self.line_end(value.span().end))
    }

    fn has_inline_costs(&self) -> bool {
        let span = self.fields.get("cost").map(Spanned::span);
        let written = span.and_then(|span| self.part.get(span));
        written.is_some_and(|written| !written.starts_with("[["))
    }

    /// The end of the line a place of the part stands in, in the whole text.
    fn line_end(&self, place: usize) -> usize {
        let rest = self.part.get(place..).unwrap_or_default();
        let line = rest.split('\n').next().unwrap_or_default();
        self.start + place + line.trim_end_matches('\r').len()
    }
}

fn last_of_table(table: &DeTable<'_>) -> usize {
    let ends = table
        .iter()
        .map(|(key, value)| key.span().end.max(last_of(value)));
    ends.max().unwrap_or(0)
}

fn last_of(value: &Spanned<DeValue<'_>>) -> usize {
    let within = match value.get_ref() {
        DeValue::Table(table) => last_of_table(table),
        DeValue::Array(values) => values.iter().map(last_of).max().unwrap_or(0),
        _ => 0,
    };
    value.span().end.max(within)
}

/// The new text, and what takes it back.
fn applied(text: &str, changes: Vec<Change>, line_end: &str, preview: &Preview) -> Applied {
    let mut new = String::with_capacity(text.len());
    let mut edits = Vec::with_capacity(changes.len());
    let mut copied = 0;
    for Change { place, put } in changes {
        new.push_str(text.get(copied..place.start).unwrap_or_default());
        let put = put.replace('\n', line_end);
        edits.push(Edit {
            at: new.len(),
            length: put.len(),
            was: text.get(place.clone()).unwrap_or_default().to_owned(),
        });
        new.push_str(&put);
        copied = place.end;
    }
    new.push_str(text.get(copied..).unwrap_or_default());
    let undo = Undo {
        version: 1,
        supplier: preview.supplier.clone(),
        on: preview.on,
        before: Print::of(text),
        after: Print::of(&new),
        edits,
    };
    Applied { text: new, undo }
}
