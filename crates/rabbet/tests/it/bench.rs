//! A folder of its own to run the command in.

use std::fmt;
use std::fs;
use std::io::{BufRead as _, BufReader, Read as _, Write as _};
use std::net::{SocketAddr, TcpStream};
use std::path::PathBuf;
use std::process::{Child, ChildStderr, Command, Stdio};
use std::time::Duration;

use serde_json::Value;
use tempfile::TempDir;

/// A folder with the files the examples of the help name.
pub struct Bench {
    folder: TempDir,
}

/// How a run ended.
pub struct Ran {
    pub exit: i32,
    pub stdout: String,
    pub stderr: String,
}

impl fmt::Display for Ran {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "exit: {}\n--- stdout\n{}--- stderr\n{}",
            self.exit, self.stdout, self.stderr
        )
    }
}

impl Ran {
    /// Stdout as JSON.
    pub fn json(&self) -> Value {
        serde_json::from_str(&self.stdout).unwrap_or_else(|error| panic!("{error}\n{self}"))
    }

    /// Stderr as a problem object.
    pub fn problem(&self) -> Value {
        serde_json::from_str(&self.stderr).unwrap_or_else(|error| panic!("{error}\n{self}"))
    }
}

/// A `rabbet serve` at work; it ends with its test.
pub struct Serving {
    pub child: Child,
    /// The line it told when it had begun to listen.
    pub told: String,
    /// What it tells after that.
    pub stderr: BufReader<ChildStderr>,
}

impl Serving {
    /// Where it says it listens.
    pub fn address(&self) -> SocketAddr {
        let address = self
            .told
            .strip_prefix("Open http://")
            .and_then(|rest| rest.split_once('/'));
        let (address, _) = address.unwrap_or_else(|| panic!("no address in {:?}", self.told));
        address
            .parse()
            .unwrap_or_else(|error| panic!("{error}: {address}"))
    }

    /// The whole answer to `GET path`, head and body.
    pub fn get(&self, path: &str) -> String {
        let address = self.address();
        let mut stream = TcpStream::connect(address).expect("it listens there");
        let limit = Some(Duration::from_secs(20));
        stream.set_read_timeout(limit).expect("a limit on waiting");
        write!(
            stream,
            "GET {path} HTTP/1.1\r\nHost: {address}\r\nConnection: close\r\n\r\n"
        )
        .expect("it takes a request");
        let mut answer = Vec::new();
        stream.read_to_end(&mut answer).expect("it answers");
        String::from_utf8(answer).expect("the answer is text")
    }
}

