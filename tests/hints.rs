//! Hints, their price, and the lessons of a debrief, on a handful of worlds of the carried scenario.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::assessment::debrief::{Debrief, debrief};
use faultwright::assessment::lessons::{LessonKind, MOST_LESSONS};
use faultwright::assessment::mark::About;
use faultwright::assessment::rubric::{MarkCategory, Rubric};
use faultwright::faults::{Fault, FaultKind, FaultName};
use faultwright::instruments::multimeter::MeterFunction;
use faultwright::reasoning::hint::{Duty, Hint, Question, Why, hint};
use faultwright::reasoning::onlooker::Onlooker;
use faultwright::reasoning::world::Worlds;
use faultwright::scenario::{load, suppose};
use faultwright::session::attempt::{Entry, Session};
use faultwright::session::event::{Event, Refusal};
use faultwright::session::journal::Mode;
use faultwright::session::setup::{Briefing, Hidden};
use faultwright::session::step::{Ending, HintGrade, KeyPosition, Manner, Step};
use faultwright::vehicle::spec::Id;
use std::sync::{Arc, OnceLock};

struct Bench {
    briefing: Arc<Briefing>,
    rubric: Rubric,
    worlds: Worlds,
    open_coil: Hidden,
    sticking: Hidden,
}

/// An open coil, a wire against ground and a sticking spool of the intake side, one severity each.
fn bench() -> &'static Bench {
    static BENCH: OnceLock<Bench> = OnceLock::new();
    BENCH.get_or_init(|| {
        let loaded = load::demo().unwrap();
        let briefing = Arc::new(loaded.briefing());
        let all = suppose::suppositions(&loaded);
        let of = |kind, place: &str| {
            let is_wanted = |faults: &[FaultName]| {
                faults.first().is_some_and(|fault| fault.kind == kind && fault.place == *place)
            };
            all.iter().rfind(|it| it.variant == 0 && is_wanted(&it.faults)).cloned().unwrap()
        };
        let chosen = [
            of(FaultKind::OpenCoil, "intake-valve"),
            of(FaultKind::WireToGround, "intake-control-wire"),
            of(FaultKind::StickingSpool, "intake-valve"),
        ];
        Bench {
            worlds: Worlds::begin(&briefing, &chosen, &|_, _| {}).unwrap(),
            open_coil: chosen[0].hidden.clone(),
            sticking: chosen[2].hidden.clone(),
            rubric: loaded.scenario.rubric,
            briefing,
        }
    })
}

fn begin(hidden: &Hidden) -> Session {
    Session::begin(Arc::clone(&bench().briefing), hidden.clone()).unwrap()
}

fn worked(hidden: &Hidden, steps: &[Step]) -> Session {
    let mut session = begin(hidden);
    for step in steps {
        session.take(step).unwrap();
    }
    session
}

fn told(log: &[Entry], grade: HintGrade) -> Hint {
    let bench = bench();
    hint(&mut Onlooker::new(&bench.briefing, bench.worlds.clone()), log, grade).unwrap()
}

const fn ask(grade: HintGrade) -> Step {
    Step::AskHint { grade }
}

fn judged(session: &Session) -> Debrief {
    let bench = bench();
    let faults = vec![Fault {
        name: FaultName { kind: FaultKind::OpenCoil, place: Id::from("intake-valve") },
        severity: 0.5,
    }];
    debrief(session, faults, bench.worlds.clone(), &bench.rubric, &|_, _| {}).unwrap()
}

fn intake() -> Vec<Step> {
    vec![
        Step::Dipstick,
        Step::Key { position: KeyPosition::On },
        Step::ReadCodes,
        Step::ReadFreezeFrame,
    ]
}

fn winding() -> Step {
    let (red, black) = (Id::from("intake-valve-feed"), Id::from("intake-valve-control"));
    Step::Measure { function: MeterFunction::Ohms, red, black }
}

