//! The wiring in its present state, as a network with named nodes.

use super::assembly::Assembly;
use super::condition::Condition;
use super::spec::{HarnessElement, Id, LoadOhms, Numbering, VehicleSpec};
use crate::control_module::driver_side::DriverSide;
use crate::physics::battery::{self, Generator, Starter};
use crate::physics::circuit::{CircuitError, DiodeLaw, Element, Network, Solution};
use crate::physics::wire::Cable;
use crate::units::{Amperes, Celsius, Rpm};
use std::collections::BTreeMap;
use std::sync::Arc;

/// An open contact, broken wire or open switch [ohm].
pub const OPEN_OHMS: f64 = 1e12;
/// Freewheel diode of a driver: engineering estimate.
const FREEWHEEL_DIODE: DiodeLaw = DiodeLaw { saturation_a: 1e-9, ideality: 1.3, series_ohms: 0.05 };
/// Body diode of a driver's transistor: engineering estimate. It conducts when the pin is pulled
/// below the module's ground, as an ohmmeter across a plugged-in connector does.
const BODY_DIODE: DiodeLaw = DiodeLaw { saturation_a: 1e-10, ideality: 1.1, series_ohms: 0.05 };
/// The regulated rail [V] and its source resistance with and without supply [ohm]: engineering
/// estimate.
const RAIL_V: f64 = 5.0;
const RAIL_OHMS: f64 = 0.001;
const RAIL_DEAD_OHMS: f64 = 1_000.0;
/// Below this supply [V] the module does nothing: engineering estimate, below the 6 V to which
/// ISO 16750-2 code A asks equipment to work.
const MODULE_LEAST_V: f64 = 5.5;
/// Temperature of all cables: a harness has none of its own yet. Beside a hot engine a cable has a
/// quarter more, which is milliohms.
const HARNESS: Celsius = Celsius(20.0);
/// The generator: 14.3 V behind 15 mohm at 20 °C.
pub(super) const GENERATOR: Generator = Generator::TYPICAL;
/// The starter.
pub(super) const STARTER: Starter = Starter::TYPICAL;
/// Crankshaft speed at which the generator's most current is taken [rpm]: a warm idle, where it is
/// least.
const GENERATES_AT: Rpm = Rpm(700.0);

/// The two machines on the engine.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Machines {
    /// Speed at which the starter turns the crankshaft [rad/s], if it is switched on.
    pub starter_rad_s: Option<f64>,
    /// Temperature of the generator's regulator.
    pub regulator: Celsius,
}

impl Machines {
    /// The starter off, the regulator at 20 °C.
    pub const RESTING: Self = Self { starter_rad_s: None, regulator: Celsius(20.0) };
}

/// Current at which a closed driver opens again to protect itself [A]: engineering estimate, above
/// what any winding that is fitted here draws, shorted turns included. Data sheets of such drivers
/// give several amperes.
const DRIVER_LIMIT_A: f64 = 10.0;

/// What a driver does at the moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum DriverState {
    /// The switch is open and the coil has no current of its own.
    Off,
    /// The switch is closed.
    On,
    /// The switch is open and the coil's inductance keeps this current going.
    Freewheel(Amperes),
}

/// Everything besides parts that decides currents.
#[derive(Debug, Clone, PartialEq)]
pub struct ElectricalState {
    /// Key on.
    pub key_on: bool,
    /// Engine turns and the alternator charges.
    pub charging: bool,
    /// Starter and generator.
    pub machines: Machines,
    /// Temperature of the battery.
    pub battery_temperature: Celsius,
    /// Temperature of each coil, by the valve's place.
    pub coil_temperature: BTreeMap<Id, Celsius>,
    /// What each driver does, by the valve's place; absent means off.
    pub drivers: BTreeMap<Id, DriverState>,
}

/// A network of the wiring with its nodes and elements by name.
#[derive(Debug, Clone, PartialEq)]
pub struct Wiring {
    /// The network; an instrument adds itself to it.
    pub network: Network,
    numbering: Arc<Numbering>,
    /// The number in the network of each element of the wiring.
    elements: Vec<usize>,
    /// Whether the module had the supply to work.
    pub module_alive: bool,
    /// The solution that told whether it had.
    solved: Option<Solution>,
}

