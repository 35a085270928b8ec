//! The whole wiring of the shipped vehicle with a meter in it.

use super::stopwatch::median;
use super::table::Row;
use faultwright::instruments::multimeter::{MeterFunction, Multimeter};
use faultwright::physics::circuit::{Element, Network, OhmSource};
use faultwright::scenario::load::demo;
use faultwright::units::Celsius;
use faultwright::vehicle::assembly::Assembly;
use faultwright::vehicle::condition::Condition;
use faultwright::vehicle::harness::{DriverState, ElectricalState, Machines, Wiring, wire_up};
use faultwright::vehicle::spec::VehicleSpec;
use std::hint::black_box;
use std::time::Duration;

/// What design and goals ask of one solution.
const GOAL: Duration = Duration::from_micros(5);

/// The shipped vehicle, sound.
pub struct Bench {
    pub spec: VehicleSpec,
    pub condition: Condition,
    pub assembly: Assembly,
    pub state: ElectricalState,
}

impl Bench {
    /// The vehicle that the program carries.
    fn shipped() -> Self {
        Self::of(demo().expect("the scenario that the program carries").vehicle)
    }

    /// Key on, engine stopped, the first valve driven: diodes block and conduct.
    pub fn of(spec: VehicleSpec) -> Self {
        let valves = || spec.valves.iter().map(|valve| valve.id.clone());
        let state = ElectricalState {
            key_on: true,
            charging: false,
            machines: Machines::RESTING,
            battery_temperature: Celsius(20.0),
            coil_temperature: valves().map(|valve| (valve, Celsius(20.0))).collect(),
            drivers: valves().take(1).map(|valve| (valve, DriverState::On)).collect(),
        };
        Self { condition: Condition::sound(&spec), assembly: Assembly::default(), spec, state }
    }

    pub fn wiring(&self) -> Wiring {
        wire_up(&self.spec, &self.condition, &self.assembly, &self.state).expect("sound wiring")
    }
}

const RED: &str = "intake-harness-control";
const BLACK: &str = "battery-minus";

/// The network with the meter on volts between two nodes.
pub fn with_resistor(wiring: &Wiring, red: &str, black: &str) -> Network {
    let mut network = wiring.network.clone();
    let (a, b) = (node(wiring, red), node(wiring, black));
    network.add(Element::Resistor { a, b, ohms: 10e6 });
    network
}

/// The network with the meter on volts at a driven valve's control side.
fn with_volts(wiring: &Wiring) -> Network {
    with_resistor(wiring, RED, BLACK)
}

/// The network with the meter on ohms at the same place.
fn with_ohms(wiring: &Wiring) -> Network {
    let mut network = wiring.network.clone();
    let tip = network.add_node();
    network.add(Element::Resistor { a: tip, b: node(wiring, RED), ohms: 0.2 });
    let source = OhmSource { range_a: 1e-3, compliance_v: 2.5, internal_ohms: 1_500.0 };
    network.add(Element::OhmMeter { red: tip, black: node(wiring, BLACK), source });
    network
}

fn node(wiring: &Wiring, name: &str) -> usize {
    wiring.node(name).expect("a node of the wiring")
}

fn solution(network: &Network) -> Duration {
    median(|| {
        black_box(black_box(network).solve().expect("sound wiring"));
    })
}

pub fn rows() -> Result<Vec<Row>, String> {
    let mut bench = Bench::shipped();
    let mut rows = Vec::new();
    let mut row = |what: &str, ours| {
        let against = "the goal for a solution".to_owned();
        rows.push(Row { what: what.to_owned(), ours, other: GOAL, against, goal: 1.0 });
    };
    row("DC solution, volts, a valve driven", solution(&with_volts(&bench.wiring())));
    row("a whole reading of the meter, volts, a valve driven", reading(&bench));
    bench.state.drivers.clear();
    row("DC solution, volts, key on, nothing driven", solution(&with_volts(&bench.wiring())));
    bench.state.charging = true;
    row("DC solution, volts, engine running", solution(&with_volts(&bench.wiring())));
    bench.state.charging = false;
    bench.state.key_on = false;
    row("DC solution, volts, key off", solution(&with_volts(&bench.wiring())));
    row("DC solution, ohms, key off", solution(&with_ohms(&bench.wiring())));
    Ok(rows)
}

/// A whole reading: the wiring put together as it stands, and the meter read.
fn reading(bench: &Bench) -> Duration {
    median(|| {
        let phases = [(1.0, bench.wiring())];
        let mut meter = Multimeter::ideal();
        let reading = meter.read(MeterFunction::Volts, &phases, RED, BLACK);
        black_box(reading.expect("sound wiring"));
    })
}
