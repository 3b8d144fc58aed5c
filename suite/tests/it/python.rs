//! Asking a script of `suite/python`, which stands on the libraries of `suite/requirements.txt`.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use serde_json::Value;

/// The interpreter that has the libraries.
fn python() -> PathBuf {
    let own = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../target/reference/bin/python"
    );
    let named =
        std::env::var_os("REFERENCE_PYTHON").map_or_else(|| PathBuf::from(own), PathBuf::from);
    assert!(
        named.exists(),
        "there is no {}: run ./check once, which installs the Python libraries of suite/requirements.txt",
        named.display()
    );
    named
}

/// Gives the script its questions and takes its answers, one to a question.
pub fn ask(script: &str, questions: &Value) -> Vec<Value> {
    let folder = Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/python"));
    let mut child = Command::new(python())
        .arg(folder.join(script))
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .expect("Python starts");
    let mut input = child.stdin.take().expect("it listens");
    input
        .write_all(questions.to_string().as_bytes())
        .expect("it reads");
    drop(input);
    let output = child.wait_with_output().expect("it ends");
    assert!(output.status.success(), "the script failed");
    serde_json::from_slice(&output.stdout).expect("it answers in JSON")
}
