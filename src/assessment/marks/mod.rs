//! One mark a file's section: each a pure function of log, review and aftermath.

mod declined;
mod evidence;
mod handling;
mod proof;
mod thinking;

pub(super) use declined::{declined, is_all_settled, proof_of_declined};
pub(super) use evidence::spoils_reading;
pub(super) use handling::{access_order, care, reading, record};
pub(super) use proof::{erased, proof, proof_parts};
pub(super) use thinking::{calibration, repair, test_choice};
