use crate::bench::Bench;

#[test]
fn materials_are_listed_by_kind() {
    let bench = Bench::new();
    insta::assert_snapshot!(bench.run(&["material", "list", "--kind", "moulding"]));
    let all = bench.run(&["material", "list"]);
    for kind in [
        "board", "backing", "glazing", "moulding", "fillet", "spacer",
    ] {
        assert!(all.stdout.lines().any(|line| line == kind), "{kind}: {all}");
    }
    let json = bench
        .run(&["material", "list", "--kind", "spacer", "--json"])
        .json();
    assert!(
        json["materials"]
            .as_array()
            .expect("a list")
            .iter()
            .all(|material| material["kind"] == "spacer")
    );
}

#[test]
fn the_shops_materials_are_laid_over() {
    let bench = Bench::new();
    bench.file(
        "own.toml",
        "[[material]]\ncode = \"oak-wide\"\nlike = \"oak-square-1\"\nname = \"Oak, wide\"\n",
    );
    let list = bench.run(&[
        "material",
        "list",
        "--kind",
        "moulding",
        "--materials",
        "own.toml",
    ]);
    assert!(
        list.stdout.contains("oak-wide") && list.stdout.contains("walnut-1"),
        "{list}"
    );
    bench.file(
        "wide.toml",
        bench.text("print.toml").replace("oak-square-1", "oak-wide"),
    );
    assert_eq!(bench.run(&["job", "check", "wide.toml"]).exit, 1);
    assert_eq!(
        bench
            .run(&["job", "check", "wide.toml", "--materials", "own.toml"])
            .exit,
        0
    );
}

#[test]
fn what_is_wrong_with_the_file_is_told() {
    let bench = Bench::new();
    for (name, text) in [
        (
            "circle",
            "[[material]]\ncode = \"a\"\nlike = \"b\"\n[[material]]\ncode = \"b\"\nlike = \"a\"\n",
        ),
        (
            "twice",
            "[[material]]\ncode = \"a\"\n[[material]]\ncode = \"a\"\n",
        ),
        (
            "nowhere",
            "[[material]]\ncode = \"a\"\nlike = \"oak-square-9\"\n",
        ),
        ("field", "[[material]]\ncode = \"a\"\nweight = 3\n"),
        (
            "length",
            "[[material]]\ncode = \"a\"\nthickness = \"16 7/\"\n",
        ),
        ("kind", "[[material]]\ncode = \"a\"\nkind = \"cheese\"\n"),
    ] {
        bench.file("own.toml", text);
        insta::assert_snapshot!(
            name,
            bench.run(&["material", "list", "--materials", "own.toml"])
        );
    }
}
