//! Random jobs: any composition the document can say, as values.
//!
//! Proptest draws plain numbers; each number chooses one thing. Zero chooses the plainest, so a
//! failing job shrinks towards a single mat in one frame.

use std::fmt;
use std::ops::Deref;

use measure::{Angle, Length, Size};
use proptest::prelude::*;
use trade::{
    Align, Arrangement, Art, Backing, Bevel, Borders, BuildUp, Clips, Fit, FrameFillet, Glazing,
    Hardware, Job, Layer, Layout, Mat, MatFillet, Measured, Medium, Member, Opening, Pair, Role,
    Shape, Show, Sink, Spacer, Turned, Units, Walls, Wrap,
};

/// A drawn job, shown as its document.
#[derive(Clone, PartialEq, Eq)]
pub struct Drawn(pub Job);

impl Deref for Drawn {
    type Target = Job;
    fn deref(&self) -> &Job {
        &self.0
    }
}

impl fmt::Debug for Drawn {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "\n{}", self.0.to_toml())
    }
}

/// Jobs of every composition, with as many numbers as the longest of them takes.
pub fn jobs() -> impl Strategy<Value = Drawn> {
    prop::collection::vec(any::<u16>(), 160).prop_map(|numbers| Drawn(Dice::new(&numbers).job()))
}

/// Jobs that give no size to fit.
pub fn jobs_without_fit() -> impl Strategy<Value = Drawn> {
    jobs().prop_map(|Drawn(job)| Drawn(Job { fit: None, ..job }))
}

struct Dice<'a> {
    numbers: std::slice::Iter<'a, u16>,
    units: Units,
}

impl<'a> Dice<'a> {
    fn new(numbers: &'a [u16]) -> Self {
        Self {
            numbers: numbers.iter(),
            units: Units::Inches,
        }
    }

    /// A number below `n`; zero once all are used up.
    fn below(&mut self, n: u16) -> u16 {
        self.numbers.next().map_or(0, |number| number % n)
    }

    fn one<T: Copy>(&mut self, choices: &[T]) -> T {
        let count = u16::try_from(choices.len()).expect("a few choices");
        choices[usize::from(self.below(count))]
    }

    fn yes(&mut self) -> bool {
        self.below(2) == 1
    }

    fn seldom(&mut self) -> bool {
        self.below(6) == 5
    }

    /// From `least` to `most` 32nds of an inch, or as many 0.8 mm, and now and then 0.1 mm more.
    fn length(&mut self, least: u16, most: u16) -> Measured {
        let steps = i64::from(least + self.below(most - least + 1));
        Measured(match self.units {
            Units::Inches => Length::inch_fraction(steps, 32),
            Units::Millimetres => Length::micrometres(800 * steps + 100 * i64::from(self.below(8))),
        })
    }

    fn maybe(&mut self, least: u16, most: u16) -> Option<Measured> {
        self.yes().then(|| self.length(least, most))
    }

    fn pair(&mut self, least: u16, most: u16) -> Pair {
        let (width, height) = (self.length(least, most), self.length(least, most));
        Pair(Size::new(*width, *height))
    }

    fn job(&mut self) -> Job {
        self.units = self.one(&[Units::Inches, Units::Millimetres]);
        let mut job = Job::empty(self.units);
        let mats = self.one(&[1, 2, 0, 3, 4]);
        job.sides = if self.seldom() {
            u32::from(3 + self.below(10))
        } else {
            4
        };
        self.art(&mut job, mats > 0);
        self.mats(&mut job, mats);
        self.frames(&mut job);
        self.package(&mut job);
        if self.seldom() {
            job.fit = Some(self.fit());
        }
        self.settings(&mut job);
        job
    }

    fn art(&mut self, job: &mut Job, matted: bool) {
        let pieces = if matted {
            self.one(&[1, 1, 2, 3, 4, 7])
        } else {
            1
        };
        let show = if matted {
            self.one(&[None, Some(Show::Window), Some(Show::Float)])
        } else {
            self.one(&[
                None,
                Some(Show::Bleed),
                Some(Show::Float),
                Some(Show::Object),
            ])
        };
        for i in 0..pieces {
            let (width, height) = (self.length(64, 900), self.length(64, 900));
            let overlap = self.maybe(0, 20);
            let shows_paper = show != Some(Show::Float) && self.seldom();
            job.art.push(Art {
                name: (pieces > 1).then(|| format!("piece {i}")),
                medium: self.one(&[Medium::Print, Medium::Canvas, Medium::Pastel]),
                thickness: self.length(0, 30),
                show,
                overlap: overlap.map(|o| Measured(if shows_paper { -*o } else { *o })),
                margin: self.maybe(0, 60),
                lift: self.maybe(0, 10),
                sheet: shows_paper
                    .then(|| Pair(Size::new(*width, *height).grow(Length::inches(2)))),
                width_readings: if self.seldom() {
                    vec![self.length(64, 900)]
                } else {
                    vec![]
                },
                diagonals: if self.seldom() {
                    Some([self.length(100, 1200), self.length(100, 1200)])
                } else {
                    None
                },
                ..Art::sized(*width, *height)
            });
        }
    }

