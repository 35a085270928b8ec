//! Assembly and solution of a network.

use super::curve::Curve;
use super::device::{DiodeLaw, FilamentLaw, OhmSource};
use super::reduced::{Added, Reduced};
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
        let reduced = Reduced::new(self.nodes, &self.elements, &[])?;
        let (volts, of_curves) = reduced.solve()?;
        let mut of_curves = of_curves.into_iter();
        let amperes = self
            .elements
            .iter()
            .map(|element| {
                let (first, second) = element.ends();
                let across = volts[first] - volts[second];
                // A source and a meter are asked what they deliver.
                match *element {
                    Element::Resistor { ohms, .. } => across / ohms,
                    Element::Source { volts: emf, ohms, .. } => (emf - across) / ohms,
                    Element::Current { amperes, .. } => amperes,
                    Element::Diode { .. } | Element::Filament { .. } => {
                        of_curves.next().unwrap_or(0.0)
                    }
                    Element::OhmMeter { .. } => -of_curves.next().unwrap_or(0.0),
                }
            })
            .collect();
        Ok(Solution { volts, amperes })
    }

    /// What two nodes show of the network to an instrument between them. It is worked out once, however
    /// many ranges the instrument tries.
    ///
    /// # Errors
    /// [`CircuitError`] when a node floats.
    pub fn seen_between(&self, red: usize, black: usize) -> Result<Seen, CircuitError> {
        let reduced = Reduced::new(self.nodes, &self.elements, &[red, black])?;
        Ok(Seen { reduced, red, black })
    }
}

/// A network as two of its nodes show it.
#[derive(Debug, Clone)]
pub struct Seen {
    reduced: Reduced,
    red: usize,
    black: usize,
}

impl Seen {
    /// Voltage of the red node against the black one [V] and current from red to black [A] through a
    /// resistance [ohm], above zero, between them.
    ///
    /// # Errors
    /// [`CircuitError`] as [`Network::solve`].
    pub fn with_resistor(&self, ohms: f64) -> Result<(f64, f64), CircuitError> {
        self.reduced.solve_with(self.red, self.black, Added::Siemens(1.0 / ohms))
    }

    /// Voltage of the red node against the black one [V] and current [A] that an ohmmeter's source pushes
    /// out of its red lead.
    ///
    /// # Errors
    /// [`CircuitError`] as [`Network::solve`].
    pub fn with_ohm_source(&self, source: OhmSource) -> Result<(f64, f64), CircuitError> {
        let curve = Curve::of_ohm_source(source);
        let (volts, amperes) =
            self.reduced.solve_with(self.red, self.black, Added::Curve(curve))?;
        Ok((volts, -amperes))
    }
}
