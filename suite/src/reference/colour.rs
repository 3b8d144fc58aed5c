//! Colour.

use imaging::colour::{Lab, Rgb, difference};

use super::answers::{Answers, number, refused};
use super::kinds::Kind;
use super::row::Row;
use super::tolerance::{Tolerance, by};

const LIGHT: Tolerance = by(1e-6, "the table prints six decimals");
const D65: Tolerance = by(0.03, "matrix and white point are rounded differently");
const D50: Tolerance = by(0.1, "the same, and an adaptation between two whites");

pub(super) static KINDS: &[Kind] = &[
    Kind {
        file: "ciede2000_cases.csv",
        inputs: &["L1", "a1", "b1", "L2", "a2", "b2"],
        outputs: &[
            ("de00", by(5.0e-5, "published to four decimals")),
            (
                "de00_library",
                by(1e-6, "another program, printed to six decimals"),
            ),
        ],
        answer: pair,
    },
    Kind {
        file: "srgb_lab_cases.csv",
        inputs: &["hex"],
        outputs: &[
            ("linear_r", LIGHT),
            ("linear_g", LIGHT),
            ("linear_b", LIGHT),
            ("L_D65", D65),
            ("a_D65", D65),
            ("b_D65", D65),
            ("L_D50", D50),
            ("a_D50", D50),
            ("b_D50", D50),
        ],
        answer: screen,
    },
];

fn pair(row: &Row) -> Result<Answers, String> {
    let lab = |l, a, b| -> Result<Lab, String> {
        Ok(Lab {
            l: row.number(l)?,
            a: row.number(a)?,
            b: row.number(b)?,
        })
    };
    let found = difference(lab("L1", "a1", "b1")?, lab("L2", "a2", "b2")?);
    Ok(vec![number("de00", found), number("de00_library", found)])
}

fn screen(row: &Row) -> Result<Answers, String> {
    let rgb = Rgb::read(row.text("hex")).map_err(refused)?;
    let [r, g, b] = rgb.linear();
    let (day, print) = (rgb.lab_d65(), rgb.lab_d50());
    Ok(vec![
        number("linear_r", r),
        number("linear_g", g),
        number("linear_b", b),
        number("L_D65", day.l),
        number("a_D65", day.a),
        number("b_D65", day.b),
        number("L_D50", print.l),
        number("a_D50", print.a),
        number("b_D50", print.b),
    ])
}
