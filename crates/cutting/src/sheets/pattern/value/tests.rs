use super::upheld;

#[test]
fn a_bound_above_or_at_the_value_stands() {
    assert_eq!((upheld(7, 5), upheld(5, 5)), (7, 5));
}

/// A fault that stops the tests; where it goes unnoticed it must not pass for a proof.
#[test]
#[cfg_attr(
    debug_assertions,
    should_panic(expected = "at most 4, but a layout is worth 5")
)]
fn a_bound_below_the_value_proves_nothing() {
    assert_eq!(upheld(4, 5), u64::MAX);
}
