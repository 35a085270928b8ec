//! What a use of the tool in hand takes, the buttons that take it or say first what will come, and what came of it.

use super::{Hand, focus};
use crate::workshop::panels::entry;
use crate::workshop::panels::pieces::signed_ui;
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use egui::{Button, RichText, Ui};

/// The sign of a prediction that came.
pub const MET_SIGN: &str = "\u{2714}";
/// The sign of one that did not.
pub const MISSED_SIGN: &str = "\u{2260}";

/// The button that takes the step, the one that begins a prediction where one can be made, and what the step takes.
pub fn take_ui(
    ui: &mut Ui,
    hand: Hand<'_>,
    key: &str,
    predict: Option<&str>,
    actions: &mut Vec<Action>,
) {
    let Hand { tools, .. } = hand;
    let ready = &hand.tray.ready;
    if let Some(predicted) = ready.predicted.as_ref().filter(|_| predict.is_some()) {
        let text = tools.words.say("tray-predicted", &[("prediction", predicted.as_str().into())]);
        ui.label(text);
    }
    ui.horizontal_wrapped(|ui| {
        let can = ready.line.is_some() && hand.view.busy.is_none();
        let take = ui.add_enabled(can, Button::new(tools.say(key)));
        focus::is_next(ui, &take);
        if take.clicked()
            && let Some(line) = &ready.line
        {
            step(line, actions);
        }
        if let Some(predict) = predict
            && ui.button(tools.say("tray-predict")).clicked()
        {
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

/// Buttons for what belongs to the tool besides.
pub fn also_ui(ui: &mut Ui, hand: Hand<'_>, steps: &[(&str, &str)], actions: &mut Vec<Action>) {
    ui.add_enabled_ui(hand.view.busy.is_none(), |ui| {
        ui.horizontal_wrapped(|ui| {
            for (key, line) in steps {
                if ui.button(hand.tools.say(key)).clicked() {
                    step(line, actions);
                }
            }
        });
    });
}

/// Takes a step by its line, as if it had been typed.
fn step(line: &str, actions: &mut Vec<Action>) {
    actions.push(Action::StartLine(line.to_owned()));
    actions.push(Action::TakeStep);
}

/// What the tool showed last, in words where a drawing does not say it, and what had been predicted of it.
pub fn outcome_ui(ui: &mut Ui, hand: Hand<'_>, in_words: bool) {
    let Some(reading) = &hand.tray.reading else {
        if in_words {
            ui.label(hand.tools.say("tray-nothing-read"));
        }
        return;
    };
    if in_words {
        let number = hand.tools.words.say("tray-step", &[("number", reading.number.into())]);
        ui.label(RichText::new(number).small().color(theme::palette(ui).faint));
        for line in &reading.words {
            ui.label(line);
        }
    }
    if let Some(prediction) = &reading.prediction {
        let palette = theme::palette(ui);
        let (sign, color) =
            if prediction.met { (MET_SIGN, palette.good) } else { (MISSED_SIGN, palette.ink) };
        let text = format!("{}. {}", prediction.said, prediction.outcome);
        signed_ui(ui, sign, &text, color);
    }
}