/// Two vehicles with other faults that have shown the same so far are given the same hints.
#[test]
fn limit_a_hint_hangs_on_what_was_seen_and_not_on_what_is_hidden() {
    let bench = bench();
    let steps = [Step::ReadJobSheet, Step::Dipstick];
    let one = worked(&bench.open_coil, &steps);
    let other = worked(&bench.sticking, &steps);
    assert_eq!(one.log(), other.log());
    assert_ne!(one.outlook(), other.outlook());
    for grade in HintGrade::ALL {
        assert_eq!(told(one.log(), grade), told(other.log(), grade));
    }
}

#[test]
fn replay_the_same_log_gives_the_same_hint_seen_at_once_or_entry_by_entry() {
    let bench = bench();
    let session = worked(&bench.open_coil, &intake());
    let log = session.log();
    let at_once = told(log, HintGrade::Step);
    let mut onlooker = Onlooker::new(&bench.briefing, bench.worlds.clone());
    for until in 0..log.len() {
        hint(&mut onlooker, &log[..until], HintGrade::Area).unwrap();
    }
    assert_eq!(hint(&mut onlooker, log, HintGrade::Step).unwrap(), at_once);
}

#[test]
fn limit_each_grade_tells_what_the_one_before_told_and_one_thing_more() {
    let session = worked(&bench().open_coil, &[Step::Dipstick]);
    let hints = HintGrade::ALL.map(|grade| told(session.log(), grade));
    let told = |hint: &Hint| {
        [hint.area.is_some(), hint.kind.is_some(), hint.advice.is_some()]
            .into_iter()
            .filter(|is_told| *is_told)
            .count()
    };
    for (place, pair) in hints.windows(2).enumerate() {
        assert_eq!((told(&pair[0]), told(&pair[1])), (place, place + 1));
        assert_eq!(pair[0].question, pair[1].question);
        assert!(pair[0].area.is_none() || pair[0].area == pair[1].area);
        assert!(pair[0].kind.is_none() || pair[0].kind == pair[1].kind);
    }
    let advice = hints[3].advice.as_ref().unwrap();
    assert!(matches!(&advice.why, Why::Test(foresight) if foresight.bits > 0.0), "{advice:?}");
}

#[test]
fn limit_there_are_no_hints_where_a_session_is_assessed() {
    let bench = bench();
    let briefing = Briefing { mode: Mode::Assessed, ..Briefing::clone(&bench.briefing) };
    let mut session = Session::begin(Arc::new(briefing), bench.open_coil.clone()).unwrap();
    let before = session.outlook();
    for grade in HintGrade::ALL {
        let events = session.take(&ask(grade)).unwrap();
        assert_eq!(events, [Event::Refused { reason: Refusal::NoHints }]);
    }
    assert_eq!(session.outlook(), before);
    session.take(&Step::HandOver { ending: Ending::Referred }).unwrap();
    assert!(judged(&session).hints.is_empty());
}

/// Hints take their price from the sum and touch nothing else.
#[test]
fn closed_form_the_total_is_lower_by_the_price_of_the_hints() {
    let bench = bench();
    let mut with = vec![ask(HintGrade::Question), ask(HintGrade::Area)];
    with.extend(intake());
    with.push(ask(HintGrade::Kind));
    let end = Step::HandOver { ending: Ending::Referred };
    with.push(end.clone());
    let mut without = intake();
    without.push(end);
    let (with, without) =
        (judged(&worked(&bench.open_coil, &with)), judged(&worked(&bench.open_coil, &without)));
    let points: Vec<u8> = with.hints.iter().map(|hint| hint.points).collect();
    assert_eq!(points, [1, 1, 4], "question, what area costs beyond it, kind after more evidence");
    assert!((without.total - with.total - 6.0).abs() < 1e-9);
    for (one, other) in with.marks.iter().zip(&without.marks) {
        assert_eq!((one.category, one.share), (other.category, other.share));
    }
}

