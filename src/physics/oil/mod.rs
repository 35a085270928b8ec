//! Engine oil: viscosity against temperature, density, and what ageing and fuel do to both.
//!
//! Model: the Walther equation in the form of ASTM D341, `log log (nu + 0.7) = A - B log T`, fixed
//! by the two viscosities of the data sheet. Limits: above 2 mm²/s (below that the standard adds a
//! term that no engine here reaches), above the cloud point, no pressure and no shear thinning.

mod grade;
mod index;
mod service;

use crate::numerics::elementary::{log10, pow};
use crate::units::Celsius;
use serde::{Deserialize, Serialize};
use thiserror::Error;

pub use grade::{Base, Grade, HotLimits, NoSuchGrade};
pub use index::viscosity_index;
pub use service::{Service, blend, in_service};

/// Absolute zero [°C] (by definition of the unit).
const KELVIN_OFFSET: f64 = 273.15;
/// The summand that straightens the curve above 2 mm²/s (ASTM D341).
const WALTHER_SHIFT: f64 = 0.7;
/// Temperatures of the two data-sheet viscosities [°C] (ASTM D341, SAE J300).
const SHEET_COOL_C: f64 = 40.0;
/// See [`SHEET_COOL_C`].
const SHEET_HOT_C: f64 = 100.0;
/// Where density is stated [°C] (trade custom).
const DENSITY_AT_C: f64 = 15.0;
/// Loss of density [kg/(m³ K)]: 0.075 % a kelvin of 870, upper end of the range for lubricants
/// (engineering estimate).
const DENSITY_SLOPE: f64 = 0.65;
/// Oxidation raises the hot viscosity less than the cold one, by this share (engineering estimate).
const HOT_SHARE_OF_THICKENING: f64 = 0.75;

/// An oil as it is in the sump now.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Oil {
    /// Kinematic viscosity of the fresh oil at 40 °C [mm²/s], 10 to 200, from its data sheet.
    pub kv40_mm2_s: f64,
    /// Kinematic viscosity of the fresh oil at 100 °C [mm²/s], 3 to 30, from its data sheet.
    pub kv100_mm2_s: f64,
    /// Density of the fresh oil at 15 °C [kg/m³], 820 to 920, from its data sheet.
    pub density_15_kg_m3: f64,
    /// Factor on the viscosity at 40 °C by oxidation and soot, 1 (fresh) to 3; at 100 °C three
    /// quarters of the excess applies (engineering estimate).
    pub thickening: f64,
    /// Factor on both viscosities by whatever thins evenly, such as shear, 0.3 to 1 (fresh;
    /// engineering estimate). Fuel acts through [`in_service`] on each viscosity by itself.
    pub dilution: f64,
}

impl Oil {
    /// A typical fresh SAE 5W-30 (engineering estimate within the limits of SAE J300).
    pub const TYPICAL_5W_30: Self = Self {
        kv40_mm2_s: 61.7,
        kv100_mm2_s: 10.6,
        density_15_kg_m3: 870.0,
        thickening: 1.0,
        dilution: 1.0,
    };

    /// Works out the curve through the two viscosities.
    ///
    /// # Errors
    /// [`OilError`] when the figures describe no oil that gets thinner with heat.
    pub fn curve(&self) -> Result<ViscosityCurve, OilError> {
        let factor_hot = 1.0 + HOT_SHARE_OF_THICKENING * (self.thickening - 1.0);
        let cool_mm2_s = self.kv40_mm2_s * self.thickening * self.dilution;
        let hot_mm2_s = self.kv100_mm2_s * factor_hot * self.dilution;
        // Both ends above 1 - 0.7 would do for the logarithms; 2 is where the equation holds.
        if !(hot_mm2_s >= 2.0 && cool_mm2_s > hot_mm2_s && cool_mm2_s.is_finite()) {
            return Err(OilError::NoCurve { cool_mm2_s, hot_mm2_s });
        }
        if !(self.density_15_kg_m3 > 0.0 && self.density_15_kg_m3.is_finite()) {
            return Err(OilError::NoDensity { density_kg_m3: self.density_15_kg_m3 });
        }
        let double_log = |nu_mm2_s: f64| log10(log10(nu_mm2_s + WALTHER_SHIFT));
        let cool = log10(SHEET_COOL_C + KELVIN_OFFSET);
        let hot = log10(SHEET_HOT_C + KELVIN_OFFSET);
        let slope = (double_log(cool_mm2_s) - double_log(hot_mm2_s)) / (hot - cool);
        Ok(ViscosityCurve {
            intercept: double_log(cool_mm2_s) + slope * cool,
            slope,
            density_15_kg_m3: self.density_15_kg_m3,
        })
    }
}

