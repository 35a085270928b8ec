//! The desk without any panel: cases begun, gone on with and kept, and what goes wrong with them.

mod front_door;
mod heard;
mod looked_back;
mod on_road;
mod sealed_case;

use super::{Desk, Speaker, Surroundings};
use crate::physics::stroke::Click;
use crate::reasoning::world_store::WorldStore;
use crate::scenario::deal::{deal, deal_again, record_of};
use crate::scenario::load::{self, ScenarioText};
use crate::session::attempt::Session;
use crate::session::event::Event;
use crate::session::journal::{ReadMode, read};
use crate::session::kept::{self, KeptSession};
use crate::sound::passage::{Part, Passage};
use crate::sound::player::State;
use crate::wording::catalogue::Words;
use crate::wording::step_parser::parse;
use crate::workshop::view::Page;
use crate::workshop::view::action::Action;
use crate::workshop::view::case::{CaseView, Tone};
use crate::workshop::view::front::{Age, FrontView, KeptState};
use crate::workshop::view::guide::{GuideView, Task};
use crate::workshop::view::settings::{Contrast, Settings, Shade, TextSize, Volume};
use std::fs::{self, File};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex};
use std::thread;
use std::time::Duration;

/// The steps of a short case, which a hand-over would end.
const STEPS: [&str; 6] = [
    "key on",
    "read codes",
    "key off",
    "dipstick",
    "suspect low-oil sump 90%",
    "remove engine-cover",
];

pub fn surroundings(folder: &Path) -> Surroundings {
    let folder = folder.to_owned();
    Surroundings {
        words: Arc::new(Words::for_language("en-GB")),
        sessions: Arc::new(move || Ok(folder.clone())),
        worlds: WorldStore::none(),
        any_seed: || 7,
        scenario: None,
        settings_file: None,
        // No test plays to whoever sits at this machine.
        speaker: Arc::new(|_, _| Box::new(Recorder::default())),
    }
}

/// What whoever lets sounds be heard was told.
#[derive(Debug, Clone, PartialEq)]
pub enum Told {
    Play(Passage),
    Gain(f32),
}

/// Writes down what it is told, and lets nothing be heard.
#[derive(Debug, Clone, Default)]
pub struct Recorder(Arc<Mutex<Vec<Told>>>);

impl Recorder {
    pub fn told(&self) -> Vec<Told> {
        std::mem::take(&mut *self.0.lock().unwrap())
    }
}

impl Speaker for Recorder {
    fn play(&self, passage: Passage) {
        self.0.lock().unwrap().push(Told::Play(passage));
    }

    fn set_gain(&self, gain: f32) {
        self.0.lock().unwrap().push(Told::Gain(gain));
    }

    fn state(&self) -> State {
        State::NoServer
    }
}

/// Waits until nothing goes on beside the window.
pub fn settle(desk: &mut Desk) {
    while desk.is_busy() {
        thread::sleep(Duration::from_millis(2));
        desk.listen();
    }
}

pub(super) fn desk_on(folder: &Path) -> Desk {
    let mut desk = Desk::new(surroundings(folder), Arc::new(|| {}));
    settle(&mut desk);
    desk
}

pub(super) fn act(desk: &mut Desk, action: Action) {
    desk.act(action);
    settle(desk);
}

pub(super) fn take(desk: &mut Desk, line: &str) {
    act(desk, Action::TypeLine(line.to_owned()));
    act(desk, Action::TakeStep);
}

fn front(desk: &Desk) -> &FrontView {
    match desk.view().page {
        Page::Front(view) => view,
        page => panic!("not the front page: {}", page.name()),
    }
}

fn case(desk: &Desk) -> &CaseView {
    match desk.view().page {
        Page::Case(view) => view,
        page => panic!("no case is open: {}, {:?}", page.name(), desk.view().notice),
    }
}

