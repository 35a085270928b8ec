//! The table again, in the mended wiring, and what a blown valve fuse looks like there.
//!
//! In the original wiring the module hung on the valve fuse: it should have been dead, yet the
//! table had it alive on 0.01 V. Now it is fed by its own fuse and really lives. Of the column
//! "fuse blown", to the digits of the table, these rows change: the unplugged control wire has
//! 2.50 V and the unplugged pin 2.51 V (both 0.40 V before, held down by the dead supply); the
//! feed has 0.02 V (0.01 V) and the control side 0.019 V (0.012 V) with the driver closed; the
//! coil's current is -0.0001 A (0.0001 A). All of it is the bias of the two valves and nothing
//! else.

use super::asked::{original, valve_fuse};

#[test]
fn reference_table_of_the_mended_wiring_agrees_with_simulator() {
    original::in_mended_wiring().check();
}

/// What the module senses with the valve fuse blown: it lives, both pins lie near ground as if
/// both control wires were shorted, a driver draws no current, and a pin whose valve is unplugged
/// rises to half the rail. So "control circuit low" for both valves; only the unplugged pin tells
/// the blown fuse from two shorted wires.
#[test]
fn reference_blown_valve_fuse_reads_as_both_controls_low() {
    let simulated = valve_fuse::blown().check();
    let [supply, intake, exhaust, amps, intake_loose, exhaust_loose] = simulated.as_slice() else {
        panic!("six readings");
    };
    let (healthy, shorted, blown) = (0, 1, 2);
    // Two intelligent drivers' data sheets put the limit of "short to ground" at 0.3 to 0.5 of the
    // rail and that of "open load" at 0.5 to 0.7.
    let low_v = 0.3 * 5.0;
    assert!(supply[blown] > 12.0);
    assert!(intake[healthy] > low_v && exhaust[healthy] > low_v);
    assert!(intake[shorted] < low_v && exhaust[shorted] > low_v);
    assert!(intake[blown] < low_v && exhaust[blown] < low_v);
    assert!(amps[blown].abs() < 1e-3 && amps[healthy] > 1.0);
    assert!(intake_loose[shorted] < low_v);
    for loose in [intake_loose[blown], exhaust_loose[blown]] {
        assert!((loose - 2.5).abs() < 0.05, "{loose}");
    }
}
