//! Code reader and road drive: tables of what the module said.

use super::Hand;
use super::ends::list_ui;
use super::take::{also_ui, outcome_ui, take_ui};
use crate::workshop::panels::pieces::{heading_ui, pick_ui};
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::tray::{Named, Request, Shown, TableView, TrayAction};
use egui::{Label, RichText, Stroke, Ui};

/// The code reader in hand.
pub fn reader_ui(ui: &mut Ui, hand: Hand<'_>, actions: &mut Vec<Action>) {
    let Hand { tray, tools, .. } = hand;
    ui.horizontal_wrapped(|ui| {
        for request in Request::ALL {
            if pick_ui(ui, tray.request == request, &tools.say(request.key())).clicked() {
                actions.push(Action::Tray(TrayAction::Ask(request)));
            }
        }
    });
    let predict = (tray.request == Request::Codes).then_some("predict codes");
    take_ui(ui, hand, "reader-take", predict, actions);
    also_ui(ui, hand, &[("reader-clear", "clear codes")], actions);
    shown_ui(ui, hand);
}

/// The vehicle on the road.
pub fn drive_ui(ui: &mut Ui, hand: Hand<'_>, actions: &mut Vec<Action>) {
    let Hand { tray, tools, .. } = hand;
    ui.label(tools.say("drive-which"));
    let road = |id| Action::Tray(TrayAction::Road(id));
    let name = |road: &Named| road.name.clone();
    list_ui(ui, (&tray.roads.places, tray.roads.place()), false, &name, &road, actions);
    take_ui(ui, hand, "drive-take", None, actions);
    shown_ui(ui, hand);
    if let Some(reading) = &tray.reading
        && matches!(reading.shown, Shown::Tables(_))
    {
        for line in &reading.words {
            ui.label(line);
        }
    }
}

/// Tables where there are some, else the words.
fn shown_ui(ui: &mut Ui, hand: Hand<'_>) {
    let tables = hand.tray.reading.as_ref().and_then(|reading| match &reading.shown {
        Shown::Tables(tables) => Some((reading.number, tables)),
        _ => None,
    });
    let Some((number, tables)) = tables else { return outcome_ui(ui, hand, true) };
    outcome_ui(ui, hand, false);
    let step = hand.tools.words.say("tray-step", &[("number", number.into())]);
    heading_ui(ui, &step);
    for table in tables {
        table_ui(ui, table);
        ui.add_space(theme::WIDE_GAP);
    }
}

/// Shares of the width that columns have, by how many there are.
const fn shares(columns: usize) -> &'static [f32] {
    match columns {
        0..=2 => &[0.56, 0.44],
        3 => &[0.22, 0.34, 0.44],
        _ => &[0.34, 0.22, 0.22, 0.22],
    }
}

/// A table with a rule under each row.
fn table_ui(ui: &mut Ui, table: &TableView) {
    let rule = Stroke::new(1.0, theme::palette(ui).rule);
    let heads = (!table.columns.is_empty()).then_some(&table.columns);
    for (number, row) in heads.into_iter().chain(&table.rows).enumerate() {
        let is_head = heads.is_some() && number == 0;
        let room = ui.available_width() - ui.spacing().item_spacing.x * (row.len() as f32);
        let response = ui
            .horizontal_top(|ui| {
                for (cell, share) in row.iter().zip(shares(row.len())) {
                    ui.vertical(|ui| {
                        ui.set_width(room * share);
                        let text = RichText::new(cell);
                        let text = if is_head { text.small() } else { text };
                        ui.add(Label::new(text).wrap());
                    });
                }
            })
            .response;
        let y = response.rect.bottom() + 1.0;
        ui.painter().hline(response.rect.x_range(), y, rule);
    }
}
