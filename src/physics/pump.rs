//! The oil pump with its relief valve, and the pressure in the main gallery.
//!
//! Model: a positive-displacement pump fills the gallery; bearings and piston jets leak by
//! viscosity, drillings to the head by density, the relief valve opens over a span. Air in the oil
//! takes the place of oil in the pump and makes the gallery springy. Limits: no pressure pulses of
//! the pump, one pressure for the whole gallery, no filter.

use crate::numerics::elementary::sqrt;
use crate::numerics::root::{self, RootError};
use crate::physics::oil::Fluid;
use crate::units::{Bars, Rpm};
use serde::{Deserialize, Serialize};

/// One bar [Pa].
pub const PASCALS_PER_BAR: f64 = 1e5;
/// Atmospheric pressure, against which air in the oil is compressed [Pa].
pub const ATMOSPHERE_PA: f64 = 1e5;
/// Stiffness of air-free oil [Pa] (engineering estimate).
const OIL_STIFFNESS_PA: f64 = 1.2e9;
/// No gallery here reaches this [bar]: it is the upper end of the search.
const HIGHEST_BAR: f64 = 60.0;
/// An equilibrium is found to this width [Pa]: a thousandth of a gauge's last digit.
const EQUILIBRIUM_TOLERANCE_PA: f64 = 1.0;
/// Below this the slope of an orifice is taken as here [Pa], because it is infinite at zero.
const SMALLEST_DROP_PA: f64 = 10.0;

/// Pump, relief valve and what the engine lets through.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pump {
    /// Displacement a revolution of the crankshaft [cm³], 5 to 40 (engineering estimate).
    pub displacement_cm3: f64,
    /// Share of the displacement that is delivered, 0.7 to 1 (engineering estimate).
    pub efficiency: f64,
    /// Geometry of the gaps inside the pump beyond those that its efficiency holds [m³]: what slips
    /// back is this · pressure / viscosity. None in a new pump, more with worn gears or rotors.
    pub worn_gap_m3: f64,
    /// Geometry of the bearing gaps [m³]: flow = this · pressure / viscosity (engineering
    /// estimate; worn bearings raise it).
    pub bearing_gap_m3: f64,
    /// The same for piston jets and chain [m³] (engineering estimate).
    pub jet_gap_m3: f64,
    /// Effective area of the drillings to the head [mm²] (engineering estimate).
    pub drilling_mm2: f64,
    /// Pressure at which the relief valve begins to open [bar] (engineering estimate).
    pub relief_crack_bar: f64,
    /// Further pressure until it is fully open [bar], more than 0 (engineering estimate).
    pub relief_span_bar: f64,
    /// Its area when fully open [mm²] (engineering estimate).
    pub relief_mm2: f64,
    /// Its discharge coefficient, 0.60 to 0.65 for a sharp edge.
    pub relief_discharge: f64,
    /// Volume of the gallery [l] (engineering estimate).
    pub gallery_l: f64,
}

impl Pump {
    /// A pump for a four-cylinder engine of about two litres (engineering estimate).
    pub const TYPICAL: Self = Self {
        displacement_cm3: 14.0,
        efficiency: 0.96,
        worn_gap_m3: 0.0,
        bearing_gap_m3: 5.2e-12,
        jet_gap_m3: 8e-13,
        drilling_mm2: 4.0,
        relief_crack_bar: 4.2,
        relief_span_bar: 0.7,
        relief_mm2: 60.0,
        relief_discharge: 0.62,
        gallery_l: 0.5,
    };

    /// Oil delivered [m³/s] at an air share between 0 and 1.
    #[must_use]
    pub fn delivery_m3_s(&self, speed: Rpm, air: f64) -> f64 {
        self.displacement_cm3 * 1e-6 * speed.0 / 60.0 * self.efficiency * (1.0 - air)
    }

