//! Flux and force of a solenoid whose core saturates, with any share of its turns shorted.
//!
//! Model, in amperes of the reference winding (`m` is the magnetomotive force over the reference
//! winding's turns):
//!
//! - flux linkage of the reference winding `Phi = (L0 + L1 x) g(m)`, with
//!   `g = s tanh(m/s) + e m`: a straight line at first, then only the share `e` of it;
//! - force `F = dW'/dx = L1 (s^2 ln cosh(m/s) + e m^2/2)`, the derivative of the coenergy, so that
//!   electrical and mechanical energy balance exactly. Phi is linear in the stroke, therefore the
//!   force is the same all along it;
//! - a shorted part of the winding is a second winding with no supply on the same core. It slows the
//!   flux and takes current, and once the flux is steady it does nothing.
//!
//! Limits: no eddy currents in the core, no hysteresis, no leakage between the two parts of a
//! winding. The textbook force of a plain air gap, `(NI)^2 mu0 A / 2 g^2`, is this law with the slope
//! `L1 = N^2 mu0 A / g^2` of that gap and an iron that does not saturate; it rises without limit as
//! the gap closes, which this shaped pole does not.

use super::coil::Winding;
use super::range::{OutOfRange, within};
use crate::numerics::elementary::{exp, ln_1p, ln_cosh, tanh};
use crate::units::{Amperes, Celsius, Henries, Newtons, Ohms};
use serde::{Deserialize, Serialize};

/// The magnetic circuit of a valve, seen from the reference winding.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct Solenoid {
    /// Inductance with the spool at rest and little current [H], 0.0001 to 1.
    pub inductance_at_rest: Henries,
    /// Rise of that inductance along the stroke [H/m], 0 to 1000.
    pub inductance_slope_h_per_m: f64,
    /// Current at which the core begins to saturate [A], 0.01 or more.
    pub saturation: Amperes,
    /// Share of the first slope that is left when the core is saturated, 0.001 to 1.
    pub slope_beyond_saturation: f64,
}

impl Default for Solenoid {
    fn default() -> Self {
        Self::REFERENCE
    }
}

impl Solenoid {
    /// The reference valve: engineering estimate, chosen for plausible currents and times of a
    /// 11-ohm valve; no measurement stands behind it.
    pub const REFERENCE: Self = Self {
        inductance_at_rest: Henries(12e-3),
        inductance_slope_h_per_m: 20.0,
        saturation: Amperes(0.8),
        slope_beyond_saturation: 0.04,
    };

    /// Refuses a solenoid that cannot be.
    ///
    /// # Errors
    /// [`OutOfRange`] with the first field outside the range of its description.
    pub fn check(&self) -> Result<(), OutOfRange> {
        within("inductance_at_rest", self.inductance_at_rest.0, 1e-4, 1.0)?;
        within("inductance_slope_h_per_m", self.inductance_slope_h_per_m, 0.0, 1000.0)?;
        within("saturation", self.saturation.0, 0.01, 1e6)?;
        within("slope_beyond_saturation", self.slope_beyond_saturation, 0.001, 1.0)
    }

    /// Force on the spool, away from its rest, once the flux is steady [N]. Shorted turns carry no
    /// steady current; the direction of the current does not matter.
    #[must_use]
    pub fn force_at(&self, current: Amperes, winding: &Winding) -> Newtons {
        Newtons(self.force_n(driven_turns(winding) * current.0))
    }

    /// Inductance at the pins of a winding with the spool at rest and little current [H].
    #[must_use]
    pub fn terminal_inductance(&self, winding: &Winding) -> Henries {
        let turns = driven_turns(winding);
        Henries(self.inductance_at_rest.0 * (1.0 + self.slope_beyond_saturation) * turns * turns)
    }

    /// Inductance at the pins for small currents, no turns shorted, at a place along the stroke [H].
    pub(super) fn inductance_h(&self, position_m: f64) -> f64 {
        self.inductance_at_rest.0 + self.inductance_slope_h_per_m * position_m
    }

    /// Force [N] at a magnetomotive force of `m_a` reference amperes.
    pub(super) fn force_n(&self, m_a: f64) -> f64 {
        self.inductance_slope_h_per_m * self.coenergy_per_henry(m_a)
    }

