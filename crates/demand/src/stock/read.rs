//! Reading a stock document, and saying where it went wrong.

use std::collections::BTreeSet;

use measure::{Length, Money, Size, Unit, read_length, read_size};
use trade::reading::{self, in_words};

use super::file::{Cut, File, Remnant, Sheet, Stick, Written};
use super::{CutStock, Extent, RemnantStock, STOCK_VERSION, SheetStock, StickStock, Stock};
use crate::kerf::too_wide;

/// The longest document that is read, in bytes: room for some 100 000 entries.
pub const LONGEST: usize = 1 << 24;

/// Most pieces of stock of one entry; more is a slip of the key.
pub const MOST: u64 = 1_000_000_000;

/// Why a stock document can't be read.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum StockFault {
    /// It is far longer than a stock list is.
    #[error(
        "the stock document is {bytes} bytes long, the longest that is read is {LONGEST}; is it the right file?"
    )]
    TooLong {
        /// Its length.
        bytes: usize,
    },
    /// It is not text.
    #[error("the stock document is not UTF-8 text: byte {at} can't be read; save it as UTF-8")]
    NotText {
        /// Offset of the first byte that can't be read.
        at: usize,
    },
    /// Its form is not that of a stock document.
    #[error("the stock document{place}: {why}")]
    Form {
        /// Where, as a phrase.
        place: String,
        /// What is wrong, in the reader's words.
        why: String,
    },
    /// It was written by a newer program.
    #[error(
        "the stock document says `stock = {found}`, this program reads {STOCK_VERSION}; update the program, or write `stock = {STOCK_VERSION}`"
    )]
    Version {
        /// The version it names.
        found: u32,
    },
    /// A field of an entry.
    #[error("{entry}: {field} \"{text}\": {why}")]
    Field {
        /// Which entry: `stick 2 (oak-square-1)`.
        entry: String,
        /// Which field.
        field: &'static str,
        /// As typed.
        text: String,
        /// What is wrong and what would do.
        why: String,
    },
    /// A remnant that is neither a stick nor a sheet, or both.
    #[error("{entry}: write `length` for a stick or `size` for a sheet, one of the two")]
    Extent {
        /// Which entry.
        entry: String,
    },
    /// Two `[[cut]]` about one material.
    #[error("two [[cut]] are about {material}; keep one of them")]
    TwoCuts {
        /// The material.
        material: String,
    },
    /// A label on two remnants.
    #[error("two remnants are labelled {label}; give one of them another label")]
    Label {
        /// The label.
        label: String,
    },
}

impl Stock {
    /// Reads a stock document, TOML or JSON (a document that opens with `{`).
    ///
    /// Errors: the first fault of form; else everything that can't be read, all together.
    pub fn read(bytes: &[u8]) -> Result<Self, Vec<StockFault>> {
        if bytes.len() > LONGEST {
            let bytes = bytes.len();
            return Err(vec![StockFault::TooLong { bytes }]);
        }
        let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
        let text = std::str::from_utf8(bytes).map_err(|error| {
            let at = error.valid_up_to();
            vec![StockFault::NotText { at }]
        })?;
        let file = if text.trim_start().starts_with('{') {
            from_json(text)
        } else {
            from_toml(text)
        };
        typed(file.map_err(|fault| vec![fault])?)
    }
}

fn from_toml(text: &str) -> Result<File, StockFault> {
    toml::from_str(text).map_err(|error| {
        let (why, place) = reading::refusal(text, &error);
        StockFault::Form {
            place: match place.line {
                Some(line) => format!(", line {line}"),
                None => String::new(),
            },
            why,
        }
    })
}

fn from_json(text: &str) -> Result<File, StockFault> {
    let mut json = serde_json::Deserializer::from_str(text);
    let file = serde_path_to_error::deserialize(&mut json).map_err(|error| {
        let path = error.path().to_string();
        StockFault::Form {
            why: said(error.inner(), path.rsplit('.').next()),
            place: format!(", {path}"),
        }
    })?;
    json.end().map_err(|error| StockFault::Form {
        place: String::new(),
        why: said(&error, None),
    })?;
    Ok(file)
}

/// A JSON reader's words in ours; `key` is the field it stopped at.
fn said(error: &serde_json::Error, key: Option<&str>) -> String {
    let message = error.to_string();
    let sentence = message
        .rsplit_once(" at line ")
        .map_or(message.as_str(), |(said, _)| said);
    let key = key.filter(|key| key.starts_with(char::is_alphabetic));
    let (line, words) = (error.line(), in_words(sentence, key));
    format!("line {line}: {words}")
}

