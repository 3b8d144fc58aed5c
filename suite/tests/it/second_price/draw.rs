//! Drawing a quote: a piece, prices and terms, as a question to both computations.

use std::fmt::Write;

use serde_json::{Map, Value, json};

/// Numbers that look drawn by chance and are the same on every run (the generator of Steele, Lea and Flood,
/// *Fast splittable pseudorandom number generators*, 2014; constants from memory).
pub struct Chance(pub u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut bits = self.0;
        bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        bits ^ (bits >> 31)
    }

    /// From, to, both included.
    fn from(&mut self, from: u64, to: u64) -> u64 {
        from + self.next() % (to - from + 1)
    }

    fn yes(&mut self) -> bool {
        self.from(0, 1) == 1
    }

    fn one<'a>(&mut self, of: &[&'a str]) -> &'a str {
        let last = u64::try_from(of.len()).expect("a short list") - 1;
        of[usize::try_from(self.from(0, last)).expect("a place in it")]
    }

    /// A decimal of so many places.
    fn decimal(&mut self, from: u64, to: u64, places: u32) -> String {
        decimal(self.from(from, to), places)
    }
}

fn decimal(digits: u64, places: u32) -> String {
    if places == 0 {
        return digits.to_string();
    }
    let one = 10_u64.pow(places);
    let width = usize::try_from(places).expect("few places");
    format!("{}.{:0width$}", digits / one, digits % one)
}

const WAYS: [&str; 5] = ["half-away", "half-even", "up", "down", "toward-zero"];
const CURRENCIES: [(&str, u32); 5] = [("USD", 2), ("EUR", 2), ("GBP", 2), ("JPY", 0), ("KWD", 3)];

/// A question: everything both computations need.
pub fn question(chance: &mut Chance) -> Value {
    let inch = chance.yes();
    let (currency, places) = CURRENCIES[usize::try_from(chance.from(0, 4)).expect("a place")];
    let double = chance.yes();
    // In sixteenths of an inch, written as 128ths; or in millimetres.
    let mut length = |from: u64, to: u64| {
        if inch {
            json!(chance.from(from, to) * 8)
        } else {
            json!(chance.from(from * 8 / 5, to * 8 / 5))
        }
    };
    let (width, height) = (length(64, 480), length(64, 480));
    let (border, reveal, face) = (length(32, 72), length(3, 6), length(10, 40));
    let money = Money { places };
    let rules = lines(chance, double, inch, money);
    let ids: Vec<Value> = rules.iter().map(|rule| rule["id"].clone()).collect();
    let rates: Vec<Value> = (0..chance.from(0, 2)).map(|_| rate(chance)).collect();
    let discounts: Vec<Value> = (0..chance.from(0, 2))
        .map(|_| discount(chance, &ids))
        .collect();
    let shown = chance
        .yes()
        .then(|| json!({ "step": money.some(chance, 5, 500), "way": chance.one(&WAYS) }));
    let rush = if chance.yes() {
        chance.decimal(5, 60, 2)
    } else {
        String::new()
    };
    let rounding: Map<String, Value> = ["unit", "line", "discount", "tax"]
        .into_iter()
        .map(|name| (name.to_owned(), json!(chance.one(&WAYS))))
        .collect();
    json!({
        "units": if inch { "in" } else { "mm" },
        "width": width, "height": height,
        "overlap": if inch { 16 } else { 3 },
        "border": border, "reveal": reveal, "face": face,
        "undermat": if inch { 32 } else { 6 },
        "double": double,
        "currency": currency, "places": places,
        "hour": money.some(chance, 3_000, 9_000),
        "minimum": money.some(chance, 0, 30_000),
        "rounding": rounding,
        "rules": rules, "rates": rates, "discounts": discounts,
        "rush": rush,
        "inside": chance.yes(), "per_line": chance.yes(),
        "shown": shown,
        "deposit": chance.decimal(0, 100, 2),
    })
}

