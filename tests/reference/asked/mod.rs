//! What both sides are asked, without the tests that ask it, so that the page of validation can
//! count the same comparisons.

pub mod contact;
pub mod faults;
pub mod mended;
pub mod original;
pub mod random;
pub mod valve_fuse;

use super::comparison::Comparison;

/// All of it.
pub fn all() -> Vec<Comparison> {
    vec![
        original::wiring(),
        original::in_mended_wiring(),
        mended::wiring(),
        mended::switched(),
        mended::module_fuse_blown(),
        valve_fuse::blown(),
        contact::sweep(),
        random::vehicles(),
        faults::everywhere(),
    ]
}
