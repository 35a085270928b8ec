//! The sessions that are kept: those to go on with, and those that were handed back.

use super::Tools;
use super::frame::BREACH_SIGN;
use super::pieces::{heading_ui, signed_ui, titled_ui};
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::front::{Age, FrontView, KeptFile, KeptState};
use egui::{RichText, Ui};

/// Session files of each sort that are offered; the rest are older.
const MOST_OFFERED: usize = 6;

/// Both sorts, each the newest first.
pub fn kept_ui(
    ui: &mut Ui,
    front: &FrontView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    heading_ui(ui, &tools.say("window-kept-heading"));
    let idle = view.busy.is_none();
    let files = front.kept.as_deref().unwrap_or_default();
    let is_past = |file: &&KeptFile| {
        matches!(file.state, KeptState::Finished { .. } | KeptState::Sealed { .. })
    };
    let (past, open): (Vec<&KeptFile>, Vec<&KeptFile>) = files.iter().partition(is_past);
    let empty = match &front.kept {
        None => Some("window-looking"),
        Some(files) if files.is_empty() => Some("window-none-kept"),
        Some(_) if open.is_empty() => Some("front-none-open"),
        Some(_) => None,
    };
    if let Some(key) = empty {
        ui.label(tools.say(key));
    }
    files_ui(ui, &open, idle, tools, actions);
    if !past.is_empty() {
        ui.add_space(theme::WIDE_GAP);
        heading_ui(ui, &tools.say("front-past-heading"));
        files_ui(ui, &past, idle, tools, actions);
    }
    if open.len().max(past.len()) > MOST_OFFERED {
        ui.label(RichText::new(tools.say("window-older")).small());
    }
    if ui.button(tools.say("window-look-again")).clicked() {
        actions.push(Action::LookAgain);
    }
}

fn files_ui(
    ui: &mut Ui,
    files: &[&KeptFile],
    idle: bool,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    for file in files.iter().take(MOST_OFFERED) {
        file_ui(ui, file, idle, tools, actions);
    }
}

fn file_ui(ui: &mut Ui, file: &KeptFile, idle: bool, tools: Tools<'_>, actions: &mut Vec<Action>) {
    let say = |key: &str, steps: usize| {
        tools.words.say(key, &[("name", file.name.as_str().into()), ("steps", steps.into())])
    };
    let (text, is_assessed) = match &file.state {
        KeptState::Unfinished { steps, is_assessed } => (say("window-go-on", *steps), *is_assessed),
        KeptState::Finished { steps, is_assessed } => {
            (say("window-see-debrief", *steps), *is_assessed)
        }
        KeptState::Sealed { steps } => (say("window-see-receipt", *steps), true),
        KeptState::Broken(why) => {
            signed_ui(ui, BREACH_SIGN, why, theme::palette(ui).breach);
            return;
        }
    };
    let mode = tools.say(if is_assessed { "front-was-assessed" } else { "front-was-practice" });
    let remark = match file.age {
        Some(age) => {
            let said = [("mode", mode.into()), ("age", said(age, tools).into())];
            tools.words.say("front-mode-and-age", &said)
        }
        None => mode,
    };
    let clicked = ui.add_enabled_ui(idle, |ui| titled_ui(ui, None, &text, &remark)).inner.clicked();
    if clicked {
        actions.push(Action::Open(file.path.clone()));
    }
}

fn said(age: Age, tools: Tools<'_>) -> String {
    let (key, count) = match age {
        Age::Now => ("front-age-now", 0),
        Age::Minutes(count) => ("front-age-minutes", count),
        Age::Hours(count) => ("front-age-hours", count),
        Age::Days(count) => ("front-age-days", count),
    };
    tools.words.say(key, &[("count", count.into())])
}
