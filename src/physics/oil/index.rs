//! Viscosity index by ASTM D2270: how little an oil thins with heat.
//!
//! Procedure A up to an index of 100, procedure B above. The reference oils L and H follow from the
//! viscosity at 100 °C by the parabolas that the standard gives beside its table; they meet the
//! table's figures to a few hundredths.

use crate::numerics::elementary::{log10, pow};

/// Parabolas of the reference oils: viscosity at 100 °C up to which a row holds [mm²/s], then a, b,
/// c of `L = a Y² + b Y + c` and d, e, f of `H = d Y² + e Y + f` (ASTM D2270, its table of
/// coefficients, read in two public programs that agree).
const REFERENCE_OILS: [(f64, [f64; 3], [f64; 3]); 16] = [
    (3.8, [1.14673, 1.7576, -0.109], [0.84155, 1.5521, -0.077]),
    (4.4, [3.38095, -15.4952, 33.196], [0.78571, 1.7929, -0.183]),
    (5.0, [2.5000, -7.2143, 13.812], [0.82143, 1.5679, 0.119]),
    (6.4, [0.10100, 16.6350, -45.469], [0.04985, 9.1613, -18.557]),
    (7.0, [3.35714, -23.5643, 78.466], [0.22619, 7.7369, -16.656]),
    (7.7, [0.01191, 21.4750, -72.870], [0.79762, -0.7321, 14.610]),
    (9.0, [0.41858, 16.1558, -56.040], [0.05794, 10.5156, -28.240]),
    (12.0, [0.88779, 7.5527, -16.600], [0.26665, 6.7015, -10.810]),
    (15.0, [0.76720, 10.7972, -38.180], [0.20073, 8.4658, -22.490]),
    (18.0, [0.97305, 5.3135, -2.200], [0.28889, 5.9741, -4.930]),
    (22.0, [0.97256, 5.2500, -0.980], [0.24504, 7.4160, -16.730]),
    (28.0, [0.91413, 7.4759, -21.820], [0.20323, 9.1267, -34.230]),
    (40.0, [0.87031, 9.7157, -50.770], [0.18411, 10.1015, -46.750]),
    (55.0, [0.84703, 12.6752, -133.310], [0.17029, 11.4866, -80.620]),
    (70.0, [0.85921, 11.1009, -83.190], [0.17130, 11.3680, -76.940]),
    (f64::INFINITY, [0.83531, 14.6731, -216.246], [0.16841, 11.8493, -96.947]),
];
/// The viscosity at 100 °C below which the standard gives no index [mm²/s].
const LEAST_MM2_S: f64 = 2.0;
/// The constant of procedure B.
const PROCEDURE_B: f64 = 0.007_15;

/// The viscosities at 40 °C [mm²/s] of the two reference oils (of index 0 and of index 100) that
/// are as thick at 100 °C; `None` below 2 mm²/s, where the standard says nothing.
fn reference_oils(kv100_mm2_s: f64) -> Option<(f64, f64)> {
    if !(kv100_mm2_s >= LEAST_MM2_S && kv100_mm2_s.is_finite()) {
        return None;
    }
    let (_, low, high) = REFERENCE_OILS.iter().find(|(below, _, _)| kv100_mm2_s < *below)?;
    let parabola = |[a, b, c]: &[f64; 3]| (a * kv100_mm2_s + b) * kv100_mm2_s + c;
    Some((parabola(low), parabola(high)))
}

