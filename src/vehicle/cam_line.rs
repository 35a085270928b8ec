//! One camshaft from the module's drive to the sensor: control, coil, spool, port, phaser, monitor.

use crate::control_module::cam_control::{CamControl, CamControlSpec, CamInputs};
use crate::control_module::performance_limits::{CamCodes, PerformanceLimits, RestsAt};
use crate::control_module::performance_monitor::{Conditions, PerformanceMonitor};
use crate::control_module::target_map::TargetMap;
use crate::physics::actuator::Actuator;
use crate::physics::oil::Fluid;
use crate::physics::phaser::{
    CamshaftDrag, HARMONICS, Lobes, Phaser, PhaserDrive, PhaserState, PulseAngle,
};
use crate::physics::port::{Passage, Port};
use crate::physics::pulsed_coil::CoilDrive;
use crate::physics::solenoid::FluxLoop;
use crate::physics::spool::Motion;
use crate::physics::spool_follow::{Follower, SpoolState};
use crate::units::{
    Amperes, Celsius, CrankDegrees, Henries, Millimetres, Newtons, Ohms, Rpm, Volts,
};
use serde::{Deserialize, Serialize};

/// Step of the running engine [s]: one tick.
pub const DT_S: f64 = 1e-3;

/// What a camshaft, its phaser, valve and control are by design.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CamSpec {
    /// Hydraulics of the valve.
    pub port: Port,
    /// The phaser.
    pub phaser: Phaser,
    /// The camshaft's drag.
    pub drag: CamshaftDrag,
    /// Calibration of the control.
    pub control: CamControlSpec,
    /// Wanted angles over engine speed and load.
    pub map: TargetMap,
    /// Calibration of the monitors.
    pub limits: PerformanceLimits,
    /// The monitors' codes.
    pub codes: CamCodes,
    /// Which way the camshaft lies at rest.
    pub rests_at: RestsAt,
    /// Current at which a good valve of this kind holds the phase [A] (engineering estimate).
    pub hold_current_a: f64,
}

impl CamSpec {
    /// An intake camshaft.
    pub const INTAKE: Self = Self {
        port: Port::TYPICAL,
        phaser: Phaser::TYPICAL_INTAKE,
        drag: CamshaftDrag::TYPICAL,
        control: CamControlSpec::TYPICAL,
        map: TargetMap::TYPICAL_INTAKE,
        limits: PerformanceLimits::TYPICAL,
        codes: CamCodes::INTAKE,
        rests_at: RestsAt::Retarded,
        hold_current_a: 0.395,
    };

    /// An exhaust camshaft.
    pub const EXHAUST: Self = Self {
        phaser: Phaser::TYPICAL_EXHAUST,
        map: TargetMap::TYPICAL_EXHAUST,
        codes: CamCodes::EXHAUST,
        rests_at: RestsAt::Advanced,
        ..Self::INTAKE
    };

    /// The same for a camshaft that serves another number of cylinders: more or fewer valves drag on it, and the
    /// phaser's assist spring is made for that (engineering estimate).
    #[must_use]
    pub fn with_cylinders(self, cylinders: u8) -> Self {
        let lobes = self.phaser.lobes;
        let share = f64::from(cylinders) / f64::from(lobes.cylinders);
        let phaser = Phaser {
            lobes: Lobes { cylinders, ..lobes },
            spring_nm: self.phaser.spring_nm * share,
            ..self.phaser
        };
        Self { phaser, drag: self.drag.of_share(share), ..self }
    }
}

/// The state of one valve and its circuit: what a fault changes.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CamCondition {
    /// Blocked share of the screen, 0 (clean) to 1.
    pub blockage: f64,
    /// Force at which the spool breaks away [N], 0 (free) to 20.
    pub stiction: Newtons,
    /// Magnetics and mechanics of the valve that is fitted, clean.
    pub actuator: Actuator,
    /// Turns that the supply drives, relative to the reference winding.
    pub turns: f64,
    /// Conductance of shorted turns, seen from the reference winding [S], 0 (none) or more.
    pub shorted_s: f64,
    /// The circuit.
    pub coil: CoilDrive,
    /// Duty that a fault or an actuator request forces on the valve, 0 to 1.
    pub forced_duty: Option<f64>,
    /// Whether a circuit code keeps the module from controlling and from judging performance.
    pub is_inhibited: bool,
    /// Whether a confirmed performance code makes the module hold the camshaft at rest.
    pub is_held_at_rest: bool,
}

