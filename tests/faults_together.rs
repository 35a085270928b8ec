//! Every entry of every carried scenario can be dealt, worked and replayed; repairing all of it makes
//! the vehicle sound, and repairing one of two does not where the other alone gives symptoms.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::assessment::debrief::{Debrief, debrief};
use faultwright::assessment::mark::About;
use faultwright::assessment::rubric::MarkCategory;
use faultwright::faults::{Fault, FaultKind, FaultName};
use faultwright::reasoning::belief::{Belief, shares};
use faultwright::reasoning::remedy::Remedy;
use faultwright::reasoning::review::chance;
use faultwright::reasoning::world::Worlds;
use faultwright::scenario::deal::{deal, deal_again, record_of};
use faultwright::scenario::draw::{Drawn, DrawnDecoys, any_case, attempt_streams, draw, hidden_of};
use faultwright::scenario::load::{Loaded, ScenarioText, load, read};
use faultwright::scenario::suppose::suppositions;
use faultwright::session::attempt::Session;
use faultwright::session::event::Event;
use faultwright::session::journal::Journal;
use faultwright::session::kept::KeptSession;
use faultwright::session::step::{Ending, KeyPosition, Manner, Step};
use faultwright::vehicle::spec::{Id, PartKind, VehicleSpec};
use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;

/// Random severities that each entry is tried at.
const TRIES: u64 = 2;

/// The first scenario that the program carries, and those in which faults come together.
fn carried() -> Vec<Arc<Loaded>> {
    let all = ScenarioText::carried().into_iter().map(|text| Arc::new(read(text).unwrap()));
    let together = |loaded: &Loaded| loaded.scenario.faults.iter().any(|it| !it.also.is_empty());
    all.enumerate().filter(|(at, it)| *at == 0 || together(it)).map(|(_, it)| it).collect()
}

/// The scenario with one entry alone.
fn with_entry_alone(loaded: &Loaded, number: usize) -> Arc<Loaded> {
    let mut scenario = loaded.scenario.clone();
    scenario.faults = vec![scenario.faults[number].clone()];
    scenario.no_fault = 0.0;
    // What the program writes it also reads.
    let scenario_text = ron::to_string(&scenario).unwrap();
    Arc::new(read(ScenarioText { scenario_text, ..loaded.text.clone() }).unwrap())
}

fn begin(loaded: &Loaded, faults: &[Fault], seed: u64) -> Session {
    let briefing = Arc::new(loaded.briefing());
    let drawn = Drawn { faults: faults.to_vec(), decoys: DrawnDecoys::default() };
    let hidden = hidden_of(&briefing, &drawn, attempt_streams(seed, 0));
    assert_eq!(hidden.faults, faults);
    Session::begin(briefing, hidden).unwrap()
}

fn take(session: &mut Session, step: &Step) {
    let events = session.take(step).unwrap();
    let refused = events.iter().find(|event| matches!(event, Event::Refused { .. }));
    assert!(refused.is_none(), "{step:?}: {refused:?}");
}

/// Repairs a fault by the first of its remedies, puts everything back and clears the codes.
fn repair(session: &mut Session, fault: &FaultName) {
    let briefing = Arc::clone(session.briefing());
    let remedy = Remedy::of(fault).remove(0);
    for step in remedy.steps(&briefing, session.vehicle_in_sight()) {
        take(session, &step);
    }
    put_back(session);
    for step in [
        Step::Key { position: KeyPosition::On },
        Step::ClearCodes,
        Step::Key { position: KeyPosition::Off },
    ] {
        take(session, &step);
    }
}

/// Puts back what is off: what lies deepest first.
fn put_back(session: &mut Session) {
    fn depth(spec: &VehicleSpec, part: &Id) -> usize {
        let behind = &spec.part(part).unwrap().behind;
        behind.iter().map(|before| 1 + depth(spec, before)).max().unwrap_or(0)
    }
    let spec = session.briefing().vehicle.clone();
    let mut off: Vec<Id> = session.parts_off().cloned().collect();
    off.sort_by_key(|part| std::cmp::Reverse(depth(&spec, part)));
    for part in off {
        let kind = spec.part(&part).unwrap().kind;
        let step = match kind {
            PartKind::Connector => Step::Plug { connector: part },
            _ => Step::Refit { new_seal: kind == PartKind::Valve, part },
        };
        take(session, &step);
    }
}

fn comes_back(session: &Session) -> bool {
    session.aftermath().unwrap().comes_back()
}

