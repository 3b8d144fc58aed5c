//! What a list would change, row by row, before anything is changed.

use std::collections::{BTreeSet, HashMap, HashSet};
use std::io::{Read, Seek};
use std::sync::LazyLock;

use trade::{Catalogue, Cost, Date, Kind, Material};

use super::article::{ArticleReader, Offered, Read as RowRead};
use super::columns::Columns;
use super::mapping::{Mapping, Missing};
use super::rejected::{Differing, Reason, Rejected};
use super::rows::{ListFault, Row, each_csv_row, each_sheet_row};
use super::shelf::{Known, Shelf};
use super::written;

/// What a list would change.
///
/// Shape:  every row below the headings is counted once: new, changed, same, gone by its own word,
///         rejected or left out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Preview {
    /// Whose list it is.
    pub supplier: String,
    /// The day its prices hold from.
    pub on: Date,
    /// Rows below the headings that hold anything.
    pub rows: u32,
    /// Articles that are new, or whose price changed, in the list's order.
    pub articles: Vec<Article>,
    /// Articles whose prices stay.
    pub same: u32,
    /// Rows left out: headings, rows the mapping skips, articles gone before they were known.
    pub left_out: u32,
    /// Articles that are no longer sold.
    pub gone: Vec<Gone>,
    /// Rows that are refused, once for each fault.
    pub rejected: Vec<Rejected>,
    /// How many rows those are.
    pub rejected_rows: u32,
    /// Facts in which the list differs from the catalogue, which stays.
    pub differing: Vec<Differing>,
}

/// An article that is new or changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Article {
    /// The row.
    pub row: u32,
    /// The shop's code.
    pub code: String,
    /// The supplier's.
    pub supplier_code: String,
    /// Its name, where there is one.
    pub name: Option<String>,
    /// What is new in it.
    pub news: News,
    /// Its prices that are new or changed.
    pub offers: Vec<OfferChange>,
}

/// What is new in an article.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum News {
    /// The catalogue has it not yet; this is what it takes in.
    New {
        /// Its table, as it is written.
        text: String,
    },
    /// A price of it is new or changed, or it is sold again.
    Changed {
        /// Whether it was discontinued before.
        returns: bool,
    },
}

/// A price that is new or changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OfferChange {
    /// The price from now on.
    pub cost: Cost,
    /// The price for the same until now.
    pub before: Option<Cost>,
}

/// An article that is no longer sold.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Gone {
    /// The row that says so; none where the list has it no more.
    pub row: Option<u32>,
    /// The shop's code.
    pub code: String,
    /// The supplier's.
    pub supplier_code: String,
}

impl OfferChange {
    /// The change in tenths of a percent of the price before, to the nearest, halves away from zero.
    ///
    /// change = (now − before) ÷ before × 1000; none where there is no such price in this currency.
    pub fn tenths_of_percent(&self) -> Option<i64> {
        const THOUSAND: i128 = 1000; // geometry: tenths of a hundredth
        let before = self.before.as_ref()?.price;
        let now = self.cost.price;
        if now.currency() != before.currency() || before.millionths() == 0 {
            return None;
        }
        let base = i128::from(before.millionths());
        let gap = (i128::from(now.millionths()) - base) * THOUSAND;
        let half = base * gap.signum();
        let rounded = (2 * gap + half).checked_div(2 * base)?;
        i64::try_from(rounded).ok()
    }
}

impl Preview {
    /// Previews a list of delimited text; rows are read as they come and not kept.
    ///
    /// Errors: what keeps the list from being read at all.
    pub fn of_csv(
        list: impl Read,
        mapping: &Mapping,
        shelf: &Shelf<'_>,
        on: Date,
    ) -> Result<Self, ListFault> {
        let mut previewing = Previewing::new(mapping, shelf, on);
        each_csv_row(list, mapping, |row| previewing.row(&row))?;
        previewing.finish()
    }

    /// Previews a sheet of a workbook.
    ///
    /// Errors: what keeps the list from being read at all.
    pub fn of_workbook(
        list: impl Read + Seek,
        mapping: &Mapping,
        shelf: &Shelf<'_>,
        on: Date,
    ) -> Result<Self, ListFault> {
        let mut previewing = Previewing::new(mapping, shelf, on);
        each_sheet_row(list, mapping, |row| previewing.row(&row))?;
        previewing.finish()
    }

