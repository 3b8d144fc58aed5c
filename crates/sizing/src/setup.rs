//! Mat cutter settings: guide, start and stop for each cut, in cutting order, from the back.

use measure::{Angle, Length, Size};
use trade::{Bevel, Key};
use working::{Rule, Subject, Worked, Working};

use crate::brief::Brief;
use crate::outline::Outline;
use crate::trace::{Fact, geometry};
use crate::window::Window;

static GUIDE: Rule = geometry(
    "cut.guide",
    "the guide stands at the border of the side being cut, and the machine's offset",
    "guide = border + offset",
);
static GUIDE_FOOT: Rule = geometry(
    "cut.guide_foot",
    "with marks at the foot, the guide stands further in by the slope",
    "guide = border + slope + offset",
);
static STOP: Rule = geometry(
    "cut.stop",
    "a stop stands at the border of the adjoining side",
    "stop = border",
);
static STOP_FOOT: Rule = geometry(
    "cut.stop_foot",
    "with marks at the foot, a stop stands further in by the slope",
    "stop = border + slope",
);
static OVERCUT: Rule = geometry(
    "cut.overcut",
    "with marks at the foot, the blade runs past each crossing by the slope for face corners to meet",
    "overcut = slope",
);
static NO_OVERCUT: Rule = geometry(
    "cut.to_the_line",
    "with marks at the face, the blade runs to the line",
    "overcut = none",
);

/// A side of the board seen from the back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum BackSide {
    /// Left, from the back.
    Left,
    /// Top.
    Top,
    /// Right, from the back.
    Right,
    /// Bottom.
    Bottom,
}

impl BackSide {
    /// The word printed for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Top => "top",
            Self::Right => "right",
            Self::Bottom => "bottom",
        }
    }

    /// The sides in cutting order: the board is turned a quarter each time.
    const ORDER: [Self; 4] = [Self::Left, Self::Top, Self::Right, Self::Bottom]; // geometry: four sides

    /// The neighbour clockwise, seen from the back.
    const fn next(self) -> Self {
        match self {
            Self::Left => Self::Top,
            Self::Top => Self::Right,
            Self::Right => Self::Bottom,
            Self::Bottom => Self::Left,
        }
    }

    /// The neighbour the other way.
    const fn before(self) -> Self {
        match self {
            Self::Left => Self::Bottom,
            Self::Top => Self::Left,
            Self::Right => Self::Top,
            Self::Bottom => Self::Right,
        }
    }
}

/// One straight cut.
#[derive(Clone, Copy, Debug)]
pub struct Cut {
    /// The side of the board that lies against the guide.
    pub side: BackSide,
    /// Distance of the cut from that side.
    pub guide: Worked<Length>,
    /// Where the blade enters, from the adjoining side.
    pub start: Worked<Length>,
    /// Where it leaves, from the other adjoining side.
    pub stop: Worked<Length>,
    /// How far it runs past each crossing.
    pub overcut: Worked<Length>,
}

/// How one window is cut.
#[derive(Clone, Debug)]
pub struct Setup {
    /// The mat, front to back.
    pub mat: usize,
    /// The window in it.
    pub window: usize,
    /// Its bevel.
    pub bevel: Bevel,
    /// Angle of the bevel.
    pub angle: Angle,
    /// The cuts.
    pub cuts: Cuts,
}

/// The cuts of a window.
#[derive(Clone, Debug)]
pub enum Cuts {
    /// Four straight cuts in order.
    Straight(Vec<Cut>),
    /// A curve or a many-sided shape, laid out from its box: left and top from the back, and size.
    LaidOut {
        /// Left edge of the box, from the back.
        left: Length,
        /// Top edge of the box.
        top: Length,
        /// Size of the box.
        size: Size,
    },
}

