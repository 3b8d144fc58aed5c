use crate::bench::Bench;

#[test]
fn every_setting_is_listed() {
    let bench = Bench::new();
    let ran = bench.run(&["setting", "list"]);
    assert_eq!((ran.exit, ran.stderr.as_str()), (0, ""), "{ran}");
    for line in [
        "mat\n",
        "  mat.overlap ",
        "  mat.bevel ",
        "45°\n",
        "  frame.leg_scale ",
        "  limit.openings ",
    ] {
        assert!(ran.stdout.contains(line), "{line:?}: {ran}");
    }
    let json = bench
        .run(&["setting", "list", "--json", "--units", "mm"])
        .json();
    let list = json["settings"].as_array().expect("a list");
    assert!(list.len() > 50);
    assert!(list.iter().all(|setting| setting["changed_by"].is_null()));
    let told = |setting: &serde_json::Value| {
        ran.stdout
            .contains(&format!("  {} ", setting["id"].as_str().expect("an id")))
    };
    assert!(list.iter().all(told), "{ran}");
}

#[test]
fn the_shops_file_is_laid_over() {
    let bench = Bench::new();
    bench.file(
        "shop.toml",
        "\"mat.overlap\" = \"3/16\"\nframe.tail = \"3 mm\"\nlimit.openings = 500\n",
    );
    let args = ["--settings", "shop.toml", "setting", "list", "--changed"];
    let ran = bench.run(&args);
    insta::assert_snapshot!(ran);
    let by_name = bench
        .command(&["setting", "list", "--changed"])
        .env("RABBET_SETTINGS", "shop.toml")
        .output();
    assert_eq!(
        String::from_utf8(by_name.expect("it runs").stdout).expect("text"),
        ran.stdout
    );
    let none = bench.run(&["setting", "list", "--changed"]);
    assert_eq!((none.exit, none.stdout.as_str()), (0, ""), "{none}");
}

#[test]
fn a_shop_that_measures_in_millimetres_says_so() {
    let bench = Bench::new();
    bench.file("shop.toml", "units = \"mm\"\n\"mat.overlap\" = \"4\"\n");
    let ran = bench.run(&[
        "--settings",
        "shop.toml",
        "setting",
        "show",
        "mat.overlap",
        "--json",
    ]);
    assert_eq!(ran.json()["value"]["quanta"], 4 * 16_000);
    assert_eq!(ran.json()["changed_by"], "shop");
}

#[test]
fn a_changed_setting_changes_the_sizes() {
    let bench = Bench::new();
    bench.file("shop.toml", "\"mat.overlap\" = \"1/4\"\n");
    let width = |args: &[&str]| bench.run(args).json()["package"]["width"]["quanta"].as_i64();
    let (before, after) = (
        width(&["job", "sizes", "print.toml", "--json"]).expect("a width"),
        width(&[
            "job",
            "sizes",
            "print.toml",
            "--json",
            "--settings",
            "shop.toml",
        ])
        .expect("a width"),
    );
    // An overlap 1/8 in larger on both sides makes window and package 1/4 in narrower.
    assert_eq!(before - after, 101_600);
}

#[test]
fn everything_wrong_with_the_file_is_told_with_its_line() {
    let bench = Bench::new();
    bench.file(
        "shop.toml",
        "\"mat.overlap\" = \"3/16\"\n\"mat.overlop\" = \"1/4\"\n\"frame.tail\" = \"16 7/\"\n\
         \"mat.border_measured\" = \"guessed\"\n\"frame.allowance\" = \"12 ft\"\n",
    );
    insta::assert_snapshot!(
        "bad_values",
        bench.run(&["--settings", "shop.toml", "setting", "list"])
    );
    bench.file("shop.toml", "units = \"cubits\"\n\"mat.overlap\" = [1]\n");
    insta::assert_snapshot!(
        "bad_form",
        bench.run(&["--settings", "shop.toml", "job", "sizes", "print.toml"])
    );
    bench.file("shop.toml", "mat.overlap = = 3\n");
    insta::assert_snapshot!(
        "bad_toml",
        bench.run(&["--settings", "shop.toml", "setting", "list"])
    );
    let missing = bench.run(&["--settings", "none.toml", "setting", "list"]);
    assert_eq!(missing.exit, 3, "{missing}");
}
