//! Starting the engine and driving a road.

use super::circuits::Circuits;
use super::electricity::Started;
use super::engine_link::{Withheld, cams};
use super::error::VehicleError;
use super::loose::vibration;
use super::module_link::{frame, senses};
use super::route::{Demand, Foot, RouteProfile};
use super::run_record::{Idling, RunRecord, Trace};
use super::spec::Id;
use super::whole::{Key, Vehicle};
use crate::control_module::code::Code;
use crate::control_module::freeze_frame::FreezeFrame;
use crate::control_module::oil_pressure_monitor::OilPressureSignal;
use crate::control_module::verdict::Verdict;
use crate::numerics::whole::to_u32;
use crate::units::{Bars, Celsius, Minutes, Rpm, Seconds, Tick};
use std::collections::{BTreeMap, BTreeSet};

/// How long an engine idles after a start before the step is over [ms].
const IDLE_MS: u64 = 15_000;
/// How long the engine is held at a speed while a gauge is read [ms].
const HOLD_MS: u64 = 8_000;
/// Load that turns an engine without a vehicle to move: engineering estimate.
const FREE_LOAD: f64 = 0.15;
/// Speed at which a person warms an engine up in the workshop [rpm]: common practice, no source.
const WARM_UP_RPM: u16 = 2_000;
/// Oil of an engine at its working temperature, and longest wait for it.
const WORKING_OIL: Celsius = Celsius(80.0);
/// See [`WORKING_OIL`].
const LONGEST_WARM_UP: Minutes = Minutes(45);
/// Time in which a driver notices a stall and starts the engine again [ms]: engineering estimate.
const RESTART_MS: u64 = 4_000;
/// Ticks between two runs of the module's circuit task.
const CIRCUIT_TASK_TICKS: u64 = 100;
/// Ticks between two looks at the temperatures of the coils.
const COIL_HEAT_TICKS: u64 = 10_000;

/// What a drive left to be known.
#[derive(Debug, Clone, PartialEq)]
pub struct DriveReport {
    /// How the engine ran at its worst.
    pub quality: Idling,
    /// The oil lamp lit on the way.
    pub oil_lamp: bool,
    /// Camshafts in the order of the valves.
    pub cams: Vec<CamReport>,
    /// Codes whose monitors came to a decision on this drive.
    pub decided: Vec<Code>,
    /// Live data on the way; empty when it did not start.
    pub trace: Trace,
}

/// One camshaft over a drive.
#[derive(Debug, Clone, PartialEq)]
pub struct CamReport {
    /// Its valve.
    pub valve: Id,
    /// Mean distance from the wanted angle [crank degrees].
    pub mean_error: f64,
    /// Furthest from rest [crank degrees].
    pub furthest: f64,
}

/// What is done about a stall.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum AfterStall {
    /// Nothing: the engine stands.
    Leave,
    /// It is started again and kept going by the pedal.
    Restart,
}

