//! A case with the fault that its author wants to see, as an apprentice would be dealt it.
//!
//! Nothing is forced: seeds are looked at one after the other until one deals the entry, so that what is
//! tried is a case like any other and can be dealt again from its seed.

use super::draw::{Acceptance, Case, DrawError, attempt_streams, draw, draw_fault, hidden_of};
use super::load::Loaded;
use super::solvable::Solvability;
use crate::faults::{Fault, FaultName};
use std::sync::Arc;
use thiserror::Error;

/// Seeds of which the draw is looked at: an entry of one weight in a thousand is nearly always among them.
pub const MOST_SEEDS: u64 = 20_000;
/// Cases with the entry that are judged: each takes a simulated drive or more.
const MOST_JUDGED: u32 = 8;

/// Why no case with a fault was found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum ShowError {
    /// There is no entry of that number, or its weight is too small for it ever to be drawn.
    #[error("showing a fault: no seed draws it")]
    NeverDrawn,
    /// Every case with it was refused.
    #[error(
        "showing a fault: {without_complaint} cases without a complaint, {not_separable} not separable"
    )]
    Refused {
        /// Refused because the fault would show nothing.
        without_complaint: u32,
        /// Refused because the fault could not be told from another.
        not_separable: u32,
    },
    /// A seed yields no case.
    #[error("showing a fault: a seed yields no case")]
    Draw(#[from] DrawError),
}

/// Deals the first case that hides the faults of an entry, by its number; the vehicle without a fault where the number
/// is that of the entries.
///
/// # Errors
/// [`ShowError`] when none is found.
pub fn deal_showing(loaded: &Arc<Loaded>, entry: usize) -> Result<Case, ShowError> {
    let wanted: Vec<FaultName> = match loaded.scenario.faults.get(entry) {
        Some(prior) => prior.names(),
        None if entry == loaded.scenario.faults.len() => Vec::new(),
        None => return Err(ShowError::NeverDrawn),
    };
    let is_wanted = |faults: &[Fault]| faults.iter().map(|fault| &fault.name).eq(wanted.iter());
    let briefing = Arc::new(loaded.briefing());
    let judge = Solvability::of(loaded);
    let (mut without_complaint, mut not_separable) = (0, 0);
    for seed in 1..=MOST_SEEDS {
        let streams = attempt_streams(seed, 0);
        let drawn = draw_fault(&loaded.scenario, streams);
        if !is_wanted(&drawn.faults) {
            continue;
        }
        match judge.judge(&briefing, &hidden_of(&briefing, &drawn, streams)) {
            Acceptance::Accepted => {
                let case = draw(loaded, seed, &|briefing, hidden| judge.judge(briefing, hidden))?;
                if is_wanted(&case.hidden.faults) {
                    return Ok(case);
                }
                not_separable += 1;
            }
            Acceptance::WithoutComplaint => without_complaint += 1,
            Acceptance::NotSeparable => not_separable += 1,
        }
        if without_complaint + not_separable >= MOST_JUDGED {
            break;
        }
    }
    match without_complaint + not_separable {
        0 => Err(ShowError::NeverDrawn),
        _ => Err(ShowError::Refused { without_complaint, not_separable }),
    }
}
