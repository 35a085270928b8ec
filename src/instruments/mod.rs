//! What a person can sense: a multimeter, a power lead, a dipstick, eyes and ears.
//!
//! An instrument is part of the network that it measures.

pub mod multimeter;
