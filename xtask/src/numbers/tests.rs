use super::*;

/// The numbers that are named, by line, when this stands in `sizing`.
fn check(source: &str, expected: &[(usize, &str)]) {
    let found: Vec<String> = breaches(&Tree::of(&[("crates/sizing/src/mat.rs", source)]))
        .iter()
        .map(ToString::to_string)
        .collect();
    assert_eq!(found.len(), expected.len(), "{source}: {found:?}");
    for (sentence, (line, number)) in found.iter().zip(expected) {
        let start = format!("crates/sizing/src/mat.rs:{line}: the number {number} stands");
        assert!(sentence.starts_with(&start), "{source}: {sentence}");
    }
}

#[test]
fn trade_numbers_are_named() {
    check("const OVERLAP: i64 = 3_175;", &[(1, "3_175")]);
    check(
        "fn a() -> f64 {\n    b(0.25) * 1.5e3\n}",
        &[(2, "0.25"), (2, "1.5e3")],
    );
    check("fn a() { for i in 0..7 {} }", &[(1, "7")]);
    check("fn a() { vec![3] }", &[(1, "3")]);
    check("fn a() { b(); 5 }", &[(1, "5")]);
    check("fn a() { return [4] }", &[(1, "4")]);
    check("fn a() { x[i + 5] }", &[(1, "5")]);
    check(
        "fn a() { b(0x10, 9u8, 340_282_366_920_938_463_463) }",
        &[(1, "0x10"), (1, "9u8"), (1, "340_282_366_920_938_463_463")],
    );
    check("fn a() { [6; 2] }", &[(1, "6")]);
}

#[test]
fn plain_numbers_indexes_lengths_and_fields_pass() {
    check(
        "fn a() { b(0, 1, 2, 0.0, 1.0, 2_i64, 0x2, 1u8, 0b10) }",
        &[],
    );
    check(
        "fn a(x: &[u8]) { x[3] + y.4 + z().5.6 + w()[7] + v?[8] }",
        &[],
    );
    check("const A: [u8; 4] = [0; 4];", &[]);
    check(
        "#[rule(version = 12)]\nfn a() {} // 13\n/// 14 in\nconst B: &str = \"15\";",
        &[],
    );
}

#[test]
fn a_number_of_geometry_needs_its_reason_beside_it() {
    check(
        "const SIDES: i64 = 4; // geometry: a rectangle has four sides",
        &[],
    );
    check(
        "fn a() {\n    // geometry: a rectangle has four sides\n    b(4)\n}",
        &[],
    );
    check("const SIDES: i64 = 4; // geometry:", &[(1, "4")]);
    check("const SIDES: i64 = 4; // four sides", &[(1, "4")]);
}

#[test]
fn tests_and_other_rooms_pass() {
    check("#[cfg(test)]\nmod tests { const A: u8 = 9; }", &[]);
    for path in [
        "crates/sizing/src/mat/tests.rs",
        "crates/sizing/tests/it/main.rs",
        "crates/trade/src/settings.rs",
        "crates/sizing_more/src/lib.rs",
    ] {
        assert!(
            breaches(&Tree::of(&[(path, "const A: u8 = 9;")])).is_empty(),
            "{path}"
        );
    }
    for room in ROOMS {
        let path = format!("crates/{room}/src/lib.rs");
        assert_eq!(
            breaches(&Tree::of(&[(&path, "const A: u8 = 9;")])).len(),
            1,
            "{path}"
        );
    }
}
