//! A vane phaser: turns a camshaft against its sprocket with oil, away from a rest position and back.
//!
//! Model: oil pressure and the camshaft's torque together drive oil through the valve's port; a
//! check valve lets nothing flow back, so torque pulses ratchet the vane along. A pin holds the vane
//! at rest until oil lifts it. Everything is written in the phaser's own sense, "away from rest":
//! an intake phaser rests retarded and moves towards advance, an exhaust phaser the other way round.
//! Limits: no vane mass, no leak between the chambers, the crank must turn for the vane to move.

use crate::numerics::elementary::sin;
use crate::physics::port::Passage;
use crate::physics::pump::{ATMOSPHERE_PA, PASCALS_PER_BAR};
use crate::units::{CrankDegrees, Rpm};
use serde::{Deserialize, Serialize};

/// Degrees in a radian.
const DEGREES_PER_RADIAN: f64 = 180.0 / core::f64::consts::PI;
/// A camshaft turns once for two turns of the crankshaft, so an angle counts double at the crank.
const CRANK_PER_CAM: f64 = 2.0;
/// A four-cylinder camshaft gives two torque pulses a turn of the crankshaft.
const PULSES_PER_TURN: f64 = 2.0;

/// Mean torque that a camshaft with its valves takes (engineering estimate throughout).
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CamshaftDrag {
    /// Friction at high speed [N m].
    pub fast_nm: f64,
    /// Further friction at a standstill, which falls with speed [N m].
    pub slow_nm: f64,
    /// Speed at which that has halved [rpm].
    pub slow_rpm: f64,
    /// Oil drag at low speed for each pascal second [N m/(Pa s)].
    pub viscous_nm: f64,
    /// Further oil drag at 6000 rpm for each pascal second [N m/(Pa s)].
    pub viscous_fast_nm: f64,
    /// Viscosity beyond which thicker oil drags no more, as the films heat up [Pa s].
    pub most_pa_s: f64,
}

impl CamshaftDrag {
    /// A camshaft with four cylinders' valves.
    pub const TYPICAL: Self = Self {
        fast_nm: 0.6,
        slow_nm: 0.9,
        slow_rpm: 900.0,
        viscous_nm: 3.6,
        viscous_fast_nm: 9.0,
        most_pa_s: 0.25,
    };

    /// Mean torque that retards the camshaft [N m].
    #[must_use]
    pub fn mean_nm(&self, speed: Rpm, viscosity_pa_s: f64) -> f64 {
        let viscous = self.viscous_nm + self.viscous_fast_nm * speed.0 / 6_000.0;
        self.fast_nm
            + self.slow_nm / (1.0 + speed.0 / self.slow_rpm)
            + viscosity_pa_s.min(self.most_pa_s) * viscous
    }
}

impl Default for CamshaftDrag {
    fn default() -> Self {
        Self::TYPICAL
    }
}

/// Which way drag pushes a phaser.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum DragPushes {
    /// Towards rest: an intake phaser, at rest when retarded.
    TowardsRest,
    /// Away from rest: an exhaust phaser, at rest when advanced.
    AwayFromRest,
}

/// One phaser.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Phaser {
    /// Oil moved for each radian of the camshaft [m³/rad] (engineering estimate).
    pub chamber_m3_per_rad: f64,
    /// Travel at the crankshaft [degrees], 25 to 60 (published range of several makers).
    pub travel_deg: f64,
    /// Amplitude of the torque pulses of the valve springs [N m] (engineering estimate).
    pub pulse_nm: f64,
    /// Which way the camshaft's drag pushes.
    pub drag: DragPushes,
    /// Torque of the assist spring, positive away from rest [N m] (engineering estimate: it about
    /// balances hot drag on the intake side and overcomes it on the exhaust side).
    pub spring_nm: f64,
    /// Oil that the vane can squeeze when it carries air [cm³] (engineering estimate).
    pub springy_cm3: f64,
    /// Oil pressure behind the screen that lifts the lock pin [bar], 0.3 to 1 (engineering
    /// estimate).
    pub unlock_bar: f64,
    /// Opening of the port away from rest that lets oil to the pin, 0 to 1 (engineering estimate).
    pub unlock_opening: f64,
}

impl Phaser {
    /// Intake: at rest retarded, 50 degrees of travel (engineering estimate).
    pub const TYPICAL_INTAKE: Self = Self {
        chamber_m3_per_rad: 4.2e-5,
        travel_deg: 50.0,
        pulse_nm: 8.0,
        drag: DragPushes::TowardsRest,
        spring_nm: 1.0,
        springy_cm3: 6.0,
        unlock_bar: 0.35,
        unlock_opening: 0.1,
    };

    /// Exhaust: at rest advanced, so drag pushes it away and a stronger spring brings it back
    /// (published: exhaust phasers carry an assist spring towards advance); less travel.
    pub const TYPICAL_EXHAUST: Self = Self {
        travel_deg: 40.0,
        drag: DragPushes::AwayFromRest,
        spring_nm: -2.0,
        ..Self::TYPICAL_INTAKE
    };