impl Default for Oil {
    fn default() -> Self {
        Self::TYPICAL_5W_30
    }
}

/// Why an oil has no viscosity curve.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum OilError {
    /// The hot viscosity must be at least 2 mm²/s and the cool one higher.
    #[error(
        "drawing an oil's viscosity curve: got {cool_mm2_s} mm²/s at 40 °C and {hot_mm2_s} mm²/s at 100 °C, expected at least 2 at 100 °C and more at 40 °C"
    )]
    NoCurve {
        /// Viscosity at 40 °C after ageing [mm²/s].
        cool_mm2_s: f64,
        /// Viscosity at 100 °C after ageing [mm²/s].
        hot_mm2_s: f64,
    },
    /// Density must be positive.
    #[error("drawing an oil's viscosity curve: got a density of {density_kg_m3} kg/m³")]
    NoDensity {
        /// Density as given [kg/m³].
        density_kg_m3: f64,
    },
}

/// An oil's viscosity against temperature, worked out once.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct ViscosityCurve {
    /// A of ASTM D341, no unit.
    pub intercept: f64,
    /// B of ASTM D341, no unit.
    pub slope: f64,
    /// Density at 15 °C [kg/m³].
    pub density_15_kg_m3: f64,
}

impl ViscosityCurve {
    /// Kinematic viscosity [mm²/s] by ASTM D341.
    #[must_use]
    pub fn kinematic_mm2_s(&self, at: Celsius) -> f64 {
        let exponent = self.intercept - self.slope * log10(at.0 + KELVIN_OFFSET);
        pow(10.0, pow(10.0, exponent)) - WALTHER_SHIFT
    }

    /// How many times its volume at one temperature the oil takes up at another.
    #[must_use]
    pub fn expansion(&self, from: Celsius, to: Celsius) -> f64 {
        self.density_kg_m3(from) / self.density_kg_m3(to)
    }

    fn density_kg_m3(&self, at: Celsius) -> f64 {
        self.density_15_kg_m3 - DENSITY_SLOPE * (at.0 - DENSITY_AT_C)
    }

    /// The oil as flow formulas see it at one temperature.
    #[must_use]
    pub fn fluid(&self, at: Celsius) -> Fluid {
        let density_kg_m3 = self.density_kg_m3(at);
        Fluid { viscosity_pa_s: self.kinematic_mm2_s(at) * 1e-6 * density_kg_m3, density_kg_m3 }
    }
}

