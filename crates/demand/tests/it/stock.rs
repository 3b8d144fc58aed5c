//! The stock document: what it says, what it refuses, what it counts in a plan.

use demand::{Basis, Buy, Extent, Origin, Stock, Work};
use measure::{Currency, Length, Size};

use crate::bench::{batch, day};
use crate::naive::plans;

const RACK: &str = r#"
stock = 1
units = "in"

[[stick]]
material = "oak-square-1"
length = "9 ft"
count = 2
cost = "18.00 USD"
run = "K7"
bin = "rail 2"
flaws = [["30", "31 1/2"]]

[[stick]]
material = "oak-square-1"
length = 120
cost = "20.00 USD"

[[remnant]]
label = "M7"
material = "oak-square-1"
length = "40 1/2"
run = "K6"
bin = "tray"

[[sheet]]
material = "foam-5"
size = "32 x 40"
count = 3

[[remnant]]
label = "K3"
material = "foam-5"
size = "600 x 500 mm"
"#;

#[test]
fn lengths_are_read_as_people_write_them() {
    let stock = Stock::read(RACK.as_bytes()).unwrap();
    assert_eq!(stock.buy, Buy::Catalogue);
    assert_eq!(stock.sticks[0].length, Length::inches(108));
    let flaw = [Length::inches(30), Length::inch_fraction(63, 2)];
    assert_eq!(stock.sticks[0].flaws, [flaw]);
    assert_eq!(stock.sticks[1].length, Length::inches(120));
    let foam = Size::new(Length::mm(600), Length::mm(500));
    assert_eq!(stock.remnants[1].extent, Extent::Sheet(foam));
}

#[test]
fn json_says_the_same() {
    let text = r#"{"stock": 1, "units": "mm", "buy": "listed",
        "stick": [{"material": "ash-metric-25", "length": 2400.5, "count": 4}]}"#;
    let stock = Stock::read(text.as_bytes()).unwrap();
    assert_eq!(stock.sticks[0].length, Length::micrometres(2_400_500));
    assert_eq!(stock.buy, Buy::Listed);
}

/// Checks the sentences of a refused document.
fn check(text: &str, expected: &[&str]) {
    let faults = Stock::read(text.as_bytes()).expect_err(text);
    let said: Vec<String> = faults.iter().map(ToString::to_string).collect();
    assert_eq!(said, expected, "{text}");
}

#[test]
fn what_can_not_be_read_is_named() {
    check(
        "stock = 1\ncolour = \"red\"\n",
        &[
            "the stock document, line 2: there is no field `colour`; there are `stock`, `units`, `buy`, `next_label`, `stick`, `sheet`, `remnant`, `cut`",
        ],
    );
    check(
        "stock = 2\n",
        &[
            "the stock document says `stock = 2`, this program reads 1; update the program, or write `stock = 1`",
        ],
    );
    check(
        "{\"stock\": 1, \"stick\": [{\"material\": \"a\"}]}",
        &["the stock document, stick[0]: line 1: it lacks the field `length`; write it"],
    );
    check(
        "stock = 1\n[[stcik]]\nmaterial = \"oak\"\n",
        &["the stock document, line 2: there is no field `stcik`; did you mean `stick`?"],
    );
    check(
        "stock = 1\n[[stick]]\nmaterial = \"oak\"\nlength = 9\ncount = \"two\"\n",
        &["the stock document, line 5: count: found \"two\"; write a whole number, such as 2"],
    );
    let unheld = Stock::read(b"\xff").expect_err("no text");
    assert_eq!(
        unheld[0].to_string(),
        "the stock document is not UTF-8 text: byte 0 can't be read; save it as UTF-8"
    );
}

#[test]
fn all_entries_that_can_not_be_read_come_together() {
    let text = "stock = 1\n\
        [[stick]]\nmaterial = \"oak\"\nlength = \"9 f\"\n\
        [[stick]]\nmaterial = \"oak\"\nlength = 0\n\
        [[stick]]\nmaterial = \"oak\"\nlength = 100\ntrim = [60, 40]\nflaws = [[5, 4]]\n\
        [[sheet]]\nmaterial = \"foam\"\nsize = \"32\"\ncost = \"-1 USD\"\ncount = 1000000001\n\
        [[remnant]]\nlabel = \"B1\"\nmaterial = \"foam\"\n\
        [[remnant]]\nlabel = \"B2\"\nmaterial = \"foam\"\nsize = \"9 x 9\"\n\
        [[remnant]]\nlabel = \"B2\"\nmaterial = \"foam\"\nsize = \"9 x 9\"\n\
        [[cut]]\nmaterial = \"foam\"\nkerf = \"1/8\"\nleast_strip = 1\n";
    let faults = Stock::read(text.as_bytes()).expect_err("much is wrong");
    let starts = [
        "stick 1 (oak): length \"9 f\": ",
        "stick 2 (oak): length \"0\": it must be above zero",
        "stick 3 (oak): trim \"60 and 40\": it leaves nothing of the stick",
        "stick 3 (oak): flaws \"5 and 4\": write from before to, both on the stick",
        "sheet 1 (foam): size \"32\": ",
        "sheet 1 (foam): cost \"-1 USD\": it can't be less than nothing",
        "sheet 1 (foam): count \"1000000001\": the most is 1000000000",
        "remnant 1 (B1): write `length` for a stick or `size` for a sheet, one of the two",
        "cut 1 (foam): least_strip \"foam\": a least strip is for what is scored and broken",
        "two remnants are labelled B2; give one of them another label",
    ];
    assert_eq!(faults.len(), starts.len(), "{faults:#?}");
    for (fault, start) in faults.iter().zip(starts) {
        assert!(fault.to_string().starts_with(start), "{fault}\n{start}");
    }
}

