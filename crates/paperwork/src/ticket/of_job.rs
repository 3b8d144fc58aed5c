//! From a derived job to the words of its ticket.

use measure::{Length, Rounding, Size, Tape, Toward, Unit};
use sizing::{Cuts, LayerKind, MemberSizes, Sizes, Takes};
use trade::{Bevel, Inward, Job};

use super::{
    Caution, CutPart, Drawing, Layer, Legs, MatCut, Severity, Stack, Step, StepCaution, Ticket,
};
use crate::typeset::Stamp;

/// What a ticket must be told that neither the job nor its sizes say.
#[derive(Clone, Debug)]
pub struct Letterhead {
    /// The shop's name.
    pub shop: String,
    /// When the sheet is made.
    pub made: Stamp,
    /// The day, as the shop writes days.
    pub date: String,
    /// Order number where the job has none.
    pub fallback_order: String,
}

/// The three drawings of a ticket.
#[derive(Clone, Debug)]
pub struct Drawings {
    /// From the front.
    pub elevation: drawing::Drawing,
    /// A cut through the edge.
    pub section: drawing::Drawing,
    /// From the back, mirrored.
    pub back_view: drawing::Drawing,
}

/// The ticket of a job.
///
/// Shape:  parts, legs, layers and settings in the order of [`Sizes`]; no size is worked out here.
/// Units:  the shop's tape; a sheet's size that the tape rounds carries its exact value, rails and
///         mat cutter settings stand at the nearest mark without it. Glazing is rounded down,
///         everything else to the nearest mark.
pub fn ticket_of(job: &Job, sizes: &Sizes, drawings: Drawings, head: Letterhead) -> Ticket {
    let tape = sizes.tape();
    let identity = &job.identity;
    let art = job.art.first();
    let text = |value: Option<&String>| value.cloned().unwrap_or_default();
    Ticket {
        shop: head.shop,
        order: identity.order.clone().unwrap_or(head.fallback_order),
        revision: identity.revision.unwrap_or(1),
        made: head.made,
        date: head.date,
        title: text(art.and_then(|art| art.title.as_ref())),
        artist: text(art.and_then(|art| art.artist.as_ref())),
        medium: art.map(medium).unwrap_or_default(),
        customer: text(identity.customer.as_ref()),
        due: text(identity.due.as_ref()),
        bin: text(identity.bin.as_ref()),
        taken_by: text(identity.taken_by.as_ref()),
        level: identity
            .level
            .map(|level| level.word().to_owned())
            .unwrap_or_default(),
        unit: tape.unit().symbol().to_owned(),
        elevation: drawn(drawings.elevation),
        back_view: drawn(drawings.back_view),
        section: drawn(drawings.section),
        parts: parts(job, sizes, tape),
        legs: sizes
            .members
            .iter()
            .flat_map(|member| legs(member, sizes.sides, tape))
            .collect(),
        stack: stack(sizes),
        mat_cuts: mat_cuts(sizes, tape),
        // The steps say how the art is held and hung, the back view where its hangers stand.
        attachment: Vec::new(),
        hardware: Vec::new(),
        instructions: identity.notes.join(" "),
        steps: steps(job, sizes),
        cautions: sizes.faults.iter().map(caution).collect(),
        full_tables: format!(
            "the sizes of order {}",
            identity.order.as_deref().unwrap_or("-")
        ),
    }
}

fn medium(art: &trade::Art) -> String {
    let word = match art.medium {
        trade::Medium::Print => "print or drawing",
        trade::Medium::Watercolour => "watercolour",
        trade::Medium::Pastel => "pastel",
        trade::Medium::Photograph => "photograph",
        trade::Medium::Document => "document",
        trade::Medium::Canvas => "canvas",
        trade::Medium::Panel => "panel",
        trade::Medium::Textile => "textile",
        trade::Medium::Object => "object",
        trade::Medium::Mirror => "mirror",
        trade::Medium::Reproduction => "reproduction",
    };
    match &art.support {
        Some(support) => format!("{word}, {support}"),
        None => word.to_owned(),
    }
}

fn drawn(drawing: drawing::Drawing) -> Drawing {
    let twin: Vec<String> = drawing
        .twin
        .iter()
        .map(|line| format!("{}: {}", line.what, line.value))
        .collect();
    Drawing {
        alt: format!("{}, {}. {}", drawing.title, drawing.scale, twin.join("; ")),
        svg: drawing.svg,
    }
}

/// A length for the tape, without its unit.
fn plain(length: Length, tape: Tape, toward: Toward) -> String {
    bare(&length.on_tape(tape, toward).text, tape.unit())
}

