//! Networks of conductances, by taking one node after the other out of them.
//!
//! A node whose voltage nobody asks for yet can be replaced by conductances between its neighbours, the
//! star by a mesh: between two neighbours the product of their conductances to it over the sum of all of
//! its. Current that flows into it is shared among the neighbours in the same proportions. Going back, its
//! voltage is the mean of theirs, weighted with the conductances.
//!
//! This is Gauss's elimination, but nothing is ever subtracted: every conductance that comes out has all its
//! digits, whether milliohms or megohms meet in a node, and a node that hangs in the air is one whose sum is
//! zero. Source of the transform: any textbook of networks (A. Rosen, "A new network theorem", Journal of
//! the IEE 62 (1924) 916; from memory).

use super::linear::LinearError;

/// Nodes for which the neighbours of one fit a word; in larger networks they are looked for.
const NODES_OF_A_WORD: usize = 64;

/// Conductances between numbered nodes, of which number 0 is the reference, zero volts.
#[derive(Debug, Clone)]
pub struct Mesh {
    nodes: usize,
    /// Conductance between two nodes [S], twice.
    siemens: Vec<f64>,
    /// Current from outside into each node [A].
    amperes: Vec<f64>,
    /// For each node a bit for each neighbour; for a node that was taken out, those it had then.
    beside: Vec<u64>,
    /// The nodes that were taken out, in their order.
    taken: Vec<Taken>,
    /// The neighbours of the node under way.
    ends: Vec<(usize, f64)>,
}

/// A node that was taken out.
#[derive(Debug, Clone, Copy)]
struct Taken {
    node: usize,
    /// One over the sum of its conductances [ohm].
    ohms: f64,
}

impl Mesh {
    /// So many nodes, the reference included, joined by nothing.
    #[must_use]
    pub fn new(nodes: usize) -> Self {
        Self {
            nodes,
            siemens: vec![0.0; nodes * nodes],
            amperes: vec![0.0; nodes],
            beside: if nodes <= NODES_OF_A_WORD { vec![0; nodes] } else { Vec::new() },
            taken: Vec::with_capacity(nodes),
            ends: Vec::with_capacity(nodes),
        }
    }

    /// Joins two nodes by a conductance [S], zero or more.
    ///
    /// # Panics
    /// When there is no such node, as the others do.
    #[inline]
    pub fn join(&mut self, first: usize, second: usize, siemens: f64) {
        if first == second || siemens == 0.0 {
            return;
        }
        self.siemens[first * self.nodes + second] += siemens;
        self.siemens[second * self.nodes + first] += siemens;
        if !self.beside.is_empty() {
            self.beside[first] |= 1 << second;
            self.beside[second] |= 1 << first;
        }
    }

    /// Lets a current flow into a node from outside [A].
    #[inline]
    pub fn inject(&mut self, node: usize, amperes: f64) {
        self.amperes[node] += amperes;
    }

    /// Conductance between two nodes that are left [S].
    #[must_use]
    #[inline]
    pub fn between(&self, first: usize, second: usize) -> f64 {
        self.siemens[first * self.nodes + second]
    }

    /// Current from outside into a node that is left [A].
    #[must_use]
    #[inline]
    pub fn current_into(&self, node: usize) -> f64 {
        self.amperes[node]
    }

    /// Takes out every node but the reference and those that are kept.
    ///
    /// # Errors
    /// [`LinearError::Singular`] when a node is joined to nothing that is left.
    pub fn take_out_all_but(&mut self, kept: &[usize]) -> Result<(), LinearError> {
        if self.beside.is_empty() {
            for node in (1..self.nodes).filter(|node| !kept.contains(node)) {
                self.take_out(node)?;
            }
            return Ok(());
        }
        let all = if self.nodes == NODES_OF_A_WORD { u64::MAX } else { (1 << self.nodes) - 1 };
        let mut left = kept.iter().fold(all & !1, |left, node| left & !(1 << node));
        while left != 0 {
            // Nodes at an end or in the middle of a row leave nothing behind that was not there.
            let before = left;
            for node in bits(left) {
                if is_at_most_two(self.beside[node]) {
                    self.take_out(node)?;
                    left &= !(1 << node);
                }
            }
            if left == before {
                // The one with the fewest neighbours leaves the fewest new conductances behind.
                let fewest = bits(left).min_by_key(|node| self.beside[*node].count_ones());
                if let Some(node) = fewest {
                    self.take_out(node)?;
                    left &= !(1 << node);
                }
            }
        }
        Ok(())
    }

