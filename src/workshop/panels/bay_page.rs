//! The bay in the middle of the page of a case.

use super::Tools;
use super::bay_picture::{ask_for_size, bay_picture_ui};
use super::log::step_ui;
use super::pieces::pick_ui;
use crate::workshop::bay::camera::Viewpoint;
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::bay::BayAction;
use crate::workshop::view::case::CaseView;
use egui::{Label, RichText, ScrollArea, Ui, vec2};

/// Viewpoints, the picture, what is under the pointer, and what followed from the last step.
pub fn bay_ui(
    ui: &mut Ui,
    case: &CaseView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    with_last: bool,
    actions: &mut Vec<Action>,
) {
    let bay = &case.bay;
    ui.horizontal_wrapped(|ui| {
        for (number, viewpoint) in Viewpoint::ALL.into_iter().enumerate() {
            let text = format!("{} {}", number + 1, tools.say(viewpoint.key()));
            if pick_ui(ui, bay.viewpoint == Some(viewpoint), &text).clicked() {
                actions.push(Action::Bay(BayAction::View(viewpoint)));
            }
        }
    });
    let last = if with_last { theme::LAST_STEP_HEIGHT } else { 0.0 };
    let line = ui.spacing().interact_size.y + ui.spacing().item_spacing.y;
    let room = ui.available_size() - vec2(0.0, last + line);
    let size = vec2(room.x, room.y.max(theme::LEAST_PICTURE));
    ask_for_size(ui, size, view.picture, actions);
    let under = bay_picture_ui(ui, bay, Some(&case.tray), size, tools, actions);
    let name = under.and_then(|id| bay.place(&id)).map(|place| place.name.clone());
    let text = match (case.tray.held, name) {
        (Some(end), Some(name)) => tools
            .words
            .say("tray-put-here", &[("end", tools.say(end.key()).into()), ("place", name.into())]),
        (Some(end), None) => {
            tools.words.say("tray-put-where", &[("end", tools.say(end.key()).into())])
        }
        (None, Some(name)) => tools.words.say("bay-under-pointer", &[("place", name.into())]),
        (None, None) => tools.say("bay-hint"),
    };
    ui.add(Label::new(RichText::new(text).small()).truncate());
    if with_last {
        ScrollArea::vertical().id_salt("last step").auto_shrink(false).show(ui, |ui| {
            match case.log.last() {
                Some(step) => step_ui(ui, step, tools, actions),
                None => {
                    ui.label(tools.say("window-log-empty"));
                }
            }
        });
    }
}
