//! Checks against the outside: case tables, golden jobs, and the laws every piece obeys.

pub mod bench_cases;
pub mod package;
pub mod print;
pub mod reference;
