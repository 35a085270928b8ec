use super::*;
use crate::control_module::circuit_limits::CircuitLimits;
use crate::control_module::circuit_monitor::DriverCodes;
use crate::control_module::driver_side::DriverSide;
use crate::control_module::known_code::{
    History, KnownCode, PastCode, PastState, ReadinessGroup, Trips,
};
use crate::numerics::digest::Digest;
use crate::units::{Amperes, KilometresPerHour, Ohms, Rpm, Volts};

mod any_events;

const INTAKE: DriverCodes = DriverCodes {
    open: Code(0x0010),
    low: Code(0x2088),
    high: Code(0x2089),
    side: DriverSide::Low,
};
const EXHAUST: DriverCodes = DriverCodes {
    open: Code(0x0013),
    low: Code(0x2090),
    high: Code(0x2091),
    side: DriverSide::Low,
};
const INTAKE_EARLY: Code = Code(0x0011);
const EXHAUST_EARLY: Code = Code(0x0014);

fn setup() -> ModuleSetup {
    let circuit =
        [INTAKE, EXHAUST].into_iter().flat_map(|codes| codes.all()).map(|code| KnownCode {
            trips: Trips::One,
            readiness: Some(ReadinessGroup::Components),
            ..KnownCode::general(code)
        });
    let phase = [(INTAKE_EARLY, 0), (EXHAUST_EARLY, 1)].map(|(code, driver)| KnownCode {
        readiness: Some(ReadinessGroup::ValveTiming),
        silenced_by: Some(Driver(driver)),
        ..KnownCode::general(code)
    });
    ModuleSetup {
        known: circuit.chain(phase).collect(),
        drivers: vec![INTAKE, EXHAUST],
        limits: CircuitLimits::default(),
        supply: None,
        oil_pressure: None,
        present_elsewhere: Vec::new(),
        history: History::default(),
    }
}

fn with_past(code: Code, state: PastState) -> ControlModule {
    let mut setup = setup();
    setup.history.codes = vec![PastCode { code, state, freeze_frame: None }];
    ControlModule::new(&setup).unwrap()
}

fn now() -> FreezeFrame {
    FreezeFrame {
        engine_speed: Rpm(0.0),
        load: 0.0,
        coolant: Celsius(20.0),
        oil: Celsius(20.0),
        vehicle_speed: KilometresPerHour(0.0),
        supply: Volts(12.56),
        battery: Volts(12.6),
    }
}

/// What a valve does to its pin: voltage at rest, voltage and current when driven.
#[derive(Debug, Clone, Copy)]
struct Valve(f64, f64, f64);

const HEALTHY: Valve = Valve(12.55, 0.386, 1.094);
const OPEN: Valve = Valve(2.51, 0.021, 0.0);
const PARTLY_BROKEN: Valve = Valve(10.87, 0.021, 0.002_7);
const GROUNDED: Valve = Valve(0.07, 0.066, 0.25);
const SHORTED_TURNS: Valve = Valve(12.55, 0.882, 2.58);

/// A module with its two valves, run in the 100 ms task.
struct Bench {
    module: ControlModule,
    valves: [Valve; 2],
    /// What cam control asks for while the engine runs and the driver is not inhibited.
    cam_duty: f64,
    now: FreezeFrame,
    tick: Tick,
}

impl Bench {
    fn new(module: ControlModule, intake: Valve) -> Self {
        Self { module, valves: [intake, HEALTHY], cam_duty: 0.4, now: now(), tick: Tick(0) }
    }

    fn sound() -> Self {
        Self::new(ControlModule::new(&setup()).unwrap(), HEALTHY)
    }

