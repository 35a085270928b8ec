//! The duty that holds a phase, found by the module's own loop: whatever supply, winding and
//! temperature, it is the duty whose average current balances the spring at mid-stroke.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

mod road;

use faultwright::numerics::streams::Streams;
use faultwright::physics::coil::Winding;
use faultwright::physics::pulsed_coil::CoilDrive;
use faultwright::physics::solenoid::Solenoid;
use faultwright::physics::warm_up::EngineHeat;
use faultwright::units::{Celsius, Ohms, Volts};
use faultwright::vehicle::cam_line::CamCondition;
use faultwright::vehicle::per_bank::CamPlace;
use faultwright::vehicle::running::{EngineCondition, EngineSpec, RunningEngine};

/// Supply [V], winding at 20 °C [ohm], its turns, coil [°C].
const CASES: [(f64, f64, f64, f64); 6] = [
    (14.1, 11.0, 1.0, 95.0),
    (12.4, 9.3, 0.92, 95.0),
    (14.8, 9.3, 0.92, 40.0),
    (13.2, 12.8, 1.08, 120.0),
    (14.1, 19.5, 1.33, 60.0),
    (15.5, 7.4, 0.82, 20.0),
];

#[test]
fn closed_form_the_loop_finds_the_duty_of_the_balancing_current() {
    for (volts, ohms, turns, coil_c) in CASES {
        let winding = Winding { ohms_at_20: Ohms(ohms), turns, ..Winding::REFERENCE };
        let coil = CoilDrive {
            v_on: Volts(volts),
            v_freewheel: Volts(0.9),
            r_total: Ohms(winding.terminal_ohms(Celsius(coil_c)).0 + 0.45),
            inductance: Solenoid::REFERENCE.terminal_inductance(&winding),
            pulses_per_s: 300.0,
        };
        let mut condition = EngineCondition { supply: Volts(volts), ..EngineCondition::SOUND };
        condition.cams.one.intake = CamCondition { coil, turns, ..CamCondition::SOUND };
        let heat = EngineHeat { coolant: Celsius(89.0), oil: Celsius(88.0) };
        let air = Streams::new(1).stream("aeration");
        let mut engine = RunningEngine::new(EngineSpec::TYPICAL, condition, heat, air).unwrap();
        engine.start();
        engine.hold(&road::demand(2_000.0, 22.0, 0.0), 60_000);
        // Averaged over many control periods, as the pulses shake the loop.
        let (mut duty, mut current, mut told) = (0.0, 0.0, 0.0);
        for _ in 0..4_000 {
            engine.tick(&road::demand(2_000.0, 22.0, 0.0));
            let line = engine.cam(CamPlace::INTAKE);
            duty += line.duty() / 4_000.0;
            current += line.current().0 / 4_000.0;
            told += coil.average(line.duty()).0 / 4_000.0;
        }
        let what = format!("{volts} V {ohms} ohm {turns} {coil_c} C: duty {duty}, {current} A");
        assert!((engine.cam(CamPlace::INTAKE).vane().away().0 - 22.0).abs() < 0.5, "{what}");
        // The engine carries the current that the averaged law says, less what the spool's jolts induce.
        assert!((current / told - 1.0).abs() < 0.01, "{what}: {told}");
        // Spring and preload at mid-stroke: 0.8 + 600 * 1.25e-3 N, give or take the overlap of the port
        // (4 % of half the stroke, 0.03 N).
        let force = Solenoid::REFERENCE.force_at(faultwright::units::Amperes(current), &winding).0;
        assert!((force - 1.55).abs() < 0.08, "{what}: {force} N");
        assert!(
            (coil.duty_for(faultwright::units::Amperes(current)) - duty).abs() < 0.01,
            "{what}"
        );
    }
}
