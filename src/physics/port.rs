//! The oil passage of a control valve: screen, spool port, and the leak past the spool.
//!
//! Model: passages in series, each a [`Resistance`]. The lands of the spool overlap the ports at hold: within
//! the overlap nothing flows, beyond it the area grows in a straight line from nothing to the full
//! area at either end. A woven screen has a viscous and an inertial part (the form of Armour and Cannon
//! 1968, `f = 8.61/Re + 0.52`, from memory; the two coefficients here are estimates): with the open
//! share `s` that dirt leaves, the inertial part goes with `1/s²`, as speed does in what is left open,
//! and so does the viscous part, once for the speed and once more for pores that have become
//! narrower. The spool leaks all the time, and that leak alone takes pressure away behind a blocked
//! screen. Limits: quasi-steady, no cavitation, the same for both directions.

use crate::numerics::elementary::sqrt;
use crate::physics::oil::Fluid;
use crate::physics::orifice::Resistance;
use serde::{Deserialize, Serialize};

/// Least open share of a screen: nothing is ever blocked to the last pore, and the formulas divide
/// by it.
const LEAST_OPEN_SHARE: f64 = 1e-3;

/// The hydraulic figures of a control valve.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Port {
    /// Share of the stroke at which the spool holds the phase, 0 to 1 (engineering estimate).
    pub hold_share: f64,
    /// Overlap of lands and ports at hold: part of the way from hold to an end in which nothing flows, 0
    /// to below 1 (engineering estimate).
    pub dead_band: f64,
    /// Area of the port with the spool at an end [mm²] (engineering estimate).
    pub area_mm2: f64,
    /// Area of the clean screen [mm²] (engineering estimate).
    pub screen_mm2: f64,
    /// Discharge coefficient of both, 0.60 to 0.65 for sharp edges.
    pub discharge: f64,
    /// Viscous resistance of drillings and phaser passages [1/m³]: drop = this · viscosity · flow
    /// (engineering estimate).
    pub passage_per_m3: f64,
    /// The same of the clean screen [1/m³] (engineering estimate).
    pub screen_per_m3: f64,
    /// Geometry of the leak past the spool [m³]: flow = this · pressure / viscosity (engineering
    /// estimate).
    pub leak_m3: f64,
}

impl Port {
    /// A four-way valve for a vane phaser (engineering estimate).
    pub const TYPICAL: Self = Self {
        hold_share: 0.5,
        dead_band: 0.04,
        area_mm2: 4.0,
        screen_mm2: 12.0,
        discharge: 0.62,
        passage_per_m3: 1.5e11,
        screen_per_m3: 2e9,
        leak_m3: 3.6e-13,
    };

    /// Share of the port's area that is open at a share of the stroke: -1 (fully towards rest) to 1
    /// (fully away from rest), 0 within the overlap.
    #[must_use]
    #[inline]
    pub fn opening(&self, stroke_share: f64) -> f64 {
        let from_hold = stroke_share - self.hold_share;
        let way = if from_hold < 0.0 { self.hold_share } else { 1.0 - self.hold_share };
        let beyond = (from_hold.abs() / way - self.dead_band) / (1.0 - self.dead_band);
        if beyond <= 0.0 { 0.0 } else { beyond.copysign(from_hold) }
    }

    /// The passage with a screen blocked to the share `blockage`, 0 to 1, for one oil.
    #[must_use]
    pub fn passage(&self, blockage: f64, fluid: &Fluid) -> Passage {
        let open = (1.0 - blockage).clamp(LEAST_OPEN_SHARE, 1.0);
        let edge = |area_mm2: f64| {
            Resistance::sharp_edge(self.discharge, area_mm2 * 1e-6, fluid.density_kg_m3)
        };
        let viscosity = fluid.viscosity_pa_s;
        let screen = edge(self.screen_mm2 * open)
            .then(Resistance::narrow(self.screen_per_m3 / (open * open), viscosity));
        let leak_m3_s_pa = self.leak_m3 / viscosity;
        Passage {
            // Oil passes the port twice: into one chamber and out of the other.
            port_a: 2.0 * edge(self.area_mm2).inertial,
            around: screen.then(Resistance::narrow(self.passage_per_m3, viscosity)),
            screen,
            leak_m3_s_pa,
            leak_loss: 1.0 + screen.viscous * leak_m3_s_pa,
            leak_a: screen.inertial * leak_m3_s_pa * leak_m3_s_pa,
        }
    }
}

impl Default for Port {
    fn default() -> Self {
        Self::TYPICAL
    }
}

/// Flow coefficients of one valve with one oil at one temperature.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Passage {
    /// Inertial coefficient of the fully open port, both ways [Pa s²/m⁶].
    port_a: f64,
    /// Screen and drillings.
    around: Resistance,
    /// The screen alone.
    screen: Resistance,
    /// Leak past the spool for each pascal [m³/(s Pa)].
    leak_m3_s_pa: f64,
    /// Gallery pressure for each pascal behind the screen, viscous part.
    leak_loss: f64,
    /// The same, inertial part [1/Pa].
    leak_a: f64,
}

impl Passage {
    /// Pressure behind the screen that the leak past the spool leaves of a gallery pressure [Pa].
    #[must_use]
    #[inline]
    pub fn supply_pa(&self, gallery_pa: f64) -> f64 {
        2.0 * gallery_pa
            / (self.leak_loss
                + sqrt(self.leak_loss * self.leak_loss + 4.0 * self.leak_a * gallery_pa))
    }

    /// The leak past the spool at a pressure behind the screen [m³/s].
    #[must_use]
    #[inline]
    pub fn leak_m3_s(&self, supply_pa: f64) -> f64 {
        self.leak_m3_s_pa * supply_pa
    }

