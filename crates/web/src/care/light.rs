//! Light: how long a medium lasts in it, and how much of the year's allowance it uses.

use std::collections::BTreeMap;

use conservation::light::{
    Class, MEDIA, Media, PLACES, Showing, UvAtArt, UvFigure, behind, days_a_year, exposure,
    limit_of, media_of, media_or_worse, years,
};
use trade::settings::{Layer, Range};
use trade::{Key, Medium, Settings};
use working::{Figure, Stated, Working};

use super::Question;
use super::answer::Answer;
use super::field::{Choice, Field, Usual, choice, number};
use super::typed::Typed;

/// Lux, and the lumens on a square foot.
const LUX: &[(&str, f64)] = &[("lx", 1.0), ("lux", 1.0), ("fc", 10.763_910_416_709_722)]; // geometry: square feet in a square metre
const HOURS: &[(&str, f64)] = &[("h", 1.0), ("h a day", 1.0), ("hours", 1.0)];
const DAYS: &[(&str, f64)] = &[("d", 1.0), ("days", 1.0), ("days a year", 1.0)];

const MEDIUM: Field = choice(
    "medium",
    "Medium",
    "as a job calls it, or better known",
    mediums,
);
const ON_ART: Field =
    number("lux", "Light on the art", LUX, ("lx", "lux")).or(Usual::Setting(Key::RoomLux));
const A_DAY: Field = number("hours", "Hours of light a day", HOURS, ("h", "hours"))
    .or(Usual::Setting(Key::LightHours));
const A_YEAR: Field = number("days", "Days of display a year", DAYS, ("d", "days"))
    .or(Usual::Setting(Key::LightDays));

/// Years to a just noticeable fade.
pub(super) const FADE: Question = Question {
    noun: "light",
    verb: "fade",
    asks: "How long will it last in this light?",
    tells: "Years to a just noticeable fade, with and without ultraviolet, and what another lamp, place or glazing would buy",
    fields: &[
        MEDIUM,
        ON_ART,
        A_DAY,
        A_YEAR,
        choice("lamp", "What lights it", "", lamps).or(Usual::Text("daylight")),
        choice("glazing", "Glazing before it", "", glazings).or(Usual::Text("plain")),
    ],
    example: &[("medium", "watercolour"), ("lux", "150"), ("hours", "8")],
    work: fade,
};

/// The year's light against the limits of several schemes.
pub(super) const BUDGET: Question = Question {
    noun: "light",
    verb: "budget",
    asks: "How many days a year may it hang here?",
    tells: "A year's light against the limits that schemes set for its class",
    fields: &[MEDIUM, ON_ART, A_DAY, A_YEAR],
    example: &[("medium", "photograph"), ("lux", "100"), ("hours", "10")],
    work: budget,
};

/// Media as a job names them, with the word for each.
const OF_JOBS: [(Medium, Choice); 11] = [
    (Medium::Print, of_job("print")),
    (Medium::Watercolour, of_job("watercolour")),
    (Medium::Pastel, of_job("pastel")),
    (Medium::Photograph, of_job("photograph")),
    (Medium::Document, of_job("document")),
    (Medium::Canvas, of_job("canvas")),
    (Medium::Panel, of_job("panel")),
    (Medium::Textile, of_job("textile")),
    (Medium::Object, of_job("object")),
    (Medium::Mirror, of_job("mirror")),
    (Medium::Reproduction, of_job("reproduction")),
];

const fn of_job(word: &'static str) -> Choice {
    Choice {
        under: "As a job calls it",
        ..Choice::plain(word)
    }
}

fn mediums() -> Vec<Choice> {
    let known = MEDIA.iter().map(|media| Choice {
        under: "Better known",
        ..Choice::plain(media.medium)
    });
    OF_JOBS
        .iter()
        .map(|(_, choice)| *choice)
        .chain(known)
        .collect()
}

fn lamps() -> Vec<Choice> {
    vec![
        Choice::meant("daylight", "daylight through a window"),
        Choice::meant("led", "white LED"),
        Choice::meant("incandescent", "incandescent or halogen"),
        Choice::meant("fluorescent", "fluorescent tubes"),
    ]
}

