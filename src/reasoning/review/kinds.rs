//! What kind of step it is, as far as a review asks.

use crate::session::attempt::Entry;
use crate::session::step::{ENGINE_BAY, KeyPosition, Step};

/// Steps that are there to show something, and nothing else: none that opens the way, and no look under
/// the bonnet, which is a duty.
pub(super) fn is_only_for_what_it_shows(step: &Step) -> bool {
    match step {
        Step::Look { place } => place.as_str() != ENGINE_BAY,
        // What is switched off again is put back.
        Step::Command { on, .. } => *on,
        Step::Drive { .. } | Step::ReadGauge { .. } => true,
        step => is_test(step),
    }
}

/// Whether a valve that is switched on only serves what is measured before it is switched off again.
pub(super) fn serves_a_reading(log: &[Entry], number: usize) -> bool {
    if !matches!(log[number].step, Step::Command { on: true, .. }) {
        return false;
    }
    let until_off = log.iter().skip(number + 1).map(|entry| &entry.step);
    until_off
        .take_while(|step| !matches!(step, Step::Command { on: false, .. }))
        .any(|step| !matches!(step, Step::Command { .. }) && is_test(step))
}

/// Steps that show something of a part or a circuit.
pub(super) const fn is_test(step: &Step) -> bool {
    matches!(
        step,
        Step::Measure { .. }
            | Step::MeasureFromFront { .. }
            | Step::Wiggle { .. }
            | Step::TestLamp { .. }
            | Step::Clamp { .. }
            | Step::Scope { .. }
            | Step::Power { .. }
            | Step::Command { .. }
            | Step::Look { .. }
    )
}

/// Steps whose choice is weighed. Reading the sheet, asking, codes, freeze frame, oil and looking
/// before touching are duties of the trade and never regretted; notes cost nothing.
pub(super) const fn is_weighed(step: &Step) -> bool {
    matches!(
        step,
        Step::Remove { .. }
            | Step::Refit { .. }
            | Step::Unplug { .. }
            | Step::Plug { .. }
            | Step::Measure { .. }
            | Step::MeasureFromFront { .. }
            | Step::Wiggle { .. }
            | Step::TestLamp { .. }
            | Step::Clamp { .. }
            | Step::Scope { .. }
            | Step::FitGauge
            | Step::ReadGauge { .. }
            | Step::RemoveGauge
            | Step::Power { .. }
            | Step::Command { .. }
            | Step::Look { .. }
            | Step::Drive { .. }
            | Step::Fit { .. }
            | Step::Clean { .. }
            | Step::Mend { .. }
            | Step::Replace { .. }
            | Step::TopUpOil
            | Step::ChangeOil { .. }
    )
}

/// Whether the module may have noticed a step that leaves what instruments show as it was.
#[must_use]
pub const fn is_felt_by_module(step: &Step) -> bool {
    matches!(
        step,
        Step::Key { .. }
            | Step::Plug { .. }
            | Step::Unplug { .. }
            | Step::Command { .. }
            | Step::Scope { .. }
    )
}

/// Whether what tests would show has to be worked out anew after a step.
#[must_use]
pub const fn disturbs(step: &Step) -> bool {
    matches!(
        step,
        Step::Fit { .. }
            | Step::Clean { .. }
            | Step::Mend { .. }
            | Step::Replace { .. }
            | Step::MeasureFromFront { .. }
            | Step::TopUpOil
            | Step::ChangeOil { .. }
            | Step::ClearCodes
            | Step::Drive { .. }
            | Step::Key { position: KeyPosition::Start }
    )
}