    /// The whole way through screen, drillings and a port opened to a share `opening` (not 0).
    #[must_use]
    #[inline]
    pub fn through(&self, opening: f64) -> Resistance {
        let port = Resistance { inertial: self.port_a / (opening * opening), viscous: 0.0 };
        self.around.then(port)
    }

    /// What the screen takes from the pressure for a flow [Pa].
    #[must_use]
    pub fn screen_drop_pa(&self, flow_m3_s: f64) -> f64 {
        self.screen.drop_pa(flow_m3_s)
    }

    /// Flow that a pressure drives through the port opened to a share `opening` (not 0) [m³/s];
    /// none against the pressure.
    #[must_use]
    #[inline]
    pub fn flow_m3_s(&self, opening: f64, drive_pa: f64) -> f64 {
        self.through(opening).flow_m3_s(drive_pa)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::oil::Oil;
    use crate::units::Celsius;
    use proptest::prelude::*;

    fn fluid(temperature: f64) -> Fluid {
        Oil::TYPICAL_5W_30.curve().unwrap().fluid(Celsius(temperature))
    }

    #[test]
    fn closed_form_opening_grows_from_nothing_beyond_the_overlap() {
        let port = Port::TYPICAL;
        let got = [0.0, 0.25, 0.485, 0.5, 0.515, 0.75, 1.0].map(|share| port.opening(share));
        let half = (0.5 - 0.04) / 0.96;
        for (got, wanted) in got.into_iter().zip([-1.0, -half, 0.0, 0.0, 0.0, half, 1.0]) {
            assert!((got - wanted).abs() < 1e-15, "{got} {wanted}");
        }
        // No jump at the edge of the overlap: 0.02 of the stroke from hold.
        assert!(port.opening(0.52 + 1e-9) < 1e-8 && port.opening(0.48 - 1e-9) > -1e-8);
    }

    /// Sharp-edged orifice, published example: 2 mm bore, 30 l/min, mineral oil, 288 bar. With the
    /// screen wide open and the viscous part off, the port alone must give it.
    #[test]
    fn published_orifice_two_millimetres_thirty_litres() {
        let bore_mm2 = core::f64::consts::PI;
        let port = Port {
            area_mm2: bore_mm2 * core::f64::consts::SQRT_2, // twice through √2 A = once through A
            screen_mm2: 1e9,
            passage_per_m3: 0.0,
            screen_per_m3: 0.0,
            ..Port::TYPICAL
        };
        let oil = Fluid { viscosity_pa_s: 0.03, density_kg_m3: 875.0 };
        let flow = port.passage(0.0, &oil).flow_m3_s(1.0, 288e5);
        assert!((flow * 60_000.0 - 30.0).abs() < 0.1, "{}", flow * 60_000.0);
    }

    /// Derived from the definition: at equal flow 80 % blockage costs 25 times in the inertial part
    /// and, with the closing pores, 25 times in the viscous one.
    #[test]
    fn closed_form_eighty_percent_blockage_costs_twenty_five_times() {
        let oil = fluid(90.0);
        let port = Port { passage_per_m3: 0.0, ..Port::TYPICAL };
        let (clean, blocked) = (port.passage(0.0, &oil), port.passage(0.8, &oil));
        assert!((blocked.screen.inertial / clean.screen.inertial - 25.0).abs() < 1e-9);
        assert!((blocked.screen.viscous / clean.screen.viscous - 25.0).abs() < 1e-9);
    }

    /// With no inertia the flow is drive over b; with no viscosity the square-root law.
    #[test]
    fn limit_flow_is_linear_for_honey_and_square_root_for_water() {
        let honey = Fluid { viscosity_pa_s: 1e4, density_kg_m3: 870.0 };
        let passage = Port::TYPICAL.passage(0.0, &honey);
        assert!((passage.flow_m3_s(1.0, 4e5) * passage.around.viscous / 4e5 - 1.0).abs() < 1e-6);
        let water = Fluid { viscosity_pa_s: 1e-12, density_kg_m3: 870.0 };
        let passage = Port::TYPICAL.passage(0.0, &water);
        let wanted = sqrt(4e5 / (passage.port_a + passage.screen.inertial));
        assert!((passage.flow_m3_s(1.0, 4e5) / wanted - 1.0).abs() < 1e-6);
    }

    proptest! {
        /// Screen drop and leak close the balance: gallery = supply + drop(leak).
        #[test]
        fn conserves_pressure_along_the_leak(
            gallery in 0.0_f64..8e5, blockage in 0.0_f64..1.0, temperature in -20.0_f64..130.0,
        ) {
            let passage = Port::TYPICAL.passage(blockage, &fluid(temperature));
            let supply = passage.supply_pa(gallery);
            let leak = passage.leak_m3_s(supply);
            let back = supply + passage.screen_drop_pa(leak);
            prop_assert!((back - gallery).abs() <= 1e-9 * gallery.max(1.0));
        }

        /// The root satisfies its equation, and no pressure drives oil backwards.
        #[test]
        fn conserves_drive_over_the_port(
            drive in 1.0_f64..8e5, opening in 0.05_f64..1.0, blockage in 0.0_f64..0.999,
        ) {
            let passage = Port::TYPICAL.passage(blockage, &fluid(90.0));
            let flow = passage.flow_m3_s(opening, drive);
            let through = passage.through(opening);
            prop_assert!((through.drop_pa(flow) - drive).abs() < 1e-9 * drive);
            prop_assert_eq!(passage.flow_m3_s(opening, -drive), 0.0);
        }
    }
}
