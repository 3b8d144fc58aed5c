//! The six inks, light and dark: contrast as WCAG 2.2 works it out (its definitions of relative
//! luminance and contrast ratio), AA for all that is read, AAA for what sizes are printed in.

const STYLES: &str = include_str!("../../assets/table.css");

/// The value of a token in the light, then in the dark.
fn token(name: &str) -> [[f64; 3]; 2] {
    let start = format!("--{name}: #");
    let mut found = STYLES.split(&start).skip(1).map(|rest| {
        [0, 2, 4].map(|k| f64::from(u8::from_str_radix(&rest[k..k + 2], 16).expect("a colour")))
    });
    [
        found.next().expect("the light one"),
        found.next().expect("the dark one"),
    ]
}

fn luminance(colour: [f64; 3]) -> f64 {
    let linear = |channel: f64| {
        let share = channel / 255.0;
        if share <= 0.04045 {
            share / 12.92
        } else {
            ((share + 0.055) / 1.055).powf(2.4)
        }
    };
    let [red, green, blue] = colour.map(linear);
    0.2126 * red + 0.7152 * green + 0.0722 * blue
}

fn contrast(one: [f64; 3], other: [f64; 3]) -> f64 {
    let (one, other) = (luminance(one), luminance(other));
    (one.max(other) + 0.05) / (one.min(other) + 0.05)
}

#[test]
fn every_ink_can_be_read_on_the_paper() {
    let paper = token("paper");
    for (ink, least) in [
        ("ink", 7.0),
        ("pencil", 4.5),
        ("verdigris", 4.5),
        ("oxide", 4.5),
        ("ochre", 4.5),
    ] {
        for (shade, ground) in ["light", "dark"].into_iter().zip(paper) {
            let ink_colour = token(ink)[usize::from(shade == "dark")];
            let found = contrast(ink_colour, ground);
            assert!(
                found >= least,
                "{ink} in the {shade}: {found:.2}, at least {least}"
            );
        }
    }
}

/// Black on white is 21 to 1, as the definition says.
#[test]
fn the_measure_itself_is_right() {
    assert!((contrast([0.0; 3], [255.0; 3]) - 21.0).abs() < 1e-9);
}
