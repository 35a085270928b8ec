//! The wiring and the multimeter against an independent circuit simulator.
//!
//! `original.cir` and `wiring.cir` were written by hand for ngspice from the wiring diagram, with
//! parameters of their own for every fault; nothing in them is made by the program under test.
//! Where ngspice is installed the tests run it and also check that the stored values are what it
//! says; elsewhere they compare with the stored values alone. Each test prints which of the two it
//! did. To store the values again:
//!
//! ```text
//! FAULTWRIGHT_STORE_REFERENCE=1 cargo test --no-default-features --test reference
//! ```
#![expect(clippy::expect_used, reason = "a test fails by panicking")]
#![expect(
    clippy::disallowed_methods,
    reason = "a reference shares no function with what it checks"
)]

mod agreement;
mod case;
mod circumstances;
mod contact;
mod instruments;
mod mended;
mod original;
mod random;
mod reading;
mod simulator;
mod table;
mod valve_fuse;
mod vehicle;
mod wiring;
