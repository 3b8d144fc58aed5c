//! How long prices take.

use divan::{Bencher, black_box};
use pricing::{Asked, Budget, RuleSet, alternatives, price};
use sizing::{Sizes, derive};
use trade::{Catalogue, Date, Job, Settings, Units};

fn main() {
    divan::main();
}

struct Shop {
    catalogue: Catalogue,
    rules: RuleSet,
    settings: Settings,
    asked: Asked,
}

impl Shop {
    fn open() -> Self {
        Self {
            catalogue: Catalogue::starter()
                .under(demo::CATALOGUE)
                .expect("the costs read"),
            rules: RuleSet::read(demo::PRICES).expect("the rules read"),
            settings: Settings::defaults(Units::Inches),
            asked: Asked::on(Date::read("2026-11-25").expect("a day")),
        }
    }

    fn derived(&self, name: &str) -> (Job, Sizes) {
        let job = demo::job(name).expect("a job of the shop");
        let job = Job::read(job.toml.as_bytes()).expect("it reads");
        let sizes = derive(&job, &self.catalogue, &self.settings).expect("it derives");
        (job, sizes)
    }
}

/// A derived single-mat job with its full working; wanted below 20 µs.
#[divan::bench]
fn one_derived_job(bencher: Bencher) {
    let shop = Shop::open();
    let (job, sizes) = shop.derived("harbour");
    bencher.bench(|| {
        price(
            black_box(&job),
            &sizes,
            &shop.catalogue,
            &shop.rules,
            &shop.asked,
        )
    });
}

/// Six alternatives, derived and priced; wanted below 5 ms with their drawings.
#[divan::bench]
fn six_alternatives(bencher: Bencher) {
    let shop = Shop::open();
    let (job, _) = shop.derived("harbour");
    let mouldings = [
        "oak-square-1",
        "walnut-1",
        "ash-round-3/4",
        "poplar-black-1.25",
        "cove-gilt-2",
        "scoop-3",
    ];
    let jobs: Vec<Job> = mouldings
        .iter()
        .map(|code| {
            let mut job = job.clone();
            job.frame[0].moulding = Some((*code).to_owned());
            job
        })
        .collect();
    let choices: Vec<(&str, &Job)> = mouldings.iter().copied().zip(&jobs).collect();
    bencher.bench(|| {
        alternatives(
            black_box(&choices),
            &shop.catalogue,
            &shop.settings,
            &shop.rules,
            &shop.asked,
        )
    });
}

/// Ten thousand open jobs priced again under a changed price list; wanted below 2 s.
#[divan::bench(sample_count = 5)]
fn ten_thousand_priced_again(bencher: Bencher) {
    let shop = Shop::open();
    let derived: Vec<(Job, Sizes)> = demo::JOBS
        .iter()
        .map(|job| shop.derived(job.name))
        .collect();
    bencher.bench(|| {
        let jobs = derived.iter().cycle().take(10_000);
        let totals = jobs.map(|(job, sizes)| {
            let priced = price(job, sizes, &shop.catalogue, &shop.rules, &shop.asked);
            priced.totals.total.value.minor
        });
        totals.sum::<i64>()
    });
}

/// Bringing a price to a budget, two changes deep.
#[divan::bench(sample_count = 5)]
fn to_a_budget(bencher: Bencher) {
    let shop = Shop::open();
    let (job, sizes) = shop.derived("harbour");
    let before = price(&job, &sizes, &shop.catalogue, &shop.rules, &shop.asked);
    let mut ceiling = before.totals.total.value;
    ceiling.minor /= 2;
    let budget = Budget {
        job: &job,
        catalogue: &shop.catalogue,
        shop: &shop.settings,
        rules: &shop.rules,
        asked: &shop.asked,
        ceiling,
    };
    bencher.bench(|| black_box(&budget).propose());
}
