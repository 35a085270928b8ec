//! How hard a scenario is, quickly: a few cases, for whoever changes it and wants to see what the change does.
//!
//! Cost is what the rest of the job costs in expectation under the expert's plan once the job has been taken in
//! ([`cost_after_intake`]), known between two bounds; entropy is that of what may be drawn before anything is
//! asked; the virtual apprentices show how far habits lie apart. With so few cases all of them say which way a
//! change goes, and nothing about an apprentice.

use super::facts::Draws;
use super::matched::cost_after_intake;
use super::runner::{TrialError, session};
use crate::reasoning::plan::budget::Bounds;
use crate::reasoning::world_store::WorldStore;
use crate::scenario::draw::draw;
use crate::scenario::load::Loaded;
use crate::scenario::solvable::Solvability;
use crate::scenario::suppose::suppositions;
use crate::virtual_apprentices::policy::Policy;
use std::sync::Arc;

/// Cases that are dealt, from seed 1 on.
pub const CASES: u64 = 4;

/// What a few cases show.
#[derive(Debug, Clone, PartialEq)]
pub struct Hardness {
    /// Expected cost of the job under the expert's plan, the mean of the cases [units of the currency].
    pub cost: Bounds,
    /// Entropy of what may be drawn, by its weights \[bit\].
    pub entropy: f64,
    /// Each policy in the order of [`Policy::ALL`].
    pub policies: Vec<Worked>,
}

/// How a policy worked the cases.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Worked {
    /// Who.
    pub policy: Policy,
    /// Mean steps.
    pub steps: f64,
    /// Cost of the cheapest and of the dearest case, with what a come-back costs [units of the currency].
    pub cost: Bounds,
    /// Cases that went back as they should.
    pub right: u64,
}

/// How far it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Progress {
    /// So many of so many suppositions worked out.
    Worlds(usize, usize),
    /// So many of so many sessions done, an expert's plan counted as one.
    Sessions(usize, usize),
}

/// Works out how hard a scenario is; nothing where the listener says to stop, which it is asked between
/// sessions by what it answers.
///
/// # Errors
/// [`TrialError`] when a seed yields no case or a vehicle cannot be simulated.
pub fn hardness(
    loaded: &Arc<Loaded>,
    store: &WorldStore,
    goes_on: &(dyn Fn(Progress) -> bool + Sync),
) -> Result<Option<Hardness>, TrialError> {
    let briefing = Arc::new(loaded.briefing());
    let heard = |done, of| {
        goes_on(Progress::Worlds(done, of));
    };
    // On one thread: whoever waits for it goes on writing meanwhile.
    let (worlds, _) = store.begin_on(1, &briefing, &suppositions(loaded), &heard)?;
    let judge = Solvability::of(loaded);
    let of = usize::try_from(CASES).unwrap_or(usize::MAX) * (Policy::ALL.len() + 1);
    let mut rows: Vec<Vec<(f64, f64, bool)>> = vec![Vec::new(); Policy::ALL.len()];
    let (mut done, mut cost) = (0, Bounds { lower: 0.0, upper: 0.0 });
    for seed in 1..=CASES {
        if !goes_on(Progress::Sessions(done, of)) {
            return Ok(None);
        }
        let case = draw(loaded, seed, &|briefing, hidden| judge.judge(briefing, hidden))?;
        let expected = cost_after_intake(&case, worlds.clone())?;
        cost.lower += expected.lower / CASES as f64;
        cost.upper += expected.upper / CASES as f64;
        done += 1;
        for (policy, rows) in Policy::ALL.into_iter().zip(&mut rows) {
            if !goes_on(Progress::Sessions(done, of)) {
                return Ok(None);
            }
            let row = session(&case, policy, &worlds, false)?;
            rows.push((f64::from(row.steps), row.cost(), row.outcome.is_right()));
            done += 1;
        }
    }
    let policies = Policy::ALL.into_iter().zip(&rows);
    let policies = policies.map(|(policy, rows)| worked(policy, rows)).collect();
    Ok(Some(Hardness { cost, entropy: Draws::of(loaded).bits, policies }))
}

fn worked(policy: Policy, rows: &[(f64, f64, bool)]) -> Worked {
    let costs = || rows.iter().map(|(_, cost, _)| *cost);
    Worked {
        policy,
        steps: rows.iter().map(|(steps, ..)| steps).sum::<f64>() / rows.len().max(1) as f64,
        cost: Bounds {
            lower: costs().fold(f64::INFINITY, f64::min),
            upper: costs().fold(0.0, f64::max),
        },
        right: rows.iter().map(|(_, _, is_right)| u64::from(*is_right)).sum(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::load::read_written;
    use crate::scenario::writing::starters::starters;
    use core::sync::atomic::{AtomicUsize, Ordering};

    #[test]
    fn limit_the_bounds_of_a_small_case_hold_and_it_stops_when_told() {
        let text = starters()[0].text;
        let loaded = Arc::new(read_written("small", text, None).unwrap());
        let asked = AtomicUsize::new(0);
        let stops = |progress: Progress| {
            let begins = matches!(progress, Progress::Sessions(..));
            asked.fetch_add(usize::from(begins), Ordering::Relaxed) < 2
        };
        assert_eq!(hardness(&loaded, &WorldStore::none(), &stops).unwrap(), None);
        assert_eq!(asked.load(Ordering::Relaxed), 3);
        let found = hardness(&loaded, &WorldStore::none(), &|_| true).unwrap().unwrap();
        assert!(found.cost.lower > 0.0 && found.cost.lower <= found.cost.upper, "{found:?}");
        let of = |policy| *found.policies.iter().find(|worked| worked.policy == policy).unwrap();
        let planner = of(Policy::Planner);
        assert_eq!(planner.right, CASES);
        assert!(planner.steps > 3.0 && planner.cost.lower <= planner.cost.upper, "{planner:?}");
    }
}
