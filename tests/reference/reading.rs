//! One reading, taken by the program's meter in the program's wiring, and the same one written as
//! netlists for the simulator.

use super::case::{Case, extra};
use super::circumstances::{Circumstances, Key};
use super::simulator::Deck;
use super::wiring::{Wiring, harness_node};
use faultwright::instruments::current_probe::CurrentProbe;
use faultwright::instruments::multimeter::{Display, LEADS_OHMS, MeterFunction, Multimeter};
use faultwright::instruments::test_lamp;
use faultwright::units::Celsius;
use faultwright::vehicle::harness::{OPEN_OHMS, Wiring as Built, wire_up};

/// What is read and with what.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Probe {
    /// The meter between two nodes.
    Meter(MeterFunction),
    /// The current through the intake coil, without an instrument.
    CoilAmps,
    /// The current probe around the intake valve's feed wire.
    Clamp,
    /// The power of a test lamp between two nodes.
    Lamp,
    /// The voltage between two nodes without an instrument, as the module senses its pin.
    BareVolts,
}

pub const VOLTS: Probe = Probe::Meter(MeterFunction::Volts);
pub const OHMS: Probe = Probe::Meter(MeterFunction::Ohms);
pub const AMPS: Probe = Probe::Meter(MeterFunction::Amps);

/// A reading; nodes by their names in the netlists.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    pub name: &'static str,
    pub at: Circumstances,
    pub probe: Probe,
    pub red: &'static str,
    pub black: &'static str,
}

/// The program's answer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Answer {
    /// Before rounding, in volts, ohms or amperes; infinite for over limit.
    pub value: f64,
    /// What the display showed, where a meter was used.
    pub display: Option<Display>,
}

/// Full scales and test currents of the ohmmeter, written down again for the simulator's side.
const OHM_RANGES: [(f64, f64); 5] =
    [(600.0, 1e-3), (6e3, 1e-4), (60e3, 1e-5), (600e3, 1e-6), (6e6, 1e-7)];

impl Reading {
    pub const fn new(
        name: &'static str,
        at: Circumstances,
        probe: Probe,
        red: &'static str,
        black: &'static str,
    ) -> Self {
        Self { name, at, probe, red, black }
    }

    /// The same voltage, with the meter.
    pub const fn metered(mut self) -> Self {
        self.probe = VOLTS;
        self
    }

    /// The steady states of one period in which it is taken.
    fn phases(&self, case: &Case) -> Vec<(f64, Circumstances)> {
        let mut at = self.at;
        if let Some((intake, exhaust)) = case.drivers
            && at.key != Key::Off
        {
            (at.intake, at.exhaust) = (intake, exhaust);
        }
        at.phases()
    }

    /// Taken by the program, leads zeroed.
    pub fn taken(&self, wiring: Wiring, case: &Case) -> Answer {
        let phases: Vec<(f64, Built)> = self
            .phases(case)
            .into_iter()
            .map(|(share, at)| (share, built(wiring, case, at)))
            .collect();
        let (red, black) = (harness_node(self.red), harness_node(self.black));
        match self.probe {
            Probe::Meter(function) => {
                let mut meter = Multimeter { zeroed_ohms: LEADS_OHMS, ..Multimeter::ideal() };
                let sensed = meter.sense(function, &phases, red, black).expect("a solution");
                let shown = meter.read(function, &phases, red, black).expect("a solution");
                Answer {
                    value: sensed.on_scale.map_or(f64::INFINITY, |quantity| quantity.value),
                    display: Some(shown.display),
                }
            }
            Probe::CoilAmps => mean(&phases, |built, solution| {
                solution.amperes(built.element("intake-coil").expect("a coil"))
            }),
            Probe::Clamp => {
                let reading = CurrentProbe::ideal().read(&phases, "intake-feed-wire");
                let display = reading.expect("a solution").display;
                // The display is checked against the simulator; what it rounds is the wire's own.
                let bare = mean(&phases, |built, solution| {
                    solution.amperes(built.element("intake-feed-wire").expect("a wire"))
                });
                Answer { display: Some(display), ..bare }
            }
            Probe::Lamp => {
                let lit = test_lamp::light(&phases, red, black).expect("a solution");
                Answer { value: lit.watts, display: None }
            }
            Probe::BareVolts => mean(&phases, |built, solution| {
                solution.volts_between(
                    built.node(red).expect("a node"),
                    built.node(black).expect("a node"),
                )
            }),
        }
    }

    /// Written for the simulator: one netlist for each phase, with the phase's share of time.
    pub fn decks(&self, wiring: Wiring, case: &Case) -> Vec<(f64, Deck)> {
        let deck = |at: Circumstances| {
            let at = at.protected(case.opens_itself);
            let mut set = case.netlist.clone();
            set.extend(at.netlist(wiring, (case.module_dead)(at)));
            let (red, black) = (self.red, self.black);
            let (lines, ranges) = match self.probe {
                VOLTS => (format!("xmeter {red} {black} reading volts"), &[][..]),
                OHMS => (
                    format!("vrange range 0 1m\nxmeter {red} {black} reading range ohms"),
                    &OHM_RANGES[..],
                ),
                AMPS => (format!("xmeter {red} {black} reading amps"), &[][..]),
                Probe::CoilAmps => {
                    ("eshow reading 0 a1v a2v {1/(rcoil+rjoint)}".to_owned(), &[][..])
                }
                Probe::Clamp => ("eshow reading 0 spl a1h {1/rwa1}".to_owned(), &[][..]),
                Probe::Lamp => (format!("xlamp {red} {black} reading lamp"), &[][..]),
                Probe::BareVolts => (format!("eshow reading 0 {red} {black} 1"), &[][..]),
            };
            Deck {
                netlist: Deck::with_parameters(wiring.netlist(), &set) + &case.lines,
                meter: lines,
                ranges_a: ranges.iter().map(|(_, amperes)| *amperes).collect(),
            }
        };
        self.phases(case).into_iter().map(|(share, at)| (share, deck(at))).collect()
    }

    /// The reading from what the simulator printed for the deck of each phase.
    pub fn simulated(&self, phases: &[(f64, Vec<f64>)]) -> f64 {
        if self.probe != OHMS {
            return phases.iter().map(|(share, printed)| share * printed[0]).sum();
        }
        for (number, (full_scale, range_a)) in OHM_RANGES.into_iter().enumerate() {
            let volts: f64 = phases.iter().map(|(share, printed)| share * printed[number]).sum();
            let ohms = volts / range_a - LEADS_OHMS;
            if ohms.abs() <= full_scale {
                return ohms;
            }
        }
        f64::INFINITY
    }
}

fn mean(
    phases: &[(f64, Built)],
    of: impl Fn(&Built, &faultwright::physics::circuit::Solution) -> f64,
) -> Answer {
    let value = phases
        .iter()
        .map(|(share, built)| share * of(built, &built.network.solve().expect("a solution")))
        .sum();
    Answer { value, display: None }
}

fn built(wiring: Wiring, case: &Case, at: Circumstances) -> Built {
    let state = at.state(Celsius(case.battery_celsius), Celsius(case.coil_celsius));
    let mut condition = case.condition.clone();
    if at.valve_fuse_pulled {
        extra(&mut condition, "valve-fuse", OPEN_OHMS);
    }
    let built = wire_up(&wiring.spec(), &condition, &at.assembly(), &state)
        .expect("the wiring has a solution");
    let alive = at.key != Key::Off && !(case.module_dead)(at);
    assert_eq!(built.module_alive, alive, "{}: whether the module has its supply", case.name);
    built
}
