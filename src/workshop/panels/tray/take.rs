//! What a use of the tool in hand takes, and the buttons that take it or say first what will come.

use super::focus;
use crate::workshop::panels::Tools;
use crate::workshop::panels::entry;
use crate::workshop::panels::pieces::signed_ui;
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::tray::{PredictionView, ReadyView};
use egui::{Button, RichText, Ui};

/// The sign of a prediction that came.
pub const MET_SIGN: &str = "\u{2714}";
/// The sign of one that did not.
pub const MISSED_SIGN: &str = "\u{2260}";

/// What the step takes, the button that takes it, and the one that begins a prediction with `predict`.
pub fn take_ui(
    ui: &mut Ui,
    ready: &ReadyView,
    predict: &str,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    if let Some(predicted) = &ready.predicted {
        let text = tools.words.say("tray-predicted", &[("prediction", predicted.as_str().into())]);
        ui.label(text);
    }
    ui.horizontal_wrapped(|ui| {
        let can = ready.line.is_some() && view.busy.is_none();
        let take = ui.add_enabled(can, Button::new(tools.say("tray-take")));
        focus::is_next(ui, &take);
        if take.clicked()
            && let Some(line) = &ready.line
        {
            step(line, actions);
        }
        let first = ui.button(tools.say("tray-predict"));
        if first.clicked() {
            actions.push(Action::StartLine(predict.to_owned()));
            entry::come_here(ui);
        }
    });
    if let Some(cost) = &ready.cost {
        ui.label(cost);
    }
    if let Some(line) = &ready.line {
        ui.label(RichText::new(line).monospace().small());
    }
}

/// Takes a step by its line, as if it had been typed.
pub fn step(line: &str, actions: &mut Vec<Action>) {
    actions.push(Action::StartLine(line.to_owned()));
    actions.push(Action::TakeStep);
}

/// What had been said of a reading, and what came of it.
pub fn prediction_ui(ui: &mut Ui, prediction: &PredictionView) {
    let palette = theme::palette(ui);
    let (sign, color) =
        if prediction.met { (MET_SIGN, palette.good) } else { (MISSED_SIGN, palette.caution) };
    let text = format!("{}. {}", prediction.said, prediction.outcome);
    signed_ui(ui, sign, &text, color);
}