    /// Integral of the shape `g` from zero [A^2].
    pub(super) fn coenergy_per_henry(&self, m_a: f64) -> f64 {
        let s = self.saturation.0;
        s * s * ln_cosh(m_a / s) + 0.5 * self.slope_beyond_saturation * m_a * m_a
    }

    /// The shape `g`, its slope and the force, from a single exponential: `tanh u` and `ln cosh u` are
    /// both made of `e^(-2u)`.
    #[inline]
    pub(super) fn pull(&self, m_a: f64) -> Pull {
        let s = self.saturation.0;
        let u = m_a.abs() / s;
        // A current that has died away leaves the exponential at one, to the last bit.
        let (gone, ln_both) = if u < UNSEEN {
            (1.0, core::f64::consts::LN_2)
        } else {
            let gone = exp(-2.0 * u);
            (gone, ln_1p(gone))
        };
        let bent = (1.0 - gone) / (1.0 + gone);
        let coenergy = s * s * (u + ln_both - core::f64::consts::LN_2)
            + 0.5 * self.slope_beyond_saturation * m_a * m_a;
        Pull {
            value_a: (s * bent).copysign(m_a) + self.slope_beyond_saturation * m_a,
            slope: 1.0 - bent * bent + self.slope_beyond_saturation,
            force_n: self.inductance_slope_h_per_m * coenergy,
        }
    }

    /// The shape `g` of the flux linkage and its first two derivatives.
    pub(super) fn shape(&self, m_a: f64) -> Shape {
        let bent = tanh(m_a / self.saturation.0);
        let left = 1.0 - bent * bent;
        Shape {
            value_a: self.saturation.0 * bent + self.slope_beyond_saturation * m_a,
            slope: left + self.slope_beyond_saturation,
            bend_per_a: -2.0 * bent * left / self.saturation.0,
        }
    }
}

/// A magnetomotive force below this, in units of the saturation, is lost in the last bit of its
/// exponential.
const UNSEEN: f64 = 1e-17;

/// Flux and force at one magnetomotive force, for a loop that needs both every tick.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
pub(super) struct Pull {
    /// `g` [A].
    pub value_a: f64,
    /// `dg/dm`.
    pub slope: f64,
    /// Force on the spool away from rest [N].
    pub force_n: f64,
}

/// The flux linkage over the inductance, and how it bends.
#[derive(Debug, Clone, Copy)]
pub(super) struct Shape {
    /// `g` [A].
    pub value_a: f64,
    /// `dg/dm`.
    pub slope: f64,
    /// `d2g/dm2` [1/A].
    pub bend_per_a: f64,
}

/// Turns that the supply drives, relative to the reference winding.
#[must_use]
pub fn driven_turns(winding: &Winding) -> f64 {
    winding.turns * (1.0 - winding.shorted_share)
}

/// Conductance of the shorted turns, seen from the reference winding [S]: `n2^2/R2` with `n2` and `R2`
/// both in proportion to the shorted share.
#[must_use]
pub fn shorted_siemens(winding: &Winding, coil: Celsius) -> f64 {
    winding.turns * winding.turns * winding.shorted_share / winding.copper_ohms(coil).0
}

/// A winding closed over a supply: which flux it drives, and what it draws for it.
///
/// With `n1` driven turns of the circuit resistance `R1`, and `n2` shorted turns of `R2`, all on one
/// core: `V = R1 i1 + n1 Phi'`, `0 = R2 i2 + n2 Phi'`, `m = n1 i1 + n2 i2`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FluxLoop {
    driven_turns: f64,
    circuit_ohms: f64,
    /// `n1^2/R1 + n2^2/R2` [S]: flux changes by the missing amperes over this.
    conductance_s: f64,
}

impl FluxLoop {
    /// A winding at a temperature, closed over a source of a resistance [ohm].
    #[must_use]
    pub fn new(winding: &Winding, coil: Celsius, source: Ohms) -> Self {
        let circuit = Ohms(winding.terminal_ohms(coil).0 + source.0);
        Self::with_circuit(driven_turns(winding), circuit, shorted_siemens(winding, coil))
    }

    /// The same from what a running engine knows of a valve: its driven turns, the resistance of the
    /// whole circuit [ohm, may be infinite] and the conductance of its shorted turns [S].
    #[must_use]
    pub fn with_circuit(driven_turns: f64, circuit: Ohms, shorted_s: f64) -> Self {
        let conductance_s = driven_turns * driven_turns / circuit.0 + shorted_s;
        Self { driven_turns, circuit_ohms: circuit.0, conductance_s }
    }

