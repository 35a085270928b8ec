//! A running engine, tick by tick: oil, gallery, two camshafts, warm-up, monitors.
//!
//! Order of work in one tick of a millisecond: every hundredth tick the temperatures move on and
//! what depends on them is worked out again; every tenth tick the control module runs; then air,
//! both camshafts, and last the gallery with the oil that they drew. Temperatures, phasers and what
//! the module has learnt stay between runs; findings belong to a driving cycle.

use crate::control_module::performance_monitor::Conditions;
use crate::numerics::streams::Stream;
use crate::physics::oil::{Fluid, Oil, OilError, ViscosityCurve};
use crate::physics::phaser::PulseAngle;
use crate::physics::pressure_switch::PressureSwitch;
use crate::physics::pump::{Gallery, Pump};
use crate::physics::sump::{Aeration, Sump};
use crate::physics::warm_up::{EngineHeat, WarmUp};
use crate::units::{Bars, Celsius, Litres, Minutes, Rpm, Seconds, Volts, Watts};
use crate::vehicle::cam_line::{CamCondition, CamLine, CamSpec, DT_S, SharedTick};
use crate::vehicle::per_cam::{Cam, PerCam};
use crate::vehicle::route::{Demand, RouteError, RouteProfile};
use crate::vehicle::run_record::{Idling, RunRecord, Tally, TallyTick};
use serde::{Deserialize, Serialize};

/// Ticks between two runs of the control module's fast task.
const CONTROL_TICKS: u64 = 10;
/// Ticks between two looks at the temperatures.
const HEAT_TICKS: u64 = 100;
/// Change of oil temperature that is worth working out the oil again [K]: 0.1 % of viscosity.
const OIL_MATTERS_K: f64 = 0.05;
/// Ticks that the starter turns the engine.
const CRANKING_TICKS: u32 = 1_000;
/// Ticks in which an engine that is switched off runs down.
const RUN_DOWN_TICKS: u32 = 600;
/// Ticks after that in which the gallery empties.
const EMPTYING_TICKS: u32 = 2_400;
/// Angle of the crankshaft after which everything repeats [rad]: one turn of the camshafts.
const CYCLE_RAD: f64 = 2.0 * core::f64::consts::TAU;
/// Engine speed up to which it idles [rpm].
const IDLE_UP_TO_RPM: f64 = 1_000.0;
/// Engine speed from which it runs by itself [rpm].
const RUNS_FROM_RPM: f64 = 400.0;
/// Angle by which the cams may overlap too much at idle before it gets rough [degrees]; that a
/// valve held fully on makes an engine stall or idle roughly is published, the figure is an
/// engineering estimate.
const ROUGH_DEG: f64 = 15.0;
/// The same before it stalls [degrees] (engineering estimate).
const STALLS_DEG: f64 = 35.0;
/// How much of a new overlap the engine feels in one tick: half a second's breathing.
const FELT_SHARE: f64 = DT_S / 0.5;

/// What an engine is by design, and its oil.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EngineSpec {
    /// Oil pump and what the engine lets through.
    pub pump: Pump,
    /// Sump.
    pub sump: Sump,
    /// The switch of the oil lamp.
    pub pressure_switch: PressureSwitch,
    /// Warm-up.
    pub warm_up: WarmUp,
    /// The two camshafts.
    pub cams: PerCam<CamSpec>,
}

impl EngineSpec {
    /// A four-cylinder engine of about two litres (engineering estimate).
    pub const TYPICAL: Self = Self {
        pump: Pump::TYPICAL,
        sump: Sump::TYPICAL,
        pressure_switch: PressureSwitch::TYPICAL,
        warm_up: WarmUp::TYPICAL,
        cams: PerCam { intake: CamSpec::INTAKE, exhaust: CamSpec::EXHAUST },
    };
}

/// What may change between runs.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EngineCondition {
    /// The oil in it.
    pub oil: Oil,
    /// How much of it.
    pub fill: Litres,
    /// Valves and circuits.
    pub cams: PerCam<CamCondition>,
    /// Supply of the control module with the engine running.
    pub supply: Volts,
    /// Temperature of the air.
    pub ambient: Celsius,
}

