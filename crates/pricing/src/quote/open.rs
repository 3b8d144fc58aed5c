//! Opening a quote: reading it, adding its own numbers up, and pricing it again.

use serde::Deserialize;
use sizing::{Fault, Sizes, derive};
use trade::settings::{Key, Layer};
use trade::{Catalogue, Date, Job, Settings};

use super::{PartDocument, QUOTE_VERSION, Quote, ShopDocument, TotalsDocument, freeze};
use crate::desk::{Asked, price};
use crate::priced::Priced;
use crate::scalar::Amount;

/// A quote that was opened.
#[derive(Clone, Debug)]
pub struct Opened {
    /// The quote, with its own numbers.
    pub quote: Quote,
    /// The job it was given for.
    pub job: Job,
    /// Whether its numbers come out the same today.
    pub verdict: Verdict,
}

/// What pricing a quote again says of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Every number comes out as printed.
    Same,
    /// This program reckons something otherwise; the quote's own numbers stand.
    Different(Vec<Difference>),
    /// It can't be priced again by this program, and why; the quote's own numbers stand.
    Unknown(Vec<String>),
}

/// A number that comes out otherwise.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Difference {
    /// Which.
    pub of: String,
    /// As printed.
    pub printed: String,
    /// As it comes out today.
    pub today: String,
}

/// Why a quote can't be given or opened.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum QuoteFault {
    /// Its price has faults.
    #[error("the price can't be given to a customer: {}", .0.join(" "))]
    NotPriced(Vec<String>),
    /// It is no quote, or something in it is not as it should be.
    #[error("the quote can't be read: {0}")]
    Unreadable(String),
    /// It was written by a newer program.
    #[error(
        "the quote says version {found}, this program reads up to {QUOTE_VERSION}; update the program to open it"
    )]
    Newer {
        /// The version it names.
        found: i64,
    },
    /// Its own numbers do not add up: it was changed after it was given.
    #[error("the quote's own numbers do not add up: {0}; fetch an unchanged copy")]
    Broken(String),
}

#[derive(Deserialize)]
struct Head {
    quote: Option<i64>,
}

impl Quote {
    /// Reads a quote and looks whether its own numbers add up.
    ///
    /// Errors: what can't be read, a newer version, numbers that do not add up.
    pub fn read(text: &str) -> Result<Self, QuoteFault> {
        let unreadable = |error: serde_json::Error| QuoteFault::Unreadable(error.to_string());
        let head: Head = serde_json::from_str(text).map_err(unreadable)?;
        match head.quote {
            Some(found) if found > i64::from(QUOTE_VERSION) => {
                return Err(QuoteFault::Newer { found });
            }
            Some(_) => {}
            None => {
                let missing = format!("it does not say \"quote\": {QUOTE_VERSION}");
                return Err(QuoteFault::Unreadable(missing));
            }
        }
        let reader = &mut serde_json::Deserializer::from_str(text);
        let quote: Self = serde_path_to_error::deserialize(reader).map_err(|error| {
            let path = error.path().to_string();
            QuoteFault::Unreadable(format!("{path}: {}", error.into_inner()))
        })?;
        quote.rules.sound().map_err(|faults| {
            let sentences: Vec<String> = faults.iter().map(ToString::to_string).collect();
            QuoteFault::Unreadable(format!("its rules: {}", sentences.join(" ")))
        })?;
        quote.one_currency().map_err(QuoteFault::Broken)?;
        quote.adds_up().map_err(QuoteFault::Broken)?;
        Ok(quote)
    }

    /// Reads a quote and prices it again from what it holds; its own numbers stand whatever comes out.
    ///
    /// Errors: as [`Quote::read`].
    pub fn open(text: &str) -> Result<Opened, QuoteFault> {
        let quote = Self::read(text)?;
        let job = quote.job()?;
        let verdict = quote.again(&job);
        Ok(Opened {
            quote,
            job,
            verdict,
        })
    }

    /// The job it was given for.
    ///
    /// Errors: a job document that this program can't read.
    pub fn job(&self) -> Result<Job, QuoteFault> {
        let text = self.job.to_string();
        Job::read(text.as_bytes()).map_err(|faults| {
            let sentences: Vec<String> = faults.iter().map(ToString::to_string).collect();
            QuoteFault::Unreadable(sentences.join(" "))
        })
    }

