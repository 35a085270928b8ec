//! The mended wiring: every fault of the table and three of the module's own branch.

use super::asked::mended;

/// Supply below which a module does nothing [V], as the harness has it.
const MODULE_NEEDS_V: f64 = 5.5;

#[test]
fn reference_mended_wiring_agrees_with_simulator() {
    mended::wiring().check();
}

#[test]
fn reference_switched_driver_agrees_with_simulator() {
    mended::switched().check();
}

/// A blown module fuse does not silence the module: with the key on, current comes through the
/// valves' coils and the drivers' freewheel diodes. Closing one driver takes its coil away, closing
/// both takes the supply away.
#[test]
fn reference_module_without_its_fuse_is_fed_back_through_the_valves() {
    let simulated = mended::module_fuse_blown().check();
    for alive in &simulated[..4] {
        assert!(alive[0] > MODULE_NEEDS_V, "{alive:?}");
    }
    // What the simulator says of a module that would stay alive with both drivers closed.
    let supply = mended::module_fuse_blown_and_alive().simulated();
    assert!(supply[0][0] < MODULE_NEEDS_V, "{supply:?}");
}