fn bare(text: &str, unit: Unit) -> String {
    text.trim_end_matches(unit.symbol()).trim_end().to_owned()
}

fn parts(job: &Job, sizes: &Sizes, tape: Tape) -> Vec<CutPart> {
    sizes
        .bill
        .iter()
        .filter_map(|line| {
            let Takes::Sheet { size, stock, .. } = &line.takes else {
                return None;
            };
            let glazing = line.part.starts_with("Glazing");
            let toward = if glazing {
                Toward::Down
            } else {
                Toward::Nearest
            };
            let cut = |length: Length| plain(length, tape, toward);
            let rounded = [size.width, size.height]
                .iter()
                .any(|length| length.on_tape(tape, toward).rounding != Rounding::Exact);
            let unit = tape.unit();
            Some(CutPart {
                part: line.part.clone(),
                count: line.count,
                material: material(job, sizes, line),
                from: stock
                    .map(|stock| stock_size(stock, unit))
                    .unwrap_or_default(),
                width: cut(size.width),
                height: cut(size.height),
                exact: rounded.then(|| {
                    format!(
                        "{} × {}",
                        bare(&size.width.exact(unit), unit),
                        bare(&size.height.exact(unit), unit)
                    )
                }),
            })
        })
        .collect()
}

/// A stock sheet, its unit last; stock of another unit keeps each its own.
fn stock_size(stock: Size, unit: Unit) -> String {
    let [width, height] = [stock.width, stock.height].map(|length| length.exact(unit));
    let alike = [&width, &height]
        .iter()
        .all(|text| text.ends_with(unit.symbol()));
    let first = if alike { bare(&width, unit) } else { width };
    format!("{first} × {height}")
}

/// What a part is cut from, and which face of coated glazing looks at the art.
fn material(job: &Job, sizes: &Sizes, line: &sizing::BillLine) -> String {
    let title = line
        .material
        .as_ref()
        .map(|material| material.title().to_owned())
        .unwrap_or_default();
    let index = sizes.glazing.len().checked_sub(1).and_then(|last| {
        (0..=last).find(|&i| line.part == "Glazing" || line.part == format!("Glazing {}", i + 1))
    });
    let face = index
        .and_then(|i| job.glazing[i].inward)
        .map(|inward| match inward {
            Inward::Coated => ", coated face to the art",
            Inward::Plain => ", plain face to the art",
            Inward::Either => ", either face to the art",
        });
    format!("{title}{}", face.unwrap_or_default())
}

fn legs(member: &MemberSizes, sides: u32, tape: Tape) -> Vec<Legs> {
    let title = match &member.material {
        Some(material) => format!("{}: {}", member.name, material.title()),
        None => member.name.clone(),
    };
    let rail = |length: Length| plain(length, tape, Toward::Nearest);
    let upright = member.outside.height.value;
    member
        .legs
        .each
        .iter()
        .enumerate()
        .map(|(i, leg)| {
            let square = member.outside.width.value == upright;
            let pair = if sides != 4 {
                "each side"
            } else if (square && i == 0) || (!square && leg.long.value == upright) {
                "sides"
            } else {
                "top and bottom"
            };
            let (mitre, tilt) = match member.legs.compound {
                Some((gauge, blade)) => (degrees(gauge.value), degrees(blade.value)),
                None => (degrees(member.legs.mitre.value), "0°".to_owned()),
            };
            Legs {
                member: title.clone(),
                pair: pair.to_owned(),
                count: leg.count,
                short: rail(leg.short.value),
                rabbet: rail(leg.rabbet.value),
                long_point: rail(leg.long.value),
                mitre,
                tilt,
            }
        })
        .collect()
}

/// An angle to two decimals: finer than any saw's scale.
fn degrees(angle: measure::Angle) -> String {
    let hundredths = (angle.millionths() + 5_000).div_euclid(10_000);
    if hundredths.rem_euclid(100) == 0 {
        format!("{}°", hundredths.div_euclid(100))
    } else {
        format!(
            "{}.{:02}°",
            hundredths.div_euclid(100),
            hundredths.rem_euclid(100)
        )
    }
}

