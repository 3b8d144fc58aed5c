//! The only place that reads the clock.

use jiff::{Timestamp, Zoned, tz::TimeZone};
use paperwork::Stamp;

/// Now, as a sheet's time in universal time and its day where the shop is.
pub(crate) fn now() -> (Stamp, String) {
    let now = Timestamp::now();
    let universal = now.to_zoned(TimeZone::UTC);
    (
        stamp(&universal),
        now.to_zoned(TimeZone::system()).date().to_string(),
    )
}

fn stamp(time: &Zoned) -> Stamp {
    let small = |number: i8| u8::try_from(number).unwrap_or_default();
    Stamp {
        year: u16::try_from(time.year()).unwrap_or_default(),
        month: small(time.month()),
        day: small(time.day()),
        hour: small(time.hour()),
        minute: small(time.minute()),
    }
}
