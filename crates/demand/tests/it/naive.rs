//! A planner with no ambition: it only has to be right, so that plans can be taken back.

use cutting::{lengths, sheets};
use demand::{Day, Plan, Work};

/// Plans every batch from stock there is no end of; `reuse` cuts fallouts up where a part fits.
pub fn plans(day: &Day, reuse: bool) -> Vec<Plan> {
    let each = day.batches.iter().map(|batch| match &batch.work {
        Work::Lengths { problem, .. } => Plan::Lengths(sticks(problem)),
        Work::Sheets { problem, .. } => Plan::Sheets(sheets_of(problem, reuse)),
    });
    each.collect()
}

/// One stick after the other, the longest there is; a group that must share one begins a new one.
fn sticks(problem: &lengths::Problem) -> lengths::Plan {
    let endless = problem
        .stock
        .iter()
        .enumerate()
        .filter(|(_, s)| s.count.is_none());
    let (index, stick) = endless.max_by_key(|(_, s)| s.length).unwrap();
    let last = stick.length - stick.trim.1;
    let mut layouts: Vec<lengths::Layout> = Vec::new();
    let (mut at, mut group) = (u64::MAX, None);
    for (i, piece) in problem.pieces.iter().enumerate() {
        if matches!(piece.together, Some(lengths::Together::Stick(_))) && group != piece.together {
            at = u64::MAX;
        }
        group.clone_from(&piece.together);
        for _ in 0..piece.count.unwrap() {
            if at.saturating_add(piece.length) > last {
                at = stick.trim.0;
                layouts.push(lengths::Layout {
                    stock: index,
                    copies: 1,
                    pieces: Vec::new(),
                    remnants: Vec::new(),
                });
            }
            let layout = layouts.last_mut().unwrap();
            layout.pieces.push(lengths::Placed { piece: i, at });
            at += piece.length + problem.kerf;
            layout.remnants = if at < last {
                vec![(at, last)]
            } else {
                Vec::new()
            };
        }
    }
    let objective = layouts.iter().map(|l| problem.stock[l.stock].cost).sum();
    lengths::Plan {
        layouts,
        objective,
        bound: 0,
        uncut: Vec::new(),
    }
}

/// Each piece on a sheet of its own, or in the window of one cut before.
fn sheets_of(problem: &sheets::Problem, reuse: bool) -> sheets::Plan {
    let mut layouts: Vec<sheets::Layout> = Vec::new();
    let mut windows: Vec<(usize, u64)> = Vec::new();
    for (i, piece) in problem.pieces.iter().enumerate() {
        for _ in 0..piece.count.unwrap() {
            let from = if reuse {
                window(problem, &mut windows, piece)
            } else {
                None
            };
            let layout = match from {
                Some(from) => {
                    let (width, height) = problem.pieces[from].window.unwrap();
                    alone(
                        problem,
                        i,
                        sheets::From::Window(from),
                        root(0, width, height),
                        false,
                    )
                }
                None => on_new(problem, i),
            };
            layouts.push(layout);
            if piece.window.is_some() {
                windows.push((i, 1));
            }
        }
    }
    let cost = |layout: &sheets::Layout| match layout.from {
        sheets::From::Stock(stock) => problem.stock[stock].cost,
        sheets::From::Window(_) => 0,
    };
    sheets::Plan {
        objective: layouts.iter().map(cost).sum(),
        layouts,
        bound: 0,
        uncut: Vec::new(),
    }
}

/// A free window the piece fits as it stands; it is then free no more.
fn window(
    problem: &sheets::Problem,
    free: &mut Vec<(usize, u64)>,
    piece: &sheets::Piece,
) -> Option<usize> {
    let fits = |from: usize| {
        let (width, height) = problem.pieces[from].window.unwrap();
        piece.width <= width && piece.height <= height
    };
    let place = free.iter().position(|(from, _)| fits(*from))?;
    Some(free.swap_remove(place).0)
}

fn on_new(problem: &sheets::Problem, piece: usize) -> sheets::Layout {
    let (width, height) = (problem.pieces[piece].width, problem.pieces[piece].height);
    let endless = problem
        .stock
        .iter()
        .enumerate()
        .filter(|(_, s)| s.count.is_none());
    for (index, sheet) in endless {
        let trim = sheet.trim.left;
        let room = root(trim, sheet.width - 2 * trim, sheet.height - 2 * trim);
        let from = sheets::From::Stock(index);
        if width <= room.width && height <= room.height {
            return alone(problem, piece, from, room, false);
        }
        if problem.pieces[piece].turn && height <= room.width && width <= room.height {
            return alone(problem, piece, from, room, true);
        }
    }
    panic!("{} fits no sheet", problem.pieces[piece].name);
}

fn root(trim: u64, width: u64, height: u64) -> sheets::Area {
    sheets::Area {
        x: trim,
        y: trim,
        width,
        height,
    }
}

/// One piece in the lower left corner of a part, freed by two cuts at most.
fn alone(
    problem: &sheets::Problem,
    index: usize,
    from: sheets::From,
    room: sheets::Area,
    turned: bool,
) -> sheets::Layout {
    let piece = &problem.pieces[index];
    let kerf = problem.rules.kerf;
    let (width, height) = if turned {
        (piece.height, piece.width)
    } else {
        (piece.width, piece.height)
    };
    let (mut cuts, mut remnants) = (Vec::new(), Vec::new());
    let mut rest = room;
    if width < room.width {
        cuts.push(sheets::Cut {
            of: rest,
            way: sheets::Way::Upright,
            at: rest.x + width,
        });
        if width + kerf < room.width {
            remnants.push(sheets::Area {
                x: rest.x + width + kerf,
                width: room.width - width - kerf,
                ..rest
            });
        }
        rest.width = width;
    }
    if height < room.height {
        cuts.push(sheets::Cut {
            of: rest,
            way: sheets::Way::Level,
            at: rest.y + height,
        });
        if height + kerf < room.height {
            remnants.push(sheets::Area {
                y: rest.y + height + kerf,
                height: room.height - height - kerf,
                ..rest
            });
        }
        rest.height = height;
    }
    sheets::Layout {
        from,
        copies: 1,
        pieces: vec![sheets::Placed {
            piece: index,
            area: rest,
            turned,
        }],
        cuts,
        remnants,
    }
}
