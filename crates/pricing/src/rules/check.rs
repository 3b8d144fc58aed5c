//! Looking a rule set over before it goes live.

use std::collections::BTreeSet;

use measure::{Length, Unit};
use sizing::Fault;
use trade::Date;
use working::Decimal;

use super::{Bands, Part, Rule, RuleSet, Sheets, Tier, When};

/// The parts of a piece that are goods.
const PARTS: [Part; 12] = [
    Part::Frame,
    Part::Fillet,
    Part::Mat,
    Part::Glazing,
    Part::Spacer,
    Part::Walls,
    Part::Sink,
    Part::Mount,
    Part::Backing,
    Part::Strainer,
    Part::Cloth,
    Part::Cover,
];

impl RuleSet {
    /// What is wrong with the rule set by itself: rules that can never match or that overlap, parts that
    /// nothing charges for, gaps and disorder in tables, factors below 1, dates.
    ///
    /// Shape:  the worst first. Whether real pieces are priced whole is told by pricing them
    ///         ([`compare`](crate::compare)).
    /// Errors: none.
    pub fn check(&self, today: Date) -> Vec<Fault> {
        let mut faults = Vec::new();
        for rule in &self.rules {
            look_over(rule, &mut faults);
        }
        self.overlaps(&mut faults);
        self.uncovered(&mut faults);
        self.between(&mut faults);
        if self.holds_from < today {
            faults.push(Fault::warn(
                "rules.past",
                self.name.as_str(),
                format!("it holds from {}, which has passed", self.holds_from),
                "",
                format!(
                    "Let it hold from {today} or later, so that quotes already given keep theirs"
                ),
            ));
        }
        faults.sort_by_key(|fault| std::cmp::Reverse(fault.severity));
        faults
    }

    fn overlaps(&self, faults: &mut Vec<Fault>) {
        let claims: Vec<&Rule> = self
            .rules
            .iter()
            .filter(|rule| !rule.on_top)
            .map(AsRef::as_ref)
            .collect();
        for (at, one) in claims.iter().enumerate() {
            for other in &claims[at + 1..] {
                if one.charges != other.charges || !one.when.meets(&other.when) {
                    continue;
                }
                let found = format!(
                    "{} and {} can both charge for the same {}",
                    one.id,
                    other.id,
                    one.charges.word()
                );
                let cure = "Narrow the `when` of one, or let one come on top with `on_top = true`";
                faults.push(if one.when == other.when {
                    Fault::refuse("rules.overlap", one.id.as_str(), found, "", cure)
                } else {
                    Fault::warn("rules.overlap", one.id.as_str(), found, "", cure)
                });
            }
        }
    }

    fn uncovered(&self, faults: &mut Vec<Fault>) {
        let charged = self.rules.iter().filter(|rule| !rule.on_top);
        let covered: BTreeSet<Part> = charged
            .flat_map(|rule| rule.includes.iter().copied().chain([rule.charges]))
            .collect();
        for part in PARTS.into_iter().filter(|part| !covered.contains(part)) {
            faults.push(Fault::warn(
                "rules.uncovered",
                part.word(),
                "no rule charges for it or includes it",
                "a piece that has it can't be priced",
                "Add a rule, or name it in the `includes` of one",
            ));
        }
    }

