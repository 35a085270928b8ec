//! What must hold for any input: laws of networks, independence of instruments, files that come
//! back as they went, and the order of the methods that integrate.
//!
//! Kirchhoff's currents and the balance of power are beside the solver (`physics::circuit`), the
//! journal's round trip beside the journal.
#![expect(clippy::expect_used, reason = "a test fails by panicking")]

mod instruments;
mod integrators;
mod mutations;
mod networks;
mod scenario;
