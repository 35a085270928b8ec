//! What a person can sense: a multimeter, a test lamp, a current probe, a scope, a power lead, a
//! code reader, a dipstick, eyes and ears.
//!
//! An instrument is part of the network that it measures.

#[cfg(test)]
mod bench;
pub mod code_reader;
pub mod current_probe;
pub mod multimeter;
pub mod pressure_gauge;
pub mod scope;
pub mod test_lamp;
