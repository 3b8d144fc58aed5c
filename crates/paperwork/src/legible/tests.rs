use super::{Legible, UNDRAWN};
use crate::kit::KIT;

fn check(typed: &str, printed: &str, replaced: bool) {
    let mut legible = Legible::new();
    assert_eq!(legible.line(typed, 60), printed, "{typed:?}");
    assert_eq!(legible.replaced, replaced, "{typed:?}");
}

#[test]
fn typed_text_becomes_one_printable_line() {
    check("plain", "plain", false);
    check(" two\n\tlines\u{0} ", "two lines", false);
    check("a\u{202e}b\u{200d}c", "abc", false);
    check("e\u{301}tude", "e\u{301}tude", false);
    check("春x", "☐x", true);
    check("春\u{301}", "☐", true);
    check(
        &"w".repeat(30),
        "wwwwwwwwwwwwww\u{200b}wwwwwwwwwwwwww\u{200b}ww",
        false,
    );
}

#[test]
fn a_long_line_says_how_much_is_left_out() {
    let line = Legible::new().line(&"ab ".repeat(40), 11);
    assert_eq!(line, "ab ab ab ab… (108 more letters in the job)");
}

#[test]
fn one_letter_fractions_are_written_out() {
    let size = |typed: &str| Legible::new().size(typed);
    assert_eq!(size("16⅞"), "16 7/8");
    assert_eq!(size("16 ⅜ × ½"), "16 3/8 × 1/2");
    assert_eq!(size("428.6"), "428.6");
}

#[test]
fn the_fonts_draw_whatever_a_ticket_needs() {
    let needed = "½¼¾⅛⅜⅝⅞×°−→✓·—–…“”‘’′″ÀÉÎÕÜÇßøåñšžłąęőűğıçćđéèêëïôœæ0123456789/";
    for letter in needed.chars().chain([UNDRAWN]) {
        let covered = KIT
            .fonts
            .iter()
            .any(|font| font.info().coverage.contains(u32::from(letter)));
        assert!(covered, "no vendored font draws {letter}");
    }
}

#[test]
fn sizes_are_read_in_the_sans_with_figures_of_one_width() {
    let sans = KIT
        .fonts
        .iter()
        .filter(|font| font.info().family == "Atkinson Hyperlegible Next");
    let mut weights = 0;
    for font in sans {
        weights += 1;
        let face = ttf_parser::Face::parse(font.data(), font.index()).unwrap();
        for letter in "0123456789/×°− ".chars() {
            assert!(face.glyph_index(letter).is_some(), "no {letter:?}");
        }
        let features = face.tables().gsub.unwrap().features;
        let tabular = ttf_parser::Tag::from_bytes(b"tnum");
        assert!(features.into_iter().any(|feature| feature.tag == tabular));
    }
    assert_eq!(weights, 2);
}