impl Wiring {
    /// The solution of the network as it was built, which the module's supply may have asked for
    /// already.
    ///
    /// # Errors
    /// [`CircuitError`] when the network has no solution.
    pub fn solve(&self) -> Result<Solution, CircuitError> {
        self.solved.clone().map_or_else(|| self.network.solve(), Ok)
    }

    /// The number of a named node.
    #[must_use]
    pub fn node(&self, name: &str) -> Option<usize> {
        self.numbering.node(name)
    }

    /// The number of a named element: for a driver its sense resistor, for a battery its source.
    #[must_use]
    pub fn element(&self, name: &str) -> Option<usize> {
        self.elements.get(self.numbering.element(name)?).copied()
    }
}

/// Builds the wiring as it stands. A module that turns out to lack supply is built again without
/// its own voltages, because they come from the same wires.
///
/// # Errors
/// [`CircuitError`] when the network has no solution.
pub fn wire_up(
    spec: &VehicleSpec,
    condition: &Condition,
    assembly: &Assembly,
    state: &ElectricalState,
) -> Result<Wiring, CircuitError> {
    let mut alive = Builder::new(spec, condition, assembly, state, state.key_on).build();
    if !state.key_on {
        return Ok(alive);
    }
    let mut solution = alive.network.solve()?;
    if state.charging && at_its_limit(spec, &alive, &solution) {
        alive = Builder::new(spec, condition, assembly, state, true).at_its_limit().build();
        solution = alive.network.solve()?;
    }
    if !supplied(spec, &alive, &solution) {
        return Ok(Builder::new(spec, condition, assembly, state, false).build());
    }
    let overloaded = overloaded(spec, &alive, &solution);
    if overloaded.is_empty() {
        alive.solved = Some(solution);
        return Ok(alive);
    }
    let mut protected = state.clone();
    protected.drivers.retain(|valve, _| !overloaded.contains(&valve));
    Ok(Builder::new(spec, condition, assembly, &protected, true).build())
}

/// The valves whose drivers carry more than they stand.
fn overloaded<'a>(spec: &'a VehicleSpec, wiring: &Wiring, solution: &Solution) -> Vec<&'a Id> {
    spec.harness
        .elements
        .iter()
        .filter_map(|element| match element {
            HarnessElement::Driver { id, valve, .. } => {
                let sense = wiring.element(id.as_str())?;
                (solution.amperes(sense) > DRIVER_LIMIT_A).then_some(valve)
            }
            _ => None,
        })
        .collect()
}

/// Whether the generator would have to give more than it can.
fn at_its_limit(spec: &VehicleSpec, wiring: &Wiring, solution: &Solution) -> bool {
    spec.harness.elements.iter().any(|element| {
        matches!(element, HarnessElement::Alternator { .. })
            && wiring
                .element(element.id().as_str())
                .is_some_and(|number| solution.amperes(number) > GENERATOR.limit(GENERATES_AT).0)
    })
}

fn supplied(spec: &VehicleSpec, wiring: &Wiring, solution: &Solution) -> bool {
    spec.harness.elements.iter().all(|element| match element {
        HarnessElement::ModuleSupply { supply, ground, .. } => {
            match (wiring.node(supply.as_str()), wiring.node(ground.as_str())) {
                (Some(plus), Some(minus)) => solution.volts_between(plus, minus) >= MODULE_LEAST_V,
                _ => false,
            }
        }
        _ => true,
    })
}

struct Builder<'a> {
    spec: &'a VehicleSpec,
    condition: &'a Condition,
    assembly: &'a Assembly,
    state: &'a ElectricalState,
    wiring: Wiring,
    is_limited: bool,
}

impl<'a> Builder<'a> {
    fn new(
        spec: &'a VehicleSpec,
        condition: &'a Condition,
        assembly: &'a Assembly,
        state: &'a ElectricalState,
        module_alive: bool,
    ) -> Self {
        let elements = &spec.harness.elements;
        let numbering = Arc::clone(elements.numbering());
        let wiring = Wiring {
            network: Network::with_nodes(numbering.count()),
            numbering,
            elements: Vec::with_capacity(elements.len()),
            module_alive,
            solved: None,
        };
        Self { spec, condition, assembly, state, wiring, is_limited: false }
    }

    /// The generator gives the most that it can, whatever the voltage.
    const fn at_its_limit(mut self) -> Self {
        self.is_limited = true;
        self
    }