/// Every member's stack, outside in, with the rabbet's account.
fn stack(sizes: &Sizes) -> Stack {
    let mut layers = Vec::new();
    let mut accounts = Vec::new();
    let several = sizes
        .members
        .iter()
        .filter(|member| member.stack.is_some())
        .count()
        > 1;
    for member in &sizes.members {
        let Some(stack) = &member.stack else { continue };
        let holder = if several {
            format!("{}: ", member.name)
        } else {
            String::new()
        };
        for layer in &stack.layers {
            layers.push(Layer {
                layer: format!("{holder}{}", layer_name(layer, sizes)),
                thickness: near(layer.thickness.value, sizes),
                running: near(layer.behind, sizes),
            });
        }
        let proud = stack.proud.value;
        let rest = if proud.is_positive() {
            let clip = stack
                .clip
                .map(|clip| format!(", clip {}", near(clip.value, sizes)));
            format!(
                "stands {} proud{}",
                near(proud, sizes),
                clip.unwrap_or_default()
            )
        } else {
            format!(
                "tail {}, slack {}",
                near(stack.tail, sizes),
                near(stack.slack.value, sizes)
            )
        };
        accounts.push(format!(
            "{holder}rabbet {}, stack {}, {rest}",
            near(stack.depth, sizes),
            near(stack.total.value, sizes)
        ));
    }
    Stack {
        layers,
        slack: accounts.join(". "),
    }
}

/// A layer's word, numbered where there are several of its kind.
fn layer_name(layer: &sizing::StackLayer, sizes: &Sizes) -> String {
    let several = match layer.what {
        LayerKind::Mat | LayerKind::MatFillet => sizes.mats.len(),
        LayerKind::Glazing => sizes.glazing.len(),
        LayerKind::Backing => sizes.backing.len(),
        _ => 1,
    };
    let word = layer.what.word();
    if several > 1 {
        format!("{word} {}", layer.index + 1)
    } else {
        word.to_owned()
    }
}

/// A length no tool is set by: as it is where that is short, else at the nearest mark of the tape
/// with `≈` before it.
fn near(length: Length, sizes: &Sizes) -> String {
    const LONGEST: usize = 8;
    let exact = length.exact(sizes.unit());
    if exact.chars().count() <= LONGEST {
        exact
    } else {
        about(length, sizes.tape())
    }
}

/// A length at the nearest mark of the tape, with `≈` where it does not lie on one.
fn about(length: Length, tape: Tape) -> String {
    let printed = length.on_tape(tape, Toward::Nearest);
    if printed.rounding == Rounding::Exact {
        printed.text
    } else {
        format!("≈ {}", printed.text)
    }
}

fn mat_cuts(sizes: &Sizes, tape: Tape) -> Vec<MatCut> {
    let mut cuts = Vec::new();
    let set = |length: Length| plain(length, tape, Toward::Nearest);
    for setup in &sizes.setups {
        let windows = sizes.mats[setup.mat].windows.len();
        let opening = if windows > 1 {
            format!("Mat {}, window {}", setup.mat + 1, setup.window + 1)
        } else {
            format!("Mat {}", setup.mat + 1)
        };
        let bevel = match setup.bevel {
            Bevel::Normal => degrees(setup.angle),
            Bevel::Reverse => format!("{} reverse", degrees(setup.angle)),
            Bevel::Square => "square".to_owned(),
        };
        match &setup.cuts {
            Cuts::Straight(straight) => {
                for (order, cut) in (1..).zip(straight) {
                    cuts.push(MatCut {
                        opening: opening.clone(),
                        order,
                        side: cut.side.word().to_owned(),
                        guide: set(cut.guide.value),
                        start: set(cut.start.value),
                        stop: set(cut.stop.value),
                        overcut: set(cut.overcut.value),
                        bevel: bevel.clone(),
                    });
                }
            }
            Cuts::LaidOut { left, top, size } => cuts.push(MatCut {
                opening,
                order: 1,
                side: format!("laid out, {} × {}", set(size.width), set(size.height)),
                guide: set(*left),
                start: set(*top),
                stop: String::new(),
                overcut: String::new(),
                bevel,
            }),
        }
    }
    cuts
}

fn steps(job: &Job, sizes: &Sizes) -> Vec<Step> {
    sizing::steps(job, sizes)
        .into_iter()
        .map(|step| Step {
            step: step.text,
            numbers: String::new(),
            minutes: step
                .minutes
                .and_then(|minutes| u32::try_from(minutes).ok())
                .unwrap_or(0),
            caution: step.caution.map(|words| StepCaution {
                severity: Severity::Mind,
                words: words.to_owned(),
            }),
        })
        .collect()
}

fn caution(fault: &sizing::Fault) -> Caution {
    Caution {
        severity: match fault.severity {
            sizing::Severity::Refuse => Severity::Stop,
            sizing::Severity::Warn => Severity::Mind,
        },
        what: format!("{}: {}", fault.part, fault.found),
        how_much: fault.allowed.clone(),
        why: String::new(),
        cure: fault.cure.clone(),
    }
}
