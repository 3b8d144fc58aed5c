use super::Labels;
use crate::ware::WareKind::{Board, Moulding};

fn check(standing: &[&str], next: Option<u32>, expected: [&str; 3]) {
    let standing: Vec<String> = standing.iter().map(|label| (*label).to_owned()).collect();
    let mut labels = Labels::after(&standing, next);
    let found = [Board, Moulding, Board].map(|kind| labels.take(kind));
    assert_eq!(found, expected, "{standing:?}");
}

#[test]
fn labels_go_on_after_those_that_stand() {
    check(&[], None, ["B1", "M1", "B2"]);
    check(&["B7", "b12", "M3"], None, ["B13", "M4", "B14"]);
    // Labels of another hand count for nothing.
    check(
        &["Bx", "", "blue strip", "B-4", "Ä9"],
        None,
        ["B1", "M1", "B2"],
    );
    check(&["B7"], Some(40), ["B40", "M40", "B41"]);
    check(&["B70"], Some(40), ["B71", "M40", "B72"]);
}
