use super::*;

fn check_kept(source: &str, expected: &str) {
    let kept: TokenStream = without_tests(tokens(source).unwrap()).into_iter().collect();
    let expected: TokenStream = expected.parse().unwrap();
    assert_eq!(kept.to_string(), expected.to_string(), "{source}");
}

#[test]
fn items_of_a_test_build_are_left_out() {
    check_kept(
        "fn a() {} #[cfg(test)] mod tests { fn b() {} } fn c() {}",
        "fn a() {} fn c() {}",
    );
    check_kept(
        "#[cfg(test)] mod tests; const A: u8 = 7;",
        "const A: u8 = 7;",
    );
    check_kept("#[cfg(all(test, unix))] use x::y; fn c() {}", "fn c() {}");
    check_kept(
        "#[cfg(test)] #[allow(dead_code)] fn b<A, B>() -> A {} fn c() {}",
        "fn c() {}",
    );
    check_kept(
        "struct S { #[cfg(test)] a: Vec<u8>, b: u8 }",
        "struct S { b: u8 }",
    );
    check_kept(
        "mod m { #[test] fn b() {} fn c() {} }",
        "mod m { fn c() {} }",
    );
}

#[test]
fn other_conditions_are_kept() {
    for source in [
        "#[cfg(not(test))] fn a() {}",
        "#[cfg(feature = \"test\")] fn a() {}",
    ] {
        check_kept(source, source);
    }
}

#[test]
fn string_literals_are_opened() {
    assert_eq!(string_content(r#""plain""#), Some("plain"));
    assert_eq!(string_content("r##\"raw \"# one\"##"), Some("raw \"# one"));
    assert_eq!(string_content("b\"bytes\""), Some("bytes"));
    assert_eq!(string_content("'c'"), None);
    assert_eq!(string_content("12"), None);
}

#[test]
fn lines_count_from_one() {
    let found = tokens("a\n\nb").unwrap();
    assert_eq!(found.iter().map(line).collect::<Vec<_>>(), [1, 3]);
}

#[test]
fn a_mark_counts_on_its_line_and_alone_beside_it() {
    let check = |source: &str, line: usize, expected: bool| {
        let lines: Vec<&str> = source.lines().collect();
        assert_eq!(
            is_marked(&lines, line, "// so:"),
            expected,
            "{source}, line {line}"
        );
    };
    check("a(4) // so: four", 1, true);
    check("if a == 4 {\n    // so: four\n}", 1, true);
    check("// so: four\na(4)", 2, true);
    check("a(4) // so:", 1, false);
    check("a(4)", 1, false);
    check("a(3) // so: three\na(4)", 2, false);
    check("// so: four\n\na(4)", 3, false);
}
