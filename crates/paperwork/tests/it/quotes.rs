//! Quotes, choices and invoices, read back with outside readers.

use drawing::{Ink, Look};
use measure::Money;
use paperwork::{
    Copy, InvoiceWords, Paper, PaperworkError, QuoteHead, QuotePaper, QuotePiece, Stamp,
    choices_of, choices_pdf, quote_of, quote_pdf,
};
use pricing::invoice::Party;
use pricing::{Asked, Heading, Quote, RuleSet};
use trade::{Catalogue, Date, Job, Settings};

use crate::margins::edges_are_white;
use crate::reader::Print;
use crate::sample::pictures;

const MADE: Stamp = Stamp {
    year: 2026,
    month: 11,
    day: 25,
    hour: 9,
    minute: 40,
};

fn day() -> Date {
    Date::read("2026-11-25").unwrap()
}

fn quote(name: &str, number: &str, change: impl Fn(&mut Job)) -> Quote {
    quote_by(demo::PRICES, name, number, change)
}

fn quote_by(prices: &str, name: &str, number: &str, change: impl Fn(&mut Job)) -> Quote {
    let asked = Asked {
        discounts: vec!["series".to_owned()],
        rush: true,
        ..Asked::on(day())
    };
    asked_by(prices, name, number, (change, &asked))
}

fn asked_by(
    prices: &str,
    name: &str,
    number: &str,
    (change, asked): (impl Fn(&mut Job), &Asked),
) -> Quote {
    let mut job = Job::read(demo::job(name).unwrap().toml.as_bytes()).unwrap();
    change(&mut job);
    let catalogue = Catalogue::starter().under(demo::CATALOGUE).unwrap();
    let sizes = sizing::derive(&job, &catalogue, &Settings::defaults(job.units)).unwrap();
    let rules = RuleSet::read(prices).unwrap();
    let heading = Heading {
        number: number.to_owned(),
        given: day(),
    };
    let given = Quote::give(&heading, (&job, &sizes), &catalogue, &rules, asked);
    given.unwrap().0
}

/// Opened from its JSON, as it is years later.
fn piece(quote: &Quote) -> QuotePiece {
    drawn(quote, Look::page(&pictures, Ink::Colour))
}

/// One of several, its lettering larger since it is printed smaller.
fn small(quote: &Quote) -> QuotePiece {
    drawn(quote, Look::ticket(&pictures, Ink::Colour))
}

fn drawn(quote: &Quote, look: Look<'_>) -> QuotePiece {
    let opened = Quote::open(&quote.to_json()).unwrap();
    let catalogue = opened.quote.catalogue().unwrap();
    let sizes = sizing::derive(&opened.job, &catalogue, &opened.quote.settings()).unwrap();
    QuotePiece {
        elevation: drawing::elevation(&opened.job, &sizes, &look).unwrap(),
        quote: opened.quote,
        job: opened.job,
        sizes,
    }
}

fn head(copy: Copy) -> QuoteHead {
    QuoteHead {
        shop: demo::SHOP.name.into(),
        made: MADE,
        copy,
        invoice: None,
    }
}

fn paper_of(quote: &Quote, copy: Copy) -> QuotePaper {
    quote_of(piece(quote), head(copy)).unwrap()
}

/// Every figure of a quote as its document holds it, the way a column prints it.
fn figures(quote: &Quote) -> Vec<String> {
    let totals = &quote.totals;
    let lines = quote
        .lines
        .iter()
        .flat_map(|line| [Some(line.amount), line.unit]);
    let taxes = totals.taxes.iter().flat_map(|tax| [tax.base, tax.amount]);
    let others = [
        Some(totals.subtotal),
        totals.rush,
        totals.minimum,
        Some(totals.total),
        totals.deposit,
        totals.balance,
    ];
    let all = lines.chain(taxes.map(Some)).chain(others).flatten();
    let discounts = totals.discounts.iter().map(|one| one.amount);
    all.chain(discounts)
        .map(|amount| amount.0.number())
        .collect()
}

fn holds(text: &str, figure: &str) -> bool {
    let bare = |word: &str| word.trim_matches(|c: char| c == '−' || c == ',').to_owned();
    text.split_whitespace().any(|word| bare(word) == figure)
}

