use std::path::PathBuf;

use super::*;
use crate::tree::Tree;
use crate::workspace::Workspace;

const CLEAN: Check = Check {
    name: "clean",
    breaches: |_| Vec::new(),
};
const LITTERED: Check = Check {
    name: "littered",
    breaches: |_| vec![Breach::at("a.rs", 3, "is too long".to_owned())],
};

fn check(checks: &[Check], clean: bool, expected: &str) {
    let tree = Tree::of(&[]);
    let workspace = Workspace::of(&[]);
    let house = House {
        root: PathBuf::new(),
        tree,
        workspace,
    };
    let mut said = Vec::new();
    assert_eq!(run(checks, &house, &mut said).unwrap(), clean);
    assert_eq!(String::from_utf8(said).unwrap(), expected);
}

#[test]
fn one_breach_fails_the_run_and_the_rest_is_still_checked() {
    check(&[CLEAN], true, "clean: nothing found\n");
    check(
        &[LITTERED, CLEAN],
        false,
        "littered: 1 found\n  a.rs:3: is too long\nclean: nothing found\n",
    );
}

#[test]
fn every_check_has_its_own_name() {
    let mut names = CHECKS.map(|check| check.name);
    names.sort_unstable();
    assert!(names.windows(2).all(|pair| pair[0] != pair[1]), "{names:?}");
}
