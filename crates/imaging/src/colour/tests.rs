//! Published and computed values; the whole tables stand in `suite/ref/reference`.

use super::{Lab, NoColour, Rgb, difference};

/// First pair of Sharma, Wu and Dalal 2005, Table 1.
#[test]
fn the_first_published_pair_differs_by_2_0425() {
    let seen = |a: f64, b: f64| Lab { l: 50.0, a, b };
    let found = difference(seen(2.6772, -79.7751), seen(0.0, -82.7485));
    assert!((found - 2.0425).abs() < 0.000_05, "{found}");
    let back = difference(seen(0.0, -82.7485), seen(2.6772, -79.7751));
    assert!((found - back).abs() < 1e-12, "either way round");
}

#[test]
fn white_is_white_under_either_daylight() {
    let white = Rgb::read("#ffffff").expect("it is a colour");
    for lab in [white.lab_d65(), white.lab_d50()] {
        assert!((lab.l - 100.0).abs() < 0.01, "{lab:?}");
        assert!(lab.a.abs() < 0.02 && lab.b.abs() < 0.02, "{lab:?}");
    }
}

#[test]
fn what_is_no_colour_is_refused() {
    for text in [
        "",
        "7a3b32",
        "#7a3b3",
        "#7a3b3g",
        "#+a3b32",
        "#7a3b32ff",
        "#é3b32",
    ] {
        let refused = Rgb::read(text).expect_err(text);
        assert_eq!(
            refused,
            NoColour {
                text: text.to_owned()
            }
        );
    }
}
