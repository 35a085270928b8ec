//! The desk without any panel: cases begun, gone on with and kept, and what goes wrong with them.

mod looked_back;

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
        page => panic!("not the front page: {page:?}"),
    }
}

fn case(desk: &Desk) -> &CaseView {
    match desk.view().page {
        Page::Case(view) => view,
        page => panic!("no case is open: {page:?}, {:?}", desk.view().notice),
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

/// A desk that lets a recorder hear what is heard, with the case of seed 7 begun.
fn heard_desk(folder: &Path) -> (Desk, Recorder) {
    let recorder = Recorder::default();
    let given = recorder.clone();
    let around = Surroundings {
        speaker: Arc::new(move |gain, _| {
            given.set_gain(gain);
            Box::new(given.clone())
        }),
        ..surroundings(folder)
    };
    let mut desk = Desk::new(around, Arc::new(|| {}));
    settle(&mut desk);
    (desk, recorder)
}

/// The parts of the only passage that was played.
fn played(recorder: &Recorder) -> Vec<Part> {
    match recorder.told().as_slice() {
        [Told::Play(passage)] => passage.parts().to_vec(),
        told => panic!("{told:?}"),
    }
}

#[test]
fn a_step_is_heard_and_seen_and_heard_again() {
    let folder = tempfile::tempdir().unwrap();
    let (mut desk, recorder) = heard_desk(folder.path());
    assert_eq!(recorder.told(), [Told::Gain(Volume::Medium.gain())]);
    act(&mut desk, Action::Begin);
    assert_eq!(played(&recorder), []);
    take(&mut desk, "dipstick");
    assert_eq!(recorder.told(), []);
    assert_eq!(case(&desk).log[0].heard, None);

    take(&mut desk, "key on");
    take(&mut desk, "command intake-valve on");
    let heard = case(&desk).log[2].heard.clone().unwrap();
    let log = desk.session().unwrap().log();
    let clicks = log[2]
        .events
        .iter()
        .filter(|event| matches!(event, Event::Heard { click, .. } if *click != Click::None));
    let clicks = clicks.count();
    let parts = played(&recorder);
    assert_eq!(parts.len(), clicks);
    assert_eq!(heard.outline.columns.is_empty(), clicks == 0);
    assert!(heard.caption.contains("click"), "{}", heard.caption);

    take(&mut desk, "key start");
    let start = played(&recorder);
    assert!(matches!(start.as_slice(), [Part::Starter(_), Part::Engine(_)]), "{start:?}");
    let heard = case(&desk).log[3].heard.clone().unwrap();
    assert!(heard.caption.starts_with("starter"), "{}", heard.caption);
    assert!(heard.outline.columns.iter().any(|(least, most)| most - least > 0.1));

    act(&mut desk, Action::HearAgain(4));
    assert_eq!(played(&recorder), start);
    // Nothing was heard of the dipstick, and a step that is not there is none.
    act(&mut desk, Action::HearAgain(1));
    act(&mut desk, Action::HearAgain(5));
    assert_eq!(recorder.told(), []);
    act(&mut desk, Action::SetVolume(Volume::Mute));
    assert_eq!(recorder.told(), [Told::Gain(0.0)]);

    // Whoever leaves hears nothing more; whoever comes back hears the engine run and sees what was heard.
    let seen: Vec<_> = case(&desk).log.iter().map(|step| step.heard.clone()).collect();
    act(&mut desk, Action::ToFront);
    assert_eq!(played(&recorder), []);
    act(&mut desk, Action::Open(only_file(folder.path())));
    assert!(matches!(played(&recorder).as_slice(), [Part::Engine(_)]));
    let again: Vec<_> = case(&desk).log.iter().map(|step| step.heard.clone()).collect();
    assert_eq!(again, seen);
}

#[test]
fn a_step_that_is_not_taken_is_not_heard() {
    let folder = tempfile::tempdir().unwrap();
    let (mut desk, recorder) = heard_desk(folder.path());
    act(&mut desk, Action::Begin);
    recorder.told();
    fs::remove_file(only_file(folder.path())).unwrap();
    take(&mut desk, "key start");
    assert!(desk.view().notice.is_some());
    assert_eq!(recorder.told(), []);
}

#[test]
fn settings_are_kept_at_once_and_hold_at_the_next_start() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("settings.json");
    let start = || {
        let recorder = Recorder::default();
        let given = recorder.clone();
        let around = Surroundings {
            settings_file: Some(path.clone()),
            speaker: Arc::new(move |gain, _| {
                given.set_gain(gain);
                Box::new(given.clone())
            }),
            ..surroundings(&folder.path().join("sessions"))
        };
        (Desk::new(around, Arc::new(|| {})), recorder)
    };
    let (mut desk, _) = start();
    assert_eq!(desk.view().settings, Settings::default());
    desk.act(Action::OpenSettings(true));
    desk.act(Action::SetText(TextSize::Double));
    desk.act(Action::SetShade(Shade::Dark));
    desk.act(Action::SetContrast(Contrast::High));
    desk.act(Action::SetVolume(Volume::Quiet));
    assert_eq!(desk.view().notice, None);
    let (desk, recorder) = start();
    let settings = desk.view().settings;
    assert_eq!((settings.text, settings.shade), (TextSize::Double, Shade::Dark));
    assert_eq!((settings.contrast, settings.volume), (Contrast::High, Volume::Quiet));
    assert!(!settings.are_open);
    assert_eq!(recorder.told(), [Told::Gain(Volume::Quiet.gain())]);

    // What cannot be read is told once, and is there still.
    fs::write(&path, "{}").unwrap();
    let (mut desk, _) = start();
    settle(&mut desk);
    assert!(desk.view().notice.is_some_and(|said| said.contains("settings.json")));
    assert_eq!(desk.view().settings, Settings::default());
    desk.act(Action::CloseNotice);
    desk.act(Action::SetShade(Shade::Dark));
    assert_eq!(desk.view().notice, None);
    assert_eq!(fs::read_to_string(path.with_file_name("settings.json.set-aside")).unwrap(), "{}");
}

/// The shipped scenario with one fault, which deals in a fraction of the time.
fn small_scenario(title: &str) -> String {
    let text = ScenarioText::demo().scenario_text;
    let (before, rest) = text.split_once("    faults: [").unwrap();
    let (_, after) = rest.split_once("    ],\n").unwrap();
    let fault = "(kind: LowOil, place: \"sump\", weight: 4, severity: (0.5, 1)),";
    format!("{before}    faults: [{fault}],\n{after}").replace("The van on Market Hill", title)
}

#[test]
fn a_scenario_file_is_read_chosen_and_begun_to_be_assessed() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("mine.ron");
    fs::write(&file, small_scenario("My own van")).unwrap();
    let sessions = folder.path().join("sessions");
    fs::create_dir(&sessions).unwrap();
    let mut desk = desk_on(&sessions);
    let carried = front(&desk).scenarios.len();
    act(&mut desk, Action::TypeScenarioFile(format!(" {} ", file.display())));
    act(&mut desk, Action::ReadScenarioFile);
    assert_eq!(desk.view().notice, None);
    let view = front(&desk);
    assert_eq!((view.chosen, view.scenarios.len()), (carried, carried + 1));
    assert_eq!(view.scenarios[carried].title, "My own van");
    assert_eq!(view.file, "");
    // Again it is the same one.
    act(&mut desk, Action::TypeScenarioFile(file.display().to_string()));
    act(&mut desk, Action::ReadScenarioFile);
    assert_eq!(front(&desk).scenarios.len(), carried + 1);

    act(&mut desk, Action::SetAssessed(true));
    assert!(front(&desk).is_assessed);
    act(&mut desk, Action::Begin);
    assert!(case(&desk).is_assessed);
    assert!(case(&desk).kept_at.contains("mine-7-1"));
    take(&mut desk, "hint question");
    let lines = &case(&desk).log[0].lines;
    assert!(lines.iter().any(|line| line.tone == Tone::Refused), "{lines:?}");
    act(&mut desk, Action::ToFront);
    let view = front(&desk);
    assert_eq!((view.chosen, view.is_assessed), (carried, true));
    let listed = &view.kept.as_ref().unwrap()[0];
    assert_eq!(listed.state, KeptState::Unfinished { steps: 1, is_assessed: true });
    assert!(matches!(listed.age, Some(Age::Now | Age::Minutes(_))), "{:?}", listed.age);

    // What its author breaks meanwhile is told with its place, and nothing is begun.
    fs::write(&file, "(format: 7)").unwrap();
    act(&mut desk, Action::Begin);
    let said = desk.view().notice.unwrap().to_owned();
    assert!(said.contains("mine.ron:1:"), "{said}");
    assert_eq!(front(&desk).chosen, carried);
    act(&mut desk, Action::ChooseScenario(1));
    act(&mut desk, Action::SetAssessed(false));
    assert_eq!((front(&desk).chosen, front(&desk).is_assessed), (1, false));
}

