//! A piece in words: what its label, its card and its record all say of it.

use hanging::{Factors, Hanging, hangs};
use measure::{Length, Mass};
use sizing::Sizes;
use trade::{Coating, Hanger, Hold, Job, Medium, Pane};
use working::{Given, Rule, Source, Status, Subject, Worked};

mod materials;

pub(crate) use materials::{Stuff, capital, materials};

static LOAD: Rule = Rule {
    id: "label.load",
    words: "its fixings together must be rated for its weight times the factor",
    formula: "load = factor × weight",
    source: Source::CommonPractice,
    status: Status::CommonPractice,
};

/// What a piece weighs and must hang on.
#[derive(Clone, Debug)]
pub(crate) struct Load {
    /// How it hangs, all of it.
    pub hanging: Hanging,
    /// Times its weight.
    pub factor: i64,
    /// What its fixings together must be rated for.
    pub rated: Worked<Mass>,
}

/// How a piece hangs and what its fixings must be rated for.
///
/// Source: the plan is `hanging::hangs`, the factor that of `hanging::Factors` for rings and hooks.
pub(crate) fn load(job: &Job, sizes: &Sizes) -> Load {
    let mut hanging = hangs(job, sizes);
    let place = job.place.as_ref();
    let over_people = place
        .and_then(|place| place.above)
        .is_some_and(trade::Above::is_over_people);
    let factor = Factors::of_shop(&sizes.settings, over_people).fitting;
    let total = hanging.weight.total;
    let inputs: [(&'static str, Given); 2] = [("factor", factor.into()), ("weight", total.into())];
    let value = total.value.times(factor.value);
    let rated = hanging
        .working
        .by(&LOAD, Subject::of("label", "load"), &inputs, value);
    Load {
        factor: factor.value,
        rated,
        hanging,
    }
}

impl Load {
    /// `2.48 kg (5.5 lb)`, or `at least 2.48 kg (5.5 lb); not counted: Art`.
    pub(crate) fn weight_words(&self) -> String {
        let total = self.hanging.weight.total.value;
        if self.hanging.weight.unknown.is_empty() {
            return total.to_string();
        }
        format!(
            "at least {total}; not counted: {}",
            self.not_counted().join(", ")
        )
    }

    /// Parts nobody knows the weight of, each once.
    pub(crate) fn not_counted(&self) -> Vec<&str> {
        let mut unknown: Vec<&str> = Vec::new();
        for part in &self.hanging.weight.unknown {
            if !unknown.contains(&part.name.as_str()) {
                unknown.push(&part.name);
            }
        }
        unknown
    }

    /// What the fixings must be rated for, with the factor.
    pub(crate) fn rated_words(&self) -> String {
        let least = if self.hanging.weight.unknown.is_empty() {
            ""
        } else {
            ", more with what is not counted"
        };
        format!(
            "wall fixings rated together for at least {}, {} times that weight{least}",
            self.rated.value, self.factor
        )
    }

    /// What wire, rings and hooks must each be rated for, where it hangs by a wire.
    pub(crate) fn wire_words(&self) -> Option<String> {
        let wire = self.hanging.wire.as_ref()?;
        (self.hanging.hanger == Hanger::Wire).then(|| wire.ratings.sentence())
    }

    /// What it hangs on in the wall.
    pub(crate) fn wall_words(&self) -> &str {
        match (self.hanging.hanger, self.hanging.choice.hanger) {
            (Hanger::Rings, Hanger::Wire) => "two hooks, one to each ring",
            (Hanger::Plates, Hanger::Wire | Hanger::Rings) => {
                "a screw to each plate, into a stud or a plug that bears it"
            }
            (Hanger::Cleat, Hanger::Wire | Hanger::Rings) => {
                "the wall's rail, screwed into studs or masonry"
            }
            _ => &self.hanging.choice.wall,
        }
    }

    /// What it hangs by.
    pub(crate) fn hanger_words(&self) -> &'static str {
        match self.hanging.hanger {
            Hanger::Wire => "rings and wire",
            Hanger::Rings => "rings straight on two hooks, no wire",
            Hanger::Plates => "plates screwed to the wall",
            Hanger::Cleat => "a bevelled rail on the frame and one on the wall",
            Hanger::None => "nothing: it stands, or is hung otherwise",
        }
    }
}

/// The word for what the art is made of.
pub(crate) const fn medium_word(medium: Medium) -> &'static str {
    match medium {
        Medium::Print => "print or drawing",
        Medium::Watercolour => "watercolour",
        Medium::Pastel => "pastel",
        Medium::Photograph => "photograph",
        Medium::Document => "document",
        Medium::Canvas => "canvas",
        Medium::Panel => "panel",
        Medium::Textile => "textile",
        Medium::Object => "object",
        Medium::Mirror => "mirror",
        Medium::Reproduction => "reproduction",
    }
}

