//! A driver that sits in the feed of its valve.

use super::*;

const HIGH_CODES: DriverCodes = DriverCodes { side: DriverSide::High, ..CODES };

fn readings(sense: &DriverSense) -> (Reading, Reading) {
    let readings = read(sense, DriverSide::High, &CircuitLimits::default());
    (readings.idle, readings.current)
}

/// Pin off and on \[V\] and current on \[A\] of an 11 ohm place at 12.6 V, worked out by hand from two bias
/// resistors of 43 kilo-ohm at a rail of 5 V and a loop of half an ohm.
const OPERATING_POINTS: [(&str, f64, f64, f64, Reading, Reading); 8] = [
    ("healthy", 0.001, 12.4, 1.096, PASS, PASS),
    ("19.5 ohm", 0.002, 12.5, 0.630, PASS, PASS),
    ("partly broken coil, 4.7k", 0.448, 12.6, 0.002_7, PASS, OPEN),
    ("open anywhere", 2.5, 12.6, 0.0, OPEN, OPEN),
    ("60 % of the turns shorted", 0.0, 12.0, 2.571, PASS, LOW),
    ("wire at ground, the driver protects itself", 0.0, 0.0, 0.0, PASS, LOW),
    ("no supply behind the driver", 0.0, 0.0, 0.0, PASS, LOW),
    ("wire at the supply", 12.5, 12.5, 0.4, HIGH, OPEN),
];

#[test]
fn closed_form_operating_points_of_a_switched_feed() {
    for (fault, off_v, on_v, on_a, idle, current) in OPERATING_POINTS {
        assert_eq!(readings(&sense(0.0, 12.6, off_v, 0.0)), (idle, NOT_RUN), "{fault}, off");
        if fault != "wire at the supply" {
            assert_eq!(readings(&sense(1.0, 12.6, on_v, on_a)), (NOT_RUN, current), "{fault}, on");
        }
        // Between the two the mean of both is read, and says the same of the resting pin.
        for duty in [0.25, 0.5, 0.85] {
            let mean_v = (1.0 - duty) * off_v + duty * on_v;
            assert_eq!(
                readings(&sense(duty, 12.6, mean_v, duty * on_a)).0,
                idle,
                "{fault}, {duty}"
            );
        }
    }
}

/// The code that says nothing yet: a resting pin at ground may be a good coil or a short, so that low has
/// not passed before a pulse has.
#[test]
fn limit_low_passes_by_the_current_and_high_by_the_resting_pin() {
    let mut monitor = CircuitMonitor::new(CircuitLimits::default(), HIGH_CODES);
    for tick in (0..60).map(|number| Tick(number * 100)) {
        monitor.judge(&sense(0.0, 12.6, 0.0, 0.0), tick);
    }
    assert_eq!(monitor.verdict(CircuitFault::High), Verdict::Passed);
    assert_eq!(monitor.verdict(CircuitFault::Low), Verdict::NotRun);
    assert_eq!(monitor.verdict(CircuitFault::Open), Verdict::NotRun);
    for tick in (60..120).map(|number| Tick(number * 100)) {
        monitor.judge(&sense(0.5, 12.6, 6.2, 0.5), tick);
    }
    assert_eq!(monitor.verdict(CircuitFault::Low), Verdict::Passed);
    assert_eq!(monitor.verdict(CircuitFault::Open), Verdict::Passed);
}
