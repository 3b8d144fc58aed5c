//! What lies against the art on this piece.

use measure::Length;
use sizing::{Fault, SheetSizes};
use trade::{Key, Kind, Level, Material, Medium};

use super::{Change, Look, codes, gathers_static, of_source};
use crate::boards::Spec;

/// Board classes good enough next to art where conservation is promised.
const CONSERVES: [&str; 4] = ["conservation", "museum", "unbuffered", "cotton core"];
/// Board classes of cotton through and through.
const COTTON: [&str; 2] = ["museum", "unbuffered"];
/// The class without buffer.
const UNBUFFERED: [&str; 1] = ["unbuffered"];

/// How far a board in its place may be from the thickness of the one it replaces: quarter of a 4-ply.
const PLY_APART: Length = Length::micrometres(350); // geometry: the mean spread between makes of one ply

impl Look<'_> {
    pub(super) fn boards(&mut self) {
        let sizes = self.sizes;
        if let Some((index, mat)) = sizes.mats.iter().enumerate().next_back() {
            let change = move |board| Change::SetMatBoard { index, board };
            self.against_art("Mat next to the art", &mat.sheet, Kind::Board, &change);
        }
        if let Some(mount) = &sizes.mount {
            let change = |board| Change::SetMount { board };
            self.against_art("Mount", mount, Kind::Board, &change);
        }
        for (index, backing) in sizes.backing.iter().enumerate() {
            self.foam(index, backing);
            if index == 0 && sizes.mount.is_none() {
                let change = move |board| Change::SetBacking { index, board };
                self.against_art("Backing next to the art", backing, Kind::Backing, &change);
            }
        }
        self.loose_media();
    }

    /// A board that touches the art, against the level promised and the medium.
    fn against_art(
        &mut self,
        part: &str,
        sheet: &SheetSizes,
        kind: Kind,
        change: &dyn Fn(String) -> Change,
    ) {
        let Some(material) = sheet.material.as_deref() else {
            return;
        };
        let Some(class) = material.class.as_deref() else {
            return;
        };
        let candidates = |wanted: &'static [&'static str]| {
            let found = self.alternatives(sheet.thickness, kind, wanted);
            found.into_iter().map(change).collect::<Vec<_>>()
        };
        let photograph = self.medium() == Medium::Photograph;
        let unbuffered = self.settings().choice(Key::PhotographBoards) == "unbuffered";
        let spec = Spec::of_shop(photograph, self.settings());
        if let Some(wanted) = self
            .wanted_classes()
            .filter(|wanted| !wanted.contains(&class))
        {
            let changes = candidates(wanted);
            let level = self.job.identity.level.map_or("", Level::word);
            let fault = Fault::warn(
                "board.class",
                part,
                format!("{} is a board of class {class}", material.title()),
                format!(
                    "{level} framing asks for {} next to the art",
                    wanted.join(" or ")
                ),
                format!(
                    "Take a better board; the shop holds its tests against {}",
                    spec.spec
                ),
            );
            let source = format!("{}; {}", of_source("B3"), spec.trust().sentence());
            self.push(fault, source, Vec::new(), changes);
        } else if photograph && unbuffered && class != "unbuffered" {
            let changes = candidates(&UNBUFFERED);
            let fault = Fault::warn(
                "board.buffered",
                part,
                format!("{} is buffered", material.title()),
                "this shop keeps buffer away from photographs",
                "Take unbuffered board; research supports it for cyanotypes only, and other sources allow either",
            );
            self.push(fault, of_source("B7"), Vec::new(), changes);
        }
    }

    /// Boards of this kind and of these classes, about as thick.
    fn alternatives(
        &self,
        thickness: Length,
        kind: Kind,
        wanted: &'static [&'static str],
    ) -> Vec<String> {
        let fits = move |other: &Material| {
            let own = other.thickness.as_ref().map(|found| **found.is());
            let class = other.class.as_deref();
            other.kind == Some(kind)
                && class.is_some_and(|class| wanted.contains(&class))
                && own.is_some_and(|own| (own - thickness).abs() <= PLY_APART)
        };
        codes(self.catalogue, fits).collect()
    }

    /// The classes that the level promised asks for next to art; none below conservation.
    fn wanted_classes(&self) -> Option<&'static [&'static str]> {
        match self.job.identity.level {
            Some(Level::Museum) => Some(&COTTON),
            Some(Level::Conservation) => Some(&CONSERVES),
            _ => None,
        }
    }

    fn foam(&mut self, index: usize, backing: &SheetSizes) {
        let Some(material) = backing.material.as_deref() else {
            return;
        };
        let refused = match self.settings().choice(Key::FoamBoards) {
            "never" => true,
            "below conservation" => self.conserves(),
            _ => false,
        };
        if !refused || !is_foam(material) {
            return;
        }
        let fits = |other: &Material| {
            let inside = ["conservation", "museum", "inert"];
            other.kind == Some(Kind::Backing)
                && other
                    .class
                    .as_deref()
                    .is_some_and(|class| inside.contains(&class))
        };
        let changes = codes(self.catalogue, fits).map(|board| Change::SetBacking { index, board });
        let changes = changes.collect();
        let fault = Fault::warn(
            "board.foam",
            format!("Backing {}", index + 1),
            format!("{} lies inside the package", material.title()),
            "one conservation centre refuses foam board in preservation framing, shops use it; this shop's setting `board.foam` decides",
            "Take an archival corrugated board or an inert one",
        );
        self.push(fault, of_source("M1"), Vec::new(), changes);
    }

    /// Static lifts pastel and charcoal onto acrylic.
    fn loose_media(&mut self) {
        if self.medium() != Medium::Pastel {
            return;
        }
        let sizes = self.sizes;
        for (index, pane) in sizes.glazing.iter().enumerate() {
            let material = pane.sheet.material.as_deref();
            let Some(material) = material.filter(|material| gathers_static(material)) else {
                continue;
            };
            let fits =
                |other: &Material| other.kind == Some(Kind::Glazing) && !gathers_static(other);
            let sheets = codes(self.catalogue, fits);
            let changes = sheets
                .map(|sheet| Change::SetGlazing { index, sheet })
                .collect();
            let fault = Fault::warn(
                "glazing.static",
                "Glazing",
                format!("{} gathers static before loose pigment", material.title()),
                "no ordinary acrylic over pastel, charcoal or flaking paint",
                "Take glass, or antistatic acrylic",
            );
            self.push(fault, of_source("CP"), Vec::new(), changes);
        }
    }
}

/// Whether a board's core is foam: as the catalogue says, and where it does not, by its name.
fn is_foam(material: &Material) -> bool {
    let named = || {
        let title = material.title().to_lowercase();
        let mut words = title.split(|letter: char| !letter.is_alphanumeric());
        words.any(|word| word == "foam")
            && !["no foam", "foam-free"].iter().any(|no| title.contains(no))
    };
    material.foam.unwrap_or_else(named)
}
