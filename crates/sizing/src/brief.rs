//! The brief: the job with its materials looked up and the shop's habits filled in.
//!
//! Everything after this works on numbers; what is missing or unknown is found here.

mod contradictions;
mod layers;
mod members;
mod openings;

use std::sync::Arc;

use measure::{Length, Unit};
use trade::{Catalogue, Job, Key, Kind, Material, Medium, Settings, settings};

use crate::fault::Fault;
use crate::trace::Fact;

pub(crate) use layers::{
    FilletBrief, LayerBrief, MatBrief, PaneBrief, SinkBrief, SpacerBrief, WallsBrief,
};
pub(crate) use members::{FloaterBrief, MemberBrief};
pub(crate) use openings::{OpeningBrief, lift_of};

/// A job ready to be sized.
pub(crate) struct Brief<'a> {
    pub job: &'a Job,
    pub settings: Settings,
    /// Front to back.
    pub mats: Vec<MatBrief<'a>>,
    pub openings: Vec<OpeningBrief<'a>>,
    /// Outside in.
    pub members: Vec<MemberBrief<'a>>,
    pub glazing: Vec<PaneBrief>,
    pub spacer: Option<SpacerBrief>,
    pub walls: Option<WallsBrief>,
    pub sink: Option<SinkBrief>,
    pub mount: Option<LayerBrief>,
    pub backing: Vec<LayerBrief>,
}

impl<'a> Brief<'a> {
    /// Looks everything up.
    ///
    /// Errors: every missing material, missing number, bound exceeded and setting refused.
    pub fn of(job: &'a Job, catalogue: &Catalogue, shop: &Settings) -> Result<Self, Vec<Fault>> {
        let settings = shop
            .with(&job.settings, settings::Layer::Job, job.units.unit())
            .map_err(|refused| refused.iter().map(setting_fault).collect::<Vec<_>>())?;
        let own = with_own_materials(job, catalogue)?;
        let mut desk = Desk {
            job,
            catalogue: own.as_ref().unwrap_or(catalogue),
            settings: &settings,
            faults: Vec::new(),
        };
        desk.check_bounds();
        if !desk.faults.is_empty() {
            return Err(desk.faults);
        }
        let mats = desk.mats();
        let openings = desk.openings();
        let members = desk.members();
        let glazing = desk.glazing();
        let (spacer, walls, sink) = (desk.spacer(), desk.walls(), desk.sink());
        let (mount, backing) = (desk.mount(), desk.backing());
        let faults = desk.faults;
        if !faults.is_empty() {
            return Err(faults);
        }
        Ok(Self {
            job,
            settings,
            mats,
            openings,
            members,
            glazing,
            spacer,
            walls,
            sink,
            mount,
            backing,
        })
    }

    /// A setting as a fact.
    pub fn fact(&self, key: Key) -> Fact {
        Fact::setting(&self.settings, key)
    }

    /// The unit sentences speak in.
    pub fn unit(&self) -> Unit {
        self.job.units.unit()
    }

    /// A length as sentences say it.
    pub fn say(&self, length: Length) -> String {
        length.in_both(self.unit())
    }

    /// What the walls of a shadowbox are made of, where it has a catalogue code.
    pub fn wall_material(&self) -> Option<Arc<Material>> {
        self.walls.as_ref()?.material.clone()
    }

    /// Whether a stretched canvas goes straight into the rabbet.
    pub fn is_canvas(&self) -> bool {
        is_canvas(self.job)
    }
}

/// Whether the job is a stretched canvas without mats.
fn is_canvas(job: &Job) -> bool {
    job.mat.is_empty()
        && job
            .art
            .first()
            .is_some_and(|art| art.medium == Medium::Canvas)
}

/// The catalogue with the job's own materials added, where it has any.
fn with_own_materials(job: &Job, catalogue: &Catalogue) -> Result<Option<Catalogue>, Vec<Fault>> {
    if job.material.is_empty() {
        return Ok(None);
    }
    catalogue.with(&job.material).map(Some).map_err(|fault| {
        vec![Fault::refuse(
            "material.catalogue",
            "Materials of the job",
            fault.to_string(),
            "",
            "",
        )]
    })
}

fn setting_fault(refused: &settings::Refused) -> Fault {
    Fault::refuse(
        "setting.refused",
        format!("Setting {}", refused.id),
        format!("\"{}\"", refused.text),
        refused.why.clone(),
        "",
    )
}

/// Where a job is gone through, and faults collected.
struct Desk<'a, 'b> {
    job: &'a Job,
    catalogue: &'b Catalogue,
    settings: &'b Settings,
    faults: Vec<Fault>,
}

impl Desk<'_, '_> {
    /// The material of this code, which must be of one of these kinds.
    fn material(
        &mut self,
        part: &str,
        code: Option<&str>,
        kinds: &[Kind],
    ) -> Option<Arc<Material>> {
        let code = code?;
        match self.catalogue.find(code) {
            Ok(material) if material.kind.is_none_or(|kind| kinds.contains(&kind)) => {
                Some(Arc::clone(material))
            }
            Ok(material) => {
                let kind = material.kind.map_or("something else", Kind::word);
                let wanted: Vec<&str> = kinds.iter().map(|kind| kind.word()).collect();
                self.faults.push(Fault::refuse(
                    "material.kind",
                    part,
                    format!("{code} is {kind}"),
                    format!("{} is wanted here", wanted.join(" or ")),
                    "Name another material; `rabbet material list` shows them",
                ));
                None
            }
            Err(fault) => {
                self.faults.push(Fault::refuse(
                    "material.missing",
                    part,
                    fault.to_string(),
                    "",
                    "",
                ));
                None
            }
        }
    }

