//! The instruments used with the mouse in tray and picture and with the keyboard alone, on a real session.

use super::SIZES;
use super::bay_worked::{bay, begun, begun_on, click_at, picture, place};
use super::case_worked::Work;
use crate::workshop::desk::tests::taken_directly;
use crate::workshop::view::Page;
use crate::workshop::view::tray::{End, Shown, TrayView};
use egui::accesskit::Role;
use egui::{Key, Modifiers, Pos2, Vec2};
use egui_kittest::kittest::{NodeT as _, Queryable as _};

pub(super) fn tray<'a>(work: &'a Work<'_>) -> &'a TrayView {
    match work.harness.state().view().page {
        Page::Case(case) => &case.tray,
        page => panic!("no case is open: {}", page.name()),
    }
}

fn at(work: &Work<'_>, end: End) -> Option<String> {
    tray(work).ends[&end].place().map(|place| place.id.to_string())
}

/// Drags from a place to another: pressed, moved off, and let go there.
fn drag(work: &mut Work<'_>, from: Pos2, to: Pos2) {
    work.harness.hover_at(from);
    work.harness.run();
    work.harness.drag_at(from);
    work.harness.run_steps(1);
    for way in [0.3, 0.7, 1.0] {
        work.harness.hover_at(from.lerp(to, way));
        work.harness.run_steps(1);
    }
    work.harness.drop_at(to);
    work.settle();
}

/// The same steps typed come to the same session to the bit.
pub(super) fn same_as_typed(work: &Work<'_>, lines: &[&str]) {
    assert_eq!(work.steps(), lines);
    assert_eq!(work.digest(), format!("{:?}", taken_directly(7, lines).digest()));
}

#[test]
fn a_voltage_is_measured_with_leads_dragged_onto_the_battery() {
    let folder = tempfile::tempdir().unwrap();
    let mut work = begun_on(folder.path(), SIZES[0]);
    work.click("Instruments");
    let red = work.button("red lead: nowhere yet").rect();
    let plus = place(&work, "battery-plus");
    drag(&mut work, red.left_center() - Vec2::X * 12.0, plus);
    assert_eq!(at(&work, End::Red).as_deref(), Some("battery-plus"));
    // The row can be taken hold of as well; the battery has two posts.
    let black = work.button("black lead: nowhere yet").rect();
    let case = place(&work, "battery");
    drag(&mut work, black.center(), case);
    assert_eq!(at(&work, End::Black), None);
    work.click("B: battery negative post");
    assert_eq!(at(&work, End::Black).as_deref(), Some("battery-minus"));
    work.click("Take the reading");
    let shown = work.harness.query_by_label_contains("Volts DC: 12.").is_some();
    assert!(shown, "{:?}", tray(&work).reading);
    same_as_typed(&work, &["measure volts battery-plus battery-minus"]);
}

#[test]
fn a_lead_is_dragged_on_from_where_it_is_and_what_is_nothing_leaves_it_there() {
    let folder = tempfile::tempdir().unwrap();
    let mut work = begun_on(folder.path(), SIZES[0]);
    work.click("Instruments");
    work.click("red lead: nowhere yet");
    let plus = place(&work, "battery-plus");
    click_at(&mut work, plus);
    assert_eq!(at(&work, End::Red).as_deref(), Some("battery-plus"));
    // The next lead is in hand; Esc lets go of it.
    assert_eq!(tray(&work).held, Some(End::Black));
    work.key(Key::Escape);
    assert_eq!(tray(&work).held, None);
    let handle = plus - Vec2::Y * 30.0;
    let minus = place(&work, "battery-minus");
    drag(&mut work, handle, minus);
    assert_eq!(at(&work, End::Red).as_deref(), Some("battery-minus"));
    let corner = picture(&work).left_top() + Vec2::splat(3.0);
    drag(&mut work, minus - Vec2::Y * 30.0, corner);
    assert_eq!(at(&work, End::Red).as_deref(), Some("battery-minus"));
    assert_eq!(bay(&work).card, None);
}

#[test]
fn a_resistance_is_measured_with_the_keyboard_alone() {
    for size in SIZES {
        let folder = tempfile::tempdir().unwrap();
        let mut work = begun_on(folder.path(), size);
        work.key(Key::F4);
        assert_eq!(work.focused(), "Multimeter");
        work.tab_to("Ohms");
        work.key(Key::Enter);
        work.tab_to("red lead: nowhere yet");
        work.key(Key::Enter);
        assert_eq!(work.focused(), "R: battery negative post");
        work.tab_to("R: engine ground");
        work.key(Key::Enter);
        assert_eq!(work.focused(), "B: battery negative post");
        work.key(Key::Enter);
        assert_eq!(work.focused(), "Take the reading");
        work.key(Key::Enter);
        same_as_typed(&work, &["measure ohms engine-ground battery-minus"]);
        // On to the words and back.
        work.key(Key::F3);
        assert_eq!(work.focused(), "Ask and look");
        work.key(Key::F4);
        assert_eq!(work.focused(), "Multimeter");
    }
}

