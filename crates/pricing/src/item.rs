//! What there is to charge for: every part and work of a derived piece.

use std::borrow::Cow;
use std::sync::Arc;

use measure::{Area, Length, Size};
use sizing::{ChargeStep, MatSizes, MemberSizes, SheetSizes, Sizes, StickUse, Takes, WorkedSize};
use trade::{Catalogue, Hanger, Hold, Job, Material, Role, Shape};
use working::{Given, Stated, Subject, Worked, Working};

use crate::laws;
use crate::rules::Part;

/// One thing to charge for.
#[derive(Clone, Debug)]
pub(crate) struct Item<'a> {
    pub part: Part,
    /// Which of its kind, from 1.
    pub nth: u32,
    /// How many of its kind there are.
    pub of: u32,
    pub name: Cow<'a, str>,
    pub material: Option<&'a Arc<Material>>,
    pub count: u32,
    /// What bands read: its own size, or the package.
    pub size: Option<WorkedSize>,
    pub area: Option<Worked<Area>>,
    /// The stock sheet it comes from.
    pub stock: Option<Size>,
    pub strip: Option<Strip>,
    pub role: Option<Role>,
    pub shape: Option<Shape>,
    pub hold: Option<Hold>,
    pub hanger: Option<Hanger>,
}

/// A length of stick or strip.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Strip {
    pub charged: Worked<Length>,
    pub used: Stated<Length>,
    pub step: ChargeStep,
    /// The stick at hand, where there is one.
    pub stick: Option<Length>,
}

impl Item<'_> {
    /// Width and height together.
    pub(crate) fn united(&self) -> Option<Length> {
        self.size.map(|size| size.width.value + size.height.value)
    }
}

/// Gathers everything there is to charge for.
pub(crate) struct Gather<'a, 'w> {
    pub job: &'a Job,
    pub sizes: &'a Sizes,
    pub catalogue: &'a Catalogue,
    pub working: &'w mut Working,
    items: Vec<Item<'a>>,
}

/// Everything there is to charge for, front to back.
pub(crate) fn items<'a>(
    job: &'a Job,
    sizes: &'a Sizes,
    catalogue: &'a Catalogue,
    working: &mut Working,
) -> Vec<Item<'a>> {
    let mut gather = Gather {
        job,
        sizes,
        catalogue,
        working,
        items: Vec::with_capacity(USUAL),
    };
    gather.members();
    gather.front();
    gather.mats();
    gather.walls();
    gather.back();
    gather.work();
    gather.items
}

/// Things an ordinary piece has to charge for.
const USUAL: usize = 16; // geometry: a first guess, grown as needed

