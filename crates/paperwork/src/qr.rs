//! Codes that a telephone reads.

use std::fmt::Write as _;

use qrcodegen::{QrCode, QrCodeEcc};

use crate::error::PaperworkError;

/// A code as a drawing, one unit a module, its quiet zone round it.
pub(crate) struct Code {
    /// The drawing.
    pub svg: String,
    /// Modules across, the quiet zone counted.
    pub modules: i32,
}

/// Modules of bare paper round a code (ISO/IEC 18004, number from memory).
const QUIET: i32 = 4;

/// The code of a text: alphanumeric where its letters allow, at least medium correction.
///
/// # Errors
///
/// A text that is longer than a code holds.
pub(crate) fn code(text: &str) -> Result<Code, PaperworkError> {
    let code =
        QrCode::encode_text(text, QrCodeEcc::Medium).map_err(|_| PaperworkError::LongCode {
            letters: text.len(),
        })?;
    let modules = code.size() + 2 * QUIET;
    let mut path = String::new();
    for y in 0..code.size() {
        let mut x = 0;
        while x < code.size() {
            let start = x;
            while x < code.size() && code.get_module(x, y) {
                x += 1;
            }
            if x > start {
                let (left, top, run) = (start + QUIET, y + QUIET, x - start);
                write!(path, "M{left} {top}h{run}v1h-{run}z").expect("writing to a string");
            }
            x += 1;
        }
    }
    let svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {modules} {modules}\" width=\"{modules}\" height=\"{modules}\">\
         <rect width=\"{modules}\" height=\"{modules}\" fill=\"#fff\"/><path fill=\"#000\" d=\"{path}\"/></svg>"
    );
    Ok(Code { svg, modules })
}
