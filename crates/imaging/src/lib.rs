//! Imaging: colour as people see it.

pub mod colour;
