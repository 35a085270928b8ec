//! What stands above every page: its title, settings, the way back, and what has to be known.

use super::Tools;
use super::pieces::{bar_ui, note_ui, pick_ui};
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::{Busy, WindowView};
use egui::{Align, Label, Layout, Panel, RichText, Ui, vec2};

/// The sign of a problem or a breach.
pub const BREACH_SIGN: &str = "\u{2716}";
/// The sign of a caution.
pub const CAUTION_SIGN: &str = "\u{26A0}";
/// The sign of what is done.
pub const DONE_SIGN: &str = "\u{2714}";
/// The sign of a step that was not possible.
pub const REFUSED_SIGN: &str = "\u{25CB}";

/// The way out of a page: the key of its name, and what it does.
pub type Way<'a> = (&'a str, Action);

/// The head of a page.
pub fn head_ui(
    ui: &mut Ui,
    title: RichText,
    beside: &str,
    way: Way<'_>,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let row = vec2(ui.available_width(), ui.spacing().interact_size.y);
    ui.allocate_ui_with_layout(row, Layout::right_to_left(Align::Center), |ui| {
        let (key, action) = way;
        if ui.button(tools.say(key)).clicked() {
            actions.push(action);
        }
        let open = view.settings.are_open;
        if pick_ui(ui, open, &tools.say("window-settings")).clicked() {
            actions.push(Action::OpenSettings(!open));
        }
        if !beside.is_empty() {
            ui.add_space(theme::WIDE_GAP);
            ui.label(beside);
            ui.add_space(theme::WIDE_GAP);
        }
        ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
            ui.add(Label::new(title).truncate());
        });
    });
    if let Some(notice) = view.notice {
        notice_ui(ui, notice, tools, actions);
    }
}

/// The head of a page as a panel over the whole of its width.
pub fn head_panel_ui(
    ui: &mut Ui,
    title: &str,
    beside: &str,
    way: Way<'_>,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let title = RichText::new(title).heading();
    Panel::top("head").resizable(false).frame(theme::card(ui)).show(ui, |ui| {
        ui.take_available_width();
        head_ui(ui, title, beside, way, view, tools, actions);
    });
}

/// The name of the way out of a case: to the case writer, where its case is tried.
pub const fn way_key(view: &WindowView<'_>) -> &'static str {
    if view.tried.is_some() { "writer-back" } else { "window-to-front" }
}

/// What is tried and what it hides, for whoever writes the case.
pub fn tried_ui(ui: &mut Ui, view: &WindowView<'_>) {
    let Some(tried) = view.tried else { return };
    Panel::top("tried").resizable(false).frame(theme::card(ui)).show(ui, |ui| {
        ui.take_available_width();
        let palette = theme::palette(ui);
        theme::note(palette.chosen).show(ui, |ui| {
            ui.take_available_width();
            ui.add(Label::new(RichText::new(tried).color(palette.ink)).wrap());
        });
    });
}

/// What went wrong, until it has been read.
fn notice_ui(ui: &mut Ui, notice: &str, tools: Tools<'_>, actions: &mut Vec<Action>) {
    let palette = theme::palette(ui);
    note_ui(ui, BREACH_SIGN, notice, palette.breach, palette.breach_card);
    if ui.button(tools.say("window-close-notice")).clicked() {
        actions.push(Action::CloseNotice);
    }
}

/// What is being worked on, and how far it is.
pub fn busy_ui(ui: &mut Ui, busy: &Busy) {
    ui.label(&busy.text);
    if let Some(share) = busy.share {
        bar_ui(ui, share, theme::BAR_WIDTH, &busy.text);
    }
}
