//! The steps of a session below each other, each with what it gave away.

use super::super::Tools;
use super::super::pieces::{heading_ui, wide_button};
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::debrief::{DebriefAction, LookBackView, RegretView};
use egui::{Rect, RichText, Stroke, StrokeKind, Ui, pos2};

/// Height of the bar under a step [points].
const BAR: f32 = 7.0;

/// The list of steps; the one that is looked at is underlined and kept in view.
pub fn timeline_ui(
    ui: &mut Ui,
    look_back: &LookBackView,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    heading_ui(ui, &tools.say("window-timeline"));
    ui.label(RichText::new(tools.say("window-timeline-hint")).small());
    let most = look_back.regrets.iter().map(|regret| regret.most).fold(0.0, f32::max);
    let shown = egui::Id::new("step in view");
    let last_shown = ui.data(|data| data.get_temp::<usize>(shown));
    for (at, step) in look_back.log.iter().enumerate() {
        let is_chosen = at == look_back.at;
        let text = RichText::new(format!("{}. {}", step.number, step.step)).monospace();
        let response = ui.add(wide_button(ui, text).selected(is_chosen));
        if response.clicked() {
            actions.push(Action::Debrief(DebriefAction::GoTo(at)));
        }
        if is_chosen {
            let rect = response.rect;
            let stroke = Stroke::new(3.0, theme::palette(ui).accent);
            ui.painter().hline(rect.x_range(), rect.bottom() - 1.5, stroke);
            if last_shown != Some(at) {
                ui.scroll_to_rect(rect.expand(rect.height()), None);
            }
        }
        let regret = look_back.regrets.get(at).copied().unwrap_or_default();
        if most > 0.0 && regret.most >= 0.5 {
            bar_ui(ui, regret, most);
        }
    }
    ui.data_mut(|data| data.insert_temp(shown, look_back.at));
}

/// What a step gave away: full for what is shown, a frame for what is not excluded, a broken one where nothing can be
/// told. It only repeats what the card of the step says in words.
fn bar_ui(ui: &mut Ui, regret: RegretView, most: f32) {
    let palette = theme::palette(ui);
    let (_, rect) = ui.allocate_space(egui::vec2(ui.available_width(), BAR));
    let x = |money: f32| rect.left() + rect.width() * (money / most).clamp(0.0, 1.0);
    let to = |money: f32| Rect::from_min_max(rect.min, pos2(x(money), rect.bottom()));
    let painter = ui.painter();
    let frame = to(regret.most);
    if regret.is_open {
        let stroke = Stroke::new(1.0, palette.faint);
        let corners = [
            frame.left_top(),
            frame.right_top(),
            frame.right_bottom(),
            frame.left_bottom(),
            frame.left_top(),
        ];
        painter.extend(egui::Shape::dashed_line(&corners, stroke, 4.0, 3.0));
        return;
    }
    painter.rect_filled(to(regret.least), 0.0, palette.breach);
    painter.rect_stroke(frame, 0.0, Stroke::new(1.0, palette.ink), StrokeKind::Inside);
}
