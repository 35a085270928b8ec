//! Assembly and solution of a network.

use super::device::{DiodeLaw, FilamentLaw, OhmSource};
use super::tangent::Tangent;
use crate::numerics::linear::LinearError;
use thiserror::Error;

/// One element between nodes. Node 0 is the reference.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Element {
    /// A resistance; a switch is a small or a huge one.
    Resistor {
        /// One end.
        a: usize,
        /// Other end.
        b: usize,
        /// Resistance [ohm], above zero; infinite is allowed and means nothing is there.
        ohms: f64,
    },
    /// An ideal voltage behind a resistance.
    Source {
        /// Positive terminal.
        plus: usize,
        /// Negative terminal.
        minus: usize,
        /// Open-circuit voltage [V].
        volts: f64,
        /// Internal resistance [ohm], above zero.
        ohms: f64,
    },
    /// A diode.
    Diode {
        /// Anode.
        anode: usize,
        /// Cathode.
        cathode: usize,
        /// Its law.
        law: DiodeLaw,
    },
    /// The filament of a lamp.
    Filament {
        /// One end.
        a: usize,
        /// Other end.
        b: usize,
        /// Its law.
        law: FilamentLaw,
    },
    /// An ideal current, such as an inductance keeps up while its driver is off.
    Current {
        /// Where the current leaves the network.
        from: usize,
        /// Where it returns.
        to: usize,
        /// Current through the element [A].
        amperes: f64,
    },
    /// An ohmmeter's source: current leaves through `red` and returns through `black`.
    OhmMeter {
        /// Red lead.
        red: usize,
        /// Black lead.
        black: usize,
        /// Its law.
        source: OhmSource,
    },
}

/// Why a network has no solution to show.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum CircuitError {
    /// A part of the network hangs in the air.
    #[error("solving a network of {nodes} nodes: a node is connected to nothing")]
    Floating {
        /// Number of nodes.
        nodes: usize,
        /// The linear solver's complaint.
        #[source]
        source: LinearError,
    },
    /// The voltages still moved after the most iterations allowed.
    #[error("solving a network: voltages still move by {step_v} V after {iterations} iterations")]
    NotConverged {
        /// Last change of a node voltage [V].
        step_v: f64,
        /// Iterations spent.
        iterations: u32,
    },
}

/// Newton iterations allowed; networks of this program need fewer than twenty.
const MOST_ITERATIONS: u32 = 200;
/// A change of all voltages below this ends the iteration [V]: far under any display's last digit.
const SETTLED_V: f64 = 1e-9;
/// Below this change [V] an iteration that no longer shrinks has reached the rounding of its own
/// arithmetic: a node tied to its neighbour by milliohms and to earth by megohms cannot be
/// resolved to more digits than `f64` has.
const ROUNDING_V: f64 = 1e-6;
/// Largest change of a voltage in one iteration [V], which keeps a diode's exponential in reach.
const LONGEST_STEP_V: f64 = 30.0;

/// A network of elements between numbered nodes.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Network {
    nodes: usize,
    elements: Vec<Element>,
}

/// Node voltages and element currents.
#[derive(Debug, Clone, PartialEq)]
pub struct Solution {
    volts: Vec<f64>,
    amperes: Vec<f64>,
}

impl Solution {
    /// Voltage of one node against another [V].
    #[must_use]
    pub fn volts_between(&self, plus: usize, minus: usize) -> f64 {
        self.volts[plus] - self.volts[minus]
    }

    /// Current through an element by its number [A]: from `a`, `plus` (delivered), `anode` or
    /// `red` towards the other end.
    #[must_use]
    pub fn amperes(&self, element: usize) -> f64 {
        self.amperes[element]
    }
}

impl Element {
    pub(super) const fn ends(&self) -> (usize, usize) {
        match *self {
            Self::Resistor { a, b, .. } | Self::Filament { a, b, .. } => (a, b),
            Self::Source { plus, minus, .. } => (plus, minus),
            Self::Diode { anode, cathode, .. } => (anode, cathode),
            Self::Current { from, to, .. } => (from, to),
            Self::OhmMeter { red, black, .. } => (red, black),
        }
    }

