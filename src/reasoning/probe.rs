//! Tests that can be made on a vehicle, and the steps that lead to each.

use crate::control_module::driver_side::DriverSide;
use crate::faults::{FaultKind, FaultName};
use crate::instruments::multimeter::MeterFunction;
use crate::instruments::scope::Signal;
use crate::session::attempt::Sighted;
use crate::session::step::{KeyPosition, Manner, Step};
use crate::session::toolbox::Tools;
use crate::vehicle::spec::{HarnessElement, Id, PartKind, ValveSpec, VehicleSpec};
use std::collections::BTreeSet;

/// In what state the vehicle must be for a step.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Need {
    /// Parts that must be off, connectors included; what lies before them follows.
    pub off: Vec<Id>,
    /// Connectors that must be plugged.
    pub plugged: Vec<Id>,
    /// Position of the key.
    pub key: Option<KeyPosition>,
}

/// A test: what it needs, the steps of the test itself, and which of them shows something.
#[derive(Debug, Clone, PartialEq)]
pub struct Probe {
    /// What it needs.
    pub need: Need,
    /// The test itself; the step that shows something is [`Probe::shows`].
    pub steps: Vec<Step>,
    /// Which of the steps shows something.
    pub shows: usize,
}

impl Probe {
    const fn single(need: Need, step: Vec<Step>) -> Self {
        Self { need, steps: step, shows: 0 }
    }

    /// Whether it shows what the module remembers, which every turn of the key may change.
    #[must_use]
    pub fn shows_memory(&self) -> bool {
        matches!(self.showing(), Step::ReadCodes | Step::ReadTestResults)
    }

    /// Whether it can be made with the tools of a case.
    #[must_use]
    pub fn is_allowed(&self, tools: &Tools) -> bool {
        self.steps.iter().all(|step| tools.allow(step))
    }

    /// The step that shows something.
    #[must_use]
    pub fn showing(&self) -> &Step {
        &self.steps[self.shows]
    }
}

/// The steps from what is in sight to what is needed: key off before a connector is touched, what
/// is in the way first.
#[must_use]
pub fn steps_to(need: &Need, spec: &VehicleSpec, sighted: Sighted<'_>) -> Vec<Step> {
    let assembly = sighted.assembly();
    let mut take_off = Vec::new();
    let mut planned = BTreeSet::new();
    for part in &need.off {
        plan_removal(part, spec, sighted, &mut planned, &mut take_off);
    }
    let plug: Vec<&Id> = need.plugged.iter().filter(|part| assembly.is_off(part)).collect();
    for connector in &plug {
        // Where the hand must reach to push it home.
        for part in spec.part(connector).map_or(&[][..], |part| &part.behind) {
            plan_removal(part, spec, sighted, &mut planned, &mut take_off);
        }
    }
    let mut steps = Vec::new();
    let mut key_on = sighted.key_on();
    let touches = !take_off.is_empty() || !plug.is_empty();
    if sighted.engine_runs() || (key_on && (touches || need.key == Some(KeyPosition::Off))) {
        steps.push(Step::Key { position: KeyPosition::Off });
        key_on = false;
    }
    for part in take_off {
        let connector = spec.part(&part).is_some_and(|part| part.kind == PartKind::Connector);
        steps.push(if connector {
            Step::Unplug { connector: part }
        } else {
            Step::Remove { part, manner: Manner::Careful }
        });
    }
    steps.extend(plug.into_iter().map(|connector| Step::Plug { connector: connector.clone() }));
    if need.key == Some(KeyPosition::On) && !key_on {
        steps.push(Step::Key { position: KeyPosition::On });
    }
    steps
}

fn plan_removal(
    part: &Id,
    spec: &VehicleSpec,
    sighted: Sighted<'_>,
    planned: &mut BTreeSet<Id>,
    order: &mut Vec<Id>,
) {
    if sighted.assembly().is_off(part) || !planned.insert(part.clone()) {
        return;
    }
    for before in spec.part(part).map_or(&[][..], |part| &part.behind) {
        plan_removal(before, spec, sighted, planned, order);
    }
    order.push(part.clone());
}

/// Oil pressure with a warm engine at idle: gauge in, engine warm, gauge out. It runs the engine, so
/// it is weighed only where the oil itself is suspected ([`asks_for_gauge`]).
#[must_use]
pub fn gauge_probe(spec: &VehicleSpec) -> Probe {
    let off = Need {
        off: spec.oil.gauge_tap.behind.clone(),
        key: Some(KeyPosition::Off),
        ..Need::default()
    };
    let key = |position| Step::Key { position };
    let steps = vec![
        Step::FitGauge,
        key(KeyPosition::Start),
        Step::ReadGauge { rpm: None, warm: true },
        key(KeyPosition::Off),
        Step::RemoveGauge,
    ];
    Probe { need: off, steps, shows: 2 }
}

/// Whether one of some faults is one that oil pressure tells about and the level on the stick does not.
#[must_use]
pub fn asks_for_gauge(faults: &[FaultName]) -> bool {
    faults.iter().any(|fault| fault.kind.is_in_oil() && fault.kind != FaultKind::LowOil)
}