#[test]
fn what_would_be_left_aside_without_a_word_is_refused() {
    let stick = "stock = 1\n[[stick]]\nmaterial = \"oak\"\nlength = 100\n";
    check(
        &format!("{stick}trim = [1, 2, 3]\nflaws = [[5, 6, 7], [8, 9]]\n"),
        &[
            "stick 1 (oak): trim \"1 and 2 and 3\": write two lengths, such as [\"1/2\", \"1/4\"]",
            "stick 1 (oak): flaws \"5 and 6 and 7\": write two lengths, such as [\"1/2\", \"1/4\"]",
        ],
    );
    check(
        "stock = 1\n[[remnant]]\nlabel = \"B1\"\nmaterial = \"foam\"\nsize = \"9 x 9\"\ntrim = [1, 1]\nflaws = [[5, 6]]\n",
        &[
            "remnant 1 (B1): trim \"1 and 1\": it is for remnants of sticks only; leave it out",
            "remnant 1 (B1): flaws \"5 and 6\": it is for remnants of sticks only; leave it out",
        ],
    );
    check(
        "stock = 1\n[[cut]]\nmaterial = \"foam\"\nkerf = 0\n[[cut]]\nmaterial = \"foam\"\n",
        &["two [[cut]] are about foam; keep one of them"],
    );
    check(
        "stock = 1\n[[cut]]\nmaterial = \"foam\"\nkerf = 30\n",
        &[
            "cut 1 (foam): kerf \"30\": no cut takes more than 1 in; write the width of the blade or bit, such as \"1/8 in\" or \"3 mm\"",
        ],
    );
}

/// Codes nobody knows are said, and the plan is made all the same.
#[test]
fn codes_nobody_knows_are_named_with_the_one_that_was_likely_meant() {
    let stock = "stock = 1\n[[stick]]\nmaterial = \"oak-sqaure-1\"\nlength = 100\n\
        [[cut]]\nmaterial = \"zzz\"\nkerf = \"1/8\"\n";
    let day = day(&["harbour"], stock, &[]);
    assert_eq!(
        day.unknown,
        [
            "what the stock document says of oak-sqaure-1 is not used: no material has this code; did you mean oak-square-1?",
            "what the stock document says of zzz is not used: no material has this code; write the code as the catalogue has it",
        ]
    );
}

/// What one of each counts: 9 ft at 18.00 on the rack 95 %, 10 ft at 20.00 new, and a remnant of
/// 40 1/2 in at 38 % of the lesser rate (both are 1/6 dollar an inch).
///
/// rack    = 1800 × 0.95           = 1710
/// remnant = 40.5 × 16 2/3 × 0.38  = 256.5, up to 257
#[test]
fn stock_counts_its_cost_and_remnants_a_share_of_it() {
    let day = day(&["harbour"], RACK, &[]);
    let oak = batch(&day, "oak-square-1");
    assert_eq!(oak.basis, Basis::Money(Currency::from_code("USD").unwrap()));
    let Work::Lengths { problem, .. } = &oak.work else {
        panic!("oak comes in sticks");
    };
    let counted: Vec<_> = oak
        .sources
        .iter()
        .zip(&problem.stock)
        .map(|(s, t)| (s.name.as_str(), s.origin, t.count, t.cost, t.remnant))
        .collect();
    assert_eq!(
        counted,
        [
            ("M7", Origin::Remnant, Some(1), 257, true),
            ("108 in from the rack", Origin::Rack, Some(2), 1710, false),
            ("120 in new", Origin::Buy, None, 2000, false),
        ]
    );
    // The flaw of the rack's sticks, in 1/64 in; the remnant loses 1/8 in at its start.
    assert_eq!(problem.stock[1].flaws, [(1920, 2016)]);
    assert_eq!(problem.stock[0].trim, (8, 0));
    assert_eq!(problem.stock[0].run.as_deref(), Some("K6"));
}

