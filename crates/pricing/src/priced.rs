//! A price: lines, totals, the shop's own side, and why each number is what it is.

use std::fmt;
use std::sync::Arc;

use measure::{Area, Currency, Length, Money, Unit};
use sizing::{Fault, Severity};
use trade::{Date, Material};
use working::{Decimal, Worked, Working};

use crate::rules::{Class, Part, Per, PerArea, Rule, TaxCategory};

/// A priced piece.
///
/// Shape:  total = net + taxes; net = subtotal + rush − discounts + minimum + rounding, less tax where it is
///         inside. Lines sum to the subtotal; deposit and balance sum to the total.
/// Units:  one currency throughout.
#[derive(Clone, Debug)]
pub struct Priced {
    /// The currency.
    pub currency: Currency,
    /// The day its costs were taken on.
    pub day: Date,
    /// What is charged for, front to back.
    pub lines: Vec<PricedLine>,
    /// What is reckoned on the lines together.
    pub totals: Totals,
    /// What only the shop sees.
    pub shop: ShopSide,
    /// What is wrong with it, the worst first.
    pub faults: Vec<Fault>,
    /// Why every number is what it is, down to the art.
    pub working: Working,
}

/// A line of a price.
#[derive(Clone, Debug)]
pub struct PricedLine {
    /// The rule that charges it.
    pub rule: Arc<Rule>,
    /// What it charges for.
    pub part: Part,
    /// Which part: `Mat 2`.
    pub name: String,
    /// Its material, where it has one.
    pub material: Option<Arc<Material>>,
    /// How much of it.
    pub quantity: Quantity,
    /// The price of one unit, where there is one.
    pub unit: Option<Worked<Money>>,
    /// The line.
    pub amount: Worked<Money>,
    /// Its part of the discounts.
    pub discount: Money,
}

/// What is reckoned on the lines together, in this order.
#[derive(Clone, Debug)]
pub struct Totals {
    /// The lines together.
    pub subtotal: Worked<Money>,
    /// What is charged for haste, on the subtotal.
    pub rush: Option<Worked<Money>>,
    /// Discounts, each above zero.
    pub discounts: Vec<DiscountLine>,
    /// What brings a small order to the least.
    pub minimum: Option<Worked<Money>>,
    /// What the shown price adds to the sum before tax (where tax is inside: to the total); may be below zero.
    pub rounding: Option<Money>,
    /// The total without its tax.
    pub net: Worked<Money>,
    /// Tax, rate by rate.
    pub taxes: Vec<TaxLine>,
    /// Whether the lines hold their tax.
    pub tax_inside: bool,
    /// The tax that an exempt customer is spared, where prices hold it.
    pub relief: Option<Money>,
    /// What is paid.
    pub total: Worked<Money>,
    /// What is paid when the work is ordered.
    pub deposit: Option<Worked<Money>>,
    /// What is left to pay.
    pub balance: Option<Worked<Money>>,
    /// Sums by the rates that are on them, for invoices.
    pub groups: Vec<TaxGroup>,
}

/// A discount as given.
#[derive(Clone, Debug)]
pub struct DiscountLine {
    /// Its id in the rule set.
    pub id: String,
    /// What the customer reads.
    pub says: String,
    /// Its share of the lines it is on.
    pub share: Decimal,
    /// The amount, above zero.
    pub amount: Worked<Money>,
}

/// One rate of tax.
#[derive(Clone, Debug)]
pub struct TaxLine {
    /// What the customer reads.
    pub says: String,
    /// The rate.
    pub share: Decimal,
    /// What it is reckoned on: net where tax is added, with tax where it is inside.
    pub base: Money,
    /// The tax.
    pub amount: Money,
    /// The line that worked it out; where the shown price changed it, the line that did.
    pub line: working::LineId,
    /// What a structured invoice calls it.
    pub category: TaxCategory,
}

/// What is taxed alike.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TaxGroup {
    /// Which rates of the rule set are on it, by place.
    pub rates: Vec<usize>,
    /// Its lines less their discounts, and its part of rush, minimum and rounding: as the lines are, with or
    /// without tax.
    pub base: Money,
}

/// What only the shop sees.
#[derive(Clone, Debug)]
pub struct ShopSide {
    /// What the piece costs; none while a cost is unknown.
    pub cost: Option<Worked<Money>>,
    /// What is left of the net price.
    pub margin: Option<Worked<Money>>,
    /// What each part costs, where it is known.
    pub parts: Vec<PartCost>,
    /// Minutes of the bench's checklist.
    pub minutes: i64,
    /// What they cost at the wage, where the rule set has one.
    pub labour: Option<Worked<Money>>,
}