    /// `n1^2/R1 + n2^2/R2` [S].
    pub(super) const fn conductance_s(&self) -> f64 {
        self.conductance_s
    }

    /// What the missing magnetomotive force takes from the current at the terminals: `n1/(R1 G)`.
    pub(super) fn missing_share(&self) -> f64 {
        if self.conductance_s > 0.0 {
            self.driven_turns / (self.circuit_ohms * self.conductance_s)
        } else {
            0.0
        }
    }

    /// Turns that the supply drives, relative to the reference winding.
    pub(super) const fn driven_turns(&self) -> f64 {
        self.driven_turns
    }

    /// Rate of the flux linkage of the reference winding [V].
    pub(super) fn flux_rate_v(&self, m_a: f64, supply_v: f64) -> f64 {
        (self.settled_a(supply_v) - m_a) / self.conductance_s
    }

    /// How the rate of flux falls with each ampere [V/A].
    pub(super) fn flux_rate_slope_v_per_a(&self) -> f64 {
        -1.0 / self.conductance_s
    }

    /// Magnetomotive force when the flux has settled [A].
    pub(super) fn settled_a(&self, supply_v: f64) -> f64 {
        self.driven_turns * supply_v / self.circuit_ohms
    }

    /// Current through the terminals [A].
    pub(super) fn terminal_a(&self, m_a: f64, supply_v: f64) -> f64 {
        (supply_v - self.driven_turns * self.flux_rate_v(m_a, supply_v)) / self.circuit_ohms
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Ohms;
    use proptest::prelude::*;

    const VALVE: Solenoid = Solenoid::REFERENCE;

    /// Computed by an independent ODE solver for this project: with a preload of 0.8 N and 600 N/m
    /// over 2.5 mm the reference valve starts at 0.28 A and stands at full stroke at about 0.5 A; both
    /// are printed to one or two digits, hence 0.005 A and 0.05 A.
    #[test]
    fn reference_currents_that_start_and_end_the_travel() {
        let force = |amperes| VALVE.force_at(Amperes(amperes), &Winding::REFERENCE).0;
        assert!(force(0.275) < 0.8 && force(0.29) > 0.8, "{} {}", force(0.275), force(0.29));
        assert!(force(0.45) < 2.3 && force(0.55) > 2.3, "{} {}", force(0.45), force(0.55));
    }

    #[test]
    fn limit_little_current_is_a_parabola_and_much_is_a_straight_line() {
        let force = |amperes| VALVE.force_at(Amperes(amperes), &Winding::REFERENCE).0;
        // L1 i^2/2 (1 + e), less (i/s)^2/6 of it.
        assert!((force(1e-3) / (20.0 * 0.5e-6 * 1.04) - 1.0).abs() < 1e-6);
        let without_leak = Solenoid { slope_beyond_saturation: 0.0, ..VALVE };
        let far = |amperes| without_leak.force_at(Amperes(amperes), &Winding::REFERENCE).0;
        assert!(((far(30.0) - far(20.0)) / 10.0 - 20.0 * 0.8).abs() < 1e-9);
    }

    /// Two worked examples of a public solenoid-force page, `F = (NI)^2 mu0 A / 2 g^2`: 100 turns, 5 A,
    /// 0.01 m2, 20 mm give 3.93 N; 200 turns, 3 A, 0.02 m2, 30 mm give 5.03 N. At a fixed gap that is
    /// this force with the slope of the gap's inductance.
    #[test]
    fn published_force_of_a_plain_air_gap() {
        let mu0 = 4e-7 * core::f64::consts::PI;
        for (turns, amperes, area_m2, gap_m, newtons) in
            [(100.0, 5.0, 0.01, 0.02, 3.93), (200.0, 3.0, 0.02, 0.03, 5.03)]
        {
            let gap = Solenoid {
                inductance_slope_h_per_m: turns * turns * mu0 * area_m2 / (gap_m * gap_m),
                // Iron that does not saturate: the correction is (i/s)^2/6.
                saturation: Amperes(1e3),
                slope_beyond_saturation: 0.0,
                ..VALVE
            };
            let force = gap.force_at(Amperes(amperes), &Winding::REFERENCE).0;
            assert!((force - newtons).abs() < 0.005, "{force} {newtons}");
            assert!((gap.pull(amperes).force_n / force - 1.0).abs() < 1e-6);
        }
    }

    #[test]
    fn closed_form_steady_force_goes_with_the_turns_that_carry_current() {
        let half = Winding { turns: 2.0, shorted_share: 0.75, ..Winding::REFERENCE };
        let force = VALVE.force_at(Amperes(0.8), &half).0;
        assert!((force - VALVE.force_at(Amperes(0.4), &Winding::REFERENCE).0).abs() < 1e-15);
        let back = VALVE.force_at(Amperes(-0.8), &half).0;
        assert_eq!(force.to_bits(), back.to_bits());
    }

    proptest! {
        /// One exponential gives what tanh and ln cosh give by themselves.
        #[test]
        fn prop_the_quick_pull_is_shape_and_force(m_a in -12.0..12.0_f64) {
            let (quick, shape) = (VALVE.pull(m_a), VALVE.shape(m_a));
            prop_assert!((quick.value_a - shape.value_a).abs() < 1e-14);
            prop_assert!((quick.slope - shape.slope).abs() < 1e-14);
            prop_assert!((quick.force_n - VALVE.force_n(m_a)).abs() < 1e-12);
        }

        /// The derivatives are those of the shape, and the force that of the coenergy.
        #[test]
        fn prop_slopes_are_slopes(m_a in -4.0..4.0_f64) {
            let d = 1e-5;
            let (low, mid, high) = (VALVE.shape(m_a - d), VALVE.shape(m_a), VALVE.shape(m_a + d));
            prop_assert!(((high.value_a - low.value_a) / (2.0 * d) - mid.slope).abs() < 1e-8);
            prop_assert!(((high.slope - low.slope) / (2.0 * d) - mid.bend_per_a).abs() < 1e-8);
            let slope = (VALVE.force_n(m_a + d) - VALVE.force_n(m_a - d)) / (2.0 * d);
            prop_assert!((slope - 20.0 * mid.value_a).abs() < 1e-6);
        }

        /// The way round exponential and logarithm gives no other bits.
        #[test]
        fn prop_a_current_that_died_away_gives_the_same_pull(m_a in 0.0..1e-17_f64) {
            let u = m_a / Solenoid::REFERENCE.saturation.0;
            let gone = exp(-2.0 * u);
            prop_assert_eq!(gone.to_bits(), 1.0_f64.to_bits());
            prop_assert_eq!(ln_1p(gone).to_bits(), core::f64::consts::LN_2.to_bits());
        }

        /// On a stiff supply, shorted turns change nothing but the current.
        #[test]
        fn prop_shorted_turns_leave_the_flux_alone_without_source_resistance(
            share in 0.0..0.95_f64, m_a in -2.0..2.0_f64, supply_v in 0.0..16.0_f64,
        ) {
            let make = |shorted_share| {
                let winding = Winding { shorted_share, ..Winding::REFERENCE };
                FluxLoop::new(&winding, Celsius(20.0), Ohms(0.0))
            };
            let (whole, shorted) = (make(0.0), make(share));
            let difference =
                whole.flux_rate_v(m_a, supply_v) - shorted.flux_rate_v(m_a, supply_v);
            prop_assert!(difference.abs() < 1e-10, "{difference}");
        }

        /// The pins' current solves both loops: recompute the shorted part's and add the turns up.
        #[test]
        fn prop_both_parts_of_a_winding_add_up(
            share in 0.01..0.95_f64, m_a in 0.0..2.0_f64, supply_v in 0.0..16.0_f64,
            source in 0.0..5.0_f64, turns in 0.3..3.0_f64,
        ) {
            let winding = Winding { turns, shorted_share: share, ..Winding::REFERENCE };
            let closed = FluxLoop::new(&winding, Celsius(20.0), Ohms(source));
            let (n1, n2) = (turns * (1.0 - share), turns * share);
            let shorted_a = -n2 * closed.flux_rate_v(m_a, supply_v) / (11.0 * share);
            let sum = n1 * closed.terminal_a(m_a, supply_v) + n2 * shorted_a;
            prop_assert!((sum - m_a).abs() < 1e-10, "{sum} {m_a}");
        }
    }
}