impl EngineCondition {
    /// Everything sound, 4.5 l of fresh oil, 20 °C outside.
    pub const SOUND: Self = Self {
        oil: Oil::TYPICAL_5W_30,
        fill: Litres(4.5),
        cams: PerCam { intake: CamCondition::SOUND, exhaust: CamCondition::SOUND },
        supply: Volts(14.1),
        ambient: Celsius(20.0),
    };
}

/// A running engine.
#[derive(Debug, Clone)]
pub struct RunningEngine {
    spec: EngineSpec,
    condition: EngineCondition,
    curve: ViscosityCurve,
    fluid: Fluid,
    fluid_is_for: Celsius,
    heat: EngineHeat,
    gallery: Gallery,
    switch_is_closed: bool,
    aeration: Aeration,
    cams: PerCam<CamLine>,
    crank_rad: f64,
    overlap_deg: f64,
    ticks: u64,
    heat_w_sum: f64,
    is_powered: bool,
    tally: Tally,
}

impl RunningEngine {
    /// An engine that stands, with temperatures; `air` decides when the pump draws air.
    ///
    /// # Errors
    /// [`OilError`] when the oil's figures describe no oil.
    pub fn new(
        spec: EngineSpec,
        condition: EngineCondition,
        heat: EngineHeat,
        air: Stream,
    ) -> Result<Self, OilError> {
        let curve = condition.oil.curve()?;
        let fluid = curve.fluid(heat.oil);
        let line = |cam| CamLine::new(*spec.cams.of(cam), *condition.cams.of(cam), &fluid);
        Ok(Self {
            curve,
            fluid,
            fluid_is_for: heat.oil,
            heat,
            gallery: Gallery::default(),
            switch_is_closed: true,
            aeration: Aeration::new(&spec.sump, air),
            cams: PerCam { intake: line(Cam::Intake), exhaust: line(Cam::Exhaust) },
            crank_rad: 0.0,
            overlap_deg: 0.0,
            ticks: 0,
            heat_w_sum: 0.0,
            is_powered: true,
            tally: Tally::without_room(),
            spec,
            condition,
        })
    }

    /// Changes oil, level, valves, circuits, supply or weather; temperatures and positions stay.
    ///
    /// # Errors
    /// [`OilError`] when the oil's figures describe no oil; then nothing is changed.
    pub fn set_condition(&mut self, condition: EngineCondition) -> Result<(), OilError> {
        self.curve = condition.oil.curve()?;
        self.condition = condition;
        for cam in Cam::BOTH {
            self.cams.of_mut(cam).set_condition(*condition.cams.of(cam));
        }
        self.refresh();
        Ok(())
    }

    /// Changes one valve or its circuit only, for instance as its coil gets hot.
    pub fn set_cam(&mut self, cam: Cam, condition: CamCondition) {
        *self.condition.cams.of_mut(cam) = condition;
        let line = self.cams.of_mut(cam);
        line.set_condition(condition);
        line.refresh(&self.fluid);
    }

    /// Sets the temperatures, as after a known drive.
    pub fn set_heat(&mut self, heat: EngineHeat) {
        self.heat = heat;
        self.refresh();
    }

    /// Gives the module the hold duties that earlier drives with these circuits would have taught.
    pub fn assume_learnt(&mut self) {
        let (supply, oil) = (self.condition.supply, self.heat.oil);
        for cam in Cam::BOTH {
            self.cams.of_mut(cam).assume_learnt(supply, oil);
        }
    }

    /// The battery was off: the module forgets what it learnt.
    pub fn forget(&mut self) {
        for cam in Cam::BOTH {
            self.cams.of_mut(cam).forget();
        }
    }

    /// Works out what depends on the oil.
    fn refresh(&mut self) {
        self.fluid = self.curve.fluid(self.heat.oil);
        self.fluid_is_for = self.heat.oil;
        for cam in Cam::BOTH {
            self.cams.of_mut(cam).refresh(&self.fluid);
        }
    }

    /// Starts the engine: a new driving cycle, a second of the starter, an empty record.
    pub fn start(&mut self) {
        self.is_powered = true;
        self.begin_cycle();
        for _ in 0..CRANKING_TICKS {
            self.advance(&Demand::CRANKING);
        }
        self.begin_run();
    }

    /// Begins a new driving cycle: the monitors have found nothing yet.
    pub fn begin_cycle(&mut self) {
        for cam in Cam::BOTH {
            self.cams.of_mut(cam).begin_cycle();
        }
    }