impl CamCondition {
    /// A sound valve of 11 ohm at 95 °C on 14.1 V (check figures; a vehicle has its own).
    pub const SOUND: Self = Self {
        blockage: 0.0,
        stiction: Newtons(0.0),
        actuator: Actuator::REFERENCE,
        turns: 1.0,
        shorted_s: 0.0,
        coil: CoilDrive {
            v_on: Volts(14.1),
            v_freewheel: Volts(0.8),
            r_total: Ohms(14.69),
            inductance: Henries(12.48e-3),
            pulses_per_s: 300.0,
        },
        forced_duty: None,
        is_inhibited: false,
        is_held_at_rest: false,
    };
}

/// Coil and spool of a valve in an oil, in steps of a tick.
fn follower(condition: &CamCondition, fluid: &Fluid) -> Follower {
    let flux = FluxLoop::with_circuit(condition.turns, condition.coil.r_total, condition.shorted_s);
    let spool = condition.actuator.spool.gummed(condition.stiction);
    Follower::new(&condition.actuator, &spool, fluid.viscosity_pa_s, &flux, DT_S)
}

/// What all camshafts of a bank share in one tick.
#[derive(Debug, Clone, Copy)]
pub struct SharedTick {
    /// Gallery pressure [Pa].
    pub gallery_pa: f64,
    /// Where the torque pulses stand.
    pub pulses: PulseAngle,
    /// Air share of the oil, 0 to 1.
    pub air: f64,
    /// Whether the crankshaft turns.
    pub is_turning: bool,
}

/// One camshaft in motion.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct CamLine {
    spec: CamSpec,
    condition: CamCondition,
    control: CamControl,
    monitor: PerformanceMonitor,
    target: CrankDegrees,
    spool: SpoolState,
    vane: PhaserState,
    wanted_a: f64,
    passage: Passage,
    follower: Follower,
    /// Shares of the stroke in a metre [1/m].
    per_stroke: f64,
    viscosity_pa_s: f64,
    steady_nm: f64,
    standing_nm: f64,
    pulses_nm: [f64; HARMONICS],
}

impl CamLine {
    /// A camshaft at rest in an oil.
    #[must_use]
    pub fn new(spec: CamSpec, condition: CamCondition, fluid: &Fluid) -> Self {
        let follower = follower(&condition, fluid);
        Self {
            control: CamControl::new(spec.control),
            monitor: PerformanceMonitor::new(spec.codes, spec.rests_at, spec.limits),
            target: CrankDegrees(0.0),
            spool: follower.resting_at(Millimetres(0.0)),
            vane: PhaserState::LOCKED,
            wanted_a: 0.0,
            passage: spec.port.passage(condition.blockage, fluid),
            per_stroke: 1e3 / condition.actuator.spool.stroke.0,
            follower,
            viscosity_pa_s: fluid.viscosity_pa_s,
            steady_nm: 0.0,
            standing_nm: spec.phaser.standing_nm(spec.drag.standing_nm()),
            pulses_nm: spec.phaser.lobes.harmonics_nm(),
            spec,
            condition,
        }
    }

    /// Works out again what depends on the oil.
    pub fn refresh(&mut self, fluid: &Fluid) {
        self.passage = self.spec.port.passage(self.condition.blockage, fluid);
        self.follower = follower(&self.condition, fluid);
        self.per_stroke = 1e3 / self.condition.actuator.spool.stroke.0;
        self.viscosity_pa_s = fluid.viscosity_pa_s;
    }

    /// Changes valve and circuit; follow it with [`Self::refresh`].
    pub const fn set_condition(&mut self, condition: CamCondition) {
        self.condition = condition;
    }

    /// The valve and its circuit.
    #[must_use]
    pub const fn condition(&self) -> &CamCondition {
        &self.condition
    }

    /// Gives the module the hold duty that earlier drives with this circuit would have taught it.
    pub fn assume_learnt(&mut self, supply: Volts, oil: Celsius) {
        let wanted = self.condition.coil.duty_for(Amperes(self.spec.hold_current_a));
        self.control.set_learnt(wanted / self.control.hold_of_a_new_valve(supply, oil));
    }

