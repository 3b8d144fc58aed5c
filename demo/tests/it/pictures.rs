//! Every picture is plain, small, and the same each time.

use demo::{PICTURES, picture};

/// Width and height of a picture's view box.
pub(super) fn view_box(text: &str) -> (i128, i128) {
    let (_, rest) = text.split_once("viewBox=\"0 0 ").expect("a view box");
    let (both, _) = rest.split_once('"').expect("its end");
    let (width, height) = both.split_once(' ').expect("two numbers");
    (
        width.parse().expect("a whole number"),
        height.parse().expect("a whole number"),
    )
}

#[test]
fn every_picture_is_small_and_draws_the_same_again() {
    for name in PICTURES {
        let bytes = picture(name).unwrap_or_else(|| panic!("{name} is not drawn"));
        assert!(bytes.len() < 40_000, "{name} is {} bytes", bytes.len());
        assert_eq!(picture(name), Some(bytes), "{name}");
    }
}

#[test]
fn no_picture_reaches_outside_itself() {
    for name in PICTURES {
        let text = String::from_utf8(picture(name).expect("a picture")).expect("text");
        for word in [
            "<script",
            "<text",
            "<image",
            "href",
            "<style",
            "<foreignObject",
            "NaN",
            "inf",
        ] {
            assert!(!text.contains(word), "{name} contains {word}");
        }
        // The one address is the name of the language.
        assert_eq!(text.matches("http").count(), 1, "{name}");
        for open in ["<g ", "<clipPath ", "<linearGradient ", "<radialGradient "] {
            let close = format!("</{}>", open[1..].trim_end());
            assert_eq!(
                text.matches(open).count(),
                text.matches(&close).count(),
                "{name}: {open}"
            );
        }
    }
}

#[test]
fn every_ink_that_is_used_is_there() {
    for name in PICTURES {
        let text = String::from_utf8(picture(name).expect("a picture")).expect("text");
        for used in text.split("url(#").skip(1) {
            let id = used.split(')').next().expect("an end");
            assert!(text.contains(&format!("id=\"{id}\"")), "{name} lacks {id}");
            assert!(
                id.starts_with(name.trim_end_matches(".svg")),
                "{name}: {id}"
            );
        }
    }
}

#[test]
fn a_name_without_a_picture_has_none() {
    for name in [
        "",
        "harbour",
        "harbour.png",
        "../harbour.svg",
        "HARBOUR.svg",
    ] {
        assert_eq!(picture(name), None, "{name}");
    }
}
