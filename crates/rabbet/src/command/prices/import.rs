//! `rabbet prices import`

use std::io::{BufReader, Cursor, Read, Seek};
use std::path::Path;

use clap::Args;
use jiff::Zoned;
use pricing::supplier::{ListFault, Mapping, MappingFault, Preview, Shelf, ShelfFault};
use trade::Date;

use super::history::{History, Import, catalogue_text};
use super::told;
use crate::command::Desk;
use crate::exit::{EXIT_CODES, Exit};
use crate::problem::{Kind, Problem, Trouble};
use crate::{files, toml_place};

/// Reads a supplier's price list, shows what it changes, and writes it into a catalogue
///
/// Rows that can't be read are each told with their reason. While there are any, nothing is written,
/// unless --leave-rejected says to take the others.
#[derive(Args, Debug)]
#[command(
    before_help = "Example: rabbet prices import list.csv --mapping list.mapping.toml --catalogue shop.toml --dry-run",
    after_help = EXIT_CODES
)]
#[allow(
    clippy::struct_excessive_bools,
    reason = "each is a flag of the command line"
)]
pub struct PricesImport {
    /// The list, CSV or XLSX; - is stdin
    #[arg(value_name = "LIST")]
    list: String,
    /// How it is laid out
    #[arg(long, value_name = "FILE")]
    mapping: String,
    /// The catalogue file it is written into; it is made where there is none
    #[arg(long, value_name = "FILE")]
    catalogue: String,
    /// The first day the prices hold; left out: today
    #[arg(long, value_name = "DAY", value_parser = day)]
    on: Option<Date>,
    /// Take the rows that can be read, and leave the others
    #[arg(long)]
    leave_rejected: bool,
    /// Show every row, where otherwise the first of many stand for the rest
    #[arg(long)]
    all: bool,
    /// Show what would change, and write nothing
    #[arg(long)]
    dry_run: bool,
    /// As JSON
    #[arg(long)]
    json: bool,
}

fn day(text: &str) -> Result<Date, String> {
    Date::read(text).map_err(|_| "write a day of the calendar as 2030-11-25".to_owned())
}

