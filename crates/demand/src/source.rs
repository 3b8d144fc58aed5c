//! What a ware can be cut from, and what each kind of it counts in a plan.

use measure::{Currency, Length, Money, Size, Unit};
use trade::{Key, Material, Settings};

use crate::fault::Fault;
use crate::rules::{SheetRules, StickRules};
use crate::stock::{Buy, Extent, Stock};
use crate::tick::Tick;
use crate::ware::Ware;

/// One kind of stock of a ware; its place is that of the cutting room's stock.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Source {
    /// Unique among the ware's stock.
    pub name: String,
    /// Where it comes from.
    pub origin: Origin,
    /// Its exact size.
    pub extent: Extent,
    /// The run of a stick, where it is known.
    pub run: Option<String>,
    /// Where it lies.
    pub bin: Option<String>,
    /// How many there are; none: as many as needed.
    pub count: Option<u64>,
    /// What one costs to buy, where it is known.
    pub cost: Option<Money>,
    /// Lost at the start and end of a stick, or at every edge of a sheet (the first of the two).
    pub trim: [Length; 2],
    /// Stretches of a stick that no part may touch.
    pub flaws: Vec<[Length; 2]>,
    /// Its place among the stock document's remnants, sticks or sheets.
    pub(crate) entry: Option<usize>,
}

/// Where stock comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Origin {
    /// Left over from earlier work.
    Remnant,
    /// Whole, on the rack.
    Rack,
    /// To be bought.
    Buy,
}

/// What a plan's costs are counted in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// Minor units of a currency.
    Money(Currency),
    /// No cost is known: ticks of length, or square ticks.
    Measure,
}

/// How whatever is listed or bought of a ware is trimmed.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Trims {
    Sticks(StickRules),
    Sheets(SheetRules),
}

/// Everything a ware can be cut from: remnants, then the rack, then what is bought.
pub(crate) fn sources(
    ware: &Ware,
    material: Option<&Material>,
    at_hand: Option<Length>,
    stock: &Stock,
    trims: Trims,
    unit: Unit,
) -> Vec<Source> {
    let mut list = List {
        ware,
        trims,
        stock,
        unit,
        sources: Vec::new(),
    };
    list.remnants();
    list.listed(Origin::Rack);
    list.listed(Origin::Buy);
    let buys = list.sources.iter().any(|s| s.origin == Origin::Buy);
    if !buys && stock.buy == Buy::Catalogue {
        list.catalogue(material, at_hand);
    }
    distinct(&mut list.sources);
    list.sources
}

struct List<'a> {
    ware: &'a Ware,
    trims: Trims,
    stock: &'a Stock,
    unit: Unit,
    sources: Vec<Source>,
}

impl List<'_> {
    fn is_ours(&self, material: &str, colour: Option<&String>) -> bool {
        material == self.ware.code && colour == self.ware.colour.as_ref()
    }

    fn fits_kind(&self, extent: Extent) -> bool {
        matches!(extent, Extent::Stick(_)) == self.ware.kind.in_sticks()
    }

    fn trim(&self, origin: Origin) -> [Length; 2] {
        match (self.trims, origin) {
            (Trims::Sticks(rules), Origin::Remnant) => rules.remnant_trim,
            (Trims::Sticks(rules), _) => rules.trim,
            (Trims::Sheets(_), Origin::Remnant) => [Length::ZERO; 2],
            (Trims::Sheets(rules), _) => [rules.trim; 2],
        }
    }

    fn remnants(&mut self) {
        for (entry, own) in self.stock.remnants.iter().enumerate() {
            if !self.is_ours(&own.material, own.colour.as_ref()) || !self.fits_kind(own.extent) {
                continue;
            }
            let trim = own.trim.unwrap_or_else(|| self.trim(Origin::Remnant));
            self.sources.push(Source {
                name: own.label.clone(),
                origin: Origin::Remnant,
                extent: own.extent,
                run: own.run.clone(),
                bin: own.bin.clone(),
                count: Some(1),
                cost: None,
                trim,
                flaws: own.flaws.clone(),
                entry: Some(entry),
            });
        }
    }

    /// Entries that lie on the rack, or those that can be bought.
    fn listed(&mut self, origin: Origin) {
        let wanted = |count: Option<u64>| match origin {
            Origin::Rack => count.is_some_and(|count| count > 0),
            _ => count.is_none(),
        };
        if self.ware.kind.in_sticks() {
            for (entry, own) in self.stock.sticks.iter().enumerate() {
                if wanted(own.count) && self.is_ours(&own.material, own.colour.as_ref()) {
                    let source = Source {
                        run: own.run.clone(),
                        bin: own.bin.clone(),
                        count: own.count,
                        cost: own.cost,
                        trim: own.trim.unwrap_or_else(|| self.trim(origin)),
                        flaws: own.flaws.clone(),
                        entry: Some(entry),
                        ..self.plain(origin, Extent::Stick(own.length))
                    };
                    self.sources.push(source);
                }
            }
            return;
        }
        for (entry, own) in self.stock.sheets.iter().enumerate() {
            if wanted(own.count) && self.is_ours(&own.material, own.colour.as_ref()) {
                let trim = own.trim.map_or_else(|| self.trim(origin), |trim| [trim; 2]);
                let source = Source {
                    bin: own.bin.clone(),
                    count: own.count,
                    cost: own.cost,
                    trim,
                    entry: Some(entry),
                    ..self.plain(origin, Extent::Sheet(own.size))
                };
                self.sources.push(source);
            }
        }
    }

    /// New stock in the sizes the catalogue names, or the stick at hand where it names none.
    fn catalogue(&mut self, material: Option<&Material>, at_hand: Option<Length>) {
        let mut sizes = catalogue_sizes(material, self.ware.kind.in_sticks());
        if sizes.is_empty() && self.ware.kind.in_sticks() {
            sizes.extend(at_hand.map(Extent::Stick));
        }
        for extent in sizes {
            let source = self.plain(Origin::Buy, extent);
            self.sources.push(source);
        }
    }

    fn plain(&self, origin: Origin, extent: Extent) -> Source {
        let size = extent.exact(self.unit);
        let name = match origin {
            Origin::Rack => format!("{size} from the rack"),
            _ => format!("{size} new"),
        };
        Source {
            name,
            origin,
            extent,
            run: None,
            bin: None,
            count: None,
            cost: None,
            trim: self.trim(origin),
            flaws: Vec::new(),
            entry: None,
        }
    }
}

