//! What is kept of a stroke: impacts, the dip of the current, a trace for a scope.

use super::click::Impact;
use super::motion::{Incident, Moment};
use super::{Dip, Trace};
use crate::physics::spool::Motion;
use crate::units::{Amperes, Joules, Seconds};

/// Time between two samples of the trace [s]; with the number of samples it covers 120 ms, in which a
/// healthy stroke and its end current are over.
const SAMPLE_EVERY_S: f64 = 0.2e-3;

/// Watches the two phases of a stroke, one after the other.
#[derive(Debug)]
pub struct Recorder {
    mass_kg: f64,
    /// Sign of the supply, so that a reversed one gives its peak and dip as well.
    sense: f64,
    /// When the phase began, since switch-on [s].
    phase_s: f64,
    pub first_motion: Option<Seconds>,
    pub engaged: Option<Impact>,
    pub returned: Option<Impact>,
    peak_a: f64,
    trough_a: f64,
    trace: Vec<Amperes>,
    last: Option<(f64, f64)>,
}

impl Recorder {
    pub fn new(mass_kg: f64, supply_v: f64) -> Self {
        Self {
            mass_kg,
            sense: if supply_v < 0.0 { -1.0 } else { 1.0 },
            phase_s: 0.0,
            first_motion: None,
            engaged: None,
            returned: None,
            peak_a: 0.0,
            trough_a: 0.0,
            trace: Vec::with_capacity(Trace::SAMPLES),
            last: None,
        }
    }

    /// The supply is on.
    pub fn watch_on(&mut self, moment: &Moment) {
        if self.engaged.is_none() {
            self.follow_dip(self.sense * moment.current_a);
        }
        if moment.incident == Incident::SetsOff && self.first_motion.is_none() {
            self.first_motion = Some(Seconds(moment.at_s));
        }
        self.watch(moment);
    }

    /// The supply is off since `on_s` after switch-on.
    pub fn watch_off(&mut self, moment: &Moment, on_s: f64) {
        self.phase_s = on_s;
        self.watch(moment);
    }

    /// Peak and trough up to the impact, or up to switch-off where there was none.
    pub fn dip(&self) -> Option<Dip> {
        self.first_motion.map(|_| Dip {
            peak: Amperes(self.sense * self.peak_a),
            trough: Amperes(self.sense * self.trough_a),
        })
    }

    pub fn trace(mut self) -> Trace {
        // The valve came to rest before the trace was full.
        let resting = Amperes(self.last.map_or(0.0, |(_, current_a)| current_a));
        self.trace.resize(Trace::SAMPLES, resting);
        Trace { interval: Seconds(SAMPLE_EVERY_S), samples: self.trace }
    }

    fn watch(&mut self, moment: &Moment) {
        if moment.incident == Incident::Strikes {
            self.strike(moment);
        }
        self.sample(self.phase_s + moment.at_s, moment.current_a);
    }

    fn follow_dip(&mut self, current_a: f64) {
        if current_a > self.peak_a {
            self.peak_a = current_a;
            self.trough_a = current_a;
        }
        self.trough_a = self.trough_a.min(current_a);
    }

    fn strike(&mut self, moment: &Moment) {
        let speed_m_per_s = moment.state.v_m_per_s.abs();
        let energy = Joules(0.5 * self.mass_kg * speed_m_per_s * speed_m_per_s);
        if moment.state.motion == Motion::Opening {
            let at = Seconds(self.phase_s + moment.at_s);
            self.engaged.get_or_insert(Impact { at, speed_m_per_s, energy });
        } else {
            let at = Seconds(moment.at_s);
            self.returned.get_or_insert(Impact { at, speed_m_per_s, energy });
        }
    }

    /// Fills the trace up to a time, on the straight line from the last moment.
    fn sample(&mut self, at_s: f64, current_a: f64) {
        let (from_s, from_a) = self.last.unwrap_or((0.0, 0.0));
        while self.trace.len() < Trace::SAMPLES {
            let sample_s = self.trace.len() as f64 * SAMPLE_EVERY_S;
            if sample_s > at_s {
                break;
            }
            let share = if at_s > from_s { (sample_s - from_s) / (at_s - from_s) } else { 1.0 };
            self.trace.push(Amperes(from_a + share * (current_a - from_a)));
        }
        self.last = Some((at_s, current_a));
    }
}