    /// Begins a new record within the driving cycle.
    pub fn begin_run(&mut self) {
        self.tally.clear();
    }

    /// Runs for one millisecond and adds to the record.
    #[inline]
    pub fn tick(&mut self, demand: &Demand) {
        let idling = self.advance(demand);
        self.tally.add(&TallyTick {
            demand,
            measured: self.cams.map(CamLine::seen),
            duties: self.cams.map(CamLine::duty),
            gallery_pa: self.gallery.pressure_pa(),
            switch_is_closed: self.switch_is_closed,
            heat: self.heat,
            idling,
        });
    }

    /// The order of work in one millisecond.
    #[inline]
    fn advance(&mut self, demand: &Demand) -> Idling {
        if self.ticks.is_multiple_of(HEAT_TICKS) {
            self.warm_up();
        }
        if self.ticks.is_multiple_of(CONTROL_TICKS) {
            self.run_module(demand);
        }
        self.ticks += 1;
        self.heat_w_sum += self.spec.warm_up.heat(demand.speed, demand.load).0;

        let fill = self.condition.fill;
        self.aeration.step(&self.spec.sump, fill, demand.speed, demand.load, demand.tilt, DT_S);
        let air = self.aeration.air();
        let turn_rad = demand.speed.0 / 60.0 * core::f64::consts::TAU;
        self.crank_rad += turn_rad * DT_S;
        if self.crank_rad >= CYCLE_RAD {
            self.crank_rad -= CYCLE_RAD;
        }
        let is_turning = demand.speed.0 > 0.0;
        let shared = SharedTick {
            gallery_pa: self.gallery.pressure_pa(),
            pulses: if is_turning {
                PulseAngle::at(self.spec.cams.intake.phaser.lobes.cylinders, self.crank_rad)
            } else {
                PulseAngle::STANDING
            },
            air,
            is_turning,
        };
        let drawn_m3_s = self.cams.intake.tick(&shared) + self.cams.exhaust.tick(&shared);
        let delivery_m3_s = self.spec.pump.delivery_m3_s(demand.speed, air);
        self.gallery.step(&self.spec.pump, &self.fluid, delivery_m3_s, drawn_m3_s, air, DT_S);
        let switch = &self.spec.pressure_switch;
        self.switch_is_closed = switch.is_closed(self.switch_is_closed, self.gallery.pressure());
        self.feel_idle(demand)
    }

    fn warm_up(&mut self) {
        let mean_w = self.heat_w_sum / HEAT_TICKS as f64;
        self.heat_w_sum = 0.0;
        let span_s = HEAT_TICKS as f64 * DT_S;
        self.heat.step(&self.spec.warm_up, Watts(mean_w), self.condition.ambient, span_s);
        if (self.heat.oil.0 - self.fluid_is_for.0).abs() >= OIL_MATTERS_K {
            self.refresh();
        }
    }

    fn run_module(&mut self, demand: &Demand) {
        let conditions = Conditions {
            speed: demand.speed,
            oil: self.heat.oil,
            supply: self.condition.supply,
            circuit_is_sound: true,
        };
        for cam in Cam::BOTH {
            let target = *demand.targets.of(cam);
            self.cams.of_mut(cam).control(target, &conditions, self.is_powered);
        }
    }

    /// Cams too far from rest at idle leave burnt gas in the cylinders.
    #[inline]
    fn feel_idle(&mut self, demand: &Demand) -> Idling {
        let past = |cam| (self.cams.of(cam).seen().0 - demand.targets.of(cam).0).max(0.0);
        let is_idling = (RUNS_FROM_RPM..IDLE_UP_TO_RPM).contains(&demand.speed.0);
        let overlap_deg = if is_idling { past(Cam::Intake) + past(Cam::Exhaust) } else { 0.0 };
        self.overlap_deg += (overlap_deg - self.overlap_deg) * FELT_SHARE;
        if self.overlap_deg > STALLS_DEG {
            Idling::Stalls
        } else if self.overlap_deg > ROUGH_DEG {
            Idling::Rough
        } else {
            Idling::Smooth
        }
    }

