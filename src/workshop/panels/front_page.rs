//! Where a case is begun or gone on with.

use super::Tools;
use super::bay_picture::ask_for_size;
use super::begin_card::begin_ui;
use super::frame::head_ui;
use super::kept_card::kept_ui;
use super::pieces::{page_keys, picture_ui};
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::front::FrontView;
use crate::workshop::view::writer::WriterAction;
use egui::{
    Align, Button, CentralPanel, Frame, Id, Key, Panel, RichText, ScrollArea, TextStyle, Ui,
};

/// The front page.
pub fn front_ui(
    ui: &mut Ui,
    front: &FrontView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let has_room = ui.available_width() >= theme::THREE_COLUMNS_FROM;
    if let Some(picture) = tools.picture.filter(|_| has_room) {
        let width = ui.available_width() - theme::TEXT_WIDTH;
        Panel::right("picture")
            .exact_size(width)
            .resizable(false)
            .show_separator_line(false)
            .frame(Frame::NONE)
            .show(ui, |ui| {
                ask_for_size(ui, ui.available_size(), view.picture, actions);
                picture_ui(ui, picture, ui.available_size(), &tools.say("window-picture"));
            });
    }
    let frame = theme::card(ui).inner_margin(theme::PAGE_MARGIN);
    CentralPanel::default().frame(frame).show(ui, |ui| {
        ScrollArea::vertical().auto_shrink(false).show(ui, |ui| {
            page_keys(ui);
            if is_news(ui, front, view) {
                ui.scroll_to_cursor(Some(Align::Min));
            }
            let title = RichText::new(tools.say("window-title"))
                .text_style(TextStyle::Name(theme::TITLE.into()));
            head_ui(ui, title, "", ("window-leave", Action::Leave), view, tools, actions);
            ui.add_space(theme::GAP);
            if let Some(said) = &front.handed_over {
                theme::note(theme::palette(ui).chosen).show(ui, |ui| {
                    ui.take_available_width();
                    ui.label(said);
                });
                ui.add_space(theme::GAP);
            }
            ui.label(tools.say("window-about"));
            ui.add_space(theme::WIDE_GAP);
            round_ui(ui, front, view, tools, actions);
            ui.add_space(theme::WIDE_GAP);
            begin_ui(ui, front, view, tools, actions);
            ui.add_space(theme::WIDE_GAP);
            kept_ui(ui, front, view, tools, actions);
            ui.add_space(theme::WIDE_GAP);
            ui.label(RichText::new(tools.say("cli-safety")).small());
        });
    });
}

/// Whether something is said at the head of the page that was not said before: whoever has chosen from the list at its end
/// would not see it.
fn is_news(ui: &Ui, front: &FrontView, view: &WindowView<'_>) -> bool {
    let said = (view.notice.map(str::to_owned), front.handed_over.clone());
    let id = Id::new("said at the head");
    let before = ui.data(|data| data.get_temp::<(Option<String>, Option<String>)>(id));
    let is_news = said != (None, None) && before.as_ref() != Some(&said);
    ui.data_mut(|data| data.insert_temp(id, said));
    is_news
}

/// The way to the round for the first time; at the first start it is offered on a card of its own.
fn round_ui(
    ui: &mut Ui,
    front: &FrontView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let idle = view.busy.is_none();
    let mut buttons = |ui: &mut Ui| {
        ui.horizontal_wrapped(|ui| {
            if ui.add_enabled(idle, Button::new(tools.say("guide-begin"))).clicked() {
                actions.push(Action::BeginGuide);
            }
            let write = ui.add_enabled(idle, Button::new(tools.say("writer-heading")));
            if write.clicked() || (idle && ui.input(|input| input.key_pressed(Key::F5))) {
                actions.push(Action::Writer(WriterAction::Open));
            }
            if front.is_first_start && ui.button(tools.say("guide-not-now")).clicked() {
                actions.push(Action::DeclineGuide);
            }
        });
    };
    if front.is_first_start {
        theme::note(theme::palette(ui).chosen).show(ui, |ui| {
            ui.take_available_width();
            ui.label(tools.say("guide-offer"));
            buttons(ui);
        });
    } else {
        buttons(ui);
    }
}
