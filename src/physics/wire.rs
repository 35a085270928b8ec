//! The resistance of copper conductors from their length, cross section and temperature.
//!
//! Model: `R = rho l / A`, rising in a straight line with temperature as a winding does; a cable of
//! strands has more than a solid conductor of its nominal cross section, because the strands are
//! laid in a twist and together have a little less copper. Limits: direct current, the whole length
//! at one temperature, no terminals: a crimp is a contact of its own.
//!
//! ```
//! use faultwright::physics::wire::Cable;
//! use faultwright::units::Celsius;
//!
//! // Three metres there and back of a thin automotive cable, and what 1.7 A lose on it.
//! let cable = Cable { metres: 6.0, mm2: 0.5 };
//! assert!((1.7 * cable.ohms(Celsius(20.0)).0 - 0.38).abs() < 0.005);
//! ```

use super::coil::COPPER_PER_KELVIN;
use crate::units::{Celsius, Ohms};
use serde::{Deserialize, Serialize};

/// Resistivity of annealed copper at 20 °C [ohm mm²/m]; IEC 60028.
pub const COPPER_OHM_MM2_PER_M: f64 = 1.0 / 58.0;

/// Resistance of a stranded cable over that of a solid conductor of its nominal cross section.
/// Chosen: just under the largest resistances of ISO 6722 for 0.5 to 1 mm², which are quoted from
/// memory; between solid copper and the largest of IEC 60228 class 5 throughout.
const STRANDED: f64 = 1.07;

/// Lengths that a vehicle's cables have [m].
pub const METRES: (f64, f64) = (0.2, 30.0);
/// Cross sections of a vehicle's cables [mm²].
pub const MM2: (f64, f64) = (0.2, 35.0);

/// Resistance of a solid copper conductor [ohm] of a length [m] and a cross section [mm²].
#[must_use]
pub fn copper_ohms(metres: f64, mm2: f64, at: Celsius) -> Ohms {
    let at_20 = COPPER_OHM_MM2_PER_M * metres / mm2;
    Ohms(at_20 * (1.0 + COPPER_PER_KELVIN * (at.0 - 20.0)))
}

/// A stranded copper cable.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cable {
    /// Length of the conductor [m], 0.2 to 30.
    pub metres: f64,
    /// Nominal cross section [mm²], 0.2 to 35.
    pub mm2: f64,
}

impl Cable {
    /// Resistance from end to end [ohm].
    #[must_use]
    pub fn ohms(&self, at: Celsius) -> Ohms {
        Ohms(STRANDED * copper_ohms(self.metres, self.mm2, at).0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn milliohms_per_metre(mm2: f64) -> f64 {
        1e3 * Cable { metres: 1.0, mm2 }.ohms(Celsius(20.0)).0
    }

    /// IEC 60228, largest resistance of class 5 plain copper [mohm/m]: read in two public copies.
    /// Nothing made of copper lies below the solid conductor.
    #[test]
    fn published_cables_lie_between_solid_copper_and_the_largest_allowed() {
        for (mm2, most) in [(0.5, 39.0), (0.75, 26.0), (1.0, 19.5), (1.5, 13.3), (2.5, 7.98)] {
            let ours = milliohms_per_metre(mm2);
            let solid = 1e3 * copper_ohms(1.0, mm2, Celsius(20.0)).0;
            assert!(solid < ours && ours < most, "{mm2}: {solid} {ours} {most}");
        }
    }

    #[test]
    fn closed_form_length_and_cross_section_scale() {
        let one = Cable { metres: 1.0, mm2: 1.0 }.ohms(Celsius(20.0)).0;
        let other = Cable { metres: 3.0, mm2: 0.75 }.ohms(Celsius(20.0)).0;
        assert!((other / one - 4.0).abs() < 1e-12);
        let warm = Cable { metres: 1.0, mm2: 1.0 }.ohms(Celsius(90.0)).0;
        assert!((warm / one - 1.2751).abs() < 1e-9);
    }
}