    /// Mean torque of drag and spring, positive away from rest [N m].
    #[must_use]
    pub fn steady_nm(&self, mean_drag_nm: f64) -> f64 {
        let drag_nm = match self.drag {
            DragPushes::TowardsRest => -mean_drag_nm,
            DragPushes::AwayFromRest => mean_drag_nm,
        };
        self.spring_nm + drag_nm
    }
}

/// The height of the torque pulse at an angle of the crankshaft [rad]: -1 to 1.
#[must_use]
#[inline]
pub fn pulse(crank_rad: f64) -> f64 {
    sin(PULSES_PER_TURN * crank_rad)
}

/// What acts on a phaser in one time step.
#[derive(Debug, Clone, Copy)]
pub struct PhaserDrive {
    /// Gallery pressure [Pa].
    pub gallery_pa: f64,
    /// Opening of the port, -1 to 1.
    pub opening: f64,
    /// Mean torque away from rest [N m].
    pub steady_nm: f64,
    /// Height of the torque pulse, -1 to 1; 0 when the engine stands.
    pub pulse: f64,
    /// Air share of the oil, 0 to 1.
    pub air: f64,
    /// Whether the crankshaft turns: static friction holds a vane that nothing turns.
    pub is_turning: bool,
}

/// Where a phaser is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PhaserState {
    away_deg: f64,
    ripple_deg: f64,
    is_locked: bool,
}

impl Default for PhaserState {
    fn default() -> Self {
        Self::LOCKED
    }
}

impl PhaserState {
    /// At rest, pin in.
    pub const LOCKED: Self = Self { away_deg: 0.0, ripple_deg: 0.0, is_locked: true };

    /// A vane standing free at an angle.
    #[must_use]
    pub const fn free_at(angle: CrankDegrees) -> Self {
        Self { away_deg: angle.0, ripple_deg: 0.0, is_locked: false }
    }

    /// Mean angle away from rest.
    #[must_use]
    pub const fn away(&self) -> CrankDegrees {
        CrankDegrees(self.away_deg)
    }

    /// Angle with the ripple of the torque pulses, as the teeth of a sensor wheel pass by.
    #[must_use]
    pub const fn seen(&self) -> CrankDegrees {
        CrankDegrees(self.away_deg + self.ripple_deg)
    }

    /// Whether the pin holds the vane.
    #[must_use]
    pub const fn is_locked(&self) -> bool {
        self.is_locked
    }

    /// Moves on by `dt_s` seconds and returns the oil drawn from the gallery [m³/s].
    #[inline]
    pub fn step(
        &mut self,
        phaser: &Phaser,
        passage: &Passage,
        drive: &PhaserDrive,
        dt_s: f64,
    ) -> f64 {
        let supply_pa = passage.supply_pa(drive.gallery_pa);
        let leak_m3_s = passage.leak_m3_s(supply_pa);
        let pin_is_lifted = supply_pa > phaser.unlock_bar * PASCALS_PER_BAR
            && drive.opening > phaser.unlock_opening;
        if self.is_locked {
            if !pin_is_lifted {
                self.ripple_deg = 0.0;
                return leak_m3_s;
            }
            self.is_locked = false;
        }
        if !drive.is_turning {
            self.ripple_deg = 0.0;
            return leak_m3_s;
        }
        let pulse_nm = phaser.pulse_nm * drive.pulse;
        let per_rad = phaser.chamber_m3_per_rad;
        let mut flow_m3_s = 0.0;
        if drive.opening != 0.0 {
            let way = drive.opening.signum();
            let drive_pa = supply_pa + way * (drive.steady_nm + pulse_nm) / per_rad;
            flow_m3_s = passage.flow_m3_s(drive.opening, drive_pa);
            let rate_deg_s = CRANK_PER_CAM * flow_m3_s / per_rad * DEGREES_PER_RADIAN;
            let wanted_deg = self.away_deg + way * rate_deg_s * dt_s;
            self.away_deg = wanted_deg.clamp(0.0, phaser.travel_deg);
            // A chamber that is full takes no more oil.
            if !(0.0..=phaser.travel_deg).contains(&wanted_deg) {
                flow_m3_s = 0.0;
            }
        }
        if self.away_deg <= 0.0 && drive.opening <= 0.0 {
            self.is_locked = true;
        }
        // Air lets the vane give way to the pulses: torque / (chamber area · radius)² · springiness.
        let give_rad = pulse_nm / (per_rad * per_rad) * phaser.springy_cm3 * 1e-6 * drive.air
            / (drive.gallery_pa + ATMOSPHERE_PA);
        self.ripple_deg = CRANK_PER_CAM * give_rad * DEGREES_PER_RADIAN;
        leak_m3_s + flow_m3_s
    }
}

#[cfg(test)]
mod tests;
