//! What else could have been done in place of the step that is looked at.

use super::super::Tools;
use super::super::frame::BREACH_SIGN;
use super::super::pieces::{heading_ui, signed_ui};
use crate::wording::what_if_words::ChoiceWords;
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::debrief::{DebriefAction, LookBackView, Others};
use egui::{Button, Key, Label, RichText, Sense, TextEdit, Ui};

/// The list of choices, and a field to ask about any other step.
pub fn others_ui(
    ui: &mut Ui,
    look_back: &LookBackView,
    is_idle: bool,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    heading_ui(ui, &tools.say("window-others"));
    match &look_back.others {
        Others::NotAsked => {
            let button = Button::new(tools.say("window-ask-others"));
            if ui.add_enabled(is_idle, button).clicked() {
                actions.push(Action::Debrief(DebriefAction::AskOthers));
            }
        }
        Others::UnderWay => {
            ui.label(tools.say("progress-what-if"));
        }
        Others::Known { rows, left_out } => {
            ui.label(RichText::new(tools.say("window-others-hint")).small());
            for row in rows {
                choice_ui(ui, row, tools);
            }
            for line in left_out {
                ui.label(RichText::new(line).small());
            }
        }
    }
    ui.add_space(theme::GAP);
    ask_ui(ui, look_back, is_idle, tools, actions);
}

/// A choice; what it could have shown stands beside the pointer or the focus.
fn choice_ui(ui: &mut Ui, row: &ChoiceWords, tools: Tools<'_>) {
    let response = theme::note(theme::palette(ui).field)
        .show(ui, |ui| {
            ui.take_available_width();
            ui.add(Label::new(RichText::new(&row.what).monospace()).wrap());
            let amounts = tools.words.say(
                "window-choice",
                &[
                    ("total", row.total.as_str().into()),
                    ("bits", row.bits.as_str().into()),
                    ("against", row.against.as_str().into()),
                ],
            );
            ui.add(Label::new(RichText::new(amounts).small()).wrap());
            if let Some(read) = &row.read {
                let read = tools.words.say("window-choice-read", &[("read", read.as_str().into())]);
                ui.add(Label::new(read).wrap());
            }
        })
        .response;
    if row.means.is_empty() {
        return;
    }
    let means = format!(
        "{}\n{}",
        tools.say("window-choice-means"),
        row.means.iter().map(|line| line.trim()).collect::<Vec<_>>().join("\n")
    );
    let response = ui.interact(response.rect, response.id.with("choice"), Sense::click());
    response.widget_info(|| {
        let name = format!("{}\n{means}", row.what);
        egui::WidgetInfo::labeled(egui::WidgetType::Button, true, name)
    });
    if response.has_focus() {
        let stroke = egui::Stroke::new(2.0, theme::palette(ui).accent);
        ui.painter().rect_stroke(response.rect, 2.0, stroke, egui::StrokeKind::Inside);
        response.show_tooltip_text(&means);
    }
    response.on_hover_text(means);
}

/// The field for any other step.
fn ask_ui(
    ui: &mut Ui,
    look_back: &LookBackView,
    is_idle: bool,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let label = ui.label(tools.say("window-another-step"));
    ui.horizontal(|ui| {
        let mut asked = look_back.asked.clone();
        let button = Button::new(tools.say("window-ask-another"));
        let room = (ui.available_width() - theme::SEED_WIDTH / 2.0).max(theme::DIGIT_WIDTH);
        let field = TextEdit::singleline(&mut asked)
            .hint_text(tools.say("window-another-hint"))
            .font(egui::TextStyle::Monospace)
            .margin(theme::FIELD_MARGIN)
            .vertical_align(egui::Align::Center)
            .min_size(egui::vec2(0.0, ui.spacing().interact_size.y))
            .desired_width(room);
        let response = ui.add(field).labelled_by(label.id);
        if response.changed() {
            actions.push(Action::Debrief(DebriefAction::TypeAsked(asked)));
        }
        let entered = response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
        let can_ask = is_idle && !look_back.asked.trim().is_empty();
        if ui.add_enabled(can_ask, button).clicked() || (entered && can_ask) {
            actions.push(Action::Debrief(DebriefAction::Ask));
        }
    });
    if let Some(problem) = &look_back.asked_problem {
        signed_ui(ui, BREACH_SIGN, problem, theme::palette(ui).breach);
    }
    for line in &look_back.answer {
        ui.add(Label::new(line).wrap());
    }
}