    /// Oil that the engine lets through at a gallery pressure [m³/s], with its slope [m³/(s Pa)].
    #[inline]
    fn let_through(&self, pressure_pa: f64, fluid: &Fluid) -> (f64, f64) {
        let gaps_m3 = self.bearing_gap_m3 + self.jet_gap_m3 + self.worn_gap_m3;
        let gaps = gaps_m3 / fluid.viscosity_pa_s;
        let drop_pa = pressure_pa.max(SMALLEST_DROP_PA);
        let speed_m_s = sqrt(2.0 * drop_pa / fluid.density_kg_m3);
        let span_pa = self.relief_span_bar * PASCALS_PER_BAR;
        let lift = (pressure_pa - self.relief_crack_bar * PASCALS_PER_BAR) / span_pa;
        let full_m2 = self.relief_discharge * self.relief_mm2 * 1e-6;
        let (relief_m2, opening_m2_pa) = if lift <= 0.0 {
            (0.0, 0.0)
        } else if lift < 1.0 {
            (full_m2 * lift, full_m2 / span_pa)
        } else {
            (full_m2, 0.0)
        };
        let area_m2 = self.drilling_mm2 * 1e-6 + relief_m2;
        // Below the smallest drop the orifice is taken as straight, so that nothing flows at zero.
        let share = (pressure_pa / drop_pa).clamp(0.0, 1.0);
        (
            gaps * pressure_pa + area_m2 * speed_m_s * share,
            gaps + area_m2 * speed_m_s / (2.0 * drop_pa) + opening_m2_pa * speed_m_s,
        )
    }

    /// The gallery pressure at which delivery and loss balance, without the control valves' share.
    ///
    /// # Errors
    /// [`RootError`] when no pressure up to 60 bar balances them.
    pub fn equilibrium(&self, speed: Rpm, air: f64, fluid: &Fluid) -> Result<Bars, RootError> {
        let delivery = self.delivery_m3_s(speed, air);
        if delivery <= 0.0 {
            return Ok(Bars(0.0));
        }
        let highest_pa = HIGHEST_BAR * PASCALS_PER_BAR;
        root::between(0.0, highest_pa, EQUILIBRIUM_TOLERANCE_PA, |pressure_pa| {
            self.let_through(pressure_pa, fluid).0 - delivery
        })
        .map(|pressure_pa| Bars(pressure_pa / PASCALS_PER_BAR))
    }
}

impl Default for Pump {
    fn default() -> Self {
        Self::TYPICAL
    }
}

/// The pressure in the gallery as it changes.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
pub struct Gallery {
    pressure_pa: f64,
}

impl Gallery {
    /// The gallery at a pressure.
    #[must_use]
    pub fn at(pressure: Bars) -> Self {
        Self { pressure_pa: pressure.0 * PASCALS_PER_BAR }
    }

    /// Pressure above the atmosphere.
    #[must_use]
    pub fn pressure(&self) -> Bars {
        Bars(self.pressure_pa / PASCALS_PER_BAR)
    }

    /// Pressure above the atmosphere [Pa].
    #[must_use]
    pub const fn pressure_pa(&self) -> f64 {
        self.pressure_pa
    }

