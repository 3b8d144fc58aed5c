//! What a part costs the shop, per what.

use measure::{Area, Length};
use sizing::Fault;
use trade::{Cost, Material, Per, Supply};
use working::{FinePrice, Given, Subject};

use crate::desk::Desk;
use crate::exact::Exact;
use crate::item::Item;
use crate::laws;

/// A cost and what it is for.
#[derive(Clone, Copy, Debug)]
pub(crate) struct UnitCost {
    pub price: FinePrice,
    pub given: Given,
    pub per: Share,
}

/// What a cost is for, and what of it a part takes.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Share {
    Length(Length),
    Area(Area),
    Pieces(i64),
}

impl Share {
    pub(crate) fn given(self) -> Given {
        match self {
            Self::Length(length) => Given::material(length),
            Self::Area(area) => Given::material(area),
            Self::Pieces(pieces) => Given::material(pieces),
        }
    }

    pub(crate) fn exact(self) -> Exact {
        match self {
            Self::Length(length) => length.into(),
            Self::Area(area) => area.into(),
            Self::Pieces(pieces) => pieces.into(),
        }
    }
}

/// How much of a part is reckoned: as charged, or as it is used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Reckon {
    Charged,
    Used,
}

impl Desk<'_> {
    /// The cost of a part's material, in the rule set's currency.
    ///
    /// Errors: a fault that says what is missing.
    pub(crate) fn cost(
        &mut self,
        item: &Item<'_>,
        supply: Supply,
        subject: Subject,
    ) -> Result<UnitCost, Box<Fault>> {
        let Some(material) = item.material else {
            return Err(no_material(item).into());
        };
        let found = fitting(material, item, supply, self.day);
        let Some((cost, per)) = found else {
            return Err(self.no_cost(item, material).into());
        };
        let Ok(millionths) = i64::try_from(cost.price.millionths()) else {
            return Err(too_large(item).into());
        };
        let price = FinePrice::new(millionths, cost.price.currency());
        if price.currency == self.rules.currency() {
            return Ok(UnitCost {
                price,
                given: Given::material(price),
                per,
            });
        }
        self.exchanged(item, price, per, subject)
    }

    /// A cost in another currency, turned at the stated rate.
    fn exchanged(
        &mut self,
        item: &Item<'_>,
        there: FinePrice,
        per: Share,
        subject: Subject,
    ) -> Result<UnitCost, Box<Fault>> {
        let rates = &self.rules.exchange;
        let rate = rates.iter().find(|rate| rate.from.0 == there.currency);
        let own = self.rules.currency();
        let Some(rate) = rate.map(|exchange| exchange.rate.0) else {
            return Err(Box::new(Fault::refuse(
                "pricing.no_exchange",
                item.name.as_ref(),
                format!("its cost is {there}"),
                format!("the rule set charges in {own}"),
                format!(
                    "State what one {} is worth in an [[exchange]] table of the rule set",
                    there.currency
                ),
            )));
        };
        let step = FinePrice::new(1, own);
        let way = self.round(self.rules.rounding.unit);
        let millionths = Exact::from(there)
            .times(rate)
            .and_then(|cost| cost.over(step))
            .and_then(|steps| steps.to_whole(way))
            .ok_or_else(|| too_large(item))?;
        let price = FinePrice::new(millionths, own);
        let inputs = [
            ("cost_there", Given::material(there)),
            ("rate", Given::prices(rate)),
            ("step", Given::prices(step)),
            ("way", Given::prices(way)),
        ];
        let worked = self.working.by(&laws::EXCHANGED, subject, &inputs, price);
        Ok(UnitCost {
            price,
            given: worked.into(),
            per,
        })
    }

    fn no_cost(&self, item: &Item<'_>, material: &Material) -> Fault {
        Fault::refuse(
            "pricing.no_cost",
            item.name.as_ref(),
            format!("{} has no cost on {}", material.code, self.day),
            "the rule that charges for it reckons from the cost",
            "Add a [[material.cost]] to it in the catalogue, or give the rule a price",
        )
    }

    /// How much of a part there is, in the measure of its cost.
    pub(crate) fn taken(item: &Item<'_>, per: Share, reckon: Reckon) -> Option<(Exact, Given)> {
        match per {
            Share::Length(_) => item.strip.map(|strip| match reckon {
                Reckon::Charged => (strip.charged.value.into(), strip.charged.into()),
                Reckon::Used => (strip.used.value.into(), strip.used.into()),
            }),
            Share::Area(_) => item.area.map(|area| (area.value.into(), area.into())),
            Share::Pieces(_) => Some((Exact::ONE, Given::job(1))),
        }
    }
}

/// The newest cost that is for something the part takes.
fn fitting<'a>(
    material: &'a Material,
    item: &Item<'_>,
    supply: Supply,
    day: trade::Date,
) -> Option<(&'a Cost, Share)> {
    let first = material
        .cost_on(day, supply)
        .and_then(|cost| share(material, item, cost).map(|per| (cost, per)));
    first.or_else(|| {
        let of_supply = material
            .costs_on(day)
            .filter(|cost| cost.supply == supply)
            .filter_map(|cost| share(material, item, cost).map(|per| (cost, per)));
        of_supply.max_by_key(|(cost, _)| (!cost.is_for_packs(), cost.since))
    })
}

/// What a cost is for, where the part is measured so.
fn share(material: &Material, item: &Item<'_>, cost: &Cost) -> Option<Share> {
    let strip = item.strip.as_ref();
    match cost.per {
        Per::Foot => strip.map(|_| Share::Length(crate::rules::Per::Foot.length())),
        Per::Metre => strip.map(|_| Share::Length(crate::rules::Per::Metre.length())),
        Per::Stick => {
            let own = material.sticks.first().map(|stick| **stick);
            let stick = strip?.stick.or(own)?;
            Some(Share::Length(stick))
        }
        Per::Sheet => {
            item.area?;
            let sheet = material.sheets.first()?;
            Some(Share::Area(sheet.area()))
        }
        Per::SquareMetre => item.area.map(|_| Share::Area(Area::SQUARE_METRE)),
        Per::SquareFoot => item.area.map(|_| Share::Area(Area::SQUARE_FOOT)),
        Per::Each => Some(Share::Pieces(1)),
        Per::Box => cost.pack.map(|pack| Share::Pieces(i64::from(pack))),
    }
}

fn no_material(item: &Item<'_>) -> Fault {
    Fault::refuse(
        "pricing.no_material",
        item.name.as_ref(),
        "the job names no material of the catalogue for it",
        "the rule that charges for it reckons from the cost",
        "Name its material in the job, or give the rule a price",
    )
}

/// A cost for what the part has not: a price by the foot for a pane.
pub(crate) fn no_measure(item: &Item<'_>) -> Fault {
    Fault::warn(
        "pricing.no_measure",
        item.name.as_ref(),
        "its cost is for a length, a sheet or an area that this part has not",
        "",
        "Give its cost in the catalogue for what it is bought by",
    )
}

/// An amount that can't be held.
pub(crate) fn too_large(item: &Item<'_>) -> Fault {
    Fault::refuse(
        "pricing.too_large",
        item.name.as_ref(),
        "its price is larger than can be held",
        "",
        "Check the rule's factors and the material's cost",
    )
}