#[test]
fn prop_every_entry_is_dealt_replayed_and_mended_by_all_of_its_repairs() {
    for loaded in carried() {
        for number in 0..loaded.scenario.faults.len() {
            let names = loaded.scenario.faults[number].names();
            let alone = with_entry_alone(&loaded, number);
            for seed in 0..TRIES {
                let case = draw(&alone, seed, &any_case).unwrap();
                let faults = &case.hidden.faults;
                assert_eq!(faults.iter().map(|f| f.name.clone()).collect::<Vec<_>>(), names);

                let begin = |hidden| Session::begin(Arc::clone(&case.briefing), hidden).unwrap();
                let mut session = begin(case.hidden.clone());
                let mut again = begin(case.hidden.clone());
                assert_eq!(session.digest(), again.digest());
                for name in &names {
                    repair(&mut session, name);
                }
                assert!(!comes_back(&session), "{faults:?} seed {seed}: all mended");
                for entry in session.log() {
                    assert_eq!(again.take(&entry.step).unwrap(), entry.events);
                }
                assert_eq!(session.digest(), again.digest());
            }
        }
    }
}

#[test]
fn prop_half_a_repair_leaves_what_the_other_half_shows() {
    let mut with_symptoms = 0;
    for loaded in carried() {
        for number in 0..loaded.scenario.faults.len() {
            if loaded.scenario.faults[number].also.is_empty() {
                continue;
            }
            let alone = with_entry_alone(&loaded, number);
            for seed in 0..TRIES {
                let faults = draw(&alone, seed, &any_case).unwrap().hidden.faults;
                for (number, mended) in faults.iter().enumerate() {
                    let mut rest = faults.clone();
                    rest.remove(number);
                    if !begin(&loaded, &rest, seed).has_complaint() {
                        continue;
                    }
                    with_symptoms += 1;
                    let mut session = begin(&loaded, &faults, seed);
                    repair(&mut session, &mended.name);
                    assert!(comes_back(&session), "{faults:?} with only {mended:?} mended");
                }
            }
        }
    }
    assert!(with_symptoms > 10, "{with_symptoms}");
}

/// Seeds of the harder scenario that deal two faults each.
const PAIRS: [u64; 2] = [2, 7];

fn harder() -> Arc<Loaded> {
    Arc::new(load(Path::new("glasshouse-lane")).unwrap())
}

#[test]
fn replay_a_kept_session_of_two_faults_is_dealt_and_taken_again() {
    let loaded = harder();
    for seed in PAIRS {
        let case = deal(&loaded, seed).unwrap();
        assert_eq!(case.hidden.faults.len(), 2, "{:?}", case.hidden.faults);
        let folder =
            std::env::temp_dir().join(format!("faultwright-{}-{seed}", std::process::id()));
        std::fs::create_dir_all(&folder).unwrap();
        let path = folder.join("together.session");
        let session = Session::begin(Arc::clone(&case.briefing), case.hidden.clone()).unwrap();
        let mut kept = KeptSession::create(&path, &record_of(&case), session).unwrap();
        for step in [
            Step::Dipstick,
            Step::Key { position: KeyPosition::On },
            Step::ReadCodes,
            Step::Key { position: KeyPosition::Off },
        ] {
            kept.take(&step).unwrap();
        }
        let digest = kept.session().digest();
        drop(kept);
        let (journal, recorded) = Journal::resume(&path).unwrap();
        let again = deal_again(&recorded.case).unwrap();
        assert_eq!(again.hidden, case.hidden);
        let session = Session::begin(Arc::clone(&again.briefing), again.hidden).unwrap();
        let kept = KeptSession::resume(journal, &recorded.entries, session).unwrap();
        assert_eq!(kept.session().digest(), digest);
        drop(kept);
        std::fs::remove_dir_all(&folder).unwrap();
    }
}

fn name(kind: FaultKind, place: &str) -> FaultName {
    FaultName { kind, place: Id::from(place) }
}

/// The worlds of an open coil with a corroded contact beside it, of each alone as far as the
/// scenario has it, and of a spread terminal in the same connector.
fn few_worlds(loaded: &Loaded) -> Worlds {
    let wanted = [
        vec![
            name(FaultKind::OpenCoil, "exhaust-valve"),
            name(FaultKind::CorrodedPin, "exhaust-feed-pin"),
        ],
        vec![name(FaultKind::SpreadTerminal, "exhaust-feed-pin")],
        vec![name(FaultKind::CorrodedPin, "exhaust-control-pin")],
    ];
    let chosen: Vec<_> = suppositions(loaded)
        .into_iter()
        .filter(|supposed| supposed.variant == 0 && wanted.contains(&supposed.faults))
        .collect();
    assert!(chosen.len() >= 6, "{}", chosen.len());
    Worlds::begin(&Arc::new(loaded.briefing()), &chosen, &|_, _| {}).unwrap()
}