/// Tests that are weighed only where what they tell about is suspected: oil pressure where the oil
/// is, and the feed wires where one of them may have blown the fuse.
#[must_use]
pub fn probes_for(spec: &VehicleSpec, tools: &Tools, suspected: &[&[FaultName]]) -> Vec<Probe> {
    let mut list = Vec::new();
    if suspected.iter().any(|faults| asks_for_gauge(faults)) {
        list.push(gauge_probe(spec));
    }
    let mut faults = suspected.iter().copied().flatten();
    if faults.any(|fault| fault.kind == FaultKind::ChafedFeed) {
        feed_probes(spec, &mut list);
    }
    list.retain(|probe| probe.is_allowed(tools));
    list
}

/// The feed wires that end at a valve's connector: by eye, and against ground.
fn feed_probes(spec: &VehicleSpec, list: &mut Vec<Probe>) {
    for valve in &spec.valves {
        for element in &spec.harness.elements {
            let HarnessElement::Pin { connector, from, .. } = element else {
                continue;
            };
            let Some(point) = point_at(spec, from).filter(|_| *connector == valve.connector) else {
                continue;
            };
            let Some(wire) =
                wire_to(spec, &point).filter(|wire| !spec.valves_fed_through(wire).is_empty())
            else {
                continue;
            };
            let off = Need { off: behind(spec, &point), ..Need::default() };
            list.push(Probe::single(off, vec![Step::Look { place: wire }]));
            let unplugged = core::slice::from_ref(&valve.connector);
            list.push(ohms(spec, &point, &Id::from(GROUND), unplugged));
        }
    }
}

/// Every test of the shipped instruments that makes sense on a vehicle, from its own data, and can be made with the tools
/// of a case.
#[must_use]
pub fn probes(spec: &VehicleSpec, tools: &Tools) -> Vec<Probe> {
    let mut list = vec![
        Probe::single(Need::default(), vec![Step::Dipstick]),
        Probe::single(
            Need { key: Some(KeyPosition::On), ..Need::default() },
            vec![Step::ReadCodes],
        ),
    ];
    for element in &spec.harness.elements {
        if let HarnessElement::Fuse { to, .. } = element
            && let Some(point) = point_at(spec, to)
        {
            list.push(volts(spec, &point, &[], &[]));
        }
        if let HarnessElement::Fuse { id, .. } = element
            && spec.part(id).is_some()
        {
            let need =
                Need { off: vec![id.clone()], plugged: Vec::new(), key: Some(KeyPosition::Off) };
            list.push(Probe::single(need, vec![Step::Look { place: id.clone() }]));
        }
    }
    for valve in &spec.valves {
        valve_probes(spec, valve, &mut list);
    }
    list.push(Probe::single(
        Need { key: Some(KeyPosition::On), ..Need::default() },
        vec![Step::ReadTestResults],
    ));
    list.retain(|probe| probe.is_allowed(tools));
    list
}

fn point_at(spec: &VehicleSpec, node: &Id) -> Option<Id> {
    spec.test_points.iter().find(|point| point.node == *node).map(|point| point.id.clone())
}

fn behind(spec: &VehicleSpec, point: &Id) -> Vec<Id> {
    spec.test_point(point).map_or_else(Vec::new, |point| point.behind.clone())
}

const GROUND: &str = "battery-minus";

/// Voltage of a point against the battery, key on.
fn volts(spec: &VehicleSpec, point: &Id, unplugged: &[Id], plugged: &[Id]) -> Probe {
    let mut off = behind(spec, point);
    off.extend_from_slice(unplugged);
    let step = Step::Measure {
        function: MeterFunction::Volts,
        red: point.clone(),
        black: Id::from(GROUND),
    };
    Probe::single(Need { off, plugged: plugged.to_vec(), key: Some(KeyPosition::On) }, vec![step])
}

/// Resistance between two points, key off.
fn ohms(spec: &VehicleSpec, red: &Id, black: &Id, unplugged: &[Id]) -> Probe {
    let mut off = behind(spec, red);
    off.extend(behind(spec, black));
    off.extend_from_slice(unplugged);
    let step =
        Step::Measure { function: MeterFunction::Ohms, red: red.clone(), black: black.clone() };
    Probe::single(Need { off, plugged: Vec::new(), key: Some(KeyPosition::Off) }, vec![step])
}

