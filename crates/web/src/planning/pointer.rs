//! Where in a document a fault lies, as a JSON pointer (RFC 6901).

use cutting::document::Refusal;
use serde_json::Value;
use sizing::Sizes;
use trade::Job;

use crate::problem::Entry;

/// The job a fault names, below `/jobs`; empty where it names none that can be told apart.
pub(super) fn of_job(jobs: &[(Job, Sizes)], name: Option<&str>) -> String {
    let Some(name) = name else {
        return String::new();
    };
    let mut named = jobs.iter().enumerate().filter(|(place, (job, _))| {
        let order = job.identity.order.as_deref();
        let title = job.art.first().and_then(|art| art.title.as_deref());
        match (order, title) {
            (Some(order), Some(title)) if format!("{order} {title}") == name => true,
            (Some(own), _) | (None, Some(own)) => own == name,
            (None, None) => format!("job {}", place + 1) == name,
        }
    });
    match (named.next(), named.next()) {
        (Some((place, _)), None) => format!("/jobs/{place}"),
        _ => String::new(),
    }
}

/// The instance at a place of a text; empty where the text is one.
pub(super) fn of_instance(place: usize, text: &str) -> String {
    let whole = whole(text);
    if whole.is_array() {
        format!("/{place}")
    } else if whole.get("instances").is_some() {
        format!("/instances/{place}")
    } else {
        String::new()
    }
}

/// A refusal of the cutting room with its place.
pub(super) fn entry_of(refusal: &Refusal, text: &str) -> Entry {
    let (line, column) = refusal.reason.place().unzip();
    let outer = refusal
        .of
        .as_deref()
        .and_then(|of| instance_called(of, text))
        .map(|place| of_instance(place, text))
        .unwrap_or_default();
    Entry {
        pointer: format!("{outer}{}", steps(&refusal.field)),
        code: "cut.instance".to_owned(),
        detail: refusal.to_string(),
        line,
        column,
        ..Entry::default()
    }
}

/// Which instance the cutting room calls so: by its name, else by its number.
fn instance_called(of: &str, text: &str) -> Option<usize> {
    let whole = whole(text);
    let list = match &whole {
        Value::Array(list) => list.as_slice(),
        Value::Object(object) => match object.get("instances") {
            Some(list) => list.as_array()?.as_slice(),
            None => return Some(0),
        },
        _ => return None,
    };
    list.iter().enumerate().position(|(place, one)| {
        let called = match one.get("name").and_then(Value::as_str) {
            Some(name) => format!("problem {name:?}"),
            None => format!("problem {}", place + 1),
        };
        called == of
    })
}

fn whole(text: &str) -> Value {
    let text = text.trim_start_matches('\u{feff}');
    serde_json::from_str(text).unwrap_or_default()
}

/// `/pieces/3/w` of `pieces[3].w`.
fn steps(field: &str) -> String {
    let names = field.split(['.', '[', ']']);
    names
        .filter(|name| !name.is_empty())
        .fold(String::new(), |steps, name| steps + "/" + name)
}

#[cfg(test)]
mod tests {
    use super::{of_instance, steps};

    #[test]
    fn a_field_becomes_a_pointer() {
        for (field, pointer) in [
            ("", ""),
            ("kerf", "/kerf"),
            ("pieces[3].w", "/pieces/3/w"),
            ("stock[0].flaws[1]", "/stock/0/flaws/1"),
        ] {
            assert_eq!(steps(field), pointer);
        }
    }

    #[test]
    fn an_instance_is_found_in_each_form_of_a_text() {
        for (text, pointer) in [
            ("{}", ""),
            ("[{}, {}, {}]", "/2"),
            ("\u{feff}{\"instances\": []}", "/instances/2"),
        ] {
            assert_eq!(of_instance(2, text), pointer, "{text}");
        }
    }
}
