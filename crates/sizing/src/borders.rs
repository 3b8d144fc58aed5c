//! Borders of the outermost mat: as stated, from what is to be seen, or what a given size leaves.

use measure::Length;
use trade::{Borders, Key, Measured};
use working::{Given, Rule, Source, Status, Subject, Worked, Working};

use crate::brief::Brief;
use crate::trace::{Fact, WorkedSize, custom, geometry};
use crate::window::Spot;

static CUT: Rule = geometry(
    "border.cut",
    "the border is cut as stated",
    "border = stated",
);
static FROM_VISIBLE: Rule = geometry(
    "border.from_visible",
    "the border as cut is what is to be seen and what the lip covers",
    "border = visible + lip_cover",
);
static EXTRA: Rule = geometry(
    "border.bottom_extra",
    "a weighted bottom border is the top one and the extra",
    "border = top + extra",
);
static WEIGHTED_TENTH: Rule = custom(
    "border.weighted_tenth",
    "the bottom border is a tenth wider than the top one",
    "border = nearest_to(top × 11 ÷ 10, step)",
);
static WEIGHTED_FIFTH: Rule = custom(
    "border.weighted_fifth",
    "the bottom border is a fifth wider than the top one",
    "border = nearest_to(top × 6 ÷ 5, step)",
);
static WEIGHTED_THREE_TO_FOUR: Rule = Rule {
    id: "border.weighted_three_to_four",
    words: "the bottom border is to the top one as 4 to 3",
    formula: "border = nearest_to(top × 4 ÷ 3, step)",
    source: Source::Cited(NAVY),
    status: Status::Published,
};
static LEFTOVER_HALF: Rule = geometry(
    "border.leftover_half",
    "in a given size, half of what the windows leave, less the extra of the bottom",
    "border = half_down(package - windows - extra)",
);
static LEFTOVER: Rule = geometry(
    "border.leftover",
    "in a given size, what windows and the other border leave",
    "border = package - windows - other",
);
static FREE: Rule = geometry(
    "border.free",
    "windows placed freely leave the border before the first of them",
    "border = first",
);
static VISIBLE: Rule = geometry(
    "border.visible",
    "the lip hides part of the border",
    "visible = border - lip_cover",
);

/// The source of the 3 : 4 weighting.
static NAVY: &working::Citation = trade::settings::cited("NV");

/// One of each for the four sides, front view.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sides<T> {
    /// Left.
    pub left: T,
    /// Right.
    pub right: T,
    /// Top.
    pub top: T,
    /// Bottom.
    pub bottom: T,
}

impl<T> Sides<T> {
    /// Left, right, top, bottom.
    pub fn named(self) -> [(&'static str, T); 4] {
        [
            ("left", self.left),
            ("right", self.right),
            ("top", self.top),
            ("bottom", self.bottom),
        ]
    }

    /// The same for each side.
    pub fn map<U>(self, mut each: impl FnMut(T) -> U) -> Sides<U> {
        Sides {
            left: each(self.left),
            right: each(self.right),
            top: each(self.top),
            bottom: each(self.bottom),
        }
    }
}

/// Borders of the outermost mat.
#[derive(Clone, Copy, Debug)]
pub struct BorderSizes {
    /// Window edge to board edge, as cut.
    pub cut: Sides<Worked<Length>>,
    /// What the frame leaves to be seen; none for a frame without a lip.
    pub visible: Option<Sides<Worked<Length>>>,
}

/// Finds the four borders.
pub(crate) fn borders(
    brief: &Brief<'_>,
    windows: WorkedSize,
    free: Option<Spot>,
    lip_cover: Option<Worked<Length>>,
    given: Option<WorkedSize>,
    working: &mut Working,
) -> BorderSizes {
    let stated = brief.job.borders.unwrap_or_default();
    let mut ledger = Ledger {
        brief,
        stated,
        lip_cover,
        working,
    };
    let cut = match (given, free) {
        (None, None) => ledger.stated(),
        (None, Some(spot)) => ledger.free(spot),
        (Some(package), None) => ledger.leftover(windows, package),
        (Some(package), Some(spot)) => ledger.free_leftover(windows, package, spot),
    };
    let visible = lip_cover.map(|lip_cover| {
        let names = ["left", "right", "top", "bottom"];
        let mut names = names.into_iter();
        cut.map(|border| {
            let subject = Subject::of("visible_border", names.next().unwrap_or_default());
            let inputs = [("border", border.into()), ("lip_cover", lip_cover.into())];
            ledger
                .working
                .by(&VISIBLE, subject, &inputs, border.value - lip_cover.value)
        })
    });
    BorderSizes { cut, visible }
}

/// Where borders are worked out.
struct Ledger<'a, 'b, 'w> {
    brief: &'a Brief<'b>,
    stated: Borders,
    lip_cover: Option<Worked<Length>>,
    working: &'w mut Working,
}

