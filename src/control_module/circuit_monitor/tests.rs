use super::*;
use proptest::prelude::*;

mod driven_coil;
mod high_side;

const CODES: DriverCodes = DriverCodes {
    open: Code(0x0010),
    low: Code(0x2088),
    high: Code(0x2089),
    side: DriverSide::Low,
};
const OPEN: Reading = Reading::Fault(CircuitFault::Open);
const LOW: Reading = Reading::Fault(CircuitFault::Low);
const HIGH: Reading = Reading::Fault(CircuitFault::High);
const PASS: Reading = Reading::Pass;
const NOT_RUN: Reading = Reading::NotRun;

/// A reading on an 11-ohm place at 20 °C, the check value of common practice.
fn sense(duty: f64, supply_v: f64, feedback_v: f64, current_a: f64) -> DriverSense {
    DriverSense {
        feedback: Volts(feedback_v),
        current: Amperes(current_a),
        duty,
        supply: Volts(supply_v),
        expected_ohms_at_20: Ohms(11.0),
        coil_temperature_estimate: Celsius(20.0),
    }
}

fn readings(sense: &DriverSense) -> (Reading, Reading) {
    let readings = read(sense, DriverSide::Low, &CircuitLimits::default());
    (readings.idle, readings.current)
}

/// Pin voltage off and on, current on, key on and engine off, from a circuit simulator's
/// operating points of the whole wiring at 12.6 V: fault, pin off \[V\], pin on \[V\], current on \[A\],
/// idle reading, current reading.
const OPERATING_POINTS: [(&str, f64, f64, f64, Reading, Reading); 12] = [
    ("healthy 11 ohm", 12.55, 0.386, 1.093_9, PASS, PASS),
    ("other winding 19.5 ohm", 12.55, 0.230, 0.628_1, PASS, PASS),
    ("partly broken coil 4.7k", 10.87, 0.021, 0.002_7, PASS, OPEN),
    ("open coil", 2.51, 0.021, 0.0, OPEN, OPEN),
    ("60 % of the turns shorted", 12.55, 0.882, 2.579_9, PASS, HIGH),
    ("5 ohm at the feed pin", 12.55, 0.275, 0.761_8, PASS, PASS),
    ("5 ohm at the control pin", 12.55, 0.275, 0.761_8, PASS, PASS),
    ("open control wire", 2.51, 0.012, 0.0, OPEN, OPEN),
    ("open feed wire", 2.51, 0.021, 0.0, OPEN, OPEN),
    // The coil's current goes past the driver, whose shunt sees its share: 0.066 V over 0.26 ohm.
    ("control wire to ground", 0.07, 0.066, 0.25, LOW, PASS),
    ("blown valve fuse", 0.02, 0.012, 0.000_1, LOW, OPEN),
    ("2 ohm in the relay", 10.63, 0.288, 0.808_3, PASS, PASS),
];

#[test]
fn reference_operating_points_of_every_electrical_fault() {
    for (fault, off_v, on_v, on_a, idle, current) in OPERATING_POINTS {
        let off = sense(0.0, 12.56, off_v, 0.0);
        assert_eq!(readings(&off), (idle, NOT_RUN), "{fault}, driver off");
        let on = sense(1.0, 12.56, on_v, on_a);
        assert_eq!(readings(&on), (NOT_RUN, current), "{fault}, driver on");
    }
}

/// Means of a circuit simulator's transient runs at 300 Hz, duty 0.4, 14.1 V.
#[test]
fn reference_means_of_a_driven_valve() {
    for (fault, mean_v, mean_a, expected) in [
        ("healthy 11 ohm", 8.96, 0.463_8, (PASS, PASS)),
        ("other winding 19.5 ohm", 8.90, 0.265_4, (PASS, PASS)),
        ("partly broken coil 4.7k", 7.17, 0.001_5, (PASS, OPEN)),
        ("60 % of the turns shorted", 9.17, 1.094_5, (PASS, HIGH)),
        ("open coil", 1.32, 0.0, (OPEN, NOT_RUN)),
    ] {
        assert_eq!(readings(&sense(0.4, 14.1, mean_v, mean_a)), expected, "{fault}");
    }
}

#[test]
fn limit_control_wire_at_the_battery_reads_high_at_every_judged_duty() {
    for duty in [0.15, 0.20, 0.40, 0.60, 0.90, 0.95, 1.0] {
        // The driver protects itself by staying open, or by limiting the current.
        for current_a in [0.0, 0.01, 4.0] {
            let (idle, current) = readings(&sense(duty, 12.6, 12.6, current_a));
            assert_ne!(idle, LOW);
            assert_eq!(current, HIGH, "duty {duty}, {current_a} A");
        }
    }
    assert_eq!(readings(&sense(0.0, 12.6, 12.6, 0.0)), (PASS, NOT_RUN), "no sign at rest");
}

