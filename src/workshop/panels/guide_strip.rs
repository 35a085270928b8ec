//! The strip that shows somebody round: the next thing to try in a sentence, and what is done.

use super::Tools;
use super::frame::{DONE_SIGN, REFUSED_SIGN};
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::guide::{GuideView, Task};
use egui::{Label, Panel, RichText, Ui};

/// The strip under the head of a case, as long as nobody has closed it; the list of tasks where there is room.
pub fn guide_ui(
    ui: &mut Ui,
    guide: GuideView,
    has_room: bool,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    Panel::top("guide").resizable(false).frame(theme::card(ui)).show(ui, |ui| {
        ui.take_available_width();
        let palette = theme::palette(ui);
        theme::note(palette.chosen).show(ui, |ui| {
            ui.take_available_width();
            let next = guide.next();
            let says = next.map_or("guide-over", |task| keys(task).1);
            ui.add(Label::new(RichText::new(tools.say(says)).color(palette.ink)).wrap());
            ui.horizontal_wrapped(|ui| {
                if has_room {
                    for task in Task::ALL {
                        task_ui(ui, task, guide.is_done(task), tools);
                    }
                }
                let close = if next.is_some() { "guide-skip" } else { "guide-close" };
                if ui.button(tools.say(close)).clicked() {
                    actions.push(Action::CloseGuide);
                }
            });
        });
    });
}

fn task_ui(ui: &mut Ui, task: Task, is_done: bool, tools: Tools<'_>) {
    let name = tools.say(keys(task).0);
    let (sign, key) =
        if is_done { (DONE_SIGN, "guide-done") } else { (REFUSED_SIGN, "guide-not-done") };
    // The sign is for the eye; whoever listens is told in words.
    let response = ui.label(format!("{sign} {name}"));
    let said = tools.words.say(key, &[("task", name.into())]);
    response.widget_info(|| egui::WidgetInfo::labeled(egui::WidgetType::Label, true, &said));
    ui.add_space(theme::GAP);
}

/// Name and sentence of a task.
const fn keys(task: Task) -> (&'static str, &'static str) {
    match task {
        Task::Sheet => ("guide-sheet", "guide-sheet-says"),
        Task::Look => ("guide-look", "guide-look-says"),
        Task::Measure => ("guide-measure", "guide-measure-says"),
        Task::Suspect => ("guide-suspect", "guide-suspect-says"),
        Task::Decide => ("guide-decide", "guide-decide-says"),
        Task::Prove => ("guide-prove", "guide-prove-says"),
    }
}
