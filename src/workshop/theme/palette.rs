//! Every colour of the panels.

#![expect(clippy::disallowed_methods, reason = "this is where the window's colours are made")]

use crate::workshop::view::settings::{Contrast, Shade};
use crate::workshop::view::tray::End;
use egui::Color32;

/// The colours of one shade.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Palette {
    /// Behind everything.
    pub bench: Color32,
    /// What text stands on.
    pub card: Color32,
    /// What can be written into.
    pub field: Color32,
    /// Text.
    pub ink: Color32,
    /// Text that matters less.
    pub faint: Color32,
    /// Lines and edges.
    pub rule: Color32,
    /// A button.
    pub button: Color32,
    /// A button under the pointer or in focus.
    pub button_lit: Color32,
    /// Behind chosen text, and a button that is chosen.
    pub chosen: Color32,
    /// Bars, the rule under a heading and under what is chosen, the edge of what has the focus.
    pub accent: Color32,
    /// Text of a caution.
    pub caution: Color32,
    /// What it stands on.
    pub caution_card: Color32,
    /// Text of a breach or a problem.
    pub breach: Color32,
    /// What it stands on.
    pub breach_card: Color32,
    /// Text of what went well.
    pub good: Color32,
}

const fn rgb(hex: u32) -> Color32 {
    let [_, red, green, blue] = hex.to_be_bytes();
    Color32::from_rgb(red, green, blue)
}

const LIGHT: Palette = Palette {
    bench: rgb(0xDD_DA_D0),
    card: rgb(0xF8_F6_EF),
    field: rgb(0xFF_FF_FF),
    ink: rgb(0x1D_22_1E),
    faint: rgb(0x4C_53_4C),
    rule: rgb(0xB9_B5_A6),
    button: rgb(0xE8_E4_D8),
    button_lit: rgb(0xD6_DF_D2),
    chosen: rgb(0xC2_DD_D0),
    accent: rgb(0x1B_5A_4A),
    caution: rgb(0x6A_43_00),
    caution_card: rgb(0xF6_E7_C3),
    breach: rgb(0x8A_1C_12),
    breach_card: rgb(0xF7_DD_D6),
    good: rgb(0x1C_5A_2B),
};

const DARK: Palette = Palette {
    bench: rgb(0x13_16_14),
    card: rgb(0x1F_23_20),
    field: rgb(0x12_15_13),
    ink: rgb(0xEC_E9_DF),
    faint: rgb(0xB4_B8_AD),
    rule: rgb(0x47_4E_48),
    button: rgb(0x2E_35_30),
    button_lit: rgb(0x3B_49_41),
    chosen: rgb(0x26_48_3D),
    accent: rgb(0x86_CB_B5),
    caution: rgb(0xF3_C9_77),
    caution_card: rgb(0x38_2D_14),
    breach: rgb(0xFF_A5_96),
    breach_card: rgb(0x45_23_1E),
    good: rgb(0x9B_D9_A6),
};

/// The fill of an end and the ink on it, in either shade: a lead keeps its colour, and its letter can be read.
#[must_use]
pub const fn end_colors(end: End) -> [Color32; 2] {
    match end {
        End::Red => [rgb(0xA2_1C_14), rgb(0xFF_F4_EE)],
        End::Black => [rgb(0x1A_1D_1B), rgb(0xF4_F2_EA)],
    }
}

/// White and black, and colours so far from what they stand on that a faded screen or tired eyes still tell them apart.
const LIGHT_HIGH: Palette = Palette {
    bench: rgb(0xFF_FF_FF),
    card: rgb(0xFF_FF_FE),
    field: rgb(0xFF_FF_FF),
    ink: rgb(0x00_00_00),
    faint: rgb(0x26_2B_27),
    rule: rgb(0x3C_42_3D),
    button: rgb(0xF0_F0_EC),
    button_lit: rgb(0xDD_EE_E6),
    chosen: rgb(0xC6_E8_DA),
    accent: rgb(0x00_40_33),
    caution: rgb(0x46_2A_00),
    caution_card: rgb(0xFF_F0_C8),
    breach: rgb(0x6E_05_00),
    breach_card: rgb(0xFF_E6_E0),
    good: rgb(0x00_43_14),
};

const DARK_HIGH: Palette = Palette {
    bench: rgb(0x00_00_00),
    card: rgb(0x01_01_01),
    field: rgb(0x00_00_00),
    ink: rgb(0xFF_FF_FF),
    faint: rgb(0xE2_E6_DE),
    rule: rgb(0xA8_B0_A9),
    button: rgb(0x16_1A_17),
    button_lit: rgb(0x1E_33_2A),
    chosen: rgb(0x0E_3F_30),
    accent: rgb(0xA4_F0_D8),
    caution: rgb(0xFF_DD_94),
    caution_card: rgb(0x24_1A_00),
    breach: rgb(0xFF_C2_B8),
    breach_card: rgb(0x33_10_0A),
    good: rgb(0xB6_F5_C2),
};

