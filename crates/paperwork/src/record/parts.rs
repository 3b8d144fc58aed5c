//! A record as the texts of codes, and back.

use super::RecordFault;

/// What every part begins with; the number is that of the form.
const BEGINS: &str = "RABBET1";
/// The most letters of the record in one code: with what stands before them they fill a code of version 20 with medium
/// correction (970 alphanumeric letters, ISO/IEC 18004, number from memory and checked by the code's maker).
const MOST: usize = 940;
/// The most parts of one record.
const MOST_PARTS: usize = 9999;

/// The texts of these bytes, as even as can be.
pub(super) fn split(bytes: &[u8], name: &str) -> Vec<String> {
    let text = base45::encode(bytes);
    let count = text.len().div_ceil(MOST).max(1);
    let each = text.len().div_ceil(count);
    let letters: Vec<char> = text.chars().collect();
    (1..)
        .zip(letters.chunks(each))
        .map(|(part, letters)| {
            let letters: String = letters.iter().collect();
            format!("{BEGINS}/{part}/{count}/{name}:{letters}")
        })
        .collect()
}

/// The bytes of these texts, one a line, in any order; the same part may stand there twice.
pub(super) fn joined(text: &str) -> Result<Vec<u8>, RecordFault> {
    let mut found: Vec<Option<&str>> = Vec::new();
    let mut of: Option<&str> = None;
    let lines = text.lines().enumerate();
    for (line, written) in lines.filter(|(_, line)| !line.trim().is_empty()) {
        // Scanners differ in what they leave at a line's end; a space may be the record's own last letter.
        let written = written.trim_start().trim_end_matches(['\r', '\n']);
        let Some(part) = Part::of(written, line + 1)? else {
            continue;
        };
        match of {
            Some(name) if name != part.name => {
                return Err(RecordFault::Mixed(name.to_owned(), part.name.to_owned()));
            }
            _ => of = Some(part.name),
        }
        if found.is_empty() {
            found = vec![None; part.count];
        }
        let fault = |why| RecordFault::Part {
            part: line + 1,
            why,
        };
        if found.len() != part.count {
            return Err(fault(
                "it says another number of parts than those before it",
            ));
        }
        match &mut found[part.index] {
            Some(other) if *other != part.letters => {
                return Err(fault("it differs from the same part before it"));
            }
            place => *place = Some(part.letters),
        }
    }
    let count = found.len();
    let mut text = String::new();
    for (index, letters) in found.into_iter().enumerate() {
        let missing = index + 1;
        text.push_str(letters.ok_or(RecordFault::Missing { missing, count })?);
    }
    if text.is_empty() {
        return Err(RecordFault::None);
    }
    base45::decode(&text).map_err(|_| RecordFault::Packed)
}

/// One part as it was read.
struct Part<'a> {
    index: usize,
    count: usize,
    name: &'a str,
    letters: &'a str,
}

impl<'a> Part<'a> {
    /// A line of text; nothing where it is no part of any record.
    fn of(text: &'a str, line: usize) -> Result<Option<Self>, RecordFault> {
        let Some(begin) = text.find("RABBET") else {
            return Ok(None);
        };
        let fault = |why| RecordFault::Part { part: line, why };
        let (head, letters) = text[begin..]
            .split_once(':')
            .ok_or_else(|| fault("nothing stands after its heading"))?;
        let mut fields = head.split('/');
        let form = fields.next().unwrap_or_default();
        if form != BEGINS {
            return Err(RecordFault::Newer(form.to_owned()));
        }
        let number = |field: Option<&str>| field.and_then(|field| field.parse::<usize>().ok());
        let (part, count) = (number(fields.next()), number(fields.next()));
        let (Some(part), Some(count), Some(name), None) =
            (part, count, fields.next(), fields.next())
        else {
            return Err(fault("its heading is not RABBET1, part, parts and name"));
        };
        if !(1..=MOST_PARTS).contains(&count) || !(1..=count).contains(&part) {
            return Err(fault("its number lies outside the number of parts"));
        }
        Ok(Some(Self {
            index: part - 1,
            count,
            name,
            letters,
        }))
    }
}