fn typed(file: File) -> Result<Stock, Vec<StockFault>> {
    if file.stock != STOCK_VERSION {
        let found = file.stock;
        return Err(vec![StockFault::Version { found }]);
    }
    let mut desk = Desk {
        bare: file.units.unit(),
        entry: String::new(),
        faults: Vec::new(),
    };
    let stock = Stock {
        units: file.units,
        buy: file.buy,
        next_label: file.next_label,
        sticks: desk.each("stick", file.stick, |s| s.material.clone(), Desk::stick),
        sheets: desk.each("sheet", file.sheet, |s| s.material.clone(), Desk::sheet),
        remnants: desk.each("remnant", file.remnant, |r| r.label.clone(), Desk::remnant),
        cuts: desk.each("cut", file.cut, |c| c.material.clone(), Desk::cut),
    };
    let mut seen = BTreeSet::new();
    for remnant in &stock.remnants {
        if !seen.insert(remnant.label.as_str()) {
            let label = remnant.label.clone();
            desk.faults.push(StockFault::Label { label });
        }
    }
    let mut seen = BTreeSet::new();
    for cut in &stock.cuts {
        if !seen.insert(cut.material.as_str()) {
            let material = cut.material.clone();
            desk.faults.push(StockFault::TwoCuts { material });
        }
    }
    if desk.faults.is_empty() {
        Ok(stock)
    } else {
        Err(desk.faults)
    }
}

/// All of them as they were written, for a sentence.
fn joined(written: &[Written]) -> String {
    let texts = written.iter().map(|one| one.0.as_str());
    texts.collect::<Vec<_>>().join(" and ")
}

/// It was written and can't be read; the fault is noted.
struct Refused;

/// Where entries are gone through, and faults collected.
struct Desk {
    bare: Unit,
    entry: String,
    faults: Vec<StockFault>,
}

impl Desk {
    /// Every entry of a kind that can be read.
    fn each<T, U>(
        &mut self,
        kind: &str,
        entries: Vec<T>,
        name: impl Fn(&T) -> String,
        read: impl Fn(&mut Self, T) -> Option<U>,
    ) -> Vec<U> {
        let numbered = entries.into_iter().enumerate();
        numbered
            .filter_map(|(i, entry)| {
                self.entry = format!("{kind} {} ({})", i + 1, name(&entry));
                read(self, entry)
            })
            .collect()
    }

    fn refuse<T>(&mut self, field: &'static str, text: &str, why: impl Into<String>) -> Option<T> {
        self.faults.push(StockFault::Field {
            entry: self.entry.clone(),
            field,
            text: text.to_owned(),
            why: why.into(),
        });
        None
    }

    fn length(&mut self, field: &'static str, text: &Written) -> Option<Length> {
        match read_length(&text.0, self.bare) {
            Ok(length) if length.is_negative() => {
                self.refuse(field, &text.0, "it can't be less than nothing")
            }
            Ok(length) => Some(length),
            Err(error) => self.refuse(field, &text.0, format!("{error}; {}", error.hint())),
        }
    }

    fn above_zero(&mut self, field: &'static str, text: &Written) -> Option<Length> {
        let length = self.length(field, text)?;
        if length.is_zero() {
            return self.refuse(field, &text.0, "it must be above zero");
        }
        Some(length)
    }

    fn size(&mut self, field: &'static str, text: &str) -> Option<Size> {
        match read_size(text, self.bare) {
            Ok(size) if size.short_side().is_positive() => Some(size),
            Ok(_) => self.refuse(field, text, "both sides must be above zero"),
            Err(error) => self.refuse(field, text, format!("{error}; {}", error.hint())),
        }
    }

    /// What was written, where anything was.
    fn optional<T, U>(
        &mut self,
        written: Option<T>,
        read: impl FnOnce(&mut Self, T) -> Option<U>,
    ) -> Result<Option<U>, Refused> {
        let read = written.map(|written| read(self, written).ok_or(Refused));
        read.transpose()
    }

    fn money(&mut self, text: &str) -> Option<Money> {
        match Money::read(text) {
            Ok(money) if money.minor < 0 => {
                self.refuse("cost", text, "it can't be less than nothing")
            }
            Ok(money) => Some(money),
            Err(error) => self.refuse("cost", text, format!("{error}; {}", error.hint())),
        }
    }

    fn count(&mut self, count: Option<u64>) -> Result<Option<u64>, Refused> {
        match count {
            Some(count) if count > MOST => self
                .refuse("count", &count.to_string(), format!("the most is {MOST}"))
                .ok_or(Refused),
            count => Ok(count),
        }
    }

    /// Two lengths, no more and no fewer.
    fn pair(&mut self, field: &'static str, written: &[Written]) -> Option<[Length; 2]> {
        let [a, b] = written else {
            let why = "write two lengths, such as [\"1/2\", \"1/4\"]";
            return self.refuse(field, &joined(written), why);
        };
        let (a, b) = (self.length(field, a), self.length(field, b));
        Some([a?, b?])
    }

    /// Flaws of a stick, each from before to, both on the stick.
    fn flaws(&mut self, written: &[Vec<Written>], stick: Length) -> Option<Vec<[Length; 2]>> {
        let mut flaws = Vec::with_capacity(written.len());
        for both in written {
            let [from, to] = self.pair("flaws", both)?;
            if from >= to || to > stick {
                return self.refuse(
                    "flaws",
                    &joined(both),
                    "write from before to, both on the stick",
                );
            }
            flaws.push([from, to]);
        }
        Some(flaws)
    }

