//! Paper sizes.

use trade::SheetSeries;

use super::answers::{Answers, number};
use super::kinds::Kind;
use super::row::Row;
use super::tolerance::{Tolerance, by};

const WHOLE: Tolerance = by(0.0, "whole millimetres");

pub(super) static KINDS: &[Kind] = &[Kind {
    file: "paper_size_cases.csv",
    inputs: &["series", "number"],
    outputs: &[
        ("width_mm", WHOLE),
        ("height_mm", WHOLE),
        ("area_m2", by(1e-9, "a product of whole millimetres")),
    ],
    answer,
}];

fn answer(row: &Row) -> Result<Answers, String> {
    let letter = row.text("series");
    let series = SheetSeries::named(letter);
    let series = series.ok_or_else(|| format!("series “{letter}” is not A, B or C"))?;
    let sheet = series.sheet(row.whole("number")?);
    let sheet = sheet.ok_or_else(|| "the series ends before this number".to_owned())?;
    Ok(vec![
        number("width_mm", sheet.width.approx_mm()),
        number("height_mm", sheet.height.approx_mm()),
        number("area_m2", sheet.area().approx_m2()),
    ])
}
