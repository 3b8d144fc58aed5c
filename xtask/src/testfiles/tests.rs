use super::*;

fn check(roots: &[&str], files: &[(&str, &str)], expected: &[&str]) {
    let workspace = Workspace::of(&[("crates/a", &[], roots)]);
    let found = breaches(&workspace, &Tree::of(files));
    let found: Vec<String> = found.iter().map(ToString::to_string).collect();
    assert_eq!(found, expected);
}

#[test]
fn files_behind_a_mod_line_are_reached() {
    check(
        &["src/lib.rs", "tests/it/main.rs", "build.rs"],
        &[
            (
                "crates/a/src/lib.rs",
                "pub mod rails;\nmod old;\nmod inner { mod leg; }",
            ),
            ("crates/a/src/rails.rs", "#[cfg(test)]\nmod tests;"),
            ("crates/a/src/rails/tests.rs", "#[test] fn a() {}"),
            ("crates/a/src/old/mod.rs", "mod r#type;"),
            ("crates/a/src/old/type.rs", ""),
            ("crates/a/src/inner/leg.rs", ""),
            (
                "crates/a/tests/it/main.rs",
                "mod ticket;\n#[path = \"../shared.rs\"]\npub(crate) mod s;",
            ),
            ("crates/a/tests/it/ticket.rs", ""),
            ("crates/a/tests/shared.rs", ""),
            ("crates/a/build.rs", ""),
            ("fuzz/targets/parse.rs", ""),
        ],
        &[],
    );
}

#[test]
fn files_behind_no_mod_line_are_named() {
    let sentence = "no `mod` line leads here, so it is never compiled; add one, or remove the file";
    let expected = [
        format!("crates/a/src/rails/tests.rs: {sentence}"),
        format!("crates/a/tests/it/ticket.rs: {sentence}"),
        format!("stray.rs: {sentence}"),
    ];
    check(
        &["src/lib.rs", "tests/it/main.rs"],
        &[
            ("crates/a/src/lib.rs", "mod rails; // mod tests;"),
            (
                "crates/a/src/rails.rs",
                "/* mod tests; */ const A: &str = \"mod tests;\";",
            ),
            ("crates/a/src/rails/tests.rs", ""),
            ("crates/a/tests/it/main.rs", ""),
            ("crates/a/tests/it/ticket.rs", ""),
            ("stray.rs", ""),
        ],
        &expected.each_ref().map(String::as_str),
    );
}

#[test]
fn golden_cases_come_in_pairs() {
    check(
        &[],
        &[
            ("suite/mat/ok/plain.job.toml", ""),
            ("suite/mat/ok/plain.ref.sizes", ""),
            ("suite/mat/ok/plain.ref.svg", ""),
            ("suite/mat/ok/README.md", ""),
            ("suite/mat/ex/alone.job.toml", ""),
            ("suite/mat/ex/orphan.ref.message", ""),
            ("suite/mat/other.txt", ""),
        ],
        &[
            "suite/mat/ex/alone.job.toml: has no .ref. file beside it, so nothing is compared",
            "suite/mat/ex/orphan.ref.message: has no input beside it, so nothing is compared",
        ],
    );
}

#[test]
fn a_file_of_six_hundred_lines_passes_and_one_more_does_not() {
    let full = "\n".repeat(LONGEST);
    check(&["src/lib.rs"], &[("crates/a/src/lib.rs", &full)], &[]);
    let over = "\n".repeat(LONGEST + 1);
    let expected = ["crates/a/src/lib.rs: has 601 lines, 600 at most; split the noun"];
    check(
        &["src/lib.rs"],
        &[("crates/a/src/lib.rs", &over)],
        &expected,
    );
}
