//! What a mark says of a session and why: predictions and their units, codes from elsewhere, tests that
//! could tell nothing, closing too early, the search after a repair that did not help.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::assessment::debrief::{Debrief, debrief};
use faultwright::assessment::mark::{About, Mark};
use faultwright::assessment::rubric::MarkCategory;
use faultwright::control_module::code::Code;
use faultwright::faults::{Fault, FaultKind, FaultName, apply};
use faultwright::instruments::multimeter::Multimeter;
use faultwright::reasoning::review::Redundant;
use faultwright::reasoning::world::{Supposition, Worlds};
use faultwright::scenario::load::{Loaded, demo};
use faultwright::scenario::suppose::suppositions;
use faultwright::session::attempt::Session;
use faultwright::session::event::{Event, Refusal};
use faultwright::session::setup::{Briefing, Hidden};
use faultwright::vehicle::condition::Condition;
use faultwright::vehicle::spec::Id;
use faultwright::wording::step_parser;
use std::sync::{Arc, OnceLock};

struct Bench {
    loaded: Loaded,
    briefing: Arc<Briefing>,
    worlds: Worlds,
    /// A session with a broken intake control wire, two codes from long ago and one that comes back.
    begun: Session,
}

fn name(kind: FaultKind, place: &str) -> FaultName {
    FaultName { kind, place: Id::from(place) }
}

fn truth() -> Fault {
    Fault { name: name(FaultKind::BrokenWire, "intake-control-wire"), severity: 0.6 }
}

fn code(text: &str) -> Code {
    text.parse().unwrap()
}

fn bench() -> &'static Bench {
    static BENCH: OnceLock<Bench> = OnceLock::new();
    BENCH.get_or_init(|| {
        let loaded = demo().unwrap();
        let briefing = Arc::new(loaded.briefing());
        let wanted: Vec<Supposition> = suppositions(&loaded)
            .into_iter()
            .filter(|supposed| {
                let opens = |name: &FaultName| {
                    matches!(
                        name.kind,
                        FaultKind::OpenCoil | FaultKind::CorrodedPin | FaultKind::BrokenWire
                    ) && name.place.as_str().starts_with("intake")
                };
                supposed.variant == 0 && supposed.faults.first().is_some_and(opens)
            })
            .collect();
        let worlds = Worlds::begin(&briefing, &wanted, &|_, _| {}).unwrap();
        let mut condition = Condition::sound(&briefing.vehicle);
        assert!(apply(&truth(), &briefing.vehicle, &mut condition));
        condition.present_elsewhere.insert(code("P0456"));
        let hidden = Hidden {
            condition,
            faults: vec![truth()],
            old_codes: vec![code("P0073")],
            meter: Multimeter::ideal(),
            seed: 0,
        };
        let begun = Session::begin(Arc::clone(&briefing), hidden).unwrap();
        Bench { loaded, briefing, worlds, begun }
    })
}

/// Takes steps written one a line; what followed from the last.
#[track_caller]
fn take(session: &mut Session, steps: &str) -> Vec<Event> {
    let mut last = Vec::new();
    for line in steps.lines().map(str::trim).filter(|line| !line.is_empty()) {
        let step = step_parser::parse(line, &bench().briefing).unwrap().unwrap();
        last = session.take(&step).unwrap();
        assert!(!last.iter().any(|e| matches!(e, Event::Refused { .. })), "{line}: {last:?}");
    }
    last
}

fn begin() -> Session {
    bench().begun.fork()
}

fn judge(session: &Session) -> Debrief {
    let bench = bench();
    let rubric = &bench.loaded.scenario.rubric;
    debrief(session, vec![truth()], bench.worlds.clone(), rubric, &|_, _| {}).unwrap()
}

fn mark(judged: &Debrief, category: MarkCategory) -> &Mark {
    judged.marks.iter().find(|mark| mark.category == category).unwrap()
}

/// The remarks of a mark with the steps that they are about, numbered from 1.
fn remarks(judged: &Debrief, category: MarkCategory) -> Vec<(Option<usize>, &About)> {
    let remarks = &mark(judged, category).remarks;
    remarks.iter().map(|remark| (remark.entry.map(|entry| entry + 1), &remark.about)).collect()
}

const LOOK_FIRST: &str = "dipstick\nkey on\nread codes\nread freeze-frame\nkey off\n";
const OPEN_UP: &str = "remove engine-cover\nunplug intake-connector\n";
const CLOSE_UP: &str = "plug intake-connector\nrefit engine-cover\n";
const PROVE: &str =
    "key on\nclear codes\nread codes\nkey off\ndrive test-hill\nkey on\nread codes\nkey off\n";

