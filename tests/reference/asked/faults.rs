//! Every electrical fault that the program can make, at every place where it makes sense: the program makes
//! it by its own hand, the netlist gets what the fault means in ohms.
//!
//! The ohms are written down again here, by hand: mildest and worst of each kind.

use super::super::case::Case;
use super::super::circumstances::{Circumstances, DRIVEN, KEY_OFF, KEY_ON, Key, RUNNING};
use super::super::comparison::Comparison;
use super::super::reading::{OHMS, Probe, Reading, VOLTS};
use super::super::wiring::Wiring::Mended;
use Probe::{BareVolts, CoilAmps};
use faultwright::faults::{Fault, FaultKind, FaultName, apply, places};
use faultwright::units::Celsius;
use faultwright::vehicle::loose::{as_it_stands, open_contacts};
use std::collections::BTreeSet;

/// Temperature at which a contact that minds heat is open in its mildest case [°C].
const WARM_C: f64 = 90.0;
const OPEN_OHMS: f64 = 1e12;
const COIL_OHMS: f64 = 11.0;
const CONTACT_OHMS: f64 = 0.005;
const RELAY_OHMS: f64 = 0.015;

const INTAKE_LOOSE: Circumstances = KEY_OFF.unplugged();
const EXHAUST_LOOSE: Circumstances = KEY_OFF.exhaust_unplugged();
const EXHAUST_DRIVEN: Circumstances = KEY_ON.exhaust_driven();
const BOTH_DRIVEN: Circumstances = DRIVEN.exhaust_driven();
const BOTH_RUNNING: Circumstances =
    Circumstances { key: Key::EngineRunning, ..DRIVEN.exhaust_driven() };

/// On both valves, key off and on, plugged and unplugged, driven and not.
const READINGS: [Reading; 38] = [
    Reading::new("ohms intake coil pins unplugged", INTAKE_LOOSE, OHMS, "a1v", "a2v"),
    Reading::new("ohms exhaust coil pins unplugged", EXHAUST_LOOSE, OHMS, "b1v", "b2v"),
    Reading::new("ohms intake control to ground unplugged", INTAKE_LOOSE, OHMS, "a2h", "engg"),
    Reading::new("ohms exhaust control to ground unplugged", EXHAUST_LOOSE, OHMS, "b2h", "engg"),
    Reading::new("ohms intake control to feed unplugged", INTAKE_LOOSE, OHMS, "a2h", "a1h"),
    Reading::new("ohms exhaust control to feed unplugged", EXHAUST_LOOSE, OHMS, "b2h", "b1h"),
    Reading::new("ohms intake control wire", INTAKE_LOOSE, OHMS, "a2h", "ecma"),
    Reading::new("ohms exhaust control wire", EXHAUST_LOOSE, OHMS, "b2h", "ecmbp"),
    Reading::new("ohms intake feed wire", INTAKE_LOOSE, OHMS, "r87", "a1h"),
    Reading::new("ohms exhaust feed wire", EXHAUST_LOOSE, OHMS, "r87", "b1h"),
    Reading::new("ohms intake feed to ground unplugged", INTAKE_LOOSE, OHMS, "a1h", "engg"),
    Reading::new("ohms exhaust feed to ground unplugged", EXHAUST_LOOSE, OHMS, "b1h", "engg"),
    Reading::new("ohms intake harness side plugged", KEY_OFF, OHMS, "a1h", "a2h"),
    Reading::new("ohms exhaust harness side plugged", KEY_OFF, OHMS, "b1h", "b2h"),
    Reading::new("ohms intake feed contact plugged", KEY_OFF, OHMS, "a1h", "a1v"),
    Reading::new("ohms exhaust control contact plugged", KEY_OFF, OHMS, "b2h", "b2v"),
    Reading::new("ohms valve fuse in place", KEY_OFF, OHMS, "fbox", "r30"),
    Reading::new("volts intake feed key off", KEY_OFF, VOLTS, "a1h", "0"),
    Reading::new("volts intake feed unplugged", KEY_ON.unplugged(), VOLTS, "a1h", "0"),
    Reading::new("volts exhaust feed unplugged", KEY_ON.exhaust_unplugged(), VOLTS, "b1h", "0"),
    Reading::new("volts intake control unplugged", KEY_ON.unplugged(), VOLTS, "a2h", "0"),
    Reading::new("volts exhaust control unplugged", KEY_ON.exhaust_unplugged(), VOLTS, "b2h", "0"),
    Reading::new("volts intake feed plugged", KEY_ON, VOLTS, "a1h", "0"),
    Reading::new("volts intake control plugged", KEY_ON, VOLTS, "a2h", "0"),
    Reading::new("volts exhaust control plugged", KEY_ON, VOLTS, "b2h", "0"),
    Reading::new("volts module supply", KEY_ON, VOLTS, "ecmb", "ecmg"),
    Reading::new("intake pin", KEY_ON, BareVolts, "ecma", "0"),
    Reading::new("exhaust pin", KEY_ON, BareVolts, "ecmbp", "0"),
    Reading::new("volts drop battery to intake coil driven", DRIVEN, VOLTS, "batp", "a1v"),
    Reading::new("volts drop intake coil to battery driven", DRIVEN, VOLTS, "a2v", "0"),
    Reading::new("volts drop battery to exhaust coil driven", EXHAUST_DRIVEN, VOLTS, "batp", "b1v"),
    Reading::new("volts drop exhaust coil to battery driven", EXHAUST_DRIVEN, VOLTS, "b2v", "0"),
    Reading::new("volts relay contact both driven", BOTH_DRIVEN, VOLTS, "r30", "r87"),
    Reading::new("volts exhaust coil pins both running", BOTH_RUNNING, VOLTS, "b1v", "b2v"),
    Reading::new("intake coil amps", KEY_ON, CoilAmps, "0", "0"),
    Reading::new("intake coil amps driven", DRIVEN, CoilAmps, "0", "0"),
    Reading::new("intake coil amps running", RUNNING, CoilAmps, "0", "0"),
    Reading::new("clamp on the intake feed driven", DRIVEN, Probe::Clamp, "0", "0"),
];

