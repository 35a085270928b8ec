//! Worlds: one session for every fault that might be the truth.

use crate::faults::FaultName;
use crate::session::attempt::Session;
use crate::session::setup::{Briefing, Hidden};
use crate::vehicle::error::VehicleError;
use std::sync::Arc;

/// A way the hidden state might be, before anything was simulated.
#[derive(Debug, Clone, PartialEq)]
pub struct Supposition {
    /// The fault; `None` is "nothing wrong".
    pub fault: Option<FaultName>,
    /// Which variant of the vehicle besides the fault, such as a valve of another winding; worlds
    /// with the same fault and variant differ in severity alone.
    pub variant: u32,
    /// Prior weight, zero or more; the sum over all suppositions is free.
    pub weight: f64,
    /// The hidden state that would follow.
    pub hidden: Hidden,
}

/// A world: a supposition with the session that lives in it.
#[derive(Debug, Clone)]
pub struct World {
    /// The fault that is the truth there.
    pub fault: Option<FaultName>,
    /// Variant besides the fault.
    pub variant: u32,
    /// The session; its log stays empty.
    pub session: Session,
    /// A repair that takes the fault away has been done there.
    pub repaired: bool,
}

/// Worlds with their prior weights.
#[derive(Debug, Clone)]
pub struct Worlds {
    /// The worlds in the order of the suppositions that have any weight.
    pub worlds: Vec<World>,
    /// Weights, normalised to sum to one.
    pub priors: Vec<f64>,
}

/// Threads that begin worlds; results are joined in the order of the suppositions, so their
/// number changes nothing but the wait.
const THREADS: usize = 2;

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
        let done = core::sync::atomic::AtomicUsize::new(0);
        let begin_one = |supposition: &Supposition| {
            let session = Session::begin(Arc::clone(briefing), supposition.hidden.clone());
            let count = done.fetch_add(1, core::sync::atomic::Ordering::Relaxed) + 1;
            progress(count, suppositions.len());
            session
        };
        let share = suppositions.len().div_ceil(THREADS).max(1);
        let begun: Vec<Result<Session, VehicleError>> = std::thread::scope(|scope| {
            let workers: Vec<_> = suppositions
                .chunks(share)
                .map(|chunk| scope.spawn(|| chunk.iter().map(begin_one).collect::<Vec<_>>()))
                .collect();
            workers
                .into_iter()
                .flat_map(|worker| match worker.join() {
                    Ok(sessions) => sessions,
                    Err(panic) => std::panic::resume_unwind(panic),
                })
                .collect()
        });
        let mut worlds = Vec::new();
        let mut priors = Vec::new();
        for (supposition, session) in suppositions.iter().zip(begun) {
            let session = session?;
            let complains = supposition.fault.is_none() || session.has_complaint();
            if supposition.weight > 0.0 && complains {
                worlds.push(World {
                    fault: supposition.fault.clone(),
                    variant: supposition.variant,
                    session,
                    repaired: false,
                });
                priors.push(supposition.weight);
            }
        }
        let total: f64 = priors.iter().sum();
        for prior in &mut priors {
            *prior /= total;
        }
        Ok(Self { worlds, priors })
    }
}
