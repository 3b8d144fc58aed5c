//! Published figures and worked checks, and what the harness does with a table that is wrong.

use std::collections::BTreeSet;
use std::fs;
use std::path::PathBuf;

use suite::reference::{FileFault, files, judge, knows};

fn folder() -> PathBuf {
    PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/ref/reference"))
}

/// A file without its comments.
fn text(name: &str) -> String {
    let text = fs::read_to_string(folder().join(name));
    let text = text.unwrap_or_else(|error| panic!("{name}: {error}"));
    let lines = text.split_inclusive('\n');
    lines.filter(|line| !line.starts_with('#')).collect()
}

#[test]
fn every_reference_value_agrees() {
    let mut amiss = Vec::new();
    let mut compared = 0;
    for name in files() {
        let lines = judge(name, &text(name)).unwrap_or_else(|fault| panic!("{name}: {fault}"));
        assert!(!lines.is_empty(), "{name}");
        compared += lines.len();
        let differing = lines.iter().filter(|line| !line.agrees);
        amiss.extend(differing.map(|line| format!("{name}: {line}")));
    }
    assert!(amiss.is_empty(), "{}", amiss.join("\n"));
    assert!(compared >= 2_400, "only {compared} values were compared");
}

#[test]
fn every_file_has_its_check_and_every_check_its_file() {
    let there: BTreeSet<String> = fs::read_dir(folder())
        .expect("the folder is there")
        .map(|entry| {
            entry
                .expect("an entry")
                .file_name()
                .to_string_lossy()
                .into_owned()
        })
        .collect();
    let known: BTreeSet<String> = files().map(str::to_owned).collect();
    assert_eq!(there, known);
    assert!(!knows("wire_tension.csv"));
    let fault = judge("other_cases.csv", "a\n1\n").expect_err("nobody knows it");
    assert!(matches!(fault, FileFault::UnknownFile(_)), "{fault}");
}

/// Each number expected of each case, changed by a hundredth of itself (or by one, from none), is told apart.
#[test]
fn a_changed_number_is_told() {
    for (name, column, case) in [
        ("light_dose_cases.csv", "years_to_jnf", "LD001"),
        ("psychrometric_cases.csv", "dew_point_C", "PS002"),
        ("wood_rh_movement_cases.csv", "mitre_gap_mm", "WR001"),
        ("cold_wall_cases.csv", "condenses", "CW006"),
        ("board_spec_cases.csv", "fails_on", "BS002"),
        ("wire_tension_cases.csv", "inward_pull_N", "WT017"),
        ("rail_deflection_cases.csv", "sag_fixed_ends_mm", "RD001"),
        ("lifting_cases.csv", "LI", "LF001"),
        ("ciede2000_cases.csv", "de00", "DE010"),
        ("paper_size_cases.csv", "height_mm", "PZ001"),
    ] {
        let changed = with(name, case, column, &changed);
        let lines = judge(name, &changed).unwrap_or_else(|fault| panic!("{name}: {fault}"));
        let told: Vec<String> = lines
            .iter()
            .filter(|line| !line.agrees)
            .map(|line| format!("{} {}", line.case, line.quantity))
            .collect();
        assert_eq!(told, [format!("{case} {column}")], "{name}");
    }
}

