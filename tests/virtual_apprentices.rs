//! Virtual apprentices at work: each finishes its cases by steps that a person could take.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::reasoning::world::Worlds;
use faultwright::scenario::draw::{any_case, draw};
use faultwright::scenario::load::{Loaded, demo};
use faultwright::scenario::suppose::suppositions;
use faultwright::session::attempt::Session;
use faultwright::session::event::Event;
use faultwright::virtual_apprentices::policy::Policy;
use faultwright::virtual_apprentices::work::work;
use std::sync::{Arc, OnceLock};

/// Cases that each policy works here; chosen before any was looked at.
const SEEDS: core::ops::RangeInclusive<u64> = 1..=12;

fn scenario() -> &'static Arc<Loaded> {
    static SCENARIO: OnceLock<Arc<Loaded>> = OnceLock::new();
    SCENARIO.get_or_init(|| Arc::new(demo().unwrap()))
}

fn worlds() -> &'static Worlds {
    static WORLDS: OnceLock<Worlds> = OnceLock::new();
    WORLDS.get_or_init(|| {
        let briefing = Arc::new(scenario().briefing());
        Worlds::begin(&briefing, &suppositions(scenario()), &|_, _| {}).unwrap()
    })
}

fn worked(policy: Policy, seed: u64) -> Session {
    let case = draw(scenario(), seed, &any_case).unwrap();
    let mut session = Session::begin(Arc::clone(&case.briefing), case.hidden).unwrap();
    let mut apprentice = policy.apprentice(&case.briefing, worlds(), seed);
    assert!(work(&mut session, apprentice.as_mut()).unwrap(), "{policy:?} never ends on {seed}");
    session
}

/// Nobody tries what cannot be done: a refused step would show that an apprentice does not see what
/// stands in front of it.
#[test]
fn verif_every_policy_hands_back_every_vehicle_by_steps_that_are_possible() {
    for policy in [Policy::RandomTester, Policy::PartsSwapper, Policy::ByTheBook, Policy::NearFirst]
    {
        for seed in SEEDS {
            let session = worked(policy, seed);
            for (number, entry) in session.log().iter().enumerate() {
                let refused = entry.events.iter().find(|e| matches!(e, Event::Refused { .. }));
                assert!(
                    refused.is_none(),
                    "{policy:?}, {seed}, {number}: {:?}: {refused:?}",
                    entry.step
                );
            }
            assert_eq!(session.parts_off().count(), 0, "{policy:?} leaves something off on {seed}");
        }
    }
}