/// Title, artist, medium and support of every piece of art, a line each.
pub(crate) fn art_lines(job: &Job) -> Vec<String> {
    let line = |art: &trade::Art| {
        let medium = medium_word(art.medium).to_owned();
        let said = [
            art.title.clone(),
            art.artist.clone(),
            Some(medium),
            art.support.clone(),
        ];
        said.into_iter().flatten().collect::<Vec<_>>().join(", ")
    };
    job.art.iter().map(line).collect()
}

/// How the art is held, in one sentence.
pub(crate) fn attachment_words(job: &Job, sizes: &Sizes) -> String {
    let Some(attachment) = &job.attachment else {
        return "Not attached: held by the package or the frame alone.".to_owned();
    };
    let with = match (&attachment.material, &attachment.adhesive) {
        (Some(material), Some(adhesive)) => format!(" of {material} with {adhesive}"),
        (Some(material), None) => format!(" of {material}"),
        (None, Some(adhesive)) => format!(" with {adhesive}"),
        (None, None) => String::new(),
    };
    let count = sizes
        .hinges
        .map_or_else(String::new, |hinges| format!("{} ", hinges.count.value));
    match attachment.hold {
        Hold::THinge => format!("{count}T-hinges{with} at the top edge; it hangs free below."),
        Hold::VHinge => format!("{count}V-hinges{with} behind the top edge; it hangs free below."),
        Hold::SHinge => format!("{count}pass-through hinges{with}; it hangs free below."),
        Hold::Corners => format!("Corners{with}; no adhesive on the art."),
        Hold::Strips => format!("Edge strips{with}; no adhesive on the art."),
        Hold::Stitched => format!("Stitched or laced{with} through the cloth."),
        Hold::Mechanical => format!("Held mechanically{with}; nothing is glued."),
        Hold::DryMount => {
            format!("Dry mounted{with}: bonded for good, it can't be taken off again.")
        }
        Hold::Loose => "Laid in loose; nothing adheres to it.".to_owned(),
    }
}

/// How its glazing is cleaned, in sentences that defer to the maker's sheet; nothing where there is none.
///
/// Source: no ammonia, a clean cloth and not paper towels, spray the cloth; household cleaners can
///         scratch or craze acrylic (CCI, as the steps cite it). The rest is common practice, no source.
pub(crate) fn cleaning_words(sizes: &Sizes) -> Vec<String> {
    let front = sizes.glazing.first();
    let Some(glazing) = front else {
        return vec![
            "There is no glazing: keep cloths, sprays and dusters off the art itself. Dust the frame only, \
             with a soft dry brush."
                .to_owned(),
        ];
    };
    let coating = glazing
        .sheet
        .material
        .as_ref()
        .and_then(|material| material.coating);
    let delicate =
        coating.is_some_and(|coating| coating.is_delicate() || coating == Coating::NonGlare);
    let mut words = vec![
        "Spray the cloth, never the piece; wipe from the middle out and keep the edges dry."
            .to_owned(),
    ];
    words.push(match (glazing.pane, delicate) {
        (Some(Pane::Acrylic), _) => {
            "This is acrylic: no ammonia, alcohol or window cleaner, no paper towels, no dry wiping; blow the \
             dust off, then a soft clean cloth just damp with water or a cleaner made for acrylic."
                .to_owned()
        }
        (_, true) => "This glass is coated or etched: no ammonia, nothing abrasive; a clean microfibre cloth and the \
                      cleaner its maker names."
            .to_owned(),
        _ => "This is glass: a clean soft cloth, a little cleaner without ammonia; mind sharp edges and cracks."
            .to_owned(),
    });
    words.push("The sheet of the glazing's maker comes before what stands here.".to_owned());
    words
}

/// Whether somebody said which face of the glazing looks at the art.
pub(crate) const fn inward_words(inward: trade::Inward) -> &'static str {
    match inward {
        trade::Inward::Coated => "coated face to the art",
        trade::Inward::Plain => "plain face to the art",
        trade::Inward::Either => "either face to the art",
    }
}

/// A size as width × height, exact, its unit once.
pub(crate) fn size_words(width: Length, height: Length, sizes: &Sizes) -> String {
    let unit = sizes.unit();
    format!("{} × {}", width.exact(unit), height.exact(unit))
}

/// What is computed of loads, as every paper must say.
pub(crate) const CAUTION: &str = hanging::CAUTION;
