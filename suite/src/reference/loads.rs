//! Loads: wire, working loads, hooks, screws, rails.

use conservation::Fact;
use hanging::screw::{lateral, lateral_group, shank, withdrawal};
use hanging::{Hang, Rail, bears, force, hook_pull, sag, wire_run};
use trade::{Settings, Units};
use working::{Figure, Stated, Working};

use super::answers::{Answers, asked, comes_out, number, refused, yes};
use super::kinds::Kind;
use super::row::Row;
use super::tolerance::{EXACT, Tolerance, by, part};

const FOUR: Tolerance = by(1.1e-4, "the table prints four decimals");
const QUANTUM: Tolerance = part(
    2e-5,
    "a rise of a few millimetres is held to 1/16 000 mm, and the pull goes against it",
);
const SHANK: Tolerance = part(
    5e-5,
    "a shank is held to 1/16 000 mm, and its square counts",
);

pub(super) static KINDS: &[Kind] = &[
    Kind {
        file: "wire_tension_cases.csv",
        inputs: &[
            "mass_kg",
            "ring_span_mm",
            "rise_mm",
            "hooks",
            "hook_spacing_mm",
        ],
        outputs: &[
            ("angle_deg", FOUR),
            ("tension_N", QUANTUM),
            ("inward_pull_N", QUANTUM),
            ("tension_over_weight", QUANTUM),
        ],
        answer: wire,
    },
    Kind {
        file: "working_load_cases.csv",
        inputs: &[
            "breaking_strength_N",
            "termination_efficiency",
            "design_factor",
            "tension_N",
        ],
        outputs: &[
            ("working_load_N", by(1e-6, "a product")),
            ("ok", EXACT),
            (
                "actual_factor",
                by(5.1e-5, "the table prints four decimals"),
            ),
        ],
        answer: working_load,
    },
    Kind {
        file: "wall_hook_cases.csv",
        inputs: &[
            "mass_kg",
            "frame_height_mm",
            "depth_mm",
            "hook_height_above_foot_mm",
        ],
        outputs: &[
            ("downward_N", by(1.1e-4, "the table prints four decimals")),
            ("outward_N", by(5.1e-5, "the table prints four decimals")),
            (
                "resultant_angle_deg",
                by(5.1e-4, "the table prints three decimals"),
            ),
        ],
        answer: hook,
    },
    Kind {
        file: "screw_withdrawal_cases.csv",
        inputs: &["specific_gravity", "gauge", "thread_in"],
        outputs: &[
            ("diameter_in", by(1e-5, "a shank is held to 1/16 000 mm")),
            (
                "ultimate_lbf",
                part(
                    5e-4,
                    "15700 psi and 108.25 N/mm² are one number, each rounded",
                ),
            ),
            ("allowable_lbf", part(5e-4, "the same")),
            (
                "ultimate_N",
                part(
                    5e-4,
                    "15700 psi and 108.25 N/mm² are one number, each rounded",
                ),
            ),
            (
                "ultimate_over_allowable",
                by(1e-4, "the table prints four decimals"),
            ),
        ],
        answer: pulled_out,
    },
    Kind {
        file: "screw_lateral_cases.csv",
        inputs: &["group", "sg_min", "sg_max", "gauge"],
        outputs: &[
            ("diameter_mm", by(5.1e-5, "the table prints four decimals")),
            ("lateral_load_N", SHANK),
        ],
        answer: sideways,
    },
    Kind {
        file: "rail_deflection_cases.csv",
        inputs: &["E_MPa", "width_b_mm", "depth_d_mm", "span_L_mm", "load_N"],
        outputs: &[
            (
                "sag_simply_supported_mm",
                by(5e-5, "held to 1/16 000 mm, printed to five decimals"),
            ),
            (
                "sag_fixed_ends_mm",
                by(5e-5, "held to 1/16 000 mm, printed to five decimals"),
            ),
            ("span_over_sag", part(5e-4, "the table prints one decimal")),
            (
                "bending_stress_MPa",
                by(5.1e-5, "the table prints four decimals"),
            ),
        ],
        answer: rail,
    },
];

