//! What a passage costs a flow: `drop = a q^2 + b q`.
//!
//! Model: a sharp-edged opening gives the quadratic part, `Q = Cd A sqrt(2 dp / rho)`; narrow gaps and
//! pores the linear one, in proportion to the viscosity. Passages in series add both parts. Limits:
//! quasi-steady; the discharge coefficient does not fall at small Reynolds numbers, where the linear
//! part takes over.

use crate::numerics::elementary::sqrt;
use serde::{Deserialize, Serialize};

/// Resistance of a passage to one oil.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
pub struct Resistance {
    /// `a`, the part of inertia [Pa s²/m⁶].
    pub inertial: f64,
    /// `b`, the part of viscosity [Pa s/m³].
    pub viscous: f64,
}

impl Resistance {
    /// A sharp-edged opening: discharge coefficient (0.60 to 0.65), area [m², more than 0], density
    /// of the fluid [kg/m³].
    #[must_use]
    pub fn sharp_edge(discharge: f64, area_m2: f64, density_kg_m3: f64) -> Self {
        let effective_m2 = discharge * area_m2;
        Self { inertial: 0.5 * density_kg_m3 / (effective_m2 * effective_m2), viscous: 0.0 }
    }

    /// A narrow passage: geometry [1/m³], viscosity [Pa s].
    #[must_use]
    pub fn narrow(per_m3: f64, viscosity_pa_s: f64) -> Self {
        Self { inertial: 0.0, viscous: per_m3 * viscosity_pa_s }
    }

    /// This passage and another behind it.
    #[must_use]
    pub fn then(self, next: Self) -> Self {
        Self { inertial: self.inertial + next.inertial, viscous: self.viscous + next.viscous }
    }

    /// Flow that a pressure drives [m³/s]: the positive root; none against the pressure.
    #[must_use]
    #[inline]
    pub fn flow_m3_s(self, drive_pa: f64) -> f64 {
        if drive_pa <= 0.0 {
            return 0.0;
        }
        // The form without cancellation, which also holds where either part is absent.
        2.0 * drive_pa
            / (self.viscous + sqrt(self.viscous * self.viscous + 4.0 * self.inertial * drive_pa))
    }

    /// Pressure that a flow costs [Pa].
    #[must_use]
    #[inline]
    pub fn drop_pa(self, flow_m3_s: f64) -> f64 {
        (self.inertial * flow_m3_s + self.viscous) * flow_m3_s
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// A public worked example: Cd 0.62, 0.001 m², 2 m of water above it give 0.00388 m³/s.
    #[test]
    fn published_tank_with_two_metres_of_water() {
        let hole = Resistance::sharp_edge(0.62, 0.001, 1000.0);
        let flow = hole.flow_m3_s(1000.0 * 9.81 * 2.0);
        assert!((flow - 0.00388).abs() < 0.000_005, "{flow}");
    }

    /// A public worked example: a 2 mm hole, 30 l/min of mineral oil, 288 bar. The page names neither
    /// coefficient nor density; 0.62 and 875 kg/m³ give its figure within 1 %.
    #[test]
    fn published_hole_of_two_millimetres() {
        let hole = Resistance::sharp_edge(0.62, core::f64::consts::PI * 1e-6, 875.0);
        let bar = hole.drop_pa(30.0 / 60_000.0) / 1e5;
        assert!((bar / 288.0 - 1.0).abs() < 0.01, "{bar}");
    }

    /// The trade's form in US units, gpm = (D/0.23)² sqrt(psi) with D in inches, for water and Cd 0.63;
    /// published with two digits, hence 1 %.
    #[test]
    fn published_form_in_gallons_and_inches() {
        for (inches, psi) in [(0.0787, 100.0), (0.25, 40.0)] {
            let metres = inches * 0.0254;
            let area = 0.25 * core::f64::consts::PI * metres * metres;
            let gpm = Resistance::sharp_edge(0.63, area, 999.0).flow_m3_s(psi * 6_894.757)
                / (3.785_411_784e-3 / 60.0);
            let wanted = inches * inches / (0.23 * 0.23) * sqrt(psi);
            assert!((gpm / wanted - 1.0).abs() < 0.01, "{gpm} {wanted}");
        }
    }

    #[test]
    fn limit_flow_is_linear_for_honey_and_square_root_for_water() {
        let honey = Resistance { inertial: 1e-9, viscous: 2e9 };
        assert!((honey.flow_m3_s(4e5) - 2e-4).abs() < 1e-15);
        let water = Resistance { inertial: 1e11, viscous: 0.0 };
        assert!((water.flow_m3_s(4e5) - 2e-3).abs() < 1e-15);
    }

    proptest! {
        /// Flow and drop undo each other, over passages in series too.
        #[test]
        fn conserves_pressure_along_passages_in_series(
            a in 1e9_f64..1e14, b in 0.0_f64..1e11, c in 1e9_f64..1e14, drive in 1.0_f64..1e6,
        ) {
            let first = Resistance { inertial: a, viscous: b };
            let second = Resistance { inertial: c, viscous: 0.5 * b };
            let flow = first.then(second).flow_m3_s(drive);
            let back = first.drop_pa(flow) + second.drop_pa(flow);
            prop_assert!((back / drive - 1.0).abs() < 1e-9);
            prop_assert_eq!(first.flow_m3_s(-drive), 0.0);
        }
    }
}