/// Amounts of a currency.
#[derive(Clone, Copy)]
struct Money {
    places: u32,
}

impl Money {
    /// An amount between so many hundredths of a dollar's worth, in minor units above zero.
    fn some(self, chance: &mut Chance, from: u64, to: u64) -> String {
        chance.decimal(from.max(1), to, self.places)
    }
}

fn rate(chance: &mut Chance) -> Value {
    let on: &[&str] = match chance.from(0, 3) {
        0 => &["goods"],
        1 => &["goods", "rush", "minimum"],
        2 => &["labour"],
        _ => &[],
    };
    json!({ "share": chance.decimal(0, 250, 3), "on": on })
}

fn discount(chance: &mut Chance, ids: &[Value]) -> Value {
    let mut on: Vec<&Value> = ids.iter().filter(|_| chance.yes()).collect();
    if on.is_empty() {
        on.push(&ids[0]);
    }
    json!({ "share": chance.decimal(1, 400, 3), "on": on })
}

fn lines(chance: &mut Chance, double: bool, inch: bool, money: Money) -> Vec<Value> {
    let mut rules = vec![("frame", "goods", frame(chance))];
    rules.push(("joining", "labour", each(chance, money)));
    rules.push(("mat", "goods", sheet(chance, inch, money)));
    if double {
        rules.push(("second-mat", "goods", sheet(chance, inch, money)));
    }
    rules.push(("glazing", "goods", sheet(chance, inch, money)));
    rules.push(("mount", "goods", sheet(chance, inch, money)));
    rules.push(("backing", "goods", sheet(chance, inch, money)));
    let minutes = json!({ "way": "minutes", "minutes": chance.from(1, 95).to_string() });
    rules.push(("fitting", "labour", minutes));
    let drawn = rules.into_iter().map(|(id, class, mut rule)| {
        rule["id"] = json!(id);
        rule["class"] = json!(class);
        if chance.from(0, 3) == 0 {
            rule["at_least"] = json!(money.some(chance, 1_000, 4_000));
        }
        rule
    });
    drawn.collect()
}

fn frame(chance: &mut Chance) -> Value {
    let way = chance.one(&["length", "cost-length"]);
    json!({
        "way": way,
        "cost": chance.decimal(10_000, 140_000, 4),
        "waste": chance.decimal(0, 30, 2),
        "factor": chance.decimal(10, 50, 1),
        "plus": "0",
    })
}

fn each(chance: &mut Chance, money: Money) -> Value {
    json!({ "way": "each", "price": money.some(chance, 300, 3_000) })
}

fn sheet(chance: &mut Chance, inch: bool, money: Money) -> Value {
    match chance.from(0, 3) {
        0 => each(chance, money),
        1 => bands(chance, inch, money),
        2 => json!({
            "way": "cost-area",
            "cost": chance.decimal(3_000, 900_000, 4),
            "waste": chance.decimal(0, 40, 2),
            "factor": chance.decimal(10, 50, 1),
            "plus": money.some(chance, 1, 900),
        }),
        _ => json!({
            "way": "area",
            "cost": chance.decimal(3_000, 900_000, 4),
            "waste": chance.decimal(0, 40, 2),
            "factor": chance.decimal(10, 50, 1),
            "least": chance.decimal(0, 300, 2),
        }),
    }
}

fn bands(chance: &mut Chance, inch: bool, money: Money) -> Value {
    let (step, width) = if inch { (1, 10) } else { (10, 250) };
    let mut price = chance.from(500, 2_000);
    let bands: Vec<Value> = (2..6)
        .map(|at| {
            price += chance.from(50, 900);
            json!([(at * width).to_string(), decimal(price, money.places)])
        })
        .collect();
    json!({
        "way": "bands", "step": step.to_string(), "bands": bands,
        "each": width.to_string(), "add": money.some(chance, 50, 900),
    })
}