    /// Whether applying it would change nothing.
    pub fn is_idle(&self) -> bool {
        self.articles.is_empty() && self.gone.is_empty()
    }

    /// How many articles are new.
    pub fn new_articles(&self) -> usize {
        let new = |article: &&Article| matches!(article.news, News::New { .. });
        self.articles.iter().filter(new).count()
    }
}

/// The materials every catalogue stands on.
static STARTER: LazyLock<Catalogue> = LazyLock::new(Catalogue::starter);

struct Previewing<'a> {
    mapping: &'a Mapping,
    shelf: &'a Shelf<'a>,
    on: Date,
    reader: Option<ArticleReader<'a>>,
    /// This supplier's articles in the catalogue, by his code.
    known: HashMap<&'a str, Vec<usize>>,
    /// The row of every code of the list.
    seen: HashMap<String, u32>,
    /// Codes of rows that are left out: what they name is not gone.
    named: HashSet<String>,
    kinds: HashSet<&'static str>,
    preview: Preview,
}

impl<'a> Previewing<'a> {
    fn new(mapping: &'a Mapping, shelf: &'a Shelf<'a>, on: Date) -> Self {
        let supplier = mapping.supplier.trim();
        let mut known: HashMap<&str, Vec<usize>> = HashMap::new();
        for (place, entry) in shelf.entries().iter().enumerate() {
            let material = entry.known.as_ref().map(|known| &known.material);
            let his = material.filter(|material| {
                material
                    .supplier
                    .as_deref()
                    .is_some_and(|name| name.trim() == supplier)
            });
            if let Some(code) = his.and_then(|material| material.supplier_code.as_deref()) {
                known.entry(code.trim()).or_default().push(place);
            }
        }
        Self {
            mapping,
            shelf,
            on,
            reader: None,
            known,
            seen: HashMap::new(),
            named: HashSet::new(),
            kinds: HashSet::new(),
            preview: Preview::empty(supplier, on),
        }
    }

    fn row(&mut self, row: &Row) -> Result<(), ListFault> {
        let header = self.mapping.header;
        if row.number < header {
            return Ok(());
        }
        if self.reader.is_none() {
            let found = row.number == header;
            if !found && header > 0 {
                return Err(ListFault::NoHeader { header });
            }
            let columns = Columns::of(self.mapping, Some(row).filter(|_| found))?;
            self.reader = Some(ArticleReader {
                mapping: self.mapping,
                columns,
                on: self.on,
            });
            if found {
                return Ok(());
            }
        }
        let Some(reader) = &self.reader else {
            return Ok(());
        };
        self.preview.rows += 1;
        match reader.read(row) {
            RowRead::LeftOut(code) => {
                self.preview.left_out += 1;
                self.named.extend(code);
            }
            RowRead::Rejected(faults) => self.reject(faults),
            RowRead::Article(offered) => self.offer(*offered),
        }
        Ok(())
    }

    /// A refused row still stands in the list: what it names is not gone.
    fn reject(&mut self, faults: Vec<Rejected>) {
        self.preview.rejected_rows += 1;
        if let Some((code, row)) = faults
            .first()
            .and_then(|first| Some((first.code.clone()?, first.row)))
        {
            self.seen.entry(code).or_insert(row);
        }
        self.preview.rejected.extend(faults);
    }

    fn offer(&mut self, offered: Offered) {
        let row = offered.row;
        if let Some(&first) = self.seen.get(&offered.code) {
            return self.refuse(&offered, Reason::Twice { first, row });
        }
        self.seen.insert(offered.code.clone(), row);
        self.kinds.extend(offered.material.kind.map(Kind::word));
        let places = self
            .known
            .get(offered.code.as_str())
            .map_or(&[][..], Vec::as_slice);
        let entry =
            |place: Option<&usize>| place.and_then(|place| self.shelf.entries().get(*place));
        match (entry(places.first()), entry(places.get(1))) {
            (Some(first), Some(second)) => {
                let (first, second) = (first.code.clone(), second.code.clone());
                self.refuse(&offered, Reason::Both { first, second });
            }
            (Some(entry), None) => match &entry.known {
                Some(known) => self.compare(offered, known),
                None => self.add(offered),
            },
            (None, _) => self.add(offered),
        }
    }

