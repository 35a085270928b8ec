//! The same steps on the same case lead to the same bits: in one process, from a journal, in a plain
//! and an optimised build, on every platform.
//!
//! `tests/replay/long.steps` is a session with every kind of step; `tests/replay/pinned.txt` holds a
//! digest of the events of each of its entries and one of the whole session, state included. Where
//! physics, prices or events are changed on purpose they are pinned anew with
//! `FAULTWRIGHT_PIN=1 cargo test --no-default-features --test replay`.

#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::scenario::deal::record_of;
use faultwright::scenario::draw::{Case, any_case, draw};
use faultwright::scenario::load::demo;
use faultwright::session::attempt::Session;
use faultwright::session::journal::{ReadMode, digest_of_events, read};
use faultwright::session::kept::{KeptSession, replay};
use faultwright::session::step::Step;
use faultwright::wording::{step_parser, step_words};
use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::path::Path;
use std::sync::{Arc, OnceLock};
use std::{env, fs};

const STEPS: &str = include_str!("replay/long.steps");
const PIN: &str = "FAULTWRIGHT_PIN";
const PIN_COMMAND: &str = "FAULTWRIGHT_PIN=1 cargo test --no-default-features --test replay";
/// A case that nobody judges, so that only session and vehicle decide what is pinned.
const SEED: u64 = 8;

fn case() -> &'static Case {
    static CASE: OnceLock<Case> = OnceLock::new();
    CASE.get_or_init(|| draw(&Arc::new(demo().unwrap()), SEED, &any_case).unwrap())
}

fn steps() -> Vec<Step> {
    (1..)
        .zip(STEPS.lines())
        .filter_map(|(number, line)| {
            step_parser::parse(line, &case().briefing)
                .unwrap_or_else(|problem| panic!("long.steps:{number}: {line}: {problem:?}"))
        })
        .collect()
}

fn begin() -> Session {
    Session::begin(Arc::clone(&case().briefing), case().hidden.clone()).unwrap()
}

fn run() -> Session {
    let mut session = begin();
    for step in steps() {
        session.take(&step).unwrap();
    }
    session
}

/// The session that the tests share.
fn done() -> &'static Session {
    static DONE: OnceLock<Session> = OnceLock::new();
    DONE.get_or_init(run)
}

/// A line for each entry, then one for the whole.
fn account(session: &Session) -> String {
    let mut text = String::new();
    for (number, entry) in (1..).zip(session.log()) {
        let digest = digest_of_events(&entry.events).unwrap().short();
        writeln!(text, "{number} {digest} {}", step_words::line(&entry.step)).unwrap();
    }
    writeln!(text, "whole {}", session.digest().short()).unwrap();
    text
}

/// The first line in which two accounts differ, with what followed from its step here.
fn first_difference(session: &Session, pinned: &str, here: &str) -> Option<String> {
    let number = (0..pinned.lines().count().max(here.lines().count()))
        .find(|number| pinned.lines().nth(*number) != here.lines().nth(*number))?;
    let line = |text: &str| text.lines().nth(number).unwrap_or("nothing").to_owned();
    let events = session.log().get(number).map(|entry| format!("{:#?}", entry.events));
    Some(format!(
        "pinned: {}\nhere:   {}\n{}",
        line(pinned),
        line(here),
        events.unwrap_or_else(|| "every entry agrees, the state at the end does not".to_owned())
    ))
}

#[test]
fn replay_a_long_session_gives_the_pinned_digests() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/replay/pinned.txt");
    let here = account(done());
    if env::var_os(PIN).is_some() {
        fs::write(&path, &here).unwrap();
    }
    let pinned = fs::read_to_string(&path).unwrap_or_default();
    if let Some(difference) = first_difference(done(), &pinned, &here) {
        panic!("{difference}\nIf that is meant, pin it anew: {PIN_COMMAND}");
    }
}

