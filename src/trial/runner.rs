//! Cases dealt, worked and marked, on as many threads as there are.

use super::row::{Judged, Origin, Outcome, Row, Rows};
use crate::assessment::debrief::{NoDebrief, debrief, is_settled_by_declining};
use crate::faults::Fault;
use crate::numerics::digest::DigestBuilder;
use crate::reasoning::belief::was_refused;
use crate::reasoning::remedy::Remedy;
use crate::reasoning::world::Worlds;
use crate::reasoning::world_store::WorldStore;
use crate::scenario::draw::{Case, DrawError, draw};
use crate::scenario::load::Loaded;
use crate::scenario::solvable::Solvability;
use crate::scenario::suppose::suppositions;
use crate::session::attempt::Session;
use crate::units::Money;
use crate::vehicle::error::VehicleError;
use crate::virtual_apprentices::policy::Policy;
use crate::virtual_apprentices::seen::VirtualApprentice;
use crate::virtual_apprentices::work::work;
use core::num::NonZeroUsize;
use core::ops::RangeInclusive;
use core::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::collections::BTreeSet;
use std::sync::Arc;
use thiserror::Error;

/// Why a trial stopped.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum TrialError {
    /// A seed yields no case.
    #[error("running a trial: no case could be dealt")]
    Draw(#[from] DrawError),
    /// A vehicle could not be simulated.
    #[error("running a trial: a vehicle could not be simulated")]
    Vehicle(#[from] VehicleError),
}

/// What is to be run.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Plan {
    /// Seeds of the cases.
    pub seeds: RangeInclusive<u64>,
    /// Who works them.
    pub policies: Vec<Policy>,
    /// Whether sessions are marked, which takes far longer than working them.
    pub is_marked: bool,
    /// Threads; `None` for as many as the machine has. The result does not hang on it.
    pub threads: Option<NonZeroUsize>,
    /// Where worlds are kept. The result does not hang on it.
    pub store: WorldStore,
}

/// Who hears how a trial goes.
pub trait Listener: Sync {
    /// How many of how many suppositions have been worked out, before the first session.
    fn prepared(&self, done: usize, of: usize);

    /// A session is done.
    fn done(&self, row: &Row);

    /// Whether to stop after the sessions that are under way.
    fn is_over(&self) -> bool {
        false
    }
}

/// Which trial the rows of a scenario belong to.
#[must_use]
pub fn origin(loaded: &Loaded) -> Origin {
    let mut builder = DigestBuilder::new("trial");
    builder.text(&loaded.text.scenario_text);
    builder.text(&loaded.text.vehicle_text);
    Origin {
        scenario: loaded.text.scenario_name.clone(),
        fingerprint: builder.finish().short(),
        currency: loaded.scenario.prices.currency.clone(),
        program: env!("CARGO_PKG_VERSION").to_owned(),
    }
}

/// Runs a trial. What is in `done` already is left out; the result holds the new rows alone, in their
/// order of seed and policy.
///
/// # Errors
/// [`TrialError`] of the smallest seed that has one.
pub fn run(
    loaded: &Arc<Loaded>,
    plan: &Plan,
    done: &BTreeSet<(u64, Policy)>,
    listener: &dyn Listener,
) -> Result<Rows, TrialError> {
    let threads =
        plan.threads.or_else(|| std::thread::available_parallelism().ok()).map_or(1, usize::from);
    let briefing = Arc::new(loaded.briefing());
    let suppositions = suppositions(loaded);
    let heard = |done, of| listener.prepared(done, of);
    let (worlds, _) = plan.store.begin_on(threads, &briefing, &suppositions, &heard)?;
    let seeds = Seeds { next: AtomicUsize::new(0), range: plan.seeds.clone() };
    let failed = AtomicBool::new(false);
    let worker = || {
        let judge = Solvability::of(loaded);
        let mut worked = Vec::new();
        while let Some(seed) = seeds.next(listener.is_over() || failed.load(Ordering::Relaxed)) {
            let missing: Vec<Policy> = plan
                .policies
                .iter()
                .copied()
                .filter(|policy| !done.contains(&(seed, *policy)))
                .collect();
            if missing.is_empty() {
                continue;
            }
            let case = draw(loaded, seed, &|briefing, hidden| judge.judge(briefing, hidden));
            let rows = case.map_err(TrialError::from).and_then(|case| {
                let one = |policy| {
                    let row = session(&case, policy, &worlds, plan.is_marked)?;
                    listener.done(&row);
                    Ok(row)
                };
                missing.into_iter().map(one).collect::<Result<Vec<_>, _>>()
            });
            failed.fetch_or(rows.is_err(), Ordering::Relaxed);
            worked.push((seed, rows));
        }
        worked
    };
    let mut worked = std::thread::scope(|scope| {
        let workers: Vec<_> = (0..threads).map(|_| scope.spawn(worker)).collect();
        workers
            .into_iter()
            .flat_map(|it| it.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic)))
            .collect::<Vec<_>>()
    });
    worked.sort_by_key(|(seed, _)| *seed);
    let mut rows = Vec::new();
    for (_, of_seed) in worked {
        rows.extend(of_seed?);
    }
    rows.sort_by_key(Row::place);
    Ok(Rows { of: origin(loaded), rows })
}

