//! Colour: sRGB to CIELAB under daylight, and how far two colours differ.

use palette::chromatic_adaptation::AdaptFromUnclamped;
use palette::color_difference::Ciede2000;
use palette::white_point::{D50, D65};
use palette::{FromColor, LinSrgb, Srgb, Xyz};

/// A colour in CIELAB.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lab {
    /// Lightness, 0 black to 100 white.
    pub l: f64,
    /// Green below zero, red above.
    pub a: f64,
    /// Blue below zero, yellow above.
    pub b: f64,
}

/// A colour in sRGB, as screens and files have it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Rgb {
    /// Red.
    pub red: u8,
    /// Green.
    pub green: u8,
    /// Blue.
    pub blue: u8,
}

/// A text that is no colour.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("“{text}” is no colour; write it #rrggbb, as in #7a3b32")]
pub struct NoColour {
    /// As written.
    pub text: String,
}

impl Rgb {
    /// Reads `#rrggbb`.
    ///
    /// Errors: anything else.
    pub fn read(text: &str) -> Result<Self, NoColour> {
        let refuse = || NoColour {
            text: text.to_owned(),
        };
        let digits = text.strip_prefix('#').ok_or_else(refuse)?;
        let is_hex = digits.bytes().all(|digit| digit.is_ascii_hexdigit());
        if digits.len() != 6 || !is_hex {
            return Err(refuse());
        }
        let number = u32::from_str_radix(digits, 16).map_err(|_| refuse())?;
        let [_, red, green, blue] = number.to_be_bytes();
        Ok(Self { red, green, blue })
    }

    /// Its red, green and blue as amounts of light, 0 to 1.
    ///
    /// Source: IEC 61966-2-1 transfer function (from memory).
    pub fn linear(self) -> [f64; 3] {
        let linear = self.in_light();
        [linear.red, linear.green, linear.blue]
    }

    /// In CIELAB, white D65: as screens are set.
    ///
    /// Source: IEC 61966-2-1 and CIE 1976; checked in `suite/ref/reference`.
    pub fn lab_d65(self) -> Lab {
        let lab = palette::Lab::<D65, f64>::from_color(self.in_light());
        Lab {
            l: lab.l,
            a: lab.a,
            b: lab.b,
        }
    }

    /// In CIELAB, white D50: as print shops' tools show it, adapted by Bradford's method.
    pub fn lab_d50(self) -> Lab {
        let xyz = Xyz::<D65, f64>::from_color(self.in_light());
        let adapted = Xyz::<D50, f64>::adapt_from_unclamped(xyz);
        let lab = palette::Lab::<D50, f64>::from_color(adapted);
        Lab {
            l: lab.l,
            a: lab.a,
            b: lab.b,
        }
    }

    fn in_light(self) -> LinSrgb<f64> {
        Srgb::new(self.red, self.green, self.blue)
            .into_format::<f64>()
            .into_linear()
    }
}

/// How far two colours differ as people see it, CIEDE2000 with all weights 1.
///
/// Units:  1 is about what a careful eye can tell side by side.
/// Source: Sharma, Wu and Dalal 2005; their 34 pairs are checked in `suite/ref/reference`.
/// Example: (50, 2.6772, −79.7751) and (50, 0, −82.7485): 2.0425.
pub fn difference(one: Lab, other: Lab) -> f64 {
    let seen = |lab: Lab| palette::Lab::<D65, f64>::new(lab.l, lab.a, lab.b);
    seen(one).difference(seen(other))
}

#[cfg(test)]
mod tests;