/// The two figures of an oil that flow depends on, at one temperature.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Fluid {
    /// Dynamic viscosity [Pa s], 0.003 (hot) to 5 (deep frost).
    pub viscosity_pa_s: f64,
    /// Density [kg/m³].
    pub density_kg_m3: f64,
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sheet(kv40_mm2_s: f64, kv100_mm2_s: f64) -> Oil {
        Oil { kv40_mm2_s, kv100_mm2_s, ..Oil::TYPICAL_5W_30 }
    }

    /// Worked example printed with the Walther equation (30-weight data, 32 and 5.4 mm²/s):
    /// A = 9.5259, B = 3.7449 with T = °C + 273, and 8.5 mm²/s at 80 °C. With 273.15 the
    /// constants move to 9.5308 and 3.7466 and the result stays.
    #[test]
    fn published_walther_worked_example() {
        let curve = sheet(32.0, 5.4).curve().unwrap();
        assert!((curve.intercept - 9.530_82).abs() < 1e-4);
        assert!((curve.slope - 3.746_58).abs() < 1e-4);
        assert_eq!(format!("{:.1}", curve.kinematic_mm2_s(Celsius(80.0))), "8.5");
    }

    /// The curve must give back the sheet, or every other value is shifted.
    #[test]
    fn closed_form_curve_passes_through_the_sheet() {
        let curve = Oil::TYPICAL_5W_30.curve().unwrap();
        assert!((curve.kinematic_mm2_s(Celsius(40.0)) - 61.7).abs() < 1e-9);
        assert!((curve.kinematic_mm2_s(Celsius(100.0)) - 10.6).abs() < 1e-10);
    }

    /// Values recomputed by another program for three assumed oils, printed to three digits.
    #[test]
    fn reference_three_oils_from_frost_to_hot() {
        let temperatures = [-20.0, 0.0, 20.0, 60.0, 80.0, 90.0, 110.0, 120.0, 150.0];
        for (kv40, kv100, row) in [
            (45.0, 8.5, [1623.0, 343.0, 108.0, 22.7, 13.2, 10.5, 7.02, 5.90, 3.79]),
            (63.0, 10.8, [2734.0, 536.0, 159.0, 30.6, 17.2, 13.5, 8.83, 7.34, 4.60]),
            (95.0, 14.2, [5498.0, 954.0, 258.0, 43.6, 23.5, 18.0, 11.4, 9.39, 5.69]),
        ] {
            let curve = sheet(kv40, kv100).curve().unwrap();
            for (temperature, wanted) in temperatures.iter().zip(row) {
                let got = curve.kinematic_mm2_s(Celsius(*temperature));
                // Half a unit of the third digit is at most 0.5 %.
                assert!((got / wanted - 1.0).abs() < 5e-3, "{kv40} {temperature}: {got} {wanted}");
            }
        }
    }

    /// SAE J300 (2015 and later), kinematic limits at 100 °C of the grades used here.
    #[test]
    fn published_j300_limits_hold_for_the_typical_oil_and_tell_grades_apart() {
        let grades = [("20", 6.9, 9.3), ("30", 9.3, 12.5), ("40", 12.5, 16.3)];
        let grade = |oil: Oil| {
            let hot = oil.curve().unwrap().kinematic_mm2_s(Celsius(100.0));
            grades.iter().find(|(_, low, high)| (*low..*high).contains(&hot)).map(|g| g.0)
        };
        assert_eq!(grade(Oil::TYPICAL_5W_30), Some("30"));
        // Fuel-diluted oil falls through the floor of the lowest grade; oxidised oil leaves the
        // grades upwards.
        assert_eq!(grade(Oil { dilution: 0.65, ..Oil::TYPICAL_5W_30 }), None);
        assert_eq!(grade(Oil { thickening: 1.8, ..Oil::TYPICAL_5W_30 }), None);
    }

    /// Sources give 850 to 860 (up to 870) kg/m³ at 15 °C and about 6 % loss up to 100 °C.
    #[test]
    fn published_density_range_and_expansion() {
        let curve = Oil::TYPICAL_5W_30.curve().unwrap();
        let (cool, hot) = (curve.fluid(Celsius(15.0)), curve.fluid(Celsius(100.0)));
        assert!((cool.density_kg_m3 - 870.0).abs() < 1e-9);
        let loss = 1.0 - hot.density_kg_m3 / cool.density_kg_m3;
        assert!((0.055..=0.065).contains(&loss), "{loss}");
    }

    /// Dynamic viscosities of the preparatory study's gallery table [mPa s], printed to one decimal.
    #[test]
    fn reference_dynamic_viscosity_of_the_gallery_table() {
        let curve = Oil::TYPICAL_5W_30.curve().unwrap();
        for (temperature, wanted) in [
            (-10.0, 988.7),
            (20.0, 135.0),
            (40.0, 52.7),
            (60.0, 25.2),
            (90.0, 10.9),
            (100.0, 8.6),
            (110.0, 7.0),
            (120.0, 5.8),
        ] {
            let got = curve.fluid(Celsius(temperature)).viscosity_pa_s * 1e3;
            assert!((got - wanted).abs() < 0.051, "{temperature}: {got} {wanted}");
        }
    }

    #[test]
    fn closed_form_oxidised_oil_is_one_point_eight_and_one_point_six() {
        let curve = Oil { thickening: 1.8, ..Oil::TYPICAL_5W_30 }.curve().unwrap();
        assert!((curve.kinematic_mm2_s(Celsius(40.0)) - 61.7 * 1.8).abs() < 1e-9);
        assert!((curve.kinematic_mm2_s(Celsius(100.0)) - 10.6 * 1.6).abs() < 1e-9);
    }

    #[test]
    fn limit_figures_of_no_oil_are_refused() {
        for oil in [
            sheet(5.0, 10.0),
            sheet(60.0, 1.0),
            sheet(f64::NAN, 10.0),
            Oil { dilution: 0.0, ..Oil::TYPICAL_5W_30 },
        ] {
            assert!(matches!(oil.curve(), Err(OilError::NoCurve { .. })), "{oil:?}");
        }
        let weightless = Oil { density_15_kg_m3: 0.0, ..Oil::TYPICAL_5W_30 };
        assert!(matches!(weightless.curve(), Err(OilError::NoDensity { .. })));
    }
}
