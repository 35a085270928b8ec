//! A short case worked at the desk, without an engine, a display or a driver.

use super::{Desk, Surroundings};
use crate::scenario::{deal, load};
use crate::session::attempt::Session;
use crate::wording::catalogue::Words;
use crate::wording::step_parser;
use crate::workshop::view::Page;
use crate::workshop::view::action::Action;
use std::path::Path;
use std::sync::Arc;
use std::time::{Duration, Instant};

const SEED: u64 = 11;
/// Steps of both ways of writing one: typed whole, and put together word by word.
const STEPS: [&str; 5] = ["dipstick", "key on", "read codes", "key off", "remove engine-cover"];

/// A desk whose sessions are kept in a folder.
pub(in crate::workshop) fn desk(folder: &Path) -> Desk {
    let folder = folder.to_owned();
    let around = Surroundings {
        words: Words::for_language("en-GB"),
        sessions: Box::new(move || Ok(folder.clone())),
        any_seed: || SEED,
    };
    Desk::new(around, Arc::new(|| {}))
}

/// Listens until nothing goes on beside the window; the end is a limit and not a measurement.
pub(in crate::workshop) fn settle(desk: &mut Desk) {
    let began = Instant::now();
    while desk.is_busy() {
        assert!(began.elapsed() < Duration::from_secs(240), "work without end");
        std::thread::sleep(Duration::from_millis(5));
        desk.listen();
    }
}

/// A desk with the case open on it.
pub(in crate::workshop) fn begun(folder: &Path) -> Desk {
    let mut desk = desk(folder);
    settle(&mut desk);
    desk.act(Action::TypeSeed(SEED.to_string()));
    desk.act(Action::Begin);
    settle(&mut desk);
    assert!(matches!(desk.view().page, Page::Case(_)), "{:?}", desk.view().notice);
    desk
}

#[test]
fn replay_the_desk_and_the_bench_end_in_the_same_session() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = begun(folder.path());
    for (number, step) in STEPS.into_iter().enumerate() {
        if number % 2 == 0 {
            desk.act(Action::TypeLine(step.to_owned()));
        } else {
            step.split(' ').for_each(|word| desk.act(Action::AddWord(word.to_owned())));
        }
        desk.act(Action::TakeStep);
        settle(&mut desk);
    }
    let loaded = Arc::new(load::demo().unwrap());
    let case = deal::deal(&loaded, SEED).unwrap();
    let mut direct = Session::begin(Arc::clone(&case.briefing), case.hidden.clone()).unwrap();
    for step in STEPS {
        direct.take(&step_parser::parse(step, &case.briefing).unwrap().unwrap()).unwrap();
    }
    let at_desk = desk.session().unwrap();
    assert_eq!(at_desk.log().len(), STEPS.len());
    assert_eq!(at_desk.digest(), direct.digest());

    // What is on disk goes on elsewhere: a second desk opens it and is at the same place.
    let digest = at_desk.digest();
    let kept = std::fs::read_dir(folder.path()).unwrap().next().unwrap().unwrap().path();
    drop(desk);
    let mut other = self::desk(folder.path());
    settle(&mut other);
    other.act(Action::Open(kept));
    settle(&mut other);
    assert_eq!(other.session().unwrap().digest(), digest);
}

#[test]
fn limit_a_mistyped_step_is_told_and_changes_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = begun(folder.path());
    let before = desk.session().unwrap().digest();
    desk.act(Action::TypeLine("read cods".to_owned()));
    desk.act(Action::TakeStep);
    settle(&mut desk);
    assert_eq!(desk.session().unwrap().digest(), before);
    let Page::Case(case) = desk.view().page else { panic!("still on the case") };
    assert!(case.line.problem.as_ref().is_some_and(|problem| problem.contains("codes")));
}

#[test]
fn limit_a_folder_that_cannot_be_written_is_a_sentence_on_the_front_page() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("a-file");
    std::fs::write(&file, "").unwrap();
    let mut desk = desk(&file.join("below"));
    settle(&mut desk);
    desk.act(Action::Begin);
    settle(&mut desk);
    assert!(matches!(desk.view().page, Page::Front(_)));
    assert!(desk.view().notice.is_some_and(|notice| notice.contains("a-file")));
}