/// The sizes a catalogue names for a material.
pub(crate) fn catalogue_sizes(material: Option<&Material>, sticks: bool) -> Vec<Extent> {
    let Some(material) = material else {
        return Vec::new();
    };
    if sticks {
        let lengths = material.sticks.iter();
        lengths.map(|stick| Extent::Stick(**stick)).collect()
    } else {
        let sizes = material.sheets.iter();
        sizes.map(|sheet| Extent::Sheet(**sheet)).collect()
    }
}

/// Numbers names that occur more than once.
fn distinct(sources: &mut [Source]) {
    let mut names = crate::names::Names::default();
    for source in sources {
        source.name = names.unique(std::mem::take(&mut source.name));
    }
}

/// What one of each source counts in a plan.
///
/// Shape:  new stock counts its cost; where only some of it has a cost, the rest takes the least
///         cost by size of those; where none has, its size in ticks. Whole stock on the rack counts
///         `stock.rack_share` of that, a remnant `remnant.price_share` of the least cost by size.
/// Units:  minor units or ticks, rounded up.
/// Errors: costs in two currencies.
pub(crate) fn costs(
    ware: &Ware,
    sources: &[Source],
    tick: Tick,
    settings: &Settings,
) -> Result<(Basis, Vec<u64>), Fault> {
    let basis = basis(ware, sources)?;
    let rate = match basis {
        Basis::Measure => None,
        Basis::Money(_) => least_rate(sources, tick),
    };
    let shares = [
        (Origin::Remnant, settings.count(Key::RemnantShare)),
        (Origin::Rack, settings.count(Key::RackShare)),
    ];
    let each = sources.iter().map(|source| {
        let share = shares
            .iter()
            .find(|(origin, _)| *origin == source.origin)
            .map_or(WHOLE, |(_, share)| u128::try_from(*share).unwrap_or(WHOLE));
        counted(source, rate, tick, share)
    });
    Ok((basis, each.collect()))
}

/// All of a hundred.
const WHOLE: u128 = 100;

fn basis(ware: &Ware, sources: &[Source]) -> Result<Basis, Fault> {
    let mut currencies = sources.iter().filter_map(|s| s.cost.map(|c| c.currency));
    let Some(first) = currencies.next() else {
        return Ok(Basis::Measure);
    };
    match currencies.find(|other| *other != first) {
        Some(second) => Err(Fault::TwoCurrencies {
            ware: ware.to_string(),
            first,
            second,
        }),
        None => Ok(Basis::Money(first)),
    }
}

/// The least cost by size among priced sources: cost, size.
fn least_rate(sources: &[Source], tick: Tick) -> Option<(u128, u128)> {
    let rates = sources.iter().filter_map(|source| {
        let cost = u128::try_from(source.cost?.minor).ok()?;
        Some((cost, measure_of(source.extent, tick).max(1)))
    });
    rates.min_by(|(a, of_a), (b, of_b)| (a * of_b).cmp(&(b * of_a)))
}

fn counted(source: &Source, rate: Option<(u128, u128)>, tick: Tick, share: u128) -> u64 {
    let size = measure_of(source.extent, tick);
    let own = source.cost.and_then(|cost| u128::try_from(cost.minor).ok());
    let (top, bottom) = match (own, rate) {
        (Some(cost), _) => (cost, 1),
        (None, Some((cost, of))) => (cost * size, of),
        (None, None) => (size, 1),
    };
    let count = (top * share).div_ceil(bottom * WHOLE);
    u64::try_from(count).unwrap_or(u64::MAX)
}

/// Its length in ticks, or its area in square ticks.
fn measure_of(extent: Extent, tick: Tick) -> u128 {
    match extent {
        Extent::Stick(length) => u128::from(tick.down(length)),
        Extent::Sheet(Size { width, height }) => {
            u128::from(tick.down(width)) * u128::from(tick.down(height))
        }
    }
}
