//! Whole cases worked through the panels, with the mouse and with the keyboard, on a real session.

use super::{SIZES, window};
use crate::workshop::desk::Desk;
use crate::workshop::desk::tests::{settle, surroundings, taken_directly};
use crate::workshop::view::Page;
use crate::workshop::view::action::Action;
use egui::accesskit::Role;
use egui::{Key, Modifiers, Theme, Vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use std::path::Path;
use std::sync::Arc;

/// A desk behind panels.
pub(super) struct Work<'a> {
    pub(super) harness: Harness<'a, Desk>,
}

impl Work<'_> {
    pub(super) fn on(folder: &Path, size: Vec2) -> Self {
        let desk = Desk::new(surroundings(folder), Arc::new(|| {}));
        let harness = window(size, Theme::Light, desk, |desk, draw| {
            desk.listen();
            let actions = {
                let view = desk.view();
                draw(&view, desk.words())
            };
            for action in actions {
                desk.act(action);
            }
        });
        let mut work = Self { harness };
        work.settle();
        work
    }

    /// Draws until nothing changes any more.
    pub(super) fn settle(&mut self) {
        self.harness.run();
        settle(self.harness.state_mut());
        self.harness.run();
    }

    pub(super) fn click(&mut self, label: &str) {
        self.harness.get_by_role_and_label(Role::Button, label).click();
        self.settle();
    }

    /// Clicks the button that begins with these words; what they mean stands under them.
    pub(super) fn click_words(&mut self, words: &str) {
        // A long list is scrolled to where the mouse can reach the button.
        self.button(words).scroll_to_me();
        self.settle();
        self.button(words).click();
        self.settle();
    }

    pub(super) fn button<'w>(&'w self, words: &'w str) -> egui_kittest::Node<'w> {
        let begins = format!("{words}\n");
        let button = self.harness.query_by(move |node| {
            let label = node.label();
            node.role() == Role::Button
                && label.is_some_and(|label| label == words || label.starts_with(&begins))
        });
        button.unwrap_or_else(|| panic!("no button begins with `{words}`"))
    }

    pub(super) fn key(&mut self, key: Key) {
        self.harness.key_press(key);
        self.settle();
    }

    pub(super) fn type_text(&mut self, text: &str) {
        self.harness.event(egui::Event::Text(text.to_owned()));
        self.settle();
    }

    fn take(&mut self, line: &str) {
        self.type_text(line);
        self.key(Key::Enter);
    }

    /// The name of what has the focus; nothing where nothing has it.
    pub(super) fn focused(&self) -> String {
        let focused = |node: &egui_kittest::Node<'_>| node.is_focused();
        let node = self.harness.root().children_recursive().find(focused);
        let access = node.map(|node| node.accesskit_node());
        access
            .and_then(|access| {
                access.label().or_else(|| access.labelled_by().find_map(|by| by.value()))
            })
            .unwrap_or_default()
    }

    /// Goes on with Tab until something has the focus, as many times as there are controls.
    pub(super) fn tab_to(&mut self, name: &str) {
        for _ in 0..120 {
            if self.focused() == name {
                return;
            }
            self.key(Key::Tab);
        }
        panic!("Tab never reaches `{name}`; now on `{}`", self.focused());
    }

    /// Types a line and takes its step, wherever the focus was.
    pub(super) fn take_line(&mut self, line: &str) {
        self.key(Key::F2);
        self.take(line);
    }

    pub(super) fn line(&self) -> String {
        match self.harness.state().view().page {
            Page::Case(case) => case.line.text.clone(),
            page => panic!("no case is open: {}", page.name()),
        }
    }

    pub(super) fn steps(&self) -> Vec<String> {
        match self.harness.state().view().page {
            Page::Case(case) => case.log.iter().map(|step| step.step.clone()).collect(),
            page => panic!("no case is open: {}", page.name()),
        }
    }

    pub(super) fn digest(&self) -> String {
        format!("{:?}", self.harness.state().session().unwrap().digest())
    }
}

