//! What the performance monitors of a camshaft compare with, as a vehicle's data.
//!
//! Makers publish a few of these: over-advance 15 degrees, over-retard 10 degrees for 5 s, 20
//! degrees for about 5 s, oil or coolant between 60 and 110 °C. Where a figure here has no source
//! it is marked "assumed".

use crate::control_module::code::Code;
use serde::{Deserialize, Serialize};

/// Which way a camshaft lies when its phaser is at rest.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum RestsAt {
    /// An intake camshaft: moving away from rest advances it.
    Retarded,
    /// An exhaust camshaft: moving away from rest retards it.
    Advanced,
}

/// The codes that a camshaft's performance monitors set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CamCodes {
    /// Timing over-advanced or system performance; the one code that also tells of hunting.
    pub early: Code,
    /// Timing over-retarded.
    pub late: Code,
    /// Slow response.
    pub slow: Code,
    /// Crankshaft and camshaft do not agree at rest.
    pub correlation: Code,
}

impl CamCodes {
    /// Camshaft "A" of bank 1, the intake camshaft (SAE J2012): P0011, P0012, P000A, P0016.
    pub const INTAKE: Self = Self {
        early: Code(0x0011),
        late: Code(0x0012),
        slow: Code(0x000A),
        correlation: Code(0x0016),
    };

    /// Camshaft "B" of bank 1, the exhaust camshaft (SAE J2012): P0014, P0015, P000B, P0017.
    pub const EXHAUST: Self = Self {
        early: Code(0x0014),
        late: Code(0x0015),
        slow: Code(0x000B),
        correlation: Code(0x0017),
    };
}

/// Thresholds, times and enabling conditions of one camshaft's performance monitors.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct PerformanceLimits {
    /// Least engine speed [rpm] (assumed).
    pub least_rpm: f64,
    /// Least oil temperature [°C] (assumed).
    pub least_oil_c: f64,
    /// Most oil temperature [°C] (assumed).
    pub most_oil_c: f64,
    /// Least supply [V] (assumed).
    pub least_supply_v: f64,
    /// Most supply [V] (assumed).
    pub most_supply_v: f64,

    /// Filtered error that counts as off target [degrees] (assumed; published values 10 to 20).
    pub off_target_deg: f64,
    /// Time constant of that filter [s] (assumed).
    pub error_filter_s: f64,
    /// Time off target that fails [s] (published values about 5).
    pub off_target_s: f64,

    /// Error that counts as hunting [degrees] (assumed).
    pub hunting_deg: f64,
    /// Share of the time beyond it that fails, 0.01 to 0.99 (assumed).
    pub hunting_share: f64,
    /// Memory of that share [s] (assumed).
    pub hunting_memory_s: f64,
    /// Time after a change of target that is not counted [s] (assumed).
    pub settle_s: f64,

    /// Target that has to be held for a pass [degrees] (assumed).
    pub held_target_deg: f64,
    /// Time it has to be held for a pass, settling not counted [s] (assumed).
    pub held_s: f64,

    /// Change of target that is timed, if larger [degrees] (assumed).
    pub step_deg: f64,
    /// Share of the change at which the clock stops, 0.01 to 0.99 (assumed).
    pub step_share: f64,
    /// Time that counts as slow, if longer [s] (assumed).
    pub slow_s: f64,
    /// Time after which the clock is stopped [s] (assumed).
    pub step_limit_s: f64,
    /// Least movement in that time that counts as a response at all [degrees] (assumed).
    pub least_move_deg: f64,
    /// Least oil temperature for timing [°C] (published: 60).
    pub slow_least_oil_c: f64,
    /// Slow steps among the last six that fail, 1 to 6 (assumed).
    pub slow_steps: u8,

    /// Angle away from rest that counts as wrong at a target of rest [degrees] (assumed).
    pub rest_error_deg: f64,
    /// Time for that to fail, or to pass [s] (assumed).
    pub rest_s: f64,
}

