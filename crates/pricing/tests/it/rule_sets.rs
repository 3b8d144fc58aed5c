//! Reading rule sets and looking them over.

use pricing::{Part, RuleSet};
use sizing::Severity;
use trade::Date;

use crate::worked_quotes::day;

const HEAD: &str = "prices = 1\nname = \"Test\"\ncurrency = \"USD\"\nholds_from = \"2027-01-01\"\n";

fn rule(charges: &str, rest: &str) -> String {
    format!(
        "{HEAD}[[rule]]\nid = \"it\"\nsays = \"It\"\nwhy = \"so\"\ncharges = \"{charges}\"\n{rest}\n"
    )
}

fn refused(text: &str) -> String {
    let faults = RuleSet::read(text).expect_err(text);
    let sentences: Vec<String> = faults.iter().map(ToString::to_string).collect();
    sentences.join(" | ")
}

#[test]
fn what_can_not_be_read_is_refused_with_what_would_do() {
    let check = |text: &str, wanted: &str| {
        let said = refused(text);
        assert!(said.contains(wanted), "{said}\nwanted: {wanted}");
    };
    check(&rule("mat", "each = { prize = \"3.00 USD\" }"), "prize");
    check(&rule("matt", "each = { price = \"3.00 USD\" }"), "matt");
    check(
        &rule("mat", "each = { price = 3.5 }"),
        "put the number in quotes",
    );
    check(
        &rule("mat", "each = { price = \"3.00 EUR\" }"),
        "it: 3.00 EUR is not in USD",
    );
    check(&rule("mat", ""), "it says exactly one way of charging");
    check(
        &rule("mat", "minutes = {}"),
        "only `work` has minutes of its own",
    );
    check("name = \"x\"", "prices = 1");
    for days in ["0", "4294967295"] {
        check(
            &format!("{HEAD}valid_days = {days}\n"),
            "a quote stands for one day or more",
        );
    }
    let rate = "[[exchange]]\nfrom = \"EUR\"\nrate = \"1.1\"\n";
    check(
        &format!("{HEAD}{rate}{rate}"),
        "exchange from EUR: its rate is known already",
    );
    check("prices = 7", "reads up to 1");
    check(
        &format!("{HEAD}[deposit]\nshare = \"120 %\"\n"),
        "deposit: share lies between 0 % and 100 %",
    );
    check(
        &rule("frame", "length = { factor = \"about 3\" }"),
        "“about 3” is no number",
    );
}

#[test]
fn a_rule_set_reads_back_as_written() {
    let rules = RuleSet::read(demo::PRICES).expect("it reads");
    assert_eq!(RuleSet::read(&rules.to_toml()), Ok(rules));
}

fn codes(text: &str) -> Vec<(&'static str, Severity)> {
    let rules = RuleSet::read(text).unwrap_or_else(|faults| panic!("{faults:?}"));
    let found = rules.check(day());
    let of_rules = found.iter().filter(|fault| fault.part == "it");
    of_rules.map(|fault| (fault.code, fault.severity)).collect()
}

fn found(text: &str, code: &str, severity: Severity) {
    let found = codes(text);
    assert!(found.contains(&(code, severity)), "{code}: {found:?}");
}

#[test]
fn bands_are_looked_over_before_they_go_live() {
    let bands = |bands: &str| rule("mat", &format!("bands = {{ band = [{bands}] }}"));
    found(
        &bands(
            "{ to = \"20 in\", price = \"1.00 USD\" }, { from = \"21 in\", to = \"30 in\", price = \"2.00 USD\" }",
        ),
        "rules.gap",
        Severity::Refuse,
    );
    found(
        &bands(
            "{ to = \"30 in\", price = \"1.00 USD\" }, { to = \"20 in\", price = \"2.00 USD\" }",
        ),
        "rules.bands",
        Severity::Refuse,
    );
    found(
        &bands(
            "{ to = \"20 in\", price = \"3.00 USD\" }, { to = \"30 in\", price = \"2.00 USD\" }",
        ),
        "rules.cheaper",
        Severity::Warn,
    );
}

