//! Canonical JSON: one record is always the same bytes.

use std::fmt::Write as _;

use serde_json::Value;

/// The bytes of a value: names in order, no space between anything, UTF-8.
///
/// Source: RFC 8785 for values whose numbers are whole and whose names are ASCII.
pub(super) fn bytes(value: &Value) -> Vec<u8> {
    let mut out = String::new();
    put(value, &mut out);
    out.into_bytes()
}

fn put(value: &Value, out: &mut String) {
    match value {
        Value::Array(values) => {
            out.push('[');
            for (index, value) in values.iter().enumerate() {
                if index > 0 {
                    out.push(',');
                }
                put(value, out);
            }
            out.push(']');
        }
        Value::Object(fields) => {
            let mut names: Vec<&String> = fields.keys().collect();
            names.sort();
            out.push('{');
            for (index, name) in names.into_iter().enumerate() {
                if index > 0 {
                    out.push(',');
                }
                // A string's own form in this library is the one of RFC 8785.
                write!(out, "{}:", Value::from(name.as_str())).expect("writing to a string");
                put(&fields[name], out);
            }
            out.push('}');
        }
        plain => write!(out, "{plain}").expect("writing to a string"),
    }
}
