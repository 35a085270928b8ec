//! Where a case is begun or gone on with.

use super::Tools;
use super::bay_picture::ask_for_size;
use super::frame::{BREACH_SIGN, busy_ui, head_ui};
use super::pieces::{heading_ui, page_keys, picture_ui, signed_ui, wide_button};
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::front::{FrontView, KeptFile, KeptState};
use egui::{CentralPanel, Frame, Panel, RichText, ScrollArea, TextEdit, TextStyle, Ui};

/// Session files that are offered; the rest are older.
const MOST_OFFERED: usize = 8;

/// The front page.
pub fn front_ui(
    ui: &mut Ui,
    front: &FrontView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let has_room = ui.available_width() >= theme::THREE_COLUMNS_FROM;
    if let Some(picture) = tools.picture.filter(|_| has_room) {
        let width = ui.available_width() - theme::TEXT_WIDTH;
        Panel::right("picture")
            .exact_size(width)
            .resizable(false)
            .show_separator_line(false)
            .frame(Frame::NONE)
            .show(ui, |ui| {
                ask_for_size(ui, ui.available_size(), view.picture, actions);
                picture_ui(ui, picture, ui.available_size(), &tools.say("window-picture"));
            });
    }
    let frame = theme::card(ui).inner_margin(theme::PAGE_MARGIN);
    CentralPanel::default().frame(frame).show(ui, |ui| {
        ScrollArea::vertical().auto_shrink(false).show(ui, |ui| {
            page_keys(ui);
            let title = RichText::new(tools.say("window-title"))
                .text_style(TextStyle::Name(theme::TITLE.into()));
            head_ui(ui, title, "", ("window-leave", Action::Leave), view, tools, actions);
            ui.add_space(theme::GAP);
            ui.label(tools.say("window-about"));
            ui.add_space(theme::WIDE_GAP);
            begin_ui(ui, front, view, tools, actions);
            ui.add_space(theme::WIDE_GAP);
            kept_ui(ui, front, view, tools, actions);
            ui.add_space(theme::WIDE_GAP);
            ui.label(RichText::new(tools.say("cli-safety")).small());
        });
    });
}

fn begin_ui(
    ui: &mut Ui,
    front: &FrontView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    heading_ui(ui, &tools.say("window-begin-heading"));
    let idle = view.busy.is_none();
    ui.horizontal(|ui| {
        let label = ui.label(tools.say("window-seed"));
        let mut seed = front.seed.clone();
        let field = TextEdit::singleline(&mut seed)
            .hint_text(tools.say("window-seed-any"))
            .margin(theme::FIELD_MARGIN)
            .vertical_align(egui::Align::Center)
            .min_size(egui::vec2(0.0, ui.spacing().interact_size.y))
            .desired_width(theme::SEED_WIDTH);
        let response = ui.add(field).labelled_by(label.id);
        if response.changed() {
            actions.push(Action::TypeSeed(seed));
        }
        let entered =
            response.lost_focus() && ui.input(|input| input.key_pressed(egui::Key::Enter));
        let button = ui.add_enabled(idle, egui::Button::new(tools.say("window-begin")));
        if button.clicked() || (entered && idle) {
            actions.push(Action::Begin);
        }
    });
    if let Some(problem) = &front.seed_problem {
        signed_ui(ui, BREACH_SIGN, problem, theme::palette(ui).breach);
    } else {
        ui.label(RichText::new(tools.say("window-seed-hint")).small());
    }
    if let Some(busy) = &view.busy {
        busy_ui(ui, busy);
    }
}

fn kept_ui(
    ui: &mut Ui,
    front: &FrontView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    heading_ui(ui, &tools.say("window-kept-heading"));
    let idle = view.busy.is_none();
    match front.kept.as_deref() {
        None => {
            ui.label(tools.say("window-looking"));
        }
        Some([]) => {
            ui.label(tools.say("window-none-kept"));
        }
        Some(files) => {
            for file in files.iter().take(MOST_OFFERED) {
                file_ui(ui, file, idle, tools, actions);
            }
            if files.len() > MOST_OFFERED {
                ui.label(RichText::new(tools.say("window-older")).small());
            }
        }
    }
    if ui.button(tools.say("window-look-again")).clicked() {
        actions.push(Action::LookAgain);
    }
}

fn file_ui(ui: &mut Ui, file: &KeptFile, idle: bool, tools: Tools<'_>, actions: &mut Vec<Action>) {
    let say = |key: &str, steps: usize| {
        tools.words.say(key, &[("name", file.name.as_str().into()), ("steps", steps.into())])
    };
    let text = match &file.state {
        KeptState::Unfinished { steps } => say("window-go-on", *steps),
        KeptState::Finished { steps } => say("window-see-debrief", *steps),
        KeptState::Broken(why) => {
            signed_ui(ui, BREACH_SIGN, why, theme::palette(ui).breach);
            return;
        }
    };
    let button = wide_button(ui, text);
    if ui.add_enabled(idle, button).clicked() {
        actions.push(Action::Open(file.path.clone()));
    }
}
