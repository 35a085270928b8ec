//! The control module as its surroundings see it: key and engine, circuits, codes, a code reader.
//!
//! Inputs are what its pins and sensors tell it; outputs are opinions, the warning lamp and the
//! duty of its own test pulses. Order of one key-on: [`ControlModule::key_on`], then
//! [`ControlModule::circuit_task`] every 100 ms and [`ControlModule::note_findings`] as other
//! monitors speak, and [`ControlModule::key_off`] at the end. Calls that find the module asleep
//! change nothing.

use crate::control_module::circuit_monitor::{CircuitMonitor, DriverSense};
use crate::control_module::code::Code;
use crate::control_module::code_report::{ClearReport, CodeReport, Readiness, Refusal};
use crate::control_module::counters::CounterReport;
use crate::control_module::debounced_test::CircuitFault;
use crate::control_module::elsewhere_monitor::ElsewhereMonitor;
use crate::control_module::freeze_frame::FreezeFrame;
use crate::control_module::known_code::Driver;
use crate::control_module::memory::CodeMemory;
use crate::control_module::module_setup::{ModuleSetup, SetupFault};
use crate::control_module::oil_pressure_monitor::{OilPressureMonitor, OilPressureSignal};
use crate::control_module::supply_monitor::SupplyMonitor;
use crate::control_module::test_result::TestResult;
use crate::control_module::verdict::{Finding, Verdict};
use crate::numerics::digest::DigestBuilder;
use crate::units::{Celsius, KilometresPerHour, Tick};
use serde::{Deserialize, Serialize};

/// How long the lamp is lit after key-on to show that it works \[ms\]: 20 s, the upper end of the
/// 15 to 20 s of 13 CCR 1968.2 (d)(2.1).
pub const LAMP_CHECK_MS: u64 = 20_000;

/// What keeps the module awake.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
enum Power {
    Asleep,
    KeyOn { lamp_check_until: Tick },
    Running { counted_to: Tick },
}

/// The diagnostic side of one control module.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct ControlModule {
    power: Power,
    circuits: Vec<CircuitMonitor>,
    supply: Option<SupplyMonitor>,
    oil_pressure: Option<OilPressureMonitor>,
    elsewhere: ElsewhereMonitor,
    watched_to: Tick,
    /// The performance codes of what each driver moves.
    moved_by: Vec<(Driver, Code)>,
    memory: CodeMemory,
}

impl ControlModule {
    /// A sleeping module with the memory that earlier driving has left.
    ///
    /// # Errors
    /// [`SetupFault`] when the data contradicts itself.
    pub fn new(setup: &ModuleSetup) -> Result<Self, SetupFault> {
        setup.check()?;
        Ok(Self {
            power: Power::Asleep,
            circuits: setup
                .drivers
                .iter()
                .map(|codes| CircuitMonitor::new(setup.limits, *codes))
                .collect(),
            supply: setup.supply.map(SupplyMonitor::new),
            oil_pressure: setup.oil_pressure.map(OilPressureMonitor::new),
            elsewhere: ElsewhereMonitor::new(
                &setup
                    .known
                    .iter()
                    .filter(|known| setup.present_elsewhere.contains(&known.code))
                    .copied()
                    .collect::<Vec<_>>(),
            ),
            watched_to: Tick(0),
            moved_by: setup
                .known
                .iter()
                .filter_map(|known| known.silenced_by.map(|driver| (driver, known.code)))
                .collect(),
            memory: CodeMemory::new(setup.known.iter().copied(), &setup.history),
        })
    }

    /// The key is turned on: the circuit diagnosis begins anew and will pulse each valve.
    pub fn key_on(&mut self, tick: Tick) {
        if self.power == Power::Asleep {
            let lamp_check_until = Tick(tick.0.saturating_add(LAMP_CHECK_MS));
            self.power = Power::KeyOn { lamp_check_until };
            self.restart_monitors(tick);
        }
    }

    /// The engine runs by itself, with the coolant at this temperature. Turns the key on if it was
    /// off.
    pub fn engine_started(&mut self, coolant: Celsius, tick: Tick) {
        self.key_on(tick);
        if !self.is_running() {
            self.power = Power::Running { counted_to: tick };
            self.memory.engine_started(coolant);
        }
    }

    /// The engine stands still with the key on. The driving cycle goes on until key-off.
    pub fn engine_stopped(&mut self, tick: Tick) {
        if self.is_running() {
            // Less than a tenth of a second since the last task: no distance worth counting.
            self.count_running(tick, KilometresPerHour(0.0));
            self.power = Power::KeyOn { lamp_check_until: tick };
        }
    }

