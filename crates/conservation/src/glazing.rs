//! Glazing: what it reflects, what its thickness is called, how it sags, what it weighs.

mod designation;
mod plate;
mod reflect;

pub use designation::{ASTM, AstmGlass, EN, EnGlass, astm_designation, en_nominal};
pub use plate::{Plate, composite_areal, plate, sheet_mass};
pub use reflect::{Coated, Reflected, coated, reflected};
