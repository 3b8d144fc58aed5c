//! Light: exposure, fading, yearly limits, ultraviolet.

mod exposure;
mod fade;
mod limit;
mod medium;
mod outlook;
mod ultraviolet;

pub use exposure::{Exposure, Showing, exposure, yearly};
pub use fade::{BlueWool, Fade, GREY_SCALE, GreyStep, fade, wool, years, years_for_wool};
pub use limit::{LIMITS, Limit, days_a_year, limit_of};
pub use medium::{
    Class, MEDIA, Media, PLACES, Place, media_named, media_of, media_or_worse, place,
};
pub use outlook::{Kept, Outlook, outlook};
pub(crate) use outlook::{counts_as_removed, filtering_sheets, passed_by, whole};
pub use ultraviolet::{ULTRAVIOLET, UvAtArt, UvFigure, behind};
