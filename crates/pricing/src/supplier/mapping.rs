//! How a supplier's list is laid out, written once.

mod column;
mod field;

use std::collections::{BTreeMap, BTreeSet};

use measure::{Currency, Unit};
use serde::Deserialize;
use trade::{Kind, Per, Place, Supply, reading};

use super::Numbers;

pub use column::{Column, letters, plain};
pub use field::Field;

/// How a supplier's list is laid out; a TOML file that begins with `mapping = 1`.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Mapping {
    /// Version of the form.
    #[serde(rename = "mapping")]
    version: i64,
    /// The supplier's name, as the catalogue has it.
    pub supplier: String,
    /// What the list holds, where no column says it.
    #[serde(default)]
    pub kind: Option<Kind>,
    /// Put before the supplier's code to make the shop's own.
    #[serde(default)]
    pub prefix: String,
    /// The currency of its prices, by its ISO 4217 code.
    #[serde(deserialize_with = "column::currency")]
    pub currency: Currency,
    /// How it writes numbers.
    #[serde(default)]
    pub numbers: Numbers,
    /// What a bare dimension is in.
    #[serde(default)]
    dimensions: Dimensions,
    /// What text its bytes are (CSV).
    #[serde(default)]
    pub encoding: Encoding,
    /// What parts its cells (CSV): one sign, or `tab`.
    #[serde(default, deserialize_with = "column::delimiter")]
    pub delimiter: Option<u8>,
    /// Whether cells may stand in double quotes (CSV).
    #[serde(default)]
    pub quotes: Option<bool>,
    /// The sheet of the workbook; left out: the first (XLSX).
    #[serde(default)]
    pub sheet: Option<String>,
    /// The row of the headings, from 1; 0: there are none.
    #[serde(default = "column::first")]
    pub header: u32,
    /// Rows that are left out, by number.
    #[serde(default)]
    pub skip: BTreeSet<u32>,
    /// Decimals that prices are rounded half up to; left out: as they are.
    #[serde(default)]
    pub round: Option<u8>,
    /// What it means when the catalogue has an article that the list lacks.
    #[serde(default)]
    pub missing: Missing,
    /// Which column holds what.
    pub columns: BTreeMap<Field, Column>,
    /// The columns of prices.
    #[serde(default)]
    pub price: Vec<PriceColumn>,
    /// What is so for every row, whatever it says.
    #[serde(default)]
    pub fixed: BTreeMap<Field, String>,
    /// What is so where a row's cell is blank.
    #[serde(default)]
    pub defaults: BTreeMap<Field, String>,
    /// What the list's own words mean.
    #[serde(default)]
    pub words: Words,
}

/// A column of prices.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PriceColumn {
    /// Where.
    pub column: Column,
    /// What the price is for, where no column says it.
    #[serde(default)]
    pub per: Option<Per>,
    /// The column that says what the price is for.
    #[serde(default)]
    pub per_column: Option<Column>,
    /// How the moulding comes for it.
    #[serde(default, rename = "as")]
    pub supply: Supply,
    /// How many are in the box or pack.
    #[serde(default)]
    pub pack: Option<u32>,
    /// The column that says so.
    #[serde(default)]
    pub pack_column: Option<Column>,
    /// Whether it may be blank.
    #[serde(default)]
    pub optional: bool,
}

/// What the list's own words mean.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Words {
    /// Units of prices: `LF = "foot"`.
    #[serde(default)]
    pub per: BTreeMap<String, Per>,
    /// Kinds: `"Matboard" = "board"`.
    #[serde(default)]
    pub kind: BTreeMap<String, Kind>,
    /// Words for what is no longer sold.
    #[serde(default)]
    pub discontinued: Vec<String>,
}

/// What text a list's bytes are.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Encoding {
    /// UTF-8.
    #[default]
    #[serde(rename = "utf-8")]
    Utf8,
    /// Windows-1252, which the Encoding Standard reads Latin-1 as, too.
    #[serde(rename = "windows-1252", alias = "latin-1")]
    Windows1252,
}

/// What it means when the catalogue has an article of this supplier that the list lacks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Missing {
    /// It is no longer sold. Only kinds that the list has are looked at.
    #[default]
    Discontinued,
    /// The list is a part of what the supplier sells.
    Keep,
}

#[derive(Clone, Copy, Debug, Default, Deserialize)]
enum Dimensions {
    #[default]
    #[serde(rename = "in")]
    Inch,
    #[serde(rename = "mm")]
    Millimetre,
    #[serde(rename = "cm")]
    Centimetre,
    #[serde(rename = "m")]
    Metre,
    #[serde(rename = "ft")]
    Foot,
}

