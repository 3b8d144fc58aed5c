//! How a command ends.

use std::process::ExitCode;

/// The exit codes; they stand in every `--help` and in the README.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Exit {
    /// Done.
    Done,
    /// What was given is refused, or a check failed.
    Refused,
    /// The command was typed wrongly.
    Usage,
    /// A file can't be reached.
    Unavailable,
    /// A fault of this program.
    OurBug,
}

/// The table shown under every help.
pub const EXIT_CODES: &str = "Exit codes: 0 done; 1 input refused or check failed; 2 wrong usage; \
3 store or file unavailable; 255 a fault of this program.";

impl Exit {
    /// The number.
    pub const fn code(self) -> u8 {
        match self {
            Self::Done => 0,
            Self::Refused => 1,
            Self::Usage => 2,
            Self::Unavailable => 3,
            Self::OurBug => 255,
        }
    }
}

impl From<Exit> for ExitCode {
    fn from(exit: Exit) -> Self {
        Self::from(exit.code())
    }
}
