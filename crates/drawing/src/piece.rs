//! The piece in the plane: where its rims, windows and art lie, in millimetres about its middle.

use measure::{Length, Size};
use sizing::{Sizes, Window};
use trade::{Art, Job, Key, Show};

use crate::scene::{Box2, Point, at};

/// Chords per quarter turn of a curve.
const STEPS: u32 = 24;

/// A job with its sizes.
#[derive(Clone, Copy)]
pub(crate) struct Piece<'a> {
    pub job: &'a Job,
    pub sizes: &'a Sizes,
}

/// A piece of art where it lies.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Laid {
    /// Which one.
    pub art: usize,
    /// At its largest.
    pub at: Box2,
    /// Its edges are seen: it floats, or is an object or textile.
    pub whole: bool,
}

impl<'a> Piece<'a> {
    /// The edge of a frame or sheet of this size: a rectangle, or a polygon across its flats.
    pub fn rim(&self, size: Size) -> Vec<Point> {
        if self.sizes.sides == 4 {
            return Box2::round(
                Point::default(),
                size.width.approx_mm(),
                size.height.approx_mm(),
            )
            .corners();
        }
        let sides = f64::from(self.sizes.sides);
        let half_turn = std::f64::consts::PI / sides;
        let radius = size.width.approx_mm() / 2.0 / half_turn.cos();
        // The first corner stands so that the bottom side lies level; then clockwise.
        let first = std::f64::consts::FRAC_PI_2 + half_turn;
        (0..self.sizes.sides)
            .map(|k| first + 2.0 * half_turn * f64::from(k))
            .map(|turn| at(radius * turn.cos(), radius * turn.sin()))
            .collect()
    }

    /// Left top of the package's box, from which windows are placed.
    pub fn package_corner(&self) -> Point {
        let size = self.sizes.package.size();
        at(
            -size.width.approx_mm() / 2.0,
            -size.height.approx_mm() / 2.0,
        )
    }

    /// The outline of a window this far inside its face edge (outside it, where negative).
    pub fn ring(&self, window: &Window, inset: Length) -> Vec<Point> {
        let face = window.face.size();
        let outline = if inset.is_zero() {
            window.outline.clone()
        } else {
            window.outline.grown_nearest(face, -inset)
        };
        let corner = self.package_corner().plus(
            (window.x.value + inset).approx_mm(),
            (window.y.value + inset).approx_mm(),
        );
        let corners = outline.corners_nearest(face.shrink(inset), STEPS);
        corners
            .iter()
            .map(|[x, y]| corner.plus(x.approx_mm(), y.approx_mm()))
            .collect()
    }

    /// The box of a window's face.
    pub fn window_box(&self, window: &Window) -> Box2 {
        let corner = self
            .package_corner()
            .plus(window.x.value.approx_mm(), window.y.value.approx_mm());
        let size = window.face.size();
        Box2 {
            left: corner.x,
            top: corner.y,
            right: corner.x + size.width.approx_mm(),
            bottom: corner.y + size.height.approx_mm(),
        }
    }

    /// The windows of the mat nearest the art.
    pub fn windows(&self) -> &'a [Window] {
        self.sizes.mats.last().map_or(&[], |mat| &mat.windows)
    }

    /// The box round all windows of the outermost mat.
    pub fn windows_box(&self) -> Option<Box2> {
        let windows = &self.sizes.mats.first()?.windows;
        let corners: Vec<Point> = windows
            .iter()
            .flat_map(|window| self.window_box(window).corners())
            .collect();
        (!corners.is_empty()).then(|| Box2::of(&corners))
    }

    /// Every piece of art where it lies.
    pub fn laid(&self) -> Vec<Laid> {
        if self.sizes.mats.is_empty() {
            return (0..self.job.art.len())
                .map(|art| self.laid_free(art))
                .collect();
        }
        let behind = &self.sizes.opening_art;
        let windows = self.windows();
        windows
            .iter()
            .filter_map(|window| {
                let art = behind.get(*window.openings.first()?).copied().flatten()?;
                Some(self.laid_round(art, self.window_box(window).centre()))
            })
            .collect()
    }

    fn laid_free(&self, art: usize) -> Laid {
        let stated = &self.job.art[art];
        let (Some(x), Some(y), Some(walls)) = (stated.x, stated.y, &self.sizes.walls) else {
            return self.laid_round(art, Point::default());
        };
        let wall = walls.thickness.approx_mm();
        let corner = self
            .package_corner()
            .plus(wall + x.approx_mm(), wall + y.approx_mm());
        let size = self.sizes.art[art].largest.size();
        let (width, height) = (size.width.approx_mm(), size.height.approx_mm());
        self.laid_round(art, corner.plus(width / 2.0, height / 2.0))
    }

    fn laid_round(&self, art: usize, centre: Point) -> Laid {
        let size = self.sizes.art[art].largest.size();
        let at = Box2::round(centre, size.width.approx_mm(), size.height.approx_mm());
        Laid {
            art,
            at,
            whole: is_whole(&self.job.art[art]) || self.sizes.walls.is_some(),
        }
    }

    /// The hidden lift under a float, as stated or as the shop's habit is.
    pub fn lift(&self, art: &Art) -> Length {
        art.lift
            .map_or_else(|| self.sizes.settings.length(Key::FloatLift), |lift| *lift)
    }

    /// The title of the piece, in words.
    pub fn title(&self) -> String {
        let title = self.job.art.iter().find_map(|art| art.title.as_deref());
        title.map_or_else(|| "the piece".to_owned(), |title| format!("“{title}”"))
    }
}

/// Whether art is shown with all its edges.
pub(crate) fn is_whole(art: &Art) -> bool {
    matches!(art.show, Some(Show::Float | Show::Wrapped | Show::Object))
}
