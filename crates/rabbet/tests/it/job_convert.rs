use crate::bench::Bench;

#[test]
fn there_and_back_is_the_same_job() {
    let bench = Bench::new();
    let json = bench.run(&["job", "convert", "print.toml", "--to", "json"]);
    assert_eq!((json.exit, json.stderr.as_str()), (0, ""), "{json}");
    assert_eq!(json.json()["art"][0]["width"], "8 in");
    let toml = bench.run_with(
        &["job", "convert", "-", "--to", "toml"],
        json.stdout.as_bytes(),
    );
    assert_eq!(toml.exit, 0, "{toml}");
    let again = bench.run_with(
        &["job", "convert", "-", "--to", "json"],
        toml.stdout.as_bytes(),
    );
    assert_eq!(again.stdout, json.stdout);
    let sizes = |job: &str| {
        bench
            .run_with(&["job", "sizes", "-"], job.as_bytes())
            .stdout
    };
    assert_eq!(sizes(&toml.stdout), sizes(&bench.text("print.toml")));
}