    /// The key is turned off, which stops the engine and closes the driving cycle.
    pub fn key_off(&mut self, tick: Tick) {
        if self.power != Power::Asleep {
            self.engine_stopped(tick);
            self.memory.key_off();
            self.power = Power::Asleep;
        }
    }

    /// The battery is disconnected: the module sleeps and has lost all but its permanent codes.
    pub fn battery_disconnected(&mut self, tick: Tick) {
        self.memory.clear();
        self.restart_monitors(tick);
        self.power = Power::Asleep;
    }

    /// The 100 ms task: judges each driver's circuit, in the order of the setup, and stores what
    /// follows. A driver without a reading is not judged.
    pub fn circuit_task(&mut self, senses: &[DriverSense], now: &FreezeFrame, tick: Tick) {
        if self.power == Power::Asleep {
            return;
        }
        self.count_running(tick, now.vehicle_speed);
        if self.is_running() {
            self.memory.note_coolant(now.coolant);
            self.memory.note_conditions(now);
        }
        for (circuit, sense) in self.circuits.iter_mut().zip(senses) {
            let findings = circuit.judge(sense, tick);
            self.memory.note(&findings, now);
            note_figures(&mut self.memory, &findings, &circuit.results());
        }
    }

    /// Beside the circuit task: judges the supply, the oil pressure where there is a signal, and what
    /// is present elsewhere.
    pub fn supply_and_oil_task(
        &mut self,
        oil_pressure: Option<OilPressureSignal>,
        now: &FreezeFrame,
        tick: Tick,
    ) {
        if self.power == Power::Asleep {
            return;
        }
        let elapsed_ms = tick.0.saturating_sub(self.watched_to.0);
        self.watched_to = tick;
        self.elsewhere.take(self.is_running(), elapsed_ms);
        for finding in self.elsewhere.findings() {
            self.memory.note(&[finding], now);
        }
        if let Some(monitor) = &mut self.supply {
            monitor.take(now, elapsed_ms);
            let findings = monitor.findings();
            self.memory.note(&findings, now);
            note_figures(&mut self.memory, &findings, &monitor.results());
        }
        if let (Some(monitor), Some(signal)) = (&mut self.oil_pressure, oil_pressure) {
            monitor.take(signal, now, elapsed_ms);
            let findings = monitor.findings();
            self.memory.note(&findings, now);
            note_figures(&mut self.memory, &findings, &monitor.results());
        }
    }

    /// Takes what other monitors say, and the figures behind it. A finding about what an inhibited driver moves is not
    /// taken: the valve does not do what the monitor thinks it was told.
    pub fn note_findings(
        &mut self,
        findings: &[Finding],
        results: &[TestResult],
        now: &FreezeFrame,
    ) {
        if self.power == Power::Asleep {
            return;
        }
        for finding in findings {
            let silenced_by = self.memory.rule(finding.code).silenced_by;
            if !silenced_by.is_some_and(|driver| self.inhibited(driver)) {
                self.memory.note(&[*finding], now);
                note_figures(&mut self.memory, &[*finding], results);
            }
        }
    }

    /// Whether cam control must leave this driver off, and the performance monitors of its cam
    /// must not judge.
    ///
    /// That is from the moment a circuit fault matures until the key is off, and after a key-on
    /// with a confirmed circuit code until its monitor has passed. A code that is confirmed but
    /// whose monitor has passed since key-on is history and does not inhibit. A driver that the
    /// module does not have is inhibited.
    #[must_use]
    pub fn inhibited(&self, driver: Driver) -> bool {
        self.circuits.get(driver.0).is_none_or(|circuit| {
            let codes = circuit.codes();
            circuit.has_failed_since_start()
                || [
                    (codes.open, CircuitFault::Open),
                    (codes.low, CircuitFault::Low),
                    (codes.high, CircuitFault::High),
                ]
                .into_iter()
                .any(|(code, fault)| {
                    self.memory.is_confirmed(code) && circuit.verdict(fault) != Verdict::Passed
                })
        })
    }

    /// Whether cam control holds this driver's camshaft at rest, because a code about what the driver
    /// moves is confirmed and its fault was found in this driving cycle. At the next key-on it tries
    /// again, or the monitor could never pass.
    #[must_use]
    pub fn holds_at_rest(&self, driver: Driver) -> bool {
        self.moved_by
            .iter()
            .any(|(by, code)| *by == driver && self.memory.is_confirmed_and_failing(*code))
    }