#[test]
fn limit_short_to_ground_reads_low_at_every_duty_that_has_a_rest() {
    for duty in [0.0, 0.05, 0.20, 0.40, 0.90] {
        for current_a in [0.0, 0.25 * duty, 1.24] {
            let low = (LOW, NOT_RUN);
            assert_eq!(readings(&sense(duty, 14.1, 0.07, current_a)), low, "duty {duty}");
        }
    }
}

#[test]
fn limit_windows_end_where_the_limits_say() {
    for (pin_v, idle) in [(1.999, LOW), (2.0, OPEN), (2.999, OPEN), (3.0, PASS)] {
        assert_eq!(readings(&sense(0.0, 12.6, pin_v, 0.0)).0, idle, "{pin_v} V");
    }
    for supply_v in [10.99, 16.01, f64::NAN] {
        let nothing = (NOT_RUN, NOT_RUN);
        assert_eq!(readings(&sense(0.0, supply_v, 0.0, 0.0)), nothing, "{supply_v} V");
    }
    for supply_v in [11.0, 16.0] {
        assert_eq!(readings(&sense(0.0, supply_v, 0.0, 0.0)).0, LOW, "{supply_v} V");
    }
    // Expected at 20 °C: 11.5 ohm of loop; 12 V at full duty.
    for (current_a, current) in [
        (12.0 / (11.5 * 0.549), HIGH),
        (12.0 / (11.5 * 0.551), PASS),
        (12.0 / (11.5 * 4.99), PASS),
        (12.0 / (11.5 * 5.01), OPEN),
    ] {
        assert_eq!(readings(&sense(1.0, 12.0, 0.3, current_a)).1, current, "{current_a} A");
    }
}

/// Feeds a monitor as a vehicle would with the key on and the engine off.
fn key_on(off: &DriverSense, pulsed: &DriverSense, seconds: u64) -> CircuitMonitor {
    let mut monitor = CircuitMonitor::new(CircuitLimits::default(), CODES);
    monitor.restart(Tick(5_000));
    for sample in 0..seconds * 10 {
        let tick = Tick(5_000 + sample * 100);
        let sense = if monitor.pulse_duty(tick).is_some() { pulsed } else { off };
        monitor.judge(sense, tick);
    }
    monitor
}

fn failed(monitor: &CircuitMonitor) -> Vec<Code> {
    let failed = |finding: &Finding| finding.verdict == Verdict::Failed;
    monitor.findings().into_iter().filter(failed).map(|finding| finding.code).collect()
}

#[test]
fn reference_each_fault_sets_its_code_within_five_seconds_of_key_on() {
    let duty = CircuitLimits::default().key_on_pulse.duty;
    for (fault, off_v, on_v, on_a, code) in [
        ("open coil", 2.51, 0.021, 0.0, Some(CODES.open)),
        ("partly broken coil 4.7k", 10.87, 0.021, 0.002_7, Some(CODES.open)),
        ("control wire to ground", 0.07, 0.066, 0.25, Some(CODES.low)),
        ("blown valve fuse", 0.02, 0.012, 0.000_1, Some(CODES.low)),
        ("control wire at the battery", 12.56, 12.56, 0.0, Some(CODES.high)),
        ("60 % of the turns shorted", 12.55, 0.882, 2.579_9, Some(CODES.high)),
        ("healthy 11 ohm", 12.55, 0.386, 1.093_9, None),
        ("other winding 19.5 ohm", 12.55, 0.230, 0.628_1, None),
        ("5 ohm in a contact", 12.55, 0.275, 0.761_8, None),
        ("2 ohm in the relay", 10.63, 0.288, 0.808_3, None),
    ] {
        let off = sense(0.0, 12.56, off_v, 0.0);
        let mean_v = duty * on_v + (1.0 - duty) * off_v;
        let pulsed = sense(duty, 12.56, mean_v, duty * on_a);
        let monitor = key_on(&off, &pulsed, 5);
        assert_eq!(failed(&monitor), Vec::from_iter(code), "{fault}");
        if code.is_none() {
            let verdicts = monitor.findings().map(|finding| finding.verdict);
            assert_eq!(verdicts, [Verdict::Passed; 3], "{fault}");
        }
    }
}

#[test]
fn limit_a_partly_broken_coil_stays_failed_while_the_driver_rests() {
    let off = sense(0.0, 12.56, 10.87, 0.0);
    let pulsed = sense(0.2, 12.56, 0.8 * 10.87, 0.2 * 0.002_7);
    assert_eq!(failed(&key_on(&off, &pulsed, 600)), [CODES.open]);
}

