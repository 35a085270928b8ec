//! Fifty random vehicles: coils, contacts, wires, leaks, battery, temperatures and drivers.

use super::super::case::{Case, coil_ohms, extra, joint, leak, short_turns};
use super::super::circumstances::{Driver, KEY_OFF, KEY_ON};
use super::super::comparison::Comparison;
use super::super::reading::{OHMS, Probe, Reading, VOLTS};
use super::super::wiring::Wiring::Mended;
use faultwright::numerics::streams::{Stream, Streams};

const SETS: u64 = 50;
const SEED: u64 = 20_260;

/// Where the key is on, the drivers are as drawn.
const READINGS: [Reading; 12] = [
    Reading::new("ohms coil pins unplugged", KEY_OFF.unplugged(), OHMS, "a1v", "a2v"),
    Reading::new("ohms harness side plugged", KEY_OFF, OHMS, "a1h", "a2h"),
    Reading::new("ohms control wire to ground", KEY_OFF.unplugged(), OHMS, "a2h", "engg"),
    Reading::new("volts battery", KEY_ON, VOLTS, "batp", "0"),
    Reading::new("volts module supply", KEY_ON, VOLTS, "ecmb", "ecmg"),
    Reading::new("volts feed", KEY_ON, VOLTS, "a1h", "0"),
    Reading::new("volts control", KEY_ON, VOLTS, "a2h", "0"),
    Reading::new("volts drop battery to coil", KEY_ON, VOLTS, "batp", "a1v"),
    Reading::new("volts coil pins", KEY_ON, VOLTS, "a1v", "a2v"),
    Reading::new("volts control unplugged", KEY_ON.unplugged(), VOLTS, "a2h", "0"),
    Reading::new("pin volts", KEY_ON, Probe::BareVolts, "ecma", "0"),
    Reading::new("coil amps", KEY_ON, Probe::CoilAmps, "0", "0"),
];

/// An element that gets a random resistance: its name, the netlist's parameter, its sound
/// resistance, and least and most of the drawn one [ohm].
const RESISTANCES: [(&str, &str, f64, f64, f64); 9] = [
    ("intake-feed-pin", "rca1", 0.005, 0.001, 100.0),
    ("intake-control-pin", "rca2", 0.005, 0.001, 100.0),
    ("intake-feed-wire", "rwa1", 0.045, 0.02, 10.0),
    ("intake-control-wire", "rwa2", 0.072, 0.02, 10.0),
    ("splice-wire", "rsplice", 0.040, 0.01, 3.0),
    ("valve-fuse", "rfuse", 0.005, 0.002, 0.1),
    ("valve-relay", "rrel", 0.015, 0.005, 3.0),
    ("module-ground-wire", "rground", 0.010, 0.005, 1.0),
    ("engine-strap", "rstrap", 0.002, 0.001, 0.2),
];

fn logarithmic(stream: &mut Stream, least: f64, most: f64) -> f64 {
    stream.between(least.ln(), most.ln()).exp()
}

fn set(number: u64) -> Case {
    let mut stream = Streams::new(SEED).stream(&format!("wiring set {number}"));
    let mut case = Case::sound(Mended);
    case.name = format!("set {number}");
    let condition = &mut case.condition;
    for (element, parameter, sound, least, most) in RESISTANCES {
        let ohms = logarithmic(&mut stream, least, most);
        // May be less than nothing: better than sound.
        extra(condition, element, ohms - sound);
        case.netlist.push((parameter, ohms));
    }
    for (wire, parameter, share) in
        [("intake-control-wire", "rleak", 0.4), ("intake-feed-wire", "rleakfeed", 0.2)]
    {
        let ohms = logarithmic(&mut stream, 0.01, 1_000.0);
        if stream.unit() < share {
            leak(condition, wire, ohms);
            case.netlist.push((parameter, ohms));
        }
    }

    let ohms_at_20 = stream.between(4.0, 30.0);
    coil_ohms(condition, ohms_at_20);
    let mut ohms = ohms_at_20;
    let shorted = stream.between(0.05, 0.85);
    if stream.unit() < 0.25 {
        short_turns(condition, shorted);
        ohms *= 1.0 - shorted;
    }
    let joint_ohms = logarithmic(&mut stream, 1.0, 10_000.0);
    if stream.unit() < 0.25 {
        joint(condition, joint_ohms);
        case.netlist.push(("rjoint", joint_ohms));
    }
    // Copper by IEC 60028.
    case.coil_celsius = stream.between(-25.0, 140.0);
    let hot = 1.0 + 0.003_93 * (case.coil_celsius - 20.0);
    case.netlist.extend([("rcoil", ohms * hot), ("rcoilb", 11.0 * hot)]);

    // A battery that is emptier may not keep the module alive, which the netlist takes for granted.
    let (charge, celsius) = (stream.between(0.3, 1.0), stream.between(-25.0, 45.0));
    condition.battery_charge = charge;
    case.battery_celsius = celsius;
    let empty = 1.0 - charge;
    case.netlist.extend([
        ("emf", 11.8 + 0.9 * charge + 0.001_2 * (celsius - 20.0)),
        (
            "rint",
            0.008
                * (-0.018 * (celsius - 20.0)).exp()
                * (1.0 + 1.5 * empty * empty + 12.0 * empty.powi(12)),
        ),
    ]);

    let mut driver = || if stream.unit() < 0.6 { Driver::On } else { Driver::Off };
    case.drivers = Some((driver(), driver()));
    case
}

pub fn vehicles() -> Comparison {
    Comparison {
        name: "random vehicles",
        wiring: Mended,
        file: "random_stored.csv",
        cases: (1..=SETS).map(set).collect(),
        readings: READINGS.to_vec(),
        least: 600,
    }
}
