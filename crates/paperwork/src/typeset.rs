//! The typesetter, run inside this process on virtual files.

use std::{fmt, iter};

use comemo::Track;
use serde_json::Value;
use typst::diag::{FileError, FileResult, LoadedWithin, SourceDiagnostic, Warned};
use typst::foundations::{Bytes, Datetime, Duration, Smart};
use typst::loading::{LoadSource, Loaded};
use typst::syntax::{FileId, Source, Spanned};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::visualize::SvgImage;
use typst::{Library, World};
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards, Timestamp};

use crate::error::PaperworkError;
use crate::finish::at_actual_size;
use crate::kit::{KIT, file_id};

/// A moment, in universal time, to the minute.
///
/// Shape:  year, month 1–12, day 1–31, hour 0–23, minute 0–59.
/// Errors: a moment that is not on the calendar is refused when a sheet is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stamp {
    /// Year of the common era.
    pub year: u16,
    /// Month, from 1.
    pub month: u8,
    /// Day of the month, from 1.
    pub day: u8,
    /// Hour of the day, from 0.
    pub hour: u8,
    /// Minute of the hour, from 0.
    pub minute: u8,
}

impl fmt::Display for Stamp {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self {
            year,
            month,
            day,
            hour,
            minute,
        } = self;
        write!(out, "{year:04}-{month:02}-{day:02} {hour:02}:{minute:02}")
    }
}

/// A sheet to set: its template, its data, its drawings.
pub(crate) struct Sheet {
    /// Name of the template in the kit.
    pub(crate) template: &'static str,
    /// What the template reads; text stays text because it never becomes markup.
    pub(crate) data: Value,
    pub(crate) drawings: Vec<Picture>,
    /// What tells this document from every other.
    pub(crate) identity: String,
    /// When the sheet was made.
    pub(crate) made: Stamp,
}

/// A drawing as a virtual file.
pub(crate) struct Picture {
    /// What people call it.
    pub(crate) drawing: &'static str,
    /// Its fixed name on the typesetter's table.
    pub(crate) file: &'static str,
    /// Its content.
    pub(crate) svg: String,
}

/// Sets `sheet` as a tagged PDF (PDF/UA-1 and PDF/A-2a) that asks to be printed 1:1.
pub(crate) fn pdf(sheet: Sheet) -> Result<Vec<u8>, PaperworkError> {
    let options = options(&sheet)?;
    let made = Table::laid(sheet).and_then(|table| set(&table, &options));
    // What the typesetter remembers is dropped once it is older than a few sheets.
    comemo::evict(SHEETS_REMEMBERED);
    at_actual_size(&made?)
}

const SHEETS_REMEMBERED: usize = 8;
const DATA: &str = "data.json";

fn options(sheet: &Sheet) -> Result<PdfOptions, PaperworkError> {
    let Stamp {
        year,
        month,
        day,
        hour,
        minute,
    } = sheet.made;
    let made = Datetime::from_ymd_hms(i32::from(year), month, day, hour, minute, 0)
        .ok_or(PaperworkError::NotATime(sheet.made))?;
    let standards = PdfStandards::new(&[PdfStandard::A_2a, PdfStandard::Ua_1])
        .map_err(|refusal| PaperworkError::Setting(refusal.message().to_string()))?;
    Ok(PdfOptions {
        ident: Smart::Custom(sheet.identity.clone()),
        creator: Smart::Custom(Some("Rabbet".to_owned())),
        timestamp: Some(Timestamp::new_utc(made)),
        standards,
        ..PdfOptions::default()
    })
}

fn set(table: &Table, options: &PdfOptions) -> Result<Vec<u8>, PaperworkError> {
    // Warnings are about the template or a drawing's font; what they led to is on the page,
    // and the tests read the pages back.
    let Warned {
        output,
        warnings: _,
    } = typst::compile::<PagedDocument>(table);
    let document = output.map_err(|faults| refusal(&faults))?;
    typst_pdf::pdf(&document, options).map_err(|faults| refusal(&faults))
}

fn refusal(faults: &[SourceDiagnostic]) -> PaperworkError {
    let said = faults.iter().flat_map(|fault| {
        let hints = fault.hints.iter().map(|hint| hint.v.as_str());
        iter::once(fault.message.as_str()).chain(hints)
    });
    PaperworkError::Setting(said.collect::<Vec<_>>().join("; "))
}

/// The typesetter's table: the kit, and the one sheet laid on it.
struct Table {
    main: FileId,
    files: Vec<(FileId, Bytes)>,
}

impl Table {
    /// Lays out the sheet, once each drawing is known to be one the typesetter reads.
    fn laid(sheet: Sheet) -> Result<Self, PaperworkError> {
        let data = Bytes::from_string(sheet.data.to_string());
        let mut table = Self {
            main: file_id(sheet.template),
            files: vec![(file_id(DATA), data)],
        };
        for Picture { drawing, file, svg } in sheet.drawings {
            let (id, svg) = (file_id(file), Bytes::from_string(svg));
            table.files.push((id, svg.clone()));
            table
                .read(id, svg)
                .map_err(|why| PaperworkError::Drawing { drawing, why })?;
        }
        Ok(table)
    }

    /// Reads an SVG as the typesetter will; what it says when it cannot.
    fn read(&self, id: FileId, svg: Bytes) -> Result<(), String> {
        let world: &dyn World = self;
        let file = Loaded::new(Spanned::detached(LoadSource::Path(id)), svg.clone());
        SvgImage::with_fonts_images(svg, world.track(), &[], Some(id))
            .map(drop)
            .map_err(|fault| fault.within(&file).message.to_string())
    }
}

impl World for Table {
    fn library(&self) -> &LazyHash<Library> {
        &KIT.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &KIT.book
    }

    fn main(&self) -> FileId {
        self.main
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        let source = KIT.sources.iter().find(|source| source.id() == id);
        source.cloned().ok_or_else(|| missing(id))
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        let file = self.files.iter().find(|(name, _)| *name == id);
        file.map(|(_, bytes)| bytes.clone())
            .ok_or_else(|| missing(id))
    }

    fn font(&self, index: usize) -> Option<Font> {
        KIT.fonts.get(index).cloned()
    }

    fn today(&self, _offset: Option<Duration>) -> Option<Datetime> {
        None
    }
}

fn missing(id: FileId) -> FileError {
    FileError::NotFound(id.get().vpath().get_without_slash().into())
}

#[cfg(test)]
mod tests;
