use crate::supplier::Numbers;

const ALL: [Numbers; 8] = [
    Numbers::CommaPoint,
    Numbers::PointComma,
    Numbers::SpaceComma,
    Numbers::SpacePoint,
    Numbers::ApostrophePoint,
    Numbers::LakhPoint,
    Numbers::Point,
    Numbers::Comma,
];

fn read(habit: Numbers, text: &str) -> Option<String> {
    habit.read(text).ok().map(|plain| plain.pointed())
}

/// What each habit makes of a text: one column a habit in the order of `ALL`, `-` for no number.
#[test]
fn every_habit_reads_its_own_and_refuses_what_is_another_s() {
    for (text, wanted) in [
        ("12", "12 12 12 12 12 12 12 12"),
        ("0", "0 0 0 0 0 0 0 0"),
        ("007", "7 7 7 7 7 7 7 7"),
        ("-12", "-12 -12 -12 -12 -12 -12 -12 -12"),
        ("(12)", "-12 -12 -12 -12 -12 -12 -12 -12"),
        ("12.5", "12.5 - - 12.5 12.5 12.5 12.5 -"),
        ("12,5", "- 12.5 12.5 - - - - 12.5"),
        ("1,234", "1234 1.234 1.234 - - 1234 - 1.234"),
        ("1.234", "1.234 1234 - 1.234 1.234 1.234 1.234 -"),
        ("1,234.50", "1234.5 - - - - 1234.5 - -"),
        ("1.234,50", "- 1234.5 - - - - - -"),
        ("1\u{a0}234,50", "- - 1234.5 - - - - -"),
        ("1’234.50", "- - - - 1234.5 - - -"),
        ("12,34,567.50", "- - - - - 1234567.5 - -"),
    ] {
        let told = ALL.map(|habit| read(habit, text).unwrap_or_else(|| "-".to_owned()));
        assert_eq!(told.join(" "), wanted, "{text}");
    }
}

#[test]
fn every_habit_reads_the_example_that_names_it() {
    for habit in ALL {
        let wanted = if habit == Numbers::LakhPoint {
            "1234567.5"
        } else {
            "1234.5"
        };
        assert_eq!(read(habit, habit.example()).as_deref(), Some(wanted));
    }
}

#[test]
fn what_is_no_number_is_none() {
    for text in [
        "",
        " ",
        ".",
        ",",
        "'",
        "abc",
        "1e5",
        "12.3O",
        "1.2.3,4,5",
        "--1",
        "1 2 3.4.5",
        "½",
        "１２",
    ] {
        for habit in ALL {
            assert_eq!(read(habit, text), None, "{text} as {}", habit.example());
        }
    }
}

/// Half up at the last decimal kept: schoolbook rounding, as trade lists do it.
#[test]
fn prices_are_rounded_half_up_where_the_mapping_says_so() {
    for (text, decimals, millionths) in [
        ("3.33333333333333", 4, 3_333_300),
        ("0.00005", 4, 100),
        ("2.345", 2, 2_350_000),
        ("2.3449999999", 2, 2_340_000),
        ("9.995", 2, 10_000_000),
        ("7", 0, 7_000_000),
        ("7.5", 0, 8_000_000),
    ] {
        let plain = Numbers::Point.read(text).unwrap();
        assert_eq!(plain.millionths_to(decimals), Some(millionths), "{text}");
    }
}