fn valve_probes(spec: &VehicleSpec, valve: &ValveSpec, list: &mut Vec<Probe>) {
    let connector = core::slice::from_ref(&valve.connector);
    let mut harness_side = Vec::new();
    let mut valve_side = Vec::new();
    let mut pins = Vec::new();
    for element in &spec.harness.elements {
        if let HarnessElement::Pin { id, connector, from, to, .. } = element
            && *connector == valve.connector
        {
            pins.push(id.clone());
            harness_side.extend(point_at(spec, from));
            valve_side.extend(point_at(spec, to));
        }
    }
    if let [feed, control] = &valve_side[..] {
        list.push(ohms(spec, feed, control, connector));
    }
    let on = Step::Command { valve: valve.id.clone(), on: true };
    let off = Step::Command { valve: valve.id.clone(), on: false };
    for point in &harness_side {
        list.push(volts(spec, point, connector, &[]));
        list.push(volts(spec, point, &[], connector));
        let mut loaded = volts(spec, point, &[], connector);
        loaded.steps.insert(0, on.clone());
        loaded.steps.push(off.clone());
        loaded.shows = 1;
        list.push(loaded);
    }
    // A steady contact that is no feed leads to ground all the time.
    if let [steady, _] = &harness_side[..]
        && spec.side_of(&valve.id) == DriverSide::High
    {
        list.push(ohms(spec, steady, &Id::from(GROUND), connector));
    }
    if let [_, control] = &harness_side[..] {
        list.push(ohms(spec, control, &Id::from(GROUND), connector));
        if let Some(module) = module_point(spec, valve) {
            list.push(ohms(spec, control, &module, connector));
        }
    }
    list.push(Probe {
        need: Need { off: Vec::new(), plugged: connector.to_vec(), key: Some(KeyPosition::On) },
        steps: vec![on, off],
        shows: 0,
    });
    instrument_probes(spec, valve, &harness_side, list);
    if spec.longest_power.is_some_and(|longest| longest >= 1.0) {
        let power = Step::Power { valve: valve.id.clone(), seconds: 1, reversed: false };
        list.push(Probe::single(
            Need { off: connector.to_vec(), plugged: Vec::new(), key: Some(KeyPosition::Off) },
            vec![power],
        ));
    }
    // A connector shows its contacts once it is unplugged, a valve its screen once it is out.
    let looks = pins.iter().map(|pin| (pin, &valve.connector));
    for (place, off) in looks.chain([(&valve.id, &valve.id)]) {
        list.push(Probe::single(
            Need { off: vec![off.clone()], plugged: Vec::new(), key: Some(KeyPosition::Off) },
            vec![Step::Look { place: place.clone() }],
        ));
    }
    if let Some(wire) = control_wire(spec, valve) {
        let off = harness_side.get(1).map_or_else(Vec::new, |point| behind(spec, point));
        list.push(Probe::single(Need { off, ..Need::default() }, vec![Step::Look { place: wire }]));
    }
}

/// Tests with test lamp, current probe and scope, and a wiggle.
fn instrument_probes(
    spec: &VehicleSpec,
    valve: &ValveSpec,
    harness_side: &[Id],
    list: &mut Vec<Probe>,
) {
    let [feed, control] = harness_side else {
        return;
    };
    let connector = core::slice::from_ref(&valve.connector);
    let live = |point: &Id, plugged: &[Id]| Need {
        off: behind(spec, point),
        plugged: plugged.to_vec(),
        key: Some(KeyPosition::On),
    };
    let mut unplugged = live(feed, &[]);
    unplugged.off.extend_from_slice(connector);
    let lamp = Step::TestLamp { tip: feed.clone(), clip: Id::from(GROUND) };
    list.push(Probe::single(unplugged, vec![lamp]));
    let scope = Step::Scope { signal: Signal::CoilCurrent, valve: valve.id.clone() };
    list.push(Probe::single(live(feed, connector), vec![scope]));
    let wiggle = Step::Wiggle {
        place: valve.connector.clone(),
        function: MeterFunction::Volts,
        red: control.clone(),
        black: Id::from(GROUND),
    };
    list.push(Probe::single(live(control, connector), vec![wiggle]));
    if let Some(wire) = wire_to(spec, feed) {
        let command = |on| Step::Command { valve: valve.id.clone(), on };
        list.push(Probe {
            need: live(feed, connector),
            steps: vec![Step::ZeroClamp, command(true), Step::Clamp { wire }, command(false)],
            shows: 2,
        });
    }
}

/// The wire that ends at a test point.
fn wire_to(spec: &VehicleSpec, at: &Id) -> Option<Id> {
    let feed = spec.test_points.iter().find(|point| point.id == *at).map(|point| &point.node)?;
    spec.harness.elements.iter().find_map(|element| match element {
        HarnessElement::Wire { id, to, .. } | HarnessElement::Cable { id, to, .. }
            if to == feed =>
        {
            Some(id.clone())
        }
        _ => None,
    })
}

fn driver_pin<'a>(spec: &'a VehicleSpec, wanted: &ValveSpec) -> Option<&'a Id> {
    spec.harness.elements.iter().find_map(|element| match element {
        HarnessElement::Driver { valve, pin, .. } if *valve == wanted.id => Some(pin),
        _ => None,
    })
}

fn module_point(spec: &VehicleSpec, valve: &ValveSpec) -> Option<Id> {
    point_at(spec, driver_pin(spec, valve)?)
}

fn control_wire(spec: &VehicleSpec, valve: &ValveSpec) -> Option<Id> {
    let pin = driver_pin(spec, valve)?;
    spec.harness.elements.iter().find_map(|element| match element {
        HarnessElement::Wire { id, from, to, .. } | HarnessElement::Cable { id, from, to, .. }
            if from == pin || to == pin =>
        {
            Some(id.clone())
        }
        _ => None,
    })
}
