//! A vane phaser: turns a camshaft against its sprocket with oil, away from a rest position and back.
//!
//! Model: oil pressure and the camshaft's torque together drive oil through the valve's port. With a
//! check valve in the feed nothing flows back, so torque pulses ratchet the vane along, with no
//! pressure at all if need be; without one they only shake it. The vane's seals leak from one
//! chamber to the other, in proportion to the torque that the vane carries. At rest a pin holds it: oil
//! lifts the pin, and it drops in again only at rest and once its oil is gone. Chambers at the end of
//! the travel take no oil. While the engine stands, the camshaft's dry friction holds the vane against
//! a spring that is weaker; a stronger one carries it home, as quickly as oil finds its way out.
//! Everything is written in the phaser's own sense, "away from rest": an intake phaser rests
//! retarded and moves towards advance, an exhaust phaser the other way round.
//! Limits: no vane mass; chambers are always full (no slack from air after a night); the torque of the lobes on
//! which an engine happens to stop is left out.

mod lobes;

pub use lobes::{HARMONICS, Lobes, PulseAngle};

use crate::physics::port::Passage;
use crate::physics::pump::{ATMOSPHERE_PA, PASCALS_PER_BAR};
use crate::units::{CrankDegrees, Rpm};
use serde::{Deserialize, Serialize};

/// Degrees in a radian.
const DEGREES_PER_RADIAN: f64 = 180.0 / core::f64::consts::PI;
/// A camshaft turns once for two turns of the crankshaft, so an angle counts double at the crank.
const CRANK_PER_CAM: f64 = 2.0;

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

    /// That of a camshaft with a share of the valves.
    #[must_use]
    pub fn of_share(self, share: f64) -> Self {
        Self {
            fast_nm: self.fast_nm * share,
            slow_nm: self.slow_nm * share,
            viscous_nm: self.viscous_nm * share,
            viscous_fast_nm: self.viscous_fast_nm * share,
            ..self
        }
    }

    /// Dry friction of a camshaft that stands [N m]: what holds it against a spring.
    #[must_use]
    pub fn standing_nm(&self) -> f64 {
        self.fast_nm + self.slow_nm
    }

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
    /// The lobes whose valve springs push the camshaft to and fro.
    pub lobes: Lobes,
    /// Which way the camshaft's drag pushes.
    pub drag: DragPushes,
    /// Torque of the assist spring, positive away from rest [N m] (engineering estimate: it about
    /// balances hot drag on the intake side and overcomes it on the exhaust side).
    pub spring_nm: f64,
    /// Oil that is left in the smaller chambers at either end of the travel [cm³], more than 0
    /// (engineering estimate: both together give way at mid-travel like 6 cm³ of oil).
    pub clearance_cm3: f64,
    /// Geometry of the leak between the chambers [m³]: flow = this · pressure / viscosity
    /// (engineering estimate: minutes to come home against a closed valve).
    pub leak_m3: f64,
    /// Whether a check valve in the feed keeps oil from flowing back.
    pub has_check_valve: bool,
    /// Oil pressure behind the screen that lifts the lock pin [bar], 0.3 to 1 (engineering
    /// estimate).
    pub unlock_bar: f64,
    /// Pressure below which its spring drops it in again [bar], below `unlock_bar` (engineering
    /// estimate).
    pub relock_bar: f64,
    /// Opening of the port away from rest that lets oil to the pin, 0 to 1 (engineering estimate).
    pub unlock_opening: f64,
}