impl<'a> Gather<'a, '_> {
    fn item(&self, part: Part, name: impl Into<Cow<'a, str>>) -> Item<'a> {
        Item {
            part,
            nth: 1,
            of: 1,
            name: name.into(),
            material: None,
            count: 1,
            size: Some(self.sizes.package),
            area: None,
            stock: None,
            strip: None,
            role: None,
            shape: None,
            hold: None,
            hanger: None,
        }
    }

    /// The material as the catalogue has it today; one of this job alone as it was derived.
    fn today(&self, material: Option<&'a Arc<Material>>) -> Option<&'a Arc<Material>> {
        let own = material?;
        if self.job.material.iter().any(|job| job.code == own.code) {
            return Some(own);
        }
        self.catalogue.find(&own.code).ok().or(Some(own))
    }

    fn faces(&self) -> u32 {
        if self.sizes.double_sided { 2 } else { 1 }
    }

    fn members(&mut self) {
        let sizes = self.sizes;
        let of = count(sizes.members.len());
        for (i, member) in sizes.members.iter().enumerate() {
            let nth = count(i + 1);
            let strip = self.strip(&member.stick, Subject::nth("price", i, "frame_length"));
            let frame = Item {
                nth,
                of,
                material: self.today(member.material.as_ref()),
                size: Some(member.contents),
                strip: Some(strip),
                role: Some(member.role),
                ..self.item(Part::Frame, member.name.as_str())
            };
            let joining = Item {
                part: Part::Joining,
                ..frame.clone()
            };
            self.items.extend([frame, joining]);
            self.frame_fillet(member, nth, of);
        }
    }

    fn frame_fillet(&mut self, member: &'a MemberSizes, nth: u32, of: u32) {
        let Some(fillet) = &member.fillet else {
            return;
        };
        let strip = self.strip(&fillet.stick, Subject::of("price", "fillet_length"));
        self.items.push(Item {
            nth,
            of,
            material: self.today(fillet.material.as_ref()),
            size: Some(fillet.long),
            strip: Some(strip),
            ..self.item(Part::Fillet, format!("{}, fillet", member.name))
        });
    }

    /// The length charged: as sizing has it, or the stick used, rounded up to the shop's step.
    fn strip(&mut self, stick: &StickUse, subject: Subject) -> Strip {
        let charged = match (stick.charged.or(stick.charge), stick.step) {
            (Some(charged), _) => charged,
            (None, ChargeStep::Exact) => stick.used,
            (None, step) => self.rounded_up(stick.used.into(), step, subject),
        };
        Strip {
            charged,
            used: stick.used.into(),
            step: stick.step,
            stick: Some(stick.stick),
        }
    }

    fn rounded_up(
        &mut self,
        used: Stated<Length>,
        step: ChargeStep,
        subject: Subject,
    ) -> Worked<Length> {
        let inputs = [
            ("used", used.into()),
            (
                "step",
                Given::setting(trade::Key::ChargeStep.id(), step.length()),
            ),
        ];
        let charged = used.value.up_to(step.length());
        self.working.by(&laws::CHARGED, subject, &inputs, charged)
    }

    /// A strip that sizing only measures.
    fn plain_strip(&mut self, used: Stated<Length>, subject: Subject) -> Strip {
        let first = self.sizes.members.first();
        let step = first.map_or(ChargeStep::Exact, |member| member.stick.step);
        Strip {
            charged: self.rounded_up(used, step, subject),
            used,
            step,
            stick: None,
        }
    }

    fn sheet(
        &mut self,
        part: Part,
        name: String,
        sheet: &'a SheetSizes,
        subject: Subject,
    ) -> Item<'a> {
        let of_name = |line: &&sizing::BillLine| line.part == name;
        let stock = match self.sizes.bill.iter().find(of_name).map(|line| &line.takes) {
            Some(Takes::Sheet { stock, .. }) => *stock,
            _ => None,
        };
        Item {
            material: self.today(sheet.material.as_ref()),
            size: Some(sheet.size),
            area: Some(self.area(sheet.size, subject)),
            stock,
            ..self.item(part, name)
        }
    }

    fn area(&mut self, size: WorkedSize, subject: Subject) -> Worked<Area> {
        let inputs = [("width", size.width.into()), ("height", size.height.into())];
        let area = size.size().area();
        self.working.by(&laws::AREA, subject, &inputs, area)
    }

    fn front(&mut self) {
        let sizes = self.sizes;
        let of = sizes.glazing.len();
        for (i, pane) in sizes.glazing.iter().enumerate() {
            let subject = Subject::nth("price", i, "glazing_area");
            let item = self.sheet(Part::Glazing, named("Glazing", i, of), &pane.sheet, subject);
            self.items.push(Item {
                nth: count(i + 1),
                of: count(of),
                count: self.faces(),
                ..item
            });
        }
        if let Some(spacer) = &sizes.spacer {
            let length = Stated::job(spacer.length);
            let strip = self.plain_strip(length, Subject::of("price", "spacer_length"));
            self.items.push(Item {
                material: self.today(spacer.material.as_ref()),
                strip: Some(strip),
                count: self.faces(),
                ..self.item(Part::Spacer, "Spacer")
            });
        }
    }

    fn mats(&mut self) {
        let sizes = self.sizes;
        let of = sizes.mats.len();
        for (i, mat) in sizes.mats.iter().enumerate() {
            let name = named("Mat", i, of);
            let subject = Subject::nth("price", i, "mat_area");
            let item = self.sheet(Part::Mat, name.clone(), &mat.sheet, subject);
            let item = Item {
                nth: count(i + 1),
                of: count(of),
                count: self.faces(),
                shape: mat.windows.first().map(|_| self.shape(mat, 0)),
                ..item
            };
            self.openings(mat, &item);
            self.items.push(item);
            for (k, fillet) in mat.fillets.iter().enumerate() {
                let subject = Subject::nth("price", i, "fillet_length").within("opening", k);
                let strip = self.strip(&fillet.stick, subject);
                self.items.push(Item {
                    nth: count(i + 1),
                    of: count(of),
                    material: self.today(fillet.material.as_ref()),
                    size: Some(fillet.long),
                    strip: Some(strip),
                    count: self.faces(),
                    ..self.item(Part::Fillet, format!("{name}, fillet"))
                });
            }
        }
    }

    /// The shape of a window of a mat.
    fn shape(&self, mat: &MatSizes, window: usize) -> Shape {
        let opening = mat.windows[window].openings.first();
        let opening = opening.and_then(|opening| self.job.opening.get(*opening));
        opening.map(|opening| opening.shape).unwrap_or_default()
    }

    /// The openings of a mat after its first, those of one shape together.
    fn openings(&mut self, mat: &'a MatSizes, of_mat: &Item<'a>) {
        let mut shapes: Vec<(Shape, u32)> = Vec::new();
        for window in 1..mat.windows.len() {
            let shape = self.shape(mat, window);
            match shapes.iter_mut().find(|(known, _)| *known == shape) {
                Some((_, times)) => *times += 1,
                None => shapes.push((shape, 1)),
            }
        }
        for (shape, times) in shapes {
            self.items.push(Item {
                part: Part::Opening,
                name: format!("{}, further openings", of_mat.name).into(),
                count: times * self.faces(),
                shape: Some(shape),
                area: None,
                stock: None,
                ..of_mat.clone()
            });
        }
    }

    fn walls(&mut self) {
        let Some(walls) = &self.sizes.walls else {
            return;
        };
        let around = (walls.long.value + walls.short.value).twice();
        let inputs = [("long", walls.long.into()), ("short", walls.short.into())];
        let subject = Subject::of("price", "walls_length");
        let length = self.working.by(&laws::WALLS, subject, &inputs, around);
        let strip = self.plain_strip(length.into(), Subject::of("price", "walls_charged"));
        let size = WorkedSize {
            width: length,
            height: walls.height,
        };
        let area = self.area(size, Subject::of("price", "walls_area"));
        self.items.push(Item {
            material: self.today(self.sizes.wall_material.as_ref()),
            area: Some(area),
            strip: Some(strip),
            ..self.item(Part::Walls, "Walls")
        });
    }

    fn back(&mut self) {
        let sizes = self.sizes;
        if let Some(sink) = &sizes.sink {
            let area = self.area(sizes.package, Subject::of("price", "sink_area"));
            self.items.push(Item {
                material: self.today(sink.material.as_ref()),
                area: Some(area),
                ..self.item(Part::Sink, "Sink")
            });
        }
        if let Some(mount) = &sizes.mount {
            let subject = Subject::of("price", "mount_area");
            let item = self.sheet(Part::Mount, "Mount".to_owned(), mount, subject);
            self.items.push(item);
        }
        let of = sizes.backing.len();
        for (i, back) in sizes.backing.iter().enumerate() {
            let subject = Subject::nth("price", i, "backing_area");
            let item = self.sheet(Part::Backing, named("Backing", i, of), back, subject);
            self.items.push(Item {
                nth: count(i + 1),
                of: count(of),
                ..item
            });
        }
        if let Some(strainer) = &sizes.strainer {
            let length = strainer.length.into();
            let strip = self.plain_strip(length, Subject::of("price", "strainer_length"));
            self.items.push(Item {
                size: Some(strainer.outer),
                strip: Some(strip),
                ..self.item(Part::Strainer, "Strainer")
            });
        }
        let wrap = sizes.wrap.map(|wrap| (Part::Cloth, "Cloth", wrap.cloth));
        let cover = sizes.cover.map(|cover| (Part::Cover, "Dust cover", cover));
        for (part, name, size) in wrap.into_iter().chain(cover) {
            let area = self.area(size, Subject::of("price", "cloth_area"));
            self.items.push(Item {
                size: Some(size),
                area: Some(area),
                ..self.item(part, name)
            });
        }
    }

    fn work(&mut self) {
        let attachment = self.job.attachment.as_ref().map(|held| held.hold);
        if let Some(hold) = attachment.filter(|hold| *hold != Hold::Loose) {
            self.items.push(Item {
                hold: Some(hold),
                count: count(self.sizes.art.len()).max(1),
                ..self.item(Part::Attachment, "Attaching the art")
            });
        }
        let hanger = self.job.hardware.as_ref().map(|hardware| hardware.hanger);
        if let Some(hanger) = hanger.filter(|hanger| *hanger != Hanger::None) {
            self.items.push(Item {
                hanger: Some(hanger),
                size: Some(self.sizes.outside),
                ..self.item(Part::Hanging, "Hanging")
            });
        }
        let fitting = self.item(Part::Fitting, "Fitting");
        let work = self.item(Part::Work, "Work");
        self.items.extend([fitting, work]);
    }
}

/// A part's name: numbered where there are several, as on the bill.
fn named(word: &str, index: usize, of: usize) -> String {
    if of > 1 {
        format!("{word} {}", index + 1)
    } else {
        word.to_owned()
    }
}

fn count(number: usize) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX)
}