#[test]
fn limit_the_pulse_ends_with_a_verdict_and_comes_again_without_one() {
    let off = sense(0.0, 12.56, 12.55, 0.0);
    let good = sense(0.2, 12.56, 10.1, 0.2);
    let pulse_duty = |monitor: &CircuitMonitor, ms: u64| monitor.pulse_duty(Tick(5_000 + ms));
    assert_eq!(pulse_duty(&key_on(&off, &good, 0), 299), None);
    let duty = CircuitLimits::default().key_on_pulse.duty;
    assert_eq!(pulse_duty(&key_on(&off, &good, 0), 300), Some(duty));
    assert_eq!(pulse_duty(&key_on(&off, &good, 5), 10_300), None, "decided");
    let weak = sense(0.2, 10.0, 8.0, 0.16);
    assert_eq!(pulse_duty(&key_on(&off, &weak, 5), 10_300), Some(duty), "supply out of window");
    let open = sense(0.0, 12.56, 2.5, 0.0);
    assert_eq!(pulse_duty(&key_on(&open, &open, 5), 10_300), None, "failed at rest");
}

#[test]
fn limit_a_grounded_wire_stays_low_when_the_driver_is_held_on() {
    let off = sense(0.0, 12.56, 0.07, 0.0);
    let mut monitor = key_on(&off, &off, 5);
    for sample in 0..100 {
        // Held fully on, the shunt sees next to nothing, which alone would read as open.
        monitor.judge(&sense(1.0, 12.56, 0.01, 0.04), Tick(10_000 + sample * 100));
    }
    assert_eq!(failed(&monitor), [CODES.low]);
    assert_eq!(monitor.current.failed(), None);
}

/// Open, low and high each pass by the tests that could have found them, and by no other.
#[test]
fn limit_a_code_passes_only_by_the_tests_that_find_it() {
    use Verdict::{NotRun, Passed};
    let rest = sense(0.0, 12.56, 12.55, 0.0);
    let weak = sense(0.1, 12.56, 11.3, 0.1);
    let driven = sense(0.4, 12.56, 8.0, 0.4);
    let full = sense(1.0, 12.56, 0.386, 1.094);
    for (sense, open, low, high) in [
        (rest, NotRun, Passed, NotRun),
        (weak, NotRun, Passed, NotRun),
        (driven, Passed, Passed, Passed),
        (full, NotRun, NotRun, Passed),
    ] {
        let mut monitor = CircuitMonitor::new(CircuitLimits::default(), CODES);
        for sample in 0..50 {
            monitor.judge(&sense, Tick(sample * 100));
        }
        let verdicts = monitor.findings().map(|finding| finding.verdict);
        assert_eq!(verdicts, [open, low, high], "duty {}", sense.duty);
    }
}

#[test]
fn limit_a_wire_that_is_grounded_later_takes_the_verdict_over() {
    let off = sense(0.0, 12.56, 10.87, 0.0);
    let pulsed = sense(0.2, 12.56, 0.8 * 10.87, 0.2 * 0.002_7);
    let mut monitor = key_on(&off, &pulsed, 5);
    assert_eq!(failed(&monitor), [CODES.open]);
    for sample in 0..50 {
        monitor.judge(&sense(0.0, 12.56, 0.07, 0.0), Tick(10_000 + sample * 100));
    }
    assert_eq!(failed(&monitor), [CODES.low]);
}

#[test]
fn limit_a_supply_outside_its_window_leaves_everything_open() {
    let dead = sense(0.0, 10.5, 0.0, 0.0);
    let monitor = key_on(&dead, &dead, 60);
    assert!(monitor.findings().iter().all(|finding| finding.verdict == Verdict::NotRun));
}

proptest! {
    /// Whatever the pins show: at most one code of a driver is failed, a fault that is failed was
    /// read at some time, and a monitor that has seen no fault has failed nothing.
    #[test]
    fn prop_at_most_one_code_is_failed_and_none_without_its_reading(
        runs in prop::collection::vec(
            (
                prop::sample::select(vec![0.0, 0.05, 0.2, 0.5, 0.95, 1.0]),
                prop::sample::select(vec![10.0, 12.6, 14.1]),
                prop::sample::select(vec![0.02, 1.0, 2.5, 8.0, 12.6]),
                prop::sample::select(vec![0.0, 0.2, 0.6, 1.1, 5.0]),
                1_u64..50,
            ),
            1..30,
        ),
    ) {
        let limits = CircuitLimits::default();
        let mut monitor = CircuitMonitor::new(limits, CODES);
        let mut seen = Vec::new();
        let mut tick = Tick(0);
        for (duty, supply_v, feedback_v, current_a, samples) in runs {
            let sense = sense(duty, supply_v, feedback_v, current_a);
            for _ in 0..samples {
                let readings = read(&sense, DriverSide::Low, &limits);
                for reading in [readings.idle, readings.current] {
                    if let Reading::Fault(fault) = reading {
                        seen.push(fault);
                    }
                }
                monitor.judge(&sense, tick);
                prop_assert!(failed(&monitor).len() <= 1);
                if let Some(fault) = monitor.fault() {
                    prop_assert!(seen.contains(&fault));
                    prop_assert!(monitor.has_failed_since_start());
                }
                tick = Tick(tick.0 + 100);
            }
        }
    }
}
