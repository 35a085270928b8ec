//! Closed-loop control of one camshaft's phase: a duty every ten milliseconds.
//!
//! Model: a hold duty, that the module has learnt over earlier drives and adapts to supply voltage
//! and coil temperature, plus a PID on the error. At a target of rest the valve is left unpowered.
//! Inputs in degrees away from rest, so intake and exhaust are controlled alike.
//! Sources: hold duties of 35 to 65 % "depending on temperature and volts" are published; the
//! structure and every other figure are engineering estimates.

use crate::units::{Celsius, CrankDegrees, Rpm, Volts};
use serde::{Deserialize, Serialize};

/// Time between two updates [s].
pub const PERIOD_S: f64 = 0.01;
/// Rise of a copper winding's resistance [1/K], referred to 20 °C.
const COPPER_PER_K: f64 = 0.003_93;
/// Temperature to which that refers [°C].
const COPPER_REFERENCE_C: f64 = 20.0;
/// Error within which the module trusts that it holds, and learns [degrees] (assumed).
const LEARNING_WINDOW_DEG: f64 = 1.0;

/// Movement of a target that does not make it another one [degrees]: engine speed that goes up or
/// down takes the target along with it in small steps (assumed).
pub const TARGET_DRIFT_DEG: f64 = 2.0;
/// Approach to the target that counts as progress [degrees] (assumed).
const PROGRESS_DEG: f64 = 1.0;

/// Calibration of one camshaft's control.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CamControlSpec {
    /// Least engine speed at which the camshaft is moved away from rest [rpm] (assumed: above the
    /// starter's).
    pub least_rpm: f64,
    /// Most engine speed for it [rpm] (assumed).
    pub most_rpm: f64,
    /// Least oil temperature for it [°C] (assumed).
    pub least_oil_c: f64,
    /// Most oil temperature for it [°C] (assumed).
    pub most_oil_c: f64,
    /// Duty that holds the phase with a new valve at the reference supply and oil temperature, 0 to
    /// 1 (published range 0.35 to 0.65).
    pub hold_duty: f64,
    /// Supply to which `hold_duty` refers [V].
    pub reference_supply_v: f64,
    /// Oil temperature to which `hold_duty` refers [°C].
    pub reference_oil_c: f64,
    /// Proportional gain [1/degree] (engineering estimate).
    pub proportional_per_deg: f64,
    /// Integral gain [1/(degree s)] (engineering estimate).
    pub integral_per_deg_s: f64,
    /// Derivative gain [s/degree] (engineering estimate).
    pub derivative_s_per_deg: f64,
    /// Error beyond which the integral waits, while the phaser is on its way [degrees] (engineering
    /// estimate).
    pub integral_window_deg: f64,
    /// Time without progress for which it waits at most [s]: a phaser that stands still short of its
    /// target needs another hold duty, as after a repair or with the battery off (assumed; shorter
    /// than the time off target that sets a code).
    pub integral_patience_s: f64,
    /// Least duty while controlling, 0 to 1 (engineering estimate).
    pub least_duty: f64,
    /// Most duty while controlling, 0 to 1 (engineering estimate).
    pub most_duty: f64,
    /// Target below which the valve is left unpowered [degrees] (engineering estimate).
    pub park_below_deg: f64,
    /// Time in which what the integral had to add is learnt [s]; infinite learns nothing (assumed).
    pub learning_s: f64,
    /// Least factor on `hold_duty` that the module learns (assumed).
    pub least_learnt: f64,
    /// Most factor on `hold_duty` that the module learns (assumed).
    pub most_learnt: f64,
}

impl CamControlSpec {
    /// Control of a valve of 11 ohm (engineering estimate).
    pub const TYPICAL: Self = Self {
        least_rpm: 500.0,
        most_rpm: 6_800.0,
        least_oil_c: -7.0,
        most_oil_c: 140.0,
        hold_duty: 0.404,
        reference_supply_v: 14.1,
        reference_oil_c: 90.0,
        proportional_per_deg: 0.022,
        integral_per_deg_s: 0.03,
        derivative_s_per_deg: 0.0006,
        integral_window_deg: 8.0,
        integral_patience_s: 2.0,
        least_duty: 0.05,
        most_duty: 0.95,
        park_below_deg: 0.5,
        learning_s: 60.0,
        least_learnt: 0.5,
        most_learnt: 2.1,
    };
}

impl CamControlSpec {
    /// Whether the camshaft may be moved away from rest.
    #[must_use]
    pub fn allows(&self, speed: Rpm, oil: Celsius) -> bool {
        (self.least_rpm..=self.most_rpm).contains(&speed.0)
            && (self.least_oil_c..=self.most_oil_c).contains(&oil.0)
    }
}

impl Default for CamControlSpec {
    fn default() -> Self {
        Self::TYPICAL
    }
}