/// The question's piece as a job document.
pub fn job(question: &Value) -> String {
    let inch = question["units"] == "in";
    let length = |name: &str| {
        let number = question[name].as_u64().expect("a whole number");
        match (inch, number / 128, number % 128) {
            (false, ..) => number.to_string(),
            (true, whole, 0) => whole.to_string(),
            (true, 0, part) => format!("{part}/128"),
            (true, whole, part) => format!("{whole} {part}/128"),
        }
    };
    let mut text = format!(
        "rabbet = 1\nunits = {}\n[[art]]\nmedium = \"print\"\nwidth = \"{}\"\nheight = \"{}\"\noverlap = \"{}\"\n[borders]\nall = \"{}\"\n[mount]\nboard = \"mount\"\n[[backing]]\nboard = \"backing\"\n[[glazing]]\nsheet = \"glazing\"\nundersize = \"0\"\n",
        question["units"],
        length("width"),
        length("height"),
        length("overlap"),
        length("border"),
    );
    let _ = writeln!(
        text,
        "[[frame]]\nmoulding = \"frame\"\nface = \"{}\"\nlip = \"{}\"\nrabbet_depth = \"2 in\"",
        length("face"),
        if inch { "1/4" } else { "6" },
    );
    if question["double"] == true {
        let _ = writeln!(
            text,
            "[[mat]]\nboard = \"mat\"\nreveal = \"{}\"",
            length("reveal")
        );
        text.push_str("[[mat]]\nboard = \"second-mat\"\n");
    } else {
        text.push_str("[[mat]]\nboard = \"mat\"\n");
    }
    materials(question, &mut text);
    text
}

/// What the piece is made of, and what it costs.
fn materials(question: &Value, text: &mut String) {
    let inch = question["units"] == "in";
    let currency = question["currency"].as_str().expect("a code");
    let per = if inch { "foot" } else { "metre" };
    let per_area = if inch { "ft2" } else { "m2" };
    for rule in question["rules"].as_array().expect("a list") {
        let id = rule["id"].as_str().expect("an id");
        let (like, per) = match id {
            "frame" => ("oak-square-1", per),
            "glazing" => ("glass-2.5", per_area),
            "backing" => ("foam-5", per_area),
            "joining" | "fitting" => continue,
            _ => ("mat-4-conservation", per_area),
        };
        let _ = writeln!(text, "[[material]]\ncode = \"{id}\"\nlike = \"{like}\"");
        if let Some(cost) = rule["cost"].as_str() {
            let _ = writeln!(
                text,
                "[[material.cost]]\nprice = \"{cost} {currency}\"\nper = \"{per}\"\nsince = \"2026-01-01\""
            );
        }
    }
}

/// The question's prices as a rule set.
pub fn rules(question: &Value) -> String {
    let said = |value: &Value| value.as_str().expect("text").to_owned();
    let currency = said(&question["currency"]);
    let mut text = format!(
        "prices = 1\nname = \"Drawn\"\ncurrency = \"{currency}\"\nholds_from = \"2026-01-01\"\nhour = \"{} {currency}\"\nminimum_order = \"{} {currency}\"\n",
        said(&question["hour"]),
        said(&question["minimum"]),
    );
    text.push_str("[rounding]\n");
    for (name, way) in question["rounding"].as_object().expect("a table") {
        let _ = writeln!(text, "{name} = {way}");
    }
    if let Some(shown) = question["shown"].as_object() {
        let step = said(&shown["step"]);
        let _ = writeln!(
            text,
            "shown = {{ step = \"{step} {currency}\", way = {} }}",
            shown["way"]
        );
    }
    let _ = writeln!(text, "[deposit]\nshare = {}", question["deposit"]);
    if question["rush"] != "" {
        let _ = writeln!(
            text,
            "[rush]\nsays = \"Rush\"\nwhy = \"haste\"\nshare = {}",
            question["rush"]
        );
    }
    taxes_and_discounts(question, &mut text);
    let inch = question["units"] == "in";
    for rule in question["rules"].as_array().expect("a list") {
        text.push_str(&one_rule(rule, &currency, inch));
    }
    text
}