/// The viscosity index of an oil from its kinematic viscosities at 40 and 100 °C [mm²/s]; `None`
/// where the standard gives none. Not rounded, as a report would be.
#[must_use]
pub fn viscosity_index(kv40_mm2_s: f64, kv100_mm2_s: f64) -> Option<f64> {
    let (low, high) = reference_oils(kv100_mm2_s)?;
    if !(kv40_mm2_s > kv100_mm2_s && kv40_mm2_s.is_finite()) {
        return None;
    }
    Some(if kv40_mm2_s >= high {
        100.0 * (low - kv40_mm2_s) / (low - high)
    } else {
        let exponent = (log10(high) - log10(kv40_mm2_s)) / log10(kv100_mm2_s);
        (pow(10.0, exponent) - 1.0) / PROCEDURE_B + 100.0
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// ASTM D2270 §5.1.4, worked example of procedure A: 73.30 and 8.86 mm²/s, L 119.94, H 69.48,
    /// index 92.43, reported 92. The parabolas miss the table by two hundredths.
    #[test]
    fn published_procedure_a_example() {
        let (low, high) = reference_oils(8.86).unwrap();
        assert!((low - 119.94).abs() < 0.03 && (high - 69.48).abs() < 0.03, "{low} {high}");
        let index = viscosity_index(73.30, 8.86).unwrap();
        assert!((index - 92.43).abs() < 0.05, "{index}");
        assert_eq!(format!("{index:.0}"), "92");
    }

    /// ASTM D2270 §6.1.4, worked example of procedure B: 22.83 and 5.05 mm²/s, H 28.97, index
    /// 156.37, reported 156.
    #[test]
    fn published_procedure_b_example() {
        let (_, high) = reference_oils(5.05).unwrap();
        assert!((high - 28.97).abs() < 0.03, "{high}");
        let index = viscosity_index(22.83, 5.05).unwrap();
        assert!((index - 156.37).abs() < 0.15, "{index}");
        assert_eq!(format!("{index:.0}"), "156");
    }

    /// The second example of procedure B: 53.47 and, from memory, 7.80 mm²/s, H 57.31, index 111.
    #[test]
    fn published_second_procedure_b_example() {
        let (_, high) = reference_oils(7.80).unwrap();
        assert!((high - 57.31).abs() < 0.02, "{high}");
        assert_eq!(format!("{:.0}", viscosity_index(53.47, 7.80).unwrap()), "111");
    }

    /// ASTM D2270 above 70 mm²/s: L = 0.8353 Y² + 14.67 Y - 216, H = 0.1684 Y² + 11.85 Y - 97.
    #[test]
    fn published_formula_above_seventy() {
        for hot in [70.0, 90.0, 150.0] {
            let (low, high) = reference_oils(hot).unwrap();
            assert!((low / (0.8353 * hot * hot + 14.67 * hot - 216.0) - 1.0).abs() < 1e-3);
            assert!((high / (0.1684 * hot * hot + 11.85 * hot - 97.0) - 1.0).abs() < 1e-3);
        }
    }

    /// By definition: the reference oils themselves have 0 and 100, and both procedures meet there.
    #[test]
    fn closed_form_reference_oils_have_their_own_index() {
        for hot in [3.0, 5.0, 8.86, 10.6, 18.5, 40.0] {
            let (low, high) = reference_oils(hot).unwrap();
            assert!(viscosity_index(low, hot).unwrap().abs() < 1e-9);
            assert!((viscosity_index(high, hot).unwrap() - 100.0).abs() < 1e-9);
            assert!((viscosity_index(high * (1.0 - 1e-9), hot).unwrap() - 100.0).abs() < 1e-4);
        }
    }

    /// The parabolas join: a coefficient with a wrong digit would show as a step.
    #[test]
    fn closed_form_parabolas_meet_at_their_joints() {
        for (joint, _, _) in &REFERENCE_OILS[..15] {
            let (below, above) = (joint - 1e-9, *joint);
            let ((l1, h1), (l2, h2)) =
                (reference_oils(below).unwrap(), reference_oils(above).unwrap());
            assert!((l1 / l2 - 1.0).abs() < 2e-3 && (h1 / h2 - 1.0).abs() < 2e-3, "{joint}");
        }
    }

    #[test]
    fn limit_where_the_standard_gives_no_index() {
        for (cool, hot) in [(5.0, 1.9), (5.0, 10.0), (f64::NAN, 5.0), (20.0, f64::INFINITY)] {
            assert_eq!(viscosity_index(cool, hot), None, "{cool} {hot}");
        }
    }

    proptest! {
        /// Of two oils that are alike hot, the one that is thicker cold has the lower index.
        #[test]
        fn prop_thicker_when_cold_means_a_lower_index(hot in 2.0_f64..60.0, k in 1.5_f64..20.0) {
            let index = |cool| viscosity_index(cool, hot).unwrap();
            prop_assert!(index(hot * k * 1.01) < index(hot * k));
        }
    }
}
