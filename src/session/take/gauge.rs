//! The pressure gauge: in, read, out.

use super::{Outcome, Refusal, minutes};
use crate::instruments::pressure_gauge::{PressureGauge, TOLERANCE_BAR};
use crate::numerics::streams::Streams;
use crate::session::attempt::Session;
use crate::session::event::{Event, Hazard};
use crate::session::take::access::HOT_C;
use crate::units::Minutes;

/// Engine speeds that a person holds in the workshop [rpm].
const HELD_RPM: core::ops::RangeInclusive<u16> = 1_000..=4_000;

/// Screws the gauge in or takes it out: oil runs over the hands either way.
pub(super) fn screw(session: &mut Session, in_it_goes: bool) -> Result<Vec<Event>, Refusal> {
    if session.vehicle.engine_runs() {
        return Err(Refusal::EngineRuns);
    }
    if session.progress.gauge_fitted == in_it_goes {
        return Err(if in_it_goes { Refusal::GaugeFitted } else { Refusal::NoGauge });
    }
    let tap = &session.briefing.vehicle.oil.gauge_tap;
    if let Some(obstacle) = session.vehicle.assembly().in_the_way(&tap.behind) {
        return Err(Refusal::Obstacle(obstacle));
    }
    let mut events = vec![Event::Caution { hazard: Hazard::UsedOil }];
    if session.vehicle.engine_temperature().0 > HOT_C {
        events.push(Event::Caution { hazard: Hazard::Hot });
    }
    let time = if in_it_goes { tap.fit } else { tap.remove };
    events.push(if in_it_goes { Event::GaugeFitted } else { Event::GaugeRemoved });
    events.push(minutes(time));
    session.progress.gauge_fitted = in_it_goes;
    Ok(events)
}

/// Reads the gauge at idle or at a held speed; `warm` lets the engine reach its working temperature
/// first, however long that takes. With the engine stopped it shows no pressure.
pub(super) fn read(session: &mut Session, rpm: Option<u16>, warm: bool) -> Outcome {
    if !session.progress.gauge_fitted {
        return Ok(Err(Refusal::NoGauge));
    }
    if rpm.is_some_and(|rpm| !HELD_RPM.contains(&rpm)) {
        return Ok(Err(Refusal::OutOfRange));
    }
    if !session.vehicle.engine_runs() && (rpm.is_some() || warm) {
        return Ok(Err(Refusal::EngineStands));
    }
    let mut events = Vec::new();
    let mut time = session.briefing.prices.minutes.read_gauge;
    let mut pressures = Vec::new();
    let mut interval = crate::units::Seconds(0.1);
    if session.vehicle.engine_runs() {
        events.push(Event::Caution { hazard: Hazard::MovingParts });
        events.push(Event::Caution { hazard: Hazard::Fumes });
        if warm {
            time = Minutes(time.0 + session.vehicle.warm_up()?.0);
        }
        if session.vehicle.engine_temperature().0 > HOT_C {
            events.push(Event::Caution { hazard: Hazard::Hot });
        }
        (pressures, interval) = session.vehicle.hold_speed(rpm)?;
    }
    let gauge = PressureGauge::drawn(Streams::new(session.seed).stream("pressure gauge"));
    let reading = gauge.read(&pressures, interval);
    events.push(Event::GaugeRead {
        rpm: rpm.filter(|_| session.vehicle.engine_runs()),
        bar: reading.bar,
        swing: reading.swing_bar,
        tolerance: TOLERANCE_BAR,
    });
    events.push(minutes(time));
    Ok(Ok(events))
}