    /// The materials it was priced with, as a catalogue.
    ///
    /// Errors: materials that do not make one.
    pub fn catalogue(&self) -> Result<Catalogue, QuoteFault> {
        Catalogue::default()
            .with(&self.materials)
            .map_err(|fault| QuoteFault::Unreadable(fault.to_string()))
    }

    /// The settings it was derived with; those it does not know keep today's defaults, those this program no
    /// longer knows are left out.
    pub fn settings(&self) -> Settings {
        let known = self.settings.iter();
        let known = known.filter(|(id, _)| Key::named(id).is_some());
        let mut settings = Settings::defaults(self.units);
        for (id, text) in known {
            let one = [(id.clone(), text.clone())].into();
            let bare = self.units.unit();
            settings = settings.with(&one, Layer::Shop, bare).unwrap_or(settings);
        }
        settings
    }

    /// A setting whose value this program does not read, so that a default would stand in for it.
    fn unread_setting(&self) -> Option<&str> {
        let defaults = Settings::defaults(self.units);
        let unread = |(id, text): &(&String, &String)| {
            let one = [((*id).clone(), (*text).clone())].into();
            defaults.with(&one, Layer::Shop, self.units.unit()).is_err()
        };
        self.settings.iter().find(unread).map(|(id, _)| id.as_str())
    }

    fn again(&self, job: &Job) -> Verdict {
        let catalogue = match self.catalogue() {
            Ok(catalogue) => catalogue,
            Err(fault) => return Verdict::Unknown(vec![fault.to_string()]),
        };
        let sizes = match derive(job, &catalogue, &self.settings()) {
            Ok(sizes) => sizes,
            Err(faults) => {
                return Verdict::Unknown(faults.iter().map(Fault::sentence).collect());
            }
        };
        if let Some(id) = self.unread_setting() {
            return Verdict::Unknown(vec![format!("the setting {id} it holds can't be read")]);
        }
        let asked = Asked::from(&self.asked);
        let priced = price(job, &sizes, &catalogue, &self.rules, &asked);
        if priced.is_refused() {
            return Verdict::Unknown(priced.faults.iter().map(Fault::sentence).collect());
        }
        let lines: Vec<_> = priced.lines.iter().map(freeze::line).collect();
        let mut found = Vec::new();
        for at in 0..lines.len().max(self.lines.len()) {
            let (printed, today) = (self.lines.get(at), lines.get(at));
            if printed != today {
                let say = |line: Option<&super::LineDocument>| {
                    line.map_or("no line".to_owned(), |line| {
                        format!("{}, {}: {}", line.says, line.quantity, line.amount.0)
                    })
                };
                found.push(Difference {
                    of: format!("line {}", at + 1),
                    printed: say(printed),
                    today: say(today),
                });
            }
        }
        let today = freeze::totals(&priced.totals);
        if today != self.totals {
            found.push(Difference {
                of: "total".to_owned(),
                printed: in_short(&self.totals),
                today: in_short(&today),
            });
        }
        found.extend(self.beside(&sizes, &priced));
        if found.is_empty() {
            Verdict::Same
        } else {
            Verdict::Different(found)
        }
    }

    /// What is frozen beside the numbers and comes out otherwise: sizes, the shop's side, terms, the last day.
    fn beside(&self, sizes: &Sizes, priced: &Priced) -> Vec<Difference> {
        let of_sizes = |parts: &[PartDocument]| {
            let parts = parts.iter().map(|own| format!("{}: {}", own.part, own.is));
            parts.collect::<Vec<_>>().join("; ")
        };
        let of_shop = |shop: &ShopDocument| {
            let or_none = |amount: Option<Amount>| {
                amount.map_or("unknown".to_owned(), |amount| amount.0.to_string())
            };
            let (cost, margin) = (or_none(shop.cost), or_none(shop.margin));
            format!("cost {cost}, margin {margin}, {} min", shop.minutes)
        };
        let of_day = |day: Option<Date>| day.map_or("no end".to_owned(), |day| day.to_string());
        let pairs = [
            (
                "sizes",
                of_sizes(&self.sizes),
                of_sizes(&freeze::words(sizes)),
            ),
            (
                "shop",
                of_shop(&self.shop),
                of_shop(&freeze::shop(&priced.shop)),
            ),
            ("terms", self.terms.join(" "), self.rules.terms.join(" ")),
            (
                "last day",
                of_day(self.valid_to),
                of_day(freeze::valid_to(&self.rules, self.given)),
            ),
        ];
        let found = pairs.into_iter().map(|(of, printed, today)| Difference {
            of: of.to_owned(),
            printed,
            today,
        });
        found.filter(|one| one.printed != one.today).collect()
    }

