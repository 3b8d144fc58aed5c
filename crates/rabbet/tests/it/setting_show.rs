use crate::bench::Bench;

#[test]
fn a_setting_says_what_it_does_and_where_its_default_is_from() {
    let bench = Bench::new();
    insta::assert_snapshot!("words", bench.run(&["setting", "show", "sink.room"]));
    insta::assert_snapshot!(
        "json",
        bench.run(&["setting", "show", "mat.border_measured", "--json"])
    );
}

#[test]
fn an_unknown_one_names_the_nearest() {
    insta::assert_snapshot!(Bench::new().run(&["setting", "show", "mat.overlop"]));
}
