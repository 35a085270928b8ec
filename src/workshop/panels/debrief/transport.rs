//! Lets the session play, forwards or back, at a pace, and steps through it by hand.

use super::super::Tools;
use super::super::pieces::pick_ui;
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::debrief::{DebriefAction, Direction, LookBackView, Pace};
use egui::{Button, Label, RichText, Slider, Ui};

/// Buttons, paces and the place in the session.
pub fn transport_ui(
    ui: &mut Ui,
    look_back: &LookBackView,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let (at, last) = (look_back.at, look_back.log.len().saturating_sub(1));
    let mut want = |wanted| actions.push(Action::Debrief(wanted));
    ui.horizontal_wrapped(|ui| {
        for (direction, key) in [
            (Direction::Back, "window-replay-back"),
            (Direction::Forwards, "window-replay-forwards"),
        ] {
            let runs = look_back.replay.runs == Some(direction);
            if pick_ui(ui, runs, &tools.say(key)).clicked() {
                want(DebriefAction::Run((!runs).then_some(direction)));
            }
        }
        let before = Button::new(tools.say("window-step-before"));
        if ui.add_enabled(at > 0, before).clicked() {
            want(DebriefAction::GoTo(at - 1));
        }
        let after = Button::new(tools.say("window-step-after"));
        if ui.add_enabled(at < last, after).clicked() {
            want(DebriefAction::GoTo(at + 1));
        }
        ui.separator();
        for (pace, key) in Pace::ALL.into_iter().zip([
            "window-pace-slow",
            "window-pace-usual",
            "window-pace-quick",
            "window-pace-fast",
        ]) {
            if pick_ui(ui, look_back.replay.pace == pace, &tools.say(key)).clicked() {
                want(DebriefAction::SetPace(pace));
            }
        }
    });
    ui.horizontal(|ui| {
        let mut number = at + 1;
        let label = ui.label(tools.say("window-step"));
        ui.spacing_mut().slider_width = (ui.available_width() - theme::BAR_WIDTH).max(80.0);
        let slider = Slider::new(&mut number, 1..=last + 1).integer().show_value(false);
        if ui.add(slider).labelled_by(label.id).changed() {
            want(DebriefAction::GoTo(number - 1));
        }
        let place = [("number", (at + 1).into()), ("count", (last + 1).into())];
        let place = tools.words.say("window-step-of", &place);
        let till = format!("{place}; {}", look_back.till);
        ui.add(Label::new(RichText::new(till).small()).truncate());
    });
    let state = format!("{} {}", look_back.vehicle.key, look_back.vehicle.off);
    ui.add(Label::new(RichText::new(state).small()).truncate());
}
