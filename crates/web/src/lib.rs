//! The door for browsers and programs: HTML pages and a JSON API over the engine.
//!
//! Handlers parse, call the rooms below and render, nothing else. Of the plans made at the Bench the
//! last few are held until the program ends; nothing else is kept between two requests: a piece
//! travels as its job document, which can be downloaded and opened again.
//! Everything works with scripting off; one small script redraws while somebody types.

mod api;
mod asset;
pub mod care;
mod clock;
mod desk;
mod door;
mod front;
mod guard;
mod kept;
mod page;
mod piece;
mod planning;
mod problem;
pub mod wire;

pub use api::API;
pub use desk::{Habits, Options};
pub use door::{ServeError, router, serve, serve_on};
