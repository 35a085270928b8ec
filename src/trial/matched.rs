//! Cases that are equally hard, for a group that sits different ones.
//!
//! How hard a case is, is what the rest of the job costs in expectation under the expert's plan once the
//! job has been taken in: sheet and customer, oil and eyes, codes and their freeze frame. That hangs on what
//! anybody can see of the case then, not on which fault it is nor on luck; it is known between two bounds.
//!
//! Seeds are looked at one after the other, so that the same question deals the same cases.

use crate::reasoning::belief::Belief;
use crate::reasoning::expert::Expert;
use crate::reasoning::plan::budget::Bounds;
use crate::reasoning::world::Worlds;
use crate::scenario::draw::{Case, DrawError, draw};
use crate::scenario::load::Loaded;
use crate::scenario::seeds::Seeds;
use crate::scenario::solvable::Solvability;
use crate::scenario::suppose::suppositions;
use crate::session::attempt::Session;
use crate::vehicle::error::VehicleError;
use crate::virtual_apprentices::intake;
use core::ops::RangeInclusive;
use std::sync::Arc;
use thiserror::Error;

/// Which cases are wanted.
#[derive(Debug, Clone, PartialEq)]
pub struct Wanted {
    /// How many.
    pub count: usize,
    /// Between what both bounds of the expected cost must lie [units of the currency]; `None` for those that lie closest
    /// together among all seeds that are looked at.
    pub band: Option<RangeInclusive<f64>>,
    /// The seeds that are looked at, in this order.
    pub seeds: Seeds,
    /// Seeds that are looked at, at most.
    pub look_at: u64,
}

/// A case with what it costs.
#[derive(Debug, Clone, PartialEq)]
pub struct Matched {
    /// The case.
    pub case: Case,
    /// Expected cost of the rest of the job once it has been taken in [units of the currency].
    pub cost: Bounds,
}

/// Why there are not as many cases as wanted.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum MatchError {
    /// A seed yields no case.
    #[error("dealing matched cases: a seed yields none")]
    Draw(#[from] DrawError),
    /// A vehicle could not be simulated.
    #[error("dealing matched cases: a vehicle could not be simulated")]
    Vehicle(#[from] VehicleError),
    /// The seeds hold too few cases within the band.
    #[error("dealing matched cases: {found} of {wanted} among {looked_at} seeds")]
    TooFew {
        /// Found.
        found: usize,
        /// Wanted.
        wanted: usize,
        /// Seeds looked at.
        looked_at: u64,
        /// Between what the cases that were looked at lie, the least lower to the greatest upper bound
        /// [units of the currency].
        seen: Bounds,
    },
}

/// Who hears how far it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Progress {
    /// So many of so many suppositions worked out, before the first case.
    Worlds(usize, usize),
    /// So many of so many cases found.
    Found(usize, usize),
    /// So many of so many seeds looked at, where the closest of all are wanted.
    Looked(u64, u64),
}

/// Deals the first cases from a seed on whose expected cost lies within a band.
///
/// # Errors
/// [`MatchError`].
pub fn matched(
    loaded: &Arc<Loaded>,
    wanted: &Wanted,
    progress: &(dyn Fn(Progress) + Sync),
) -> Result<Vec<Matched>, MatchError> {
    let briefing = Arc::new(loaded.briefing());
    let heard = |done, of| progress(Progress::Worlds(done, of));
    let worlds = Worlds::begin(&briefing, &suppositions(loaded), &heard)?;
    let judge = Solvability::of(loaded);
    let mut found: Vec<Matched> = Vec::new();
    let mut seen: Option<Bounds> = None;
    for number in 0..wanted.look_at {
        if wanted.band.is_some() && found.len() == wanted.count {
            return Ok(found);
        }
        match wanted.band {
            Some(_) => progress(Progress::Found(found.len(), wanted.count)),
            None => progress(Progress::Looked(number, wanted.look_at)),
        }
        let seed = wanted.seeds.at(number);
        let case = draw(loaded, seed, &|briefing, hidden| judge.judge(briefing, hidden))?;
        let cost = cost_after_intake(&case, worlds.clone())?;
        let so_far = seen.unwrap_or(cost);
        seen = Some(Bounds {
            lower: so_far.lower.min(cost.lower),
            upper: so_far.upper.max(cost.upper),
        });
        let is_within =
            |band: &RangeInclusive<f64>| band.contains(&cost.lower) && band.contains(&cost.upper);
        if wanted.band.as_ref().is_none_or(is_within) {
            found.push(Matched { case, cost });
        }
    }
    if found.len() >= wanted.count {
        return Ok(if wanted.band.is_some() { found } else { closest(found, wanted.count) });
    }
    Err(MatchError::TooFew {
        found: found.len(),
        wanted: wanted.count,
        looked_at: wanted.look_at,
        seen: seen.unwrap_or(Bounds { lower: 0.0, upper: 0.0 }),
    })
}

/// As many as are wanted of those that lie closest together, in the order of their seeds: of all that follow each other in
/// cost, those with the least between the lowest lower and the highest upper bound; of equal ones the cheapest.
fn closest(mut all: Vec<Matched>, count: usize) -> Vec<Matched> {
    all.sort_by(|a, b| a.cost.lower.total_cmp(&b.cost.lower).then(a.case.seed.cmp(&b.case.seed)));
    let spread = |cases: &[Matched]| {
        let lower = cases.iter().map(|it| it.cost.lower).fold(f64::INFINITY, f64::min);
        cases.iter().map(|it| it.cost.upper).fold(f64::NEG_INFINITY, f64::max) - lower
    };
    let windows = all.windows(count.max(1)).map(spread).enumerate();
    let start = windows.min_by(|a, b| a.1.total_cmp(&b.1)).map_or(0, |(start, _)| start);
    let mut chosen: Vec<Matched> = all.into_iter().skip(start).take(count).collect();
    chosen.sort_by_key(|it| it.case.seed);
    chosen
}

/// What the rest of the job costs in expectation once the case has been taken in.
///
/// # Errors
/// [`VehicleError`] when a vehicle cannot be simulated.
pub fn cost_after_intake(case: &Case, worlds: Worlds) -> Result<Bounds, VehicleError> {
    let mut session = Session::begin(Arc::clone(&case.briefing), case.hidden.clone())?;
    for step in intake() {
        session.take(&step)?;
    }
    let mut expert = Expert::new(Arc::clone(&case.briefing)).with_tests_for(&worlds);
    let mut belief = Belief::prior(worlds);
    for entry in session.log() {
        belief.learn(entry)?;
    }
    Ok(expert.value(&belief)?.cost)
}