/// What the module measures for one update.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CamInputs {
    /// Wanted angle away from rest.
    pub target: CrankDegrees,
    /// Measured angle away from rest.
    pub measured: CrankDegrees,
    /// Supply voltage.
    pub supply: Volts,
    /// Oil temperature.
    pub oil: Celsius,
    /// Whether the module lets itself drive the valve; a circuit fault takes that away.
    pub is_permitted: bool,
}

/// The control of one camshaft.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct CamControl {
    spec: CamControlSpec,
    integral_deg_s: f64,
    last_error_deg: f64,
    last_target_deg: f64,
    nearest_deg: f64,
    since_progress_s: f64,
    learnt: f64,
    duty: f64,
}

impl CamControl {
    /// A module that has learnt nothing yet.
    #[must_use]
    pub const fn new(spec: CamControlSpec) -> Self {
        Self {
            spec,
            integral_deg_s: 0.0,
            last_error_deg: 0.0,
            last_target_deg: 0.0,
            nearest_deg: 0.0,
            since_progress_s: 0.0,
            learnt: 1.0,
            duty: 0.0,
        }
    }

    /// Factor on the hold duty that was learnt, 1 for a new valve.
    #[must_use]
    pub const fn learnt(&self) -> f64 {
        self.learnt
    }

    /// Duty of the last update, 0 to 1.
    #[must_use]
    pub const fn duty(&self) -> f64 {
        self.duty
    }

    /// Sets what was learnt, within the calibration's limits: 1 after the battery was off, or what
    /// earlier drives would have taught.
    pub fn set_learnt(&mut self, factor: f64) {
        self.learnt = factor.clamp(self.spec.least_learnt, self.spec.most_learnt);
    }

    /// Hold duty of a new valve at a supply and an oil temperature, 0 to 1.
    #[must_use]
    pub fn hold_of_a_new_valve(&self, supply: Volts, oil: Celsius) -> f64 {
        let copper = |celsius: f64| 1.0 + COPPER_PER_K * (celsius - COPPER_REFERENCE_C);
        self.spec.hold_duty * self.spec.reference_supply_v / supply.0.max(1.0) * copper(oil.0)
            / copper(self.spec.reference_oil_c)
    }

    /// The duty for the next ten milliseconds, 0 to 1.
    pub fn update(&mut self, inputs: &CamInputs) -> f64 {
        let spec = self.spec;
        let error_deg = inputs.target.0 - inputs.measured.0;
        let change_deg_s = (error_deg - self.last_error_deg) / PERIOD_S;
        self.last_error_deg = error_deg;
        self.watch_progress(inputs.target.0, error_deg.abs());
        if !inputs.is_permitted || inputs.target.0 < spec.park_below_deg {
            self.duty = 0.0;
            return self.duty;
        }
        let is_near = error_deg.abs() < spec.integral_window_deg;
        // At an end of its range the duty can do no more, and the integral must not run away.
        let has_room =
            if error_deg > 0.0 { self.duty < spec.most_duty } else { self.duty > spec.least_duty };
        if is_near || (self.since_progress_s >= spec.integral_patience_s && has_room) {
            self.integral_deg_s += error_deg * PERIOD_S;
        }
        let hold_new = self.hold_of_a_new_valve(inputs.supply, inputs.oil);
        let wanted = self.learnt * hold_new
            + spec.proportional_per_deg * error_deg
            + spec.integral_per_deg_s * self.integral_deg_s
            + spec.derivative_s_per_deg * change_deg_s;
        self.duty = wanted.clamp(spec.least_duty, spec.most_duty);
        if error_deg.abs() < LEARNING_WINDOW_DEG {
            self.learn(hold_new);
        }
        self.duty
    }

    /// Notes how long the error has not come down by another degree. Patience once lost stays lost
    /// until the target changes, or every degree gained would start the wait again.
    fn watch_progress(&mut self, target_deg: f64, distance_deg: f64) {
        let is_new = (target_deg - self.last_target_deg).abs() > TARGET_DRIFT_DEG;
        if is_new {
            self.last_target_deg = target_deg;
        }
        let is_patient = self.since_progress_s < self.spec.integral_patience_s;
        if is_new || (is_patient && distance_deg < self.nearest_deg - PROGRESS_DEG) {
            self.nearest_deg = distance_deg;
            self.since_progress_s = 0.0;
        } else {
            self.since_progress_s += PERIOD_S;
        }
    }

