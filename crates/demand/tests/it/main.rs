//! Cut lists of the invented shop's jobs, and plans taken back.

#![allow(clippy::unwrap_used, reason = "a test that can not go on says where")]

mod bench;
mod golden;
mod laws;
mod naive;
mod pieces;
mod refusals;
mod settling;
mod stock;
