//! What is said of a broken law: both sides, and the gap between them.

use std::fmt;

use super::Broken;

impl fmt::Display for Broken {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.sentence())
    }
}

impl Broken {
    /// Sorts by what is broken: a place on a layout, a cut, or the plan as a whole.
    fn sentence(&self) -> String {
        self.of_places()
            .or_else(|| self.of_parts())
            .or_else(|| self.of_cuts())
            .or_else(|| self.of_counts())
            .unwrap_or_else(|| self.of_plan())
    }

    fn of_places(&self) -> Option<String> {
        Some(match self {
            Self::NoSuch {
                layout,
                what,
                number,
                held,
            } => {
                let place = match layout {
                    0 => "the plan".to_owned(),
                    layout => format!("layout {layout}"),
                };
                format!(
                    "{place}: {what} number {number} is named; the problem holds {held}, counted from 0"
                )
            }
            Self::NoCopies { layout } => {
                format!("layout {layout}: it is cut 0 times; at least 1 is needed")
            }
            Self::Empty { layout } => {
                format!("layout {layout}: it holds 0 pieces; at least 1 is needed")
            }
            Self::Outside {
                layout,
                part,
                direction,
                from,
                to,
                room,
            } => {
                let over = (to.saturating_sub(room.1)).max(room.0.saturating_sub(*from));
                format!(
                    "layout {layout}: {part} lies {from} to {to} {direction}, {} to {} can be used; {over} too far",
                    room.0, room.1
                )
            }
            _ => return None,
        })
    }

    fn of_parts(&self) -> Option<String> {
        Some(match self {
            Self::Size {
                layout,
                piece,
                placed,
                ordered,
            } => format!(
                "layout {layout}: piece {piece:?} is placed {} × {}, ordered {} × {}; off by {} × {}",
                placed.0,
                placed.1,
                ordered.0,
                ordered.1,
                placed.0.abs_diff(ordered.0),
                placed.1.abs_diff(ordered.1)
            ),
            Self::Turned { layout, piece } => {
                format!("layout {layout}: piece {piece:?} is turned and must not be")
            }
            Self::Close {
                layout,
                parts: (one, other),
                apart,
                kerf,
            } => too_close(*layout, one, other, *apart, *kerf),
            Self::Flawed {
                layout,
                part,
                from,
                to,
                flaw,
            } => format!(
                "layout {layout}: {part} lies {from} to {to} on the flaw {} to {}; {} of it is flawed",
                flaw.0,
                flaw.1,
                to.min(&u128::from(flaw.1)) - from.max(&u128::from(flaw.0))
            ),
            Self::NoRemnant { layout } => {
                format!("layout {layout}: a remnant has a size of 0; leave it out")
            }
            _ => return None,
        })
    }

    fn of_cuts(&self) -> Option<String> {
        Some(match self {
            Self::NoPart { layout, cut } => {
                format!("layout {layout}, cut {cut}: there is no such part to cut at that moment")
            }
            Self::Beside {
                layout,
                cut,
                at,
                from,
                to,
            } => format!(
                "layout {layout}, cut {cut}: it is made at {at}, the part lies {from} to {to}; it must fall inside"
            ),
            Self::Stages {
                layout,
                cut,
                stage,
                limit,
            } => format!(
                "layout {layout}, cut {cut}: it is of stage {stage}, {limit} are allowed; {} too many",
                stage - limit
            ),
            Self::Trims {
                layout,
                cut,
                inside,
            } => format!(
                "layout {layout}, cut {cut}: a trimming cut may serve 1 piece, {inside} lie here; {} too many",
                inside - 1
            ),
            Self::Narrow {
                layout,
                cut,
                strip,
                least,
            } => format!(
                "layout {layout}, cut {cut}: it makes a strip of {strip}, the least is {least}; {} too narrow",
                least - strip
            ),
            Self::NotFreed { layout, part } => {
                format!("layout {layout}: the cuts do not free {part} as a part of its own")
            }
            _ => return None,
        })
    }

    fn of_counts(&self) -> Option<String> {
        Some(match self {
            Self::Demand {
                piece,
                cut,
                uncut,
                ordered,
            } => {
                let (given, ordered) = (cut + uncut, u128::from(*ordered));
                let gap = given.abs_diff(ordered);
                let word = if given > ordered {
                    "too many"
                } else {
                    "missing"
                };
                format!(
                    "piece {piece:?}: {cut} cut and {uncut} left uncut, {ordered} ordered; {gap} {word}"
                )
            }
            Self::OverStock { stock, used, held } => format!(
                "stock {stock:?}: {used} used, {held} held; {} too many",
                used - u128::from(*held)
            ),
            Self::OverWindows {
                layout,
                piece,
                used,
                freed,
            } => format!(
                "layout {layout}: {used} windows of piece {piece:?} used by then, {freed} freed; {} too many",
                used - freed
            ),
            Self::NoWindow { layout, piece } => {
                format!("layout {layout}: piece {piece:?} frees 0 windows, and one is cut up here")
            }
            Self::Several { used } => format!(
                "most value is asked out of 1 stick or sheet, {used} are used; {} too many",
                used - 1
            ),
            Self::Divided { group, sticks } => format!(
                "group {group:?} must come from 1 stick and comes from {sticks}; {} too many",
                sticks - 1
            ),
            Self::Runs { group, runs } => format!(
                "group {group:?} must come from 1 run and comes from {runs}; {} too many",
                runs - 1
            ),
            _ => return None,
        })
    }

    fn of_plan(&self) -> String {
        match self {
            Self::Objective { claimed, counted } => format!(
                "the plan claims an objective of {claimed}, {counted} is counted; off by {}",
                counted.abs_diff(u128::from(*claimed))
            ),
            Self::Bound {
                claimed,
                counted,
                ceiling,
            } => format!(
                "the plan claims that nothing {} {claimed} can be reached and reaches {counted} itself; off by {}",
                if *ceiling { "above" } else { "below" },
                counted.abs_diff(u128::from(*claimed))
            ),
            Self::Unbalanced {
                layout,
                stock,
                parts,
            } => format!(
                "layout {layout}: pieces + kerf + trim + remnants + waste = {parts}, stock is {stock}; {} unaccounted for",
                stock.abs_diff(*parts)
            ),
            _ => "the numbers of this plan are beyond what can be counted; divide the list"
                .to_owned(),
        }
    }
}

fn too_close(layout: usize, one: &str, other: &str, apart: i128, kerf: u64) -> String {
    let kerf = i128::from(kerf);
    if apart < 0 {
        return format!(
            "layout {layout}: {one} and {other} overlap by {}; they must be {kerf} apart",
            -apart
        );
    }
    format!(
        "layout {layout}: {one} and {other} are {apart} apart, the kerf is {kerf}; {} too close",
        kerf - apart
    )
}
