//! What comes of the text: the job sheet, the bay, and a case to try.

use crate::workshop::bay::camera::Viewpoint;
use crate::workshop::panels::Tools;
use crate::workshop::panels::bay_picture::{ask_for_size, bay_picture_ui};
use crate::workshop::panels::frame::BREACH_SIGN;
use crate::workshop::panels::pieces::{heading_ui, page_keys, pick_ui, signed_ui, wide_button};
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::bay::BayAction;
use crate::workshop::view::writer::{WriterAction, WriterView};
use egui::{Align, Button, Key, Label, RichText, ScrollArea, TextEdit, Ui, vec2};

/// The job sheet and the customer's answers as the apprentice gets them.
pub fn sheet_ui(ui: &mut Ui, written: &WriterView, tools: Tools<'_>) {
    ScrollArea::vertical().id_salt("sheet").auto_shrink(false).show(ui, |ui| {
        page_keys(ui);
        ui.add(Label::new(RichText::new(tools.say("writer-sheet-why")).small()).wrap());
        ui.add_space(theme::GAP);
        theme::note(theme::palette(ui).field).show(ui, |ui| {
            ui.take_available_width();
            ui.spacing_mut().item_spacing.y = theme::GAP;
            for line in &written.sheet {
                ui.add(Label::new(line).wrap());
            }
        });
    });
}

/// The bay with the vehicle, everything in place.
pub fn bay_ui(
    ui: &mut Ui,
    written: &WriterView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let Some(bay) = &written.bay else {
        ui.add(Label::new(tools.say("writer-no-vehicle")).wrap());
        return;
    };
    ui.horizontal_wrapped(|ui| {
        for (number, viewpoint) in Viewpoint::ALL.into_iter().enumerate() {
            let text = format!("{} {}", number + 1, tools.say(viewpoint.key()));
            if pick_ui(ui, bay.viewpoint == Some(viewpoint), &text).clicked() {
                actions.push(Action::Bay(BayAction::View(viewpoint)));
            }
        }
    });
    let room = ui.available_size();
    let line = ui.spacing().interact_size.y + ui.spacing().item_spacing.y;
    let size = vec2(room.x, (room.y - line).max(theme::LEAST_PICTURE));
    ask_for_size(ui, size, view.picture, actions);
    let under = bay_picture_ui(ui, bay, None, size, tools, actions);
    let name = under.and_then(|id| bay.place(&id)).map(|place| place.name.clone());
    let text = name.map_or_else(
        || tools.say("writer-bay-why"),
        |name| tools.words.say("bay-under-pointer", &[("place", name.into())]),
    );
    ui.add(Label::new(RichText::new(text).small()).truncate());
}

/// The entries and a seed, with which a case can be tried.
pub fn trial_ui(
    ui: &mut Ui,
    written: &WriterView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let trial = &written.trial;
    let can = trial.can_deal && view.busy.is_none();
    ScrollArea::vertical().id_salt("trial").auto_shrink(false).show(ui, |ui| {
        ui.add(Label::new(tools.say("writer-trial-why")).wrap());
        if !trial.can_deal {
            ui.add(Label::new(tools.say("writer-trial-not-yet")).wrap());
        }
        ui.add_space(theme::WIDE_GAP);
        heading_ui(ui, &tools.say("writer-try-fault"));
        for (number, entry) in trial.entries.iter().enumerate() {
            let said = tools.words.say("writer-try", &[("fault", entry.as_str().into())]);
            let button = wide_button(ui, said);
            if ui.add_enabled(can, button).clicked() {
                actions.push(Action::Writer(WriterAction::TryEntry(number)));
            }
        }
        ui.add_space(theme::WIDE_GAP);
        heading_ui(ui, &tools.say("writer-try-seed"));
        ui.horizontal_wrapped(|ui| {
            let label = ui.label(tools.say("window-seed"));
            let mut seed = trial.seed.clone();
            let field = TextEdit::singleline(&mut seed)
                .id_salt("seed to try")
                .margin(theme::FIELD_MARGIN)
                .vertical_align(Align::Center)
                .min_size(vec2(0.0, ui.spacing().interact_size.y))
                .desired_width(theme::SEED_WIDTH);
            let response = ui.add(field).labelled_by(label.id);
            if response.changed() {
                actions.push(Action::Writer(WriterAction::TypeSeed(seed)));
            }
            let entered = response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
            let button = ui.add_enabled(can, Button::new(tools.say("writer-try-it")));
            if button.clicked() || (entered && can) {
                actions.push(Action::Writer(WriterAction::TrySeed));
            }
        });
        if let Some(problem) = &trial.problem {
            signed_ui(ui, BREACH_SIGN, problem, theme::palette(ui).breach);
        }
    });
}