impl Phaser {
    /// Intake: at rest retarded, 50 degrees of travel (engineering estimate).
    pub const TYPICAL_INTAKE: Self = Self {
        chamber_m3_per_rad: 4.2e-5,
        travel_deg: 50.0,
        lobes: Lobes::TYPICAL,
        drag: DragPushes::TowardsRest,
        spring_nm: 1.0,
        clearance_cm3: 4.0,
        leak_m3: 1e-14,
        has_check_valve: true,
        unlock_bar: 0.35,
        relock_bar: 0.2,
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

    /// Torque that turns the vane of an engine that stands, positive away from rest [N m]: what the
    /// spring has left of the camshaft's dry friction.
    #[must_use]
    pub fn standing_nm(&self, dry_friction_nm: f64) -> f64 {
        (self.spring_nm.abs() - dry_friction_nm).max(0.0).copysign(self.spring_nm)
    }

    /// Oil in the chambers that grow away from rest, and in the others, at an angle [m³]. Their sum is
    /// the same at every angle.
    #[must_use]
    #[inline]
    pub fn chambers_m3(&self, away_deg: f64) -> (f64, f64) {
        let per_deg = self.chamber_m3_per_rad / (CRANK_PER_CAM * DEGREES_PER_RADIAN);
        let clearance_m3 = self.clearance_cm3 * 1e-6;
        (clearance_m3 + per_deg * away_deg, clearance_m3 + per_deg * (self.travel_deg - away_deg))
    }
}

/// What acts on a phaser in one time step.
#[derive(Debug, Clone, Copy)]
pub struct PhaserDrive {
    /// Gallery pressure [Pa].
    pub gallery_pa: f64,
    /// Opening of the port, -1 to 1.
    pub opening: f64,
    /// Mean torque away from rest [N m]; of an engine that stands, [`Phaser::standing_nm`].
    pub steady_nm: f64,
    /// Torque of the pulses now, away from rest [N m]; 0 when the engine stands.
    pub pulse_nm: f64,
    /// Viscosity of the oil [Pa s], more than 0.
    pub viscosity_pa_s: f64,
    /// Air share of the oil, 0 to 1.
    pub air: f64,
}

/// Where a phaser is.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
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
        if self.is_locked {
            let pin_is_lifted = supply_pa > phaser.unlock_bar * PASCALS_PER_BAR
                && drive.opening > phaser.unlock_opening;
            self.ripple_deg = 0.0;
            if !pin_is_lifted {
                return leak_m3_s;
            }
            self.is_locked = false;
        }
        let per_rad = phaser.chamber_m3_per_rad;
        let deg_per_m3 = CRANK_PER_CAM * DEGREES_PER_RADIAN / per_rad;
        // 1. What the torque pushes past the vane's seals, and what flows through the port.
        let torque_pa = (drive.steady_nm + drive.pulse_nm) / per_rad;
        let seeping_m3_s = torque_pa * phaser.leak_m3 / drive.viscosity_pa_s;
        let mut flow_m3_s = 0.0;
        let way = drive.opening.signum();
        if drive.opening != 0.0 {
            let drive_pa = supply_pa + way * torque_pa;
            flow_m3_s = if drive_pa >= 0.0 || phaser.has_check_valve {
                passage.flow_m3_s(drive.opening, drive_pa)
            } else {
                -passage.flow_m3_s(drive.opening, -drive_pa)
            };
        }
        // 2. A chamber that is full takes no more oil: what would have gone in is cut.
        let wanted_deg = self.away_deg + (way * flow_m3_s + seeping_m3_s) * deg_per_m3 * dt_s;
        let there_deg = wanted_deg.clamp(0.0, phaser.travel_deg);
        if there_deg != wanted_deg {
            let moved_m3_s = (there_deg - self.away_deg) / (deg_per_m3 * dt_s);
            let through_m3_s = way * (moved_m3_s - seeping_m3_s);
            // Never more than the port gave, and nothing where the seals alone fill the chamber.
            flow_m3_s = if flow_m3_s > 0.0 { through_m3_s.clamp(0.0, flow_m3_s) } else { 0.0 };
        }
        self.away_deg = there_deg;
        // 3. The pin drops in at rest, once the valve or the lost pressure has drained it.
        let pin_is_drained = drive.opening < 0.0 || supply_pa < phaser.relock_bar * PASCALS_PER_BAR;
        if there_deg <= 0.0 && pin_is_drained {
            self.is_locked = true;
        }
        // 4. Air lets the vane give way to the pulses: the chambers are two springs on one vane.
        let (one_m3, other_m3) = phaser.chambers_m3(there_deg);
        let springy_m3 = one_m3 * other_m3 / (one_m3 + other_m3);
        let give_rad = drive.pulse_nm / (per_rad * per_rad) * springy_m3 * drive.air
            / (drive.gallery_pa + ATMOSPHERE_PA);
        self.ripple_deg = CRANK_PER_CAM * give_rad * DEGREES_PER_RADIAN;
        leak_m3_s + flow_m3_s
    }
}

#[cfg(test)]
mod tests;