    #[inline]
    fn take_out(&mut self, node: usize) -> Result<(), LinearError> {
        let n = self.nodes;
        let mut ends = core::mem::take(&mut self.ends);
        ends.clear();
        let line = &self.siemens[node * n..(node + 1) * n];
        if self.beside.is_empty() {
            let is_left = |end: &usize| line[*end] > 0.0 && !self.is_taken(*end);
            ends.extend((0..n).filter(is_left).map(|end| (end, line[end])));
        } else {
            ends.extend(bits(self.beside[node]).map(|end| (end, line[end])));
        }
        let total: f64 = ends.iter().map(|(_, siemens)| siemens).sum();
        if !(total > 0.0 && total.is_finite()) {
            return Err(LinearError::Singular { unknowns: n - 1, column: node - 1 });
        }
        let ohms = 1.0 / total;
        let amperes = self.amperes[node];
        for (number, (end, siemens)) in ends.iter().enumerate() {
            let share = siemens * ohms;
            self.amperes[*end] += share * amperes;
            for (other, siemens) in &ends[number + 1..] {
                self.siemens[end * n + other] += share * siemens;
                self.siemens[other * n + end] += share * siemens;
            }
        }
        if !self.beside.is_empty() {
            let ring = self.beside[node];
            for (end, _) in &ends {
                self.beside[*end] = (self.beside[*end] | ring) & !(1 << node) & !(1 << end);
            }
        }
        self.taken.push(Taken { node, ohms });
        self.ends = ends;
        Ok(())
    }

    fn is_taken(&self, node: usize) -> bool {
        self.taken.iter().any(|taken| taken.node == node)
    }

    /// Fills in the voltages of the nodes that were taken out from those of the nodes that are left [V].
    pub fn put_back(&self, volts: &mut [f64]) {
        let n = self.nodes;
        let mut known: Vec<bool> = Vec::new();
        if self.beside.is_empty() {
            known = (0..n).map(|node| !self.is_taken(node)).collect();
        }
        for Taken { node, ohms } in self.taken.iter().rev() {
            let line = &self.siemens[node * n..(node + 1) * n];
            let mut amperes = self.amperes[*node];
            if self.beside.is_empty() {
                for end in (0..n).filter(|end| known[*end]) {
                    amperes += line[end] * volts[end];
                }
                known[*node] = true;
            } else {
                for end in bits(self.beside[*node]) {
                    amperes += line[end] * volts[end];
                }
            }
            volts[*node] = amperes * ohms;
        }
    }
}

/// Whether at most two bits are set.
#[inline]
const fn is_at_most_two(word: u64) -> bool {
    let less = word & word.wrapping_sub(1);
    less & less.wrapping_sub(1) == 0
}

/// The numbers of the bits that are set, rising.
#[inline]
fn bits(word: u64) -> impl Iterator<Item = usize> {
    let mut left = word;
    core::iter::from_fn(move || {
        if left == 0 {
            return None;
        }
        let number = left.trailing_zeros() as usize;
        left &= left - 1;
        Some(number)
    })
}

#[cfg(test)]
mod tests {
    use super::super::elementary::pow;
    use super::super::linear::solve_in_place;
    use super::*;
    use proptest::prelude::*;

