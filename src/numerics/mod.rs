//! Deterministic mathematics: the same bits on every platform.
//!
//! Elementary functions come from one portable library ([`elementary`]), sums have a fixed order,
//! random numbers come from named streams of one seed ([`streams`]), and [`digest`] turns a state
//! into a fingerprint that tests pin.

pub mod digest;
pub mod elementary;
pub mod linear;
pub mod root;
pub mod star_mesh;
pub mod stiff;
pub mod streams;
pub mod whole;