    fn build(mut self) -> Wiring {
        for (place, element) in self.spec.harness.elements.iter().enumerate() {
            let ends = self.wiring.numbering.ends(place);
            let number = self.place(element, place, ends);
            self.wiring.elements.push(number);
            self.place_leak(element, ends[0]);
        }
        self.wiring
    }

    fn resistor(&mut self, a: usize, b: usize, ohms: f64) -> usize {
        self.wiring.network.add(Element::Resistor { a, b, ohms })
    }

    fn with_extra(&self, id: &Id, ohms: f64) -> f64 {
        ohms + self.condition.extra_ohms.get(id).copied().unwrap_or(0.0)
    }

    fn load_ohms(&self, load: &LoadOhms, awake: bool) -> f64 {
        match load.running {
            Some(ohms) if awake && self.state.charging => ohms,
            _ if awake => load.key_on,
            _ => load.key_off,
        }
    }

    /// `ends` are the numbers of its nodes, in the order of [`HarnessElement::nodes`].
    fn place(
        &mut self,
        element: &HarnessElement,
        place: usize,
        ends @ [from, to, _]: [usize; 3],
    ) -> usize {
        match element {
            HarnessElement::Battery { .. } => {
                let temperature = self.state.battery_temperature;
                let charge = self.condition.battery_charge;
                let (volts, ohms) = if self.state.charging {
                    battery::while_charged(charge)
                } else {
                    (
                        battery::rest_voltage(charge, temperature),
                        battery::internal(charge, temperature),
                    )
                };
                let (volts, ohms) = (volts.0, ohms.0);
                self.wiring.network.add(Element::Source { plus: from, minus: to, volts, ohms })
            }
            HarnessElement::Alternator { .. } => self.place_generator(from, to),
            HarnessElement::Starter { .. } => match self.state.machines.starter_rad_s {
                Some(rad_s) => self.wiring.network.add(Element::Source {
                    plus: from,
                    minus: to,
                    volts: STARTER.volts_per_rad_s * rad_s,
                    ohms: STARTER.ohms,
                }),
                None => self.resistor(from, to, OPEN_OHMS),
            },
            HarnessElement::Wire { id, ohms, .. } => {
                let ohms = self.with_extra(id, *ohms);
                self.resistor(from, to, ohms)
            }
            HarnessElement::Cable { id, metres, mm2, .. } => {
                let cable = Cable { metres: *metres, mm2: *mm2 };
                let ohms = self.with_extra(id, cable.ohms(HARNESS).0);
                self.resistor(from, to, ohms)
            }
            HarnessElement::Fuse { id, ohms, .. } => {
                // A fuse that was pulled counts as off, under its own name.
                let pulled = self.assembly.is_off(id);
                let ohms = if pulled { OPEN_OHMS } else { self.with_extra(id, *ohms) };
                self.resistor(from, to, ohms)
            }
            HarnessElement::RelayContact { id, ohms, .. } => {
                let ohms = if self.state.key_on { self.with_extra(id, *ohms) } else { OPEN_OHMS };
                self.resistor(from, to, ohms)
            }
            HarnessElement::Pin { id, connector, ohms, .. } => {
                let ohms = if self.assembly.is_off(connector) {
                    OPEN_OHMS
                } else {
                    let spread = self.condition.spread_ohms.get(id).copied().unwrap_or(0.0);
                    self.with_extra(id, *ohms) + spread
                };
                self.resistor(from, to, ohms)
            }
            HarnessElement::Coil { valve, .. } => self.place_coil(valve, from, to),
            HarnessElement::Driver { .. } => self.place_driver(element, place, ends),
            HarnessElement::ModuleSupply { load, .. } => {
                let [supply, ground, rail] = ends;
                let alive = self.wiring.module_alive;
                let (volts, ohms) = if alive { (RAIL_V, RAIL_OHMS) } else { (0.0, RAIL_DEAD_OHMS) };
                self.wiring.network.add(Element::Source { plus: rail, minus: ground, volts, ohms });
                self.resistor(supply, ground, self.load_ohms(load, alive))
            }
            HarnessElement::Load { id, load, .. } => {
                let ohms = self.with_extra(id, self.load_ohms(load, self.state.key_on));
                self.resistor(from, to, ohms)
            }
        }
    }

