//! Direct-current networks by nodal analysis.
//!
//! Purpose: the voltages and currents of a wiring harness with everything that hangs on it, the
//! measuring instrument included. Model: lumped resistances, sources behind a resistance, diodes
//! by the exponential law with a series resistance, the filament of a lamp in equilibrium, and the
//! current source of an ohmmeter.
//! Limits: no inductance or capacitance (see the solenoid model for transients); diodes at one
//! junction temperature. Node 0 is the reference, zero volts.
//!
//! ```
//! use faultwright::physics::circuit::{Element, Network};
//! let mut network = Network::with_nodes(2);
//! network.add(Element::Source { plus: 1, minus: 0, volts: 12.0, ohms: 1.0 });
//! network.add(Element::Resistor { a: 1, b: 0, ohms: 5.0 });
//! let solution = network.solve().unwrap();
//! assert!((solution.volts_between(1, 0) - 10.0).abs() < 1e-12);
//! ```

mod curve;
mod device;
mod network;
mod reduced;

#[cfg(test)]
mod tests;

pub use device::{DiodeLaw, FilamentLaw, OhmSource};
pub use network::{CircuitError, Element, Network, Seen, Solution};
