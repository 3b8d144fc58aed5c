use std::env;
use std::process;

use super::*;

fn settings(text: &str) -> Vec<(PathBuf, String)> {
    vec![(PathBuf::from("SETTINGS.md"), text.to_owned())]
}

fn check(expected: &str, files: &[(&str, &str)], breaches_expected: &[&str]) {
    let found = breaches(&settings(expected), &Tree::of(files));
    let found: Vec<String> = found.iter().map(ToString::to_string).collect();
    assert_eq!(found, breaches_expected);
}

#[test]
fn a_document_as_the_code_writes_it_passes() {
    check("a\nb\n", &[("SETTINGS.md", "a\nb\n")], &[]);
}

#[test]
fn a_document_that_drifted_is_named_with_its_line() {
    let expected = ["SETTINGS.md:2: is not what the code would write; run cargo xtask generated"];
    check("a\nb\n", &[("SETTINGS.md", "a\nc\n")], &expected);
    check(
        "a\nb\n",
        &[("SETTINGS.md", "a\nb")],
        &["SETTINGS.md:3: is not what the code would write; \
        run cargo xtask generated"],
    );
}

#[test]
fn a_missing_document_is_named() {
    check(
        "a",
        &[],
        &["SETTINGS.md: is missing; run cargo xtask generated"],
    );
}

#[test]
fn writing_changes_only_what_differs() {
    let root = env::temp_dir().join(format!("xtask-generated-{}", process::id()));
    fs::create_dir_all(&root).unwrap();
    let mut said = Vec::new();
    write_files(&root, &settings("one\n"), &mut said).unwrap();
    write_files(&root, &settings("one\n"), &mut said).unwrap();
    assert_eq!(
        fs::read_to_string(root.join("SETTINGS.md")).unwrap(),
        "one\n"
    );
    write_files(&root, &settings("two\n"), &mut said).unwrap();
    assert_eq!(
        fs::read_to_string(root.join("SETTINGS.md")).unwrap(),
        "two\n"
    );
    assert_eq!(
        String::from_utf8(said).unwrap(),
        "wrote SETTINGS.md\nwrote SETTINGS.md\n"
    );
    fs::remove_dir_all(&root).unwrap();
}

#[test]
fn a_folder_that_is_not_there_is_named() {
    let root = env::temp_dir().join(format!("xtask-nowhere-{}", process::id()));
    let trouble = write_files(&root, &settings("one\n"), &mut Vec::new()).unwrap_err();
    assert!(trouble.to_string().contains("SETTINGS.md"), "{trouble}");
}
