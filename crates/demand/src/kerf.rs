//! How wide a cut can be.

use measure::{Length, Unit};
use trade::Key;
use trade::settings::{Range, Setting};

/// Why a cut is not as wide as this; nothing where it can be.
///
/// Units:  `unit`. The most is that of the setting `moulding.cut_allowance`.
pub(crate) fn too_wide(kerf: Length, unit: Unit) -> Option<String> {
    let range = Key::CutAllowance.definition().range;
    if range.holds(Setting::Length(kerf)) {
        return None;
    }
    let most = match range {
        Range::Length(_, most) => format!(" than {}", most.exact(unit)),
        Range::Count(..) | Range::Angle(..) | Range::Words(_) => String::new(),
    };
    Some(format!(
        "no cut takes more{most}; write the width of the blade or bit, such as \"1/8 in\" or \"3 mm\""
    ))
}