/// What a kind means in ohms, or in a share of the winding: mildest and worst.
fn extremes(kind: FaultKind) -> [f64; 2] {
    match kind {
        FaultKind::PartlyBrokenCoil => [1_500.0, 25_000.0],
        FaultKind::PoorJoint => [4.0, 30.0],
        FaultKind::ShortedTurns => [0.45, 0.85],
        FaultKind::CorrodedPin => [25.0, 400.0],
        FaultKind::SpreadTerminal => [6.0, 80.0],
        FaultKind::WireToGround | FaultKind::ChafedFeed => [0.4, 0.02],
        FaultKind::WireToSupply => [0.5, 0.02],
        FaultKind::ResistiveRelay => [2.0, 30.0],
        FaultKind::OpenCoil
        | FaultKind::LooseContact
        | FaultKind::HotContact
        | FaultKind::BrokenWire
        | FaultKind::BlownFuse => [OPEN_OHMS; 2],
        other => panic!("{other:?} is nothing that a circuit could show"),
    }
}

/// Whether a kind shows in a circuit.
fn is_electrical(kind: FaultKind) -> bool {
    !kind.is_in_oil() && !matches!(kind, FaultKind::StickingSpool | FaultKind::BlockedScreen)
}

/// Every electrical fault at every place.
pub fn names() -> Vec<FaultName> {
    places(&Mended.spec()).into_iter().filter(|name| is_electrical(name.kind)).collect()
}

