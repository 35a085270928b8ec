//! Outcome, lessons, and marks with what earned or lost them.

use super::super::Tools;
use super::super::frame::BREACH_SIGN;
use super::super::pieces::{bar_ui, heading_ui, note_ui, signed_ui};
use crate::wording::debrief_words::{DebriefWords, MarkWords};
use crate::wording::lesson_words::LessonWords;
use crate::workshop::theme;
use egui::{Frame, Label, Margin, RichText, Ui, vec2};

/// The marks of a session.
pub fn marks_ui(ui: &mut Ui, parts: &DebriefWords, tools: Tools<'_>) {
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
