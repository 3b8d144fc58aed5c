//! The checker of plans that shares no code with this program.
//!
//! Source: `suite/ref/cutting/check_plan.py`.

use std::path::{Path, PathBuf};
use std::process::Command;

/// Any Python 3 will do: the script needs no library.
pub fn python() -> PathBuf {
    let own = PathBuf::from(concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../target/reference/bin/python"
    ));
    match std::env::var_os("REFERENCE_PYTHON") {
        Some(named) => PathBuf::from(named),
        None if own.exists() => own,
        None => PathBuf::from("python3"),
    }
}

/// Holds plans to their instances; every instance must have one.
pub fn check_plans(instances: &Path, plans: &Path) {
    let script = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../suite/ref/cutting/check_plan.py"
    );
    let done = Command::new(python())
        .arg(script)
        .args([instances, plans])
        .arg("--all")
        .output()
        .expect("Python starts");
    assert!(
        done.status.success(),
        "{}{}",
        String::from_utf8_lossy(&done.stdout),
        String::from_utf8_lossy(&done.stderr)
    );
}
