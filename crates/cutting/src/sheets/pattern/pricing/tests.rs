use super::power_below;

#[test]
fn powers_are_exact() {
    for (number, power) in [
        (1.0, 0),
        (1.999, 0),
        (2.0, 1),
        (3.5, 1),
        (4.0, 2),
        (0.5, -1),
        (0.3, -2),
        (1e12, 39),
    ] {
        assert_eq!(power_below(number), power, "{number}");
    }
    // The logarithm of the number just below a power of two is often rounded up to the power.
    for power in 1..60 {
        let whole = (1_u64 << power) as f64;
        assert_eq!(power_below(whole), power);
        assert_eq!(power_below(whole.next_down()), power - 1);
    }
}
