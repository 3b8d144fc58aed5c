//! The last touch: the file asks its viewer to print it at actual size.

use lopdf::{Dictionary, Document, Object};

use crate::error::PaperworkError;

/// `pdf` with `PrintScaling None` among its viewer preferences.
///
/// Source: ISO 32000-1:2008, 12.2, table 150, `PrintScaling` (section number from memory).
pub(crate) fn at_actual_size(pdf: &[u8]) -> Result<Vec<u8>, PaperworkError> {
    let mut document = Document::load_mem(pdf).map_err(fault)?;
    let mut preferences = match document.catalog().map_err(fault)?.get(PREFERENCES) {
        Ok(kept) => document
            .dereference(kept)
            .and_then(|(_, kept)| kept.as_dict().cloned()),
        Err(_) => Ok(Dictionary::new()),
    }
    .map_err(fault)?;
    preferences.set("PrintScaling", Object::Name(b"None".to_vec()));
    document
        .catalog_mut()
        .map_err(fault)?
        .set(PREFERENCES, preferences);
    let mut out = Vec::with_capacity(pdf.len());
    document
        .save_to(&mut out)
        .map_err(|fault| PaperworkError::Finishing(fault.to_string()))?;
    Ok(out)
}

const PREFERENCES: &[u8] = b"ViewerPreferences";

#[allow(clippy::needless_pass_by_value, reason = "shaped for map_err")]
fn fault(fault: lopdf::Error) -> PaperworkError {
    PaperworkError::Finishing(fault.to_string())
}
