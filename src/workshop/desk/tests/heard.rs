//! What a step lets be heard, as whoever plays it is told.

use super::*;

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