impl Ledger<'_, '_, '_> {
    fn stated(&mut self) -> Sides<Worked<Length>> {
        let top = self.side("top", self.stated.top);
        Sides {
            left: self.side("left", self.stated.left),
            right: self.side("right", self.stated.right),
            top,
            bottom: self.bottom(top),
        }
    }

    /// A border as stated, cut or visible.
    fn side(&mut self, name: &'static str, own: Option<Measured>) -> Worked<Length> {
        let stated = own.or(self.stated.all).map(|border| Fact::job(*border));
        let stated = stated.unwrap_or_else(|| self.brief.fact(Key::Border));
        let subject = Subject::of("border", name);
        match self.lip_cover {
            Some(lip_cover) if self.brief.settings.choice(Key::BorderMeasured) == "visible" => {
                let inputs = [("visible", stated.into()), ("lip_cover", lip_cover.into())];
                self.working.by(
                    &FROM_VISIBLE,
                    subject,
                    &inputs,
                    stated.value + lip_cover.value,
                )
            }
            _ => self
                .working
                .by(&CUT, subject, &[("stated", stated.into())], stated.value),
        }
    }

    /// The bottom border: named, the top and an extra, or weighted by the shop's habit.
    fn bottom(&mut self, top: Worked<Length>) -> Worked<Length> {
        let subject = Subject::of("border", "bottom");
        if self.stated.bottom.is_some() {
            return self.side("bottom", self.stated.bottom);
        }
        if let Some(extra) = self.stated.bottom_extra {
            let inputs = [("top", top.into()), ("extra", Given::job(*extra))];
            return self
                .working
                .by(&EXTRA, subject, &inputs, top.value + *extra);
        }
        let step = self.brief.fact(Key::WeightStep);
        let (rule, times, parts) = match self.brief.settings.choice(Key::MatWeighting) {
            "tenth" => (&WEIGHTED_TENTH, 11, 10), // geometry: eleven tenths
            "fifth" => (&WEIGHTED_FIFTH, 6, 5),   // geometry: six fifths
            "three to four" => (&WEIGHTED_THREE_TO_FOUR, 4, 3), // geometry: four thirds
            _ => return self.side("bottom", self.stated.top),
        };
        let value = nearest_share(top.value, times, parts, step.value);
        self.working.by(
            rule,
            subject,
            &[("top", top.into()), ("step", step.into())],
            value,
        )
    }

    /// Free windows: the borders before them are where they stand.
    fn free(&mut self, spot: Spot) -> Sides<Worked<Length>> {
        let mut first = |name, length: Length| {
            self.working.by(
                &FREE,
                Subject::of("border", name),
                &[("first", Given::job(length))],
                length,
            )
        };
        let (left, top) = (first("left", spot.x), first("top", spot.y));
        Sides {
            left,
            top,
            right: self.side("right", self.stated.right),
            bottom: self.bottom(top),
        }
    }

    /// Borders in a given package.
    fn leftover(&mut self, windows: WorkedSize, package: WorkedSize) -> Sides<Worked<Length>> {
        let across = (package.width, windows.width);
        let down = (package.height, windows.height);
        let extra = self
            .stated
            .bottom_extra
            .map_or(Length::ZERO, |extra| *extra);
        let (left, right) = match (self.stated.left, self.stated.right) {
            (Some(_), _) => {
                let left = self.side("left", self.stated.left);
                (left, self.rest("right", across, left))
            }
            (None, Some(_)) => {
                let right = self.side("right", self.stated.right);
                (self.rest("left", across, right), right)
            }
            (None, None) => {
                let left = self.half("left", across, Length::ZERO);
                (left, self.rest("right", across, left))
            }
        };
        let (top, bottom) = match (self.stated.top, self.stated.bottom) {
            (Some(_), _) => {
                let top = self.side("top", self.stated.top);
                (top, self.rest("bottom", down, top))
            }
            (None, Some(_)) => {
                let bottom = self.side("bottom", self.stated.bottom);
                (self.rest("top", down, bottom), bottom)
            }
            (None, None) => {
                let top = self.half("top", down, extra);
                (top, self.rest("bottom", down, top))
            }
        };
        Sides {
            left,
            right,
            top,
            bottom,
        }
    }

    fn free_leftover(
        &mut self,
        windows: WorkedSize,
        package: WorkedSize,
        spot: Spot,
    ) -> Sides<Worked<Length>> {
        let mut first = |name, length: Length| {
            self.working.by(
                &FREE,
                Subject::of("border", name),
                &[("first", Given::job(length))],
                length,
            )
        };
        let (left, top) = (first("left", spot.x), first("top", spot.y));
        let right = self.rest("right", (package.width, windows.width), left);
        let bottom = self.rest("bottom", (package.height, windows.height), top);
        Sides {
            left,
            right,
            top,
            bottom,
        }
    }

    fn half(
        &mut self,
        name: &'static str,
        (package, windows): (Worked<Length>, Worked<Length>),
        extra: Length,
    ) -> Worked<Length> {
        let inputs = [
            ("package", package.into()),
            ("windows", windows.into()),
            ("extra", Given::job(extra)),
        ];
        let value = (package.value - windows.value - extra).half_down();
        self.working
            .by(&LEFTOVER_HALF, Subject::of("border", name), &inputs, value)
    }

    fn rest(
        &mut self,
        name: &'static str,
        (package, windows): (Worked<Length>, Worked<Length>),
        other: Worked<Length>,
    ) -> Worked<Length> {
        let inputs = [
            ("package", package.into()),
            ("windows", windows.into()),
            ("other", other.into()),
        ];
        let value = package.value - windows.value - other.value;
        self.working
            .by(&LEFTOVER, Subject::of("border", name), &inputs, value)
    }
}

/// `length × times ÷ parts`, to the nearest `step`, halves up.
fn nearest_share(length: Length, times: i64, parts: i64, step: Length) -> Length {
    let step = i128::from(step.quanta().max(1));
    let scaled = i128::from(length.quanta()) * i128::from(times);
    let unit = step * i128::from(parts);
    let steps = (scaled * 2 + unit).div_euclid(unit * 2);
    i64::try_from(steps * step).map_or(length, Length::from_quanta)
}
