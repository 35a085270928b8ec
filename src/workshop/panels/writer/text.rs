//! The text with the numbers of its lines.

use crate::workshop::panels::Tools;
use crate::workshop::panels::frame::BREACH_SIGN;
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::writer::{WriterAction, WriterView};
use egui::text::{CCursor, CCursorRange};
use egui::text_edit::{TextEditOutput, TextEditState};
use egui::{
    Align, Align2, Context, FontId, Id, Pos2, RichText, ScrollArea, TextEdit, TextStyle, Ui,
};
use std::collections::BTreeSet;

/// Puts the focus into the text.
pub fn come_here(ctx: &Context) {
    ctx.data_mut(|data| data.insert_temp(id().with("wanted"), true));
}

fn id() -> Id {
    Id::new("text of the case")
}

/// The text, and below it where the cursor is.
pub fn text_ui(ui: &mut Ui, written: &WriterView, tools: Tools<'_>, actions: &mut Vec<Action>) {
    let is_sent = follow(ui, written);
    let line = ui.spacing().interact_size.y + ui.spacing().item_spacing.y;
    let height = (ui.available_height() - line).max(theme::LEAST_PICTURE);
    let cursor = ScrollArea::vertical()
        .id_salt("text")
        .auto_shrink(false)
        .max_height(height)
        .show(ui, |ui| field_ui(ui, written, is_sent, tools, actions))
        .inner;
    let (line, column) = cursor.unwrap_or((1, 1));
    let place = [("line", line.into()), ("column", column.into())];
    ui.label(RichText::new(tools.words.say("writer-cursor", &place)).small());
}

/// The field; line and column of the cursor, from 1.
fn field_ui(
    ui: &mut Ui,
    written: &WriterView,
    is_sent: bool,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) -> Option<(usize, usize)> {
    let font = TextStyle::Monospace.resolve(ui.style());
    let lines = written.text.matches('\n').count() + 1;
    let gutter = gutter_width(ui, &font, lines);
    let mut text = written.text.clone();
    let output = ui
        .horizontal_top(|ui| {
            ui.add_space(gutter);
            TextEdit::multiline(&mut text)
                .id(id())
                .font(font.clone())
                .margin(theme::FIELD_MARGIN)
                .desired_width(ui.available_width())
                .desired_rows(theme::TEXT_ROWS)
                .show(ui)
        })
        .inner;
    let response = &output.response.response;
    let name = tools.say("writer-side-text");
    ui.ctx().accesskit_node_builder(response.id, |node| node.set_label(name.as_str()));
    numbers_ui(ui, &output, written, &font);
    let wanted = id().with("wanted");
    let is_wanted = ui.data_mut(|data| data.remove_temp::<bool>(wanted)).unwrap_or(false);
    if is_wanted || (written.cursor.with_focus && is_sent) {
        response.request_focus();
    }
    if is_sent && let Some(range) = output.state.cursor.char_range() {
        let at = output.galley.pos_from_cursor(range.primary);
        ui.scroll_to_rect(at.translate(output.galley_pos.to_vec2()), Some(Align::Center));
    }
    if response.changed() {
        actions.push(Action::Writer(WriterAction::Type(text.clone())));
    }
    let at = output.cursor_range?.primary.index;
    let before: String = text.chars().take(at.into()).collect();
    let column = before.rsplit('\n').next().unwrap_or("").chars().count() + 1;
    Some((before.matches('\n').count() + 1, column))
}

fn gutter_width(ui: &Ui, font: &FontId, lines: usize) -> f32 {
    let widest = format!("{BREACH_SIGN} {lines}");
    let galley = ui.painter().layout_no_wrap(widest, font.clone(), theme::palette(ui).ink);
    galley.size().x + theme::GAP
}

/// A number beside the first row of each line, and the sign of a problem where one begins.
fn numbers_ui(ui: &Ui, output: &TextEditOutput, written: &WriterView, font: &FontId) {
    let palette = theme::palette(ui);
    let problems = written.problems.iter().flatten();
    let wrong: BTreeSet<u32> = problems.filter_map(|it| Some(it.place?.0)).collect();
    let right = output.response.response.rect.left() - theme::GAP;
    let (mut line, mut begins) = (1_u32, true);
    for row in &output.galley.rows {
        if begins {
            let top = output.galley_pos.y + row.pos.y;
            let (text, color) = if wrong.contains(&line) {
                (format!("{BREACH_SIGN} {line}"), palette.breach)
            } else {
                (line.to_string(), palette.ink)
            };
            let shown = ui.clip_rect().y_range();
            if shown.contains(top) || shown.contains(top + font.size) {
                let at = Pos2::new(right, top);
                ui.painter().text(at, Align2::RIGHT_TOP, text, font.clone(), color);
            }
        }
        begins = row.ends_with_newline;
        line += u32::from(begins);
    }
}

/// Puts the cursor where it was sent; whether it was sent anywhere since.
fn follow(ui: &Ui, written: &WriterView) -> bool {
    let seen = id().with("sent");
    if ui.data(|data| data.get_temp(seen)) == Some(written.cursor.sent) {
        return false;
    }
    ui.data_mut(|data| data.insert_temp(seen, written.cursor.sent));
    if written.cursor.sent == 0 {
        return false;
    }
    let mut state = TextEditState::load(ui.ctx(), id()).unwrap_or_default();
    state.cursor.set_char_range(Some(CCursorRange::one(CCursor::new(written.cursor.at))));
    state.store(ui.ctx(), id());
    true
}