#[test]
fn what_was_predicted_stands_beside_what_was_read() {
    let folder = tempfile::tempdir().unwrap();
    let mut work = begun(folder.path());
    work.click("Instruments");
    work.click("Predict first");
    assert_eq!(work.line(), "predict ");
    assert_eq!(work.focused(), "Step");
    work.harness.event(egui::Event::Text("1 to 2 V".to_owned()));
    work.settle();
    work.key(Key::Enter);
    work.harness.get_by_label("Predict from 1 to 2 V: waits for the reading.");
    for (lead, post) in
        [("red lead: nowhere yet", "R: battery positive post"), ("", "B: battery negative post")]
    {
        if !lead.is_empty() {
            work.click(lead);
        }
        work.click_words(post);
    }
    work.click_words("Take the reading");
    let prediction = tray(&work).reading.clone().unwrap().prediction.unwrap();
    assert!(!prediction.met);
    work.harness.get_by_label_contains("Predict from 1 to 2 V. The reading lies outside");
    // Another function is another reading, which was not taken.
    work.click_words("Amps DC");
    assert_eq!(tray(&work).reading, None);
    work.harness.get_by_label("Amps DC: nothing read");
}

#[test]
fn every_tool_is_used_with_the_keyboard_alone() {
    for size in SIZES {
        let folder = tempfile::tempdir().unwrap();
        let mut work = begun_on(folder.path(), size);
        let put = |work: &mut Work<'_>, end: &str, place: &str| {
            work.tab_to(end);
            work.key(Key::Enter);
            work.tab_to(place);
            work.key(Key::Enter);
        };
        let take_up = |work: &mut Work<'_>, tool: &str| {
            work.key(Key::F4);
            work.tab_to(tool);
            work.key(Key::Enter);
        };
        take_up(&mut work, "Test lamp");
        put(&mut work, "lamp’s tip: nowhere yet", "T: battery positive post");
        assert_eq!(work.focused(), "C: battery negative post");
        work.key(Key::Enter);
        assert_eq!(work.focused(), "Touch and look");
        work.key(Key::Enter);
        take_up(&mut work, "Current probe");
        put(&mut work, "probe’s jaws: nowhere yet", "J: battery cable");
        assert_eq!(work.focused(), "Take the reading");
        work.key(Key::Enter);
        take_up(&mut work, "Power lead");
        put(&mut work, "power lead: nowhere yet", "P: exhaust valve");
        work.key(Key::Enter);
        take_up(&mut work, "Scope");
        put(&mut work, "scope’s probe: nowhere yet", "S: exhaust valve");
        work.key(Key::Enter);
        take_up(&mut work, "Code reader");
        work.tab_to("Read");
        work.key(Key::Enter);
        take_up(&mut work, "Gauge");
        work.tab_to("Screw it in");
        work.key(Key::Enter);
        work.key(Key::F4);
        work.tab_to("Read the gauge");
        work.key(Key::Enter);
        take_up(&mut work, "Dipstick");
        work.tab_to("Pull the dipstick");
        work.key(Key::Enter);
        take_up(&mut work, "Road");
        work.tab_to("town loop");
        work.key(Key::Enter);
        assert_eq!(work.focused(), "Drive");
        assert_eq!(tray(&work).ready.line.as_deref(), Some("drive town-loop"));
        let lines = [
            "lamp battery-plus battery-minus",
            "clamp battery-cable",
            "power exhaust-valve for 2 s",
            "scope current exhaust-valve",
            "read codes",
            "gauge fit",
            "gauge idle",
            "dipstick",
        ];
        same_as_typed(&work, &lines);
    }
}

#[test]
fn a_drive_is_watched_and_broken_off_by_mouse_and_by_key() {
    for by_key in [false, true] {
        let folder = tempfile::tempdir().unwrap();
        let mut work = begun(folder.path());
        work.take_line("key on");
        work.take_line("read codes");
        work.take_line("drive customers-road");
        let shown = |work: &Work<'_>, words: &str| {
            work.harness.query_all_by_label_contains(words).next().is_some()
        };
        assert!(shown(&work, "On the road"));
        work.harness.state_mut().pass(1.99);
        work.settle();
        assert!(shown(&work, "0:39 of"));
        assert!(shown(&work, "wanted (dashed)"));
        if by_key {
            work.key(Key::Escape);
        } else {
            work.click("Turn back (Esc)");
        }
        assert!(!shown(&work, "On the road"));
        same_as_typed(&work, &["key on", "read codes", "drive customers-road for 40 s"]);
    }
}

