//! What the room promises, checked through its doors.

mod currency;
mod lengths;
mod properties;
mod quantities;
mod read_accepts;
mod read_refuses;
mod sentences;