/// A value that vanishes is told as a changed one is: a blank cell, a row left out, a fact renamed or gone.
#[test]
fn a_vanished_value_is_told() {
    let differs = |name: &str, text: &str| {
        let lines = judge(name, text).unwrap_or_else(|fault| panic!("{name}: {fault}"));
        lines.iter().any(|line| !line.agrees)
    };
    for (name, column, case) in [
        ("light_dose_cases.csv", "years_to_jnf", "LD001"),
        ("wire_tension_cases.csv", "tension_N", "WT017"),
        ("lifting_cases.csv", "LI", "LF001"),
        ("board_spec_cases.csv", "fails_on", "BS002"),
    ] {
        let blank = with(name, case, column, &|_| String::new());
        assert!(differs(name, &blank), "{name} {case} {column}");
    }
    for name in [
        "light_media.csv",
        "light_uv.csv",
        "wood_properties.csv",
        "screw_gauges.csv",
        "lifting_frequency.csv",
        "paper_sizes.csv",
        "sources.csv",
    ] {
        let whole = text(name);
        let short = whole.trim_end().rsplit_once('\n').expect("two rows").0;
        assert!(differs(name, short), "{name} without its last row");
    }
    for (name, key) in [
        ("glazing.toml", "[[fact]]"),
        ("hinging.toml", "[[rule]]"),
        ("safety.toml", "[[caution]]"),
        ("humidity.toml", "[[climate]]"),
    ] {
        let whole = text(name);
        let at = whole.find(key).expect("an entry");
        let end = whole[at + 1..]
            .find("\n[")
            .map_or(whole.len(), |end| at + 1 + end);
        let short = format!("{}{}", &whole[..at], &whole[end..]);
        assert!(differs(name, &short), "{name} without its first {key}");
    }
    let renamed = text("glazing.toml").replacen("glass density", "density of glass", 1);
    assert!(differs("glazing.toml", &renamed), "a fact of another name");
}

/// Values compared, file by file: fewer, and something vanished from a table or its check; more are pinned anew.
#[test]
fn as_many_values_are_compared_as_ever() {
    let counts = files().map(|name| {
        let lines = judge(name, &text(name)).unwrap_or_else(|fault| panic!("{name}: {fault}"));
        format!("{name} {}", lines.len())
    });
    let counts: Vec<String> = counts.collect();
    assert_eq!(counts, COUNTS);
}

/// A table with one cell of one case changed.
fn with(name: &str, case: &str, column: &str, change: &dyn Fn(&str) -> String) -> String {
    let text = text(name);
    let mut reader = csv::ReaderBuilder::new()
        .comment(Some(b'#'))
        .from_reader(text.as_bytes());
    let headers = reader.headers().expect("headers").clone();
    let at = headers.iter().position(|header| header == column);
    let at = at.unwrap_or_else(|| panic!("{name} has {column}"));
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(&headers).expect("writing to memory");
    for record in reader.records() {
        let record = record.expect("a row");
        let hit = record.get(0) == Some(case);
        let fields = record.iter().enumerate().map(|(index, field)| {
            if hit && index == at {
                change(field)
            } else {
                field.to_owned()
            }
        });
        writer.write_record(fields).expect("writing to memory");
    }
    let bytes = writer.into_inner().expect("flushed");
    String::from_utf8(bytes).expect("it was text")
}

fn changed(field: &str) -> String {
    match field {
        "0" => "1".to_owned(),
        "1" => "0".to_owned(),
        _ => match field.parse::<f64>() {
            Ok(number) => (number * 1.01).to_string(),
            Err(_) => format!("{field} changed"),
        },
    }
}

#[test]
fn a_changed_constant_is_told() {
    for (name, from, to) in [
        ("wood_properties.csv", "0.00369", "0.00396"),
        ("light_limits.csv", "600000", "500000"),
        ("screw_lateral_k.csv", "23.17", "23.71"),
        ("lifting_frequency.csv", "0.88", "0.89"),
        ("photo_sizes.csv", "88.9", "89"),
        ("glazing.toml", "1190.0", "1200.0"),
        ("humidity.toml", "0.805", "0.850"),
    ] {
        let text = text(name);
        assert!(text.contains(from), "{name} holds {from}");
        let lines = judge(name, &text.replacen(from, to, 1));
        let lines = lines.unwrap_or_else(|fault| panic!("{name}: {fault}"));
        assert!(
            lines.iter().any(|line| !line.agrees),
            "{name}: {from} to {to}"
        );
    }
}