impl Palette {
    /// The colours of a shade in a contrast.
    #[must_use]
    pub const fn of(shade: Shade, contrast: Contrast) -> &'static Self {
        match (shade, contrast) {
            (Shade::Light, Contrast::Ordinary) => &LIGHT,
            (Shade::Dark, Contrast::Ordinary) => &DARK,
            (Shade::Light, Contrast::High) => &LIGHT_HIGH,
            (Shade::Dark, Contrast::High) => &DARK_HIGH,
        }
    }
}

/// The colours that something is drawn in: no two palettes have the same card.
#[must_use]
pub fn palette(ui: &egui::Ui) -> &'static Palette {
    let visuals = ui.visuals();
    let shade = if visuals.dark_mode { Shade::Dark } else { Shade::Light };
    let high = Palette::of(shade, Contrast::High);
    if visuals.window_fill == high.card { high } else { Palette::of(shade, Contrast::Ordinary) }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Least contrast of running text: the stricter level of the Web Content Accessibility
    /// Guidelines 2.2, 1.4.6.
    const TEXT: f64 = 7.0;
    /// Least contrast of a sign, an edge that says something, or a bar: 1.4.11 of the same.
    const SIGN: f64 = 3.0;

    fn luminance(color: Color32) -> f64 {
        let linear = |channel: u8| {
            let share = f64::from(channel) / 255.0;
            if share <= 0.040_45 {
                share / 12.92
            } else {
                crate::numerics::elementary::pow((share + 0.055) / 1.055, 2.4)
            }
        };
        0.2126 * linear(color.r()) + 0.7152 * linear(color.g()) + 0.0722 * linear(color.b())
    }

    fn contrast(one: Color32, other: Color32) -> f64 {
        let (one, other) = (luminance(one), luminance(other));
        (one.max(other) + 0.05) / (one.min(other) + 0.05)
    }

    #[test]
    fn published_contrast_of_black_and_white_is_21() {
        assert!((contrast(Color32::BLACK, Color32::WHITE) - 21.0).abs() < 1e-9);
    }

    #[test]
    fn limit_the_palettes_are_told_apart_by_their_cards() {
        for shade in [Shade::Light, Shade::Dark] {
            let [ordinary, high] = [Contrast::Ordinary, Contrast::High]
                .map(|contrast| Palette::of(shade, contrast).card);
            assert_ne!(ordinary, high);
        }
    }

    #[test]
    fn published_high_contrast_leaves_no_text_below_the_stricter_level_and_no_edge_unseen() {
        for palette in [&LIGHT_HIGH, &DARK_HIGH] {
            let grounds = [
                palette.bench,
                palette.card,
                palette.field,
                palette.button,
                palette.button_lit,
                palette.chosen,
                palette.caution_card,
                palette.breach_card,
            ];
            let texts = [
                palette.ink,
                palette.faint,
                palette.accent,
                palette.caution,
                palette.breach,
                palette.good,
            ];
            for on in grounds {
                for text in texts {
                    let found = contrast(text, on);
                    assert!(found >= TEXT, "{text:?} on {on:?}: {found}");
                }
                // The greatest that there is: 21.
                assert!(contrast(palette.ink, on) >= 10.0, "ink on {on:?}");
            }
            for on in [palette.bench, palette.card, palette.field, palette.button] {
                assert!(contrast(palette.rule, on) >= TEXT, "edge on {on:?}");
            }
        }
    }

    #[test]
    fn every_text_can_be_read_on_what_it_stands_on() {
        for palette in [&LIGHT, &DARK, &LIGHT_HIGH, &DARK_HIGH] {
            for (text, on) in [
                (palette.ink, palette.card),
                (palette.ink, palette.bench),
                (palette.ink, palette.field),
                (palette.ink, palette.button),
                (palette.ink, palette.button_lit),
                (palette.faint, palette.card),
                (palette.faint, palette.field),
                (palette.ink, palette.chosen),
                (palette.accent, palette.card),
                (palette.caution, palette.caution_card),
                (palette.breach, palette.breach_card),
                (palette.breach, palette.card),
                (palette.good, palette.card),
            ] {
                assert!(contrast(text, on) >= TEXT, "{text:?} on {on:?}: {}", contrast(text, on));
            }
            for (text, on) in [(palette.faint, palette.bench), (palette.faint, palette.button)] {
                assert!(contrast(text, on) >= 4.5, "{text:?} on {on:?}: {}", contrast(text, on));
            }
            for end in End::ALL {
                let [fill, ink] = end_colors(end);
                assert!(contrast(ink, fill) >= TEXT, "{end:?}: {}", contrast(ink, fill));
            }
            for on in [palette.card, palette.bench, palette.button, palette.field] {
                assert!(contrast(palette.accent, on) >= SIGN, "{on:?}");
                assert!(contrast(palette.faint, on) >= SIGN, "{on:?}");
            }
        }
    }
}