    fn mats(&mut self, job: &mut Job, count: u16) {
        for _ in 0..count {
            let board = self.yes();
            let mat = Mat {
                board: board.then(|| self.one(&["mat-4-conservation", "mat-8-museum"]).to_owned()),
                thickness: (!board).then(|| self.length(1, 5)),
                reveal: self.maybe(1, 24),
                bevel: self.one(&[Bevel::Normal, Bevel::Normal, Bevel::Reverse, Bevel::Square]),
                fillet: self.seldom().then(|| self.mat_fillet()),
                groove: if self.seldom() {
                    self.maybe(1, 20)
                } else {
                    None
                },
                ..Mat::default()
            };
            job.mat.push(mat);
        }
        if count == 0 {
            return;
        }
        self.openings(job);
        job.borders = match self.below(4) {
            0 => Some(Borders {
                all: Some(self.length(8, 160)),
                ..Borders::default()
            }),
            1 => Some(self.borders()),
            2 => Some(Borders {
                bottom_extra: self.maybe(0, 40),
                ..Borders::default()
            }),
            _ => None,
        };
    }

    fn mat_fillet(&mut self) -> MatFillet {
        let coded = self.yes();
        MatFillet {
            fillet: coded.then(|| "fillet-gilt-1/4".to_owned()),
            face: (!coded).then(|| self.length(2, 16)),
            tuck: self.maybe(1, 12),
            thickness: (!coded).then(|| self.length(1, 8)),
        }
    }

    fn borders(&mut self) -> Borders {
        Borders {
            all: self.maybe(8, 160),
            left: self.maybe(8, 160),
            right: self.maybe(8, 160),
            top: self.maybe(8, 160),
            bottom: self.maybe(8, 160),
            bottom_extra: self.maybe(0, 40),
        }
    }

    fn openings(&mut self, job: &mut Job) {
        let count = job.art.len();
        for i in 0..count {
            let mut opening = self.opening();
            opening.name = (count > 1).then(|| format!("window {i}"));
            job.opening.push(opening);
        }
        if count == 1 {
            return;
        }
        let arrange = self.one(&[
            Arrangement::Row,
            Arrangement::Column,
            Arrangement::Grid,
            Arrangement::Free,
        ]);
        job.layout = Some(Layout {
            arrange,
            columns: if self.yes() {
                Some(u32::from(1 + self.below(4)))
            } else {
                None
            },
            gutter_x: self.maybe(0, 60),
            gutter_y: self.maybe(0, 60),
            align: self.one(&[Align::Centre, Align::Start, Align::End]),
        });
        if arrange == Arrangement::Free {
            for opening in &mut job.opening {
                (opening.x, opening.y) = (Some(self.length(32, 2000)), Some(self.length(32, 2000)));
            }
        }
        if job.mat.len() > 1 && self.yes() {
            let last = usize::from(1 + self.below(u16::try_from(count - 1).expect("a few")));
            let group = (0..=last).map(|i| format!("window {i}")).collect();
            job.mat[0].around = vec![group];
        }
    }

    fn opening(&mut self) -> Opening {
        let mut opening = Opening {
            shape: self.one(&[
                Shape::Rectangle,
                Shape::Rectangle,
                Shape::Oval,
                Shape::Rounded,
                Shape::RoundArch,
                Shape::LowArch,
                Shape::Octagon,
                Shape::Polygon,
                Shape::Free,
            ]),
            window: self.seldom().then(|| self.pair(40, 800)),
            ..Opening::default()
        };
        match opening.shape {
            Shape::Rounded => opening.radius = Some(self.length(1, 40)),
            Shape::LowArch => opening.rise = Some(self.length(1, 40)),
            Shape::Octagon => opening.corner = self.maybe(1, 40),
            Shape::Polygon => opening.sides = Some(u32::from(3 + self.below(8))),
            Shape::Free => {
                let (w, h) = (self.length(60, 400), self.length(60, 400));
                let zero = Measured::default();
                opening.points = vec![[zero, zero], [w, zero], [w, h], [zero, h]];
            }
            _ => {}
        }
        opening
    }

    fn frames(&mut self, job: &mut Job) {
        let count = self.one(&[1, 2, 3]);
        for i in 0..count {
            let mut member = self.member();
            if i > 0 {
                member.role = Role::Liner;
            }
            member.name = Some(format!("member {i}"));
            job.frame.push(member);
        }
        if job.mat.is_empty() && self.seldom() {
            job.frame = vec![Member {
                role: Role::Floater,
                gap: self.maybe(1, 20),
                wall: Some(self.length(4, 24)),
                ledge: Some(self.length(20, 60)),
                rabbet_depth: self.maybe(8, 60),
                ..Member::default()
            }];
        }
    }

