//! The pages in a real Chromium: accessibility rules, keyboard, narrow sheets, redrawing.
//!
//! Rules: axe-core, tags of WCAG 2.0 to 2.2 A and AA and best practice, with none switched off.

mod axe;
mod bench;
mod care;
mod chrome;
mod hand;
mod price;
mod shape;
