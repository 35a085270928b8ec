use super::*;
use crate::numerics::elementary::{exp, ln};
use proptest::prelude::*;

const CODES: DriverCodes =
    DriverCodes { open: Code(0x0010), low: Code(0x2088), high: Code(0x2089) };
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
    let readings = read(sense, &CircuitLimits::default());
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

/// A coil on a switched supply in its periodic steady state, written for these tests: inductance
/// 35 mH, 300 Hz, constant drop of the freewheeling diode.
#[expect(clippy::struct_field_names, reason = "the unit belongs to each name")]
struct Loop {
    coil_ohms: f64,
    wiring_ohms: f64,
    driver_ohms: f64,
}

const INDUCTANCE_H: f64 = 0.035;
const PERIOD_S: f64 = 1.0 / 300.0;
const DIODE_V: f64 = 0.75;

impl Loop {
    /// A coil of this resistance at 20 °C and `celsius`, with `extra_ohms` in its contacts.
    fn of(ohms_at_20: f64, celsius: f64, extra_ohms: f64) -> Self {
        Self {
            coil_ohms: ohms_at_20 * (1.0 + 0.003_93 * (celsius - 20.0)),
            wiring_ohms: 0.2 + extra_ohms,
            driver_ohms: 0.26,
        }
    }

    /// Mean current \[A\] and mean pin voltage \[V\].
    ///
    /// The current rises towards V/R while the switch is closed and falls towards minus the diode's
    /// drop over R while it is open, until it is nought. Both parts are exponentials, so that the
    /// steady state has a closed form; means follow from the volt-seconds over the inductance,
    /// which are nought over one period.
    fn mean(&self, supply_v: f64, duty: f64) -> (f64, f64) {
        let ohms = self.coil_ohms + self.wiring_ohms + self.driver_ohms;
        let (on_s, off_s) = (duty * PERIOD_S, (1.0 - duty) * PERIOD_S);
        let tau_s = INDUCTANCE_H / ohms;
        let (up_a, down_a) = (supply_v / ohms, DIODE_V / ohms);
        let (up, down) = (exp(-on_s / tau_s), exp(-off_s / tau_s));
        // i_high = up_a + (i_low - up_a) up, i_low = -down_a + (i_high + down_a) down
        let low_a = (up_a * (1.0 - up) * down - down_a * (1.0 - down)) / (1.0 - up * down);
        let falling_s = if low_a > 0.0 {
            off_s
        } else {
            let high_a = up_a * (1.0 - up);
            tau_s * ln((high_a + down_a) / down_a)
        };
        let falling = falling_s.min(off_s) / PERIOD_S;
        let mean_a = (supply_v * duty - DIODE_V * falling) / ohms;
        let open_v = (supply_v + DIODE_V) * falling + supply_v * (1.0 - duty - falling);
        (mean_a, open_v + duty * mean_a * self.driver_ohms)
    }

    fn sense(&self, supply_v: f64, duty: f64, celsius: f64) -> DriverSense {
        let (mean_a, mean_v) = self.mean(supply_v, duty);
        DriverSense {
            coil_temperature_estimate: Celsius(celsius),
            ..sense(duty, supply_v, mean_v, mean_a)
        }
    }
}

#[test]
fn reference_the_loop_of_these_tests_agrees_with_the_transient_runs() {
    for (ohms, duty, mean_a, pin_v) in
        [(11.0, 0.4, 0.463_8, 8.96), (11.0, 0.6, 0.721_7, 6.10), (19.5, 0.4, 0.265_4, 8.90)]
    {
        let (ours_a, ours_v) = Loop::of(ohms, 20.0, 0.0).mean(14.1, duty);
        assert!((ours_a / mean_a - 1.0).abs() < 0.03, "{ohms} ohm, {duty}: {ours_a} A");
        assert!((ours_v - pin_v).abs() < 0.15, "{ohms} ohm, {duty}: {ours_v} V");
    }
}

const TEMPERATURES_C: [f64; 5] = [-20.0, 20.0, 60.0, 90.0, 120.0];
const SUPPLIES_V: [f64; 6] = [11.0, 12.0, 12.6, 14.1, 15.0, 16.0];

fn duties_of_the_controller() -> impl Iterator<Item = f64> {
    (5..=95).map(|percent| f64::from(percent) / 100.0)
}

#[test]
fn limit_sound_circuits_pass_at_every_duty_supply_and_temperature() {
    for (what, ohms, extra_ohms) in [
        ("healthy 11 ohm", 11.0, 0.0),
        ("winding of 7 ohm", 7.0, 0.0),
        ("other winding 19.5 ohm", 19.5, 0.0),
        ("5 ohm in a contact", 11.0, 5.0),
        ("other winding and 5 ohm in a contact", 19.5, 5.0),
    ] {
        for celsius in TEMPERATURES_C {
            for supply_v in SUPPLIES_V {
                for duty in duties_of_the_controller() {
                    let (idle, current) = readings(
                        &Loop::of(ohms, celsius, extra_ohms).sense(supply_v, duty, celsius),
                    );
                    assert!(
                        matches!(idle, PASS | NOT_RUN) && matches!(current, PASS | NOT_RUN),
                        "{what}, {celsius} °C, {supply_v} V, duty {duty}: {idle:?} {current:?}"
                    );
                    assert_eq!(idle == NOT_RUN, duty > 0.90);
                    assert_eq!(current == NOT_RUN, duty < 0.15);
                }
            }
        }
    }
}

/// The module takes the coil to be as warm as the oil; a coil that works is warmer by tens of
/// kelvins.
#[test]
fn limit_a_healthy_coil_passes_although_its_temperature_is_misjudged_by_40_k() {
    for thought_c in TEMPERATURES_C {
        for true_c in [thought_c - 40.0, thought_c + 40.0] {
            for duty in duties_of_the_controller() {
                let sense = DriverSense {
                    coil_temperature_estimate: Celsius(thought_c),
                    ..Loop::of(11.0, true_c, 0.0).sense(12.6, duty, true_c)
                };
                assert!(!matches!(readings(&sense).1, Reading::Fault(_)), "{thought_c} {true_c}");
            }
        }
    }
}

/// With a fixed window of 5.5 ohm this coil passes when hot; compensated it does not. Where the
/// valve works hard, it does not even when it is 60 K hotter than the module thinks.
#[test]
fn limit_shorted_turns_read_high_cold_and_hot() {
    let pulse = CircuitLimits::default().key_on_pulse.duty;
    for (duty, misjudged_k) in
        [(pulse, 0.0), (0.4, 20.0), (0.6, 40.0), (0.8, 60.0), (0.95, 60.0), (1.0, 60.0)]
    {
        for thought_c in TEMPERATURES_C {
            for supply_v in SUPPLIES_V {
                let true_c = thought_c + misjudged_k;
                let sense = DriverSense {
                    coil_temperature_estimate: Celsius(thought_c),
                    ..Loop::of(4.4, true_c, 0.0).sense(supply_v, duty, true_c)
                };
                assert_eq!(readings(&sense).1, HIGH, "{thought_c} °C, {supply_v} V, {duty}");
            }
        }
    }
    let hot = Loop::of(4.4, 90.0, 0.0).sense(14.1, 1.0, 90.0);
    assert!(14.1 / hot.current.0 > 5.5, "the fixed window would have let it pass");
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
                let readings = read(&sense, &limits);
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