/// Seeds handed out one after the other.
struct Seeds {
    next: AtomicUsize,
    range: RangeInclusive<u64>,
}

impl Seeds {
    fn next(&self, is_over: bool) -> Option<u64> {
        if is_over {
            return None;
        }
        let number = u64::try_from(self.next.fetch_add(1, Ordering::Relaxed)).ok()?;
        self.range.start().checked_add(number).filter(|seed| self.range.contains(seed))
    }
}

/// One session of one policy.
///
/// # Errors
/// [`VehicleError`] when a vehicle cannot be simulated.
pub fn session(
    case: &Case,
    policy: Policy,
    worlds: &Worlds,
    is_marked: bool,
) -> Result<Row, VehicleError> {
    let mut apprentice = policy.apprentice(&case.briefing, worlds, case.seed);
    let Worked { session, outcome, comeback, judged } =
        worked(case, apprentice.as_mut(), is_marked.then_some(worlds))?;
    let repairs = session
        .log()
        .iter()
        .filter(|entry| Remedy::in_step(&entry.step).is_some() && !was_refused(entry))
        .count();
    let till = session.till();
    Ok(Row {
        seed: case.seed,
        policy,
        fault: faults(&case.hidden.faults),
        outcome,
        steps: count(session.log().len()),
        repairs: count(repairs),
        minutes: till.minutes.0,
        things: till.money,
        spent: till.total(case.briefing.prices.labour_per_hour),
        comeback,
        judged,
    })
}

/// A session that somebody worked, and what came of it.
pub(super) struct Worked {
    pub(super) session: Session,
    pub(super) outcome: Outcome,
    /// What the come-back costs; nothing where there is none.
    pub(super) comeback: Money,
    pub(super) judged: Option<Judged>,
}

impl Worked {
    /// What the case cost in all [units of the currency].
    pub(super) fn cost(&self) -> f64 {
        let labour = self.session.briefing().prices.labour_per_hour;
        (self.session.till().total(labour) + self.comeback).as_units()
    }
}

/// One session of anybody; it is marked where worlds are given.
///
/// # Errors
/// [`VehicleError`] when a vehicle cannot be simulated.
pub(super) fn worked(
    case: &Case,
    apprentice: &mut dyn VirtualApprentice,
    worlds: Option<&Worlds>,
) -> Result<Worked, VehicleError> {
    let mut session = Session::begin(Arc::clone(&case.briefing), case.hidden.clone())?;
    let is_finished = work(&mut session, apprentice)?;
    let (comes_back, judged) = match worlds {
        _ if !is_finished => (false, worlds.map(|_| Judged::of_unfinished())),
        Some(worlds) => {
            let faults = case.hidden.faults.clone();
            match debrief(&session, faults, worlds.clone(), &case.rubric, &|_, _| {}) {
                Ok(debrief) => (debrief.aftermath.comes_back(), Some(Judged::of(&debrief))),
                Err(NoDebrief::Vehicle(error)) => return Err(error),
                Err(NoDebrief::Unfinished { .. }) => (false, Some(Judged::of_unfinished())),
            }
        }
        None => (session.aftermath()?.comes_back(), None),
    };
    let is_settled = is_settled_by_declining(&session, &case.hidden.faults);
    let outcome = Outcome::of(session.ending(), comes_back, is_settled);
    // Whoever gets a vehicle handed on, or waits for it still, has the fault to find yet.
    let comeback = if outcome.is_right() { Money(0) } else { case.briefing.prices.comeback };
    Ok(Worked { session, outcome, comeback, judged })
}

fn count(number: usize) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX)
}

/// Faults as one word for each.
fn faults(faults: &[Fault]) -> String {
    let words: Vec<String> = faults
        .iter()
        .map(|fault| format!("{}@{}", fault.name.kind.word(), fault.name.place))
        .collect();
    words.join("+")
}
