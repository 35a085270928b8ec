//! Every electrical fault of the program at every place of the mended wiring, on both valves.

use super::asked::faults::{everywhere, names};
use faultwright::faults::FaultKind;

#[test]
fn reference_every_electrical_fault_everywhere_agrees_with_simulator() {
    let asked = everywhere();
    let simulated = asked.check();
    // Every fault shows somewhere: a table whose columns are all alike would prove nothing.
    let differs = |value: f64, sound: f64| {
        if value.is_finite() && sound.is_finite() {
            (value - sound).abs() > 1e-3 + 1e-3 * sound.abs()
        } else {
            value.is_finite() != sound.is_finite()
        }
    };
    for (number, case) in asked.cases.iter().enumerate().skip(1) {
        let shows = simulated.iter().filter(|line| differs(line[number], line[0])).count();
        assert!(shows >= 2, "{} shows in {shows} readings", case.name);
    }
}

/// The kinds that a circuit can show, counted by hand, each on both valves or in what both share.
#[test]
fn closed_form_every_kind_is_asked_on_both_valves() {
    let names = names();
    for (kind, wanted) in [
        (FaultKind::OpenCoil, 2),
        (FaultKind::PartlyBrokenCoil, 2),
        (FaultKind::PoorJoint, 2),
        (FaultKind::ShortedTurns, 2),
        (FaultKind::CorrodedPin, 4),
        (FaultKind::SpreadTerminal, 4),
        (FaultKind::LooseContact, 4),
        (FaultKind::HotContact, 4),
        (FaultKind::BrokenWire, 4),
        (FaultKind::WireToGround, 2),
        (FaultKind::WireToSupply, 2),
        (FaultKind::ChafedFeed, 3),
        (FaultKind::BlownFuse, 1),
        (FaultKind::ResistiveRelay, 1),
    ] {
        assert_eq!(names.iter().filter(|name| name.kind == kind).count(), wanted, "{kind:?}");
    }
    assert_eq!(names.len(), 37);
}
