//! The only place that reads the clock.

use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};

use cutting::{Halt, Watch};
use jiff::{Timestamp, Zoned, tz::TimeZone};
use paperwork::Stamp;
use trade::Date;

/// Now, as a sheet's time in universal time and its day where the shop is.
pub(crate) fn now() -> (Stamp, String) {
    let now = Timestamp::now();
    let universal = now.to_zoned(TimeZone::UTC);
    (
        stamp(&universal),
        now.to_zoned(TimeZone::system()).date().to_string(),
    )
}

/// What is told where the clock gives no day.
pub(crate) const NO_DAY: &str = "This machine's clock gives no day of the calendar, so nothing can be priced today; set the clock, then ask again.";

/// Today where the shop is; none where the clock tells no day of the calendar.
pub(crate) fn today() -> Option<Date> {
    Date::read(&now().1).ok()
}

/// The time of day where the shop is: `17:05`.
pub(crate) fn time_of_day() -> String {
    let now = Zoned::now();
    format!("{:02}:{:02}", now.hour(), now.minute())
}

/// Ends a search when its time is over, or when nobody waits for it any more.
pub(crate) struct Deadline<'a> {
    until: Instant,
    left: &'a Halt,
    struck: AtomicBool,
}

impl<'a> Deadline<'a> {
    /// So long from now.
    pub fn after(patience: Duration, left: &'a Halt) -> Self {
        Self {
            until: Instant::now() + patience,
            left,
            struck: AtomicBool::new(false),
        }
    }

    /// Whether it ended the search.
    pub fn struck(&self) -> bool {
        self.struck.load(Ordering::Relaxed)
    }
}

impl Watch for Deadline<'_> {
    fn enough(&self) -> bool {
        let over = self.left.halted() || Instant::now() >= self.until;
        if over {
            self.struck.store(true, Ordering::Relaxed);
        }
        over
    }
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