    /// A trim that leaves something of the stick.
    fn ends(
        &mut self,
        written: Option<Vec<Written>>,
        stick: Length,
    ) -> Result<Option<[Length; 2]>, Refused> {
        self.optional(written, |desk, both| {
            let [start, end] = desk.pair("trim", &both)?;
            if start + end >= stick {
                return desk.refuse("trim", &joined(&both), "it leaves nothing of the stick");
            }
            Some([start, end])
        })
    }

    fn stick(&mut self, entry: Stick) -> Option<StickStock> {
        let length = self.above_zero("length", &entry.length);
        let cost = self.optional(entry.cost, |desk, text| desk.money(&text));
        let count = self.count(entry.count);
        let length = length?;
        let trim = self.ends(entry.trim, length);
        let flaws = self.flaws(&entry.flaws, length);
        Some(StickStock {
            material: entry.material,
            colour: entry.colour,
            length,
            count: count.ok()?,
            cost: cost.ok()?,
            run: entry.run,
            bin: entry.bin,
            trim: trim.ok()?,
            flaws: flaws?,
        })
    }

    fn sheet(&mut self, entry: Sheet) -> Option<SheetStock> {
        let size = self.size("size", &entry.size);
        let cost = self.optional(entry.cost, |desk, text| desk.money(&text));
        let count = self.count(entry.count);
        let trim = self.optional(entry.trim, |desk, text| desk.length("trim", &text));
        let (size, trim) = (size?, trim.ok()?);
        if trim.is_some_and(|trim| trim.twice() >= size.short_side()) {
            return self.refuse("trim", &entry.size, "its trim leaves nothing of the sheet");
        }
        Some(SheetStock {
            material: entry.material,
            colour: entry.colour,
            size,
            count: count.ok()?,
            cost: cost.ok()?,
            bin: entry.bin,
            trim,
        })
    }

    fn remnant(&mut self, entry: Remnant) -> Option<RemnantStock> {
        if entry.label.trim().is_empty() {
            return self.refuse("label", &entry.label, "write what stands on the remnant");
        }
        let extent = match (entry.length, entry.size) {
            (Some(length), None) => Extent::Stick(self.above_zero("length", &length)?),
            (None, Some(size)) => Extent::Sheet(self.size("size", &size)?),
            (Some(_), Some(_)) | (None, None) => {
                let entry = self.entry.clone();
                self.faults.push(StockFault::Extent { entry });
                return None;
            }
        };
        let (trim, flaws) = match extent {
            Extent::Stick(stick) => (
                self.ends(entry.trim, stick),
                self.flaws(&entry.flaws, stick),
            ),
            Extent::Sheet(_) => {
                let held = self.of_sticks_only(entry.trim.as_deref(), &entry.flaws);
                held.ok()?;
                (Ok(None), Some(Vec::new()))
            }
        };
        Some(RemnantStock {
            label: entry.label,
            material: entry.material,
            colour: entry.colour,
            extent,
            run: entry.run,
            bin: entry.bin,
            trim: trim.ok()?,
            flaws: flaws?,
        })
    }

    /// A sheet has neither ends to trim nor flaws along it.
    fn of_sticks_only(
        &mut self,
        trim: Option<&[Written]>,
        flaws: &[Vec<Written>],
    ) -> Result<(), Refused> {
        let why = "it is for remnants of sticks only; leave it out";
        let before = self.faults.len();
        if let Some(trim) = trim {
            self.refuse::<()>("trim", &joined(trim), why);
        }
        if let Some(first) = flaws.first() {
            self.refuse::<()>("flaws", &joined(first), why);
        }
        if self.faults.len() == before {
            Ok(())
        } else {
            Err(Refused)
        }
    }

    fn cut(&mut self, entry: Cut) -> Option<CutStock> {
        let kerf = self.optional(entry.kerf, |desk, text| {
            let kerf = desk.length("kerf", &text)?;
            match too_wide(kerf, desk.bare) {
                Some(why) => desk.refuse("kerf", &text.0, why),
                None => Some(kerf),
            }
        });
        let mut read = |field, written: Option<Written>| {
            self.optional(written, |desk, text| desk.length(field, &text))
        };
        let trim = read("trim", entry.trim);
        let least_strip = read("least_strip", entry.least_strip);
        let (kerf, trim, least_strip) = (kerf.ok()?, trim.ok()?, least_strip.ok()?);
        let both = |length: Option<Length>| length.is_some_and(Length::is_positive);
        if both(kerf) && both(least_strip) {
            let why = "a least strip is for what is scored and broken, where a cut takes nothing; leave out one of the two";
            return self.refuse("least_strip", &entry.material, why);
        }
        Some(CutStock {
            material: entry.material,
            kerf,
            trim,
            least_strip,
        })
    }
}
