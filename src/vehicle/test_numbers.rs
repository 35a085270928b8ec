//! Under which numbers a vehicle's module tells its test results (service $06).
//!
//! Monitor $35 is variable valve timing of bank 1 (vehicle makers' service text), $36 that of bank 2; tests from $80 up
//! are each maker's own. No standard monitor covers a valve's circuit, so those tests stand under
//! $E1, the first of the maker's own monitors (from memory). Which test is which code is this
//! vehicle's own list, as makers print it in their service information: eight numbers a valve.

use super::spec::VehicleSpec;
use crate::control_module::code::Code;
use crate::control_module::oil_pressure_monitor::OilPressureMonitor;
use crate::control_module::services::test_result::{FIRST_OWN_TEST, Scaling, valve_timing};
use crate::control_module::supply_monitor::SupplyMonitor;
use crate::control_module::test_result::Measure;

/// First monitor of the maker's own numbering (SAE J1979, from memory).
const OWN_MONITOR: u8 = 0xE1;
/// The supply's monitor, and that of the oil pressure: the next numbers of the maker's own.
const SUPPLY_MONITOR: u8 = 0xE2;
/// See [`SUPPLY_MONITOR`].
const OIL_PRESSURE_MONITOR: u8 = 0xE3;
/// Numbers set aside for each valve.
const TESTS_A_VALVE: usize = 8;
/// Step in which a reader shows what is told \[s, %\].
const SHOWN_STEP: f64 = 0.01;
/// From a share to what is told of it.
const PERCENT: f64 = 100.0;

/// One test with its numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NumberedTest {
    /// Monitor.
    pub monitor: u8,
    /// Test.
    pub test: u8,
    /// The code that the test can set.
    pub code: Code,
    /// What is measured.
    pub measure: Measure,
}

impl NumberedTest {
    /// Unit and step in which it is told.
    #[must_use]
    pub const fn scaling(&self) -> Scaling {
        match self.measure {
            Measure::HuntingShare => Scaling::Percent,
            _ => Scaling::Milliseconds,
        }
    }

    /// A figure of the measure as it is told: seconds, or a share as per cent.
    #[must_use]
    pub fn told(&self, figure: f64) -> f64 {
        if self.measure == Measure::HuntingShare { figure * PERCENT } else { figure }
    }

    /// The last figure that a reader shows below one that was told.
    #[must_use]
    pub fn below(told: f64) -> f64 {
        told - SHOWN_STEP
    }

    /// A figure of the measure from what was told.
    #[must_use]
    pub fn figure(&self, told: f64) -> f64 {
        if self.measure == Measure::HuntingShare { told / PERCENT } else { told }
    }
}

/// Every test of a vehicle's module, monitor by monitor. Valves beyond the numbers that there are
/// have none.
#[must_use]
pub fn numbered_tests(spec: &VehicleSpec) -> Vec<NumberedTest> {
    let mut timing = Vec::new();
    let mut circuits = Vec::new();
    for (place, valve) in spec.valves.iter().enumerate() {
        let codes = valve.codes;
        let number = |test: usize| {
            u8::try_from(usize::from(FIRST_OWN_TEST) + place * TESTS_A_VALVE + test).ok()
        };
        let of = |monitor, list: &[(Code, Measure)], into: &mut Vec<NumberedTest>| {
            into.extend(list.iter().enumerate().filter_map(|(at, (code, measure))| {
                let test = number(at)?;
                Some(NumberedTest { monitor, test, code: *code, measure: *measure })
            }));
        };
        of(
            valve_timing(valve.bank),
            &[
                (codes.advanced, Measure::TimeOffTarget),
                (codes.advanced, Measure::HuntingShare),
                (codes.retarded, Measure::TimeOffTarget),
                (codes.slow, Measure::ResponseTime),
                (codes.correlation, Measure::TimeWrongAtRest),
                (codes.retarded, Measure::HuntingShare),
            ],
            &mut timing,
        );
        let circuit = [codes.open, codes.low, codes.high];
        of(OWN_MONITOR, &circuit.map(|code| (code, Measure::TimeOfCircuitFault)), &mut circuits);
    }
    timing.append(&mut circuits);
    // A file may name its valves in any order.
    timing.sort_by_key(|test| test.monitor);
    let monitors = &spec.module.monitors;
    let shared = [
        (
            SUPPLY_MONITOR,
            monitors.supply.is_some(),
            SupplyMonitor::CODES.to_vec(),
            Measure::TimeOfSupplyFault,
        ),
        (
            OIL_PRESSURE_MONITOR,
            monitors.oil_pressure.is_some(),
            OilPressureMonitor::CODES.to_vec(),
            Measure::TimeOfOilPressureFault,
        ),
    ];
    for (monitor, is_there, codes, measure) in shared {
        if is_there {
            let tests = (FIRST_OWN_TEST..).zip(codes);
            timing.extend(tests.map(|(test, code)| NumberedTest { monitor, test, code, measure }));
        }
    }
    timing
}
