//! The whole wiring of the shipped vehicle with a meter in it.

use super::stopwatch::median;
use super::table::Row;
use faultwright::instruments::multimeter::{MeterFunction, Multimeter};
use faultwright::physics::circuit::{Element, Network, OhmSource};
use faultwright::scenario::load::demo;
use faultwright::units::Celsius;
use faultwright::vehicle::assembly::Assembly;
use faultwright::vehicle::condition::Condition;
use faultwright::vehicle::harness::{DriverState, ElectricalState, Wiring, wire_up};
use faultwright::vehicle::spec::VehicleSpec;
use std::collections::BTreeMap;
use std::hint::black_box;
use std::time::Duration;

const RUNS: usize = 101;
const REPEATS: u32 = 50;
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
    /// Key on, engine stopped, the first valve driven: diodes block and conduct.
    pub fn new() -> Self {
        let spec = demo().expect("the scenario that the program carries").vehicle;
        let drivers: BTreeMap<_, _> = spec
            .valves
            .first()
            .map(|valve| (valve.id.clone(), DriverState::On))
            .into_iter()
            .collect();
        let state = ElectricalState {
            key_on: true,
            charging: false,
            battery_temperature: Celsius(20.0),
            coil_temperature: spec
                .valves
                .iter()
                .map(|valve| (valve.id.clone(), Celsius(20.0)))
                .collect(),
            drivers,
        };
        Self { condition: Condition::sound(&spec), assembly: Assembly::default(), spec, state }
    }

    pub fn wiring(&self) -> Wiring {
        wire_up(&self.spec, &self.condition, &self.assembly, &self.state).expect("sound wiring")
    }
}

/// The network with the meter on volts at a driven valve's control side.
pub fn with_volts(wiring: &Wiring) -> Network {
    let mut network = wiring.network.clone();
    let (a, b) = leads(wiring);
    network.add(Element::Resistor { a, b, ohms: 10e6 });
    network
}

/// The network with the meter on ohms at the same place.
fn with_ohms(wiring: &Wiring) -> Network {
    let mut network = wiring.network.clone();
    let (a, b) = leads(wiring);
    let tip = network.add_node();
    network.add(Element::Resistor { a: tip, b: a, ohms: 0.2 });
    let source = OhmSource { range_a: 1e-3, compliance_v: 2.5, internal_ohms: 1_500.0 };
    network.add(Element::OhmMeter { red: tip, black: b, source });
    network
}

fn leads(wiring: &Wiring) -> (usize, usize) {
    let node = |name| wiring.node(name).expect("a node of the shipped vehicle");
    (node("intake-harness-control"), node("battery-minus"))
}

fn solution(network: &Network) -> Duration {
    median(RUNS, REPEATS, || {
        black_box(black_box(network).solve().expect("sound wiring"));
    })
}

pub fn rows() -> Result<Vec<Row>, String> {
    let mut bench = Bench::new();
    let mut rows = Vec::new();
    let mut row = |what: &str, ours| {
        let against = "the goal for a solution".to_owned();
        rows.push(Row { what: what.to_owned(), ours, other: GOAL, against, goal: 1.0 });
    };
    row("DC solution, volts, a valve driven", solution(&with_volts(&bench.wiring())));
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
pub fn reading() -> Duration {
    let bench = Bench::new();
    median(RUNS, REPEATS / 10, || {
        let phases = [(1.0, bench.wiring())];
        let mut meter = Multimeter::ideal();
        black_box(
            meter
                .read(MeterFunction::Volts, &phases, "intake-harness-control", "battery-minus")
                .expect("sound wiring"),
        );
    })
}