#[test]
fn a_repair_is_done_over_the_counter_by_mouse_and_by_key() {
    let before = ["remove engine-cover", "unplug intake-connector", "remove intake-valve"];
    for by_key in [false, true] {
        let folder = tempfile::tempdir().unwrap();
        let mut work = begun(folder.path());
        for line in before {
            work.take_line(line);
        }
        let choose = |work: &mut Work<'_>, label: &str| {
            if by_key {
                let begins = format!("{label}\n");
                let is_there = |now: String| now == label || now.starts_with(&begins);
                for _ in 0..120 {
                    if is_there(work.focused()) {
                        break;
                    }
                    work.key(Key::Tab);
                }
                assert!(is_there(work.focused()), "Tab never reaches `{label}`");
                work.key(Key::Enter);
            } else {
                work.click_words(label);
            }
        };
        if by_key {
            work.key(Key::F4);
        } else {
            work.click("Instruments");
        }
        for label in
            ["Repair, proof", "Customer", "Ask the customer to approve the repair", "Do it"]
        {
            choose(&mut work, label);
        }
        for label in ["Cleaning", "Clean screen and spool: intake valve", "Do it"] {
            choose(&mut work, label);
        }
        // What has no words yet is gone on with in the field.
        choose(&mut work, "Record, hand over");
        choose(&mut work, "Write the cause …");
        work.harness.event(egui::Event::Text("Sludge".to_owned()));
        work.settle();
        work.key(Key::Enter);
        let after = ["ask approval", "clean intake-valve", "write cause Sludge"];
        same_as_typed(&work, &[&before[..], &after[..]].concat());
    }
}

/// The figures that the two cursors of the scope say.
fn cursors(work: &Work<'_>) -> Vec<String> {
    let sliders = work.harness.query_all_by_role(Role::Slider);
    sliders.map(|node| node.accesskit_node().label().unwrap_or_default()).collect()
}

#[test]
fn a_capture_is_read_with_cursors_by_mouse_and_by_key() {
    let folder = tempfile::tempdir().unwrap();
    let mut work = begun(folder.path());
    for line in ["remove engine-cover", "key on"] {
        work.take_line(line);
    }
    work.click("Instruments");
    work.click("Scope");
    work.click("scope’s probe: nowhere yet");
    work.click_words("S: intake valve");
    work.click_words("Capture");
    assert!(matches!(tray(&work).reading.as_ref().unwrap().shown, Shown::Course(_)));
    let before = cursors(&work);
    assert!(before[0].starts_with("Cursor 1: ") && before[0].ends_with(" A"), "{before:?}");
    // By key: one point on, ten on, back to the beginning.
    let first =
        |work: &Work<'_>| work.harness.query_all_by_role(Role::Slider).next().unwrap().rect();
    work.harness.query_all_by_role(Role::Slider).next().unwrap().focus();
    work.settle();
    let left = first(&work).left();
    work.key(Key::ArrowRight);
    let one = first(&work).left() - left;
    work.harness.key_press_modifiers(Modifiers::SHIFT, Key::ArrowRight);
    work.settle();
    let eleven = first(&work).left() - left;
    assert!(one > 0.0 && (eleven / one - 11.0).abs() < 0.2, "{one} {eleven}");
    work.key(Key::Home);
    assert!(cursors(&work)[0].starts_with("Cursor 1: 0.0 ms"), "{:?}", cursors(&work));
    // By mouse: the second is dragged, and stays inside.
    let second = work.harness.query_all_by_role(Role::Slider).nth(1).unwrap().rect().center();
    drag(&mut work, second, second + Vec2::X * 900.0);
    let after = cursors(&work);
    assert_ne!(after[1], before[1]);
    assert!(work.harness.query_by_label_contains("From 1 to 2: ").is_some());
    same_as_typed(&work, &["remove engine-cover", "key on", "scope current intake-valve"]);
}

#[test]
fn codes_stand_in_a_table_and_a_click_in_words() {
    let folder = tempfile::tempdir().unwrap();
    let mut work = begun(folder.path());
    for line in ["remove engine-cover", "key on"] {
        work.take_line(line);
    }
    work.click("Instruments");
    work.click("Code reader");
    work.click("Read");
    for head in ["Code", "Status", "Meaning"] {
        work.harness.get_by_role_and_label(Role::Label, head);
    }
    work.click_words("Readiness");
    assert_eq!(tray(&work).reading, None);
    work.click_words("Read");
    assert!(matches!(tray(&work).reading.as_ref().unwrap().shown, Shown::Tables(_)));
    for line in ["key off", "unplug intake-connector"] {
        work.take_line(line);
    }
    work.click_words("Power lead");
    work.click_words("power lead: nowhere yet");
    work.click_words("P: intake valve");
    work.click_words("1 s");
    work.click_words("Power it and listen");
    let reading = tray(&work).reading.clone().unwrap();
    assert!(matches!(reading.shown, Shown::Clicks(_)), "{reading:?}");
    for line in &reading.words {
        assert!(work.harness.query_all_by_label(line).next().is_some(), "{line}");
    }
    let lines = [
        "remove engine-cover",
        "key on",
        "read codes",
        "read readiness",
        "key off",
        "unplug intake-connector",
        "power intake-valve for 1 s",
    ];
    same_as_typed(&work, &lines);
}
