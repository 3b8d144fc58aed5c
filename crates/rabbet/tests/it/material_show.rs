use crate::bench::Bench;

#[test]
fn a_material_says_where_its_figures_are_from() {
    let bench = Bench::new();
    insta::assert_snapshot!("moulding", bench.run(&["material", "show", "oak-square-1"]));
    insta::assert_snapshot!(
        "board",
        bench.run(&["material", "show", "mat-4-conservation"])
    );
    let json = bench
        .run(&["material", "show", "glass-uv-2.5", "--json"])
        .json();
    assert_eq!(
        (&json["kind"], &json["pane"]),
        (&"glazing".into(), &"glass".into())
    );
}

#[test]
fn an_unknown_one_names_the_nearest() {
    insta::assert_snapshot!(Bench::new().run(&["material", "show", "oak-round-1"]));
}
