//! A scope on one valve: the current of its coil as the module switches it on, or the voltage at the
//! module's pin as the module lets it go.
//!
//! What it shows follows from the stroke of the valve and from the wiring. A capture keeps a bounded
//! number of points, and the figures that a technician takes from it by eye with cursors.

use crate::physics::stroke::Stroke;
use crate::units::Seconds;
use serde::{Deserialize, Serialize};

/// Points that a capture keeps.
pub const POINTS: usize = 200;
/// What one step of the screen is worth [A, V]: the resolution of eight bits on a full screen.
const COUNT_A: f64 = 0.005;
const COUNT_V: f64 = 0.1;
/// Counts by which a current has to fall and to rise again until an eye calls it a dip.
const DIP_COUNTS: f64 = 3.0;

/// What a scope watches.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Signal {
    /// Current of the coil, by a current clamp, from the moment at which the module switches on.
    CoilCurrent,
    /// Voltage at the module's pin: at switch-off, or under pulses while the engine runs.
    DriverPin,
}

/// A capture.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Capture {
    /// What was watched.
    pub signal: Signal,
    /// Time between two points [s].
    pub interval_s: f64,
    /// The points [A or V], at most [`POINTS`].
    pub points: Vec<f64>,
    /// What the cursors say.
    pub cursors: Cursors,
}

/// What is taken from a capture by eye.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Cursors {
    /// Of a coil's current.
    Current {
        /// The dip that the moving plunger makes, if there is one.
        dip: Option<DipSeen>,
        /// Current at the end [A].
        end_a: f64,
    },
    /// Of a driver's pin.
    Pin {
        /// With the switch closed [V].
        closed_v: f64,
        /// Right after it opened [V], where the coil's current keeps the pin up, and for how long
        /// [ms]; none when nothing flows on.
        plateau: Option<Plateau>,
        /// Once all is over [V]; the plateau itself where the next pulse comes first.
        open_v: f64,
    },
}

/// A dip as the eye takes it from a screen.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct DipSeen {
    /// Current at the peak before it [A].
    pub peak_a: f64,
    /// From the peak down to the trough [A].
    pub depth_a: f64,
    /// From switch-on to the trough [ms].
    pub at_ms: f64,
}

/// The voltage that a coil's current holds up after its driver opened.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Plateau {
    /// Its height at the start [V].
    pub volts: f64,
    /// How long it lasts within the capture [ms].
    pub lasts_ms: f64,
}

fn to_count(value: f64, count: f64) -> f64 {
    // Whole counts over a whole number give the figure to its last digit.
    (value / count).round() / (1.0 / count).round() + 0.0
}

/// At most [`POINTS`] of some samples, at an even interval, and that interval.
fn thinned(samples: &[f64], interval: Seconds) -> (Vec<f64>, f64) {
    let every = samples.len().div_ceil(POINTS).max(1);
    (samples.iter().step_by(every).copied().collect(), interval.0 * every as f64)
}

/// The current of a coil from switch-on, from its stroke.
#[must_use]
pub fn coil_current(stroke: &Stroke, on_for: Seconds) -> Capture {
    let interval = stroke.trace.interval;
    let samples: Vec<f64> = stroke
        .trace
        .samples
        .iter()
        .enumerate()
        .take_while(|(number, _)| *number as f64 * interval.0 < on_for.0)
        .map(|(_, sample)| to_count(sample.0, COUNT_A))
        .collect();
    let dip = dip_in(&samples, interval);
    let end_a = samples.last().copied().unwrap_or(0.0);
    let (points, interval_s) = thinned(&samples, interval);
    let cursors = Cursors::Current { dip, end_a };
    Capture { signal: Signal::CoilCurrent, interval_s, points, cursors }
}

