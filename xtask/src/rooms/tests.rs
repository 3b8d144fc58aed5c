use super::*;

const MAP_OF_THREE: &str = "# Map\n\n| Floor | Room | What |\n|---|---|---|\n\
    | ground | `measure` | lengths |\n| first | `trade` | nouns |\n| doors | `rabbet` | the door |\n";

fn check(crates: &[(&str, &[&str], &[&str])], map: &str, expected: &[&str]) {
    let found = breaches(&Workspace::of(crates), &Tree::of(&[(MAP, map)]));
    let found: Vec<String> = found.iter().map(ToString::to_string).collect();
    assert_eq!(found, expected);
}

#[test]
fn rooms_that_use_only_what_is_above_pass() {
    let crates: [(&str, &[&str], &[&str]); 5] = [
        ("crates/measure", &["thiserror"], &[]),
        ("crates/trade", &["measure", "serde"], &[]),
        ("crates/rabbet", &["trade", "measure", "clap", "tokio"], &[]),
        ("suite", &["rabbet", "trade"], &[]),
        ("xtask", &["trade", "clap"], &[]),
    ];
    check(&crates, MAP_OF_THREE, &[]);
}

#[test]
fn a_room_may_not_use_one_below_it_nor_itself_nor_a_chore() {
    let crates: [(&str, &[&str], &[&str]); 4] = [
        ("crates/measure", &["trade"], &[]),
        ("crates/trade", &["trade", "xtask"], &[]),
        ("crates/rabbet", &[], &[]),
        ("xtask", &[], &[]),
    ];
    check(
        &crates,
        MAP_OF_THREE,
        &[
            "crates/measure/Cargo.toml: `measure` uses `trade`, which is not above it in the table \
             of rooms",
            "crates/trade/Cargo.toml: `trade` uses `trade`, which is not above it in the table of \
             rooms",
            "crates/trade/Cargo.toml: `trade` uses `xtask`, which is no room; only rooms may be used",
        ],
    );
}

#[test]
fn the_page_door_may_not_use_the_command_line() {
    let workspace = Workspace::of(&[("crates/web", &["rabbet"], &[])]);
    assert_eq!(misuses(&workspace.packages[0], 13, &workspace).len(), 1);
    let workspace = Workspace::of(&[("crates/rabbet", &["web"], &[])]);
    assert!(misuses(&workspace.packages[0], 14, &workspace).is_empty());
}

#[test]
fn engine_rooms_keep_effects_out() {
    for kept_out in [
        "tokio",
        "tokio-util",
        "axum-extra",
        "sea-orm",
        "rand_chacha",
        "miette",
    ] {
        let workspace = Workspace::of(&[("crates/measure", &[kept_out], &[])]);
        assert_eq!(
            misuses(&workspace.packages[0], 0, &workspace).len(),
            1,
            "{kept_out}"
        );
    }
    for welcome in ["towering", "randomize", "serde", "proptest"] {
        let workspace = Workspace::of(&[("crates/measure", &[welcome], &[])]);
        assert!(
            misuses(&workspace.packages[0], 0, &workspace).is_empty(),
            "{welcome}"
        );
    }
}

#[test]
fn a_crate_outside_the_table_and_one_in_another_folder_are_named() {
    let workspace = Workspace::of(&[("crates/odds", &[], &[]), ("crates/old/measure", &[], &[])]);
    let found = breaches(
        &workspace,
        &Tree::of(&[(MAP, "| ground | `measure` | lengths |")]),
    );
    assert_eq!(
        found.iter().map(ToString::to_string).collect::<Vec<_>>(),
        [
            "crates/odds/Cargo.toml: `odds` is no room; give it a row in xtask/src/rooms.rs and in \
             ARCHITECTURE.md",
            "crates/old/measure/Cargo.toml: the room `measure` stands in crates/old/measure; move it \
             to crates/measure",
        ]
    );
}

#[test]
fn the_map_must_match() {
    let crates: [(&str, &[&str], &[&str]); 3] = [
        ("crates/measure", &[], &[]),
        ("crates/trade", &[], &[]),
        ("crates/rabbet", &[], &[]),
    ];
    let map = "| doors | `rabbet` | x |\n| second | `trade` | x |\n| third | `drawing` | x |\n";
    check(
        &crates,
        map,
        &[
            "ARCHITECTURE.md: has no row for the room `measure`; add | ground | `measure` | ... |",
            "ARCHITECTURE.md:2: puts `trade` on the floor “second”; it stands on “first”",
            "ARCHITECTURE.md:2: has `trade` out of order; follow xtask/src/rooms.rs",
            "ARCHITECTURE.md:3: names the room `drawing`, which does not exist (yet)",
        ],
    );
}

#[test]
fn a_missing_map_is_named() {
    let found = breaches(&Workspace::of(&[]), &Tree::of(&[]));
    assert_eq!(
        found,
        [Breach::by(MAP, "is missing; it maps the rooms".to_owned())]
    );
}