    /// Conductances over twelve powers of ten between nodes, each of which also has one to the reference.
    fn networks() -> impl Strategy<Value = (usize, Vec<(usize, usize, f64)>, Vec<f64>, Vec<usize>)>
    {
        (2_usize..80).prop_flat_map(|n| {
            let joint =
                (0..n, 0..n, -6.0_f64..6.0).prop_map(|(a, b, size)| (a, b, pow(10.0, size)));
            (
                Just(n),
                proptest::collection::vec(joint, 0..3 * n),
                proptest::collection::vec(-10.0_f64..10.0, n),
                proptest::collection::vec(1..n, 0..4),
            )
        })
    }

    proptest! {
        /// Against the dense solver, which pivots and subtracts and so has fewer digits.
        #[test]
        fn prop_the_dense_solver_gives_the_same_voltages((n, joints, currents, kept) in networks()) {
            let mut mesh = Mesh::new(n);
            let mut dense = vec![0.0; (n - 1) * (n - 1)];
            let to_reference = (1..n).map(|node| (node, 0, 0.5));
            for (a, b, siemens) in joints.into_iter().chain(to_reference) {
                mesh.join(a, b, siemens);
                for (row, column, value) in [(a, a, siemens), (b, b, siemens), (a, b, -siemens), (b, a, -siemens)] {
                    if row != 0 && column != 0 && a != b {
                        dense[(row - 1) * (n - 1) + column - 1] += value;
                    }
                }
            }
            for (node, amperes) in currents.iter().enumerate() {
                mesh.inject(node, *amperes);
            }
            let mut wanted = currents[1..].to_vec();
            solve_in_place(&mut dense, &mut wanted, n - 1).unwrap();
            let mut volts = vec![0.0; n];
            mesh.take_out_all_but(&kept).unwrap();
            // What is kept gets the dense solver's voltages; the rest has to follow from them.
            for node in &kept {
                volts[*node] = wanted[node - 1];
            }
            mesh.put_back(&mut volts);
            let size = wanted.iter().fold(1.0_f64, |size, volts| size.max(volts.abs()));
            for (node, wanted) in wanted.iter().enumerate() {
                prop_assert!((volts[node + 1] - wanted).abs() < 1e-8 * size, "{}: {} {wanted}", node + 1, volts[node + 1]);
            }
            // And what is left agrees with it: the currents into a kept node sum to zero.
            for node in &kept {
                let mut sum = mesh.current_into(*node);
                let mut largest = sum.abs();
                for other in kept.iter().chain(&[0]) {
                    if other != node {
                        let flows = mesh.between(*node, *other) * (volts[*other] - volts[*node]);
                        let repeats = kept.iter().filter(|again| *again == other).count().max(1);
                        sum += flows / repeats as f64;
                        largest = largest.max(flows.abs());
                    }
                }
                let siemens: f64 = (0..n).map(|other| if kept.contains(&other) || other == 0 { mesh.between(*node, other) } else { 0.0 }).sum();
                prop_assert!(sum.abs() < 1e-7 * (largest + siemens * size), "{node}: {sum}");
            }
        }
    }

    /// By hand: 1 uA into a node that a milliohm ties to its neighbour and that one a gigohm to the reference.
    /// Subtracting solvers lose the gigohm beside the milliohm.
    #[test]
    fn closed_form_a_milliohm_beside_a_gigohm_costs_no_digit() {
        let mut mesh = Mesh::new(3);
        mesh.join(2, 1, 1e3);
        mesh.join(1, 0, 1e-9);
        mesh.inject(2, 1e-6);
        mesh.take_out_all_but(&[]).unwrap();
        let mut volts = [0.0; 3];
        mesh.put_back(&mut volts);
        assert!((volts[1] / 1e3 - 1.0).abs() < 1e-15, "{}", volts[1]);
    }

    #[test]
    fn limit_two_nodes_that_hang_in_the_air_together_are_refused() {
        for nodes in [4, 70] {
            let mut mesh = Mesh::new(nodes);
            for node in 1..nodes - 2 {
                mesh.join(0, node, 1.0);
            }
            mesh.join(nodes - 2, nodes - 1, 1.0);
            assert!(matches!(mesh.take_out_all_but(&[]), Err(LinearError::Singular { .. })));
        }
    }
}
