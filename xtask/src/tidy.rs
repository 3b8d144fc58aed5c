//! Runs checks and prints what they found.

use std::io::Write;

use crate::breach::{Breach, Trouble};
use crate::house::House;
use crate::{generated, glossary, numbers, rooms, testfiles, words};

/// One check: its subcommand, and what it finds in the repository.
#[derive(Clone, Copy)]
pub struct Check {
    name: &'static str,
    breaches: fn(&House) -> Vec<Breach>,
}

/// Who may use whom.
pub const ROOMS: Check = Check {
    name: "rooms",
    breaches: |house| rooms::breaches(&house.workspace, &house.tree),
};
/// Words and leftovers.
pub const WORDS: Check = Check {
    name: "words",
    breaches: |house| words::breaches(&house.tree),
};
/// Forgotten test files.
pub const TESTS: Check = Check {
    name: "tests",
    breaches: |house| testfiles::breaches(&house.workspace, &house.tree),
};
/// Generated documents.
pub const GENERATED: Check = Check {
    name: "generated",
    breaches: |house| generated::breaches(&generated::generated_files(), &house.tree),
};
/// Trade numbers.
pub const NUMBERS: Check = Check {
    name: "numbers",
    breaches: |house| numbers::breaches(&house.tree),
};
/// The glossary.
pub const GLOSSARY: Check = Check {
    name: "glossary",
    breaches: |house| glossary::breaches(&house.tree),
};

/// All of them, in the order they run.
pub const CHECKS: [Check; 6] = [ROOMS, WORDS, TESTS, GENERATED, NUMBERS, GLOSSARY];

/// Runs the checks and prints each breach; true when there was none.
pub fn run(checks: &[Check], house: &House, out: &mut impl Write) -> Result<bool, Trouble> {
    let mut clean = true;
    for check in checks {
        let found = (check.breaches)(house);
        clean &= found.is_empty();
        write_found(check.name, &found, out)?;
    }
    Ok(clean)
}

fn write_found(name: &str, found: &[Breach], out: &mut impl Write) -> Result<(), Trouble> {
    match found.len() {
        0 => writeln!(out, "{name}: nothing found")?,
        count => writeln!(out, "{name}: {count} found")?,
    }
    for breach in found {
        writeln!(out, "  {breach}")?;
    }
    Ok(())
}

#[cfg(test)]
mod tests;
