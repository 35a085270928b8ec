//! The field in which a step can be typed, with what completes it and what is wrong with it.

use super::Tools;
use super::frame::{BREACH_SIGN, busy_ui};
use super::pieces::signed_ui;
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::case::{CaseView, LineView};
use egui::text::{CCursor, CCursorRange};
use egui::text_edit::TextEditState;
use egui::{Button, FocusDirection, Id, Key, Label, Modifiers, RichText, TextEdit, TextStyle, Ui};

/// Words of a completion that are shown around the marked one.
const SHOWN: usize = 8;

/// The field with the words above it and a line below.
pub fn entry_ui(
    ui: &mut Ui,
    case: &CaseView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let line = &case.line;
    offers_ui(ui, line, tools);
    ui.horizontal(|ui| {
        let label = ui.label(tools.say("window-step"));
        let take = Button::new(tools.say("window-take-typed"));
        let id = Id::new("entry field");
        let had_focus = ui.memory(|memory| memory.has_focus(id));
        if had_focus {
            keys(ui, line, actions);
        }
        follow(ui, id, line);
        let mut text = line.text.clone();
        let width = ui.available_width() - theme::STEPS_WIDTH / 2.0;
        let field = TextEdit::singleline(&mut text)
            .id(id)
            .font(TextStyle::Monospace)
            .desired_width(width)
            // The key leaves the field where there is nothing that it could complete.
            .lock_focus(!line.text.is_empty() && !line.words.is_empty());
        let response = ui.add(field).labelled_by(label.id);
        if response.changed() {
            actions.push(Action::TypeLine(text));
        }
        if is_asked_for(ui, case, id) {
            response.request_focus();
        }
        if response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter)) {
            actions.push(Action::TakeStep);
            response.request_focus();
        }
        if ui.add_enabled(view.busy.is_none(), take).clicked() {
            actions.push(Action::TakeStep);
        }
    });
    if let Some(busy) = &view.busy {
        ui.horizontal(|ui| busy_ui(ui, busy));
    } else if let Some(problem) = &line.problem {
        signed_ui(ui, BREACH_SIGN, problem, theme::palette(ui).breach);
    } else {
        ui.add(Label::new(RichText::new(&line.hint).small()).wrap());
    }
}

/// The words that can stand next, the marked one tinted and underlined.
fn offers_ui(ui: &mut Ui, line: &LineView, tools: Tools<'_>) {
    ui.horizontal(|ui| {
        let typed = !line.text.trim().is_empty();
        let words = if typed { line.words.as_slice() } else { &[] };
        let key = if words.is_empty() { "window-no-offers" } else { "window-offers" };
        ui.label(RichText::new(tools.say(key)).small());
        let from = line.marked.map_or(0, |marked| marked.saturating_sub(SHOWN - 1));
        for (index, offer) in words.iter().enumerate().skip(from).take(SHOWN) {
            let text = RichText::new(&offer.word).monospace();
            let palette = theme::palette(ui);
            let text = if line.marked == Some(index) {
                text.background_color(palette.chosen).underline()
            } else {
                text
            };
            ui.add(Label::new(text).selectable(false).extend());
        }
        let left = words.len().saturating_sub(from + SHOWN);
        if left > 0 {
            let text = tools.words.say("window-more-offers", &[("count", left.into())]);
            ui.label(RichText::new(text).small());
        }
    });
}

/// The keys that choose a completion; taken before the field and the focus can see them.
fn keys(ui: &Ui, line: &LineView, actions: &mut Vec<Action>) {
    let pressed = |modifiers, key| ui.input_mut(|input| input.consume_key(modifiers, key));
    if pressed(Modifiers::NONE, Key::ArrowDown) {
        actions.push(Action::Highlight { forward: true });
    }
    if pressed(Modifiers::NONE, Key::ArrowUp) {
        actions.push(Action::Highlight { forward: false });
    }
    if !line.text.is_empty() && !line.words.is_empty() {
        if pressed(Modifiers::SHIFT, Key::Tab) {
            ui.memory_mut(|memory| memory.move_focus(FocusDirection::Previous));
        } else if pressed(Modifiers::NONE, Key::Tab) {
            actions.push(Action::Complete);
        }
    }
}

/// Puts the cursor behind what something else than typing has written.
fn follow(ui: &Ui, id: Id, line: &LineView) {
    let seen = id.with("changes");
    if ui.data(|data| data.get_temp(seen)) == Some(line.changes) {
        return;
    }
    ui.data_mut(|data| data.insert_temp(seen, line.changes));
    let mut state = TextEditState::load(ui.ctx(), id).unwrap_or_default();
    let end = CCursor::new(line.text.chars().count());
    state.cursor.set_char_range(Some(CCursorRange::one(end)));
    state.store(ui.ctx(), id);
}

/// Whether the focus should come here: when a case has just been opened, and when a key asks.
fn is_asked_for(ui: &Ui, case: &CaseView, id: Id) -> bool {
    let opened = id.with("opened");
    let is_new = ui.data(|data| data.get_temp::<String>(opened)).as_ref() != Some(&case.kept_at);
    if is_new {
        ui.data_mut(|data| data.insert_temp(opened, case.kept_at.clone()));
    }
    is_new || ui.input(|input| input.key_pressed(Key::F2))
}