fn glazings() -> Vec<Choice> {
    vec![
        Choice::meant("none", "no glazing"),
        Choice::meant("plain", "plain glass or acrylic"),
        Choice::meant("filtering", "filtering ultraviolet"),
    ]
}

/// A medium with the class it is taken for and the worse one it may turn out to be.
#[derive(Clone, Copy)]
struct Taken {
    likely: &'static Media,
    worse: &'static Media,
}

fn taken(typed: &mut Typed<'_>) -> Option<Taken> {
    let word = typed.choice("medium")?.word;
    let of_job = OF_JOBS.iter().find(|(_, choice)| choice.word == word);
    if let Some((medium, _)) = of_job {
        return Some(Taken {
            likely: media_of(*medium),
            worse: media_or_worse(*medium),
        });
    }
    let media = MEDIA.iter().find(|media| media.medium == word)?;
    Some(Taken {
        likely: media,
        worse: media,
    })
}

fn showing(typed: &mut Typed<'_>) -> Option<Showing> {
    let (lux, hours, days) = (
        typed.figure("lux"),
        typed.figure("hours"),
        typed.figure("days"),
    );
    Some(Showing {
        lux: lux?,
        hours: hours?,
        days: days?,
    })
}

fn tell_medium(taken: Taken, answer: &mut Answer) {
    let media = taken.likely;
    answer.words_of(
        "taken_as",
        "Taken as",
        media.medium,
        media.trust().sentence(),
    );
    answer.words_of(
        "class",
        "Class",
        media.category.word(),
        media.trust().sentence(),
    );
    if !media.note.is_empty() {
        answer.words("note", "Note", media.note);
    }
}

/// Ultraviolet of a lamp, µW/lm.
fn content(lamp: &str) -> Stated<Figure> {
    let row = UvFigure::named(match lamp {
        "led" => "UV from white LED, typical",
        "incandescent" => "UV from 60 W incandescent",
        "fluorescent" => "UV from fluorescent tubes, highest",
        _ => "UV from daylight through glass, upper",
    });
    Stated::table(row.trust().code(), Figure::of(row.value, "µW/lm"))
}

/// The share of ultraviolet a glazing lets through.
fn passes(glazing: &str) -> Stated<Figure> {
    let row = UvFigure::named(match glazing {
        "none" => return Stated::job(Figure::of(1.0, "")),
        "filtering" => "UV blocked by conservation-grade glazing, lower claim",
        _ => "UV blocked by plain 2-3 mm float glass",
    });
    Stated::table(row.trust().code(), Figure::of(1.0 - row.value, ""))
}

/// Whether so little ultraviolet reaches the art that its fading counts as without.
fn removed(
    (lamp, glazing): (&str, &str),
    showing: &Showing,
    typed: &mut Typed<'_>,
    working: &mut Working,
) -> Option<(UvAtArt, bool)> {
    let found = behind(content(lamp), showing.lux, passes(glazing), working);
    let found = typed.keep(found)?;
    let strictest = UvFigure::named("UV limit, current good practice and CIE 157");
    let limit = Figure::of(strictest.value, "µW/lm");
    let limit = Stated::table(strictest.trust().code(), limit);
    let within = UvAtArt::is_within(found.content, limit, working);
    let from = i32::try_from(typed.settings.count(Key::UvRemovedFrom)).unwrap_or(i32::MAX);
    let stopped = 100.0 * (1.0 - passes(glazing).value.value()); // geometry: per cent
    Some((found, within.value || stopped >= f64::from(from)))
}

