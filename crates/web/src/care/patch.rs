//! A change written into a document as it stands: comments, order and spelling of the rest stay.

use conservation::advice::Change;
use toml_edit::{DocumentMut, Item, Table, Value};
use trade::Job;

/// The document with a change in it, in the form it came in.
///
/// Shape:  TOML keeps everything that the change does not touch, comments too; JSON is written anew. Where
///         the change can't be set into the text so that it reads back as the changed job, the whole
///         document is written anew.
pub fn document_with(text: &str, job: &Job, change: &Change) -> String {
    let changed = change.applied(job);
    if text
        .trim_start_matches('\u{feff}')
        .trim_start()
        .starts_with('{')
    {
        return format!("{:#}\n", changed.to_json());
    }
    patched(text, job, &changed).unwrap_or_else(|| changed.to_toml())
}

fn patched(text: &str, job: &Job, changed: &Job) -> Option<String> {
    let mut document: DocumentMut = text.trim_start_matches('\u{feff}').parse().ok()?;
    let before: DocumentMut = job.to_toml().parse().ok()?;
    let after: DocumentMut = changed.to_toml().parse().ok()?;
    set_table(document.as_table_mut(), before.as_table(), after.as_table())?;
    let text = document.to_string();
    let read = Job::read(text.as_bytes()).ok()?;
    (read == *changed).then_some(text)
}

/// Sets into `into` whatever differs between `before` and `after`.
fn set_table(into: &mut Table, before: &Table, after: &Table) -> Option<()> {
    for (key, old) in before {
        if old.to_string() != after.get(key).map(ToString::to_string).unwrap_or_default()
            && !after.contains_key(key)
        {
            into.remove(key);
        }
    }
    for (key, new) in after {
        let old = before.get(key);
        if old.is_some_and(|old| old.to_string() == new.to_string()) {
            continue;
        }
        set_item(into, key, old, new)?;
    }
    Some(())
}

fn set_item(into: &mut Table, key: &str, old: Option<&Item>, new: &Item) -> Option<()> {
    match (into.get_mut(key), old, new) {
        (Some(Item::Table(own)), Some(Item::Table(old)), Item::Table(new)) => {
            set_table(own, old, new)
        }
        (
            Some(Item::ArrayOfTables(own)),
            Some(Item::ArrayOfTables(old)),
            Item::ArrayOfTables(new),
        ) if own.len() == new.len() && old.len() == new.len() => {
            for ((own, old), new) in own.iter_mut().zip(old).zip(new) {
                set_table(own, old, new)?;
            }
            Some(())
        }
        (Some(Item::Value(own)), _, Item::Value(new)) => {
            replace(own, new);
            Some(())
        }
        (None, _, Item::Table(new)) => {
            let mut table = new.clone();
            table.set_position(None);
            table.decor_mut().set_prefix("\n");
            into.insert(key, Item::Table(table));
            Some(())
        }
        (None, _, Item::Value(new)) => {
            into.insert(key, Item::Value(new.clone()));
            Some(())
        }
        _ => None,
    }
}

/// Another value in the same place, the remark behind it kept.
fn replace(own: &mut Value, new: &Value) {
    let decor = own.decor().clone();
    *own = new.clone();
    *own.decor_mut() = decor;
}

#[cfg(test)]
mod tests {
    use conservation::advice::Change;
    use trade::{Hanger, Job};

    use super::document_with;

    const PIECE: &str = "# For the hall.\nrabbet = 1\nunits = \"in\"\n\n[[art]]\ntitle = \"Ferry\" # as signed\n\
        width = \"16\"\nheight = \"20\"\n\n[[frame]]\nmoulding = \"oak-square-1\"\n\n[[glazing]]\n\
        sheet = \"glass-clear-2.5\" # what the shop had\n";

    fn job(text: &str) -> Job {
        Job::read(text.as_bytes()).expect("it reads")
    }

    #[test]
    fn a_changed_line_leaves_all_others_as_they_are() {
        let sheet = "acrylic-uv-3".to_owned();
        let change = Change::SetGlazing { index: 0, sheet };
        let text = document_with(PIECE, &job(PIECE), &change);
        assert_eq!(text, PIECE.replace("glass-clear-2.5", "acrylic-uv-3"));
    }

    #[test]
    fn a_new_table_stands_at_the_end() {
        let change = Change::SetHanger(Hanger::Rings);
        let text = document_with(PIECE, &job(PIECE), &change);
        assert!(text.starts_with(PIECE.trim_end()), "{text}");
        assert_eq!(job(&text), change.applied(&job(PIECE)));
    }

    #[test]
    fn json_stays_json() {
        let json = job(PIECE).to_json().to_string();
        let change = Change::SetHanger(Hanger::Rings);
        let text = document_with(&json, &job(PIECE), &change);
        assert!(text.starts_with('{'), "{text}");
        assert_eq!(job(&text), change.applied(&job(PIECE)));
    }
}