    /// Sizes, and places among parts of a kind, that no rule's `when` reaches, whatever else it asks.
    fn between(&self, faults: &mut Vec<Fault>) {
        let bases: Vec<&Rule> = { self.rules.iter() }
            .filter(|rule| !rule.on_top)
            .map(AsRef::as_ref)
            .collect();
        for part in PARTS {
            if bases.iter().any(|rule| rule.includes.contains(&part)) {
                continue;
            }
            let whens = bases.iter().filter(|rule| rule.charges == part);
            let whens: Vec<&When> = whens.map(|rule| &rule.when).collect();
            if whens.is_empty() {
                continue;
            }
            let sizes = whens.iter().map(|when| {
                let over = when.over.map_or(Length::ZERO, |over| *over);
                (over, when.to.map(|to| *to))
            });
            if let Some((from, to)) = hole(Length::ZERO, sizes.collect()) {
                let say = |length: Length| length.in_both(Unit::Inch);
                let up = to.map_or(String::new(), |to| format!(" up to {}", say(to)));
                faults.push(unreached(part, &format!("above {}{up}", say(from))));
            }
            let places = whens.iter().map(|when| {
                let before = when.from_nth.map_or(0, |nth| nth.saturating_sub(1));
                (before, when.to_nth)
            });
            if let Some((from, _)) = hole(0, places.collect()) {
                let nth = from.saturating_add(1);
                faults.push(unreached(part, &format!("number {nth} of its kind")));
            }
        }
    }
}

/// The first stretch above `start` that none of these reaches; each lies above its first and up to its second.
fn hole<T: Copy + Ord>(start: T, mut reached: Vec<(T, Option<T>)>) -> Option<(T, Option<T>)> {
    reached.sort_by_key(|(from, _)| *from);
    let mut end = start;
    for (from, to) in reached {
        if from > end {
            return Some((end, Some(from)));
        }
        end = end.max(to?);
    }
    Some((end, None))
}

fn unreached(part: Part, which: &str) -> Fault {
    Fault::warn(
        "rules.gap",
        part.word(),
        format!("no rule charges for it {which}"),
        "a piece that has it can't be priced",
        "Widen the `when` of a rule, or add one",
    )
}

fn look_over(rule: &Rule, faults: &mut Vec<Fault>) {
    let id = rule.id.as_str();
    never(rule, faults);
    if let Some(wants) = unlike(rule) {
        faults.push(Fault::refuse(
            "rules.unlike",
            id,
            format!(
                "it reckons by {wants}, which a {} has not",
                rule.charges.word()
            ),
            "",
            "Charge for it another way: by the piece, by a table of sizes, by time",
        ));
    }
    if rule.charges.is_material() && rule.minutes.is_some() && rule.class == super::Class::Goods {
        faults.push(Fault::warn(
            "rules.class",
            id,
            "it charges by time and is classed as goods",
            "",
            "Class it as labour, if tax tells the two apart",
        ));
    }
    if let Some(bands) = &rule.bands {
        bands_in_order(id, bands, faults);
    }
    if let Some(sheets) = &rule.sheet {
        parts_in_order(id, sheets, faults);
        below_one(id, sheets.factor.map(|factor| factor.0), faults);
    }
    let length = rule.length.as_ref().map(|way| (way.factor, &way.factors));
    let cost = rule.cost.as_ref().map(|way| (way.factor, &way.factors));
    for (factor, tiers) in length.into_iter().chain(cost) {
        below_one(id, factor.map(|factor| factor.0), faults);
        tiers_in_order(id, tiers, faults);
    }
    let chop = rule.chop.as_ref().and_then(|way| way.factor);
    let area = rule.area.as_ref().and_then(|way| way.factor);
    for factor in chop.into_iter().chain(area) {
        below_one(id, Some(factor.0), faults);
    }
}

/// A `when` that no part can meet.
fn never(rule: &Rule, faults: &mut Vec<Fault>) {
    let id = rule.id.as_str();
    if !rule.when.can_hold() {
        faults.push(Fault::refuse(
            "rules.never",
            id,
            "its `when` contradicts itself, so it never applies",
            "`over` lies below `to`, `from_nth` not above `to_nth`, `at_least` not above `at_most`",
            "Mend its `when`, or take the rule out",
        ));
    }
    if !rule.when.suits(rule.charges) {
        faults.push(Fault::refuse(
            "rules.never",
            id,
            format!("its `when` asks for what a {} has not", rule.charges.word()),
            "roles are of frames, shapes of mats and openings, holds of attachments, hangers of hanging, materials of parts a job names one for",
            "Mend its `when`, or take the rule out",
        ));
    }
}