#[test]
fn closed_form_a_prediction_of_another_quantity_is_not_met_and_earns_nothing() {
    let mut session = begin();
    take(&mut session, LOOK_FIRST);
    take(&mut session, OPEN_UP);
    // The winding is sound; the number is right in all three.
    for said in ["8.8 to 9.7 ohms", "8.8 to 9.7 V", "20 to 30 kohms"] {
        take(&mut session, &format!("predict {said}"));
        take(&mut session, "measure ohms intake-valve-feed intake-valve-control");
    }
    take(&mut session, CLOSE_UP);
    take(&mut session, "hand over referred");
    let checked: Vec<Event> = session
        .log()
        .iter()
        .flat_map(|entry| entry.events.clone())
        .filter(|event| matches!(event, Event::PredictionChecked { .. }))
        .collect();
    let expected = [(true, false), (false, true), (false, false)]
        .map(|(met, other_quantity)| Event::PredictionChecked { met, other_quantity });
    assert_eq!(checked, expected);
    let judged = judge(&session);
    let about: Vec<&About> =
        remarks(&judged, MarkCategory::Reading).into_iter().map(|(_, about)| about).collect();
    assert!(about.contains(&&About::OtherQuantity), "{about:?}");
    // Half for sound readings; of the other half a met, a missed (0.75) and a worthless third.
    let share = mark(&judged, MarkCategory::Reading).share;
    assert!((share - (0.5 + 0.5 * 1.75 / 3.0)).abs() < 1e-12, "{share}");
}

#[test]
fn limit_a_sign_waits_for_the_test_of_its_kind() {
    let mut session = begin();
    take(&mut session, "predict click clear\npredict codes P0010\npredict codes none");
    // The last word counts, and a sound does not answer for a list.
    let heard = take(&mut session, "key on\ncommand exhaust-valve on");
    assert!(!heard.iter().any(|event| matches!(event, Event::SignChecked { .. })), "{heard:?}");
    let read = take(&mut session, "read codes");
    assert!(read.contains(&Event::SignChecked { met: false }), "{read:?}");
    take(&mut session, "command exhaust-valve off\npredict click clear");
    let heard = take(&mut session, "command exhaust-valve on");
    assert!(heard.contains(&Event::SignChecked { met: true }), "{heard:?}");
}

#[test]
fn limit_only_a_code_that_was_read_can_be_reported() {
    let mut session = begin();
    let report = step_parser::parse("report P0456", &bench().briefing).unwrap().unwrap();
    let refused = vec![Event::Refused { reason: Refusal::CodeNotRead(code("P0456")) }];
    assert_eq!(session.take(&report).unwrap(), refused);
    take(&mut session, "key on\nread codes\nkey off");
    assert_eq!(take(&mut session, "report P0456"), [Event::CodeReported { code: code("P0456") }]);
}

/// A founded repair, its proof in full, and as many reports as asked.
fn repaired(reports: &str) -> Session {
    let mut session = begin();
    take(&mut session, LOOK_FIRST);
    take(&mut session, "remove module-cover\nremove engine-cover\nunplug intake-connector");
    take(&mut session, "measure ohms intake-harness-control intake-module-control");
    take(&mut session, "suspect broken-wire intake-control-wire 97%");
    take(&mut session, "commit broken-wire intake-control-wire\nask approval");
    take(&mut session, "mend intake-control-wire\nplug intake-connector");
    take(&mut session, "refit engine-cover\nrefit module-cover");
    take(&mut session, PROVE);
    take(&mut session, reports);
    take(&mut session, "hand over");
    session
}

/// Five parts of the proof and, where codes from elsewhere were erased, the word to the customer as a
/// sixth of the same weight, of which each code is its part.
#[test]
fn closed_form_codes_that_are_erased_in_silence_lose_their_share_of_the_proof() {
    for (reports, share) in
        [("report P0456\nreport P0073", 1.0), ("report P0073", (5.0 + 0.5) / 6.0), ("", 5.0 / 6.0)]
    {
        let judged = judge(&repaired(reports));
        let proof = mark(&judged, MarkCategory::Proof);
        assert!((proof.share - share).abs() < 1e-12, "{reports}: {}", proof.share);
        for text in ["P0073", "P0456"] {
            let about = About::Unrelated { code: code(text), reported: reports.contains(text) };
            assert!(proof.remarks.iter().any(|remark| remark.about == about), "{about:?}");
        }
        assert!(judged.passed, "{:?} {}", judged.critical, judged.total);
    }
}

#[test]
fn limit_what_is_left_in_the_memory_or_never_seen_is_not_erased_in_silence() {
    let mut session = begin();
    take(&mut session, LOOK_FIRST);
    take(&mut session, "hand over referred");
    let told = |judged: &Debrief| {
        remarks(judged, MarkCategory::Proof)
            .iter()
            .filter(|(_, about)| matches!(about, About::Unrelated { .. }))
            .count()
    };
    assert_eq!(told(&judge(&session)), 0);
    let mut session = begin();
    take(&mut session, "key on\nclear codes\nhand over referred");
    assert_eq!(told(&judge(&session)), 0, "that is a breach of its own");
}