/// What a part costs.
#[derive(Clone, Debug)]
pub struct PartCost {
    /// Which part.
    pub name: String,
    /// Its material's code, where it has one.
    pub material: Option<String>,
    /// Its cost; none where it is not known.
    pub cost: Option<Worked<Money>>,
    /// Why the cost of a material is not known: the catalogue has none, or there is no rate of exchange for it.
    pub unknown: Option<Fault>,
}

/// How much of something a line charges for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quantity {
    /// A length, counted in a unit.
    Length {
        /// In all.
        length: Length,
        /// The unit.
        per: Per,
    },
    /// An area, counted in a unit, to two decimals where people read it.
    Area {
        /// In all.
        area: Area,
        /// The unit.
        per: PerArea,
    },
    /// Pieces.
    Pieces(u32),
    /// A part of a sheet, for each of some pieces.
    Sheet {
        /// The part.
        part: Decimal,
        /// The pieces.
        pieces: u32,
    },
    /// Minutes.
    Minutes(i64),
}

impl Priced {
    /// Whether a fault stops it from being given to a customer.
    pub fn is_refused(&self) -> bool {
        self.faults
            .iter()
            .any(|fault| fault.severity == Severity::Refuse)
    }

    /// What is left of the net price, as a share of it in thousandths, rounded down; none where unknown or
    /// nothing is charged.
    pub fn margin_thousandths(&self) -> Option<i64> {
        let margin = self.shop.margin?.value.minor;
        margin
            .checked_mul(1_000)? // geometry: thousandths
            .checked_div_euclid(self.totals.net.value.minor)
    }
}

impl PricedLine {
    /// What the customer reads: the rule's words, and the material's name.
    pub fn text(&self) -> String {
        match &self.material {
            Some(material) => format!("{}: {}", self.rule.says, material.title()),
            None => self.rule.says.clone(),
        }
    }

    /// What tax and discounts know it as.
    pub fn class(&self) -> Class {
        self.rule.class
    }

    /// The line less its discounts.
    pub fn net(&self) -> Money {
        Money {
            minor: self.amount.value.minor.saturating_sub(self.discount.minor),
            ..self.discount
        }
    }
}

impl Totals {
    /// All taxes together.
    pub fn tax(&self) -> Money {
        let taxes = self.taxes.iter().map(|tax| tax.amount.minor);
        Money {
            minor: taxes.fold(0, i64::saturating_add),
            ..self.total.value
        }
    }

    /// All discounts together.
    pub fn discount(&self) -> Money {
        let discounts = self.discounts.iter().map(|line| line.amount.value.minor);
        Money {
            minor: discounts.fold(0, i64::saturating_add),
            ..self.total.value
        }
    }
}

impl Quantity {
    /// The unit by its code of UN/ECE Recommendation 20 (codes from memory).
    pub const fn unit_code(self) -> &'static str {
        match self {
            Self::Length { per: Per::Foot, .. } => "FOT",
            Self::Length {
                per: Per::Metre, ..
            } => "MTR",
            Self::Area {
                per: PerArea::Foot, ..
            } => "FTK",
            Self::Area {
                per: PerArea::Metre,
                ..
            } => "MTK",
            Self::Pieces(_) | Self::Sheet { .. } => "C62",
            Self::Minutes(_) => "MIN",
        }
    }
}

impl fmt::Display for Quantity {
    /// `6 ft`, `3 m`, `1.25 sq ft`, `2`, `1/4 …` as a decimal part of a sheet, `50 min`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Length { length, per } => f.write_str(&length.exact(per.unit())),
            Self::Area {
                area,
                per: PerArea::Foot,
            } => f.write_str(&area.print_square_feet_nearest(2)),
            Self::Area {
                area,
                per: PerArea::Metre,
            } => f.write_str(&area.print_m2_nearest(4)), // geometry: decimals printed
            Self::Pieces(pieces) => pieces.fmt(f),
            Self::Sheet { part, pieces: 1 } => write!(f, "{part} sheet"),
            Self::Sheet { part, pieces } => write!(f, "{pieces} × {part} sheet"),
            Self::Minutes(minutes) => write!(f, "{minutes} min"),
        }
    }
}

impl Per {
    /// The unit of length.
    pub const fn unit(self) -> Unit {
        match self {
            Self::Foot => Unit::Foot,
            Self::Metre => Unit::Metre,
        }
    }

    /// The unit as a length.
    pub fn length(self) -> Length {
        Length::from_quanta(self.unit().quanta())
    }
}

impl PerArea {
    /// The unit as an area.
    pub const fn area(self) -> Area {
        match self {
            Self::Foot => Area::SQUARE_FOOT,
            Self::Metre => Area::SQUARE_METRE,
        }
    }
}
