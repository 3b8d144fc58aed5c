use crate::bench::Bench;

#[test]
fn every_shell_gets_a_script() {
    let bench = Bench::new();
    for shell in ["bash", "zsh", "fish", "powershell", "elvish"] {
        let ran = bench.run(&["completions", shell]);
        assert_eq!((ran.exit, ran.stderr.as_str()), (0, ""), "{shell}");
        assert!(
            ran.stdout.contains("rabbet") && ran.stdout.contains("largest-art"),
            "{shell}"
        );
    }
}

#[test]
fn bash_loads_its_script() {
    let bench = Bench::new();
    bench.file("rabbet.bash", bench.run(&["completions", "bash"]).stdout);
    let mut bash = std::process::Command::new("bash");
    let load = "set -eu; source rabbet.bash; complete -p rabbet";
    let done = bash
        .args(["--noprofile", "--norc", "-c", load])
        .current_dir(bench.path("."))
        .output();
    let done = done.expect("bash is here");
    assert!(
        done.status.success(),
        "{}",
        String::from_utf8_lossy(&done.stderr)
    );
    assert!(String::from_utf8_lossy(&done.stdout).contains("_rabbet"));
}
