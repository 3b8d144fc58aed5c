use super::Names;

#[test]
fn names_that_come_again_are_numbered() {
    let mut names = Names::default();
    let given = ["a", "a", "a (2)", "b", "a"].map(|name| names.unique(name.to_owned()));
    assert_eq!(given, ["a", "a (2)", "a (2) (2)", "b", "a (3)"]);
}
