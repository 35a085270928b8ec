//! The expert on a handful of worlds of the scenario that the program carries.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::faults::{FaultKind, FaultName};
use faultwright::instruments::multimeter::MeterFunction;
use faultwright::reasoning::belief::Belief;
use faultwright::reasoning::expert::{Expert, Proposal};
use faultwright::reasoning::remedy::Remedy;
use faultwright::reasoning::world::Worlds;
use faultwright::scenario::{load, suppose};
use faultwright::session::attempt::{Entry, Session};
use faultwright::session::setup::{Briefing, Hidden};
use faultwright::session::step::{KeyPosition, Manner, Step};
use faultwright::vehicle::spec::Id;
use std::sync::{Arc, OnceLock};

struct Bench {
    briefing: Arc<Briefing>,
    worlds: Worlds,
    /// Hidden state of an open intake coil, and of a broken intake control wire.
    open_coil: Hidden,
    broken_wire: Hidden,
}

/// Four faults of the intake side without the other winding: enough to tell apart, few enough to
/// be begun in a moment.
fn bench() -> &'static Bench {
    static BENCH: OnceLock<Bench> = OnceLock::new();
    BENCH.get_or_init(|| {
        let loaded = load::demo().unwrap();
        let briefing = Arc::new(loaded.briefing());
        let wanted = [
            (FaultKind::OpenCoil, "intake-valve"),
            (FaultKind::BrokenWire, "intake-control-wire"),
            (FaultKind::CorrodedPin, "intake-control-pin"),
            (FaultKind::StickingSpool, "intake-valve"),
        ];
        let chosen: Vec<_> = suppose::suppositions(&loaded)
            .into_iter()
            .filter(|supposition| supposition.variant == 0)
            .filter(|supposition| {
                supposition.faults.first().is_some_and(|fault| {
                    wanted.iter().any(|(kind, place)| fault.kind == *kind && fault.place == **place)
                })
            })
            .collect();
        let hidden = |kind| {
            chosen
                .iter()
                .find(|s| s.faults.first().is_some_and(|fault| fault.kind == kind))
                .map(|s| s.hidden.clone())
                .unwrap()
        };
        Bench {
            worlds: Worlds::begin(&briefing, &chosen, &|_, _| {}).unwrap(),
            open_coil: hidden(FaultKind::OpenCoil),
            broken_wire: hidden(FaultKind::BrokenWire),
            briefing,
        }
    })
}

fn session(hidden: &Hidden) -> Session {
    Session::begin(Arc::clone(&bench().briefing), hidden.clone()).unwrap()
}

fn ohms(red: &str, black: &str) -> Step {
    Step::Measure { function: MeterFunction::Ohms, red: Id::from(red), black: Id::from(black) }
}

fn opening() -> Vec<Step> {
    vec![
        Step::Remove { part: Id::from("engine-cover"), manner: Manner::Careful },
        Step::Unplug { connector: Id::from("intake-connector") },
    ]
}

/// Takes steps in a session and lets a belief learn from each.
fn learn(belief: &mut Belief, session: &mut Session, steps: &[Step]) {
    for step in steps {
        let events = session.take(step).unwrap();
        belief.learn(&Entry { step: step.clone(), events }).unwrap();
        let total: f64 = belief.by_fault().values().sum();
        assert!((total - 1.0).abs() < 1e-12, "{total} after {step:?}");
    }
}

fn chance(belief: &Belief, kind: FaultKind) -> f64 {
    belief
        .by_fault()
        .iter()
        .filter(|(fault, _)| fault.as_ref().is_some_and(|fault| fault.kind == kind))
        .map(|(_, weight)| weight)
        .sum()
}

#[test]
fn conserves_the_whole_belief_and_moves_it_to_the_truth() {
    for (hidden, kind, last) in [
        (
            &bench().open_coil,
            FaultKind::OpenCoil,
            ohms("intake-valve-feed", "intake-valve-control"),
        ),
        (
            &bench().broken_wire,
            FaultKind::BrokenWire,
            ohms("intake-harness-control", "battery-minus"),
        ),
    ] {
        let mut belief = Belief::prior(bench().worlds.clone());
        let mut session = session(hidden);
        let before = chance(&belief, kind);
        learn(&mut belief, &mut session, &opening());
        assert!((chance(&belief, kind) - before).abs() < 1e-12, "opening up tells nothing");
        learn(&mut belief, &mut session, &[last]);
        assert!(chance(&belief, kind) > 0.9, "{:?}", belief.by_fault());
    }
}

