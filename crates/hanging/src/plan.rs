//! How a piece hangs, all of it in one place: weight, hardware, wire, screws, rail, lifting, cautions.

use std::fmt;

use conservation::Fact;
use conservation::caution::{self, Caution};
use conservation::climate::{Wood, wood};
use conservation::rules::remembered;
use conservation::spoken::{said, weighs};
use measure::{Length, Mass, Toward, Unit};
use sizing::{HangerMarks, MemberSizes, Sizes, hooks_apart};
use trade::{Hanger, Job, Key};
use working::{Figure, Given, Stated, Subject, Worked, Working};

use crate::choice::{Choice, choice, hooks};
use crate::lift::{Lift, Lifted, lift};
use crate::load::{HookPull, force, hook_pull};
use crate::rail::{Bar, Rail, Sag, bar_enough, deep_enough, sag};
use crate::refusal::Refusal;
use crate::screw::{Withdrawal, lateral, lateral_group, longest, shank, withdrawal};
use crate::weight::{LEFT_OUT, Weight, least, strainer_wood, weigh};
use crate::wire::{Factors, Hang, Ratings, WireRun, ratings, wire_run};
use crate::{CAUTION, custom};

static HELD: working::Rule = custom(
    "screw.held",
    "a hanger holds by all its screws, pulled sideways along the rail",
    "held = screws × lateral × share",
);
static REACH: working::Rule = custom(
    "screw.reach",
    "a screw reaches into the rail as far as it is long, and no further than the longest that fits",
    "reach = min(screw, longest)",
);
static THREAD: working::Rule = remembered(
    "screw.thread",
    "only its thread holds against a straight pull: two thirds of its length or so",
    "thread = nearest(threaded × reach)",
    "E10",
);
static SHARE: working::Rule = remembered(
    "screw.share",
    "a screw that reaches less than its full depth bears sideways in proportion, and under the least not at all",
    "share = if(reach < least × shank, 0, min(1, (reach ÷ 1 mm) ÷ (full × shank ÷ 1 mm)))",
    "E10",
);
static ACTUAL: working::Rule = custom(
    "screw.actual",
    "the factor that is really there",
    "actual = held ÷ pull",
);

/// How a piece hangs.
#[derive(Clone, Debug)]
pub struct Hanging {
    /// What it weighs, part by part.
    pub weight: Weight,
    /// What the document hangs it by.
    pub hanger: Hanger,
    /// What the trade hangs this weight by.
    pub choice: Choice,
    /// Its wire, on as many hooks as it takes; none where it hangs otherwise.
    pub wire: Option<WirePlan>,
    /// The same wire on the other number of hooks, one or two.
    pub other_hooks: Option<WirePlan>,
    /// How it pulls at the wall, where its depth is known.
    pub pull: Option<HookPull>,
    /// The screws of its hangers, where the wood of its rails is known.
    pub screws: Option<ScrewPlan>,
    /// Its bottom rail under the package, where the wood is known.
    pub rail: Option<RailPlan>,
    /// Lifting it from the floor to the bench, for one person.
    pub bench: Option<Lifted>,
    /// Lifting it from the floor to its place on the wall, for one person.
    pub wall: Option<Lifted>,
    /// What must stand beside all this, the worst first.
    pub cautions: Vec<Caution>,
    /// What is not counted or not known, in words.
    pub unknown: Vec<String>,
    /// The working its numbers stand in, the sizes' own lines first.
    pub working: Working,
}

/// A wire on one hook or two.
#[derive(Clone, Copy, Debug)]
pub struct WirePlan {
    /// Hooks.
    pub hooks: u32,
    /// How it hangs.
    pub hang: Hang,
    /// The wire under load.
    pub run: WireRun,
    /// What its parts must be rated for.
    pub ratings: Ratings,
}

/// Its pull and its ratings, and [`CAUTION`].
impl fmt::Display for WirePlan {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let hooks = if self.hooks == 1 {
            "one hook"
        } else {
            "two hooks"
        };
        write!(
            f,
            "on {hooks}: {}; {}. {CAUTION}",
            self.run.sentence(),
            self.ratings.sentence()
        )
    }
}