#[test]
fn what_a_table_may_not_hold_is_refused() {
    let refused = |name: &str, text: &str| judge(name, text).expect_err(name).to_string();
    let wire = text("wire_tension_cases.csv");
    let odd = wire.replacen(",note", ",colour", 1);
    assert!(
        refused("wire_tension_cases.csv", &odd).starts_with("column colour is not known"),
        "unknown column"
    );
    let short = wire.replacen("tension_N,", "pull_N,", 1);
    let fault = refused("wire_tension_cases.csv", &short);
    assert!(fault.starts_with("column pull_N is not known"), "{fault}");
    let twice = "case_id,series,series\nPZ1,A,A\n";
    assert_eq!(
        refused("paper_size_cases.csv", twice),
        "column series stands twice"
    );
    let missing = "case_id,series\nPZ1,A\n";
    assert_eq!(
        refused("paper_size_cases.csv", missing),
        "column status is missing"
    );
    assert_eq!(
        refused("paper_size_cases.csv", "case_id\n"),
        "the table has no rows"
    );
    let fault = refused("safety.toml", "[[chapter]]\nname = \"x\"\n");
    assert!(fault.contains("key chapter is not known"), "{fault}");
}

/// A case that can't be answered differs with the reason, and does not stop the others.
#[test]
fn an_answer_that_is_refused_differs_with_its_sentence() {
    let text = "case_id,spec,ph,alkaline_reserve_pct,kappa,passes,fails_on,status,source_id\n\
        A,ISO 0000,7,2,3,1,,COMPUTED,B1\nB,ISO 9706:1994 permanent paper,17,2,3,1,,COMPUTED,B1\n";
    let lines = judge("board_spec_cases.csv", text).expect("it reads");
    assert!(
        lines[0]
            .value
            .starts_with("there is no specification “ISO 0000”"),
        "{}",
        lines[0]
    );
    assert_eq!(lines[1].value, "the pH is 17; give 0 to 14");
    assert!(lines.iter().all(|line| !line.agrees));
}

/// Values compared, file by file, when the tables were last read by hand.
const COUNTS: [&str; 56] = [
    "light_dose_cases.csv 80",
    "light_limit_cases.csv 18",
    "light_cci_years_cases.csv 55",
    "light_uv_cases.csv 54",
    "psychrometric_cases.csv 98",
    "cold_wall_cases.csv 32",
    "humidity_half_time_cases.csv 18",
    "sheet_movement_cases.csv 10",
    "window_cover_cases.csv 24",
    "wood_emc_cases.csv 228",
    "wood_coefficient_cases.csv 44",
    "wood_movement_cases.csv 24",
    "wood_rh_movement_cases.csv 54",
    "reflectance_cases.csv 60",
    "ar_coating_cases.csv 8",
    "glass_designation_cases.csv 20",
    "sheet_weight_cases.csv 48",
    "sheet_stiffness_cases.csv 12",
    "board_spec_cases.csv 24",
    "board_weight_cases.csv 9",
    "sandwich_mass_cases.csv 4",
    "hinge_count_cases.csv 20",
    "hinge_load_cases.csv 16",
    "wire_tension_cases.csv 52",
    "working_load_cases.csv 24",
    "wall_hook_cases.csv 18",
    "screw_withdrawal_cases.csv 45",
    "screw_lateral_cases.csv 12",
    "rail_deflection_cases.csv 36",
    "lifting_cases.csv 72",
    "ciede2000_cases.csv 52",
    "srgb_lab_cases.csv 144",
    "paper_size_cases.csv 24",
    "light_blue_wool_dose.csv 25",
    "light_limits.csv 37",
    "light_media.csv 59",
    "light_room_lux.csv 23",
    "light_uv.csv 35",
    "light_grey_scale.csv 19",
    "wood_properties.csv 45",
    "glass_thickness_astm.csv 19",
    "glass_thickness_en.csv 23",
    "board_mass.csv 58",
    "board_specs.csv 23",
    "lifting_frequency.csv 103",
    "screw_lateral_k.csv 31",
    "screw_gauges.csv 27",
    "paper_sizes.csv 169",
    "photo_sizes.csv 76",
    "sources.csv 101",
    "boards.toml 9",
    "glazing.toml 21",
    "hinging.toml 25",
    "humidity.toml 55",
    "mechanics.toml 11",
    "safety.toml 23",
];
