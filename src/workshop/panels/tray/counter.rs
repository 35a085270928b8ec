//! The counter: kinds of work, what can be done of the one that is open and what it takes.

use super::take::{outcome_ui, take_ui};
use super::{Hand, focus};
use crate::workshop::panels::entry;
use crate::workshop::panels::pieces::{is_low, pick_ui, wide_button};
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::counter::Trade;
use crate::workshop::view::tray::TrayAction;
use egui::{Label, RichText, ScrollArea, Ui};

/// Rows of a long list that are in sight at once.
const ROWS: f32 = 6.0;

/// The counter in hand.
pub fn counter_ui(ui: &mut Ui, hand: Hand<'_>, actions: &mut Vec<Action>) {
    let Hand { tray, tools, .. } = hand;
    let counter = &tray.counter;
    ui.horizontal_wrapped(|ui| {
        for trade in Trade::ALL {
            if pick_ui(ui, counter.trade == trade, &tools.say(trade.key())).clicked() {
                actions.push(Action::Tray(TrayAction::SetTrade(trade)));
            }
        }
    });
    ui.add_space(theme::GAP);
    if counter.jobs.is_empty() {
        ui.add(Label::new(tools.say("counter-nothing")).wrap());
    }
    let row = ui.spacing().interact_size.y * 2.0 + ui.spacing().item_spacing.y;
    // A list that scrolls within one that scrolls is no help where there is room for neither.
    let most = if is_low(ui) { f32::INFINITY } else { row * ROWS };
    ScrollArea::vertical().id_salt("jobs").max_height(most).auto_shrink([false, true]).show(
        ui,
        |ui| {
            for job in &counter.jobs {
                let text = match &job.price {
                    Some(price) => format!("{}\n{price}", job.name),
                    None => job.name.clone(),
                };
                let is_chosen = counter.chosen.as_ref() == Some(&job.line);
                let response = ui.add(wide_button(ui, text).selected(is_chosen));
                if !response.clicked() {
                    continue;
                }
                if job.is_start {
                    actions.push(Action::StartLine(job.line.trim_end().to_owned()));
                    entry::come_here(ui);
                } else {
                    focus::go_on_from(ui, &response);
                    actions.push(Action::Tray(TrayAction::ChooseJob(job.line.clone())));
                }
            }
        },
    );
    ui.add_space(theme::GAP);
    take_ui(ui, hand, "counter-take", None, actions);
    if counter.trade == Trade::Customer {
        ui.add(Label::new(RichText::new(tools.say("counter-customer-why")).small()).wrap());
    }
    outcome_ui(ui, hand, true);
}
