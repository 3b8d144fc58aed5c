//! What the typesetter grumbles about, which the finished file no longer shows.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on should stop")]

use super::{PagedDocument, Stamp, Table, Warned};
use crate::ticket::{Drawings, Letterhead, Paper, sheet, ticket_of};

fn pictures(name: &str) -> Option<drawing::Picture> {
    demo::picture(name).map(|bytes| drawing::Picture {
        mime: "image/svg+xml",
        bytes,
    })
}

#[test]
fn no_ticket_of_the_invented_shop_is_set_with_a_warning() {
    for demo in demo::JOBS {
        let job = trade::Job::read(demo.toml.as_bytes()).unwrap();
        let shop = trade::Settings::defaults(job.units);
        let sizes = sizing::derive(&job, &trade::Catalogue::starter(), &shop).unwrap();
        let look = drawing::Look::ticket(&pictures, drawing::Ink::Colour);
        let drawings = Drawings {
            elevation: drawing::elevation(&job, &sizes, &look).unwrap(),
            section: drawing::section(&job, &sizes, &look).unwrap(),
            back_view: drawing::back_view(&job, &sizes, &look).unwrap(),
        };
        let head = Letterhead {
            shop: demo::SHOP.name.into(),
            made: Stamp {
                year: 2026,
                month: 11,
                day: 25,
                hour: 9,
                minute: 40,
            },
            date: "25 Nov 2026".into(),
            fallback_order: "none".into(),
        };
        let ticket = ticket_of(&job, &sizes, drawings, head);
        let table = Table::laid(sheet(&ticket, Paper::Letter).unwrap()).unwrap();
        let Warned { output, warnings } = typst::compile::<PagedDocument>(&table);
        assert!(output.is_ok(), "{}", demo.name);
        let said: Vec<&str> = warnings.iter().map(|one| one.message.as_str()).collect();
        assert!(said.is_empty(), "{}: {said:?}", demo.name);
    }
}
