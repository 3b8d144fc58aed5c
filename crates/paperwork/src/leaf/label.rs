//! The label on the back: what the piece is, for whoever opens it next.

use sizing::Sizes;
use trade::Job;

use super::{Leaf, LeafSection};
use crate::about;
use crate::record::SealedRecord;
use crate::typeset::Stamp;

/// What a label must be told that neither the job nor its sizes say.
#[derive(Clone, Debug)]
pub struct LabelHead {
    /// The shop's name.
    pub shop: String,
    /// When the file is made.
    pub made: Stamp,
    /// The day, as the shop writes days.
    pub date: String,
    /// Order number where the job has none.
    pub fallback_order: String,
}

/// The label of a piece, with its record in codes.
///
/// Shape:  the customer's name stands nowhere on it; it may stand in the record.
/// Units:  as [`Sizes`] has them, exact.
pub fn label_of(job: &Job, sizes: &Sizes, record: &SealedRecord, head: LabelHead) -> Leaf {
    let order = job.identity.order.clone().unwrap_or(head.fallback_order);
    let art = job.art.first();
    let title = art.and_then(|art| art.title.clone());
    let outside = sizes.outside.size();
    let mut under = about::art_lines(job);
    under.push(format!(
        "Frame outside {}",
        about::size_words(outside.width, outside.height, sizes)
    ));
    let rows = about::materials(job, sizes)
        .into_iter()
        .map(|stuff| [stuff.part, stuff.material, stuff.class])
        .collect();
    let made_of = LeafSection {
        heading: "Made of, front to back".to_owned(),
        lines: Vec::new(),
        rows,
    };
    let mut sections = vec![
        made_of,
        LeafSection::of(
            "The art is held by",
            vec![about::attachment_words(job, sizes)],
        ),
        LeafSection::of(
            if sizes.glazing.is_empty() {
                "Cleaning"
            } else {
                "Cleaning the glazing"
            },
            about::cleaning_words(sizes),
        ),
    ];
    sections.push(hanging(job, sizes));
    Leaf {
        kind: "label",
        shop: head.shop,
        over: "Record of this piece".to_owned(),
        title: title.unwrap_or_else(|| "Untitled".to_owned()),
        under,
        running: format!("Order {order} · {}", head.date),
        sections,
        cautions: vec![about::CAUTION.to_owned()],
        codes: record.texts(),
        codes_words: codes_words(record),
        made: head.made,
    }
}

fn hanging(job: &Job, sizes: &Sizes) -> LeafSection {
    let load = about::load(job, sizes);
    let mut said = vec![
        format!("Weighs {}.", load.weight_words()),
        format!(
            "Hangs by {}; in the wall: {}.",
            load.hanger_words(),
            load.wall_words()
        ),
        format!("{}.", about::capital(&load.rated_words())),
    ];
    if let Some(wire) = load.wire_words() {
        said.push(format!("{}.", about::capital(&wire)));
    }
    LeafSection::of("Hanging", said)
}

/// Enough to read the codes without any program of ours.
fn codes_words(record: &SealedRecord) -> Vec<String> {
    let key = record.public();
    let eights: Vec<&str> = (0..key.len())
        .step_by(8)
        .filter_map(|at| key.get(at..at + 8))
        .collect();
    let count = record.texts().len();
    let these = if count == 1 {
        "This code holds the whole record of the piece".to_owned()
    } else {
        format!("These {count} codes together hold the whole record of the piece, in any order")
    };
    vec![
        format!("{these}, signed by the shop. Any reader shows their text; to read it needs nothing of ours."),
        "After the colon: base45 (RFC 9285), all parts joined; then 32 bytes of public key, 64 of signature \
         (Ed25519, RFC 8032, over “rabbet record 1”, a line feed and the record), the rest raw deflate (RFC 1951) of \
         the record, JSON."
            .to_owned(),
        format!("Public key {}", eights.join(" ")),
    ]
}