#[test]
fn replay_four_runs_in_one_process_are_the_same() {
    let first = account(done());
    for _ in 1..4 {
        let again = run();
        let difference = first_difference(&again, &first, &account(&again));
        assert!(difference.is_none(), "{}", difference.unwrap_or_default());
        assert_eq!(again.digest(), done().digest());
    }
}

#[test]
fn replay_a_journal_leads_to_the_same_session() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("long.session");
    let mut kept = KeptSession::create(&path, &record_of(case()), begin()).unwrap();
    for step in steps() {
        kept.take(&step).unwrap();
    }
    assert_eq!(kept.session().digest(), done().digest());
    drop(kept);
    let recorded = read(&path, ReadMode::Strict).unwrap();
    assert_eq!(recorded.entries.len(), done().log().len());
    let mut again = begin();
    replay(&mut again, &recorded.entries).unwrap();
    assert_eq!(again.digest(), done().digest());
}

/// The place of a kind of step among all; a new kind does not compile until it has one.
const fn kind(step: &Step) -> usize {
    match step {
        Step::ReadJobSheet => 0,
        Step::AskCustomer { .. } => 1,
        Step::Consult { .. } => 2,
        Step::Look { .. } => 3,
        Step::Dipstick => 4,
        Step::Remove { .. } => 5,
        Step::Refit { .. } => 6,
        Step::Unplug { .. } => 7,
        Step::Plug { .. } => 8,
        Step::Key { .. } => 9,
        Step::Measure { .. } => 10,
        Step::ZeroLeads => 11,
        Step::Power { .. } => 12,
        Step::Command { .. } => 13,
        Step::ReadCodes => 14,
        Step::ReadFreezeFrame => 15,
        Step::ReadLiveData => 16,
        Step::ClearCodes => 17,
        Step::Drive { .. } => 18,
        Step::Suspect { .. } => 19,
        Step::Predict { .. } => 20,
        Step::Commit { .. } => 21,
        Step::AskApproval => 22,
        Step::Fit { .. } => 23,
        Step::Clean { .. } => 24,
        Step::Mend { .. } => 25,
        Step::TopUpOil => 26,
        Step::Write { .. } => 27,
        Step::HandOver { .. } => 28,
        Step::MeasureFromFront { .. } => 29,
        Step::Wiggle { .. } => 30,
        Step::TestLamp { .. } => 31,
        Step::Clamp { .. } => 32,
        Step::ZeroClamp => 33,
        Step::Scope { .. } => 34,
        Step::ReplaceMeterFuse => 35,
        Step::Replace { .. } => 36,
        Step::ReadLiveItems { .. } => 37,
        Step::ReadReadiness => 38,
        Step::ReadVehicleInformation => 39,
        Step::ReadTestResults => 40,
        Step::ChangeOil { .. } => 41,
        Step::FitGauge => 42,
        Step::ReadGauge { .. } => 43,
        Step::RemoveGauge => 44,
        Step::AskHint { .. } => 45,
        Step::PredictSign { .. } => 46,
        Step::ReportCode { .. } => 47,
        Step::Note { .. } => 48,
    }
}
const KINDS: usize = 49;

#[test]
fn verif_the_long_session_takes_every_kind_of_step() {
    let taken: BTreeSet<usize> = steps().iter().map(kind).collect();
    let missing: Vec<usize> = (0..KINDS).filter(|kind| !taken.contains(kind)).collect();
    assert!(missing.is_empty(), "no step of the kinds {missing:?}");
}

#[test]
fn verif_the_digest_tells_one_other_step_from_the_rest() {
    let mut session = begin();
    let mut other = session.fork();
    session.take(&Step::Dipstick).unwrap();
    other.take(&Step::ReadJobSheet).unwrap();
    assert_ne!(session.digest(), other.digest());
    let difference = first_difference(&other, &account(&session), &account(&other)).unwrap();
    assert!(
        difference.contains("dipstick") && difference.contains("JobSheetShown"),
        "{difference}"
    );
}