/// A current that nothing changes [A]: a coil that is fed whatever the module does, or carries
/// nothing.
#[must_use]
pub fn steady_current(amperes: f64, on_for: Seconds) -> Capture {
    let end_a = to_count(amperes, COUNT_A);
    Capture {
        signal: Signal::CoilCurrent,
        interval_s: on_for.0 / POINTS as f64,
        points: vec![end_a; POINTS],
        cursors: Cursors::Current { dip: None, end_a },
    }
}

/// The first fall of a rising current that is followed by another rise. The eye puts its cursor in
/// the middle of a flat bottom.
fn dip_in(samples: &[f64], interval: Seconds) -> Option<DipSeen> {
    let seen = DIP_COUNTS * COUNT_A - 1e-9;
    let (mut peak_a, mut trough_a) = (f64::NEG_INFINITY, f64::INFINITY);
    let mut bottom = (0, 0);
    for (number, sample) in samples.iter().copied().enumerate() {
        if sample > peak_a && peak_a - trough_a < seen {
            (peak_a, trough_a, bottom) = (sample, sample, (number, number));
        } else if sample < trough_a {
            (trough_a, bottom) = (sample, (number, number));
        } else if sample <= trough_a {
            bottom.1 = number;
        }
        if peak_a - trough_a >= seen && sample - trough_a >= seen {
            let middle = (bottom.0 + bottom.1) as f64 / 2.0;
            return Some(DipSeen {
                peak_a,
                depth_a: to_count(peak_a - trough_a, COUNT_A),
                at_ms: to_count(middle * interval.0 * 1e3, 0.1),
            });
        }
    }
    None
}

/// What stands at a driver's pin before and after it opens.
#[derive(Debug, Clone, PartialEq)]
pub struct PinLevels {
    /// With the switch closed [V].
    pub closed_v: f64,
    /// After it opened, while the coil's current goes on, at each interval [V].
    pub flowing_v: Vec<f64>,
    /// Once nothing flows [V].
    pub open_v: f64,
}

impl PinLevels {
    fn after(&self, number: usize) -> f64 {
        self.flowing_v.get(number).copied().unwrap_or(self.open_v)
    }

    fn cursors(&self, within: usize, interval: Seconds) -> Cursors {
        let lasting = self.flowing_v.len().min(within);
        let last = to_count(self.after(within.saturating_sub(1)), COUNT_V);
        Cursors::Pin {
            closed_v: to_count(self.closed_v, COUNT_V),
            plateau: self.flowing_v.first().map(|volts| Plateau {
                volts: to_count(*volts, COUNT_V),
                lasts_ms: to_count(lasting as f64 * interval.0 * 1e3, 0.1),
            }),
            open_v: last,
        }
    }
}

/// Share of a capture of a switch-off that shows the switch still closed.
const CLOSED_POINTS: usize = 20;

/// The pin at a switch-off.
#[must_use]
pub fn switch_off(levels: &PinLevels, interval: Seconds) -> Capture {
    let within = POINTS - CLOSED_POINTS;
    let points = (0..POINTS)
        .map(|number| {
            let volts =
                number.checked_sub(CLOSED_POINTS).map_or(levels.closed_v, |n| levels.after(n));
            to_count(volts, COUNT_V)
        })
        .collect();
    let cursors = levels.cursors(within, interval);
    Capture { signal: Signal::DriverPin, interval_s: interval.0, points, cursors }
}

/// The pin under pulses of a duty of 0 to 1, `in_period` points to a period.
#[must_use]
pub fn pulses(levels: &PinLevels, duty: f64, in_period: usize, interval: Seconds) -> Capture {
    let in_period = in_period.max(1);
    let closed = crate::numerics::whole::to_usize((duty * in_period as f64).round()).min(in_period);
    let points = (0..POINTS)
        .map(|number| {
            let into = number % in_period;
            let volts =
                into.checked_sub(closed).map_or(levels.closed_v, |after| levels.after(after));
            to_count(volts, COUNT_V)
        })
        .collect();
    let cursors = levels.cursors(in_period - closed, interval);
    Capture { signal: Signal::DriverPin, interval_s: interval.0, points, cursors }
}

#[cfg(test)]
mod tests;