/// Whoever does nothing but what the dearest hints say finds the fault, repairs, proves and hands over.
#[test]
fn limit_a_job_by_hints_alone_is_repaired_and_proved() {
    let bench = bench();
    let mut session = begin(&bench.open_coil);
    let mut onlooker = Onlooker::new(&bench.briefing, bench.worlds.clone());
    let mut duties = Vec::new();
    for _ in 0..60 {
        let hint = hint(&mut onlooker, session.log(), HintGrade::Step).unwrap();
        session.take(&ask(HintGrade::Step)).unwrap();
        let advice = hint.advice.unwrap();
        if let Why::Duty(duty) = advice.why {
            duties.push(duty);
            if let Duty::Write(section) = duty {
                session.take(&Step::Write { section, text: "as found".to_owned() }).unwrap();
            }
        }
        for step in &advice.steps {
            let events = session.take(step).unwrap();
            let refused = events.iter().any(|event| matches!(event, Event::Refused { .. }));
            assert!(!refused, "{step:?}: {events:?}");
        }
        if session.ending().is_some() {
            break;
        }
    }
    assert_eq!(session.ending(), Some(Ending::Repaired), "{duties:?}");
    for duty in [Duty::Approval, Duty::Clear, Duty::KeyOnCheck, Duty::RoadTest, Duty::Rescan] {
        assert!(duties.contains(&duty), "{duty:?} is not among {duties:?}");
    }
    let debrief = judged(&session);
    assert!(!debrief.aftermath.comes_back());
    let proof = debrief.marks.iter().find(|mark| mark.category == MarkCategory::Proof).unwrap();
    assert!((proof.share - 1.0).abs() < 1e-9, "{proof:?}");
    let choice = debrief.marks.iter().find(|it| it.category == MarkCategory::TestChoice).unwrap();
    assert!(matches!(choice.remarks[0].about, About::NoRegret), "{choice:?}");
    let of_tests = [LessonKind::SkippedTheNear, LessonKind::ToldNothing, LessonKind::TestedOn];
    assert!(debrief.lessons.iter().all(|lesson| !of_tests.contains(&lesson.kind)));
}

#[test]
fn limit_after_a_repair_the_proof_is_the_question() {
    let mut steps = intake();
    steps.push(Step::ChangeOil { grade: bench().briefing.vehicle.oil.grade });
    let session = worked(&bench().open_coil, &steps);
    let hint = told(session.log(), HintGrade::Question);
    assert_eq!(hint.question, Question::Duty(Duty::Clear));
}

/// A part fitted at once and handed back unproved: both are told, what fails the session first.
#[test]
fn limit_lessons_are_few_and_the_weightiest_first() {
    let valve = Id::from("intake-valve");
    let part_number = bench().briefing.vehicle.valve(&valve).unwrap().part_number.clone();
    let steps = vec![
        Step::Remove { part: Id::from("engine-cover"), manner: Manner::Careful },
        Step::Unplug { connector: Id::from("intake-connector") },
        winding(),
        Step::Refit { part: Id::from("engine-cover"), new_seal: false },
        Step::Remove { part: Id::from("engine-cover"), manner: Manner::Careful },
        Step::Clean { valve: valve.clone() },
        Step::Remove { part: valve.clone(), manner: Manner::Careful },
        Step::Clean { valve: valve.clone() },
        Step::Fit { valve: valve.clone(), part_number },
        Step::Refit { part: valve, new_seal: true },
        Step::Plug { connector: Id::from("intake-connector") },
        Step::Refit { part: Id::from("engine-cover"), new_seal: false },
        Step::HandOver { ending: Ending::Repaired },
    ];
    let session = worked(&bench().open_coil, &steps);
    let debrief = judged(&session);
    let lessons = &debrief.lessons;
    assert_eq!(lessons.len(), MOST_LESSONS, "{lessons:?}");
    assert!(lessons[0].is_critical && lessons[0].kind == LessonKind::NotProved, "{lessons:?}");
    for pair in lessons.windows(2) {
        let order = (pair[0].is_critical, pair[0].points) >= (pair[1].is_critical, pair[1].points);
        assert!(order, "{lessons:?}");
    }
    let lost: f64 = 100.0 - debrief.total;
    let told: f64 = lessons.iter().map(|lesson| lesson.points).sum();
    assert!(told > 0.0 && told <= lost + 1e-9, "{told} of {lost}");
    assert_eq!(*lessons, judged(&session).lessons, "a debrief is the same each time");
}