/// The netlist's parameters, and lines that it has no parameters for.
fn in_netlist(name: &FaultName, size: f64) -> (Vec<(&'static str, f64)>, String) {
    use FaultKind as K;
    let none = String::new;
    match (name.kind, name.place.as_str()) {
        (K::OpenCoil | K::PartlyBrokenCoil | K::PoorJoint, "intake-valve") => {
            (vec![("rjoint", size)], none())
        }
        (K::OpenCoil | K::PartlyBrokenCoil | K::PoorJoint, "exhaust-valve") => {
            (vec![("rcoilb", COIL_OHMS + size)], none())
        }
        (K::ShortedTurns, "intake-valve") => (vec![("rcoil", COIL_OHMS * (1.0 - size))], none()),
        (K::ShortedTurns, "exhaust-valve") => (vec![("rcoilb", COIL_OHMS * (1.0 - size))], none()),
        (K::CorrodedPin | K::SpreadTerminal | K::LooseContact | K::HotContact, pin) => {
            let parameter = match pin {
                "intake-feed-pin" => "rca1",
                "intake-control-pin" => "rca2",
                "exhaust-feed-pin" => "rcb1",
                "exhaust-control-pin" => "rcb2",
                other => panic!("the netlist has no pin {other}"),
            };
            (vec![(parameter, CONTACT_OHMS + size)], none())
        }
        (K::BrokenWire, wire) => {
            let parameter = match wire {
                "intake-feed-wire" => "rwa1",
                "intake-control-wire" => "rwa2",
                "exhaust-feed-wire" => "rwb1",
                "exhaust-control-wire" => "rwb2",
                other => panic!("the netlist has no wire {other}"),
            };
            (vec![(parameter, size)], none())
        }
        (K::WireToGround, "intake-control-wire") => (vec![("rleak", size)], none()),
        (K::WireToGround, "exhaust-control-wire") => {
            (Vec::new(), format!("rrubbed b2h engg {size:e}\n"))
        }
        (K::WireToSupply, "intake-control-wire") => {
            (Vec::new(), format!("rrubbed a2h a1h {size:e}\n"))
        }
        (K::WireToSupply, "exhaust-control-wire") => {
            (Vec::new(), format!("rrubbed b2h b1h {size:e}\n"))
        }
        // The wires of both feeds begin at the splice.
        (K::ChafedFeed, "intake-feed-wire" | "exhaust-feed-wire") => {
            (vec![("rfuse", OPEN_OHMS), ("rleakfeed", size)], none())
        }
        (K::ChafedFeed, "splice-wire") => {
            (vec![("rfuse", OPEN_OHMS)], format!("rrubbed r87 engg {size:e}\n"))
        }
        (K::BlownFuse, "valve-fuse") => (vec![("rfuse", OPEN_OHMS)], none()),
        (K::ResistiveRelay, "valve-relay") => (vec![("rrel", RELAY_OHMS + size)], none()),
        (kind, place) => panic!("the netlist has no {kind:?} at {place}"),
    }
}

/// A fault in a sound vehicle, by the program's own hand.
fn case(name: &FaultName, severity: f64, size: f64) -> Case {
    let mut case = Case::sound(Mended);
    let fault = Fault { name: name.clone(), severity };
    assert!(apply(&fault, &Mended.spec(), &mut case.condition), "{name:?}");
    // A contact that comes and goes has gone.
    let shaken = match name.kind {
        FaultKind::LooseContact => BTreeSet::from([name.place.clone()]),
        _ => BTreeSet::new(),
    };
    let open = open_contacts(&case.condition, &shaken, Celsius(WARM_C));
    case.condition = as_it_stands(&case.condition, &open).into_owned();
    case.name = format!("{} {} {size:e}", name.kind.word(), name.place);
    (case.netlist, case.lines) = in_netlist(name, size);
    // A driver that closes onto its battery through half an ohm or less opens again.
    if name.kind == FaultKind::WireToSupply {
        let of_intake = name.place.as_str().starts_with("intake");
        case.opens_itself = (of_intake, !of_intake);
    }
    case
}

/// Every electrical fault at every place, at its mildest and at its worst.
pub fn everywhere() -> Comparison {
    let mut cases = vec![Case::sound(Mended)];
    for name in names() {
        let [mild, worst] = extremes(name.kind);
        cases.push(case(&name, 0.0, mild));
        // Open is open.
        if mild < OPEN_OHMS {
            cases.push(case(&name, 1.0, worst));
        }
    }
    Comparison {
        name: "every electrical fault everywhere",
        wiring: Mended,
        file: "faults_stored.csv",
        cases,
        readings: READINGS.to_vec(),
        least: 2_000,
    }
}
