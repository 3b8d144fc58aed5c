use crate::bench::Bench;

/// Every command, as it is typed.
const COMMANDS: &[&[&str]] = &[
    &[],
    &["job"],
    &["job", "new"],
    &["job", "sizes"],
    &["job", "check"],
    &["job", "advise"],
    &["job", "weight"],
    &["job", "place"],
    &["job", "price"],
    &["job", "compare"],
    &["job", "budget"],
    &["job", "draw"],
    &["job", "ticket"],
    &["job", "largest-art"],
    &["job", "schema"],
    &["job", "convert"],
    &["cut"],
    &["cut", "list"],
    &["cut", "jobs"],
    &["light"],
    &["light", "fade"],
    &["light", "budget"],
    &["air"],
    &["air", "wood"],
    &["air", "sheet"],
    &["air", "dew"],
    &["air", "wall"],
    &["air", "pack"],
    &["hang"],
    &["hang", "wire"],
    &["hang", "screw"],
    &["hang", "rail"],
    &["hang", "hardware"],
    &["hang", "lift"],
    &["setting"],
    &["setting", "list"],
    &["setting", "show"],
    &["material"],
    &["material", "list"],
    &["material", "show"],
    &["prices"],
    &["prices", "import"],
    &["prices", "undo"],
    &["prices", "check"],
    &["prices", "compare"],
    &["quote"],
    &["quote", "make"],
    &["quote", "show"],
    &["quote", "invoice"],
    &["quote", "print"],
    &["length"],
    &["length", "read"],
    &["label"],
    &["label", "print"],
    &["record"],
    &["record", "key"],
    &["record", "write"],
    &["record", "read"],
    &["record", "verify"],
    &["card"],
    &["card", "print"],
    &["wall"],
    &["wall", "show"],
    &["wall", "map"],
    &["wall", "template"],
    &["condition"],
    &["condition", "print"],
    &["demo"],
    &["demo", "write"],
    &["serve"],
    &["completions"],
];

#[test]
fn short_long_and_spelled_out_help_agree() {
    let bench = Bench::new();
    for command in COMMANDS {
        let [short, long, spelled] = [
            [command, &["-h"][..]],
            [command, &["--help"]],
            [&["help"], command],
        ]
        .map(|words| bench.run(&words.concat()));
        assert_eq!(
            (long.exit, long.stderr.as_str()),
            (0, ""),
            "{command:?}: {long}"
        );
        assert_eq!(short.stdout, long.stdout, "{command:?}");
        assert_eq!(spelled.stdout, long.stdout, "{command:?}");
        assert!(
            long.stdout.contains("Exit codes: 0 done; 1 "),
            "{command:?}: {long}"
        );
    }
}

#[test]
fn help_opens_with_an_example_that_runs() {
    for command in COMMANDS {
        let bench = Bench::new().shop(); // its own, because some examples write files
        let help = bench.run(&[command, &["--help"][..]].concat()).stdout;
        let example = help
            .strip_prefix("Example: rabbet ")
            .and_then(|rest| rest.lines().next());
        let example =
            example.unwrap_or_else(|| panic!("{command:?} opens without an example:\n{help}"));
        assert!(
            example.starts_with(&command.join(" ")),
            "{command:?}: {example}"
        );
        let words = words(example);
        let words: Vec<&str> = words.iter().map(String::as_str).collect();
        if let ["serve", rest @ ..] = words.as_slice() {
            // It runs until it is stopped; any free port, because another may have its own.
            let serving = bench.serve(&[rest, &["--address", "127.0.0.1:0"]].concat());
            assert!(serving.get("/").starts_with("HTTP/1.1 200 "), "{example}");
            continue;
        }
        let ran = bench.run(&words);
        assert_eq!(ran.exit, 0, "{example}: {ran}");
    }
}

/// Words as a shell splits them, with single quotes.
fn words(line: &str) -> Vec<String> {
    let pieces = line.split('\'').enumerate();
    let split = |(at, piece): (usize, &str)| -> Vec<String> {
        if at % 2 == 1 {
            vec![piece.to_owned()]
        } else {
            piece.split_whitespace().map(str::to_owned).collect()
        }
    };
    pieces.flat_map(split).collect()
}

#[test]
fn the_list_of_commands_is_whole() {
    let bench = Bench::new();
    for command in COMMANDS.iter().filter(|command| command.len() < 2) {
        let help = bench.run(&[command, &["--help"][..]].concat()).stdout;
        let listed = help
            .lines()
            .skip_while(|line| *line != "Commands:")
            .skip(1)
            .take_while(|line| !line.is_empty());
        let named = |line: &&str| line.starts_with("  ") && !line.starts_with("   ");
        for name in listed
            .filter(named)
            .filter_map(|line| line.split_whitespace().next())
            .filter(|name| *name != "help")
        {
            let whole = [command, &[name][..]].concat();
            assert!(
                COMMANDS.contains(&whole.as_slice()),
                "{whole:?} is not in the list of this test"
            );
        }
    }
}

#[test]
fn the_first_page() {
    insta::assert_snapshot!("first_page", Bench::new().run(&["--help"]));
    insta::assert_snapshot!(
        "job_sizes_page",
        Bench::new().run(&["job", "sizes", "--help"])
    );
}

#[test]
fn help_keeps_to_the_house_words() {
    let bench = Bench::new();
    for command in COMMANDS {
        let help = bench
            .run(&[command, &["--help"][..]].concat())
            .stdout
            .to_lowercase();
        for word in ["invalid", "illegal", "please", "sorry", "oops"] {
            assert!(!help.contains(word), "{command:?} says {word}");
        }
    }
}

#[test]
fn the_version_is_told() {
    let ran = Bench::new().run(&["--version"]);
    assert_eq!(
        (ran.exit, ran.stdout),
        (0, format!("rabbet {}\n", env!("CARGO_PKG_VERSION")))
    );
}
