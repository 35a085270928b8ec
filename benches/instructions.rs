//! How many instructions a piece of work takes: the same on a busy machine as on a quiet one, so that a change
//! of a few percent shows. Counted by Valgrind's callgrind, where it is installed.
//!
//! `cargo bench --no-default-features --bench instructions`
#![expect(clippy::expect_used, reason = "a bench that cannot be run ends by panicking")]
#![expect(clippy::print_stdout, reason = "a bench is there to print")]

use faultwright::physics::circuit::{Element, Network};
use faultwright::scenario::load::demo;
use faultwright::scenario::suppose::suppositions;
use faultwright::session::attempt::Session;
use faultwright::units::Celsius;
use faultwright::vehicle::assembly::Assembly;
use faultwright::vehicle::condition::Condition;
use faultwright::vehicle::harness::{DriverState, ElectricalState, Machines, wire_up};
use faultwright::vehicle::route::RouteProfile;
use faultwright::vehicle::whole::Vehicle;
use std::hint::black_box;
use std::process::Command;
use std::sync::Arc;

/// A piece of work: prepared once, then done as often as asked.
type Work = fn(u32);

/// Name, what it is, how often it is done, and how many pieces once done counts for.
const WORKS: [(&str, &str, u32, u64, Work); 3] = [
    ("solution", "one DC solution of the shipped wiring, meter on volts", 1_000, 1, solution),
    ("tick", "one millisecond of the warm road test, whole vehicle, mean", 1, TICKS, tick),
    ("world", "beginning one world: two drives of the customer's", 1, 1, world),
];
/// Milliseconds of one warm road test.
const TICKS: u64 = 150_000;

fn main() {
    let words: Vec<String> = std::env::args().skip(1).collect();
    if let [name, times] = words.as_slice()
        && let Some((.., work)) = WORKS.iter().find(|(known, ..)| known == name)
    {
        return work(times.parse().expect("a number of times"));
    }
    println!("{:<62} {:>14}", "what", "instructions");
    for (name, what, times, pieces, _) in WORKS {
        // Once more less once: what the preparation takes falls out.
        let (Some(once), Some(more)) = (counted(name, 1), counted(name, 1 + times)) else {
            println!("skipped: Valgrind is not installed, so no instructions are counted");
            return;
        };
        println!("{what:<62} {:>14}", (more - once) / (u64::from(times) * pieces));
    }
}

/// The instructions that this program takes for some work.
fn counted(name: &str, times: u32) -> Option<u64> {
    let this = std::env::current_exe().expect("this program has a path");
    let output = Command::new("valgrind")
        .args(["--tool=callgrind", "--callgrind-out-file=/dev/null"])
        .arg(this)
        .args([name, &times.to_string()])
        .output()
        .ok()?;
    let said = String::from_utf8_lossy(&output.stderr);
    said.lines().find_map(|line| line.split_once("Collected :")?.1.trim().parse().ok())
}

fn solution(times: u32) {
    let spec = demo().expect("the scenario that the program carries").vehicle;
    let state = ElectricalState {
        key_on: true,
        charging: false,
        machines: Machines::RESTING,
        battery_temperature: Celsius(20.0),
        coil_temperature: spec.valves.iter().map(|v| (v.id.clone(), Celsius(20.0))).collect(),
        drivers: spec.valves.iter().take(1).map(|v| (v.id.clone(), DriverState::On)).collect(),
    };
    let condition = Condition::sound(&spec);
    let wiring = wire_up(&spec, &condition, &Assembly::default(), &state).expect("sound wiring");
    let mut network: Network = wiring.network.clone();
    let node = |name| wiring.node(name).expect("a node of the wiring");
    let (a, b) = (node("intake-harness-control"), node("battery-minus"));
    network.add(Element::Resistor { a, b, ohms: 10e6 });
    for _ in 0..times {
        black_box(black_box(&network).solve().expect("sound wiring"));
    }
}

fn tick(times: u32) {
    let spec = demo().expect("the scenario that the program carries").vehicle;
    let condition = Condition::sound(&spec);
    let mut vehicle =
        Vehicle::new(Arc::new(spec), condition, Celsius(20.0), &[], 1).expect("a sound vehicle");
    vehicle.start().expect("a sound vehicle");
    for _ in 0..times {
        black_box(vehicle.drive(&RouteProfile::warm_road_test()).expect("a road"));
    }
}

fn world(times: u32) {
    let scenario = demo().expect("the scenario that the program carries");
    let briefing = Arc::new(scenario.briefing());
    let supposed = suppositions(&scenario);
    for _ in 0..times {
        let hidden = supposed[supposed.len() / 2].hidden.clone();
        black_box(Session::begin(Arc::clone(&briefing), hidden).expect("a world"));
    }
}