/// What a rule reckons by that its part has not.
fn unlike(rule: &Rule) -> Option<&'static str> {
    let part = rule.charges;
    let by_length = rule.length.is_some() || rule.chop.is_some();
    if by_length && !part.has_length() {
        Some("a length")
    } else if rule.area.is_some() && !part.has_area() {
        Some("an area")
    } else if rule.sheet.is_some() && !part.is_cut_from_sheet() {
        Some("the part of a sheet")
    } else {
        None
    }
}

fn below_one(id: &str, factor: Option<Decimal>, faults: &mut Vec<Fault>) {
    if let Some(factor) = factor.filter(|factor| *factor < Decimal::ONE) {
        faults.push(Fault::warn(
            "rules.below_cost",
            id,
            format!("its factor is {factor}"),
            "below 1 it sells for less than it costs",
            "Set a factor of 1 or more",
        ));
    }
}

fn tiers_in_order(id: &str, tiers: &[Tier], faults: &mut Vec<Fault>) {
    let Some((last, before)) = tiers.split_last() else {
        return;
    };
    let tops: Vec<i64> = before
        .iter()
        .filter_map(|tier| tier.to.map(|to| to.minor))
        .collect();
    let rising = tops.is_sorted_by(|one, other| one < other) && tops.len() == before.len();
    if !rising || last.to.is_some() {
        faults.push(Fault::refuse(
            "rules.tiers",
            id,
            "its factors are not in order",
            "each tier but the last says `to`, each larger than the one before; the last says none",
            "Sort the tiers, and leave `to` out of the last",
        ));
    }
    for tier in tiers {
        below_one(id, Some(tier.factor.0), faults);
    }
}

fn bands_in_order(id: &str, bands: &Bands, faults: &mut Vec<Fault>) {
    let say = |length: Length| length.in_both(Unit::Inch);
    let mut end = Length::ZERO;
    let mut price = None;
    for band in &bands.band {
        let (from, to) = (band.from.map_or(end, |from| *from), *band.to);
        if from > end {
            faults.push(Fault::refuse(
                "rules.gap",
                id,
                format!("nothing is priced above {} up to {}", say(end), say(from)),
                "",
                "Let each band begin where the one before ends, or leave `from` out",
            ));
        }
        if from < end || to <= from {
            faults.push(Fault::refuse(
                "rules.bands",
                id,
                format!("the band up to {} is out of order", say(to)),
                format!("the one before ends at {}", say(end)),
                "Sort the bands, the smallest first",
            ));
        }
        if price.is_some_and(|price| band.price.minor < price) {
            faults.push(Fault::warn(
                "rules.cheaper",
                id,
                format!("the band up to {} is cheaper than a smaller one", say(to)),
                "",
                "Check its price",
            ));
        }
        price = Some(band.price.minor);
        end = to;
    }
    if bands.beyond.is_none() {
        faults.push(Fault::warn(
            "rules.end",
            id,
            format!("nothing is priced above {}", say(end)),
            "",
            "Add a `beyond` step, if larger pieces are taken in",
        ));
    }
}

fn parts_in_order(id: &str, sheets: &Sheets, faults: &mut Vec<Fault>) {
    let rising = sheets.parts.is_sorted_by(|one, other| one < other);
    let whole = sheets.parts.last().map(|part| part.0) == Some(Decimal::ONE);
    let above = sheets
        .parts
        .first()
        .is_some_and(|part| part.0 > Decimal::ZERO);
    if !(rising && whole && above) {
        faults.push(Fault::refuse(
            "rules.parts",
            id,
            "its parts of a sheet are not in order",
            "they rise from above 0 to the whole sheet, 1",
            "Write them so: [\"0.125\", \"0.25\", \"0.5\", \"1\"]",
        ));
    }
}
