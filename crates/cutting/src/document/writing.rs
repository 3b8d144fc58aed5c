//! Plans: from a plan to its text.

use serde::Serialize;

use crate::{lengths, sheets};

/// A plan in the shape of its text.
#[derive(Clone, Debug, Serialize)]
pub struct Written {
    format: &'static str,
    instance: String,
    objective: u64,
    bound: u64,
    #[serde(skip_serializing_if = "Option::is_none")]
    sticks: Option<Vec<Stick>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    sheets: Option<Vec<Sheet>>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    uncut: Vec<Uncut>,
}

impl Written {
    /// The text of this plan alone (`cutting-plan/1`), on one line.
    pub fn text(&self) -> String {
        serde_json::to_string(self).expect("names are texts and all else is numbers")
    }
}

/// The text of many plans (`cutting-plans/1`), one to a line.
pub fn plans(plans: &[Written]) -> String {
    let lines: Vec<String> = plans.iter().map(Written::text).collect();
    format!(
        "{{\"format\":\"cutting-plans/1\",\"plans\":[\n{}\n]}}\n",
        lines.join(",\n")
    )
}

/// A plan for sticks. It must be one for this problem.
pub fn lengths_plan(problem: &lengths::Problem, plan: &lengths::Plan) -> Written {
    let sticks = plan.layouts.iter().map(|layout| Stick {
        stock: problem.stock[layout.stock].name.clone(),
        copies: layout.copies,
        pieces: layout
            .pieces
            .iter()
            .map(|placed| Leg {
                id: problem.pieces[placed.piece].name.clone(),
                at: placed.at,
            })
            .collect(),
        remnants: layout
            .remnants
            .iter()
            .map(|&(from, to)| Rest {
                at: from,
                l: to.saturating_sub(from),
            })
            .collect(),
    });
    let name = |piece: usize| problem.pieces[piece].name.clone();
    Written {
        format: "cutting-plan/1",
        instance: problem.name.clone(),
        objective: plan.objective,
        bound: plan.bound,
        sticks: Some(sticks.collect()),
        sheets: None,
        uncut: uncut(&plan.uncut, name),
    }
}

/// A plan for sheets. It must be one for this problem.
pub fn sheets_plan(problem: &sheets::Problem, plan: &sheets::Plan) -> Written {
    let name = |piece: usize| problem.pieces[piece].name.clone();
    let sheets = plan.layouts.iter().map(|layout| Sheet {
        stock: match layout.from {
            sheets::From::Stock(stock) => problem.stock[stock].name.clone(),
            sheets::From::Window(piece) => format!("{WINDOW}{}", name(piece)),
        },
        copies: layout.copies,
        pieces: layout
            .pieces
            .iter()
            .map(|placed| Piece {
                id: name(placed.piece),
                area: placed.area.into(),
                rotated: placed.turned,
            })
            .collect(),
        cuts: layout
            .cuts
            .iter()
            .map(|cut| Cut {
                area: cut.of.into(),
                dir: match cut.way {
                    sheets::Way::Upright => "v",
                    sheets::Way::Level => "h",
                },
                at: cut.at,
            })
            .collect(),
        remnants: layout.remnants.iter().map(|&area| area.into()).collect(),
    });
    Written {
        format: "cutting-plan/1",
        instance: problem.name.clone(),
        objective: plan.objective,
        bound: plan.bound,
        sticks: None,
        sheets: Some(sheets.collect()),
        uncut: uncut(&plan.uncut, name),
    }
}

/// Stands before the name of a piece whose window is cut up.
pub(super) const WINDOW: &str = "window:";

fn uncut(uncut: &[(usize, u64)], name: impl Fn(usize) -> String) -> Vec<Uncut> {
    uncut
        .iter()
        .map(|&(piece, qty)| Uncut {
            id: name(piece),
            qty,
        })
        .collect()
}

#[derive(Clone, Debug, Serialize)]
struct Stick {
    stock: String,
    copies: u64,
    pieces: Vec<Leg>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    remnants: Vec<Rest>,
}

#[derive(Clone, Debug, Serialize)]
struct Leg {
    id: String,
    at: u64,
}

#[derive(Clone, Debug, Serialize)]
struct Rest {
    at: u64,
    l: u64,
}

#[derive(Clone, Debug, Serialize)]
struct Sheet {
    stock: String,
    copies: u64,
    pieces: Vec<Piece>,
    cuts: Vec<Cut>,
    remnants: Vec<Rectangle>,
}

#[derive(Clone, Debug, Serialize)]
struct Piece {
    id: String,
    #[serde(flatten)]
    area: Rectangle,
    rotated: bool,
}

#[derive(Clone, Debug, Serialize)]
struct Cut {
    #[serde(flatten)]
    area: Rectangle,
    dir: &'static str,
    at: u64,
}

#[derive(Clone, Debug, Serialize)]
struct Rectangle {
    x: u64,
    y: u64,
    w: u64,
    h: u64,
}

impl From<sheets::Area> for Rectangle {
    fn from(area: sheets::Area) -> Self {
        Self {
            x: area.x,
            y: area.y,
            w: area.width,
            h: area.height,
        }
    }
}

#[derive(Clone, Debug, Serialize)]
struct Uncut {
    id: String,
    qty: u64,
}
