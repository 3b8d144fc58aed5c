//! Shadowboxes: walls that show, objects off the ground or on one another.

use measure::{Length, Size};
use trade::Art;

use super::Bench;
use crate::brief::part_name;
use crate::fault::Fault;

impl Bench<'_, '_, '_> {
    pub(super) fn boxed(&mut self) {
        let Some(walls) = &self.sizes.walls else {
            return;
        };
        let ground = self.sizes.package.size().shrink(walls.thickness);
        self.wall_shows(walls.thickness);
        let job = self.brief.job;
        for (i, art) in job.art.iter().enumerate() {
            self.on_ground(&part_name("Art", i, job.art.len()), i, art, ground);
        }
        for (i, art) in job.art.iter().enumerate() {
            for (j, other) in job.art.iter().enumerate().skip(i + 1) {
                self.apart((i, art), (j, other));
            }
        }
    }

    fn wall_shows(&mut self, thickness: Length) {
        let innermost = self.sizes.members.last();
        let Some(cover) = innermost.and_then(|member| member.lip_cover) else {
            return;
        };
        if thickness > cover.value {
            let cure = format!(
                "Take walls of {} or less, or a wider lip",
                self.say(cover.value)
            );
            self.faults.push(
                Fault::warn(
                    "wall.shows",
                    "Walls",
                    format!("they are {} thick", self.say(thickness)),
                    format!("the lip covers {}", self.say(cover.value)),
                    cure,
                )
                .because(cover.line),
            );
        }
    }

    /// An object must lie between the walls, where it is placed and whether it is.
    fn on_ground(&mut self, part: &str, index: usize, art: &Art, ground: Size) {
        let size = self.sizes.art[index].largest.size();
        let (x, y) = (art.x.unwrap_or_default(), art.y.unwrap_or_default());
        let room = Size::new(ground.width - *x, ground.height - *y);
        if !x.is_negative() && !y.is_negative() && size.fits_in(room) {
            return;
        }
        self.faults.push(Fault::refuse(
            "wall.too_close",
            part,
            format!(
                "it reaches from {} to {} across and from {} to {} down",
                self.say(*x),
                self.say(*x + size.width),
                self.say(*y),
                self.say(*y + size.height)
            ),
            format!(
                "the walls leave {} × {} between them",
                self.say(ground.width),
                self.say(ground.height)
            ),
            "Move it, widen the display, or widen the borders of the mat before it",
        ));
    }

    /// Two placed objects must not lie on one another.
    fn apart(&mut self, (i, art): (usize, &Art), (j, other): (usize, &Art)) {
        let place = |art: &Art| art.x.zip(art.y);
        let (Some((ax, ay)), Some((bx, by))) = (place(art), place(other)) else {
            return;
        };
        let (a, b) = (
            self.sizes.art[i].largest.size(),
            self.sizes.art[j].largest.size(),
        );
        let gap = |a0: Length, a: Length, b0: Length, b: Length| (b0 - a0 - a).max(a0 - b0 - b);
        let across = gap(*ax, a.width, *bx, b.width);
        let down = gap(*ay, a.height, *by, b.height);
        let apart = across.max(down);
        if apart.is_negative() {
            self.faults.push(Fault::warn(
                "object.overlap",
                format!("Art {} and {}", i + 1, j + 1),
                format!("they overlap by {}", self.say(-apart)),
                "objects lie side by side",
                "Move one of them, unless one is to lie on the other",
            ));
        }
    }
}