/// The same steps taken on a session that no window has seen.
pub fn taken_directly(seed: u64, lines: &[&str]) -> Session {
    let case = deal(&Arc::new(load::demo().unwrap()), seed).unwrap();
    let mut session = Session::begin(Arc::clone(&case.briefing), case.hidden.clone()).unwrap();
    for line in lines {
        session.take(&parse(line, &case.briefing).unwrap().unwrap()).unwrap();
    }
    session
}

fn only_file(folder: &Path) -> PathBuf {
    let files: Vec<PathBuf> =
        fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    assert_eq!(files.len(), 1, "{files:?}");
    files[0].clone()
}

#[test]
fn a_case_is_kept_from_its_first_step_and_gone_on_with() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = desk_on(folder.path());
    assert_eq!(front(&desk).kept.as_deref(), Some([].as_slice()));
    act(&mut desk, Action::Begin);
    assert_eq!(case(&desk).log.len(), 0);
    let path = only_file(folder.path());
    assert_eq!(path.file_name().unwrap(), "market-hill-7-1.session");
    for (number, line) in STEPS.iter().take(3).enumerate() {
        take(&mut desk, line);
        assert_eq!(case(&desk).log[number].step, *line);
        assert_eq!(read(&path, ReadMode::AllowTorn).unwrap().entries.len(), number + 1);
    }
    act(&mut desk, Action::ToFront);
    let listed = &front(&desk).kept.as_ref().unwrap()[0];
    assert_eq!(listed.name, "market-hill-7-1");
    assert_eq!(listed.state, KeptState::Unfinished { steps: 3, is_assessed: false });

    act(&mut desk, Action::Open(path));
    assert_eq!(case(&desk).log.len(), 3);
    for line in STEPS.iter().skip(3) {
        take(&mut desk, line);
    }
    let view = case(&desk);
    assert_eq!(view.suspects[0].percent, 90);
    assert!(view.vehicle.off.contains("engine cover"), "{}", view.vehicle.off);
    assert!(view.till.contains("min"), "{}", view.till);
    assert_eq!(desk.session().unwrap().digest(), taken_directly(7, &STEPS).digest());
}

#[test]
fn a_session_begun_in_the_bench_goes_on_here_and_back() {
    let folder = tempfile::tempdir().unwrap();
    let case = deal(&Arc::new(load::demo().unwrap()), 3).unwrap();
    let path = kept::unused_path(folder.path(), "market-hill", 3);
    let session = Session::begin(Arc::clone(&case.briefing), case.hidden.clone()).unwrap();
    let mut bench = KeptSession::create(&path, &record_of(&case), session).unwrap();
    bench.take(&parse("key on", &case.briefing).unwrap().unwrap()).unwrap();

    // While the bench has it open, nobody else can.
    let mut desk = desk_on(folder.path());
    act(&mut desk, Action::Open(path.clone()));
    assert!(desk.view().notice.is_some());
    assert_eq!(front(&desk).kept.as_ref().unwrap().len(), 1);
    drop(bench);

    act(&mut desk, Action::Open(path.clone()));
    assert_eq!(desk.view().notice, None);
    take(&mut desk, "read codes");
    drop(desk);
    let recorded = read(&path, ReadMode::Strict).unwrap();
    let case = deal_again(&recorded.case).unwrap();
    let mut session = Session::begin(Arc::clone(&case.briefing), case.hidden.clone()).unwrap();
    kept::replay(&mut session, &recorded.entries).unwrap();
    assert_eq!(session.log().len(), 2);
}

