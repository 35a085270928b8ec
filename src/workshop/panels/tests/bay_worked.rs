//! The bay worked with the mouse in its picture and with the keyboard in its list.

use super::SIZES;
use super::case_worked::Work;
use crate::vehicle::spec::Id;
use crate::workshop::bay::camera::Viewpoint;
use crate::workshop::view::Page;
use crate::workshop::view::bay::BayView;
use egui::accesskit::Role;
use egui::{Key, Pos2, Rect, pos2};
use egui_kittest::kittest::Queryable as _;

pub(super) fn bay<'a>(work: &'a Work<'_>) -> &'a BayView {
    match work.harness.state().view().page {
        Page::Case(case) => &case.bay,
        page => panic!("no case is open: {}", page.name()),
    }
}

pub(super) fn begun(folder: &std::path::Path) -> Work<'_> {
    begun_on(folder, SIZES[0])
}

pub(super) fn begun_on(folder: &std::path::Path, size: egui::Vec2) -> Work<'_> {
    let mut work = Work::on(folder, size);
    work.click_words("Begin");
    work
}

pub(super) fn picture(work: &Work<'_>) -> Rect {
    let is_picture = |node: &egui_kittest::kittest::AccessKitNode<'_>| {
        node.label().is_some_and(|label| label.starts_with("Engine bay."))
    };
    work.harness.query_by(is_picture).unwrap().rect()
}

/// Where a thing is in the picture.
pub(super) fn place(work: &Work<'_>, id: &str) -> Pos2 {
    let (bay, rect) = (bay(work), picture(work));
    let thing = bay.model.thing(&Id::from(id)).unwrap();
    let pose = thing.pose(bay.known.is_off(&thing.moves_with));
    let at = bay.orbit.seen(thing.middle(pose), rect.width() / rect.height()).unwrap();
    pos2(rect.left() + at.x * rect.width(), rect.top() + at.y * rect.height())
}

/// Pressed and let go at once: settling in between would make it a long press, which is no click.
pub(super) fn click_at(work: &mut Work<'_>, at: Pos2) {
    work.harness.hover_at(at);
    work.settle();
    for pressed in [true, false] {
        work.harness.event(egui::Event::PointerButton {
            pos: at,
            button: egui::PointerButton::Primary,
            pressed,
            modifiers: egui::Modifiers::NONE,
        });
    }
    work.settle();
}

#[test]
fn what_is_pointed_at_says_its_name_and_comes_off_by_its_button() {
    let folder = tempfile::tempdir().unwrap();
    let mut work = begun(folder.path());
    let at = place(&work, "engine-cover");
    work.harness.hover_at(at);
    work.settle();
    work.harness.get_by_label("Under the pointer: engine cover");
    click_at(&mut work, at);
    assert_eq!(bay(&work).card.as_ref().unwrap().id, Id::from("engine-cover"));
    work.click_words("remove engine-cover");
    assert_eq!(work.steps(), ["remove engine-cover"]);
    assert!(bay(&work).known.is_off(&Id::from("engine-cover")));
    // The chosen place offers the way back now, and the cover is no more where it was.
    work.button("refit engine-cover");
    work.harness.get_by_label("Off; it lies on the bench.");
    click_at(&mut work, at);
    assert_ne!(bay(&work).card.as_ref().map(|card| card.id.as_str()), Some("engine-cover"));
}

#[test]
fn the_list_goes_to_a_place_by_key_and_says_what_is_in_the_way() {
    let folder = tempfile::tempdir().unwrap();
    let mut work = begun(folder.path());
    let before = bay(&work).orbit;
    work.button("air duct").focus();
    work.settle();
    work.key(Key::Enter);
    assert_ne!(bay(&work).orbit, before);
    let card = bay(&work).card.clone().unwrap();
    assert_eq!(card.id, Id::from("air-duct"));
    let blocked = card.blocked.unwrap();
    assert!(blocked.contains("engine cover") && blocked.contains("duct clamp"), "{blocked}");
    work.harness.get_by_label(&blocked);
}

#[test]
fn keys_on_the_picture_move_the_camera() {
    let folder = tempfile::tempdir().unwrap();
    let mut work = begun(folder.path());
    let corner = picture(&work).left_top() + egui::vec2(3.0, 3.0);
    click_at(&mut work, corner);
    work.key(Key::Num6);
    assert_eq!(bay(&work).viewpoint, Some(Viewpoint::Bench));
    let bench = bay(&work).orbit;
    work.key(Key::ArrowLeft);
    assert!(bay(&work).orbit.yaw > bench.yaw && bay(&work).viewpoint.is_none());
    work.key(Key::Minus);
    assert!(bay(&work).orbit.distance > bench.distance);
    work.key(Key::Home);
    assert_eq!(bay(&work).viewpoint, Some(Viewpoint::Whole));
    work.click("2 Intake");
    assert_eq!(bay(&work).viewpoint, Some(Viewpoint::Intake));
}

#[test]
fn a_place_goes_into_the_line_that_waits_for_one() {
    let folder = tempfile::tempdir().unwrap();
    let mut work = begun(folder.path());
    work.button("battery positive post").scroll_to_me();
    work.settle();
    work.click("battery positive post");
    work.click_words("measure volts battery-plus …");
    work.button("battery negative post").scroll_to_me();
    work.settle();
    work.click("battery negative post");
    work.click_words("Put “battery-minus” into the line");
    work.click("Take the step");
    assert_eq!(work.steps(), ["measure volts battery-plus battery-minus"]);
}

#[test]
fn every_place_of_the_bay_is_in_the_list() {
    let folder = tempfile::tempdir().unwrap();
    let work = begun(folder.path());
    for place in &bay(&work).places {
        let count = work.harness.query_all_by_role_and_label(Role::Button, &place.name).count();
        assert_eq!(count, 1, "{}", place.name);
    }
}
