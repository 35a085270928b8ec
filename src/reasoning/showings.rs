//! What every test would show in every world, worked out once until the vehicle changes.
//!
//! Worlds are asked side by side: each world by one thread, its copies brought into the state that
//! some tests need once for all that need the same. A test in a world hangs on nothing else, so that
//! who asks when changes nothing.
//!
//! What is left of the time by a profile, once strokes are remembered and the way to a test is walked once for
//! all tests that need the same: the oil pressure gauge, for which an engine runs for half a minute in each world,
//! three times as much as anything else; then different strokes, and the wiring solved for each reading.

use super::outcome::{Aspect, aspects};
use super::probe::{Need, Probe, steps_to};
use crate::session::attempt::Session;
use crate::vehicle::error::VehicleError;
use core::num::NonZeroUsize;
use core::sync::atomic::{AtomicUsize, Ordering};
use std::collections::BTreeMap;
use std::sync::Arc;

/// Showings for which it is worth to begin another thread.
const WORTH_A_THREAD: usize = 100;

/// What one test shows in one world.
pub(super) type Showing = Arc<Vec<Aspect>>;

/// What is known so far, by number of the world and of the test.
#[derive(Debug, Clone, Default)]
pub struct Showings {
    known: BTreeMap<(usize, usize), Showing>,
}

/// The session of a world.
pub(super) type Sessions<'s> = dyn Fn(usize) -> &'s Session + Sync + 's;

/// A world with the tests of which is not known what they show there.
type Missing = (usize, Vec<usize>);

impl Showings {
    /// Forgets everything.
    pub(super) fn clear(&mut self) {
        self.known.clear();
    }

    /// Forgets some tests.
    pub(super) fn forget(&mut self, which: impl Fn(usize) -> bool) {
        self.known.retain(|(_, probe), _| !which(*probe));
    }

    /// What a test shows in a world, where that was worked out.
    pub(super) fn get(&self, world: usize, probe: usize) -> Option<&Showing> {
        self.known.get(&(world, probe))
    }

    /// Everything, in order of world and test.
    pub(super) fn listed(&self) -> Vec<(usize, usize, Vec<Aspect>)> {
        let known = self.known.iter();
        known.map(|((world, probe), shown)| (*world, *probe, shown.to_vec())).collect()
    }

    /// The same again.
    pub(super) fn of_list(list: Vec<(usize, usize, Vec<Aspect>)>) -> Self {
        let known = list.into_iter();
        Self { known: known.map(|(w, probe, shown)| ((w, probe), Arc::new(shown))).collect() }
    }

    /// Works out what is missing of the tests in some worlds.
    ///
    /// # Errors
    /// [`VehicleError`] of the first world whose wiring cannot be solved.
    pub(super) fn complete(
        &mut self,
        session: &Sessions<'_>,
        worlds: impl Iterator<Item = usize>,
        probes: &[Probe],
    ) -> Result<(), VehicleError> {
        let missing: Vec<Missing> = worlds
            .map(|world| {
                let unknown = |probe: &usize| !self.known.contains_key(&(world, *probe));
                (world, (0..probes.len()).filter(unknown).collect::<Vec<_>>())
            })
            .filter(|(_, numbers)| !numbers.is_empty())
            .collect();
        let count: usize = missing.iter().map(|(_, numbers)| numbers.len()).sum();
        let threads = std::thread::available_parallelism().map_or(1, NonZeroUsize::get);
        let threads = threads.clamp(1, (count / WORTH_A_THREAD).clamp(1, missing.len().max(1)));
        for ((world, numbers), shown) in missing.iter().zip(ask(threads, session, &missing, probes))
        {
            for (number, shown) in numbers.iter().zip(shown?) {
                self.known.insert((*world, *number), Arc::new(shown));
            }
        }
        Ok(())
    }
}

type Answers = Result<Vec<Vec<Aspect>>, VehicleError>;

/// Asks worlds on a number of threads, and returns the answers in the order of the questions.
fn ask(
    threads: usize,
    session: &Sessions<'_>,
    missing: &[Missing],
    probes: &[Probe],
) -> Vec<Answers> {
    let next = AtomicUsize::new(0);
    let work = || {
        let mut answered = Vec::new();
        loop {
            let place = next.fetch_add(1, Ordering::Relaxed);
            let Some((world, numbers)) = missing.get(place) else {
                return answered;
            };
            answered.push((place, in_world(session(*world), numbers, probes)));
        }
    };
    if threads < 2 {
        return work().into_iter().map(|(_, answers)| answers).collect();
    }
    let mut answered: Vec<(usize, Answers)> = std::thread::scope(|scope| {
        let workers: Vec<_> = (0..threads).map(|_| scope.spawn(work)).collect();
        workers
            .into_iter()
            .flat_map(|it| it.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic)))
            .collect()
    });
    answered.sort_unstable_by_key(|(place, _)| *place);
    answered.into_iter().map(|(_, answers)| answers).collect()
}

/// What some tests show in one world in its present state, in their order.
fn in_world(session: &Session, numbers: &[usize], probes: &[Probe]) -> Answers {
    let spec = &session.briefing().vehicle;
    let mut ready: Vec<(&Need, Session)> = Vec::new();
    let mut answers = Vec::with_capacity(numbers.len());
    for number in numbers {
        let probe = &probes[*number];
        let place = if let Some(place) = ready.iter().position(|(need, _)| **need == probe.need) {
            place
        } else {
            let mut copy = session.fork();
            for step in steps_to(&probe.need, spec, session.vehicle_in_sight()) {
                copy.take_unlogged(&step)?;
            }
            ready.push((&probe.need, copy));
            ready.len() - 1
        };
        let mut copy = ready[place].1.fork();
        let mut shown = Vec::new();
        // What follows in a test only puts things back.
        for (place, step) in probe.steps.iter().enumerate().take(probe.shows + 1) {
            let events = copy.take_unlogged(step)?;
            if place == probe.shows {
                shown = aspects(&events);
            }
        }
        answers.push(shown);
    }
    Ok(answers)
}