fn fade(typed: &mut Typed<'_>) -> Option<Answer> {
    let (taken, showing) = (taken(typed), showing(typed));
    let (lamp, glazing) = (typed.choice("lamp"), typed.choice("glazing"));
    let (taken, showing, lamp, glazing) = (taken?, showing?, lamp?.word, glazing?.word);
    let mut working = Working::new();
    let one = Stated::job(Figure::of(1.0, "years"));
    let yearly = typed.keep(exposure(&showing, one, &mut working))?.yearly;
    let (uv, without) = removed((lamp, glazing), &showing, typed, &mut working)?;
    let mut look = Fading {
        class: taken.likely.category,
        settings: typed.settings.clone(),
        answer: Answer::of(working),
    };
    look.answer.group("As it hangs");
    tell_medium(taken, &mut look.answer);
    look.answer.worked("yearly", "Light in a year", yearly);
    look.answer
        .worked("uv", "Ultraviolet at the art", uv.content);
    look.answer
        .worked("uv_irradiance", "Ultraviolet on the art", uv.irradiance);
    let words = if without {
        "so little that it counts as none"
    } else {
        "enough to count"
    };
    look.answer.words("uv_counts", "That ultraviolet is", words);
    let class = look.class;
    let label = "Years to a noticeable fade";
    if !look.tell(Told::of("years", label, (class, showing, without)), typed)? {
        look.answer.words("years", label, "light does not fade it");
        return Some(look.answer);
    }
    if taken.worse.category != class {
        let label = format!("Were it {}", taken.worse.medium);
        let light = (taken.worse.category, showing, without);
        look.tell(Told::of("years_worse", &label, light), typed)?;
    }
    look.both(showing, typed)?;
    look.would_buy((lamp, glazing), (showing, without), typed)?;
    Some(look.answer)
}

/// A fade being told.
struct Fading {
    class: Class,
    settings: Settings,
    answer: Answer,
}

impl Fading {
    /// Adds the years in some light; whether it fades at all.
    fn tell(&mut self, told: Told, typed: &mut Typed<'_>) -> Option<bool> {
        let (working, settings) = (&mut self.answer.working, &self.settings);
        let found = years(told.class, told.removed, &told.showing, settings, working);
        let found = typed.keep(found)?;
        if let Some(span) = found {
            self.answer.span(told.key, told.label, span);
        }
        Some(found.is_some())
    }

    fn both(&mut self, showing: Showing, typed: &mut Typed<'_>) -> Option<()> {
        self.answer.group("In this light, by its ultraviolet");
        for (key, label, removed) in [
            ("years_with_uv", "With ultraviolet", false),
            ("years_without_uv", "Without ultraviolet", true),
        ] {
            let told = Told::of(key, label, (self.class, showing, removed));
            self.tell(told, typed)?;
        }
        Some(())
    }

    fn would_buy(
        &mut self,
        pair: (&'static str, &'static str),
        (showing, without): (Showing, bool),
        typed: &mut Typed<'_>,
    ) -> Option<()> {
        self.answer.group("What a change would buy");
        for (key, label, showing) in darker(showing) {
            let told = Told::of(
                &format!("buys_{key}"),
                &label,
                (self.class, showing, without),
            );
            self.tell(told, typed)?;
        }
        let (lamp, glazing) = pair;
        for (key, label, pair) in [
            ("buys_led", "White LED instead", ("led", glazing)),
            (
                "buys_filtering",
                "Glazing that filters ultraviolet",
                (lamp, "filtering"),
            ),
        ] {
            let (_, then) = removed(pair, &showing, typed, &mut self.answer.working)?;
            if then && !without {
                self.tell(Told::of(key, label, (self.class, showing, true)), typed)?;
            }
        }
        Some(())
    }
}

/// Years to be told, of a class in some light, its ultraviolet removed or not.
struct Told {
    key: String,
    label: String,
    class: Class,
    showing: Showing,
    removed: bool,
}

impl Told {
    fn of(key: &str, label: &str, (class, showing, removed): (Class, Showing, bool)) -> Self {
        Self {
            key: key.to_owned(),
            label: label.to_owned(),
            class,
            showing,
            removed,
        }
    }
}

