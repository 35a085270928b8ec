//! What came of a session: marks, remarks, and every step once more.

use super::Tools;
use super::frame::{BREACH_SIGN, busy_ui, head_panel_ui};
use super::pieces::{bar_ui, column, heading_ui, note_ui, page_keys, signed_ui};
use crate::wording::debrief_words::{DebriefWords, MarkWords};
use crate::wording::lesson_words::LessonWords;
use crate::wording::reviewed_step_words::StepWords;
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::debrief::DebriefView;
use egui::{CentralPanel, Frame, Label, Margin, RichText, ScrollArea, Ui, vec2};

/// The debrief, or how far it is.
pub fn debrief_ui(
    ui: &mut Ui,
    debrief: &DebriefView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let way = ("window-to-front", Action::ToFront);
    head_panel_ui(ui, &debrief.title, &tools.say("debrief-title"), way, view, tools, actions);
    CentralPanel::default().frame(theme::card(ui)).show(ui, |ui| {
        ScrollArea::vertical().auto_shrink(false).show(ui, |ui| {
            page_keys(ui);
            column(ui, theme::PAGE_WIDTH, |ui| {
                if let Some(busy) = &view.busy {
                    busy_ui(ui, busy);
                }
                if let Some(parts) = &debrief.parts {
                    parts_ui(ui, parts, tools);
                }
                ui.add_space(theme::WIDE_GAP);
                let kept = [("path", debrief.kept_at.as_str().into())];
                ui.label(RichText::new(tools.words.say("window-kept-at", &kept)).small());
            });
        });
    });
}

fn parts_ui(ui: &mut Ui, parts: &DebriefWords, tools: Tools<'_>) {
    for line in &parts.outcome {
        ui.label(line);
    }
    ui.add_space(theme::WIDE_GAP);
    heading_ui(ui, &parts.total);
    let palette = theme::palette(ui);
    for critical in &parts.critical {
        note_ui(ui, BREACH_SIGN, critical, palette.breach, palette.breach_card);
    }
    ui.add_space(theme::WIDE_GAP);
    for hint in &parts.hints {
        ui.add(Label::new(hint).wrap());
    }
    lessons_ui(ui, &parts.lessons, tools);
    for mark in &parts.marks {
        mark_ui(ui, mark, tools);
    }
    ui.add_space(theme::WIDE_GAP);
    heading_ui(ui, &tools.say("window-steps-heading"));
    for step in &parts.steps {
        reviewed_ui(ui, step, tools);
    }
}

fn lessons_ui(ui: &mut Ui, lessons: &[LessonWords], tools: Tools<'_>) {
    if lessons.is_empty() {
        ui.add(Label::new(tools.say("debrief-no-lessons")).wrap());
        return;
    }
    heading_ui(ui, &tools.say("debrief-lessons"));
    for (place, lesson) in lessons.iter().enumerate() {
        let title = tools.words.say(
            "lesson-line",
            &[
                ("number", (place + 1).into()),
                ("title", lesson.title.as_str().into()),
                ("cost", lesson.cost.as_str().into()),
            ],
        );
        ui.add(Label::new(RichText::new(title).strong()).wrap());
        let advice = [("advice", lesson.next_time.as_str().into())];
        ui.add(Label::new(tools.words.say("lesson-next", &advice)).wrap());
    }
}

fn mark_ui(ui: &mut Ui, mark: &MarkWords, tools: Tools<'_>) {
    ui.add_space(theme::GAP);
    ui.horizontal(|ui| {
        let size = vec2(theme::NAME_WIDTH, ui.spacing().interact_size.y);
        ui.allocate_ui_with_layout(size, egui::Layout::left_to_right(egui::Align::Center), |ui| {
            ui.set_min_width(theme::NAME_WIDTH);
            ui.label(RichText::new(&mark.category).strong());
        });
        let points = tools.words.say(
            "window-points",
            &[("points", mark.points.as_str().into()), ("most", mark.most.as_str().into())],
        );
        #[expect(clippy::cast_possible_truncation, reason = "the bar is some hundred pixels long")]
        let share = mark.share as f32;
        bar_ui(ui, share, theme::BAR_WIDTH, &mark.category);
        ui.label(points);
    });
    Frame::new().inner_margin(Margin { left: 16, ..Margin::ZERO }).show(ui, |ui| {
        for remark in &mark.remarks {
            let palette = theme::palette(ui);
            let color = if remark.good { palette.good } else { palette.breach };
            signed_ui(ui, &remark.sign, &remark.text, color);
        }
    });
}

fn reviewed_ui(ui: &mut Ui, step: &StepWords, tools: Tools<'_>) {
    let text = format!("{}. {}", step.number, step.step);
    ui.add(Label::new(RichText::new(text).monospace().strong()).wrap());
    let is_weighed = !step.best.is_empty();
    let detail = tools.words.say(
        if is_weighed { "window-step-weighed" } else { "window-step-detail" },
        &[
            ("cost", step.cost.as_str().into()),
            ("value", step.value.as_str().into()),
            ("regret", step.regret.as_str().into()),
            ("best", step.best.as_str().into()),
            ("before", step.before.as_str().into()),
            ("belief", step.belief.as_str().into()),
        ],
    );
    Frame::new().inner_margin(Margin { left: 16, ..Margin::ZERO }).show(ui, |ui| {
        ui.add(Label::new(detail).wrap());
    });
    ui.add_space(theme::GAP);
}