#[test]
fn a_scenario_named_at_the_start_is_chosen_or_told_of() {
    let folder = tempfile::tempdir().unwrap();
    let start = |scenario: &Path| {
        let scenario = Some(scenario.to_owned());
        let around = Surroundings { scenario, ..surroundings(folder.path()) };
        let mut desk = Desk::new(around, Arc::new(|| {}));
        settle(&mut desk);
        desk
    };
    let desk = start(Path::new("glasshouse-lane"));
    let view = front(&desk);
    assert_eq!(view.scenarios[view.chosen].title, "The van from Glasshouse Lane");
    assert_eq!((view.scenarios.len(), desk.view().notice), (ScenarioText::carried().len(), None));
    let good = folder.path().join("good.ron");
    fs::write(&good, small_scenario("Named")).unwrap();
    let desk = start(&good);
    assert_eq!(front(&desk).scenarios[front(&desk).chosen].title, "Named");
    for (name, text, told) in
        [("broken.ron", "(\n  title 3)", "broken.ron:2:"), ("binary.ron", "\u{0}", "binary.ron:1:")]
    {
        let broken = folder.path().join(name);
        fs::write(&broken, text).unwrap();
        let desk = start(&broken);
        let said = desk.view().notice.unwrap().to_owned();
        assert!(said.contains(told), "{said}");
        assert_eq!(front(&desk).chosen, 0);
    }
    let desk = start(&folder.path().join("none.ron"));
    assert!(desk.view().notice.unwrap().contains("none.ron"));
}

