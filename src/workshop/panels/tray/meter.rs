//! Multimeter and current probe: their displays, what they are set to, their ends.

use super::Hand;
use super::display::display_ui;
use super::ends::ends_ui;
use super::take::{also_ui, outcome_ui, take_ui};
use crate::instruments::multimeter::MeterFunction;
use crate::workshop::panels::pieces::pick_ui;
use crate::workshop::view::action::Action;
use crate::workshop::view::tray::{End, TrayAction};
use egui::Ui;

/// The meter in hand.
pub fn meter_ui(ui: &mut Ui, hand: Hand<'_>, actions: &mut Vec<Action>) {
    let Hand { tray, tools, .. } = hand;
    let function = tray.meter.function;
    let name = tools.say(function_key(function));
    display_ui(ui, &name, function, tray.reading.as_ref(), hand.moves(), tools);
    // What a hand did to it is not on the display.
    let was_watched = tray.reading.as_ref().is_some_and(|reading| reading.words.len() > 1);
    outcome_ui(ui, hand, was_watched);
    ui.horizontal_wrapped(|ui| {
        for function in [MeterFunction::Volts, MeterFunction::Ohms, MeterFunction::Amps] {
            let chosen = tray.meter.function == function;
            if pick_ui(ui, chosen, &tools.say(function_key(function))).clicked() {
                actions.push(Action::Tray(TrayAction::Turn(function)));
            }
        }
    });
    ends_ui(ui, hand, actions);
    let is_wiggled = tray.ends.get(&End::Hand).is_some_and(|hand| hand.at.is_some());
    let from_front = tray.meter.from_front;
    // A hand that wiggles a plug needs it plugged.
    if !is_wiggled && pick_ui(ui, from_front, &tools.say("meter-from-front")).clicked() {
        actions.push(Action::Tray(TrayAction::FromFront(!from_front)));
    }
    take_ui(ui, hand, "tray-take", Some("predict"), actions);
    also_ui(
        ui,
        hand,
        &[("meter-zero", "zero leads"), ("meter-fuse", "replace meter-fuse")],
        actions,
    );
}

/// The current probe in hand.
pub fn clamp_ui(ui: &mut Ui, hand: Hand<'_>, actions: &mut Vec<Action>) {
    let name = hand.tools.say("tray-clamp");
    let reading = hand.tray.reading.as_ref();
    display_ui(ui, &name, MeterFunction::Amps, reading, hand.moves(), hand.tools);
    outcome_ui(ui, hand, false);
    ends_ui(ui, hand, actions);
    take_ui(ui, hand, "tray-take", Some("predict"), actions);
    also_ui(ui, hand, &[("clamp-zero", "zero clamp")], actions);
}

/// The message that names a function.
const fn function_key(function: MeterFunction) -> &'static str {
    match function {
        MeterFunction::Volts => "meter-volts",
        MeterFunction::Ohms => "meter-ohms",
        MeterFunction::Amps => "meter-amps",
    }
}
