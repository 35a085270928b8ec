//! What is left of a network when every node is taken out of it at which only straight lines meet.
//!
//! Newton's iteration has to follow the elements that are not straight lines and nothing else. In a wiring
//! these are a handful of diodes at five nodes of twenty-five, so the rest is taken out once and put back
//! once, and each step of the iteration solves a system of five.

use super::curve::Curve;
use super::network::{CircuitError, Element};
use crate::numerics::linear::LinearError;
use crate::numerics::star_mesh::Mesh;

/// Iterations allowed; networks of this program need fewer than ten.
const MOST_ITERATIONS: u32 = 200;
/// Iterations after which every law is touched at the very voltage that came out, steps being bounded.
const PATIENT_FOR: u32 = 40;
/// Largest change of a voltage in one iteration from then on [V].
const LONGEST_STEP_V: f64 = 1.0;

/// A network with its straight lines worked into conductances between the nodes that are left.
#[derive(Debug, Clone)]
pub(super) struct Reduced {
    nodes: usize,
    mesh: Mesh,
    /// The nodes that are left beside the reference.
    left: Vec<usize>,
    curves: Vec<Placed>,
    equations: Equations,
}

/// A curve between two nodes that are left, by their place among them.
#[derive(Debug, Clone, Copy)]
struct Placed {
    curve: Curve,
    first: Option<usize>,
    second: Option<usize>,
}

/// What stands between two nodes beside the network itself.
#[derive(Debug, Clone, Copy)]
pub(super) enum Added {
    /// A conductance [S].
    Siemens(f64),
    /// A law of its own.
    Curve(Curve),
}

impl Reduced {
    /// Takes out of a network all nodes but those at which an element is no straight line, and those that
    /// are wanted.
    pub fn new(nodes: usize, elements: &[Element], wanted: &[usize]) -> Result<Self, CircuitError> {
        let mut mesh = Mesh::new(nodes);
        let mut left = Vec::with_capacity(16);
        let mut keep = |node: usize| {
            node.checked_sub(1).map(|_| {
                left.iter().position(|known| *known == node).unwrap_or_else(|| {
                    left.push(node);
                    left.len() - 1
                })
            })
        };
        for node in wanted {
            keep(*node);
        }
        let mut curves = Vec::with_capacity(8);
        for element in elements {
            let (first, second) = element.ends();
            match *element {
                Element::Resistor { ohms, .. } => mesh.join(first, second, 1.0 / ohms),
                Element::Source { volts, ohms, .. } => {
                    mesh.join(first, second, 1.0 / ohms);
                    mesh.inject(first, volts / ohms);
                    mesh.inject(second, -volts / ohms);
                }
                Element::Current { amperes, .. } => {
                    mesh.inject(first, -amperes);
                    mesh.inject(second, amperes);
                }
                Element::Diode { .. } | Element::Filament { .. } | Element::OhmMeter { .. } => {
                    if let Some(curve) = Curve::of(element) {
                        curves.push(Placed { curve, first: keep(first), second: keep(second) });
                    }
                }
            }
        }
        mesh.take_out_all_but(&left).map_err(|source| CircuitError::Floating { nodes, source })?;
        let equations = Equations::new(&mesh, &left);
        Ok(Self { nodes, mesh, left, curves, equations })
    }

    /// The place of a node among those that are left; `None` for the reference.
    fn place(&self, node: usize) -> Option<usize> {
        self.left.iter().position(|left| *left == node)
    }

    /// Solves the network as it is: the voltages of all nodes, and what the curves carry, in the order of
    /// their elements.
    pub fn solve(mut self) -> Result<(Vec<f64>, Vec<f64>), CircuitError> {
        let (of_left, used) = (vec![0.0; self.left.len()], self.equations.clone());
        let of_left = settle(&self.equations, used, of_left, &mut self.curves)
            .map_err(|source| source.of(self.nodes))?;
        let mut volts = vec![0.0; self.nodes];
        for (node, of_node) in self.left.iter().zip(&of_left) {
            volts[*node] = *of_node;
        }
        self.mesh.put_back(&mut volts);
        let amperes = self.curves.iter().map(|placed| placed.amperes(&of_left)).collect();
        Ok((volts, amperes))
    }

    /// Solves it with something added between two nodes that were wanted: the voltage between them and the
    /// current through what was added, from the first to the second.
    pub fn solve_with(
        &self,
        first: usize,
        second: usize,
        added: Added,
    ) -> Result<(f64, f64), CircuitError> {
        let (first, second) = (self.place(first), self.place(second));
        let mut equations = self.equations.clone();
        let mut curves = self.curves.clone();
        match added {
            Added::Siemens(siemens) => equations.join(first, second, siemens),
            Added::Curve(curve) => curves.push(Placed { curve, first, second }),
        }
        let of_left = vec![0.0; self.left.len()];
        let of_left = settle(&equations, equations.clone(), of_left, &mut curves)
            .map_err(|source| source.of(self.nodes))?;
        let volts = at(&of_left, first) - at(&of_left, second);
        let amperes = match added {
            Added::Siemens(siemens) => siemens * volts,
            Added::Curve(_) => curves.last().map_or(0.0, |placed| placed.amperes(&of_left)),
        };
        Ok((volts, amperes))
    }
}

