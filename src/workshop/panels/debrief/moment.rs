//! The step that is looked at: what followed, what was known, what it cost, and what the best was.

use super::super::Tools;
use super::super::log::step_ui;
use super::super::pieces::heading_ui;
use crate::wording::reviewed_step_words::StepWords;
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::debrief::LookBackView;
use egui::{Grid, Label, RichText, Ui};

/// Everything about the step.
pub fn moment_ui(
    ui: &mut Ui,
    look_back: &LookBackView,
    review: Option<&StepWords>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    heading_ui(ui, &tools.say("window-moment"));
    if let Some(step) = look_back.log.get(look_back.at) {
        step_ui(ui, step, tools, actions);
    }
    let Some(review) = review else { return };
    let rows = [
        ("window-known-before", &review.before),
        ("window-cost-of-step", &review.cost),
        ("window-rest-of-job", &review.value),
        ("window-against-best", &review.regret),
        ("window-best-step", &review.best),
        ("window-could-tell", &review.told),
        ("window-known-after", &review.belief),
    ];
    Grid::new("moment").num_columns(2).spacing([theme::WIDE_GAP, theme::GAP]).show(ui, |ui| {
        for (key, text) in rows {
            if text.is_empty() {
                continue;
            }
            ui.add(Label::new(RichText::new(tools.say(key)).strong()));
            ui.add(Label::new(text).wrap());
            ui.end_row();
        }
    });
    ui.add_space(theme::WIDE_GAP);
}