impl PricesImport {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let mapping = self.mapping()?;
        let there = catalogue_text(&self.catalogue)?;
        let text = there.as_deref().unwrap_or_default();
        let catalogue = Shelf::read(text).map_err(|fault| self.shelf_trouble(text, fault))?;
        let preview = self.preview(&mapping, &catalogue)?;
        let shown = if self.json {
            format!("{:#}\n", web::wire::price_list(&preview))
        } else {
            told::as_table(&preview, self.all).render(desk.terminal)
        };
        desk.terminal.data(&shown)?;
        if preview.rejected_rows > 0 && !self.leave_rejected {
            return Err(self.rejected(&preview));
        }
        if self.dry_run {
            desk.terminal.talk(&format!(
                "{}: nothing is written (--dry-run)",
                self.catalogue
            ));
            return Ok(Exit::Done);
        }
        if preview.is_idle() {
            desk.terminal.talk(&format!(
                "{}: stays as it is, no price is new",
                self.catalogue
            ));
            return Ok(Exit::Done);
        }
        self.write(&preview, &catalogue, there.is_none())?;
        desk.terminal.talk(&format!(
            "{}: written; `rabbet prices undo --catalogue {}` takes it back",
            self.catalogue, self.catalogue
        ));
        Ok(Exit::Done)
    }

    /// The record that takes it back is on the disk before the catalogue changes.
    fn write(&self, preview: &Preview, catalogue: &Shelf<'_>, made: bool) -> Result<(), Trouble> {
        let applied = preview.apply(catalogue).map_err(|fault| {
            let problem = Problem::new("prices.form", fault.to_string());
            Trouble::one(Kind::Shop, problem.in_file(&self.catalogue))
        })?;
        files::writable(&self.catalogue)?;
        let mut history = History::read(&self.catalogue)?;
        history.imports.push(Import {
            made,
            change: applied.undo,
        });
        history.keep(&self.catalogue)?;
        files::put(Path::new(&self.catalogue), applied.text.as_bytes(), true)
    }

    fn mapping(&self) -> Result<Mapping, Trouble> {
        let file = &self.mapping;
        let text = toml_place::text_of(file, &files::read(file)?)?;
        Mapping::read(&text).map_err(|faults| {
            let problems = faults.into_iter().map(|fault| {
                let problem = Problem::new("mapping.form", fault.to_string());
                match fault {
                    MappingFault::Form { place, .. } => {
                        problem.at(toml_place::of_place(file, place))
                    }
                    _ => problem.in_file(file),
                }
            });
            Trouble {
                kind: Kind::Shop,
                problems: problems.collect(),
            }
        })
    }

    fn shelf_trouble(&self, text: &str, fault: ShelfFault) -> Trouble {
        let problem = Problem::new("materials.form", fault.to_string());
        let problem = match fault {
            ShelfFault::Form { mut place, .. } => {
                let line = place
                    .line
                    .and_then(|line| text.lines().nth(line.saturating_sub(1)));
                place.text = line.map(trade::reading::clip);
                problem.at(toml_place::of_place(&self.catalogue, place))
            }
            _ => problem.in_file(&self.catalogue),
        };
        Trouble::one(Kind::Shop, problem)
    }

    fn preview(&self, mapping: &Mapping, catalogue: &Shelf<'_>) -> Result<Preview, Trouble> {
        let on = match self.on {
            Some(on) => on,
            None => Date::read(&Zoned::now().date().to_string()).map_err(|fault| {
                Trouble::one(Kind::Input, Problem::new("prices.today", fault.to_string()))
            })?,
        };
        let read = if self.list == "-" {
            previewed(Cursor::new(files::read("-")?), mapping, catalogue, on)
        } else {
            previewed(
                BufReader::new(files::open(&self.list)?),
                mapping,
                catalogue,
                on,
            )
        };
        read.map_err(|fault| {
            let problem = Problem::new(fault.code(), fault.to_string());
            Trouble::one(Kind::Document, problem.in_file(self.list_name()))
        })
    }

    fn list_name(&self) -> &str {
        if self.list == "-" {
            "stdin"
        } else {
            &self.list
        }
    }

    fn rejected(&self, preview: &Preview) -> Trouble {
        let rows = preview.rejected_rows;
        let sentence = match rows {
            1 => "1 row is rejected; nothing is written".to_owned(),
            rows => format!("{rows} rows are rejected; nothing is written"),
        };
        let problem = Problem::new("prices.rejected", sentence)
            .hint("mend the list or its mapping, or say --leave-rejected to take the other rows");
        Trouble::one(Kind::Input, problem.in_file(self.list_name()))
    }
}

/// How the two kinds of workbook begin: a ZIP archive, and the older compound file.
const ARCHIVE: &[u8] = b"PK\x03\x04";
const COMPOUND: &[u8] = b"\xd0\xcf\x11\xe0";

fn previewed(
    mut list: impl Read + Seek,
    mapping: &Mapping,
    catalogue: &Shelf<'_>,
    on: Date,
) -> Result<Preview, ListFault> {
    let broken = |error: &std::io::Error| ListFault::Broken {
        row: 0,
        reason: files::reason(error),
    };
    let mut start = Vec::new();
    let head = u64::try_from(ARCHIVE.len()).unwrap_or(0);
    let read = (&mut list).take(head).read_to_end(&mut start);
    read.and_then(|_| list.rewind())
        .map_err(|error| broken(&error))?;
    match start.as_slice() {
        ARCHIVE => Preview::of_workbook(list, mapping, catalogue, on),
        COMPOUND => Err(ListFault::NotWorkbook {
            reason: "it is a workbook of the older kind, XLS".to_owned(),
        }),
        _ => Preview::of_csv(list, mapping, catalogue, on),
    }
}
