//! Refusals are said in lengths, areas and money, and name what to do.

use cutting::Fault;
use measure::{Currency, Unit};
use trade::{Key, Settings, Units};

use super::{Counted, Named};
use crate::source::Basis;
use crate::tick::Tick;

struct Plain;

impl Named for Plain {
    fn piece(&self, name: &str) -> String {
        name.to_owned()
    }
    fn stock(&self, name: &str) -> String {
        name.to_owned()
    }
    fn whole(&self) -> String {
        "oak".to_owned()
    }
    fn strip(&self, least: &str) -> String {
        format!("at least {least}")
    }
    fn divide(&self) -> &'static str {
        "divide it"
    }
}

fn counted(units: Units, basis: Basis) -> Counted {
    Counted {
        tick: Tick::of(&Settings::defaults(units)),
        unit: units.unit(),
        basis,
        sheets: true,
    }
}

/// 64 ticks are an inch, 10 a millimetre.
#[test]
fn every_number_of_ticks_is_said_in_the_shop_s_unit() {
    let check = |fault: Fault, inches: &str, millimetres: &str| {
        let of = |units| counted(units, Basis::Measure).sentence(&fault, &Plain);
        assert_eq!(of(Units::Inches), inches);
        assert_eq!(of(Units::Millimetres), millimetres);
    };
    let (piece, stock) = ("rail".to_owned(), "s".to_owned());
    check(
        Fault::TooNarrow {
            piece: piece.clone(),
            side: 1168,
            least: 1920,
        },
        "rail is 18 1/4 in on its short side; at least 30 in",
        "rail is 116.8 mm on its short side; at least 192 mm",
    );
    check(
        Fault::OddFlaw {
            stock: stock.clone(),
            flaw: (640, 320),
        },
        "the flaw from 10 in to 5 in does not lie on s; write from before to, both on the stick",
        "the flaw from 64 mm to 32 mm does not lie on s; write from before to, both on the stick",
    );
    check(
        Fault::TooLarge {
            piece,
            size: vec![640, 1280],
            nearest: stock,
            room: vec![640, 1216],
            over: vec![0, 64],
            needed: vec![640, 1280],
        },
        "rail (10 in x 20 in) is larger than any stock; s comes nearest with room for 10 in x 19 in, too small by 0 in x 1 in: stock of at least 10 in x 20 in would do",
        "rail (64 mm x 128 mm) is larger than any stock; s comes nearest with room for 64 mm x 121.6 mm, too small by 0 mm x 6.4 mm: stock of at least 64 mm x 128 mm would do",
    );
}

/// 2^40 cents are 10 995 116 277.76 USD; 2^62 square ticks of 1/64 in are
/// 2^50 square inches = 7 818 749 353 073.78 sq ft.
#[test]
fn money_areas_and_counts_have_their_own_units() {
    let usd = Currency::from_code("USD").expect("a currency");
    let dollars = counted(Units::Inches, Basis::Money(usd));
    let cost = Fault::TooMuch {
        what: "the cost of stock",
        name: "s".to_owned(),
        given: (1 << 40) + 1,
        limit: 1 << 40,
    };
    assert_eq!(
        dollars.sentence(&cost, &Plain),
        "s costs 10995116277.77 USD, the most that can be planned with is 10995116277.76 USD; is it what you meant?"
    );
    let area = Fault::TooMuch {
        what: "the area of all pieces of",
        name: "oak".to_owned(),
        given: u64::MAX,
        limit: 1 << 62,
    };
    assert_eq!(
        dollars.sentence(&area, &Plain),
        "oak: all pieces together are 31274997412295 sq ft or more, the most one plan can hold is 7818749353074 sq ft: divide it"
    );
    let many = Fault::TooManyPieces {
        given: 2_000_000,
        limit: 1_000_000,
    };
    assert_eq!(
        dollars.sentence(&many, &Plain),
        "oak: 2 000 000 pieces are more than one plan can hold; the most is 1 000 000: divide it"
    );
}

/// 1 km is 4 031 496 steps of 1/64 in and a part of one; more is beyond any length.
#[test]
fn what_no_length_can_hold_is_said_in_steps() {
    let inches = counted(Units::Inches, Basis::Measure);
    assert_eq!(inches.unit, Unit::Inch);
    assert_eq!(inches.length(1 << 40), "1 099 511 627 776 steps of 1/64 in");
}

/// Half an inch; 2.5 mm glass asks for four thicknesses, 10 mm, which is less.
#[test]
fn the_least_strip_of_glass_is_half_an_inch() {
    let settings = Settings::defaults(Units::Inches);
    let strip = settings.length(Key::LeastStrip);
    assert_eq!(strip.exact(Unit::Inch), "1/2 in");
    assert_eq!(settings.count(Key::StripThickness), 4);
}