    fn place_generator(&mut self, plus: usize, minus: usize) -> usize {
        if !self.state.charging {
            return self.resistor(plus, minus, OPEN_OHMS);
        }
        self.wiring.network.add(if self.is_limited {
            let amperes = GENERATOR.limit(GENERATES_AT).0;
            Element::Current { from: minus, to: plus, amperes }
        } else {
            let volts = GENERATOR.set_point(self.state.machines.regulator).0;
            Element::Source { plus, minus, volts, ohms: GENERATOR.ohms }
        })
    }

    fn place_coil(&mut self, valve: &Id, from: usize, to: usize) -> usize {
        if let Some(DriverState::Freewheel(amperes)) = self.state.drivers.get(valve) {
            return self.wiring.network.add(Element::Current { from, to, amperes: amperes.0 });
        }
        let temperature = self.state.coil_temperature.get(valve).copied().unwrap_or(Celsius(20.0));
        let ohms = self
            .condition
            .valves
            .get(valve)
            .map_or(OPEN_OHMS, |fitted| fitted.winding.terminal_ohms(temperature).0);
        self.resistor(from, to, ohms)
    }

    fn place_driver(
        &mut self,
        element: &HarnessElement,
        place: usize,
        [pin, supply, ground]: [usize; 3],
    ) -> usize {
        let HarnessElement::Driver {
            valve, side, on_ohms, off_ohms, sense_ohms, bias_ohms, ..
        } = element
        else {
            return 0;
        };
        let Some(source) = self.wiring.numbering.inner(place) else {
            return 0;
        };
        let closed = self.wiring.module_alive
            && matches!(self.state.drivers.get(valve), Some(DriverState::On));
        let rail = self.rail_of(ground);
        let network = &mut self.wiring.network;
        let switch = if closed { *on_ohms } else { *off_ohms };
        // The switch leads to ground or to the supply, and the coil's own current runs on to the other. The
        // sense resistor lies between the switch and where it leads, counted in the direction of the current.
        let (sense_from, sense_to) = match side {
            DriverSide::Low => {
                network.add(Element::Resistor { a: pin, b: source, ohms: switch });
                network.add(Element::Diode { anode: source, cathode: pin, law: BODY_DIODE });
                network.add(Element::Diode { anode: pin, cathode: supply, law: FREEWHEEL_DIODE });
                (source, ground)
            }
            DriverSide::High => {
                network.add(Element::Resistor { a: source, b: pin, ohms: switch });
                network.add(Element::Diode { anode: pin, cathode: source, law: BODY_DIODE });
                network.add(Element::Diode { anode: ground, cathode: pin, law: FREEWHEEL_DIODE });
                (supply, source)
            }
        };
        network.add(Element::Resistor { a: pin, b: ground, ohms: *bias_ohms });
        if let Some(rail) = rail {
            network.add(Element::Resistor { a: pin, b: rail, ohms: *bias_ohms });
        }
        network.add(Element::Resistor { a: sense_from, b: sense_to, ohms: *sense_ohms })
    }

    /// The regulated rail of the module that has this ground.
    fn rail_of(&self, ground_node: usize) -> Option<usize> {
        let elements = self.spec.harness.elements.iter().enumerate();
        elements
            .filter(|(_, element)| matches!(element, HarnessElement::ModuleSupply { .. }))
            .find_map(|(place, _)| {
                let [_, ground, rail] = self.wiring.numbering.ends(place);
                (ground == ground_node).then_some(rail)
            })
    }

    /// A rubbed-through wire touches the engine at its supply-side end, or its neighbour in the loom
    /// there: a control wire lies beside the feed of its own valve.
    fn place_leak(&mut self, element: &HarnessElement, from: usize) {
        let (HarnessElement::Wire { id, .. } | HarnessElement::Cable { id, .. }) = element else {
            return;
        };
        if let Some(ohms) = self.condition.leak_to_ground_ohms.get(id).copied() {
            self.rub(from, "engine-ground", ohms);
        }
        if let Some(ohms) = self.condition.leak_to_supply_ohms.get(id).copied()
            && let Some(feed) = self.spec.feed_beside(id)
        {
            self.rub(from, feed.as_str(), ohms);
        }
    }

    /// Joins a node to a named one; where there is none, nothing is touched.
    fn rub(&mut self, from: usize, to: &str, ohms: f64) {
        if let Some(to) = self.wiring.numbering.node(to) {
            self.resistor(from, to, ohms);
        }
    }
}
