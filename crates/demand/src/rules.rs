//! How each ware is cut: what a cut takes, what is trimmed, what breaks off cleanly.

use measure::Length;
use trade::{Key, Material, Pane, Settings};

use crate::gather::{LooseRails, Slant};
use crate::slant::along_stick_up;
use crate::stock::{CutStock, Stock};
use crate::ware::{Ware, WareKind};

/// How sticks of a ware are cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct StickRules {
    /// Lost between two strips.
    pub kerf: Length,
    /// Cut off a new stick: start, end.
    pub trim: [Length; 2],
    /// Cut off a remnant: start, end.
    pub remnant_trim: [Length; 2],
}

/// How sheets of a ware are cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct SheetRules {
    /// Lost at each cut.
    pub kerf: Length,
    /// Lost at every edge of a new sheet, the trimming cut included.
    pub trim: Length,
    /// Narrowest strip that comes off; none where something is lost at a cut.
    pub least_strip: Length,
}

/// The rules of a ware in sticks: the widest loss any of its strips asks for.
pub(crate) fn of_sticks(
    ware: &Ware,
    rails: &[LooseRails],
    settings: &Settings,
    stock: &Stock,
) -> StickRules {
    let own = own(ware, stock);
    let loss = rails
        .iter()
        .map(|loose| loss(ware.kind, loose.slant, settings));
    let kerf = loss.max().unwrap_or_default();
    let ends = match ware.kind {
        WareKind::Spacer => Length::ZERO,
        _ => settings.length(Key::EndTrim),
    };
    let trim = own.and_then(|own| own.trim).map_or_else(
        || [ends - ends.half_down(), ends.half_down()],
        |trim| [trim, trim],
    );
    StickRules {
        kerf: own.and_then(|own| own.kerf).unwrap_or(kerf),
        trim,
        remnant_trim: [settings.length(Key::RemnantTrim), Length::ZERO],
    }
}

/// What is lost along the stick between two strips.
///
/// Shape:  legs never nest, since a moulding can't be turned end for end: each takes its longest
///         edge and this.
fn loss(kind: WareKind, slant: Slant, settings: &Settings) -> Length {
    if kind == WareKind::Spacer {
        return settings.length(Key::SpacerKerf);
    }
    if settings.choice(Key::LegLoss) == "allowance" {
        return settings.length(Key::CutAllowance);
    }
    let blade = settings.length(Key::BladeKerf);
    match slant {
        Slant::Square => blade,
        Slant::Mitred(gauge, tilt) => {
            along_stick_up(blade, gauge, tilt).times(settings.count(Key::CutsBetween))
        }
    }
}

/// The rules of a ware in sheets.
pub(crate) fn of_sheets(
    ware: &Ware,
    material: Option<&Material>,
    settings: &Settings,
    stock: &Stock,
) -> SheetRules {
    let own = own(ware, stock);
    let usual = match ware.kind {
        WareKind::Glazing => glazing(material, settings),
        WareKind::Backing => SheetRules {
            kerf: backing_kerf(material, settings),
            trim: settings.length(Key::BackingEdge),
            least_strip: Length::ZERO,
        },
        _ => SheetRules {
            kerf: settings.length(Key::BoardKerf),
            trim: settings.length(Key::BoardEdge),
            least_strip: Length::ZERO,
        },
    };
    let stated_kerf = own.and_then(|own| own.kerf);
    let kerf = stated_kerf.unwrap_or(usual.kerf);
    let stated_strip = own.and_then(|own| own.least_strip);
    let least_strip = match (stated_strip, kerf.is_zero()) {
        (Some(strip), true) => strip,
        (None, true) if stated_kerf.is_none() => usual.least_strip,
        _ => Length::ZERO,
    };
    let edge = own.and_then(|own| own.trim).unwrap_or(usual.trim);
    let trim = if edge.is_zero() {
        edge
    } else {
        edge.max(least_strip) + kerf
    };
    SheetRules {
        kerf,
        trim,
        least_strip,
    }
}

fn glazing(material: Option<&Material>, settings: &Settings) -> SheetRules {
    let thickness = thickness(material);
    let acrylic = material.and_then(|m| m.pane) == Some(Pane::Acrylic);
    let sawn = acrylic && thickness.is_some_and(|t| t > settings.length(Key::ScoredTo));
    let by_thickness = thickness
        .unwrap_or_default()
        .times(settings.count(Key::StripThickness));
    let (kerf, least_strip) = if sawn {
        (settings.length(Key::PanelKerf), Length::ZERO)
    } else {
        let strip = settings.length(Key::LeastStrip).max(by_thickness);
        (Length::ZERO, strip)
    };
    SheetRules {
        kerf,
        trim: settings.length(Key::GlazingEdge),
        least_strip,
    }
}

/// Dense backing is sawn, light backing cut with a knife.
///
/// density (kg/m³) = grams per square metre ÷ thickness in millimetres
fn backing_kerf(material: Option<&Material>, settings: &Settings) -> Length {
    let from = i128::from(settings.count(Key::SawnFrom));
    let grams = material.and_then(|m| m.grams_per_m2.as_ref().map(|grams| *grams.is()));
    let dense = match (grams, thickness(material)) {
        (Some(grams), Some(thickness)) => {
            let per_mm = i128::from(Length::MILLIMETRE.quanta());
            i128::from(grams) * per_mm >= from * i128::from(thickness.quanta())
        }
        _ => false,
    };
    settings.length(if dense {
        Key::PanelKerf
    } else {
        Key::BoardKerf
    })
}

fn thickness(material: Option<&Material>) -> Option<Length> {
    material.and_then(|m| m.thickness.as_ref().map(|thickness| **thickness.is()))
}

/// What the stock document says of cutting this ware.
fn own<'a>(ware: &Ware, stock: &'a Stock) -> Option<&'a CutStock> {
    stock.cuts.iter().find(|cut| cut.material == ware.code)
}

#[cfg(test)]
mod tests;
