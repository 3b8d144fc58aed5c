use super::*;

const SOURCE: &str = "/// A mat.\n#[derive(Clone)]\npub struct Mat;\npub enum MatFillet {}\n\
    pub(crate) struct Inner;\nstruct Own;\nmod deep { pub struct Box4; }\n\
    #[cfg(test)] mod tests { pub struct Fake; }";

fn check(glossary: &str, expected: &[&str]) {
    let tree = Tree::of(&[
        ("GLOSSARY.md", glossary),
        ("crates/trade/src/mat.rs", SOURCE),
    ]);
    let found: Vec<String> = breaches(&tree).iter().map(ToString::to_string).collect();
    assert_eq!(found, expected);
}

#[test]
fn types_named_by_word_or_in_backticks_pass() {
    check(
        "| Word | What |\n|---|---|\n| **mat** (mount) | board |\n| slip / mat fillet | strip |\n\
         | allowance | four widths, `Box4` |\n",
        &[],
    );
}

#[test]
fn types_without_a_row_are_named() {
    check(
        "Mat and `MatFillet` in running text do not count.\n| mats | board |\n| box 4 | widths |\n",
        &[
            "crates/trade/src/mat.rs:3: `Mat` has no row in GLOSSARY.md; add “mat”",
            "crates/trade/src/mat.rs:4: `MatFillet` has no row in GLOSSARY.md; add “mat fillet”",
        ],
    );
}

#[test]
fn a_missing_glossary_is_named_with_all_types() {
    let tree = Tree::of(&[("crates/trade/src/mat.rs", SOURCE)]);
    assert_eq!(breaches(&tree).len(), 4);
}

#[test]
fn types_of_other_rooms_and_of_tests_need_no_row() {
    for path in ["crates/sizing/src/mat.rs", "crates/trade/src/mat/tests.rs"] {
        let tree = Tree::of(&[("GLOSSARY.md", ""), (path, SOURCE)]);
        assert!(breaches(&tree).is_empty(), "{path}");
    }
}