#[test]
fn handing_over_leads_to_the_debrief_and_closes_the_file() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = desk_on(folder.path());
    act(&mut desk, Action::Begin);
    desk.act(Action::TypeLine("hand over referred".to_owned()));
    desk.act(Action::TakeStep);
    while matches!(desk.view().page, Page::Case(_)) {
        thread::sleep(Duration::from_millis(2));
        desk.listen();
    }
    assert!(matches!(desk.view().page, Page::Debrief(view) if view.parts.is_none()));
    assert!(desk.view().busy.is_some());
    let path = only_file(folder.path());
    assert!(kept::is_finished(&read(&path, ReadMode::AllowTorn).unwrap().entries));
    settle(&mut desk);
    let Page::Debrief(view) = desk.view().page else { panic!("{:?}", desk.view().notice) };
    let parts = view.parts.as_ref().unwrap();
    assert_eq!(parts.marks.len(), 8);
    assert_eq!(parts.steps.len(), 1);
    act(&mut desk, Action::ToFront);
    assert_eq!(
        front(&desk).kept.as_ref().unwrap()[0].state,
        KeptState::Finished { steps: 1, is_assessed: false }
    );
    assert!(read(&path, ReadMode::Strict).is_ok());
}

#[test]
fn a_hand_over_that_was_refused_has_not_finished_a_session() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = desk_on(folder.path());
    act(&mut desk, Action::TypeSeed("11".to_owned()));
    act(&mut desk, Action::Begin);
    take(&mut desk, "key start");
    take(&mut desk, "hand over");
    assert_eq!(case(&desk).log.len(), 2);
    act(&mut desk, Action::ToFront);
    assert_eq!(
        front(&desk).kept.as_ref().unwrap()[0].state,
        KeptState::Unfinished { steps: 2, is_assessed: false }
    );
}

#[test]
fn a_broken_file_is_told_and_stands_in_nobodys_way() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = desk_on(folder.path());
    act(&mut desk, Action::Begin);
    take(&mut desk, "key on");
    act(&mut desk, Action::ToFront);
    let broken = folder.path().join("broken.session");
    fs::write(&broken, "no session\n").unwrap();
    // Some file systems count time in steps that both files fit into.
    let later = fs::metadata(&broken).unwrap().modified().unwrap() + Duration::from_mins(1);
    File::options().append(true).open(&broken).unwrap().set_modified(later).unwrap();
    fs::write(folder.path().join("note.txt"), "not mine").unwrap();
    act(&mut desk, Action::LookAgain);
    let files = front(&desk).kept.clone().unwrap();
    assert_eq!(files.len(), 2);
    assert!(matches!(&files[0].state, KeptState::Broken(why) if why.contains("broken.session")));
    act(&mut desk, Action::Open(broken.clone()));
    assert!(desk.view().notice.is_some_and(|said| said.contains("broken.session")));
    act(&mut desk, Action::CloseNotice);
    assert_eq!(desk.view().notice, None);
    assert_eq!(fs::read_to_string(broken).unwrap(), "no session\n");
    act(&mut desk, Action::Open(files[1].path.clone()));
    assert_eq!(case(&desk).log.len(), 1);
}

#[test]
fn a_folder_that_cannot_be_used_is_told_and_asked_for_again() {
    let folder = tempfile::tempdir().unwrap();
    let allowed = folder.path().join("allowed");
    let asked = allowed.clone();
    let around = Surroundings {
        sessions: Arc::new(move || {
            if asked.is_dir() { Ok(asked.clone()) } else { Err("no such folder.".to_owned()) }
        }),
        ..surroundings(folder.path())
    };
    let mut desk = Desk::new(around, Arc::new(|| {}));
    settle(&mut desk);
    assert!(desk.view().notice.is_some_and(|said| said.contains("no such folder")));
    act(&mut desk, Action::TypeSeed("7".to_owned()));
    act(&mut desk, Action::Begin);
    assert!(desk.view().notice.is_some_and(|said| said.contains("no such folder")));
    assert_eq!(front(&desk).seed, "7");
    fs::create_dir(&allowed).unwrap();
    act(&mut desk, Action::Begin);
    assert_eq!(case(&desk).log.len(), 0);
}