    /// Drives a route and returns its record.
    ///
    /// # Errors
    /// [`RouteError`] when the route cannot be driven; then nothing has happened.
    pub fn drive(&mut self, route: &RouteProfile) -> Result<RunRecord, RouteError> {
        route.check()?;
        self.begin_run();
        let mut driver = route.driver();
        let mut tick = 0_u32;
        while let Some(demand) = driver.demand(f64::from(tick) * DT_S) {
            self.tick(&demand);
            tick += 1;
        }
        Ok(self.record())
    }

    /// Keeps one demand for some whole milliseconds and returns the record.
    pub fn hold(&mut self, demand: &Demand, milliseconds: u32) -> RunRecord {
        self.begin_run();
        for _ in 0..milliseconds {
            self.tick(demand);
        }
        self.record()
    }

    /// Switches the engine off: it runs down, and the gallery empties. Valves get no current.
    pub fn stop(&mut self) {
        self.is_powered = false;
        for tick in 0..RUN_DOWN_TICKS {
            let left = 1.0 - f64::from(tick + 1) / f64::from(RUN_DOWN_TICKS);
            let speed = Rpm(Demand::IDLE.speed.0 * left);
            self.advance(&Demand { speed, load: 0.0, ..Demand::IDLE });
        }
        for _ in 0..EMPTYING_TICKS {
            self.advance(&Demand::STANDING);
        }
    }

    /// Lets the engine stand and cool; phasers that are still away may come home.
    pub fn rest(&mut self, time: Minutes) {
        for second in 0..u64::from(time.0) * 60 {
            self.heat.step(&self.spec.warm_up, Watts(0.0), self.condition.ambient, 1.0);
            let is_away = Cam::BOTH.iter().any(|cam| !self.cams.of(*cam).vane().is_locked());
            if is_away {
                if second.is_multiple_of(60) {
                    self.refresh();
                }
                for cam in Cam::BOTH {
                    self.cams.of_mut(cam).stand(1.0);
                }
            }
        }
        self.gallery = Gallery::default();
        self.switch_is_closed = true;
        self.refresh();
    }

    /// Lets the engine run at one demand until its oil is warm, in seconds instead of ticks: only
    /// temperatures move. Returns how long it took, `longest` at most.
    pub fn warm_at(&mut self, demand: &Demand, oil: Celsius, longest: Minutes) -> Seconds {
        let heat = self.spec.warm_up.heat(demand.speed, demand.load);
        let mut elapsed_s = 0.0;
        while self.heat.oil.0 < oil.0 && elapsed_s < f64::from(longest.0) * 60.0 {
            self.heat.step(&self.spec.warm_up, heat, self.condition.ambient, 1.0);
            elapsed_s += 1.0;
        }
        self.refresh();
        Seconds(elapsed_s)
    }

    /// The record so far.
    #[must_use]
    pub fn record(&self) -> RunRecord {
        self.tally.record(self.heat, |cam| {
            let monitor = self.cams.of(cam).monitor();
            (monitor.findings(), monitor.enabled(), monitor.step_responses().to_vec())
        })
    }

    /// Lets go of the record and the room that its trace took.
    pub fn drop_record(&mut self) {
        self.tally = Tally::without_room();
    }

    /// Viscosity of the oil now [Pa s].
    #[must_use]
    pub const fn viscosity_pa_s(&self) -> f64 {
        self.fluid.viscosity_pa_s
    }

    /// Temperatures now.
    #[must_use]
    pub const fn heat(&self) -> EngineHeat {
        self.heat
    }

    /// Gallery pressure now.
    #[must_use]
    pub fn pressure(&self) -> Bars {
        self.gallery.pressure()
    }

    /// Whether the switch of the oil lamp is closed now.
    #[must_use]
    pub const fn pressure_switch_is_closed(&self) -> bool {
        self.switch_is_closed
    }

    /// How the oil thins and expands with heat.
    #[must_use]
    pub const fn oil_curve(&self) -> &ViscosityCurve {
        &self.curve
    }

    /// What it is by design.
    #[must_use]
    pub const fn spec(&self) -> &EngineSpec {
        &self.spec
    }

    /// One camshaft now.
    #[must_use]
    pub const fn cam(&self, cam: Cam) -> &CamLine {
        self.cams.of(cam)
    }

    /// What it is set up with.
    #[must_use]
    pub const fn condition(&self) -> &EngineCondition {
        &self.condition
    }
}
