//! How long a ticket takes, cold caches left out.

#[path = "../tests/it/sample.rs"]
mod sample;

use paperwork::{MatCut, Paper, Ticket, ticket_pdf};

fn main() {
    divan::main();
}

/// The same ticket again: target under 150 ms.
#[divan::bench]
fn ordinary_again(bencher: divan::Bencher) {
    let ticket = sample::ticket();
    bencher.bench(|| ticket_pdf(&ticket, Paper::A4));
}

/// Another order each time, as a shop prints: target under 150 ms.
#[divan::bench]
fn ordinary_anew(bencher: divan::Bencher) {
    let mut order = 0_u32;
    let next = move || -> Ticket {
        order = order.wrapping_add(1);
        let mut ticket = sample::ticket();
        ticket.order = order.to_string();
        ticket.parts[0].width = format!("{order} 3/8");
        ticket.mat_cuts[0].guide = order.to_string();
        ticket
    };
    bencher
        .with_inputs(next)
        .bench_local_values(|ticket| ticket_pdf(&ticket, Paper::A4));
}

/// As many rows as one table prints.
#[divan::bench(sample_count = 5)]
fn longest(bencher: divan::Bencher) {
    let mut ticket = sample::ticket();
    let pattern = ticket.mat_cuts.remove(0);
    ticket.mat_cuts = (1..=10_000)
        .map(|order| MatCut {
            order,
            opening: format!("Opening {order}"),
            ..pattern.clone()
        })
        .collect();
    bencher.bench(|| ticket_pdf(&ticket, Paper::A4));
}
