//! From a derived job to its record.

use measure::Length;
use serde_json::{Value, json};
use sizing::Sizes;
use trade::Job;
use working::Worked;

use super::RECORD_VERSION;
use crate::about::{self, Stuff};

/// What a record must be told that neither the job nor its sizes say.
#[derive(Clone, Debug)]
pub struct RecordHead {
    /// The shop's name.
    pub shop: String,
    /// The day it was finished, `2026-11-25`.
    pub date: String,
    /// Order number where the job has none.
    pub fallback_order: String,
    /// Whether the customer's name is left out: a label travels on with the piece.
    pub without_customer: bool,
}

/// The record of a piece.
///
/// Shape:  the fields `RECORD.md` describes: the whole job document, the sizes that matter later,
///         materials by class, attachment, glazing and load. Text and whole numbers only.
/// Units:  lengths as exact text with their unit, in the document's unit; mass in whole milligrams.
pub fn record_of(job: &Job, sizes: &Sizes, head: &RecordHead) -> Value {
    let mut document = job.to_json();
    if head.without_customer
        && let Some(identity) = document.get_mut("identity").and_then(Value::as_object_mut)
    {
        identity.remove("customer");
    }
    let order = job.identity.order.as_ref().unwrap_or(&head.fallback_order);
    json!({
        "rabbet_record": RECORD_VERSION,
        "shop": head.shop,
        "order": order,
        "revision": job.identity.revision.unwrap_or(1),
        "date": head.date,
        "customer_left_out": head.without_customer,
        "job": document,
        "sizes": sizes_of(sizes),
        "materials": about::materials(job, sizes).iter().map(stuff).collect::<Vec<_>>(),
        "attachment": about::attachment_words(job, sizes),
        "cleaning": about::cleaning_words(sizes),
        "load": load(job, sizes),
    })
}

fn sizes_of(sizes: &Sizes) -> Value {
    let unit = sizes.unit();
    let length = |length: Length| length.exact(unit);
    let size = |width: Length, height: Length| json!([length(width), length(height)]);
    let worked = |size_of: &sizing::WorkedSize| size(size_of.width.value, size_of.height.value);
    let windows = |mat: &sizing::MatSizes| -> Vec<Value> {
        mat.windows
            .iter()
            .map(|window| worked(&window.face))
            .collect()
    };
    let mats = sizes
        .mats
        .iter()
        .map(|mat| json!({ "outside": worked(&mat.sheet.size), "windows": windows(mat) }));
    let optional = |length_of: Option<Worked<Length>>| length_of.map(|worked| length(worked.value));
    json!({
        "outside": worked(&sizes.outside),
        "package": worked(&sizes.package),
        "seen": worked(&sizes.seen()),
        "mats": mats.collect::<Vec<_>>(),
        "glazing": sizes.glazing.iter().map(|pane| worked(&pane.sheet.size)).collect::<Vec<_>>(),
        "air": optional(sizes.air),
        "rings_down": optional(sizes.hangers.map(|marks| marks.down)),
        "rings_apart": optional(sizes.hangers.map(|marks| marks.apart)),
        "hook_below_top": optional(sizes.hangers.and_then(|marks| marks.wire).map(|wire| wire.hook)),
    })
}

fn stuff(stuff: &Stuff) -> Value {
    let said = [
        ("part", &stuff.part),
        ("material", &stuff.material),
        ("code", &stuff.code),
        ("class", &stuff.class),
        ("thickness", &stuff.thickness),
    ];
    said.into_iter()
        .filter(|(_, words)| !words.is_empty())
        .map(|(name, words)| (name.to_owned(), Value::from(words.as_str())))
        .collect::<serde_json::Map<_, _>>()
        .into()
}

fn load(job: &Job, sizes: &Sizes) -> Value {
    let load = about::load(job, sizes);
    let milligrams = |mass: measure::Mass| mass.nanograms().div_euclid(1_000_000); // geometry: a prefix
    json!({
        "weight_mg": milligrams(load.hanging.weight.total.value),
        "weight": load.weight_words(),
        "not_counted": load.not_counted(),
        "factor": load.factor,
        "rated_mg": milligrams(load.rated.value),
        "rated": load.rated_words(),
        "hangs_by": load.hanger_words(),
        "wall": load.wall_words(),
        "caution": about::CAUTION,
    })
}