fn taxes_and_discounts(question: &Value, text: &mut String) {
    let _ = writeln!(
        text,
        "[tax]\ninside = {}\nper_line = {}",
        question["inside"], question["per_line"]
    );
    for (at, rate) in question["rates"]
        .as_array()
        .expect("a list")
        .iter()
        .enumerate()
    {
        let _ = writeln!(
            text,
            "[[tax.rate]]\nsays = \"Tax {at}\"\nshare = {}\non = {}",
            rate["share"], rate["on"]
        );
    }
    for (at, one) in question["discounts"]
        .as_array()
        .expect("a list")
        .iter()
        .enumerate()
    {
        let _ = writeln!(
            text,
            "[[discount]]\nid = \"d{at}\"\nsays = \"Less\"\nshare = {}\non = {}",
            one["share"], one["on"]
        );
    }
}

fn one_rule(rule: &Value, currency: &str, inch: bool) -> String {
    let said = |name: &str| rule[name].as_str().unwrap_or_default().to_owned();
    let id = said("id");
    let (charges, when) = match id.as_str() {
        "mat" => ("mat", "when = { to_nth = 1 }\n"),
        "second-mat" => ("mat", "when = { from_nth = 2 }\n"),
        other => (other, ""),
    };
    let mut text = format!(
        "[[rule]]\nid = \"{id}\"\nsays = \"{id}\"\nwhy = \"drawn\"\ncharges = \"{charges}\"\nclass = {}\n{when}",
        rule["class"]
    );
    if !said("at_least").is_empty() {
        let _ = writeln!(text, "least = \"{} {currency}\"", said("at_least"));
    }
    let (waste, factor) = (said("waste"), said("factor"));
    let unit = if inch { "in" } else { "mm" };
    let area = if inch { "ft2" } else { "m2" };
    let _ = match said("way").as_str() {
        "length" => writeln!(
            text,
            "length = {{ waste = \"{waste}\", factor = \"{factor}\" }}"
        ),
        "cost-length" => writeln!(
            text,
            "cost = {{ waste = \"{waste}\", factor = \"{factor}\" }}"
        ),
        "cost-area" => writeln!(
            text,
            "cost = {{ waste = \"{waste}\", factor = \"{factor}\", plus = \"{} {currency}\" }}",
            said("plus")
        ),
        "area" => writeln!(
            text,
            "area = {{ per = \"{area}\", waste = \"{waste}\", factor = \"{factor}\", least = \"{}\" }}",
            said("least")
        ),
        "bands" => writeln!(text, "{}", one_table(rule, currency, unit)),
        "minutes" => writeln!(text, "minutes = {{ each = {} }}", said("minutes")),
        _ => writeln!(
            text,
            "each = {{ price = \"{} {currency}\" }}",
            said("price")
        ),
    };
    text
}

fn one_table(rule: &Value, currency: &str, unit: &str) -> String {
    let said = |name: &str| rule[name].as_str().unwrap_or_default();
    let bands = rule["bands"].as_array().expect("a list").iter();
    let bands: Vec<String> = bands
        .map(|band| {
            let (to, price) = (band[0].as_str(), band[1].as_str());
            let (to, price) = (to.expect("a size"), price.expect("a price"));
            format!("{{ to = \"{to} {unit}\", price = \"{price} {currency}\" }}")
        })
        .collect();
    format!(
        "bands = {{ step = \"{} {unit}\", band = [{}], beyond = {{ each = \"{} {unit}\", add = \"{} {currency}\" }} }}",
        said("step"),
        bands.join(", "),
        said("each"),
        said("add")
    )
}