    fn run(&mut self, seconds: u64) -> &mut Self {
        for _ in 0..seconds * 10 {
            let senses = [0, 1].map(|driver| {
                let Valve(off_v, on_v, on_a) = self.valves[driver];
                let is_driven = self.module.is_running() && !self.module.inhibited(Driver(driver));
                let pulse = self.module.pulse_duty(Driver(driver), self.tick).unwrap_or(0.0);
                let duty = if is_driven { self.cam_duty } else { pulse };
                DriverSense {
                    feedback: Volts(duty * on_v + (1.0 - duty) * off_v),
                    current: Amperes(duty * on_a),
                    duty,
                    supply: self.now.supply,
                    expected_ohms_at_20: Ohms(11.0),
                    coil_temperature_estimate: Celsius(20.0),
                }
            });
            self.module.circuit_task(&senses, &self.now, self.tick);
            self.tick = Tick(self.tick.0 + 100);
        }
        self
    }

    fn key_on(&mut self, seconds: u64) -> &mut Self {
        self.module.key_on(self.tick);
        self.run(seconds)
    }

    fn start(&mut self, seconds: u64) -> &mut Self {
        self.module.engine_started(self.now.coolant, self.tick);
        self.run(seconds)
    }

    fn key_off(&mut self) -> &mut Self {
        self.module.key_off(self.tick);
        self
    }

    fn stored(&self) -> Vec<Code> {
        self.module.read_codes().stored.iter().map(|reported| reported.code).collect()
    }

    fn note(&mut self, code: Code, verdict: Verdict) {
        self.module.note_findings(&[Finding { code, verdict }], &[], &self.now);
    }
}

fn fingerprint(module: &ControlModule) -> Digest {
    let mut digest = DigestBuilder::new("test");
    module.state_digest(&mut digest);
    digest.finish()
}

/// Common practice, no source: a present circuit fault sets its code again at once after clearing.
#[test]
fn published_a_present_circuit_fault_comes_back_after_a_clear() {
    for (valve, code) in [
        (OPEN, INTAKE.open),
        (PARTLY_BROKEN, INTAKE.open),
        (GROUNDED, INTAKE.low),
        (SHORTED_TURNS, INTAKE.high),
    ] {
        let mut bench = Bench::new(ControlModule::new(&setup()).unwrap(), valve);
        assert_eq!(bench.key_on(5).stored(), [code], "{valve:?}");
        let cleared = bench.module.clear_codes(bench.tick).unwrap();
        assert_eq!((cleared.erased, cleared.permanent_left), (vec![code], vec![code]));
        assert_eq!(bench.stored(), []);
        assert_eq!(bench.run(5).stored(), [code], "{valve:?}, five seconds after the clear");
        bench.valves = [HEALTHY; 2];
        assert!(bench.module.clear_codes(bench.tick).is_ok());
        assert_eq!(bench.run(60).stored(), [], "{valve:?}, mended");
        assert_eq!(bench.module.read_codes().permanent, [code]);
        bench.key_off().key_on(5).start(5).key_off();
        assert_eq!(bench.module.read_codes().permanent, [], "one driving cycle that passed");
    }
}

#[test]
fn limit_a_sound_vehicle_stores_nothing_and_decides_everything() {
    let mut bench = Bench::sound();
    bench.key_on(1);
    assert!(bench.module.clear_codes(bench.tick).is_ok());
    bench.run(5).start(60);
    let report = bench.module.read_codes();
    assert_eq!((report.stored, report.pending, report.permanent), (vec![], vec![], vec![]));
    let complete: Vec<_> =
        report.readiness.iter().map(|one| (one.group, one.is_complete)).collect();
    assert_eq!(
        complete,
        [(ReadinessGroup::Components, true), (ReadinessGroup::ValveTiming, false)]
    );
    assert_eq!(report.running_since_clear.0, 59.9, "the last task was 59.9 s after the start");
}

