//! Light: exposure, fading, yearly limits, ultraviolet.

mod exposure;
mod fade;
mod limit;
mod medium;
mod ultraviolet;

pub use exposure::{Exposure, Showing, exposure};
pub use fade::{BlueWool, Fade, GREY_SCALE, GreyStep, fade, wool, years, years_for_wool};
pub use limit::{LIMITS, Limit, days_a_year, limit_of};
pub use medium::{Class, MEDIA, Media, PLACES, Place, media_of, media_or_worse, place};
pub use ultraviolet::{ULTRAVIOLET, UvAtArt, UvFigure, behind};
