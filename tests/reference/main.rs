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
mod asked;
mod case;
mod circumstances;
mod comparison;
mod contact;
mod faults;
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

/// Where ngspice is not installed the stored values must do; they are compared everywhere.
#[test]
fn reference_stored_values_agree() {
    for comparison in asked::all() {
        let (compared, _, disagreed) = comparison.with_stored().figures();
        assert_eq!(disagreed, 0, "{}", comparison.name);
        assert!(compared >= comparison.least, "{}: only {compared}", comparison.name);
    }
}