#[test]
fn a_step_that_cannot_be_kept_is_not_taken_and_its_line_stays() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = desk_on(folder.path());
    act(&mut desk, Action::Begin);
    take(&mut desk, "key on");
    let before = desk.session().unwrap().digest();
    fs::remove_file(only_file(folder.path())).unwrap();
    take(&mut desk, "read codes");
    assert!(desk.view().notice.is_some());
    assert_eq!(case(&desk).log.len(), 1);
    assert_eq!(case(&desk).line.text, "read codes");
    assert_eq!(desk.session().unwrap().digest(), before);
}

#[test]
fn a_seed_that_is_none_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = desk_on(folder.path());
    for wrong in ["seven", "-1", "18446744073709551616"] {
        act(&mut desk, Action::TypeSeed(wrong.to_owned()));
        act(&mut desk, Action::Begin);
        assert!(front(&desk).seed_problem.is_some(), "{wrong}");
        assert_eq!(front(&desk).seed, wrong);
    }
    act(&mut desk, Action::TypeSeed(" 7 ".to_owned()));
    assert_eq!(front(&desk).seed_problem, None);
    act(&mut desk, Action::Begin);
    assert!(case(&desk).kept_at.contains("market-hill-7-1"));
}

#[test]
fn a_line_is_clicked_together_and_taken_back_word_by_word() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = desk_on(folder.path());
    act(&mut desk, Action::Begin);
    act(&mut desk, Action::StartLine("measure".to_owned()));
    let words = |desk: &Desk| -> Vec<String> {
        case(desk).line.words.iter().map(|offer| offer.word.clone()).collect()
    };
    assert_eq!(words(&desk), ["volts", "ohms", "amps"]);
    act(&mut desk, Action::AddWord("volts".to_owned()));
    let battery = case(&desk).line.words.iter().find(|offer| offer.word == "battery-plus");
    assert_eq!(battery.unwrap().meaning.as_deref(), Some("battery positive post"));
    act(&mut desk, Action::AddWord("battery-plus".to_owned()));
    assert!(!case(&desk).line.is_step);
    act(&mut desk, Action::AddWord("battery-minus".to_owned()));
    assert!(case(&desk).line.is_step);
    act(&mut desk, Action::RemoveWord);
    assert_eq!(case(&desk).line.text, "measure volts battery-plus ");
    act(&mut desk, Action::TakeStep);
    assert!(case(&desk).line.problem.is_some());
    assert_eq!(case(&desk).log.len(), 0);

    act(&mut desk, Action::StartLine("suspect low-oil sump".to_owned()));
    assert!(case(&desk).line.digits);
    act(&mut desk, Action::AddDigit('6'));
    act(&mut desk, Action::AddDigit('0'));
    act(&mut desk, Action::TakeStep);
    assert_eq!(case(&desk).suspects[0].percent, 60);
    assert_eq!(case(&desk).line.text, "");

    act(&mut desk, Action::StartLine("write concern".to_owned()));
    let texts = case(&desk).line.texts.clone();
    assert_eq!(texts.len(), 1);
    act(&mut desk, Action::AddText(texts[0].clone()));
    act(&mut desk, Action::TakeStep);
    assert_eq!(case(&desk).log.len(), 2);
}

#[test]
fn the_only_or_the_marked_word_completes_a_line() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = desk_on(folder.path());
    act(&mut desk, Action::Begin);
    act(&mut desk, Action::TypeLine("mea".to_owned()));
    act(&mut desk, Action::Complete);
    assert_eq!(case(&desk).line.text, "measure ");
    // Several: the first is only marked, then taken.
    act(&mut desk, Action::Complete);
    assert_eq!((case(&desk).line.marked, case(&desk).line.text.as_str()), (Some(0), "measure "));
    act(&mut desk, Action::Highlight { forward: true });
    act(&mut desk, Action::Complete);
    assert_eq!(case(&desk).line.text, "measure ohms ");
    for (forward, marked) in [(false, Some(14)), (true, None), (true, Some(0)), (false, None)] {
        act(&mut desk, Action::Highlight { forward });
        assert_eq!(case(&desk).line.marked, marked);
    }
}