impl PerformanceLimits {
    /// One maker's idea of it.
    pub const TYPICAL: Self = Self {
        least_rpm: 600.0,
        least_oil_c: 20.0,
        most_oil_c: 130.0,
        least_supply_v: 11.0,
        most_supply_v: 16.0,
        off_target_deg: 6.0,
        error_filter_s: 0.3,
        off_target_s: 4.5,
        hunting_deg: 4.0,
        hunting_share: 0.3,
        hunting_memory_s: 8.0,
        settle_s: 2.0,
        held_target_deg: 10.0,
        held_s: 10.0,
        step_deg: 8.0,
        step_share: 0.6,
        slow_s: 0.45,
        step_limit_s: 3.0,
        least_move_deg: 2.0,
        slow_least_oil_c: 60.0,
        slow_steps: 4,
        rest_error_deg: 8.0,
        rest_s: 5.0,
    };
}

impl PerformanceLimits {
    /// The first figure that cannot be used, and what it must be.
    #[must_use]
    pub fn wrong(&self) -> Option<(&'static str, &'static str)> {
        let is_share = |share: f64| share > 0.0 && share < 1.0;
        // Every comparison is written so that it is false for a figure that is not a number.
        let rules = [
            ("least_rpm", "0 rpm or more", self.least_rpm >= 0.0),
            ("most_oil_c", "above least_oil_c", self.most_oil_c > self.least_oil_c),
            ("most_supply_v", "above least_supply_v", self.most_supply_v > self.least_supply_v),
            ("off_target_deg", "above 0 degrees", self.off_target_deg > 0.0),
            ("error_filter_s", "0 s or more", self.error_filter_s >= 0.0),
            ("off_target_s", "above 0 s", self.off_target_s > 0.0),
            ("hunting_deg", "above 0 degrees", self.hunting_deg > 0.0),
            ("hunting_share", "between 0 and 1", is_share(self.hunting_share)),
            ("hunting_memory_s", "above 0 s", self.hunting_memory_s > 0.0),
            ("settle_s", "0 s or more", self.settle_s >= 0.0),
            ("held_target_deg", "above 0 degrees", self.held_target_deg > 0.0),
            ("held_s", "above 0 s", self.held_s > 0.0),
            ("step_deg", "above 0 degrees", self.step_deg > 0.0),
            ("step_share", "between 0 and 1", is_share(self.step_share)),
            ("slow_s", "above 0 s", self.slow_s > 0.0),
            ("step_limit_s", "above slow_s", self.step_limit_s > self.slow_s),
            ("least_move_deg", "0 degrees or more", self.least_move_deg >= 0.0),
            ("slow_least_oil_c", "below most_oil_c", self.slow_least_oil_c < self.most_oil_c),
            ("slow_steps", "1 to 6", (1..=6).contains(&self.slow_steps)),
            ("rest_error_deg", "above 0 degrees", self.rest_error_deg > 0.0),
            ("rest_s", "above 0 s", self.rest_s > 0.0),
        ];
        rules.into_iter().find(|(_, _, holds)| !holds).map(|(field, expected, _)| (field, expected))
    }
}

impl Default for PerformanceLimits {
    fn default() -> Self {
        Self::TYPICAL
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limit_each_unusable_figure_is_named() {
        let shipped = PerformanceLimits::TYPICAL;
        assert_eq!(shipped.wrong(), None);
        for (field, limits) in [
            ("least_rpm", PerformanceLimits { least_rpm: -1.0, ..shipped }),
            ("most_oil_c", PerformanceLimits { most_oil_c: 20.0, ..shipped }),
            ("most_supply_v", PerformanceLimits { most_supply_v: f64::NAN, ..shipped }),
            ("off_target_deg", PerformanceLimits { off_target_deg: 0.0, ..shipped }),
            ("hunting_share", PerformanceLimits { hunting_share: 1.0, ..shipped }),
            ("step_limit_s", PerformanceLimits { step_limit_s: 0.45, ..shipped }),
            ("slow_steps", PerformanceLimits { slow_steps: 7, ..shipped }),
            ("rest_s", PerformanceLimits { rest_s: 0.0, ..shipped }),
        ] {
            assert_eq!(limits.wrong().map(|(field, _)| field), Some(field));
        }
    }

    #[test]
    fn published_codes_of_both_camshafts() {
        let texts = |codes: CamCodes| {
            [codes.early, codes.late, codes.slow, codes.correlation].map(|code| code.to_string())
        };
        assert_eq!(texts(CamCodes::INTAKE), ["P0011", "P0012", "P000A", "P0016"]);
        assert_eq!(texts(CamCodes::EXHAUST), ["P0014", "P0015", "P000B", "P0017"]);
    }
}