    fn refuse(&mut self, offered: &Offered, reason: Reason) {
        self.preview.rejected_rows += 1;
        self.preview.rejected.push(Rejected {
            row: offered.row,
            code: Some(offered.code.clone()),
            column: offered.column.clone(),
            value: offered.code.clone(),
            reason,
        });
    }

    fn add(&mut self, offered: Offered) {
        if offered.gone {
            self.preview.left_out += 1;
            return;
        }
        let material = &offered.material;
        if self.shelf.has(&material.code) || STARTER.find(&material.code).is_ok() {
            let code = material.code.clone();
            return self.refuse(&offered, Reason::Taken { code });
        }
        let offers = material.cost.iter().map(|cost| OfferChange {
            cost: cost.clone(),
            before: None,
        });
        self.preview.articles.push(Article {
            row: offered.row,
            code: material.code.clone(),
            offers: offers.collect(),
            news: News::New {
                text: written::material(material, self.mapping.unit(), self.on),
            },
            name: material.name.clone(),
            supplier_code: offered.code,
        });
    }

    fn compare(&mut self, offered: Offered, known: &Known) {
        let was = known.material.discontinued.is_some();
        if offered.gone {
            if was {
                self.preview.same += 1;
            } else {
                self.preview.gone.push(Gone {
                    row: Some(offered.row),
                    code: known.material.code.clone(),
                    supplier_code: offered.code,
                });
            }
            return;
        }
        differences(
            offered.row,
            &offered.material,
            &known.material,
            &mut self.preview.differing,
        );
        let offers: Vec<OfferChange> = offered
            .material
            .cost
            .into_iter()
            .filter_map(|cost| {
                let before = known
                    .material
                    .costs_on(self.on)
                    .find(|known| known.follows(&cost));
                let stays = before.is_some_and(|before| before.price == cost.price);
                (!stays).then(|| OfferChange {
                    before: before.cloned(),
                    cost,
                })
            })
            .collect();
        if offers.is_empty() && !was {
            self.preview.same += 1;
            return;
        }
        self.preview.articles.push(Article {
            row: offered.row,
            code: known.material.code.clone(),
            supplier_code: offered.code,
            name: known.material.name.clone().or(offered.material.name),
            news: News::Changed { returns: was },
            offers,
        });
    }

    fn finish(mut self) -> Result<Preview, ListFault> {
        let header = self.mapping.header;
        if self.reader.is_none() {
            return Err(ListFault::NoHeader { header });
        }
        if self.preview.rows == 0 {
            return Err(ListFault::NoRows { header });
        }
        if self.mapping.missing == Missing::Discontinued {
            self.miss();
        }
        Ok(self.preview)
    }

    /// Articles of the kinds the list has that it has no more.
    fn miss(&mut self) {
        let places: BTreeSet<usize> = self.known.values().flatten().copied().collect();
        for entry in places
            .into_iter()
            .filter_map(|place| self.shelf.entries().get(place))
        {
            let Some(known) = &entry.known else { continue };
            let material = &known.material;
            let code = material.supplier_code.as_deref().unwrap_or_default().trim();
            let of_a_kind = material
                .kind
                .is_none_or(|kind| self.kinds.contains(kind.word()));
            let there = self.seen.contains_key(code) || self.named.contains(code);
            let missing = !there && material.discontinued.is_none();
            if missing && of_a_kind && !self.kinds.is_empty() {
                self.preview.gone.push(Gone {
                    row: None,
                    code: entry.code.clone(),
                    supplier_code: code.to_owned(),
                });
            }
        }
    }
}

impl Preview {
    fn empty(supplier: &str, on: Date) -> Self {
        Self {
            supplier: supplier.to_owned(),
            on,
            rows: 0,
            articles: Vec::new(),
            same: 0,
            left_out: 0,
            gone: Vec::new(),
            rejected: Vec::new(),
            rejected_rows: 0,
            differing: Vec::new(),
        }
    }
}

/// Notes the facts that both say and in which they differ.
fn differences(row: u32, list: &Material, catalogue: &Material, into: &mut Vec<Differing>) {
    let facts = written::facts(list)
        .into_iter()
        .zip(written::facts(catalogue));
    for ((field, said), (_, known)) in facts {
        let (Some(said), Some(known)) = (said, known) else {
            continue;
        };
        if said != known {
            into.push(Differing {
                row,
                code: catalogue.code.clone(),
                field,
                list: said,
                catalogue: known,
            });
        }
    }
}
