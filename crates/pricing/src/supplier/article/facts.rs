//! What a row says of an article, beside its prices.

use measure::{Length, ReadError, Size, Unit, read_length, read_size};
use trade::{Material, Measured, Pair, Profile, Sourced};

use super::{Field, Reading, Value};
use crate::supplier::Numbers;
use crate::supplier::numbers::Plain;
use crate::supplier::rejected::Reason;

impl Reading<'_> {
    /// Fills in everything the row says.
    pub(super) fn facts(&mut self, material: &mut Material) {
        material.name = self.words(Field::Name);
        material.description = self.words(Field::Description);
        material.class = self.words(Field::Class);
        material.wood = self.words(Field::Wood);
        material.colour_family = self.words(Field::ColourFamily);
        material.note = self.words(Field::Note);
        material.colour_words = self.several(Field::ColourWords, ',').collect();
        material.colour = self.colour();
        material.thickness = self
            .length(Field::Thickness)
            .map(|length| Sourced::Plain(Measured(length)));
        material.profile = self.profile();
        material.sheets = self.sheets();
        let sticks: Vec<String> = self.several(Field::Stick, ';').collect();
        material.sticks = sticks
            .iter()
            .filter_map(|text| self.one_length(Field::Stick, text))
            .map(Measured)
            .collect();
        material.packs = self.packs();
    }

    fn words(&mut self, field: Field) -> Option<String> {
        let value = self.value(field)?;
        let words: Vec<&str> = value.text.split_whitespace().collect();
        Some(words.join(" ")).filter(|words| !words.is_empty())
    }

    /// The parts of a cell that holds several.
    fn several(&mut self, field: Field, parted_by: char) -> impl Iterator<Item = String> + use<> {
        let text = self
            .value(field)
            .map(|value| value.text.into_owned())
            .unwrap_or_default();
        let parts: Vec<String> = text
            .split(parted_by)
            .map(|part| part.trim().to_owned())
            .filter(|part| !part.is_empty())
            .collect();
        parts.into_iter()
    }

    fn colour(&mut self) -> Option<String> {
        let value = self.value(Field::Colour)?;
        let digits = value.text.strip_prefix('#').unwrap_or_default();
        let six = digits.len() == HEX && digits.bytes().all(|b| b.is_ascii_hexdigit());
        if !six {
            self.reject(&value, Reason::Colour);
            return None;
        }
        Some(value.text.to_lowercase())
    }

    fn profile(&mut self) -> Option<Profile> {
        let face = self.length(Field::Face);
        let height = self.length(Field::Height);
        let lip = self.length_or_none(Field::Lip);
        let rabbet_depth = self.length_or_none(Field::RabbetDepth);
        let pair = self.both((Field::Face, face), (Field::Height, height));
        let (face, height) = pair?;
        Some(Profile {
            face: Measured(face),
            height: Measured(height),
            lip: Measured(lip.unwrap_or_default()),
            rabbet_depth: Measured(rabbet_depth.unwrap_or_default()),
            outline: Vec::new(),
        })
    }

    fn sheets(&mut self) -> Vec<Pair> {
        let width = self.length(Field::SheetWidth);
        let height = self.length(Field::SheetHeight);
        let pair = self.both((Field::SheetWidth, width), (Field::SheetHeight, height));
        let mut sheets: Vec<Pair> = pair
            .map(|(width, height)| Pair(Size::new(width, height)))
            .into_iter()
            .collect();
        let written: Vec<String> = self.several(Field::Sheet, ';').collect();
        for text in written {
            let size = read_size(&text, self.list.mapping.unit());
            match size.map_err(|error| sentence(&error)) {
                Ok(size) if size.width > Length::ZERO && size.height > Length::ZERO => {
                    sheets.push(Pair(size));
                }
                Ok(_) => self.refuse_part(Field::Sheet, &text, Reason::NoDimension),
                Err(sentence) => self.refuse_part(Field::Sheet, &text, Reason::Length { sentence }),
            }
        }
        sheets
    }

    fn packs(&mut self) -> Vec<u32> {
        let parts: Vec<String> = self.several(Field::Packs, ';').collect();
        let column = self.column_of(Field::Packs);
        let read = |text: String| {
            let value = Value {
                text: text.into(),
                number: false,
                column: column.clone(),
            };
            self.count(&value)
        };
        parts.into_iter().filter_map(read).collect()
    }

    /// Both halves of a pair; one alone is refused, unless the other was refused by itself.
    fn both(
        &mut self,
        (one, first): (Field, Option<Length>),
        (other, second): (Field, Option<Length>),
    ) -> Option<(Length, Length)> {
        let lacks = match (first, second) {
            (Some(first), Some(second)) => return Some((first, second)),
            (None, None) => return None,
            (Some(_), None) => other,
            (None, Some(_)) => one,
        };
        let place = self.list.columns.fields.get(&lacks).copied();
        if place.is_none_or(|place| self.is_blank(place)) {
            self.refuse(
                self.column_of(lacks),
                "",
                Reason::HalfPair {
                    lacks: lacks.word(),
                },
            );
        }
        None
    }

    /// A length above nothing.
    fn length(&mut self, field: Field) -> Option<Length> {
        let length = self.length_or_none(field)?;
        if length <= Length::ZERO {
            let text = self
                .value(field)
                .map(|value| value.text.into_owned())
                .unwrap_or_default();
            self.refuse_part(field, &text, Reason::NoDimension);
            return None;
        }
        Some(length)
    }

    /// A length that may be nothing.
    fn length_or_none(&mut self, field: Field) -> Option<Length> {
        let value = self.value(field)?;
        let text = in_habit(&value, self.list.mapping.numbers);
        match read(&text, self.list.mapping.unit()) {
            Ok(length) if length < Length::ZERO => {
                self.reject(&value, Reason::NoDimension);
                None
            }
            Ok(length) => Some(length),
            Err(sentence) => {
                self.reject(&value, Reason::Length { sentence });
                None
            }
        }
    }

    /// One of several lengths of a cell.
    fn one_length(&mut self, field: Field, text: &str) -> Option<Length> {
        let value = Value {
            text: text.into(),
            number: false,
            column: String::new(),
        };
        let reason = match read(
            &in_habit(&value, self.list.mapping.numbers),
            self.list.mapping.unit(),
        ) {
            Ok(length) if length > Length::ZERO => return Some(length),
            Ok(_) => Reason::NoDimension,
            Err(sentence) => Reason::Length { sentence },
        };
        self.refuse_part(field, text, reason);
        None
    }

    fn refuse_part(&mut self, field: Field, text: &str, reason: Reason) {
        self.refuse(self.column_of(field), text, reason);
    }

    fn column_of(&self, field: Field) -> String {
        let place = self.list.columns.fields.get(&field);
        place.map_or_else(
            || field.word().to_owned(),
            |place| self.list.columns.name(*place),
        )
    }
}

/// Digits of a colour.
const HEX: usize = 6; // geometry: of `#rrggbb`

fn read(text: &str, bare: Unit) -> Result<Length, String> {
    read_length(text, bare).map_err(|error| sentence(&error))
}

/// A plain number in the list's own habit as one with a point; anything else as it stands.
fn in_habit(value: &Value<'_>, numbers: Numbers) -> String {
    let plain = if value.number {
        None
    } else {
        numbers.read(&value.text).ok()
    };
    plain
        .as_ref()
        .map_or_else(|| value.text.clone().into_owned(), Plain::pointed)
}

fn sentence(error: &ReadError) -> String {
    match error.hint() {
        hint if hint.is_empty() => error.to_string(),
        hint => format!("{error}; {hint}"),
    }
}
