//! Dealing a case that can be solved.

use super::draw::{Case, DrawError, draw};
use super::load::{LoadError, Loaded, ScenarioText, read};
use super::seal::{SealError, to_play};
use super::solvable::Solvability;
use crate::session::journal::{CaseRecord, Mode, Sealed};
use std::sync::Arc;
use thiserror::Error;

/// Why no case was dealt.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum DealError {
    /// The scenario that a session file carries cannot be read.
    #[error("dealing a case: the scenario cannot be read")]
    Load(#[from] LoadError),
    /// No acceptable case was drawn.
    #[error("dealing a case: nothing acceptable was drawn")]
    Draw(#[from] DrawError),
    /// The case is under a seal.
    #[error("dealing a case: it is sealed")]
    Sealed,
    /// A sealed case cannot be read or opened.
    #[error("dealing a case: its seal cannot be used")]
    Seal(#[from] SealError),
}

/// Deals the case of a seed: with a complaint, and solvable.
///
/// # Errors
/// [`DealError::Draw`] when the scenario yields none.
pub fn deal(loaded: &Arc<Loaded>, seed: u64) -> Result<Case, DealError> {
    let judge = Solvability::of(loaded);
    Ok(draw(loaded, seed, &|briefing, hidden| judge.judge(briefing, hidden))?)
}

/// Deals the case that a journal is about, from the texts that it carries.
///
/// # Errors
/// [`DealError`] when they cannot be read or yield no case, and when it is sealed: whoever shows what is hidden has to
/// open it first ([`super::seal::open`]).
pub fn deal_again(record: &CaseRecord) -> Result<Case, DealError> {
    if record.sealed.is_some() {
        return Err(DealError::Sealed);
    }
    let text = ScenarioText {
        scenario_name: record.scenario_name.clone(),
        scenario_text: record.scenario_text.clone(),
        vehicle_text: record.vehicle_text.clone(),
    };
    let case = deal(&Arc::new(read(text)?), record.seed)?;
    Ok(if record.mode == Mode::Assessed { case.assessed() } else { case })
}

/// Deals a sealed case to be worked, for which nothing is opened. Whoever asks for it shows nothing but what an apprentice
/// may see.
///
/// # Errors
/// [`DealError`] when it cannot be read or yields no case.
pub fn deal_sealed(sealed: &Sealed) -> Result<Case, DealError> {
    deal_again(&to_play(sealed)?)
}

/// Deals the case that a journal is about so that it can be worked on: a sealed one stays sealed, as for [`deal_sealed`].
///
/// # Errors
/// [`DealError`] when it cannot be read or yields no case.
pub fn deal_to_work(record: &CaseRecord) -> Result<Case, DealError> {
    record.sealed.as_ref().map_or_else(|| deal_again(record), |sealed| deal_sealed(sealed))
}

/// What a journal has to carry so that its case can be dealt again.
#[must_use]
pub fn record_of(case: &Case) -> CaseRecord {
    let text = &case.scenario.text;
    CaseRecord {
        scenario_name: text.scenario_name.clone(),
        scenario_text: text.scenario_text.clone(),
        vehicle_text: text.vehicle_text.clone(),
        seed: case.seed,
        mode: case.briefing.mode,
        sealed: None,
    }
}
