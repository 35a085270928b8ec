//! The places of the bay as a list, and what can be done at the chosen one: all that the picture offers, by key.

use super::Tools;
use super::frame::REFUSED_SIGN;
use super::pieces::{heading_ui, page_keys, signed_ui, wide_button, words_ui};
use crate::workshop::bay::model::Sort;
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::bay::{BayAction, BayView, CardView};
use egui::{ScrollArea, Ui};

/// The chosen place, then every place.
pub fn places_ui(
    ui: &mut Ui,
    bay: &BayView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    ScrollArea::vertical().id_salt("places").auto_shrink(false).show(ui, |ui| {
        page_keys(ui);
        if let Some(card) = &bay.card {
            card_ui(ui, card, view, tools, actions);
            ui.add_space(theme::WIDE_GAP);
        }
        let sorts = [
            ("bay-parts", &[Sort::Part, Sort::Connector][..]),
            ("bay-fixed", &[Sort::Fixed]),
            ("bay-wires", &[Sort::Wire, Sort::Pin]),
            ("bay-test-points", &[Sort::TestPoint]),
        ];
        for (key, sorts) in sorts {
            heading_ui(ui, &tools.say(key));
            for place in bay.places.iter().filter(|place| sorts.contains(&place.sort)) {
                let text = if place.is_off {
                    tools.words.say("bay-place-off", &[("place", place.name.as_str().into())])
                } else {
                    place.name.clone()
                };
                let chosen = bay.card.as_ref().is_some_and(|card| card.id == place.id);
                let button = wide_button(ui, &text).selected(chosen);
                if ui.add(button).clicked() {
                    actions.push(Action::Bay(BayAction::GoTo(place.id.clone())));
                }
            }
            ui.add_space(theme::WIDE_GAP);
        }
    });
}

/// What is known of the chosen place and what can be done there.
fn card_ui(
    ui: &mut Ui,
    card: &CardView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    heading_ui(ui, &card.name);
    for line in &card.state {
        ui.label(line);
    }
    if let Some(blocked) = &card.blocked {
        signed_ui(ui, REFUSED_SIGN, blocked, theme::palette(ui).ink);
    }
    if card.fits_line {
        let text = tools.words.say("bay-into-line", &[("place", card.id.as_str().into())]);
        if ui.add(wide_button(ui, &text)).clicked() {
            actions.push(Action::AddWord(card.id.to_string()));
        }
    }
    ui.add_enabled_ui(view.busy.is_none(), |ui| {
        for step in &card.steps {
            let words =
                if step.is_whole { step.line.clone() } else { format!("{} …", step.line) };
            if words_ui(ui, &words, Some(&step.meaning)).clicked() {
                actions.push(Action::StartLine(step.line.clone()));
                if step.is_whole {
                    actions.push(Action::TakeStep);
                }
            }
        }
    });
    if ui.button(tools.say("bay-let-go")).clicked() {
        actions.push(Action::Bay(BayAction::Choose(None)));
    }
}
