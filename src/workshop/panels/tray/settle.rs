//! What comes bit by bit: digits that settle, a course that is drawn as it went.

use crate::workshop::view::on_screen;
use egui::{Id, Ui};

/// When something came.
#[derive(Debug, Clone, Copy)]
struct Since {
    /// What came.
    what: usize,
    /// When [s].
    at: f64,
}

/// How far something is that takes a time [s] to be there, from 0 to 1. `what` tells one thing from the next; what is
/// seen for the first time is there already, and without motion everything is.
pub fn share(ui: &Ui, id: Id, what: usize, lasting: f64, moves: bool) -> f32 {
    let now = ui.input(|input| input.time);
    let seen: Option<Since> = ui.data(|data| data.get_temp(id));
    let since = match seen {
        Some(seen) if seen.what == what => seen,
        Some(_) => Since { what, at: now },
        None => Since { what, at: now - lasting },
    };
    ui.data_mut(|data| data.insert_temp(id, since));
    let share = (now - since.at) / lasting;
    if !moves || share >= 1.0 {
        return 1.0;
    }
    ui.ctx().request_repaint();
    on_screen(share.max(0.0))
}
