//! A finished session looked back at: it goes from step to step, plays by itself, and answers what else could have been
//! done.

use super::{act, desk_on, take};
use crate::vehicle::spec::Id;
use crate::workshop::desk::Desk;
use crate::workshop::view::Page;
use crate::workshop::view::action::Action;
use crate::workshop::view::debrief::{
    DebriefAction, DebriefView, Direction, LookBackView, Others, Pace, Side,
};

/// A short case that is handed on.
const STEPS: [&str; 6] = [
    "remove engine-cover",
    "unplug intake-connector",
    "look intake-connector",
    "plug intake-connector",
    "refit engine-cover",
    "hand over referred",
];

fn debrief(desk: &Desk) -> &DebriefView {
    match desk.view().page {
        Page::Debrief(view) => view,
        page => panic!("no debrief: {}, {:?}", page.name(), desk.view().notice),
    }
}

fn look_back(desk: &Desk) -> &LookBackView {
    debrief(desk).look_back.as_ref().unwrap()
}

fn want(desk: &mut Desk, wanted: DebriefAction) {
    act(desk, Action::Debrief(wanted));
}

#[test]
fn a_finished_session_is_walked_played_and_asked() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = desk_on(folder.path());
    act(&mut desk, Action::Begin);
    for line in STEPS {
        take(&mut desk, line);
    }
    assert_eq!(look_back(&desk).log.len(), STEPS.len());
    assert_eq!(look_back(&desk).regrets.len(), STEPS.len());
    for (name, chances) in &look_back(&desk).course.rows {
        assert_eq!(chances.len(), STEPS.len() + 1, "{name}");
    }
    let sums = (0..=STEPS.len()).map(|point| -> f32 {
        look_back(&desk).course.rows.iter().map(|(_, chances)| chances[point]).sum()
    });
    for sum in sums {
        assert!((sum - 1.0).abs() < 1e-4, "{sum}");
    }

    // The bay is as it was after each step, and is drawn only where it is shown.
    assert!(desk.bay().is_none());
    want(&mut desk, DebriefAction::Show(Side::Steps));
    let cover = Id::from("engine-cover");
    for (at, is_off) in [(0, true), (3, true), (4, false), (5, false)] {
        want(&mut desk, DebriefAction::GoTo(at));
        assert_eq!(desk.bay().unwrap().known.is_off(&cover), is_off, "after step {}", at + 1);
    }
    want(&mut desk, DebriefAction::GoTo(usize::MAX));
    assert_eq!(look_back(&desk).at, 5);

    // It plays to either end and stands there.
    want(&mut desk, DebriefAction::SetPace(Pace::Fast));
    want(&mut desk, DebriefAction::Run(Some(Direction::Back)));
    let mut waits = 0;
    while let Some(wait) = desk.pass(Pace::Fast.seconds()) {
        assert!(wait <= Pace::Fast.seconds());
        waits += 1;
    }
    assert_eq!((waits, look_back(&desk).at, look_back(&desk).replay.runs), (4, 0, None));
    want(&mut desk, DebriefAction::Run(Some(Direction::Forwards)));
    assert_eq!(desk.pass(0.1), Some(Pace::Fast.seconds() - 0.1));
    assert_eq!(look_back(&desk).at, 0);
    desk.pass(0.2);
    assert_eq!(look_back(&desk).at, 1);
    want(&mut desk, DebriefAction::Run(None));
    assert_eq!(desk.pass(10.0), None);

    // What else could have been done is kept for each step.
    want(&mut desk, DebriefAction::AskOthers);
    let known = look_back(&desk).others.clone();
    let Others::Known { rows, .. } = &known else { panic!("{known:?}") };
    assert!(rows.len() > 3 && rows.iter().any(|row| row.read.is_some()));
    want(&mut desk, DebriefAction::GoTo(2));
    assert_eq!(look_back(&desk).others, Others::NotAsked);
    want(&mut desk, DebriefAction::GoTo(1));
    assert_eq!(look_back(&desk).others, known);

    // Any other step can be asked about, and what is no step is said.
    want(&mut desk, DebriefAction::TypeAsked("dipstik".to_owned()));
    want(&mut desk, DebriefAction::Ask);
    assert!(look_back(&desk).asked_problem.is_some());
    want(&mut desk, DebriefAction::TypeAsked("dipstick".to_owned()));
    assert_eq!(look_back(&desk).asked_problem, None);
    want(&mut desk, DebriefAction::Ask);
    assert!(look_back(&desk).answer[0].contains("dipstick"), "{:?}", look_back(&desk).answer);
    want(&mut desk, DebriefAction::TypeAsked("refit engine-cover".to_owned()));
    want(&mut desk, DebriefAction::GoTo(0));
    want(&mut desk, DebriefAction::Ask);
    assert_eq!(look_back(&desk).answer.len(), 1, "{:?}", look_back(&desk).answer);
}
