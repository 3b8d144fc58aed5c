//! The plans made last, held until the program ends.

use std::collections::VecDeque;
use std::sync::{Arc, Mutex, PoisonError};

use paperwork::{CutBook, CutMaterial, Paper, PaperworkError, Stamp, cut_sheets_pdf};

use crate::clock;
use crate::problem::reference;

/// How many plans are held; a new one pushes out the oldest.
pub(crate) const HELD: usize = 12;

/// A plan, as the bench reads it.
pub(crate) struct Plan {
    /// What it is called, on every page.
    pub name: String,
    /// The jobs it cuts for.
    pub orders: Vec<String>,
    /// Everything said of each material.
    pub materials: Vec<CutMaterial>,
    /// Parts no stock is planned for, a line for each reason.
    pub unplanned: Vec<String>,
    /// Where it was asked for.
    pub asked_at: &'static str,
    made: Stamp,
    date: String,
}

impl Plan {
    /// A plan that was made just now.
    pub fn now(
        orders: Vec<String>,
        materials: Vec<CutMaterial>,
        unplanned: Vec<String>,
        asked_at: &'static str,
    ) -> Self {
        let (made, date) = clock::now();
        Self {
            name: format!("of {date}, {}", clock::time_of_day()),
            orders,
            materials,
            unplanned,
            asked_at,
            made,
            date,
        }
    }

    /// Pieces the stock does not reach for, each with its material.
    pub fn lacking(&self) -> impl Iterator<Item = (&str, &str)> {
        self.materials.iter().flat_map(|material| {
            let uncut = material.uncut.iter();
            uncut.map(|line| (material.name.as_str(), line.as_str()))
        })
    }

    /// Its cut sheets, as PDF.
    pub fn cut_sheets(&self, shop: &str, paper: Paper) -> Result<Vec<u8>, PaperworkError> {
        let book = CutBook {
            shop: shop.to_owned(),
            plan: self.name.clone(),
            orders: self.orders.clone(),
            made: self.made,
            date: self.date.clone(),
            revision: String::new(),
            superseded: String::new(),
            materials: self.materials.clone(),
        };
        cut_sheets_pdf(&book, paper)
    }
}

/// The plans made last.
#[derive(Default)]
pub(crate) struct Plans(Mutex<VecDeque<(String, Arc<Plan>)>>);

impl Plans {
    /// Holds a plan; returns what it is found by.
    pub fn hold(&self, plan: Plan) -> String {
        let id = reference();
        let mut held = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        held.push_back((id.clone(), Arc::new(plan)));
        while held.len() > HELD {
            held.pop_front();
        }
        id
    }

    /// The plan of this name, if it is still held.
    pub fn find(&self, id: &str) -> Option<Arc<Plan>> {
        let held = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let found = held.iter().find(|(own, _)| own == id);
        found.map(|(_, plan)| Arc::clone(plan))
    }
}

#[cfg(test)]
mod tests {
    use super::{HELD, Plan, Plans};

    #[test]
    fn a_new_plan_pushes_out_the_oldest_only() {
        let plans = Plans::default();
        let plan = || Plan::now(Vec::new(), Vec::new(), Vec::new(), "/bench");
        let ids: Vec<String> = (0..=HELD).map(|_| plans.hold(plan())).collect();
        assert!(plans.find(&ids[0]).is_none(), "the oldest is gone");
        assert!(ids[1..].iter().all(|id| plans.find(id).is_some()));
    }
}
