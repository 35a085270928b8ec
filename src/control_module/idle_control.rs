//! The idle control: how much air the engine gets at idle, and a little spark timing.
//!
//! Signals in: speed, the speed that is wanted, coolant temperature. Drives out: throttle opening and
//! the torque by spark timing. Air is slow, because the manifold has to fill, and sets the mean; spark
//! acts with the next fire and damps. Calibration: engineering estimates.

use crate::units::{Celsius, Rpm};
use serde::{Deserialize, Serialize};

/// Calibration.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct IdleControlSpec {
    /// Opening for a warm engine before anything is learnt, 0 to 1.
    pub warm_opening: f64,
    /// Further opening for the square of each kelvin of coolant below [`Self::cold_below_c`] [1/K²].
    pub cold_opening: f64,
    /// Coolant temperature from which no further opening is needed [°C].
    pub cold_below_c: f64,
    /// Least opening.
    pub least_opening: f64,
    /// Opening for each revolution a minute that is missing [1/rpm].
    pub air_per_rpm: f64,
    /// Opening for each revolution a minute and second that is missing [1/(rpm s)].
    pub air_per_rpm_s: f64,
    /// Bounds of what the slow part takes off and adds.
    pub learns: (f64, f64),
    /// A larger error than this is a transient and not learnt from [rpm].
    pub learns_within_rpm: f64,
    /// Torque by spark for each revolution a minute that is missing [1/rpm].
    pub spark_per_rpm: f64,
    /// Most torque that spark takes off and adds, as shares.
    pub spark: (f64, f64),
    /// Further speed for each kelvin of coolant below [`Self::warm_c`] [rpm/K].
    pub fast_rpm_per_k: f64,
    /// Coolant temperature from which the engine idles at its normal speed [°C].
    pub warm_c: f64,
    /// Most further speed [rpm].
    pub most_fast_rpm: f64,
}

impl IdleControlSpec {
    /// The typical calibration.
    pub const TYPICAL: Self = Self {
        warm_opening: 0.17,
        cold_opening: 2.5e-5,
        cold_below_c: 80.0,
        least_opening: 0.13,
        air_per_rpm: 2e-4,
        air_per_rpm_s: 1.5e-4,
        learns: (-0.15, 0.6),
        learns_within_rpm: 400.0,
        spark_per_rpm: 2e-3,
        spark: (0.3, 0.15),
        fast_rpm_per_k: 4.0,
        warm_c: 60.0,
        most_fast_rpm: 320.0,
    };

    /// Speed at which a cold engine is to idle, more than that of a warm one.
    #[must_use]
    pub fn wanted(&self, warm: Rpm, coolant: Celsius) -> Rpm {
        let more = self.fast_rpm_per_k * (self.warm_c - coolant.0);
        Rpm(warm.0 + more.clamp(0.0, self.most_fast_rpm))
    }
}

/// What the idle control drives.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct IdleDrive {
    /// Throttle opening, 0 to 1.
    pub opening: f64,
    /// Torque by spark timing, about 1.
    pub spark: f64,
}

/// The idle control at work; what it learnt about the air stays between idles.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct IdleControl {
    spec: IdleControlSpec,
    learnt: f64,
}

impl IdleControl {
    /// A control that has learnt nothing.
    #[must_use]
    pub const fn new(spec: IdleControlSpec) -> Self {
        Self { spec, learnt: 0.0 }
    }

    /// The task, every `dt_s` seconds at idle.
    pub fn update(&mut self, warm: Rpm, measured: Rpm, coolant: Celsius, dt_s: f64) -> IdleDrive {
        let spec = &self.spec;
        let missing_rpm = spec.wanted(warm, coolant).0 - measured.0;
        if missing_rpm.abs() < spec.learns_within_rpm {
            let (off, on) = spec.learns;
            self.learnt = (self.learnt + spec.air_per_rpm_s * missing_rpm * dt_s).clamp(off, on);
        }
        let cold_k = (spec.cold_below_c - coolant.0).max(0.0);
        let known = spec.warm_opening + spec.cold_opening * cold_k * cold_k;
        let opening = known + self.learnt + spec.air_per_rpm * missing_rpm;
        let (off, on) = spec.spark;
        IdleDrive {
            opening: opening.clamp(spec.least_opening, 1.0),
            spark: 1.0 + (spec.spark_per_rpm * missing_rpm).clamp(-off, on),
        }
    }

    /// What it learnt: opening on top of the calibration's.
    #[must_use]
    pub const fn learnt(&self) -> f64 {
        self.learnt
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const WARM: Celsius = Celsius(90.0);

    #[test]
    fn closed_form_the_slow_part_is_an_integral_within_its_bounds() {
        let spec = IdleControlSpec::TYPICAL;
        let mut control = IdleControl::new(spec);
        for _ in 0..100 {
            control.update(Rpm(700.0), Rpm(690.0), WARM, 0.01);
        }
        // Ten revolutions a minute missing for one second.
        assert!((control.learnt() - 10.0 * spec.air_per_rpm_s).abs() < 1e-12);
        for _ in 0..1_000_000 {
            control.update(Rpm(700.0), Rpm(400.0), WARM, 0.01);
        }
        assert!((control.learnt() - spec.learns.1).abs() < 1e-12);
        // A stall is no reason to learn.
        let before = control.learnt();
        let drive = control.update(Rpm(700.0), Rpm(0.0), WARM, 0.01);
        assert_eq!(control.learnt().to_bits(), before.to_bits());
        assert!(drive.opening <= 1.0 && (drive.spark - 1.0 - spec.spark.1).abs() < 1e-12);
    }

    #[test]
    fn limit_a_cold_engine_idles_faster_up_to_a_bound() {
        let spec = IdleControlSpec::TYPICAL;
        let wanted = |coolant| spec.wanted(Rpm(700.0), Celsius(coolant)).0;
        assert!((wanted(90.0) - 700.0).abs() < 1e-9 && (wanted(60.0) - 700.0).abs() < 1e-9);
        assert!((wanted(20.0) - 860.0).abs() < 1e-9);
        assert!((wanted(-40.0) - 1_020.0).abs() < 1e-9);
    }
}