impl Placed {
    fn across(&self, volts: &[f64]) -> f64 {
        at(volts, self.first) - at(volts, self.second)
    }

    fn amperes(&self, volts: &[f64]) -> f64 {
        self.curve.amperes_at(self.across(volts))
    }
}

fn at(volts: &[f64], place: Option<usize>) -> f64 {
    place.map_or(0.0, |place| volts[place])
}

/// Why the nodes that are left have no voltages to show.
enum Unsettled {
    Floating(LinearError),
    Moving(f64),
}

impl Unsettled {
    const fn of(self, nodes: usize) -> CircuitError {
        match self {
            Self::Floating(source) => CircuitError::Floating { nodes, source },
            Self::Moving(step_v) => {
                CircuitError::NotConverged { step_v, iterations: MOST_ITERATIONS }
            }
        }
    }
}

/// Finds the voltages of the nodes that are left, starting from zero. `used` is overwritten.
fn settle(
    equations: &Equations,
    mut used: Equations,
    mut volts: Vec<f64>,
    curves: &mut [Placed],
) -> Result<Vec<f64>, Unsettled> {
    let mut step_v = f64::INFINITY;
    for iteration in 0..MOST_ITERATIONS {
        used.copy_from(equations);
        for Placed { curve, first, second } in &*curves {
            used.join(*first, *second, curve.siemens());
            used.inject(*first, curve.offset_a());
            used.inject(*second, -curve.offset_a());
        }
        used.solve(&mut volts).map_err(Unsettled::Floating)?;
        if curves.iter().all(|placed| placed.curve.is_settled(placed.across(&volts))) {
            return Ok(volts);
        }
        step_v = 0.0;
        for placed in &mut *curves {
            let across = placed.across(&volts);
            let step = across - placed.curve.volts();
            step_v = step_v.max(step.abs());
            if iteration < PATIENT_FOR {
                placed.curve.near(across);
            } else {
                let step = step.clamp(-LONGEST_STEP_V, LONGEST_STEP_V);
                placed.curve.at(placed.curve.volts() + step);
            }
        }
    }
    Err(Unsettled::Moving(step_v))
}

/// The conductances between the nodes that are left and the currents into them, in one row of numbers: for
/// each node the conductances to itself and the others (only those to later ones are used), then to the
/// reference, then the current.
#[derive(Debug, Clone)]
struct Equations {
    unknowns: usize,
    lines: Vec<f64>,
}

impl Equations {
    fn new(mesh: &Mesh, left: &[usize]) -> Self {
        let unknowns = left.len();
        let mut lines = Vec::with_capacity(unknowns * (unknowns + 2));
        for node in left {
            lines.extend(left.iter().map(|other| mesh.between(*node, *other)));
            lines.push(mesh.between(*node, 0));
            lines.push(mesh.current_into(*node));
        }
        Self { unknowns, lines }
    }

    fn copy_from(&mut self, other: &Self) {
        self.lines.copy_from_slice(&other.lines);
    }

    #[inline]
    fn join(&mut self, first: Option<usize>, second: Option<usize>, siemens: f64) {
        let width = self.unknowns + 2;
        match (first, second) {
            (Some(first), Some(second)) if first != second => {
                self.lines[first.min(second) * width + first.max(second)] += siemens;
            }
            (Some(node), None) | (None, Some(node)) => {
                self.lines[node * width + self.unknowns] += siemens;
            }
            _ => {}
        }
    }

    #[inline]
    fn inject(&mut self, node: Option<usize>, amperes: f64) {
        if let Some(node) = node {
            self.lines[node * (self.unknowns + 2) + self.unknowns + 1] += amperes;
        }
    }

    /// Writes the voltages. Takes one node after the other out and puts them back, as [`Mesh`] does, only
    /// that all are neighbours of all.
    fn solve(&mut self, volts: &mut [f64]) -> Result<(), LinearError> {
        let n = self.unknowns;
        let width = n + 2;
        for node in 0..n {
            let (upper, lower) = self.lines.split_at_mut((node + 1) * width);
            let line = &mut upper[node * width..];
            // To later nodes and to the reference.
            let total: f64 = line[node + 1..=n].iter().sum();
            if !(total > 0.0 && total.is_finite()) {
                return Err(LinearError::Singular { unknowns: n, column: node });
            }
            let ohms = 1.0 / total;
            // What a node has to itself nobody needs.
            line[node] = ohms;
            for (other, later) in lower.chunks_exact_mut(width).enumerate() {
                let other = node + 1 + other;
                let share = line[other] * ohms;
                if share != 0.0 {
                    for (entry, of_line) in later[other + 1..].iter_mut().zip(&line[other + 1..]) {
                        *entry += share * of_line;
                    }
                }
            }
        }
        for node in (0..n).rev() {
            let line = &self.lines[node * width..(node + 1) * width];
            let mut amperes = line[n + 1];
            for (siemens, volts) in line[node + 1..n].iter().zip(&volts[node + 1..]) {
                amperes += siemens * volts;
            }
            volts[node] = amperes * line[node];
        }
        Ok(())
    }
}
