//! Every page walked as a screen reader and a keyboard do, at all sizes and in both shades.

use super::{Tools, window_ui};
use crate::wording::catalogue::Words;
use crate::workshop::desk::Desk;
use crate::workshop::desk::tests::{begun, desk, settle};
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::settings::{Shade, TextSize};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT as _, Queryable as _};

/// The window's panels around a desk, which does what they answer.
fn harness(desk: Desk) -> Harness<'static, Desk> {
    let words = Words::for_language("en-GB");
    let mut harness = Harness::builder().with_size(egui::vec2(1_280.0, 680.0)).build_ui_state(
        move |ui, desk: &mut Desk| {
            theme::dress(ui.ctx());
            desk.listen();
            theme::set(ui.ctx(), desk.view().settings);
            let tools = Tools { words: &words, picture: None };
            // The root is made after the window is dressed, as in the window itself.
            let mut root = egui::Ui::new(
                ui.ctx().clone(),
                "workshop".into(),
                egui::UiBuilder::new()
                    .layer_id(egui::LayerId::background())
                    .max_rect(ui.ctx().viewport_rect()),
            );
            for action in window_ui(&mut root, &desk.view(), tools) {
                desk.act(action);
            }
        },
        desk,
    );
    harness.run_steps(4);
    harness
}

/// Every control that can be pressed or typed into has a name.
fn every_control_has_a_name(harness: &Harness<'_, Desk>) -> usize {
    let mut controls = 0;
    for node in harness.root().children_recursive() {
        let node = node.accesskit_node();
        let role = node.role();
        let is_control = [
            egui::accesskit::Role::Button,
            egui::accesskit::Role::TextInput,
            egui::accesskit::Role::RadioButton,
            egui::accesskit::Role::CheckBox,
        ]
        .contains(&role);
        if is_control {
            controls += 1;
            let name = node.label().or_else(|| {
                // A field is named by what stands before it.
                node.labelled_by().next().and_then(|label| label.label().or(label.value()))
            });
            assert!(name.is_some_and(|name| !name.is_empty()), "a nameless {role:?}");
        }
    }
    controls
}

fn walk(make: impl Fn() -> Desk) {
    for text in [TextSize::Normal, TextSize::Double] {
        for shade in [Shade::Light, Shade::Dark] {
            let mut desk = make();
            desk.act(Action::SetText(text));
            desk.act(Action::SetShade(shade));
            desk.act(Action::OpenSettings(true));
            let harness = harness(desk);
            let controls = every_control_has_a_name(&harness);
            assert!(controls > 3, "only {controls} controls at {text:?}, {shade:?}");
        }
    }
}

#[test]
fn limit_the_front_page_names_every_control() {
    let folder = tempfile::tempdir().unwrap();
    walk(|| {
        let mut desk = desk(folder.path());
        settle(&mut desk);
        desk
    });
}

#[test]
fn limit_the_page_of_a_case_names_every_control() {
    walk(|| begun(tempfile::tempdir().unwrap().path()));
}

#[test]
fn replay_a_step_clicked_together_is_taken() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = harness(begun(folder.path()));
    harness.get_by_label_contains("Pull the dipstick").click();
    harness.run_steps(3);
    harness.get_by_label("Take the step").click();
    harness.run_steps(3);
    settle(harness.state_mut());
    harness.run_steps(3);
    assert_eq!(harness.state().session().map(|session| session.log().len()), Some(1));
    assert!(harness.query_all_by_label_contains("Oil at").next().is_some(), "the log shows it");
}
