//! What has to be answered before anything else: where to save, whether to write over a file, whether to leave.

use crate::workshop::panels::Tools;
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::writer::{Asked, WriterAction};
use egui::{Align, Id, Key, Label, Panel, RichText, TextEdit, Ui, vec2};

/// The question on a strip under the head of the page.
pub fn asked_ui(ui: &mut Ui, asked: &Asked, tools: Tools<'_>, actions: &mut Vec<Action>) {
    Panel::top("asked").resizable(false).frame(theme::card(ui)).show(ui, |ui| {
        ui.take_available_width();
        let palette = theme::palette(ui);
        theme::note(palette.chosen).show(ui, |ui| {
            ui.take_available_width();
            match asked {
                Asked::Path(path) => path_ui(ui, path, tools, actions),
                Asked::Leave => {
                    says_ui(ui, &tools.say("writer-leave-asks"));
                    let answers = [
                        ("writer-save-and-leave", WriterAction::SaveAndLeave),
                        ("writer-discard", WriterAction::Discard),
                        ("writer-stay", WriterAction::Stay),
                    ];
                    answers_ui(ui, answers, tools, actions);
                }
                Asked::Over(path) => {
                    let named = [("path", path.as_str().into())];
                    says_ui(ui, &tools.words.say("writer-over-asks", &named));
                    let answers = [
                        ("writer-save-over", WriterAction::SaveOver),
                        ("writer-save-as", WriterAction::AskPath),
                        ("writer-stay", WriterAction::Stay),
                    ];
                    answers_ui(ui, answers, tools, actions);
                }
            }
        });
    });
}

fn says_ui(ui: &mut Ui, text: &str) {
    let ink = theme::palette(ui).ink;
    ui.add(Label::new(RichText::new(text).color(ink)).wrap());
}

fn answers_ui(
    ui: &mut Ui,
    answers: [(&str, WriterAction); 3],
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    ui.horizontal_wrapped(|ui| {
        for (number, (key, wanted)) in answers.into_iter().enumerate() {
            let response = ui.button(tools.say(key));
            // Whoever asked by a key can answer by one.
            if number == 0 && ui.memory(|memory| memory.focused().is_none()) {
                response.request_focus();
            }
            if response.clicked() {
                actions.push(Action::Writer(wanted));
            }
        }
    });
}

fn path_ui(ui: &mut Ui, path: &str, tools: Tools<'_>, actions: &mut Vec<Action>) {
    ui.horizontal_wrapped(|ui| {
        let label = ui.label(tools.say("writer-path-field"));
        let mut typed = path.to_owned();
        let id = Id::new("path of the case");
        let field = TextEdit::singleline(&mut typed)
            .id(id)
            .margin(theme::FIELD_MARGIN)
            .vertical_align(Align::Center)
            .min_size(vec2(0.0, ui.spacing().interact_size.y))
            .desired_width(theme::TEXT_WIDTH.min(ui.available_width()));
        let response = ui.add(field).labelled_by(label.id);
        let shown = id.with("shown");
        let pass = ui.ctx().cumulative_pass_nr();
        let last = ui.data(|data| data.get_temp::<u64>(shown));
        ui.data_mut(|data| data.insert_temp(shown, pass));
        if last.is_none_or(|last| last + 4 < pass) {
            response.request_focus();
        }
        if response.changed() {
            actions.push(Action::Writer(WriterAction::TypePath(typed)));
        }
        let entered = response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
        if ui.button(tools.say("writer-save-there")).clicked() || entered {
            actions.push(Action::Writer(WriterAction::SaveThere));
        }
        if ui.button(tools.say("writer-stay")).clicked() {
            actions.push(Action::Writer(WriterAction::Stay));
        }
    });
}
