//! The table in `suite/ref/bench`, and tables that must not pass.

use trade::Catalogue;

use super::{Table, Verdict, judge, kinds};

const TABLE: &str = include_str!("../../ref/bench/cases.csv");

fn judged(text: &str) -> Vec<Verdict> {
    let table = Table::read(text).unwrap_or_else(|fault| panic!("{fault}"));
    let catalogue = Catalogue::default();
    table
        .rows
        .iter()
        .map(|row| judge(row, &catalogue))
        .collect()
}

/// The only difference of a table of one row.
fn difference(kind: &str, inputs: &str, outputs: &str) -> String {
    let text = format!("id,kind,inputs,outputs\nX1,{kind},{inputs},{outputs}\n");
    let mut verdicts = judged(&text);
    let mut differences = verdicts.remove(0).differences;
    assert_eq!(differences.len(), 1, "{differences:?}");
    differences.remove(0)
}

fn refused(text: &str) -> String {
    Table::read(text).expect_err("it can't be read").to_string()
}

#[test]
fn every_case_agrees() {
    let verdicts = judged(TABLE);
    assert_eq!(verdicts.len(), 14);
    for verdict in &verdicts {
        assert!(verdict.differences.is_empty(), "{verdict:#?}");
        assert!(verdict.compared > 0, "{verdict:#?}");
    }
    for kind in kinds() {
        assert!(
            verdicts.iter().any(|verdict| verdict.kind == kind),
            "{kind}"
        );
    }
}

/// Every expected value of every row, made wrong, is found out.
#[test]
fn every_wrong_answer_is_found_out() {
    let header = "id,kind,inputs,outputs";
    let rows = TABLE.lines().filter(|line| line.starts_with('B'));
    let mut tried = 0;
    for line in rows {
        let (head, outputs) = line.rsplit_once(',').expect("four columns");
        let outputs: Vec<&str> = outputs.split("; ").collect();
        for wrong in 0..outputs.len() {
            let mut outputs: Vec<String> = outputs.iter().map(|&each| each.to_owned()).collect();
            outputs[wrong] = spoilt(&outputs[wrong]);
            let text = format!("{header}\n{head},{}\n", outputs.join("; "));
            let verdict = judged(&text).remove(0);
            assert_eq!(verdict.differences.len(), 1, "{text}{verdict:#?}");
            tried += 1;
        }
    }
    assert_eq!(tried, 33, "outputs of the fourteen cases");
}

/// The last digit that ends a number, one off.
fn spoilt(output: &str) -> String {
    let (name, value) = output.split_once('=').expect("a name and a value");
    let (at, digit) = value
        .char_indices()
        .rev()
        .find(|(at, sign)| sign.is_ascii_digit() && !value[..*at].ends_with('/'))
        .expect("a number");
    let other = if digit == '9' { '8' } else { '9' };
    format!("{name}={}{other}{}", &value[..at], &value[at + 1..])
}

#[test]
fn rows_that_are_not_understood_fail() {
    assert_eq!(
        difference("bevel", "ply_t=1/16; window=8; colour=3", "foot=7 7/8"),
        "kind bevel does not use the input colour"
    );
    assert_eq!(
        difference("bevel", "window=8", "foot=7 7/8"),
        "input ply_t is missing; kind bevel needs it"
    );
    assert_eq!(
        difference("bevel", "ply_t=1/16; window=8", "food=7 7/8"),
        "food: kind bevel gives no such output; it gives core_on_slope, core_seen_plan, foot"
    );
    assert_eq!(
        difference("bevel", "ply_t=1/16; window=8", "foot=7.9"),
        "foot: expected 7.9, found 7 7/8"
    );
    assert_eq!(
        difference(
            "wire_tension",
            "weight_lb=20; rings_apart=20; rise=0",
            "angle_deg=0"
        ),
        "the wire rises 0 in (0 mm); leave it slack, so that it rises above its rings under load"
    );
    assert_eq!(
        difference(
            "glass_weight",
            "glaz_w=22; glaz_h=28; glass_mm=3; kg_per_m2=6.25",
            "kg=2.4839"
        ),
        "kg_per_m2: the catalogue's glass weighs 7500000 mg to the square metre at this thickness"
    );
}

#[test]
fn tables_that_are_none_are_refused() {
    let table = |row: &str| refused(&format!("id,kind,inputs,outputs\n{row}\n"));
    assert_eq!(
        table("X1,bevel,ply_t,foot=1"),
        "row X1: “ply_t” is not written name=value"
    );
    assert_eq!(
        table("X1,bevel,ply_t=1; ply_t=2,foot=1"),
        "row X1: ply_t stands twice"
    );
    assert_eq!(
        table("X1,bevel,ply_t=1,"),
        "row X1 has no outputs to compare"
    );
    assert!(
        table("X1,level,ply_t=1,foot=1")
            .starts_with("row X1: kind level is not known; the kinds are mirror_cut")
    );
    assert_eq!(
        table("X1,bevel,ply_t=1,foot=1\nX1,bevel,ply_t=1,foot=1"),
        "two rows have the id X1"
    );
    assert_eq!(refused("id,kind,inputs\n"), "column outputs is missing");
    assert_eq!(
        refused("id,kind,inputs,outputs,mood\n"),
        "column mood is not known; the columns are id, kind, inputs, outputs and note"
    );
    assert_eq!(refused("id,kind,inputs,outputs\n"), "the table has no rows");
}
