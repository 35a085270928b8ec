//! What other steps would have told and read, on a handful of worlds of the carried scenario.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::faults::FaultKind;
use faultwright::instruments::multimeter::MeterFunction;
use faultwright::reasoning::belief::Belief;
use faultwright::reasoning::foresight::{Foresight, entropy, foresee};
use faultwright::reasoning::onlooker::Onlooker;
use faultwright::reasoning::what_if::NoWay;
use faultwright::reasoning::world::Worlds;
use faultwright::scenario::{load, suppose};
use faultwright::session::attempt::Session;
use faultwright::session::counterfactual::{NoMoment, before_step};
use faultwright::session::event::Event;
use faultwright::session::setup::{Briefing, Hidden};
use faultwright::session::step::{Ending, KeyPosition, Manner, Step};
use faultwright::vehicle::spec::Id;
use proptest::prelude::*;
use std::sync::{Arc, OnceLock};

struct Bench {
    briefing: Arc<Briefing>,
    /// An open coil, a wire against ground and a sticking spool of the intake side, one severity each.
    worlds: Worlds,
    open_coil: Hidden,
}

fn bench() -> &'static Bench {
    static BENCH: OnceLock<Bench> = OnceLock::new();
    BENCH.get_or_init(|| {
        let loaded = load::demo().unwrap();
        let briefing = Arc::new(loaded.briefing());
        let all = suppose::suppositions(&loaded);
        let chosen: Vec<_> = [
            (FaultKind::OpenCoil, "intake-valve"),
            (FaultKind::WireToGround, "intake-control-wire"),
            (FaultKind::StickingSpool, "intake-valve"),
        ]
        .into_iter()
        .map(|(kind, place)| {
            let is_wanted = |faults: &[faultwright::faults::FaultName]| {
                faults.first().is_some_and(|fault| fault.kind == kind && fault.place == *place)
            };
            all.iter().rfind(|it| it.variant == 0 && is_wanted(&it.faults)).cloned().unwrap()
        })
        .collect();
        let worlds = Worlds::begin(&briefing, &chosen, &|_, _| {}).unwrap();
        assert_eq!(worlds.worlds.len(), 3);
        Bench { worlds, open_coil: chosen[0].hidden.clone(), briefing }
    })
}

/// The worlds with other weights.
fn worlds(weights: [f64; 3]) -> Worlds {
    let mut worlds = bench().worlds.clone();
    let total: f64 = weights.iter().sum();
    worlds.priors = weights.iter().map(|weight| weight / total).collect();
    worlds
}

fn ohms(red: &str, black: &str) -> Step {
    Step::Measure { function: MeterFunction::Ohms, red: Id::from(red), black: Id::from(black) }
}

fn winding() -> Step {
    ohms("intake-valve-feed", "intake-valve-control")
}

/// To the pins of the intake valve and its winding.
fn to_winding() -> Vec<Step> {
    vec![
        Step::Remove { part: Id::from("engine-cover"), manner: Manner::Careful },
        Step::Unplug { connector: Id::from("intake-connector") },
        winding(),
    ]
}

fn told(weights: [f64; 3], steps: &[Step]) -> Foresight {
    foresee(&Belief::prior(worlds(weights)), steps).unwrap()
}

/// Two causes that are alike in chance and differ in the winding: asked of it, one bit is told, all that
/// was open, and each outcome leaves one of them.
#[test]
fn closed_form_a_fair_split_in_two_is_one_bit() {
    let foresight = told([1.0, 1.0, 0.0], &to_winding());
    assert!((foresight.uncertain - 1.0).abs() < 1e-12, "{foresight:?}");
    assert!((foresight.bits - 1.0).abs() < 1e-12, "{foresight:?}");
    assert_eq!(foresight.outcomes.len(), 2);
    for outcome in &foresight.outcomes {
        assert!((outcome.chance - 0.5).abs() < 1e-12);
        assert!(entropy(&outcome.after) < 1e-12, "{outcome:?}");
    }
    let uneven = told([3.0, 1.0, 0.0], &to_winding());
    assert!((uneven.bits - 0.811_278_124_459).abs() < 1e-9, "{}", uneven.bits);
}

/// What is certain beforehand tells nothing: a test that shows the same whatever is wrong, and any test
/// where one cause is left.
#[test]
fn closed_form_a_certain_outcome_tells_nothing() {
    let same = told([1.0, 0.0, 1.0], &[Step::Dipstick]);
    assert!(same.bits.abs() < 1e-12 && same.outcomes.len() == 1, "{same:?}");
    assert!((same.uncertain - 1.0).abs() < 1e-12);
    let known = told([1.0, 0.0, 0.0], &to_winding());
    assert!(known.bits.abs() < 1e-12 && known.uncertain.abs() < 1e-12, "{known:?}");
    let opened = told([1.0, 1.0, 1.0], &to_winding()[..1]);
    assert!(opened.bits.abs() < 1e-12, "taking a cover off shows nothing: {opened:?}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn prop_chances_sum_to_one_and_beliefs_after_average_to_the_belief_before(
        weights in (0.01..1.0_f64, 0.01..1.0_f64, 0.01..1.0_f64),
        which in 0..3_usize,
    ) {
        let steps = [
            to_winding(),
            vec![Step::Key { position: KeyPosition::On }, Step::ReadCodes],
            vec![Step::Dipstick],
        ];
        let belief = Belief::prior(worlds([weights.0, weights.1, weights.2]));
        let foresight = foresee(&belief, &steps[which]).unwrap();
        let sum: f64 = foresight.outcomes.iter().map(|outcome| outcome.chance).sum();
        prop_assert!((sum - 1.0).abs() < 1e-12);
        for (faults, before) in belief.by_hypothesis() {
            let after: f64 = foresight
                .outcomes
                .iter()
                .map(|it| it.chance * it.after.get(&faults).copied().unwrap_or(0.0))
                .sum();
            prop_assert!((after - before).abs() < 1e-12, "{faults:?}: {before} and {after}");
        }
        prop_assert!(foresight.bits >= 0.0 && foresight.bits <= foresight.uncertain);
    }
}