/// From memory, SAE J1979 service $04: key on, engine off.
#[test]
fn published_a_clear_needs_key_on_and_engine_off() {
    let mut bench = Bench::sound();
    let refused = |bench: &mut Bench, refusal| {
        let before = bench.module.clone();
        assert_eq!(bench.module.clear_codes(bench.tick), Err(refusal));
        assert_eq!(bench.module, before);
    };
    refused(&mut bench, Refusal::KeyOff);
    bench.key_on(1);
    assert!(bench.module.clear_codes(bench.tick).is_ok());
    bench.start(1);
    refused(&mut bench, Refusal::EngineRunning);
    bench.module.engine_stopped(bench.tick);
    assert!(bench.module.clear_codes(bench.tick).is_ok());
    bench.key_off();
    refused(&mut bench, Refusal::KeyOff);
}

/// 13 CCR 1968.2 (d)(2.1): a check of the lamp after key-on, which is not a command.
#[test]
fn published_the_lamp_is_checked_at_key_on() {
    let mut bench = Bench::sound();
    assert!(!bench.module.is_lamp_lit(bench.tick));
    bench.key_on(0);
    assert!(bench.module.is_lamp_lit(Tick(19_999)) && !bench.module.is_lamp_lit(Tick(20_000)));
    assert!(!bench.module.read_codes().commands_lamp);
    bench.start(1);
    assert!(!bench.module.is_lamp_lit(bench.tick));
    bench.module.engine_stopped(bench.tick);
    assert!(!bench.module.is_lamp_lit(bench.tick), "a stall is no key-on");
    bench.key_off();

    let mut faulty = Bench::new(ControlModule::new(&setup()).unwrap(), OPEN);
    faulty.key_on(5).start(5);
    assert!(faulty.module.is_lamp_lit(faulty.tick));
    faulty.key_off();
    assert!(!faulty.module.is_lamp_lit(faulty.tick), "asleep");
}

/// Vehicle makers' service text; the reading chosen: dark at the fourth start.
#[test]
fn published_the_lamp_goes_out_after_three_drives_of_a_mended_vehicle() {
    let mut bench = Bench::new(ControlModule::new(&setup()).unwrap(), OPEN);
    bench.key_on(5).key_off();
    bench.valves = [HEALTHY; 2];
    for drive in 1..=4 {
        bench.key_on(5).start(10);
        assert_eq!(bench.module.is_lamp_lit(bench.tick), drive < 4, "drive {drive}");
        bench.key_off();
    }
    assert_eq!(bench.stored(), [INTAKE.open], "the code stays for 40 warm-ups");
}

#[test]
fn limit_a_start_before_the_pulse_has_decided_still_finds_a_partly_broken_coil() {
    let mut bench = Bench::new(ControlModule::new(&setup()).unwrap(), PARTLY_BROKEN);
    bench.cam_duty = 0.05;
    bench.key_on(1).start(20);
    assert_eq!(bench.stored(), []);
    bench.cam_duty = 0.4;
    assert_eq!(bench.run(4).stored(), [INTAKE.open]);
    assert!(bench.module.inhibited(Driver(0)));
    assert!(!bench.module.inhibited(Driver(1)));
}

/// A grounded control wire drives the valve fully; the cam's own code must not follow.
#[test]
fn limit_a_circuit_fault_silences_the_monitors_of_its_cam_only() {
    let mut bench = Bench::new(ControlModule::new(&setup()).unwrap(), GROUNDED);
    bench.key_on(5).start(10);
    bench.note(INTAKE_EARLY, Verdict::Failed);
    bench.note(EXHAUST_EARLY, Verdict::Failed);
    let report = bench.module.read_codes();
    let pending: Vec<_> = report.pending.iter().map(|reported| reported.code).collect();
    assert_eq!(pending, [EXHAUST_EARLY, INTAKE.low]);
}

