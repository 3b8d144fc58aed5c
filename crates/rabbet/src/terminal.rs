//! Where words go: data to stdout, talk to stderr, colour only where a person looks.

use std::ffi::OsString;
use std::io::{self, ErrorKind, IsTerminal as _, Write};

use crate::problem::{Kind, Problem, Trouble};

/// The two streams, as this run may use them.
#[derive(Clone, Copy, Debug)]
pub struct Terminal {
    /// Colour on stdout.
    pub colour_out: bool,
    /// Colour on stderr.
    pub colour_err: bool,
    /// Whether `--json` was typed: problems are told as objects.
    pub json: bool,
}

/// Ways of setting a word off; the word itself always says the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ink {
    /// A heading.
    Heading,
    /// Something that stops.
    Stop,
    /// Something to mind.
    Mind,
    /// Beside the point.
    Faint,
}

impl Terminal {
    /// As the arguments and the environment ask, before anything else is read.
    pub fn of(args: &[OsString]) -> Self {
        let flags: Vec<&OsString> = args.iter().take_while(|arg| *arg != "--").collect();
        let typed = |flag: &str| flags.iter().any(|arg| *arg == flag);
        let plain = typed("--no-color")
            || std::env::var_os("NO_COLOR").is_some_and(|value| !value.is_empty());
        Self {
            colour_out: !plain && io::stdout().is_terminal(),
            colour_err: !plain && io::stderr().is_terminal(),
            json: typed("--json"),
        }
    }

    /// Writes data to stdout; a reader that went away is no trouble.
    ///
    /// # Errors
    /// Stdout can't take it: a full disk.
    pub fn data(self, text: &str) -> Result<(), Trouble> {
        self.bytes(text.as_bytes())
    }

    /// As [`data`](Self::data), for what is not text.
    ///
    /// # Errors
    /// As there.
    #[allow(
        clippy::unused_self,
        reason = "where words go is the terminal's to say"
    )]
    pub fn bytes(self, bytes: &[u8]) -> Result<(), Trouble> {
        let mut out = io::stdout().lock();
        match out.write_all(bytes).and_then(|()| out.flush()) {
            Ok(()) => Ok(()),
            Err(error) if error.kind() == ErrorKind::BrokenPipe => Ok(()),
            Err(error) => Err(Trouble::one(
                Kind::File,
                Problem::new(
                    "file.stdout",
                    format!("stdout takes no more: {}", crate::files::reason(&error)),
                )
                .hint("free some room, or send it somewhere else"),
            )),
        }
    }

    /// Says something to the person on stderr.
    #[allow(
        clippy::unused_self,
        reason = "where words go is the terminal's to say"
    )]
    pub fn talk(self, text: &str) {
        let mut text = text.trim_end().to_owned();
        text.push('\n');
        // Where stderr is closed there is nobody left to tell.
        let _ = io::stderr().write_all(text.as_bytes());
    }

    /// `text` set off on stdout, where colour is used.
    pub fn ink_out(self, ink: Ink, text: &str) -> String {
        painted(self.colour_out, ink, text)
    }

    /// `text` set off on stderr, where colour is used.
    pub fn ink_err(self, ink: Ink, text: &str) -> String {
        painted(self.colour_err, ink, text)
    }
}

fn painted(colour: bool, ink: Ink, text: &str) -> String {
    if !colour {
        return text.to_owned();
    }
    let code = match ink {
        Ink::Heading => "1",
        Ink::Stop => "1;31",
        Ink::Mind => "1;33",
        Ink::Faint => "2",
    };
    format!("\u{1b}[{code}m{text}\u{1b}[0m")
}