#[test]
fn every_figure_of_every_demo_job_stands_on_the_paper_to_the_cent() {
    for job in demo::JOBS {
        let quote = quote(job.name, "2026-0117", |_| ());
        let paper = paper_of(&quote, Copy::Customer);
        let text = Print::of(quote_pdf(&paper, Paper::Letter).unwrap()).text();
        for figure in figures(&quote) {
            assert!(holds(&text, &figure), "{}: no {figure} in {text}", job.name);
        }
        for said in [
            "Quote 2026-0117",
            "2026-12-24",
            "Lanternfield Frames",
            "page 1 of",
        ] {
            assert!(text.contains(said), "{}: no {said} in {text}", job.name);
        }
        for term in &quote.terms {
            assert!(text.contains(term.as_str()), "{}: {term}", job.name);
        }
    }
}

#[test]
fn only_the_shops_copy_knows_cost_margin_minutes_and_reasons() {
    let quote = quote("heron", "Q-8", |_| ());
    let customer = Print::of(quote_pdf(&paper_of(&quote, Copy::Customer), Paper::A4).unwrap());
    let shop = Print::of(quote_pdf(&paper_of(&quote, Copy::Shop), Paper::A4).unwrap());
    let (customer, shop) = (customer.text(), shop.text());
    let own = [quote.shop.cost.unwrap(), quote.shop.margin.unwrap()];
    for amount in own.map(|amount| amount.0.number()) {
        assert!(holds(&shop, &amount), "no {amount} in {shop}");
        assert!(!holds(&customer, &amount), "{amount} in {customer}");
    }
    let minutes = format!("{} min", quote.shop.minutes);
    assert!(shop.contains(&minutes) && !customer.contains(&minutes));
    for word in ["Cost", "Margin", "For the shop only", "With this piece"] {
        assert!(shop.contains(word), "no {word} in {shop}");
        assert!(!customer.contains(word), "{word} in {customer}");
    }
    for line in &quote.lines {
        assert!(shop.contains(&line.why), "no {} in {shop}", line.why);
        assert!(!customer.contains(&line.why), "{} in {customer}", line.why);
    }
}

/// ISO 32000 readers agree that it is sound; the edge is what a printer cannot reach.
#[test]
fn edges_stay_white_bytes_repeat_and_the_file_is_sound() {
    let quote = quote("fern", "Q-9", |_| ());
    let pieces = || [(); 3].map(|()| small(&quote)).to_vec();
    for paper in [Paper::A4, Paper::Letter] {
        for copy in [Copy::Customer, Copy::Shop] {
            let one = quote_pdf(&paper_of(&quote, copy), paper).unwrap();
            assert_eq!(one, quote_pdf(&paper_of(&quote, copy), paper).unwrap());
            let many = || choices_of(pieces(), head(copy)).unwrap();
            let sheet = choices_pdf(&many(), paper).unwrap();
            assert_eq!(sheet, choices_pdf(&many(), paper).unwrap());
            for bytes in [one, sheet] {
                let print = Print::of(bytes);
                edges_are_white(&print);
                let said = print.read_by("qpdf", &["--check", "{}"]);
                assert!(said.contains("No syntax or stream encoding errors"));
                let about = print.read_by("pdfinfo", &["{}"]);
                assert!(
                    about
                        .split_whitespace()
                        .collect::<String>()
                        .contains("Tagged:yes"),
                    "{about}"
                );
            }
        }
    }
}

#[test]
fn choices_say_totals_and_differences() {
    let first = quote("heron", "Q-1", |_| ());
    let second = quote("heron", "Q-2", |job| {
        job.mat.pop();
    });
    let third = quote("heron", "Q-3", |_| ());
    let pieces = [&first, &second, &third].map(small).to_vec();
    let sheet = choices_of(pieces, head(Copy::Customer)).unwrap();
    let text = Print::of(choices_pdf(&sheet, Paper::A4).unwrap()).text();
    let less = first.total().checked_sub(second.total()).unwrap();
    assert!(less.minor > 0);
    for said in [
        format!("−{}", less.number()),
        first.total().to_string(),
        second.total().to_string(),
        "the same price".to_owned(),
    ] {
        assert!(text.contains(&said), "no {said} in {text}");
    }
    assert!(!text.contains("Margin"), "{text}");
}