fn wire(row: &Row) -> Result<Answers, String> {
    let apart = match row.text("hooks") {
        "1" => None,
        "2" => Some(Stated::job(row.mm("hook_spacing_mm")?)),
        other => return Err(format!("hooks “{other}” are neither 1 nor 2")),
    };
    let hang = Hang {
        weight: Stated::job(row.kilograms("mass_kg")?),
        rings_apart: Stated::job(row.mm("ring_span_mm")?),
        rise: Stated::job(row.mm("rise_mm")?),
        hooks_apart: apart,
    };
    let mut working = Working::new();
    let run = wire_run(&hang, &mut working).map_err(refused)?;
    let tension = force(run.tension.into(), "tension", &mut working)
        .value
        .value();
    let inward = force(run.inward.into(), "inward", &mut working)
        .value
        .value();
    let weight = force(hang.weight, "weight", &mut working).value.value();
    comes_out(&working)?;
    Ok(vec![
        number("angle_deg", run.angle.value.approx_degrees()),
        number("tension_N", tension),
        number("inward_pull_N", inward),
        number("tension_over_weight", tension / weight),
    ])
}

fn working_load(row: &Row) -> Result<Answers, String> {
    let mut working = Working::new();
    let found = bears(
        asked(row.number("breaking_strength_N")?, "N"),
        asked(row.number("termination_efficiency")?, ""),
        asked(row.number("design_factor")?, ""),
        asked(row.number("tension_N")?, "N"),
        &mut working,
    )
    .map_err(refused)?;
    comes_out(&working)?;
    Ok(vec![
        number("working_load_N", found.load.value.value()),
        yes("ok", found.bears.value),
        number("actual_factor", found.actual.value.value()),
    ])
}

fn hook(row: &Row) -> Result<Answers, String> {
    let height = row.mm("hook_height_above_foot_mm")?;
    if height > row.mm("frame_height_mm")? {
        return Err("the hook stands above the frame".to_owned());
    }
    let mut working = Working::new();
    let found = hook_pull(
        Stated::job(row.kilograms("mass_kg")?),
        Stated::job(row.mm("depth_mm")?),
        Stated::job(height),
        &mut working,
    )
    .map_err(refused)?;
    comes_out(&working)?;
    Ok(vec![
        number("downward_N", found.downward.value.value()),
        number("outward_N", found.outward.value.value()),
        number("resultant_angle_deg", found.slant.value.approx_degrees()),
    ])
}

fn pulled_out(row: &Row) -> Result<Answers, String> {
    let mut working = Working::new();
    let shank = shank(Stated::job(row.whole("gauge")?), &mut working).map_err(refused)?;
    let found = withdrawal(
        asked(row.number("specific_gravity")?, ""),
        shank.into(),
        Stated::job(row.inches("thread_in")?),
        &mut working,
    )
    .map_err(refused)?;
    comes_out(&working)?;
    let pound = measure::Mass::POUND.approx_kg() * Fact::named("gravity").low();
    let (breaks, allowed) = (found.ultimate.value.value(), found.allowable.value.value());
    Ok(vec![
        number("diameter_in", shank.value.approx_inches()),
        number("ultimate_lbf", breaks / pound),
        number("allowable_lbf", allowed / pound),
        number("ultimate_N", breaks),
        number("ultimate_over_allowable", breaks / allowed),
    ])
}

fn sideways(row: &Row) -> Result<Answers, String> {
    let (from, to) = (row.number("sg_min")?, row.number("sg_max")?);
    let softwood = row.text("group") == "softwood";
    let group = lateral_group(softwood, Figure::of(from, "")).map_err(refused)?;
    if group.group != row.text("group") || (group.sg_max - to).abs() > 1e-9 {
        return Err(format!(
            "the program has no {} from {from} to {to}",
            row.text("group")
        ));
    }
    let mut working = Working::new();
    let shank = shank(Stated::job(row.whole("gauge")?), &mut working).map_err(refused)?;
    let load = lateral(group, shank.into(), &mut working).map_err(refused)?;
    comes_out(&working)?;
    Ok(vec![
        number("diameter_mm", shank.value.approx_mm()),
        number("lateral_load_N", load.value.value()),
    ])
}

fn rail(row: &Row) -> Result<Answers, String> {
    let length = |column| row.mm(column).map(Stated::job);
    let rail = Rail {
        modulus: asked(row.number("E_MPa")?, "N/mm²"),
        width: length("width_b_mm")?,
        depth: length("depth_d_mm")?,
        span: length("span_L_mm")?,
        load: asked(row.number("load_N")?, "N"),
        helped: None,
    };
    let shop = Settings::defaults(Units::Millimetres);
    let mut working = Working::new();
    let found = sag(&rail, &shop, &mut working).map_err(refused)?;
    comes_out(&working)?;
    let most = found.free.value.approx_mm();
    Ok(vec![
        number("sag_simply_supported_mm", most),
        number("sag_fixed_ends_mm", found.fixed.value.approx_mm()),
        number("span_over_sag", rail.span.value.approx_mm() / most),
        number("bending_stress_MPa", found.stress.value.value()),
    ])
}
