//! Two quotes worked by hand in the trade's handbook of this project, to the cent (common practice, no source;
//! the prices are invented).

use pricing::{Asked, Priced, RuleSet, price};
use sizing::derive;
use trade::{Catalogue, Date, Job, Settings, Units};

const TABLES: &str = include_str!("rules/tables.toml");
const COST_PLUS: &str = include_str!("rules/cost-plus.toml");

const DOUBLE_MAT: &str = r#"
rabbet = 1
units = "in"
[[art]]
medium = "print"
width = "8"
height = "10"
overlap = "1/8"
[[material]]
code = "deep-oak"
like = "oak-square-1"
[material.profile]
face = "1 in"
height = "1 in"
lip = "1/4 in"
rabbet_depth = "5/8 in"
[[material.cost]]
price = "3.40 USD"
per = "foot"
since = "2026-01-01"
[[frame]]
moulding = "deep-oak"
[[glazing]]
sheet = "glass-uv-2.5"
[borders]
all = "2 1/2"
[[mat]]
board = "mat-4-conservation"
reveal = "1/4"
[[mat]]
board = "mat-4-sea-green"
[mount]
board = "mat-4-conservation"
[[backing]]
board = "foam-5"
[attachment]
hold = "t-hinge"
[hardware]
hanger = "wire"
[cover]
sheet = "kraft paper"
"#;

const FLOATER: &str = r#"
rabbet = 1
units = "mm"
[[art]]
medium = "canvas"
width = "600"
height = "800"
thickness = "38"
[[material]]
code = "tray-oak"
kind = "moulding"
[[material.cost]]
price = "5.20 GBP"
per = "metre"
since = "2026-01-01"
[[frame]]
role = "floater"
moulding = "tray-oak"
gap = "8"
wall = "8"
ledge = "28"
rabbet_depth = "41"
[attachment]
hold = "mechanical"
[settings]
"moulding.charge_rule" = "cut list"
"#;

pub(crate) fn day() -> Date {
    Date::read("2026-11-25").expect("a day")
}

fn priced(job: &str, rules: &str, asked: &Asked, units: Units) -> Priced {
    let job = Job::read(job.as_bytes()).expect("the job reads");
    let rules = RuleSet::read(rules).expect("the rules read");
    let catalogue = Catalogue::starter();
    let sizes = derive(&job, &catalogue, &Settings::defaults(units)).expect("it derives");
    price(&job, &sizes, &catalogue, &rules, asked)
}

fn amounts(priced: &Priced) -> Vec<(String, String)> {
    let line = |line: &pricing::PricedLine| (line.rule.says.clone(), line.amount.number());
    priced.lines.iter().map(line).collect()
}

fn check(priced: &Priced, lines: &[(&str, &str)], totals: &[(&str, &str)]) {
    assert_eq!(priced.faults, []);
    let wanted: Vec<(String, String)> = lines
        .iter()
        .map(|(says, amount)| ((*says).to_owned(), (*amount).to_owned()))
        .collect();
    assert_eq!(amounts(priced), wanted);
    for (path, amount) in totals {
        let line = priced.working.find(path).expect(path);
        let code = priced.currency.code();
        assert_eq!(line.value.to_string(), format!("{amount} {code}"), "{path}");
    }
    assert_eq!(priced.working.recheck(), []);
}

#[test]
fn quote_1_by_tables() {
    let asked = Asked {
        discounts: vec!["trade".to_owned()],
        ..Asked::on(day())
    };
    let priced = priced(DOUBLE_MAT, TABLES, &asked, Units::Inches);
    check(
        &priced,
        &[
            ("Moulding", "82.14"),
            ("Cut and join", "12.00"),
            ("Glass", "31.00"),
            ("Mat", "24.00"),
            ("Second mat", "15.00"),
            ("Hinge and board", "16.00"),
            ("Backing", "6.50"),
            ("Fitting", "18.00"),
        ],
        &[
            ("price.1.unit", "13.69"),
            ("price.subtotal", "204.64"),
            ("price.1.discount", "20.46"),
            ("price.sum", "184.18"),
            ("price.1.tax", "15.19"),
            ("price.total", "199.37"),
            ("price.deposit", "99.69"),
            ("price.balance", "99.68"),
        ],
    );
    assert_eq!(priced.lines[0].quantity.to_string(), "6 ft");
    let united = priced.working.find("price.3.united").expect("united");
    assert_eq!(united.value.to_string(), "29 in (736.6 mm)");
}

#[test]
fn quote_2_cost_plus() {
    let asked = Asked {
        rush: true,
        ..Asked::on(day())
    };
    let priced = priced(FLOATER, COST_PLUS, &asked, Units::Millimetres);
    check(
        &priced,
        &[
            ("Moulding", "48.05"),
            ("Labour", "37.50"),
            ("Sundries", "4.80"),
        ],
        &[
            ("price.subtotal", "90.35"),
            ("price.rush", "18.07"),
            ("price.sum", "108.42"),
            ("price.total", "130.10"),
            ("price.shown", "130.50"),
            ("price.resplit", "108.75"),
            ("price.net", "108.75"),
            ("price.1.tax", "21.75"),
            ("price.deposit", "65.25"),
            ("price.balance", "65.25"),
        ],
    );
    assert_eq!(priced.lines[0].quantity.to_string(), "3 m");
    let totals = &priced.totals;
    assert_eq!(totals.total.to_string(), "130.50 GBP");
    assert_eq!(
        totals.rounding.map(measure::Money::number),
        Some("0.33".to_owned())
    );
    assert_eq!(totals.taxes[0].base.number(), "108.75");
}
