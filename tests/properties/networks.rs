//! Theorems of linear networks, on random ones.

use faultwright::numerics::elementary::pow;
use faultwright::physics::circuit::{Element, Network};
use proptest::prelude::*;

const NODES: usize = 7;

/// Resistances between random nodes, from a milliohm to a megohm; every node has a way to the
/// reference. And the places of sources: plus, minus, volts, ohms.
#[derive(Debug, Clone)]
struct Linear {
    resistances: Vec<(usize, usize, f64)>,
    sources: Vec<(usize, usize, f64, f64)>,
}

impl Linear {
    /// Voltages of all nodes with each source at a share of its voltage.
    fn volts(&self, share: impl Fn(usize) -> f64) -> Vec<f64> {
        let mut network = self.passive();
        for (number, (plus, minus, volts, ohms)) in self.sources.iter().enumerate() {
            let volts = volts * share(number);
            network.add(Element::Source { plus: *plus, minus: *minus, volts, ohms: *ohms });
        }
        let solution = network.solve().expect("a solution");
        (0..NODES).map(|node| solution.volts_between(node, 0)).collect()
    }

    fn passive(&self) -> Network {
        let mut network = Network::with_nodes(NODES);
        for node in 1..NODES {
            network.add(Element::Resistor { a: node, b: 0, ohms: 1e5 });
        }
        for (a, b, ohms) in &self.resistances {
            network.add(Element::Resistor { a: *a, b: *b, ohms: *ohms });
        }
        network
    }
}

fn linear() -> impl Strategy<Value = Linear> {
    let ends = || (0..NODES, 1..NODES).prop_map(|(a, further)| (a, (a + further) % NODES));
    let ohms = || (-2.0..5.0_f64).prop_map(|exponent| pow(10.0, exponent));
    (
        proptest::collection::vec((ends(), ohms()), 1..20),
        proptest::collection::vec((ends(), -15.0..15.0_f64, ohms()), 1..5),
    )
        .prop_map(|(resistances, sources)| Linear {
            resistances: resistances.into_iter().map(|((a, b), ohms)| (a, b, ohms)).collect(),
            sources: sources
                .into_iter()
                .map(|((plus, minus), volts, ohms)| (plus, minus, volts, ohms))
                .collect(),
        })
}

/// What is left of sixteen digits after conductances seven decades apart were added up is 1e-9 of
/// some 50 V, and a chain of nodes adds its own; a hundredth of the meter's finest count.
const LEAST_V: f64 = 1e-6;

proptest! {
    /// The sum of what each source does alone is what all do together.
    #[test]
    fn prop_sources_superpose(network in linear()) {
        let together = network.volts(|_| 1.0);
        let mut sum = vec![0.0; NODES];
        for alone in 0..network.sources.len() {
            let volts = network.volts(|number| if number == alone { 1.0 } else { 0.0 });
            for (total, volts) in sum.iter_mut().zip(volts) {
                *total += volts;
            }
        }
        for (whole, sum) in together.iter().zip(&sum) {
            prop_assert!((whole - sum).abs() < LEAST_V, "{together:?} {sum:?}");
        }
    }

    /// Twice the sources, twice the voltages.
    #[test]
    fn prop_voltages_scale_with_their_sources(network in linear(), factor in -3.0..3.0_f64) {
        let (plain, scaled) = (network.volts(|_| 1.0), network.volts(|_| factor));
        for (plain, scaled) in plain.iter().zip(&scaled) {
            prop_assert!((factor * plain - scaled).abs() < LEAST_V, "{plain} {scaled}");
        }
    }

    /// Reciprocity: a current in at one node lifts another by as much as the same current in there
    /// lifts the first.
    #[test]
    fn prop_transfer_is_the_same_both_ways(network in linear(), a in 1..NODES, b in 1..NODES) {
        let lifted = |inward: usize, at: usize| {
            let mut network = network.passive();
            network.add(Element::Current { from: 0, to: inward, amperes: 1e-3 });
            network.solve().expect("a solution").volts_between(at, 0)
        };
        let (one, other) = (lifted(a, b), lifted(b, a));
        // A milliampere through at most 0.1 Mohm: 100 V.
        prop_assert!((one - other).abs() < 100.0 * LEAST_V, "{one} {other}");
    }

    /// Thevenin: any part of a linear network is a source behind a resistance to what hangs on it.
    #[test]
    fn prop_two_loads_tell_what_a_third_will_see(network in linear(), node in 1..NODES) {
        let loaded = |ohms: f64| {
            let mut whole = network.passive();
            for (plus, minus, volts, ohms) in &network.sources {
                let (plus, minus, volts, ohms) = (*plus, *minus, *volts, *ohms);
                whole.add(Element::Source { plus, minus, volts, ohms });
            }
            let load = whole.add(Element::Resistor { a: node, b: 0, ohms });
            let solution = whole.solve().expect("a solution");
            (solution.volts_between(node, 0), solution.amperes(load))
        };
        let ((open_v, open_a), (short_v, short_a)) = (loaded(1e9), loaded(1.0));
        // Nothing drives this node: there is no source to find.
        if (short_a - open_a).abs() < 1e-5 {
            return Ok(());
        }
        let inner_ohms = (open_v - short_v) / (short_a - open_a);
        let (volts, amperes) = loaded(100.0);
        let foretold = open_v - inner_ohms * (amperes - open_a);
        let least = LEAST_V * (1.0 + inner_ohms.abs());
        prop_assert!((volts - foretold).abs() < least, "{volts} {foretold} {inner_ohms}");
    }
}

/// A linear network was once cut off at 30 V, the longest step of the iteration for diodes.
#[test]
fn regress_a_linear_network_may_stand_above_thirty_volts() {
    let mut network = Network::with_nodes(2);
    network.add(Element::Source { plus: 1, minus: 0, volts: 100.0, ohms: 1.0 });
    network.add(Element::Resistor { a: 1, b: 0, ohms: 3.0 });
    let volts = network.solve().expect("a solution").volts_between(1, 0);
    assert!((volts - 75.0).abs() < 1e-9, "{volts}");
}