#[test]
fn rules_are_looked_over_before_they_go_live() {
    found(
        &rule("frame", "length = { factor = \"0.9\" }"),
        "rules.below_cost",
        Severity::Warn,
    );
    found(
        &rule(
            "mat",
            "each = { price = \"1.00 USD\" }\nwhen = { over = \"30 in\", to = \"20 in\" }",
        ),
        "rules.never",
        Severity::Refuse,
    );
    found(
        &rule("mat", "sheet = { parts = [\"0.5\", \"0.25\"] }"),
        "rules.parts",
        Severity::Refuse,
    );
    found(
        &rule(
            "frame",
            "length = { factors = [{ factor = \"3\" }, { to = \"1.00 USD\", factor = \"2\" }] }",
        ),
        "rules.tiers",
        Severity::Refuse,
    );
}

#[test]
fn a_date_that_has_passed_and_parts_left_out_are_said() {
    let rules = RuleSet::read(&rule("mat", "each = { price = \"1.00 USD\" }")).expect("it reads");
    let later = Date::read("2027-06-01").expect("a day");
    let found = rules.check(later);
    assert!(found.iter().any(|fault| fault.code == "rules.past"));
    let uncovered: Vec<&str> = found
        .iter()
        .filter(|fault| fault.code == "rules.uncovered")
        .map(|fault| fault.part.as_str())
        .collect();
    assert!(uncovered.contains(&Part::Glazing.word()));
    assert!(!uncovered.contains(&Part::Mat.word()));
}

#[test]
fn conditions_that_never_hold_are_said() {
    let never = |charges: &str, when: &str| {
        let text = rule(
            charges,
            &format!("each = {{ price = \"1.00 USD\" }}\nwhen = {{ {when} }}"),
        );
        codes(&text).contains(&("rules.never", Severity::Refuse))
    };
    for (charges, when) in [
        ("mat", "from_nth = 3, at_most = 2"),
        ("mat", "to_nth = 0"),
        ("mat", "to = \"0 in\""),
        ("mat", "has_material = false, class = [\"museum\"]"),
        ("mat", "role = [\"floater\"]"),
        ("glazing", "shape = [\"oval\"]"),
        ("cover", "class = [\"museum\"]"),
        ("fitting", "hanger = [\"wire\"]"),
    ] {
        assert!(never(charges, when), "{charges}: {when}");
    }
    for (charges, when) in [
        ("mat", "from_nth = 2, at_most = 2"),
        ("mat", "shape = [\"oval\"], class = [\"museum\"]"),
        ("joining", "role = [\"floater\"]"),
        ("hanging", "hanger = [\"wire\"]"),
    ] {
        assert!(!never(charges, when), "{charges}: {when}");
    }
    for way in ["length = { factor = \"2\" }", "sheet = { parts = [\"1\"] }"] {
        found(&rule("sink", way), "rules.unlike", Severity::Refuse);
    }
}

#[test]
fn gaps_between_rules_are_said() {
    let gaps = |whens: &[&str]| {
        let mut text = HEAD.to_owned();
        for (at, when) in whens.iter().enumerate() {
            let rule = format!(
                "[[rule]]\nid = \"r{at}\"\nsays = \"It\"\nwhy = \"so\"\ncharges = \"mat\"\n\
                 each = {{ price = \"1.00 USD\" }}\nwhen = {{ {when} }}\n"
            );
            text.push_str(&rule);
        }
        let rules = RuleSet::read(&text).expect("it reads");
        let found = rules.check(day());
        let gaps = found.iter().filter(|fault| fault.code == "rules.gap");
        gaps.map(|fault| fault.found.clone()).collect::<Vec<_>>()
    };
    assert_eq!(gaps(&["to = \"20 in\"", "over = \"20 in\""]), [""; 0]);
    let between = gaps(&["over = \"21 in\"", "to = \"20 in\""]);
    assert_eq!(between.len(), 1, "{between:?}");
    assert!(between[0].contains("above 20 in") && between[0].contains("up to 21 in"));
    assert!(gaps(&["to = \"20 in\""])[0].contains("above 20 in"));
    assert!(gaps(&["from_nth = 2"])[0].contains("number 1 of its kind"));
    assert!(gaps(&["to_nth = 1", "from_nth = 3"])[0].contains("number 2 of its kind"));
}