/// What makes one dearer is said also where the parts are the same.
#[test]
fn choices_say_haste_discounts_and_exemption() {
    let rushed = quote("heron", "Q-1", |_| ());
    let exempt = Asked {
        exempt: true,
        ..Asked::on(day())
    };
    let calm = asked_by(demo::PRICES, "heron", "Q-2", (|_: &mut Job| (), &exempt));
    let pieces = vec![small(&rushed), small(&calm)];
    let sheet = choices_of(pieces, head(Copy::Customer)).unwrap();
    let differs = &sheet.choices[1].differs;
    for said in [
        "Exempt from tax".to_owned(),
        "Without: Wanted within three days, 25 %".to_owned(),
        format!("Without: {}", rushed.totals.discounts[0].says),
    ] {
        assert!(differs.contains(&said), "no {said} in {differs:?}");
    }
}

#[test]
fn one_quote_or_seven_are_no_choices() {
    let quote = quote("fern", "Q-1", |_| ());
    for given in [1, 7] {
        let pieces = vec![small(&quote); given];
        assert!(matches!(
            choices_of(pieces, head(Copy::Customer)),
            Err(PaperworkError::Choices { given: found, most: 6 }) if found == given
        ));
    }
}

fn invoiced(quote: &Quote, paid: Option<Money>) -> Result<QuotePaper, PaperworkError> {
    let party = |name: &str| Party {
        name: name.to_owned(),
        street: Some("4 Tallow Yard".to_owned()),
        town: Some("Lanternfield".to_owned()),
        post_code: Some("00412".to_owned()),
        country: "US".to_owned(),
        ..Party::default()
    };
    let invoice = InvoiceWords {
        number: "INV-31".to_owned(),
        given: "2026-12-01".to_owned(),
        due: "2026-12-15".to_owned(),
        seller: party("Lanternfield Frames"),
        buyer: party("#strong[Ashby] *& Co* <b>"),
        paid,
    };
    let head = QuoteHead {
        invoice: Some(invoice),
        ..head(Copy::Customer)
    };
    quote_of(piece(quote), head)
}

#[test]
fn an_invoice_names_both_sides_its_tax_and_what_is_left() {
    let quote = quote("heron", "Q-4", |_| ());
    let deposit = quote.totals.deposit.unwrap().0;
    let paper = invoiced(&quote, Some(deposit)).unwrap();
    let text = Print::of(quote_pdf(&paper, Paper::A4).unwrap()).text();
    let left = quote.total().checked_sub(deposit).unwrap();
    for said in [
        "Invoice INV-31",
        "#strong[Ashby] *& Co* <b>",
        "4 Tallow Yard",
        "00412 Lanternfield",
        "2026-12-15",
        "Q-4 of 2026-11-25",
        "Tax, rate by rate",
        &left.to_string(),
    ] {
        assert!(text.contains(said), "no {said} in {text}");
    }
    assert!(!text.contains("Deposit, with the order"), "{text}");
    let over = quote
        .total()
        .checked_add(Money::new(1, quote.total().currency));
    assert!(matches!(
        invoiced(&quote, over.ok()),
        Err(PaperworkError::Paid { .. })
    ));
}

#[test]
fn hostile_words_stay_text() {
    let quote = quote("fern", "#read(\"/etc/passwd\")", |job| {
        job.art[0].title = Some("$x$ <script> #panic() \u{202e}*bold*".to_owned());
        job.identity.customer = Some("{{1+1}} \\end".to_owned());
    });
    let text = Print::of(quote_pdf(&paper_of(&quote, Copy::Customer), Paper::A4).unwrap()).text();
    for said in ["#read(", "$x$ <script> #panic() *bold*", "{{1+1}} \\end"] {
        assert!(text.contains(said), "no {said} in {text}");
    }
    let unnamed = QuotePaper {
        number: " ".to_owned(),
        ..paper_of(&quote, Copy::Customer)
    };
    assert!(matches!(
        quote_pdf(&unnamed, Paper::A4),
        Err(PaperworkError::NoQuoteNumber)
    ));
}

/// Where prices hold their tax, the total stands above it.
#[test]
fn tax_inside_stands_below_the_total() {
    let prices = demo::PRICES.replace("[tax]\n", "[tax]\ninside = true\n");
    let added = paper_of(&quote("fern", "Q-5", |_| ()), Copy::Customer);
    let inside = quote_by(&prices, "fern", "Q-6", |_| ());
    assert!(inside.totals.tax_inside);
    let inside = paper_of(&inside, Copy::Customer);
    let place = |paper: &QuotePaper, says: &str| {
        let found = |row: &paperwork::QuoteSum| row.says.contains(says);
        paper.sums.iter().position(found).unwrap()
    };
    assert!(place(&added, "Sales tax") < place(&added, "Total"));
    assert!(place(&inside, "Total") < place(&inside, "In it, Sales tax"));
}

