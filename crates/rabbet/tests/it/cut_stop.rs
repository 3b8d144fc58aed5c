//! Waiting for a plan: Ctrl-C takes the best so far, and a terminal shows how far it is.

use std::fmt::Write as _;
use std::process::Command;

use crate::bench::Bench;
use crate::reference::python;

/// Sheets that nobody proves in the time of a test: 60 sizes that fit nothing well.
fn hard() -> String {
    let mut pieces = String::new();
    for at in 0_u32..60 {
        let (w, h) = (211 + at * 37 % 389, 173 + at * 53 % 421);
        let comma = if at > 0 { "," } else { "" };
        write!(
            pieces,
            "{comma}{{\"id\":\"p{at}\",\"w\":{w},\"h\":{h},\"qty\":3}}"
        )
        .expect("a string");
    }
    format!(
        "{{\"name\":\"hard\",\"dim\":2,\"kerf\":3,\"objective\":\"cost\",\
         \"stock\":[{{\"id\":\"s\",\"w\":1220,\"h\":2440}},{{\"id\":\"t\",\"w\":1000,\"h\":1700}}],\
         \"pieces\":[{pieces}]}}"
    )
}

/// Waits until the process catches SIGINT itself: before that it would end at once.
#[cfg(target_os = "linux")]
fn listens(id: u32) {
    use std::time::{Duration, Instant};
    const SIGINT: u64 = 1 << 1;
    let began = Instant::now();
    let caught = || -> Option<u64> {
        let status = std::fs::read_to_string(format!("/proc/{id}/status")).ok()?;
        let line = status
            .lines()
            .find_map(|line| line.strip_prefix("SigCgt:"))?;
        u64::from_str_radix(line.trim(), 16).ok()
    };
    while caught().is_none_or(|caught| caught & SIGINT == 0) {
        assert!(
            began.elapsed() < Duration::from_mins(1),
            "it never listens for Ctrl-C"
        );
        std::thread::sleep(Duration::from_millis(10));
    }
}

#[cfg(target_os = "linux")]
#[test]
fn ctrl_c_takes_the_best_plan_so_far() {
    use std::process::Stdio;
    use std::time::{Duration, Instant};

    use crate::reference::check_plans;

    let bench = Bench::new();
    bench.file("hard.json", hard());
    let args = [
        "cut",
        "list",
        "hard.json",
        "--seconds",
        "600",
        "--plan",
        "plan.json",
        "-o",
        "-",
    ];
    let child = bench
        .command(&args)
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the command starts");
    listens(child.id());
    std::thread::sleep(Duration::from_millis(500));
    let began = Instant::now();
    let asked = Command::new("kill")
        .args(["-INT", &child.id().to_string()])
        .status();
    assert!(asked.expect("it is asked").success());
    let done = child.wait_with_output().expect("it ends");
    let told = String::from_utf8_lossy(&done.stderr).into_owned();
    assert_eq!(done.status.code(), Some(0), "{told}");
    assert_eq!(
        told,
        "Stopped: this is the best plan so far.\nplan.json: written\n"
    );
    assert!(
        done.stdout.starts_with(b"%PDF-"),
        "the cut sheets are whole"
    );
    assert!(
        began.elapsed() < Duration::from_mins(5),
        "{:?}",
        began.elapsed()
    );
    check_plans(&bench.path("hard.json"), &bench.path("plan.json"));
}

/// Runs the command with a terminal for all it says, and returns that.
fn on_a_terminal(bench: &Bench, args: &[&str]) -> String {
    const SPAWN: &str = "import pty,sys; sys.exit(pty.spawn(sys.argv[1:]) >> 8)";
    let done = Command::new(python())
        .args(["-c", SPAWN, env!("CARGO_BIN_EXE_rabbet")])
        .args(args)
        .current_dir(bench.path("."))
        .output()
        .expect("Python starts");
    let said = String::from_utf8_lossy(&done.stdout).into_owned();
    assert!(done.status.success(), "{said}");
    said
}

#[test]
fn progress_is_one_line_on_a_terminal_and_nothing_elsewhere() {
    let bench = Bench::new();
    bench.file("hard.json", hard());
    let args = [
        "cut",
        "list",
        "hard.json",
        "--seconds",
        "4",
        "--json",
        "--no-color",
    ];
    let said = on_a_terminal(&bench, &args);
    let (progress, plan) = said.split_at(said.find('{').expect("a plan"));
    assert!(
        progress.starts_with("\rPlanning: 0 of 1 materials, 0 proven"),
        "{progress:?}"
    );
    assert!(progress.contains("; hard: "), "{progress:?}");
    assert!(!progress.contains('\n'), "it is one line: {progress:?}");
    assert!(progress.ends_with(" \r"), "it is taken away: {progress:?}");
    assert!(plan.contains("cutting-plan/1"));
    let elsewhere = bench.run(&args);
    assert_eq!(
        (elsewhere.exit, elsewhere.stderr.as_str()),
        (0, ""),
        "{elsewhere}"
    );
}

#[test]
fn the_clock_ends_the_search() {
    let bench = Bench::new();
    bench.file("hard.json", hard());
    let ran = bench.run(&["cut", "list", "hard.json", "--seconds", "0"]);
    assert_eq!((ran.exit, ran.stderr.as_str()), (0, ""), "{ran}");
    assert!(
        ran.stdout.contains("from the best possible."),
        "{}",
        ran.stdout
    );
}
