//! Settings that are kept, scenarios that are chosen, the first round, and another language.

use super::*;

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
