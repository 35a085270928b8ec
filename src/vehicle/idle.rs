//! An engine left to itself: crankshaft, idle control, and how it feels to those who sit above it.
//!
//! Under way the road decides the engine's speed; standing still with the pedal up, torque and friction
//! do. Roughness is the standard deviation of speed over some two seconds. Limits of feeling are
//! engineering estimates; that a valve held fully on makes an engine stall or idle roughly, and off
//! lets it idle normally, is published in makers' service information.

use crate::control_module::idle_control::{IdleControl, IdleControlSpec, IdleDrive};
use crate::numerics::streams::Stream;
use crate::physics::crank::{Crank, CrankDrive, CrankSpec};
use crate::units::{Celsius, Rpm, Watts};
use crate::vehicle::cam_line::DT_S;
use crate::vehicle::route::Demand;
use crate::vehicle::run_record::Idling;
use serde::{Deserialize, Serialize};

/// Standard deviation of speed from which people call an idle rough [rpm].
const ROUGH_RPM: f64 = 8.0;
/// How much of a new speed the feeling for the mean takes in one tick, half a second, so that a slow drift
/// is not felt as shaking; and for the spread, two seconds.
const MEAN_SHARE: f64 = DT_S / 0.5;
const SPREAD_SHARE: f64 = DT_S / 2.0;
/// Time after a start, after coming to a stop or after a change of the speed that is asked in which speed
/// is still settling [ticks].
const SETTLING_TICKS: u32 = 5_000;
/// A change of the asked speed that counts as one [rpm].
const NEW_SPEED_RPM: f64 = 1.0;
/// Torque of a starter that stands, at the crankshaft [N m], and the speed at which it gives none [rpm].
const STARTER_NM: f64 = 80.0;
const STARTER_FREE_RPM: f64 = 340.0;
/// Speed at which the starter has let go [rpm].
const STARTER_LETS_GO_RPM: f64 = 400.0;
/// Ticks between two runs of the idle control.
const CONTROL_TICKS: u32 = 10;

/// An engine's idle by design.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct IdleSpec {
    /// Crankshaft, cylinders, throttle.
    pub crank: CrankSpec,
    /// Calibration of the idle control.
    pub control: IdleControlSpec,
}

impl IdleSpec {
    /// A four-cylinder petrol engine of 1.4 l (engineering estimate).
    pub const TYPICAL: Self = Self { crank: CrankSpec::TYPICAL, control: IdleControlSpec::TYPICAL };
}

/// What decides how it idles in one tick.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct IdleTick {
    /// Both camshafts' way from rest together [degrees at the crank], of a V engine the mean of its banks.
    pub away_deg: f64,
    /// Viscosity of the oil [Pa s].
    pub viscosity_pa_s: f64,
    /// Coolant.
    pub coolant: Celsius,
    /// Air outside.
    pub outside: Celsius,
    /// Mechanical power of the generator.
    pub generator: Watts,
}

/// The engine's own motion.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct Idle {
    spec: IdleSpec,
    crank: Crank,
    control: IdleControl,
    drive: IdleDrive,
    idling_ticks: u32,
    /// Ticks since the asked speed was another one.
    steady_ticks: u32,
    asked_rpm: f64,
    mean_rpm: f64,
    variance_rpm2: f64,
    is_stalled: bool,
    starter_turns: bool,
}

impl Idle {
    /// An engine that stands; `scatter` decides from cycle to cycle.
    #[must_use]
    pub fn new(spec: IdleSpec, scatter: Stream) -> Self {
        Self {
            crank: Crank::new(&spec.crank, scatter),
            control: IdleControl::new(spec.control),
            drive: IdleDrive { opening: spec.control.warm_opening, spark: 1.0 },
            idling_ticks: 0,
            steady_ticks: 0,
            asked_rpm: 0.0,
            mean_rpm: 0.0,
            variance_rpm2: 0.0,
            is_stalled: false,
            starter_turns: false,
            spec,
        }
    }