/// Opens up, tests coil and contact, mends what is named, proves, and hands over.
fn worked(loaded: &Loaded, faults: &[Fault], mended: &[FaultName]) -> (Session, Debrief) {
    let mut session = begin(loaded, faults, 3);
    let off = ["engine-cover", "duct-clamp", "air-duct"];
    let suspect = |kind, place| Step::Suspect { fault: name(kind, place), percent: 50 };
    for step in off
        .map(|part| Step::Remove { part: Id::from(part), manner: Manner::Careful })
        .into_iter()
        .chain([
            Step::Unplug { connector: Id::from("exhaust-connector") },
            Step::Look { place: Id::from("exhaust-feed-pin") },
            Step::Look { place: Id::from("exhaust-control-pin") },
            Step::Measure {
                function: faultwright::instruments::multimeter::MeterFunction::Ohms,
                red: Id::from("exhaust-valve-feed"),
                black: Id::from("exhaust-valve-control"),
            },
            suspect(FaultKind::OpenCoil, "exhaust-valve"),
            suspect(FaultKind::CorrodedPin, "exhaust-feed-pin"),
            Step::Commit { fault: Some(name(FaultKind::OpenCoil, "exhaust-valve")) },
            Step::AskApproval,
        ])
    {
        take(&mut session, &step);
    }
    for fault in mended {
        repair(&mut session, fault);
    }
    take(&mut session, &Step::HandOver { ending: Ending::Repaired });
    let rubric = &loaded.scenario.rubric;
    let judged =
        debrief(&session, faults.to_vec(), few_worlds(loaded), rubric, &|_, _| {}).unwrap();
    (session, judged)
}

fn share(judged: &Debrief, category: MarkCategory) -> f64 {
    judged.marks.iter().find(|mark| mark.category == category).unwrap().share
}

/// What the debrief says of each part.
fn parts(judged: &Debrief) -> Vec<bool> {
    judged
        .marks
        .iter()
        .flat_map(|mark| &mark.remarks)
        .filter_map(|remark| match remark.about {
            About::Part { is_mended, .. } => {
                assert_eq!(remark.good, is_mended);
                Some(is_mended)
            }
            _ => None,
        })
        .collect()
}

#[test]
fn limit_both_parts_earn_the_mark_for_the_repair_and_one_does_not() {
    let loaded = harder();
    let faults = [
        Fault { name: name(FaultKind::OpenCoil, "exhaust-valve"), severity: 0.5 },
        Fault { name: name(FaultKind::CorrodedPin, "exhaust-feed-pin"), severity: 0.5 },
    ];
    let names = faults.each_ref().map(|fault| fault.name.clone());
    let (_, both) = worked(&loaded, &faults, &names);
    assert_eq!(parts(&both), [true, true]);
    assert!((share(&both, MarkCategory::Repair) - 1.0).abs() < 1e-12, "{:?}", both.marks);
    // Both are known by then: whoever shares the confidence between them is right.
    assert!(share(&both, MarkCategory::Calibration) > 0.95, "{:?}", both.marks);
    // No part of the truth was fitted without evidence.
    assert!(both.marks.iter().flat_map(|mark| &mark.remarks).all(|remark| match remark.about {
        About::Repair { chance } => chance > 0.9 && remark.good,
        _ => true,
    }));
    let (_, half) = worked(&loaded, &faults, &names[..1]);
    assert_eq!(parts(&half), [true, false]);
    assert!(share(&half, MarkCategory::Repair) < 1e-12);
    assert!(half.aftermath.comes_back() && !half.passed);
    // One fault alone is marked as it always was.
    let (_, single) = worked(&loaded, &faults[..1], &names[..1]);
    assert!(parts(&single).is_empty());
}