/// Two numbers with a colon between them, as drawings name their scale.
fn names_a_scale(text: &str) -> bool {
    let words: Vec<&str> = text.split_whitespace().collect();
    let number = |word: &str| word.trim_matches(['(', ')']).parse::<f64>().is_ok();
    words
        .windows(3)
        .any(|three| three[1] == ":" && number(three[0]) && number(three[2]))
}

/// They are printed smaller than they were drawn, so the scale they were drawn at is not the paper's.
#[test]
fn no_paper_names_a_scale_it_is_not_printed_at() {
    for job in demo::JOBS {
        let quote = quote(job.name, "Q-7", |_| ());
        let (large, little) = (piece(&quote), small(&quote));
        for drawn in [&large, &little] {
            assert!(names_a_scale(&drawn.elevation.scale), "{}", job.name);
            assert!(drawn.elevation.svg.contains(&drawn.elevation.scale));
        }
        let one = quote_of(large, head(Copy::Customer)).unwrap();
        assert!(!names_a_scale(&one.elevation.alt), "{}", one.elevation.alt);
        let two = choices_of(vec![little.clone(), little], head(Copy::Customer)).unwrap();
        let sheets = [
            quote_pdf(&one, Paper::Letter).unwrap(),
            choices_pdf(&two, Paper::A4).unwrap(),
        ];
        for text in sheets.map(|bytes| Print::of(bytes).text()) {
            assert!(!names_a_scale(&text), "{}: {text}", job.name);
            let unit = ["inches", "millimetres"];
            assert!(unit.iter().any(|unit| text.contains(unit)), "{text}");
        }
    }
}

#[test]
fn haste_and_the_least_order_stand_in_the_words_of_the_rules() {
    let rushed = paper_of(&quote("heron", "Q-8", |_| ()), Copy::Customer);
    let text = Print::of(quote_pdf(&rushed, Paper::A4).unwrap()).text();
    assert!(text.contains("Wanted within three days, 25 %"), "{text}");
    let prices = demo::PRICES.replace("45.00 USD", "4500.00 USD");
    assert_ne!(prices, demo::PRICES);
    let raised = quote_by(&prices, "heron", "Q-9", |_| ());
    assert!(raised.totals.minimum.is_some());
    let paper = paper_of(&raised, Copy::Customer);
    let said = "Raised to the least order, 4500.00";
    assert!(paper.sums.iter().any(|row| row.says == said), "{paper:?}");
}

/// EN 16931, BT-120: what is exempt carries the reason of the exemption.
#[test]
fn an_invoice_says_why_something_on_it_is_not_taxed() {
    let exempt = Asked {
        exempt: true,
        ..Asked::on(day())
    };
    let reason = "Resale certificate held";
    let prices = demo::PRICES.replace("reason = \"Exempt\"", &format!("reason = \"{reason}\""));
    let free = asked_by(&prices, "heron", "Q-10", (|_: &mut Job| (), &exempt));
    let paper = invoiced(&free, None).unwrap();
    let text = Print::of(quote_pdf(&paper, Paper::A4).unwrap()).text();
    assert!(text.contains(&format!("Not taxed: {reason}")), "{text}");
    // A quote is no invoice yet; where every line has its rate nothing is said.
    assert_eq!(paper_of(&free, Copy::Customer).untaxed, "");
    let taxed = quote("heron", "Q-11", |_| ());
    assert_eq!(invoiced(&taxed, None).unwrap().untaxed, "");
    // Labour left without a rate: its lines are named, those of goods are not.
    let goods = prices.replace("on = [\"labour\"]", "on = [\"rush\"]");
    let part = invoiced(&quote_by(&goods, "heron", "Q-12", |_| ()), None).unwrap();
    assert!(part.untaxed.starts_with("Not taxed ("), "{}", part.untaxed);
    assert!(part.untaxed_why == reason && !part.untaxed.contains("Wanted within"));
    // Rules that hold no reason leave it out, which the caller sees.
    let silent = demo::PRICES.replace("untaxed = ", "# untaxed = ");
    let silent = asked_by(&silent, "heron", "Q-13", (|_: &mut Job| (), &exempt));
    let paper = invoiced(&silent, None).unwrap();
    assert_eq!([&*paper.untaxed, &*paper.untaxed_why], ["Not taxed", ""]);
}