#[test]
fn limit_the_order_of_independent_readings_does_not_matter() {
    let first = ohms("intake-valve-feed", "intake-valve-control");
    let second = ohms("intake-harness-control", "battery-minus");
    let beliefs = [[&first, &second], [&second, &first]].map(|order| {
        let mut belief = Belief::prior(bench().worlds.clone());
        let mut session = session(&bench().broken_wire);
        learn(&mut belief, &mut session, &opening());
        learn(&mut belief, &mut session, &order.map(Clone::clone));
        belief.by_fault()
    });
    for (fault, weight) in &beliefs[0] {
        assert!((weight - beliefs[1][fault]).abs() < 1e-9, "{fault:?}");
    }
}

#[test]
fn limit_the_same_reading_again_tells_nothing_new() {
    let reading = ohms("intake-harness-control", "battery-minus");
    let mut belief = Belief::prior(bench().worlds.clone());
    let mut session = session(&bench().broken_wire);
    learn(&mut belief, &mut session, &opening());
    learn(&mut belief, &mut session, std::slice::from_ref(&reading));
    let once = belief.by_fault();
    learn(&mut belief, &mut session, &[reading]);
    assert_eq!(belief.by_fault(), once);
}

#[test]
fn limit_what_nobody_foresaw_ends_no_hypothesis() {
    let mut belief = Belief::prior(bench().worlds.clone());
    let step = ohms("intake-valve-feed", "intake-valve-control");
    // Over limit from a fuse that no world has blown, with one aspect more than any world shows.
    let events = vec![
        faultwright::session::event::Event::MeterFuseBlew,
        faultwright::session::event::Event::LeadFuseBlew,
    ];
    belief.learn(&Entry { step, events }).unwrap();
    assert!(belief.by_fault().values().all(|weight| *weight > 0.0));
}

#[test]
fn closed_form_the_value_is_the_best_of_all_that_can_be_done() {
    let belief = Belief::prior(bench().worlds.clone());
    let mut expert = Expert::new(Arc::clone(&bench().briefing));
    let valuation = expert.value(&belief).unwrap();
    assert_eq!(valuation.by_probe.len(), expert.probes().len());
    let least = valuation.by_probe.iter().copied().fold(f64::INFINITY, f64::min);
    assert!(valuation.cost <= least + 1e-9);
    assert!(matches!(valuation.proposal, Proposal::Test(_)), "{:?}", valuation.proposal);
    assert!((valuation.cost - least).abs() < 1e-9, "the proposal is a test, so it is the least");
}

#[test]
fn limit_a_certain_belief_asks_for_the_repair_and_no_more_tests() {
    let mut belief = Belief::prior(bench().worlds.clone());
    let mut session = session(&bench().open_coil);
    learn(&mut belief, &mut session, &opening());
    learn(&mut belief, &mut session, &[ohms("intake-valve-feed", "intake-valve-control")]);
    let mut expert = Expert::new(Arc::clone(&bench().briefing));
    let valuation = expert.value(&belief).unwrap();
    let renew = Remedy::Renew(Id::from("intake-valve"));
    assert_eq!(valuation.proposal, Proposal::Repair(renew), "{:?}", belief.by_fault());
    // Shared removals are paid once: the cover and the connector are off already.
    let mut fresh = Expert::new(Arc::clone(&bench().briefing));
    let mut closed = Belief::prior(bench().worlds.clone());
    let mut other = self::session(&bench().open_coil);
    learn(&mut closed, &mut other, &opening());
    learn(&mut closed, &mut other, &[ohms("intake-valve-feed", "intake-valve-control")]);
    learn(
        &mut closed,
        &mut other,
        &[
            Step::Plug { connector: Id::from("intake-connector") },
            Step::Refit { part: Id::from("engine-cover"), new_seal: false },
        ],
    );
    assert!(fresh.value(&closed).unwrap().cost > valuation.cost);
}

#[test]
fn limit_a_repair_done_leaves_nothing_to_repair() {
    let mut belief = Belief::prior(bench().worlds.clone());
    let mut session = session(&bench().broken_wire);
    learn(&mut belief, &mut session, &opening());
    learn(&mut belief, &mut session, &[ohms("intake-harness-control", "battery-minus")]);
    learn(&mut belief, &mut session, &[Step::Mend { element: Id::from("intake-control-wire") }]);
    learn(
        &mut belief,
        &mut session,
        &[
            Step::Plug { connector: Id::from("intake-connector") },
            Step::Key { position: KeyPosition::On },
            Step::ClearCodes,
            Step::ReadCodes,
        ],
    );
    let left: f64 = belief
        .leading(usize::MAX)
        .into_iter()
        .filter(|(world, _)| !belief.faults_left(*world).is_empty())
        .map(|(_, weight)| weight)
        .sum();
    assert!(left < 0.01, "{left}");
    assert!(
        belief.by_fault().contains_key(&Some(FaultName {
            kind: FaultKind::BrokenWire,
            place: Id::from("intake-control-wire"),
        })),
        "the debrief still knows what it was"
    );
}