    /// Moves a little of the integral into the learnt hold, so that the sum stays as it is.
    fn learn(&mut self, hold_new: f64) {
        let before = self.learnt;
        let share = PERIOD_S / self.spec.learning_s;
        self.set_learnt(
            before + self.spec.integral_per_deg_s * self.integral_deg_s * share / hold_new,
        );
        self.integral_deg_s -= (self.learnt - before) * hold_new / self.spec.integral_per_deg_s;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn inputs(target: f64, measured: f64) -> CamInputs {
        CamInputs {
            target: CrankDegrees(target),
            measured: CrankDegrees(measured),
            supply: Volts(14.1),
            oil: Celsius(90.0),
            is_permitted: true,
        }
    }

    /// Far from the target only hold and proportional part act, 0.404 + 0.022 · 20 = 0.844, until
    /// patience is at its end; then the integral adds 0.03 · 20 a second up to the most duty, and
    /// comes back from there without delay.
    #[test]
    fn closed_form_duty_far_from_the_target() {
        let mut control = CamControl::new(CamControlSpec::TYPICAL);
        let first = control.update(&inputs(20.0, 0.0));
        assert_eq!(first.to_bits(), 0.95_f64.to_bits(), "the first change of error is clipped");
        let mut later = 0.0;
        for _ in 0..100 {
            later = control.update(&inputs(20.0, 0.0));
        }
        assert!((later - 0.844).abs() < 1e-12, "{later}");
        for _ in 100..210 {
            later = control.update(&inputs(20.0, 0.0));
        }
        assert!((later - 0.844 - 0.6 * 0.1).abs() < 0.013, "{later}");
        for _ in 0..60_000 {
            later = control.update(&inputs(20.0, 0.0));
        }
        assert_eq!(later.to_bits(), 0.95_f64.to_bits());
        for _ in 0..2 {
            later = control.update(&inputs(20.0, 4.0));
        }
        assert!(later < 0.9, "{later}");
    }

    /// A constant error within the window: the integral grows by error · time.
    #[test]
    fn closed_form_integral_of_a_constant_error() {
        let spec = CamControlSpec { learning_s: f64::INFINITY, ..CamControlSpec::TYPICAL };
        let mut control = CamControl::new(spec);
        control.update(&inputs(20.0, 18.0));
        let mut duty = 0.0;
        for _ in 1..200 {
            duty = control.update(&inputs(20.0, 18.0));
        }
        assert!((duty - (0.404 + 0.022 * 2.0 + 0.03 * 2.0 * 2.0)).abs() < 1e-9, "{duty}");
    }

    #[test]
    fn limit_duty_is_zero_at_rest_and_when_inhibited() {
        let mut control = CamControl::new(CamControlSpec::TYPICAL);
        control.update(&inputs(20.0, 0.0));
        assert_eq!(control.update(&inputs(0.0, 10.0)), 0.0);
        assert_eq!(control.update(&CamInputs { is_permitted: false, ..inputs(20.0, 0.0) }), 0.0);
        assert_eq!(control.update(&inputs(20.0, 80.0)), 0.05);
    }

    #[test]
    fn limit_a_window_of_speed_and_oil_temperature() {
        let allows = |rpm, oil| CamControlSpec::TYPICAL.allows(Rpm(rpm), Celsius(oil));
        assert!(allows(700.0, 20.0) && allows(6_800.0, 140.0));
        assert!(!allows(200.0, 20.0) && !allows(7_000.0, 90.0));
        assert!(!allows(700.0, -8.0) && !allows(700.0, 141.0));
    }

    /// Half the supply needs twice the duty; a hot coil needs its copper's share more.
    #[test]
    fn closed_form_hold_follows_supply_and_copper() {
        let control = CamControl::new(CamControlSpec::TYPICAL);
        let hold = |volts, celsius| control.hold_of_a_new_valve(Volts(volts), Celsius(celsius));
        assert!((hold(14.1, 90.0) - 0.404).abs() < 1e-12);
        assert!((hold(7.05, 90.0) - 0.808).abs() < 1e-12);
        assert!((hold(14.1, 20.0) / hold(14.1, 90.0) - 1.0 / 1.2751).abs() < 1e-9);
    }

    /// Learning moves duty from the integral to the hold without a bump, and only near the target.
    #[test]
    fn conserves_duty_while_learning() {
        let mut control = CamControl::new(CamControlSpec::TYPICAL);
        for _ in 0..300 {
            control.update(&inputs(20.0, 18.0));
        }
        assert_eq!(control.learnt().to_bits(), 1.0_f64.to_bits());
        control.update(&inputs(20.0, 20.0));
        let settled = control.update(&inputs(20.0, 20.0));
        let mut after = 0.0;
        for _ in 0..60_000 {
            after = control.update(&inputs(20.0, 20.0));
        }
        assert!((after - settled).abs() < 1e-9, "{after} {settled}");
        // After ten time constants all of it is learnt.
        assert!((control.learnt() - settled / 0.404).abs() < 1e-4, "{}", control.learnt());
    }

    #[test]
    fn limit_learning_stays_within_the_calibration() {
        let mut control = CamControl::new(CamControlSpec::TYPICAL);
        control.set_learnt(9.0);
        assert!((control.learnt() - 2.1).abs() < 1e-12);
        control.set_learnt(0.0);
        assert!((control.learnt() - 0.5).abs() < 1e-12);
    }
}
