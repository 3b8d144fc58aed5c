//! What the job document, the settings and the catalogue promise, checked through their doors.

mod catalogue;
mod document;
mod paper;
mod place;
mod settings;