/// Without any cost a sheet counts its area: 32 × 40 in are 2048 × 2560 square ticks, and those on
/// the rack 95 % of it, up; new sheets in the catalogue's sizes may be bought beside.
#[test]
fn without_costs_stock_counts_its_size() {
    let day = day(&["harbour"], RACK, &[]);
    let foam = batch(&day, "foam-5");
    assert_eq!(foam.basis, Basis::Measure);
    let Work::Sheets { problem, .. } = &foam.work else {
        panic!("foam board comes in sheets");
    };
    let counted: Vec<_> = problem
        .stock
        .iter()
        .map(|s| (s.name.as_str(), s.cost))
        .collect();
    let whole = 2048 * 2560;
    // 600 × 500 mm: 1511 (.81) × 1259 (.84) ticks, 38 %.
    let remnant = (1511_u64 * 1259 * 38).div_ceil(100);
    assert_eq!(
        counted,
        [
            ("K3", remnant),
            (
                "32 in x 40 in from the rack",
                (whole * 95_u64).div_ceil(100)
            ),
            ("32 in x 40 in new", whole),
            ("40 in x 60 in new", 2560 * 3840),
            ("48 in x 96 in new", 3072 * 6144),
        ]
    );
    let listed = RACK.replace("stock = 1", "stock = 1\nbuy = \"listed\"");
    let day = self::day(&["harbour"], &with_the_rest(&listed), &[]);
    assert_eq!(batch(&day, "foam-5").sources.len(), 2);
}

/// Sheets of everything else harbour needs.
fn with_the_rest(text: &str) -> String {
    let sheet = |code: &str| format!("[[sheet]]\nmaterial = \"{code}\"\nsize = \"40 x 60\"\n");
    format!(
        "{text}{}{}",
        sheet("glass-uv-2.5"),
        sheet("mat-4-conservation")
    )
}

#[test]
fn what_is_written_reads_back() {
    let text = RACK.replace(
        "[[remnant]]\nlabel = \"K3\"",
        "[[cut]]\nmaterial = \"foam-5\"\nkerf = \"1/16\"\n\n[[remnant]]\nlabel = \"K3\"",
    );
    let stock = Stock::read(text.as_bytes()).unwrap();
    assert_eq!(stock.cuts.len(), 1);
    assert_eq!(Stock::read(stock.to_toml().as_bytes()), Ok(stock));
}

/// Harbour's frame takes one of two sticks; of it 23 in are left, too short to keep. Its back takes
/// one of three sheets: 21 1/4 × 17 1/4 of 32 × 40 leaves 10 3/4 × 40, too narrow, and
/// 21 1/4 × 22 3/4, which is kept.
#[test]
fn the_rack_after_the_day() {
    let text = RACK.replace("count = 2", "count = 2\ntrim = [\"1/2\", \"1/2\"]");
    let text = text.replace("flaws = [[\"30\", \"31 1/2\"]]\n", "");
    let stock = Stock::read(text.as_bytes()).unwrap();
    let day = day(&["harbour"], &text, &[]);
    let mut plans = plans(&day, false);
    // The naive plan takes what is bought; let it take the rack's instead.
    for (batch, plan) in day.batches.iter().zip(&mut plans) {
        match (batch.ware.code.as_str(), plan) {
            ("oak-square-1", demand::Plan::Lengths(plan)) => {
                plan.layouts[0].stock = 1;
                plan.layouts[0].remnants = vec![(5408, 6880)];
            }
            ("foam-5", demand::Plan::Sheets(plan)) => {
                plan.layouts[0].from = cutting::sheets::From::Stock(1);
            }
            _ => {}
        }
    }
    let outcome = day.settle(&plans).unwrap();
    let after = day.stock_after(&outcome, &stock);
    assert_eq!(after.sticks[0].count, Some(1));
    assert_eq!(after.sheets[0].count, Some(2));
    let labels: Vec<&str> = after.remnants.iter().map(|r| r.label.as_str()).collect();
    // Two of what was there, what mat and mount leave and drop, the back's rest, what the glass leaves.
    assert_eq!(labels[..2], ["M7", "K3"]);
    let back = after.remnants.iter().find(|r| r.label == "K4").unwrap();
    assert_eq!(back.material, "foam-5");
    assert_eq!(
        back.extent.exact(measure::Unit::Inch),
        "21 1/4 in x 22 3/4 in"
    );
    assert!(!labels.contains(&"M8"), "23 in of oak are not kept");
    assert_eq!(Stock::read(after.to_toml().as_bytes()), Ok(after));
}
