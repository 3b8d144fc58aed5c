//! Days of a made-up frame shop: every order a frame, most with a mat, glass and a back.
//!
//! Few boards and mouldings are asked for often and many seldom, so that a day is a handful of
//! large problems and many small ones. All sizes and prices are invented.

use std::collections::BTreeMap;

use cutting::{Goal, Problem, lengths, sheets};

/// Lengths are counted in 1/64 in.
const INCH: u64 = 64;
/// Short and long side of common pictures, in inches.
const PICTURES: [(u64, u64); 10] = [
    (5, 7),
    (8, 10),
    (9, 12),
    (11, 14),
    (12, 16),
    (16, 20),
    (18, 24),
    (20, 24),
    (24, 30),
    (24, 36),
];
const BOARDS: usize = 60;
const MOULDINGS: usize = 40;
/// Glass comes in so many kinds; the last is a sheet for the back.
const GLASS: usize = 4;
const SAW: u64 = 12;

/// Repeatable random numbers (`SplitMix64`; Steele, Lea and Flood, "Fast splittable pseudorandom
/// number generators", OOPSLA 2014).
struct Draw(u64);

impl Draw {
    fn below(&mut self, end: u64) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        (mixed ^ (mixed >> 31)) % end
    }

    fn between(&mut self, least: u64, most: u64) -> u64 {
        least + self.below(most - least + 1)
    }

    fn percent(&mut self, share: u64) -> bool {
        self.below(100) < share
    }

    /// Favourites first: small numbers far more often than large ones.
    fn skewed(&mut self, end: usize) -> usize {
        let end = self.below(end as u64) + 1;
        let end = self.below(end) + 1;
        usize::try_from(self.below(end)).expect("small")
    }
}

/// Pieces wanted of every material: size and how many.
#[derive(Default)]
struct Wanted {
    mats: BTreeMap<usize, BTreeMap<(u64, u64), u64>>,
    glass: BTreeMap<usize, BTreeMap<(u64, u64), u64>>,
    legs: BTreeMap<usize, BTreeMap<u64, u64>>,
}

/// The problems of one day: the same for the same number of orders and the same seed.
pub fn day(orders: u64, seed: u64) -> Vec<Problem> {
    let mut draw = Draw(seed);
    let mut wanted = Wanted::default();
    for _ in 0..orders {
        order(&mut draw, &mut wanted);
    }
    let mut problems = Vec::new();
    for (&board, sizes) in &wanted.mats {
        let price = 700 + 30 * board as u64;
        let name = format!("board {board}");
        problems.push(flat(&mut draw, name, price, board % 10 != 9, 0, sizes));
    }
    for (&kind, sizes) in &wanted.glass {
        let least_strip = if kind + 1 < GLASS { INCH / 2 } else { 0 };
        let price = 650 + 1500 * kind as u64;
        let name = format!("glass {kind}");
        problems.push(flat(&mut draw, name, price, true, least_strip, sizes));
    }
    for (&moulding, legs) in &wanted.legs {
        problems.push(sticks(&mut draw, moulding, legs));
    }
    problems
}

fn order(draw: &mut Draw, wanted: &mut Wanted) {
    let (short, long) = if draw.percent(65) {
        let (short, long) = PICTURES[draw.skewed(PICTURES.len())];
        (short * INCH, long * INCH)
    } else {
        // Odd sizes, to the nearest 1/16 in.
        let short = draw.between(4 * 16, 22 * 16) * 4;
        (short, short + draw.below(short / 8) * 4)
    };
    let (width, height) = if draw.percent(55) {
        (short, long)
    } else {
        (long, short)
    };
    let mat = draw.percent(70);
    let border = if mat {
        draw.between(8, 14) * INCH / 4
    } else {
        0
    };
    let (width, height) = (width + 2 * border, height + 2 * border);
    if mat {
        for _ in 0..draw.between(1, 2) {
            let board = wanted.mats.entry(draw.skewed(BOARDS)).or_default();
            *board.entry((width, height)).or_default() += 1;
        }
    }
    for kind in [draw.skewed(GLASS - 1), GLASS - 1] {
        if draw.percent(90) {
            let glass = wanted.glass.entry(kind).or_default();
            *glass.entry((width, height)).or_default() += 1;
        }
    }
    let moulding = draw.skewed(MOULDINGS);
    let legs = wanted.legs.entry(moulding).or_default();
    for side in [width, height] {
        // Both mitres: twice what the moulding is wider than its rabbet.
        *legs
            .entry(side + 2 * (24 + 8 * (moulding as u64 % 12)))
            .or_default() += 2;
    }
}

fn flat(
    draw: &mut Draw,
    name: String,
    price: u64,
    turn: bool,
    least_strip: u64,
    sizes: &BTreeMap<(u64, u64), u64>,
) -> Problem {
    let sheet = |name: &str, width: u64, height: u64, cost: u64| sheets::Sheet {
        name: name.to_owned(),
        width: width * INCH,
        height: height * INCH,
        cost,
        count: None,
        remnant: false,
        trim: sheets::Edges::default(),
    };
    let mut stock = vec![
        sheet("small", 32, 40, price),
        sheet("large", 48, 60, price * 9 / 4),
    ];
    for rest in 0..draw.below(5) {
        let (width, height) = (draw.between(6, 30), draw.between(8, 38));
        let cost = 35 * price * width * height / (100 * 32 * 40);
        stock.push(sheets::Sheet {
            count: Some(1),
            remnant: true,
            ..sheet(&format!("rest {rest}"), width, height, cost)
        });
    }
    let pieces = sizes
        .iter()
        .map(|(&(width, height), &count)| sheets::Piece {
            name: format!("{width} x {height}"),
            width,
            height,
            count: Some(count),
            value: 0,
            turn: turn || height > 60 * INCH || width > 48 * INCH,
            window: None,
            priority: 0,
            due: None,
        });
    Problem::Sheets(sheets::Problem {
        name,
        goal: Goal::Cost,
        rules: sheets::Rules {
            least_strip,
            ..sheets::Rules::default()
        },
        stock,
        pieces: pieces.collect(),
    })
}

fn sticks(draw: &mut Draw, moulding: usize, legs: &BTreeMap<u64, u64>) -> Problem {
    let price = 90 + 20 * moulding as u64;
    let one = |name: String, length: u64, cost: u64| lengths::Stick {
        name,
        length,
        cost,
        count: None,
        remnant: false,
        trim: (INCH / 2, INCH / 2),
        flaws: Vec::new(),
        run: None,
    };
    let bought = [96, 108, 120, 144].into_iter().skip(moulding % 3);
    let mut stock: Vec<lengths::Stick> = bought
        .map(|length| one(format!("{length} in"), length * INCH, price * length / 12))
        .collect();
    for rest in 0..draw.below(7) {
        let length = draw.between(14 * INCH, 70 * INCH);
        stock.push(lengths::Stick {
            count: Some(1),
            remnant: true,
            ..one(
                format!("rest {rest}"),
                length,
                35 * price * length / (1200 * INCH),
            )
        });
    }
    let pieces = legs.iter().map(|(&length, &count)| lengths::Piece {
        name: format!("leg {length}"),
        length,
        count: Some(count),
        value: 0,
        together: None,
        priority: 0,
        due: None,
    });
    Problem::Lengths(lengths::Problem {
        name: format!("moulding {moulding}"),
        goal: Goal::Cost,
        kerf: SAW,
        stock,
        pieces: pieces.collect(),
    })
}
