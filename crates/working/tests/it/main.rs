//! The working of a small made-up job: found, explained, printed and worked out again.

mod explain;
mod figure;
mod find;
mod job;
mod money;
mod recheck;
mod text;
