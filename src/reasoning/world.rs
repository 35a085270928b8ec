//! Worlds: one session for every fault that might be the truth, or for faults that come together.

use super::showings::Showings;
use crate::faults::FaultName;
use crate::session::attempt::Session;
use crate::session::setup::{Briefing, Hidden};
use crate::vehicle::error::VehicleError;
use crate::vehicle::stroke_memo::StrokeMemo;
use core::num::NonZeroUsize;
use core::sync::atomic::{AtomicUsize, Ordering};
use std::sync::Arc;

/// What might be wrong: the faults that are there together, in the order of the scenario's entry;
/// none when nothing is wrong.
pub type Hypothesis = Vec<FaultName>;

/// A way the hidden state might be, before anything was simulated.
#[derive(Debug, Clone, PartialEq)]
pub struct Supposition {
    /// The faults; none is "nothing wrong".
    pub faults: Hypothesis,
    /// Which variant of the vehicle besides the fault, such as a valve of another winding; worlds
    /// with the same faults and variant differ in severity alone.
    pub variant: u32,
    /// Prior weight, zero or more; the sum over all suppositions is free.
    pub weight: f64,
    /// The hidden state that would follow.
    pub hidden: Hidden,
}

/// A world: a supposition with the session that lives in it.
#[derive(Debug, Clone)]
pub struct World {
    /// The faults that are the truth there.
    pub faults: Hypothesis,
    /// Those of them that no repair has taken away.
    pub left: Vec<FaultName>,
    /// Variant besides the fault.
    pub variant: u32,
    /// The session; its log stays empty.
    pub session: Session,
}

/// Worlds with their prior weights.
#[derive(Debug, Clone)]
pub struct Worlds {
    /// The worlds in the order of the suppositions that have any weight.
    pub worlds: Vec<World>,
    /// Weights, normalised to sum to one.
    pub priors: Vec<f64>,
    /// What tests show at the start, as far as it is known.
    pub(super) foreseen: Showings,
}

impl Worlds {
    /// Begins a session for every supposition and keeps those in which the customer would have
    /// come: worlds without a complaint are not what the job sheet speaks of. "Nothing wrong" is
    /// kept whenever the scenario gives it weight. `progress` hears how many of how many are done.
    ///
    /// # Errors
    /// [`VehicleError`] when a world's wiring cannot be solved.
    pub fn begin(
        briefing: &Arc<Briefing>,
        suppositions: &[Supposition],
        progress: &(dyn Fn(usize, usize) + Sync),
    ) -> Result<Self, VehicleError> {
        let threads = std::thread::available_parallelism().map_or(1, NonZeroUsize::get);
        Self::begin_on(threads, briefing, suppositions, progress)
    }

    /// The same on a number of threads, which changes nothing but the wait: each takes the next
    /// supposition that nobody has begun, and the sessions are joined in the order of the
    /// suppositions.
    ///
    /// # Errors
    /// As [`Worlds::begin`].
    pub fn begin_on(
        threads: usize,
        briefing: &Arc<Briefing>,
        suppositions: &[Supposition],
        progress: &(dyn Fn(usize, usize) + Sync),
    ) -> Result<Self, VehicleError> {
        let begun = Self::sessions(threads, briefing, suppositions, progress)?;
        Ok(Self::joined(suppositions, begun))
    }

    /// A session for every supposition, in their order.
    pub(super) fn sessions(
        threads: usize,
        briefing: &Arc<Briefing>,
        suppositions: &[Supposition],
        progress: &(dyn Fn(usize, usize) + Sync),
    ) -> Result<Vec<Session>, VehicleError> {
        let done = AtomicUsize::new(0);
        let begin_one = |supposition: &Supposition| {
            let session = Session::begin(Arc::clone(briefing), supposition.hidden.clone());
            let count = done.fetch_add(1, Ordering::Relaxed) + 1;
            progress(count, suppositions.len());
            session
        };
        let next = AtomicUsize::new(0);
        let work = || {
            let mut begun = Vec::new();
            loop {
                let number = next.fetch_add(1, Ordering::Relaxed);
                let Some(supposition) = suppositions.get(number) else {
                    return begun;
                };
                begun.push((number, begin_one(supposition)));
            }
        };
        let mut begun: Vec<(usize, Result<Session, VehicleError>)> = std::thread::scope(|scope| {
            let workers: Vec<_> = (0..threads.clamp(1, suppositions.len().max(1)))
                .map(|_| scope.spawn(work))
                .collect();
            workers
                .into_iter()
                .flat_map(|worker| {
                    worker.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic))
                })
                .collect()
        });
        begun.sort_unstable_by_key(|(number, _)| *number);
        begun.into_iter().map(|(_, session)| session).collect()
    }

    /// Worlds of sessions that were begun, one for each supposition.
    pub(super) fn joined(suppositions: &[Supposition], begun: Vec<Session>) -> Self {
        // In most worlds most valves are as in all others.
        let strokes = Arc::new(StrokeMemo::default());
        let mut worlds = Vec::new();
        let mut priors = Vec::new();
        for (supposition, mut session) in suppositions.iter().zip(begun) {
            session.share_strokes(&strokes);
            let complains = supposition.faults.is_empty() || session.has_complaint();
            if supposition.weight > 0.0 && complains {
                worlds.push(World {
                    faults: supposition.faults.clone(),
                    left: supposition.faults.clone(),
                    variant: supposition.variant,
                    session,
                });
                priors.push(supposition.weight);
            }
        }
        let total: f64 = priors.iter().sum();
        for prior in &mut priors {
            *prior /= total;
        }
        Self::of(worlds, priors)
    }

    /// Worlds with their weights.
    #[must_use]
    pub fn of(worlds: Vec<World>, priors: Vec<f64>) -> Self {
        Self { worlds, priors, foreseen: Showings::default() }
    }
}
