//! The nouns of the trade: the job document, the material catalogue and the shop's settings.
//!
//! A [`Job`] describes one piece, front to back. It is the one model that is written to disk
//! (TOML), sent over the wire (JSON) and derived from; it holds what a person decided and
//! nothing that can be worked out.

mod art;
mod attachment;
mod backing;
mod catalogue;
mod condition;
mod date;
mod document;
mod frame;
mod glazing;
mod hardware;
mod job;
mod layout;
mod lengths;
mod mat;
mod opening;
mod paper;
pub mod reading;
pub mod settings;
mod site;
mod walls;
mod wrap;
mod written;

pub use art::{Art, Box4, Deckle, Medium, Orientation, Show};
pub use attachment::{Attachment, Hold};
pub use backing::{Backing, BuildUp, Clips, Layer, Sink, Strainer};
pub use catalogue::{
    Catalogue, CatalogueFault, Coating, Cost, Kind, Material, Pane, Per, Price, PriceFault,
    Profile, Sourced, SourcedStatus, Supply,
};
pub use condition::{ArtSide, Blemish, ConditionMark};
pub use date::{Date, DateFault};
pub use document::{DocumentFault, Place, VERSION};
pub use frame::{FrameFillet, Member, Role};
pub use glazing::{Glazing, Inward};
pub use hardware::{Cover, Hanger, Hardware};
pub use job::{Fit, Identity, Job, Level, Units};
pub use layout::{Align, Arrangement, Borders, Layout};
pub use mat::{Bevel, Mat, MatFillet};
pub use opening::{Opening, Shape};
pub use paper::SheetSeries;
pub use settings::{Key, Settings};
pub use site::{Above, Lamp, Site, WallMake, WallSide};
pub use walls::{Spacer, Walls};
pub use wrap::Wrap;
pub use written::{Measured, Pair, Turned};
