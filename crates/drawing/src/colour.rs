//! Colours of materials and of the drafting table.

/// A colour, each channel from 0 to 255.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Colour(pub [u8; 3]);

/// The sheet.
pub(crate) const PAPER: Colour = Colour([0xfb, 0xfa, 0xf6]);
/// Edges, sizes and words.
pub(crate) const INK: Colour = Colour([0x1e, 0x27, 0x2b]);
/// Dimension lines and captions; 5.9 : 1 on the paper.
pub(crate) const PENCIL: Colour = Colour([0x56, 0x60, 0x66]);
/// A mat whose colour is not known.
pub(crate) const BOARD: Colour = Colour([0xf1, 0xee, 0xe5]);
/// A board's core whose colour is not known.
pub(crate) const CORE: Colour = Colour([0xfb, 0xfa, 0xf5]);
/// A moulding whose colour is not known.
pub(crate) const WOOD: Colour = Colour([0xc3, 0xa8, 0x7e]);
/// Paper of the art where there is no picture.
pub(crate) const BLANK: Colour = Colour([0xf6, 0xf4, 0xee]);
/// Cloth whose colour is not known.
pub(crate) const CLOTH: Colour = Colour([0xe6, 0xdf, 0xd0]);
/// Metal: clips, points, hangers.
pub(crate) const METAL: Colour = Colour([0x8d, 0x97, 0x9c]);
/// The dark of a gap one looks into.
pub(crate) const GAP: Colour = Colour([0x3a, 0x3d, 0x3e]);

impl Colour {
    /// Reads `#rrggbb`; none where it is written otherwise.
    pub fn read(text: &str) -> Option<Self> {
        let digits = text
            .strip_prefix('#')
            .filter(|digits| digits.len() == 6 && digits.is_ascii())?;
        let channel = |k: usize| u8::from_str_radix(&digits[k..k + 2], 16).ok();
        Some(Self([channel(0)?, channel(2)?, channel(4)?]))
    }

    /// The colour of this text, else of the other, else the last resort.
    pub fn first(own: Option<&str>, other: Option<&str>, last: Self) -> Self {
        own.and_then(Self::read)
            .or_else(|| other.and_then(Self::read))
            .unwrap_or(last)
    }

    /// This share of the way to another colour.
    pub fn toward(self, other: Self, share: f64) -> Self {
        let share = share.clamp(0.0, 1.0);
        let mix = |k: usize| {
            let (a, b) = (f64::from(self.0[k]), f64::from(other.0[k]));
            channel(a + (b - a) * share)
        };
        Self([mix(0), mix(1), mix(2)])
    }

    /// The colour under more light (above 1) or less (below 1).
    pub fn lit(self, light: f64) -> Self {
        if light >= 1.0 {
            self.toward(Self([255; 3]), (light - 1.0).min(1.0))
        } else {
            self.toward(Self([0; 3]), (1.0 - light).min(1.0))
        }
    }

    /// How light it looks, from 0 to 1: the luma of ITU-R BT.709.
    pub fn luma(self) -> f64 {
        let [r, g, b] = self.0.map(f64::from);
        (0.2126 * r + 0.7152 * g + 0.0722 * b) / 255.0
    }

    /// Its grey.
    pub fn grey(self) -> Self {
        Self([channel(self.luma() * 255.0); 3])
    }

    /// As SVG writes it.
    pub fn hex(self) -> String {
        let [r, g, b] = self.0;
        format!("#{r:02x}{g:02x}{b:02x}")
    }
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "clamped to a channel's range"
)]
fn channel(value: f64) -> u8 {
    value.round().clamp(0.0, 255.0) as u8
}