/// The screws of a hanger.
#[derive(Clone, Copy, Debug)]
pub struct ScrewPlan {
    /// Screws in each hanger.
    pub each: u32,
    /// The longest that fits the rail from behind.
    pub longest: Worked<Length>,
    /// Thread in the wood, of a screw as long as stated, else of the longest.
    pub thread: Stated<Length>,
    /// What pulls one straight out.
    pub withdrawal: Withdrawal,
    /// What a hanger's screws bear sideways together, N.
    pub held: Worked<Figure>,
    /// The pull on a hanger, N.
    pub pull: Stated<Figure>,
    /// How many times the pull they bear.
    pub actual: Worked<Figure>,
}

impl ScrewPlan {
    /// What they bear and the factor that is there.
    pub fn sentence(&self) -> String {
        self.sentence_in(Unit::Inch)
    }

    /// The same, its lengths in this unit first.
    pub fn sentence_in(&self, unit: Unit) -> String {
        let rough = |figure: Figure| conservation::rules::rough(figure.value());
        format!(
            "{} screws no longer than {} in each hanger bear {} N sideways, {} times its pull of {} N",
            self.each,
            said(self.longest.value, unit, Toward::Down),
            rough(self.held.value),
            rough(self.actual.value),
            rough(self.pull.value),
        )
    }
}

/// Its [`sentence`](ScrewPlan::sentence), and [`CAUTION`].
impl fmt::Display for ScrewPlan {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}. {CAUTION}", self.sentence())
    }
}

/// The bottom rail under its load.
#[derive(Clone, Copy, Debug)]
pub struct RailPlan {
    /// The rail.
    pub rail: Rail,
    /// Its wood.
    pub wood: &'static Wood,
    /// How far it sags.
    pub sag: Sag,
    /// How deep it would have to be, where it sags too much and nothing helps it.
    pub wanted: Option<Worked<Length>>,
    /// A strainer's bar that would cure it, where it sags too much: its depth in the plane of the picture, as
    /// far from front to back as the shop's strainers are.
    pub bar: Option<Worked<Length>>,
}

/// How far it sags, and [`CAUTION`].
impl fmt::Display for RailPlan {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mm = |length: Length| conservation::rules::rough(length.approx_mm());
        write!(
            f,
            "the bottom rail sags by {} to {} mm, {} mm after years; {} mm pass. {CAUTION}",
            mm(self.sag.fixed.value),
            mm(self.sag.free.value),
            mm(self.sag.lasting.value),
            mm(self.sag.allowed.value),
        )
    }
}

/// How a piece hangs.
///
/// Shape:  whatever can't be worked out for want of a number is left out and named in `unknown`; no weight
///         that nobody knows counts as nothing without being named.
/// Errors: none.
/// Source: the rules of each part. Advice, never a certificate: show [`CAUTION`] beside it.
pub fn hangs(job: &Job, sizes: &Sizes) -> Hanging {
    hangs_after(job, sizes, sizes.working.clone())
}

/// The same, its lines after those of a working that begins with the sizes' own.
pub(crate) fn hangs_after(job: &Job, sizes: &Sizes, mut working: Working) -> Hanging {
    let weight = weigh(job, sizes, &mut working);
    let mass = weight.total.value;
    let made_of = job.place.as_ref().and_then(|place| place.made_of);
    let choice = choice(mass, made_of, &sizes.settings);
    let hanger = job
        .hardware
        .as_ref()
        .map_or_else(Hanger::default, |hardware| hardware.hanger);
    let mut plan = Planning {
        job,
        sizes,
        weight: &weight,
        working: &mut working,
        unknown: Vec::new(),
    };
    let number = hooks(mass, hanger, &sizes.settings);
    let wire = plan.wire(number);
    let other_hooks = plan.wire(3 - number); // geometry: one for two, two for one
    let pull = plan.pull();
    let screws = plan.screws(hanger, wire.as_ref());
    let rail = plan.rail();
    let [bench, wall] = plan.lifts();
    plan.name_unknown();
    let unknown = plan.unknown;
    Hanging {
        cautions: cautions(job, sizes, mass, &[bench, wall]),
        hanger,
        choice,
        wire,
        other_hooks,
        pull,
        screws,
        rail,
        bench,
        wall,
        unknown,
        weight,
        working,
    }
}