    /// Turned by road, brake or starter at the speed that is asked.
    #[inline]
    pub fn follow(&mut self, demand: &Demand) {
        self.crank.follow(&self.spec.crank, demand.speed, demand.load);
        self.idling_ticks = 0;
        self.steady_ticks = 0;
    }

    /// The starter has turned the engine for a while and the first charge is about to fire: the manifold
    /// is full of air, and the starter helps until the engine runs by itself.
    pub fn fire_up(&mut self) {
        let speed = self.crank.speed();
        self.stand();
        self.crank.spin(speed);
        self.starter_turns = true;
    }

    fn starter_nm(&mut self) -> f64 {
        let rpm = self.crank.speed().0;
        self.starter_turns &= rpm < STARTER_LETS_GO_RPM;
        if self.starter_turns { STARTER_NM * (1.0 - rpm / STARTER_FREE_RPM).max(0.0) } else { 0.0 }
    }

    /// The engine was switched off.
    pub fn stand(&mut self) {
        self.crank.stand(&self.spec.crank);
        self.is_stalled = false;
        self.starter_turns = false;
        self.idling_ticks = 0;
        self.steady_ticks = 0;
    }

    /// One tick by itself; returns the speed.
    #[inline]
    pub fn tick(&mut self, warm: Rpm, around: &IdleTick) -> Rpm {
        if self.is_stalled {
            return Rpm(0.0);
        }
        if self.idling_ticks.is_multiple_of(CONTROL_TICKS) {
            let dt_s = f64::from(CONTROL_TICKS) * DT_S;
            self.drive = self.control.update(warm, self.crank.speed(), around.coolant, dt_s);
        }
        if (warm.0 - self.asked_rpm).abs() > NEW_SPEED_RPM {
            self.asked_rpm = warm.0;
            self.steady_ticks = 0;
        }
        let starter_nm = self.starter_nm();
        let crank = &self.spec.crank;
        let drive = CrankDrive {
            opening: self.drive.opening,
            spark: self.drive.spark,
            overlap_deg: crank.breathing.overlap_at_rest_deg + around.away_deg,
            viscosity_pa_s: around.viscosity_pa_s,
            generator: around.generator,
            starter_nm,
            outside: around.outside,
        };
        self.crank.step(crank, &drive, DT_S);
        self.feel();
        self.crank.speed()
    }

    fn feel(&mut self) {
        self.idling_ticks = self.idling_ticks.saturating_add(1);
        self.steady_ticks = self.steady_ticks.saturating_add(1);
        let rpm = self.crank.speed().0;
        if self.steady_ticks < SETTLING_TICKS {
            self.mean_rpm = rpm;
            self.variance_rpm2 = 0.0;
        } else {
            let off = rpm - self.mean_rpm;
            self.mean_rpm += off * MEAN_SHARE;
            self.variance_rpm2 += (off * off - self.variance_rpm2) * SPREAD_SHARE;
        }
        // Once through the first fires, the flywheel must carry it over each compression.
        if self.idling_ticks > 1_000 && !self.crank.carries_on(&self.spec.crank) {
            self.crank.stand(&self.spec.crank);
            self.is_stalled = true;
        }
    }

    /// How it idles now.
    #[must_use]
    pub fn quality(&self) -> Idling {
        if self.is_stalled {
            Idling::Stalls
        } else if self.idling_ticks > 0 && self.variance_rpm2 > ROUGH_RPM * ROUGH_RPM {
            Idling::Rough
        } else {
            Idling::Smooth
        }
    }

    /// Whether it has stalled since it was last started.
    #[must_use]
    pub const fn is_stalled(&self) -> bool {
        self.is_stalled
    }

    /// Standard deviation of speed over the last two seconds [rpm]; 0 while it settles.
    #[must_use]
    pub fn spread_rpm(&self) -> f64 {
        self.variance_rpm2.sqrt()
    }

    /// The crankshaft.
    #[must_use]
    pub const fn crank(&self) -> &Crank {
        &self.crank
    }
}