    /// Whether every amount is in the currency of the rules.
    ///
    /// Errors: the amount that is not.
    fn one_currency(&self) -> Result<(), String> {
        let own = self.rules.currency();
        let totals = &self.totals;
        let lines = self.lines.iter();
        let of_lines = lines.flat_map(|line| [line.unit, Some(line.amount), Some(line.discount)]);
        let taxes = totals.taxes.iter();
        let of_taxes = taxes.flat_map(|tax| [Some(tax.base), Some(tax.amount)]);
        let of_discounts = totals.discounts.iter().map(|one| Some(one.amount));
        let of_totals = [
            Some(totals.subtotal),
            totals.rush,
            totals.minimum,
            totals.rounding,
            Some(totals.net),
            totals.relief,
            Some(totals.total),
            totals.deposit,
            totals.balance,
            self.shop.cost,
            self.shop.margin,
        ];
        let all = of_lines.chain(of_taxes).chain(of_discounts);
        match all
            .chain(of_totals)
            .flatten()
            .find(|one| one.currency != own)
        {
            Some(stray) => Err(format!("{} is not in {own}", stray.0)),
            None => Ok(()),
        }
    }

    /// Whether lines sum to the subtotal, and so on down to the balance.
    ///
    /// Errors: the sum that fails, with both sides.
    fn adds_up(&self) -> Result<(), String> {
        let totals = &self.totals;
        let minor = |amount: Option<Amount>| amount.map_or(0, |amount| i128::from(amount.minor));
        let own = |amount: Amount| i128::from(amount.minor);
        let sum = |amounts: &mut dyn Iterator<Item = Amount>| -> i128 {
            amounts.map(|amount| i128::from(amount.minor)).sum()
        };
        let lines = sum(&mut self.lines.iter().map(|line| line.amount));
        let taxes = sum(&mut totals.taxes.iter().map(|tax| tax.amount));
        let discounts = sum(&mut totals.discounts.iter().map(|one| one.amount));
        let allotted = sum(&mut self.lines.iter().map(|line| line.discount));
        let inside = if totals.tax_inside { taxes } else { 0 };
        let net = lines + minor(totals.rush) + minor(totals.minimum) - discounts
            + minor(totals.rounding)
            - inside
            - minor(totals.relief);
        let mut laws = vec![
            ("lines and subtotal", lines, own(totals.subtotal)),
            ("discounts and their lines", allotted, discounts),
            ("net", net, own(totals.net)),
            ("net and tax, and total", net + taxes, own(totals.total)),
        ];
        if totals.deposit.is_some() || totals.balance.is_some() {
            let both = minor(totals.deposit) + minor(totals.balance);
            laws.push(("deposit and balance, and total", both, own(totals.total)));
        }
        let currency = self.rules.currency();
        for (name, found, stated) in laws {
            if found != stated {
                return Err(format!(
                    "{name}: {found} against {stated} in the least unit of {currency}"
                ));
            }
        }
        Ok(())
    }
}

fn in_short(totals: &TotalsDocument) -> String {
    let mut said = vec![format!("subtotal {}", totals.subtotal.0)];
    let of_discounts = totals
        .discounts
        .iter()
        .map(|one| (one.says.as_str(), one.amount));
    said.extend(of_discounts.map(|(says, amount)| format!("{says} {}", amount.0)));
    for tax in &totals.taxes {
        let share = tax.share.percent();
        let (base, amount) = (tax.base.0, tax.amount.0);
        said.push(format!("{} {share} on {base}: {amount}", tax.says));
    }
    let others = [
        ("rush", totals.rush),
        ("minimum", totals.minimum),
        ("rounding", totals.rounding),
        ("relief", totals.relief),
        ("net", Some(totals.net)),
        ("total", Some(totals.total)),
        ("deposit", totals.deposit),
        ("balance", totals.balance),
    ];
    let others = others.into_iter();
    said.extend(others.filter_map(|(name, own)| Some(format!("{name} {}", own?.0))));
    said.join(", ")
}