    /// Moves on by `dt_s` seconds while the pump delivers `delivery_m3_s` and the control valves
    /// draw `drawn_m3_s`.
    ///
    /// One linearly implicit step: exact at rest, stable however stiff the relief valve is.
    #[inline]
    pub fn step(
        &mut self,
        pump: &Pump,
        fluid: &Fluid,
        delivery_m3_s: f64,
        drawn_m3_s: f64,
        air: f64,
        dt_s: f64,
    ) {
        let (lost_m3_s, slope) = pump.let_through(self.pressure_pa, fluid);
        let capacity = pump.gallery_l
            * 1e-3
            * (1.0 / OIL_STIFFNESS_PA + air / (self.pressure_pa + ATMOSPHERE_PA));
        let gain_m3_s = delivery_m3_s - lost_m3_s - drawn_m3_s;
        self.pressure_pa =
            (self.pressure_pa + dt_s * gain_m3_s / (capacity + dt_s * slope)).max(0.0);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::oil::Oil;
    use crate::units::Celsius;
    use proptest::prelude::*;

    /// The air share of the preparatory study's table; it names none, this one alone reproduces all rows.
    const TABLE_AIR: f64 = 0.03;

    fn oils() -> [Oil; 3] {
        let fresh = Oil::TYPICAL_5W_30;
        [fresh, Oil { thickening: 1.8, ..fresh }, Oil { dilution: 0.65, ..fresh }]
    }

    /// 120 equilibria found by another solver (`tests/reference/gallery.py`), and the same rows as
    /// printed to two decimals in the preparatory study.
    #[test]
    fn reference_gallery_equilibrium_table() {
        let table = include_str!("../../tests/reference/gallery.csv");
        let mut rows = 0;
        for line in table.lines().skip(1) {
            let field: Vec<f64> = line.split(',').map(|text| text.parse().unwrap()).collect();
            let [temperature, rpm, ..] = field[..] else { panic!("short row {line}") };
            for (k, oil) in oils().iter().enumerate() {
                let fluid = oil.curve().unwrap().fluid(Celsius(temperature));
                let got = Pump::TYPICAL.equilibrium(Rpm(rpm), TABLE_AIR, &fluid).unwrap().0;
                // Both solvers stop within 1 Pa = 1e-5 bar.
                assert!((got - field[2 + k]).abs() < 3e-5, "{line} oil {k}: {got}");
                // Printed to 0.01 bar: half a digit, and rounding of the printed figure itself.
                assert!((got - field[5 + k]).abs() < 0.005_01, "{line} oil {k}: {got}");
                rows += 1;
            }
        }
        assert_eq!(rows, 120);
    }

    /// "10 psi for each 1000 rpm" with hot oil is the trade's rule for the least pressure; hot idle
    /// is given as 0.7 to 1.4 bar.
    #[test]
    fn published_pressure_rules_of_thumb() {
        let fluid = Oil::TYPICAL_5W_30.curve().unwrap().fluid(Celsius(100.0));
        for rpm in [700.0, 1200.0, 2000.0, 3000.0, 5000.0] {
            let got = Pump::TYPICAL.equilibrium(Rpm(rpm), TABLE_AIR, &fluid).unwrap().0;
            assert!(got > 0.69 * rpm / 1000.0, "{rpm}: {got}");
        }
        let idle = Pump::TYPICAL.equilibrium(Rpm(700.0), TABLE_AIR, &fluid).unwrap().0;
        assert!((0.7..=1.4).contains(&idle), "{idle}");
    }

    #[test]
    fn limit_a_pump_that_stands_still_makes_no_pressure() {
        let fluid = Oil::TYPICAL_5W_30.curve().unwrap().fluid(Celsius(20.0));
        assert_eq!(Pump::TYPICAL.equilibrium(Rpm(0.0), 0.03, &fluid), Ok(Bars(0.0)));
        let mut gallery = Gallery::at(Bars(4.0));
        for _ in 0..5_000 {
            gallery.step(&Pump::TYPICAL, &fluid, 0.0, 0.0, 0.03, 1e-3);
        }
        assert!(gallery.pressure().0 < 1e-3, "{gallery:?}");
    }

    /// At rest the dynamic gallery must stand exactly where the equilibrium solver says.
    #[test]
    fn limit_dynamic_gallery_settles_at_the_equilibrium() {
        for temperature in [-10.0, 20.0, 90.0, 120.0] {
            let fluid = Oil::TYPICAL_5W_30.curve().unwrap().fluid(Celsius(temperature));
            for rpm in [700.0, 2000.0, 5000.0] {
                let wanted = Pump::TYPICAL.equilibrium(Rpm(rpm), 0.03, &fluid).unwrap().0;
                let mut gallery = Gallery::default();
                let delivery = Pump::TYPICAL.delivery_m3_s(Rpm(rpm), 0.03);
                for _ in 0..3_000 {
                    gallery.step(&Pump::TYPICAL, &fluid, delivery, 0.0, 0.03, 1e-3);
                }
                assert!((gallery.pressure().0 - wanted).abs() < 2e-5, "{temperature} {rpm}");
            }
        }
    }

    /// A linearly implicit Euler step is of first order: halving the step halves the error.
    #[test]
    fn closed_form_gallery_step_is_of_first_order() {
        let fluid = Oil::TYPICAL_5W_30.curve().unwrap().fluid(Celsius(90.0));
        let after_rise = |steps: u32| {
            let mut gallery = Gallery::at(Bars(1.0));
            let delivery = Pump::TYPICAL.delivery_m3_s(Rpm(1200.0), 0.03);
            for _ in 0..steps {
                gallery.step(&Pump::TYPICAL, &fluid, delivery, 0.0, 0.03, 0.04 / f64::from(steps));
            }
            gallery.pressure().0
        };
        let truth = after_rise(400_000);
        let (coarse, fine) = (after_rise(40) - truth, after_rise(80) - truth);
        assert!((1.9..2.1).contains(&(coarse / fine)), "{coarse} {fine}");
    }

    proptest! {
        /// At equilibrium what comes in goes out, whatever the engine.
        #[test]
        fn conserves_oil_at_equilibrium(
            rpm in 100.0_f64..7_000.0,
            temperature in -20.0_f64..140.0,
            air in 0.0_f64..0.8,
            gap in 1e-12_f64..5e-11,
        ) {
            let pump = Pump { bearing_gap_m3: gap, ..Pump::TYPICAL };
            let fluid = Oil::TYPICAL_5W_30.curve().unwrap().fluid(Celsius(temperature));
            let pressure = pump.equilibrium(Rpm(rpm), air, &fluid).unwrap();
            let (lost, slope) = pump.let_through(pressure.0 * PASCALS_PER_BAR, &fluid);
            let delivered = pump.delivery_m3_s(Rpm(rpm), air);
            prop_assert!((lost - delivered).abs() <= slope * 2.0 * EQUILIBRIUM_TOLERANCE_PA);
        }

        /// A worn pump slips by pressure over viscosity: hot oil suffers most, and below relief
        /// pressure the loss of pressure is what the same gap in a bearing makes.
        #[test]
        fn prop_a_worn_pump_loses_as_a_worn_bearing_does(
            rpm in 500.0_f64..2_000.0, gap in 1e-13_f64..2e-11, temperature in 60.0_f64..130.0,
        ) {
            let fluid = Oil::TYPICAL_5W_30.curve().unwrap().fluid(Celsius(temperature));
            let new = Pump::TYPICAL;
            let worn = Pump { worn_gap_m3: gap, ..new };
            let bearing = Pump { bearing_gap_m3: new.bearing_gap_m3 + gap, ..new };
            let at = |pump: Pump| pump.equilibrium(Rpm(rpm), 0.03, &fluid).unwrap().0;
            prop_assert!(at(worn) < at(new));
            prop_assert!((at(worn) - at(bearing)).abs() < 2e-5);
        }

        /// Worn bearings never raise the pressure.
        #[test]
        fn prop_wider_gaps_give_less_pressure(rpm in 500.0_f64..6_000.0, factor in 1.1_f64..5.0) {
            let fluid = Oil::TYPICAL_5W_30.curve().unwrap().fluid(Celsius(100.0));
            let worn = Pump { bearing_gap_m3: Pump::TYPICAL.bearing_gap_m3 * factor, ..Pump::TYPICAL };
            let fresh = Pump::TYPICAL.equilibrium(Rpm(rpm), 0.03, &fluid).unwrap();
            prop_assert!(worn.equilibrium(Rpm(rpm), 0.03, &fluid).unwrap().0 < fresh.0);
        }
    }
}
