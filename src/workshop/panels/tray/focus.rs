//! Where the focus goes in the tray, so that whoever works with the keyboard alone need not begin at the edge of the
//! window each time.

use egui::{Context, Id, Response, Ui};

/// Where it is wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Wanted {
    /// On the tool in hand.
    Tool,
    /// On what comes next: the first place for the end in hand, or the button that takes the step.
    Next,
}

fn id() -> Id {
    Id::new("focus in the tray")
}

/// With the pass in which it was wanted: what is shown in the same one is about to change.
fn want(ctx: &Context, wanted: Wanted) {
    let pass = ctx.cumulative_pass_nr();
    ctx.data_mut(|data| data.insert_temp(id(), (wanted, pass)));
}

/// A key has asked for the tray.
pub fn come_here(ctx: &Context) {
    want(ctx, Wanted::Tool);
}

/// What has the focus changes what is below it; only a control that was chosen by key had the focus.
pub(super) fn go_on_from(ui: &Ui, response: &Response) {
    if response.has_focus() {
        want(ui.ctx(), Wanted::Next);
        ui.ctx().request_repaint();
    }
}

/// This is the tool in hand.
pub(super) fn is_in_hand(ui: &Ui, response: &Response) {
    take(ui, response, Wanted::Tool);
}

/// This comes next, if nothing before it did.
pub(super) fn is_next(ui: &Ui, response: &Response) {
    take(ui, response, Wanted::Next);
}

fn take(ui: &Ui, response: &Response, wanted: Wanted) {
    let pass = ui.ctx().cumulative_pass_nr();
    let kept: Option<(Wanted, u64)> = ui.data(|data| data.get_temp(id()));
    if kept.is_some_and(|(kept, since)| kept == wanted && since < pass) && response.enabled() {
        ui.data_mut(|data| data.remove::<(Wanted, u64)>(id()));
        response.request_focus();
    }
}
