use super::*;
use crate::physics::coil::Winding;
use crate::physics::solenoid::Solenoid;
use crate::physics::spool::Spool;
use crate::physics::stroke::{Drive, Surroundings, energise};
use crate::units::{Celsius, Millimetres, Newtons, Ohms, Volts};

const ON_FOR: Seconds = Seconds(0.12);

fn stroke(stiction_n: f64) -> Stroke {
    energise(
        &Solenoid::REFERENCE,
        &Winding::REFERENCE,
        &Spool { stiction: Newtons(stiction_n), ..Spool::REFERENCE },
        Drive { supply: Volts(12.6), source: Ohms(0.52), on_for: ON_FOR },
        Surroundings { coil: Celsius(20.0), oil_viscosity_pa_s: 0.135, start: Millimetres(0.0) },
    )
}

/// The stroke of an 11 ohm coil at 20 °C in oil, from the equations by two independent solvers
/// (`tests/reference/solenoid.csv`, and a Runge-Kutta loop of one microsecond in Python for the
/// moment of the trough): peak 0.894 A, lowest 0.653 A after 6.94 ms, 1.0937 A after 120 ms. A screen
/// of 5 mA a count and 0.2 ms a point shows a flat bottom of more than a millisecond.
#[test]
fn reference_cursors_on_a_healthy_stroke() {
    let capture = coil_current(&stroke(0.0), ON_FOR);
    let Cursors::Current { dip: Some(dip), end_a } = capture.cursors else {
        panic!("{:?}", capture.cursors);
    };
    assert!((dip.peak_a - 0.894).abs() <= COUNT_A, "{dip:?}");
    assert!((dip.depth_a - 0.241).abs() <= 2.0 * COUNT_A, "{dip:?}");
    assert!((dip.at_ms - 6.94).abs() < 0.5, "{dip:?}");
    assert!((end_a - 1.0937).abs() < 0.006, "{end_a}");
    assert!(capture.points.len() <= POINTS && capture.points.len() > POINTS / 2);
    let lasting = capture.interval_s * capture.points.len() as f64;
    assert!((lasting - ON_FOR.0).abs() < 2e-3, "{lasting}");
}

/// The cursors see what the stroke itself recorded.
#[test]
fn closed_form_cursors_agree_with_the_record_of_the_stroke() {
    for stiction_n in [0.1, 1.0, 2.0] {
        let stroke = stroke(stiction_n);
        let recorded = stroke.dip.unwrap();
        let Cursors::Current { dip: Some(dip), .. } = coil_current(&stroke, ON_FOR).cursors else {
            panic!("no dip at {stiction_n} N");
        };
        assert!((dip.peak_a - recorded.peak.0).abs() <= COUNT_A, "{dip:?} {recorded:?}");
        let depth_a = recorded.peak.0 - recorded.trough.0;
        assert!((dip.depth_a - depth_a).abs() <= 4.0 * COUNT_A, "{dip:?} {recorded:?}");
    }
}

#[test]
fn limit_a_seized_spool_and_an_empty_wire_have_no_dip() {
    let seized = coil_current(&stroke(12.0), ON_FOR);
    assert!(matches!(seized.cursors, Cursors::Current { dip: None, end_a } if end_a > 1.0));
    let empty = steady_current(0.0, ON_FOR);
    assert!(matches!(empty.cursors, Cursors::Current { dip: None, end_a } if end_a == 0.0));
    assert_eq!(empty.points.len(), POINTS);
}

#[test]
fn closed_form_a_pin_before_during_and_after_a_switch_off() {
    let levels = PinLevels { closed_v: 0.31, flowing_v: vec![13.24; 45], open_v: 12.52 };
    let capture = switch_off(&levels, Seconds(0.2e-3));
    assert_eq!(capture.points[CLOSED_POINTS - 1], 0.3);
    assert_eq!(capture.points[CLOSED_POINTS], 13.2);
    assert_eq!(capture.points[CLOSED_POINTS + 44], 13.2);
    assert_eq!(capture.points[CLOSED_POINTS + 45], 12.5);
    let plateau = Some(Plateau { volts: 13.2, lasts_ms: 9.0 });
    assert_eq!(capture.cursors, Cursors::Pin { closed_v: 0.3, plateau, open_v: 12.5 });
    let open = PinLevels { closed_v: 0.0, flowing_v: Vec::new(), open_v: 2.5 };
    let cursors = switch_off(&open, Seconds(0.2e-3)).cursors;
    assert_eq!(cursors, Cursors::Pin { closed_v: 0.0, plateau: None, open_v: 2.5 });
}

#[test]
fn closed_form_pulses_are_closed_for_the_share_of_their_duty() {
    let levels = PinLevels { closed_v: 0.3, flowing_v: vec![14.9; 400], open_v: 14.0 };
    for (duty, closed) in [(0.0, 0), (0.4, 80), (1.0, 200)] {
        let capture = pulses(&levels, duty, 50, Seconds(80e-6));
        assert_eq!(capture.points.iter().filter(|volts| **volts < 1.0).count(), closed);
    }
}
