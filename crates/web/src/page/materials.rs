//! The catalogue: every material, each value with its source.

use std::sync::Arc;

use axum::extract::State;
use axum::response::{IntoResponse, Response};
use maud::{Markup, html};
use measure::Unit;
use trade::{Kind, Material, Profile, Sourced};

use super::shell::{Page, Place};
use crate::desk::Desk;

const KINDS: [Kind; 8] = [
    Kind::Moulding,
    Kind::Board,
    Kind::Glazing,
    Kind::Backing,
    Kind::Fillet,
    Kind::Spacer,
    Kind::Hardware,
    Kind::Service,
];

/// Shows them, kind by kind.
pub(crate) async fn materials(State(desk): State<Arc<Desk>>) -> Response {
    let catalogue = &desk.options.catalogue;
    let body = html! {
        h1 { "Materials" }
        p.lead { "What the catalogue knows, and from where. Lay the maker's sheet over it before you buy or cut." }
        @for kind in KINDS {
            (table(kind, &catalogue.iter().filter(|material| material.kind == Some(kind)).collect::<Vec<_>>()))
        }
    };
    let shop = &desk.options.shop;
    Page {
        shop,
        title: "Materials",
        place: Place::Materials,
        kind: "list",
        customer: false,
        body,
    }
    .whole()
    .into_response()
}

fn table(kind: Kind, materials: &[&Material]) -> Markup {
    let heading = format!("kind-{}", kind.word());
    html! {
        @if !materials.is_empty() {
            section aria-labelledby=(heading) {
                h2 id=(heading) { (kind.word()) }
                table.list role="table" {
                    thead role="rowgroup" { tr role="row" {
                        @for word in ["Material", "Size", "Mass", "Sold as", "What else"] {
                            th role="columnheader" scope="col" { (word) }
                        }
                    } }
                    tbody role="rowgroup" { @for material in materials { (row(material)) } }
                }
            }
        }
    }
}

fn row(material: &Material) -> Markup {
    let cell = |word: &str, lines: Vec<String>| {
        html! {
            td role="cell" data-word=(word) { @for line in &lines { p { (line) } } }
        }
    };
    html! {
        tr #(material.code) role="row" {
            th role="rowheader" scope="row" { (swatch(material)) (material.title()) " " code { (material.code) } }
            (cell("Size", sizes(material)))
            (cell("Mass", masses(material)))
            (cell("Sold as", sold(material)))
            (cell("What else", [material.class.clone(), material.note.clone()].into_iter().flatten().collect()))
        }
    }
}

/// Its colour, beside its name; drawn, because styles stand in no attribute.
fn swatch(material: &Material) -> Markup {
    html! {
        @if let Some(colour) = &material.colour {
            svg.swatch viewBox="0 0 10 10" width="16" height="16" aria-hidden="true" { rect width="10" height="10" fill=(colour) {} }
        }
    }
}

fn sizes(material: &Material) -> Vec<String> {
    let mut lines = Vec::new();
    lines.extend(material.thickness.as_ref().map(|thickness| {
        format!(
            "{} thick ({})",
            thickness.is().in_both(Unit::Millimetre),
            source(thickness)
        )
    }));
    if let Some(profile) = &material.profile {
        lines.extend(profile_lines(profile));
    }
    lines
}

fn profile_lines(profile: &Profile) -> Vec<String> {
    let of = |word: &str, length: measure::Length| {
        format!("{word} {}", length.in_both(Unit::Millimetre))
    };
    let mut lines = vec![of("face", *profile.face), of("height", *profile.height)];
    if profile.lip.is_positive() {
        lines.push(of("lip", *profile.lip));
    }
    if profile.rabbet_depth.is_positive() {
        lines.push(of("rabbet, deep", *profile.rabbet_depth));
    }
    lines
}

fn masses(material: &Material) -> Vec<String> {
    let sheet = material
        .grams_per_m2
        .as_ref()
        .map(|mass| format!("{} g/m² ({})", mass.is(), source(mass)));
    let solid = material
        .kg_per_m3
        .as_ref()
        .map(|mass| format!("{} kg/m³ ({})", mass.is(), source(mass)));
    sheet.into_iter().chain(solid).collect()
}

fn sold(material: &Material) -> Vec<String> {
    let sheets = material
        .sheets
        .iter()
        .map(|sheet| format!("{} sheet", sheet.exact(Unit::Millimetre)));
    let sticks = material
        .sticks
        .iter()
        .map(|stick| format!("{} stick", stick.in_both(Unit::Millimetre)));
    let from = material.sizes_from.iter().map(|from| format!("({from})"));
    sheets.chain(sticks).chain(from).collect()
}

fn source<T>(value: &Sourced<T>) -> String {
    let word = value.status().word();
    value
        .source()
        .map_or_else(|| word.to_owned(), |code| format!("{code}, {word}"))
}
