//! The plugs between the vehicle and its control module: what the module is told.

use super::circuits::Circuits;
use super::engine_link;
use super::spec::{ValveCodes, ValveSpec, VehicleSpec};
use crate::control_module::circuit_monitor::{CircuitMonitor, DriverCodes, DriverSense};
use crate::control_module::code::Code;
use crate::control_module::code_family::rule_of_unrelated;
use crate::control_module::freeze_frame::FreezeFrame;
use crate::control_module::known_code::{
    Driver, History, KnownCode, PastCode, PastState, ReadinessGroup,
};
use crate::control_module::module_setup::ModuleSetup;
use crate::control_module::oil_pressure_monitor::OilPressureMonitor;
use crate::control_module::performance_monitor::PerformanceMonitor;
use crate::control_module::supply_monitor::SupplyMonitor;
use crate::control_module::test_result::{Measure, TestResult};
use crate::units::{Amperes, Celsius, KilometresPerHour, Ohms, Rpm, Volts};
use std::collections::BTreeSet;

/// Warm-up cycles that an old code has behind it: long confirmed, its lamp out again.
const OLD_CODE_WARM_UPS: u8 = 17;
/// Drives behind a vehicle that comes in: enough for every counter to have run.
const WARM_UPS_BEHIND: u8 = 60;
const RUNNING_SECONDS_BEHIND: u32 = 90_000;
const KILOMETRES_BEHIND: u16 = 1_150;
/// Longest time off target, and time to follow a change, of a sound vehicle on its road \[s\]: rounded from
/// drives in this simulation.
const EARLIER_OFF_TARGET_S: f64 = 0.4;
/// See [`EARLIER_OFF_TARGET_S`].
const EARLIER_RESPONSE_S: f64 = 0.09;

/// The data of a vehicle's module.
#[must_use]
pub fn setup_of(spec: &VehicleSpec, old_codes: &[Code], present: &BTreeSet<Code>) -> ModuleSetup {
    let monitors = &spec.module.monitors;
    let follows = &monitors.consequences;
    let mut known = Vec::new();
    let mut drivers = Vec::new();
    for (number, valve) in spec.valves.iter().enumerate() {
        let codes = valve.codes;
        drivers.push(driver_codes(spec, valve));
        known.extend([codes.open, codes.low, codes.high].map(|code| {
            follows.circuit.on(KnownCode {
                readiness: Some(ReadinessGroup::Components),
                ..KnownCode::general(code)
            })
        }));
        let performance = [codes.advanced, codes.retarded, codes.slow, codes.correlation];
        known.extend(performance.map(|code| {
            follows.camshaft.on(KnownCode {
                readiness: Some(ReadinessGroup::ValveTiming),
                silenced_by: Some(Driver(number)),
                ..KnownCode::general(code)
            })
        }));
    }
    if monitors.supply.is_some() {
        let rule = |code| follows.supply.on(KnownCode::general(code));
        known.extend(SupplyMonitor::CODES.map(rule));
    }
    if monitors.oil_pressure.is_some() {
        let rule = |code| follows.oil_pressure.on(KnownCode::general(code));
        known.extend(OilPressureMonitor::CODES.map(rule));
    }
    let own: BTreeSet<Code> = known.iter().map(|known| known.code).collect();
    let unrelated: BTreeSet<Code> =
        old_codes.iter().chain(present).filter(|code| !own.contains(code)).copied().collect();
    // They do not light the lamp, so that the lamp speaks of the concern (assumed).
    known.extend(unrelated.into_iter().map(|code| KnownCode {
        lights_lamp: false,
        readiness: None,
        ..rule_of_unrelated(code)
    }));
    let codes = old_codes
        .iter()
        .map(|code| PastCode {
            code: *code,
            state: PastState::Confirmed { clean_warm_ups: OLD_CODE_WARM_UPS },
            freeze_frame: None,
        })
        .collect();
    ModuleSetup {
        known,
        drivers,
        limits: monitors.circuit,
        supply: monitors.supply,
        oil_pressure: monitors.oil_pressure,
        present_elsewhere: present.iter().filter(|code| !own.contains(code)).copied().collect(),
        history: History {
            codes,
            undecided: Vec::new(),
            results: earlier_figures(spec),
            warm_ups_since_clear: WARM_UPS_BEHIND,
            running_seconds_since_clear: RUNNING_SECONDS_BEHIND,
            kilometres_since_clear: KILOMETRES_BEHIND,
        },
    }
}

fn driver_codes(spec: &VehicleSpec, valve: &ValveSpec) -> DriverCodes {
    let ValveCodes { open, low, high, .. } = valve.codes;
    DriverCodes { open, low, high, side: spec.side_of(&valve.id) }
}

/// The figures that a sound vehicle's drives have left: those of monitors that have seen nothing wrong, but
/// for the two that are never quite at zero.
fn earlier_figures(spec: &VehicleSpec) -> Vec<TestResult> {
    let monitors = &spec.module.monitors;
    let engine = engine_link::engine_spec(spec);
    let mut results = Vec::new();
    for valve in &spec.valves {
        let cam = engine.cams.of(valve.camshaft());
        let monitor = PerformanceMonitor::new(cam.codes, cam.rests_at, cam.limits);
        results.extend(monitor.results().map(|result| TestResult {
            value: match result.measure {
                Measure::TimeOffTarget => EARLIER_OFF_TARGET_S,
                Measure::ResponseTime => EARLIER_RESPONSE_S,
                _ => result.value,
            },
            ..result
        }));
        let codes = driver_codes(spec, valve);
        results.extend(CircuitMonitor::new(monitors.circuit, codes).results());
    }
    results.extend(monitors.supply.into_iter().flat_map(|it| SupplyMonitor::new(it).results()));
    let oil_pressure = monitors.oil_pressure.into_iter();
    results.extend(oil_pressure.flat_map(|it| OilPressureMonitor::new(it).results()));
    results
}

/// What the module senses of its drivers at the given duties.
#[must_use]
pub fn senses(
    spec: &VehicleSpec,
    circuits: &Circuits,
    duties: &[f64],
    oil: Celsius,
) -> Vec<DriverSense> {
    spec.valves
        .iter()
        .zip(&circuits.valves)
        .zip(duties)
        .map(|((valve, circuit), duty)| {
            // The shunt sees the coil's current only as far as it flows through the driver.
            let full = circuit.offered.0 / (circuit.coil.0 + circuit.source.0);
            let seen = if full > 1e-9 { (circuit.sensed_on.0 / full).clamp(0.0, 1.0) } else { 0.0 };
            let current = circuit.mean_current(*duty).0.max(0.0) * seen;
            DriverSense {
                feedback: Volts((1.0 - duty) * circuit.pin_off.0 + duty * circuit.pin_on.0),
                current: Amperes(current),
                duty: *duty,
                supply: circuits.supply,
                expected_ohms_at_20: Ohms(
                    spec.valve_part(&valve.part_number).map_or(10.0, |part| part.ohms_at_20),
                ),
                coil_temperature_estimate: oil,
            }
        })
        .collect()
}

/// What the module knows at a moment.
#[must_use]
pub fn frame(
    rpm: f64,
    load: f64,
    speed_kmh: f64,
    coolant: Celsius,
    oil: Celsius,
    circuits: &Circuits,
) -> FreezeFrame {
    FreezeFrame {
        engine_speed: Rpm(rpm),
        load,
        coolant,
        oil,
        vehicle_speed: KilometresPerHour(speed_kmh),
        supply: circuits.supply,
        battery: circuits.battery,
    }
}
