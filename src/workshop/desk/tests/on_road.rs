//! Drives as they go, broken off or not.

use super::*;
use crate::session::step::Step;
use crate::workshop::view::road::{RoadAction, RoadView};

fn road(desk: &Desk) -> &RoadView {
    case(desk).road.as_ref().unwrap()
}

fn begun(folder: &Path) -> Desk {
    let mut desk = desk_on(folder);
    act(&mut desk, Action::TypeSeed("7".to_owned()));
    act(&mut desk, Action::Begin);
    desk
}

#[test]
fn a_drive_is_drawn_as_it_goes_and_is_a_step_when_it_is_over() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = begun(folder.path());
    take(&mut desk, "key on");
    take(&mut desk, "read codes");
    take(&mut desk, "drive customers-road");
    assert_eq!(case(&desk).log.len(), 2, "nothing is taken before it is known where it ends");
    assert_eq!((road(&desk).at, road(&desk).seen, road(&desk).lacks_reader), (0.0, 0, false));
    assert_eq!(road(&desk).charts.len(), 4, "two speeds, two camshafts");
    let wait = desk.pass(1.0);
    assert!(wait.is_some_and(|seconds| seconds > 0.0));
    assert_eq!(road(&desk).at, 20.0);
    assert!(road(&desk).seen > 100, "{}", road(&desk).seen);
    // Another step has to wait, and nobody gets out: who wants to leave pulls in.
    take(&mut desk, "dipstick");
    assert_eq!(case(&desk).log.len(), 2);
    assert_eq!(road(&desk).at, 20.0);
    act(&mut desk, Action::Road(RoadAction::ToTheEnd));
    assert!(case(&desk).road.is_none());
    assert_eq!(desk.pass(1.0), None);
    let direct = taken_directly(7, &["key on", "read codes", "drive customers-road"]);
    assert_eq!(desk.session().unwrap().digest(), direct.digest());
}

#[test]
fn whoever_pulls_in_has_driven_so_far() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = begun(folder.path());
    take(&mut desk, "drive customers-road");
    assert!(road(&desk).lacks_reader);
    assert_eq!(road(&desk).charts.len(), 2, "the dashboard alone");
    desk.pass(0.47);
    act(&mut desk, Action::ToFront);
    let direct = taken_directly(7, &["drive customers-road for 10 s"]);
    assert_eq!(desk.session().unwrap().digest(), direct.digest());
    assert!(case(&desk).log[0].lines.iter().any(|line| line.text.contains("10 s")));
}

#[test]
fn time_that_passes_brings_it_to_its_end() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = begun(folder.path());
    take(&mut desk, "drive customers-road");
    for _ in 0..100 {
        desk.pass(1.0);
    }
    settle(&mut desk);
    let log = desk.session().unwrap().log();
    assert!(matches!(log[0].step, Step::Drive { stop_after: None, .. }));
}

#[test]
fn limit_a_window_that_is_closed_on_the_way_keeps_what_was_driven() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = begun(folder.path());
    take(&mut desk, "drive customers-road");
    desk.pass(0.5);
    drop(desk);
    let entries = read(&only_file(folder.path()), ReadMode::AllowTorn).unwrap().entries;
    assert_eq!(entries.len(), 1);
    assert!(matches!(entries[0].step, Step::Drive { stop_after: Some(10), .. }));
}

#[test]
fn limit_a_drive_that_is_refused_says_so_at_once() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = begun(folder.path());
    take(&mut desk, "gauge fit");
    take(&mut desk, "drive customers-road");
    assert!(case(&desk).road.is_none());
    assert_eq!(case(&desk).log.len(), 2);
    assert_eq!(case(&desk).log[1].lines[0].tone, Tone::Refused);
}
