//! The invented shop holds together: its jobs can be made, and its pictures can be shown.

mod documents;
mod pictures;
