//! Where a case is begun: its scenario, what it is for, its seed.

use super::Tools;
use super::frame::{BREACH_SIGN, busy_ui};
use super::pieces::{heading_ui, pick_ui, signed_ui, titled_ui};
use crate::scenario::schema::Level;
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::front::{FrontView, ScenarioView};
use egui::{Align, Button, Id, Key, Label, RichText, ScrollArea, TextEdit, Ui, vec2};

/// Passes without this page after which it counts as left: panels that settle skip a few.
const PASSES_AWAY: u64 = 4;

/// Scenario, purpose and seed, and the button that begins.
pub fn begin_ui(
    ui: &mut Ui,
    front: &FrontView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    heading_ui(ui, &tools.say("window-begin-heading"));
    // So that what begins a case stands on the same screen as a long list.
    ScrollArea::vertical().id_salt("scenarios").max_height(theme::SCENARIOS_HEIGHT).show(
        ui,
        |ui| {
            for (number, scenario) in front.scenarios.iter().enumerate() {
                let is_chosen = number == front.chosen;
                let title = format!("{} – {}", scenario.title, tools.say(kind_key(scenario.level)));
                let response = titled_ui(ui, Some(is_chosen), &title, &about(scenario, tools));
                if is_chosen && is_new_choice(ui, number) {
                    response.scroll_to_me(None);
                }
                if response.clicked() {
                    actions.push(Action::ChooseScenario(number));
                }
            }
        },
    );
    let idle = view.busy.is_none();
    file_ui(ui, front, idle, tools, actions);
    ui.add_space(theme::GAP);
    ui.horizontal_wrapped(|ui| {
        for (is_assessed, key) in [(false, "front-practise"), (true, "front-assessed")] {
            let may = is_assessed || !front.must_be_assessed();
            ui.add_enabled_ui(may, |ui| {
                if pick_ui(ui, front.is_assessed == is_assessed, &tools.say(key)).clicked() {
                    actions.push(Action::SetAssessed(is_assessed));
                }
            });
        }
    });
    let why = match (front.is_assessed, front.must_be_assessed()) {
        (false, _) => "front-practise-why",
        (true, false) => "front-assessed-why",
        (true, true) if front.is_sealed() => "front-sealed-why",
        (true, true) => "front-always-assessed-why",
    };
    remark_ui(ui, &tools.say(why));
    ui.add_space(theme::GAP);
    seed_ui(ui, front, idle, tools, actions);
    if front.is_sealed() {
        remark_ui(ui, &tools.say("front-sealed-seed"));
    } else if let Some(problem) = &front.seed_problem {
        signed_ui(ui, BREACH_SIGN, problem, theme::palette(ui).breach);
    } else {
        remark_ui(ui, &tools.say("window-seed-hint"));
    }
    if let Some(busy) = &view.busy {
        busy_ui(ui, busy);
    }
}

/// Whether another one is chosen than when this was last asked: a file that was just read stands at the list's end.
fn is_new_choice(ui: &Ui, chosen: usize) -> bool {
    let id = Id::new("chosen scenario");
    let before = ui.data(|data| data.get_temp::<usize>(id));
    ui.data_mut(|data| data.insert_temp(id, chosen));
    before.is_some_and(|before| before != chosen)
}

const fn kind_key(level: Option<Level>) -> &'static str {
    match level {
        Some(Level::First) => "front-level-first",
        Some(Level::Middle) => "front-level-middle",
        Some(Level::Hard) => "front-level-hard",
        None => "front-sealed",
    }
}

fn about(scenario: &ScenarioView, tools: Tools<'_>) -> String {
    match (&scenario.file, &scenario.sealed_for) {
        (None, _) => scenario.about.clone(),
        (Some(file), Some(name)) => tools.words.say(
            "front-sealed-for",
            &[("name", name.as_str().into()), ("file", file.as_str().into())],
        ),
        (Some(file), None) => tools.words.say(
            "front-of-file",
            &[("about", scenario.about.as_str().into()), ("file", file.as_str().into())],
        ),
    }
}

/// The field for a scenario file of the user's.
fn file_ui(
    ui: &mut Ui,
    front: &FrontView,
    idle: bool,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    ui.horizontal_wrapped(|ui| {
        let label = ui.label(tools.say("front-any-file"));
        let mut file = front.file.clone();
        let field = field(ui, &mut file, &tools.say("front-file-empty"), theme::FILE_WIDTH);
        let response = ui.add(field).labelled_by(label.id);
        if response.changed() {
            actions.push(Action::TypeScenarioFile(file));
        }
        let entered = response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
        let button = ui.add_enabled(idle, Button::new(tools.say("front-read-file")));
        if button.clicked() || (entered && idle) {
            actions.push(Action::ReadScenarioFile);
        }
    });
}

fn seed_ui(
    ui: &mut Ui,
    front: &FrontView,
    idle: bool,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    ui.horizontal(|ui| {
        let label = ui.label(tools.say("window-seed"));
        let mut seed = front.seed.clone();
        let field = field(ui, &mut seed, &tools.say("window-seed-any"), theme::SEED_WIDTH);
        let response = ui.add_enabled(!front.is_sealed(), field).labelled_by(label.id);
        // Whoever comes to this page can type at once, and Enter begins.
        let shown = Id::new("seed field shown");
        let pass = ui.ctx().cumulative_pass_nr();
        let last = ui.data(|data| data.get_temp::<u64>(shown));
        ui.data_mut(|data| data.insert_temp(shown, pass));
        let is_new = last.is_none_or(|last| last + PASSES_AWAY < pass);
        if is_new && ui.memory(|memory| memory.focused().is_none()) {
            response.request_focus();
        }
        if response.changed() {
            actions.push(Action::TypeSeed(seed));
        }
        let entered = response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
        let button = ui.add_enabled(idle, Button::new(tools.say("window-begin")));
        if button.clicked() || (entered && idle) {
            actions.push(Action::Begin);
        }
    });
}

fn field<'t>(ui: &Ui, text: &'t mut String, empty: &str, width: f32) -> TextEdit<'t> {
    TextEdit::singleline(text)
        .hint_text(empty)
        .margin(theme::FIELD_MARGIN)
        .vertical_align(Align::Center)
        .min_size(vec2(0.0, ui.spacing().interact_size.y))
        .desired_width(width)
}

fn remark_ui(ui: &mut Ui, text: &str) {
    ui.add(Label::new(RichText::new(text).small()).wrap());
}