#[test]
fn the_round_is_offered_at_the_first_start_alone_and_can_always_be_had() {
    let folder = tempfile::tempdir().unwrap();
    let start = || {
        let settings_file = Some(folder.path().join("settings.json"));
        let around = Surroundings { settings_file, ..surroundings(folder.path()) };
        let mut desk = Desk::new(around, Arc::new(|| {}));
        settle(&mut desk);
        desk
    };
    let mut desk = start();
    assert!(front(&desk).is_first_start);
    act(&mut desk, Action::BeginGuide);
    assert_eq!(case(&desk).guide, Some(GuideView::default()));
    take(&mut desk, "dipstick");
    let guide = case(&desk).guide.unwrap();
    assert!(guide.is_done(Task::Look));
    assert_eq!(guide.next(), Some(Task::Sheet));
    act(&mut desk, Action::CloseGuide);
    assert_eq!(case(&desk).guide, None);
    take(&mut desk, "read job-sheet");
    assert_eq!((case(&desk).guide, case(&desk).log.len()), (None, 2));
    act(&mut desk, Action::ToFront);
    assert!(!front(&desk).is_first_start);

    let mut desk = start();
    assert!(!front(&desk).is_first_start);
    act(&mut desk, Action::BeginGuide);
    assert!(case(&desk).guide.is_some());
    act(&mut desk, Action::ToFront);
    act(&mut desk, Action::Begin);
    assert_eq!(case(&desk).guide, None);

    fs::remove_file(folder.path().join("settings.json")).unwrap();
    let mut desk = start();
    act(&mut desk, Action::DeclineGuide);
    assert!(!front(&desk).is_first_start);
    assert!(!front(&start()).is_first_start);
}

#[test]
fn another_language_changes_the_open_case_at_once_and_is_kept() {
    let folder = tempfile::tempdir().unwrap();
    let settings_file = Some(folder.path().join("settings.json"));
    let around =
        Surroundings { settings_file: settings_file.clone(), ..surroundings(folder.path()) };
    let mut desk = Desk::new(around, Arc::new(|| {}));
    settle(&mut desk);
    act(&mut desk, Action::Begin);
    take(&mut desk, "dipstick");
    take(&mut desk, "key start");
    act(&mut desk, Action::TypeLine("measure volts ".to_owned()));
    let english = case(&desk).clone();
    act(&mut desk, Action::SetLanguage("de"));
    let german = case(&desk).clone();
    assert_eq!(desk.words().language(), "de");
    assert_eq!(german.line.text, english.line.text);
    assert_eq!(german.log.len(), 2);
    assert_eq!(german.log[0].step, english.log[0].step);
    assert_ne!(german.log[0].lines, english.log[0].lines);
    let heard = |view: &CaseView| view.log[1].heard.clone().unwrap();
    assert_ne!(heard(&german).caption, heard(&english).caption);
    assert_eq!(heard(&german).outline, heard(&english).outline);
    assert_ne!(german.vehicle, english.vehicle);
    assert_ne!(german.groups, english.groups);
    assert_ne!(german.line.hint, english.line.hint);
    take(&mut desk, "key off");

    // While a step is under way the page speaks as it did, and as it should when the step is there.
    desk.act(Action::TypeLine("read job-sheet".to_owned()));
    desk.act(Action::TakeStep);
    desk.act(Action::SetLanguage("en-GB"));
    settle(&mut desk);
    let back = case(&desk).clone();
    assert_eq!(back.log.len(), 4);
    assert_eq!(back.log[..2], english.log[..]);
    assert_eq!(desk.session().unwrap().log().len(), 4);

    act(&mut desk, Action::SetLanguage("de"));
    let around = Surroundings { settings_file, ..surroundings(folder.path()) };
    let desk = Desk::new(around, Arc::new(|| {}));
    assert_eq!(desk.words().language(), "de");
}