/// Less light: half of it, half the days, and every place that is darker.
fn darker(showing: Showing) -> Vec<(String, String, Showing)> {
    let halved = |stated: Stated<Figure>| {
        let figure = stated.value;
        Stated::job(Figure::of(figure.value() / 2.0, figure.unit()))
    };
    let dim = Showing {
        lux: halved(showing.lux),
        ..showing
    };
    let seldom = Showing {
        days: halved(showing.days),
        ..showing
    };
    let mut all = vec![
        ("half_light".to_owned(), "Half the light".to_owned(), dim),
        (
            "half_year".to_owned(),
            "Half the days a year".to_owned(),
            seldom,
        ),
    ];
    let places = PLACES.iter();
    let places = places.filter(|place| place.lux_hi < showing.lux.value.value());
    all.extend(places.map(|place| {
        let lux = Stated::table(place.trust().code(), Figure::of(place.lux_hi, "lx"));
        let label = format!("Light of: {} ({} lx)", place.place, place.lux_hi);
        let key = format!("place_{}", slug(place.place));
        (key, label, Showing { lux, ..showing })
    }));
    all
}

/// A name for programs: `home_display_wall_typical`.
fn slug(words: &str) -> String {
    let parts = words.split(|sign: char| !sign.is_alphanumeric());
    let parts: Vec<&str> = parts.filter(|part| !part.is_empty()).collect();
    parts.join("_").to_lowercase()
}

fn budget(typed: &mut Typed<'_>) -> Option<Answer> {
    let (taken, showing) = (taken(typed), showing(typed));
    let (taken, showing) = (taken?, showing?);
    let mut working = Working::new();
    let one = Stated::job(Figure::of(1.0, "years"));
    let yearly = typed.keep(exposure(&showing, one, &mut working))?.yearly;
    let mut answer = Answer::of(working);
    answer.group("As it hangs");
    tell_medium(taken, &mut answer);
    answer.worked("yearly", "Light in a year", yearly);
    by_scheme(taken.likely.category, &showing, typed, &mut answer)?;
    Some(answer)
}

/// What every scheme allows a class in this light.
fn by_scheme(
    class: Class,
    showing: &Showing,
    typed: &mut Typed<'_>,
    answer: &mut Answer,
) -> Option<()> {
    let own = typed.settings.choice(Key::LightScheme);
    for scheme in schemes(own) {
        let settings = of_scheme(typed.settings, scheme, typed.unit);
        let heading = if scheme == own {
            format!("{scheme} (the shop's)")
        } else {
            scheme.to_owned()
        };
        answer.group(heading);
        let key = slug(scheme);
        let Some(limit) = limit_of(class, &settings) else {
            answer.words(
                format!("{key}_limit"),
                "Limit",
                "it sets none for this class",
            );
            continue;
        };
        let trust = limit.trust().sentence();
        if let Some(lux) = limit.lux {
            let words = format!("{lux} lx");
            answer.words_of(format!("{key}_lux"), "Light at most", words, trust.clone());
        }
        let Some(stated) = limit.stated() else {
            answer.words_of(
                format!("{key}_limit"),
                "In a year at most",
                "no limit",
                trust,
            );
            continue;
        };
        let words = stated.value.to_string();
        answer.words_of(format!("{key}_limit"), "In a year at most", words, trust);
        let days = days_a_year(stated, showing.lux, showing.hours, &mut answer.working);
        answer.worked(
            format!("{key}_days"),
            "Days a year in this light",
            typed.keep(days)?,
        );
    }
    Some(())
}

/// Every scheme, the shop's own first.
fn schemes(own: &'static str) -> Vec<&'static str> {
    let Range::Words(all) = Key::LightScheme.definition().range else {
        return vec![own];
    };
    let others = all.iter().copied().filter(|scheme| *scheme != own);
    std::iter::once(own).chain(others).collect()
}

/// The settings with another scheme laid over.
fn of_scheme(settings: &Settings, scheme: &str, unit: measure::Unit) -> Settings {
    let change = BTreeMap::from([(Key::LightScheme.id().to_owned(), scheme.to_owned())]);
    let changed = settings.with(&change, Layer::Job, unit);
    changed.expect("a scheme of its own range")
}