#[test]
fn limit_inhibition_ends_when_the_monitor_passes_after_the_next_key_on() {
    let mut bench = Bench::new(with_past(INTAKE.open, PastState::ConfirmedWithLamp), HEALTHY);
    assert!(bench.module.inhibited(Driver(0)));
    bench.key_on(3);
    assert!(bench.module.inhibited(Driver(0)), "not decided yet");
    bench.run(2);
    assert!(!bench.module.inhibited(Driver(0)), "history");
    assert_eq!(bench.stored(), [INTAKE.open]);
    bench.valves[0] = OPEN;
    bench.start(4);
    assert!(bench.module.inhibited(Driver(0)));
    bench.valves[0] = HEALTHY;
    bench.run(60);
    assert!(bench.module.inhibited(Driver(0)), "a driver that failed rests until key-off");
    bench.key_off().key_on(5);
    assert!(!bench.module.inhibited(Driver(0)));
    assert!(bench.module.inhibited(Driver(2)), "there is no such driver");
}

#[test]
fn limit_a_disconnected_battery_forgets_all_but_permanent_codes() {
    let mut bench = Bench::new(ControlModule::new(&setup()).unwrap(), OPEN);
    bench.key_on(5).start(5);
    bench.module.battery_disconnected(bench.tick);
    let report = bench.module.read_codes();
    assert_eq!((report.stored, report.pending), (vec![], vec![]));
    assert_eq!(report.permanent, [INTAKE.open]);
    assert_eq!(bench.module.freeze_frame(), None);
    assert!(!bench.module.is_awake());
    assert!(!bench.module.inhibited(Driver(0)), "what the circuits showed is forgotten too");
    assert!(report.readiness.iter().all(|readiness| !readiness.is_complete));
}

#[test]
fn limit_a_sleeping_module_takes_nothing() {
    let mut bench = Bench::new(ControlModule::new(&setup()).unwrap(), OPEN);
    let before = bench.module.clone();
    bench.run(60);
    bench.note(INTAKE_EARLY, Verdict::Failed);
    bench.module.engine_stopped(bench.tick);
    bench.key_off();
    assert_eq!(bench.module, before);
    assert_eq!(bench.module.pulse_duty(Driver(0), Tick(1_000)), None);
}

#[test]
fn limit_a_stall_and_a_restart_are_one_driving_cycle() {
    let mut bench = Bench::sound();
    bench.key_on(5).start(10);
    bench.note(INTAKE_EARLY, Verdict::Failed);
    bench.module.engine_stopped(bench.tick);
    bench.run(5).start(10);
    bench.note(INTAKE_EARLY, Verdict::Failed);
    bench.key_off();
    assert_eq!(bench.stored(), []);
    bench.key_on(5).start(10);
    bench.note(INTAKE_EARLY, Verdict::Failed);
    assert_eq!(bench.stored(), [INTAKE_EARLY], "the next driving cycle");
}

#[test]
fn limit_a_key_or_engine_that_is_on_cannot_be_turned_on_again() {
    let mut bench = Bench::sound();
    bench.key_on(5).start(5);
    let before = bench.module.clone();
    bench.module.key_on(bench.tick);
    bench.module.engine_started(Celsius(90.0), bench.tick);
    assert_eq!(bench.module, before);
}

#[test]
fn closed_form_running_time_reaches_to_the_stop() {
    let mut bench = Bench::sound();
    bench.key_on(5).start(10);
    bench.module.engine_stopped(bench.tick);
    bench.run(30).start(5).key_off();
    assert_eq!(bench.module.read_codes().running_since_clear.0, 15.0);
}

/// Coolant that warms up after the engine has stopped makes no warm-up cycle.
#[test]
fn limit_heat_that_soaks_through_counts_only_with_the_engine_running() {
    let mut bench = Bench::sound();
    bench.key_on(5).start(5);
    bench.module.engine_stopped(bench.tick);
    bench.now.coolant = Celsius(75.0);
    bench.run(5);
    assert_eq!(bench.module.read_codes().warm_ups_since_clear, 0);
    bench.start(5);
    assert_eq!(bench.module.read_codes().warm_ups_since_clear, 1);
}
