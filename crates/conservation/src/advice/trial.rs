//! Trying changes: applied to the document, the piece derived and looked at again.

use std::collections::BTreeMap;

use sizing::{Fault, Severity, Sizes, derive};
use trade::{Catalogue, Job, Settings};

use super::{Advice, Change};

/// Looks a piece over and says what is wrong with it.
pub type Look<'a> = dyn Fn(&Job, &Sizes) -> Vec<Fault> + 'a;

/// Every fault of a piece, by code and part, with the worst it is.
type Harm = BTreeMap<(&'static str, String), Severity>;

/// A piece on which changes are tried.
pub struct Trial<'a> {
    pub(super) job: &'a Job,
    pub(super) sizes: &'a Sizes,
    pub(super) catalogue: &'a Catalogue,
    shop: &'a Settings,
    look: &'a Look<'a>,
    before: Harm,
}

impl<'a> Trial<'a> {
    /// A trial on a piece, which `look` looks over before each change and after it.
    ///
    /// Shape:  what the sizes reveal by themselves counts too; `look` need not repeat it.
    pub fn of(
        job: &'a Job,
        sizes: &'a Sizes,
        catalogue: &'a Catalogue,
        shop: &'a Settings,
        look: &'a Look<'a>,
    ) -> Self {
        Self {
            job,
            sizes,
            catalogue,
            shop,
            look,
            before: harm(job, sizes, look),
        }
    }

    /// Whether a change takes a fault away and brings none that was not there, or was milder, before.
    ///
    /// Errors: none; a document that can't be derived is no cure.
    pub fn cures(&self, change: &Change, fault: &Fault) -> bool {
        let job = change.applied(self.job);
        let Ok(sizes) = derive(&job, self.catalogue, self.shop) else {
            return false;
        };
        let after = harm(&job, &sizes, self.look);
        let cured = !after.contains_key(&(fault.code, fault.part.clone()));
        let none_new = after
            .iter()
            .all(|(key, severity)| self.before.get(key).is_some_and(|had| had >= severity));
        cured && none_new
    }

    /// Leaves each advice only the changes that cure it.
    pub fn keep_cures(&self, advice: &mut [Advice]) {
        for advice in advice {
            let fault = advice.fault.clone();
            advice.changes.retain(|change| self.cures(change, &fault));
        }
    }
}

fn harm(job: &Job, sizes: &Sizes, look: &Look<'_>) -> Harm {
    let mut harm = Harm::new();
    let found = look(job, sizes);
    for fault in sizes.faults.iter().chain(&found) {
        let key = (fault.code, fault.part.clone());
        let worst = harm.entry(key).or_insert(fault.severity);
        *worst = fault.severity.max(*worst);
    }
    harm
}
