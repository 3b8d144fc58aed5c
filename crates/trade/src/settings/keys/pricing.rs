//! What may be changed to bring a price to a budget.

use working::Status::ShopChoice;

use super::super::value::Definition;
use super::count;

pub(super) const COLOUR_NEAR: Definition = count(
    "budget.colour_near",
    60,
    (0, 441),
    "",
    "",
    ShopChoice,
    "How far apart two materials' colours may lie to pass for one family where the catalogue names none: straight through the sRGB cube, in 255ths.",
);
pub(super) const MOST_CHANGES: Definition = count(
    "budget.most_changes",
    2,
    (1, 3),
    "",
    "",
    ShopChoice,
    "How many changes are put together at most to bring a price to a budget.",
);
pub(super) const PUT_TOGETHER: Definition = count(
    "budget.put_together",
    80,
    (2, 500),
    "",
    "",
    ShopChoice,
    "How many of the changes that save something are put together at most to bring a price to a budget; more take longer.",
);
