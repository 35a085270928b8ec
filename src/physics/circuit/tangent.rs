//! The straight-line network that touches a network at given voltages.

use super::network::Element;
use crate::numerics::linear::LinearError;
use crate::numerics::sparse::{Place, System};

/// An element with its places in the equations.
#[derive(Debug, Clone, Copy)]
struct Term {
    first: usize,
    second: usize,
    /// On the diagonals of its first and second end, and in the rows of the first and the second.
    diagonals: [Place; 2],
    beside: [Place; 2],
    law: Law,
}

/// How the current of an element follows its voltage.
#[derive(Debug, Clone, Copy)]
enum Law {
    /// A straight line: the voltage beyond `emf_v` over `ohms`, with its slope [S] worked out once.
    Line { emf_v: f64, ohms: f64, slope_s: f64 },
    /// As the element says.
    Own,
}

/// The equations of the straight-line network, set up again for each iteration.
#[derive(Debug, Clone)]
pub(super) struct Tangent {
    terms: Vec<Term>,
    system: System,
    /// Right-hand side and solution, each with a place for the reference, which has no equation.
    right: Vec<f64>,
    solution: Vec<f64>,
}

impl Tangent {
    /// Finds every element's places.
    pub fn new(nodes: usize, elements: &[Element]) -> Self {
        let mut system = System::new(nodes.saturating_sub(1));
        let terms = elements
            .iter()
            .map(|element| {
                let (first, second) = element.ends();
                let mut place =
                    |row: usize, column: usize| match (row.checked_sub(1), column.checked_sub(1)) {
                        (Some(row), Some(column)) => system.place(row, column),
                        _ => system.nowhere(),
                    };
                let law = match *element {
                    Element::Resistor { ohms, .. } => {
                        Law::Line { emf_v: 0.0, ohms, slope_s: 1.0 / ohms }
                    }
                    Element::Source { volts, ohms, .. } => {
                        Law::Line { emf_v: volts, ohms, slope_s: 1.0 / ohms }
                    }
                    _ => Law::Own,
                };
                Term {
                    first,
                    second,
                    diagonals: [place(first, first), place(second, second)],
                    beside: [place(first, second), place(second, first)],
                    law,
                }
            })
            .collect();
        Self { terms, system, right: vec![0.0; nodes], solution: vec![0.0; nodes] }
    }

    /// The voltages of all nodes but the reference at which the straight lines agree that touch the
    /// elements at `volts`.
    ///
    /// # Errors
    /// [`LinearError`] when a node floats.
    pub fn solve(&mut self, elements: &[Element], volts: &[f64]) -> Result<&[f64], LinearError> {
        self.system.clear();
        self.right.fill(0.0);
        for (term, element) in self.terms.iter().zip(elements) {
            let across = volts[term.first] - volts[term.second];
            let (current, slope) = match term.law {
                Law::Line { emf_v, ohms, slope_s } => ((across - emf_v) / ohms, slope_s),
                Law::Own => element.current(across),
            };
            let offset = slope * across - current;
            self.system.add(term.diagonals[0], slope);
            self.system.add(term.beside[0], -slope);
            self.system.add(term.diagonals[1], slope);
            self.system.add(term.beside[1], -slope);
            self.right[term.first] += offset;
            self.right[term.second] -= offset;
        }
        let (Some(right), Some(solution)) = (self.right.get_mut(1..), self.solution.get_mut(1..))
        else {
            return Ok(&[]);
        };
        self.system.solve(right, solution)?;
        Ok(solution)
    }
}
