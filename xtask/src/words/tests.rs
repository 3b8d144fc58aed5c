use super::*;

fn check(path: &str, text: &str, expected: &[&str]) {
    let found = breaches(&Tree::of(&[(path, text)]));
    let found: Vec<String> = found.iter().map(ToString::to_string).collect();
    assert_eq!(found, expected, "{path}: {text}");
}

/// A leftover of the list, by the start of its text.
fn leftover(start: &str) -> &'static str {
    LEFTOVERS
        .iter()
        .map(|leftover| leftover.text)
        .find(|text| text.starts_with(start))
        .unwrap()
}

#[test]
fn every_leftover_is_found_in_every_kind_of_file() {
    for path in ["notes.md", "crates/a/src/tests.rs", "check"] {
        for entry in &LEFTOVERS {
            // Behind a comment sign, so that the text stays readable as Rust.
            let text = format!("first line\n// see {} here\n", entry.text);
            let text = text.replace("first line", "");
            let expected = format!("{path}:2: “{}” stands here; {}", entry.text, entry.instead);
            check(path, &text, &[&expected]);
        }
    }
}

#[test]
fn innocent_texts_with_the_same_letters_pass() {
    let open = leftover("TO");
    let place = leftover("/wo");
    check(
        "notes.md",
        &format!("MAS{open}N and {}", open.to_lowercase()),
        &[],
    );
    check("notes.md", &format!("crates{place}src, ..{place}x"), &[]);
    check("notes.md", &format!("my{}()", leftover("db")), &[]);
    check("Cargo.lock", leftover("crates"), &[]);
    check("crates/web/vendor/a.js", &format!("// {open}"), &[]);
    check("crates/web/assets/a.min.js", &format!("// {open}"), &[]);
}

#[test]
fn empty_names_of_files_folders_and_modules_are_found() {
    for path in [
        "crates/a/src/util.rs",
        "crates/a/src/date_utils.rs",
        "crates/helpers/x.md",
    ] {
        assert_eq!(breaches(&Tree::of(&[(path, "")])).len(), 1, "{path}");
    }
    for path in [
        "crates/a/src/utility_bench.rs",
        "crates/a/src/commons.md/../uncommon.rs",
    ] {
        let expected = usize::from(path.contains("commons"));
        assert_eq!(breaches(&Tree::of(&[(path, "")])).len(), expected, "{path}");
    }
    check(
        "crates/a/src/lib.rs",
        "mod rails;\nmod inner { mod stock_manager {} }",
        &[
            "crates/a/src/lib.rs:2: the module `stock_manager` says nothing; name it after its subject",
        ],
    );
}

#[test]
fn unsaid_words_are_found_in_what_the_program_says() {
    let says = ["crates/a/src/lib.rs:2: says “invalid”; say what is so and how to put it right"];
    check(
        "crates/a/src/lib.rs",
        "\nconst A: &str = \"an Invalid size\";",
        &says,
    );
    check(
        "crates/a/src/lib.rs",
        "\n#[error(\"size\\ninvalid\")] struct A;",
        &says,
    );
    check(
        "crates/a/src/lib.rs",
        "\nfn a() { html! { p { r#\"invalid\"# } } }",
        &says,
    );
    check(
        "crates/a/src/lib.rs",
        "\nconst A: &str = \"invalid\"; // not said:",
        &says,
    );
    let says = ["crates/a/text/a.ftl:1: says “please”; say what is so and how to put it right"];
    check("crates/a/text/a.ftl", "size = Please type a size", &says);
    let says = ["crates/rabbet/src/main.rs:1: says “oops”; say what is so and how to put it right"];
    check(
        "crates/rabbet/src/main.rs",
        "/// Oops, help.\nstruct Help;",
        &says,
    );
}

#[test]
fn unsaid_words_elsewhere_pass() {
    for text in [
        "/// An invalid size is refused.\nfn a() {}",
        "//! Nothing illegal.\nfn a() {}",
        "fn invalid() {} // sorry",
        "fn a() { b(\"invalid type\") } // not said: how the reader starts a message",
        "const A: &str = \"pleased, aria-invalid, invalidate\";",
        "#[cfg(test)] mod tests { const A: &str = \"oops\"; }",
    ] {
        check("crates/a/src/lib.rs", text, &[]);
    }
    check("crates/a/src/tests.rs", "const A: &str = \"oops\";", &[]);
    check("xtask/src/lib.rs", "const A: &str = \"oops\";", &[]);
}

#[test]
fn source_that_is_no_rust_is_named() {
    let found = breaches(&Tree::of(&[("crates/a/src/lib.rs", "fn a( {")]));
    assert!(
        found[0]
            .to_string()
            .starts_with("crates/a/src/lib.rs: could not be read as Rust")
    );
}