    /// The module's task of ten milliseconds. The target comes from the map at the engine's speed and
    /// load, or from a bench that puts another one in its place.
    pub fn control(
        &mut self,
        load: f64,
        in_its_place: Option<CrankDegrees>,
        conditions: &Conditions,
        is_powered: bool,
    ) {
        let target = in_its_place.unwrap_or_else(|| self.wanted(load, conditions));
        self.target = target;
        let conditions = Conditions {
            circuit_is_sound: conditions.circuit_is_sound && !self.condition.is_inhibited,
            ..*conditions
        };
        let inputs = CamInputs {
            target,
            // The module averages over a torque pulse for its control, and judges each tooth.
            measured: self.vane.away(),
            supply: conditions.supply,
            oil: conditions.oil,
            is_permitted: is_powered && !self.condition.is_inhibited,
        };
        let wanted = self.control.update(&inputs);
        if is_powered {
            self.monitor.update(target, &conditions);
            let duty = self.condition.forced_duty.unwrap_or(wanted);
            self.wanted_a = self.condition.coil.average(duty).0;
        } else {
            self.wanted_a = 0.0;
        }
        let drag_nm = self.spec.drag.mean_nm(conditions.speed, self.viscosity_pa_s);
        self.steady_nm = self.spec.phaser.steady_nm(drag_nm);
    }

    /// What the module wants of the camshaft.
    fn wanted(&self, load: f64, conditions: &Conditions) -> CrankDegrees {
        if self.condition.is_held_at_rest {
            CrankDegrees(0.0)
        } else if self.spec.control.allows(conditions.speed, conditions.oil) {
            self.spec.map.at(conditions.speed, load)
        } else {
            CrankDegrees(0.0)
        }
    }

    /// Moves coil, spool and vane on by one tick and returns the oil drawn [m³/s].
    #[inline]
    pub fn tick(&mut self, shared: &SharedTick) -> f64 {
        self.follower.follow(&mut self.spool, Amperes(self.wanted_a));
        let opening = self.spec.port.opening(self.spool.position_m() * self.per_stroke);
        let drive = PhaserDrive {
            gallery_pa: shared.gallery_pa,
            opening,
            steady_nm: if shared.is_turning { self.steady_nm } else { self.standing_nm },
            pulse_nm: shared.pulses.torque_nm(&self.pulses_nm),
            viscosity_pa_s: self.viscosity_pa_s,
            air: shared.air,
        };
        let drawn_m3_s = self.vane.step(&self.spec.phaser, &self.passage, &drive, DT_S);
        self.monitor.sample(self.vane.seen());
        drawn_m3_s
    }

    /// Whether the pin holds the vane throughout the next tick, so that no torque pulse is felt: a
    /// spool that is held moves in the tick after it has set off.
    #[must_use]
    #[inline]
    pub fn is_parked(&self) -> bool {
        self.vane.is_locked()
            && self.spool.motion() == Motion::Held
            && self.spec.port.opening(self.spool.position_m() * self.per_stroke)
                <= self.spec.phaser.unlock_opening
    }

    /// Lets the camshaft stand for some seconds with the pressure gone and no current.
    pub fn stand(&mut self, seconds: f64) {
        if self.vane.is_locked() {
            return;
        }
        let drive = PhaserDrive {
            gallery_pa: 0.0,
            opening: self.spec.port.opening(self.spool.position_m() * self.per_stroke),
            steady_nm: self.standing_nm,
            pulse_nm: 0.0,
            viscosity_pa_s: self.viscosity_pa_s,
            air: 0.0,
        };
        self.vane.step(&self.spec.phaser, &self.passage, &drive, seconds);
    }

    /// Angle away from rest as the sensor sees it.
    #[must_use]
    pub const fn seen(&self) -> CrankDegrees {
        self.vane.seen()
    }

    /// Wanted angle away from rest.
    #[must_use]
    pub const fn target(&self) -> CrankDegrees {
        self.target
    }

    /// Duty that the valve gets, 0 to 1.
    #[must_use]
    pub fn duty(&self) -> f64 {
        self.condition.forced_duty.unwrap_or(self.control.duty())
    }

    /// Average current through the valve now.
    #[must_use]
    pub const fn current(&self) -> Amperes {
        self.spool.current()
    }

    /// The spool.
    #[must_use]
    pub const fn spool(&self) -> SpoolState {
        self.spool
    }

    /// The vane.
    #[must_use]
    pub const fn vane(&self) -> PhaserState {
        self.vane
    }

    /// The monitors.
    #[must_use]
    pub const fn monitor(&self) -> &PerformanceMonitor {
        &self.monitor
    }

    /// What the module has learnt and drives.
    #[must_use]
    pub const fn module(&self) -> &CamControl {
        &self.control
    }

    /// The module's battery was off: it forgets what it learnt.
    pub fn forget(&mut self) {
        self.control = CamControl::new(self.spec.control);
    }

    /// A new driving cycle begins.
    pub fn begin_cycle(&mut self) {
        self.monitor.begin_cycle();
    }

    /// Mean drag of the camshaft at a speed [N m], for a display.
    #[must_use]
    pub fn drag_nm(&self, speed: Rpm) -> f64 {
        self.spec.drag.mean_nm(speed, self.viscosity_pa_s)
    }
}
