//! Every setting is read by some rule, and claims no more than was seen of its source.

use std::fs;
use std::path::{Path, PathBuf};

use working::{Seen, Status};

use super::KEYS;
use crate::settings::citation;

/// The program's own sources: every crate's `src`, without tests and without the definitions themselves.
fn sources(folder: &Path, text: &mut String) {
    let entries =
        fs::read_dir(folder).unwrap_or_else(|fault| panic!("{}: {fault}", folder.display()));
    for entry in entries {
        let path: PathBuf = entry.expect("an entry").path();
        let name = path
            .file_name()
            .unwrap_or_default()
            .to_string_lossy()
            .into_owned();
        let is_code = path.extension().is_some_and(|end| end == "rs");
        if name.starts_with("tests") || name.starts_with("keys") {
            continue;
        }
        if path.is_dir() {
            sources(&path, text);
        } else if is_code {
            text.push_str(&fs::read_to_string(&path).expect("a source reads"));
        }
    }
}

#[test]
fn every_setting_is_read_somewhere() {
    let crates = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let mut text = String::new();
    for entry in fs::read_dir(crates).expect("the crates are there") {
        let source = entry.expect("an entry").path().join("src");
        if source.is_dir() {
            sources(&source, &mut text);
        }
    }
    let is_read = |name: &str| {
        text.match_indices(&format!("Key::{name}"))
            .any(|(at, found)| {
                let after = text[at + found.len()..].chars().next();
                !after.is_some_and(|next| next.is_alphanumeric() || next == '_')
            })
    };
    assert!(!is_read("NoSuchSetting"));
    let unread: Vec<&str> = KEYS
        .iter()
        .filter(|key| !is_read(&format!("{key:?}")))
        .map(|key| key.id())
        .collect();
    assert_eq!(unread, [""; 0], "settings that nothing reads");
}

#[test]
fn nothing_is_published_that_was_only_remembered() {
    for key in KEYS {
        let row = key.definition();
        let remembered = citation(row.source).is_some_and(|found| found.seen == Seen::FromMemory);
        let says_so = row.words.contains("(from memory)");
        let published = row.status == Status::Published;
        assert!(!published || !(remembered || says_so), "{}", row.id);
    }
}
