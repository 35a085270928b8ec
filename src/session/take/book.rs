//! What the use of an instrument takes by the workshop's book: known before it is used, and the same as is then spent.

use crate::numerics::whole::{to_i64, to_u32};
use crate::session::attempt::{Session, Till};
use crate::session::setup::{Briefing, Prices, Route};
use crate::session::shelf::Offer;
use crate::session::step::{KeyPosition, Step};
use crate::units::{Minutes, Money};
use crate::vehicle::spec::HarnessElement;

/// One reading of the meter, with the way to fetch it for the first.
pub(super) fn meter(session: &Session) -> Minutes {
    let times = session.briefing.prices.minutes;
    with_first(session.progress.meter_fetched, times.measure, times.fetch_meter)
}

/// One reading of the current probe.
pub(super) fn clamp(session: &Session) -> Minutes {
    let times = session.briefing.prices.minutes.electrical;
    with_first(session.progress.clamp_fetched, times.clamp, times.fetch_clamp)
}

/// One capture of the scope.
pub(super) fn scope(session: &Session) -> Minutes {
    let times = session.briefing.prices.minutes.electrical;
    with_first(session.progress.scope_set_up, times.capture, times.set_up_scope)
}

/// One request of the code reader.
pub(super) fn reader(session: &Session) -> Minutes {
    let times = session.briefing.prices.minutes;
    with_first(session.progress.reader_connected, times.request, times.connect_reader)
}

/// A valve from the counter, with the bay for as long as it takes to come.
pub(super) fn valve(briefing: &Briefing, offer: &Offer<'_>) -> (Minutes, Money) {
    (briefing.prices.minutes.fetch_part, offer.money(&briefing.shelf))
}

/// Cleaning a valve.
pub(super) const fn cleaning(prices: &Prices) -> (Minutes, Money) {
    (prices.minutes.clean, prices.cleaning)
}

/// Mending a contact or a wire; nothing for what cannot be mended.
pub(super) const fn mending(
    prices: &Prices,
    element: Option<&HarnessElement>,
) -> Option<(Minutes, Money)> {
    let time = match element {
        Some(HarnessElement::Pin { .. }) => prices.minutes.mend_pin,
        Some(HarnessElement::Wire { .. } | HarnessElement::Cable { .. }) => {
            prices.minutes.mend_wire
        }
        _ => return None,
    };
    Some((time, prices.mending))
}

/// A new fuse or relay; nothing for what is neither.
pub(super) const fn small_part(
    prices: &Prices,
    element: Option<&HarnessElement>,
) -> Option<(Minutes, Money)> {
    let (times, parts) = (&prices.minutes.electrical, &prices.small_parts);
    match element {
        Some(HarnessElement::Fuse { .. }) => Some((times.fuse, parts.fuse)),
        Some(HarnessElement::RelayContact { .. }) => Some((times.relay, parts.relay)),
        _ => None,
    }
}

/// Fresh oil for a sump of so many litres, sold by the litre, and a filter.
pub(super) fn oil_change(prices: &Prices, full_litres: f64) -> (Minutes, Money) {
    let oil = Money(prices.oil_litre.0 * to_i64(full_litres.ceil()));
    (prices.minutes.change_oil, oil + prices.oil_filter)
}

/// A drive. One that is broken off costs the way out and the way back, and never more than the whole.
fn drive(route: &Route, stop_after: Option<u16>, fuel: Money) -> Till {
    let whole_s = route.profile.duration().0;
    let share = match stop_after.map(f64::from) {
        Some(after_s) if 2.0 * after_s < whole_s => 2.0 * after_s / whole_s,
        _ => return Till { minutes: route.minutes, money: fuel },
    };
    let part = |of: f64| (of * share).ceil();
    Till {
        minutes: Minutes(to_u32(part(f64::from(route.minutes.0)))),
        money: Money(to_i64(part(fuel.0 as f64))),
    }
}

/// What one use takes, with what the first use takes on top.
const fn with_first(is_at_hand: bool, each: Minutes, first: Minutes) -> Minutes {
    if is_at_hand { each } else { Minutes(each.0 + first.0) }
}

impl Session {
    /// Time and money that the use of an instrument, a drive, a repair or a call takes by the workshop's book, if it is
    /// possible as the vehicle stands. `None` for what the book cannot say, the wait for a warm engine and the oil that
    /// goes in, and for all other steps.
    #[must_use]
    pub fn book_price(&self, step: &Step) -> Option<Till> {
        let prices = &self.briefing.prices;
        let times = &prices.minutes;
        let time = match step {
            Step::Measure { .. } | Step::MeasureFromFront { .. } | Step::ZeroLeads => meter(self),
            Step::Wiggle { .. } => meter(self) + times.electrical.wiggle,
            Step::TestLamp { .. } => times.electrical.lamp,
            Step::Clamp { .. } | Step::ZeroClamp => clamp(self),
            // The reader switches the valve while the engine stands.
            Step::Scope { .. } if self.vehicle.engine_runs() => scope(self),
            Step::Scope { .. } => scope(self) + reader(self),
            Step::ReplaceMeterFuse => {
                let money = prices.small_parts.meter_fuse;
                return Some(Till { minutes: times.electrical.meter_fuse, money });
            }
            Step::Power { .. } => times.power,
            Step::Dipstick => times.dipstick,
            Step::FitGauge => self.briefing.vehicle.oil.gauge_tap.fit,
            Step::RemoveGauge => self.briefing.vehicle.oil.gauge_tap.remove,
            Step::ReadGauge { warm: false, .. } => times.read_gauge,
            Step::Command { .. }
            | Step::ReadCodes
            | Step::ReadFreezeFrame
            | Step::ReadLiveData
            | Step::ReadLiveItems { .. }
            | Step::ReadReadiness
            | Step::ReadTestResults
            | Step::ReadVehicleInformation
            | Step::ClearCodes => reader(self),
            Step::Drive { route, stop_after } => {
                return Some(drive(self.briefing.routes.get(route)?, *stop_after, prices.fuel));
            }
            _ => return self.price_of_work(step),
        };
        Some(Till { minutes: time, money: Money(0) })
    }

    fn price_of_work(&self, step: &Step) -> Option<Till> {
        let prices = &self.briefing.prices;
        let times = &prices.minutes;
        let spec = &self.briefing.vehicle;
        let (minutes, money) = match step {
            Step::AskApproval => (times.approval, Money(0)),
            Step::Write { .. } => (times.write, Money(0)),
            Step::HandOver { .. } => (times.hand_over, Money(0)),
            Step::Key { position: KeyPosition::Start } => (times.start, Money(0)),
            Step::Key { .. } => (times.key, Money(0)),
            Step::Fit { part_number, .. } => {
                valve(&self.briefing, &self.briefing.offer(part_number)?)
            }
            Step::Clean { .. } => cleaning(prices),
            Step::Mend { element } => mending(prices, spec.element(element))?,
            Step::Replace { element } => small_part(prices, spec.element(element))?,
            Step::ChangeOil { .. } => oil_change(prices, spec.sump.full_litres),
            _ => return None,
        };
        Some(Till { minutes, money })
    }
}
