use super::days;

fn check(written: &str, expected: Option<u32>) {
    assert_eq!(days(written), expected, "{written}");
}

#[test]
fn days_are_counted_from_1970() {
    check("1970-01-01", Some(0));
    check("1970-03-01", Some(59));
    // 30 years of 365 days, 7 leap days (1972 to 1996), January and 28 days of February.
    check("2000-02-29", Some(30 * 365 + 7 + 31 + 28));
    check("2026-12-04", Some(20_791));
}

#[test]
fn what_is_no_day_has_no_count() {
    for written in [
        "",
        "soon",
        "2026-13-01",
        "2026-02-29",
        "1900-01-01",
        "2026-1-1",
        "2026-12-04-1",
    ] {
        check(written, None);
    }
}