fn session(steps: &[Step]) -> Session {
    let mut session = begun();
    for step in steps {
        session.take(step).unwrap();
    }
    session
}

fn begun() -> Session {
    Session::begin(Arc::clone(&bench().briefing), bench().open_coil.clone()).unwrap()
}

fn finished() -> Session {
    let mut steps = vec![
        Step::Dipstick,
        Step::Key { position: KeyPosition::On },
        Step::ReadCodes,
        Step::Key { position: KeyPosition::Off },
    ];
    steps.extend(to_winding());
    steps.push(Step::HandOver { ending: Ending::Referred });
    session(&steps)
}

/// Whoever goes back to a moment and does what was done reads what was read.
#[test]
fn replay_the_step_that_was_taken_would_have_shown_what_it_showed() {
    let finished = finished();
    for (place, entry) in finished.log().iter().enumerate() {
        let then = before_step(&finished, begun(), place + 1).unwrap();
        let digest = then.digest();
        let would = then.would_follow(std::slice::from_ref(&entry.step)).unwrap();
        assert_eq!(would[0].events, entry.events, "step {}", place + 1);
        assert_eq!(then.digest(), digest, "looking changes nothing");
    }
    let then = before_step(&finished, begun(), 1).unwrap();
    let read = then.would_follow(&to_winding()).unwrap();
    assert_eq!(read[2].events, finished.log()[6].events);
}

#[test]
fn limit_only_a_finished_session_has_moments_and_only_its_own() {
    let open = session(&[Step::Dipstick]);
    let refused = before_step(&open, begun(), 1).unwrap_err();
    assert_eq!(refused, NoMoment::Unfinished { steps: 1 });
    let finished = finished();
    let steps = finished.log().len();
    for asked in [0, steps + 1] {
        let refused = before_step(&finished, begun(), asked).unwrap_err();
        assert_eq!(refused, NoMoment::NoSuchStep { asked, steps });
    }
}

fn onlooker(until: usize) -> Onlooker {
    let mut onlooker = Onlooker::new(&bench().briefing, worlds([1.0, 1.0, 1.0]));
    onlooker.follow(finished().log(), until).unwrap();
    assert_eq!(onlooker.seen(), until);
    onlooker
}

/// What is in the way of a test is taken off first, and the expert's own choice has no regret.
#[test]
fn limit_the_way_is_found_and_the_best_is_not_worse_than_the_best() {
    let mut onlooker = onlooker(1);
    let alternative = onlooker.what_if(&[winding()]).unwrap();
    assert_eq!(alternative.steps, to_winding());
    assert!(!alternative.is_repeat && alternative.foresight.bits > 0.5, "{alternative:?}");
    let choices = onlooker.choices().unwrap();
    let best = choices.ranked.iter().find(|it| it.proposal == choices.best);
    assert!(best.unwrap().regret.lower <= 0.0, "{best:?}");
    let mut last = 0.0;
    for ranked in &choices.ranked {
        assert!(ranked.total.lower <= ranked.total.upper + 1e-9 && ranked.total.upper >= last);
        last = ranked.total.upper;
        assert!(ranked.total.upper + 1e-6 >= choices.value.lower, "{ranked:?}");
    }
    assert!(choices.ranked.len() > 20);
}

#[test]
fn limit_the_same_reading_again_tells_nothing() {
    let mut onlooker = onlooker(7);
    let alternative = onlooker.what_if(&[winding()]).unwrap();
    assert!(alternative.is_repeat && alternative.foresight.bits.abs() < 1e-12);
    let made = onlooker.choices().unwrap();
    assert!(made.made >= 1);
    assert!(made.ranked.iter().all(|it| it.steps != [winding()]));
}

#[test]
fn limit_a_step_that_no_way_leads_to_is_refused_with_its_reason() {
    let mut onlooker = onlooker(1);
    let step = Step::Plug { connector: Id::from("intake-connector") };
    let refused = onlooker.what_if(std::slice::from_ref(&step)).unwrap_err();
    assert!(matches!(refused, NoWay::Refused { step: it, .. } if *it == step));
    // What the meter shows on a live circuit is shown as ever.
    let key = Step::Key { position: KeyPosition::On };
    let live = onlooker.what_if(&[key, ohms("battery-plus", "battery-minus")]);
    assert!(live.unwrap().steps.len() >= 2);
    let lamp = |events: &[Event]| events.iter().any(|it| matches!(it, Event::Refused { .. }));
    let shown = onlooker.what_if(&[Step::ReadCodes]).unwrap();
    assert_eq!(shown.steps[0], Step::Key { position: KeyPosition::On });
    assert!(shown.foresight.outcomes.iter().all(|outcome| !lamp(&outcome.events)));
}