    /// The duty that the module's own test pulse asks of a driver, 0 to 1, if any. Cam control's
    /// duty goes before it.
    #[must_use]
    pub fn pulse_duty(&self, driver: Driver, tick: Tick) -> Option<f64> {
        if self.power == Power::Asleep {
            return None;
        }
        self.circuits.get(driver.0).and_then(|circuit| circuit.pulse_duty(tick))
    }

    /// Whether the warning lamp is lit: commanded on, or in its check after key-on.
    #[must_use]
    pub fn is_lamp_lit(&self, tick: Tick) -> bool {
        match self.power {
            Power::Asleep => false,
            Power::KeyOn { lamp_check_until } => {
                tick < lamp_check_until || self.memory.commands_lamp()
            }
            Power::Running { .. } => self.memory.commands_lamp(),
        }
    }

    /// Whether the module answers a reader.
    #[must_use]
    pub fn is_awake(&self) -> bool {
        self.power != Power::Asleep
    }

    /// What a code reader finds. Reading changes nothing.
    #[must_use]
    pub fn read_codes(&self) -> CodeReport {
        self.memory.report()
    }

    /// The figures behind the decisions since the last clear, in the order of codes and measures
    /// (after service $06). A test that is not in it has not run to a decision.
    pub fn test_results(&self) -> impl Iterator<Item = &TestResult> {
        self.memory.results()
    }

    /// Distances, times and warm-ups since the clear and with the lamp (service $01).
    #[must_use]
    pub fn counters(&self) -> CounterReport {
        self.memory.counters()
    }

    /// Readiness by group (service $01 PID $01).
    #[must_use]
    pub fn readiness(&self) -> Vec<Readiness> {
        self.memory.readiness()
    }

    /// The freeze frame with the code that owns it (service $02).
    #[must_use]
    pub const fn freeze_frame(&self) -> Option<(Code, FreezeFrame)> {
        self.memory.freeze_frame()
    }

    /// Erases everything but permanent codes (service $04) and starts the circuit diagnosis anew
    /// with its pulses, so that a fault that is still there comes back within seconds.
    ///
    /// # Errors
    /// [`Refusal`] unless the key is on and the engine off.
    pub fn clear_codes(&mut self, tick: Tick) -> Result<ClearReport, Refusal> {
        match self.power {
            Power::Asleep => Err(Refusal::KeyOff),
            Power::Running { .. } => Err(Refusal::EngineRunning),
            Power::KeyOn { .. } => {
                self.restart_monitors(tick);
                Ok(self.memory.clear())
            }
        }
    }

    /// Adds the state to a fingerprint, field by field in declared order.
    pub fn state_digest(&self, digest: &mut DigestBuilder) {
        let (power, until) = match self.power {
            Power::Asleep => (0, Tick(0)),
            Power::KeyOn { lamp_check_until } => (1, lamp_check_until),
            Power::Running { counted_to } => (2, counted_to),
        };
        digest.whole(power);
        digest.whole(until.0);
        digest.whole(self.circuits.len() as u64);
        self.circuits.iter().for_each(|circuit| circuit.digest(digest));
        if let Some(monitor) = &self.supply {
            monitor.digest(digest);
        }
        if let Some(monitor) = &self.oil_pressure {
            monitor.digest(digest);
        }
        self.elsewhere.digest(digest);
        digest.whole(self.watched_to.0);
        self.memory.digest(digest);
    }

    fn is_running(&self) -> bool {
        matches!(self.power, Power::Running { .. })
    }

    fn count_running(&mut self, tick: Tick, speed: KilometresPerHour) {
        if let Power::Running { counted_to } = &mut self.power {
            self.memory.engine_ran(tick.0.saturating_sub(counted_to.0), speed);
            *counted_to = tick;
        }
    }

    fn restart_monitors(&mut self, tick: Tick) {
        self.circuits.iter_mut().for_each(|circuit| circuit.restart(tick));
        self.supply.iter_mut().for_each(SupplyMonitor::restart);
        self.oil_pressure.iter_mut().for_each(OilPressureMonitor::restart);
        self.elsewhere.restart();
        self.watched_to = tick;
    }
}

/// Keeps the figures of monitors that have come to a decision; one that has not keeps those of its last.
fn note_figures(memory: &mut CodeMemory, findings: &[Finding], results: &[TestResult]) {
    for finding in findings.iter().filter(|finding| finding.verdict != Verdict::NotRun) {
        for result in results.iter().filter(|result| result.code == finding.code) {
            memory.note_results(&[*result]);
        }
    }
}

#[cfg(test)]
mod tests;