impl Vehicle {
    /// Starts the engine and lets it idle; a running engine idles on. An engine that stalls stands
    /// still with the key on.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn start(&mut self) -> Result<Idling, VehicleError> {
        if !self.engine_runs() && !self.turn_over()? {
            return Ok(Idling::DoesNotStart);
        }
        let idle = |tick| (tick < IDLE_MS).then_some(Demand::IDLE);
        let record = self.run(idle, AfterStall::Leave, Foot::Up)?;
        Ok(record.idling)
    }

    /// Holds a running engine at idle or at a speed for some seconds, and returns how gallery
    /// pressure went, with the time between two values.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn hold_speed(&mut self, rpm: Option<u16>) -> Result<(Vec<Bars>, Seconds), VehicleError> {
        let asked = rpm.map_or(Demand::IDLE, Self::held);
        let hold = |tick| (tick < HOLD_MS).then_some(asked);
        let record = self.run(hold, AfterStall::Leave, Foot::Up)?;
        let pressures = record.trace.points().iter().map(|point| point.pressure).collect();
        Ok((pressures, record.trace.interval()))
    }

    /// Lets a running engine reach its working temperature at a held speed, and returns the whole
    /// minutes that it took; none when it is warm already.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn warm_up(&mut self) -> Result<Minutes, VehicleError> {
        let began = self.now;
        let lasted = self.engine.warm_at(&Self::held(WARM_UP_RPM), WORKING_OIL, LONGEST_WARM_UP);
        let minutes = to_u32((lasted.0 / 60.0).ceil());
        self.now = began.plus_seconds(u64::from(minutes) * 60);
        let circuits = self.circuits_when(true)?;
        let mut squares = vec![0.0; self.spec.valves.len()];
        self.sample_currents(&circuits, &mut squares);
        self.heat_coils_under_way(&mut squares, &mut 1, lasted);
        self.draw(circuits.battery_out, lasted);
        Ok(Minutes(minutes))
    }

    fn held(rpm: u16) -> Demand {
        Demand { speed: Rpm(f64::from(rpm)), load: FREE_LOAD, ..Demand::IDLE }
    }

    /// Turns the key to start; tells whether the engine fires. If not, the key stays on, and a module that
    /// lost its supply meanwhile begins anew.
    fn turn_over(&mut self) -> Result<bool, VehicleError> {
        if !self.key_on() && self.circuits_when(true)?.module_alive {
            self.module.key_on(self.now);
        }
        let started = self.turn_by_starter()?;
        if started != Started::Fires {
            self.key = Key::On;
            if started == Started::ModuleReset {
                self.module.key_off(self.now);
                self.module.key_on(self.now);
            }
            return Ok(false);
        }
        self.module.engine_started(self.engine.heat().coolant, self.now);
        self.key = Key::Running;
        self.blow_fuses()?;
        self.running_since = Some(self.now);
        let circuits = self.circuits_when(true)?;
        self.set_engine(&circuits)?;
        self.engine.start();
        Ok(true)
    }

    /// Drives a road. An engine that stands is started with a foot on the pedal; so is one that stalls
    /// on the way, and the foot stays there whenever the vehicle stands.
    ///
    /// # Errors
    /// [`VehicleError`] when the road cannot be driven or the wiring cannot be solved.
    pub fn drive(&mut self, route: &RouteProfile) -> Result<DriveReport, VehicleError> {
        route.check()?;
        let mut driver = route.driver();
        let foot = if self.engine_runs() { Foot::Up } else { Foot::Down };
        if foot == Foot::Down && !self.turn_over()? {
            return Ok(DriveReport {
                quality: Idling::DoesNotStart,
                oil_lamp: false,
                cams: Vec::new(),
                decided: Vec::new(),
                trace: Trace::default(),
            });
        }
        let before = self.module.read_codes().decisions;
        let asked = |tick| driver.demand(Tick(tick).as_seconds());
        let record = self.run(asked, AfterStall::Restart, foot)?;
        let mut decided: Vec<Code> = before
            .iter()
            .chain(&self.module.read_codes().decisions)
            .map(|finding| finding.code)
            .filter(|code| self.is_circuit_code(*code))
            .collect();
        let mut reports = Vec::new();
        for (valve, cam) in self.spec.valves.iter().zip(cams(&self.spec)) {
            let summary = record.cams.of(cam);
            decided.extend(
                summary
                    .findings
                    .iter()
                    .filter(|dated| dated.finding.verdict != Verdict::NotRun)
                    .map(|dated| dated.finding.code),
            );
            reports.push(CamReport {
                valve: valve.id.clone(),
                mean_error: summary.mean_error.0,
                furthest: summary.furthest.0,
            });
        }
        decided.sort_unstable();
        decided.dedup();
        Ok(DriveReport {
            quality: record.idling,
            oil_lamp: record.oil_lamp,
            cams: reports,
            decided,
            trace: record.trace,
        })
    }

    fn is_circuit_code(&self, code: Code) -> bool {
        self.spec
            .valves
            .iter()
            .any(|valve| [valve.codes.open, valve.codes.low, valve.codes.high].contains(&code))
    }

    /// Runs the engine as long as `demand` asks for something: the module's circuit task every
    /// tenth of a second beside it, its performance monitors' findings at the end.
    fn run(
        &mut self,
        mut demand: impl FnMut(u64) -> Option<Demand>,
        after_stall: AfterStall,
        mut foot: Foot,
    ) -> Result<RunRecord, VehicleError> {
        let mut circuits = self.circuits_when(true)?;
        self.set_engine(&circuits)?;
        // What the wiring did with these contacts open, so that each set is solved once.
        let mut open = self.open_contacts();
        let mut solved = BTreeMap::from([(open.clone(), circuits.clone())]);
        let mut squares = vec![0.0; self.spec.valves.len()];
        let mut samples = 0;
        self.engine.begin_run();
        let mut tick = 0;
        let mut withheld = Withheld::by(&self.module, &self.spec);
        while let Some(asked) = demand(tick) {
            let asked = foot.on(asked);
            self.engine.tick(&asked);
            tick += 1;
            if tick.is_multiple_of(CIRCUIT_TASK_TICKS) {
                self.now.0 += CIRCUIT_TASK_TICKS;
                self.sample_currents(&circuits, &mut squares);
                samples += 1;
                let heat = self.engine.heat();
                let duties: Vec<f64> =
                    cams(&self.spec).map(|cam| self.engine.cam(cam).module().duty()).collect();
                let sensed = senses(&self.spec, &circuits, &duties, heat.oil);
                let (rpm, load, speed) = (self.engine.speed().0, asked.load, asked.km_h);
                let moment = frame(rpm, load, speed, heat.coolant, heat.oil, &circuits);
                self.module.circuit_task(&sensed, &moment, self.now);
                let is_closed = self.engine.pressure_switch_is_closed();
                let oil = Some(OilPressureSignal::Switch { is_closed });
                self.module.supply_and_oil_task(oil, &moment, self.now);
                self.note_performance(&moment);
                if self.contacts_change(&asked, &mut open) {
                    circuits = self.solved_once(&open, &mut solved)?;
                    self.set_engine(&circuits)?;
                }
                if !Withheld::are(&withheld, &self.module) {
                    withheld = Withheld::by(&self.module, &self.spec);
                    self.set_engine(&circuits)?;
                }
            }
            if tick.is_multiple_of(COIL_HEAT_TICKS) {
                let lasted = Seconds(Tick(COIL_HEAT_TICKS).as_seconds());
                if self.heat_coils_under_way(&mut squares, &mut samples, lasted) {
                    circuits = self.circuits_when(true)?;
                    self.set_engine(&circuits)?;
                }
            }
            if self.engine.idle().is_stalled() {
                self.module.engine_stopped(self.now);
                if after_stall == AfterStall::Leave {
                    self.stand_still();
                    break;
                }
                foot = Foot::Down;
                self.now.0 += RESTART_MS;
                if self.turn_by_starter()? != Started::Fires {
                    self.stand_still();
                    break;
                }
                self.running_since = Some(self.now);
                self.engine.crank();
                self.module.engine_started(self.engine.heat().coolant, self.now);
            }
        }
        self.loose.settle();
        let record = self.engine.record();
        self.engine.drop_record();
        let lasted = Seconds(Tick(tick).as_seconds());
        let rest = Seconds(Tick(tick % COIL_HEAT_TICKS).as_seconds());
        self.heat_coils_under_way(&mut squares, &mut samples, rest);
        self.draw(circuits.battery_out, lasted);
        self.oil_lamp = record.oil_lamp;
        Ok(record)
    }

    /// The engine has stopped by itself; the key stays on.
    fn stand_still(&mut self) {
        self.engine.stop();
        self.key = Key::On;
        self.stopped_at = Some(self.now);
        self.running_since = None;
    }

    /// A tenth of a second of vibration for the loose contacts; true when those that are open are
    /// others than before.
    fn contacts_change(&mut self, asked: &Demand, open: &mut BTreeSet<Id>) -> bool {
        if self.condition.loose.is_empty() {
            return false;
        }
        let shaking = vibration(asked.speed, asked.km_h > 0.0);
        self.loose.shake(&self.condition, shaking, self.engine.heat().coolant);
        let before = core::mem::replace(open, self.open_contacts());
        before != *open
    }

    /// The circuits with these contacts open, solved unless they were before.
    fn solved_once(
        &self,
        open: &BTreeSet<Id>,
        solved: &mut BTreeMap<BTreeSet<Id>, Circuits>,
    ) -> Result<Circuits, VehicleError> {
        if let Some(known) = solved.get(open) {
            return Ok(known.clone());
        }
        let circuits = self.circuits_when(true)?;
        solved.insert(open.clone(), circuits.clone());
        Ok(circuits)
    }

    /// Hands what the performance monitors have found to the code memory.
    fn note_performance(&mut self, moment: &FreezeFrame) {
        for valve in &self.spec.valves {
            let monitor = self.engine.cam(valve.camshaft()).monitor();
            let findings = monitor.findings().map(|dated| dated.finding);
            self.module.note_findings(&findings, &monitor.results(), moment);
        }
    }
}
