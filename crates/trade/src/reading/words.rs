//! A reader's words without the words a framer should not have to read.

use super::nearest;

/// How many choices are listed where none is near.
const LISTED: usize = 24;

/// What a reader says, in our words; `key` is the field it stopped at, where it is known.
///
/// Shape:  names what was found and what to write instead; never a type of this program.
pub fn in_words(message: &str, key: Option<&str>) -> String {
    let message = message.trim().replace('\n', "; ");
    if let Some(rest) = message.strip_prefix("unknown field ") {
        return unknown("field", rest);
    }
    if let Some(rest) = message.strip_prefix("unknown variant ") {
        return unknown("choice", rest);
    }
    if let Some(rest) = message.strip_prefix("missing field ") {
        return format!("it lacks the field {rest}; write it");
    }
    if message == "duplicate key" || message.starts_with("duplicate field") {
        let named = message.split('`').nth(1).or(key).unwrap_or("a field");
        return format!("{named} is written twice in this entry; keep one");
    }
    for (said, ours) in OF_FORM {
        if message.starts_with(said) {
            return (*ours).to_owned();
        }
    }
    // not said: what a reader says, put into other words
    for prefix in ["invalid type: ", "invalid value: ", "invalid length "] {
        let rest = message.strip_prefix(prefix);
        if let Some((found, wanted)) = rest.and_then(|rest| rest.split_once(", expected ")) {
            let found = if prefix.ends_with("length ") {
                format!("a list of {found}")
            } else {
                thing(found)
            };
            let field = key.map(|key| format!("{key}: ")).unwrap_or_default();
            return format!("{field}found {found}; {}", cure(&found, wanted, key));
        }
    }
    message.replace("invalid ", "unreadable ") // not said: what a reader says, put into other words
}

/// Faults of TOML itself.
const OF_FORM: &[(&str, &str)] = &[
    (
        "string values must be quoted",
        "a text, and a length with a fraction or a unit, stands in quotes: write \"22 7/8\"",
    ),
    (
        "key with no value",
        "an equals sign belongs between a field and its value: write length = \"22 7/8\"",
    ),
    (
        "unclosed array table",
        "close the brackets: write [[piece]], with two on either side",
    ),
    (
        "invalid basic string", // not said: what a reader says, put into other words
        "a quote is not closed on this line; close it with \"",
    ),
];

/// A word that is not known, and the one that was likely meant, or all there are.
fn unknown(what: &str, rest: &str) -> String {
    let mut quoted = rest.split('`').skip(1).step_by(2);
    let typed = quoted.next().unwrap_or_default();
    let known: Vec<&str> = quoted.collect();
    let cure = match nearest(typed, known.iter().copied()) {
        Some(near) => format!("did you mean `{near}`?"),
        None if known.is_empty() || known.len() > LISTED => "leave it out".to_owned(),
        None => {
            let known: Vec<String> = known.iter().map(|word| format!("`{word}`")).collect();
            format!("there are {}", known.join(", "))
        }
    };
    format!("there is no {what} `{typed}`; {cure}")
}

/// What was found, as people call it.
fn thing(found: &str) -> String {
    let found = found
        .trim_end_matches(" as i128")
        .trim_end_matches(" as u128");
    let quoted = |prefix: &str| {
        let rest = found.strip_prefix(prefix)?;
        Some(rest.trim_matches('`').to_owned())
    };
    quoted("string ")
        .or_else(|| quoted("integer "))
        .or_else(|| quoted("floating point "))
        .or_else(|| quoted("boolean "))
        .unwrap_or_else(|| match found {
            "sequence" => "a list".to_owned(),
            "map" => "a table".to_owned(),
            "null" | "unit value" => "nothing".to_owned(),
            other => other.to_owned(),
        })
}

/// What to write instead.
fn cure(found: &str, wanted: &str, key: Option<&str>) -> String {
    let whole = ["i8", "i16", "i32", "i64", "i128", "isize"];
    let counts = ["u8", "u16", "u32", "u64", "u128", "usize"];
    let negative = found.starts_with('-');
    let of_key = match key {
        Some("cost" | "price") => Some("write the amount and currency in quotes, \"6.40 USD\""),
        Some("size" | "window") => Some("write width x height in quotes, \"22 x 30\""),
        Some("due" | "date") => Some("write a day, such as 2026-12-04"),
        _ => None,
    };
    match wanted {
        _ if counts.contains(&wanted) && negative => "write a whole number, 0 or more".to_owned(),
        _ if counts.contains(&wanted) || whole.contains(&wanted) => {
            let digits = found.trim_start_matches('-');
            let large = digits.len() > DIGITS && digits.bytes().all(|b| b.is_ascii_digit());
            let smaller = if large { "smaller " } else { "" };
            format!("write a {smaller}whole number, such as 2")
        }
        "a boolean" => "write true or false, without quotes".to_owned(),
        "a string" | "a borrowed string" => of_key.map_or_else(
            || match found {
                "a list" | "a table" => "write one text in quotes".to_owned(),
                found => format!("write it in quotes, \"{found}\""),
            },
            str::to_owned,
        ),
        "a sequence" if found != "a list" => {
            let name = key.unwrap_or("piece");
            format!("write [[{name}]], with two brackets, on a line of its own")
        }
        "a map" | "a table" => "write a table, its fields below its name in brackets".to_owned(),
        _ if wanted.starts_with("struct ") => {
            "write a table, its fields below its name in brackets".to_owned()
        }
        _ if wanted.starts_with("write ") => wanted.to_owned(),
        _ => format!("expected {}", wanted.replace("a sequence", "a list")),
    }
}

/// Digits any whole number of a document can have.
const DIGITS: usize = 9;