    fn member(&mut self) -> Member {
        let coded = self.seldom();
        let fillet = self.seldom().then(|| FrameFillet {
            fillet: None,
            face: Some(self.length(2, 12)),
            thickness: Some(self.length(1, 8)),
        });
        Member {
            moulding: coded.then(|| {
                self.one(&["oak-square-1", "walnut-1", "scoop-3"])
                    .to_owned()
            }),
            face: (!coded).then(|| self.length(16, 120)),
            lip: (!coded).then(|| self.length(4, 16)),
            rabbet_depth: if coded { None } else { self.maybe(8, 60) },
            height: self.maybe(20, 80),
            allowance: self.maybe(0, 12),
            tail: self.maybe(0, 10),
            stick: self.maybe(1000, 4000),
            tilt: self
                .seldom()
                .then(|| Turned(Angle::degrees(i64::from(self.below(81))))),
            fillet,
            ..Member::default()
        }
    }

    fn package(&mut self, job: &mut Job) {
        job.double_sided = self.seldom();
        if self.yes() {
            job.glazing.push(self.glazing(job.frame.len()));
        }
        if self.seldom() {
            job.spacer = Some(Spacer {
                strip: None,
                width: self.maybe(2, 12),
                thickness: Some(self.length(2, 20)),
            });
        }
        self.backs(job);
        let plain = job.frame.iter().all(|member| member.role != Role::Floater);
        if job.mat.is_empty() && plain && self.seldom() {
            job.walls = Some(Walls {
                board: None,
                thickness: Some(self.length(2, 12)),
                height: self.maybe(4, 80),
                display: if self.yes() {
                    Some(self.pair(200, 1200))
                } else {
                    None
                },
            });
        } else if job.mat.is_empty() && self.seldom() {
            job.art[0].show = Some(Show::Wrapped);
            job.wrap = Some(Wrap {
                ground: self.length(0, 40),
                cloth: self.length(0, 4),
                turn: self.maybe(32, 90),
                fabric: None,
            });
        }
        job.hardware = Some(Hardware {
            down: self.maybe(40, 200),
            inset: self.maybe(4, 40),
            ..Hardware::default()
        });
    }

    fn glazing(&mut self, members: usize) -> Glazing {
        let sheet = self.one(&[
            None,
            Some("glass-2.5"),
            Some("acrylic-3"),
            Some("glass-uv-2.5"),
        ]);
        let held_in = usize::from(self.below(u16::try_from(members).expect("a few")));
        let named = members > 1 && self.yes();
        Glazing {
            sheet: sheet.map(str::to_owned),
            thickness: sheet.is_none().then(|| self.length(2, 8)),
            undersize: self.maybe(0, 8),
            inward: None,
            held_in: named.then(|| format!("member {held_in}")),
        }
    }

    fn backs(&mut self, job: &mut Job) {
        if self.yes() {
            job.mount = Some(Layer {
                board: None,
                thickness: Some(self.length(1, 8)),
            });
        }
        for _ in 0..self.below(3) {
            job.backing.push(Backing {
                board: None,
                thickness: Some(self.length(1, 10)),
                undersize: self.maybe(0, 8),
            });
        }
        if self.seldom() {
            job.sink = Some(Sink {
                board: None,
                depth: Some(self.length(1, 40)),
                room: self.maybe(4, 8),
            });
        }
        if self.seldom() {
            job.clips = Some(Clips {
                offsets: vec![self.length(1, 8), self.length(9, 32)],
            });
        }
        if self.seldom() {
            job.build_up = Some(BuildUp {
                depth: self.maybe(1, 32),
                width: None,
            });
        }
    }

    fn fit(&mut self) -> Fit {
        let size = Some(self.pair(600, 1600));
        match self.below(4) {
            0 => Fit {
                outside: size,
                ..Fit::default()
            },
            1 => Fit {
                rabbet: size,
                ..Fit::default()
            },
            2 => Fit {
                sight: size,
                ..Fit::default()
            },
            _ => Fit {
                package: size,
                ..Fit::default()
            },
        }
    }

    fn settings(&mut self, job: &mut Job) {
        let words: [(&str, &[&str]); 8] = [
            ("mat.window_at", &["face", "foot"]),
            ("mat.border_measured", &["cut", "visible"]),
            ("mat.reveal_measured", &["nominal", "seen"]),
            (
                "mat.weighting",
                &["none", "tenth", "fifth", "three to four"],
            ),
            ("mat.marks_at", &["face", "foot"]),
            ("mat.cut_direction", &["away", "towards"]),
            (
                "moulding.charge_rule",
                &["quick", "cut list", "long points"],
            ),
            ("mat.bevel", &["45", "45", "52", "60", "38.5", "90"]),
        ];
        for (id, choices) in words {
            if self.yes() {
                job.settings
                    .insert(id.to_owned(), self.one(choices).to_owned());
            }
        }
        if self.seldom() {
            job.settings
                .insert("mat.guide_offset".to_owned(), "-1/16 in".to_owned());
        }
    }
}
