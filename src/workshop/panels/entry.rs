//! The field in which a step can be typed, with what completes it and what is wrong with it.

use super::Tools;
use super::frame::{BREACH_SIGN, busy_ui};
use super::pieces::{is_low, signed_ui};
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::case::{CaseView, LineView};
use egui::text::{CCursor, CCursorRange};
use egui::text_edit::TextEditState;
use egui::{
    Align, Button, Event, FocusDirection, Id, Key, Label, Modifiers, RichText, TextEdit, TextStyle,
    Ui, vec2,
};

/// Words that are shown before the marked one.
const SHOWN_BEFORE: usize = 2;

/// The field with the words above it and a line below. In a low window, as one with large text is, the keys are told by the
/// field itself, and `standing`, time and money so far, has the line above.
pub fn entry_ui(
    ui: &mut Ui,
    case: &CaseView,
    standing: &str,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let line = &case.line;
    let is_low = is_low(ui);
    let at_rest = tools.say("window-no-offers");
    offers_ui(ui, line, if is_low { standing } else { &at_rest }, tools);
    ui.horizontal(|ui| {
        let label = ui.label(tools.say("window-step"));
        let take = tools.say("window-take-typed");
        let id = Id::new("entry field");
        let had_focus = ui.memory(|memory| memory.has_focus(id));
        let wanted = if had_focus { keys(ui, line) } else { Vec::new() };
        follow(ui, id, line);
        let mut text = line.text.clone();
        let width = ui.available_width() - button_width(ui, &take) - ui.spacing().item_spacing.x;
        let field = TextEdit::singleline(&mut text)
            .id(id)
            .font(TextStyle::Monospace)
            .margin(theme::FIELD_MARGIN)
            .vertical_align(Align::Center)
            .min_size(vec2(0.0, ui.spacing().interact_size.y))
            .desired_width(width)
            // The key that completes a word must not leave the field; `keys` sees to both.
            .lock_focus(true);
        let field = if is_low { field.hint_text(at_rest) } else { field };
        let mut response = ui.add(field).labelled_by(label.id);
        if is_low {
            response = response.on_hover_text(&line.hint);
        }
        if response.changed() {
            actions.push(Action::TypeLine(text));
        }
        // After what was typed in the same moment.
        actions.extend(wanted);
        if is_asked_for(ui, case, id) {
            response.request_focus();
        }
        if response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter)) {
            actions.push(Action::TakeStep);
            response.request_focus();
        }
        if ui.add_enabled(view.busy.is_none(), Button::new(take)).clicked() {
            actions.push(Action::TakeStep);
        }
    });
    if let Some(busy) = &view.busy {
        ui.horizontal(|ui| busy_ui(ui, busy));
    } else if let Some(problem) = &line.problem {
        signed_ui(ui, BREACH_SIGN, problem, theme::palette(ui).breach);
    } else if !is_low {
        ui.add(Label::new(RichText::new(&line.hint).small()).wrap());
    }
}

/// The words that can stand next, as many as have room; the marked one tinted and underlined. `at_rest` stands there where
/// nothing is typed.
fn offers_ui(ui: &mut Ui, line: &LineView, at_rest: &str, tools: Tools<'_>) {
    let typed = !line.text.trim().is_empty();
    let words = if typed { line.words.as_slice() } else { &[] };
    ui.horizontal(|ui| {
        if words.is_empty() {
            ui.add(Label::new(RichText::new(at_rest).small()).truncate());
            return;
        }
        ui.label(RichText::new(tools.say("window-offers")).small());
        let from = line.marked.map_or(0, |marked| marked.saturating_sub(SHOWN_BEFORE));
        let palette = theme::palette(ui);
        for (index, offer) in words.iter().enumerate().skip(from) {
            let left = words.len() - index;
            let more = tools.words.say("window-more-offers", &[("count", left.into())]);
            let needed = word_width(ui, &offer.word) + word_width(ui, &more);
            if index > from && left > 1 && ui.available_width() < needed {
                ui.add(Label::new(RichText::new(more).small()).truncate());
                break;
            }
            let text = RichText::new(&offer.word).monospace();
            let text = if line.marked == Some(index) {
                text.background_color(palette.chosen).underline()
            } else {
                text
            };
            ui.add(Label::new(text).selectable(false).truncate());
        }
    });
}

/// The width of a typed word with the space around it.
fn word_width(ui: &Ui, word: &str) -> f32 {
    let font = TextStyle::Monospace.resolve(ui.style());
    let text = ui.painter().layout_no_wrap(word.to_owned(), font, theme::palette(ui).ink);
    text.size().x + 2.0 * ui.spacing().item_spacing.x
}

/// The keys that choose a completion; taken before the field and the focus can see them. Where
/// there is nothing to complete, the key that would do it moves the focus as it does elsewhere.
fn keys(ui: &Ui, line: &LineView) -> Vec<Action> {
    let mut actions = Vec::new();
    let pressed = |modifiers, key| ui.input_mut(|input| input.consume_key(modifiers, key));
    if pressed(Modifiers::NONE, Key::ArrowDown) {
        actions.push(Action::Highlight { forward: true });
    }
    if pressed(Modifiers::NONE, Key::ArrowUp) {
        actions.push(Action::Highlight { forward: false });
    }
    if pressed(Modifiers::SHIFT, Key::Tab) {
        ui.memory_mut(|memory| memory.move_focus(FocusDirection::Previous));
    } else if pressed(Modifiers::NONE, Key::Tab) {
        let is_typing =
            ui.input(|input| input.events.iter().any(|event| matches!(event, Event::Text(_))));
        if is_typing || (!line.text.is_empty() && !line.words.is_empty()) {
            actions.push(Action::Complete);
        } else {
            ui.memory_mut(|memory| memory.move_focus(FocusDirection::Next));
        }
    }
    actions
}

fn button_width(ui: &Ui, text: &str) -> f32 {
    let font = TextStyle::Button.resolve(ui.style());
    let text = ui.painter().layout_no_wrap(text.to_owned(), font, theme::palette(ui).ink);
    text.size().x + 2.0 * ui.spacing().button_padding.x
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

/// Puts the focus into the field.
pub fn come_here(ui: &Ui) {
    ui.memory_mut(|memory| memory.request_focus(Id::new("entry field")));
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
