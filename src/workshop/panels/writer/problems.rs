//! What is wrong with the text; each problem leads to its place.

use crate::workshop::panels::Tools;
use crate::workshop::panels::frame::{BREACH_SIGN, DONE_SIGN};
use crate::workshop::panels::pieces::{heading_ui, wide_button};
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::writer::{ProblemView, WriterAction, WriterView};
use egui::{Context, Id, Label, ScrollArea, Ui};

/// Stands before what is doubtful and stops nothing.
const DOUBT_SIGN: &str = "?";

/// Puts the focus on the first problem.
pub fn come_here(ctx: &Context) {
    ctx.data_mut(|data| data.insert_temp(first(), true));
}

fn first() -> Id {
    Id::new("first problem of the case")
}

/// How many problems there are.
pub fn title(written: &WriterView, tools: Tools<'_>) -> String {
    match &written.problems {
        None => tools.say("writer-problems-unknown"),
        Some(problems) => tools.words.say("writer-problems", &[("count", problems.len().into())]),
    }
}

/// The list.
pub fn problems_ui(ui: &mut Ui, written: &WriterView, tools: Tools<'_>, actions: &mut Vec<Action>) {
    heading_ui(ui, &title(written, tools));
    ScrollArea::vertical().id_salt("problems").auto_shrink(false).show(ui, |ui| {
        let problems = written.problems.as_deref();
        if problems.is_some_and(<[_]>::is_empty) && !written.is_checking {
            let said = format!("{DONE_SIGN} {}", tools.say("writer-no-problems"));
            ui.add(Label::new(said).wrap());
        }
        for problem in problems.unwrap_or_default() {
            problem_ui(ui, problem, BREACH_SIGN, actions);
        }
        if !written.doubts.is_empty() {
            ui.add_space(theme::GAP);
            let count = [("count", written.doubts.len().into())];
            ui.add(Label::new(tools.words.say("writer-doubts", &count)).wrap());
        }
        for doubt in &written.doubts {
            problem_ui(ui, doubt, DOUBT_SIGN, actions);
        }
        // There is none to go to.
        ui.data_mut(|data| data.remove_temp::<bool>(first()));
        if written.is_checking {
            ui.label(tools.say("writer-checking"));
        }
        ui.add_space(theme::GAP);
    });
}

fn problem_ui(ui: &mut Ui, problem: &ProblemView, sign: &str, actions: &mut Vec<Action>) {
    let text = format!("{sign} {}", problem.said);
    let Some((line, column)) = problem.place else {
        ui.add(Label::new(text).wrap());
        return;
    };
    let response = ui.add(wide_button(ui, text));
    if ui.data_mut(|data| data.remove_temp::<bool>(first())).unwrap_or(false) {
        response.request_focus();
    }
    if response.clicked() {
        actions.push(Action::Writer(WriterAction::GoTo(line, column)));
    }
}