#[test]
fn verif_a_test_that_shows_the_same_everywhere_and_one_made_again_are_redundant() {
    let mut session = begin();
    take(&mut session, LOOK_FIRST);
    // Every world has a sound exhaust side and a charged battery.
    take(&mut session, "measure volts battery-plus battery-minus");
    take(&mut session, "look engine-bay\nremove engine-cover\nunplug intake-connector");
    take(&mut session, "measure ohms intake-valve-feed intake-valve-control");
    take(&mut session, "measure ohms intake-valve-feed intake-valve-control");
    take(&mut session, CLOSE_UP);
    take(&mut session, "hand over referred");
    let judged = judge(&session);
    let redundant: Vec<(usize, Redundant)> = judged
        .review
        .steps
        .iter()
        .filter_map(|step| Some((step.entry + 1, step.redundant?)))
        .collect();
    assert_eq!(redundant, [(6, Redundant::SameInEveryWorld), (11, Redundant::Repeated)]);
    let about = remarks(&judged, MarkCategory::TestChoice);
    assert!(
        about.iter().any(|(entry, about)| *entry == Some(11)
            && matches!(about, About::Redundant { is_repeated: true, cost } if *cost > 0.0)),
        "{about:?}"
    );
}

#[test]
fn verif_a_repair_at_a_low_chance_while_tests_are_worth_their_cost_is_too_early() {
    let mut session = begin();
    take(&mut session, LOOK_FIRST);
    take(&mut session, "commit open-coil intake-valve\nask approval");
    take(&mut session, OPEN_UP);
    take(&mut session, "remove intake-valve\nfit intake-valve hd-4470-1");
    take(&mut session, "refit intake-valve with new-seal");
    take(&mut session, CLOSE_UP);
    take(&mut session, "hand over");
    let judged = judge(&session);
    let about = remarks(&judged, MarkCategory::TestChoice);
    let early: Vec<_> = about
        .iter()
        .filter_map(|(entry, about)| match about {
            About::Premature { chance, price, .. } => Some((*entry, *chance, *price)),
            _ => None,
        })
        .collect();
    // The repair is named with its price, and the diagnosis before it not a second time.
    let [(Some(11), chance, Some((least, most)))] = early[..] else { panic!("{about:?}") };
    assert!(chance < 0.5 && 0.0 < least && least <= most, "{early:?}");
    let closed = remarks(&judged, MarkCategory::Proof);
    assert!(closed.contains(&(Some(session.log().len()), &About::ClosedUnproved)), "{closed:?}");
    // What it cost too much is taken once, by its regret, whatever is remarked of it.
    let regret = judged.review.total_regret();
    let share = mark(&judged, MarkCategory::TestChoice).share;
    let expected = (1.0 - regret / judged.review.value_at_start.upper).max(0.0);
    assert!((share - expected).abs() < 1e-12, "{share} {expected}");
}

/// The codes come back after a wrong repair, and what is done from there on is weighed on what is known
/// then: tests of what is left are, and the renewed valve is not suspected any more.
#[test]
fn verif_the_search_after_a_repair_that_did_not_help_is_weighed() {
    let mut session = begin();
    take(&mut session, LOOK_FIRST);
    take(&mut session, "commit open-coil intake-valve\nask approval");
    take(&mut session, OPEN_UP);
    take(&mut session, "remove intake-valve\nfit intake-valve hd-4470-1");
    take(&mut session, "refit intake-valve with new-seal");
    take(&mut session, CLOSE_UP);
    take(&mut session, "key on\nclear codes");
    let proof_ends = session.log().len();
    take(&mut session, "read codes\nkey off");
    take(&mut session, "remove module-cover");
    take(&mut session, OPEN_UP);
    take(&mut session, "measure ohms intake-harness-control intake-module-control");
    let measured = session.log().len() - 1;
    take(&mut session, "commit broken-wire intake-control-wire\nmend intake-control-wire");
    let mended = session.log().len() - 1;
    take(&mut session, CLOSE_UP);
    take(&mut session, "refit module-cover");
    take(&mut session, PROVE);
    take(&mut session, "hand over");
    let review = judge(&session).review;
    let renewed = review.steps.iter().position(|step| step.left != step.before).unwrap();
    let proving = &review.steps[renewed..proof_ends];
    assert!(proving.iter().all(|step| step.regret.is_none()), "a proof is a duty");
    let regret = review.steps[measured].regret.expect("the search is weighed again");
    assert!(!regret.is_wide && regret.lower < 5.0, "{regret:?}");
    let coil = vec![name(FaultKind::OpenCoil, "intake-valve")];
    assert!(!review.steps[measured].left.contains_key(&coil), "it was renewed");
    let wire = vec![truth().name];
    assert!(review.steps[mended].left[&wire] > 0.9, "{:?}", review.steps[mended].left);
    assert!(review.steps[mended].regret.is_some());
    assert!(review.steps[mended + 1..].iter().all(|step| step.regret.is_none()));
}