#[test]
fn a_case_is_worked_with_the_mouse_alone() {
    let folder = tempfile::tempdir().unwrap();
    let mut work = Work::on(folder.path(), SIZES[0]);
    work.click("Begin");
    work.click_words("dipstick");
    work.click("Take the step");
    work.click("Run");
    work.click_words("key");
    work.click_words("on");
    work.click("Take the step");
    work.click("Talk to the control module");
    work.click_words("read");
    work.click_words("codes");
    work.click("Take the step");
    work.click("Reason");
    work.click_words("suspect");
    work.click_words("low-oil");
    work.click_words("sump");
    for digit in ["9", "0"] {
        work.click(digit);
    }
    work.click_words("%");
    work.click("Remove last word");
    work.click("Take the step");
    work.click_words("predict");
    work.click("1");
    work.click("2");
    work.click_words("to");
    work.click("1");
    work.click("3");
    work.click_words("V");
    work.click("Take the step");
    work.click("Measure");
    work.click_words("measure");
    work.click_words("volts");
    work.click_words("battery-plus");
    work.click_words("engine-ground");
    work.click("Take the step");
    // A line that was begun is taken back.
    work.click_words("zero");
    work.click_words("leads");
    work.click("Remove last word");
    work.click("Remove last word");
    work.click("Finish");
    work.click_words("write");
    work.click_words("concern");
    let concern = taken_directly(7, &[]).briefing().job.concern.clone();
    work.click(&concern);
    work.click("Take the step");
    let lines = [
        "dipstick",
        "key on",
        "read codes",
        "suspect low-oil sump 90%",
        "predict 12 to 13 V",
        "measure volts battery-plus engine-ground",
        &format!("write concern {concern}"),
    ];
    assert_eq!(work.steps().len(), lines.len(), "{:?}", work.steps());
    assert_eq!(work.digest(), format!("{:?}", taken_directly(7, &lines).digest()));
}

#[test]
fn the_same_case_is_worked_with_the_keyboard_alone() {
    for size in SIZES {
        let folder = tempfile::tempdir().unwrap();
        let mut work = Work::on(folder.path(), size);
        // The seed field has the focus from the start.
        assert_eq!(work.focused(), "Seed");
        work.take("7");
        work.take("dipstick");
        work.take("key on");
        work.type_text("rea");
        work.key(Key::Tab);
        assert_eq!(work.line(), "read ");
        work.key(Key::ArrowDown);
        work.key(Key::ArrowDown);
        work.key(Key::Tab);
        assert_eq!(work.line(), "read codes ");
        work.key(Key::Enter);
        work.take("measure volts battery-pluss engine-ground");
        assert!(work.line().contains("pluss"), "a wrong line stays");
        assert!(
            matches!(work.harness.state().view().page, Page::Case(case) if case.line.problem.is_some())
        );
        work.harness.key_press_modifiers(Modifiers::COMMAND, Key::A);
        work.take("suspect low-oil sump 90%");
        let lines = ["dipstick", "key on", "read codes", "suspect low-oil sump 90%"];
        assert_eq!(work.steps(), lines);
        assert_eq!(work.digest(), format!("{:?}", taken_directly(7, &lines).digest()));
    }
}

#[test]
fn the_words_can_be_chosen_by_key_as_well() {
    let folder = tempfile::tempdir().unwrap();
    let mut work = Work::on(folder.path(), SIZES[0]);
    work.click("Begin");
    // Into the words, past the eight groups, to the first verb of the open one.
    work.key(Key::F3);
    assert_eq!(work.focused(), "Ask and look");
    for _ in 0..8 {
        work.key(Key::Tab);
    }
    assert!(work.focused().starts_with("read job-sheet"), "{}", work.focused());
    work.key(Key::Enter);
    assert_eq!(work.line(), "read job-sheet ");
    // The words have changed, and the focus is on what there is to do.
    assert_eq!(work.focused(), "Take the step");
    work.key(Key::Enter);
    assert_eq!(work.steps(), ["read job-sheet"]);
    assert_eq!(work.focused(), "Ask and look");
    // And back to the field, which Tab leaves where there is nothing to complete.
    work.key(Key::F2);
    work.type_text("dip");
    assert_eq!(work.line(), "dip");
    work.key(Key::Tab);
    assert_eq!(work.line(), "dipstick ");
    work.key(Key::Tab);
    assert_eq!(work.focused(), "Take it");
    work.key(Key::Enter);
    assert_eq!(work.steps().len(), 2);
}

#[test]
fn what_is_typed_while_a_step_is_under_way_stays() {
    let folder = tempfile::tempdir().unwrap();
    let mut work = Work::on(folder.path(), SIZES[0]);
    work.click("Begin");
    let desk = work.harness.state_mut();
    desk.act(Action::TypeLine("key on".to_owned()));
    desk.act(Action::TakeStep);
    desk.act(Action::TypeLine("read co".to_owned()));
    desk.act(Action::TakeStep);
    work.settle();
    assert_eq!(work.line(), "read co");
    assert_eq!(work.steps(), ["key on"]);
}

#[test]
fn settings_are_changed_on_every_page() {
    let folder = tempfile::tempdir().unwrap();
    let mut work = Work::on(folder.path(), SIZES[0]);
    for page in ["Begin", "Front page"] {
        work.click("Settings");
        work.click("150 %");
        work.click("Dark");
        let settings = work.harness.state().view().settings;
        assert_eq!(settings.text.percent(), 150);
        work.click("100 %");
        work.click("Light");
        if page == "Begin" {
            work.click("Settings");
        } else {
            work.key(Key::Escape);
        }
        assert!(!work.harness.state().view().settings.are_open);
        work.click(page);
    }
    work.click("Leave the program");
    assert!(work.harness.state().is_leaving());
}
