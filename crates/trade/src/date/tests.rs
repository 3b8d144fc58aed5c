use super::Date;

fn check(text: &str, days: Option<u32>) {
    let read = Date::read(text);
    assert_eq!(read.as_ref().ok().map(|date| date.days()), days, "{text}");
    if let Ok(date) = read {
        assert_eq!(date.to_string(), text);
        assert_eq!(
            Date::read("1970-01-01").unwrap().after(date.days()),
            Some(date)
        );
    }
}

/// Counts of days from POSIX time: seconds since the epoch over 86 400 (IEEE Std 1003.1, 4.16).
#[test]
fn days_of_the_calendar_are_read_and_counted() {
    check("1970-01-01", Some(0));
    check("1970-03-01", Some(59));
    check("2000-02-29", Some(11_016));
    check("2026-11-25", Some(20_782));
    check("9999-12-31", Some(2_932_896));
}

#[test]
fn what_is_no_day_is_refused() {
    for text in [
        "",
        "2026-02-29",
        "2100-02-29",
        "2026-00-10",
        "2026-13-01",
        "2026-11-31",
        "2026-1-5",
        "26-11-25",
        "2026/11/25",
        "2026-11-25-1",
        "1969-12-31",
        "２026-11-25",
        "2026-11-+5",
    ] {
        check(text, None);
    }
}

#[test]
fn the_calendar_ends_with_its_last_day() {
    let last = Date::read("9999-12-31").unwrap();
    assert_eq!(last.after(0), Some(last));
    assert_eq!(last.after(1), None);
    assert_eq!(last.after(u32::MAX), None);
    let first = Date::read("1970-01-01").unwrap();
    assert_eq!(first.after(u32::MAX), None);
}