/// Why a mapping can't be used.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum MappingFault {
    /// Its form.
    #[error("{sentence}")]
    Form {
        /// What is wrong and what would do.
        sentence: String,
        /// Where.
        place: Place,
    },
    /// Written by a newer program.
    #[error(
        "it says `mapping = {found}`, this program reads 1; update the program, or write `mapping = 1`"
    )]
    Version {
        /// What it says.
        found: i64,
    },
    /// A name that is blank.
    #[error("`supplier` is blank; write the supplier's name as the catalogue has it")]
    NoSupplier,
    /// A column that every list needs.
    #[error("no column holds the supplier's code; write `code = \"its heading\"` under [columns]")]
    NoCode,
    /// No price at all.
    #[error("no column holds a price; write a [[price]] table with its `column` and `per`")]
    NoPrice,
    /// A price of nothing known.
    #[error(
        "the {nth}. [[price]] says neither `per` nor `per_column`; write `per = \"foot\"`, or the column that says it"
    )]
    NoUnit {
        /// Which one, from 1.
        nth: usize,
    },
    /// No kind.
    #[error(
        "it does not say what the list holds; write `kind = \"moulding\"`, or `kind` under [columns]"
    )]
    NoKind,
    /// Headings that are not there.
    #[error(
        "with `header = 0` columns are named by letter; write {{ letter = \"A\" }} in place of \"{heading}\""
    )]
    NoHeader {
        /// The heading named.
        heading: String,
    },
    /// A field that comes from a column only.
    #[error("`{field}` differs from row to row; name its column under [columns] instead")]
    NotFixed {
        /// The field.
        field: &'static str,
    },
    /// Two fields that go together.
    #[error("`{one}` needs `{other}` beside it; map both or neither")]
    Half {
        /// The one that is mapped.
        one: &'static str,
        /// The one that is not.
        other: &'static str,
    },
    /// More decimals than prices have.
    #[error("`round = {round}` is more than the six decimals of a price; write 0 to 6")]
    Round {
        /// What it says.
        round: u8,
    },
    /// A prefix no code can have.
    #[error("`prefix` is at most 20 signs, none of them a line break; shorten it")]
    Prefix,
}

/// The version of the form, the most signs of a prefix, and the decimals of a price.
const VERSION: i64 = 1;
const LONGEST_PREFIX: usize = 20; // geometry: of a line on the screen
const PLACES: u8 = 6; // geometry: a price is held in millionths

impl Mapping {
    /// Reads a mapping file.
    ///
    /// Errors: its first fault of form, with its place; else everything it lacks, together.
    pub fn read(text: &str) -> Result<Self, Vec<MappingFault>> {
        let mapping: Self = toml::from_str(text).map_err(|error| {
            let (sentence, place) = reading::refusal(text, &error);
            vec![MappingFault::Form { sentence, place }]
        })?;
        let faults = mapping.faults();
        if faults.is_empty() {
            Ok(mapping)
        } else {
            Err(faults)
        }
    }

    /// What a bare dimension is in.
    pub const fn unit(&self) -> Unit {
        match self.dimensions {
            Dimensions::Inch => Unit::Inch,
            Dimensions::Millimetre => Unit::Millimetre,
            Dimensions::Centimetre => Unit::Centimetre,
            Dimensions::Metre => Unit::Metre,
            Dimensions::Foot => Unit::Foot,
        }
    }

    /// Every column that is named anywhere, with what it is for.
    pub fn named(&self) -> impl Iterator<Item = &Column> {
        let prices = self.price.iter().flat_map(|price| {
            [
                Some(&price.column),
                price.per_column.as_ref(),
                price.pack_column.as_ref(),
            ]
        });
        self.columns.values().chain(prices.flatten())
    }

    fn faults(&self) -> Vec<MappingFault> {
        if self.version != VERSION {
            return vec![MappingFault::Version {
                found: self.version,
            }];
        }
        let mut faults = self.lacking();
        let fine = self.round.filter(|round| *round > PLACES);
        faults.extend(fine.map(|round| MappingFault::Round { round }));
        let unitless = |(nth, price): (usize, &PriceColumn)| {
            (price.per.is_none() && price.per_column.is_none())
                .then_some(MappingFault::NoUnit { nth })
        };
        faults.extend((1..).zip(&self.price).filter_map(unitless));
        faults.extend(self.misplaced());
        faults
    }

    /// What every mapping needs and this has not.
    fn lacking(&self) -> Vec<MappingFault> {
        let long = self.prefix.chars().count() > LONGEST_PREFIX;
        let codeless = !self.columns.contains_key(&Field::Code);
        let kindless = self.kind.is_none() && !self.says(Field::Kind);
        let broken = long || self.prefix.contains(char::is_control);
        let checks = [
            (self.supplier.trim().is_empty(), MappingFault::NoSupplier),
            (codeless, MappingFault::NoCode),
            (self.price.is_empty(), MappingFault::NoPrice),
            (kindless, MappingFault::NoKind),
            (broken, MappingFault::Prefix),
        ];
        let wrong = checks.into_iter().filter(|(wrong, _)| *wrong);
        wrong.map(|(_, fault)| fault).collect()
    }

    /// Fields that can't stand where they do, or not alone.
    fn misplaced(&self) -> Vec<MappingFault> {
        let mut faults = Vec::new();
        for (one, other) in PAIRS {
            if self.says(one) != self.says(other) {
                let (one, other) = if self.says(one) {
                    (one, other)
                } else {
                    (other, one)
                };
                faults.push(MappingFault::Half {
                    one: one.word(),
                    other: other.word(),
                });
            }
        }
        let stated = self.fixed.keys().chain(self.defaults.keys());
        let unfixable = stated.filter(|field| matches!(field, Field::Code | Field::Discontinued));
        faults.extend(unfixable.map(|field| MappingFault::NotFixed {
            field: field.word(),
        }));
        if self.header == 0 {
            let headed = self.named().filter_map(Column::heading);
            faults.extend(headed.map(|heading| MappingFault::NoHeader {
                heading: heading.to_owned(),
            }));
        }
        faults
    }

    fn says(&self, field: Field) -> bool {
        self.columns.contains_key(&field)
            || self.fixed.contains_key(&field)
            || self.defaults.contains_key(&field)
    }
}

/// Fields that only make sense together.
const PAIRS: [(Field, Field); 2] = [
    (Field::Face, Field::Height),
    (Field::SheetWidth, Field::SheetHeight),
];
