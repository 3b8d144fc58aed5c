use crate::bench::Bench;

#[test]
fn a_print_is_weighed_part_by_part() {
    let bench = Bench::new();
    insta::assert_snapshot!("job_weight", bench.run(&["job", "weight", "print.toml"]));
    let json = bench.run(&["job", "weight", "print.toml", "--json"]).json();
    assert!(json["answer"]["total"]["nanograms"].is_i64(), "{json}");
    assert!(json["answer"]["bench_index"]["value"].is_f64(), "{json}");
}

#[test]
fn its_total_opens_its_working() {
    let bench = Bench::new();
    let ran = bench.run(&["job", "weight", "print.toml", "--why", "weight.total"]);
    assert!(ran.stdout.contains("weight.total"), "{ran}");
}

#[test]
fn a_part_nobody_knows_the_weight_of_is_named() {
    let bench = Bench::new();
    let ran = bench.run(&["job", "weight", "canvas.toml"]);
    assert!(ran.stdout.contains("Not counted"), "{ran}");
}