/// The cautions of a piece of this weight, the worst first.
fn cautions(job: &Job, sizes: &Sizes, mass: Mass, lifts: &[Option<Lifted>; 2]) -> Vec<Caution> {
    let mut found = caution::of(job, sizes);
    let guide = Mass::KILOGRAM.times(sizes.settings.count(Key::LiftGuide));
    let strains = |lift: &Lifted| lift.index.is_none_or(|index| index.value.value() > 1.0);
    if mass > guide || lifts.iter().flatten().any(strains) {
        found.push(Caution::Lift);
    }
    found.sort_unstable();
    found.dedup();
    found
}

struct Planning<'a> {
    job: &'a Job,
    sizes: &'a Sizes,
    weight: &'a Weight,
    working: &'a mut Working,
    unknown: Vec<String>,
}

impl Planning<'_> {
    /// What came of it; a refusal is named among what is unknown, once.
    fn kept<T>(&mut self, found: Result<T, Refusal>) -> Option<T> {
        match found {
            Ok(found) => Some(found),
            Err(refusal) => {
                let said = refusal.to_string();
                if !self.unknown.contains(&said) {
                    self.unknown.push(said);
                }
                None
            }
        }
    }

    fn wire(&mut self, number: u32) -> Option<WirePlan> {
        let marks: HangerMarks = self.sizes.hangers?;
        let wire = marks.wire?;
        let two = number > 1;
        let apart = two.then(|| {
            let own = wire.hooks_apart;
            own.unwrap_or_else(|| hooks_apart(marks.apart, &self.sizes.settings, self.working))
        });
        let hang = Hang {
            weight: self.weight.total.into(),
            rings_apart: marks.apart.into(),
            rise: wire.rise.into(),
            hooks_apart: apart.map(Stated::from),
        };
        let run = wire_run(&hang, self.working);
        let run = self.kept(run)?;
        let place = self.job.place.as_ref().and_then(|place| place.above);
        let people = place.is_some_and(trade::Above::is_over_people);
        let factors = Factors::of_shop(&self.sizes.settings, people);
        let rated = ratings(&hang, &run, &factors, self.working);
        let ratings = self.kept(rated)?;
        Some(WirePlan {
            hooks: number,
            hang,
            run,
            ratings,
        })
    }

    /// How it pulls at the wall: its outermost member's height is its depth, its hooks above its foot.
    fn pull(&mut self) -> Option<HookPull> {
        let marks = self.sizes.hangers?;
        let depth = self.sizes.members.first()?.height?;
        let down = marks.wire.map_or(marks.down, |wire| wire.hook);
        let outside = self.sizes.outside.height;
        let inputs = [("outside", outside.into()), ("down", down.into())];
        let value = outside.value - down.value;
        let subject = Subject::of("hook", "above_foot");
        let height = self.working.by(&ABOVE_FOOT, subject, &inputs, value);
        let weight = self.weight.total.into();
        let found = hook_pull(weight, Stated::material(depth), height.into(), self.working);
        self.kept(found)
    }

    /// The wood of the outermost member.
    fn wood(&self) -> Option<&'static Wood> {
        let material = self.sizes.members.first()?.material.as_deref()?;
        wood(material.wood.as_deref()?).ok()
    }

    fn screws(&mut self, hanger: Hanger, wire: Option<&WirePlan>) -> Option<ScrewPlan> {
        if hanger == Hanger::None || self.weight.total.value <= Mass::ZERO {
            return None;
        }
        let (wood, settings) = (self.wood()?, &self.sizes.settings);
        let depth = self.sizes.members.first()?.height?;
        let own = |key: Key| Stated::setting(key.id(), settings.length(key));
        let fits = longest(Stated::material(depth), own(Key::ScrewLand), self.working);
        let fits = self.kept(fits)?;
        let stated = self.job.hardware.as_ref().and_then(|found| found.screw);
        let long = stated.map_or_else(|| fits.into(), |screw| Stated::job(*screw));
        let reach = self.reach(long, fits);
        let thread = Stated::from(self.thread(reach));
        let gauge = Stated::setting(Key::ScrewGauge.id(), settings.count(Key::ScrewGauge));
        let thick = shank(gauge, self.working);
        let thick = self.kept(thick)?;
        let out = withdrawal(wood.gravity(), thick.into(), thread, self.working);
        let out = self.kept(out)?;
        let group = self.kept(lateral_group(wood.is_softwood(), wood.gravity().value))?;
        let sideways = lateral(group, thick.into(), self.working);
        let sideways = self.kept(sideways)?;
        let share = self.share(reach, thick);
        Some(self.screw_plan((fits, thread), out, (sideways, share), wire))
    }

    /// How far a screw reaches into the rail.
    fn reach(&mut self, long: Stated<Length>, fits: Worked<Length>) -> Worked<Length> {
        let inputs = [("screw", long.into()), ("longest", fits.into())];
        let value = long.value.min(fits.value);
        let subject = Subject::of("screw", "reach");
        self.working.by(&REACH, subject, &inputs, value)
    }

    /// How much of that is thread.
    fn thread(&mut self, reach: Worked<Length>) -> Worked<Length> {
        let threaded = Fact::named("screw.threaded");
        let value = reach.value.scaled_nearest(threaded.low());
        let inputs = [
            ("threaded", threaded.only().into()),
            ("reach", reach.into()),
        ];
        let subject = Subject::of("screw", "thread");
        let value = value.unwrap_or_default();
        self.working.by(&THREAD, subject, &inputs, value)
    }

    /// What of its strength sideways that reach leaves a screw.
    #[allow(clippy::float_arithmetic, reason = "figures of loads, no lengths")]
    fn share(&mut self, reach: Worked<Length>, shank: Worked<Length>) -> Worked<Figure> {
        let [least, full] = ["screw.least_depth", "screw.full_depth"].map(Fact::named);
        let shanks = reach.value.approx_mm() / shank.value.approx_mm();
        let value = if shanks < least.low() {
            0.0
        } else {
            (shanks / full.low()).min(1.0)
        };
        let inputs = [
            ("reach", reach.into()),
            ("least", least.only().into()),
            ("shank", shank.into()),
            ("full", full.only().into()),
        ];
        let subject = Subject::of("screw", "share");
        conservation::rules::figure(self.working, &SHARE, subject, &inputs, (value, ""))
    }

    #[allow(clippy::float_arithmetic, reason = "figures of loads, no lengths")]
    fn screw_plan(
        &mut self,
        (longest, thread): (Worked<Length>, Stated<Length>),
        withdrawal: Withdrawal,
        (sideways, share): (Worked<Figure>, Worked<Figure>),
        wire: Option<&WirePlan>,
    ) -> ScrewPlan {
        let each = self.sizes.settings.count(Key::ScrewsEach);
        let number = u32::try_from(each).unwrap_or(u32::MAX);
        let screws = Stated::setting(Key::ScrewsEach.id(), each);
        let pull = match wire {
            Some(wire) => force(wire.run.tension.into(), "tension", self.working),
            None => self.half(),
        };
        let subject = |quantity| Subject::of("screw", quantity);
        let figure = conservation::rules::figure;
        let all = f64::from(number) * sideways.value.value();
        let value = (all * share.value.value(), "N");
        let inputs = [
            ("screws", screws.into()),
            ("lateral", sideways.into()),
            ("share", share.into()),
        ];
        let held = figure(self.working, &HELD, subject("held"), &inputs, value);
        let value = (held.value.value() / pull.value.value(), "times");
        let inputs = [("held", held.into()), ("pull", pull.into())];
        ScrewPlan {
            each: number,
            longest,
            thread,
            withdrawal,
            held,
            pull: pull.into(),
            actual: figure(self.working, &ACTUAL, subject("actual"), &inputs, value),
        }
    }

    /// Half the weight: what each of two hangers carries straight down.
    #[allow(clippy::float_arithmetic, reason = "figures of loads, no lengths")]
    fn half(&mut self) -> Worked<Figure> {
        let whole = force(self.weight.total.into(), "weight", self.working);
        let value = (whole.value.value() / 2.0, "N");
        let inputs: [(&'static str, Given); 1] = [("whole", whole.into())];
        let subject = Subject::of("load", "half");
        conservation::rules::figure(self.working, &HALF, subject, &inputs, value)
    }

    /// The bottom rail under the package, with the strainer's bar where there is one.
    fn rail(&mut self) -> Option<RailPlan> {
        let sizes = self.sizes;
        let member = sizes.members.first()?;
        if self.weight.package.value <= Mass::ZERO {
            return None;
        }
        let (wood, height) = (self.wood()?, member.height?);
        let outside_rabbet = member.face.value - member.lip;
        let inputs = [
            ("face", member.face.into()),
            ("lip", Given::material(member.lip)),
        ];
        let subject = Subject::of("rail", "depth");
        let depth = self.working.by(&SOLID, subject, &inputs, outside_rabbet);
        let load = force(self.weight.package.into(), "package", self.working);
        let helped = sizes.strainer.and_then(|strainer| {
            Some(Bar {
                modulus: strainer_wood(&sizes.settings)?.modulus(),
                width: Stated::job(strainer.depth),
                depth: Stated::job(strainer.width),
            })
        });
        let rail = Rail {
            modulus: wood.modulus(),
            width: Stated::material(height),
            depth: depth.into(),
            span: member.rabbet.width.into(),
            load: load.into(),
            helped,
        };
        let found = sag(&rail, &sizes.settings, self.working);
        let sag = self.kept(found)?;
        let lacks = sag.is_too_much() && helped.is_none();
        let bar = sag.is_too_much().then(|| self.bar(&rail, &sag)).flatten();
        Some(RailPlan {
            bar,
            rail,
            wood,
            sag,
            wanted: lacks.then(|| deep_enough(&rail, &sag, self.working)),
        })
    }

    /// The bar that would cure a rail's sag.
    fn bar(&mut self, rail: &Rail, sag: &Sag) -> Option<Worked<Length>> {
        let settings = &self.sizes.settings;
        let own = |key: Key| Stated::setting(key.id(), settings.length(key));
        let bar = Bar {
            modulus: strainer_wood(settings)?.modulus(),
            width: own(Key::HeightBand2),
            depth: own(Key::FaceLight3),
        };
        let found = bar_enough(rail, sag, &bar, self.working);
        self.kept(found)
    }

    /// Lifting it to the bench, and to the wall so that its middle comes to the shop's height.
    fn lifts(&mut self) -> [Option<Lifted>; 2] {
        let mass = self.weight.total;
        if mass.value <= Mass::ZERO {
            return [None, None];
        }
        let settings = &self.sizes.settings;
        let bench = Lift::to_bench(mass.into(), settings, self.working);
        let bench = lift(&bench, self.working);
        let key = Key::CentreHeight;
        let hands = Stated::setting(key.id(), settings.length(key));
        let wall = Lift::to_wall(mass.into(), hands, settings, self.working);
        let wall = lift(&wall, self.working);
        [self.kept(bench), self.kept(wall)]
    }

    /// Names what no sum counts.
    fn name_unknown(&mut self) {
        let uncounted = self.weight.uncounted();
        if !uncounted.is_empty() {
            self.unknown.push(format!(
                "it weighs {}: every load here is higher in truth; put it on a scale and state `grams` under [hardware]",
                least(self.weight.total.value, &uncounted, self.weight.unit)
            ));
        }
        if let Some(doubted) = self.weight.doubted {
            self.unknown.push(format!(
                "`grams` under [hardware] says {}, less than half of its parts: the parts are counted; put it on a scale again",
                weighs(doubted, self.weight.unit)
            ));
        }
        if !self.weight.on_scale {
            self.unknown.push(format!("{LEFT_OUT} of its weight"));
        }
        if let Some(member) = self.sizes.members.first() {
            self.name_rails(member);
        }
    }

    /// Names what is not known of the outermost rails.
    fn name_rails(&mut self, member: &MemberSizes) {
        let material = member.material.as_deref();
        match material.and_then(|found| found.wood.as_deref()).map(wood) {
            Some(Ok(_)) => {}
            Some(Err(refusal)) => self.unknown.push(format!(
                "{refusal}: neither the sag of its rails nor the hold of screws is worked out"
            )),
            None => self.unknown.push(
                "nobody said of which wood its rails are: neither their sag nor the hold of screws is worked out"
                    .to_owned(),
            ),
        }
        if member.height.is_none() {
            self.unknown.push(
                "nobody said how high its moulding is, front to back: neither its pull out of the wall, nor the hold of screws, nor the sag of its rails is worked out"
                    .to_owned(),
            );
        }
    }
}

static ABOVE_FOOT: working::Rule = crate::geometry(
    "hook.above_foot",
    "the hook is as far above the foot as the frame is high, less what it lies below the top",
    "height = outside - down",
);
static SOLID: working::Rule = crate::geometry(
    "rail.solid",
    "the solid part of a rail is its face less the lip",
    "depth = face - lip",
);
static HALF: working::Rule = crate::geometry(
    "load.half",
    "each of two hangers carries half",
    "half = whole ÷ 2",
);

#[cfg(test)]
mod tests;
