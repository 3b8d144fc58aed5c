//! Where in a row each thing stands.

use std::collections::BTreeMap;

use super::mapping::{Column, Field, Mapping, letters, plain};
use super::rejected::clipped;
use super::rows::{Cell, ListFault, Row};

/// Where in a row each thing stands.
pub(super) struct Columns {
    /// Places of the fields, from 0.
    pub fields: BTreeMap<Field, usize>,
    /// Places of the prices, in the mapping's order.
    pub prices: Vec<PriceAt>,
    headings: Vec<String>,
}

/// Where a price and what goes with it stand.
pub(super) struct PriceAt {
    pub price: usize,
    pub per: Option<usize>,
    pub pack: Option<usize>,
}

impl Columns {
    /// Finds every column of the mapping by the row of the headings, or by letter alone.
    ///
    /// Errors: a heading that is not there, or is there twice.
    pub fn of(mapping: &Mapping, header: Option<&Row>) -> Result<Self, ListFault> {
        let headings = header.map_or(&[][..], |row| &row.cells);
        let headings = headings.iter().map(heading).collect();
        let mut columns = Self {
            fields: BTreeMap::new(),
            prices: Vec::new(),
            headings,
        };
        for (field, column) in &mapping.columns {
            let place = columns.find(column, mapping.header)?;
            columns.fields.insert(*field, place);
        }
        for price in &mapping.price {
            let find = |column: &Option<Column>| {
                column
                    .as_ref()
                    .map(|column| columns.find(column, mapping.header))
                    .transpose()
            };
            let at = PriceAt {
                price: columns.find(&price.column, mapping.header)?,
                per: find(&price.per_column)?,
                pack: find(&price.pack_column)?,
            };
            columns.prices.push(at);
        }
        Ok(columns)
    }

    /// What a column is called: its heading, or its letter.
    pub fn name(&self, column: usize) -> String {
        match self.headings.get(column) {
            Some(heading) if !heading.is_empty() => clipped(heading),
            _ => format!("column {}", letters(column)),
        }
    }

    fn find(&self, column: &Column, header: u32) -> Result<usize, ListFault> {
        let heading = match column {
            Column::Letter(place) => return Ok(*place),
            Column::Heading(heading) => heading,
        };
        let wanted = plain(heading);
        let mut found = (0..)
            .zip(&self.headings)
            .filter(|(_, there)| plain(there) == wanted);
        match (found.next(), found.next()) {
            (Some((place, _)), None) => Ok(place),
            (Some((first, _)), Some((second, _))) => Err(ListFault::TwoHeadings {
                header,
                heading: clipped(heading),
                first: letters(first),
                second: letters(second),
            }),
            (None, _) => Err(ListFault::NoHeading {
                header,
                heading: clipped(heading),
                there: self.listed(),
            }),
        }
    }

    /// The headings there are, as many as can be taken in at a glance.
    fn listed(&self) -> String {
        let there = self.headings.iter().filter(|heading| !heading.is_empty());
        let mut shown: Vec<String> = there
            .clone()
            .take(GLANCE)
            .map(|heading| format!("\"{}\"", clipped(heading)))
            .collect();
        let more = there.count().saturating_sub(GLANCE);
        if more > 0 {
            shown.push(format!("and {more} more"));
        }
        if shown.is_empty() {
            "none".to_owned()
        } else {
            shown.join(", ")
        }
    }
}

/// Headings that are listed before the rest are counted.
const GLANCE: usize = 24; // geometry: of a line on the screen

fn heading(cell: &Cell) -> String {
    match cell {
        Cell::Text(text) | Cell::Number(text) | Cell::Failed(text) => text.clone(),
        Cell::Blank | Cell::Date | Cell::NotText => String::new(),
    }
}
