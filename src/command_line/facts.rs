//! What is known of a scenario before it is handed out: worked out with a word on how far it is.

use super::judging::worlds_of;
use super::screen::Screen;
use super::store;
use super::trouble::Trouble;
use crate::scenario::doubts::Simulated as Doubts;
use crate::scenario::load::Loaded;
use crate::session::toolbox::Tools;
use crate::trial::facts::{Earned, Facts, NotEarned, Telling};
use crate::trial::row::Row;
use crate::trial::runner::{Listener, Plan};
use crate::virtual_apprentices::policy::Policy;
use core::sync::atomic::{AtomicUsize, Ordering};
use std::sync::Arc;
use std::time::Duration;

/// How often the screen shows how far it is.
const SHOWN_EVERY: Duration = Duration::from_millis(50);

/// What simulation tells of a scenario, as far as it was asked.
#[derive(Default)]
pub struct Simulated {
    /// Entries of the list of faults that are doubtful.
    pub doubts: Doubts,
    /// What its worlds tell.
    pub facts: Option<Facts>,
    /// What apprentices earn on some cases, and on how many.
    pub earned: Option<(Earned, u64)>,
}

/// Works out what the arguments ask for. Where a scenario leaves tools out, what the rest cannot tell is found in any case.
///
/// # Errors
/// [`Trouble`] when a vehicle cannot be simulated or the scenario yields no case.
pub fn simulated(
    given: &clap::ArgMatches,
    loaded: &Arc<Loaded>,
    screen: &mut Screen<'_>,
) -> Result<Simulated, Trouble> {
    let cases = given.get_one::<u64>("apprentices").copied();
    let wants_facts = given.get_flag("facts") || cases.is_some();
    if !wants_facts && loaded.scenario.tools == Tools::All {
        return Ok(Simulated::default());
    }
    let store = store::world_store(given);
    let briefing = Arc::new(loaded.briefing());
    let worlds = worlds_of(&briefing, loaded, &store, screen)?;
    if !wants_facts {
        let untold = || Telling::of(loaded, &worlds).map(|it| it.doubts(loaded));
        let doubts = watched(untold, |screen| screen.progress("progress-telling", 0, 0), screen)
            .map_err(|source| Trouble::Simulation { source })?;
        return Ok(Simulated { doubts, ..Simulated::default() });
    }
    let guesses = Counter::default();
    let facts = watched(
        || {
            Facts::of(loaded, &worlds, &|done, of| {
                guesses.of.store(of, Ordering::Relaxed);
                guesses.done.store(done, Ordering::Relaxed);
            })
        },
        |screen| guesses.show("progress-guess", screen),
        screen,
    )
    .map_err(|source| Trouble::Simulation { source })?;
    let doubts = facts.telling.doubts(loaded);
    let Some(cases) = cases else {
        return Ok(Simulated { doubts, facts: Some(facts), earned: None });
    };
    let plan = Plan {
        seeds: 1..=cases,
        policies: Policy::ALL.to_vec(),
        is_marked: true,
        threads: None,
        store,
    };
    let sessions = Counter::default();
    let all = usize::try_from(cases).unwrap_or(usize::MAX).saturating_mul(plan.policies.len());
    sessions.of.store(all, Ordering::Relaxed);
    let earned = watched(
        || Earned::of(loaded, (&worlds, facts.guess.as_ref()), &plan, &sessions),
        |screen| sessions.show("progress-trial", screen),
        screen,
    )
    .map_err(|error| match error {
        NotEarned::Trial(error) => Trouble::from(error),
        NotEarned::Deal(error) => Trouble::from(error),
    })?;
    Ok(Simulated { doubts, facts: Some(facts), earned: earned.map(|earned| (earned, cases)) })
}

/// Works on a thread of its own while the screen shows how far it is.
fn watched<T: Send>(
    work: impl FnOnce() -> T + Send,
    show: impl Fn(&mut Screen<'_>),
    screen: &mut Screen<'_>,
) -> T {
    std::thread::scope(|scope| {
        let worker = scope.spawn(work);
        while !worker.is_finished() {
            show(screen);
            std::thread::sleep(SHOWN_EVERY);
        }
        worker.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic))
    })
}

/// How far something is.
#[derive(Default)]
struct Counter {
    done: AtomicUsize,
    of: AtomicUsize,
}

impl Counter {
    fn show(&self, key: &str, screen: &mut Screen<'_>) {
        screen.progress(key, self.done.load(Ordering::Relaxed), self.of.load(Ordering::Relaxed));
    }
}

impl Listener for Counter {
    fn prepared(&self, _: usize, _: usize) {}

    fn done(&self, _: &Row) {
        self.done.fetch_add(1, Ordering::Relaxed);
    }
}