/// Oil that is worn out lights no lamp by itself: whoever cleans the screen and leaves the oil has a
/// content customer for the moment, and half a job.
#[test]
fn limit_half_a_job_with_a_content_customer_has_half_the_mark() {
    let loaded = harder();
    let faults = [
        Fault { name: name(FaultKind::BlockedScreen, "intake-valve"), severity: 0.6 },
        Fault { name: name(FaultKind::WornOutOil, "sump"), severity: 0.5 },
    ];
    let chosen: Vec<_> = suppositions(&loaded)
        .into_iter()
        .filter(|s| s.variant == 0 && s.faults.iter().any(|f| f.place == *"intake-valve"))
        .collect();
    let marks = [1, 2].map(|done| {
        let mut session = begin(&loaded, &faults, 5);
        for step in [Step::Dipstick, Step::AskApproval] {
            take(&mut session, &step);
        }
        for step in
            Remedy::of(&faults[0].name)[0].steps(session.briefing(), session.vehicle_in_sight())
        {
            if matches!(step, Step::Clean { .. }) {
                take(&mut session, &Step::Look { place: Id::from("intake-valve") });
                take(&mut session, &Step::Commit { fault: Some(faults[0].name.clone()) });
            }
            take(&mut session, &step);
        }
        put_back(&mut session);
        for fault in &faults[1..done] {
            repair(&mut session, &fault.name);
        }
        for position in [KeyPosition::On, KeyPosition::Off] {
            take(&mut session, &Step::Key { position });
            if position == KeyPosition::On {
                take(&mut session, &Step::ClearCodes);
            }
        }
        take(&mut session, &Step::HandOver { ending: Ending::Repaired });
        let worlds = Worlds::begin(session.briefing(), &chosen, &|_, _| {}).unwrap();
        let rubric = &loaded.scenario.rubric;
        let judged = debrief(&session, faults.to_vec(), worlds, rubric, &|_, _| {}).unwrap();
        assert!(!judged.aftermath.comes_back(), "{done} mended: {:?}", judged.aftermath);
        share(&judged, MarkCategory::Repair)
    });
    assert!((marks[0] - 0.5).abs() < 1e-12 && (marks[1] - 1.0).abs() < 1e-12, "{marks:?}");
}

#[test]
fn conserves_the_belief_when_it_is_shared_between_faults_that_come_together() {
    let loaded = harder();
    let belief = Belief::prior(few_worlds(&loaded));
    let (whole, shared) = (belief.by_hypothesis(), belief.by_fault());
    for sums in [whole.values().sum::<f64>(), shared.values().sum()] {
        assert!((sums - 1.0).abs() < 1e-12, "{sums}");
    }
    let pair = whole.iter().find(|(faults, _)| faults.len() == 2).unwrap();
    for fault in pair.0 {
        assert!((shared[&Some(fault.clone())] - pair.1 / 2.0).abs() < 1e-12);
    }
    // A repair of either part has at least the chance of the pair: renewing the valve no more, while
    // mending the contact takes a spread terminal away too.
    let [coil, contact] = &pair.0[..] else { panic!("{pair:?}") };
    assert!((chance(&whole, &Remedy::of(coil)[0]) - pair.1).abs() < 1e-12);
    let spread = whole[&vec![name(FaultKind::SpreadTerminal, "exhaust-feed-pin")]];
    assert!((chance(&whole, &Remedy::of(contact)[0]) - pair.1 - spread).abs() < 1e-12);
    assert_eq!(shares(&BTreeMap::new()), BTreeMap::new());
}

#[test]
fn closed_form_the_repairs_of_several_faults_are_one_of_each() {
    let (spool, coil, oil, low) = (
        name(FaultKind::StickingSpool, "intake-valve"),
        name(FaultKind::OpenCoil, "exhaust-valve"),
        name(FaultKind::WornOutOil, "sump"),
        name(FaultKind::LowOil, "sump"),
    );
    assert_eq!(Remedy::of_all(&[]), []);
    assert_eq!(Remedy::of_all(core::slice::from_ref(&spool)), Remedy::of(&spool));
    let ways = Remedy::of_all(&[spool.clone(), oil.clone()]);
    assert_eq!(ways.len(), 2, "cleaned or renewed, and the oil changed: {ways:?}");
    for way in &ways {
        assert!(way.fixes_all(&[spool.clone(), oil.clone()]) && !way.fixes(&coil));
    }
    // Fresh oil is also enough oil, but more oil is not fresh oil.
    assert!(Remedy::ChangeOil.fixes(&low) && !Remedy::TopUp.fixes(&oil));
    // The cover comes off once for both.
    let loaded = harder();
    let session = begin(&loaded, &[], 1);
    let both = Remedy::of_all(&[spool, coil]).remove(0);
    let steps = both.steps(session.briefing(), session.vehicle_in_sight());
    let cover = Step::Remove { part: Id::from("engine-cover"), manner: Manner::Careful };
    assert_eq!(steps.iter().filter(|step| **step == cover).count(), 1);
    let mut worked = session;
    for step in &steps {
        take(&mut worked, step);
    }
}
