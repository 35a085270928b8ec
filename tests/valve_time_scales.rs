//! One valve on two time scales: the full motion of a stroke against the tick-by-tick motion of the
//! running engine, from the same parameters.
//!
//! Both are our own programs, so agreement proves consistency and no more; the full one is compared
//! with an independent solver elsewhere (`physics::stroke`). The bounds are those that
//! `physics::spool_follow` states.

use faultwright::physics::actuator::Actuator;
use faultwright::physics::coil::Winding;
use faultwright::physics::oil::Oil;
use faultwright::physics::solenoid::FluxLoop;
use faultwright::physics::spool::{Motion, Spool};
use faultwright::physics::spool_follow::{Follower, SpoolState};
use faultwright::physics::stroke::{Drive, Stroke, Surroundings, energise};
use faultwright::units::{Amperes, Celsius, Millimetres, Newtons, Ohms, Seconds, Volts};

const TICK_S: f64 = 1e-3;
const ON_S: f64 = 1.0;
const SUPPLY_V: f64 = 13.0;
const SOURCE: Ohms = Ohms(0.6);

/// Where a spool ended, and when it last came to rest [s after the switch].
#[derive(Debug, Clone, Copy)]
struct Travel {
    end_mm: f64,
    stop_s: Option<f64>,
}

#[derive(Debug)]
struct Both {
    out: Travel,
    back: Travel,
}

fn full(spool: &Spool, winding: &Winding, celsius: f64, volts: f64) -> Both {
    let mu = viscosity(celsius);
    let stroke: Stroke = energise(
        &Actuator::REFERENCE.solenoid,
        winding,
        spool,
        Drive { supply: Volts(volts), source: SOURCE, on_for: Seconds(ON_S) },
        Surroundings { coil: Celsius(celsius), oil_viscosity_pa_s: mu, start: Millimetres(0.0) },
    );
    let at = |impact: Option<faultwright::physics::stroke::Impact>| impact.map(|hit| hit.at.0);
    Both {
        out: Travel { end_mm: stroke.end_position.0, stop_s: at(stroke.engaged) },
        back: Travel { end_mm: stroke.rest_position.0, stop_s: at(stroke.returned) },
    }
}

fn viscosity(celsius: f64) -> f64 {
    Oil::TYPICAL_5W_30
        .curve()
        .map_or(f64::NAN, |curve| curve.fluid(Celsius(celsius)).viscosity_pa_s)
}

fn stepped(spool: &Spool, winding: &Winding, celsius: f64, volts: f64, tick_s: f64) -> Both {
    let flux = FluxLoop::new(winding, Celsius(celsius), SOURCE);
    let valve = Follower::new(&Actuator::REFERENCE, spool, viscosity(celsius), &flux, tick_s);
    let circuit = winding.terminal_ohms(Celsius(celsius)).0 + SOURCE.0;
    let mut state = valve.resting_at(Millimetres(0.0));
    let run = |state: &mut SpoolState, amperes: f64, stop_mm: f64| {
        let mut stop_s = None;
        let began = state.position().0;
        let ticks = (ON_S / tick_s).round() as u32;
        for tick in 1..=ticks {
            valve.follow(state, Amperes(amperes));
            let there = (state.position().0 - stop_mm).abs() < 1e-9;
            if there && stop_s.is_none() && began != stop_mm && state.motion() == Motion::Held {
                stop_s = Some(f64::from(tick) * tick_s);
            }
        }
        Travel { end_mm: state.position().0, stop_s }
    };
    let out = run(&mut state, volts / circuit, 2.5);
    let back = run(&mut state, 0.0, 0.0);
    Both { out, back }
}

fn windings() -> [Winding; 3] {
    [
        Winding { ohms_at_20: Ohms(9.3), turns: 0.92, ..Winding::REFERENCE },
        Winding { ohms_at_20: Ohms(12.8), turns: 1.08, ..Winding::REFERENCE },
        Winding { ohms_at_20: Ohms(11.0), turns: 1.0, shorted_share: 0.6, joint: Ohms(0.0) },
    ]
}

/// Stiction from none to seized, cold to hot, three windings (one with shorted turns), supplies that just
/// move the spool and that slam it: out and back.
#[test]
fn limit_both_time_scales_end_in_the_same_place_at_the_same_time() {
    let (mut compared, mut held_on_the_way, mut stayed) = (0, 0, 0);
    for winding in windings() {
        for celsius in [-20.0, 20.0, 60.0, 100.0] {
            for stiction in [0.0, 0.1, 0.3, 0.6, 1.0, 1.4, 1.8, 2.2, 2.5, 3.0, 4.0, 6.0, 8.0, 12.0]
            {
                for volts in [6.0, SUPPLY_V] {
                    let spool = Spool::REFERENCE.gummed(Newtons(stiction));
                    let (theirs, ours) = (
                        full(&spool, &winding, celsius, volts),
                        stepped(&spool, &winding, celsius, volts, TICK_S),
                    );
                    let what = format!(
                        "{stiction} N {celsius} C {volts} V {winding:?}: {ours:?} {theirs:?}"
                    );
                    for (ours, theirs) in [(ours.out, theirs.out), (ours.back, theirs.back)] {
                        let at_stop = theirs.stop_s.is_some();
                        let slack_mm = if at_stop { 0.05 } else { 0.25 };
                        assert!((ours.end_mm - theirs.end_mm).abs() < slack_mm, "{what}");
                        if let (Some(got), Some(wanted)) = (ours.stop_s, theirs.stop_s) {
                            assert!((got - wanted).abs() < 3e-3 + 0.1 * wanted, "{what}");
                        }
                        assert_eq!(ours.stop_s.is_some(), at_stop, "{what}");
                        held_on_the_way += usize::from(theirs.end_mm > 0.0 && theirs.end_mm < 2.5);
                        compared += 1;
                    }
                    stayed += usize::from(theirs.back.end_mm >= 2.5);
                }
            }
        }
    }
    assert_eq!(compared, 3 * 4 * 14 * 2 * 2);
    // The sweep has what it is for.
    assert!(held_on_the_way > 20 && stayed > 40, "{held_on_the_way} {stayed}");
}