impl Drop for Serving {
    fn drop(&mut self) {
        // One that has ended by itself needs no end.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

impl Bench {
    /// With `print.toml`, `canvas.toml` and `fit.toml`, as `job new` writes them, and the cut list
    /// of the invented shop as `list.toml`; a wall, a key for tests and a record signed with it.
    pub fn new() -> Self {
        let bench = Self {
            folder: tempfile::tempdir().expect("a folder for the test"),
        };
        for (kind, file) in [
            ("single-mat", "print.toml"),
            ("canvas", "canvas.toml"),
            ("fit-frame", "fit.toml"),
        ] {
            let ran = bench.run(&["job", "new", "--kind", kind, "-o", file]);
            assert_eq!(ran.exit, 0, "{ran}");
        }
        bench.file("list.toml", demo::CUT_LIST);
        bench.file("wall.toml", include_str!("papers/wall.toml"));
        bench.file("shop.key", include_str!("papers/shop.key"));
        bench.file("record.txt", include_str!("papers/record.txt"));
        bench
    }

    /// Adds the shop's own files that examples of the help name: costs, prices, who sells and buys, a quote.
    pub fn shop(self) -> Self {
        self.file("catalogue.toml", demo::CATALOGUE);
        self.file("prices.toml", demo::PRICES);
        self.file("later.toml", demo::PRICES.replace("66.00 USD", "72.00 USD"));
        let list = include_str!("../../../../demo/lists/millrace.csv");
        let first: Vec<&str> = list.lines().take(5).collect();
        self.file("list.csv", first.join("\n"));
        let mapping = include_str!("../../../../demo/lists/millrace.mapping.toml");
        self.file("list.mapping.toml", mapping);
        self.file("shop.toml", include_str!("../../../../demo/costs.toml"));
        let import = [
            "prices",
            "import",
            "list.csv",
            "--mapping",
            "list.mapping.toml",
        ];
        let ran = self.run(&[&import[..], &["--catalogue", "shop.toml"]].concat());
        assert_eq!(ran.exit, 0, "{ran}");
        let party = "name = \"One of the two\"\ncountry = \"IE\"\n";
        self.file(
            "seller.toml",
            format!("{party}vat_number = \"IE0000000A\"\n"),
        );
        self.file("buyer.toml", party);
        let make = [
            "quote",
            "make",
            "print.toml",
            "--number",
            "Q-0",
            "--shop",
            ".",
        ];
        let ran = self.run(&[&make[..], &["-o", "quote.json"]].concat());
        assert_eq!(ran.exit, 0, "{ran}");
        self
    }

    /// A file's place.
    pub fn path(&self, file: &str) -> PathBuf {
        self.folder.path().join(file)
    }

    /// Writes a file.
    pub fn file(&self, name: &str, bytes: impl AsRef<[u8]>) {
        fs::write(self.path(name), bytes).expect("a file of the test");
    }

    /// Writes a job whose stack does not go into its rabbet.
    pub fn too_deep(&self, name: &str) {
        let print = self.text("print.toml");
        self.file(
            name,
            print
                .replace("oak-square-1", "walnut-1")
                .replace("foam-3", "padded-6"),
        );
    }

    /// Reads a file as text.
    pub fn text(&self, name: &str) -> String {
        fs::read_to_string(self.path(name)).expect("a file of the test")
    }

    /// The names in the folder, hidden ones too.
    pub fn names(&self) -> Vec<String> {
        let entries = fs::read_dir(self.folder.path()).expect("the folder of the test");
        let name = |entry: std::io::Result<fs::DirEntry>| entry.expect("an entry").file_name();
        let mut names: Vec<String> = entries
            .map(|entry| name(entry).to_string_lossy().into_owned())
            .collect();
        names.sort();
        names
    }

    /// The command, ready to run in the folder, with nothing of the caller's environment it reads.
    pub fn command(&self, args: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_rabbet"));
        command.args(args).current_dir(self.folder.path());
        command.env_remove("RABBET_SETTINGS").env_remove("NO_COLOR");
        command
    }

    /// Starts a `rabbet serve`, and waits until it says where it listens.
    pub fn serve(&self, args: &[&str]) -> Serving {
        let mut child = self
            .command(&[&["serve"], args].concat())
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .expect("the command starts");
        let mut stderr = BufReader::new(child.stderr.take().expect("a pipe from it"));
        let mut told = String::new();
        stderr.read_line(&mut told).expect("it tells something");
        Serving {
            child,
            told,
            stderr,
        }
    }

    /// Runs the command to its end.
    pub fn run(&self, args: &[&str]) -> Ran {
        self.run_with(args, b"")
    }

    /// Runs the command with this on stdin.
    pub fn run_with(&self, args: &[&str], stdin: &[u8]) -> Ran {
        let mut command = self.command(args);
        command
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped());
        let mut child = command.spawn().expect("the command starts");
        let mut pipe = child.stdin.take().expect("a pipe to it");
        // A command that does not read its stdin closes it early, which is its right.
        let _ = pipe.write_all(stdin);
        drop(pipe);
        let done = child.wait_with_output().expect("the command ends");
        Ran {
            exit: done.status.code().unwrap_or(-1),
            stdout: String::from_utf8(done.stdout).expect("stdout is text"),
            stderr: String::from_utf8(done.stderr).expect("stderr is text"),
        }
    }
}