/// Setups in cutting order: the outermost mat first, windows as they are numbered.
pub(crate) fn setups(
    brief: &Brief<'_>,
    mats: &[Vec<Window>],
    slopes: &[Worked<Length>],
    working: &mut Working,
) -> Vec<Setup> {
    let mut setups = Vec::new();
    for (m, windows) in mats.iter().enumerate() {
        for (w, window) in windows.iter().enumerate() {
            let cuts = if window.outline == Outline::Rectangle {
                Cuts::Straight(straight(brief, (m, w), window, slopes[m], working))
            } else {
                Cuts::LaidOut {
                    left: window.back_x().value,
                    top: window.y.value,
                    size: window.face.size(),
                }
            };
            let bevel = brief.mats[m].mat.bevel;
            setups.push(Setup {
                mat: m,
                window: w,
                bevel,
                angle: brief.settings.angle(Key::BevelAngle),
                cuts,
            });
        }
    }
    setups
}

fn straight(
    brief: &Brief<'_>,
    (mat, window_index): (usize, usize),
    window: &Window,
    slope: Worked<Length>,
    working: &mut Working,
) -> Vec<Cut> {
    let marks_at_foot = brief.settings.choice(Key::MatMarks) == "foot";
    let foot = marks_at_foot.then_some(slope);
    let offset = brief.fact(Key::GuideOffset);
    let away = brief.settings.choice(Key::CutDirection) == "away";
    let subject = |quantity| Subject::nth("mat", mat, quantity).within("window", window_index);
    let overcut = overcut(foot, subject("overcut"), working);
    let mut settled = |side: BackSide| {
        let subjects = [subject(stop_name(side)), subject(guide_name(side))];
        stop_and_guide(
            subjects,
            border_from_back(window, side),
            foot,
            offset,
            working,
        )
    };
    let all = BackSide::ORDER.map(|side| (side, settled(side)));
    let stop_of = |side| {
        all.iter()
            .find(|(s, _)| *s == side)
            .map_or(all[0].1[0], |(_, [stop, _])| *stop)
    };
    all.iter()
        .map(|&(side, [_, guide])| {
            // With the side at the left against the guide, the near end is the neighbour before it.
            let (near, far) = (stop_of(side.before()), stop_of(side.next()));
            let (start, stop) = if away { (near, far) } else { (far, near) };
            Cut {
                side,
                guide,
                start,
                stop,
                overcut,
            }
        })
        .collect()
}

/// The border on a side of the board; the front's right border lies on the left from the back.
const fn border_from_back(window: &Window, side: BackSide) -> Worked<Length> {
    match side {
        BackSide::Left => window.right,
        BackSide::Right => window.x,
        BackSide::Top => window.y,
        BackSide::Bottom => window.bottom,
    }
}

/// How far the blade runs past a crossing; `foot` is the slope, with marks at the foot.
fn overcut(
    foot: Option<Worked<Length>>,
    subject: Subject,
    working: &mut Working,
) -> Worked<Length> {
    if let Some(slope) = foot {
        let inputs = [("slope", slope.into())];
        working.by(&OVERCUT, subject, &inputs, slope.value)
    } else {
        let none = [("none", working::Given::job(Length::ZERO))];
        working.by(&NO_OVERCUT, subject, &none, Length::ZERO)
    }
}

/// Where a stop and the guide stand for one side; `foot` is the slope, with marks at the foot.
fn stop_and_guide(
    [stop, guide]: [Subject; 2],
    border: Worked<Length>,
    foot: Option<Worked<Length>>,
    offset: Fact,
    working: &mut Working,
) -> [Worked<Length>; 2] {
    let mut inputs = vec![("border", border.into())];
    let (stop_rule, guide_rule, stands) = match foot {
        None => (&STOP, &GUIDE, border.value),
        Some(slope) => {
            inputs.push(("slope", slope.into()));
            (&STOP_FOOT, &GUIDE_FOOT, border.value + slope.value)
        }
    };
    let stop = working.by(stop_rule, stop, &inputs, stands);
    inputs.push(("offset", offset.into()));
    let guide = working.by(guide_rule, guide, &inputs, stands + offset.value);
    [stop, guide]
}

const fn guide_name(side: BackSide) -> &'static str {
    match side {
        BackSide::Left => "guide_left",
        BackSide::Top => "guide_top",
        BackSide::Right => "guide_right",
        BackSide::Bottom => "guide_bottom",
    }
}

const fn stop_name(side: BackSide) -> &'static str {
    match side {
        BackSide::Left => "stop_left",
        BackSide::Top => "stop_top",
        BackSide::Right => "stop_right",
        BackSide::Bottom => "stop_bottom",
    }
}