    /// A number stated by the job, else by the material, else missing: a fault.
    fn number(
        &mut self,
        part: &str,
        what: &'static str,
        stated: Option<Length>,
        material: Option<Length>,
    ) -> Option<Fact> {
        let found = stated
            .map(Fact::job)
            .or_else(|| material.map(Fact::material));
        if found.is_none() {
            self.faults.push(Fault::refuse(
                "part.lacks",
                part,
                format!("its {what} is not known"),
                "",
                format!("Name a material that has one, or write `{what} = \"…\"` in the job"),
            ));
        }
        found
    }

    fn setting(&self, key: Key) -> Fact {
        Fact::setting(self.settings, key)
    }

    /// A job's own length, else the shop's habit.
    fn or_setting(&self, stated: Option<Length>, key: Key) -> Fact {
        stated.map_or_else(|| self.setting(key), Fact::job)
    }

    /// Counts and lengths that no piece has.
    fn check_bounds(&mut self) {
        let job = self.job;
        let layers = [
            ("mats", job.mat.len()),
            ("frame members", job.frame.len()),
            ("sheets of glazing", job.glazing.len()),
            ("backing boards", job.backing.len()),
        ];
        for (name, count) in layers {
            self.bound(name, count, Key::MaxLayers);
        }
        self.bound("openings", job.opening.len(), Key::MaxOpenings);
        self.bound("pieces of art", job.art.len(), Key::MaxOpenings);
        let groups: usize = job
            .mat
            .iter()
            .map(|mat| mat.around.iter().map(Vec::len).sum::<usize>())
            .sum();
        self.bound("openings named by `around`", groups, Key::MaxOpenings);
        let sides = usize::try_from(job.sides).unwrap_or(usize::MAX);
        self.bound("sides", sides, Key::MaxSides);
        if job.sides < 3 {
            // geometry: a frame has three sides or more
            self.faults.push(Fault::refuse(
                "frame.sides",
                "Frame",
                format!("it has {} sides", job.sides),
                "a frame has three or more",
                "Write `sides = 4`, or leave the line out",
            ));
        }
        for opening in &job.opening {
            let sides = opening
                .sides
                .map_or(0, |n| usize::try_from(n).unwrap_or(usize::MAX));
            self.bound(
                "sides of an opening",
                sides.max(opening.points.len()),
                Key::MaxSides,
            );
        }
        self.check_contradictions();
        self.check_lengths();
    }

    fn bound(&mut self, name: &str, count: usize, key: Key) {
        let most = self.settings.count(key);
        if i64::try_from(count).unwrap_or(i64::MAX) > most {
            self.faults.push(Fault::refuse(
                "limit.count",
                "Job",
                format!("it has {count} {name}"),
                format!("the most is {most} (setting {})", key.id()),
                "Split the piece, or raise the setting",
            ));
        }
    }

    /// Art sizes that are no sizes, and lengths beyond any frame.
    fn check_lengths(&mut self) {
        let most = self.settings.length(Key::MaxArt);
        let unit = self.job.units.unit();
        if self.job.art.is_empty() {
            self.faults.push(Fault::refuse(
                "art.none",
                "Art",
                "there is none",
                "a piece needs at least one [[art]] table",
                "Add one with its width and height",
            ));
        }
        let faults = &mut self.faults;
        self.job.each_length(&mut |part, length, may_be_negative| {
            if length.abs() > most {
                faults.push(Fault::refuse(
                    "limit.length",
                    capital(part),
                    length.in_both(unit),
                    format!("the longest a job may name is {}", most.in_both(unit)),
                    "Check the unit; the setting limit.largest can be raised",
                ));
            } else if length.is_negative() && !may_be_negative {
                faults.push(Fault::refuse(
                    "length.negative",
                    capital(part),
                    length.in_both(unit),
                    "it can't be less than nothing",
                    "Write it without the minus sign",
                ));
            }
        });
        self.check_art();
    }

    fn check_art(&mut self) {
        let unit = self.job.units.unit();
        for (i, art) in self.job.art.iter().enumerate() {
            let height = art.height.unwrap_or(art.width);
            if !art.width.is_positive() || !height.is_positive() {
                self.faults.push(Fault::refuse(
                    "art.no_size",
                    part_name("Art", i, self.job.art.len()),
                    format!(
                        "it measures {} × {}",
                        art.width.in_both(unit),
                        height.in_both(unit)
                    ),
                    "both must be above zero",
                    "Measure it again and write both",
                ));
            }
            if art.height.is_none() && self.job.sides == 4 {
                // geometry: a rectangle
                self.faults.push(Fault::refuse(
                    "art.no_height",
                    part_name("Art", i, self.job.art.len()),
                    "its height is not given",
                    "only polygons are measured by one width across the flats",
                    "Write `height = \"…\"`",
                ));
            }
        }
    }
}

/// A part's name, numbered where there are several.
pub(crate) fn part_name(name: &str, index: usize, count: usize) -> String {
    if count > 1 {
        format!("{name} {}", index + 1)
    } else {
        name.to_owned()
    }
}

/// A name with its first letter large.
fn capital(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}
