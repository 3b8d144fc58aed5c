//! The `rabbet` command: a door to the engine. It reads files and the clock, lays out what the
//! engine worked out, and says in sentences what stands in the way. It works out no size itself.

mod command;
mod crash;
mod cut;
mod exit;
mod files;
mod near;
mod pictures;
mod printing;
mod problem;
mod report;
mod shop;
mod terminal;
mod toml_place;
mod usage;

use std::process::ExitCode;

use exit::Exit;

fn main() -> ExitCode {
    crash::keep_quiet();
    let exit = crash::watched(|| command::run(&std::env::args_os().collect::<Vec<_>>()));
    exit.unwrap_or(Exit::OurBug).into()
}
