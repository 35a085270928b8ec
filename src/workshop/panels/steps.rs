//! Steps clicked together word by word.

use super::Tools;
use super::pieces::{is_low, pick_ui, wide_button, words_ui};
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::case::{CaseView, LineView};
use egui::{Button, Context, Id, Label, Response, RichText, ScrollArea, Ui, vec2};

/// What a number is written with.
const DIGITS: [char; 12] = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '0', '.', '-'];

/// Puts the focus on the first of the words.
pub fn come_here(ctx: &Context) {
    First::come_here(ctx);
}

/// The line as it stands, and what it can be begun or gone on with.
pub fn steps_ui(
    ui: &mut Ui,
    case: &CaseView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let line = &case.line;
    let is_empty = line.text.trim().is_empty();
    let shown = if is_empty {
        RichText::new(tools.say("window-line-empty"))
    } else {
        RichText::new(&line.text).monospace()
    };
    theme::note(theme::palette(ui).field).show(ui, |ui| {
        ui.take_available_width();
        ui.add(Label::new(shown).wrap());
    });
    let mut first = First::of(ui);
    ui.horizontal_wrapped(|ui| {
        let ready = line.is_step && view.busy.is_none();
        let take = ui.add_enabled(ready, Button::new(tools.say("window-take")));
        if line.words.is_empty() && !line.digits && line.texts.is_empty() {
            first.is(&take);
        }
        if take.clicked() {
            first.again(&take);
            actions.push(Action::TakeStep);
        }
        let back = ui.add_enabled(!is_empty, Button::new(tools.say("window-remove-word")));
        if back.clicked() {
            actions.push(Action::RemoveWord);
        }
    });
    ui.add_space(theme::GAP);
    ScrollArea::vertical().id_salt("steps").auto_shrink(false).show(ui, |ui| {
        if is_empty {
            starts_ui(ui, case, &mut first, actions);
            // Which keys there are, where the field has no line for it.
            if is_low(ui) {
                ui.add_space(theme::GAP);
                ui.add(Label::new(RichText::new(&line.hint).small()).wrap());
            }
        } else {
            followers_ui(ui, line, tools, &mut first, actions);
        }
    });
    first.keep(ui);
}

fn starts_ui(ui: &mut Ui, case: &CaseView, first: &mut First, actions: &mut Vec<Action>) {
    ui.horizontal_wrapped(|ui| {
        for group in &case.groups {
            let response = pick_ui(ui, group.group == case.open_group, &group.name);
            first.is(&response);
            if response.clicked() {
                actions.push(Action::ShowGroup(group.group));
            }
        }
    });
    ui.add_space(theme::GAP);
    let open = case.groups.iter().filter(|group| group.group == case.open_group);
    for start in open.flat_map(|group| &group.starts) {
        let response = words_ui(ui, &start.words, Some(&start.meaning));
        if response.clicked() {
            first.again(&response);
            actions.push(Action::StartLine(start.words.clone()));
        }
    }
}

fn followers_ui(
    ui: &mut Ui,
    line: &LineView,
    tools: Tools<'_>,
    first: &mut First,
    actions: &mut Vec<Action>,
) {
    if line.digits {
        ui.label(tools.say("window-number"));
        ui.horizontal_wrapped(|ui| {
            for digit in DIGITS {
                let button = Button::new(digit.to_string());
                let response = ui.add(button.min_size(vec2(theme::DIGIT_WIDTH, 0.0)));
                first.is(&response);
                if response.clicked() {
                    actions.push(Action::AddDigit(digit));
                }
            }
        });
    }
    if !line.texts.is_empty() {
        ui.label(tools.say("window-text"));
    }
    for text in &line.texts {
        let response = ui.add(wide_button(ui, text));
        first.is(&response);
        if response.clicked() {
            first.again(&response);
            actions.push(Action::AddText(text.clone()));
        }
    }
    if !line.words.is_empty() {
        ui.label(tools.say("window-next-word"));
    }
    for offer in &line.words {
        let response = words_ui(ui, &offer.word, offer.meaning.as_deref());
        first.is(&response);
        if response.clicked() {
            first.again(&response);
            actions.push(Action::AddWord(offer.word.clone()));
        }
    }
    if line.words.is_empty() && !line.digits && line.texts.is_empty() {
        ui.label(tools.say(if line.is_step { "window-line-whole" } else { "window-line-wrong" }));
    }
}

/// Puts the focus on the first of the words when those under it have changed, so that whoever
/// works with the keyboard alone need not begin at the edge of the window each time.
struct First {
    wanted: bool,
    wanted_next: bool,
}

impl First {
    fn id() -> Id {
        Id::new("first of the words")
    }

    fn of(ui: &Ui) -> Self {
        let wanted = ui.data(|data| data.get_temp(Self::id())).unwrap_or(false);
        Self { wanted, wanted_next: false }
    }

    /// A key has asked for the words, wherever they are shown next.
    fn come_here(ctx: &Context) {
        ctx.data_mut(|data| data.insert_temp(Self::id(), true));
    }

    /// This is the first, unless another was.
    fn is(&mut self, response: &Response) {
        if std::mem::take(&mut self.wanted) {
            response.request_focus();
        }
    }

    /// The words change now; only a control that was chosen by key had the focus.
    fn again(&mut self, response: &Response) {
        self.wanted_next |= response.has_focus();
    }

    fn keep(self, ui: &Ui) {
        ui.data_mut(|data| data.insert_temp(Self::id(), self.wanted || self.wanted_next));
    }
}
