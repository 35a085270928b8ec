//! A case written through the panels, with the mouse and with the keyboard alone.

use super::SIZES;
use super::case_worked::Work;
use crate::workshop::view::Page;
use crate::workshop::view::writer::{Asked, WriterView};
use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT as _, Queryable as _};

fn written<'w>(work: &'w Work<'_>) -> &'w WriterView {
    match work.harness.state().view().page {
        Page::Writer(view) => view,
        page => panic!("nothing is written: {}", page.name()),
    }
}

fn keys(work: &mut Work<'_>, modifiers: Modifiers, key: Key) {
    work.harness.key_press_modifiers(modifiers, key);
    work.settle();
}

#[test]
fn a_case_is_begun_changed_taken_back_and_saved_by_keys_alone() {
    for size in SIZES {
        let folder = tempfile::tempdir().unwrap();
        let mut work = Work::on(&folder.path().join("sessions"), size);
        work.key(Key::F5);
        let starter = "A small case for the Harrowfen Dray";
        work.button(starter).focus();
        work.settle();
        work.key(Key::Enter);
        let first = written(&work).text.clone();

        // F3 leads to the first field of the forms: the title.
        work.key(Key::F3);
        keys(&mut work, Modifiers::COMMAND, Key::A);
        work.type_text("Typed by key");
        assert_eq!(written(&work).text, first.replace("My first case", "Typed by key"));
        // F2 leads to the text, where the cursor stands at the end.
        work.key(Key::F2);
        keys(&mut work, Modifiers::COMMAND, Key::End);
        work.type_text("oops");
        assert!(written(&work).text.ends_with("oops"));
        assert!(!written(&work).is_live);
        // F4 and Enter lead to the place of the first problem, which is what was typed last.
        work.key(Key::F4);
        work.key(Key::Enter);
        let view = written(&work);
        let at = view.text.char_indices().nth(view.cursor.at).unwrap().0;
        assert_eq!(&view.text[at..], "oops");
        keys(&mut work, Modifiers::COMMAND, Key::Z);
        assert!(written(&work).is_live);
        keys(&mut work, Modifiers::COMMAND, Key::Z);
        assert_eq!(written(&work).text, first);
        keys(&mut work, Modifiers::COMMAND | Modifiers::SHIFT, Key::Z);
        assert!(written(&work).text.contains("Typed by key"));

        // Nothing is lost by a key that leaves, and the place to save is asked for and typed.
        keys(&mut work, Modifiers::COMMAND, Key::S);
        assert!(matches!(written(&work).asked, Some(Asked::Path(_))));
        work.key(Key::Escape);
        assert_eq!(written(&work).asked, None);
        keys(&mut work, Modifiers::COMMAND, Key::S);
        keys(&mut work, Modifiers::COMMAND, Key::A);
        let path = folder.path().join("by-key.ron");
        work.type_text(&path.display().to_string());
        work.key(Key::Enter);
        assert_eq!(std::fs::read_to_string(&path).unwrap(), written(&work).text);
        assert!(!written(&work).is_changed);
    }
}

#[test]
fn a_case_is_changed_and_left_with_the_mouse() {
    let folder = tempfile::tempdir().unwrap();
    let mut work = Work::on(&folder.path().join("sessions"), SIZES[0]);
    work.click("Write a case");
    work.click_words("A small case for the Coldbeck Heron");
    work.click("Faults");
    work.harness.get_by_role_and_label(Role::ComboBox, "Fault 1: Kind").click();
    work.settle();
    work.click("sticking spool");
    assert!(written(&work).text.contains("kind: StickingSpool, place: \"intake-valve\""));
    work.click("Undo");
    assert!(!written(&work).text.contains("StickingSpool"));
    work.click("Redo");
    work.click("As the apprentice reads it");
    assert!(work.harness.query_by_label_contains("Coldbeck Heron").is_some());
    work.click("The bay");
    assert!(work.harness.query_by_label_contains("Engine bay. Arrow keys").is_some());
    work.click("Front page");
    assert_eq!(written(&work).asked, Some(Asked::Leave));
    work.click("Go on writing");
    work.click("Front page");
    work.click("Leave without them");
    assert!(matches!(work.harness.state().view().page, Page::Front(_)));
}

#[test]
fn a_number_of_a_line_stands_beside_it_and_fields_are_found_by_name() {
    let folder = tempfile::tempdir().unwrap();
    let mut work = Work::on(&folder.path().join("sessions"), SIZES[0]);
    work.click("Write a case");
    work.click_words("A small case for the Harrowfen Dray");
    let lines = written(&work).text.lines().count();
    assert!(lines > 90, "{lines}");
    let text = work.harness.get_by_role_and_label(Role::MultilineTextInput, "Text");
    assert!(text.accesskit_node().value().is_some_and(|value| value.contains("My first case")));
    work.harness.get_by_role_and_label(Role::TextInput, "Title");
    work.click("Prices and times");
    work.harness.get_by_role_and_label(Role::TextInput, "Labour for an hour");
    work.harness.get_by_role_and_label(Role::TextInput, "Valve hd-4470-1");
}