    /// Current from the first end through the element to the second [A] and its slope [S].
    #[inline]
    pub(super) fn current(&self, volts: f64) -> (f64, f64) {
        match *self {
            Self::Resistor { ohms, .. } => (volts / ohms, 1.0 / ohms),
            Self::Source { volts: emf, ohms, .. } => ((volts - emf) / ohms, 1.0 / ohms),
            Self::Diode { law, .. } => law.current(volts),
            Self::Filament { law, .. } => law.current(volts),
            Self::Current { amperes, .. } => (amperes, 0.0),
            Self::OhmMeter { source, .. } => {
                let (pushed, slope) = source.current(volts);
                (-pushed, -slope)
            }
        }
    }

    pub(super) const fn is_linear(&self) -> bool {
        matches!(self, Self::Resistor { .. } | Self::Source { .. } | Self::Current { .. })
    }
}

impl Network {
    /// A network of `nodes` nodes, the reference included, without elements.
    #[must_use]
    pub const fn with_nodes(nodes: usize) -> Self {
        Self { nodes, elements: Vec::new() }
    }

    /// Adds a node and returns its number.
    pub const fn add_node(&mut self) -> usize {
        self.nodes += 1;
        self.nodes - 1
    }

    /// Adds an element and returns its number.
    ///
    /// # Panics
    /// When it names a node that the network does not have.
    pub fn add(&mut self, element: Element) -> usize {
        let (first, second) = element.ends();
        assert!(
            first < self.nodes && second < self.nodes,
            "element names a node that is not there"
        );
        self.elements.push(element);
        self.elements.len() - 1
    }

    /// The elements in the order of their numbers.
    #[must_use]
    pub fn elements(&self) -> &[Element] {
        &self.elements
    }

    /// Number of nodes, the reference included.
    #[must_use]
    pub const fn nodes(&self) -> usize {
        self.nodes
    }

    /// Finds the voltages at which the currents into every node sum to zero.
    ///
    /// Starts from zero each time, so that the answer does not depend on what was solved before.
    ///
    /// # Errors
    /// [`CircuitError`] when a node floats or the iteration does not settle; never a wrong value.
    pub fn solve(&self) -> Result<Solution, CircuitError> {
        let mut volts = vec![0.0; self.nodes];
        let mut tangent = Tangent::new(self.nodes, &self.elements);
        let linear = self.elements.iter().all(Element::is_linear);
        let mut step_v = f64::INFINITY;
        for _ in 0..MOST_ITERATIONS {
            let wanted = tangent
                .solve(&self.elements, &volts)
                .map_err(|source| CircuitError::Floating { nodes: self.nodes, source })?;
            let previous_v = step_v;
            step_v = 0.0;
            for (voltage, wanted) in volts[1..].iter_mut().zip(wanted) {
                let whole = wanted - *voltage;
                // The first answer of a linear network is the answer, however far away it lies.
                let step =
                    if linear { whole } else { whole.clamp(-LONGEST_STEP_V, LONGEST_STEP_V) };
                *voltage += step;
                step_v = step_v.max(step.abs());
            }
            let stalled = step_v < ROUNDING_V && step_v >= 0.5 * previous_v;
            if linear || step_v < SETTLED_V || stalled {
                return Ok(self.solution(volts));
            }
            if step_v.is_nan() {
                break;
            }
        }
        Err(CircuitError::NotConverged { step_v, iterations: MOST_ITERATIONS })
    }

    fn solution(&self, volts: Vec<f64>) -> Solution {
        let amperes = self
            .elements
            .iter()
            .map(|element| {
                let (first, second) = element.ends();
                let current = element.current(volts[first] - volts[second]).0;
                match element {
                    // A source and a meter are asked what they deliver.
                    Element::Source { .. } | Element::OhmMeter { .. } => -current,
                    _ => current,
                }
            })
            .collect();
        Solution { volts, amperes }
    }
}
