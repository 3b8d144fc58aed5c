//! The nearest of some known words.

pub use trade::reading::nearest;
