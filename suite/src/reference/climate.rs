//! Air, cold walls, packages, sheets, windows.

use conservation::attachment::Sheet;
use conservation::climate::{
    Air, Buffer, after_shrinking, cold_surface, half_time, moist_air, sheet_change,
};
use measure::Size;
use trade::{Settings, Units};
use working::{Stated, Working};

use super::answers::{Answers, asked, comes_out, number, refused, yes};
use super::kinds::Kind;
use super::row::Row;
use super::tolerance::{EXACT, by, part};

const SAME: &str = "the same equations as the reference library, printed so";
const MOVES: &str = "the table prints four decimals of a millimetre";

pub(super) static KINDS: &[Kind] = &[
    Kind {
        file: "psychrometric_cases.csv",
        inputs: &["temperature_C", "relative_humidity_pct", "pressure_Pa"],
        outputs: &[
            ("saturation_pressure_Pa", by(5.1e-4, SAME)),
            ("vapour_pressure_Pa", by(5.1e-4, SAME)),
            (
                "dew_point_C",
                by(
                    1e-3,
                    "the library stops its search at a thousandth of a degree",
                ),
            ),
            (
                "wet_bulb_C",
                by(
                    1e-3,
                    "the library stops its search at a thousandth of a degree",
                ),
            ),
            ("humidity_ratio_g_per_kg", by(5.1e-6, SAME)),
            ("absolute_humidity_g_per_m3", by(5.1e-5, SAME)),
            (
                "dew_point_check_C",
                by(8e-3, "a real gas, which differs by up to 0.007 K"),
            ),
        ],
        answer: air,
    },
    Kind {
        file: "cold_wall_cases.csv",
        inputs: &["room_C", "room_rh_pct", "surface_C"],
        outputs: &[
            ("dew_point_C", by(1.5e-3, SAME)),
            ("rh_at_surface_pct", by(5.1e-4, SAME)),
            ("condenses", EXACT),
            ("mould_risk", EXACT),
        ],
        answer: cold_wall,
    },
    Kind {
        file: "humidity_half_time_cases.csv",
        inputs: &[
            "temperature_C",
            "M_g_per_kg_per_pctRH",
            "B_kg_per_m3",
            "N_air_changes_per_day",
        ],
        outputs: &[
            (
                "half_time_simple_d",
                part(1e-2, "the rule's 4 stands for 4.01"),
            ),
            (
                "half_time_full_d",
                part(1e-2, "the rule's 4 stands for 4.01"),
            ),
        ],
        answer: package,
    },
    Kind {
        file: "sheet_movement_cases.csv",
        inputs: &[
            "material",
            "length_mm",
            "alpha_per_K",
            "delta_T_K",
            "beta_pct_per_pctRH",
            "delta_RH_pct",
        ],
        outputs: &[("change_mm", by(1e-4, MOVES))],
        answer: sheet,
    },
    Kind {
        file: "window_cover_cases.csv",
        inputs: &[
            "sheet_w_mm",
            "sheet_h_mm",
            "cover_mm",
            "beta_w_pct_per_pctRH",
            "beta_h_pct_per_pctRH",
            "rh_change_pct",
        ],
        outputs: &[
            (
                "width_change_mm",
                by(6e-4, "the table prints three decimals"),
            ),
            (
                "height_change_mm",
                by(6e-4, "the table prints three decimals"),
            ),
            (
                "side_cover_left_mm",
                by(6e-4, "the table prints three decimals"),
            ),
            (
                "bottom_cover_left_mm",
                by(6e-4, "the table prints three decimals"),
            ),
        ],
        answer: window,
    },
];

fn air(row: &Row) -> Result<Answers, String> {
    let air = Air {
        celsius: asked(row.number("temperature_C")?, "°C"),
        humidity: asked(row.number("relative_humidity_pct")?, "% RH"),
        pressure: asked(row.number("pressure_Pa")?, "Pa"),
    };
    let mut working = Working::new();
    let found = moist_air(&air, &mut working).map_err(refused)?;
    comes_out(&working)?;
    let dew = found.dew_point.value.value();
    Ok(vec![
        number("saturation_pressure_Pa", found.saturation.value.value()),
        number("vapour_pressure_Pa", found.vapour.value.value()),
        number("dew_point_C", dew),
        number("wet_bulb_C", found.wet_bulb.value.value()),
        number("humidity_ratio_g_per_kg", found.ratio.value.value() * 1e3),
        number("absolute_humidity_g_per_m3", found.absolute.value.value()),
        number("dew_point_check_C", dew),
    ])
}

fn cold_wall(row: &Row) -> Result<Answers, String> {
    let room = Air::asked(row.number("room_C")?, row.number("room_rh_pct")?);
    let surface = asked(row.number("surface_C")?, "°C");
    let shop = Settings::defaults(Units::Millimetres);
    let mut working = Working::new();
    let found = cold_surface(&room, surface, &shop, &mut working).map_err(refused)?;
    comes_out(&working)?;
    Ok(vec![
        number("dew_point_C", found.air.dew_point.value.value()),
        number("rh_at_surface_pct", found.humidity.value.value()),
        yes("condenses", found.condenses.value),
        yes("mould_risk", found.moulds.value),
    ])
}

fn package(row: &Row) -> Result<Answers, String> {
    let package = Buffer {
        reservoir: asked(row.number("M_g_per_kg_per_pctRH")?, "g/(kg % RH)"),
        buffer: asked(row.number("B_kg_per_m3")?, "kg/m³"),
        changes: asked(row.number("N_air_changes_per_day")?, "1/d"),
        celsius: asked(row.number("temperature_C")?, "°C"),
    };
    let mut working = Working::new();
    let found = half_time(&package, &mut working).map_err(refused)?;
    comes_out(&working)?;
    Ok(vec![
        number("half_time_simple_d", found.simple.value.value()),
        number("half_time_full_d", found.full.value.value()),
    ])
}

fn sheet(row: &Row) -> Result<Answers, String> {
    let warmth = (
        asked(row.number("alpha_per_K")?, "1/K"),
        asked(row.number("delta_T_K")?, "K"),
    );
    let damp = (
        asked(row.number("beta_pct_per_pctRH")?, "% per % RH"),
        asked(row.number("delta_RH_pct")?, "% RH"),
    );
    let length = Stated::job(row.mm("length_mm")?);
    let mut working = Working::new();
    let found = sheet_change(length, warmth, damp, &mut working).map_err(refused)?;
    comes_out(&working)?;
    Ok(vec![number("change_mm", found.value.approx_mm())])
}

fn window(row: &Row) -> Result<Answers, String> {
    let sheet = Size::new(row.mm("sheet_w_mm")?, row.mm("sheet_h_mm")?);
    let damp = [
        asked(row.number("beta_w_pct_per_pctRH")?, "% per % RH"),
        asked(row.number("beta_h_pct_per_pctRH")?, "% per % RH"),
    ];
    let drier = asked(row.number("rh_change_pct")?, "% RH");
    let cover = Stated::job(row.mm("cover_mm")?);
    let mut working = Working::new();
    let found =
        after_shrinking(Sheet::asked(sheet), cover, damp, drier, &mut working).map_err(refused)?;
    comes_out(&working)?;
    Ok(vec![
        number("width_change_mm", found.narrower.value.approx_mm()),
        number("height_change_mm", found.shorter.value.approx_mm()),
        number("side_cover_left_mm", found.side.value.approx_mm()),
        number("bottom_cover_left_mm", found.bottom.value.approx_mm()),
    ])
}
